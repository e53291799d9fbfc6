//! What may still be in a basket of which every piece was looked at.

use super::basket::chance;
use serde::{Deserialize, Serialize};

/// What is thought of a basket before anybody looks.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Prior {
    /// How likely something is in it.
    pub contaminated: f64,
    /// How likely each wrong piece is followed by another: so many or more fall off by this factor.
    pub followed: f64,
}

/// How likely something is still in a basket of so many pieces, after so many wrong ones were found in it
/// and taken out, where each wrong piece is missed with this chance.
///
/// By Bayes' rule. Before: W = 0 with 1 − c, else W = w with c (1 − f) f^(w − 1). So many found of w leave l
/// = w − r with C(w, r) m^l, up to what is the same for all. `again`: how likely each that was left was
/// missed once more, by a second round that found nothing; 1 where there was none.
#[must_use]
pub fn left(pieces: u32, found: u32, missed: f64, again: f64, prior: Prior) -> f64 {
    let factor = chance(prior.followed) * chance(missed) * chance(again);
    // What is the same for all is left out; only a basket without anything needs its own share.
    let Some(most) = pieces.checked_sub(found) else { return 1.0 };
    let (mut none, mut some) = (1.0, 0.0);
    let mut term = 1.0;
    let mut from = 1;
    if found == 0 {
        none = 1.0 - chance(prior.contaminated);
        // The first wrong piece is followed by nothing yet.
        term = chance(prior.contaminated)
            * (1.0 - chance(prior.followed))
            * chance(missed)
            * chance(again);
        some = if most > 0 { term } else { 0.0 };
        from = 2;
    }
    for left in from..=most {
        let ways = if found == 0 { 1.0 } else { f64::from(found + left) / f64::from(left) };
        term *= ways * factor;
        some += term;
        if term < some * 1e-18 {
            break;
        }
    }
    if none + some > 0.0 { some / (none + some) } else { 1.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    const PRIOR: Prior = Prior { contaminated: 0.15, followed: 0.5 };

    /// Every number of wrong pieces by itself, with binomial coefficients from Pascal's triangle.
    fn counted(pieces: u32, found: u32, missed: f64, again: f64, prior: Prior) -> f64 {
        let mut row = vec![1.0];
        let (mut none, mut some) = (0.0, 0.0);
        for wrong in 0..=pieces {
            let before = if wrong == 0 {
                1.0 - prior.contaminated
            } else {
                prior.contaminated
                    * (1.0 - prior.followed)
                    * libm::pow(prior.followed, f64::from(wrong - 1))
            };
            if wrong >= found {
                let ways = row[found as usize];
                let stay = libm::pow(missed * again, f64::from(wrong - found));
                let weight = before * ways * libm::pow(1.0 - missed, f64::from(found)) * stay;
                if wrong == found { none += weight } else { some += weight }
            }
            let next = row.windows(2).map(|pair| pair[0] + pair[1]);
            row = std::iter::once(1.0).chain(next).chain([1.0]).collect();
        }
        some / (none + some)
    }

    #[test]
    fn bayes_rule_is_that_of_counting_every_case() {
        for pieces in [1, 2, 5, 60] {
            for found in (0..4).filter(|found| *found <= pieces) {
                for (missed, again) in [(0.0, 1.0), (0.1, 1.0), (0.4, 0.7), (0.9, 1.0)] {
                    let (a, b) = (
                        left(pieces, found, missed, again, PRIOR),
                        counted(pieces, found, missed, again, PRIOR),
                    );
                    assert!((a - b).abs() < 1e-12, "{pieces} {found} {missed}: {a}, {b}");
                }
            }
        }
    }

    /// Of a basket without end, what is left is negative binomial: 1 − (1 − f m)^(r + 1) that there is some
    /// (Johnson, Kemp & Kotz, Univariate Discrete Distributions, from memory; counted above).
    #[test]
    fn of_a_large_basket_it_has_a_short_form() {
        for found in [1, 2, 5] {
            let short = 1.0 - libm::pow(1.0 - 0.5 * 0.3, f64::from(found) + 1.0);
            assert!((left(100_000, found, 0.3, 1.0, PRIOR) - short).abs() < 1e-12);
        }
    }

    #[test]
    fn what_cannot_be_is_the_worst() {
        assert_eq!(left(2, 3, 0.1, 1.0, PRIOR), 1.0);
        assert_eq!(left(3, 3, 0.1, 1.0, PRIOR), 0.0);
    }
}
