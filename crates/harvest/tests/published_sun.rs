//! Sun times as an ephemeris and a solar-energy library compute them (to two seconds of one another;
//! no refraction model, horizon at −0°50′ for the sun's centre), in universal time.

#![expect(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test reports by panicking, in its helpers too"
)]

use harvest::{Crossing, Daylight, Position, daylight};
use jiff::Timestamp;
use jiff::civil::{Date, date};

/// Handbooks give rise and set to a minute below 65° and call that the limit of what air allows;
/// twilight to two.
const RISE: i64 = 60;
const TWILIGHT: i64 = 120;

fn day(latitude: f64, longitude: f64, on: Date) -> Daylight {
    daylight(on, Position::new(latitude, longitude).unwrap()).unwrap()
}

fn off(got: Timestamp, expected: &str) -> i64 {
    let expected: Timestamp = expected.parse().unwrap();
    (got.as_second() - expected.as_second()).abs()
}

fn near(got: Crossing, expected: &str, seconds: i64) {
    let moment = got.at().unwrap_or_else(|| panic!("no crossing near {expected}"));
    assert!(off(moment, expected) <= seconds, "{moment} is not {expected}");
}

fn row(day: Daylight, expected: [&str; 5]) {
    let [rise, noon, set, dawn, dusk] = expected;
    near(day.rise, rise, RISE);
    assert!(off(day.noon, noon) <= 10, "{} is not {noon}", day.noon);
    near(day.set, set, RISE);
    near(day.dawn, dawn, TWILIGHT);
    near(day.dusk, dusk, TWILIGHT);
}

#[test]
fn the_temperate_zones() {
    row(
        day(51.4769, -0.0005, date(2024, 6, 20)),
        [
            "2024-06-20T03:42:38Z",
            "2024-06-20T12:01:42Z",
            "2024-06-20T20:20:46Z",
            "2024-06-20T02:54:58Z",
            "2024-06-20T21:08:28Z",
        ],
    );
    row(
        day(51.4769, -0.0005, date(2024, 12, 21)),
        [
            "2024-12-21T08:03:19Z",
            "2024-12-21T11:58:17Z",
            "2024-12-21T15:53:16Z",
            "2024-12-21T07:23:01Z",
            "2024-12-21T16:33:34Z",
        ],
    );
    row(
        day(55.9533, -3.1883, date(2025, 4, 15)),
        [
            "2025-04-15T05:06:55Z",
            "2025-04-15T12:12:42Z",
            "2025-04-15T19:19:49Z",
            "2025-04-15T04:26:46Z",
            "2025-04-15T20:00:15Z",
        ],
    );
    row(
        day(52.52, 13.405, date(2025, 5, 10)),
        [
            "2025-05-10T03:18:14Z",
            "2025-05-10T11:02:45Z",
            "2025-05-10T18:48:21Z",
            "2025-05-10T02:36:36Z",
            "2025-05-10T19:30:17Z",
        ],
    );
}

/// Dusk in Asheville and dawn in Helsinki fall on another day in Greenwich.
#[test]
fn days_that_spill_over_midnight_in_greenwich() {
    row(
        day(35.5951, -82.5515, date(2025, 4, 5)),
        [
            "2025-04-05T11:10:39Z",
            "2025-04-05T17:32:44Z",
            "2025-04-05T23:55:24Z",
            "2025-04-05T10:44:52Z",
            "2025-04-06T00:21:16Z",
        ],
    );
    row(
        day(60.1699, 24.9384, date(2025, 6, 21)),
        [
            "2025-06-21T00:54:02Z",
            "2025-06-21T10:22:05Z",
            "2025-06-21T19:50:06Z",
            "2025-06-20T23:01:43Z",
            "2025-06-21T21:42:22Z",
        ],
    );
}

/// The first of October in Sydney begins on the thirtieth of September in Greenwich. Asked for the
/// day in Greenwich, one would get 19:31:09, a minute and a half off.
#[test]
fn the_day_is_that_of_the_place() {
    let day = day(-33.8688, 151.2093, date(2025, 10, 1));
    row(
        day,
        [
            "2025-09-30T19:32:33Z",
            "2025-10-01T01:44:53Z",
            "2025-10-01T07:57:47Z",
            "2025-09-30T19:07:32Z",
            "2025-10-01T08:22:51Z",
        ],
    );
    near(day.rise, "2025-09-30T19:32:33Z", 20);
}

#[test]
fn the_equator() {
    row(
        day(-0.1807, -78.4678, date(2025, 3, 20)),
        [
            "2025-03-20T11:17:54Z",
            "2025-03-20T17:21:09Z",
            "2025-03-20T23:24:25Z",
            "2025-03-20T10:57:01Z",
            "2025-03-20T23:45:04Z",
        ],
    );
}

#[test]
fn beyond_the_polar_circle_there_may_be_no_rise_and_no_set() {
    let summer = day(69.6492, 18.9553, date(2025, 6, 21));
    assert_eq!([summer.dawn, summer.rise, summer.set, summer.dusk], [Crossing::StaysAbove; 4]);
    assert!(off(summer.noon, "2025-06-21T10:46:01Z") <= 10);
    let winter = day(69.6492, 18.9553, date(2025, 12, 21));
    assert_eq!([winter.rise, winter.set], [Crossing::StaysBelow; 2]);
    near(winter.dawn, "2025-12-21T08:31:25Z", TWILIGHT);
    near(winter.dusk, "2025-12-21T12:53:15Z", TWILIGHT);
}
