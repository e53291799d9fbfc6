//! Everything that decisions rest on, in one place.

use crate::{
    AgeBand, Body, Caution, Content, Kinship, Limit, PartRow, Posology, Substance, SubstanceId, Tie,
};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Rows of parts, cautions, usual amounts, contents, limits, and what they join by.
///
/// The order of rows changes nothing: whoever reads them in sorts them by identifier.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Table {
    /// Harm and use by part.
    pub parts: Vec<PartRow>,
    /// Who should not have what.
    pub cautions: Vec<Caution>,
    /// Usual amounts.
    pub posology: Vec<Posology>,
    /// What parts hold.
    pub contents: Vec<Content>,
    /// What is held against what.
    pub limits: Vec<Limit>,
    /// What is counted.
    pub substances: BTreeMap<SubstanceId, Substance>,
    /// Body mass by age where somebody's is not known.
    pub bodies: BTreeMap<AgeBand, Body>,
    /// By which names rows join a species.
    pub kin: BTreeMap<String, Kinship>,
}

impl Table {
    /// The taxon of a rule that holds for every plant.
    pub const EVERY_PLANT: &str = "*";

    /// How a row that names `row` joins a plant.
    #[must_use]
    pub fn tie(&self, row: &str, plant: &str) -> Option<Tie> {
        self.ties(plant)(row)
    }

    /// How rows join a plant, by the taxon that each names.
    pub(crate) fn ties<'a>(&'a self, plant: &'a str) -> impl Fn(&str) -> Option<Tie> + use<'a> {
        let kin = self.kin.get(plant);
        move |row| match kin {
            _ if row == Self::EVERY_PLANT => Some(Tie::EveryPlant),
            _ if row == plant => Some(Tie::Own),
            Some(kin) => kin.tie(row),
            // Nobody told its kin: the genus stands in its name.
            None => (plant.split(' ').next() == Some(row)).then_some(Tie::Wider),
        }
    }

    /// How many grams of `counted` stand for a gram of `substance`; nothing when it is no part of it.
    #[must_use]
    pub fn counts(&self, substance: &SubstanceId, counted: &SubstanceId) -> Option<f64> {
        if substance == counted {
            return Some(1.0);
        }
        let row = self.substances.get(substance)?;
        let found = row.counts_as.iter().find(|(other, _)| other == counted);
        found.map(|(_, factor)| factor.get())
    }

    /// Whether authorities know no threshold for a substance. One that is not listed has none.
    #[must_use]
    pub fn no_safe_level(&self, substance: &SubstanceId) -> bool {
        self.substances.get(substance).is_none_or(|row| row.no_safe_level)
    }

    /// What people call a substance.
    #[must_use]
    pub fn name<'a>(&'a self, substance: &'a SubstanceId) -> &'a str {
        self.substances.get(substance).map_or(&substance.0, |row| &row.name)
    }
}
