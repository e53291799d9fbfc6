//! A serving that is handed over, tap by tap.

use crate::App;
use crate::books::{Done, NotDone};
use crate::visit::{Form, Moment};
use desk::device::{Reply, Request};
use desk::{Cell, Handed, ServingReply, TableRow};
use ground::{Fault, Faults, Place};

/// The field of a form that says to whom one more serving went.
pub(crate) const TO: &str = "to";
/// The field that says who stands for a list of decisions.
pub(crate) const STANDS: &str = "stands";
/// The field that names those whom the list lets have it.
pub(crate) const PARTICIPANTS: &str = "participants";

/// A batch, and the short name of what it was made for.
pub(crate) fn wish_of<'a>(rows: &'a [TableRow], batch: &str) -> Option<(&'a TableRow, &'a str)> {
    let row = rows.iter().find(|row| row.table == "batch" && row.key == batch)?;
    match row.cells.get("make")? {
        Cell::Words(wish) => Some((row, wish)),
        _ => None,
    }
}

/// Who may have what of a book, as it stands now; none where there is no such book.
pub(crate) fn decided(app: &App, book: &str) -> Option<Result<ServingReply, Faults>> {
    let file = app.file_with_answers(book)?;
    match app.ask(Request::Serving { files: vec![file], reasons: false }) {
        Ok(Reply::Serving(reply)) => Some(Ok(reply)),
        Ok(_) => None,
        Err(faults) => Some(Err(faults)),
    }
}

/// Writes down that somebody was handed one serving of a batch, or that somebody stands for whom it is
/// handed to.
pub(crate) fn hand_out(
    app: &mut App,
    (book, batch): (&str, &str),
    form: &Form,
    at: &Moment,
) -> Result<Done, NotDone> {
    let rows = app.books.rows(book).ok_or(NotDone::Nowhere)?;
    let (_, wish) = wish_of(rows, batch).ok_or(NotDone::Nowhere)?;
    let words = |words: &str| Cell::Words(words.to_owned());
    let (table, cells) = if form.says(STANDS) {
        let named = form.all(PARTICIPANTS).into_iter().map(words).collect();
        let by = ("by", words(&form.one(STANDS)));
        ("confirmation", vec![("make", words(wish)), ("participants", Cell::List(named)), by])
    } else {
        let to = form.one(TO);
        still_may(app, (book, wish), &to)?;
        let to = ("to", Cell::List(vec![words(&to)]));
        ("serving", vec![("batch", words(batch)), to, ("servings", Cell::Whole(1))])
    };
    let cells = cells.into_iter().chain([("at", Cell::Moment(at.now))]);
    let cells = cells.map(|(field, cell)| (field.to_owned(), cell)).collect();
    app.put(book, rows.to_vec(), TableRow::new(table, cells), at)
}

/// A screen may be older than what was found since, in another window or by another device.
fn still_may(app: &App, (book, wish): (&str, &str), person: &str) -> Result<(), NotDone> {
    let reply = decided(app, book).ok_or(NotDone::Nowhere)??;
    let handed = reply.makes.iter().find(|make| make.name == wish);
    let handed = handed.and_then(|make| make.handed_out.get(person));
    if handed.is_some_and(Handed::may_have_one) {
        return Ok(());
    }
    Err(Fault::new("app-not-handed", Place::entry("serving", "", TO), person).into())
}
