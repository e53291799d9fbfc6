//! By which names the rows of tables join a plant.

use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// How a row joins a plant, from the closest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Tie {
    /// It names the species.
    Own,
    /// It names its genus, family or aggregate, and holds for every member.
    Wider,
    /// It names a relative with the same active matter: it may stop, and clears nobody.
    Relative,
    /// It names every plant: nobody looked at this one.
    EveryPlant,
}

/// The names by which rows join one species.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Kinship {
    /// Genus, family, aggregate.
    pub wider: BTreeSet<String>,
    /// Relatives whose rows are borrowed.
    pub relatives: BTreeSet<String>,
}

impl Kinship {
    /// How a row with this name joins.
    #[must_use]
    pub fn tie(&self, row: &str) -> Option<Tie> {
        if self.wider.contains(row) {
            Some(Tie::Wider)
        } else if self.relatives.contains(row) {
            Some(Tie::Relative)
        } else {
            None
        }
    }
}
