//! Sun times against NREL's Solar Position Algorithm, in the crate `solar-positioning`: the sun must
//! stand at the wanted altitude at the moment that was found.

#![expect(clippy::unwrap_used, reason = "a test reports by panicking, in its helpers too")]

use harvest::{Crossing, Position, daylight};
use jiff::civil::{Date, date};
use solar_positioning::time::JulianDate;
use solar_positioning::{Location, SolarPositions};

/// Altitude of the sun's centre without refraction, by the accurate algorithm.
fn altitude(second: i64, latitude: f64, longitude: f64) -> f64 {
    let julian = 2_440_587.5 + second as f64 / 86_400.0;
    let time = JulianDate::new(julian, 69.0).unwrap();
    let prepared = SolarPositions::new().for_time_from_julian(time).unwrap();
    let place = Location { latitude, longitude };
    prepared.at(place, 0.0, None).unwrap().elevation_angle()
}

/// The largest error of altitude at the crossings of a day, in degrees.
fn error(on: Date, latitude: f64, longitude: f64) -> f64 {
    let day = daylight(on, Position::new(latitude, longitude).unwrap()).unwrap();
    let wanted = [(day.dawn, -6.0), (day.rise, -0.8333), (day.set, -0.8333), (day.dusk, -6.0)];
    let off = |(crossing, wanted): (Crossing, f64)| {
        let moment = crossing.at().map(|at| at.as_second());
        moment.map_or(0.0, |second| (altitude(second, latitude, longitude) - wanted).abs())
    };
    wanted.map(off).into_iter().fold(0.0, f64::max)
}

/// The low-accuracy sun is good to 0.01° of longitude, half a second of rounding turns the earth by
/// 0.002°, and the accurate algorithm takes off a parallax of up to 0.0024°: 0.016° in all, which
/// is four seconds at the equator and eight at 60°.
#[test]
fn the_sun_stands_where_it_should_at_every_crossing() {
    let mut worst = 0.0_f64;
    for latitude in [-54.8, -33.9, -0.2, 28.6, 40.0, 52.5, 60.2, 65.0, 69.6, 78.2] {
        for longitude in [-179.5, -82.6, 0.0, 13.4, 151.2, 179.5] {
            for month in 1..=12 {
                for year in [1990, 2027, 2050] {
                    worst = worst.max(error(date(year, month, 15), latitude, longitude));
                }
            }
        }
    }
    assert!(worst < 0.016, "{worst}°");
}
