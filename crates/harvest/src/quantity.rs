//! How much of a part of a plant: its mass, or so many pieces.

use ground::{Arg, Fresh, Mass, Shown, Text, Unit};
use serde::{Deserialize, Serialize};

/// What an amount is given in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Measure {
    /// Fresh mass.
    Mass,
    /// Pieces: leaves, heads, fruits, plants.
    Pieces,
}

/// A number of pieces. Estimates may hold part of one; what may be taken is whole.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Pieces(pub f64);

/// An amount of a part of a plant.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Quantity {
    /// Fresh mass.
    #[serde(rename = "mass_g")]
    Mass(Mass<Fresh>),
    /// Pieces.
    Pieces(Pieces),
}

impl Quantity {
    /// So much in this measure, in grams or pieces.
    #[must_use]
    pub fn of(measure: Measure, value: f64) -> Self {
        match measure {
            Measure::Mass => Self::Mass(Mass::from_g(value)),
            Measure::Pieces => Self::Pieces(Pieces(value)),
        }
    }

    /// What it is given in.
    #[must_use]
    pub fn measure(self) -> Measure {
        match self {
            Self::Mass(_) => Measure::Mass,
            Self::Pieces(_) => Measure::Pieces,
        }
    }

    /// Its number, of grams or of pieces.
    #[must_use]
    pub fn number(self) -> f64 {
        match self {
            Self::Mass(mass) => mass.g(),
            Self::Pieces(pieces) => pieces.0,
        }
    }

    /// The same for a person who is about to take it: never below zero, and whole pieces only.
    #[must_use]
    pub fn to_take(self) -> Self {
        match self {
            Self::Mass(mass) => Self::Mass(mass.max(Mass::ZERO)),
            Self::Pieces(pieces) => Self::Pieces(Pieces(pieces.0.max(0.0).floor())),
        }
    }

    /// As a working shows it.
    #[must_use]
    pub fn shown(self) -> Shown {
        let unit = match self {
            Self::Mass(_) => Unit::Gram,
            Self::Pieces(_) => Unit::One,
        };
        Shown::amount(self.number(), unit)
    }
}

impl From<Quantity> for Arg {
    /// As a message says it: rounded down, since a person may take no more.
    fn from(quantity: Quantity) -> Self {
        match quantity {
            Quantity::Mass(mass) => {
                Text::new("harvest-grams").amount("mass", mass.g(), Unit::Gram).into()
            }
            Quantity::Pieces(pieces) => {
                Text::new("harvest-pieces").with("n", pieces.0.floor() as i64).into()
            }
        }
    }
}
