//! A plant in hand: who reads it, one look at a time, and what it is by all that was read.

use super::journal::last_done;
use super::{Screen, answered, at_fault, back, nowhere, refused};
use crate::App;
use crate::address::{Address, Reading, Specimen};
use crate::books::day_of;
use crate::in_hand::{CHARACTER, LOOKED, LOOKS, SAW, is_of, saw};
use desk::device::{Reply, Request};
use desk::{Cell, InHandOrder, NextLookOrder, NextLookReply, TableRow};
use ground::{Faults, Text};
use herbal::Term;
use identify::Kind;
use maud::{Markup, PreEscaped, html};
use page::{Ruler, state_drawing};
use std::collections::BTreeSet;

/// Every stand with the plants that were picked there, and who may read each.
pub(crate) fn in_hand(app: &App, book: &str) -> Screen {
    let Some(rows) = app.books.rows(book) else { return nowhere(app, book) };
    let of = |table: &'static str| rows.iter().filter(move |row| row.table == table);
    let title = app.word("app-in-hand");
    let main = html! {
        h1 tabindex="-1" { (title) }
        (back(app, book))
        p { (app.word("app-in-hand-says")) }
        (other_day(app, rows))
        @if of("stand").next().is_none() {
            p { (app.word("app-in-hand-no-stand")) }
            (to_write_down(app, book, if of("site").next().is_none() { "site" } else { "stand" }))
        }
        @if of("reader").next().is_none() { p { (app.word("app-in-hand-no-reader")) } }
        @for stand in of("stand") { (at_stand(app, book, rows, &stand.key)) }
    };
    Screen { title, main }
}

/// That today is not the day of the outing: what is read now does not count on that day.
fn other_day(app: &App, rows: &[TableRow]) -> Markup {
    let day = day_of(rows).filter(|day| *day != app.today());
    html! {
        @if let Some(day) = day {
            p.warned { (app.say(&Text::new("app-in-hand-other-day").with("day", day))) }
        }
    }
}

/// The way to the form of what is lacking.
fn to_write_down(app: &App, book: &str, table: &str) -> Markup {
    let to = Address::of_new(book, table).link();
    html! { p { a.button href=(to) { (app.word(&format!("app-row-{table}"))) } } }
}

fn words<'a>(row: &'a TableRow, field: &str) -> &'a str {
    match row.cells.get(field) {
        Some(Cell::Words(words)) => words,
        _ => "",
    }
}

fn at_stand(app: &App, book: &str, rows: &[TableRow], stand: &str) -> Markup {
    let here = rows.iter().filter(|row| row.table == LOOKS && words(row, "stand") == stand);
    let seen: BTreeSet<&str> = here.map(|row| words(row, "specimen")).collect();
    let of = |name: &str| Specimen { stand: stand.to_owned(), name: name.to_owned() };
    let next = (1..).map(|number| format!("{stand}-{number}"));
    let taken: BTreeSet<&str> = rows.iter().map(|row| words(row, "specimen")).collect();
    let new = next.into_iter().find(|name| !taken.contains(name.as_str())).unwrap_or_default();
    html! {
        h2 { (stand) }
        @for name in &seen {
            h3 { (name) }
            (readers(app, book, rows, &of(name)))
        }
        h3 { (app.word("app-in-hand-new")) }
        (readers(app, book, rows, &of(&new)))
    }
}

/// The ways to the readings of a specimen, with how much each reader has seen.
fn readers(app: &App, book: &str, rows: &[TableRow], of: &Specimen) -> Markup {
    let reading = |reader: &str| Reading {
        book: book.to_owned(),
        of: of.clone(),
        reader: reader.to_owned(),
        look: None,
    };
    html! {
        ul.rows role="list" {
            @for reader in rows.iter().filter(|row| row.table == "reader") {
                @let reading = reading(&reader.key);
                @let seen: BTreeSet<&str> = seen(rows, &reading);
                li {
                    a href=(Address::Reading(reading).link()) {
                        span.called { (words(reader, "called")) }
                        span { (app.counted("app-in-hand-looks", seen.len())) }
                    }
                }
            }
        }
    }
}

/// The characters that a reader has read of a specimen.
fn seen<'a>(rows: &'a [TableRow], reading: &Reading) -> BTreeSet<&'a str> {
    let own = rows.iter().filter(|row| is_of(row, reading));
    own.flat_map(|row| saw(row).into_keys()).collect()
}

/// One look: a character, how to look, and what it may show. What the plant could be stays hidden.
pub(crate) fn reading(app: &App, reading: &Reading, faults: Option<&Faults>) -> Screen {
    let Some(rows) = app.books.rows(&reading.book) else { return nowhere(app, &reading.book) };
    let reader = rows.iter().find(|row| row.table == "reader" && row.key == reading.reader);
    let Some(reader) = reader else { return nowhere(app, &reading.reader) };
    let reply = match ask(app, reading) {
        None => return nowhere(app, &reading.book),
        Some(Err(faults)) => return at_fault(app, &faults),
        Some(Ok(reply)) => reply,
    };
    let wanted = reading.look.as_ref().or(reply.look_at.first());
    let term = wanted.and_then(|id| app.herbal().flora.glossary.term(id));
    let name = match term {
        Some(term) => term.name.clone(),
        None => app.word("app-in-hand-all"),
    };
    let main = html! {
        h1.term tabindex="-1" { (name) }
        p.back.alone {
            a href=(Address::InHand(reading.book.clone()).link()) {
                (reading.of.name) ", " (words(reader, "called"))
            }
        }
        (other_day(app, rows))
        @if let Some(faults) = faults { (refused(app, faults)) }
        @match term {
            Some(term) => (look(app, reading, term)),
            None => p { (app.word(nothing_more(&reply, rows, reading))) },
        }
        (others(app, reading, &reply, term))
        (looked(app, reading))
        (last_done(app, &reading.book))
    };
    Screen { title: name, main }
}

/// Why no look is offered. What the plant could be stays unsaid.
fn nothing_more(reply: &NextLookReply, rows: &[TableRow], reading: &Reading) -> &'static str {
    if reply.wants_another {
        "app-in-hand-another"
    } else if rows.iter().any(|row| is_of(row, reading)) {
        "app-in-hand-all-says"
    } else {
        "app-in-hand-none-now"
    }
}

fn ask(app: &App, reading: &Reading) -> Option<Result<NextLookReply, Faults>> {
    let of = order(app, &reading.book, &reading.of)?;
    match app.ask(Request::NextLook(NextLookOrder { of, reader: reading.reader.clone() })) {
        Ok(Reply::NextLook(reply)) => Some(Ok(reply)),
        Ok(_) => None,
        Err(faults) => Some(Err(faults)),
    }
}

fn order(app: &App, book: &str, of: &Specimen) -> Option<InHandOrder> {
    Some(InHandOrder {
        files: vec![app.books.file(book)?],
        stand: of.stand.clone(),
        specimen: of.name.clone(),
    })
}

/// A character with everything that it may show, each a button to tap.
fn look(app: &App, reading: &Reading, term: &Term) -> Markup {
    let choice = |value: &str, says: &str, drawing: Option<Markup>| {
        html! {
            button.choice name=(SAW) value=(value) {
                @if let Some(drawing) = drawing { span aria-hidden="true" { (drawing) } }
                span { (says) }
            }
        }
    };
    let drawn = |number: usize, state: &str| {
        let drawing = state_drawing(term, state, &app.words())?;
        Some(PreEscaped(drawing.svg(&format!("state-{number}"))))
    };
    html! {
        p { (term.is) }
        p { strong { (term.how) } }
        @if let Some(note) = &term.misread_note {
            p.says { (app.word("app-in-hand-misread")) " " (note) }
        }
        form.look method="post" action=(Address::Reading(reading.clone()).link()) {
            input type="hidden" name=(CHARACTER) value=(term.character.id);
            @match &term.character.kind {
                Kind::States(states) => div.choices {
                    @for (number, state) in states.iter().enumerate() {
                        (choice(&state.id, term.says.get(&state.id).map_or("", String::as_str), drawn(number, &state.id)))
                    }
                },
                Kind::Length => {
                    (ruler(app))
                    (typed(app, "app-in-hand-length", "text"))
                }
                Kind::Count => (typed(app, "app-in-hand-count", "numeric")),
            }
        }
        form.look method="post" action=(Address::Reading(reading.clone()).link()) {
            input type="hidden" name=(CHARACTER) value=(term.character.id);
            div.choices {
                (choice("?", &app.word("app-in-hand-cannot-tell"), None))
                (choice("not-there", &app.word("app-in-hand-not-there"), None))
            }
        }
    }
}

/// A ruler on the screen, shown once somebody held a card of known size against it: how large a
/// millimetre is on a screen no browser tells.
fn ruler(app: &App) -> Markup {
    let ruler = Ruler {
        title: app.word("app-ruler"),
        describes: app.word("app-ruler-is"),
        centimetres: RULER_CM,
    };
    html! {
        div.ruler { (PreEscaped(ruler.draw().svg("ruler"))) }
        details.measure {
            summary { (app.word("app-ruler-set")) }
            p { (app.word("app-ruler-says")) }
            div.card aria-hidden="true" {}
            div.choices.yes-no {
                button.choice type="button" data-mm="-0.01" { (app.word("app-ruler-shorter")) }
                button.choice type="button" data-mm="0.01" { (app.word("app-ruler-longer")) }
            }
            button type="button" data-mm="0" { (app.word("app-ruler-fits")) }
        }
    }
}

/// What fits a phone that is held across.
const RULER_CM: u8 = 10;

fn typed(app: &App, says: &str, mode: &str) -> Markup {
    html! {
        div.field {
            label for="saw" { (app.word(says)) }
            input #saw type="text" inputmode=(mode) name=(SAW) autocomplete="off";
        }
        button { (app.word("app-keep")) }
    }
}

/// What else could be looked at, and what this reader has said already.
fn others(app: &App, reading: &Reading, reply: &NextLookReply, now: Option<&Term>) -> Markup {
    let is_now = |id: &str| now.is_some_and(|term| term.character.id == id);
    let open: Vec<_> = reply.look_at.iter().filter(|id| !is_now(id)).collect();
    let rows = app.books.rows(&reading.book).unwrap_or_default();
    let own = rows.iter().filter(|row| is_of(row, reading));
    let said: Vec<_> = own.flat_map(saw).collect();
    let to = |look: &str| {
        Address::Reading(Reading { look: Some(look.to_owned()), ..reading.clone() }).link()
    };
    let character = |id: &str| app.words().character(id);
    html! {
        @if !open.is_empty() {
            details {
                summary { (app.counted("app-in-hand-more", open.len())) }
                ul.rows role="list" {
                    @for id in open { li { a href=(to(id)) { span.called { (character(id)) } } } }
                }
            }
        }
        @if !said.is_empty() {
            details {
                summary { (app.counted("app-in-hand-said", said.len())) }
                ul.rows role="list" {
                    @for (id, cell) in said {
                        li {
                            a href=(to(id)) { span.called { (character(id)) } span { (shown(app, id, cell)) } }
                        }
                    }
                }
            }
        }
    }
}

/// What was seen, in plain words.
fn shown(app: &App, character: &str, cell: &Cell) -> String {
    match cell {
        Cell::Words(word) if word == "?" => app.word("app-in-hand-cannot-tell"),
        Cell::Words(word) if word == "not-there" => app.word("app-in-hand-not-there"),
        Cell::Words(words) => match app.herbal().flora.glossary.state(character, words) {
            Some(_) => app.words().state(character, words),
            None => words.clone(),
        },
        other => crate::fields::said(other).join(", "),
    }
}

/// The way to what it could be: a deliberate act, since whoever knows reads otherwise.
fn looked(app: &App, reading: &Reading) -> Markup {
    html! {
        form method="post" action=(Address::Reading(reading.clone()).link()) {
            p { (app.word("app-in-hand-looked-says")) }
            button.quiet name=(LOOKED) value="yes" { (app.word("app-in-hand-looked")) }
        }
    }
}

/// What the plant is by all that was read of it.
pub(crate) fn verdict(app: &App, book: &str, of: &Specimen) -> Screen {
    let Some(order) = order(app, book, of) else { return nowhere(app, book) };
    let back = html! {
        p.back.alone { a href=(Address::InHand(book.to_owned()).link()) { (app.word("app-in-hand")) } }
        p { (of.name) ", " (of.stand) }
    };
    answered(app, Request::InHand(order), &back, &html! {})
}
