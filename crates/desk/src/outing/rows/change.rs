//! Changes to rows, and the rows that stand after all of them.

use super::{TableRow, sort};
use journal::Log;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// A change to one row of an outing.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Change {
    /// It says this from now on, whatever it said before.
    Put(TableRow),
    /// It is gone.
    Drop {
        /// Its table.
        table: String,
        /// Its key.
        key: String,
    },
}

impl Change {
    /// Table and key of the row that it changes.
    fn row(&self) -> (&str, &str) {
        match self {
            Self::Put(row) => (&row.table, &row.key),
            Self::Drop { table, key } => (table, key),
        }
    }

    /// The row as it stands after it.
    fn put(&self) -> Option<TableRow> {
        match self {
            Self::Put(row) => Some(row.clone()),
            Self::Drop { .. } => None,
        }
    }
}

/// The rows that stand after all changes of a log, in the order in which they are written: for each
/// row the latest change by clock holds, and what was taken back was never said. The same in
/// whatever order the records arrived. What was done in one go is one record: it stands, or is taken
/// back, whole.
#[must_use]
pub fn standing_rows(log: &Log<Vec<Change>>) -> Vec<TableRow> {
    let mut latest = BTreeMap::new();
    let said = log.standing().into_iter().flat_map(|(_, changes)| changes);
    for (at, change) in said.enumerate() {
        // A row keeps its place among the others when it changes.
        let (first, _) = *latest.get(&change.row()).unwrap_or(&(at, change));
        latest.insert(change.row(), (first, change));
    }
    let mut latest: Vec<_> = latest.into_values().collect();
    latest.sort_by_key(|(first, _)| *first);
    let mut rows: Vec<_> = latest.into_iter().filter_map(|(_, change)| change.put()).collect();
    sort(&mut rows);
    rows
}
