//! From the text of outing files to rows.

use super::super::file::{InputFile, Source};
use super::{Cell, TABLES, TableRow, is_single, sort};
use ground::{Fault, Faults, Finite, Place};
use jiff::civil::DateTime;
use std::collections::{BTreeMap, BTreeSet};
use toml::Spanned;
use toml::de::{DeArray, DeTable, DeValue};
use toml::value::Datetime;

/// The rows of the files of an outing: every table of every file, in the order of the tables of an
/// outing file. Whether a table has the right fields is for [`crate::read`] to say. Which further
/// files a file asks for is left out: they are among these.
///
/// # Errors
/// Every fault with line and column: a file that is no TOML, a value that no outing has, a table
/// that stands twice.
pub fn rows(files: &[InputFile]) -> Result<Vec<TableRow>, Faults> {
    let mut gathering = Gathering::default();
    for file in files {
        gathering.file(&Source::of(file));
    }
    let Gathering { top, mut rows, faults, .. } = gathering;
    if !top.is_empty() {
        rows.push(TableRow::new("", top));
    }
    sort(&mut rows);
    faults.or(rows)
}

type Value<'a> = Spanned<DeValue<'a>>;

#[derive(Default)]
struct Gathering {
    /// What stands at the top of the files.
    top: BTreeMap<String, Cell>,
    rows: Vec<TableRow>,
    /// Table and key of each row.
    known: BTreeSet<(String, String)>,
    faults: Faults,
}

impl Gathering {
    fn file(&mut self, source: &Source<'_>) {
        let parsed = DeTable::parse(source.text).map_err(|error| source.unreadable(&error.into()));
        let Some(tables) = self.faults.note(parsed) else { return };
        for (name, value) in tables.get_ref() {
            let name = name.get_ref();
            match value.get_ref() {
                _ if name == "include" => {}
                DeValue::Table(_) => self.row(source, name, value),
                DeValue::Array(rows) if are_tables(name, rows) => {
                    rows.iter().for_each(|row| self.row(source, name, row));
                }
                _ => self.at_top(source, name, value),
            }
        }
    }

    fn row(&mut self, source: &Source<'_>, name: &str, value: &Value<'_>) {
        let cell = self.faults.note_all(cell(source, value));
        let Some(Cell::Table(cells)) = cell else { return };
        let row = TableRow::new(name, cells);
        if !self.known.insert((row.table.clone(), row.key.clone())) {
            let place = Place { table: Some(name.to_owned()), ..source.place(&value.span()) };
            self.faults.add(twice(&row, place));
        }
        self.rows.push(row);
    }

    /// A value before any table. Of several moments that a plan is worked out for the latest holds.
    fn at_top(&mut self, source: &Source<'_>, name: &str, value: &Value<'_>) {
        let Some(cell) = self.faults.note_all(cell(source, value)) else { return };
        match self.top.get(name).map(|known| (moment(known), moment(&cell))) {
            Some((Some(known), Some(new))) if name == "as-of" => {
                if new > known {
                    self.top.insert(name.to_owned(), cell);
                }
            }
            Some(_) => self.faults.add(Fault::new("name-twice", source.place(&value.span()), name)),
            None => drop(self.top.insert(name.to_owned(), cell)),
        }
    }
}

fn twice(row: &TableRow, place: Place) -> Fault {
    match row.cells.get("name") {
        _ if is_single(&row.table) => Fault::new("table-twice", place, row.table.as_str()),
        Some(Cell::Words(name)) if *name == row.key => {
            Fault::new("name-twice", place, name.as_str())
        }
        _ => Fault::new("row-twice", place, row.table.as_str()),
    }
}

/// Whether a list is one of tables; where a table may stand many times, an empty list is none of it.
fn are_tables(name: &str, list: &DeArray<'_>) -> bool {
    let many = TABLES.contains(&name) && !is_single(name);
    let all = list.iter().all(|value| matches!(value.get_ref(), DeValue::Table(_)));
    all && (many || !list.is_empty())
}

fn moment(cell: &Cell) -> Option<DateTime> {
    match cell {
        Cell::Day(day) => Some(day.at(0, 0, 0, 0)),
        Cell::Moment(at) => Some(*at),
        _ => None,
    }
}

/// The values of a table, or every fault among them.
fn fields(source: &Source<'_>, table: &DeTable<'_>) -> Result<BTreeMap<String, Cell>, Faults> {
    let mut faults = Faults::none();
    let mut fields = BTreeMap::new();
    for (field, value) in table {
        let cell = faults.note_all(cell(source, value));
        fields.extend(cell.map(|cell| (field.get_ref().clone().into_owned(), cell)));
    }
    faults.or(fields)
}

fn list(source: &Source<'_>, values: &DeArray<'_>) -> Result<Vec<Cell>, Faults> {
    let mut faults = Faults::none();
    let cells = values.iter().filter_map(|value| faults.note_all(cell(source, value)));
    let cells = cells.collect();
    faults.or(cells)
}

fn cell(source: &Source<'_>, value: &Value<'_>) -> Result<Cell, Faults> {
    let place = || source.place(&value.span());
    Ok(match value.get_ref() {
        DeValue::String(words) => Cell::Words(words.clone().into_owned()),
        DeValue::Boolean(yes) => Cell::YesNo(*yes),
        DeValue::Integer(number) => {
            let read = i64::from_str_radix(number.as_str(), number.radix());
            let fault = |_| Fault::new("no-such-number", place(), number.to_string());
            Cell::Whole(read.map_err(fault)?)
        }
        DeValue::Float(number) => {
            let read = number.as_str().parse().ok().and_then(Finite::new);
            let fault = || Fault::new("no-such-number", place(), number.to_string());
            Cell::Number(read.ok_or_else(fault)?)
        }
        DeValue::Datetime(written) => {
            let fault = || Fault::new("no-civil-moment", place(), written.to_string());
            civil(written).ok_or_else(fault)?
        }
        DeValue::Array(values) => Cell::List(list(source, values)?),
        DeValue::Table(table) => Cell::Table(fields(source, table)?),
    })
}

/// A day or a moment of the clock on the wall: no outing has times alone, or offsets.
fn civil(written: &Datetime) -> Option<Cell> {
    let text = written.to_string();
    match (written.date, written.time, written.offset) {
        (Some(_), None, None) => text.parse().map(Cell::Day).ok(),
        (Some(_), Some(_), None) => text.parse().map(Cell::Moment).ok(),
        _ => None,
    }
}
