//! Bringing spirit down to a strength, and finding the strength to start from.

use super::{Spirit, Strength, bisect, with_amount};
use crate::refuse::{Known, refuse};
use crate::water;
use ground::{Answer, Mass, Unit, Volume, Water};
use serde::{Deserialize, Serialize};

/// What it takes to bring a spirit down to a strength.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Dilution {
    /// The spirit that is diluted, as weighed.
    #[serde(rename = "spirit_g")]
    pub spirit: Mass,
    /// Water to add, as weighed.
    #[serde(rename = "water_g")]
    pub water: Mass<Water>,
    /// Water to add, as measured at 20 °C.
    #[serde(rename = "water_ml")]
    pub water_volume: Volume,
    /// What comes out.
    pub result: Spirit,
    /// Its volume at 20 °C.
    #[serde(rename = "volume_ml")]
    pub volume: Volume,
    /// How much less that is than spirit and water measured apart. Below zero for weak spirits,
    /// which expand a little.
    #[serde(rename = "contraction_ml")]
    pub contraction: Volume,
}

/// Water to bring a spirit down to a strength, everything at 20 °C.
///
/// Formula: m₂ = m₁ p₁ / p₂ and water = m₂ − m₁, since ethanol is conserved. The rule of three on
/// volumes gives the right final volume and too little water.
///
/// Refused unless the target lies above nothing and below the spirit.
pub fn dilute(volume: Volume, from: Strength, to: Strength) -> Answer<Dilution> {
    known_dilution(volume, from, to).into()
}

fn known_dilution(volume: Volume, from: Strength, to: Strength) -> Known<Dilution> {
    positive(volume)?;
    if to <= Strength::NONE || to >= from {
        return Err(not_weaker(from, to));
    }
    let spirit = Spirit::of(volume, from);
    let whole = spirit.mass() * (from.mass_share() / to.mass_share());
    let water: Mass<Water> = Mass::from_g((whole - spirit.mass()).g());
    let result = Spirit { water: spirit.water + water, ..spirit };
    let water_volume = water::volume(water);
    Ok(Dilution {
        spirit: spirit.mass(),
        water,
        water_volume,
        result,
        volume: result.volume(),
        contraction: volume + water_volume - result.volume(),
    })
}

/// Stock spirit and water that together make a mixture.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Pour {
    /// Stock spirit, as weighed.
    #[serde(rename = "stock_g")]
    pub stock: Mass,
    /// Stock spirit, as measured at 20 °C.
    #[serde(rename = "stock_ml")]
    pub stock_volume: Volume,
    /// Water, as weighed.
    #[serde(rename = "water_g")]
    pub water: Mass<Water>,
    /// Water, as measured at 20 °C.
    #[serde(rename = "water_ml")]
    pub water_volume: Volume,
}

/// How to pour a mixture from a stock spirit and water.
///
/// Refused when the stock is weaker than the mixture.
pub fn blend(mixture: Spirit, stock: Strength) -> Answer<Pour> {
    let wanted = mixture.strength();
    if wanted > stock || stock == Strength::NONE {
        return Answer::Refused(not_weaker(stock, wanted));
    }
    let stock_mass: Mass = Mass::from_g(mixture.ethanol.g() / stock.mass_share().share());
    // Rounding alone could leave less than nothing when the mixture is the stock itself.
    let water = Mass::from_g((mixture.mass() - stock_mass).g().max(0.0));
    Answer::Known(Pour {
        stock: stock_mass,
        stock_volume: stock.density().volume_of(stock_mass),
        water,
        water_volume: water::volume(water),
    })
}

/// The strength that a volume of spirit must have, so that the jar ends at `wanted` once the water
/// of the herb has joined it.
///
/// Formula: the p with V ρ(p) p / (V ρ(p) + w) = p_wanted, by bisection, since the left side rises
/// with p. Refused when not even pure ethanol would do.
pub fn menstruum_for(
    volume: Volume,
    herb_water: Mass<Water>,
    wanted: Strength,
) -> Answer<Strength> {
    known_menstruum(volume, herb_water, wanted).into()
}

fn known_menstruum(volume: Volume, herb_water: Mass<Water>, wanted: Strength) -> Known<Strength> {
    positive(volume)?;
    let jar = |p: f64| {
        let mut jar = Spirit::of(volume, Strength(p));
        jar.water += herb_water;
        jar.strength()
    };
    if wanted > jar(1.0) {
        let why = refuse("prepare-refused-too-wet", "prepare-settle-too-wet");
        let reach = jar(1.0).volume_percent().percent();
        return Err(with_amount(why, "reach", reach, Unit::PercentVolume));
    }
    Ok(Strength(bisect(0.0, 1.0, |p| jar(p) < wanted)))
}

fn positive(volume: Volume) -> Known<()> {
    if volume > Volume::ZERO {
        return Ok(());
    }
    Err(refuse("prepare-refused-nothing", "prepare-settle-nothing"))
}

fn not_weaker(from: Strength, to: Strength) -> ground::Refusal {
    let percent = |strength: Strength| strength.volume_percent().percent();
    let why = refuse("prepare-refused-not-weaker", "prepare-settle-not-weaker");
    let why = with_amount(why, "from", percent(from), Unit::PercentVolume);
    with_amount(why, "to", percent(to), Unit::PercentVolume)
}
