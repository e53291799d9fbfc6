//! Units of measurement: a closed list, each with its dimension and its size in the base unit.

use serde::{Deserialize, Serialize};
use std::fmt;

/// What kind of quantity a unit measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Dimension {
    /// Base unit: gram.
    Mass,
    /// Base unit: millilitre.
    Volume,
    /// Base unit: millimetre.
    Length,
    /// Base unit: square metre.
    Area,
    /// Base unit: minute.
    Duration,
    /// Base unit: degree Celsius.
    Temperature,
    /// Share of a mass by mass, base unit 1.
    MassShare,
    /// Ethanol by volume at 20 °C, base unit 1.
    AlcoholShare,
    /// Sucrose by mass, in degrees Brix.
    Sweetness,
    /// Base unit: gram in a millilitre.
    MassPerVolume,
    /// Base unit: gram for each kilogram of body mass.
    MassPerBody,
    /// Base unit: gram a day.
    MassPerDay,
    /// Base unit: gram for each kilogram of body mass and day.
    MassPerBodyDay,
    /// A plain number of things.
    Number,
}

macro_rules! units {
    ($( $(#[$doc:meta])* $name:ident, $symbol:literal $(| $other:literal)*, $dimension:ident, $size:expr; )+) => {
        /// A unit of measurement with a fixed size. Kitchen measures, whose size depends on the
        /// country, are [`KitchenMeasure`](crate::KitchenMeasure)s.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[serde(try_from = "String", into = "String")]
        pub enum Unit {
            $( $(#[$doc])* $name ),+
        }

        impl Unit {
            /// Every unit.
            pub const ALL: &[Self] = &[$(Self::$name),+];

            /// How the unit is written.
            #[must_use]
            pub fn symbol(self) -> &'static str {
                match self { $( Self::$name => $symbol ),+ }
            }

            /// What it measures.
            #[must_use]
            pub fn dimension(self) -> Dimension {
                match self { $( Self::$name => Dimension::$dimension ),+ }
            }

            /// Its size in the base unit of its dimension.
            #[must_use]
            pub fn size(self) -> f64 {
                match self { $( Self::$name => $size ),+ }
            }

            /// The unit that people write like this.
            #[must_use]
            pub fn from_written(written: &str) -> Option<Self> {
                match written {
                    $( $symbol $(| $other)* => Some(Self::$name), )+
                    _ => None,
                }
            }
        }
    };
}

units! {
    /// Kilogram.
    Kilogram, "kg" | "kilo" | "kilos" | "kilogram" | "kilograms", Mass, 1000.0;
    /// Gram.
    Gram, "g" | "gram" | "grams" | "gramme" | "grammes", Mass, 1.0;
    /// Milligram.
    Milligram, "mg" | "milligram" | "milligrams", Mass, 1e-3;
    /// Microgram.
    Microgram, "µg" | "ug" | "μg" | "mcg" | "microgram" | "micrograms", Mass, 1e-6;
    /// Avoirdupois ounce: exactly 28.349523125 g (international agreement of 1959).
    Ounce, "oz" | "ounce" | "ounces", Mass, 28.349_523_125;
    /// Avoirdupois pound: exactly 453.59237 g (international agreement of 1959).
    Pound, "lb" | "lbs" | "pound" | "pounds", Mass, 453.592_37;
    /// Litre.
    Litre, "l" | "L" | "litre" | "litres" | "liter" | "liters", Volume, 1000.0;
    /// Decilitre.
    Decilitre, "dl" | "dL", Volume, 100.0;
    /// Centilitre.
    Centilitre, "cl" | "cL", Volume, 10.0;
    /// Millilitre.
    Millilitre, "ml" | "mL" | "cc" | "millilitre" | "millilitres" | "milliliter" | "milliliters", Volume, 1.0;
    /// Kilometre.
    Kilometre, "km" | "kilometre" | "kilometres" | "kilometer" | "kilometers", Length, 1e6;
    /// Metre.
    Metre, "m" | "metre" | "metres" | "meter" | "meters", Length, 1000.0;
    /// Centimetre.
    Centimetre, "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters", Length, 10.0;
    /// Millimetre.
    Millimetre, "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters", Length, 1.0;
    /// Inch: exactly 25.4 mm.
    Inch, "in" | "inch" | "inches" | "″", Length, 25.4;
    /// Foot: exactly 304.8 mm.
    Foot, "ft" | "foot" | "feet" | "′", Length, 304.8;
    /// Mile: exactly 1,609.344 m.
    Mile, "mile" | "miles" | "mi", Length, 1_609_344.0;
    /// Square metre.
    SquareMetre, "m²" | "m2" | "sq m" | "square metre" | "square metres" | "square meter" | "square meters", Area, 1.0;
    /// Hectare.
    Hectare, "ha" | "hectare" | "hectares", Area, 1e4;
    /// Square foot: exactly 0.09290304 m², the square of the foot.
    SquareFoot, "ft²" | "ft2" | "sq ft" | "square foot" | "square feet", Area, 0.092_903_04;
    /// Acre of 4,840 square yards: exactly 4,046.8564224 m² (UK Weights and Measures Act 1985, schedule 1;
    /// NIST Handbook 44, appendix C).
    Acre, "acre" | "acres", Area, 4_046.856_422_4;
    /// Day.
    Day, "d" | "day" | "days", Duration, 1440.0;
    /// Year of 365 days.
    Year, "year" | "years", Duration, 525_600.0;
    /// Week.
    Week, "week" | "weeks", Duration, 10_080.0;
    /// Hour.
    Hour, "h" | "hour" | "hours", Duration, 60.0;
    /// Minute.
    Minute, "min" | "minute" | "minutes", Duration, 1.0;
    /// Second.
    Second, "s" | "second" | "seconds", Duration, 1.0 / 60.0;
    /// Degree Celsius.
    Celsius, "°C" | "C", Temperature, 1.0;
    /// Degree Fahrenheit; its zero lies elsewhere, so only [`Temperature`](crate::Temperature) converts it.
    Fahrenheit, "°F" | "F", Temperature, 5.0 / 9.0;
    /// Per cent by mass.
    PercentMass, "% mass" | "% mas" | "% w/w", MassShare, 0.01;
    /// Milligram in a kilogram.
    MilligramPerKilogram, "mg/kg" | "ppm", MassShare, 1e-6;
    /// Microgram in a kilogram.
    MicrogramPerKilogram, "µg/kg" | "ug/kg" | "ppb", MassShare, 1e-9;
    /// Milligram in a gram.
    MilligramPerGram, "mg/g", MassShare, 1e-3;
    /// Per cent of ethanol by volume at 20 °C (OIML R 22).
    PercentVolume, "% vol" | "% abv" | "% v/v" | "% ABV", AlcoholShare, 0.01;
    /// Degrees Brix: grams of sucrose in 100 g of solution.
    DegreesBrix, "°Bx" | "Bx" | "Brix" | "°Brix", Sweetness, 1.0;
    /// Gram in 100 millilitres.
    GramPer100Millilitre, "g/100 ml" | "g per 100 ml" | "g/100 mL" | "% w/v", MassPerVolume, 0.01;
    /// Gram in a litre.
    GramPerLitre, "g/l" | "g/L", MassPerVolume, 1e-3;
    /// Gram in a millilitre.
    GramPerMillilitre, "g/ml" | "g/mL", MassPerVolume, 1.0;
    /// Milligram in a litre.
    MilligramPerLitre, "mg/l" | "mg/L", MassPerVolume, 1e-6;
    /// Milligram for each kilogram of body mass.
    MilligramPerBody, "mg/kg bw" | "mg per kg body weight", MassPerBody, 1e-3;
    /// Microgram for each kilogram of body mass.
    MicrogramPerBody, "µg/kg bw" | "ug/kg bw", MassPerBody, 1e-6;
    /// Gram a day.
    GramPerDay, "g/day" | "g a day" | "g per day", MassPerDay, 1.0;
    /// Milligram a day.
    MilligramPerDay, "mg/day" | "mg a day" | "mg per day", MassPerDay, 1e-3;
    /// Microgram a day.
    MicrogramPerDay, "µg/day" | "ug/day", MassPerDay, 1e-6;
    /// Milligram for each kilogram of body mass and day.
    MilligramPerBodyDay, "mg/kg bw/day" | "mg per kg body weight and day", MassPerBodyDay, 1e-3;
    /// Microgram for each kilogram of body mass and day.
    MicrogramPerBodyDay, "µg/kg bw/day" | "ug/kg bw/day", MassPerBodyDay, 1e-6;
    /// A plain number.
    One, "1" | "pieces" | "piece", Number, 1.0;
    /// Per cent of a number.
    Percent, "%", Number, 0.01;
}

impl Unit {
    /// A value in this unit, in the base unit of its dimension.
    #[must_use]
    pub fn to_base(self, value: f64) -> f64 {
        match self {
            Self::Fahrenheit => (value - 32.0) * self.size(),
            _ => value * self.size(),
        }
    }

    /// A value in the base unit of its dimension, in this unit.
    #[must_use]
    pub fn of_base(self, value: f64) -> f64 {
        match self {
            Self::Fahrenheit => value / self.size() + 32.0,
            _ => value / self.size(),
        }
    }
}

impl TryFrom<String> for Unit {
    type Error = String;

    fn try_from(written: String) -> Result<Self, String> {
        Self::from_written(&written).ok_or_else(|| format!("no unit is written \"{written}\""))
    }
}

impl From<Unit> for String {
    fn from(unit: Unit) -> String {
        unit.symbol().to_owned()
    }
}

impl fmt::Display for Unit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.symbol())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn symbols_are_unique_and_read_back() {
        for unit in Unit::ALL {
            assert_eq!(Unit::from_written(unit.symbol()), Some(*unit));
        }
    }

    #[test]
    fn fahrenheit_has_its_zero_elsewhere() {
        assert!((Unit::Fahrenheit.to_base(212.0) - 100.0).abs() < 1e-12);
        assert!((Unit::Fahrenheit.of_base(0.0) - 32.0).abs() < 1e-12);
    }
}
