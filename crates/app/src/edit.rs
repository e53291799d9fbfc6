//! Rows that are filled in, changed, taken out and brought back.

use crate::books::{self, Books};
use crate::fields::{Table, table};
use crate::visit::{Form, Kept, Moment};
use crate::{App, Visit};
use desk::{Cell, Change, TableRow, read, write};
use ground::{Fault, Faults, Place};
use std::collections::{BTreeMap, BTreeSet};

/// What an act did: the book it was in, and the lines to keep.
pub(crate) struct Done {
    pub(crate) book: String,
    pub(crate) keep: Vec<Kept>,
}

/// A book of its own for an outing that begins with this form.
pub(crate) fn begin(app: &mut App, visit: &Visit) -> Result<Done, Faults> {
    let form = visit.form.as_ref().ok_or_else(nothing_said)?;
    let outing = table("outing").ok_or_else(nothing_said)?;
    let mut cells = cells(outing, form)?;
    let mut changes = Vec::new();
    // Nobody is written down yet: whoever leads is the first.
    if let Some(Cell::Words(leader)) = cells.get("leader").cloned() {
        let name = short(&leader, &BTreeSet::new());
        cells.insert("leader".to_owned(), Cell::Words(name.clone()));
        let reader = [("name", name), ("called", leader), ("level", "leader".to_owned())];
        let reader = reader.map(|(field, said)| (field.to_owned(), Cell::Words(said)));
        changes.push(Change::Put(TableRow::new("reader", reader.into())));
    }
    changes.push(Change::Put(TableRow::new("outing", cells)));
    let rows: Vec<_> = changes.iter().filter_map(put).cloned().collect();
    app.stands(&rows, "outing", "")?;
    let book = books::name(&visit.at);
    let keep = app.books.say(&book, changes, &visit.at)?;
    Ok(Done { book, keep })
}

/// Puts a row as a form says it, or takes it out where that button was tapped.
pub(crate) fn put_row(
    app: &mut App,
    (book, table, key): (&str, &'static Table, Option<&str>),
    visit: &Visit,
) -> Result<Done, Faults> {
    let form = visit.form.as_ref().ok_or_else(nothing_said)?;
    let mut rows = app.books.rows(book).ok_or_else(nothing_said)?;
    let was = rows.iter().position(|row| row.table == table.name && Some(row.key.as_str()) == key);
    let was = was.map(|at| rows.remove(at));
    let change = if form.says("take-out") {
        let row = was.ok_or_else(nothing_said)?;
        Change::Drop { table: row.table, key: row.key }
    } else {
        let row = filled_in(table, form, was, &rows)?;
        rows.push(row.clone());
        app.stands(&rows, table.name, &row.key)?;
        Change::Put(row)
    };
    said(&mut app.books, book, vec![change], &visit.at)
}

/// Takes the last record of a book back.
pub(crate) fn undo(app: &mut App, book: &str, at: &Moment) -> Result<Done, Faults> {
    let keep = app.books.take_back_last(book, at)?;
    Ok(Done { book: book.to_owned(), keep })
}

fn said(books: &mut Books, book: &str, changes: Vec<Change>, at: &Moment) -> Result<Done, Faults> {
    Ok(Done { book: book.to_owned(), keep: books.say(book, changes, at)? })
}

fn put(change: &Change) -> Option<&TableRow> {
    match change {
        Change::Put(row) => Some(row),
        Change::Drop { .. } => None,
    }
}

/// The row that a form makes of the one that was, whose cells that no form asks for stay.
fn filled_in(
    table: &Table,
    form: &Form,
    was: Option<TableRow>,
    others: &[TableRow],
) -> Result<TableRow, Faults> {
    let mut new = cells(table, form)?;
    let named = |row: &TableRow| row.table == table.name;
    match &was {
        Some(was) => {
            let asked = |field: &String| table.fields.iter().any(|known| known.name == field);
            let kept = was.cells.iter().filter(|(field, _)| !asked(field));
            new.extend(kept.map(|(field, cell)| (field.clone(), cell.clone())));
        }
        None if table.makes_name() => {
            let taken =
                others.iter().filter(|row| named(row)).map(|row| row.key.as_str()).collect();
            if let Some(Cell::Words(called)) = new.get("called") {
                let name = short(called, &taken);
                new.insert("name".to_owned(), Cell::Words(name));
            }
        }
        None => {}
    }
    let row = TableRow::new(table.name, new);
    Ok(match was {
        Some(was) => TableRow { key: was.key, ..row },
        None => row,
    })
}

/// The cells of a form; every field that is missing or cannot be read is a fault.
fn cells(table: &Table, form: &Form) -> Result<BTreeMap<String, Cell>, Faults> {
    let mut faults = Faults::none();
    let mut cells = BTreeMap::new();
    for field in table.fields {
        let at = || Place::entry(table.name, "", field.name);
        let said = form.all(field.name);
        match field.kind.cell(&said) {
            Ok(Some(cell)) => {
                cells.insert(field.name.to_owned(), cell);
            }
            Ok(None) if field.needed => faults.add(Fault::new("app-nothing-said", at(), "")),
            Ok(None) => {}
            Err(_) => faults.add(Fault::new("app-not-read", at(), said.join(" "))),
        }
    }
    faults.or(cells)
}

fn nothing_said() -> Faults {
    Fault::new("app-nothing-said", Place::default(), "").into()
}

/// A short name for what something is called, that nothing of its table has.
fn short(called: &str, taken: &BTreeSet<&str>) -> String {
    let letters = called.to_lowercase();
    let words: Vec<_> = letters.split(|letter: char| !letter.is_alphanumeric()).collect();
    let words: Vec<_> = words.into_iter().filter(|word| !word.is_empty()).take(3).collect();
    let name = if words.is_empty() { "one".to_owned() } else { words.join("-") };
    let mut numbered = (2..).map(|number| format!("{name}-{number}"));
    if taken.contains(name.as_str()) {
        numbered.find(|name| !taken.contains(name.as_str())).unwrap_or(name)
    } else {
        name
    }
}

impl App {
    /// Whether a row among these stands: what is wrong elsewhere is for the plan to say.
    fn stands(&self, rows: &[TableRow], table: &str, key: &str) -> Result<(), Faults> {
        let file = write("outing.toml", rows);
        let Err(faults) = read(&[file], self.herbal()) else { return Ok(()) };
        let here = |fault: &&Fault| {
            fault.at.table.as_deref() == Some(table)
                && (key.is_empty() || fault.at.entry.as_deref().is_none_or(|entry| entry == key))
        };
        // The file is written here and shown to nobody: its lines would mean nothing.
        let bare = |fault: &Fault| {
            let Place { table, entry, field, .. } = fault.at.clone();
            Fault { at: Place { table, entry, field, ..Place::default() }, ..fault.clone() }
        };
        faults.iter().filter(here).map(bare).collect::<Faults>().or(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn short_names_are_readable_and_nobody_elses() {
        let taken = ["mill-wood", "mill-wood-2"].into();
        assert_eq!(short("Mill Wood", &taken), "mill-wood-3");
        assert_eq!(short("  The weir, by Oda’s meadow! ", &taken), "the-weir-by");
        assert_eq!(short("…", &BTreeSet::new()), "one");
    }
}
