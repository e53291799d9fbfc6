//! Sets of small numbers, one bit each.

use std::iter;

const WIDTH: usize = 64;

/// A set of numbers below a bound. Sets are only ever compared or joined with sets of the same bound.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Bits(Vec<u64>);

impl Bits {
    /// Room for the numbers below the bound, none of them in it.
    pub(crate) fn none(bound: usize) -> Self {
        Self(vec![0; bound.div_ceil(WIDTH)])
    }

    /// Those of the numbers that are below the bound.
    pub(crate) fn of(bound: usize, numbers: impl IntoIterator<Item = usize>) -> Self {
        let mut bits = Self::none(bound);
        for number in numbers.into_iter().filter(|number| *number < bound) {
            bits.insert(number);
        }
        bits
    }

    pub(crate) fn insert(&mut self, number: usize) {
        if let Some(word) = self.0.get_mut(number / WIDTH) {
            *word |= 1 << (number % WIDTH);
        }
    }

    pub(crate) fn remove(&mut self, number: usize) {
        if let Some(word) = self.0.get_mut(number / WIDTH) {
            *word &= !(1 << (number % WIDTH));
        }
    }

    pub(crate) fn remove_all(&mut self, other: &Self) {
        for (word, less) in self.0.iter_mut().zip(&other.0) {
            *word &= !less;
        }
    }

    pub(crate) fn contains(&self, number: usize) -> bool {
        self.0.get(number / WIDTH).is_some_and(|word| word >> (number % WIDTH) & 1 == 1)
    }

    pub(crate) fn is_subset(&self, other: &Self) -> bool {
        self.0.iter().zip(&other.0).all(|(word, wider)| word & !wider == 0)
    }

    pub(crate) fn is_empty(&self) -> bool {
        self.0.iter().all(|word| *word == 0)
    }

    pub(crate) fn len(&self) -> usize {
        self.0.iter().map(|word| word.count_ones() as usize).sum()
    }

    /// The numbers, in order.
    pub(crate) fn iter(&self) -> impl Iterator<Item = usize> + '_ {
        self.0.iter().enumerate().flat_map(|(at, word)| numbers(at, *word))
    }

    /// The numbers that are in both, in order.
    pub(crate) fn common<'b>(&'b self, other: &'b Self) -> impl Iterator<Item = usize> + 'b {
        let words = self.0.iter().zip(&other.0).enumerate();
        words.flat_map(|(at, (word, other))| numbers(at, word & other))
    }
}

/// The numbers that a word at this place stands for.
fn numbers(at: usize, word: u64) -> impl Iterator<Item = usize> {
    let without_lowest = |left: &u64| Some(left & left.wrapping_sub(1));
    let left = iter::successors(Some(word), without_lowest).take_while(|left| *left != 0);
    left.map(move |left| at * WIDTH + left.trailing_zeros() as usize)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use std::collections::BTreeSet;

    const BOUND: usize = 150;

    proptest! {
        #[test]
        fn bits_are_a_set_of_numbers(
            one in proptest::collection::btree_set(0..200_usize, 0..60),
            other in proptest::collection::btree_set(0..BOUND, 0..60),
        ) {
            let below: BTreeSet<usize> = one.range(..BOUND).copied().collect();
            let (a, b) = (Bits::of(BOUND, one), Bits::of(BOUND, other.iter().copied()));
            let numbers = |bits: &Bits| bits.iter().collect::<BTreeSet<usize>>();
            prop_assert_eq!(numbers(&a), below.clone());
            prop_assert_eq!(a.len(), below.len());
            prop_assert_eq!(a.is_empty(), below.is_empty());
            prop_assert_eq!(a.is_subset(&b), below.is_subset(&other));
            prop_assert!((0..200).all(|number| a.contains(number) == below.contains(&number)));
            prop_assert!(a.common(&b).eq(below.intersection(&other).copied()));
            let mut less = a;
            less.remove_all(&b);
            prop_assert_eq!(numbers(&less), &below - &other);
        }
    }
}
