//! The herbal: search, what is known of a plant, two plants side by side.

use super::{Screen, answered};
use crate::App;
use crate::address::Address;
use desk::device::{Reply, Request};
use maud::{Markup, html};

/// The plants whose names fit, each a link to its sheet.
pub(crate) fn herbal(app: &App, words: &str) -> Screen {
    let found = match app.ask(Request::HerbalList { words: words.to_owned() }) {
        Ok(Reply::HerbalList(list)) => list.plants,
        _ => Vec::new(),
    };
    let title = app.word("app-herbal");
    let main = html! {
        h1 tabindex="-1" { (title) }
        form.search role="search" method="get" action="#/herbal" {
            label for="words" { (app.word("app-herbal-words")) }
            input #words type="search" name="words" value=(words) autocomplete="off" autocapitalize="none";
            button { (app.word("app-herbal-look")) }
        }
        p role="status" { (app.counted("app-herbal-found", found.len())) }
        ul.rows role="list" {
            @for plant in &found {
                li {
                    a href=(Address::Plant(plant.name.clone()).link()) {
                        span.called { (plant.common) }
                        i lang="la" { (plant.name) }
                        span.harm { (app.word("app-harm")) " " (app.word(&format!("plants-harm-{}", plant.harm.word()))) }
                    }
                }
            }
        }
    };
    Screen { title, main }
}

/// Everything that is known of a plant; each of its twins a link to both side by side.
pub(crate) fn plant(app: &App, name: &str) -> Screen {
    let sheet = app.sheet(name);
    let twins = sheet.iter().flat_map(|sheet| {
        sheet.twins.iter().map(|twin| (sheet.sheet.name.clone(), twin.name.clone()))
    });
    let twins: Vec<_> = twins.collect();
    answered(app, Request::HerbalShow { name: name.to_owned() }, &beside(app, &twins), &html! {})
}

fn beside(app: &App, twins: &[(String, String)]) -> Markup {
    html! {
        @if !twins.is_empty() {
            nav.ways aria-label=(app.word("app-compare")) {
                p { (app.word("app-compare-with")) }
                ul role="list" {
                    @for (plant, twin) in twins {
                        li {
                            a href=(Address::Compare(plant.clone(), twin.clone()).link()) {
                                i lang="la" { (twin) }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// What tells two plants apart.
pub(crate) fn compare(app: &App, one: &str, other: &str) -> Screen {
    let plants = [one.to_owned(), other.to_owned()];
    answered(app, Request::Compare { plants }, &html! {}, &html! {})
}
