//! Degree-days: how much warmth a day or a spring brought.
//!
//! Methods differ by a third and more on the same days, so a threshold is worth something only with
//! the method and the base it was found with.

use ground::Temperature;
use serde::{Deserialize, Serialize};
use std::f64::consts::{FRAC_PI_2, PI};

/// Warmth, in days times degrees Celsius above a base.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct DegreeDays(pub f64);

/// The lowest and highest temperature of a day. The order in which they are given does not matter.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Day {
    low: f64,
    high: f64,
}

impl Day {
    /// A day between two temperatures.
    #[must_use]
    pub fn new(one: Temperature, other: Temperature) -> Self {
        Self { low: one.min(other).celsius(), high: one.max(other).celsius() }
    }

    fn mean(self) -> f64 {
        self.low.midpoint(self.high)
    }
}

/// How degree-days are counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Method {
    /// Mean of the two less the base, and never below zero.
    Average,
    /// The same after both were brought between base and cut-off.
    Modified,
    /// The day as a triangle.
    Triangle,
    /// The day as a sine (Baskerville & Emin 1969, *Ecology* 50:514–517).
    Sine,
    /// The four cases of the Irish and British weather services; it knows no cut-off.
    FourCase,
}

/// Where warmth begins and ceases to count.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Threshold {
    /// Base: below it nothing grows.
    pub base: Temperature,
    /// Cut-off: above it a plant grows no faster. None where it is left out.
    pub cut_off: Option<Temperature>,
}

impl Method {
    /// The degree-days of one day. A horizontal cut-off takes away what lies above it.
    ///
    /// ```
    /// use ground::Temperature;
    /// use harvest::degree_days::{Day, Method, Threshold};
    /// let celsius = Temperature::from_celsius;
    /// let day = Day::new(celsius(15.0), celsius(5.0));
    /// let from = Threshold { base: celsius(5.0), cut_off: None };
    /// assert_eq!(Method::Average.of_day(day, from).0, 5.0);
    /// ```
    #[must_use]
    pub fn of_day(self, day: Day, from: Threshold) -> DegreeDays {
        let base = from.base.celsius();
        let top = from.cut_off.map(Temperature::celsius);
        let above =
            |count: fn(Day, f64) -> f64| count(day, base) - top.map_or(0.0, |top| count(day, top));
        DegreeDays(match self {
            Self::Average => average(day, base),
            Self::Modified => {
                let within = |t: f64| t.max(base).min(top.unwrap_or(f64::INFINITY));
                let day = Day { low: within(day.low), high: within(day.high) };
                average(day, base)
            }
            Self::Triangle => above(triangle),
            Self::Sine => above(sine),
            Self::FourCase => four_case(day, base),
        })
    }

    /// The degree-days of these days together.
    #[must_use]
    pub fn of_days(self, days: &[Day], from: Threshold) -> DegreeDays {
        DegreeDays(days.iter().map(|day| self.of_day(*day, from).0).sum())
    }
}

fn average(day: Day, base: f64) -> f64 {
    (day.mean() - base).max(0.0)
}

fn triangle(day: Day, base: f64) -> f64 {
    if day.high <= base {
        0.0
    } else if day.low >= base {
        day.mean() - base
    } else {
        let above = day.high - base;
        above * above / (2.0 * (day.high - day.low))
    }
}

fn sine(day: Day, base: f64) -> f64 {
    let half = (day.high - day.low) / 2.0;
    if day.high <= base {
        0.0
    } else if day.low >= base {
        day.mean() - base
    } else {
        let angle = libm::asin((base - day.mean()) / half);
        ((day.mean() - base) * (FRAC_PI_2 - angle) + half * libm::cos(angle)) / PI
    }
}

fn four_case(day: Day, base: f64) -> f64 {
    let (over, under) = (day.high - base, base - day.low);
    if over <= 0.0 {
        0.0
    } else if under <= 0.0 {
        day.mean() - base
    } else if day.mean() >= base {
        over / 2.0 - under / 4.0
    } else {
        over / 4.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(high: f64, low: f64) -> Day {
        Day::new(Temperature::from_celsius(high), Temperature::from_celsius(low))
    }

    fn from(base: f64, cut_off: Option<f64>) -> Threshold {
        Threshold {
            base: Temperature::from_celsius(base),
            cut_off: cut_off.map(Temperature::from_celsius),
        }
    }

    /// Worked from the definitions and found again by adding up the curve of the day numerically:
    /// high, low, base, cut-off; average, modified, triangle, sine, both with cut-off.
    const TABLE: [[f64; 10]; 9] = [
        [10., 4., 5., 30., 2., 2.5, 2.083333, 2.1763, 2.083333, 2.1763],
        [15., 5., 5., 30., 5., 5., 5., 5., 5., 5.],
        [12., -2., 5., 30., 0., 3.5, 1.75, 2.2282, 1.75, 2.2282],
        [8., 2., 5., 30., 0., 1.5, 0.75, 0.9549, 0.75, 0.9549],
        [6., -4., 5., 30., 0., 0.5, 0.05, 0.1356, 0.05, 0.1356],
        [5., -3., 5., 30., 0., 0., 0., 0., 0., 0.],
        [36., 18., 10., 30., 17., 14., 17., 17., 16., 15.4745],
        [34., 6., 10., 30., 10., 10., 10.285714, 10.6513, 10., 10.],
        [14.2, 3.1, 4.5, 30., 4.15, 4.85, 4.2383, 4.3638, 4.2383, 4.3638],
    ];

    #[test]
    fn five_methods_on_nine_days() {
        for [high, low, base, top, average, modified, triangle, sine, cut_triangle, cut_sine] in
            TABLE
        {
            let at =
                |method: Method, cut: Option<f64>| method.of_day(day(high, low), from(base, cut)).0;
            // Given to four decimals or more.
            let close = |got: f64, given: f64| {
                assert!((got - given).abs() < 5.1e-5, "{high} {low}: {got} {given}");
            };
            close(at(Method::Average, None), average);
            close(at(Method::Modified, Some(top)), modified);
            close(at(Method::Triangle, None), triangle);
            close(at(Method::Sine, None), sine);
            close(at(Method::Triangle, Some(top)), cut_triangle);
            close(at(Method::Sine, Some(top)), cut_sine);
        }
    }

    /// The ten days show why a threshold is tied to its method.
    #[test]
    fn methods_differ_by_more_than_a_third_over_ten_days() {
        let high = [7.2, 9.8, 12.5, 11.0, 6.4, 4.9, 8.8, 13.6, 16.1, 15.0];
        let low = [-1.0, 0.6, 2.2, 5.1, 1.3, -2.4, -0.5, 3.0, 6.2, 7.5];
        let days: Vec<_> = high.iter().zip(low).map(|(h, l)| day(*h, l)).collect();
        let sum = |method: Method| method.of_days(&days, from(5.0, Some(30.0))).0;
        assert!((sum(Method::Average) - 21.3).abs() < 1e-9);
        assert!((sum(Method::Triangle) - 24.1851).abs() < 5e-5);
        assert!((sum(Method::Sine) - 25.5784).abs() < 5e-5);
        assert!((sum(Method::Modified) - 29.6).abs() < 1e-9);
    }

    /// The rule as the Irish service publishes it (met.ie, degree days), with the values worked from
    /// it.
    #[test]
    fn the_four_cases_of_the_weather_services() {
        for (high, low, base, given) in [
            (10.0, 4.0, 5.0, 2.25),
            (14.2, 3.1, 4.5, 4.5),
            (6.0, -4.0, 5.0, 0.25),
            (12.0, -2.0, 5.0, 1.75),
        ] {
            let got = Method::FourCase.of_day(day(high, low), from(base, None)).0;
            assert!((got - given).abs() < 1e-12, "{high} {low}");
        }
    }
}
