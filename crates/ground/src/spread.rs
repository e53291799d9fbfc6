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
        let bound = upper_rank(n, 0.95, 0.99).unwrap_or(n);
        let ranks = [1, rank(n, 0.05), rank(n, 0.50), rank(n, 0.95), bound, n];
        let [least, p5, p50, p95, p95_bound, most] = at_ranks(&mut draws, ranks).map(Finite::new);
        Some(Self {
            least: least?,
            p5: p5?,
            p50: p50?,
            p95: p95?,
            p95_bound: p95_bound?,
            most: most?,
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

/// The draws of these ranks (from 1, in rising order). Each is looked for only among the draws that
/// the last one left above it, which takes less than to sort them all.
fn at_ranks<const N: usize>(draws: &mut [f64], ranks: [usize; N]) -> [f64; N] {
    let mut above = draws;
    let mut passed = 0;
    ranks.map(|rank| {
        let rest = std::mem::take(&mut above);
        let at = rank.clamp(passed + 1, passed + rest.len()) - 1 - passed;
        let found = *rest.select_nth_unstable_by(at, f64::total_cmp).1;
        passed += at;
        above = rest.get_mut(at..).unwrap_or_default();
        found
    })
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
    // Summed from above: P(X ≥ r) is small there, and its terms lose nothing to rounding. What lies
    // more than ten standard deviations above the mean weighs less than 1e-20.
    let (size, mean) = (n as f64, n as f64 * p);
    let top = (mean + 10.0 * (mean * (1.0 - p)).sqrt()).ceil().min(size);
    let ways = libm::lgamma(size + 1.0) - libm::lgamma(top + 1.0) - libm::lgamma(size - top + 1.0);
    let mut mass = libm::exp(ways + top * libm::log(p) + (size - top) * libm::log1p(-p));
    let mut above = 0.0;
    for r in (1..=top as usize).rev() {
        above += mass;
        if above > 1.0 - confidence {
            return (r < n).then_some(r + 1);
        }
        mass *= r as f64 / (n - r + 1) as f64 * ((1.0 - p) / p);
    }
    Some(1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn percentiles_are_draws_and_not_in_between() {
        let spread = Spread::of((1..=1000).rev().map(f64::from).collect()).unwrap();
        let got = [spread.least, spread.p5, spread.p50, spread.p95, spread.most].map(Finite::get);
        assert_eq!(got, [1.0, 50.0, 500.0, 950.0, 1000.0]);
        assert!(spread.p95_bound > spread.p95);
    }

    #[test]
    fn the_rank_of_the_bound_is_that_of_the_whole_binomial_sum() {
        let whole = |n: usize, p: f64, confidence: f64| {
            let ways = |k: usize| libm::lgamma(n as f64 + 1.0) - libm::lgamma(k as f64 + 1.0);
            let mass = |k: usize| {
                let log = ways(k) - libm::lgamma((n - k) as f64 + 1.0);
                libm::exp(log + k as f64 * libm::log(p) + (n - k) as f64 * libm::log1p(-p))
            };
            let mut above = 0.0;
            let last = (1..=n).rev().find(|&r| {
                above += mass(r);
                above > 1.0 - confidence
            });
            last.map_or(Some(1), |r| (r < n).then_some(r + 1))
        };
        for n in (1..300).chain([1000, 8192, 131_072]) {
            for (p, confidence) in [(0.05, 0.99), (0.5, 0.9), (0.95, 0.99), (0.99, 0.999)] {
                assert_eq!(upper_rank(n, p, confidence), whole(n, p, confidence), "{n} {p}");
            }
        }
    }

    proptest! {
        #[test]
        fn a_draw_at_a_rank_is_the_one_a_sort_puts_there(
            mut draws in prop::collection::vec(-9.0..9.0f64, 1..200),
            shares in prop::array::uniform4(0.0..1.0f64),
        ) {
            let mut ranks = shares.map(|share| 1 + (share * draws.len() as f64) as usize);
            ranks.sort_unstable();
            let found = at_ranks(&mut draws, ranks);
            draws.sort_unstable_by(f64::total_cmp);
            prop_assert_eq!(found, ranks.map(|rank| draws[rank - 1]));
        }
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
