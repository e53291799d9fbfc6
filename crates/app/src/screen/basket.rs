//! What came in: how each lot stands, and the way to go through it.

use super::journal::last_done;
use super::rows::called;
use super::{Screen, answered, back, nowhere};
use crate::App;
use crate::address::Address;
use desk::device::Request;
use maud::html;

/// The lots of an outing.
pub(crate) fn basket(app: &App, book: &str) -> Screen {
    let (Some(rows), Some(file)) = (app.books.rows(book), app.books.file(book)) else {
        return nowhere(app, book);
    };
    let (own, table) = (|| book.to_owned(), |table: &str| table.to_owned());
    let lots = rows.iter().filter(|row| row.table == "lot");
    let gathered = rows.iter().any(|row| row.table == "take");
    let before = html! {
        (back(app, book))
        ul.ways role="list" {
            li { a href=(Address::Row(own(), table("take"), None).link()) { (app.word("app-gathered")) } }
            @if gathered {
                li { a href=(Address::Row(own(), table("lot"), None).link()) { (app.word("app-lot-new")) } }
            }
            @for lot in lots {
                @let with = ("lot".to_owned(), lot.key.clone());
                li {
                    a href=(Address::RowWith(own(), table("sorting"), with).link()) {
                        (app.word("app-sort")) " " (called(app, lot))
                    }
                }
            }
        }
    };
    answered(app, Request::Basket { files: vec![file] }, &before, &last_done(app, book))
}
