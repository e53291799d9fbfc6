//! The search for all sets of one size.

use super::Effort;
use super::bound::{Bound, Prices};
use super::task::{Choice, Task};
use crate::bits::Bits;
use std::collections::BTreeSet;
use std::ops::ControlFlow;

/// A search for sets of characters, smaller ones being refuted.
pub(super) struct Search<'t> {
    task: &'t Task<'t>,
    prices: Prices,
    effort: Effort,
    /// How many characters a set may have.
    most: usize,
    /// The quickest sets that were found, with their seconds; of equals the first in order of their
    /// characters.
    pub(super) found: BTreeSet<(u32, Vec<usize>)>,
    count: u64,
}

impl<'t> Search<'t> {
    pub(super) fn new(task: &'t Task<'t>, effort: Effort) -> Self {
        let prices = Prices::new(task.wants.len(), task.characters());
        Self { task, prices, effort, most: 0, found: BTreeSet::new(), count: 0 }
    }

    /// How many sets of this size do it, or nothing where the steps ran out or one was enough. There
    /// must be no smaller one.
    pub(super) fn sets_of(&mut self, size: usize) -> Option<u64> {
        self.most = size;
        let flow = self.descend(self.task.no_choice());
        flow.is_continue().then_some(self.count)
    }

    /// Goes through all sets that agree with a choice.
    fn descend(&mut self, mut choice: Choice) -> ControlFlow<()> {
        let Some(steps) = self.effort.steps.checked_sub(1) else {
            return ControlFlow::Break(());
        };
        self.effort.steps = steps;
        let spare = self.most.saturating_sub(choice.taken.len());
        loop {
            if choice.open.is_empty() {
                return self.keep(&choice.taken);
            }
            let Some(bound) = self.prices.bound(&choice.open, spare) else {
                return ControlFlow::Continue(());
            };
            let dear = bound.too_dear(spare);
            if !choice.open.iter().any(|want| want.by.common(&dear).next().is_some()) {
                return self.branch(choice, &bound);
            }
            if !self.task.bar(&mut choice, &dear) {
                return ControlFlow::Continue(());
            }
        }
    }

    /// Takes each character that may serve the pair with the fewest choices, then leaves it out: so
    /// no set is met twice.
    fn branch(&mut self, mut choice: Choice, bound: &Bound) -> ControlFlow<()> {
        let fewest = choice.open.iter().min_by_key(|want| want.by.len() - want.times);
        let mut characters: Vec<_> = fewest.iter().flat_map(|want| want.by.iter()).collect();
        characters.sort_by_key(|character| (bound.dearer(*character), *character));
        for character in characters {
            self.descend(self.task.with(&choice, character))?;
            if !self.task.bar(&mut choice, &Bits::of(self.task.characters(), [character])) {
                break;
            }
        }
        ControlFlow::Continue(())
    }

    fn keep(&mut self, taken: &Bits) -> ControlFlow<()> {
        self.count += 1;
        self.found.insert((self.task.seconds(taken), taken.iter().collect()));
        if self.effort.list == 0 {
            return ControlFlow::Break(());
        }
        if self.found.len() > self.effort.list {
            self.found.pop_last();
        }
        ControlFlow::Continue(())
    }
}
