//! Flags for a device that goes along without the answers: what each person may be handed, and never why.

use crate::App;
use crate::books::{Done, NotDone};
use crate::screen::leader;
use crate::visit::Moment;
use desk::{Cell, Change, Reply, Request, TableRow};
use ground::{Fault, Place};
use journal::Flag;

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
    let old = rows.iter().filter(|row| row.table == FLAG);
    let old = old.map(|row| Change::Drop { table: row.table.clone(), key: row.key.clone() });
    let by = leader(rows);
    let new = flags.iter().map(|flag| Change::Put(row(flag, &by, at)));
    let changes = old.chain(new).collect();
    app.books.say(Some(book), changes, at)
}

fn row(flag: &Flag, by: &str, at: &Moment) -> TableRow {
    let words = |words: &str| Cell::Words(words.to_owned());
    let cells = [
        ("make", words(&flag.make)),
        ("participant", words(&flag.participant)),
        ("basis", words(&flag.basis)),
        ("at-most", Cell::Whole(flag.servings_a_day.into())),
        ("days", Cell::Whole(flag.days.into())),
        ("by", words(by)),
        ("at", Cell::Moment(at.now)),
    ];
    TableRow::new(FLAG, cells.map(|(field, cell)| (field.to_owned(), cell)).into())
}
