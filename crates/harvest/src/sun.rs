//! When the sun rises and sets, and when it is light enough to see by.
//!
//! Meeus 1998, *Astronomical Algorithms*, 2nd ed., chapters 22, 25 and 28, in the low-accuracy form
//! that the solar calculator of the US National Oceanic and Atmospheric Administration uses: good to
//! about ten seconds below 60° of latitude, to a minute below 65°, and less where the sun grazes
//! the horizon. Hills, trees and weather are not in it.

use ground::{Fault, Faults, Place};
use jiff::Timestamp;
use jiff::civil::Date;
use serde::{Deserialize, Serialize};

/// Altitude of the sun's centre at rise and set: refraction of 34′ and a radius of 16′ (US Naval
/// Observatory, *Rise, Set, and Twilight Definitions*).
const HORIZON: f64 = -0.8333;
/// Altitude of the sun's centre at the ends of civil twilight (same source).
const CIVIL: f64 = -6.0;
const DAY_SECONDS: f64 = 86_400.0;
/// Julian date of 1970-01-01 0h.
const UNIX_EPOCH: f64 = 2_440_587.5;
/// Julian date of 2000-01-01 12h.
const J2000: f64 = 2_451_545.0;

/// A place on the earth.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Position {
    latitude: f64,
    longitude: f64,
}

impl Position {
    /// The place at these degrees north and east.
    ///
    /// # Errors
    /// `latitude-range` and `longitude-range`: latitude lies within 90, longitude within 180.
    pub fn new(latitude: f64, longitude: f64) -> Result<Self, Faults> {
        let mut faults = Faults::none();
        let mut check = |code: &str, field: &str, value: f64, most: f64| {
            if !(value.is_finite() && value.abs() <= most) {
                faults.add(Fault::new(code, Place::entry("", "", field), value.to_string()));
            }
        };
        check("latitude-range", "latitude", latitude, 90.0);
        check("longitude-range", "longitude", longitude, 180.0);
        faults.or(Self { latitude, longitude })
    }
}

/// The moment at which the sun's centre passes an altitude, or why there is none.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Crossing {
    /// It passes then, to the second.
    At(Timestamp),
    /// It stays above all through that half of the day.
    StaysAbove,
    /// It stays below all through that half of the day.
    StaysBelow,
}

impl Crossing {
    /// The moment, where there is one.
    #[must_use]
    pub fn at(self) -> Option<Timestamp> {
        match self {
            Self::At(moment) => Some(moment),
            Self::StaysAbove | Self::StaysBelow => None,
        }
    }
}

/// The sun's day at a place.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Daylight {
    /// Civil dawn: light enough to see by.
    pub dawn: Crossing,
    /// Sunrise.
    pub rise: Crossing,
    /// When the sun stands highest.
    pub noon: Timestamp,
    /// Sunset.
    pub set: Crossing,
    /// Civil dusk.
    pub dusk: Crossing,
}

/// The sun's day whose noon falls on a date as the sun of the place counts it.
///
/// The moments are of universal time, and may lie on the day before or after: the sun that rises on
/// the first of October in Sydney does so on the thirtieth of September in Greenwich. Nothing when
/// the date lies at an end of time.
#[must_use]
pub fn daylight(date: Date, at: Position) -> Option<Daylight> {
    let mean_noon = julian_noon(date) - at.longitude / 360.0;
    let noon = (0..3).fold(mean_noon, |noon, _| true_noon(mean_noon, Sun::at(noon)));
    let cross = |altitude, side| crossing(mean_noon, at, altitude, side);
    Some(Daylight {
        dawn: cross(CIVIL, Side::Before)?,
        rise: cross(HORIZON, Side::Before)?,
        noon: moment(noon)?,
        set: cross(HORIZON, Side::After)?,
        dusk: cross(CIVIL, Side::After)?,
    })
}

/// Which half of the day.
#[derive(Clone, Copy)]
enum Side {
    Before,
    After,
}

/// Julian date of a civil date's twelve o'clock, universal time.
fn julian_noon(date: Date) -> f64 {
    let days = Date::constant(1970, 1, 1).until(date).map(|span| span.get_days());
    UNIX_EPOCH + 0.5 + f64::from(days.unwrap_or_default())
}

fn moment(julian: f64) -> Option<Timestamp> {
    let seconds = ((julian - UNIX_EPOCH) * DAY_SECONDS).round();
    Timestamp::from_second(seconds as i64).ok()
}

/// Noon by the sun, from noon by the clock of the place.
fn true_noon(mean_noon: f64, sun: Sun) -> f64 {
    mean_noon - sun.equation_of_time / 1440.0
}

/// When the sun passes an altitude before or after noon: from where it stood at noon, then again
/// from where it stood at the moment found, until that no longer moves.
fn crossing(mean_noon: f64, at: Position, altitude: f64, side: Side) -> Option<Crossing> {
    let sign = match side {
        Side::Before => -1.0,
        Side::After => 1.0,
    };
    let mut time = mean_noon;
    for _ in 0..12 {
        let sun = Sun::at(time);
        let angle = match hour_angle(sun.declination, at.latitude, altitude) {
            Ok(degrees) => degrees,
            Err(never) => return Some(never),
        };
        time = true_noon(mean_noon, sun) + sign * angle / 360.0;
    }
    moment(time).map(Crossing::At)
}

/// Degrees that the earth turns between noon and the crossing.
///
/// Formula: cos H = (sin h − sin φ sin δ)/(cos φ cos δ) (Meeus 1998, 15.1).
fn hour_angle(declination: f64, latitude: f64, altitude: f64) -> Result<f64, Crossing> {
    let (sin_place, cos_place) = libm::sincos(latitude.to_radians());
    let (sin_sun, cos_sun) = libm::sincos(declination.to_radians());
    let above = libm::sin(altitude.to_radians()) - sin_place * sin_sun;
    let reach = cos_place * cos_sun;
    if above > reach {
        Err(Crossing::StaysBelow)
    } else if above < -reach {
        Err(Crossing::StaysAbove)
    } else {
        Ok(libm::acos(above / reach).to_degrees())
    }
}

/// Where the sun stands at a moment.
#[derive(Clone, Copy, Debug)]
struct Sun {
    /// Degrees north of the equator.
    declination: f64,
    /// Minutes by which a sundial is ahead of the clock.
    equation_of_time: f64,
}

impl Sun {
    fn at(julian: f64) -> Self {
        let t = (julian - J2000) / 36_525.0;
        let orbit = Orbit::at(t);
        let tilt = orbit.obliquity.to_radians();
        let (sin_long, _) = libm::sincos(orbit.apparent_longitude.to_radians());
        let declination = libm::asin(libm::sin(tilt) * sin_long).to_degrees();
        Self { declination, equation_of_time: orbit.equation_of_time() }
    }
}

/// The elements of the sun's apparent path (Meeus 1998, chapter 25), in degrees.
#[derive(Clone, Copy, Debug)]
struct Orbit {
    mean_longitude: f64,
    mean_anomaly: f64,
    eccentricity: f64,
    apparent_longitude: f64,
    obliquity: f64,
}

impl Orbit {
    /// At a moment, in Julian centuries since 2000.
    fn at(t: f64) -> Self {
        let mean_longitude = turn(280.466_46 + t * (36_000.769_83 + t * 0.000_303_2));
        let mean_anomaly = turn(357.529_11 + t * (35_999.050_29 - t * 0.000_153_7));
        let m = mean_anomaly.to_radians();
        let centre = libm::sin(m) * (1.914_602 - t * (0.004_817 + t * 0.000_014))
            + libm::sin(2.0 * m) * (0.019_993 - t * 0.000_101)
            + libm::sin(3.0 * m) * 0.000_289;
        let node = (125.04 - 1_934.136 * t).to_radians();
        let seconds = 21.448 - t * (46.815 + t * (0.000_59 - t * 0.001_813));
        Self {
            mean_longitude,
            mean_anomaly,
            eccentricity: 0.016_708_634 - t * (0.000_042_037 + t * 0.000_000_126_7),
            apparent_longitude: mean_longitude + centre - 0.005_69 - 0.004_78 * libm::sin(node),
            obliquity: 23.0 + (26.0 + seconds / 60.0) / 60.0 + 0.002_56 * libm::cos(node),
        }
    }

    /// Minutes by which a sundial is ahead of the clock (Meeus 1998, 28.3, after Smart).
    fn equation_of_time(&self) -> f64 {
        let half = libm::tan((self.obliquity / 2.0).to_radians());
        let y = half * half;
        let e = self.eccentricity;
        let (sin_2l, cos_2l) = libm::sincos(2.0 * self.mean_longitude.to_radians());
        let m = self.mean_anomaly.to_radians();
        let radians = y * sin_2l - 2.0 * e * libm::sin(m) + 4.0 * e * y * libm::sin(m) * cos_2l
            - y * y * sin_2l * cos_2l
            - 1.25 * e * e * libm::sin(2.0 * m);
        4.0 * radians.to_degrees()
    }
}

/// Degrees brought into 0 to 360.
fn turn(degrees: f64) -> f64 {
    degrees - 360.0 * (degrees / 360.0).floor()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Meeus 1998, examples 25.a and 28.b: 1992 October 13 at 0h, dynamical time.
    #[test]
    fn the_worked_example_of_the_handbook() {
        let t = (2_448_908.5 - J2000) / 36_525.0;
        let orbit = Orbit::at(t);
        let sun = Sun::at(2_448_908.5);
        let close = |got: f64, published: f64, last: f64| {
            assert!((got - published).abs() <= last, "{got} is not {published}");
        };
        close(t, -0.072_183_436, 5e-10);
        close(orbit.mean_longitude, 201.807_20, 5e-6);
        close(orbit.mean_anomaly, 278.993_97, 5e-6);
        close(orbit.eccentricity, 0.016_711_668, 5e-10);
        close(orbit.apparent_longitude, 199.908_95, 1e-5);
        close(orbit.obliquity, 23.439_99, 5e-6);
        close(sun.declination, -7.785_07, 5e-6);
        // 13 minutes 42.7 seconds.
        close(sun.equation_of_time, 13.0 + 42.7 / 60.0, 0.1 / 60.0);
    }

    /// Reda & Andreas 2004, *Solar Position Algorithm*, NREL/TP-560-34302, appendix: equation of
    /// time on 2003 October 17 at 19:30:30 universal time.
    #[test]
    fn the_equation_of_time_of_the_accurate_algorithm() {
        let julian = 2_452_930.312_847;
        // The accurate algorithm knows the planets' pull, this one does not: two seconds.
        assert!((Sun::at(julian).equation_of_time - 14.641_511).abs() < 0.034);
    }

    #[test]
    fn a_place_beyond_the_pole_is_a_fault() {
        assert_eq!(Position::new(91.0, 181.0).unwrap_err().iter().count(), 2);
        assert!(Position::new(f64::NAN, 0.0).is_err());
    }
}
