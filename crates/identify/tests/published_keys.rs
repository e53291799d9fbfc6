//! Keys against worked examples and published tables.
//!
//! The cheapest costs were found by exhaustive dynamic programming in exact fractions; the entropies
//! and code lengths of the same examples stand beside the bounds, in `key/bound.rs`.

#![expect(clippy::unwrap_used, reason = "in a test a panic is the report")]

mod kit;

use ground::Finite;
use identify::key::{Form, Key, Lead, Step, Table};
use kit::{PLANTAGO, Row, ZOO, read};
use std::collections::BTreeSet;

/// Sums of a few dozen products, each rounded once.
fn close(got: Finite, expected: f64) {
    assert!((got.get() - expected).abs() < 1e-12, "{got} is not {expected}");
}

/// Each row a form, of the taxon of that number.
fn form(taxon: usize, weight: f64, shows: impl Iterator<Item = BTreeSet<char>>) -> Form {
    let number = |state: char| state as usize;
    Form {
        taxon,
        weight: Finite::new(weight).unwrap(),
        shows: shows.map(|states| states.into_iter().map(number).collect()).collect(),
    }
}

/// Taxa as strings of states, one letter a character.
fn table(taxa: &str, weights: &[f64], seconds: &[u16]) -> Table {
    let rows = taxa.split(' ').zip(weights).enumerate();
    let forms = rows.map(|(taxon, (states, weight))| {
        form(taxon, *weight, states.chars().map(|state| BTreeSet::from([state])))
    });
    Table { seconds: seconds.to_vec(), forms: forms.collect() }
}

fn cheapest(table: &Table) -> Key {
    let key = table.key(10_000).unwrap();
    assert!(key.is_proved());
    key
}

/// Rows of a published table, each character at one second.
fn key_to(rows: &[Row], taxon: impl Fn(&Row) -> usize, keep: &[usize]) -> Key {
    let forms = rows.iter().map(|row| {
        form(taxon(row), 1.0, keep.iter().map(|at| row.shows.get(*at).unwrap().clone()))
    });
    cheapest(&Table { seconds: vec![1; keep.len()], forms: forms.collect() })
}

#[test]
fn eight_taxa_of_uneven_weight() {
    let taxa = "aaaaa aabba abaab abbab baaba babab bbabb bbbaa";
    let weights = [0.3, 0.2, 0.15, 0.1, 0.1, 0.05, 0.05, 0.05];
    close(cheapest(&table(taxa, &weights, &[1; 5])).seconds, 2.9);
    close(cheapest(&table(taxa, &weights, &[1, 1, 3, 2, 1])).seconds, 4.0);
}

#[test]
fn a_character_of_three_states() {
    let key = cheapest(&table("aa1x ab1x ba2x bb2y aa3y ab3y ba1y", &[1.0; 7], &[1; 4]));
    close(key.seconds, 16.0 / 7.0);
}

#[test]
fn where_the_most_information_first_is_not_the_cheapest() {
    // That rule takes 27/8 and 64/9.
    let even = table("aaaab baaba aabbb bbaab ababb aaabb bbabb aaaba", &[1.0; 8], &[1; 5]);
    close(cheapest(&even).seconds, 25.0 / 8.0);
    let weights = [1.0, 8.0, 1.0, 1.0, 1.0, 4.0, 2.0];
    let uneven = table("ababa bbaaa bbaba aaaaa aabaa babaa aabab", &weights, &[3, 1, 2, 5, 1]);
    close(cheapest(&uneven).seconds, 52.0 / 9.0);
}

#[test]
fn types_of_the_zoo() {
    let zoo = read(ZOO, 2);
    let types: Vec<_> = zoo.rows.iter().map(|row| &row.is).collect();
    let number = |row: &Row| types.iter().position(|other| **other == row.is).unwrap();
    let all: Vec<_> = (0..zoo.characters.len()).collect();
    close(key_to(&zoo.rows, number, &all).seconds, 210.0 / 101.0);
}

#[test]
fn plantains_by_characters_known_of_all() {
    let plantago = read(PLANTAGO, 1);
    let known = |at: &usize| plantago.rows.iter().all(|row| row.shows.get(*at).unwrap().len() == 1);
    let known: Vec<_> = (0..plantago.characters.len()).filter(known).collect();
    assert_eq!(known.len(), 39);
    let names: Vec<_> = plantago.rows.iter().map(|row| &row.is).collect();
    let number = |row: &Row| names.iter().position(|other| **other == row.is).unwrap();
    close(key_to(&plantago.rows, number, &known).seconds, 82.0 / 19.0);
}

/// By hand, in seconds times weight: with the first character first it takes 4 · 3, and where it reads
/// a 2 · (1 + ½) more. With the second first it takes 2 · 3, and where it reads a 4 · (1 + ½) more; the
/// two plants where it reads b cannot be told apart.
#[test]
fn a_plant_that_varies_is_spread_evenly_over_its_leads() {
    let shows = |cells: [&str; 2]| cells.map(|cell| cell.chars().collect()).into_iter();
    let forms = vec![
        form(0, 1.0, shows(["a", "a"])),
        form(1, 1.0, shows(["ab", "b"])),
        form(2, 1.0, shows(["b", ""])),
    ];
    let key = cheapest(&Table { seconds: vec![4, 2], forms });
    close(key.seconds, 12.0 / 3.0);
    let [a, b] = ['a', 'b'].map(|state| vec![state as usize]);
    let lead = |states: &Vec<usize>, to| Lead { states: states.clone(), to };
    let leads = vec![lead(&a, Step::Taxa(vec![0])), lead(&b, Step::Taxa(vec![2]))];
    let first = Step::Couplet { character: 0, leads };
    let leads = vec![lead(&a, first), lead(&b, Step::Taxa(vec![1, 2]))];
    assert_eq!(key.start, Step::Couplet { character: 1, leads });
}

#[test]
fn one_plant_needs_no_key_and_no_weight_is_below_nothing() {
    let one = table("a", &[0.0], &[1]);
    let key = one.key(0).unwrap();
    assert_eq!((key.start, key.seconds), (Step::Taxa(vec![0]), Finite::ZERO));
    let faults = table("a b", &[1.0, -1.0], &[1]).key(10).unwrap_err();
    assert!(faults.iter().all(|fault| fault.at.entry.as_deref() == Some("1")));
}
