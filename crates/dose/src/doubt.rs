//! Doubtful amounts: where their draws come from, and which end is held against a limit.

use ground::{Dist, Draws, Fault, Finite, RandomStart, upper_rank};
use serde::{Deserialize, Serialize};

/// Which end of a doubtful sum is held against a limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Bound {
    /// The upper 99 % bound of the value that 19 in 20 stay below.
    Upper,
    /// The worst end of every input.
    Worst,
}

/// Where draws come from.
pub(crate) struct Ledger {
    draws: Draws,
    rank: Dist,
    upper: usize,
}

impl Ledger {
    pub(crate) fn new(start: RandomStart) -> Self {
        let draws = Draws::new(start);
        let upper = upper_rank(draws.count(), 0.95, 0.99).unwrap_or(draws.count());
        let one = Finite::new(1.0).unwrap_or(Finite::ZERO);
        Self { draws, rank: Dist::Uniform { low: Finite::ZERO, high: one }, upper }
    }

    /// A distribution read at the rank that this identity draws.
    pub(crate) fn read(&mut self, path: &[&str], dist: &Dist) -> Result<Doubt, Fault> {
        let (low, high) = dist.ends();
        if low == high {
            return Ok(Doubt::exact(self.draws.count(), low));
        }
        let ranks = self.draws.column(path, &self.rank)?;
        let draws = ranks.iter().map(|rank| dist.quantile(rank).max(0.0)).collect();
        Ok(Doubt { draws, worst: high.is_finite().then_some(high) })
    }

    pub(crate) fn exact(&self, value: f64) -> Doubt {
        Doubt::exact(self.draws.count(), value)
    }
}

/// A doubtful amount: its draws, and its worst end where one is published.
#[derive(Clone, Debug)]
pub(crate) struct Doubt {
    pub(crate) draws: Vec<f64>,
    pub(crate) worst: Option<f64>,
}

impl Doubt {
    fn exact(n: usize, value: f64) -> Self {
        Self { draws: vec![value; n], worst: Some(value) }
    }

    fn with(self, other: &Self, f: impl Fn(f64, f64) -> f64) -> Self {
        let draws = self.draws.iter().zip(&other.draws).map(|(a, b)| f(*a, *b)).collect();
        Self { draws, worst: self.worst.zip(other.worst).map(|(a, b)| f(a, b)) }
    }

    pub(crate) fn plus(self, other: &Self) -> Self {
        self.with(other, |a, b| a + b)
    }

    pub(crate) fn times(self, other: &Self) -> Self {
        self.with(other, |a, b| a * b)
    }

    pub(crate) fn or_more(self, other: &Self) -> Self {
        self.with(other, f64::max)
    }

    pub(crate) fn scaled(mut self, factor: f64) -> Self {
        self.draws.iter_mut().for_each(|draw| *draw *= factor);
        self.worst = self.worst.map(|worst| worst * factor);
        self
    }

    /// The end that is held against a limit; nothing where no extreme is published.
    pub(crate) fn at(&self, bound: Bound, ledger: &Ledger) -> Option<f64> {
        match bound {
            Bound::Worst => self.worst,
            Bound::Upper => {
                let mut draws = self.draws.clone();
                let at = ledger.upper.clamp(1, draws.len().max(1)) - 1;
                (at < draws.len()).then(|| *draws.select_nth_unstable_by(at, f64::total_cmp).1)
            }
        }
    }

    /// Whether there is none of it for certain.
    pub(crate) fn is_none(&self) -> bool {
        self.worst == Some(0.0)
    }
}
