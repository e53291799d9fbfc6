//! Published tables of states, read from `tests/data`.
#![allow(dead_code, unreachable_pub, reason = "each test file uses some of it")]
#![allow(clippy::unwrap_used, reason = "a panic is how a test reports")]

use std::collections::BTreeSet;

pub const ZOO: &str = include_str!("../data/zoo.csv");
pub const MUSHROOM: &str = include_str!("../data/mushroom.csv");
pub const PLANTAGO: &str = include_str!("../data/plantago.csv");

/// The states that something may show of a character; none at all: unknown.
pub type States = BTreeSet<char>;

pub struct Table {
    pub characters: Vec<String>,
    pub rows: Vec<Row>,
}

#[derive(Clone, PartialEq)]
pub struct Row {
    /// What it is.
    pub is: String,
    pub shows: Vec<States>,
}

/// A table of which the first columns are no characters.
pub fn read(text: &str, titles: usize) -> Table {
    let mut lines = text.lines().filter(|line| !line.starts_with('#'));
    let characters = lines.next().unwrap().split(',').skip(titles).map(str::to_owned).collect();
    let row = |line: &str| Row {
        is: line.split(',').next().unwrap().to_owned(),
        shows: line.split(',').skip(titles).map(|cell| cell.chars().collect()).collect(),
    };
    Table { characters, rows: lines.map(row).collect() }
}

/// Whether two cells are known and share no state.
pub fn apart(one: &States, other: &States) -> bool {
    !one.is_empty() && !other.is_empty() && one.is_disjoint(other)
}

impl Table {
    /// The characters that separate each two rows of which this says that they are to be told apart.
    pub fn pairs(&self, tell: impl Fn(&Row, &Row) -> bool) -> Vec<Vec<usize>> {
        let mut pairs = Vec::new();
        for (at, one) in self.rows.iter().enumerate() {
            let others = self.rows.iter().skip(at + 1).filter(|other| tell(one, other));
            pairs.extend(others.map(|other| separating(one, other)));
        }
        pairs
    }

    /// The names of characters.
    pub fn names(&self, set: &[usize]) -> Vec<&str> {
        set.iter().map(|at| self.characters.get(*at).unwrap().as_str()).collect()
    }
}

/// The numbers of the characters that separate two rows.
pub fn separating(one: &Row, other: &Row) -> Vec<usize> {
    let cells = one.shows.iter().zip(&other.shows).enumerate();
    cells.filter(|(_, (a, b))| apart(a, b)).map(|(at, _)| at).collect()
}
