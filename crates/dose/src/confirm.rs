//! A decision is a proposal until a named person has given their word on it.

use crate::{Decision, HandedOut, Outcome, Strictness};
use ground::{Fault, Faults, Place};
use jiff::civil::Date;
use serde::{Deserialize, Serialize};

/// What a person says to a proposed decision.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Word {
    /// As proposed.
    AsProposed,
    /// Less than proposed.
    Tighter(Outcome),
    /// A clinician was asked, and has no objection.
    Clinician {
        /// What they are: *midwife*, *pharmacist*.
        role: String,
        /// When they said so.
        date: Option<Date>,
        /// Of which preparation they spoke, by the name of the batch.
        preparation: String,
    },
}

/// A named person's word.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Confirmation {
    /// Who gives it.
    pub by: String,
    /// What they say.
    pub word: Word,
}

/// A decision that somebody stands for.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Confirmed {
    /// What may be handed out.
    pub handed_out: HandedOut,
    /// Who stands for it, and what they said.
    pub confirmation: Confirmation,
}

impl Decision {
    /// Takes a named person's word. They may tighten; they may lift *ask first* with a clinician's
    /// word that has role, date and preparation; *withhold* is never lifted.
    ///
    /// # Errors
    /// What the word lacks, or that it would loosen the decision.
    pub fn confirm(&self, confirmation: Confirmation) -> Result<Confirmed, Faults> {
        let mut faults = Faults::none();
        if confirmation.by.trim().is_empty() {
            faults.add(self.fault("confirmation-nobody", "by", ""));
        }
        let outcome = match &confirmation.word {
            Word::AsProposed => self.outcome,
            Word::Tighter(tighter) => {
                if !tighter.no_milder_than(self.outcome) {
                    faults.add(self.fault("confirmation-looser", "word", ""));
                }
                *tighter
            }
            Word::Clinician { role, date, preparation } => {
                self.lifted(role, *date, preparation, &mut faults)
            }
        };
        faults.or(Confirmed { handed_out: HandedOut { outcome, ..self.open() }, confirmation })
    }

    fn lifted(
        &self,
        role: &str,
        date: Option<Date>,
        preparation: &str,
        faults: &mut Faults,
    ) -> Outcome {
        if self.outcome.strictness() == Strictness::Withhold {
            faults.add(self.fault("withhold-is-never-lifted", "word", role));
        }
        if role.trim().is_empty() {
            faults.add(self.fault("clinician-without-role", "role", ""));
        }
        if date.is_none() {
            faults.add(self.fault("clinician-without-date", "date", ""));
        }
        if preparation != self.batch {
            faults.add(self.fault("clinician-spoke-of-another", "preparation", preparation));
        }
        self.once_asked.unwrap_or(self.outcome)
    }

    fn fault(&self, code: &str, field: &str, got: &str) -> Fault {
        let entry = format!("{} / {}", self.person, self.batch);
        Fault::new(code, Place::entry("confirmation", &entry, field), got)
            .with("preparation", self.batch.as_str())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Reasons;

    fn decision(outcome: Outcome) -> Decision {
        Decision {
            person: "A".to_owned(),
            batch: "pot".to_owned(),
            outcome,
            once_asked: (outcome == Outcome::AskFirst)
                .then_some(Outcome::AtMost { servings_a_day: Some(2), days: Some(14) }),
            provisos: Vec::new(),
            sealed: Reasons::default(),
        }
    }

    fn clinician(role: &str, preparation: &str) -> Confirmation {
        let word = Word::Clinician {
            role: role.to_owned(),
            date: Some(jiff::civil::date(2026, 4, 12)),
            preparation: preparation.to_owned(),
        };
        Confirmation { by: "Ines".to_owned(), word }
    }

    fn codes(result: Result<Confirmed, Faults>) -> Vec<String> {
        result.unwrap_err().iter().map(|fault| fault.code.clone()).collect()
    }

    #[test]
    fn ask_first_is_lifted_to_what_the_numbers_allow_and_no_further() {
        let confirmed = decision(Outcome::AskFirst).confirm(clinician("midwife", "pot")).unwrap();
        let left = Outcome::AtMost { servings_a_day: Some(2), days: Some(14) };
        assert_eq!(confirmed.handed_out.outcome, left);
    }

    #[test]
    fn a_clinicians_word_needs_role_and_preparation() {
        let got = codes(decision(Outcome::AskFirst).confirm(clinician(" ", "jar")));
        assert_eq!(got, ["clinician-spoke-of-another", "clinician-without-role"]);
    }

    #[test]
    fn withhold_is_never_lifted() {
        let got = codes(decision(Outcome::Withhold).confirm(clinician("doctor", "pot")));
        assert_eq!(got, ["withhold-is-never-lifted"]);
    }

    #[test]
    fn a_person_may_tighten_and_not_loosen() {
        let at_most = |n| Outcome::AtMost { servings_a_day: Some(n), days: Some(14) };
        let say = |outcome| Confirmation { by: "Ines".to_owned(), word: Word::Tighter(outcome) };
        let proposed = decision(at_most(2));
        assert_eq!(proposed.confirm(say(at_most(1))).unwrap().handed_out.outcome, at_most(1));
        assert!(proposed.confirm(say(Outcome::Withhold)).is_ok());
        assert_eq!(codes(proposed.confirm(say(at_most(3)))), ["confirmation-looser"]);
        let nobody = Confirmation { by: String::new(), word: Word::AsProposed };
        assert_eq!(codes(proposed.confirm(nobody)), ["confirmation-nobody"]);
    }
}
