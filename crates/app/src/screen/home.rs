//! The first screen, and what is shown where nothing lies.

use super::Screen;
use super::outing::called;
use crate::App;
use crate::address::Address;
use crate::visit::Form;
use maud::html;

pub(crate) fn home(app: &App) -> Screen {
    let title = app.word("app-home");
    let main = html! {
        h1 tabindex="-1" { (title) }
        h2 { (app.word("app-outings")) }
        p role="status" { (app.counted("app-outings-found", app.books.iter().count())) }
        ul.rows role="list" {
            @for (book, rows) in app.books.iter() {
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

pub(crate) fn nowhere(app: &App, said: &str) -> Screen {
    let title = app.word("app-nowhere");
    let main = html! {
        h1 tabindex="-1" { (title) }
        p { (app.word("app-nowhere-says")) " " code { (said) } }
        p.alone { a href=(Address::Home.link()) { (app.word("app-home")) } }
    };
    Screen { title, main }
}
