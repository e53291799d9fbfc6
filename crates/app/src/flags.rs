//! Flags for a device that goes along without the answers: what each person may be handed, and never why.

use crate::App;
use crate::books::{Done, NotDone};
use crate::screen::leader;
use crate::visit::Moment;
use desk::device::{Reply, Request};
use desk::{Cell, Change, TableRow};
use ground::{Fault, Place};

/// The table of an outing file that holds them.
pub(crate) const FLAG: &str = "flag";

/// Writes flags down for everybody whose answers are open, in the place of those that there were.
pub(crate) fn take_along(app: &mut App, book: &str, at: &Moment) -> Result<Done, NotDone> {
    let file = app.file_with_answers(book).ok_or(NotDone::Nowhere)?;
    let Reply::Flags(flags) = app.ask(Request::Flags { files: vec![file] })? else {
        return Err(NotDone::Nowhere);
    };
    if flags.is_empty() {
        return Err(Fault::new("app-nothing-to-flag", Place::default(), "").into());
    }
    let rows = app.books.rows(book).ok_or(NotDone::Nowhere)?;
    let by = leader(rows);
    let new = flags.iter().map(|flag| Change::Put(TableRow::of_flag(flag, &by, at.now)));
    let changes = gone(rows, None).into_iter().chain(new).collect();
    app.books.say(Some(book), changes, at)
}

/// Takes out the flags of one person, or of everybody: what they rest on is no longer so.
pub(crate) fn lapse(
    app: &mut App,
    book: &str,
    person: Option<&str>,
    at: &Moment,
) -> Result<Done, NotDone> {
    let changes = gone(app.books.rows(book).ok_or(NotDone::Nowhere)?, person);
    if changes.is_empty() {
        return Ok(Done::nothing(book));
    }
    app.books.say(Some(book), changes, at)
}

fn gone(rows: &[TableRow], person: Option<&str>) -> Vec<Change> {
    let of_them = |row: &&TableRow| match (person, row.cells.get("participant")) {
        (Some(person), Some(Cell::Words(of))) => of == person,
        _ => true,
    };
    let flags = rows.iter().filter(|row| row.table == FLAG).filter(of_them);
    flags.map(|row| Change::Drop { table: row.table.clone(), key: row.key.clone() }).collect()
}
