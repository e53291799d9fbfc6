//! What is asked of [`allow`](crate::allow): a part of a plant, at a stand, on a day, by somebody's
//! leave. Whatever nobody knows stays `None`, and is asked for.

use crate::{Measure, Quantity, Survey};
use ground::{Length, LifeForm, Part, Season};
use jiff::civil::Date;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::fmt;

/// What gathering is for, in the law's eyes: a fee changes what the law says.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Purpose {
    /// For those who pick.
    OwnUse,
    /// A lesson without a fee.
    Lesson,
    /// A lesson for a fee.
    PaidLesson,
    /// To sell.
    Sale,
}

impl Purpose {
    /// Every purpose.
    pub const ALL: &[Self] = &[Self::OwnUse, Self::Lesson, Self::PaidLesson, Self::Sale];

    /// The purpose of this word.
    #[must_use]
    pub fn of(word: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|purpose| purpose.word() == word)
    }

    /// The word, as files write it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::OwnUse => "own-use",
            Self::Lesson => "lesson",
            Self::PaidLesson => "paid-lesson",
            Self::Sale => "sale",
        }
    }
}

impl fmt::Display for Purpose {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.word())
    }
}

/// Everything that an allowance depends on, beside the rules.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Asked {
    /// The day on which it would be taken.
    pub on: Date,
    /// The species, by its scientific name.
    pub taxon: String,
    /// The part.
    pub part: Part,
    /// What the answer shall be given in.
    pub measure: Measure,
    /// How the species grows.
    pub life_form: Option<LifeForm>,
    /// The months in which the part can be had.
    pub season: Option<Season>,
    /// What the species' sheet says of its protection by law, where it says anything.
    pub protected: Option<String>,
    /// What it is for.
    pub purpose: Option<Purpose>,
    /// The place.
    pub site: Site,
    /// The population there.
    pub stand: Stand,
    /// By whose leave.
    pub leave: Option<Leave>,
    /// The latest survey of the part there.
    pub survey: Option<Survey>,
    /// What was taken before, there and elsewhere.
    pub history: Option<History>,
}

/// A place and whose it is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Site {
    /// Short name.
    pub name: String,
    /// Whose land it is.
    pub landholder: Option<String>,
    /// Class of land, in the words of the land rules.
    pub land: Option<String>,
    /// Whose law holds, in the words of the land rules.
    pub jurisdiction: Option<String>,
    /// What authorities have agreed to.
    #[serde(default)]
    pub consents: Vec<Consent>,
}

/// The rule that a consent names when it answers what a species' sheet says of protection.
pub const PROTECTED: &str = "protected";

/// An authority's written consent to what a land rule would not allow without it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Consent {
    /// The land rule, by its identifier.
    pub rule: String,
    /// Who gave it.
    pub from: String,
    /// Its last day.
    pub until: Date,
}

/// By whose leave something is gathered.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Leave {
    /// The landholder's.
    Given(Permission),
    /// Nobody's, since the law leaves it to everybody: a land rule must say so.
    PublicRight,
}

/// A landholder's permission. What it does not name it does not cover.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Permission {
    /// Who gave it.
    pub from: String,
    /// Its first day.
    pub given: Date,
    /// Its last day.
    pub until: Date,
    /// For what.
    pub purposes: Vec<Purpose>,
    /// Which species.
    pub taxa: Vec<String>,
    /// Which parts; a part covers what lies in it.
    pub parts: Vec<Part>,
    /// How much in all from its first day on, where it says so.
    pub at_most: Option<Quantity>,
}

/// A population of one species at a site.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Stand {
    /// Short name.
    pub name: String,
    /// How near each hazard is, by its identifier in the rules.
    pub hazards: BTreeMap<String, Nearness>,
    /// Whether the plant grows in water or where it is flooded.
    pub in_water: Option<bool>,
}

/// How near a hazard is to a stand.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Nearness {
    /// Looked for, and not there.
    NotThere,
    /// So far from the nearest plant that would be picked.
    At(Length),
}

/// What was taken before.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct History {
    /// The first day since which everything is written down. What happened before, nobody knows.
    pub since: Date,
    /// Every take since then, at every stand.
    pub takes: Vec<Taken>,
}

/// A take that happened.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Taken {
    /// The day.
    pub on: Date,
    /// At which site.
    pub site: String,
    /// From which stand.
    pub stand: String,
    /// Of which species.
    pub taxon: String,
    /// Of which part.
    pub part: Part,
    /// How much, by everybody together.
    pub amount: Quantity,
}
