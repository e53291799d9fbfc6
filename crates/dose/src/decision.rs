//! A decision: what may be handed to one person, and, sealed, why.

use crate::Held;
use ground::{Condition, Sourcing, Text, Working};
use serde::{Deserialize, Serialize};

/// The one order of outcomes: several combine to the greatest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Strictness {
    /// No reason to withhold was found.
    NoReasonFound,
    /// Up to an amount.
    AtMost,
    /// A clinician is asked first.
    AskFirst,
    /// Not for this person.
    Withhold,
}

/// What may be handed to one person.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Outcome {
    /// No reason to withhold was found in the sources, at what is planned.
    NoReasonFound {
        /// Most servings a day that stay within every limit; nothing where no limit binds.
        servings_a_day: Option<u32>,
        /// Most days at a time.
        days: Option<u32>,
    },
    /// Up to an amount.
    AtMost {
        /// Most servings a day; nothing where only days are limited.
        servings_a_day: Option<u32>,
        /// Most days at a time.
        days: Option<u32>,
    },
    /// A clinician is asked first.
    AskFirst,
    /// Not for this person.
    Withhold,
}

impl Outcome {
    /// Where it stands in the order.
    #[must_use]
    pub fn strictness(self) -> Strictness {
        match self {
            Self::NoReasonFound { .. } => Strictness::NoReasonFound,
            Self::AtMost { .. } => Strictness::AtMost,
            Self::AskFirst => Strictness::AskFirst,
            Self::Withhold => Strictness::Withhold,
        }
    }

    /// Most servings a day that may be handed out: none while somebody must be asked.
    #[must_use]
    pub fn most_servings(self) -> u32 {
        match self {
            Self::NoReasonFound { servings_a_day, .. } | Self::AtMost { servings_a_day, .. } => {
                servings_a_day.unwrap_or(u32::MAX)
            }
            Self::AskFirst | Self::Withhold => 0,
        }
    }

    /// Most days at a time.
    #[must_use]
    pub fn most_days(self) -> u32 {
        match self {
            Self::NoReasonFound { days, .. } | Self::AtMost { days, .. } => {
                days.unwrap_or(u32::MAX)
            }
            Self::AskFirst | Self::Withhold => 0,
        }
    }

    /// Whether it allows no more than the other in any respect.
    #[must_use]
    pub fn no_milder_than(self, other: Self) -> bool {
        self.strictness() >= other.strictness()
            && self.most_servings() <= other.most_servings()
            && self.most_days() <= other.most_days()
    }

    /// The message that says it.
    #[must_use]
    pub fn text(self) -> Text {
        let (id, servings, days) = match self {
            Self::NoReasonFound { servings_a_day, days } => {
                ("dose-no-reason-found", servings_a_day, days)
            }
            Self::AtMost { servings_a_day, days } => ("dose-at-most", servings_a_day, days),
            Self::AskFirst => return Text::new("dose-ask-first"),
            Self::Withhold => return Text::new("dose-withhold"),
        };
        let ending = match (servings, days) {
            (None, None) => "",
            (Some(_), None) => "-servings",
            (None, Some(_)) => "-days",
            (Some(_), Some(_)) => "-servings-days",
        };
        let mut text = Text::new(format!("{id}{ending}"));
        if let Some(servings) = servings {
            text = text.with("servings", servings);
        }
        if let Some(days) = days {
            text = text.with("days", days);
        }
        text
    }
}

/// Which part of the decision a reason belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Rule {
    /// The plant is determined and the lot sorted.
    Identity,
    /// What is known of this part in this preparation.
    Part,
    /// Cautions.
    Caution,
    /// Usual amounts.
    Amount,
    /// Limits.
    Limit,
    /// A constituent of which nobody knows how much there is.
    Unmeasured,
    /// What somebody allowed who knew the answers, where they are not there.
    Flag,
}

/// One reason. It may tell of somebody's health: it stands on the sealed list only.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Reason {
    /// What it asks for by itself.
    pub asks: Strictness,
    /// Which part of the decision it belongs to.
    pub rule: Rule,
    /// What is said.
    pub text: Text,
    /// Where it comes from; nothing where it follows from what is missing.
    pub from: Option<Sourcing>,
}

/// A question that is still open.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Question {
    /// The person's age.
    Age,
    /// The person's body mass.
    BodyMass,
    /// Something about the person.
    Condition(Condition),
    /// The stage or state of a plant's part.
    Stage {
        /// Which plant.
        taxon: String,
        /// Which stage.
        stage: String,
    },
}

impl Question {
    /// The question in words.
    #[must_use]
    pub fn text(&self) -> Text {
        match self {
            Self::Age => Text::new("dose-open-age"),
            Self::BodyMass => Text::new("dose-open-body-mass"),
            Self::Condition(condition) => Text::new(format!("condition-{}", condition.word())),
            Self::Stage { taxon, stage } => {
                Text::new("dose-open-stage").taxon("plant", taxon.as_str()).with("stage", &**stage)
            }
        }
    }
}

/// Why a decision came out as it did. Sealed: for the leader, on the sealed list.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Reasons {
    /// Every reason, the strictest first.
    pub reasons: Vec<Reason>,
    /// Questions whose answers would have been weighed.
    pub open: Vec<Question>,
    /// Every limit, with what the person would take.
    pub held: Vec<Held>,
    /// How the sums came about.
    pub workings: Vec<Working>,
}

/// What one person may be handed of one cup.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Decision {
    /// The person.
    pub person: String,
    /// The batch.
    pub batch: String,
    /// What may be handed out.
    pub outcome: Outcome,
    /// What would remain if a clinician had no objection; nothing where that changes nothing.
    pub once_asked: Option<Outcome>,
    /// What must be seen to on the day for the outcome to hold.
    pub provisos: Vec<Text>,
    /// Why.
    pub sealed: Reasons,
}

/// The part of a decision that everybody may see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct HandedOut {
    /// The person.
    pub person: String,
    /// The batch.
    pub batch: String,
    /// What may be handed out.
    pub outcome: Outcome,
    /// What must be seen to on the day for the outcome to hold.
    pub provisos: Vec<Text>,
}

impl Decision {
    /// The decision without its reasons.
    #[must_use]
    pub fn open(&self) -> HandedOut {
        HandedOut {
            person: self.person.clone(),
            batch: self.batch.clone(),
            outcome: self.outcome,
            provisos: self.provisos.clone(),
        }
    }
}
