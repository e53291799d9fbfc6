//! Every plant that is gathered, in every month in which something of it is there.

use ground::{Month, Region};
use herbal::Sheet;
use jiff::civil::{Date, date};
use std::iter;
use std::panic::resume_unwind;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

/// A plant that is gathered, in one month.
#[derive(Clone, Copy)]
pub(crate) struct Outing<'h> {
    pub(crate) sheet: &'h Sheet,
    pub(crate) month: Month,
}

impl Outing<'_> {
    pub(crate) fn day(&self) -> Date {
        date(2027, i8::try_from(self.month.number()).unwrap_or(1), 15)
    }

    /// The region in which the sheet says that it grows, the first of several.
    pub(crate) fn region(&self) -> Option<Region> {
        self.sheet.regions.first().copied()
    }
}

/// All of them; of some plants where they are named.
pub(crate) fn outings<'h>(herbal: &'h herbal::Herbal, only: &[String]) -> Vec<Outing<'h>> {
    let gathered = herbal.flora.sheets().filter(|sheet| sheet.is_gathered());
    let gathered = gathered.filter(|sheet| only.is_empty() || only.contains(&sheet.name));
    let months = gathered.flat_map(|sheet| Month::all().map(move |month| Outing { sheet, month }));
    months.filter(|o| o.sheet.months.values().any(|season| season.contains(o.month))).collect()
}

/// Does the work on each, on every core; in the order of the work.
pub(crate) fn on_all_cores<T: Sync, R: Send>(all: &[T], work: impl Fn(&T) -> R + Sync) -> Vec<R> {
    let next = AtomicUsize::new(0);
    let take = || {
        let at = next.fetch_add(1, Ordering::Relaxed);
        all.get(at).map(|one| (at, work(one)))
    };
    let cores = thread::available_parallelism().map_or(1, usize::from);
    let mut done: Vec<(usize, R)> = thread::scope(|scope| {
        let started: Vec<_> =
            (0..cores).map(|_| scope.spawn(|| iter::from_fn(take).collect::<Vec<_>>())).collect();
        started
            .into_iter()
            .flat_map(|one| one.join().unwrap_or_else(|panic| resume_unwind(panic)))
            .collect()
    });
    done.sort_by_key(|(at, _)| *at);
    done.into_iter().map(|(_, result)| result).collect()
}
