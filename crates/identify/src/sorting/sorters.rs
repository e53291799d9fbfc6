//! How many wrong pieces sorters miss.

use super::UNNOTICED;
use super::basket::chance;
use crate::Level;
use ground::Organ;
use serde::{Deserialize, Serialize};

/// How well somebody sees a wrong piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sees {
    /// How well they read characters.
    pub level: Level,
    /// A trial that they made; none: what is rare is overlooked as published.
    pub planted: Option<Planted>,
}

/// A trial: wrong pieces were planted and counted out again.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Planted {
    /// How many were missed.
    pub missed: u32,
    /// Of how many.
    pub of: u32,
}

impl Sees {
    /// The share of wrong pieces that they do not notice. By a trial, the most that its result leaves
    /// possible 19 times in 20.
    #[must_use]
    pub fn overlooks(self) -> f64 {
        self.planted.map_or(UNNOTICED, |trial| upper_bound(trial.missed, trial.of))
    }

    /// The share of wrong pieces that they misread though they look at them: one reading of a leaf, the
    /// organ that is read worst.
    #[must_use]
    pub fn misreads(self) -> f64 {
        self.level.misread(Organ::Leaf)
    }

    /// The share of wrong pieces that they miss where the signs are misread this often: not noticed, or
    /// noticed and misread. What is planted is harmless and hence no look-alike, so a trial says nothing of
    /// misreading.
    #[must_use]
    pub fn misses(self, misread: f64) -> f64 {
        let overlooked = self.overlooks();
        overlooked + (1.0 - overlooked) * chance(misread)
    }
}

/// How likely all of these sorters miss a wrong piece: with this share of cases they miss together, as the
/// best of them does; otherwise each by themselves. s · min m + (1 − s) · Π m, for two alike sorters
/// m (s + (1 − s) m). Nobody misses nothing: without a sorter it is certain.
#[must_use]
pub fn missed_by_all(misses: &[f64], shared: f64) -> f64 {
    // In one order, so that it hangs on nobody's place to the last digit.
    let mut misses: Vec<f64> = misses.iter().map(|miss| chance(*miss)).collect();
    misses.sort_by(f64::total_cmp);
    let shared = chance(shared);
    let best = misses.first().copied().unwrap_or(1.0);
    shared * best + (1.0 - shared) * misses.iter().product::<f64>()
}

/// The most that may be missed when so many of those that were planted were: the upper 95 % bound of Clopper
/// & Pearson 1934, Biometrika 26:404, the m at which so few or fewer are missed 1 time in 20. Everything where
/// none was planted.
#[must_use]
pub fn upper_bound(missed: u32, of: u32) -> f64 {
    if missed >= of {
        return 1.0;
    }
    let (mut low, mut high) = (0.0, 1.0);
    // Halving to the last bit; the upper end is kept.
    for _ in 0..60 {
        let half = f64::midpoint(low, high);
        if at_most(missed, of, half) > 0.05 { low = half } else { high = half }
    }
    high
}

/// How likely at most so many of all are missed, each with this chance between 0 and 1.
fn at_most(missed: u32, of: u32, chance: f64) -> f64 {
    let mut term = libm::pow(1.0 - chance, f64::from(of));
    let mut sum = term;
    for k in 1..=missed {
        let left = f64::from(of - k + 1) / f64::from(k);
        term *= left * chance / (1.0 - chance);
        sum += term;
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Nothing missed: 1 − 0.05^(1/n), near 3/n (Hanley & Lippman-Hand 1983, JAMA 249:1743; the letter of
    /// 1995, JAMA 274:1013, has 50 and 1000: about 6 % and 0.3 %).
    #[test]
    fn a_trial_that_missed_nothing_follows_the_rule_of_three() {
        // Half of the last digit that is printed.
        for (planted, published, half) in [(50, 0.06, 0.005), (1000, 0.003, 0.000_5)] {
            let bound = upper_bound(0, planted);
            assert!((bound - published).abs() < half, "{planted}: {bound}");
            let exact = 1.0 - libm::pow(0.05, 1.0 / f64::from(planted));
            assert!((bound - exact).abs() < 1e-12);
        }
    }

    #[test]
    fn a_trial_without_pieces_says_nothing_and_one_that_missed_all_everything() {
        assert_eq!([upper_bound(0, 0), upper_bound(20, 20)], [1.0, 1.0]);
        assert!(upper_bound(1, 20) > upper_bound(0, 20));
        // At the bound, one or none of twenty is missed 1 time in 20.
        let bound = upper_bound(1, 20);
        let few = libm::pow(1.0 - bound, 20.0) + 20.0 * bound * libm::pow(1.0 - bound, 19.0);
        assert!((few - 0.05).abs() < 1e-9);
    }

    /// A leaf is misread a quarter more often than 4 % (see [`crate::evidence`]).
    #[test]
    fn a_trial_stands_for_what_is_overlooked_and_not_for_what_is_misread() {
        let leader = |planted| Sees { level: Level::Leader, planted };
        let plain = leader(None);
        assert!((plain.misses(plain.misreads()) - (0.4 + 0.6 * 0.05)).abs() < 1e-12);
        let tried = leader(Some(Planted { missed: 0, of: 59 }));
        assert!(tried.overlooks() < 0.05 && tried.misses(0.05) > 0.05);
        assert!(leader(Some(Planted { missed: 0, of: 0 })).misses(0.0) == 1.0);
    }

    /// Two who miss alike: the second misses what the first missed with s + (1 − s) m.
    #[test]
    fn two_alike_depend_on_each_other_as_said() {
        let both = missed_by_all(&[0.4, 0.4], 0.5);
        assert!((both - 0.4 * (0.5 + 0.5 * 0.4)).abs() < 1e-15);
        assert!((missed_by_all(&[0.4, 0.1], 0.0) - 0.04).abs() < 1e-15);
        assert!((missed_by_all(&[0.4, 0.1], 1.0) - 0.1).abs() < 1e-15);
    }

    #[test]
    fn what_is_no_chance_counts_as_the_worst() {
        assert_eq!(missed_by_all(&[f64::NAN], 0.5), 1.0);
        assert_eq!(missed_by_all(&[], 0.5), 1.0);
        let leader = Sees { level: Level::Leader, planted: None };
        assert_eq!(leader.misses(f64::INFINITY), 1.0);
    }
}
