//! How long a walk takes, by three rules of thumb. They time a fit walker without stops: a group
//! goes at its slowest member's pace, and looks at plants.

use ground::{Duration, Length};
use serde::{Deserialize, Serialize};

/// A stretch of way that climbs or falls evenly.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Leg {
    /// Along the map.
    pub along: Length,
    /// Up, or down when below zero.
    pub climb: Length,
}

impl Leg {
    /// The slope, climb over distance along the map.
    fn slope(self) -> f64 {
        self.climb / self.along
    }
}

/// Time by the rule of Naismith 1892: 5 km an hour, and an hour more for each 600 m up.
///
/// ```
/// use ground::Length;
/// use harvest::walk::{Leg, naismith};
/// let walk = [Leg { along: Length::from_m(20_000.0), climb: Length::from_m(1_000.0) }];
/// assert!((naismith(&walk).hours() - (4.0 + 10.0 / 6.0)).abs() < 1e-12);
/// ```
#[must_use]
pub fn naismith(legs: &[Leg]) -> Duration {
    legs.iter()
        .map(|leg| {
            let up = leg.climb.max(Length::ZERO);
            Duration::from_hours(leg.along.m() / 5_000.0 + up.m() / 600.0)
        })
        .sum()
}

/// Time by Naismith's rule with the corrections for descents of Langmuir 1984, *Mountaincraft and
/// Leadership*: 10 minutes less for each 300 m down at 5° to 12°, 10 more where it is steeper.
#[must_use]
pub fn langmuir(legs: &[Leg]) -> Duration {
    let correction = |leg: &Leg| {
        let down = (Length::ZERO - leg.climb).max(Length::ZERO);
        let degrees = libm::atan(-leg.slope()).to_degrees();
        let minutes = if degrees > 12.0 {
            10.0
        } else if degrees >= 5.0 {
            -10.0
        } else {
            0.0
        };
        Duration::from_minutes(minutes * down.m() / 300.0)
    };
    naismith(legs) + legs.iter().map(correction).sum()
}

/// Time by the hiking function of Tobler 1993, *Three presentations on geographical analysis and
/// modeling*, NCGIA report 93-1: 6·exp(−3.5·|slope + 0.05|) km an hour on a path, six tenths of
/// that beside it.
#[must_use]
pub fn tobler(legs: &[Leg], on_path: bool) -> Duration {
    let share = if on_path { 1.0 } else { 0.6 };
    legs.iter()
        .filter(|leg| leg.along > Length::ZERO)
        .map(|leg| {
            let kilometres_an_hour = share * tobler_speed(leg.slope());
            Duration::from_hours(leg.along.m() / 1_000.0 / kilometres_an_hour)
        })
        .sum()
}

/// How far a led group goes in an hour on the level, where nobody measured its own: 3 km (Karos
/// Adventure, *Routecards & Route Planning*, karosadventure.com: 3 km an hour on level ground, and a
/// minute more for each 10 m up). A page of people who lead groups, not a measurement.
pub const GROUP_HOUR: Length = Length::from_mm(3_000_000.0);

/// Time of a led group: so far in an hour on the level, and an hour more for each 600 m up. A way
/// down takes as long as the same way up: that is our own choice, so that a way back is never timed
/// too short because it was climbed the other way round.
///
/// Valid for a group that goes no faster than Naismith's walker, up to 5 km in an hour.
///
/// ```
/// use ground::Length;
/// use harvest::walk::{GROUP_HOUR, Leg, group};
/// let there = [Leg { along: Length::from_m(1_500.0), climb: Length::from_m(-60.0) }];
/// assert!((group(&there, GROUP_HOUR).minutes() - 36.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn group(legs: &[Leg], in_an_hour: Length) -> Duration {
    legs.iter()
        .map(|leg| {
            let up_or_down = leg.climb.max(Length::ZERO - leg.climb);
            Duration::from_hours(leg.along / in_an_hour + up_or_down.m() / 600.0)
        })
        .sum()
}

/// Kilometres an hour at a slope.
fn tobler_speed(slope: f64) -> f64 {
    6.0 * libm::exp(-3.5 * (slope + 0.05).abs())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The page's own numbers: 1 km takes 20 minutes, 0.5 km 10, 0.25 km 5, and 10 m up one more.
    #[test]
    fn a_group_is_timed_as_the_page_says() {
        for (metres, up, minutes) in
            [(1_000.0, 0.0, 20.0), (500.0, 0.0, 10.0), (250.0, 0.0, 5.0), (1_000.0, 10.0, 21.0)]
        {
            let leg = Leg { along: Length::from_m(metres), climb: Length::from_m(up) };
            assert!((group(&[leg], GROUP_HOUR).minutes() - minutes).abs() < 1e-9);
            let back = Leg { climb: Length::from_m(-up), ..leg };
            assert!((group(&[back], GROUP_HOUR).minutes() - minutes).abs() < 1e-9);
            assert!(group(&[leg], GROUP_HOUR) > naismith(&[leg]));
        }
    }

    /// Speeds of the published formula.
    #[test]
    fn tobler_walks_fastest_on_a_gentle_descent() {
        for (slope, speed) in [
            (-0.3, 2.501_17),
            (-0.2, 3.549_33),
            (-0.1, 5.036_74),
            (-0.05, 6.0),
            (0.0, 5.036_74),
            (0.05, 4.228_13),
            (0.1, 3.549_33),
            (0.2, 2.501_17),
            (0.3, 1.762_55),
        ] {
            assert!((tobler_speed(slope) - speed).abs() < 5.1e-6, "{slope}");
        }
    }

    /// Five legs, worked by hand: 6.4 km and 180 m up, 150 m down at 5.7° and 220 m at 13.7°.
    #[test]
    fn three_rules_time_the_same_walk() {
        let legs: Vec<_> = [(1.2, 120.0), (0.8, 0.0), (1.5, -150.0), (0.9, -220.0), (2.0, 60.0)]
            .map(|(km, up)| Leg { along: Length::from_m(km * 1000.0), climb: Length::from_m(up) })
            .into();
        let minutes = |time: Duration| time.minutes();
        assert!((minutes(naismith(&legs)) - 94.8).abs() < 1e-9);
        assert!((minutes(langmuir(&legs)) - (94.8 - 5.0 + 22.0 / 3.0)).abs() < 1e-9);
        assert!((minutes(tobler(&legs, true)) - 91.9215).abs() < 5e-5);
        let off = minutes(tobler(&legs, false)) * 0.6;
        assert!((off - minutes(tobler(&legs, true))).abs() < 1e-9);
    }
}
