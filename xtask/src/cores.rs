//! Work shared out among the cores of the machine.

use std::iter;
use std::panic::resume_unwind;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

/// How many can work at once.
pub(crate) fn count() -> usize {
    thread::available_parallelism().map_or(1, usize::from)
}

/// Does the work on each, as many at once as there are benches, each with one of its own; the order
/// of the results is that of the work.
pub(crate) fn share_out<B: Sync, T: Sync, R: Send>(
    benches: &[B],
    all: &[T],
    work: impl Fn(&B, &T) -> R + Sync,
) -> Vec<R> {
    let next = AtomicUsize::new(0);
    let take = |bench| {
        let at = next.fetch_add(1, Ordering::Relaxed);
        all.get(at).map(|one| (at, work(bench, one)))
    };
    let take_all = &|bench| iter::from_fn(|| take(bench)).collect::<Vec<_>>();
    let mut done: Vec<_> = thread::scope(|scope| {
        let start = |bench| scope.spawn(move || take_all(bench));
        let started: Vec<_> = benches.iter().map(start).collect();
        let finished = started.into_iter().map(|bench| bench.join());
        finished.flat_map(|done| done.unwrap_or_else(|panic| resume_unwind(panic))).collect()
    });
    done.sort_by_key(|(at, _)| *at);
    done.into_iter().map(|(_, result)| result).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_is_worked_on_once_and_results_keep_their_order() {
        let all: Vec<_> = (0..100_u32).collect();
        let results = share_out(&[10, 10, 10], &all, |times, one| times * one);
        assert_eq!(results, (0..100).map(|one| 10 * one).collect::<Vec<u32>>());
    }

    #[test]
    fn nothing_to_do_is_done() {
        assert!(share_out(&[(), ()], &[], |(), one: &u32| *one).is_empty());
    }
}
