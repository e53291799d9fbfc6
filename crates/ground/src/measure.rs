//! Kitchen measures: spoons, cups and pints, whose size depends on whose kitchen it is.
//!
//! Sizes come from published definitions and are never mixed: a recipe in cups is read only with
//! the table that the outing names.

use crate::Volume;
use serde::{Deserialize, Serialize};

/// Whose measures are meant. There is no default: a US pint is a fifth smaller than an imperial.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum MeasureSystem {
    /// US customary: 1 gallon = 231 cubic inches (NIST Handbook 44, appendix C).
    UsCustomary,
    /// US kitchens as rounded by NIST (SP 430 and its cooking equivalencies): spoons of 5 and
    /// 15 ml, cup of 240 ml.
    UsKitchen,
    /// Imperial: 1 gallon = 4.54609 litres exactly (UK Weights and Measures Act 1985, schedule 1);
    /// spoons are the metric ones of British kitchens (BS 1348).
    Imperial,
    /// Metric: spoons of 5 and 15 ml, cup of 250 ml.
    Metric,
    /// Australian: as metric, but a tablespoon of 20 ml (AS 1325).
    Australian,
}

impl MeasureSystem {
    /// Every system.
    pub const ALL: &[Self] =
        &[Self::UsCustomary, Self::UsKitchen, Self::Imperial, Self::Metric, Self::Australian];

    /// The name that files and commands use.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::UsCustomary => "us-customary",
            Self::UsKitchen => "us-kitchen",
            Self::Imperial => "imperial",
            Self::Metric => "metric",
            Self::Australian => "australian",
        }
    }
}

impl std::str::FromStr for MeasureSystem {
    type Err = String;

    fn from_str(word: &str) -> Result<Self, String> {
        Self::ALL.iter().copied().find(|system| system.word() == word).ok_or_else(|| {
            let known: Vec<_> = Self::ALL.iter().map(|system| system.word()).collect();
            format!("no kitchen measures are called \"{word}\"; there are: {}", known.join(", "))
        })
    }
}

/// A measure of the kitchen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum KitchenMeasure {
    /// Teaspoon.
    Teaspoon,
    /// Tablespoon.
    Tablespoon,
    /// Fluid ounce.
    FluidOunce,
    /// Gill.
    Gill,
    /// Cup.
    Cup,
    /// Pint.
    Pint,
    /// Quart.
    Quart,
    /// Gallon.
    Gallon,
}

/// How a spoon or cup of something dry is filled. There is no default.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Heap {
    /// Struck off level.
    Level,
    /// Heaped.
    Heaped,
}

/// One US gallon, 231 cubic inches, in millilitres: exact.
const US_GALLON_ML: f64 = 3_785.411_784;
/// One imperial gallon in millilitres: exact.
const IMPERIAL_GALLON_ML: f64 = 4_546.09;

impl KitchenMeasure {
    /// The measure that people write like this.
    #[must_use]
    pub fn from_written(written: &str) -> Option<Self> {
        Some(match written {
            "tsp" | "teaspoon" | "teaspoons" => Self::Teaspoon,
            "tbsp" | "tablespoon" | "tablespoons" => Self::Tablespoon,
            "fl oz" | "floz" | "fluid ounce" | "fluid ounces" => Self::FluidOunce,
            "gill" | "gills" => Self::Gill,
            "cup" | "cups" => Self::Cup,
            "pint" | "pints" | "pt" => Self::Pint,
            "quart" | "quarts" | "qt" => Self::Quart,
            "gallon" | "gallons" | "gal" => Self::Gallon,
            _ => return None,
        })
    }

    /// The word for it, singular.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Teaspoon => "teaspoon",
            Self::Tablespoon => "tablespoon",
            Self::FluidOunce => "fluid ounce",
            Self::Gill => "gill",
            Self::Cup => "cup",
            Self::Pint => "pint",
            Self::Quart => "quart",
            Self::Gallon => "gallon",
        }
    }

    /// Its volume in a system; none where the system has no such measure.
    ///
    /// ```
    /// use ground::{KitchenMeasure::*, MeasureSystem::*};
    /// assert_eq!(Pint.volume(Imperial).unwrap().ml(), 568.26125);
    /// assert_eq!(Cup.volume(UsCustomary).unwrap().ml(), 236.5882365);
    /// assert!(Pint.volume(Metric).is_none());
    /// ```
    #[must_use]
    pub fn volume(self, system: MeasureSystem) -> Option<Volume> {
        let ml = match system {
            MeasureSystem::UsCustomary => US_GALLON_ML / self.us_share(),
            MeasureSystem::UsKitchen => match self {
                Self::Teaspoon => 5.0,
                Self::Tablespoon => 15.0,
                Self::FluidOunce => 30.0,
                Self::Cup => 240.0,
                Self::Pint => 480.0,
                Self::Quart => 960.0,
                Self::Gill | Self::Gallon => return None,
            },
            MeasureSystem::Imperial => match self {
                Self::Teaspoon => 5.0,
                Self::Tablespoon => 15.0,
                Self::FluidOunce => IMPERIAL_GALLON_ML / 160.0,
                Self::Gill => IMPERIAL_GALLON_ML / 32.0,
                Self::Pint => IMPERIAL_GALLON_ML / 8.0,
                Self::Quart => IMPERIAL_GALLON_ML / 4.0,
                Self::Gallon => IMPERIAL_GALLON_ML,
                // British cookery has no standard cup.
                Self::Cup => return None,
            },
            MeasureSystem::Metric | MeasureSystem::Australian => match self {
                Self::Teaspoon => 5.0,
                Self::Tablespoon if system == MeasureSystem::Australian => 20.0,
                Self::Tablespoon => 15.0,
                Self::Cup => 250.0,
                _ => return None,
            },
        };
        Some(Volume::from_ml(ml))
    }

    /// How many of it make a US gallon.
    fn us_share(self) -> f64 {
        match self {
            Self::Teaspoon => 768.0,
            Self::Tablespoon => 256.0,
            Self::FluidOunce => 128.0,
            Self::Gill => 32.0,
            Self::Cup => 16.0,
            Self::Pint => 8.0,
            Self::Quart => 4.0,
            Self::Gallon => 1.0,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// NIST Handbook 44, appendix C: 1 teaspoon = 4.92892159375 ml, 1 tablespoon = 14.78676478125
    /// ml, 1 fluid ounce = 29.5735295625 ml, 1 cup = 236.5882365 ml, 1 pint = 473.176473 ml.
    #[test]
    fn us_measures_are_the_published_ones() {
        let ml = |m: KitchenMeasure| m.volume(MeasureSystem::UsCustomary).unwrap().ml();
        assert_eq!(ml(KitchenMeasure::Teaspoon), 4.928_921_593_75);
        assert_eq!(ml(KitchenMeasure::Tablespoon), 14.786_764_781_25);
        assert_eq!(ml(KitchenMeasure::FluidOunce), 29.573_529_562_5);
        assert_eq!(ml(KitchenMeasure::Cup), 236.588_236_5);
        assert_eq!(ml(KitchenMeasure::Pint), 473.176_473);
    }

    /// UK Weights and Measures Act 1985: fluid ounce 28.4130625 ml, gill 142.0653125 ml.
    #[test]
    fn imperial_measures_are_the_published_ones() {
        let ml = |m: KitchenMeasure| m.volume(MeasureSystem::Imperial).unwrap().ml();
        // One step of rounding in the division by 160.
        assert!((ml(KitchenMeasure::FluidOunce) - 28.413_062_5).abs() < 1e-14);
        assert_eq!(ml(KitchenMeasure::Gill), 142.065_312_5);
        assert!(KitchenMeasure::Cup.volume(MeasureSystem::Imperial).is_none());
    }
}
