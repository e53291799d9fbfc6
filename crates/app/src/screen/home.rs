//! The first screen, and what is shown where nothing lies.

use super::Screen;
use crate::App;
use crate::address::Address;
use maud::html;

pub(crate) fn home(app: &App) -> Screen {
    let title = app.word("app-home");
    let main = html! {
        h1 tabindex="-1" { (title) }
        ul.ways role="list" {
            li { a href=(Address::Herbal(String::new()).link()) { (app.word("app-herbal")) } }
        }
    };
    Screen { title, main }
}

pub(crate) fn nowhere(app: &App, said: &str) -> Screen {
    let title = app.word("app-nowhere");
    let main = html! {
        h1 tabindex="-1" { (title) }
        p { (app.word("app-nowhere-says")) " " code { (said) } }
        p { a href=(Address::Home.link()) { (app.word("app-home")) } }
    };
    Screen { title, main }
}
