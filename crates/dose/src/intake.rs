//! What people take, summed once for everybody who takes the same, and what was decided on it.

use crate::decide::{Case, Tense};
use crate::doubt::Ledger;
use crate::naming::counted;
use crate::shares::{Gap, Yard};
use crate::sum::Sum;
use crate::{Cup, Decision, Person, SubstanceId, Table};
use ground::{Fault, RandomStart};
use std::collections::btree_map::Entry;
use std::collections::{BTreeMap, BTreeSet};
use std::ptr;
use std::sync::Arc;

/// Rounds for which something is kept that nobody asked for.
const IDLE: u8 = 3;

/// Columns of draws that are kept, each of some 64 KiB.
const COLUMNS: usize = 256;

/// What the decisions of a plan share, and those of the next one: a sum hangs on the table, the cups
/// and the random start, and on nobody's answers; a decision on the person besides. Deciding with or
/// without it gives the same bytes.
#[derive(Clone, Debug)]
pub struct Intakes {
    table: Arc<Table>,
    pub(crate) start: RandomStart,
    pub(crate) ledger: Ledger,
    known: Vec<Intake>,
}

impl Intakes {
    /// Nothing summed yet.
    #[must_use]
    pub fn new(table: Arc<Table>, start: RandomStart) -> Self {
        Self { table, start, ledger: Ledger::new(start), known: Vec::new() }
    }

    /// The table that everything is summed by. A case that rests on another one is decided by itself.
    #[must_use]
    pub fn table(&self) -> Arc<Table> {
        Arc::clone(&self.table)
    }

    /// Ends a round, such as a plan: forgets what was not asked for in the last few of them.
    pub fn end_round(&mut self) {
        self.known.retain_mut(|intake| {
            intake.decided.retain_mut(|decided| still_asked_for(&mut decided.idle));
            still_asked_for(&mut intake.idle)
        });
        self.ledger.keep_at_most(COLUMNS);
    }

    /// Whether a case rests on the same table.
    pub(crate) fn fits(&self, case: &Case<'_>) -> bool {
        ptr::eq(&raw const *self.table, case.table)
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
        self.known.push(Intake { idle: 0, ..intake });
    }
}

/// Whether something was asked for in one of the last rounds.
fn still_asked_for(idle: &mut u8) -> bool {
    *idle += 1;
    *idle <= IDLE
}

/// A cup with what is taken beside it, the sums over them, and what was decided on it for whom.
#[derive(Clone, Debug)]
pub(crate) struct Intake {
    cup: Cup,
    beside: Vec<Cup>,
    /// What the cup may hold and some limit speaks of.
    pub(crate) limited: BTreeSet<SubstanceId>,
    sums: BTreeMap<Yard, Result<Sum, Gap>>,
    decided: Vec<Decided>,
    idle: u8,
}

/// What was decided, and what it hangs on besides the table, the cups and the random start.
#[derive(Clone, Debug)]
struct Decided {
    person: Person,
    tense: Tense,
    sold: bool,
    decision: Decision,
    idle: u8,
}

impl Intake {
    pub(crate) fn new(case: &Case<'_>) -> Self {
        Self {
            cup: case.cup.clone(),
            beside: case.beside.to_vec(),
            limited: limited(case),
            sums: BTreeMap::new(),
            decided: Vec::new(),
            idle: 0,
        }
    }

    /// What was decided before on the same case.
    pub(crate) fn decided(&mut self, case: &Case<'_>) -> Option<Decision> {
        let Case { person, tense, sold, table: _, cup: _, beside: _ } = *case;
        let same = |known: &&mut Decided| {
            (&known.person, known.tense, known.sold) == (person, tense, sold)
        };
        let known = self.decided.iter_mut().find(same)?;
        known.idle = 0;
        Some(known.decision.clone())
    }

    /// Keeps a decision for whoever asks again.
    pub(crate) fn note(&mut self, case: &Case<'_>, decision: &Decision) {
        let Case { person, tense, sold, table: _, cup: _, beside: _ } = *case;
        let (person, decision) = (person.clone(), decision.clone());
        self.decided.push(Decided { person, tense, sold, decision, idle: 0 });
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
