//! Herb and the water in it: fresh, dried as weighed, and without any water.

use crate::alcohol::with_amount;
use crate::refuse::{Known, refuse};
use ground::{Answer, Dried, Fresh, Mass, MassFraction, Solids, Substance, Unit, Water};
use serde::{Deserialize, Serialize};

/// Share of water in the mass of herb as it is weighed (wet basis), at least 0 and below 1.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize)]
#[serde(transparent)]
pub struct Moisture(f64);

impl Moisture {
    /// From the share of water in the whole mass.
    pub fn of(share: MassFraction) -> Answer<Self> {
        Self::checked(share.share()).into()
    }

    pub(crate) fn checked(share: f64) -> Known<Self> {
        if (0.0..1.0).contains(&share) {
            return Ok(Self(share));
        }
        let why = refuse("prepare-refused-moisture", "prepare-settle-moisture");
        Err(with_amount(why, "moisture", share * 100.0, Unit::Percent))
    }

    /// From grams of water for each gram of solids (dry basis).
    ///
    /// Formula: w = X / (1 + X).
    pub fn from_dry_basis(water_per_solids: f64) -> Answer<Self> {
        if water_per_solids < 0.0 {
            return Answer::Refused(refuse("prepare-refused-nothing", "prepare-settle-nothing"));
        }
        Self::checked(water_per_solids / (1.0 + water_per_solids)).into()
    }

    /// From a weighing: the same herb weighed before, when its moisture was known, and now.
    ///
    /// Formula: w = 1 − (1 − w₀) m₀ / m.
    pub fn by_weighing<A: Substance, B: Substance>(
        before: Mass<A>,
        was: Self,
        now: Mass<B>,
    ) -> Answer<Self> {
        if now <= Mass::ZERO {
            return Answer::Refused(refuse("prepare-refused-nothing", "prepare-settle-nothing"));
        }
        Self::checked(1.0 - (1.0 - was.0) * before.g() / now.g()).into()
    }

    /// From a published yield: so much dried herb, holding so much water, from fresh herb.
    ///
    /// Formula: w = 1 − y (1 − w₁).
    pub fn from_yield(dried_from_fresh: MassFraction, dried_to: Self) -> Answer<Self> {
        Self::checked(1.0 - dried_from_fresh.share() * (1.0 - dried_to.0)).into()
    }

    /// Share of water in the whole mass.
    #[must_use]
    pub fn share(self) -> MassFraction {
        MassFraction::from_share(self.0)
    }

    /// Grams of water for each gram of solids.
    #[must_use]
    pub fn dry_basis(self) -> f64 {
        self.0 / (1.0 - self.0)
    }

    /// What is left of a mass without its water.
    #[must_use]
    pub fn solids<S: Substance>(self, mass: Mass<S>) -> Mass<Solids> {
        Mass::from_g(mass.g() * (1.0 - self.0))
    }

    /// The water in a mass.
    #[must_use]
    pub fn water<S: Substance>(self, mass: Mass<S>) -> Mass<Water> {
        Mass::from_g(mass.g() * self.0)
    }
}

impl<'de> Deserialize<'de> for Moisture {
    fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        Self::checked(f64::deserialize(from)?)
            .map_err(|_| serde::de::Error::custom("moisture lies from 0 to below 1"))
    }
}

/// Moisture that is known only to lie between two ends.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct MoistureRange {
    /// Driest it may be.
    pub low: Moisture,
    /// Wettest it may be.
    pub high: Moisture,
}

impl MoistureRange {
    /// Known moisture.
    #[must_use]
    pub fn exact(moisture: Moisture) -> Self {
        Self { low: moisture, high: moisture }
    }

    /// Moisture between two shares, in either order.
    pub fn between(one: MassFraction, other: MassFraction) -> Answer<Self> {
        Self::known_between(one.share(), other.share()).into()
    }

    fn known_between(one: f64, other: f64) -> Known<Self> {
        Ok(Self {
            low: Moisture::checked(one.min(other))?,
            high: Moisture::checked(one.max(other))?,
        })
    }

    /// Half way between the ends.
    #[must_use]
    pub fn middle(self) -> Moisture {
        Moisture(0.5 * (self.low.0 + self.high.0))
    }
}

/// What drying does to a lot.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Drying {
    /// Solids, which drying leaves alone.
    #[serde(rename = "solids_g")]
    pub solids: Mass<Solids>,
    /// What the dried lot weighs: stop when the scale shows it.
    #[serde(rename = "dried_g")]
    pub dried: Mass<Dried>,
    /// Water to drive off.
    #[serde(rename = "water_lost_g")]
    pub water_lost: Mass<Water>,
    /// Grams of fresh herb for each gram of dried.
    pub fresh_to_dried: f64,
}

impl Drying {
    /// Drying a fresh lot from one moisture to another.
    ///
    /// Formula: m₁ = m (1 − w₀) / (1 − w₁). Refused when the target is wetter than the herb.
    pub fn of(fresh: Mass<Fresh>, from: Moisture, to: Moisture) -> Answer<Self> {
        if fresh <= Mass::ZERO {
            return Answer::Refused(refuse("prepare-refused-nothing", "prepare-settle-nothing"));
        }
        if to > from {
            let why = refuse("prepare-refused-wetter", "prepare-settle-wetter");
            return Answer::Refused(with_amount(why, "moisture", from.0 * 100.0, Unit::Percent));
        }
        let solids = from.solids(fresh);
        let dried: Mass<Dried> = Mass::from_g(solids.g() / (1.0 - to.0));
        Answer::Known(Self {
            solids,
            dried,
            water_lost: Mass::from_g(fresh.g() - dried.g()),
            fresh_to_dried: fresh.g() / dried.g(),
        })
    }
}
