//! Doubtful amounts: where their draws come from, and which end is held against a limit.

use ground::{Dist, Draws, Fault, Finite, RandomStart, Spread, upper_rank};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::sync::Arc;

/// Which end of a doubtful sum is held against a limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Bound {
    /// The upper 99 % bound of the value that 19 in 20 stay below.
    Upper,
    /// The worst end of every input.
    Worst,
}

/// Where draws come from. What was read once is kept for whoever reads it again.
#[derive(Clone, Debug)]
pub(crate) struct Ledger {
    draws: Draws,
    rank: Dist,
    upper: usize,
    known: BTreeMap<Vec<String>, Vec<(Dist, Doubt)>>,
}

impl Ledger {
    pub(crate) fn new(start: RandomStart) -> Self {
        let draws = Draws::new(start);
        let upper = upper_rank(draws.count(), 0.95, 0.99).unwrap_or(draws.count());
        let one = Finite::new(1.0).unwrap_or(Finite::ZERO);
        let rank = Dist::Uniform { low: Finite::ZERO, high: one };
        Self { draws, rank, upper, known: BTreeMap::new() }
    }

    /// Forgets what was read where that has become more than so many columns.
    pub(crate) fn keep_at_most(&mut self, columns: usize) {
        if self.known.values().map(Vec::len).sum::<usize>() > columns {
            self.known.clear();
        }
    }

    /// A distribution read at the rank that this identity draws.
    pub(crate) fn read(&mut self, path: &[&str], dist: &Dist) -> Result<Doubt, Fault> {
        let (low, high) = dist.ends();
        if low == high {
            return Ok(Doubt::exact(low));
        }
        let path_of_names = path.iter().map(|name| (*name).to_owned()).collect();
        let known = self.known.entry(path_of_names).or_default();
        if let Some((_, doubt)) = known.iter().find(|(of, _)| of == dist) {
            return Ok(doubt.clone());
        }
        let ranks = self.draws.column(path, &self.rank)?;
        let draws = ranks.iter().map(|rank| dist.quantile(rank).max(0.0)).collect();
        let doubt = Doubt { drawn: Drawn::Each(draws), worst: high.is_finite().then_some(high) };
        known.push((dist.clone(), doubt.clone()));
        Ok(doubt)
    }
}

/// A doubtful amount: its draws, and its worst end where one is published.
#[derive(Clone, Debug)]
pub(crate) struct Doubt {
    drawn: Drawn,
    pub(crate) worst: Option<f64>,
}

/// The draws of an amount. Those of a known amount are all alike, and are not written out.
#[derive(Clone, Debug)]
enum Drawn {
    Alike(f64),
    Each(Arc<[f64]>),
}

impl Drawn {
    fn map(&self, f: impl Fn(f64) -> f64) -> Self {
        match self {
            Self::Alike(draw) => Self::Alike(f(*draw)),
            Self::Each(draws) => Self::Each(draws.iter().map(|draw| f(*draw)).collect()),
        }
    }

    fn with(&self, other: &Self, f: impl Fn(f64, f64) -> f64) -> Self {
        match (self, other) {
            (Self::Alike(one), other) => other.map(|draw| f(*one, draw)),
            (one, Self::Alike(other)) => one.map(|draw| f(draw, *other)),
            (Self::Each(one), Self::Each(other)) => {
                Self::Each(one.iter().zip(other.iter()).map(|(a, b)| f(*a, *b)).collect())
            }
        }
    }
}

impl Doubt {
    /// An amount that is known.
    pub(crate) fn exact(value: f64) -> Self {
        Self { drawn: Drawn::Alike(value), worst: Some(value) }
    }

    fn with(&self, other: &Self, f: impl Fn(f64, f64) -> f64) -> Self {
        let worst = self.worst.zip(other.worst).map(|(a, b)| f(a, b));
        Self { drawn: self.drawn.with(&other.drawn, f), worst }
    }

    pub(crate) fn plus(&self, other: &Self) -> Self {
        self.with(other, |a, b| a + b)
    }

    pub(crate) fn times(&self, other: &Self) -> Self {
        self.with(other, |a, b| a * b)
    }

    pub(crate) fn or_more(&self, other: &Self) -> Self {
        self.with(other, f64::max)
    }

    pub(crate) fn scaled(&self, factor: f64) -> Self {
        self.map(|draw| draw * factor, self.worst.map(|worst| worst * factor))
    }

    /// Each draw turned into another, with the worst end of what comes out.
    pub(crate) fn map(&self, f: impl Fn(f64) -> f64, worst: Option<f64>) -> Self {
        Self { drawn: self.drawn.map(f), worst }
    }

    /// The end that is held against a limit; nothing where no extreme is published.
    pub(crate) fn at(&self, bound: Bound, ledger: &Ledger) -> Option<f64> {
        match (bound, &self.drawn) {
            (Bound::Worst, _) => self.worst,
            (Bound::Upper, Drawn::Alike(draw)) => Some(*draw),
            (Bound::Upper, Drawn::Each(draws)) => {
                let mut draws = draws.to_vec();
                let at = ledger.upper.clamp(1, draws.len().max(1)) - 1;
                (at < draws.len()).then(|| *draws.select_nth_unstable_by(at, f64::total_cmp).1)
            }
        }
    }

    /// The whole doubt in a few figures.
    pub(crate) fn spread(&self) -> Option<Spread> {
        match &self.drawn {
            Drawn::Alike(draw) => Spread::exact(*draw),
            Drawn::Each(draws) => Spread::of(draws.to_vec()),
        }
    }

    /// Whether there is none of it for certain.
    pub(crate) fn is_none(&self) -> bool {
        self.worst == Some(0.0)
    }
}
