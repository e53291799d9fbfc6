//! How good chances are.

/// The bins of the calibration error.
const BINS: usize = 10;

/// Scores of chances, each the mean over the rows.
pub(crate) struct Scores {
    /// Share of rows of which the likeliest class is the true one; of equal chances the first.
    pub(crate) right: f64,
    /// Squared distance from the truth, over all classes: G. W. Brier 1950, Monthly Weather Review 78:1.
    pub(crate) brier: f64,
    /// Expected calibration error: in ten equal bins of the greatest chance, how far the mean chance
    /// is from the share that was right, weighed by rows. M. P. Naeini, G. F. Cooper & M. Hauskrecht
    /// 2015, Proceedings of AAAI 29:2901.
    pub(crate) calibration: f64,
}

impl Scores {
    pub(crate) fn of(chances: &[Vec<f64>], truth: &[usize]) -> Self {
        let rows = chances.len() as f64;
        let (mut right, mut brier) = (0.0, 0.0);
        // What was claimed in each bin, less what was right.
        let mut bins = [0.0; BINS];
        for (chances, truth) in chances.iter().zip(truth) {
            let ordered = chances.iter().enumerate().rev();
            let (named, claimed) =
                ordered.max_by(|a, b| a.1.total_cmp(b.1)).map_or((0, 0.0), |(at, of)| (at, *of));
            let hit = if named == *truth { 1.0 } else { 0.0 };
            right += hit;
            let apart = |(at, chance): (usize, &f64)| {
                let apart = chance - if at == *truth { 1.0 } else { 0.0 };
                apart * apart
            };
            brier += chances.iter().enumerate().map(apart).sum::<f64>();
            // The last bin holds a chance of 1 too.
            let bin = ((claimed * BINS as f64) as usize).min(BINS - 1);
            if let Some(bin) = bins.get_mut(bin) {
                *bin += claimed - hit;
            }
        }
        let calibration = bins.iter().map(|bin: &f64| bin.abs()).sum::<f64>();
        Self { right: right / rows, brier: brier / rows, calibration: calibration / rows }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn scores_of_three_rows_worked_by_hand() {
        let chances = [vec![0.95, 0.05], vec![0.91, 0.09], vec![0.45, 0.55]];
        let scores = Scores::of(&chances, &[0, 1, 1]);
        assert!((scores.right - 2.0 / 3.0).abs() < 1e-12);
        // 2·0.05² + 2·0.91² + 2·0.45², over three.
        assert!((scores.brier - 2.066_2 / 3.0).abs() < 1e-12);
        // In the last bin 1.86 are claimed and 1 is right; in that from a half on 0.55, and 1.
        assert!((scores.calibration - (0.86 + 0.45) / 3.0).abs() < 1e-12);
    }
}
