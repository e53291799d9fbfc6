//! Laws of keys, tried on invented tables against every key there is.

#![expect(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "in a test a panic is the report"
)]

use ground::Finite;
use identify::key::{Form, Key, Step, Table};
use proptest::prelude::*;
use std::collections::{BTreeMap, BTreeSet};

/// Forms with the part of their weight that comes to a place of a key.
type Rest = Vec<(usize, f64)>;

/// Rounding of sums of a few dozen products.
const ROUNDING: f64 = 1e-9;

fn goes(form: &Form, character: usize, state: usize) -> bool {
    form.shows[character].is_empty() || form.shows[character].contains(&state)
}

fn whole(table: &Table) -> Rest {
    table.forms.iter().map(|form| form.weight.get()).enumerate().collect()
}

fn weight(rest: &Rest) -> f64 {
    rest.iter().map(|(_, weight)| weight).sum()
}

/// What is left along each lead, weights spread evenly; states that leave the same forms together.
fn leads(table: &Table, rest: &Rest, character: usize) -> Vec<Rest> {
    let states: BTreeSet<_> =
        rest.iter().flat_map(|(form, _)| &table.forms[*form].shows[character]).collect();
    let goes = |state: &usize| -> Vec<usize> {
        let forms = rest.iter().map(|(form, _)| *form);
        forms.filter(|form| goes(&table.forms[*form], character, *state)).collect()
    };
    let ways: BTreeSet<Vec<usize>> = states.into_iter().map(goes).collect();
    let part = |(form, weight): &(usize, f64)| {
        (*form, weight / ways.iter().filter(|way| way.contains(form)).count() as f64)
    };
    let along =
        |way: &Vec<usize>| rest.iter().filter(|(form, _)| way.contains(form)).map(part).collect();
    ways.iter().map(along).collect()
}

fn apart(one: &Form, other: &Form) -> bool {
    let mut cells = one.shows.iter().zip(&other.shows);
    let tells = |(a, b): (&BTreeSet<usize>, &BTreeSet<usize>)| {
        !a.is_empty() && !b.is_empty() && a.is_disjoint(b)
    };
    one.taxon != other.taxon && cells.any(tells)
}

fn settled(table: &Table, rest: &Rest) -> bool {
    let forms = || rest.iter().map(|(form, _)| &table.forms[*form]);
    forms().all(|one| forms().all(|other| !apart(one, other)))
}

/// Seconds times weight of the cheapest key, by trying all.
fn by_trial(table: &Table, rest: &Rest, read: &BTreeSet<usize>) -> f64 {
    if settled(table, rest) {
        return 0.0;
    }
    let characters = (0..table.seconds.len()).filter(|character| !read.contains(character));
    let costs = characters.filter_map(|character| {
        let leads = leads(table, rest, character);
        let read = read | &BTreeSet::from([character]);
        let below = || leads.iter().map(|rest| by_trial(table, rest, &read)).sum::<f64>();
        (leads.len() > 1).then(|| f64::from(table.seconds[character]) * weight(rest) + below())
    });
    costs.min_by(f64::total_cmp).unwrap()
}

/// Weight times the bits that it takes on average to say which taxon it is.
fn bits(table: &Table, rest: &Rest) -> f64 {
    let mut taxa = BTreeMap::new();
    for (form, weight) in rest {
        *taxa.entry(table.forms[*form].taxon).or_insert(0.0) += weight;
    }
    taxa.values().map(|part| part * libm::log2(weight(rest) / part)).sum()
}

/// Seconds times weight of a key that always reads what gives most information for its seconds, the
/// first of those that give the same.
fn by_information(table: &Table, rest: &Rest, read: &BTreeSet<usize>) -> f64 {
    if settled(table, rest) {
        return 0.0;
    }
    let characters = (0..table.seconds.len()).filter(|character| !read.contains(character));
    let offers = characters.map(|character| (character, leads(table, rest, character)));
    let mut best: Option<(f64, usize, Vec<Rest>)> = None;
    for (character, leads) in offers.filter(|(_, leads)| leads.len() > 1) {
        let after: f64 = leads.iter().map(|rest| bits(table, rest)).sum();
        let score = (bits(table, rest) - after) / f64::from(table.seconds[character]);
        if best.as_ref().is_none_or(|best| score > best.0 + ROUNDING) {
            best = Some((score, character, leads));
        }
    }
    let (_, character, leads) = best.unwrap();
    let read = read | &BTreeSet::from([character]);
    let below: f64 = leads.iter().map(|rest| by_information(table, rest, &read)).sum();
    f64::from(table.seconds[character]) * weight(rest) + below
}

/// Walks a key with all that may be in hand; gives seconds times weight.
fn walk(table: &Table, step: &Step, rest: &Rest) -> f64 {
    let (character, ways) = match step {
        Step::Taxa(taxa) => {
            let left: BTreeSet<_> = rest.iter().map(|(form, _)| table.forms[*form].taxon).collect();
            assert!(left.iter().eq(taxa), "{left:?} are left where the key says {taxa:?}");
            assert!(settled(table, rest));
            return 0.0;
        }
        Step::Couplet { character, leads } => (*character, leads),
    };
    let takes = |form: usize, states: &[usize]| {
        states.iter().any(|state| goes(&table.forms[form], character, *state))
    };
    let below = ways.iter().map(|lead| {
        let along =
            rest.iter().filter(|(form, _)| takes(*form, &lead.states)).map(|(form, weight)| {
                let many = ways.iter().filter(|lead| takes(*form, &lead.states)).count();
                (*form, weight / many as f64)
            });
        walk(table, &lead.to, &along.collect())
    });
    f64::from(table.seconds[character]) * weight(rest) + below.sum::<f64>()
}

fn mean(table: &Table, seconds: f64) -> f64 {
    seconds / weight(&whole(table))
}

fn key(table: &Table, sets: usize) -> Key {
    table.key(sets).unwrap()
}

fn tables(characters: usize) -> impl Strategy<Value = Table> {
    let states = prop_oneof![
        2 => (0..3_usize).prop_map(|state| BTreeSet::from([state])),
        1 => proptest::collection::btree_set(0..3_usize, 0..4),
    ];
    let shows = proptest::collection::vec(states, characters);
    let form = (0..6_usize, 1..9_u8, shows).prop_map(|(taxon, weight, shows)| {
        let weight = Finite::new(f64::from(weight)).unwrap();
        Form { taxon, weight, shows }
    });
    let seconds = proptest::collection::vec(1..9_u16, characters);
    let forms = proptest::collection::vec(form, 1..8);
    (seconds, forms).prop_map(|(seconds, forms)| Table { seconds, forms })
}

/// The worked examples of `published_keys.rs` on which this rule is not the best.
#[test]
fn the_rule_of_most_information_takes_what_was_published() {
    let table = |taxa: &str, weights: &[f64], seconds: &[u16]| {
        let forms =
            taxa.split(' ').zip(weights).enumerate().map(|(taxon, (states, weight))| Form {
                taxon,
                weight: Finite::new(*weight).unwrap(),
                shows: states.bytes().map(|state| BTreeSet::from([usize::from(state)])).collect(),
            });
        Table { seconds: seconds.to_vec(), forms: forms.collect() }
    };
    let even = table("aaaab baaba aabbb bbaab ababb aaabb bbabb aaaba", &[1.0; 8], &[1; 5]);
    let weights = [1.0, 8.0, 1.0, 1.0, 1.0, 4.0, 2.0];
    let uneven = table("ababa bbaaa bbaba aaaaa aabaa babaa aabab", &weights, &[3, 1, 2, 5, 1]);
    for (table, expected) in [(even, 27.0 / 8.0), (uneven, 64.0 / 9.0)] {
        let seconds = mean(&table, by_information(&table, &whole(&table), &BTreeSet::new()));
        assert!((seconds - expected).abs() < ROUNDING, "{seconds} is not {expected}");
    }
}

proptest! {
    #[test]
    fn every_plant_comes_to_its_name_in_the_seconds_that_are_said(table in tables(5), sets in 0..50_usize) {
        let key = key(&table, sets);
        let walked = mean(&table, walk(&table, &key.start, &whole(&table)));
        prop_assert!((walked - key.seconds.get()).abs() < ROUNDING);
        prop_assert!(key.at_least <= key.seconds);
    }

    #[test]
    fn the_cheapest_key_is_the_one_that_trying_all_keys_gives(table in tables(4)) {
        let key = key(&table, 10_000);
        let tried = mean(&table, by_trial(&table, &whole(&table), &BTreeSet::new()));
        prop_assert!(key.is_proved());
        prop_assert!((tried - key.seconds.get()).abs() < ROUNDING, "{} is not {tried}", key.seconds);
    }

    #[test]
    fn no_key_takes_longer_than_by_most_information(table in tables(6), sets in 0..20_usize) {
        let rule = mean(&table, by_information(&table, &whole(&table), &BTreeSet::new()));
        prop_assert!(key(&table, sets).seconds.get() <= rule + ROUNDING);
    }

    #[test]
    fn with_less_effort_the_bound_holds(table in tables(5), sets in 0..20_usize) {
        let (hasty, cheapest) = (key(&table, sets), key(&table, 100_000));
        prop_assert!(cheapest.is_proved());
        prop_assert!(hasty.at_least.get() <= cheapest.seconds.get() + ROUNDING);
        prop_assert!(cheapest.seconds.get() <= hasty.seconds.get() + ROUNDING);
    }

    #[test]
    fn the_order_of_characters_changes_no_cost(
        table in tables(5),
        order in Just((0..5_usize).collect::<Vec<_>>()).prop_shuffle(),
    ) {
        let turned = Table {
            seconds: order.iter().map(|at| table.seconds[*at]).collect(),
            forms: table.forms.iter().map(|form| Form {
                shows: order.iter().map(|at| form.shows[*at].clone()).collect(),
                ..form.clone()
            }).collect(),
        };
        let seconds = |table: &Table| key(table, 10_000).seconds.get();
        prop_assert!((seconds(&table) - seconds(&turned)).abs() < ROUNDING);
    }
}
