//! The laws of the journal: merging is union, and the order of arrival changes nothing.

#![expect(clippy::expect_used, reason = "a test may panic")]

use ground::{Mass, Part, Text};
use jiff::civil::{DateTime, date};
use journal::{Batch, Correction, Entry, Fitness, Found, Journal, Lot, Payload, Sorting, Take};
use proptest::prelude::*;

fn at(hour: i8) -> Option<DateTime> {
    Some(date(2027, 4, 17).at(hour, 0, 0, 0))
}

fn entry(hour: i8, what: Payload) -> Entry {
    Entry { at: at(hour), by: "leader".to_owned(), what }
}

fn lot(name: &str) -> Entry {
    let takes = vec![format!("take-{name}")];
    entry(9, Payload::Lot(Lot { name: name.to_owned(), takes }))
}

fn take(name: &str, grams: f64) -> Entry {
    entry(
        8,
        Payload::Take(Take {
            name: name.to_owned(),
            stand: "bank".to_owned(),
            part: Part::Leaf,
            amount_g: Mass::from_g(grams),
            pattern: None,
            stages: vec![],
            pickers: vec![],
        }),
    )
}

fn pooled(name: &str, lots: &[&str]) -> Entry {
    let lots = lots.iter().map(|lot| (*lot).to_owned()).collect();
    let [name, make, cook] = [name, "soup", "leader"].map(str::to_owned);
    entry(14, Payload::Batch(Batch { name, make, lots, stages: vec![], cook }))
}

fn sorting(hour: i8, lot: &str, sorters: &[&str], found: &[(&str, bool)]) -> Entry {
    let found = found
        .iter()
        .map(|(what, harmless)| Found { what: (*what).to_owned(), pieces: 1, harmless: *harmless })
        .collect();
    entry(
        hour,
        Payload::Sorting(Sorting {
            lot: lot.to_owned(),
            sorters: sorters.iter().map(|s| (*s).to_owned()).collect(),
            pieces: 200,
            every_piece: true,
            found,
        }),
    )
}

fn fitness(entries: Vec<Entry>, lot: &str) -> Fitness {
    let states = entries.into_iter().collect::<Journal>().fold().lot_states();
    states.get(lot).map(|state| state.fitness.clone()).expect("the lot is in the journal")
}

#[test]
fn a_lot_is_unsorted_until_two_different_people_saw_every_piece() {
    assert_eq!(fitness(vec![lot("a")], "a"), Fitness::Unsorted);
    let alone = vec![lot("a"), sorting(10, "a", &["x", "x"], &[])];
    assert_eq!(fitness(alone, "a"), Fitness::Unsorted);
    let both = vec![lot("a"), sorting(10, "a", &["x", "y"], &[])];
    assert!(fitness(both, "a").is_sorted());
}

#[test]
fn one_harmful_piece_holds_the_lot_until_it_was_gone_through_again() {
    let found = vec![lot("a"), sorting(10, "a", &["x", "y"], &[("Arum maculatum", false)])];
    assert!(matches!(fitness(found.clone(), "a"), Fitness::Held { .. }));
    let mut again = found.clone();
    again.push(sorting(11, "a", &["x", "y"], &[]));
    assert!(fitness(again, "a").is_sorted());
    let mut earlier = found.clone();
    earlier.push(sorting(9, "a", &["x", "y"], &[]));
    assert!(matches!(fitness(earlier, "a"), Fitness::Held { .. }));
    let mut alone = found;
    alone.push(sorting(11, "a", &["x"], &[]));
    assert!(matches!(fitness(alone, "a"), Fitness::Held { .. }));
}

#[test]
fn a_held_lot_holds_every_lot_pooled_with_it_also_through_a_third() {
    let entries = vec![
        lot("a"),
        lot("b"),
        lot("c"),
        lot("apart"),
        pooled("one", &["a", "b"]),
        pooled("two", &["b", "c"]),
        sorting(10, "c", &["x", "y"], &[]),
        sorting(10, "apart", &["x", "y"], &[]),
        sorting(10, "a", &["x", "y"], &[("?", false)]),
    ];
    let held = Fitness::Held { lot: "a".to_owned(), what: vec!["?".to_owned()] };
    assert_eq!(fitness(entries.clone(), "c"), held);
    assert!(fitness(entries, "apart").is_sorted());
}

#[test]
fn what_is_harmless_for_certain_holds_nothing_up() {
    let entries = vec![lot("a"), sorting(10, "a", &["x", "y"], &[("Galium aparine", true)])];
    assert!(fitness(entries, "a").is_sorted());
}

#[test]
fn a_correction_takes_an_entry_back_and_leaves_it_readable() {
    let wrong = take("take-a", 9000.0);
    let correction = Correction { of: wrong.id(), why: Text::new("slip-of-the-pen") };
    let correction = entry(12, Payload::Correction(correction));
    let again = Correction { of: correction.id(), why: Text::new("it-was-right") };
    let entries = vec![lot("a"), wrong, correction];
    let journal: Journal = entries.clone().into_iter().collect();
    assert_eq!(journal.fold().lot_mass("a").g(), 0.0);
    assert_eq!(journal.len(), 3);
    let restored = entries.into_iter().chain([entry(13, Payload::Correction(again))]);
    assert_eq!(restored.collect::<Journal>().fold().lot_mass("a").g(), 9000.0);
}

fn some_entries() -> impl Strategy<Value = Vec<Entry>> {
    let name = prop::sample::select(vec!["a", "b", "c"]);
    let one = prop_oneof![
        name.clone().prop_map(lot),
        (name.clone(), 1.0..900.0f64).prop_map(|(n, g)| take(&format!("take-{n}"), g)),
        (name.clone(), name.clone()).prop_map(|(a, b)| pooled("pot", &[a, b])),
        (9i8..18, name.clone(), any::<bool>()).prop_map(|(hour, n, harm)| {
            let found: &[(&str, bool)] = if harm { &[("?", false)] } else { &[] };
            sorting(hour, n, &["x", "y"], found)
        }),
    ];
    prop::collection::vec(one, 0..12)
}

fn shown(journal: &Journal) -> String {
    let school = journal.fold();
    format!("{school:?} {:?}", school.lot_states())
}

proptest! {
    #[test]
    fn merging_is_associative_commutative_and_idempotent(
        a in some_entries(), b in some_entries(), c in some_entries(),
    ) {
        let [a, b, c] = [a, b, c].map(|e| e.into_iter().collect::<Journal>());
        let left = a.clone().merge(b.clone()).merge(c.clone());
        let right = a.clone().merge(b.clone().merge(c));
        prop_assert_eq!(&left, &right);
        prop_assert_eq!(&a.clone().merge(b.clone()), &b.merge(a.clone()));
        prop_assert_eq!(&a.clone().merge(a.clone()), &a);
    }

    #[test]
    fn the_order_of_arrival_changes_nothing(
        (entries, shuffled) in some_entries().prop_flat_map(|e| (Just(e.clone()), Just(e).prop_shuffle())),
    ) {
        let one: Journal = entries.into_iter().collect();
        let other: Journal = shuffled.into_iter().collect();
        prop_assert_eq!(shown(&one), shown(&other));
    }

    #[test]
    fn an_entry_reads_back_as_itself(entries in some_entries()) {
        for entry in entries {
            let text = serde_json::to_string(&entry).unwrap();
            let read: Entry = serde_json::from_str(&text).unwrap();
            prop_assert_eq!(read.id(), entry.id());
        }
    }
}

#[test]
fn the_code_of_a_label_outlives_a_corrected_weight_and_tells_twins_apart() {
    let school = |takes: [Entry; 2]| {
        let entries = [lot("a"), lot("b"), pooled("p", &["a"]), pooled("q", &["a"])];
        entries.into_iter().chain(takes).collect::<Journal>().fold()
    };
    let first = school([take("take-a", 100.0), take("take-b", 100.0)]);
    let mended = school([take("take-a", 120.0), take("take-b", 100.0)]);
    let codes =
        [first.lot_code("a"), first.lot_code("b"), first.batch_code("p"), first.batch_code("q")];
    assert!(codes.iter().all(Option::is_some));
    assert_eq!(codes.iter().collect::<std::collections::BTreeSet<_>>().len(), 4);
    assert_eq!(first.lot_code("a"), mended.lot_code("a"));
    assert_eq!(first.batch_code("p"), mended.batch_code("p"));
    let mut later = take("take-a", 100.0);
    later.at = at(10);
    let later = school([later, take("take-b", 100.0)]);
    assert_ne!(first.lot_code("a"), later.lot_code("a"));
    assert_ne!(first.batch_code("p"), later.batch_code("p"));
    assert_eq!(first.lot_code("no-such"), None);
}
