//! How a lot stands: unsorted until two named people went through it piece by piece; held, with
//! every lot pooled with it, once one harmful piece was found.

use crate::{School, Sorting};
use jiff::civil::DateTime;
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};

/// How a lot stands.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct LotState {
    /// Whether it may be used.
    pub fitness: Fitness,
    /// The lots pooled with it by a batch, itself left out.
    pub pooled_with: Vec<String>,
}

/// Whether a lot may be used.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Fitness {
    /// Nobody went through it yet, or only one person, or not every piece.
    Unsorted,
    /// Two named people went through every piece and found nothing that may harm.
    Sorted {
        /// Who.
        by: Vec<String>,
        /// When.
        at: Option<DateTime>,
    },
    /// Something that may harm was found in it, or in a lot pooled with it, and two people have not
    /// yet gone through every piece again and found nothing.
    Held {
        /// In which lot it was found.
        lot: String,
        /// What was found.
        what: Vec<String>,
    },
}

impl Fitness {
    /// Whether the lot may be used.
    #[must_use]
    pub fn is_sorted(&self) -> bool {
        matches!(self, Self::Sorted { .. })
    }
}

pub(crate) fn lot_states(school: &School) -> BTreeMap<String, LotState> {
    let own: BTreeMap<&str, Fitness> =
        school.lots.keys().map(|lot| (lot.as_str(), own_fitness(school, lot))).collect();
    school
        .lots
        .keys()
        .map(|lot| {
            let pool = pool_of(school, lot);
            let held = pool.iter().filter_map(|other| own.get(other.as_str())).find_map(held);
            let fitness = match (own.get(lot.as_str()), held) {
                (Some(Fitness::Held { .. }), _) | (_, None) => {
                    own.get(lot.as_str()).cloned().unwrap_or(Fitness::Unsorted)
                }
                (_, Some(held)) => held,
            };
            (lot.clone(), LotState { fitness, pooled_with: pool.into_iter().collect() })
        })
        .collect()
}

fn held(fitness: &Fitness) -> Option<Fitness> {
    matches!(fitness, Fitness::Held { .. }).then(|| fitness.clone())
}

/// How a lot stands by its own sortings.
///
/// A sorting that found something harmful holds the lot until a later sorting by two people of
/// every piece finds nothing. Of sortings without a time, or at the same time, none counts as later.
fn own_fitness(school: &School, lot: &str) -> Fitness {
    let sortings: Vec<_> = school.sortings.iter().filter(|(_, s)| s.lot == lot).collect();
    let last_find = sortings.iter().filter(|(_, s)| finds_harm(s)).map(|(at, _)| *at).max();
    let clean = sortings
        .iter()
        .filter(|(_, s)| is_clean(s))
        .find(|(at, _)| last_find.is_none_or(|find| find.is_some() && *at > find));
    if let Some((at, sorting)) = clean {
        return Fitness::Sorted { by: sorting.sorters.clone(), at: *at };
    }
    let what: BTreeSet<_> = sortings
        .iter()
        .filter(|(_, s)| finds_harm(s))
        .flat_map(|(_, s)| s.found.iter().filter(|f| !f.harmless).map(|f| f.what.clone()))
        .collect();
    if what.is_empty() {
        return Fitness::Unsorted;
    }
    Fitness::Held { lot: lot.to_owned(), what: what.into_iter().collect() }
}

fn finds_harm(sorting: &Sorting) -> bool {
    sorting.found.iter().any(|found| !found.harmless && found.pieces > 0)
}

/// Whether two different people looked at every piece and found nothing that may harm.
fn is_clean(sorting: &Sorting) -> bool {
    let people: BTreeSet<_> = sorting.sorters.iter().collect();
    people.len() >= 2 && sorting.every_piece && sorting.pieces > 0 && !finds_harm(sorting)
}

/// The lots that share a pot with this one, directly or through others.
fn pool_of(school: &School, lot: &str) -> BTreeSet<String> {
    let mut pool = BTreeSet::from([lot.to_owned()]);
    loop {
        let touched = school
            .batches
            .values()
            .filter(|(_, batch)| batch.lots.iter().any(|other| pool.contains(other)))
            .flat_map(|(_, batch)| batch.lots.clone());
        let before = pool.len();
        pool = pool.iter().cloned().chain(touched).collect();
        if pool.len() == before {
            pool.remove(lot);
            return pool;
        }
    }
}
