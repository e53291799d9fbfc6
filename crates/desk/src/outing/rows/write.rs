//! From rows to the text of an outing file, in TOML 1.0.

use super::super::file::InputFile;
use super::{Cell, TableRow, is_single, sort};
use std::fmt::Write as _;

/// Writes rows as an outing file: the outing first, then the tables in a fixed order, each with its
/// name before its other fields.
#[must_use]
pub fn write(name: &str, rows: &[TableRow]) -> InputFile {
    let mut rows = rows.to_vec();
    sort(&mut rows);
    let tables: Vec<_> = rows.iter().map(table).collect();
    InputFile { name: name.to_owned(), text: tables.join("\n") }
}

fn table(row: &TableRow) -> String {
    let table = key(&row.table);
    let head = match row.table.as_str() {
        "" => String::new(),
        _ if is_single(&row.table) => format!("[{table}]\n"),
        _ => format!("[[{table}]]\n"),
    };
    let (named, others): (Vec<_>, Vec<_>) =
        row.cells.iter().partition(|(field, _)| *field == "name");
    let fields = named.into_iter().chain(others);
    fields.fold(head, |text, field| text + &assignment(field) + "\n")
}

/// A field with what it says, as a line.
pub(crate) fn assignment((field, cell): (&String, &Cell)) -> String {
    format!("{} = {}", key(field), value(cell))
}

fn value(cell: &Cell) -> String {
    match cell {
        Cell::Words(words) => quoted(words),
        Cell::Whole(number) => number.to_string(),
        // With a point or an exponent, so that it stays a number that is not whole.
        Cell::Number(number) => format!("{:?}", number.get()),
        Cell::YesNo(yes) => yes.to_string(),
        Cell::Day(day) => day.to_string(),
        Cell::Moment(at) => at.to_string(),
        Cell::List(list) => format!("[{}]", joined(list.iter().map(value))),
        Cell::Table(table) if table.is_empty() => "{}".to_owned(),
        Cell::Table(table) => format!("{{ {} }}", joined(table.iter().map(assignment))),
    }
}

fn joined(values: impl Iterator<Item = String>) -> String {
    values.collect::<Vec<_>>().join(", ")
}

/// A key, bare where it can be.
fn key(key: &str) -> String {
    let bare = |c: char| c.is_ascii_alphanumeric() || matches!(c, '_' | '-');
    if !key.is_empty() && key.chars().all(bare) {
        return key.to_owned();
    }
    quoted(key)
}

/// A basic string: quotation marks, backslashes and control characters are escaped.
fn quoted(words: &str) -> String {
    let mut text = String::from('"');
    for character in words.chars() {
        match character {
            '"' | '\\' => text.extend(['\\', character]),
            '\n' => text.push_str("\\n"),
            '\t' => text.push_str("\\t"),
            // Writing to a string cannot fail.
            '\0'..='\x1F' | '\x7F' => drop(write!(text, "\\u{:04X}", u32::from(character))),
            _ => text.push(character),
        }
    }
    text.push('"');
    text
}
