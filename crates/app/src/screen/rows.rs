//! The tables of an outing.

use super::{Screen, back, nowhere};
use crate::App;
use crate::address::Address;
use crate::fields::{TABLES, Table, said, table};
use desk::{Cell, TableRow};
use maud::{Markup, html};

/// The rows of a table, each a way to its form.
pub(crate) fn rows(app: &App, book: &str, name: &str) -> Screen {
    let (Some(all), Some(table)) = (app.books.rows(book), table(name)) else {
        return nowhere(app, name);
    };
    let of = |row: &&TableRow| row.table == table.name;
    let title = app.word(&format!("app-table-{}", table.name));
    let to = |key: Option<&str>| {
        Address::Row(book.to_owned(), table.name.to_owned(), key.map(str::to_owned)).link()
    };
    let main = html! {
        h1 tabindex="-1" { (title) }
        (back(app, book))
        ul.rows role="list" {
            @for row in all.iter().filter(of) {
                li {
                    a href=(to(Some(&row.key))) { span.called { (called(app, row)) } }
                    @if row.table == "survey" {
                        a href=(Address::Count(book.to_owned(), row.key.clone()).link()) {
                            span.called { (app.word("app-count")) }
                        }
                    }
                }
            }
        }
        p { a.button href=(to(None)) { (app.word("app-add")) } }
    };
    Screen { title, main }
}

/// The ways to every table of an outing, with how many rows it has.
pub(crate) fn tables(app: &App, book: &str, all: &[TableRow]) -> Markup {
    let to = |table: &Table| {
        let (book, name) = (book.to_owned(), table.name.to_owned());
        if table.is_single() {
            Address::Row(book, name, Some(String::new()))
        } else {
            Address::Rows(book, name)
        }
    };
    html! {
        ul.rows role="list" {
            @for table in TABLES {
                @let count = all.iter().filter(|row| row.table == table.name).count();
                li {
                    a href=(to(table).link()) {
                        span.called { (app.word(&format!("app-table-{}", table.name))) }
                        @if !table.is_single() { span { (count) } }
                    }
                }
            }
        }
    }
}

/// What a row is called: by its name for people, its short name, or what it is of and when.
pub(super) fn called(app: &App, row: &TableRow) -> String {
    let words = |field: &str| {
        row.cells.get(field).map(|cell| match cell {
            Cell::Day(day) => app.day(*day),
            Cell::Moment(at) => app.moment(*at),
            other => said(other).join(", "),
        })
    };
    let own = words("called").or_else(|| words("name"));
    let of = || {
        let parts = ["site", "stand", "lot", "batch", "plants", "at", "on"];
        parts.into_iter().filter_map(words).collect::<Vec<_>>().join(", ")
    };
    own.unwrap_or_else(of)
}

/// Who leads, as people call them.
pub(crate) fn leader(rows: &[TableRow]) -> String {
    let outing = rows.iter().find(|row| row.table == "outing");
    let name = outing.and_then(|row| row.cells.get("leader"));
    let name = name.map(said).unwrap_or_default().concat();
    let reader = rows.iter().find(|row| row.table == "reader" && row.key == name);
    let called = reader.and_then(|row| row.cells.get("called"));
    called.map(|called| said(called).concat()).unwrap_or(name)
}
