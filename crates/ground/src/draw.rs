//! Draws: a doubtful quantity as a column of numbers that shared doubt keeps in step.
//!
//! Element `i` of a column is `quantile((π(i) + ½) / n)`, where π is a permutation of `0..n` chosen
//! by the key of the quantity. So a column is stratified (every n-th of the probability is hit
//! once), depends on nothing but its key and its distribution, and may be computed in any order.
//! The same key gives the same column: two batches from one lot share the doubt about that lot.

use crate::{Dist, Fault, Place, dist::log_normal_parameters, normal_quantile};
use std::collections::BTreeMap;
use std::sync::Arc;

/// How many draws a plan uses.
pub const DRAWS: usize = 8192;

/// Where the draws begin. The same start gives the same answer; another start shows how much of a
/// result is chance.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize,
)]
#[serde(transparent)]
pub struct RandomStart(pub u64);

/// What decides the permutation of a column: a hash of the random start and the identity of the
/// quantity.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Key(u64);

impl Key {
    /// The key of a quantity, from the path of names that says whose it is, such as
    /// `["lot", "nettle-0412", "content", "nitrate"]`.
    #[must_use]
    pub fn of(start: RandomStart, path: &[&str]) -> Self {
        let mut hash = blake3::Hasher::new();
        hash.update(&start.0.to_le_bytes());
        for name in path {
            // The length keeps ["ab", "c"] and ["a", "bc"] apart.
            hash.update(&(name.len() as u64).to_le_bytes());
            hash.update(name.as_bytes());
        }
        let [a, b, c, d, e, f, g, h, ..] = *hash.finalize().as_bytes();
        Self(u64::from_le_bytes([a, b, c, d, e, f, g, h]))
    }
}

/// A column of draws, computed element by element when asked.
#[derive(Clone, Debug)]
pub struct Column {
    shuffle: Shuffle,
    dist: Prepared,
    normals: Normals,
}

impl Column {
    /// A column of `n` draws. Most callers want [`Draws::column`], which watches the keys.
    #[must_use]
    pub fn new(key: Key, dist: &Dist, n: usize) -> Self {
        Self {
            shuffle: Shuffle::new(key, n),
            dist: Prepared::new(dist),
            normals: Normals::default(),
        }
    }

    /// How many draws it has.
    #[must_use]
    pub fn len(&self) -> usize {
        self.shuffle.n as usize
    }

    /// Whether it has none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.shuffle.n == 0
    }

    /// Draw `i`; beyond the end it begins again.
    #[must_use]
    pub fn at(&self, i: usize) -> f64 {
        let (i, n) = (i as u64, self.shuffle.n.max(1));
        let place = self.shuffle.of(if i < n { i } else { i % n });
        let normal = || self.normals.at(place, n);
        match &self.dist {
            Prepared::Exact(value) => *value,
            Prepared::Line { low, width } => low + width * middle(place, n),
            Prepared::LogLine { low, width } => libm::exp(low + width * middle(place, n)),
            Prepared::Normal { mean, sd } => mean + sd * normal(),
            Prepared::LogNormal { mean, sd } => libm::exp(mean + sd * normal()),
            Prepared::Other(dist) => dist.quantile(middle(place, n)),
        }
    }

    /// All draws in order.
    pub fn iter(&self) -> impl Iterator<Item = f64> + '_ {
        (0..self.len()).map(|i| self.at(i))
    }
}

/// Makes the columns of one computation and sees to it that no key is used for two distributions.
#[derive(Clone, Debug)]
pub struct Draws {
    start: RandomStart,
    n: usize,
    seen: BTreeMap<Key, Dist>,
    normals: Normals,
}

impl Draws {
    /// Columns of [`DRAWS`] draws from this start.
    #[must_use]
    pub fn new(start: RandomStart) -> Self {
        Self::of(start, DRAWS)
    }

    /// Columns of `n` draws from this start.
    #[must_use]
    pub fn of(start: RandomStart, n: usize) -> Self {
        Self { start, n, seen: BTreeMap::new(), normals: Normals::default() }
    }

    /// How many draws each column has.
    #[must_use]
    pub fn count(&self) -> usize {
        self.n
    }

    /// The column of a quantity.
    ///
    /// # Errors
    /// A fault of our own when the same path was used before with another distribution: one
    /// quantity cannot be doubtful in two ways.
    pub fn column(&mut self, path: &[&str], dist: &Dist) -> Result<Column, Fault> {
        let key = Key::of(self.start, path);
        let known = self.seen.entry(key).or_insert_with(|| dist.clone());
        if known != dist {
            let at = Place::entry("draw", &path.join("/"), "");
            return Err(Fault::new("one-key-two-distributions", at, path.join("/")));
        }
        let mut column = Column::new(key, dist, self.n);
        if column.dist.asks_for_normals() {
            column.normals = self.normals.tabled(self.n);
            self.normals = column.normals.clone();
        }
        Ok(column)
    }
}

/// The middle of stratum `place` of `n`.
fn middle(place: u64, n: u64) -> f64 {
    (place as f64 + 0.5) / n as f64
}

/// The standard normal number in the middle of each stratum. Every normal column of a computation
/// takes the same ones, each in its own order, so they are worked out once; without the table they
/// are worked out one by one, to the same bits.
#[derive(Clone, Debug, Default)]
struct Normals(Arc<[f64]>);

impl Normals {
    fn tabled(&self, n: usize) -> Self {
        if self.0.len() == n {
            return self.clone();
        }
        let strata = 0..n as u64;
        Self(strata.map(|place| normal_quantile(middle(place, n as u64))).collect())
    }

    fn at(&self, place: u64, n: u64) -> f64 {
        match self.0.get(place as usize) {
            Some(known) => *known,
            None => normal_quantile(middle(place, n)),
        }
    }
}

/// A distribution with what its quantile function needs worked out once.
#[derive(Clone, Debug)]
enum Prepared {
    Exact(f64),
    Line { low: f64, width: f64 },
    LogLine { low: f64, width: f64 },
    Normal { mean: f64, sd: f64 },
    LogNormal { mean: f64, sd: f64 },
    Other(Dist),
}

impl Prepared {
    fn new(dist: &Dist) -> Self {
        match dist {
            Dist::Exact(value) => Self::Exact(value.get()),
            Dist::Uniform { low, high } => {
                Self::Line { low: low.get(), width: high.get() - low.get() }
            }
            Dist::LogUniform { low, high } => {
                let low = libm::log(low.get());
                Self::LogLine { low, width: libm::log(high.get()) - low }
            }
            Dist::Normal { mean, sd } => Self::Normal { mean: mean.get(), sd: sd.get() },
            Dist::LogNormal { p5, p95 } => {
                let (mean, sd) = log_normal_parameters(p5.get(), p95.get());
                Self::LogNormal { mean, sd }
            }
            other => Self::Other(other.clone()),
        }
    }

    fn asks_for_normals(&self) -> bool {
        matches!(self, Self::Normal { .. } | Self::LogNormal { .. })
    }
}

/// A keyed permutation of `0..n`.
///
/// Rounds of exclusive-or, odd multiplication and shifted exclusive-or are each a bijection on the
/// words of `bits` bits; numbers that fall outside `0..n` walk on until they fall inside.
#[derive(Clone, Copy, Debug)]
struct Shuffle {
    n: u64,
    mask: u64,
    shift: u32,
    rounds: [(u64, u64); 4],
}

impl Shuffle {
    fn new(key: Key, n: usize) -> Self {
        let n = n as u64;
        let bits = u64::BITS - n.saturating_sub(1).leading_zeros();
        let mask = if bits == 0 { 0 } else { u64::MAX >> (u64::BITS - bits) };
        let mut state = key.0;
        let rounds = [(); 4].map(|()| (split_mix(&mut state), split_mix(&mut state) | 1));
        Self { n, mask, shift: bits / 2 + 1, rounds }
    }

    fn of(&self, i: u64) -> u64 {
        let mut at = i;
        loop {
            for (word, odd) in self.rounds {
                at = (at ^ word) & self.mask;
                at = at.wrapping_mul(odd) & self.mask;
                at ^= at >> self.shift;
            }
            if at < self.n {
                return at;
            }
        }
    }
}

/// One step of SplitMix64 (Steele, Lea & Flood 2014, OOPSLA, doi 10.1145/2660193.2660195).
fn split_mix(state: &mut u64) -> u64 {
    *state = state.wrapping_add(0x9e37_79b9_7f4a_7c15);
    let mut z = *state;
    z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    z ^ (z >> 31)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::normal_cdf;
    use proptest::prelude::*;

    fn unit(name: &str, n: usize) -> Vec<f64> {
        let dist = Dist::uniform(0.0, 1.0).unwrap();
        Column::new(Key::of(RandomStart(1), &[name]), &dist, n).iter().collect()
    }

    #[test]
    fn a_column_hits_every_stratum_once() {
        for n in [1, 2, 3, 100, 8192, 10_000] {
            let mut strata: Vec<_> = unit("a", n).iter().map(|u| (u * n as f64) as usize).collect();
            strata.sort_unstable();
            assert!(strata.iter().copied().eq(0..n), "{n}");
        }
    }

    #[test]
    fn the_same_path_gives_the_same_column_and_another_path_an_independent_one() {
        assert_eq!(unit("a", DRAWS), unit("a", DRAWS));
        // The correlation of independent columns of n draws has standard deviation 1/√n = 0.011;
        // 400 pairs stay below 4.5 of them but for one chance in 370.
        let columns: Vec<_> = (0..21).map(|i| unit(&i.to_string(), DRAWS)).collect();
        for (i, a) in columns.iter().enumerate() {
            for b in &columns[..i] {
                let product: f64 = a.iter().zip(b).map(|(x, y)| (x - 0.5) * (y - 0.5)).sum();
                let correlation = product * 12.0 / DRAWS as f64;
                assert!(correlation.abs() < 4.5 / (DRAWS as f64).sqrt(), "{i}: {correlation}");
            }
        }
    }

    #[test]
    fn neighbours_in_a_column_are_independent_too() {
        let column = unit("serial", DRAWS);
        for lag in [1, 2, 3, 64] {
            let product: f64 =
                (0..DRAWS - lag).map(|i| (column[i] - 0.5) * (column[i + lag] - 0.5)).sum();
            let correlation = product * 12.0 / DRAWS as f64;
            assert!(correlation.abs() < 4.0 / (DRAWS as f64).sqrt(), "lag {lag}: {correlation}");
        }
    }

    #[test]
    fn a_shared_table_of_normals_changes_no_bit() {
        for n in [1, 7, 100, DRAWS] {
            let mut draws = Draws::of(RandomStart(4), n);
            for dist in [Dist::normal(2.0, 0.3), Dist::log_normal(0.5, 8.0)] {
                let dist = dist.unwrap();
                let name = format!("{dist:?}");
                let shared = draws.column(&[&name], &dist).unwrap();
                let alone = Column::new(Key::of(RandomStart(4), &[&name]), &dist, n);
                let bits = |column: &Column| column.iter().map(f64::to_bits).collect::<Vec<_>>();
                assert_eq!(bits(&shared), bits(&alone), "{n}");
            }
        }
    }

    #[test]
    fn one_path_with_two_distributions_is_our_own_fault() {
        let mut draws = Draws::new(RandomStart(7));
        let one = Dist::exact(1.0).unwrap();
        let two = Dist::exact(2.0).unwrap();
        assert!(draws.column(&["lot", "a"], &one).is_ok());
        assert!(draws.column(&["lot", "a"], &one).is_ok());
        assert_eq!(
            draws.column(&["lot", "a"], &two).unwrap_err().code,
            "one-key-two-distributions"
        );
    }

    #[test]
    fn names_are_kept_apart_in_a_path() {
        let key = |path: &[&str]| Key::of(RandomStart(0), path);
        assert_ne!(key(&["ab", "c"]), key(&["a", "bc"]));
        assert_ne!(Key::of(RandomStart(0), &["a"]), Key::of(RandomStart(1), &["a"]));
    }

    #[test]
    fn a_normal_column_has_normal_moments() {
        let dist = Dist::normal(0.0, 1.0).unwrap();
        let column = Column::new(Key::of(RandomStart(3), &["z"]), &dist, DRAWS);
        let mean: f64 = column.iter().sum::<f64>() / DRAWS as f64;
        let variance: f64 = column.iter().map(|z| z * z).sum::<f64>() / DRAWS as f64;
        // Stratified: the mean is exact but for rounding, the variance but for the outermost strata.
        assert!(mean.abs() < 1e-12 && (variance - 1.0).abs() < 1e-3, "{mean} {variance}");
        assert!(column.iter().all(|z| (0.0..1.0).contains(&normal_cdf(z))));
    }

    proptest! {
        #[test]
        fn every_shuffle_is_a_permutation(key in any::<u64>(), n in 1usize..700) {
            let shuffle = Shuffle::new(Key(key), n);
            let mut all: Vec<_> = (0..n as u64).map(|i| shuffle.of(i)).collect();
            all.sort_unstable();
            prop_assert!(all.into_iter().eq(0..n as u64));
        }
    }
}
