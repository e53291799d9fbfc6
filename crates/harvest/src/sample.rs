//! Simple random sampling: means, totals and proportions with their doubt, and how many plots it
//! takes.
//!
//! Numbers here carry the unit of whatever was counted; [`Survey`](crate::Survey) gives them one.
//! Formulas: Cochran 1977, *Sampling Techniques*, 3rd ed., chapters 2 to 4.

use crate::student_quantile;
use ground::{Finite, normal_quantile};
use serde::{Deserialize, Serialize};
use std::num::NonZeroU32;

/// How often an interval made this way holds the true value.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "f64", into = "f64")]
pub struct Confidence(f64);

impl Confidence {
    /// 19 intervals in 20 hold the true value: what allowances use.
    pub const NINETEEN_IN_TWENTY: Self = Self(0.95);

    /// A share between 0 and 1, both left out.
    #[must_use]
    pub fn new(share: f64) -> Option<Self> {
        (share > 0.0 && share < 1.0).then_some(Self(share))
    }

    /// The probability below the upper end of a two-sided interval.
    fn upper(self) -> f64 {
        0.5 + self.0 / 2.0
    }
}

impl TryFrom<f64> for Confidence {
    type Error = String;

    fn try_from(share: f64) -> Result<Self, String> {
        Self::new(share).ok_or_else(|| format!("a confidence lies between 0 and 1, not at {share}"))
    }
}

impl From<Confidence> for f64 {
    fn from(confidence: Confidence) -> f64 {
        confidence.0
    }
}

/// What a sample of at least two says: its size, mean and variance.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Sample {
    n: u32,
    mean: f64,
    variance: f64,
}

/// An estimate with its standard error and interval.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Estimate {
    /// The estimate.
    pub value: f64,
    /// Its standard error.
    pub se: f64,
    /// Degrees of freedom of the standard error.
    pub df: u32,
    /// Lower end of the interval; it may lie below zero, which says that the survey is too small.
    pub low: f64,
    /// Upper end.
    pub high: f64,
}

impl Estimate {
    fn new(value: f64, se: f64, df: NonZeroU32, confidence: Confidence) -> Self {
        let reach = student_quantile(confidence.upper(), df) * se;
        Self { value, se, df: df.get(), low: value - reach, high: value + reach }
    }

    /// The estimate of the product of two independent quantities, such as pieces and the weight of
    /// a piece.
    ///
    /// Formula: se² = x²·se(y)² + y²·se(x)² + se(x)²·se(y)² (Goodman 1960, *On the exact variance of
    /// products*, J. Am. Stat. Assoc. 55:708–713). Its degrees of freedom are the fewer of the two,
    /// so that a smaller survey never gives a shorter interval.
    #[must_use]
    pub fn times(&self, other: &Self, confidence: Confidence) -> Self {
        let (a, b) = (self.value * other.se, other.value * self.se);
        let both = self.se * other.se;
        let df = NonZeroU32::new(self.df.min(other.df)).unwrap_or(NonZeroU32::MIN);
        let se = (a * a + b * b + both * both).sqrt();
        Self::new(self.value * other.value, se, df, confidence)
    }
}

impl Sample {
    /// The sample of these values; nothing for fewer than two, whose spread nobody knows, or when
    /// one is not finite.
    ///
    /// The order of the values does not matter, to the last bit.
    #[must_use]
    pub fn of(values: &[f64]) -> Option<Self> {
        let mut sorted =
            values.iter().map(|value| Finite::new(*value)).collect::<Option<Vec<_>>>()?;
        sorted.sort_unstable();
        let n = u32::try_from(sorted.len()).ok().filter(|n| *n >= 2)?;
        let mean = sorted.iter().map(|value| value.get()).sum::<f64>() / f64::from(n);
        let squares: f64 =
            sorted.iter().map(|value| (value.get() - mean) * (value.get() - mean)).sum();
        Self::from_moments(n, mean, squares / f64::from(n - 1))
    }

    /// A sample of which only size, mean and variance (with n − 1) are known.
    #[must_use]
    pub fn from_moments(n: u32, mean: f64, variance: f64) -> Option<Self> {
        let fine = n >= 2 && mean.is_finite() && variance.is_finite() && variance >= 0.0;
        fine.then_some(Self { n, mean, variance })
    }

    /// A sample of yes and no: so many of `n` said yes.
    #[must_use]
    pub fn of_shares(yes: u32, n: u32) -> Option<Self> {
        if yes > n || n < 2 {
            return None;
        }
        let p = f64::from(yes) / f64::from(n);
        let variance = p * (1.0 - p) * f64::from(n) / f64::from(n - 1);
        Self::from_moments(n, p, variance)
    }

    /// How many values it holds.
    #[must_use]
    pub fn n(&self) -> u32 {
        self.n
    }

    /// Their mean.
    #[must_use]
    pub fn mean(&self) -> f64 {
        self.mean
    }

    /// Their variance, with n − 1.
    #[must_use]
    pub fn variance(&self) -> f64 {
        self.variance
    }

    /// The mean of the whole from which the sample was drawn at random, without replacement.
    ///
    /// `frame` is how many there are in all; none when there is no end of them, as with readings.
    /// Formula: se = √((1 − n/N)·s²/n), interval with Student's t, n − 1 degrees of freedom.
    #[must_use]
    pub fn mean_of(&self, frame: Option<u32>, confidence: Confidence) -> Estimate {
        let n = f64::from(self.n);
        let seen = frame.map_or(0.0, |all| (n / f64::from(all.max(1))).min(1.0));
        let se = ((1.0 - seen) * self.variance / n).sqrt();
        Estimate::new(self.mean, se, self.df(), confidence)
    }

    /// The total of a whole of `frame`: as [`mean_of`](Self::mean_of), times N.
    #[must_use]
    pub fn total_of(&self, frame: u32, confidence: Confidence) -> Estimate {
        let mean = self.mean_of(Some(frame), confidence);
        let all = f64::from(frame);
        Estimate::new(mean.value * all, mean.se * all, self.df(), confidence)
    }

    fn df(&self) -> NonZeroU32 {
        NonZeroU32::new(self.n - 1).unwrap_or(NonZeroU32::MIN)
    }

    /// How clumped counts are; nothing when none was found.
    #[must_use]
    pub fn dispersion(&self) -> Option<Dispersion> {
        let ratio = self.variance / self.mean;
        (self.mean > 0.0).then(|| Dispersion {
            ratio,
            chi_squared: ratio * f64::from(self.n - 1),
            df: self.n - 1,
            k: (self.variance > self.mean)
                .then(|| self.mean * self.mean / (self.variance - self.mean)),
        })
    }
}

/// How clumped counts are.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Dispersion {
    /// Variance over mean: 1 for plants strewn at random, more for clumped ones.
    pub ratio: f64,
    /// Index of dispersion, (n − 1)·s²/mean.
    pub chi_squared: f64,
    /// Its degrees of freedom.
    pub df: u32,
    /// Exponent k of the negative binomial by moments, mean²/(s² − mean); none unless clumped.
    pub k: Option<f64>,
}

impl Dispersion {
    /// Whether counts are more clumped than chance would have them in 39 of 40 surveys.
    ///
    /// Formula: √(2χ²) − √(2·df − 1) > 1.96, Fisher's approximation for the index of dispersion
    /// (Elliott 1977, *Statistical Analysis of Samples of Benthic Invertebrates*, 2nd ed.).
    #[must_use]
    pub fn is_clumped(&self) -> bool {
        let df = f64::from(self.df);
        (2.0 * self.chi_squared).sqrt() - (2.0 * df - 1.0).max(0.0).sqrt() > normal_quantile(0.975)
    }
}

/// How many plots it takes until the mean is known to within `error`, either way.
///
/// `sd` is the spread that is expected from plot to plot, in the unit of `error`; `frame` the plots
/// there are in all. Formula: n = (t·s/E)², t with n − 1 degrees of freedom, iterated from the
/// normal; where that swings between two numbers, the larger; then n/(1 + n/N) (Cochran 1977,
/// chapter 4). Nothing when `error` is not above zero or the answer exceeds a billion.
#[must_use]
pub fn plots_needed(
    sd: f64,
    error: f64,
    confidence: Confidence,
    frame: Option<u32>,
) -> Option<u32> {
    let ratio = sd / error;
    if !(ratio.is_finite() && ratio >= 0.0 && error > 0.0) {
        return None;
    }
    let size = |quantile: f64| {
        let n = (quantile * ratio * quantile * ratio).ceil().max(2.0);
        (n < 1e9).then_some(n as u32)
    };
    let next = |n: u32| size(student_quantile(confidence.upper(), NonZeroU32::new(n - 1)?));
    let mut before = 0;
    let mut n = size(normal_quantile(confidence.upper()))?;
    loop {
        let after = next(n)?;
        if after == n || after == before {
            n = n.max(after);
            break;
        }
        (before, n) = (n, after);
    }
    Some(frame.map_or(n, |all| {
        let n = f64::from(n);
        (n / (1.0 + n / f64::from(all.max(1)))).ceil() as u32
    }))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Goodman 1960, by hand: 20 ± 3 times 5 ± 1 is 100 with a variance of 400 + 225 + 9.
    #[test]
    fn the_doubt_of_a_product_has_three_parts_and_the_fewer_degrees_of_freedom() {
        let usual = Confidence::NINETEEN_IN_TWENTY;
        let estimate =
            |value, se, df| Estimate::new(value, se, NonZeroU32::new(df).unwrap(), usual);
        let product = estimate(20.0, 3.0, 30).times(&estimate(5.0, 1.0, 4), usual);
        assert_eq!((product.value, product.df), (100.0, 4));
        assert!((product.se - 634.0_f64.sqrt()).abs() < 1e-12);
    }

    #[test]
    fn too_little_is_no_sample() {
        assert_eq!(Sample::of(&[3.0]), None);
        assert_eq!(Sample::of(&[3.0, f64::NAN]), None);
        assert_eq!(Sample::of_shares(3, 2), None);
        assert_eq!(Sample::of(&[0.0, 0.0]).unwrap().dispersion(), None);
    }
}
