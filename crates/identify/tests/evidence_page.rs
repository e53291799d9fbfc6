//! The numbers of `docs/evidence.md` are those that judging rests on: all of them, and no others.

use identify::evidence;
use std::collections::BTreeMap;

const PAGE: &str = include_str!("../../../docs/evidence.md");
const TABLE: &str = include_str!("../src/evidence.rs");

macro_rules! numbers {
    ($($name:ident)*) => {
        BTreeMap::from([$((stringify!($name), evidence::$name.to_string().parse().unwrap())),*])
    };
}

fn used() -> BTreeMap<&'static str, f64> {
    numbers![
        ALWAYS USUALLY SOMETIMES RARELY UNSEEN
        BEYOND YOUNG YOUNGEST LENGTH_ERROR
        LEADER TRAINED PUBLIC ON_LEAVES ON_FLOWERS MOST_MISREAD FAR OFF_BY_ONE FLOOR
        TELL DENIALS AGREES MISFIT OUTWEIGH CLOSE ONE_PLANT AGAIN_MINUTES RULES_OUT NONE_OF_THESE
        WEIGHT_HARMLESS WEIGHT_IRRITANT WEIGHT_UNKNOWN WEIGHT_HARMFUL WEIGHT_COUSIN
        WEIGHT_DEADLY
        COUSIN_LISTED COUSIN_UNKNOWN
    ]
}

/// A row of the page: a name, its number, and why.
fn row(line: &str) -> Option<(&str, f64)> {
    let mut cells = line.strip_prefix("| `")?.split(" | ");
    let name = cells.next()?.trim_end_matches('`');
    let number = cells.next()?.parse().ok()?;
    let why = cells.next()?.trim_end_matches(" |");
    (!why.trim().is_empty()).then_some((name, number))
}

#[test]
fn the_page_says_the_numbers_that_are_used() {
    let said: BTreeMap<_, f64> = PAGE.lines().filter_map(row).collect();
    assert_eq!(said, used());
}

#[test]
fn no_number_is_left_out() {
    let named = TABLE.lines().filter_map(|line| line.strip_prefix("pub const "));
    let named: Vec<_> = named.filter_map(|line| line.split(':').next()).collect();
    assert_eq!(named.len(), used().len());
    assert!(named.iter().all(|name| used().contains_key(name)));
}
