//! Density, the bridge between grams and millilitres.

use ground::{Mass, Substance, Volume};
use serde::{Deserialize, Serialize};

/// Mass in each volume; written in kilograms in a cubic metre, as the tables are.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Density(f64);

impl Density {
    /// So many kilograms in a cubic metre.
    #[must_use]
    pub const fn from_kg_per_m3(value: f64) -> Self {
        Self(value)
    }

    /// Kilograms in a cubic metre, which is grams in a litre.
    #[must_use]
    pub const fn kg_per_m3(self) -> f64 {
        self.0
    }

    /// The mass of a volume.
    #[must_use]
    pub fn mass_of<S: Substance>(self, volume: Volume) -> Mass<S> {
        Mass::from_g(self.0 * volume.l())
    }

    /// The volume of a mass.
    #[must_use]
    pub fn volume_of<S: Substance>(self, mass: Mass<S>) -> Volume {
        Volume::from_l(mass.g() / self.0)
    }
}
