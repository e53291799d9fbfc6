//! Counting: the plots of a survey one after the other, and how much may go by them.

use super::journal::last_done;
use super::rows::called;
use super::{Screen, answered, back, nowhere, refused};
use crate::App;
use crate::address::Address;
use crate::edit::PLOT;
use crate::fields::said;
use desk::device::Request;
use ground::Faults;
use maud::{Markup, html};

/// What a tap adds to the count.
const STEPS: [i32; 4] = [1, 5, 10, -1];

/// The next plot of a survey.
pub(crate) fn count(app: &App, book: &str, survey: &str, faults: Option<&Faults>) -> Screen {
    let rows = app.books.rows(book).unwrap_or_default();
    let is = |row: &&desk::TableRow| row.table == "survey" && row.key == survey;
    let Some(row) = rows.iter().find(is) else { return nowhere(app, survey) };
    let plots = row.cells.get("pieces").map(said).unwrap_or_default();
    let title = app.counted("app-count-plot", plots.len() + 1);
    let to = Address::Count(book.to_owned(), survey.to_owned());
    let main = html! {
        h1 tabindex="-1" { (title) }
        (back(app, book))
        p { (called(app, row)) }
        @if let Some(faults) = faults { (refused(app, faults)) }
        form.count method="post" action=(to.link()) {
            div.field {
                label for=(PLOT) { (app.word("app-count-pieces")) }
                input id=(PLOT) name=(PLOT) type="text" inputmode="numeric" value="0" autocomplete="off";
            }
            div.choices.steps { @for step in STEPS { (stepper(step)) } }
            button { (app.word("app-count-keep")) }
        }
        @if !plots.is_empty() { p { (app.word("app-count-so-far")) " " (plots.join(", ")) } }
        p.alone { a href=(Address::Allowance(book.to_owned()).link()) { (app.word("app-allowance")) } }
        (last_done(app, book))
    };
    Screen { title, main }
}

/// A button that the page answers by itself: nothing is kept before the plot is.
fn stepper(step: i32) -> Markup {
    let says = if step < 0 { format!("\u{2212}{}", -step) } else { format!("+{step}") };
    html! { button.choice type="button" data-of=(PLOT) data-step=(step) { (says) } }
}

/// How much may go from each stand, and which rule says so.
pub(crate) fn allowance(app: &App, book: &str) -> Screen {
    let Some(file) = app.books.file(book) else { return nowhere(app, book) };
    let new = |table: &str| {
        let to = Address::of_new(book, table).link();
        html! { li { a href=(to) { (app.word(&format!("app-row-{table}"))) } } }
    };
    let after = html! { ul.ways role="list" { (new("permission")) (new("survey")) } };
    answered(app, Request::Allowance { files: vec![file] }, &back(app, book), &after)
}
