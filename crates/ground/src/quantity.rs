//! Physical quantities as types. A quantity knows what it measures; a mass also knows of what.
//!
//! Each type holds a number in its base unit. Values that come from outside are checked on their
//! way in ([`Spoken`](crate::Spoken) and the readers refuse what is not finite or out of range);
//! written values that are not finite are an error of ours and fail to serialise.

use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::cmp::Ordering;
use std::marker::PhantomData;
use std::ops::{Add, AddAssign, Div, Mul, Sub};

/// What a mass is a mass of.
pub trait Substance: Copy + 'static {}

macro_rules! substances {
    ($( $(#[$doc:meta])* $name:ident ),+) => {
        $( $(#[$doc])* #[derive(Clone, Copy, Debug)] pub enum $name {} impl Substance for $name {} )+
    };
}

substances! {
    /// Anything: a mixture, a body, a constituent named elsewhere.
    Any,
    /// Herb as gathered, with its water.
    Fresh,
    /// Herb as weighed when dried, with the 8 to 12 % of water it keeps.
    Dried,
    /// Herb without any water.
    Solids,
    /// Water.
    Water,
    /// Ethanol.
    Ethanol,
    /// Sugar.
    Sugar
}

/// Reads a number that must be finite.
fn read<'de, D: Deserializer<'de>>(from: D) -> Result<f64, D::Error> {
    let value = f64::deserialize(from)?;
    if value.is_finite() { Ok(value) } else { Err(serde::de::Error::custom("not a finite number")) }
}

/// Writes a number that must be finite, never as minus zero.
fn write<S: Serializer>(value: f64, to: S) -> Result<S::Ok, S::Error> {
    if !value.is_finite() {
        return Err(serde::ser::Error::custom("a quantity is not a finite number"));
    }
    to.serialize_f64(value + 0.0)
}

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident$(<$of:ident: $bound:ident = $default:ident>)?, $field:ident, $base:literal,
     $( $(#[$from_doc:meta])* $make:ident / $take:ident = $size:expr ),+) => {
        $(#[$doc])*
        pub struct $name$(<$of: $bound = $default>)? {
            $field: f64,
            $( of: PhantomData<$of>, )?
        }

        impl$(<$of: $bound>)? $name$(<$of>)? {
            /// None at all.
            pub const ZERO: Self = Self::of_base(0.0);

            $(
                $(#[$from_doc])*
                #[must_use]
                pub const fn $make(value: f64) -> Self {
                    Self::of_base(value * $size)
                }

                #[doc = concat!("The value; see [`", stringify!($make), "`](Self::", stringify!($make), ").")]
                #[must_use]
                pub const fn $take(self) -> f64 {
                    self.$field / $size
                }
            )+

            #[doc = concat!("So many of the base unit, ", $base, ".")]
            #[must_use]
            pub const fn of_base(value: f64) -> Self {
                Self { $field: value, $( of: PhantomData::<$of>, )? }
            }

            #[doc = concat!("The value in the base unit, ", $base, ".")]
            #[must_use]
            pub const fn base(self) -> f64 {
                self.$field
            }

            /// The smaller of two.
            #[must_use]
            pub fn min(self, other: Self) -> Self {
                if other.$field < self.$field { other } else { self }
            }

            /// The larger of two.
            #[must_use]
            pub fn max(self, other: Self) -> Self {
                if other.$field > self.$field { other } else { self }
            }
        }

        impl$(<$of: $bound>)? Clone for $name$(<$of>)? {
            fn clone(&self) -> Self { *self }
        }
        impl$(<$of: $bound>)? Copy for $name$(<$of>)? {}
        impl$(<$of: $bound>)? std::fmt::Debug for $name$(<$of>)? {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                write!(f, "{} {}", self.$field, $base)
            }
        }
        impl$(<$of: $bound>)? PartialEq for $name$(<$of>)? {
            fn eq(&self, other: &Self) -> bool { self.$field == other.$field }
        }
        impl$(<$of: $bound>)? PartialOrd for $name$(<$of>)? {
            fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
                self.$field.partial_cmp(&other.$field)
            }
        }
        impl$(<$of: $bound>)? Add for $name$(<$of>)? {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self::of_base(self.$field + other.$field)
            }
        }
        impl$(<$of: $bound>)? AddAssign for $name$(<$of>)? {
            fn add_assign(&mut self, other: Self) { self.$field += other.$field; }
        }
        impl$(<$of: $bound>)? Sub for $name$(<$of>)? {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self::of_base(self.$field - other.$field)
            }
        }
        impl$(<$of: $bound>)? Mul<f64> for $name$(<$of>)? {
            type Output = Self;
            fn mul(self, factor: f64) -> Self { Self::of_base(self.$field * factor) }
        }
        impl$(<$of: $bound>)? Div<f64> for $name$(<$of>)? {
            type Output = Self;
            fn div(self, factor: f64) -> Self { Self::of_base(self.$field / factor) }
        }
        impl$(<$of: $bound>)? Div for $name$(<$of>)? {
            type Output = f64;
            fn div(self, other: Self) -> f64 { self.$field / other.$field }
        }
        impl$(<$of: $bound>)? std::iter::Sum for $name$(<$of>)? {
            fn sum<I: Iterator<Item = Self>>(items: I) -> Self {
                items.fold(Self::ZERO, Add::add)
            }
        }
        impl$(<$of: $bound>)? Serialize for $name$(<$of>)? {
            fn serialize<Out: Serializer>(&self, to: Out) -> Result<Out::Ok, Out::Error> {
                write(self.$field, to)
            }
        }
        impl<'de $(, $of: $bound)?> Deserialize<'de> for $name$(<$of>)? {
            fn deserialize<In: Deserializer<'de>>(from: In) -> Result<Self, In::Error> {
                Ok(Self { $field: read(from)?, $( of: PhantomData::<$of>, )? })
            }
        }
    };
}

quantity! {
    /// A mass of something; written in grams.
    Mass<S: Substance = Any>, g, "g",
    /// So many grams.
    from_g / g = 1.0,
    /// So many milligrams.
    from_mg / mg = 1e-3,
    /// So many kilograms.
    from_kg / kg = 1e3
}

quantity! {
    /// A volume; written in millilitres.
    Volume, ml, "ml",
    /// So many millilitres.
    from_ml / ml = 1.0,
    /// So many litres.
    from_l / l = 1e3
}

quantity! {
    /// A length; written in millimetres.
    Length, mm, "mm",
    /// So many millimetres.
    from_mm / mm = 1.0,
    /// So many metres.
    from_m / m = 1e3
}

quantity! {
    /// An area; written in square metres.
    Area, m2, "m²",
    /// So many square metres.
    from_m2 / m2 = 1.0
}

quantity! {
    /// A length of time; written in minutes.
    Duration, minutes, "min",
    /// So many minutes.
    from_minutes / minutes = 1.0,
    /// So many hours.
    from_hours / hours = 60.0,
    /// So many days.
    from_days / days = 1440.0
}

quantity! {
    /// A temperature; written in degrees Celsius.
    Temperature, celsius, "°C",
    /// So many degrees Celsius.
    from_celsius / celsius = 1.0
}

quantity! {
    /// A share by mass, from 0 to 1.
    MassFraction, share, "of the mass",
    /// A share of 1.
    from_share / share = 1.0,
    /// So many per cent by mass.
    from_percent / percent = 0.01
}

quantity! {
    /// A share of anything that is not a mass, from 0 to 1.
    Fraction, share, "of one",
    /// A share of 1.
    from_share / share = 1.0,
    /// So many per cent.
    from_percent / percent = 0.01
}

quantity! {
    /// Alcoholic strength by volume at 20 °C, the volume of pure ethanol over the volume of the
    /// mixture (OIML R 22; Directive 76/766/EEC, annex); written in per cent.
    AlcoholByVolume, percent, "% vol",
    /// So many per cent by volume.
    from_percent / percent = 1.0
}

quantity! {
    /// Grams of sucrose in 100 g of solution, in degrees Brix.
    Brix, degrees, "°Bx",
    /// So many degrees.
    from_degrees / degrees = 1.0
}

/// A mass for each gram of something else, such as a constituent in dried leaf.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct PerMass(
    /// Milligrams in a gram.
    pub f64,
);

/// A mass in each millilitre, such as the strength of a brew.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct PerVolume(
    /// Grams in 100 millilitres.
    pub f64,
);

impl PerVolume {
    /// The mass in a volume.
    #[must_use]
    pub fn in_volume<S: Substance>(self, volume: Volume) -> Mass<S> {
        Mass::from_g(self.0 * volume.ml() / 100.0)
    }
}

/// Something for each kilogram of body mass.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct PerBodyMass<Q>(
    /// For one kilogram.
    pub Q,
);

impl<S: Substance> PerBodyMass<Mass<S>> {
    /// What it comes to for a body of this mass.
    #[must_use]
    pub fn for_body(self, body: Mass) -> Mass<S> {
        self.0 * body.kg()
    }
}

/// Something for each day.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct PerDay<Q>(
    /// For one day.
    pub Q,
);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn units_convert_and_never_write_minus_zero() {
        assert_eq!(Mass::<Fresh>::from_kg(1.5).g(), 1500.0);
        assert_eq!(Duration::from_days(2.0).hours(), 48.0);
        let none = Volume::ZERO * -1.0;
        assert_eq!(serde_json::to_string(&none).unwrap(), "0.0");
        assert!(serde_json::to_string(&Volume::from_ml(f64::NAN)).is_err());
    }

    #[test]
    fn a_limit_by_body_mass_scales_with_the_body() {
        let limit = PerBodyMass(Mass::<Any>::from_mg(0.1));
        assert!((limit.for_body(Mass::from_kg(70.0)).mg() - 7.0).abs() < 1e-12);
    }
}
