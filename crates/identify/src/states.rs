//! States: how often a taxon shows each, and how readers mistake one for another.

use crate::{State, evidence};

/// Share of plants that show each state, from what a sheet says of it; sums to 1.
///
/// A word shares its weight evenly among the states under it; a state that is not named keeps a
/// small weight of its own.
pub(crate) fn shares(states: &[State], words: [(f64, &[String]); 4]) -> Vec<f64> {
    let share = |state: &State| {
        let named = words.iter().filter(|(_, named)| named.contains(&state.id));
        let said = named.map(|(share, named)| share / count(named.len()));
        said.fold(evidence::UNSEEN, f64::max)
    };
    normalised(states.iter().map(share).collect())
}

/// For each true state, the probability that a reader reports one of these, or a state that is
/// more general or more special than one of these.
///
/// A state and its kind are no difference: who reads *netted* veins contradicts neither *netted*
/// nor *palmate*.
pub(crate) fn weights(states: &[State], seen: &[String], misread: f64) -> Vec<f64> {
    let meant: Vec<bool> =
        states.iter().map(|state| seen.iter().any(|s| related(states, &state.id, s))).collect();
    let weight = |truth: &State| {
        let reported = states.iter().zip(&meant).filter(|(_, meant)| **meant);
        reported.map(|(state, _)| report(states, truth, state, misread)).sum()
    };
    states.iter().map(weight).collect()
}

/// For each state that may be reported, what it weighs on each true state.
pub(crate) fn answers(states: &[State], misread: f64) -> Vec<Vec<f64>> {
    let of = |reported: &State| {
        states.iter().map(|truth| report(states, truth, reported, misread)).collect()
    };
    states.iter().map(of).collect()
}

/// The probability that a reader who has this state before them reports that one.
///
/// Misreading falls on the states that the true one is taken for; any other is rare. Where nobody
/// has said what is taken for what in a character, it is spread evenly.
fn report(states: &[State], truth: &State, reported: &State, misread: f64) -> f64 {
    let others = count(states.len().saturating_sub(1));
    let same = truth.id == reported.id;
    if states.iter().all(|state| state.taken_for.is_empty()) {
        return match (same, states.len()) {
            (true, 1) => 1.0,
            (true, _) => 1.0 - misread,
            (false, _) => misread / others,
        };
    }
    let near = count(truth.taken_for.len());
    let far = evidence::FAR * misread;
    if same {
        let taken = if truth.taken_for.is_empty() { 0.0 } else { misread };
        return (1.0 - taken - far * (others - near)).max(0.0);
    }
    if truth.taken_for.contains(&reported.id) { misread / near } else { far }
}

/// Whether two states are the same, or one is a kind of the other.
pub(crate) fn related(states: &[State], a: &str, b: &str) -> bool {
    is_kind_of(states, a, b) || is_kind_of(states, b, a)
}

fn is_kind_of(states: &[State], special: &str, general: &str) -> bool {
    let mut at = Some(special);
    while let Some(state) = at {
        if state == general {
            return true;
        }
        at = states.iter().find(|known| known.id == state).and_then(|s| s.kind_of.as_deref());
    }
    false
}

/// The same numbers, summing to 1; they must not all be nought.
pub(crate) fn normalised(mut shares: Vec<f64>) -> Vec<f64> {
    let total: f64 = shares.iter().sum();
    for share in &mut shares {
        *share /= total;
    }
    shares
}

/// A small whole number as a number to compute with.
pub(crate) fn count(of: usize) -> f64 {
    u32::try_from(of).map_or(f64::from(u32::MAX), f64::from)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Kind, sample};

    fn states(ids: &[&str]) -> Vec<State> {
        match sample::character("c", ids).kind {
            Kind::States(states) => states,
            _ => Vec::new(),
        }
    }

    fn named(ids: &[&str]) -> Vec<String> {
        ids.iter().map(|id| (*id).to_owned()).collect()
    }

    #[test]
    fn words_share_their_weight_and_unnamed_states_keep_a_little() {
        let (usually, sometimes) = (named(&["a"]), named(&["b", "c"]));
        let words: [(f64, &[String]); 4] =
            [(1.0, &[]), (0.85, &usually), (0.12, &sometimes), (0.03, &[])];
        let got = shares(&states(&["a", "b", "c", "d"]), words);
        let total = 0.85 + 0.06 + 0.06 + 0.004;
        for (got, want) in got.iter().zip([0.85, 0.06, 0.06, 0.004]) {
            assert!((got - want / total).abs() < 1e-15);
        }
    }

    #[test]
    fn what_a_reader_may_report_sums_to_one() {
        let mut mixed = states(&["a", "b", "c", "d"]);
        mixed[0].taken_for = named(&["b", "c"]);
        for states in [mixed, states(&["a", "b", "c"]), states(&["a"])] {
            for truth in &states {
                let sum: f64 = states.iter().map(|s| report(&states, truth, s, 0.21)).sum();
                assert!((sum - 1.0).abs() < 1e-12);
            }
        }
    }

    #[test]
    fn misreading_falls_on_what_a_state_is_taken_for() {
        let mut states = states(&["a", "b", "c"]);
        states[1].taken_for = named(&["a"]);
        let weights = weights(&states, &named(&["a"]), 0.1);
        assert!((weights[1] - 0.1).abs() < 1e-15 && (weights[2] - 0.005).abs() < 1e-15);
    }

    #[test]
    fn a_state_and_its_kind_are_no_difference() {
        let mut states = states(&["netted", "palmate", "parallel", "pinnate"]);
        states[1].kind_of = Some("netted".to_owned());
        states[3].kind_of = Some("netted".to_owned());
        let general = weights(&states, &named(&["netted"]), 0.03);
        assert!(general[0] > 0.95 && general[1] > 0.95 && general[3] > 0.95 && general[2] < 0.05);
        let special = weights(&states, &named(&["palmate"]), 0.03);
        assert!(special[0] > 0.95 && special[1] > 0.95 && special[3] < 0.05);
    }
}
