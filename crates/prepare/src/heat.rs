//! Heat: how fast a pot steams off, and at what temperature it boils.

use crate::alcohol::with_amount;
use crate::refuse::{Known, refuse};
use ground::{Answer, Duration, Fraction, Length, Sourced, Temperature, Unit, Volume};
use serde::{Deserialize, Serialize};

/// How fast a simmering pot loses water, measured as cold water; millilitres a minute.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct EvaporationRate(f64);

/// Heat of evaporation of water at 100 °C, in J/g.
const HEAT_OF_EVAPORATION: f64 = 2256.4;

impl EvaporationRate {
    /// So many millilitres a minute.
    #[must_use]
    pub const fn from_ml_per_minute(value: f64) -> Self {
        Self(value)
    }

    /// Millilitres a minute.
    #[must_use]
    pub const fn ml_per_minute(self) -> f64 {
        self.0
    }

    /// From the pot itself: what it lost while simmering. The best there is, since it counts this
    /// stove, this pot and this lid.
    ///
    /// Refused when nothing was lost or no time went by.
    pub fn measured(lost: Volume, over: Duration) -> Answer<Self> {
        if lost <= Volume::ZERO || over <= Duration::ZERO {
            return Answer::Refused(refuse("prepare-refused-nothing", "prepare-settle-nothing"));
        }
        Answer::Known(Self(lost.ml() / over.minutes()))
    }

    /// From the power that reaches boiling water, in watts.
    ///
    /// Formula: rate = P / 2256.4 J/g, and a gram of cold water is taken as a millilitre.
    #[must_use]
    pub fn from_net_watts(watts: f64) -> Self {
        Self(watts * 60.0 / HEAT_OF_EVAPORATION)
    }

    /// What steams off in a time.
    #[must_use]
    pub fn over(self, time: Duration) -> Volume {
        Volume::from_ml(self.0 * time.minutes())
    }
}

/// Whether the pot is covered.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Lid {
    /// No lid.
    Off,
    /// Lid on, at a gentle simmer.
    On,
}

/// How a pot loses water, with and without its lid.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Stove {
    /// Loss of an open pot.
    pub open: Sourced<EvaporationRate>,
    /// Share of that loss with the lid on.
    pub covered: Sourced<Fraction>,
}

impl Stove {
    /// Loss with or without the lid.
    #[must_use]
    pub fn rate(&self, lid: Lid) -> EvaporationRate {
        let open = self.open.value;
        match lid {
            Lid::Off => open,
            Lid::On => EvaporationRate(open.0 * self.covered.value.share()),
        }
    }
}

/// Time for a pot to go from one volume to another.
///
/// Formula: t = (V₀ − V₁) / rate. Refused when the pot would not get smaller, or never gets there.
pub fn time_to_reduce(from: Volume, to: Volume, rate: EvaporationRate) -> Answer<Duration> {
    known_time(from, to, rate).into()
}

pub(crate) fn known_time(from: Volume, to: Volume, rate: EvaporationRate) -> Known<Duration> {
    if to >= from || to < Volume::ZERO || rate.0 <= 0.0 {
        let why = refuse("prepare-refused-no-reduction", "prepare-settle-no-reduction");
        let why = with_amount(why, "from", from.ml(), Unit::Millilitre);
        return Err(with_amount(why, "to", to.ml(), Unit::Millilitre));
    }
    Ok(Duration::from_minutes((from - to).ml() / rate.0))
}

/// Boiling point of water at a height above the sea, from the pressure of the standard atmosphere.
///
/// Formula: p = 101,325 (1 − 2.25577e-5 h)^5.25588 Pa (standard atmosphere), then Antoine's equation
/// for water, log₁₀ p = 8.07131 − 1730.63 / (233.426 + T) with p in mmHg. Both sets of constants are
/// from memory; they meet printed tables within 0.3 °C. Refused outside −430 to 4,000 m, where they
/// were not tried.
pub fn boiling_point(height: Length) -> Answer<Temperature> {
    let metres = height.m();
    if !(-430.0..=4000.0).contains(&metres) {
        let why = refuse("prepare-refused-height", "prepare-settle-height");
        return Answer::Refused(with_amount(why, "height", metres, Unit::Metre));
    }
    let pascal = 101_325.0 * libm::pow(1.0 - 2.255_77e-5 * metres, 5.255_88);
    let mercury = libm::log10(pascal / 133.322);
    Answer::Known(Temperature::from_celsius(1730.63 / (8.071_31 - mercury) - 233.426))
}
