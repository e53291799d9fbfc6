//! Pairs that characters tell apart, against a worked example of eight taxa and six characters.
//!
//! A character separates a pair when their possible states do not overlap and neither is unknown
//! (Rypka et al. 1967 and later; summarised in *Optimal Classification*, Wikibooks). The figures
//! are exhaustive counts on the table below.

#![expect(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "in a test a panic is the report"
)]

use identify::{Judge, foreign};
use std::collections::BTreeSet;

const EIGHT_TAXA: &str = "\
taxon,c1,c2,c3,c4,c5,c6
t1,a,a,a,a,a,a
t2,a,a,b,b,a,a
t3,a,b,a,b,b,a
t4,a,b,b,a,b,b
t5,b,a,a,a,b,b
t6,b,a,b,b,a|b,a
t7,b,b,a,b,a,b
t8,b,b,b,?,a,a
";

/// For each pair of taxa, the characters that separate it.
fn separated() -> Vec<BTreeSet<String>> {
    let matrix = foreign::read_csv(EIGHT_TAXA).unwrap();
    let judge = Judge::new(&matrix);
    let names: Vec<_> = matrix.taxa().iter().map(|taxon| taxon.name.clone()).collect();
    let mut pairs = Vec::new();
    for (at, a) in names.iter().enumerate() {
        for b in &names[at + 1..] {
            let told = judge.compare(a, b).unwrap().contrasts;
            pairs.push(told.into_iter().filter(|c| c.never_alike).map(|c| c.character).collect());
        }
    }
    pairs
}

/// The smallest sets of characters that separate every pair so many times over, as far as that is
/// possible at all.
fn smallest(pairs: &[BTreeSet<String>], times: usize) -> Vec<BTreeSet<String>> {
    let all: Vec<_> = (1..=6).map(|at| format!("c{at}")).collect();
    let subset = |bits: u32| -> BTreeSet<String> {
        let chosen = all.iter().enumerate().filter(|(at, _)| bits >> at & 1 == 1);
        chosen.map(|(_, name)| name.clone()).collect()
    };
    let covers = |set: &BTreeSet<String>| {
        pairs.iter().all(|pair| pair.intersection(set).count() >= times.min(pair.len()))
    };
    let covering: Vec<_> = (0..64).map(subset).filter(covers).collect();
    let least = covering.iter().map(BTreeSet::len).min().unwrap();
    covering.into_iter().filter(|set| set.len() == least).collect()
}

fn set(names: &[&str]) -> BTreeSet<String> {
    names.iter().map(|name| (*name).to_owned()).collect()
}

#[test]
fn each_character_separates_as_many_pairs_as_were_counted() {
    let pairs = separated();
    assert_eq!(pairs.len(), 28);
    let count = |id: &str| pairs.iter().filter(|pair| pair.contains(id)).count();
    assert_eq!(["c1", "c2", "c3", "c4", "c5", "c6"].map(count), [16, 16, 16, 12, 12, 15]);
    assert!(pairs.iter().all(|pair| !pair.is_empty()));
}

#[test]
fn three_characters_separate_every_pair_and_five_do_so_twice() {
    let pairs = separated();
    assert_eq!(smallest(&pairs, 1), [set(&["c1", "c2", "c3"])]);
    assert_eq!(smallest(&pairs, 2), [set(&["c1", "c2", "c3", "c4", "c6"])]);
}
