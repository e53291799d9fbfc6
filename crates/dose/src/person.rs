//! A person's answers, and what an answer that is missing counts as.

use ground::{Condition, Mass};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// An answer, or that there is none.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
)]
#[serde(rename_all = "kebab-case")]
pub enum Given {
    /// Yes.
    Yes,
    /// No.
    No,
    /// Asked, and rather not said.
    RatherNot,
    /// Not asked, or not answered yet.
    #[default]
    Unanswered,
}

/// An age, as far as rules ask for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum AgeBand {
    /// Under 12 months.
    Infant,
    /// 1 to 3 years.
    Toddler,
    /// 4 to 11 years.
    Child,
    /// 12 to 17 years.
    Adolescent,
    /// 18 years and more.
    Adult,
}

impl AgeBand {
    /// Every band, from the youngest.
    pub const ALL: [Self; 5] =
        [Self::Infant, Self::Toddler, Self::Child, Self::Adolescent, Self::Adult];

    /// The band of an age in whole years.
    #[must_use]
    pub fn of_years(years: u32) -> Self {
        match years {
            0 => Self::Infant,
            1..=3 => Self::Toddler,
            4..=11 => Self::Child,
            12..=17 => Self::Adolescent,
            _ => Self::Adult,
        }
    }

    /// Youngest and oldest in whole years.
    #[must_use]
    pub fn years(self) -> (u8, u8) {
        match self {
            Self::Infant => (0, 0),
            Self::Toddler => (1, 3),
            Self::Child => (4, 11),
            Self::Adolescent => (12, 17),
            Self::Adult => (18, u8::MAX),
        }
    }
}

/// What is known of a person.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Person {
    /// The short name on the lists.
    pub id: String,
    /// Age, where given.
    pub age: Option<AgeBand>,
    /// Body mass, where given.
    pub body_mass: Option<Mass>,
    /// What was said to each question.
    pub said: BTreeMap<Condition, Given>,
}

/// Medicines that are a medicine, whatever was said to the wider question.
const MEDICINES: [Condition; 4] =
    [Condition::Anticoagulant, Condition::HeartMedicine, Condition::Diuretic, Condition::Sedative];

impl Person {
    /// What was said to a question. Ages are answered by the age, and who takes a blood thinner
    /// takes a medicine.
    #[must_use]
    pub fn answer(&self, condition: Condition) -> Given {
        match condition {
            Condition::All => Given::Yes,
            Condition::Under1 => self.under(1),
            Condition::Under4 => self.under(4),
            Condition::Under12 => self.under(12),
            Condition::Under18 => self.under(18),
            Condition::AnyMedicine if MEDICINES.iter().any(|m| self.said(*m) == Given::Yes) => {
                Given::Yes
            }
            other => self.said(other),
        }
    }

    /// Whether the youngest this person may be is under so many years.
    #[must_use]
    pub fn may_be_under(&self, years: u8) -> bool {
        self.age.is_none_or(|band| band.years().0 < years)
    }

    /// Whether only the worst end of every input will do: minors, pregnancy, breast-feeding, and
    /// whoever may be any of these.
    #[must_use]
    pub fn needs_worst_end(&self) -> bool {
        self.may_be_under(18)
            || [Condition::Pregnant, Condition::Breastfeeding]
                .iter()
                .any(|condition| self.answer(*condition) != Given::No)
    }

    fn said(&self, condition: Condition) -> Given {
        self.said.get(&condition).copied().unwrap_or_default()
    }

    fn under(&self, years: u8) -> Given {
        match self.age {
            None => Given::Unanswered,
            Some(band) if band.years().0 < years => Given::Yes,
            Some(_) => Given::No,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_age_answers_every_question_about_ages() {
        let child = Person { age: Some(AgeBand::Child), ..Person::default() };
        assert_eq!(child.answer(Condition::Under4), Given::No);
        assert_eq!(child.answer(Condition::Under12), Given::Yes);
        assert_eq!(Person::default().answer(Condition::Under18), Given::Unanswered);
    }

    #[test]
    fn a_blood_thinner_is_a_medicine_whatever_else_was_said() {
        let mut person = Person::default();
        person.said.insert(Condition::AnyMedicine, Given::No);
        assert_eq!(person.answer(Condition::AnyMedicine), Given::No);
        person.said.insert(Condition::Anticoagulant, Given::Yes);
        assert_eq!(person.answer(Condition::AnyMedicine), Given::Yes);
    }

    #[test]
    fn who_has_not_said_needs_the_worst_end() {
        let mut adult = Person { age: Some(AgeBand::Adult), ..Person::default() };
        assert!(adult.needs_worst_end());
        adult.said.insert(Condition::Pregnant, Given::No);
        adult.said.insert(Condition::Breastfeeding, Given::No);
        assert!(!adult.needs_worst_end());
        adult.age = Some(AgeBand::Adolescent);
        assert!(adult.needs_worst_end());
    }
}
