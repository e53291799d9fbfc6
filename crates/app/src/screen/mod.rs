//! The screens.

mod basket;
mod count;
mod form;
mod herbal;
mod home;
mod in_hand;
mod journal;
mod kitchen;
mod outing;
mod rows;
mod serving;

pub(crate) use basket::basket;
pub(crate) use count::{allowance, count};
pub(crate) use form::{new, row, row_with};
pub(crate) use herbal::{compare, herbal, plant};
pub(crate) use home::{home, nowhere};
pub(crate) use in_hand::{in_hand, reading, verdict};
pub(crate) use journal::journal;
pub(crate) use kitchen::{kitchen, make, work_out};
pub(crate) use outing::{PAGE, emergency, outing, page, pages, plan};
pub(crate) use rows::{leader, rows};
pub(crate) use serving::{ask, before_why, hand_out, person, serving, why};

use outing::back;

use crate::App;
use crate::address::Address;
use desk::device::{Reply, Request};
use ground::Faults;
use maud::{Markup, PreEscaped, html};
use page::{Page, Words, html_body, html_opened, view};

/// A screen on its way to the browser.
pub(crate) struct Screen {
    pub(crate) title: String,
    pub(crate) main: Markup,
}

/// The answer of the front door as a screen, with what stands before and after it.
fn answered(app: &App, request: Request, before: &Markup, after: &Markup) -> Screen {
    match app.ask(request) {
        Ok(reply) => viewed(app, &reply, &app.words(), before, after),
        Err(faults) => at_fault(app, &faults),
    }
}

/// An answer as a screen, with what stands before and after it; or what a working on it holds.
fn viewed(app: &App, reply: &Reply, words: &Words<'_>, before: &Markup, after: &Markup) -> Screen {
    let opens = app.opens.as_deref();
    let page = view(reply, &words.with_working(opens));
    let Some(anchor) = opens else { return framed(&page, before, after) };
    let main = PreEscaped(html_opened(&page, anchor).unwrap_or_default());
    Screen { title: page.title.plain(), main }
}

/// A page as a screen, with what stands before and after it.
fn framed(page: &Page, before: &Markup, after: &Markup) -> Screen {
    let main = html! {
        h1 tabindex="-1" { (page.title.plain()) }
        (before) (PreEscaped(html_body(page))) (after)
    };
    Screen { title: page.title.plain(), main }
}

/// Why what was just said was not kept; it takes the focus. Where it stands is on the same screen.
fn refused(app: &App, faults: &Faults) -> Markup {
    warned(app, "app-wrong-head", faults)
}

/// What is wrong and how to mend it, under a heading.
fn warned(app: &App, heading: &str, faults: &Faults) -> Markup {
    let said = faults.iter().map(|fault| app.words().catalogue.fault(fault));
    html! {
        div.warned role="alert" tabindex="-1" {
            h2 { (app.word(heading)) }
            @for wrong in said { p { (wrong.what) " " (wrong.mend) } }
        }
    }
}

/// What is wrong, and how to mend it.
pub(crate) fn at_fault(app: &App, faults: &Faults) -> Screen {
    let title = app.word("app-not-understood");
    let main = html! {
        h1 tabindex="-1" { (title) }
        p.faults role="alert" { (app.words().catalogue.faults(faults)) }
        p.alone { a href=(Address::Home.link()) { (app.word("app-home")) } }
    };
    Screen { title, main }
}
