//! Plain sums over probabilities.

/// Chances from their logarithms, up to a common factor; summing to 1, or all nought where nothing
/// is possible.
///
/// Bayes' rule as it is used for identification by tables of frequencies: Willcox, Lapage, Bascomb
/// & Curtis 1973, Journal of General Microbiology 77:317.
pub(crate) fn chances(logs: &[f64]) -> Vec<f64> {
    let most = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    if most == f64::NEG_INFINITY {
        return vec![0.0; logs.len()];
    }
    let shares: Vec<f64> = logs.iter().map(|log| libm::exp(log - most)).collect();
    let total: f64 = shares.iter().sum();
    shares.iter().map(|share| share / total).collect()
}

/// Entropy of chances, in bits: −Σ p log₂ p.
pub(crate) fn entropy(chances: &[f64]) -> f64 {
    -chances.iter().filter(|p| **p > 0.0).map(|p| p * libm::log2(*p)).sum::<f64>()
}

/// How many bits a question is expected to tell: entropy before, less its expectation after.
///
/// `answers` holds, for each possibility, the probability of every answer.
pub(crate) fn information(chances: &[f64], answers: &[Vec<f64>]) -> f64 {
    let many = answers.iter().map(Vec::len).max().unwrap_or(0);
    let after = |answer: usize| {
        let given = answers.iter().map(|of| of.get(answer).copied().unwrap_or(0.0));
        let joint: Vec<f64> = chances.iter().zip(given).map(|(p, q)| p * q).collect();
        let total: f64 = joint.iter().sum();
        let shares: Vec<f64> = joint.iter().map(|joint| joint / total).collect();
        if total > 0.0 { total * entropy(&shares) } else { 0.0 }
    };
    entropy(chances) - (0..many).map(after).sum::<f64>()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn chances_of_very_unlikely_things_still_sum_to_one() {
        let got = chances(&[-2000.0, -2000.0, -2001.0]);
        assert!((got.iter().sum::<f64>() - 1.0).abs() < 1e-15);
        assert_eq!(chances(&[f64::NEG_INFINITY; 2]), [0.0, 0.0]);
    }

    #[test]
    fn a_question_that_settles_everything_tells_the_entropy() {
        let answers = [vec![1.0, 0.0], vec![0.0, 1.0]];
        assert!((information(&[0.25, 0.75], &answers) - entropy(&[0.25, 0.75])).abs() < 1e-15);
        assert!(information(&[0.25, 0.75], &[vec![0.5, 0.5], vec![0.5, 0.5]]).abs() < 1e-15);
    }
}
