//! What people are asked before they come: only what some rule needs that joins one of the cups.

use super::people::{People, same_days};
use crate::outing::Make;
use dose::{Asked, Cup, Intakes, Person, Question, Rule, asked};
use ground::{Answer, Condition, Faults};
use prepare::Brew;
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};

/// The form that is filled in by whoever comes. It hangs on dishes and rules, and on nobody's answers.
#[derive(Clone, Debug, Serialize)]
pub struct Intake {
    /// What is asked, topic by topic.
    pub questions: Vec<IntakeQuestion>,
}

/// One question, and why it is asked: never of whom.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct IntakeQuestion {
    /// What it is about.
    pub topic: Topic,
    /// The question.
    pub asks: Question,
    /// Which kinds of rule ask it.
    pub by: BTreeSet<Rule>,
    /// The dishes that it bears on, by short name.
    pub makes: BTreeSet<String>,
}

/// What a question is about, in the order in which people are asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Topic {
    /// Age and body weight.
    You,
    /// Pregnancy and breast-feeding.
    Expecting,
    /// Medicines, by group.
    Medicines,
    /// Allergies, by plant family.
    Allergies,
    /// Illnesses.
    Illnesses,
    /// What somebody means to do or not to do.
    Plans,
}

impl Topic {
    /// What a question is about.
    #[must_use]
    pub fn of(question: &Question) -> Self {
        let Question::Condition(condition) = question else { return Self::You };
        match condition {
            Condition::Pregnant | Condition::Breastfeeding => Self::Expecting,
            Condition::AnyMedicine
            | Condition::Anticoagulant
            | Condition::HeartMedicine
            | Condition::Diuretic
            | Condition::Sedative => Self::Medicines,
            Condition::Salicylate
            | Condition::Asteraceae
            | Condition::Apiaceae
            | Condition::Lamiaceae
            | Condition::BirchPollen => Self::Allergies,
            Condition::Surgery | Condition::Sun | Condition::NoAlcohol | Condition::Driver => {
                Self::Plans
            }
            Condition::All
            | Condition::Under18
            | Condition::Under12
            | Condition::Under4
            | Condition::Under1 => Self::You,
            Condition::HeartDisease
            | Condition::Hypertension
            | Condition::Kidney
            | Condition::OxalateStones
            | Condition::Liver
            | Condition::BileDuct
            | Condition::Gallstones
            | Condition::Ulcer
            | Condition::Epilepsy
            | Condition::Diabetes
            | Condition::G6pd
            | Condition::Hormone
            | Condition::Iron => Self::Illnesses,
        }
    }
}

impl People<'_> {
    /// The form of the outing.
    pub(super) fn intake(
        &self,
        worked: &BTreeMap<String, Answer<Brew>>,
        intakes: &mut Intakes,
    ) -> Result<Intake, Faults> {
        let mut bearing: BTreeMap<Question, (BTreeSet<Rule>, BTreeSet<String>)> = BTreeMap::new();
        for make in self.wishes.makes.values() {
            for (question, rules) in self.asked_for(make, worked, intakes)? {
                let (by, makes) = bearing.entry(question).or_default();
                by.extend(rules);
                makes.insert(make.name.clone());
            }
        }
        let question = |(asks, (by, makes))| {
            let topic = Topic::of(&asks);
            IntakeQuestion { topic, asks, by, makes }
        };
        let mut questions: Vec<_> = bearing.into_iter().map(question).collect();
        questions.sort();
        Ok(Intake { questions })
    }

    /// What a dish asks of whoever has it, and all the others of the same days beside it.
    fn asked_for(
        &self,
        make: &Make,
        worked: &BTreeMap<String, Answer<Brew>>,
        intakes: &mut Intakes,
    ) -> Result<Asked, Faults> {
        let cup = |make: &Make| self.cup(make, worked.get(&make.name));
        let others = self.wishes.makes.values();
        let others = others.filter(|other| other.name != make.name && same_days(make, other));
        let beside: Vec<Cup> = others.map(cup).collect();
        let (person, cup) = (Person::default(), cup(make));
        asked(&self.case(&person, &cup, &beside), intakes)
    }
}
