//! Lengths and counts as rungs of a ladder, so that they are judged like states.
//!
//! A rung of the ladder of lengths is 5 % longer than the one below, which is also how well a
//! length is measured; a rung of the ladder of counts is one thing more.

use crate::evidence;
use crate::states::{count, normalised};
use ground::normal_cdf;

/// Which ladder.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Ladder {
    /// Lengths from 0.1 mm to 100 m.
    Lengths,
    /// Counts from 0 to 200; more are taken for 200.
    Counts,
}

/// Where the ladder of lengths stands, in millimetres.
const SHORTEST: f64 = 0.1;
/// 0.1 mm × 1.05^284 lies just above 100 m.
const LENGTHS: usize = 284;
const MOST_COUNTED: u32 = 200;
/// Rungs between two marks of lengths that are said roughly.
const STEP: usize = 8;

impl Ladder {
    /// Share of plants on each rung, from an ordinary range and outer limits; sums to 1. The second
    /// list holds what of it comes from the outer limits alone.
    ///
    /// Even from rung to rung within the ordinary range, since a flora that gives two ends says no
    /// more; a little beyond it, and a little below for what is not yet grown.
    pub(crate) fn shares(
        self,
        ordinary: (f64, f64),
        extreme: Option<(f64, f64)>,
    ) -> (Vec<f64>, Vec<f64>) {
        let outer = extreme.unwrap_or_else(|| self.beyond(ordinary));
        let usual = self.even(ordinary, evidence::USUALLY);
        let rare = self.even(outer, evidence::SOMETIMES);
        let young = self.even((self.half_grown(ordinary.0), ordinary.0), evidence::YOUNG);
        let all = usual.iter().zip(&rare).zip(&young).map(|((a, b), c)| a + b + c).collect();
        let total = evidence::USUALLY + evidence::SOMETIMES + evidence::YOUNG;
        (normalised(all), rare.iter().map(|share| share / total).collect())
    }

    /// For each true length, the probability that a reader reports one between these.
    ///
    /// The error is normal, of one rung; a gross mistake may land on any rung.
    pub(crate) fn measured(low: f64, high: f64, misread: f64) -> Vec<f64> {
        let (from, to) = (rung_of(low) - 0.5, rung_of(high) + 0.5);
        let anywhere = ((to - from) / count(LENGTHS)).min(1.0);
        let weight = |truth: f64| {
            let reported = normal_cdf(to - truth) - normal_cdf(from - truth);
            (1.0 - misread) * reported + misread * anywhere
        };
        (0..LENGTHS).map(|at| weight(count(at) + 0.5)).collect()
    }

    /// The probability that a reader with a ruler reports the likeliest length, on one rung.
    pub(crate) fn likeliest_length(shares: &[f64]) -> f64 {
        const FAR: usize = 6;
        let hit = |off: usize| normal_cdf(count(off) + 0.5) - normal_cdf(count(off) - 0.5);
        let hits: Vec<f64> = (0..=FAR).map(hit).collect();
        let reported = |at: usize| -> f64 {
            let near = shares.iter().enumerate().skip(at.saturating_sub(FAR)).take(2 * FAR + 1);
            near.map(|(truth, share)| share * hits.get(truth.abs_diff(at)).unwrap_or(&0.0)).sum()
        };
        (0..shares.len()).map(reported).fold(0.0, f64::max)
    }

    /// The same where a gross mistake may land on any rung.
    pub(crate) fn or_anywhere(reported: f64, misread: f64) -> f64 {
        (1.0 - misread) * reported + misread / count(LENGTHS)
    }

    /// The likeliest count.
    pub(crate) fn likeliest_count(shares: &[f64]) -> u32 {
        let most = shares.iter().enumerate().rev().max_by(|a, b| a.1.total_cmp(b.1));
        most.and_then(|(at, _)| u32::try_from(at).ok()).unwrap_or(0)
    }

    /// The marks between which a length is said to lie when nobody reads it closely, in millimetres:
    /// eight rungs, half as long again.
    pub(crate) fn steps() -> Vec<(f64, f64)> {
        let foot = |at: usize| SHORTEST * libm::pow(1.0 + evidence::LENGTH_ERROR, count(at));
        (0..LENGTHS).step_by(STEP).map(|at| (foot(at), foot(at + STEP))).collect()
    }

    /// For each true length, the probability that a reader finds it between these marks: over all marks
    /// they sum to 1.
    pub(crate) fn within(step: usize, misread: f64) -> Vec<f64> {
        let (from, to) = (step * STEP, ((step + 1) * STEP).min(LENGTHS));
        let below = |at: usize, truth: f64| match at {
            0 => 0.0,
            at if at >= LENGTHS => 1.0,
            at => normal_cdf(count(at) - truth),
        };
        let anywhere = count(to - from) / count(LENGTHS);
        let weight = |truth: f64| {
            let reported = below(to, truth) - below(from, truth);
            (1.0 - misread) * reported + misread * anywhere
        };
        (0..LENGTHS).map(|at| weight(count(at) + 0.5)).collect()
    }

    /// For each true count, the probability that a reader reports this one, or one within 5 % of it.
    pub(crate) fn counted(seen: u32, misread: f64) -> Vec<f64> {
        let seen = seen.min(MOST_COUNTED);
        let near = seen / 20;
        let weight = |truth: u32| {
            let off = truth.abs_diff(seen);
            if off <= near {
                1.0 - misread
            } else if off == near + 1 {
                misread * evidence::OFF_BY_ONE / 2.0
            } else {
                misread * (1.0 - evidence::OFF_BY_ONE) / f64::from(MOST_COUNTED)
            }
        };
        (0..=MOST_COUNTED).map(weight).collect()
    }

    /// For each true rung, the probability that a reader reports no more than this.
    ///
    /// A length errs as in [`Ladder::measured`], a count as in [`Ladder::counted`], of which nothing
    /// is passed over: one less than nothing is nothing.
    pub(crate) fn up_to(self, most: f64, misread: f64) -> Vec<f64> {
        let rungs = count(self.rungs());
        let weight = |at: usize| match self {
            Self::Lengths => {
                let to = rung_of(most);
                let anywhere = (to / rungs).clamp(0.0, 1.0);
                (1.0 - misread) * normal_cdf(to - count(at) - 0.5) + misread * anywhere
            }
            Self::Counts => {
                let within = |counted: usize| if count(counted) <= most { 1.0 } else { 0.0 };
                let beside = 0.5 * (within(at.saturating_sub(1)) + within(at + 1));
                let anywhere = ((most.floor() + 1.0) / rungs).clamp(0.0, 1.0);
                let off = evidence::OFF_BY_ONE * beside + (1.0 - evidence::OFF_BY_ONE) * anywhere;
                (1.0 - misread) * within(at) + misread * off
            }
        };
        (0..self.rungs()).map(weight).collect()
    }

    /// The probability of every coarse answer, given the share of plants on each rung: steps of eight
    /// rungs for lengths, single counts up to 20 and one answer for more.
    pub(crate) fn answers(self, shares: &[f64], misread: f64) -> Vec<f64> {
        let step = |at: usize| match self {
            Self::Lengths => at / STEP,
            Self::Counts => at.min(21),
        };
        let mut answers = vec![0.0; step(self.rungs() - 1) + 1];
        for (at, share) in shares.iter().enumerate() {
            if let Some(answer) = answers.get_mut(step(at)) {
                *answer += (1.0 - misread) * share + misread / count(self.rungs());
            }
        }
        answers
    }

    /// Outer limits where none are said.
    fn beyond(self, (low, high): (f64, f64)) -> (f64, f64) {
        match self {
            Self::Lengths => (low / evidence::BEYOND, high * evidence::BEYOND),
            Self::Counts => ((low - 1.0).max(0.0), high + 1.0),
        }
    }

    /// How little of a thing can still be read for what it is.
    fn half_grown(self, least: f64) -> f64 {
        match self {
            Self::Lengths => least * evidence::YOUNGEST,
            Self::Counts => 0.0,
        }
    }

    /// A share spread evenly over the rungs that a range covers.
    fn even(self, range: (f64, f64), share: f64) -> Vec<f64> {
        let (from, to) = self.span(range);
        let on_rung = |at: usize| {
            let (foot, top) = (count(at), count(at) + 1.0);
            share * (to.min(top) - from.max(foot)).max(0.0) / (to - from)
        };
        (0..self.rungs()).map(on_rung).collect()
    }

    /// The stretch of the ladder that a range covers: at least one rung long, and upon the ladder.
    fn span(self, (low, high): (f64, f64)) -> (f64, f64) {
        let (from, to) = match self {
            Self::Lengths => (rung_of(low), rung_of(high)),
            Self::Counts => (low, high + 1.0),
        };
        let short = (1.0 - (to - from)).max(0.0) / 2.0;
        let from = (from - short).clamp(0.0, count(self.rungs()) - 1.0);
        (from, (to + short).clamp(from + 1.0, count(self.rungs())))
    }

    pub(crate) fn rungs(self) -> usize {
        match self {
            Self::Lengths => LENGTHS,
            Self::Counts => MOST_COUNTED as usize + 1,
        }
    }
}

/// The place of a length on the ladder: whole numbers are the feet of rungs.
fn rung_of(length: f64) -> f64 {
    libm::log(length.max(SHORTEST) / SHORTEST) / libm::log1p(evidence::LENGTH_ERROR)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn q(shares: &[f64], weights: &[f64]) -> f64 {
        shares.iter().zip(weights).map(|(p, w)| p * w).sum()
    }

    #[test]
    fn shares_of_a_range_sum_to_one_wherever_it_lies() {
        let cases = [(100.0, 250.0), (0.0, 0.05), (3.0, 3.0), (9e4, 3e5), (4e5, 5e5), (0.0, 0.0)];
        for (ladder, range) in
            [Ladder::Lengths, Ladder::Counts].into_iter().flat_map(|l| cases.map(|r| (l, r)))
        {
            let (shares, rare) = ladder.shares(range, None);
            assert!((shares.iter().sum::<f64>() - 1.0).abs() < 1e-12, "{ladder:?} {range:?}");
            assert!(rare.iter().zip(&shares).all(|(rare, all)| *rare <= all + 1e-12));
        }
    }

    #[test]
    fn a_length_within_the_range_is_likelier_than_one_beyond_it() {
        let (leaf, _) = Ladder::Lengths.shares((100.0, 250.0), Some((60.0, 300.0)));
        let chance = |length| q(&leaf, &Ladder::measured(length, length, 0.05));
        assert!(chance(170.0) > 3.0 * chance(290.0));
        assert!(chance(290.0) > 5.0 * chance(500.0));
    }

    #[test]
    fn a_short_leaf_hardly_tells_against_a_plant_with_long_ones() {
        let (long, _) = Ladder::Lengths.shares((300.0, 600.0), None);
        let short = q(&long, &Ladder::measured(150.0, 150.0, 0.05));
        let far = q(&long, &Ladder::measured(2000.0, 2000.0, 0.05));
        assert!(short > 10.0 * far);
    }

    #[test]
    fn a_wider_reading_is_never_less_likely() {
        let (leaf, _) = Ladder::Lengths.shares((100.0, 250.0), None);
        let narrow = q(&leaf, &Ladder::measured(150.0, 160.0, 0.05));
        let wide = q(&leaf, &Ladder::measured(120.0, 200.0, 0.05));
        assert!(narrow < wide && wide < 1.0);
    }

    #[test]
    fn the_answers_that_may_be_given_sum_to_one() {
        for ladder in [Ladder::Lengths, Ladder::Counts] {
            let (shares, _) = ladder.shares((3.0, 30.0), None);
            assert!((ladder.answers(&shares, 0.1).iter().sum::<f64>() - 1.0).abs() < 1e-12);
        }
    }

    /// By hand, a tenth misread: four fifths of that by one, half of them upwards; the rest falls
    /// evenly on 201 counts, six of which are up to five.
    #[test]
    fn a_count_is_misread_across_a_cut_by_one_or_from_anywhere() {
        let below = Ladder::Counts.up_to(5.0, 0.1);
        let stray = 0.1 * 0.2 * 6.0 / 201.0;
        for (truth, expected) in [(4, 0.98), (5, 0.9 + 0.04), (6, 0.04), (7, 0.0)] {
            assert!((below[truth] - expected - stray).abs() < 1e-12, "{truth}: {}", below[truth]);
        }
    }

    #[test]
    fn a_length_is_read_above_a_cut_the_more_surely_the_longer_it_is() {
        let below = Ladder::Lengths.up_to(60.0, 0.1);
        assert!(below.windows(2).all(|pair| pair[0] >= pair[1]));
        let at = |length: f64| below[rung_of(length) as usize];
        assert!(at(30.0) > 0.9 && at(120.0) < 0.1 && (at(60.0) - 0.5).abs() < 0.3);
    }

    #[test]
    fn a_count_may_be_off_by_one() {
        let (six, _) = Ladder::Counts.shares((6.0, 6.0), Some((6.0, 6.0)));
        let chance = |n| q(&six, &Ladder::counted(n, 0.04));
        assert!(chance(6) > 30.0 * chance(7) && chance(7) > 30.0 * chance(9));
    }
}
