//! Who may have what: the questions, one a screen; who is handed what; and why, for the leader alone.

use super::journal::last_done;
use super::rows::{called, leader};
use super::{Screen, answered, at_fault, back, framed, nowhere, refused};
use crate::App;
use crate::address::Address;
use crate::answers::{CLOSE, DESTROY, FLAGS, SAID, Said, UNCHANGED, UNSAID, lapsed};
use crate::flags::FLAG;
use crate::hand_out::{PARTICIPANTS, STANDS, TO, decided, wish_of};
use desk::device::Request;
use desk::{Handed, IntakeQuestion, MakePlan, Plan, ServingReply, TableRow};
use dose::Question;
use ground::{Faults, Text};
use maud::{Markup, html};
use page::{asking, view};

/// Who comes, what each said, and what each may have.
pub(crate) fn serving(app: &App, book: &str, faults: Option<&Faults>) -> Screen {
    let (Some(rows), Some(file)) = (app.books.rows(book), app.file_with_answers(book)) else {
        return nowhere(app, book);
    };
    let of = |table: &'static str| rows.iter().filter(move |row| row.table == table);
    let before = html! {
        (back(app, book))
        @if let Some(faults) = faults { (refused(app, faults)) }
        h2 { (app.word("app-answers")) }
        @if lapsed(rows, app.today()) {
            p { (app.word("app-answers-lapsed")) }
            (destroy(app, &Address::Answers(book.to_owned()), "app-answers-destroy-all"))
        } @else if app.answers.of(book).is_some() {
            (people(app, book, rows))
            (close(app, book))
        } @else {
            (locked(app, book))
            (destroy(app, &Address::Answers(book.to_owned()), "app-answers-destroy-all"))
        }
        h2 { (app.word("app-hand-over")) }
        @if of("batch").next().is_none() { p { (app.word("app-hand-over-none")) } }
        ul.ways role="list" {
            @for batch in of("batch") {
                li {
                    a href=(Address::HandOut(book.to_owned(), batch.key.clone()).link()) {
                        (called(app, batch))
                    }
                }
            }
        }
    };
    let after = html! {
        ul.ways role="list" {
            li { a href=(Address::Why(book.to_owned()).link()) { (app.word("app-why")) } }
        }
    };
    answered(app, Request::Serving { files: vec![file], reasons: false }, &before, &after)
}

/// Where the passphrase is given: the first time it is chosen.
fn locked(app: &App, book: &str) -> Markup {
    html! {
        p { (app.word("app-answers-closed")) }
        form.fill method="post" action=(Address::Answers(book.to_owned()).link()) {
            input type="hidden" name="seals" value=(book);
            div.field {
                label for="passphrase" { (app.word("app-passphrase")) }
                p.says #passphrase-says { (app.word("app-passphrase-says")) }
                input #passphrase name="passphrase" type="password" required
                    autocomplete="current-password" aria-describedby="passphrase-says";
            }
            button { (app.word("app-answers-open")) }
        }
    }
}

fn close(app: &App, book: &str) -> Markup {
    html! {
        p { (app.word("app-answers-are-open")) }
        form method="post" action=(Address::Answers(book.to_owned()).link()) {
            button.quiet name=(CLOSE) value="yes" { (app.word("app-answers-close")) }
        }
        (flags(app, book))
        (destroy(app, &Address::Answers(book.to_owned()), "app-answers-destroy-all"))
    }
}

/// For a device that goes along without the answers.
fn flags(app: &App, book: &str) -> Markup {
    let rows = app.books.rows(book).unwrap_or_default();
    let known = rows.iter().filter(|row| row.table == FLAG).count();
    html! {
        details {
            summary { (app.word("app-flags")) }
            p { (app.word("app-flags-says")) }
            @if known > 0 { p { (app.counted("app-flags-known", known)) } }
            form method="post" action=(Address::Answers(book.to_owned()).link()) {
                button name=(FLAGS) value="yes" { (app.word("app-flags-leave")) }
            }
        }
    }
}

/// What is destroyed does not come back: the button lies behind a tap.
fn destroy(app: &App, at: &Address, says: &str) -> Markup {
    html! {
        details {
            summary { (app.word(says)) }
            p { (app.word("app-answers-destroy-says")) }
            form method="post" action=(at.link()) {
                button name=(DESTROY) value="yes" { (app.word("app-answers-destroy")) }
            }
        }
    }
}

/// Everybody, with how much they said and when.
fn people(app: &App, book: &str, rows: &[TableRow]) -> Markup {
    let comes = rows.iter().filter(|row| row.table == "participant");
    let asked = |person: &str| match app.answers.by(book, person) {
        None => app.word("app-asked-never"),
        Some(said) if said.asked.date() == app.today() => app.word("app-asked-today"),
        Some(said) => app.say(&Text::new("app-asked-on").with("day", said.asked.date())),
    };
    html! {
        p { (app.word("app-head-count-says")) }
        ul.rows role="list" {
            @for row in comes {
                li {
                    a href=(to_person(app, book, &row.key).link()) {
                        span.called { (called(app, row)) }
                        span { (asked(&row.key)) }
                    }
                }
            }
        }
    }
}

/// Where somebody is asked: the first question of whoever was asked nothing yet.
fn to_person(app: &App, book: &str, person: &str) -> Address {
    let (book_name, name) = (book.to_owned(), person.to_owned());
    match app.answers.by(book, person) {
        None if app.question(book, 1).is_some() => Address::Ask(book_name, name, 1),
        _ => Address::Person(book_name, name),
    }
}

/// Whoever comes after this person on the list and was not asked today.
fn next_to_ask<'a>(app: &'a App, book: &str, person: &str) -> Option<&'a TableRow> {
    let comes =
        || app.books.rows(book).into_iter().flatten().filter(|row| row.table == "participant");
    let at = comes().position(|row| row.key == person)?;
    let asked = |row: &&TableRow| {
        let said = app.answers.by(book, &row.key);
        said.is_some_and(|said| said.asked.date() == app.today())
    };
    comes().skip(at + 1).chain(comes().take(at)).find(|row| !asked(row))
}

/// What a person said, question by question, and whether anything has changed since.
pub(crate) fn person(app: &App, book: &str, person: &str) -> Screen {
    let Some((row, plan)) = asked(app, book, person) else { return nowhere(app, person) };
    let plan = match plan {
        Ok(plan) => plan,
        Err(faults) => return at_fault(app, &faults),
    };
    let said = app.answers.by(book, person);
    let own = Address::Person(book.to_owned(), person.to_owned());
    let to = |number| Address::Ask(book.to_owned(), person.to_owned(), number).link();
    let title = called(app, row);
    let main = html! {
        h1 tabindex="-1" { (title) }
        (to_serving(app, book))
        @if let Some(next) = next_to_ask(app, book, person).filter(|_| said.is_some()) {
            p {
                a.button href=(to_person(app, book, &next.key).link()) {
                    (app.say(&Text::new("app-ask-next").with("person", called(app, next))))
                }
            }
        }
        @if plan.intake.questions.is_empty() {
            p { (app.word("app-ask-nothing")) }
        } @else if said.is_some() {
            h2 { (app.word("app-changed")) }
            p { (app.word("app-changed-says")) }
            form method="post" action=(own.link()) {
                button name=(UNCHANGED) value="yes" { (app.word("app-changed-no")) }
            }
        } @else {
            p { (app.word("app-ask-says")) }
        }
        p { a.button href=(to(1)) { (app.word("app-ask-all")) } }
        ol.rows role="list" {
            @for (question, number) in plan.intake.questions.iter().zip(1..) {
                li {
                    a href=(to(number)) {
                        span.called { (asking(&plan, question, &app.words()).asks) }
                        span { (app.word_of(said, &question.asks)) }
                    }
                }
            }
        }
        @if said.is_some() { (destroy(app, &own, "app-answers-destroy-one")) }
    };
    Screen { title, main }
}

type Asked<'a> = (&'a TableRow, Result<std::rc::Rc<Plan>, Faults>);

/// Somebody who comes, and the plan that asks; none where the answers are closed.
fn asked<'a>(app: &'a App, book: &str, person: &str) -> Option<Asked<'a>> {
    app.answers.of(book)?;
    let rows = app.books.rows(book)?;
    let row = rows.iter().find(|row| row.table == "participant" && row.key == person)?;
    if lapsed(rows, app.today()) {
        return None;
    }
    Some((row, app.plan_without_answers(book)?))
}

fn to_serving(app: &App, book: &str) -> Markup {
    html! {
        p.back.alone { a href=(Address::Serving(book.to_owned()).link()) { (app.word("app-serving")) } }
    }
}

/// One question to one person, and why it is asked.
pub(crate) fn ask(
    app: &App,
    (book, person, number): (&str, &str, usize),
    faults: Option<&Faults>,
) -> Screen {
    let Some((row, plan)) = asked(app, book, person) else { return nowhere(app, person) };
    let plan = match plan {
        Ok(plan) => plan,
        Err(faults) => return at_fault(app, &faults),
    };
    let all = &plan.intake.questions;
    let Some(question) = number.checked_sub(1).and_then(|at| all.get(at)) else {
        return nowhere(app, person);
    };
    let asking = asking(&plan, question, &app.words());
    let said = app.answers.by(book, person);
    let to = Address::Ask(book.to_owned(), person.to_owned(), number);
    let counted = Text::new("app-ask-counted").with("number", number).with("count", all.len());
    let main = html! {
        h1 #asked tabindex="-1" { (asking.asks) }
        p.back.alone {
            a href=(Address::Person(book.to_owned(), person.to_owned()).link()) { (called(app, row)) }
        }
        p { (app.say(&counted)) }
        @if let Some(faults) = faults { (refused(app, faults)) }
        form.fill method="post" action=(to.link()) {
            (answering(app, question, said))
        }
        p.says { (asking.why) }
    };
    let title = match faults {
        Some(_) => format!("{} {}", app.word("app-wrong"), asking.asks),
        None => asking.asks,
    };
    Screen { title, main }
}

/// Large answers to tap, or a field for a number; not knowing and not telling are answers too.
fn answering(app: &App, question: &IntakeQuestion, said: Option<&Said>) -> Markup {
    let now = said.and_then(|said| said.to(&question.asks));
    let chosen = |word: &str| (now.as_deref() == Some(word)).then_some("true");
    let button = |word: &str| {
        html! {
            button.choice name=(SAID) value=(word) aria-pressed=[chosen(word)] {
                (app.word(&format!("app-said-{word}")))
            }
        }
    };
    let field = |hint: &str, mode: &str| {
        html! {
            div.field {
                label #said-in for=(SAID) { (app.word(hint)) }
                input id=(SAID) name=(SAID) type="text" inputmode=(mode) autocomplete="off"
                    autofocus aria-labelledby="asked said-in"
                    value=(now.as_deref().unwrap_or_default());
            }
            button { (app.word("app-keep")) }
        }
    };
    html! {
        @match &question.asks {
            Question::Age | Question::Stage { .. } => (field("app-ask-years", "numeric")),
            Question::BodyMass => (field("app-ask-weight", "text")),
            Question::Condition(_) => div.choices.yes-no { (button("yes")) (button("no")) },
        }
        div.choices.yes-no { @for word in UNSAID { (button(word)) } }
    }
}

/// Whom a batch is handed to, and to whom not; never why.
pub(crate) fn hand_out(app: &App, book: &str, batch: &str) -> Screen {
    let Some(rows) = app.books.rows(book) else { return nowhere(app, book) };
    let Some((row, wish)) = wish_of(rows, batch) else { return nowhere(app, batch) };
    let reply = match decided(app, book) {
        None => return nowhere(app, batch),
        Some(Ok(reply)) => reply,
        Some(Err(faults)) => return at_fault(app, &faults),
    };
    let title = called(app, row);
    let to = Address::HandOut(book.to_owned(), batch.to_owned());
    let main = html! {
        h1 tabindex="-1" { (title) }
        (to_serving(app, book))
        p { (app.word("app-hand-over-says")) }
        @match reply.makes.iter().find(|make| make.name == wish) {
            Some(make) => (hands(app, &to, make, (&reply, &leader(rows)))),
            None => p { (app.word("app-hand-over-no-wish")) },
        }
        (last_done(app, book))
    };
    Screen { title, main }
}

fn hands(
    app: &App,
    to: &Address,
    make: &MakePlan,
    (reply, leader): (&ServingReply, &str),
) -> Markup {
    let open = |handed: &Handed| handed.confirmed_by.is_none() && handed.left() > 0;
    let proposed = make.handed_out.iter().filter(|(_, handed)| open(handed));
    let proposed: Vec<_> = proposed.map(|(name, _)| name).collect();
    html! {
        @if !proposed.is_empty() {
            form.warned method="post" action=(to.link()) {
                p { (app.word("app-stand-for-says")) }
                @for name in proposed { input type="hidden" name=(PARTICIPANTS) value=(name); }
                button name=(STANDS) value=(leader) {
                    (app.say(&Text::new("app-stand-for").with("leader", leader)))
                }
            }
        }
        form method="post" action=(to.link()) {
            ul.hands role="list" {
                @for (name, called) in &reply.people {
                    li { (hand(app, (name, called), make.handed_out.get(name))) }
                }
            }
        }
    }
}

fn hand(app: &App, (name, called): (&str, &str), handed: Option<&Handed>) -> Markup {
    html! {
        span.called { (called) }
        @if let Some(handed) = handed.filter(|handed| handed.had > 0) {
            span { (app.counted("app-hand-over-had", handed.had as usize)) }
        }
        @if handed.is_some_and(Handed::may_have_one) {
            button name=(TO) value=(name) aria-label=(format!("{}: {called}", app.word("app-hand-over-one"))) {
                (app.word("app-hand-over-one"))
            }
        } @else {
            strong { (app.word("app-hand-over-not")) }
        }
    }
}

/// Before the reasons: whoever looks on must not see them.
pub(crate) fn before_why(app: &App, book: &str) -> Screen {
    if app.books.rows(book).is_none() {
        return nowhere(app, book);
    }
    let title = app.word("app-why");
    let main = html! {
        h1 tabindex="-1" { (title) }
        (to_serving(app, book))
        p { (app.word("app-why-says")) }
        form method="post" action=(Address::Why(book.to_owned()).link()) {
            button { (app.word("app-why-show")) }
        }
    };
    Screen { title, main }
}

/// Why, person by person.
pub(crate) fn why(app: &App, book: &str) -> Screen {
    let Some(file) = app.file_with_answers(book) else { return nowhere(app, book) };
    let back = to_serving(app, book);
    match app.ask(Request::Serving { files: vec![file], reasons: true }) {
        // Whole: no link leads here, so nothing on it can be asked for later.
        Ok(reply) => framed(&view(&reply, &app.words()), &back, &html! {}),
        Err(faults) => at_fault(app, &faults),
    }
}

impl App {
    /// What somebody answered, in a word.
    fn word_of(&self, said: Option<&Said>, question: &Question) -> String {
        match said.and_then(|said| said.to(question)) {
            None => self.word("app-said-nothing"),
            Some(word) if matches!(question, Question::Condition(_)) => {
                self.word(&format!("app-said-{word}"))
            }
            Some(words) => words,
        }
    }
}
