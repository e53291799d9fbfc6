//! Distributions: what is known of a doubtful quantity, by its quantile function.

use crate::{Finite, normal_quantile};
use serde::{Deserialize, Serialize};
use std::fmt;

/// Quantile of a standard normal number at 0.95.
const Z95: f64 = 1.644_853_626_951_472_2;

/// What is known of a doubtful quantity, in the unit of that quantity.
///
/// Every distribution is used through its quantile function, so that draws can be stratified and
/// are the same on every machine.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Dist {
    /// Known, or taken as known.
    Exact(Finite),
    /// Anywhere between two ends, each value as likely as the next.
    Uniform {
        /// Lower end.
        low: Finite,
        /// Upper end.
        high: Finite,
    },
    /// Uniform in its logarithm: for a range that spans more than a factor of ten.
    LogUniform {
        /// Lower end, above zero.
        low: Finite,
        /// Upper end.
        high: Finite,
    },
    /// Between two ends with a likeliest value.
    Triangular {
        /// Lower end.
        low: Finite,
        /// Likeliest value.
        mode: Finite,
        /// Upper end.
        high: Finite,
    },
    /// Normal.
    Normal {
        /// Mean.
        mean: Finite,
        /// Standard deviation.
        sd: Finite,
    },
    /// Lognormal, from its 5th and 95th percentiles.
    LogNormal {
        /// 5th percentile, above zero.
        p5: Finite,
        /// 95th percentile.
        p95: Finite,
    },
    /// Measured values, each as likely as the next; kept in ascending order.
    Empirical(Vec<Finite>),
    /// Nothing at all with some probability, otherwise as the other distribution says.
    OrZero {
        /// Probability of nothing.
        zero: Finite,
        /// What is known of the rest.
        otherwise: Box<Dist>,
    },
}

/// What is wrong with the parameters of a distribution.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum DistError {
    /// A parameter is infinite or no number.
    NotFinite,
    /// The ends stand in the wrong order, or the likeliest value outside them.
    Order,
    /// A logarithm needs values above zero.
    NotPositive,
    /// A spread below zero.
    NegativeSpread,
    /// No measured value at all.
    Empty,
    /// A probability outside 0 to 1.
    Probability,
}

impl fmt::Display for DistError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NotFinite => "a parameter is not a finite number",
            Self::Order => "the ends stand in the wrong order",
            Self::NotPositive => "a logarithm needs values above zero",
            Self::NegativeSpread => "a spread cannot be below zero",
            Self::Empty => "no value was measured",
            Self::Probability => "a probability lies between 0 and 1",
        })
    }
}

impl std::error::Error for DistError {}

fn finite(value: f64) -> Result<Finite, DistError> {
    Finite::new(value).ok_or(DistError::NotFinite)
}

impl Dist {
    /// A known value.
    ///
    /// # Errors
    /// When it is not finite.
    pub fn exact(value: f64) -> Result<Self, DistError> {
        finite(value).map(Self::Exact)
    }

    /// Uniform between two ends.
    ///
    /// # Errors
    /// When an end is not finite or they stand in the wrong order.
    pub fn uniform(low: f64, high: f64) -> Result<Self, DistError> {
        Self::Uniform { low: finite(low)?, high: finite(high)? }.checked()
    }

    /// Uniform in the logarithm.
    ///
    /// # Errors
    /// As for [`uniform`](Self::uniform), and when the lower end is not above zero.
    pub fn log_uniform(low: f64, high: f64) -> Result<Self, DistError> {
        Self::LogUniform { low: finite(low)?, high: finite(high)? }.checked()
    }

    /// Triangular.
    ///
    /// # Errors
    /// When a value is not finite or they stand in the wrong order.
    pub fn triangular(low: f64, mode: f64, high: f64) -> Result<Self, DistError> {
        Self::Triangular { low: finite(low)?, mode: finite(mode)?, high: finite(high)? }.checked()
    }

    /// Normal.
    ///
    /// # Errors
    /// When a value is not finite or the spread is below zero.
    pub fn normal(mean: f64, sd: f64) -> Result<Self, DistError> {
        Self::Normal { mean: finite(mean)?, sd: finite(sd)? }.checked()
    }

    /// Lognormal from its 5th and 95th percentiles.
    ///
    /// # Errors
    /// When they are not finite, not above zero or in the wrong order.
    pub fn log_normal(p5: f64, p95: f64) -> Result<Self, DistError> {
        Self::LogNormal { p5: finite(p5)?, p95: finite(p95)? }.checked()
    }

    /// Measured values.
    ///
    /// # Errors
    /// When there is none, or one is not finite.
    pub fn empirical(values: impl IntoIterator<Item = f64>) -> Result<Self, DistError> {
        let mut values = values.into_iter().map(finite).collect::<Result<Vec<_>, _>>()?;
        values.sort_unstable();
        Self::Empirical(values).checked()
    }

    /// Nothing with probability `zero`, otherwise as `otherwise` says.
    ///
    /// # Errors
    /// When the probability lies outside 0 to 1.
    pub fn or_zero(zero: f64, otherwise: Dist) -> Result<Self, DistError> {
        Self::OrZero { zero: finite(zero)?, otherwise: Box::new(otherwise) }.checked()
    }

    /// The distribution itself, once its parameters were found in order. Read distributions pass
    /// through here before anything is drawn from them.
    ///
    /// # Errors
    /// What is wrong with the parameters.
    pub fn checked(self) -> Result<Self, DistError> {
        let fault = match &self {
            Self::Exact(_) => None,
            Self::Uniform { low, high } => (low > high).then_some(DistError::Order),
            Self::LogUniform { low, high } | Self::LogNormal { p5: low, p95: high } => {
                if *low <= Finite::ZERO {
                    Some(DistError::NotPositive)
                } else {
                    (low > high).then_some(DistError::Order)
                }
            }
            Self::Triangular { low, mode, high } => {
                (low > mode || mode > high).then_some(DistError::Order)
            }
            Self::Normal { sd, .. } => (*sd < Finite::ZERO).then_some(DistError::NegativeSpread),
            Self::Empirical(values) if values.is_empty() => Some(DistError::Empty),
            Self::Empirical(values) => (!values.is_sorted()).then_some(DistError::Order),
            Self::OrZero { zero, .. } => {
                (!(0.0..=1.0).contains(&zero.get())).then_some(DistError::Probability)
            }
        };
        match (fault, self) {
            (Some(fault), _) => Err(fault),
            (None, Self::OrZero { zero, otherwise }) => {
                Ok(Self::OrZero { zero, otherwise: Box::new(otherwise.checked()?) })
            }
            (None, fine) => Ok(fine),
        }
    }

    /// The value below which the quantity lies with probability `u`, for `u` in (0, 1).
    ///
    /// ```
    /// use ground::Dist;
    /// let share = Dist::triangular(0.2, 0.3, 0.4).unwrap();
    /// assert!((share.quantile(0.5) - 0.3).abs() < 1e-15);
    /// ```
    #[must_use]
    pub fn quantile(&self, u: f64) -> f64 {
        match self {
            Self::Exact(value) => value.get(),
            Self::Uniform { low, high } => low.get() + (high.get() - low.get()) * u,
            Self::LogUniform { low, high } => {
                let (from, to) = (libm::log(low.get()), libm::log(high.get()));
                libm::exp(from + (to - from) * u)
            }
            Self::Triangular { low, mode, high } => {
                triangular_quantile(low.get(), mode.get(), high.get(), u)
            }
            Self::Normal { mean, sd } => mean.get() + sd.get() * normal_quantile(u),
            Self::LogNormal { p5, p95 } => {
                let (mean, sd) = log_normal_parameters(p5.get(), p95.get());
                libm::exp(mean + sd * normal_quantile(u))
            }
            Self::Empirical(values) => empirical_quantile(values, u),
            Self::OrZero { zero, otherwise } => {
                let zero = zero.get();
                if u < zero { 0.0 } else { otherwise.quantile((u - zero) / (1.0 - zero)) }
            }
        }
    }

    /// The lowest and highest value it can take: its published extremes where it has ends, the
    /// infinities (or zero) where it has none.
    #[must_use]
    pub fn ends(&self) -> (f64, f64) {
        match self {
            Self::Exact(value) => (value.get(), value.get()),
            Self::Uniform { low, high }
            | Self::LogUniform { low, high }
            | Self::Triangular { low, high, .. } => (low.get(), high.get()),
            Self::Normal { mean, sd } if *sd == Finite::ZERO => (mean.get(), mean.get()),
            Self::Normal { .. } => (f64::NEG_INFINITY, f64::INFINITY),
            Self::LogNormal { .. } => (0.0, f64::INFINITY),
            Self::Empirical(values) => {
                let end = |value: Option<&Finite>| value.map_or(f64::NAN, |v| v.get());
                (end(values.first()), end(values.last()))
            }
            Self::OrZero { zero, otherwise } => {
                let (low, high) = otherwise.ends();
                if *zero > Finite::ZERO { (low.min(0.0), high.max(0.0)) } else { (low, high) }
            }
        }
    }
}

/// Mean and standard deviation of the logarithm, from the 5th and 95th percentiles.
pub(crate) fn log_normal_parameters(p5: f64, p95: f64) -> (f64, f64) {
    let (low, high) = (libm::log(p5), libm::log(p95));
    ((low + high) / 2.0, (high - low) / (2.0 * Z95))
}

fn triangular_quantile(low: f64, mode: f64, high: f64, u: f64) -> f64 {
    let width = high - low;
    if width <= 0.0 {
        return low;
    }
    let rise = mode - low;
    if u < rise / width {
        low + libm::sqrt(u * width * rise)
    } else {
        high - libm::sqrt((1.0 - u) * width * (high - mode))
    }
}

fn empirical_quantile(values: &[Finite], u: f64) -> f64 {
    let last = values.len().saturating_sub(1);
    let at = ((u * values.len() as f64) as usize).min(last);
    values.get(at).map_or(f64::NAN, |value| value.get())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn parameters_that_make_no_sense_are_refused_by_name() {
        assert_eq!(Dist::uniform(2.0, 1.0), Err(DistError::Order));
        assert_eq!(Dist::log_uniform(0.0, 1.0), Err(DistError::NotPositive));
        assert_eq!(Dist::triangular(0.0, 2.0, 1.0), Err(DistError::Order));
        assert_eq!(Dist::normal(0.0, -1.0), Err(DistError::NegativeSpread));
        assert_eq!(Dist::normal(f64::NAN, 1.0), Err(DistError::NotFinite));
        assert_eq!(Dist::empirical([]), Err(DistError::Empty));
        let one = Dist::exact(1.0).unwrap();
        assert_eq!(Dist::or_zero(1.5, one), Err(DistError::Probability));
    }

    #[test]
    fn a_lognormal_has_the_percentiles_it_was_made_from() {
        let dist = Dist::log_normal(0.5, 8.0).unwrap();
        assert!((dist.quantile(0.05) / 0.5 - 1.0).abs() < 1e-14);
        assert!((dist.quantile(0.95) / 8.0 - 1.0).abs() < 1e-14);
        assert!((dist.quantile(0.5) / 2.0 - 1.0).abs() < 1e-14);
    }

    #[test]
    fn a_mixture_with_zero_is_zero_for_its_share() {
        let rest = Dist::uniform(1.0, 2.0).unwrap();
        let dist = Dist::or_zero(0.4, rest).unwrap();
        assert_eq!(dist.quantile(0.39), 0.0);
        assert!((dist.quantile(0.7) - 1.5).abs() < 1e-12);
        assert_eq!(dist.ends(), (0.0, 2.0));
    }

    proptest! {
        #[test]
        fn a_quantile_never_falls_and_stays_between_the_ends(
            low in 0.001..10.0f64, more in 0.0..10.0f64, most in 0.0..10.0f64, u in 0.001..0.998f64,
        ) {
            let (mode, high) = (low + more, low + more + most);
            for dist in [
                Dist::uniform(low, high), Dist::log_uniform(low, high),
                Dist::triangular(low, mode, high), Dist::log_normal(low, high),
                Dist::empirical([high, low, mode]),
            ] {
                let dist = dist.unwrap();
                let (least, greatest) = dist.ends();
                let value = dist.quantile(u);
                prop_assert!(value <= dist.quantile(u + 0.001) + 1e-12 * high);
                prop_assert!(least - 1e-12 <= value && value <= greatest + 1e-12 * high);
            }
        }
    }
}
