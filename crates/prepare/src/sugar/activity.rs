//! Water activity: how much of the water is left for microbes.

use crate::alcohol::with_amount;
use crate::refuse::{Known, refuse};
use ground::{Answer, Mass, Sugar, Unit, Water};
use serde::{Deserialize, Serialize};

/// Molar masses in g/mol.
const WATER: f64 = 18.015;
const SUCROSE: f64 = 342.30;
const HEXOSE: f64 = 180.16;
/// Norrish's constants.
const K_SUCROSE: f64 = 6.47;
const K_HEXOSE: f64 = 2.25;
/// Strongest solutions for which they were tried, as shares by mass.
const MOST_SUCROSE: f64 = 0.67;
const MOST_SUGAR: f64 = 0.80;
/// Rounding that a share computed from grams may carry.
const ROUNDING: f64 = 1e-9;

/// Water activity: vapour pressure over that of pure water, 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct WaterActivity(
    /// The ratio.
    pub f64,
);

/// Water with the sugars in it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Sugars {
    /// Water.
    pub water: Mass<Water>,
    /// Sucrose: kitchen sugar.
    pub sucrose: Mass<Sugar>,
    /// Glucose.
    pub glucose: Mass<Sugar>,
    /// Fructose.
    pub fructose: Mass<Sugar>,
}

impl Sugars {
    /// Kitchen sugar in water.
    #[must_use]
    pub fn syrup(water: Mass<Water>, sucrose: Mass<Sugar>) -> Self {
        Self { water, sucrose, glucose: Mass::ZERO, fructose: Mass::ZERO }
    }

    /// Honey of this much water, whose sugars are 46 parts of glucose to 54 of fructose.
    #[must_use]
    pub fn honey(water: Mass<Water>, sugars: Mass<Sugar>) -> Self {
        Self { water, sucrose: Mass::ZERO, glucose: sugars * 0.46, fructose: sugars * 0.54 }
    }

    /// Water activity at 15 to 35 °C.
    ///
    /// Formula: a = X_w exp(−K X_s²) with mole fractions, K the mole-weighted mean of the sugars
    /// (Norrish's equation; form as in Baeza et al. 2010, Food and Bioprocess Technology 3:87). The
    /// constants of the three sugars are from memory, then tried against freezing points in the CRC
    /// Handbook: within 0.0012. Acids, herb and alcohol are left out, so that the true value is a
    /// little lower: the error keeps to the safe side.
    ///
    /// Refused above 67 % of sucrose and 80 % of sugars in all.
    pub fn activity(self) -> Answer<WaterActivity> {
        self.known_activity().into()
    }

    pub(crate) fn known_activity(self) -> Known<WaterActivity> {
        let water = self.water.g();
        let all = [self.sucrose, self.glucose, self.fructose].map(Mass::g);
        if water <= 0.0 || all.iter().any(|g| *g < 0.0) {
            return Err(refuse("prepare-refused-nothing", "prepare-settle-nothing"));
        }
        let sugar: f64 = all.iter().sum();
        let [sucrose, ..] = all;
        let share = sugar / (sugar + water);
        let of_sucrose = sucrose / (sucrose + water);
        if of_sucrose > MOST_SUCROSE + ROUNDING || share > MOST_SUGAR + ROUNDING {
            let why = refuse("prepare-refused-too-sweet", "prepare-settle-too-sweet");
            return Err(with_amount(why, "sugar", share * 100.0, Unit::PercentMass));
        }
        Ok(WaterActivity(norrish(water, all)))
    }
}

fn norrish(water: f64, [sucrose, glucose, fructose]: [f64; 3]) -> f64 {
    let moles_water = water / WATER;
    let moles_sucrose = sucrose / SUCROSE;
    let moles_hexose = (glucose + fructose) / HEXOSE;
    let moles = moles_sucrose + moles_hexose;
    if moles == 0.0 {
        return 1.0;
    }
    let k = (K_SUCROSE * moles_sucrose + K_HEXOSE * moles_hexose) / moles;
    let sugars = moles / (moles + moles_water);
    (1.0 - sugars) * libm::exp(-k * sugars * sugars)
}
