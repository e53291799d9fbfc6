//! What somebody who knew a person's answers allowed, for whoever hands out without knowing them.

use crate::{Decision, Outcome, Reason, Rule, Strictness};
use ground::Text;
use serde::{Deserialize, Serialize};

/// What a person may be handed of a cup, as somebody found who knew their answers. It says nothing of
/// why, and holds for that cup alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Flag {
    /// Most servings a day; 0 where it is not for this person.
    pub servings_a_day: u32,
    /// Most days at a time.
    pub days: u32,
}

impl Flag {
    /// The flag that leaves of an outcome what may be handed over of so many planned servings a day on so
    /// many days. While somebody must be asked, that is nothing.
    #[must_use]
    pub fn of(outcome: Outcome, (servings_a_day, days): (u32, u32)) -> Self {
        Self {
            servings_a_day: outcome.most_servings().min(servings_a_day),
            days: outcome.most_days().min(days),
        }
    }

    /// What both of two flags allow.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        Self {
            servings_a_day: self.servings_a_day.min(other.servings_a_day),
            days: self.days.min(other.days),
        }
    }

    fn allows_nothing(self) -> bool {
        self.servings_a_day == 0 || self.days == 0
    }

    /// An outcome under this flag: never milder than either.
    fn on(self, outcome: Outcome) -> Outcome {
        match outcome {
            _ if self.allows_nothing() => Outcome::Withhold,
            Outcome::NoReasonFound { .. } | Outcome::AtMost { .. } => Outcome::AtMost {
                servings_a_day: Some(self.servings_a_day.min(outcome.most_servings())),
                days: Some(self.days.min(outcome.most_days())),
            },
            Outcome::AskFirst | Outcome::Withhold => outcome,
        }
    }
}

/// The decision for a person of whom nothing is known but a flag: what the cup would be for a grown-up
/// without any answer that matters, and never more than the flag allows.
#[must_use]
pub fn flagged(plain_adult: Decision, flag: Flag, person: &str) -> Decision {
    let (asks, id) = match flag.allows_nothing() {
        true => (Strictness::Withhold, "dose-flag-none"),
        false => (Strictness::AtMost, "dose-flag"),
    };
    let mut sealed = plain_adult.sealed;
    sealed.reasons.insert(0, Reason { asks, rule: Rule::Flag, text: Text::new(id), from: None });
    sealed.reasons.sort_by_key(|reason| std::cmp::Reverse(reason.asks));
    Decision {
        person: person.to_owned(),
        outcome: flag.on(plain_adult.outcome),
        once_asked: plain_adult.once_asked.map(|outcome| flag.on(outcome)),
        sealed,
        ..plain_adult
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Reasons;

    const OUTCOMES: [Outcome; 6] = [
        Outcome::NoReasonFound { servings_a_day: None, days: None },
        Outcome::NoReasonFound { servings_a_day: Some(4), days: Some(9) },
        Outcome::AtMost { servings_a_day: Some(2), days: None },
        Outcome::AtMost { servings_a_day: None, days: Some(3) },
        Outcome::AskFirst,
        Outcome::Withhold,
    ];

    fn decision(outcome: Outcome) -> Decision {
        Decision {
            person: "plain-adult".to_owned(),
            batch: "pot".to_owned(),
            outcome,
            once_asked: (outcome == Outcome::AskFirst)
                .then_some(Outcome::AtMost { servings_a_day: Some(5), days: None }),
            provisos: Vec::new(),
            sealed: Reasons::default(),
        }
    }

    #[test]
    fn under_a_flag_nothing_is_milder_than_the_cup_or_than_what_was_flagged() {
        for (of_cup, of_person) in OUTCOMES.iter().flat_map(|a| OUTCOMES.map(|b| (*a, b))) {
            let decided = flagged(decision(of_cup), Flag::of(of_person, (3, 5)), "ansel");
            assert!(decided.outcome.no_milder_than(of_cup), "{of_cup:?} {of_person:?}");
            assert!(decided.outcome.no_milder_than(of_person), "{of_cup:?} {of_person:?}");
            assert_eq!(decided.person, "ansel");
        }
    }

    #[test]
    fn nobody_lifts_what_a_flag_withholds() {
        let decided =
            flagged(decision(Outcome::AskFirst), Flag::of(Outcome::AskFirst, (3, 5)), "ansel");
        assert_eq!(decided.outcome, Outcome::Withhold);
        assert_eq!(decided.once_asked, Some(Outcome::Withhold));
    }
}
