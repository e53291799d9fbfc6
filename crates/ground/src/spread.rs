//! What leaves a computation of a doubtful quantity: percentiles, and a bound on the upper one.

use crate::Finite;
use serde::{Deserialize, Serialize};

/// Percentiles of a column of draws, each an order statistic: no value is made up in between.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Spread {
    /// Least draw.
    pub least: Finite,
    /// 19 in 20 lie above.
    pub p5: Finite,
    /// Half lie below.
    pub p50: Finite,
    /// 19 in 20 lie below.
    pub p95: Finite,
    /// Upper 99 % bound of the 95th percentile, which is held against a limit: sampling error
    /// clears nobody.
    pub p95_bound: Finite,
    /// Greatest draw.
    pub most: Finite,
}

impl Spread {
    /// The spread of these draws; nothing when there are none or one is not finite.
    #[must_use]
    pub fn of(mut draws: Vec<f64>) -> Option<Self> {
        let n = draws.len();
        if n == 0 || draws.iter().any(|draw| !draw.is_finite()) {
            return None;
        }
        draws.sort_unstable_by(f64::total_cmp);
        let at = |rank: usize| draws.get(rank.clamp(1, n) - 1).copied().and_then(Finite::new);
        Some(Self {
            least: at(1)?,
            p5: at(rank(n, 0.05))?,
            p50: at(rank(n, 0.50))?,
            p95: at(rank(n, 0.95))?,
            p95_bound: at(upper_rank(n, 0.95, 0.99).unwrap_or(n))?,
            most: at(n)?,
        })
    }

    /// The spread of a known value.
    #[must_use]
    pub fn exact(value: f64) -> Option<Self> {
        Self::of(vec![value])
    }
}

/// Rank of the order statistic below or at which a share `p` of `n` draws lies.
fn rank(n: usize, p: f64) -> usize {
    (p * n as f64).ceil() as usize
}

/// The least rank (from 1) whose order statistic lies above the quantile `p` with confidence
/// `confidence`, for `n` independent draws; conservative for stratified ones. Nothing when `n` is
/// too small for any.
///
/// Formula: the least r with P(Binomial(n, p) < r) ≥ confidence (Conover 1999, *Practical
/// Nonparametric Statistics*, 3rd ed., section 3.2).
///
/// ```
/// assert_eq!(ground::upper_rank(8192, 0.95, 0.99), Some(7829));
/// ```
#[must_use]
pub fn upper_rank(n: usize, p: f64, confidence: f64) -> Option<usize> {
    // Summed from above: P(X ≥ r) is small there, and its terms lose nothing to rounding.
    let choices = |k: usize| libm::lgamma(n as f64 + 1.0) - libm::lgamma(k as f64 + 1.0);
    let mass = |k: usize| {
        let ways = choices(k) - libm::lgamma((n - k) as f64 + 1.0);
        libm::exp(ways + k as f64 * libm::log(p) + (n - k) as f64 * libm::log1p(-p))
    };
    let mut above = 0.0;
    for r in (1..=n).rev() {
        above += mass(r);
        if above > 1.0 - confidence {
            return (r < n).then_some(r + 1);
        }
    }
    Some(1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn percentiles_are_draws_and_not_in_between() {
        let spread = Spread::of((1..=1000).rev().map(f64::from).collect()).unwrap();
        let got = [spread.least, spread.p5, spread.p50, spread.p95, spread.most].map(Finite::get);
        assert_eq!(got, [1.0, 50.0, 500.0, 950.0, 1000.0]);
        assert!(spread.p95_bound > spread.p95);
    }

    #[test]
    fn too_few_draws_give_the_greatest_as_bound() {
        let spread = Spread::of(vec![3.0, 1.0, 2.0]).unwrap();
        assert_eq!(spread.p95_bound, spread.most);
        assert_eq!(Spread::of(vec![]), None);
        assert_eq!(Spread::of(vec![1.0, f64::NAN]), None);
    }

    /// A sample without error, for 95 % coverage with 95 % confidence, needs 59 draws (Conover
    /// 1999, table A6): its greatest is the bound. With 99 % confidence it needs 90.
    #[test]
    fn the_greatest_of_ninety_bounds_the_95th_percentile_with_99_percent() {
        assert_eq!(upper_rank(58, 0.95, 0.95), None);
        assert_eq!(upper_rank(59, 0.95, 0.95), Some(59));
        assert_eq!(upper_rank(89, 0.95, 0.99), None);
        assert_eq!(upper_rank(90, 0.95, 0.99), Some(90));
    }
}
