//! The main job, asked of what has happened: whoever held the wrong plant is never told that it is
//! the right one.
//!
//! `cargo run -p herbal-data --example mix_ups` prints what becomes of each.
#![expect(clippy::unwrap_used, reason = "a test may panic")]

mod told;

use identify::Verdict;
use std::sync::LazyLock;
use told::{Done, all};

static DONE: LazyLock<Vec<Done>> = LazyLock::new(|| all(&herbal_data::herbal()).unwrap());

const NONE: [&str; 0] = [];

/// The mix-ups of which this holds.
fn those(holds: impl Fn(&Done) -> bool) -> Vec<&'static str> {
    DONE.iter().filter(|done| holds(done)).map(|done| done.id.as_str()).collect()
}

fn determined(verdict: &Verdict) -> bool {
    verdict.outcome.is_determined()
}

#[test]
fn there_are_enough_of_them() {
    assert!(DONE.len() >= 60, "{}", DONE.len());
}

#[test]
fn the_wrong_plant_is_never_determined() {
    assert_eq!(those(|done| done.among_all.wrongly().into_iter().any(determined)), NONE);
}

/// Most targets cannot be settled for want of a word on some third plant. Where only the two grow,
/// nothing but what tells them apart stands in the way.
#[test]
fn nor_is_it_where_only_the_two_grow() {
    assert_eq!(those(|done| done.alone.wrongly().into_iter().any(determined)), NONE);
}

#[test]
fn the_real_plant_stands_in_the_list_of_what_it_could_still_be() {
    assert_eq!(those(|done| done.rank.is_none()), NONE);
    // Of a root alone, or where twins share their leaves, something else may weigh more.
    let first = those(|done| done.rank == Some(1));
    assert!(first.len() >= 60, "{} of {}", first.len(), DONE.len());
}

/// A program that never determined anything would pass all of the above.
#[test]
fn the_same_questions_determine_the_plant_that_was_meant() {
    let among_all = those(|done| determined(&done.among_all.rightly));
    let alone = those(|done| determined(&done.alone.rightly));
    assert!(among_all.len() >= 13, "{among_all:?}");
    assert!(alone.len() >= 28, "{alone:?}");
}
