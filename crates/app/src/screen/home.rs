//! The first screen, and what is shown where nothing lies.

use super::Screen;
use super::outing::{called, days_until};
use crate::App;
use crate::address::Address;
use crate::books::day_of;
use crate::visit::{Form, Moment};
use desk::TableRow;
use ground::Text;
use maud::{Markup, html};
use std::cmp::Reverse;

pub(crate) fn home(app: &App, at: &Moment) -> Screen {
    let title = app.word("app-home");
    let main = html! {
        h1 tabindex="-1" { (title) }
        (clock_behind(app, at))
        h2 { (app.word("app-outings")) }
        p role="status" { (app.counted("app-outings-found", app.books.iter().count())) }
        ul.rows role="list" {
            @for (book, rows) in in_order(app) {
                @let (name, day) = called(app, rows);
                @let unsaved = app.books.unsaved(book);
                li {
                    a href=(Address::Outing(book.to_owned()).link()) {
                        span.called { (name) }
                        span { (day) }
                        @if unsaved > 0 { i { (app.counted("app-unsaved", unsaved)) } }
                    }
                }
            }
            @for book in app.books.unread() {
                li {
                    a href=(Address::Outing(book.to_owned()).link()) {
                        span.called { (app.word("app-unread")) }
                    }
                }
            }
        }
        p { a.button href=(Address::New.link()) { (app.word("app-new")) } }
        form.take-in method="post" action=(Address::TakeIn.link()) {
            label for="files" { (app.word("app-take-in")) }
            p #files-says { (app.word("app-take-in-says")) }
            input #files type="file" name="files" multiple aria-describedby="files-says" accept=".toml,.jsonl";
            button { (app.word("app-take-in-do")) }
        }
        h2 { (app.word("app-herbal")) }
        ul.ways role="list" {
            li { a href=(Address::Herbal(String::new()).link()) { (app.word("app-herbal")) } }
            li { a href=(Address::WorkOut(Form::default()).link()) { (app.word("app-work-out")) } }
        }
    };
    Screen { title, main }
}

/// The outings that come, the next one first; then those that were, the latest first.
fn in_order(app: &App) -> Vec<(&str, &[TableRow])> {
    let days_off = |rows: &[TableRow]| day_of(rows).map(|day| days_until(app.today(), day));
    let (mut to_come, mut over): (Vec<_>, Vec<_>) =
        app.books.iter().partition(|(_, rows)| days_off(rows).is_none_or(|days| days >= 0));
    to_come.sort_by_key(|(_, rows)| days_off(rows));
    over.sort_by_key(|(_, rows)| days_off(rows).map(Reverse));
    to_come.into_iter().chain(over).collect()
}

/// So much may the clocks of two devices differ.
const CLOCKS_DIFFER_MS: i64 = 24 * 60 * 60 * 1000;

/// Verdicts, permissions and keeping times go by the clock of this device: one that is behind what was
/// written down already is told of.
fn clock_behind(app: &App, at: &Moment) -> Markup {
    let latest = app.books.latest_ms().filter(|latest| latest - CLOCKS_DIFFER_MS > at.ms);
    html! {
        @if let Some(latest) = latest {
            @let text = Text::new("app-clock-behind")
                .with("now", app.moment(at.now))
                .with("latest", app.moment(at.wall(latest)));
            p.warned role="status" { (app.say(&text)) }
        }
    }
}

pub(crate) fn nowhere(app: &App, said: &str) -> Screen {
    let title = app.word("app-nowhere");
    let main = html! {
        h1 tabindex="-1" { (title) }
        p { (app.word("app-nowhere-says")) " " code { (said) } }
        p.alone { a href=(Address::Home.link()) { (app.word("app-home")) } }
    };
    Screen { title, main }
}
