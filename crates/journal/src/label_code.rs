//! The code on the label of a lot or batch: short, made from what it names, with a character that
//! shows a slip of the pen.

use crate::School;
use ground::{ContentId, check_character, ends_in_check_character};
use serde::{Deserialize, Serialize};
use std::fmt;

/// The letters of a code: none that is easily read for another by itself, as 0 and O, 1 and I are.
const LETTERS: &[char; 32] = &[
    '2', '3', '4', '5', '6', '7', '8', '9', 'A', 'B', 'C', 'D', 'E', 'F', 'G', 'H', 'J', 'K', 'L',
    'M', 'N', 'P', 'Q', 'R', 'S', 'T', 'U', 'V', 'W', 'X', 'Y', 'Z',
];
/// Letters that come from the content: 35 bits, so that of 10,000 labels two are alike in hardly more
/// than one school in a thousand.
const FROM_CONTENT: usize = 7;
/// Letters of a whole code: the kind, those from the content, the check character.
const LENGTH: usize = FROM_CONTENT + 2;

/// The code of a lot or batch, such as `L7F-3K9-MQX`: `L` for a lot or `B` for a batch, seven letters
/// from its content, and a check character after ISO/IEC 7064, MOD 37-2. It holds nothing personal.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct LabelCode(String);

impl LabelCode {
    /// The code of this content. Contents are hashed with a number that grows until the check
    /// character is one that can be read well.
    fn of(kind: char, content: &[u8]) -> Self {
        let mut turn: u32 = 0;
        loop {
            let hash = ContentId::of(&[content, &turn.to_be_bytes()[..]].concat());
            let mut code: String = std::iter::once(kind).chain(letters(&hash)).collect();
            let check = check_character(&code).filter(|check| LETTERS.contains(check));
            if let Some(check) = check {
                code.push(check);
                return Self(code);
            }
            turn = turn.wrapping_add(1);
        }
    }

    /// The code that somebody wrote, with or without its hyphens, in letters of any size.
    ///
    /// # Errors
    /// The text, when it is no code or was copied wrong.
    pub fn read(written: &str) -> Result<Self, String> {
        let code: String = written
            .chars()
            .filter(|c| !matches!(c, '-' | ' '))
            .map(|c| c.to_ascii_uppercase())
            .collect();
        let kind = code.starts_with(['L', 'B']);
        let plain = code.chars().all(|c| LETTERS.contains(&c)) && code.chars().count() == LENGTH;
        if kind && plain && ends_in_check_character(&code) {
            return Ok(Self(code));
        }
        Err(written.to_owned())
    }
}

/// Seven letters of a hash: 5 bits each.
fn letters(hash: &ContentId) -> impl Iterator<Item = char> {
    let bits = u64::from_str_radix(hash.as_str().get(..16).unwrap_or_default(), 16).unwrap_or(0);
    (0..FROM_CONTENT).filter_map(move |at| LETTERS.get((bits >> (5 * at) & 31) as usize).copied())
}

impl fmt::Display for LabelCode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let groups: Vec<char> = self.0.chars().collect();
        let groups: Vec<String> = groups.chunks(3).map(String::from_iter).collect();
        f.pad(&groups.join("-"))
    }
}

impl TryFrom<String> for LabelCode {
    type Error = String;

    fn try_from(written: String) -> Result<Self, String> {
        Self::read(&written)
    }
}

impl From<LabelCode> for String {
    fn from(code: LabelCode) -> Self {
        code.to_string()
    }
}

impl School {
    /// The code of a lot that is written down, from its name and from where, of what and when its
    /// takes are: a weight that is corrected later does not change it.
    #[must_use]
    pub fn lot_code(&self, name: &str) -> Option<LabelCode> {
        let lot = self.lots.get(name)?;
        let mut takes: Vec<_> = lot.takes.iter().map(|name| self.take_key(name)).collect();
        takes.sort();
        Some(LabelCode::of('L', &bytes(&("lot", name, takes))))
    }

    /// The code of a batch that is written down, from its name, wish and time, and from its lots.
    #[must_use]
    pub fn batch_code(&self, name: &str) -> Option<LabelCode> {
        let (at, batch) = self.batches.get(name)?;
        let mut lots: Vec<_> = batch.lots.iter().map(|lot| (lot, self.lot_code(lot))).collect();
        lots.sort();
        Some(LabelCode::of('B', &bytes(&("batch", name, &batch.make, at, lots))))
    }

    /// What makes a take the one it is.
    fn take_key(&self, name: &str) -> (String, Option<String>, Option<String>) {
        let take = self.takes.get(name);
        let at = take.and_then(|(at, _)| at.map(|at| at.to_string()));
        (name.to_owned(), take.map(|(_, t)| format!("{} {}", t.stand, t.part)), at)
    }
}

/// A plain tree of words and times always writes.
fn bytes(content: &impl Serialize) -> Vec<u8> {
    serde_json::to_vec(content).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use std::collections::BTreeSet;

    #[test]
    fn a_code_has_no_letter_that_is_read_for_another() {
        assert_eq!(BTreeSet::from(*LETTERS).len(), LETTERS.len());
        assert!(!LETTERS.iter().any(|c| ['0', 'O', '1', 'I'].contains(c)));
        let codes: BTreeSet<_> =
            (0..2000_u32).map(|n| LabelCode::of('L', &n.to_be_bytes())).collect();
        assert_eq!(codes.len(), 2000);
        assert!(codes.iter().all(|code| code.0.chars().all(|c| LETTERS.contains(&c))));
    }

    #[test]
    fn a_code_is_the_same_on_every_run_and_differs_by_kind() {
        assert_eq!(LabelCode::of('L', b"ramsons").to_string(), "LB3-AGC-6EY");
        assert!(LabelCode::of('B', b"ramsons").to_string().starts_with('B'));
    }

    proptest! {
        #[test]
        fn a_code_is_read_back_and_a_slip_of_the_pen_is_not(
            content in prop::collection::vec(any::<u8>(), 0..40),
            at in 0..9_usize,
            wrong in "[2-9A-HJ-NP-Z]",
        ) {
            let code = LabelCode::of('B', &content);
            prop_assert_eq!(LabelCode::read(&code.to_string()), Ok(code.clone()));
            prop_assert_eq!(LabelCode::read(&code.0.to_lowercase()), Ok(code.clone()));
            let mut slip = code.0.clone();
            slip.replace_range(at..=at, &wrong);
            prop_assert!(slip == code.0 || LabelCode::read(&slip).is_err());
        }
    }
}
