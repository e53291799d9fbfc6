//! A number that can be compared, sorted, hashed and written without surprises.

use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::cmp::Ordering;
use std::fmt;

/// A floating-point number that is neither infinite nor NaN and never `-0`.
///
/// Written in the shortest form that reads back as the same number, so that equal answers are
/// equal bytes on every machine.
#[derive(Clone, Copy, Debug, Default)]
pub struct Finite(f64);

impl Finite {
    /// Zero.
    pub const ZERO: Finite = Finite(0.0);

    /// The number, or nothing for NaN and the infinities.
    ///
    /// ```
    /// use ground::Finite;
    /// assert_eq!(Finite::new(-0.0), Some(Finite::ZERO));
    /// assert_eq!(Finite::new(f64::NAN), None);
    /// ```
    #[must_use]
    pub fn new(value: f64) -> Option<Self> {
        value.is_finite().then_some(Self(value + 0.0))
    }

    /// The plain number.
    #[must_use]
    pub const fn get(self) -> f64 {
        self.0
    }
}

impl PartialEq for Finite {
    fn eq(&self, other: &Self) -> bool {
        self.0.to_bits() == other.0.to_bits()
    }
}

impl Eq for Finite {}

impl PartialOrd for Finite {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Finite {
    fn cmp(&self, other: &Self) -> Ordering {
        self.0.total_cmp(&other.0)
    }
}

impl fmt::Display for Finite {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl TryFrom<f64> for Finite {
    type Error = f64;

    fn try_from(value: f64) -> Result<Self, f64> {
        Self::new(value).ok_or(value)
    }
}

impl Serialize for Finite {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_f64(self.0)
    }
}

impl<'de> Deserialize<'de> for Finite {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let value = f64::deserialize(from)?;
        Self::new(value).ok_or_else(|| serde::de::Error::custom("a finite number is wanted"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn minus_zero_is_zero_in_every_way() {
        let zero = Finite::new(-0.0).unwrap();
        assert!(zero.get().is_sign_positive());
        assert_eq!(zero.cmp(&Finite::ZERO), Ordering::Equal);
        assert_eq!(serde_json::to_string(&zero).unwrap(), "0.0");
    }

    #[test]
    fn the_shortest_form_reads_back_as_the_same_number() {
        let tenth = Finite::new(0.1 + 0.2).unwrap();
        let text = serde_json::to_string(&tenth).unwrap();
        assert_eq!(text, "0.30000000000000004");
        assert_eq!(serde_json::from_str::<Finite>(&text).unwrap(), tenth);
    }
}
