//! A serving that is handed over, tap by tap.

use crate::App;
use crate::books::{Done, NotDone};
use crate::visit::{Form, Moment};
use desk::{Cell, Change, TableRow};

/// The field of a form that says to whom one more serving went.
pub(crate) const TO: &str = "to";
/// The field that says who stands for a list of decisions.
pub(crate) const STANDS: &str = "stands";
/// The field that names those whom the list lets have it.
pub(crate) const PARTICIPANTS: &str = "participants";

/// Writes down that somebody was handed one serving of a batch, or that somebody stands for whom it is
/// handed to.
pub(crate) fn hand_out(
    app: &mut App,
    (book, batch): (&str, &str),
    form: &Form,
    at: &Moment,
) -> Result<Done, NotDone> {
    let mut rows = app.books.rows(book).ok_or(NotDone::Nowhere)?.to_vec();
    let words = |words: &str| Cell::Words(words.to_owned());
    let wish = rows.iter().find(|row| row.table == "batch" && row.key == batch);
    let wish = wish.and_then(|row| row.cells.get("make")).cloned().ok_or(NotDone::Nowhere)?;
    let (table, cells) = if form.says(STANDS) {
        let named = form.all(PARTICIPANTS).into_iter().map(words).collect();
        let by = ("by", words(&form.one(STANDS)));
        ("confirmation", vec![("make", wish), ("participants", Cell::List(named)), by])
    } else {
        let to = ("to", Cell::List(vec![words(&form.one(TO))]));
        ("serving", vec![("batch", words(batch)), to, ("servings", Cell::Whole(1))])
    };
    let cells = cells.into_iter().chain([("at", Cell::Moment(at.now))]);
    let cells = cells.map(|(field, cell)| (field.to_owned(), cell)).collect();
    let row = TableRow::new(table, cells);
    rows.push(row.clone());
    app.stands(&rows, &row)?;
    app.books.say(Some(book), vec![Change::Put(row)], at)
}
