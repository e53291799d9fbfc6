//! The table that judging works on: taxa, characters, and what is known of each pair.

use ground::{Harm, Organ, Region, Season, SourceId, Standing};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// A character: something that can be looked at, felt, smelt, counted or measured.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Character {
    /// Its name, such as `leaf_margin`.
    pub id: String,
    /// What can be said of it.
    pub kind: Kind,
    /// The organ it belongs to.
    pub organ: Organ,
    /// Characters of one correlation group count as one piece of evidence.
    pub group: String,
    /// The sense that reads it.
    pub sense: Sense,
    /// What it takes besides eyes and hands.
    pub tool: Tool,
    /// What reading it does to the plant.
    pub spoils: Spoils,
    /// Seconds that reading it takes.
    pub seconds: u16,
}

/// What can be said of a character.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Kind {
    /// One of a closed list of states.
    States(Vec<State>),
    /// A length in millimetres.
    Length,
    /// A number of things.
    Count,
}

/// A state of a character.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct State {
    /// Its name, such as `serrate`.
    pub id: String,
    /// The more general state that it is a kind of: `palmate` veins are a kind of `netted`. A state
    /// and its kind are no difference.
    pub kind_of: Option<String>,
    /// The states that people take it for. A misreading falls on these; between other states it is
    /// rare.
    pub taken_for: Vec<String>,
}

/// The sense that reads a character.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Sense {
    /// Looking.
    Sight,
    /// Feeling.
    Touch,
    /// Smelling: counts least, since the last plant stays on the fingers.
    Smell,
    /// Measuring or counting.
    Measure,
}

/// What reading a character takes besides eyes and hands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Tool {
    /// Nothing.
    None,
    /// A ruler.
    Ruler,
    /// A hand lens.
    Lens,
    /// A knife.
    Knife,
    /// A spade.
    Spade,
}

/// What reading a character does to the plant.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Spoils {
    /// Nothing.
    Nothing,
    /// A leaf, flower or fruit is bruised or picked.
    Piece,
    /// A stem is cut.
    Stem,
    /// The plant is dug up.
    Plant,
}

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

/// What is known of one character of one taxon.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Cell {
    /// What is said.
    pub value: Value,
    /// Standing of the main statement: what is seen always or usually, the ordinary range.
    pub standing: Standing,
    /// Standing of the rest: what is seen sometimes or rarely, the outer limits.
    pub rare_standing: Standing,
    /// The row it was taken from.
    pub from: Rank,
    /// Where it was read.
    pub sources: Vec<SourceId>,
}

/// What is said of a character.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Value {
    /// States by how often they are seen, by name.
    States {
        /// The only ones seen.
        always: Vec<String>,
        /// Seen as a rule.
        usually: Vec<String>,
        /// Seen now and then.
        sometimes: Vec<String>,
        /// Seen seldom.
        rarely: Vec<String>,
    },
    /// Share of specimens that show each state, summing to 1: for tables of frequencies.
    Shares(BTreeMap<String, f64>),
    /// Lengths in millimetres, or counts.
    Range {
        /// Ordinary range.
        ordinary: (f64, f64),
        /// Outer limits, where said.
        extreme: Option<(f64, f64)>,
    },
}

/// The row that a cell was taken from: what a genus or a family says holds for all its members.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Rank {
    /// The species' own sheet.
    Species,
    /// Its genus.
    Genus,
    /// Its family.
    Family,
}

/// Taxa, characters and cells, each sorted by name.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Matrix {
    characters: Vec<Character>,
    taxa: Vec<Taxon>,
    /// One row a taxon, one entry a character.
    cells: Vec<Vec<Option<Cell>>>,
}
