//! What cups are counted by, and everything that was summed and decided by it so far.

use super::people::table;
use crate::outing::{OwnContent, Wishes};
use dose::{Intakes, Table};
use ground::RandomStart;
use herbal::Herbal;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// What cups are counted by, and everything that was summed and decided by it so far. It hangs on the
/// herbal, the contents that an outing brings along, and the random start.
#[derive(Debug)]
pub(crate) struct Counting {
    contents: BTreeMap<String, OwnContent>,
    start: RandomStart,
    /// By what is known.
    pub(super) known: Intakes,
    /// As if as much passed over as is supposed where nobody measured it.
    pub(super) supposed: Intakes,
    /// The plants of which something is supposed.
    pub(super) supposed_of: BTreeSet<String>,
}

impl Counting {
    /// Nothing counted yet.
    pub(crate) fn new(herbal: &Herbal, wishes: &Wishes, start: RandomStart) -> Self {
        let table = table(herbal, wishes);
        let (supposing, supposed_of) = supposing(&table);
        Self {
            contents: wishes.contents.clone(),
            start,
            known: Intakes::new(Arc::new(table), start),
            supposed: Intakes::new(Arc::new(supposing), start),
            supposed_of,
        }
    }

    /// Whether an outing is counted by the same, beside the same herbal.
    pub(crate) fn fits(&self, wishes: &Wishes, start: RandomStart) -> bool {
        self.contents == wishes.contents && self.start == start
    }

    /// Ends a plan: what was not asked for in the last few is forgotten.
    pub(crate) fn end_round(&mut self) {
        self.known.end_round();
        self.supposed.end_round();
    }
}

/// A table in which every supposed share that passes over counts as if it had been measured, and the
/// plants of which it has one.
fn supposing(table: &Table) -> (Table, BTreeSet<String>) {
    let mut table = table.clone();
    let mut plants = BTreeSet::new();
    for row in &mut table.contents {
        let shares = [&mut row.water, &mut row.ethanol].into_iter().flatten();
        for share in shares.filter(|share| !share.measured) {
            share.measured = true;
            plants.insert(row.taxon.clone());
        }
    }
    (table, plants)
}
