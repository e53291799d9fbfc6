//! How many seconds any key takes at least.
//!
//! What is left falls into parts, such that whatever ends together is of one part. A key tells the
//! parts apart, so with parts of weight w of W together it takes at least
//! - the seconds of the quickest character × the length of a Huffman code of the parts with as many
//!   symbols as any character has states;
//! - the entropy Σ w log2(W / w) over the most bits that a character gives for a second, which are
//!   log2 of its states over its seconds.

use super::frame::{Frame, Rest};
use super::{Form, Table};
use crate::states::count;
use std::collections::BTreeSet;

/// What the best of the characters give.
pub(super) struct Best {
    seconds: f64,
    states: usize,
    bits_a_second: f64,
}

impl Best {
    pub(super) fn of(table: &Table) -> Self {
        let mut best = Self { seconds: f64::INFINITY, states: 2, bits_a_second: 0.0 };
        for (character, seconds) in table.seconds.iter().enumerate() {
            let shown = |form: &Form| form.shows.get(character).cloned().unwrap_or_default();
            let states = table.forms.iter().flat_map(shown).collect::<BTreeSet<_>>().len();
            if states < 2 {
                continue;
            }
            let seconds = f64::from(*seconds);
            best.seconds = best.seconds.min(seconds);
            best.states = best.states.max(states);
            best.bits_a_second = best.bits_a_second.max(libm::log2(count(states)) / seconds);
        }
        best
    }
}

impl Frame<'_> {
    /// Seconds that any key takes from here at least, times the weight that comes here.
    pub(super) fn bound(&self, rest: &Rest) -> f64 {
        let parts = self.parts(rest);
        if parts.len() < 2 {
            return 0.0;
        }
        let by_code = self.best.seconds * huffman(&parts, self.best.states);
        by_code.max(entropy(&parts) / self.best.bits_a_second)
    }

    /// The weights of the parts: two forms are of one part where nothing tells them apart, or where
    /// others join them.
    fn parts(&self, rest: &Rest) -> Vec<f64> {
        let mut left = rest.forms.clone();
        let mut parts = Vec::new();
        while let Some(first) = left.pop() {
            let (mut joined, mut weight) = (vec![first], 0.0);
            while let Some((form, own)) = joined.pop() {
                weight += own;
                let alone = |(other, _): &(usize, f64)| self.apart(form, *other);
                let (others, more) = left.into_iter().partition(alone);
                left = others;
                joined.extend::<Vec<_>>(more);
            }
            parts.push(weight);
        }
        parts
    }
}

/// The weight of the parts times the bits that it takes on average to say which.
pub(super) fn entropy(parts: &[f64]) -> f64 {
    let whole: f64 = parts.iter().sum();
    let some = parts.iter().filter(|part| **part > 0.0);
    some.map(|part| part * libm::log2(whole / part)).sum()
}

/// The weight of the parts times the length of the shortest code for them, of so many symbols
/// (Huffman 1952, Proceedings of the IRE 40:1098–1101).
fn huffman(parts: &[f64], symbols: usize) -> f64 {
    let mut left = parts.to_vec();
    left.sort_by(f64::total_cmp);
    let mut length = 0.0;
    // The first step takes so many that each later one can take a full set.
    let mut take = 2 + left.len().saturating_sub(2) % (symbols - 1);
    while left.len() > 1 {
        let sum: f64 = left.drain(..take.min(left.len())).sum();
        length += sum;
        left.insert(left.partition_point(|part| *part <= sum), sum);
        take = symbols;
    }
    length
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked examples in exact arithmetic; the sums have few terms.
    fn close(got: f64, expected: f64) {
        assert!((got - expected).abs() < 1e-8, "{got} is not {expected}");
    }

    #[test]
    fn lengths_and_entropies_of_worked_examples() {
        let uneven = [0.3, 0.2, 0.15, 0.1, 0.1, 0.05, 0.05, 0.05];
        close(entropy(&uneven), 2.708_694_97);
        close(huffman(&uneven, 2), 2.75);
        close(entropy(&[1.0; 7]) / 7.0, 2.807_354_922);
        close(huffman(&[1.0; 7], 2) / 7.0, 2.857_142_857);
        close(huffman(&[1.0; 8], 2), 24.0);
        let eighteen = [1.0, 8.0, 1.0, 1.0, 1.0, 4.0, 2.0];
        close(entropy(&eighteen) / 18.0, 2.281_036_113);
        close(huffman(&eighteen, 2) / 18.0, 2.333_333_333);
    }

    #[test]
    fn three_symbols_are_used_in_full() {
        // Nine equal parts take two symbols each; a tenth shares a place with one of them, so that
        // both take a third.
        close(huffman(&[1.0; 9], 3), 18.0);
        close(huffman(&[1.0; 10], 3), 16.0 + 6.0);
    }
}
