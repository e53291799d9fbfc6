//! What a reader says of a plant in hand, look by look.

use crate::App;
use crate::address::Reading;
use crate::books::{Done, NotDone};
use crate::visit::{Form, Moment};
use desk::{Cell, TableRow};
use ground::{Fault, Place};
use identify::{Kind, evidence};
use jiff::civil::DateTime;
use std::collections::BTreeMap;

/// The table of looks.
pub(crate) const LOOKS: &str = "looks";
/// The field of the form that names a character.
pub(crate) const CHARACTER: &str = "character";
/// The field that says what was seen of it.
pub(crate) const SAW: &str = "saw";
/// The field that says that this reader has looked, and is shown what it could be.
pub(crate) const LOOKED: &str = "looked";
/// Whether the candidates were shown before these looks.
const SHOWN: &str = "candidates-shown";

/// Writes a look down, or that its reader is shown what the plant could be: what they see of it
/// after that is no reading by somebody who does not know.
pub(crate) fn look(
    app: &mut App,
    reading: &Reading,
    form: &Form,
    at: &Moment,
) -> Result<Done, NotDone> {
    let mut rows = app.books.rows(&reading.book).ok_or(NotDone::Nowhere)?.to_vec();
    let is = |table: &'static str, name: &'_ str| {
        rows.iter().any(|row| row.table == table && row.key == name)
    };
    if !is("stand", &reading.of.stand) || !is("reader", &reading.reader) {
        return Err(NotDone::Nowhere);
    }
    // In whatever order the rows came: whoever was shown it once goes on knowing it.
    let shown = rows.iter().any(|row| is_of(row, reading) && candidates_shown(row));
    let goes_on = |row: &TableRow| {
        is_of(row, reading) && is_fresh(row, at.now) && candidates_shown(row) == shown
    };
    let row = if form.says(LOOKED) {
        begun(reading, at.now, true)
    } else {
        let row = rows.iter().rposition(goes_on).map(|at| rows.remove(at));
        with_look(app, row.unwrap_or_else(|| begun(reading, at.now, shown)), form)?
    };
    app.put(&reading.book, rows, row, at)
}

/// Whether a row is of this specimen and this reader.
pub(crate) fn is_of(row: &TableRow, reading: &Reading) -> bool {
    let says =
        |field: &str, name: &str| row.cells.get(field) == Some(&Cell::Words(name.to_owned()));
    row.table == LOOKS && says("specimen", &reading.of.name) && says("reader", &reading.reader)
}

/// What was seen in a row, by character.
pub(crate) fn saw(row: &TableRow) -> BTreeMap<&str, &Cell> {
    match row.cells.get(SAW) {
        Some(Cell::Table(saw)) => saw.iter().map(|(name, cell)| (name.as_str(), cell)).collect(),
        _ => BTreeMap::new(),
    }
}

fn candidates_shown(row: &TableRow) -> bool {
    row.cells.get(SHOWN) == Some(&Cell::YesNo(true))
}

/// Whether a row is of the same time as now: what is read later is a reading of its own.
fn is_fresh(row: &TableRow, now: DateTime) -> bool {
    let minutes = match row.cells.get("at") {
        Some(Cell::Moment(at)) => at.duration_until(now).as_mins(),
        _ => return false,
    };
    (0..evidence::AGAIN_MINUTES).contains(&minutes)
}

fn begun(reading: &Reading, now: DateTime, shown: bool) -> TableRow {
    let words = |words: &str| Cell::Words(words.to_owned());
    let mut cells = BTreeMap::from([
        ("specimen".to_owned(), words(&reading.of.name)),
        ("stand".to_owned(), words(&reading.of.stand)),
        ("reader".to_owned(), words(&reading.reader)),
        ("at".to_owned(), Cell::Moment(now)),
        (SAW.to_owned(), Cell::Table(BTreeMap::new())),
    ]);
    if shown {
        cells.insert(SHOWN.to_owned(), Cell::YesNo(true));
    }
    TableRow::new(LOOKS, cells)
}

/// The row with one more look; whether it can be read is for the outing file to say.
fn with_look(app: &App, mut row: TableRow, form: &Form) -> Result<TableRow, Fault> {
    let (character, said) = (form.one(CHARACTER), form.one(SAW));
    let said = said.trim();
    if said.is_empty() {
        let place = Place::entry(LOOKS, "", SAW);
        return Err(Fault::new("app-nothing-said", place, ""));
    }
    let kind = app.herbal().flora.glossary.character(&character).map(|known| &known.kind);
    let cell = match (kind, said.parse()) {
        (Some(Kind::Count), Ok(count)) => Cell::Whole(count),
        _ => Cell::Words(said.to_owned()),
    };
    match row.cells.get_mut(SAW) {
        Some(Cell::Table(saw)) => {
            saw.insert(character, cell);
        }
        _ => {
            row.cells.insert(SAW.to_owned(), Cell::Table([(character, cell)].into()));
        }
    }
    Ok(row)
}
