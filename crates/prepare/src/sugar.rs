//! Sugar in water: density, degrees Brix, the sugar to add, water activity.

mod activity;

pub use activity::{Sugars, WaterActivity};

use crate::Density;
use crate::alcohol::{bisect, polynomial, with_amount};
use crate::refuse::{Known, refuse};
use ground::{Answer, Brix, Mass, MassFraction, Sugar, Unit, Volume};
use serde::{Deserialize, Serialize};

/// Density of water at 20 °C to which the fit refers, in kg/m³.
const WATER: f64 = 998.203;
/// Coefficients of the fit, from the first power of the mass fraction.
const FIT: [f64; 10] = [
    0.387_513_555_5,
    0.097_028_816_53,
    0.388_335_748_0,
    -1.782_845_295,
    5.591_472_292,
    -11.006_679_76,
    13.622_307_34,
    -10.330_820_01,
    4.387_787_019,
    -0.799_555_873_0,
];
/// The strongest solution for which the fit holds, as a share by mass.
const STRONGEST: f64 = 0.85;
/// What water holds at 20 °C; beyond it sugar crystallises again.
const SATURATED: f64 = 0.67;

/// Share of sucrose in the mass of a solution in water, known to lie in 0 to 0.85.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Sweetness(f64);

impl Sweetness {
    /// The strongest syrup that stays clear at 20 °C: 67 % by mass.
    pub const SATURATED: Self = Self(SATURATED);

    /// From degrees Brix: grams of sucrose in 100 g of solution.
    pub fn of(brix: Brix) -> Answer<Self> {
        Self::checked(brix.degrees() / 100.0).into()
    }

    /// From the share of sucrose in the mass.
    pub fn by_mass(share: MassFraction) -> Answer<Self> {
        Self::checked(share.share()).into()
    }

    pub(crate) fn checked(share: f64) -> Known<Self> {
        if (0.0..=STRONGEST).contains(&share) {
            return Ok(Self(share));
        }
        let why = refuse("prepare-refused-sweetness", "prepare-settle-sweetness");
        Err(with_amount(why, "sugar", share * 100.0, Unit::PercentMass))
    }

    /// From the density at 20 °C, by bisection.
    ///
    /// Refused where no sucrose solution up to 85 % has that density.
    pub fn from_density(density: Density) -> Answer<Self> {
        let wanted = density.kg_per_m3();
        if !(WATER..=solution(STRONGEST)).contains(&wanted) {
            return Answer::Refused(refuse(
                "prepare-refused-no-such-syrup",
                "prepare-settle-no-such-syrup",
            ));
        }
        Answer::Known(Self(bisect(0.0, STRONGEST, |b| solution(b) < wanted)))
    }

    /// From the refractive index at 20 °C and 589 nm, as a refractometer shows it.
    ///
    /// Formula: a fit of fifth degree to the table of ICUMSA, tried against the CRC Handbook of
    /// Chemistry and Physics from 5 to 70 %.
    pub fn from_refractive_index(index: RefractiveIndex) -> Answer<Self> {
        const POWERS: [f64; 6] =
            [-99_127.453_6, 318_417.95, -413_145.80, 270_177.93, -88_885.21, 11_758.74];
        Self::checked(polynomial(&POWERS, index.0) / 100.0).into()
    }

    /// From the sugar in each volume of finished syrup, as pharmacopoeias write it.
    ///
    /// Formula: the b with b ρ(b) = sugar, by bisection.
    pub fn from_sugar_per_volume(sugar: Mass<Sugar>, volume: Volume) -> Answer<Self> {
        let wanted = sugar.g() / volume.l();
        if !(0.0..=STRONGEST * solution(STRONGEST)).contains(&wanted) {
            return Answer::Refused(refuse(
                "prepare-refused-no-such-syrup",
                "prepare-settle-no-such-syrup",
            ));
        }
        Answer::Known(Self(bisect(0.0, STRONGEST, |b| b * solution(b) < wanted)))
    }

    /// Degrees Brix.
    #[must_use]
    pub fn brix(self) -> Brix {
        Brix::from_degrees(self.0 * 100.0)
    }

    /// Share of the mass.
    #[must_use]
    pub fn mass_share(self) -> MassFraction {
        MassFraction::from_share(self.0)
    }

    /// Density at 20 °C.
    ///
    /// Formula: ρ = 998.203 (1 + Σ hₖ bᵏ) (J. Hackbarth 2011, fit to the Brix table of the AOAC);
    /// within 0.1 kg/m³ of the CRC Handbook up to 70 %.
    #[must_use]
    pub fn density(self) -> Density {
        Density::from_kg_per_m3(solution(self.0))
    }
}

/// A refractive index at 589 nm, as a refractometer shows it.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct RefractiveIndex(
    /// The index, 1.3330 for water at 20 °C.
    pub f64,
);

/// Sugar to stir into a liquid.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Sugaring {
    /// Sugar to add.
    #[serde(rename = "sugar_g")]
    pub add: Mass<Sugar>,
    /// Sweetness that is reached.
    #[serde(rename = "reached_mass_share")]
    pub reached: Sweetness,
    /// Whether more was asked for than water holds at 20 °C, so that 67 % is reached instead.
    pub held_back: bool,
    /// What comes out.
    #[serde(rename = "mass_g")]
    pub mass: Mass,
}

/// Sugar that brings a liquid to a sweetness, from the mass of the liquid and the sugar already in
/// it.
///
/// Formula: S = (b L − s) / (1 − b). A syrup never goes beyond 67 % at 20 °C: what is asked beyond is
/// held back, and said so. Refused when the liquid is as sweet already.
///
/// ```
/// use ground::{Answer, Brix, Mass};
/// use prepare::sugar::{Sweetness, sugar_to_add};
/// let Answer::Known(sixty) = Sweetness::of(Brix::from_degrees(60.0)) else { panic!() };
/// let Answer::Known(sum) = sugar_to_add(Mass::from_g(480.0), Mass::ZERO, sixty) else { panic!() };
/// assert!((sum.add.g() - 720.0).abs() < 1e-9);
/// ```
pub fn sugar_to_add(liquid: Mass, held: Mass<Sugar>, target: Sweetness) -> Answer<Sugaring> {
    known_sugaring(liquid, held, target).into()
}

pub(crate) fn known_sugaring(
    liquid: Mass,
    held: Mass<Sugar>,
    target: Sweetness,
) -> Known<Sugaring> {
    if liquid <= Mass::ZERO {
        return Err(refuse("prepare-refused-nothing", "prepare-settle-nothing"));
    }
    let reached = if target > Sweetness::SATURATED { Sweetness::SATURATED } else { target };
    let b = reached.0;
    let add = (b * liquid.g() - held.g()) / (1.0 - b);
    if add < 0.0 {
        let why = refuse("prepare-refused-sweeter", "prepare-settle-sweeter");
        let present = 100.0 * held.g() / liquid.g();
        return Err(with_amount(why, "sugar", present, Unit::PercentMass));
    }
    Ok(Sugaring {
        add: Mass::from_g(add),
        reached,
        held_back: target > reached,
        mass: Mass::from_g(liquid.g() + add),
    })
}

fn solution(b: f64) -> f64 {
    WATER * (1.0 + b * polynomial(&FIT, b))
}
