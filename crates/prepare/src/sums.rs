//! The small sums that need no recipe.

use crate::alcohol::{Spirit, Strength};
use crate::brew::{KitchenAmount, in_kitchen};
use crate::refuse::Known;
use crate::sugar::{Sugars, Sweetness, WaterActivity};
use crate::{Density, alcohol};
use ground::{
    AlcoholByVolume, Answer, Brix, Dimension, Ethanol, Mass, MassFraction, MeasureSystem,
    PerVolume, Spoken, Temperature, Volume,
};
use serde::{Deserialize, Serialize};

pub use crate::alcohol::{Dilution, Pour, blend, dilute, menstruum_for};
pub use crate::drying::Drying;
pub use crate::heat::{boiling_point, time_to_reduce};
pub use crate::sugar::{Sugaring, sugar_to_add};

/// One thing that is known of a spirit.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SpiritKnown {
    /// Its strength by volume.
    ByVolume(AlcoholByVolume),
    /// Its share of ethanol by mass.
    ByMass(MassFraction),
    /// Its density at a temperature, as a hydrometer shows it.
    Density(Density, Temperature),
}

/// What that says of the spirit.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct SpiritSum {
    /// Strength by volume at 20 °C.
    #[serde(rename = "alcohol_percent_vol")]
    pub by_volume: AlcoholByVolume,
    /// Share of ethanol in the mass.
    #[serde(rename = "alcohol_mass_share")]
    pub by_mass: MassFraction,
    /// Density at the temperature asked for.
    #[serde(rename = "density_kg_per_m3")]
    pub density: Density,
    /// Ethanol in 100 ml measured at 20 °C.
    #[serde(rename = "ethanol_g_in_100_ml")]
    pub ethanol: Mass<Ethanol>,
}

/// Strength, density and grams of ethanol from any one of them.
///
/// The density is that at `temperature`. Refused where [`Strength`] or its density refuses.
pub fn spirit(known: SpiritKnown, temperature: Temperature) -> Answer<SpiritSum> {
    known_spirit(known, temperature).into()
}

fn known_spirit(known: SpiritKnown, temperature: Temperature) -> Known<SpiritSum> {
    let strength = match known {
        SpiritKnown::ByVolume(percent) => Strength::by_volume(percent),
        SpiritKnown::ByMass(share) => Strength::by_mass(share),
        SpiritKnown::Density(density, at) => Strength::from_density(density, at),
    }
    .ok()?;
    Ok(SpiritSum {
        by_volume: strength.volume_percent(),
        by_mass: strength.mass_share(),
        density: strength.density_at(temperature).ok()?,
        ethanol: Spirit::of(Volume::from_ml(100.0), strength).ethanol,
    })
}

/// What a spirit measures at another temperature: its mass is the same, its volume is not.
///
/// Formula: V(t) = m / ρ(p, t). Refused where the density is.
pub fn volume_at(
    volume: Volume,
    strength: Strength,
    from: Temperature,
    to: Temperature,
) -> Answer<Volume> {
    strength.density_at(from).and_then(|before| {
        let mass: Mass = before.mass_of(volume);
        strength.density_at(to).map(|after| after.volume_of(mass))
    })
}

/// What is known of a syrup from its sweetness.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SyrupSum {
    /// Degrees Brix.
    #[serde(rename = "sugar_brix")]
    pub brix: Brix,
    /// Density at 20 °C.
    #[serde(rename = "density_kg_per_m3")]
    pub density: Density,
    /// Sugar in 100 ml.
    #[serde(rename = "sugar_g_per_100_ml")]
    pub sugar: PerVolume,
    /// Water activity; refused beyond what water holds.
    #[serde(rename = "water_activity")]
    pub activity: Answer<WaterActivity>,
}

/// Density, sugar in each volume and water activity of sucrose in water.
#[must_use]
pub fn syrup(sweetness: Sweetness) -> SyrupSum {
    let share = sweetness.mass_share().share();
    let density = sweetness.density();
    let of_100_g = Sugars::syrup(Mass::from_g(100.0 * (1.0 - share)), Mass::from_g(100.0 * share));
    SyrupSum {
        brix: sweetness.brix(),
        density,
        sugar: PerVolume(share * density.kg_per_m3() / 10.0),
        activity: of_100_g.activity(),
    }
}

/// A kitchen measure, in millilitres and in other people's measures.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MeasureSum {
    /// The volume.
    #[serde(rename = "volume_ml")]
    pub volume: Volume,
    /// The same in every system that has a measure for it, to the nearest quarter.
    pub elsewhere: Vec<(MeasureSystem, KitchenAmount)>,
}

/// A spoken volume in millilitres, and in the measures of every kitchen.
///
/// Refused when it is a kitchen measure and nobody said whose, or when it is no volume.
pub fn measure(said: &Spoken, kitchen: Option<MeasureSystem>) -> Answer<MeasureSum> {
    let resolved: Answer<_> = said.resolve(Dimension::Volume, kitchen).into();
    resolved.map(|amount| {
        let volume = Volume::from_ml(0.5 * (amount.low + amount.high));
        let at = |system: &MeasureSystem| Some((*system, in_kitchen(volume, *system)?));
        MeasureSum { volume, elsewhere: MeasureSystem::ALL.iter().filter_map(at).collect() }
    })
}

/// Grams of ethanol in a drink.
///
/// Formula: m p with m = V ρ(p, 20 °C), both by OIML R 22. Refused for what is no strength.
pub fn ethanol_in(volume: Volume, strength: AlcoholByVolume) -> Answer<Mass<Ethanol>> {
    alcohol::Strength::by_volume(strength).map(|strength| Spirit::of(volume, strength).ethanol)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_pint_is_not_a_pint() {
        let said: Spoken = "1 pint".parse().unwrap();
        assert!(measure(&said, None).known().is_none());
        let us = measure(&said, Some(MeasureSystem::UsCustomary)).ok().unwrap();
        let imperial = measure(&said, Some(MeasureSystem::Imperial)).ok().unwrap();
        assert_eq!((us.volume.ml(), imperial.volume.ml()), (473.176_473, 568.261_25));
        let metric = us.elsewhere.iter().find(|(s, _)| *s == MeasureSystem::Metric);
        assert_eq!(metric.map(|(_, amount)| amount.quarters), Some(8));
    }

    #[test]
    fn warm_spirit_takes_more_room() {
        let strength = Strength::by_mass(MassFraction::from_percent(40.0)).ok().unwrap();
        let [cold, warm] = [10.0, 30.0].map(Temperature::from_celsius);
        let litre = Volume::from_l(1.0);
        let grown = volume_at(litre, strength, cold, warm).ok().unwrap();
        let back = volume_at(grown, strength, warm, cold).ok().unwrap();
        assert!(grown > litre);
        assert!((back.ml() - 1000.0).abs() < 1e-9);
    }

    /// 5 ml of the tincture of a worked example, 58.9 % vol, hold 2.32 g.
    #[test]
    fn a_spoonful_of_tincture_in_grams() {
        let strength = AlcoholByVolume::from_percent(58.9);
        let grams = ethanol_in(Volume::from_ml(5.0), strength).ok().unwrap();
        assert!((grams.g() - 2.32).abs() < 0.005);
    }

    #[test]
    fn a_strong_syrup_has_an_activity_until_water_is_full() {
        let of = |degrees| Sweetness::of(Brix::from_degrees(degrees)).ok().unwrap();
        let syrup_60 = syrup(of(60.0));
        assert!((syrup_60.sugar.0 - 77.18).abs() < 0.01);
        assert!(syrup_60.activity.known().is_some());
        assert!(syrup(of(70.0)).activity.known().is_none());
    }
}
