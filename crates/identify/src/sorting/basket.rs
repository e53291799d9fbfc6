//! A basket in which wrong pieces lie, and the part of it that is looked at.

use serde::{Deserialize, Serialize};

/// So many pieces, some of them wrong, and so many looked at, drawn at random.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Basket {
    pieces: u32,
    wrong: u32,
    seen: u32,
}

impl Basket {
    /// A basket; nothing where more are wrong, or more are looked at, than there are.
    #[must_use]
    pub fn new(pieces: u32, wrong: u32, seen: u32) -> Option<Self> {
        (wrong <= pieces && seen <= pieces).then_some(Self { pieces, wrong, seen })
    }

    /// How likely no wrong piece is among those looked at: C(N − W, n)/C(N, n), as the product over the
    /// wrong pieces of (N − n − i)/(N − i).
    #[must_use]
    pub fn none_seen(self) -> f64 {
        self.all_among(self.pieces - self.seen)
    }

    /// How likely every wrong piece is among those looked at: C(N − W, n − W)/C(N, n).
    #[must_use]
    pub fn all_seen(self) -> f64 {
        self.all_among(self.seen)
    }

    /// How likely all wrong pieces lie in a part of this size.
    fn all_among(self, part: u32) -> f64 {
        let mut chance = 1.0;
        for wrong in 0..self.wrong {
            if chance == 0.0 {
                break;
            }
            chance *= f64::from(part.saturating_sub(wrong)) / f64::from(self.pieces - wrong);
        }
        chance
    }

    /// How likely at least one wrong piece stays in, where each that is looked at is missed with this
    /// chance, one by one: 1 − P(all looked at) · (1 − m)^W. Misses that come together make it less.
    #[must_use]
    pub fn stays(self, missed: f64) -> f64 {
        let found = (0..self.wrong).fold(1.0, |found, _| found * (1.0 - chance(missed)));
        1.0 - self.all_seen() * found
    }

    /// How likely nothing is found although something is in it, where whoever misses one piece misses all:
    /// P(none looked at) + (1 − P(none looked at)) · m. Misses that come one by one make it less. Nothing
    /// where nothing is wrong.
    #[must_use]
    pub fn unnoticed(self, missed: f64) -> f64 {
        if self.wrong == 0 {
            return 0.0;
        }
        let none = self.none_seen();
        none + (1.0 - none) * chance(missed)
    }

    /// How many wrong pieces stay in on average: W (1 − (1 − m) n/N).
    #[must_use]
    pub fn expected(self, missed: f64) -> f64 {
        if self.pieces == 0 {
            return 0.0;
        }
        let share = f64::from(self.seen) / f64::from(self.pieces);
        f64::from(self.wrong) * (1.0 - (1.0 - chance(missed)) * share)
    }

    /// The fewest pieces of which at least one is wrong this surely, where so many of all are wrong; all of
    /// them where none is.
    #[must_use]
    pub fn sample(pieces: u32, wrong: u32, surely: f64) -> u32 {
        // Rounding must not ask for one piece more than 5 in 100.
        let most = 1.0 - surely + 1e-12;
        let enough = |seen: u32| {
            Self::new(pieces, wrong, seen).is_some_and(|basket| basket.none_seen() <= most)
        };
        let (mut few, mut many) = (0, pieces);
        while few < many {
            let half = few + (many - few) / 2;
            if enough(half) { many = half } else { few = half + 1 }
        }
        many
    }
}

/// A chance as it is; anything else is the worst.
pub(super) fn chance(said: f64) -> f64 {
    if (0.0..=1.0).contains(&said) { said } else { 1.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn none_seen(pieces: u32, wrong: u32, seen: u32) -> f64 {
        Basket::new(pieces, wrong, seen).unwrap().none_seen()
    }

    /// Manual of the R package `RSurveillance` 0.2.1, examples of `n.hypergeo` and `sep.hypergeo`, whose
    /// results for one diseased animal are exact: rdrr.io/cran/RSurveillance/man/n.hypergeo.html.
    #[test]
    fn one_wrong_piece_asks_for_nearly_all_as_published() {
        assert_eq!(Basket::sample(100, 1, 0.95), 95);
        assert_eq!(Basket::sample(80, 1, 0.95), 76);
        // A test that finds 92 in 100, on 50 of 100 animals of which one is diseased, finds it with 0.46.
        let half = Basket::new(100, 1, 50).unwrap();
        assert!((1.0 - half.unnoticed(0.08) - 0.46).abs() < 1e-12);
    }

    /// Cannon & Roe 1982, Livestock Disease Surveys, n = (1 − (1 − p)^(1/D)) (N − (D − 1)/2), as given at
    /// carrsconsulting.com/thepig/basicvet/diagnostics/samples.htm; their sheet (Hawkins 2003,
    /// scribd.com/doc/7215883) prints 399 for 16 of 1600 at 99 %. It comes close to the exact number, which
    /// is whole.
    #[test]
    fn samples_agree_with_the_published_approximation() {
        assert!((398..=399).contains(&Basket::sample(1600, 16, 0.99)));
        for pieces in [40, 100, 250, 1000, 5000] {
            for wrong in [1, 2, 3, 5, 10, 20] {
                for surely in [0.90, 0.95, 0.99] {
                    let (n, d) = (f64::from(pieces), f64::from(wrong));
                    let near = (1.0 - libm::pow(1.0 - surely, 1.0 / d)) * (n - (d - 1.0) / 2.0);
                    let exact = f64::from(Basket::sample(pieces, wrong, surely));
                    assert!((exact - near).abs() <= 1.5, "{wrong} of {pieces}: {exact}, {near}");
                }
            }
        }
    }

    /// A lot so large that putting back makes no difference: how many in 100 lots pass, of which 1, 2 and
    /// 5 % of the units are bad, after 10, 20 and 100 samples without a find, as printed in *Controlling the
    /// Microbiological Quality of Foods*, table 11.1 (issuhub.com/view/index?id=4167&pageIndex=415).
    #[test]
    fn of_a_large_lot_it_is_the_binomial_table() {
        let table = [(1, [90.0, 82.0, 37.0]), (2, [82.0, 67.0, 13.0]), (5, [60.0, 36.0, 0.6])];
        for (per_cent, passes) in table {
            for (seen, passed) in [10, 20, 100].into_iter().zip(passes) {
                let chance = 100.0 * none_seen(1_000_000, per_cent * 10_000, seen);
                // Printed in whole per cent.
                assert!((chance - passed).abs() < 0.5, "{per_cent} %, {seen}: {chance}");
            }
        }
    }

    /// The rule of three: nothing among n of very many leaves 3 in n possible (Hanley & Lippman-Hand 1983,
    /// JAMA 249:1743). So a sample that would hold one of 3 in n takes n pieces, nearly.
    #[test]
    fn a_large_sample_follows_the_rule_of_three() {
        for n in [50, 167, 1000] {
            let (pieces, wrong) = (1_000_000, 3_000_000 / n);
            let sample = f64::from(Basket::sample(pieces, wrong, 0.95)) / f64::from(n);
            assert!((0.96..=1.0).contains(&sample), "{n}: {sample}");
        }
    }

    #[test]
    fn what_cannot_be_is_no_basket() {
        assert_eq!(Basket::new(5, 6, 1), None);
        assert_eq!(Basket::new(5, 1, 6), None);
        assert_eq!(Basket::sample(7, 0, 0.95), 7);
    }
}
