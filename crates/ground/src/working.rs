//! Workings: how a number came about, down to the input, fact or assumption it rests on.

use crate::{Finite, Place, SourceId, Sourcing, Spread, Text, Unit};
use serde::{Deserialize, Serialize};

/// A number with everything that led to it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Working {
    /// What the number is.
    pub what: Text,
    /// Its value.
    pub value: Shown,
    /// How it came about.
    pub how: How,
}

/// A value as a working shows it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Shown {
    /// A number in a unit.
    Amount(Finite, Unit),
    /// A doubtful number in a unit.
    Spread(Spread, Unit),
    /// Something that is no number: a name, a date, a message.
    Words(Text),
    /// Not known: the working says why.
    Unknown,
}

impl Shown {
    /// A number in a unit; a number that is not finite is not known.
    #[must_use]
    pub fn amount(value: f64, unit: Unit) -> Self {
        Finite::new(value).map_or(Self::Unknown, |value| Self::Amount(value, unit))
    }

    /// A doubtful number in a unit.
    #[must_use]
    pub fn spread(spread: Option<Spread>, unit: Unit) -> Self {
        spread.map_or(Self::Unknown, |spread| Self::Spread(spread, unit))
    }
}

/// How a number came about.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum How {
    /// Somebody wrote it: in which table, entry and field.
    Input(Place),
    /// It is a fact with sources, or a policy, a practice or a memory said to be one.
    Fact(Sourcing),
    /// It is supposed, for the reason given.
    Assumed(Text),
    /// It was computed.
    Computed {
        /// By which formula.
        by: Formula,
        /// From what.
        from: Vec<Working>,
    },
}

/// A documented formula.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Formula {
    /// Its name, such as `alcohol.mixture`; the catalogue explains it under `formula-…`.
    pub name: String,
    /// The formula as it would be written on paper.
    pub says: String,
    /// Where it is published; none for plain arithmetic.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub source: Option<SourceId>,
}

impl Formula {
    /// Plain arithmetic that needs no source.
    #[must_use]
    pub fn plain(name: &str, says: &str) -> Self {
        Self { name: name.to_owned(), says: says.to_owned(), source: None }
    }

    /// A published formula.
    #[must_use]
    pub fn published(name: &str, says: &str, source: &str) -> Self {
        Self { source: Some(SourceId::from(source)), ..Self::plain(name, says) }
    }
}

impl Working {
    /// A number that somebody wrote.
    #[must_use]
    pub fn input(what: Text, value: Shown, at: Place) -> Self {
        Self { what, value, how: How::Input(Place { line: None, column: None, ..at }) }
    }

    /// A fact.
    #[must_use]
    pub fn fact(what: Text, value: Shown, from: Sourcing) -> Self {
        Self { what, value, how: How::Fact(from) }
    }

    /// An assumption.
    #[must_use]
    pub fn assumed(what: Text, value: Shown, why: Text) -> Self {
        Self { what, value, how: How::Assumed(why) }
    }

    /// A computed number.
    #[must_use]
    pub fn computed(what: Text, value: Shown, by: Formula, from: Vec<Working>) -> Self {
        Self { what, value, how: How::Computed { by, from } }
    }

    /// Every leaf on which the number rests, in order.
    #[must_use]
    pub fn leaves(&self) -> Vec<&Working> {
        match &self.how {
            How::Computed { from, .. } => from.iter().flat_map(Working::leaves).collect(),
            _ => vec![self],
        }
    }
}
