//! Rows that are filled in, changed and taken out.

use crate::App;
use crate::books::{Done, NotDone};
use crate::fields::{Table, table};
use crate::visit::{Form, Moment};
use desk::{Cell, Change, TableRow, write};
use ground::{Fault, Faults, Place};
use std::collections::{BTreeMap, BTreeSet};

/// Which row a form is of: its book, its table, and its key where it is there already.
pub(crate) struct RowAt<'a> {
    pub(crate) book: &'a str,
    pub(crate) table: &'a str,
    pub(crate) key: Option<&'a str>,
}

/// Begins the book of an outing with what a form says.
pub(crate) fn begin(app: &mut App, form: &Form, at: &Moment) -> Result<Done, NotDone> {
    let outing = table("outing").ok_or(NotDone::Nowhere)?;
    let mut said = cells(outing, form)?;
    let mut rows = Vec::new();
    // Nobody is written down yet: whoever leads is the first.
    if let Some(Cell::Words(called)) = said.remove("leader") {
        let name = short(&called, &BTreeSet::new());
        said.insert("leader".to_owned(), Cell::Words(name.clone()));
        let reader = [("name", name), ("called", called), ("level", "leader".to_owned())];
        let reader = reader.map(|(field, said)| (field.to_owned(), Cell::Words(said)));
        rows.push(TableRow::new("reader", reader.into()));
    }
    rows.push(TableRow::new("outing", said));
    for row in &rows {
        app.stands(&rows, row)?;
    }
    app.books.say(None, rows.into_iter().map(Change::Put).collect(), at)
}

/// Puts a row as a form says it, or takes it out where that button was tapped.
pub(crate) fn put_row(
    app: &mut App,
    to: &RowAt<'_>,
    form: &Form,
    at: &Moment,
) -> Result<Done, NotDone> {
    let table = table(to.table).ok_or(NotDone::Nowhere)?;
    let mut rows = app.books.rows(to.book).ok_or(NotDone::Nowhere)?.to_vec();
    let is = |row: &TableRow| row.table == to.table && Some(row.key.as_str()) == to.key;
    let was = rows.iter().position(is).map(|at| rows.remove(at));
    if to.key.is_some() && was.is_none() && !table.is_single() {
        return Err(NotDone::Nowhere);
    }
    if form.says("take-out") {
        let TableRow { table, key, .. } = was.ok_or(NotDone::Nowhere)?;
        return app.books.say(Some(to.book), vec![Change::Drop { table, key }], at);
    }
    let row = match was {
        Some(was) => changed(was, table, form)?,
        None => new(table, form, &rows)?,
    };
    app.put(to.book, rows, row, at)
}

/// Adds a plot to those that were counted in a survey.
pub(crate) fn count(
    app: &mut App,
    (book, survey): (&str, &str),
    form: &Form,
    at: &Moment,
) -> Result<Done, NotDone> {
    let mut rows = app.books.rows(book).ok_or(NotDone::Nowhere)?.to_vec();
    let is = |row: &TableRow| row.table == "survey" && row.key == survey;
    let place = rows.iter().position(is).ok_or(NotDone::Nowhere)?;
    let mut row = rows.remove(place);
    let said = form.one(PLOT);
    let unread = || Fault::new("app-not-read", Place::entry("survey", "", PLOT), said.as_str());
    let pieces: u32 = said.trim().parse().map_err(|_| unread())?;
    let counted = row.cells.entry("pieces".to_owned()).or_insert_with(|| Cell::List(Vec::new()));
    match counted {
        Cell::List(plots) => plots.push(Cell::Whole(pieces.into())),
        _ => return Err(unread().into()),
    }
    app.put(book, rows, row, at)
}

/// The field of the form that counts a plot.
pub(crate) const PLOT: &str = "plot";

/// The row that a form makes of the one that was: cells that no form asks for stay.
fn changed(was: TableRow, table: &Table, form: &Form) -> Result<TableRow, Faults> {
    let asked = |field: &String| table.fields.iter().any(|known| known.name == field);
    let mut cells = cells(table, form)?;
    cells.extend(was.cells.into_iter().filter(|(field, _)| !asked(field)));
    Ok(TableRow { cells, ..was })
}

/// The row that a form makes, with a short name where the program gives one.
fn new(table: &Table, form: &Form, others: &[TableRow]) -> Result<TableRow, Faults> {
    let mut cells = cells(table, form)?;
    if let Some(Cell::Words(called)) = cells.get("called").filter(|_| table.makes_name()) {
        let of_table = others.iter().filter(|row| row.table == table.name);
        let name = short(called, &of_table.map(|row| row.key.as_str()).collect());
        cells.insert("name".to_owned(), Cell::Words(name));
    }
    Ok(TableRow::new(table.name, cells))
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

/// A short name for what something is called, that nothing of its table has.
fn short(called: &str, taken: &BTreeSet<&str>) -> String {
    let letters = called.to_lowercase();
    let words = letters.split(|letter: char| !letter.is_alphanumeric());
    let words: Vec<_> = words.filter(|word| !word.is_empty()).take(3).collect();
    let name = if words.is_empty() { "one".to_owned() } else { words.join("-") };
    let mut numbered = (2..).map(|number| format!("{name}-{number}"));
    if taken.contains(name.as_str()) {
        numbered.find(|name| !taken.contains(name.as_str())).unwrap_or(name)
    } else {
        name
    }
}

impl App {
    /// Adds a row to those of a book, where it stands among them.
    pub(crate) fn put(
        &mut self,
        book: &str,
        mut rows: Vec<TableRow>,
        row: TableRow,
        at: &Moment,
    ) -> Result<Done, NotDone> {
        rows.push(row.clone());
        self.stands(&rows, &row)?;
        self.books.say(Some(book), vec![Change::Put(row)], at)
    }

    /// Whether a row stands among these: what is wrong elsewhere is for the plan to say.
    pub(crate) fn stands(&self, rows: &[TableRow], row: &TableRow) -> Result<(), Faults> {
        let wrong = |rows: &[TableRow]| self.outing(&write("outing.toml", rows)).err();
        let Some(with) = wrong(rows) else { return Ok(()) };
        // A file that cannot be read at all says so of no table: whether that is this row's doing
        // shows without the row.
        let others: Vec<_> = rows.iter().filter(|other| *other != row).cloned().collect();
        let without = wrong(&others).unwrap_or_default();
        let new = |fault: &Fault| {
            !without.iter().any(|old| old.at.table.is_none() && old.code == fault.code)
        };
        let its = |fault: &&Fault| match &fault.at {
            Place { table: None, .. } => new(fault),
            Place { table: Some(table), entry, .. } => {
                *table == row.table && entry.as_ref().is_none_or(|entry| names(row, entry))
            }
        };
        with.iter().filter(its).map(bare).collect::<Faults>().or(())
    }
}

/// Whether a fault that names an entry may mean this row: one without a name goes by what it is of.
fn names(row: &TableRow, entry: &str) -> bool {
    let says = |cell: &Cell| matches!(cell, Cell::Words(words) if words == entry);
    row.key == entry || row.cells.values().any(says)
}

/// The file is written here and shown to nobody: its name and lines would mean nothing.
fn bare(fault: &Fault) -> Fault {
    let Place { table, entry, field, .. } = fault.at.clone();
    Fault { at: Place { table, entry, field, ..Place::default() }, ..fault.clone() }
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
