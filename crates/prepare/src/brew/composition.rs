//! What a liquid is made of, in grams.

use crate::alcohol::{Spirit, Strength};
use crate::refuse::{Known, refuse};
use crate::sugar::{Sugars, Sweetness, WaterActivity};
use crate::water;
use ground::{AlcoholByVolume, Answer, Any, Brix, Ethanol, Mass, Solids, Sugar, Volume, Water};
use serde::{Deserialize, Serialize};

/// Grams of each thing in a preparation, and the herb it stands for.
///
/// What went over from the herb has no mass here: it is some hundredths of the liquid and its
/// density is not published. The herb is counted apart, as the share that this liquid drew from; of
/// a dish eaten with its herb it is the herb itself, still outside these grams.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Composition {
    /// Water.
    #[serde(rename = "water_g")]
    pub water: Mass<Water>,
    /// Ethanol.
    #[serde(rename = "ethanol_g")]
    pub ethanol: Mass<Ethanol>,
    /// Sugar.
    #[serde(rename = "sugar_g")]
    pub sugar: Mass<Sugar>,
    /// Other foods of a dish.
    #[serde(rename = "other_g")]
    pub other: Mass<Any>,
    /// The herb this stands for, as it was weighed.
    #[serde(rename = "herb_as_weighed_g")]
    pub herb: Mass<Any>,
    /// The same without any water; none where its moisture is not known.
    #[serde(rename = "herb_solids_g")]
    pub solids: Option<Mass<Solids>>,
}

impl Composition {
    /// Nothing; of no herb, so that no moisture is missing.
    pub(crate) const NOTHING: Self = Self {
        water: Mass::ZERO,
        ethanol: Mass::ZERO,
        sugar: Mass::ZERO,
        other: Mass::ZERO,
        herb: Mass::ZERO,
        solids: Some(Mass::ZERO),
    };

    /// Its mass.
    #[must_use]
    pub fn mass(&self) -> Mass {
        let liquid = self.water.g() + self.ethanol.g() + self.sugar.g();
        Mass::from_g(liquid + self.other.g())
    }

    /// Its volume at 20 °C.
    ///
    /// Refused where sugar and spirit, or other foods, come together: no density of such mixtures
    /// is at hand.
    pub fn volume(&self) -> Answer<Volume> {
        self.known_volume().into()
    }

    pub(crate) fn known_volume(&self) -> Known<Volume> {
        let sweet = self.sugar > Mass::ZERO;
        if self.other > Mass::ZERO || (sweet && self.ethanol > Mass::ZERO) {
            return Err(refuse("prepare-refused-density", "prepare-settle-density"));
        }
        if sweet {
            let density = self.known_sweetness()?.density();
            return Ok(density.volume_of(self.mass()));
        }
        if self.ethanol > Mass::ZERO {
            return Ok(self.spirit().volume());
        }
        Ok(water::volume(self.water))
    }

    /// Its ethanol and water.
    pub(crate) fn spirit(&self) -> Spirit {
        Spirit { ethanol: self.ethanol, water: self.water }
    }

    /// Its strength by volume at 20 °C.
    ///
    /// Formula: p = e / (e + w), then by OIML R 22. Refused for a sweet spirit, whose density is not
    /// at hand.
    pub fn alcohol(&self) -> Answer<AlcoholByVolume> {
        self.known_alcohol().into()
    }

    pub(crate) fn known_alcohol(&self) -> Known<AlcoholByVolume> {
        if self.ethanol == Mass::ZERO {
            return Ok(Strength::NONE.volume_percent());
        }
        self.known_volume().map(|_| self.spirit().strength().volume_percent())
    }

    /// Its sugar, in grams for 100 g of the whole.
    #[must_use]
    pub fn brix(&self) -> Brix {
        let mass = self.mass().g();
        if mass > 0.0 { Brix::from_degrees(100.0 * self.sugar.g() / mass) } else { Brix::ZERO }
    }

    fn known_sweetness(&self) -> Known<Sweetness> {
        Sweetness::of(self.brix()).ok()
    }

    /// Its water activity, from the sugar alone.
    pub fn activity(&self) -> Answer<WaterActivity> {
        Sugars::syrup(self.water, self.sugar).activity()
    }

    /// A share of it.
    #[must_use]
    pub fn share(&self, share: f64) -> Self {
        Self {
            water: self.water * share,
            ethanol: self.ethanol * share,
            sugar: self.sugar * share,
            other: self.other * share,
            herb: self.herb * share,
            solids: self.solids.map(|solids| solids * share),
        }
    }

    /// Both together.
    #[must_use]
    pub fn and(&self, other: &Self) -> Self {
        Self {
            water: self.water + other.water,
            ethanol: self.ethanol + other.ethanol,
            sugar: self.sugar + other.sugar,
            other: self.other + other.other,
            herb: self.herb + other.herb,
            solids: self.solids.zip(other.solids).map(|(a, b)| a + b),
        }
    }
}
