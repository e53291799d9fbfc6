//! What the kitchen knows: what spent herb keeps, what a spoon holds, how a pot steams, how things
//! keep.

use crate::keeping::KeepingRule;
use crate::refuse::{Known, refuse, with};
use crate::{HerbState, Moisture, MoistureRange, Recipe, Stove};
use ground::{Form, KitchenMeasure, Mass, MassFraction, MeasureSystem, Part, Sourced, Sourcing};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// The facts that working a recipe needs. An empty one answers little: what is missing is refused.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Larder {
    /// What spent herb keeps, by the name that recipes use.
    pub retentions: BTreeMap<String, Retention>,
    /// What spoons of herb weigh, by name.
    pub spoons: BTreeMap<String, SpoonWeight>,
    /// How a pot loses water.
    pub stove: Option<Stove>,
    /// How preparations keep.
    pub keeping: Vec<KeepingRule>,
    /// What to know about pots, fire and spirit.
    pub notes: Vec<KitchenNote>,
}

/// Liquid that spent herb keeps.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Retention {
    /// Of what herb, in a plain line.
    pub says: String,
    /// How much.
    pub keeps: Holds,
    /// For each gram of what.
    pub basis: HerbBasis,
    /// Where it comes from.
    pub from: Sourcing,
}

/// Millilitres of liquid for each gram of herb.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Holds(
    /// Millilitres in a gram.
    pub f64,
);

/// By which weight of herb a retention counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum HerbBasis {
    /// Herb without any water. Its own water joins the liquid.
    Solids,
    /// Herb as weighed. Its own water stays in it, and the retention counts what it takes up
    /// besides.
    Weighed,
}

/// What a level spoon of something weighs.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SpoonWeight {
    /// What is weighed, such as `spearmint, dried`.
    pub what: String,
    /// The spoon or cup that was weighed, level.
    pub measure: KitchenMeasure,
    /// Whose it was.
    pub system: MeasureSystem,
    /// What it weighed.
    #[serde(rename = "weight_g")]
    pub weight: Mass,
    /// How far another spoonful may lie off, as a share of the weight.
    pub spread: Sourced<MassFraction>,
    /// Where it comes from.
    pub from: Sourcing,
}

impl SpoonWeight {
    /// Grams of a millilitre, least and most.
    pub(crate) fn grams_per_ml(&self) -> Known<[f64; 3]> {
        let Some(size) = self.measure.volume(self.system) else {
            let why = refuse("prepare-refused-no-such-spoon", "prepare-settle-weigh");
            return Err(with(why, "what", self.what.as_str()));
        };
        let each = self.weight.g() / size.ml();
        let spread = self.spread.value.share();
        Ok([each * (1.0 - spread), each, each * (1.0 + spread)])
    }
}

/// A published yield of drying.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct DryingYield {
    /// The plant, as a scientific name; none where the table speaks of any.
    #[serde(default)]
    pub taxon: Option<String>,
    /// The part.
    pub part: Part,
    /// Dried herb from fresh, least.
    pub least: MassFraction,
    /// Dried herb from fresh, most.
    pub most: MassFraction,
    /// Where it comes from.
    pub from: Sourcing,
}

impl DryingYield {
    /// The moisture of the fresh herb that the yield implies when it was dried to `dried_to`. The
    /// tables do not say how dry theirs was, so this is an estimate and a range.
    pub fn fresh_moisture(&self, dried_to: Moisture) -> ground::Answer<MoistureRange> {
        let at = |dried: MassFraction| Moisture::from_yield(dried, dried_to);
        at(self.most).and_then(|low| at(self.least).map(|high| MoistureRange { low, high }))
    }
}

/// Something to know about pots, fire or spirit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct KitchenNote {
    /// Its name.
    pub id: String,
    /// What to know, in a plain line.
    pub says: String,
    /// For which preparations.
    pub forms: Vec<Form>,
    /// For which state of the herb; for either when left out.
    #[serde(default)]
    pub state: Option<HerbState>,
    /// For this recipe alone, where it names one.
    #[serde(default)]
    pub recipe: Option<String>,
    /// Where it comes from.
    pub from: Sourcing,
}

impl KitchenNote {
    /// Whether it belongs on the page of a preparation.
    #[must_use]
    pub fn joins(&self, recipe: &Recipe, state: HerbState) -> bool {
        let formed = self.forms.iter().any(|of| of.contains(recipe.form));
        let named = self.recipe.as_ref().is_none_or(|of| *of == recipe.id);
        formed && named && self.state.is_none_or(|of| of == state)
    }
}
