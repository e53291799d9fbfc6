//! Taxa: their harm, where they grow, and what they are taken for.

use ground::{Harm, Organ, Region, Season, Standing};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// A taxon of the table.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Taxon {
    /// Its scientific name, without authority.
    pub name: String,
    /// How badly it can hurt whoever takes it for something else.
    pub harm: Harm,
    /// Where its sheet says it grows.
    pub regions: Vec<Region>,
    /// What is known of relatives that have no sheet.
    pub relatives: Relatives,
    /// The aggregate to which one determines, where its members share use and harm.
    pub aggregate: Option<String>,
    /// When an organ can be seen, where the sheet says so; an organ that is absent here can be seen
    /// all year.
    pub seasons: BTreeMap<Organ, Season>,
    /// The plants it is taken for, in the order of the sheet.
    pub look_alikes: Vec<LookAlike>,
    /// Characters that its sheet says must be looked at, by name; empty when it says none.
    pub must_look: Vec<String>,
}

/// What is known of relatives that have no sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Relatives {
    /// What is said of them.
    pub statement: RelativesStatement,
    /// How far that may be trusted.
    pub standing: Standing,
}

impl Relatives {
    /// What may be built on: a statement that is only remembered is no better than none.
    #[must_use]
    pub fn trusted(self) -> RelativesStatement {
        if self.standing.may_clear() { self.statement } else { RelativesStatement::UnlistedUnknown }
    }
}

/// What a sheet says of relatives that have none.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum RelativesStatement {
    /// There are none in the region.
    AllListed,
    /// There are some; they share use and harm.
    UnlistedAlike,
    /// There are some that do not, or may not, share them.
    UnlistedUnknown,
}

/// A plant that a taxon is taken for.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct LookAlike {
    /// Its scientific name; a name without a row in the table counts as deadly.
    pub name: String,
    /// The characters said to tell the two apart, by name.
    pub tells: Vec<String>,
    /// Whether poisonings by this mix-up are published.
    pub confirmed: bool,
}
