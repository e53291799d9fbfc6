//! The identifier of a record: a UUID of version 7.

use serde::{Deserialize, Serialize};
use std::fmt;

/// The greatest moment that an identifier holds, in Unix milliseconds: 48 bits, in the year 10889.
pub(super) const LAST_MS: i64 = (1 << 48) - 1;

/// A UUID of version 7 (RFC 9562, section 5.7). From the first bit on: 48 bits of Unix
/// milliseconds, 4 of version, 12 random ones, 2 of variant, 62 random ones.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct RecordId(u128);

impl RecordId {
    /// An identifier of this moment, in Unix milliseconds, and these random bytes. The highest four
    /// bits of the first byte and the highest two of the third give way to version and variant.
    ///
    /// The moment only sorts identifiers roughly (RFC 9562, section 6.1): one beyond what 48 bits
    /// hold becomes the nearest that they do.
    #[must_use]
    pub fn new(ms: i64, random: [u8; 10]) -> Self {
        let time = u128::from(ms.clamp(0, LAST_MS).unsigned_abs());
        let random = random.into_iter().fold(0, |bits, byte| bits << 8 | u128::from(byte));
        let (rand_a, rand_b) = (random >> 64 & 0xFFF, random & u128::from(u64::MAX >> 2));
        Self(time << 80 | 0b0111 << 76 | rand_a << 64 | 0b10 << 62 | rand_b)
    }

    /// The identifier that somebody wrote, when it is a UUID of version 7.
    #[must_use]
    pub fn read(written: &str) -> Option<Self> {
        let formed = written.split('-').map(str::len).eq([8, 4, 4, 4, 12]);
        let digits = written.replace('-', "");
        let plain = digits.bytes().all(|byte| byte.is_ascii_hexdigit());
        let bits = u128::from_str_radix(&digits, 16).ok()?;
        let version_7 = bits >> 76 & 0xF == 0b0111 && bits >> 62 & 0b11 == 0b10;
        (formed && plain && version_7).then_some(Self(bits))
    }
}

impl fmt::Display for RecordId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let bits = |from: u32, most: u128| self.0 >> from & most;
        let [b, c, d] = [80, 64, 48].map(|from| bits(from, 0xFFFF));
        write!(f, "{:08x}-{b:04x}-{c:04x}-{d:04x}-{:012x}", self.0 >> 96, bits(0, (1 << 48) - 1))
    }
}

impl fmt::Debug for RecordId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl TryFrom<String> for RecordId {
    type Error = String;

    fn try_from(written: String) -> Result<Self, String> {
        Self::read(&written).ok_or(written)
    }
}

impl From<RecordId> for String {
    fn from(id: RecordId) -> Self {
        id.to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// RFC 9562, appendix A.6: 22 February 2022, 14:22:22 at UTC−05:00.
    const EXAMPLE: &str = "017F22E2-79B0-7CC3-98C4-DC0C0C07398F";

    #[test]
    fn the_worked_example_of_the_standard_comes_out() {
        let rand_a = 0xCC3_u16.to_be_bytes();
        let rand_b = (0b01_u64 << 60 | 0x8C4_DC0C_0C07_398F).to_be_bytes();
        let mut random = [0; 10];
        random[..2].copy_from_slice(&rand_a);
        random[2..].copy_from_slice(&rand_b);
        let id = RecordId::new(0x017F_22E2_79B0, random);
        assert_eq!(id.to_string(), EXAMPLE.to_lowercase());
        assert_eq!(RecordId::read(EXAMPLE), Some(id));
        assert_eq!(0x017F_22E2_79B0_i64, 1_645_557_742_000);
    }

    #[test]
    fn what_is_no_uuid_of_version_7_is_not_read() {
        for wrong in [
            "",
            "017f22e279b07cc398c4dc0c0c07398f",
            "017f22e2-79b0-7cc3-98c4-dc0c0c07398",
            "017f22e2-79b0-7cc3-98c4-dc0c0c07398g",
            "+17f22e2-79b0-7cc3-98c4-dc0c0c07398f",
            "017f22e2-79b0-4cc3-98c4-dc0c0c07398f",
            "017f22e2-79b0-7cc3-d8c4-dc0c0c07398f",
        ] {
            assert_eq!(RecordId::read(wrong), None, "{wrong}");
        }
    }

    proptest! {
        #[test]
        fn an_identifier_is_read_back_and_sorts_by_its_moment(
            (one, other) in (any::<i64>(), any::<i64>()),
            random in any::<[u8; 10]>(),
            further in any::<[u8; 10]>(),
        ) {
            let id = RecordId::new(one, random);
            prop_assert_eq!(RecordId::read(&id.to_string()), Some(id));
            let held = |ms: i64| ms.clamp(0, LAST_MS);
            if held(one) < held(other) {
                let later = RecordId::new(other, further);
                prop_assert!(id < later);
                prop_assert!(id.to_string() < later.to_string());
            }
        }
    }
}
