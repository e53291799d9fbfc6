//! Cells: what is known of one character of one taxon.

use ground::{SourceId, Standing};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

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
