//! What was written down of an outing, entry by entry, and the taking back.

use super::rows::called;
use super::{Screen, back, nowhere};
use crate::App;
use crate::address::Address;
use crate::books::Entry;
use crate::visit::Moment;
use desk::Change;
use journal::Act;
use maud::{Markup, html};

/// How many rows of an entry are named.
const NAMED: usize = 4;

/// Every entry, the latest first.
pub(crate) fn journal(app: &App, book: &str, at: &Moment) -> Screen {
    if app.books.rows(book).is_none() {
        return nowhere(app, book);
    }
    let title = app.word("app-journal");
    let main = html! {
        h1 tabindex="-1" { (title) }
        (back(app, book))
        p { (app.word("app-journal-says")) }
        ol.entries role="list" reversed {
            @for entry in app.books.entries(book) {
                li.gone[!entry.stands] {
                    p.when { (app.moment(at.wall(entry.ms))) }
                    p { (what(app, book, &entry)) }
                    @if entry.stands {
                        (take_back(app, book, &entry))
                    } @else {
                        p.when { (app.word("app-taken-back")) }
                    }
                }
            }
        }
    };
    Screen { title, main }
}

/// The latest entry that can be taken back, and the one that would be brought back.
pub(super) fn last_done(app: &App, book: &str) -> Markup {
    let entries = app.books.entries(book);
    let said = entries.iter().find(|entry| entry.stands && matches!(entry.what, Act::Say(_)));
    let taken = entries.first().filter(|entry| matches!(entry.what, Act::TakeBack { .. }));
    html! {
        @for entry in said.into_iter().chain(taken) {
            p.did { (what(app, book, entry)) }
            (take_back(app, book, entry))
        }
        p.alone { a href=(Address::Journal(book.to_owned()).link()) { (app.word("app-journal")) } }
    }
}

fn take_back(app: &App, book: &str, entry: &Entry<'_>) -> Markup {
    let says = match entry.what {
        Act::Say(_) => "app-take-back",
        Act::TakeBack { .. } => "app-bring-back",
    };
    html! {
        form method="post" action=(Address::Journal(book.to_owned()).link()) {
            button.quiet name="take-back" value=(entry.id.to_string()) { (app.word(says)) }
        }
    }
}

/// What an entry says, in words.
fn what(app: &App, book: &str, entry: &Entry<'_>) -> String {
    match entry.what {
        Act::Say(changes) => said(app, changes),
        Act::TakeBack { of } => {
            let all = app.books.entries(book);
            let taken = all.iter().find(|entry| entry.id == *of);
            let taken = taken.map(|entry| what(app, book, entry)).unwrap_or_default();
            format!("{} {taken}", app.word("app-took-back"))
        }
    }
}

fn said(app: &App, changes: &[Change]) -> String {
    let one = |change: &Change| match change {
        Change::Put(row) => {
            format!("{}: {}", app.word(&format!("app-row-{}", row.table)), called(app, row))
        }
        Change::Drop { table, key } => {
            let row = app.word(&format!("app-row-{table}"));
            format!("{}: {row}: {key}", app.word("app-taken-out"))
        }
    };
    let mut named: Vec<_> = changes.iter().take(NAMED).map(one).collect();
    if changes.len() > NAMED {
        named.push(app.counted("app-and-more", changes.len() - NAMED));
    }
    named.join("; ")
}
