//! Student's t distribution, with the same bits on every machine.

use std::f64::consts::FRAC_2_PI;
use std::num::NonZeroU32;

/// The number below which Student's t with `df` degrees of freedom lies with probability `p`.
///
/// Found by halving an interval on the finite series of Abramowitz & Stegun 1964, *Handbook of
/// Mathematical Functions*, 26.7.3 and 26.7.4, whose terms are all positive. At 0 and 1 it gives
/// the infinities, outside them NaN.
///
/// ```
/// use std::num::NonZeroU32;
/// let df = NonZeroU32::new(9).unwrap();
/// // NIST/SEMATECH e-Handbook of Statistical Methods, table 1.3.6.7.2.
/// assert!((harvest::student_quantile(0.975, df) - 2.262).abs() < 5e-4);
/// ```
#[must_use]
pub fn student_quantile(p: f64, df: NonZeroU32) -> f64 {
    if !(0.0..=1.0).contains(&p) {
        return f64::NAN;
    }
    if p < 0.5 {
        return -student_quantile(1.0 - p, df);
    }
    if p == 1.0 {
        return f64::INFINITY;
    }
    let within = 2.0 * p - 1.0;
    let mut low = 0.0;
    let mut high = 1.0;
    while share_within(high, df) < within && high < 1e300 {
        low = high;
        high *= 2.0;
    }
    halve(low, high, |t| share_within(t, df) < within)
}

/// Where a question that holds at `low` stops holding, by halving down to neighbouring numbers.
fn halve(mut low: f64, mut high: f64, holds: impl Fn(f64) -> bool) -> f64 {
    loop {
        let middle = low + (high - low) / 2.0;
        if middle <= low || middle >= high {
            return middle;
        }
        if holds(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
}

/// Probability that t lies between `-t` and `t`.
fn share_within(t: f64, df: NonZeroU32) -> f64 {
    let nu = f64::from(df.get());
    let angle = libm::atan(t / nu.sqrt());
    let (sin, cos) = libm::sincos(angle);
    let square = cos * cos;
    let odd = df.get() % 2 == 1;
    // Terms k = 1, 3, 5, … for odd degrees of freedom and 0, 2, 4, … for even ones.
    let mut term = if odd { cos } else { 1.0 };
    let mut sum = 0.0;
    let mut k = u32::from(odd);
    while k + 2 <= df.get() {
        sum += term;
        let next = f64::from(k);
        term *= square * (next + 1.0) / (next + 2.0);
        k += 2;
    }
    if odd { FRAC_2_PI * (angle + sin * sum) } else { sin * sum }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn quantile(p: f64, df: u32) -> f64 {
        student_quantile(p, NonZeroU32::new(df).unwrap())
    }

    /// NIST/SEMATECH e-Handbook of Statistical Methods, table 1.3.6.7.2, given to three decimals.
    #[test]
    fn the_published_table_is_met() {
        for (df, p, value) in [
            (1, 0.975, 12.706),
            (2, 0.975, 4.303),
            (3, 0.95, 2.353),
            (5, 0.99, 3.365),
            (10, 0.975, 2.228),
            (17, 0.995, 2.898),
            (30, 0.975, 2.042),
            (100, 0.975, 1.984),
        ] {
            assert!((quantile(p, df) - value).abs() < 6e-4, "{df} {p}");
        }
    }

    /// One degree of freedom is the Cauchy distribution, tan(π(p − ½)); two have the closed form
    /// (2p − 1)/√(2p(1 − p)).
    #[test]
    fn the_closed_forms_are_met() {
        for p in [0.6_f64, 0.9, 0.975, 0.999] {
            let one = libm::tan(std::f64::consts::PI * (p - 0.5));
            let two = (2.0 * p - 1.0) / (2.0 * p * (1.0 - p)).sqrt();
            // In the tail the probability's last bit moves the quantile by 1e-16 over the density,
            // here 3e-6 at worst.
            assert!((quantile(p, 1) / one - 1.0).abs() < 1e-11, "{p}");
            assert!((quantile(p, 2) / two - 1.0).abs() < 1e-11, "{p}");
        }
    }

    #[test]
    fn more_degrees_of_freedom_draw_it_in_towards_the_normal() {
        let all: Vec<_> = (1..60).map(|df| quantile(0.975, df)).collect();
        assert!(all.windows(2).all(|pair| pair[0] > pair[1]));
        let normal = ground::normal_quantile(0.975);
        assert!(all.iter().all(|t| *t > normal));
        assert!(quantile(0.975, 100_000) - normal < 1e-4);
    }

    #[test]
    fn it_is_symmetric_and_its_ends_are_infinite() {
        assert_eq!(quantile(0.025, 7), -quantile(0.975, 7));
        assert_eq!(quantile(0.5, 7), 0.0);
        assert_eq!(quantile(1.0, 7), f64::INFINITY);
        assert!(quantile(1.1, 7).is_nan());
    }
}
