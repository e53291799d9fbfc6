//! Mixtures of ethanol and water: density, strength, mixing, dilution.
//!
//! Strength is a property of the mixture. What changes with temperature is only its volume.

mod density;
mod dilute;

pub(crate) use density::polynomial;
pub use dilute::{Dilution, Pour, blend, dilute, menstruum_for};

use crate::Density;
use crate::refuse::{Known, refuse, with};
use density::regression;
use ground::{
    AlcoholByVolume, Answer, Arg, Ethanol, Finite, Mass, MassFraction, Temperature, Unit, Volume,
    Water,
};
use serde::{Deserialize, Serialize};

/// The temperature at which strength by volume is defined (Directive 76/766/EEC, annex).
const REFERENCE: f64 = 20.0;
/// Ends of the range for which OIML R 22 gives its formula, in °C.
const COLDEST: f64 = -20.0;
const HOTTEST: f64 = 40.0;
/// Halvings of [0, 1] that leave less than one step of rounding.
const HALVINGS: u32 = 60;

/// How strong a mixture of ethanol and water is; holds a mass fraction known to lie in 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize)]
#[serde(transparent)]
pub struct Strength(f64);

impl Strength {
    /// Water.
    pub const NONE: Self = Self(0.0);

    /// From the share of ethanol in the mass.
    pub fn by_mass(share: MassFraction) -> Answer<Self> {
        Self::checked(share).into()
    }

    fn checked(share: MassFraction) -> Known<Self> {
        let p = share.share();
        if (0.0..=1.0).contains(&p) {
            return Ok(Self(p));
        }
        Err(no_strength(p * 100.0, Unit::PercentMass))
    }

    /// From per cent by volume at 20 °C.
    ///
    /// Formula: the p with p ρ(p, 20) = q ρ(1, 20), by bisection, since the left side rises with p.
    ///
    /// ```
    /// use ground::{AlcoholByVolume, Answer};
    /// use prepare::alcohol::Strength;
    /// let Answer::Known(spirit) = Strength::by_volume(AlcoholByVolume::from_percent(96.0)) else { panic!() };
    /// assert!((spirit.mass_share().percent() - 93.838).abs() < 0.001);
    /// ```
    pub fn by_volume(strength: AlcoholByVolume) -> Answer<Self> {
        Self::of_volume(strength.percent(), REFERENCE).into()
    }

    /// From per cent by volume at another reference temperature, such as 15.56 °C (60 °F) for US
    /// proof and the alcoholometric table of the USP.
    pub fn by_volume_at(strength: AlcoholByVolume, reference: Temperature) -> Answer<Self> {
        within_formula(0.0, reference)
            .and_then(|celsius| Self::of_volume(strength.percent(), celsius))
            .into()
    }

    fn of_volume(percent: f64, celsius: f64) -> Known<Self> {
        if !(0.0..=100.0).contains(&percent) {
            return Err(no_strength(percent, Unit::PercentVolume));
        }
        let wanted = percent / 100.0;
        Ok(Self(bisect(0.0, 1.0, |p| volume_share(p, celsius) < wanted)))
    }

    /// Share of ethanol in the mass.
    #[must_use]
    pub fn mass_share(self) -> MassFraction {
        MassFraction::from_share(self.0)
    }

    /// Per cent by volume at 20 °C.
    ///
    /// Formula: q = p ρ(p, 20) / ρ(1, 20) (Directive 76/766/EEC, annex).
    #[must_use]
    pub fn volume_percent(self) -> AlcoholByVolume {
        AlcoholByVolume::from_percent(100.0 * volume_share(self.0, REFERENCE))
    }

    /// Density at 20 °C.
    #[must_use]
    pub fn density(self) -> Density {
        Density::from_kg_per_m3(regression(self.0, REFERENCE))
    }

    /// Density at another temperature. Refused outside −20 to 40 °C and where the mixture may be
    /// freezing.
    pub fn density_at(self, temperature: Temperature) -> Answer<Density> {
        within_formula(self.0, temperature)
            .map(|celsius| Density::from_kg_per_m3(regression(self.0, celsius)))
            .into()
    }

    /// The strength of a mixture with this density at this temperature: what a hydrometer tells.
    ///
    /// Refused where no mixture has that density.
    pub fn from_density(density: Density, temperature: Temperature) -> Answer<Self> {
        Self::of_density(density.kg_per_m3(), temperature).into()
    }

    fn of_density(density: f64, temperature: Temperature) -> Known<Self> {
        // At and above 10 °C density falls all the way from water to ethanol; in the cold weak
        // mixtures are no clear function of it.
        let celsius = within_formula(0.0, temperature)?;
        let ends = regression(1.0, celsius)..=regression(0.0, celsius);
        if celsius < 10.0 || !ends.contains(&density) {
            let why = refuse("prepare-refused-no-such-spirit", "prepare-settle-no-such-spirit");
            return Err(with_amount(why, "temperature", celsius, Unit::Celsius));
        }
        Ok(Self(bisect(0.0, 1.0, |p| regression(p, celsius) > density)))
    }
}

impl<'de> Deserialize<'de> for Strength {
    fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let p = f64::deserialize(from)?;
        Self::checked(MassFraction::from_share(p))
            .map_err(|_| serde::de::Error::custom("a mass fraction lies between 0 and 1"))
    }
}

/// A mixture of ethanol and water, in grams.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Spirit {
    /// Ethanol in it.
    #[serde(rename = "ethanol_g")]
    pub ethanol: Mass<Ethanol>,
    /// Water in it.
    #[serde(rename = "water_g")]
    pub water: Mass<Water>,
}

impl Spirit {
    /// So much of a mixture of this strength, measured at 20 °C.
    #[must_use]
    pub fn of(volume: Volume, strength: Strength) -> Self {
        Self::weighing(strength.density().mass_of(volume), strength)
    }

    /// A mass of a mixture of this strength.
    #[must_use]
    pub fn weighing(mass: Mass, strength: Strength) -> Self {
        let p = strength.mass_share().share();
        Self { ethanol: Mass::from_g(mass.g() * p), water: Mass::from_g(mass.g() * (1.0 - p)) }
    }

    /// Its mass.
    #[must_use]
    pub fn mass(self) -> Mass {
        Mass::from_g(self.ethanol.g() + self.water.g())
    }

    /// Its strength; that of water when there is nothing.
    #[must_use]
    pub fn strength(self) -> Strength {
        let mass = self.mass().g();
        if mass > 0.0 {
            Strength((self.ethanol.g() / mass).clamp(0.0, 1.0))
        } else {
            Strength::NONE
        }
    }

    /// Its volume at 20 °C.
    #[must_use]
    pub fn volume(self) -> Volume {
        self.strength().density().volume_of(self.mass())
    }

    /// Both together: masses add, volumes do not.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        Self { ethanol: self.ethanol + other.ethanol, water: self.water + other.water }
    }
}

/// Volume share of ethanol in a mixture, with both volumes taken at this temperature.
fn volume_share(p: f64, celsius: f64) -> f64 {
    p * regression(p, celsius) / regression(1.0, celsius)
}

/// The point of [low, high] up to which the condition holds.
pub(crate) fn bisect(low: f64, high: f64, below: impl Fn(f64) -> bool) -> f64 {
    let (mut low, mut high) = (low, high);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        if below(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    0.5 * (low + high)
}

/// The temperature in °C, where the formula holds for this mass fraction.
fn within_formula(p: f64, temperature: Temperature) -> Known<f64> {
    let celsius = temperature.celsius();
    if !(COLDEST..=HOTTEST).contains(&celsius) {
        let why = refuse("prepare-refused-temperature", "prepare-settle-temperature");
        return Err(with_amount(why, "temperature", celsius, Unit::Celsius));
    }
    if celsius < freezing_at_latest(p) {
        let why = refuse("prepare-refused-freezing", "prepare-settle-freezing");
        let why = with_amount(why, "temperature", celsius, Unit::Celsius);
        return Err(with_amount(why, "strength", p * 100.0, Unit::PercentMass));
    }
    Ok(celsius)
}

/// A temperature at or above the freezing point in °C, so that the formula is never used on slush.
///
/// Formula: the law of dilute solutions, −K m, with K = 1.86 °C kg/mol for water and m the molality
/// of ethanol (46.07 g/mol). Real mixtures freeze there when weak and lower when strong.
fn freezing_at_latest(p: f64) -> f64 {
    if p >= 1.0 {
        return f64::NEG_INFINITY;
    }
    -1.86 * 1000.0 * p / ((1.0 - p) * 46.07)
}

fn no_strength(value: f64, unit: Unit) -> ground::Refusal {
    let why = refuse("prepare-refused-no-strength", "prepare-settle-no-strength");
    with_amount(why, "strength", value, unit)
}

/// A refusal with an amount; a number that is not finite is said as `?`.
pub(crate) fn with_amount(
    refusal: ground::Refusal,
    name: &str,
    value: f64,
    unit: Unit,
) -> ground::Refusal {
    match Finite::new(value) {
        Some(value) => with(refusal, name, Arg::Amount(value, unit)),
        None => with(refusal, name, "?"),
    }
}
