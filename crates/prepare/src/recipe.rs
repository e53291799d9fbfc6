//! Recipes: rows of fixed operations, with no language of their own.

mod check;

use crate::Lid;
use ground::{Dimension, Form, SaidUnit, Sourcing, Spoken};
use serde::{Deserialize, Serialize};

/// A recipe.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Recipe {
    /// The name that files and commands use.
    pub id: String,
    /// What people call it.
    pub name: String,
    /// What it makes; decides which rules of keeping, cautions and limits join.
    pub form: Form,
    /// What one person is handed: a volume of a drink, a mass of a dish.
    pub serving: Spoken,
    /// How many servings a day the recipe speaks of, where it speaks of that.
    #[serde(default)]
    pub times_a_day: Option<u32>,
    /// What is done, in order.
    pub steps: Vec<Step>,
    /// Where the recipe comes from.
    pub from: Sourcing,
}

/// One operation.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum Step {
    /// Put something into the pot or jar.
    Add(Ingredient),
    /// Stir something into what was strained; the same sum as adding.
    Mix(Ingredient),
    /// Let it draw.
    Steep {
        /// For how long.
        time: Spoken,
        /// Covered or not; said in the steps.
        lid: Lid,
    },
    /// Keep it just boiling for a time, so that water steams off.
    Simmer {
        /// For how long.
        time: Spoken,
        /// Covered or not.
        lid: Lid,
    },
    /// Simmer it open until so much of it is left.
    Reduce {
        /// The share that is left, such as `2/3`.
        to: Spoken,
    },
    /// Pour off through a cloth; the herb keeps some.
    Strain {
        /// How much it keeps: a row of the larder.
        holds: String,
    },
    /// Press the herb out; it keeps less.
    Press {
        /// How much it keeps: a row of the larder.
        holds: String,
    },
    /// Stir in sugar up to a sweetness.
    Dissolve {
        /// The sweetness, in °Bx or % mass.
        to: Spoken,
        /// The share of the liquid that is sweetened; the rest is set aside. All of it when left
        /// out.
        #[serde(default)]
        of: Option<Spoken>,
    },
    /// Dry the herb.
    Dry {
        /// To this moisture, in per cent of what is weighed.
        to: Spoken,
    },
    /// Leave it alone.
    Rest {
        /// For how long.
        time: Spoken,
    },
}

/// Something that goes in.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Ingredient {
    /// What it is.
    pub what: What,
    /// How the recipe calls it, such as `chopped leaf`.
    #[serde(default)]
    pub name: Option<String>,
    /// How much.
    pub amount: Spoken,
    /// Of herb: in which state; left out where the recipe takes either, and then asked.
    #[serde(default)]
    pub state: Option<HerbState>,
    /// Of spirit: how strong.
    #[serde(default)]
    pub strength: Option<Spoken>,
    /// Of water: poured boiling or cold.
    #[serde(default)]
    pub heat: Option<Heat>,
}

/// What an ingredient is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum What {
    /// The plant.
    Herb,
    /// Water.
    Water,
    /// Ethanol and water, fit to drink.
    Spirit,
    /// Sucrose.
    Sugar,
    /// Any other food of a dish.
    Other,
}

impl What {
    /// Whether an amount of it may be written so: herb by weight or with spoons, liquids by volume, the
    /// rest by weight.
    #[must_use]
    pub fn is_measured_by(self, said: &Spoken) -> bool {
        match (self, said.unit) {
            (Self::Herb, SaidUnit::Kitchen(_)) => true,
            (Self::Herb | Self::Sugar | Self::Other, _) => said.measures(Dimension::Mass),
            (Self::Water | Self::Spirit, _) => said.measures(Dimension::Volume),
        }
    }

    /// The word, as files write it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Herb => "herb",
            Self::Water => "water",
            Self::Spirit => "spirit",
            Self::Sugar => "sugar",
            Self::Other => "other",
        }
    }
}

/// The state in which herb is weighed. There is no default: dried leaf is four to six times as
/// strong as fresh.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum HerbState {
    /// As gathered.
    Fresh,
    /// Dried, as weighed, with the 8 to 12 % of water it keeps.
    Dried,
}

impl HerbState {
    /// The word, as files write it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Fresh => "fresh",
            Self::Dried => "dried",
        }
    }
}

/// How hot water is poured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Heat {
    /// Cold.
    Cold,
    /// Boiling.
    Boiling,
}

impl Recipe {
    /// Everything that goes in, in order.
    pub fn ingredients(&self) -> impl Iterator<Item = &Ingredient> {
        self.steps.iter().filter_map(Step::ingredient)
    }

    /// Whether this goes in by an amount.
    pub(crate) fn takes(&self, what: What) -> bool {
        self.ingredients().any(|ingredient| ingredient.what == what)
    }

    /// Whether sugar is stirred in up to a sweetness.
    pub(crate) fn dissolves(&self) -> bool {
        self.steps.iter().any(|step| matches!(step, Step::Dissolve { .. }))
    }

    /// The rows of the larder that say what the spent herb keeps.
    pub fn holds(&self) -> impl Iterator<Item = &str> {
        self.steps.iter().filter_map(|step| match step {
            Step::Strain { holds } | Step::Press { holds } => Some(holds.as_str()),
            _ => None,
        })
    }
}

impl Step {
    /// What it puts in, if it does.
    #[must_use]
    pub fn ingredient(&self) -> Option<&Ingredient> {
        match self {
            Self::Add(what) | Self::Mix(what) => Some(what),
            _ => None,
        }
    }

    /// Whether it stands on the fire.
    pub(crate) fn heats(&self) -> bool {
        matches!(self, Self::Simmer { .. } | Self::Reduce { .. })
    }

    /// The word for it, as files write it.
    #[must_use]
    pub fn word(&self) -> &'static str {
        match self {
            Self::Add(_) => "add",
            Self::Mix(_) => "mix",
            Self::Steep { .. } => "steep",
            Self::Simmer { .. } => "simmer",
            Self::Reduce { .. } => "reduce",
            Self::Strain { .. } => "strain",
            Self::Press { .. } => "press",
            Self::Dissolve { .. } => "dissolve",
            Self::Dry { .. } => "dry",
            Self::Rest { .. } => "rest",
        }
    }
}
