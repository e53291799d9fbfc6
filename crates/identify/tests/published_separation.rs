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

use identify::sets::{Effort, Separation};
use identify::{Judge, foreign};

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

const CHARACTERS: [&str; 6] = ["c1", "c2", "c3", "c4", "c5", "c6"];

/// For each pair of taxa, the characters that separate it.
fn separated() -> Vec<Vec<usize>> {
    let matrix = foreign::read_csv(EIGHT_TAXA).unwrap();
    let judge = Judge::new(&matrix);
    let names: Vec<_> = matrix.taxa().iter().map(|taxon| taxon.name.clone()).collect();
    let number = |id: &str| CHARACTERS.iter().position(|character| *character == id).unwrap();
    let mut pairs = Vec::new();
    for (at, a) in names.iter().enumerate() {
        for b in &names[at + 1..] {
            let told = judge.compare(a, b).unwrap().contrasts;
            let never_alike = told.iter().filter(|contrast| contrast.never_alike);
            pairs.push(never_alike.map(|contrast| number(&contrast.character)).collect());
        }
    }
    pairs
}

/// The smallest sets of characters that separate every pair so many times over, as far as that is
/// possible at all.
fn smallest(times: usize) -> Vec<Vec<usize>> {
    let separation = Separation::new(&[0, 1, 2, 3, 4, 5], separated());
    let smallest = separation.smallest(times, Effort { list: 10, steps: 1_000 });
    assert!(smallest.is_proved());
    assert_eq!(smallest.count, Some(1));
    smallest.sets
}

#[test]
fn each_character_separates_as_many_pairs_as_were_counted() {
    let pairs = separated();
    assert_eq!(pairs.len(), 28);
    let count = |at: usize| pairs.iter().filter(|pair| pair.contains(&at)).count();
    assert_eq!([0, 1, 2, 3, 4, 5].map(count), [16, 16, 16, 12, 12, 15]);
    assert!(pairs.iter().all(|pair| !pair.is_empty()));
}

#[test]
fn three_characters_separate_every_pair_and_five_do_so_twice() {
    assert_eq!(smallest(1), [[0, 1, 2]]);
    assert_eq!(smallest(2), [[0, 1, 2, 3, 5]]);
}

#[test]
fn one_taxon_is_told_from_the_others_by_the_table_itself() {
    let matrix = foreign::read_csv(EIGHT_TAXA).unwrap();
    let others: Vec<_> =
        matrix.taxa().iter().map(|t| t.name.as_str()).filter(|t| *t != "t1").collect();
    let effort = Effort { list: 1, steps: 1_000 };
    let judge = Judge::new(&matrix);
    let smallest = judge.smallest_set("t1", others, None, 1, effort).unwrap();
    // By hand: t2 asks for c3 or c4. Neither has one character that does the rest; c3 has eight
    // pairs of them, c4 without c3 has five.
    assert_eq!((smallest.size(), smallest.count), (3, Some(13)));
}
