//! Reports: every answer that a reader may give of a character.

use crate::ladder::Ladder;
use crate::{Character, Kind, Seen};
use ground::Finite;

/// The answers to one character. A length is said to lie between two marks, each half as long again as the
/// one below.
pub(crate) fn reports(character: &Character) -> Vec<Seen> {
    let end = |at: f64| Finite::new(at).unwrap_or_default();
    match &character.kind {
        Kind::States(known) => known.iter().map(|state| Seen::State(state.id.clone())).collect(),
        Kind::Length => {
            let steps = Ladder::steps().into_iter();
            steps.map(|(low, high)| Seen::Measured { low: end(low), high: end(high) }).collect()
        }
        Kind::Count => {
            let counts = 0..Ladder::Counts.rungs();
            counts.filter_map(|said| u32::try_from(said).ok()).map(Seen::Counted).collect()
        }
    }
}
