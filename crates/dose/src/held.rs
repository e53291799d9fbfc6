//! What a sum came to against a limit.

use crate::{Basis, Bound, LimitUse, SubstanceId, Window};
use ground::{Finite, Sourcing, Spread};
use serde::{Deserialize, Serialize};

/// How a sum stands against a limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Passed {
    /// At or below it.
    Within,
    /// Above it.
    Above,
    /// It cannot be told.
    Unknown,
    /// There is nothing to hold it against.
    NotHeld,
}

/// One limit, whether it binds or is only shown, beside what the person would take.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Held {
    /// The limit.
    pub limit: String,
    /// For what.
    pub substance: SubstanceId,
    /// Over what it sums.
    pub window: Window,
    /// What kind of question it answers.
    pub basis: Basis,
    /// What it is used for.
    pub used: LimitUse,
    /// Whether it was set for people like this one.
    pub covers: bool,
    /// What it comes to for this person, in grams over its window.
    pub limit_g: Option<Finite>,
    /// Which end of the sum is held against it.
    pub bound: Bound,
    /// That end, in grams over the window, with what is planned.
    pub sum_g: Option<Finite>,
    /// The whole doubt about the sum, in grams.
    pub spread_g: Option<Spread>,
    /// How it stands.
    pub passed: Passed,
    /// Most servings a day of this cup with which it holds; nothing when it binds none.
    pub most_servings: Option<u32>,
    /// When it was set.
    pub date: String,
    /// Who set it.
    pub from: Sourcing,
}
