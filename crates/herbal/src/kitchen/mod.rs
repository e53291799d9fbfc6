//! Recipes, spoon weights, drying and keeping.

mod read;
mod rows;

use crate::file::Reader;
use ground::{Answer, Part, Refusal, Sourced, Sourcing, Temperature, Text};
use prepare::sugar::WaterActivity;
use prepare::{DryingYield, Larder, Moisture, MoistureRange, Recipe};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Recipes, spoon weights, drying and keeping.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Kitchen {
    /// Recipes, by name.
    pub recipes: BTreeMap<String, Recipe>,
    /// What working a recipe needs: what herb keeps, spoons, stove, rules of keeping, notes.
    pub larder: Larder,
    /// What drying leaves, by name.
    pub yields: BTreeMap<String, DryingYield>,
    /// How dry the herb of those yields is taken to be.
    pub dried_to: Option<Sourced<Moisture>>,
    /// How dry herb must be to keep, by name.
    pub targets: BTreeMap<String, DryingTarget>,
    /// How warm herb may be dried, by name.
    pub warmths: BTreeMap<String, Warmth>,
    /// What grows from which water activity on, by name.
    pub growth: BTreeMap<String, Growth>,
}

/// How dry herb must be to keep.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct DryingTarget {
    /// For what, in a plain line.
    pub says: String,
    /// For which parts.
    pub parts: Vec<Part>,
    /// Driest and wettest that is named.
    pub moisture: MoistureRange,
    /// Where it comes from.
    pub from: Sourcing,
}

/// How warm herb may be dried.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Warmth {
    /// For what, in a plain line.
    pub says: String,
    /// From, where that is named.
    #[serde(rename = "least_c")]
    pub least: Option<Temperature>,
    /// Up to.
    #[serde(rename = "most_c")]
    pub most: Temperature,
    /// Where it comes from.
    pub from: Sourcing,
}

/// What grows from a water activity on.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Growth {
    /// What, in a plain line.
    pub says: String,
    /// From this activity on.
    pub activity_from: WaterActivity,
    /// And only above this pH, where that is named.
    pub ph_above: Option<Ph>,
    /// Where it comes from.
    pub from: Sourcing,
}

/// A pH.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Ph(
    /// The number.
    pub f64,
);

impl Kitchen {
    pub(crate) fn read(reader: &mut Reader<'_>) -> Self {
        Self::default().overlaid(reader)
    }

    /// The moisture of fresh herb that published yields of drying imply: from the driest to the
    /// wettest of those that speak of this plant and part, or else of the part of any plant.
    ///
    /// It is an estimate for want of a weighing. Refused where no yield speaks of the part.
    pub fn fresh_moisture(&self, taxon: &str, part: Part) -> Answer<MoistureRange> {
        let of_part = |known: &&DryingYield| known.part.meets(part);
        let named = |known: &&DryingYield| known.taxon.as_deref() == Some(taxon);
        let any = |known: &&DryingYield| known.taxon.is_none();
        let parts: Vec<_> = self.yields.values().filter(of_part).collect();
        let mut found: Vec<_> = parts.iter().copied().filter(named).collect();
        if found.is_empty() {
            found = parts.into_iter().filter(any).collect();
        }
        let implied = self.dried_to.iter().flat_map(|dried_to| {
            let ranges = found.iter().map(|known| known.fresh_moisture(dried_to.value));
            ranges.filter_map(|range| range.known().copied()).collect::<Vec<_>>()
        });
        let range = implied.reduce(|a, b| MoistureRange {
            low: if b.low < a.low { b.low } else { a.low },
            high: if b.high > a.high { b.high } else { a.high },
        });
        let refusal = || {
            let said = |id: &str| Text::new(id).taxon("taxon", taxon).with("part", part.word());
            let why = said("prepare-refused-no-yield");
            Refusal::new(why, said("prepare-settle-moisture-unknown"))
        };
        range.ok_or_else(refusal).into()
    }

    /// What grows at a water activity, the thirstiest first.
    pub fn growing_at(&self, activity: WaterActivity) -> Vec<&Growth> {
        let grows = |growth: &&Growth| activity >= growth.activity_from;
        let mut found: Vec<_> = self.growth.values().filter(grows).collect();
        found.sort_by(|a, b| b.activity_from.0.total_cmp(&a.activity_from.0));
        found
    }
}
