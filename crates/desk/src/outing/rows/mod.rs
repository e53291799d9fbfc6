//! The outing file as rows, so that a program can change one table and leave the others alone.

mod cell;
mod change;
mod gather;
mod write;

pub use cell::Cell;
pub use change::{Change, standing_rows};
pub use gather::rows;
pub use write::write;

pub(crate) use write::assignment;

use ground::ContentId;
use jiff::civil::DateTime;
use journal::Flag;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// The tables of an outing file in the order in which they are written. The first holds what stands
/// at the top of the file, before any table.
const TABLES: [&str; 28] = [
    "",
    "outing",
    "reader",
    "site",
    "permission",
    "stand",
    "survey",
    "stop",
    "way-back",
    "emergency",
    "number",
    "make",
    "content",
    "fraction",
    "participant",
    "answers",
    "looks",
    "take",
    "lot",
    "sorting",
    "batch",
    "weighing",
    "serving",
    "confirmation",
    "flag",
    "correction",
    "money",
    "cost",
];

/// The tables that an outing has one of at most.
const SINGLE: [&str; 5] = ["", "outing", "way-back", "emergency", "money"];

/// One table of an outing file: `[outing]`, or one of the `[[stand]]`s.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TableRow {
    /// Which table; empty for what stands at the top of the file.
    pub table: String,
    /// What tells it from the other rows of its table, for good: its cells may change.
    pub key: String,
    /// What it says, by field.
    pub cells: BTreeMap<String, Cell>,
}

impl TableRow {
    /// A new row. Its key is the `name` among its cells, or else made from all of them; a table
    /// that an outing has one of needs none.
    #[must_use]
    pub fn new(table: &str, cells: BTreeMap<String, Cell>) -> Self {
        let key = match cells.get("name") {
            _ if is_single(table) => String::new(),
            Some(Cell::Words(name)) if !name.is_empty() => name.clone(),
            // A plain tree of words and finite numbers always writes.
            _ => ContentId::of(&serde_json::to_vec(&cells).unwrap_or_default()).to_string(),
        };
        Self { table: table.to_owned(), key, cells }
    }
}

impl TableRow {
    /// The row of a flag that somebody left at a time.
    #[must_use]
    pub fn of_flag(flag: &Flag, by: &str, at: DateTime) -> Self {
        let words = |words: &str| Cell::Words(words.to_owned());
        let cells = [
            ("make", words(&flag.make)),
            ("participant", words(&flag.participant)),
            ("basis", words(&flag.basis)),
            ("at-most", Cell::Whole(flag.servings_a_day.into())),
            ("days", Cell::Whole(flag.days.into())),
            ("by", words(by)),
            ("at", Cell::Moment(at)),
        ];
        Self::new("flag", cells.map(|(field, cell)| (field.to_owned(), cell)).into())
    }
}

fn is_single(table: &str) -> bool {
    SINGLE.contains(&table)
}

/// Puts rows in the order in which they are written; those of one table stay as they are. Tables
/// that no outing file has come last, by name: reading will tell of them.
fn sort(rows: &mut [TableRow]) {
    let rank = |table: &str| TABLES.iter().position(|known| *known == table);
    let rank = |row: &TableRow| rank(&row.table).unwrap_or(TABLES.len());
    rows.sort_by(|a, b| (rank(a), &a.table).cmp(&(rank(b), &b.table)));
}

#[cfg(test)]
mod tests {
    use super::super::shape::OutingFile;
    use super::*;

    fn refusal(text: &str) -> String {
        toml::from_str::<OutingFile>(text).err().map(|e| e.message().to_owned()).unwrap_or_default()
    }

    #[test]
    fn the_tables_are_those_of_the_outing_file_in_its_order() {
        let told = refusal("no-such-table = 1");
        let fields: Vec<_> = told.split('`').skip(3).step_by(2).collect();
        let (top, tables) = fields.split_at(2);
        assert_eq!(top, ["include", "as-of"]);
        assert_eq!(tables, &TABLES[1..]);
    }

    #[test]
    fn a_table_is_single_where_a_list_of_it_is_refused() {
        for table in &TABLES[1..] {
            let wants_a_list = refusal(&format!("[{table}]")).contains("expected a sequence");
            assert!(wants_a_list != is_single(table), "{table}");
        }
    }
}
