//! Reports: every answer that a reader may give of a character, and how often each is given.

use crate::ladder::Ladder;
use crate::{Character, Kind, Seen, evidence, states};
use ground::Finite;

/// Every answer to one character: they exclude one another, and one is given.
#[derive(Clone, Debug)]
pub(crate) struct Reports {
    /// What is said.
    pub(crate) said: Vec<Seen>,
    /// By answer, the probability of it on each true rung; over all answers they sum to 1.
    pub(crate) on: Vec<Vec<f64>>,
}

/// What somebody says who misreads this share.
pub(crate) fn reports_of(character: &Character, misread: f64) -> Reports {
    let on = match &character.kind {
        Kind::States(known) => states::answers(known, misread),
        Kind::Length => (0..Ladder::steps().len()).map(|at| Ladder::within(at, misread)).collect(),
        Kind::Count => counts(misread),
    };
    Reports { said: reports(character), on }
}

/// A count is right, or off by one, or anything.
fn counts(misread: f64) -> Vec<Vec<f64>> {
    let rungs = Ladder::Counts.rungs();
    let raw = |truth: usize, said: usize| match truth.abs_diff(said) {
        0 => 1.0 - misread,
        1 => misread * evidence::OFF_BY_ONE / 2.0,
        _ => misread * (1.0 - evidence::OFF_BY_ONE) / states::count(rungs),
    };
    // At the ends of the ladder one neighbour is missing.
    let total = |truth: usize| -> f64 { (0..rungs).map(|said| raw(truth, said)).sum() };
    let totals: Vec<f64> = (0..rungs).map(total).collect();
    let one = |said: usize| {
        totals.iter().enumerate().map(|(truth, total)| raw(truth, said) / total).collect()
    };
    (0..rungs).map(one).collect()
}

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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sample;

    #[test]
    fn on_every_rung_something_is_said_and_one_thing_only() {
        let states = sample::character("c", &["one", "two", "three"]);
        let length = Character { kind: Kind::Length, ..states.clone() };
        let count = Character { kind: Kind::Count, ..states.clone() };
        for character in [states, length, count] {
            let Reports { said, on } = reports_of(&character, 0.1);
            assert_eq!(said.len(), on.len());
            for rung in 0..on[0].len() {
                let sum: f64 = on.iter().map(|chances| chances[rung]).sum();
                assert!((sum - 1.0).abs() < 1e-9, "{:?} {rung} {sum}", character.kind);
            }
        }
    }

    #[test]
    fn a_length_is_mostly_said_to_lie_where_it_lies() {
        let length = Character { kind: Kind::Length, ..sample::character("c", &["one"]) };
        let Reports { on, .. } = reports_of(&length, 0.04);
        // The middle of a step of eight rungs.
        assert!((0..on.len() - 1).all(|step| on[step][8 * step + 4] > 0.95));
    }
}
