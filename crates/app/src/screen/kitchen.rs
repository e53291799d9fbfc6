//! The kitchen: what is made of an outing, step by step with its clocks; and a preparation by itself.

use super::journal::last_done;
use super::rows::called;
use super::{Screen, at_fault, back, nowhere, viewed, warned};
use crate::App;
use crate::address::Address;
use crate::visit::Form;
use crate::work_out::{AMOUNTS, order};
use desk::device::{Reply, Request};
use desk::{MakeReply, PotPlan, TableRow};
use ground::{Answer, MeasureSystem, Text};
use maud::{Markup, PreEscaped, html};
use page::{html_body, view};
use prepare::Done;

/// What is to be made of an outing.
pub(crate) fn kitchen(app: &App, book: &str) -> Screen {
    let Some(rows) = app.books.rows(book) else { return nowhere(app, book) };
    let wishes = rows.iter().filter(|row| row.table == "make");
    let title = app.word("app-kitchen");
    let main = html! {
        h1 tabindex="-1" { (title) }
        (back(app, book))
        @if wishes.clone().next().is_none() { p { (app.word("app-kitchen-none")) } }
        ul.ways role="list" {
            @for row in wishes {
                li {
                    a href=(Address::Make(book.to_owned(), row.key.clone()).link()) { (called(app, row)) }
                }
            }
        }
        p.alone {
            a href=(Address::Row(book.to_owned(), "make".to_owned(), None).link()) {
                (app.word("app-kitchen-add"))
            }
        }
        p.alone { a href=(Address::WorkOut(Form::default()).link()) { (app.word("app-work-out")) } }
    };
    Screen { title, main }
}

/// One wish: what goes in, what is done and for how long, what was made of it already.
pub(crate) fn make(app: &App, book: &str, wish: &str) -> Screen {
    let (Some(rows), Some(file)) = (app.books.rows(book), app.books.file(book)) else {
        return nowhere(app, book);
    };
    let pots = match app.ask(Request::Pots { files: vec![file] }) {
        Ok(Reply::Pots(pots)) => pots,
        Ok(_) => return nowhere(app, book),
        Err(faults) => return at_fault(app, &faults),
    };
    let Some(make) = pots.into_iter().find(|make| make.name == wish) else {
        return nowhere(app, wish);
    };
    let row = Address::Row(book.to_owned(), "make".to_owned(), Some(wish.to_owned()));
    let pot = Reply::Make(Box::new(MakeReply { brew: make.brew.clone() }));
    let main = html! {
        h1 tabindex="-1" { (make.called) }
        p.back.alone { a href=(Address::Kitchen(book.to_owned()).link()) { (app.word("app-kitchen")) } }
        (batches(app, book, rows, &make))
        @if let Answer::Known(brew) = &make.brew { (clocks(app, &make.called, &brew.steps)) }
        (PreEscaped(html_body(&view(&pot, &app.words()))))
        ul.ways role="list" {
            li { a href=(row.link()) { (app.word("app-make-change")) } }
            li {
                a href=(Address::Page(book.to_owned(), "labels".to_owned()).link()) {
                    (app.word("app-labels"))
                }
            }
        }
        (last_done(app, book))
    };
    Screen { title: make.called.clone(), main }
}

/// What was made of a wish, and the ways to write down that more was made or weighed.
fn batches(app: &App, book: &str, rows: &[TableRow], make: &PotPlan) -> Markup {
    let is = |row: &&TableRow| {
        let of = row.cells.get("make").map(crate::fields::said).unwrap_or_default().concat();
        row.table == "batch" && of == make.name
    };
    let with = |table: &str, field: &str, said: &str| {
        Address::RowWith(book.to_owned(), table.to_owned(), (field.to_owned(), said.to_owned()))
    };
    html! {
        p { a.button href=(with("batch", "make", &make.name).link()) { (app.word("app-made-now")) } }
        @for batch in rows.iter().filter(is) {
            h2 { (called(app, batch)) }
            ul.ways role="list" {
                li { a href=(with("weighing", "of", &batch.key).link()) { (app.word("app-weigh")) } }
                li {
                    a href=(Address::HandOut(book.to_owned(), batch.key.clone()).link()) {
                        (app.word("app-hand-over"))
                    }
                }
            }
        }
    }
}

/// A clock for each step that takes its time: it runs on wherever somebody goes in the app.
fn clocks(app: &App, called: &str, steps: &[Done]) -> Markup {
    let timed: Vec<_> = steps.iter().filter_map(|step| Some((step, step.time?[0]))).collect();
    html! {
        @if !timed.is_empty() {
            h2 { (app.word("app-clocks")) }
            ul.hands role="list" {
                @for (step, least) in timed {
                    @let minutes = least.minutes();
                    li {
                        span.called { (app.say(&step.text)) }
                        @if minutes <= LONGEST_MIN {
                            button type="button" data-minutes=(minutes) data-clock=(called) {
                                (app.say(&Text::new("app-clock-start").with("count", minutes.round() as u32)))
                            }
                        }
                    }
                }
            }
        }
    }
}

/// What takes longer than this stands in the calendar of the plan, and no clock is watched for it.
const LONGEST_MIN: f64 = 180.0;

/// A preparation by itself: what is at hand, or how many servings are wanted.
pub(crate) fn work_out(app: &App, form: &Form) -> Screen {
    let made = order(form).and_then(|order| app.ask(Request::Make(Box::new(order))));
    let faults = match made {
        Ok(reply) if !form.0.is_empty() => {
            return viewed(app, &reply, &app.words(), &html! {}, &asked(app, form));
        }
        Ok(_) => None,
        Err(faults) => Some(faults).filter(|_| !form.0.is_empty()),
    };
    let title = app.word("app-work-out");
    let main = html! {
        h1 tabindex="-1" { (title) }
        @if let Some(faults) = &faults { (warned(app, "app-not-worked-out", faults)) }
        (asked(app, form))
    };
    Screen { title, main }
}

fn asked(app: &App, form: &Form) -> Markup {
    let (first, more) = AMOUNTS.split_at(2);
    let recipes = app.herbal().kitchen.recipes.values();
    let recipes = recipes.map(|recipe| (recipe.id.clone(), recipe.name.clone())).collect();
    let states = ["fresh", "dried"];
    let states =
        states.map(|word| (word.to_owned(), app.word(&format!("app-state-{word}")))).into();
    let kitchens = MeasureSystem::ALL.iter().map(|one| one.word());
    let kitchens = kitchens.map(|word| (word.to_owned(), app.word(&format!("app-kitchen-{word}"))));
    html! {
        form.fill method="get" action=(Address::WorkOut(Form::default()).link()) {
            (select(app, form, "recipe", recipes))
            @for field in first { (input(app, form, field)) }
            (select(app, form, "state", states))
            (input(app, form, "servings"))
            details {
                summary { (app.word("app-work-out-more")) }
                @for field in more { (input(app, form, field)) }
                (select(app, form, "kitchen", kitchens.collect()))
            }
            button { (app.word("app-work-out-do")) }
        }
    }
}

fn input(app: &App, form: &Form, field: &str) -> Markup {
    let id = format!("work-out-{field}");
    html! {
        div.field {
            label for=(id) { (app.word(&format!("app-work-out-{field}"))) }
            input id=(id) name=(field) type="text" autocomplete="off" value=(form.one(field))
                inputmode=[(field == "servings").then_some("numeric")];
        }
    }
}

fn select(app: &App, form: &Form, field: &str, choices: Vec<(String, String)>) -> Markup {
    let id = format!("work-out-{field}");
    html! {
        div.field {
            label for=(id) { (app.word(&format!("app-work-out-{field}"))) }
            select id=(id) name=(field) {
                option value="" { (app.word("app-choose")) }
                @for (word, says) in choices {
                    option value=(word) selected[word == form.one(field)] { (says) }
                }
            }
        }
    }
}
