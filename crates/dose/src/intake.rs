//! What people take, summed once for everybody who takes the same.

use crate::decide::Case;
use crate::doubt::Ledger;
use crate::naming::counted;
use crate::shares::{Gap, Yard};
use crate::sum::Sum;
use crate::{Cup, SubstanceId, Table};
use ground::{Fault, RandomStart};
use std::collections::btree_map::Entry;
use std::collections::{BTreeMap, BTreeSet};
use std::ptr;

/// What the decisions of one plan share: a sum hangs on the table, the cups and the random start,
/// and on nobody's answers. Deciding with or without it gives the same bytes.
#[derive(Clone, Debug)]
pub struct Intakes<'a> {
    table: &'a Table,
    pub(crate) start: RandomStart,
    pub(crate) ledger: Ledger,
    known: Vec<Intake>,
}

impl<'a> Intakes<'a> {
    /// Nothing summed yet.
    #[must_use]
    pub fn new(table: &'a Table, start: RandomStart) -> Self {
        Self { table, start, ledger: Ledger::new(start), known: Vec::new() }
    }

    /// Whether a case rests on the same table.
    pub(crate) fn fits(&self, case: &Case<'_>) -> bool {
        ptr::eq(self.table, case.table)
    }

    /// The intake of a case, to be given back with [`Self::keep`].
    pub(crate) fn take(&mut self, case: &Case<'_>) -> Intake {
        let alike = |known: &Intake| known.cup == *case.cup && known.beside == case.beside;
        match self.known.iter().position(alike) {
            Some(at) => self.known.swap_remove(at),
            None => Intake::new(case),
        }
    }

    /// Keeps an intake for the next who takes the same.
    pub(crate) fn keep(&mut self, intake: Intake) {
        self.known.push(intake);
    }
}

/// A cup with what is taken beside it, and the sums over them.
#[derive(Clone, Debug)]
pub(crate) struct Intake {
    cup: Cup,
    beside: Vec<Cup>,
    /// What the cup may hold and some limit speaks of.
    pub(crate) limited: BTreeSet<SubstanceId>,
    sums: BTreeMap<Yard, Result<Sum, Gap>>,
}

impl Intake {
    fn new(case: &Case<'_>) -> Self {
        Self {
            cup: case.cup.clone(),
            beside: case.beside.to_vec(),
            limited: limited(case),
            sums: BTreeMap::new(),
        }
    }

    /// The sum over what a yard counts, or the gap that hides it.
    pub(crate) fn sum(
        &mut self,
        case: &Case<'_>,
        yard: Yard,
        ledger: &mut Ledger,
    ) -> Result<&mut Result<Sum, Gap>, Fault> {
        Ok(match self.sums.entry(yard) {
            Entry::Occupied(known) => known.into_mut(),
            Entry::Vacant(place) => {
                let sum = Sum::gather(case, place.key(), ledger)?;
                place.insert(sum)
            }
        })
    }
}

/// Every substance that the cup holds or is said to hold, as what limits count.
fn limited(case: &Case<'_>) -> BTreeSet<SubstanceId> {
    let of_herbs = case.table.contents.iter().map(|row| &row.substance);
    let natural = ["ethanol", "free-sugars", "honey"].map(SubstanceId::from);
    let plain: BTreeSet<_> = of_herbs.chain(case.cup.holds.keys()).chain(&natural).collect();
    let limited: BTreeSet<_> = case.table.limits.iter().map(|limit| &limit.substance).collect();
    let all = plain.into_iter().flat_map(|substance| counted(case.table, substance));
    all.filter(|substance| limited.contains(substance)).collect()
}
