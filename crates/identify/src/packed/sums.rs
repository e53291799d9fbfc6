//! Sums over many taxa at once, which processors do side by side.

/// Below this e^x is nought beside 1, and nearly so beside anything.
const LEAST: f64 = -700.0;
/// Added and taken off again, it rounds to a whole number, which its last bits then count.
const ROUNDING: f64 = 6_755_399_441_055_744.0; // 3·2⁵¹
/// 1 / ln 2, and ln 2 in two parts, the first of which times a whole number below 2¹¹ is exact:
/// fdlibm, e_exp.c (Sun Microsystems 1993).
const INVERSE_LN_2: f64 = f64::from_bits(0x3ff7_1547_652b_82fe);
const LN_2_HIGH: f64 = f64::from_bits(0x3fe6_2e42_fee0_0000);
const LN_2_LOW: f64 = f64::from_bits(0x3dea_39ef_3579_3c76);
/// 1/n! from n = 13 down to 0: up to ½ ln 2 the rest of the series is below 10⁻¹⁷.
const SERIES: [f64; 14] = [
    1.0 / 6_227_020_800.0,
    1.0 / 479_001_600.0,
    1.0 / 39_916_800.0,
    1.0 / 3_628_800.0,
    1.0 / 362_880.0,
    1.0 / 40_320.0,
    1.0 / 5_040.0,
    1.0 / 720.0,
    1.0 / 120.0,
    1.0 / 24.0,
    1.0 / 6.0,
    0.5,
    1.0,
    1.0,
];

/// As `bayes::chances`, without a branch or a call for each taxon.
pub(super) fn chances(logs: &[f64]) -> Vec<f64> {
    let most = folded(logs, f64::NEG_INFINITY, |a, b| if a > b { a } else { b });
    if most == f64::NEG_INFINITY {
        return vec![0.0; logs.len()];
    }
    let mut shares: Vec<f64> = logs.iter().map(|log| exp(log - most)).collect();
    let total = folded(&shares, 0.0, |a, b| a + b);
    shares.iter_mut().for_each(|share| *share /= total);
    shares
}

/// In four lanes, which need not wait for each other, and then over these.
#[inline(always)]
fn folded(numbers: &[f64], start: f64, with: impl Fn(f64, f64) -> f64) -> f64 {
    let (mut a, mut b, mut c, mut d) = (start, start, start, start);
    let (fours, last) = numbers.as_chunks::<4>();
    for [p, q, r, s] in fours {
        (a, b, c, d) = (with(a, *p), with(b, *q), with(c, *r), with(d, *s));
    }
    let lanes = with(with(a, b), with(c, d));
    last.iter().copied().fold(lanes, with)
}

/// Sum of products, in lanes too.
pub(super) fn dot(one: &[f64], other: &[f64]) -> f64 {
    let (mut a, mut b, mut c, mut d) = (0.0, 0.0, 0.0, 0.0);
    let ((ones, last), (others, other_last)) = (one.as_chunks::<4>(), other.as_chunks::<4>());
    for ([p, q, r, s], [t, u, v, w]) in ones.iter().zip(others) {
        (a, b, c, d) = (a + p * t, b + q * u, c + r * v, d + s * w);
    }
    let last = last.iter().zip(other_last).map(|(one, other)| one * other);
    (a + b) + (c + d) + last.sum::<f64>()
}

/// e^x of x from minus infinity to 0, to a few units in the sixteenth place; nought below e^−700.
#[inline(always)]
fn exp(x: f64) -> f64 {
    let bound = if x > LEAST { x } else { LEAST };
    let whole = bound * INVERSE_LN_2 + ROUNDING;
    let twos = whole - ROUNDING;
    let rest = (bound - twos * LN_2_HIGH) - twos * LN_2_LOW;
    let series = SERIES.iter().fold(0.0, |sum, term| sum * rest + term);
    // The whole number goes to where a number keeps its power of two.
    let power = f64::from_bits(series.to_bits().wrapping_add(whole.to_bits() << 52));
    if x > LEAST { power } else { 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bayes;

    #[test]
    fn powers_are_those_of_the_library() {
        for at in 0..200_000 {
            let x = -f64::from(at) * 0.003_499;
            let apart = (exp(x) / libm::exp(x) - 1.0).abs();
            assert!(apart < 8e-16, "{x} {apart:e}");
        }
        assert!((exp(0.0), exp(-701.0), exp(f64::NEG_INFINITY)) == (1.0, 0.0, 0.0));
    }

    #[test]
    fn chances_are_those_of_the_plain_way() {
        let logs = [-2000.0, -2000.0, -2001.5, f64::NEG_INFINITY, -2900.0];
        let (got, plain) = (chances(&logs), bayes::chances(&logs));
        assert!(got.iter().zip(plain).all(|(got, plain)| (got - plain).abs() < 1e-15));
        assert_eq!(chances(&[f64::NEG_INFINITY; 2]), [0.0, 0.0]);
    }
}
