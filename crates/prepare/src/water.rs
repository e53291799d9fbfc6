//! Water at 20 °C, in grams and millilitres.

use crate::Density;
use ground::{Mass, Volume, Water};

/// Density of water at 20 °C: the first coefficient of OIML R 22, so that a spirit of no strength
/// is water to the last digit.
pub(crate) const DENSITY: Density = Density::from_kg_per_m3(998.201_23);

/// The volume of a mass of water.
pub(crate) fn volume(mass: Mass<Water>) -> Volume {
    DENSITY.volume_of(mass)
}

/// The mass of a volume of water.
pub(crate) fn mass(volume: Volume) -> Mass<Water> {
    DENSITY.mass_of(volume)
}
