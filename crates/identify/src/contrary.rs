//! Readings of one character that cannot both be right.

use crate::judge::Judge;
use crate::testimony::{Reading, Testimony};
use crate::{Character, Kind, Seen, evidence, say, states};
use ground::Text;

/// The first two readings of each character that contradict each other, as messages.
pub(crate) fn contradictions<'a>(
    judge: &'a Judge<'_>,
    testimonies: &'a [Testimony],
) -> impl Iterator<Item = Text> + 'a {
    testimonies.iter().filter_map(|testimony| {
        let character = judge.character(testimony.column)?;
        let (one, other) = two_contrary(character, &testimony.readings)?;
        let text = Text::new("identify-contradict")
            .with("character", character.id.as_str())
            .with("first", one.reader.as_str())
            .with("one", say::seen(&one.seen))
            .with("second", other.reader.as_str())
            .with("other", say::seen(&other.seen));
        Some(text)
    })
}

fn two_contrary<'r>(
    character: &Character,
    readings: &'r [Reading],
) -> Option<(&'r Reading, &'r Reading)> {
    let pairs = readings.iter().enumerate();
    let mut pairs = pairs.flat_map(|(at, a)| readings.iter().skip(at + 1).map(move |b| (a, b)));
    pairs.find(|(a, b)| contradict(character, &a.seen, &b.seen))
}

/// Whether no one plant shows both: states of which neither is a kind of the other, lengths of which one is more
/// than twice the other, counts that lie further apart than a slip by one.
fn contradict(character: &Character, a: &Seen, b: &Seen) -> bool {
    match (&character.kind, a, b) {
        (Kind::States(known), Seen::State(_) | Seen::OneOf(_), Seen::State(_) | Seen::OneOf(_)) => {
            let alike = |a: &String| b.states().iter().any(|b| states::related(known, a, b));
            !a.states().iter().any(alike)
        }
        (_, Seen::Measured { low, high }, Seen::Measured { low: from, high: to }) => {
            let longer = |low: f64, high: f64| low > evidence::ONE_PLANT * high;
            longer(low.get(), to.get()) || longer(from.get(), high.get())
        }
        (_, Seen::Counted(a), Seen::Counted(b)) => a.abs_diff(*b) > 1,
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sample;
    use ground::Finite;

    #[test]
    fn states_contradict_unless_one_is_a_kind_of_the_other() {
        let mut veins = sample::character("veins", &["netted", "palmate", "parallel"]);
        if let Kind::States(states) = &mut veins.kind {
            states[1].kind_of = Some("netted".to_owned());
        }
        let state = |word: &str| Seen::State(word.to_owned());
        assert!(contradict(&veins, &state("netted"), &state("parallel")));
        assert!(!contradict(&veins, &state("netted"), &state("palmate")));
        let either = Seen::OneOf(vec!["netted".to_owned(), "parallel".to_owned()]);
        assert!(!contradict(&veins, &either, &state("parallel")));
        assert!(!contradict(&veins, &Seen::CannotTell, &state("parallel")));
    }

    #[test]
    fn lengths_and_counts_contradict_when_they_lie_far_apart() {
        let length = Character { kind: Kind::Length, ..sample::character("long", &["one"]) };
        let end = |mm| Finite::new(mm).unwrap();
        let measured = |low, high| Seen::Measured { low: end(low), high: end(high) };
        assert!(!contradict(&length, &measured(20.0, 20.0), &measured(38.0, 40.0)));
        assert!(contradict(&length, &measured(20.0, 20.0), &measured(200.0, 200.0)));
        assert!(contradict(&length, &measured(200.0, 200.0), &measured(20.0, 20.0)));
        assert!(contradict(&length, &Seen::Counted(3), &Seen::Counted(5)));
        assert!(!contradict(&length, &Seen::Counted(5), &Seen::Counted(6)));
    }
}
