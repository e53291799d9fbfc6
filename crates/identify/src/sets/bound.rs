//! How many characters the open pairs need at least.
//!
//! Each open pair p names a price y ≥ 0 for being separated once. Whatever the prices, the open pairs
//! need at least Σ wants·y + Σ min(0, 1 − Σ y) characters, the first sum over pairs, the second over
//! characters, the inner one over the pairs that a character separates: the Lagrangean bound (Held,
//! Wolfe & Crowder 1974; Beasley 1990, Naval Research Logistics 37:151–164, for covering). Prices are
//! moved towards what is wanted too little, by the step of the former paper.

use super::task::Want;
use crate::bits::Bits;

/// One character in the unit of prices. They are whole numbers, so that what is proved on one machine
/// is proved on every other.
const ONE: i64 = 1 << 20;

/// How often prices are moved before the search branches.
const ROUNDS: usize = 15;

/// The prices that pairs name, by number.
pub(super) struct Prices {
    prices: Vec<i64>,
    characters: usize,
}

/// What the open pairs need at least.
pub(super) struct Bound {
    /// That many characters, in units.
    value: i64,
    /// By character: what it costs more than the pairs would pay for it, in units; less than nothing
    /// where they would pay more.
    dearer: Vec<i64>,
}

impl Bound {
    pub(super) fn dearer(&self, character: usize) -> i64 {
        self.dearer.get(character).copied().unwrap_or(0)
    }

    /// The characters without which one must do, if that many are to suffice.
    pub(super) fn too_dear(&self, spare: usize) -> Bits {
        let left = units(spare) - self.value;
        let dear = self.dearer.iter().enumerate().filter(|(_, dearer)| **dearer > left);
        Bits::of(self.dearer.len(), dear.map(|(character, _)| character))
    }
}

impl Prices {
    pub(super) fn new(pairs: usize, characters: usize) -> Self {
        Self { prices: vec![0; pairs], characters }
    }

    /// The best bound that was found, or nothing where it is proved that so many characters more do
    /// not suffice.
    pub(super) fn bound(&mut self, open: &[Want], spare: usize) -> Option<Bound> {
        if open.iter().any(|want| want.times > spare) {
            return None;
        }
        let mut best: Option<Bound> = None;
        for _ in 0..ROUNDS {
            let bound = self.evaluate(open);
            if bound.value > units(spare) {
                return None;
            }
            self.step(open, &bound, units(spare));
            if best.as_ref().is_none_or(|best| bound.value > best.value) {
                best = Some(bound);
            }
        }
        best
    }

    fn price(&self, want: &Want) -> i64 {
        self.prices.get(want.pair).copied().unwrap_or(0)
    }

    fn evaluate(&self, open: &[Want]) -> Bound {
        let mut dearer = vec![ONE; self.characters];
        let mut value = 0;
        for want in open {
            let price = self.price(want);
            value += count(want.times) * price;
            for character in want.by.iter() {
                if let Some(dearer) = dearer.get_mut(character) {
                    *dearer -= price;
                }
            }
        }
        value += dearer.iter().map(|dearer| dearer.min(&0)).sum::<i64>();
        Bound { value, dearer }
    }

    /// Raises the prices of pairs that get too little, and lowers those of pairs that get too much,
    /// when everything is taken that is worth its price. A price above one never betters the bound.
    fn step(&mut self, open: &[Want], bound: &Bound, spare: i64) {
        let lacks = |want: &Want| {
            let taken = want.by.iter().filter(|character| bound.dearer(*character) < 0);
            count(want.times) - count(taken.count())
        };
        let lacks: Vec<i64> = open.iter().map(lacks).collect();
        let norm: i64 = lacks.iter().map(|lack| lack * lack).sum();
        let short_of_proof = spare + 1 - bound.value;
        for (want, lack) in open.iter().zip(&lacks) {
            if let Some(price) = self.prices.get_mut(want.pair) {
                *price = (*price + lack * short_of_proof / norm.max(1)).clamp(0, ONE);
            }
        }
    }
}

fn units(characters: usize) -> i64 {
    count(characters) * ONE
}

fn count(of: usize) -> i64 {
    of as i64
}
