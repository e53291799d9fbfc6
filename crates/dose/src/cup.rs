//! A cup: one preparation as one person is handed it, and everything that went in.

use crate::{Given, SubstanceId};
use ground::{Dist, Dried, Finite, Form, Fresh, Mass, Part, Volume};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// A preparation as one person takes it: planned, or taken already, or their own at home.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Cup {
    /// The batch it comes from: its transfer is one quantity.
    pub batch: String,
    /// Who spooned the herb in: the error of the spoon is theirs.
    pub cook: String,
    /// What it is.
    pub form: Form,
    /// What went in.
    pub herbs: Vec<Herb>,
    /// Grams in a serving of what was added or made: `ethanol`, `free-sugars`, `honey`.
    pub holds: BTreeMap<SubstanceId, Dist>,
    /// Volume of a serving.
    pub volume: Option<Volume>,
    /// Mass of a serving, asked for only when it is sold.
    pub mass: Option<Mass>,
    /// Servings in a day.
    pub servings_a_day: u32,
    /// For how many days it is meant.
    pub days: u32,
    /// How many days running it was taken before.
    pub days_before: u32,
}

/// One plant in a cup.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Herb {
    /// The species.
    pub taxon: String,
    /// Its part.
    pub part: Part,
    /// The lot it comes from: its content and moisture are one quantity.
    pub lot: String,
    /// How much of it is in one serving.
    pub portion: Portion,
    /// Share of water in the fresh herb, by mass. Nothing: fresh herb counts as if it were dry.
    pub moisture: Option<Dist>,
    /// Whether that water is supposed, and nobody weighed it: then it clears nobody.
    pub moisture_supposed: bool,
    /// Whether the plant was determined; *no* means ruled out.
    pub determined: Given,
    /// Whether every piece of the lot was gone through by two people, weeds looked for, and nothing
    /// harmful left; *no* means that something was found.
    pub sorted: Given,
    /// Stages that somebody confirmed or denied, in the words of the part rows.
    pub stages: BTreeMap<String, Given>,
    /// The stage that is meant, before the day.
    pub planned_stage: Option<String>,
}

/// Whether herb is weighed with its water.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum HerbState {
    /// As gathered.
    Fresh,
    /// Dried.
    Dried,
}

/// How a portion was measured: it decides which portions err together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum HowMeasured {
    /// On a scale: each serving errs for itself.
    Weighed,
    /// With a spoon or by hand: all that one cook measures errs alike.
    Spooned,
}

/// How much herb is in one serving.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Portion {
    /// Fresh or dried.
    pub state: HerbState,
    /// Grams; nothing when that is not known.
    pub grams: Option<Dist>,
    /// How it was measured.
    pub how: HowMeasured,
}

impl Portion {
    /// So much fresh herb, weighed.
    #[must_use]
    pub fn fresh(mass: Mass<Fresh>) -> Self {
        Self::weighed(HerbState::Fresh, mass.g())
    }

    /// So much dried herb, weighed.
    #[must_use]
    pub fn dried(mass: Mass<Dried>) -> Self {
        Self::weighed(HerbState::Dried, mass.g())
    }

    fn weighed(state: HerbState, grams: f64) -> Self {
        let grams = Finite::new(grams).map(Dist::Exact);
        Self { state, grams, how: HowMeasured::Weighed }
    }
}

impl Cup {
    /// Whether any of it is swallowed or breathed in, so that limits by mouth hold.
    #[must_use]
    pub fn inward(&self) -> bool {
        !Form::Outward.contains(self.form)
    }
}
