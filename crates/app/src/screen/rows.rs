//! The tables of an outing, and the form of one row.

use super::{Screen, back, nowhere};
use crate::App;
use crate::address::Address;
use crate::fields::{Choice, Field, Kind, TABLES, Table, said};
use crate::visit::Form;
use desk::{Cell, TableRow};
use ground::{Fault, Faults, Part, Region};
use maud::{Markup, html};

/// The rows of a table, each a way to its form.
pub(crate) fn rows(app: &App, book: &str, table: &'static Table) -> Screen {
    let Some(all) = app.books.rows(book) else { return nowhere(app, book) };
    let of = |row: &&TableRow| row.table == table.name;
    let title = app.word(&format!("app-table-{}", table.name));
    let to = |key: Option<&str>| {
        Address::Row(book.to_owned(), table.name.to_owned(), key.map(str::to_owned)).link()
    };
    let main = html! {
        h1 tabindex="-1" { (title) }
        (back(app, book))
        ul.rows role="list" {
            @for row in all.iter().filter(of) {
                li { a href=(to(Some(&row.key))) { span.called { (called(row)) } } }
            }
        }
        p { a.button href=(to(None)) { (app.word("app-add")) } }
    };
    Screen { title, main }
}

/// The ways to every table of an outing, with how many rows it has.
pub(crate) fn tables(app: &App, book: &str, all: &[TableRow]) -> Markup {
    let to = |table: &Table| {
        let (book, name) = (book.to_owned(), table.name.to_owned());
        if table.is_single() {
            Address::Row(book, name, Some(String::new()))
        } else {
            Address::Rows(book, name)
        }
    };
    html! {
        ul.rows role="list" {
            @for table in TABLES {
                @let count = all.iter().filter(|row| row.table == table.name).count();
                li {
                    a href=(to(table).link()) {
                        span.called { (app.word(&format!("app-table-{}", table.name))) }
                        @if !table.is_single() { span { (count) } }
                    }
                }
            }
        }
    }
}

/// What a row is called: by its name for people, its short name, or what it is of and when.
fn called(row: &TableRow) -> String {
    let words = |field: &str| row.cells.get(field).map(|cell| said(cell).join(", "));
    let own = words("called").or_else(|| words("name"));
    let of = || {
        let parts = ["site", "stand", "lot", "batch", "plants", "at", "on"];
        parts.into_iter().filter_map(words).collect::<Vec<_>>().join(", ")
    };
    own.unwrap_or_else(of)
}

/// The form of a row: as it stands, or as it was filled in and what is wrong with that.
pub(crate) fn row(
    app: &App,
    to: &Address,
    table: &'static Table,
    (all, was): (&[TableRow], Option<&TableRow>),
    tried: Option<(&Form, &Faults)>,
) -> Screen {
    let name = app.word(&format!("app-row-{}", table.name));
    let title =
        if tried.is_some() { format!("{} {name}", app.word("app-wrong")) } else { name.clone() };
    let shown = |field: &Field| match tried {
        Some((form, _)) => form.all(field.name).into_iter().map(str::to_owned).collect(),
        None => was.and_then(|row| row.cells.get(field.name)).map(said).unwrap_or_default(),
    };
    let main = html! {
        h1 tabindex="-1" { (name) }
        @if let Some((_, faults)) = tried { (summary(app, table, faults)) }
        form.fill method="post" action=(to.link()) {
            @for field in table.fields {
                @let wrong = tried.and_then(|(_, faults)| of(field, faults));
                (asked(app, table, field, &shown(field), all, wrong))
            }
            button { (app.word("app-keep")) }
            @if was.is_some() && !table.is_single() {
                button.quiet name="take-out" value="yes" { (app.word("app-take-out")) }
            }
        }
    };
    Screen { title, main }
}

fn of<'a>(field: &Field, faults: &'a Faults) -> Option<&'a Fault> {
    faults.iter().find(|fault| fault.at.field.as_deref() == Some(field.name))
}

/// What is wrong, each a way to its field, in the order of the form; it takes the focus.
fn summary(app: &App, table: &Table, faults: &Faults) -> Markup {
    let said = |fault: &Fault| app.words().catalogue.fault(fault).what;
    let elsewhere = |fault: &&Fault| {
        table.fields.iter().all(|field| Some(field.name) != fault.at.field.as_deref())
    };
    html! {
        div.warned role="alert" tabindex="-1" {
            h2 { (app.word("app-wrong-head")) }
            ul {
                @for field in table.fields {
                    @if let Some(fault) = of(field, faults) {
                        li {
                            a href=(format!("#field-{}", field.name)) {
                                (app.label(table.name, field.name)) ": " (said(fault))
                            }
                        }
                    }
                }
                @for fault in faults.iter().filter(elsewhere) { li { (said(fault)) } }
            }
        }
    }
}

/// What is wrong with a field, and how to mend it.
fn wrong_with(app: &App, fault: &Fault) -> Markup {
    let said = app.words().catalogue.fault(fault);
    html! { strong { (said.what) " " (said.mend) } }
}

fn asked(
    app: &App,
    table: &Table,
    field: &Field,
    shown: &[String],
    all: &[TableRow],
    wrong: Option<&Fault>,
) -> Markup {
    let id = format!("field-{}", field.name);
    let says = format!("{id}-says");
    let first = shown.first().map(String::as_str).unwrap_or_default();
    let label = app.label(table.name, field.name);
    let hint = app.hint(table.name, field.name);
    let described = (hint.is_some() || wrong.is_some()).then_some(says.as_str());
    let kind = match field.kind {
        Kind::Day => "date",
        Kind::Time => "time",
        Kind::Moment => "datetime-local",
        _ => "text",
    };
    let whole = (field.kind == Kind::Whole).then_some("numeric");
    let invalid = wrong.map(|_| "true");
    let about = html! {
        @if described.is_some() {
            p.says id=(says) {
                @if let Some(hint) = &hint { (hint) " " }
                @if let Some(fault) = wrong { (wrong_with(app, fault)) }
            }
        }
    };
    let optional = html! { @if !field.needed { " " span.may { (app.word("app-may")) } } };
    match field.kind {
        Kind::YesNo => {
            let question =
                Question { id: &id, name: field.name, label: html! { (label) (optional) }, about };
            question.answered(app, "radio", &yes_no(app), shown)
        }
        Kind::Choices(choice) => {
            let question =
                Question { id: &id, name: field.name, label: html! { (label) (optional) }, about };
            question.answered(app, "checkbox", &app.choices(choice, all), shown)
        }
        Kind::Choice(choice) if !app.choices(choice, all).is_empty() => html! {
            div.field {
                label for=(id) { (label) (optional) }
                (about)
                select id=(id) name=(field.name) aria-describedby=[described] aria-invalid=[invalid] {
                    option value="" { (app.word("app-choose")) }
                    @for (word, says) in app.choices(choice, all) {
                        option value=(word) selected[word == first] { (says) }
                    }
                }
            }
        },
        Kind::Lines | Kind::Plants => html! {
            div.field {
                label for=(id) { (label) (optional) }
                (about)
                textarea id=(id) name=(field.name) rows="3" aria-describedby=[described] aria-invalid=[invalid] { (shown.join("\n")) }
            }
        },
        _ => html! {
            div.field {
                label for=(id) { (label) (optional) }
                (about)
                input id=(id) name=(field.name) type=(kind) value=(first) inputmode=[whole]
                    autocomplete="off" aria-describedby=[described] aria-invalid=[invalid];
            }
        },
    }
}

fn yes_no(app: &App) -> Vec<(String, String)> {
    let said = |word: &str| (word.to_owned(), app.word(&format!("app-{word}")));
    vec![said("yes"), said("no"), (String::new(), app.word("app-not-known"))]
}

/// A question whose answers stand below each other, each large enough to tap.
struct Question<'a> {
    id: &'a str,
    name: &'a str,
    label: Markup,
    about: Markup,
}

impl Question<'_> {
    fn answered(
        &self,
        app: &App,
        kind: &str,
        answers: &[(String, String)],
        shown: &[String],
    ) -> Markup {
        let unsaid = |word: &str| kind == "radio" && word.is_empty() && shown.is_empty();
        let chosen = |word: &str| unsaid(word) || shown.iter().any(|one| one == word);
        html! {
            fieldset.field id=(self.id) {
                legend { (self.label) }
                (self.about)
                @if answers.is_empty() { p { (app.word("app-none-yet")) } }
                @for (word, says) in answers {
                    label.answer {
                        input type=(kind) name=(self.name) value=(word) checked[chosen(word)];
                        span { (says) }
                    }
                }
            }
        }
    }
}

impl App {
    fn label(&self, table: &str, field: &str) -> String {
        let own = format!("app-field-{table}-{field}");
        if self.has(&own) { self.word(&own) } else { self.word(&format!("app-field-{field}")) }
    }

    fn hint(&self, table: &str, field: &str) -> Option<String> {
        let own = format!("app-hint-{table}-{field}");
        let any = format!("app-hint-{field}");
        [own, any].iter().find(|id| self.has(id)).map(|id| self.word(id))
    }

    /// The words of a list with what they say to people.
    fn choices(&self, choice: Choice, all: &[TableRow]) -> Vec<(String, String)> {
        let said = |prefix: &str, word: &str| {
            let id = format!("{prefix}{word}");
            let says = if self.has(&id) { self.word(&id) } else { word.replace('-', " ") };
            (word.to_owned(), says)
        };
        let words = |prefix: &'static str, words: &[&str]| {
            words.iter().map(|word| said(prefix, word)).collect()
        };
        let rules = &self.herbal().land.rules;
        match choice {
            Choice::Region => {
                Region::ALL.iter().map(|region| said("region-", region.word())).collect()
            }
            Choice::Purpose => words("app-purpose-", &["own-use", "lesson", "paid-lesson", "sale"]),
            Choice::Level => words("app-level-", &["leader", "trained", "public"]),
            Choice::Kitchen => words("app-kitchen-", &["metric", "us", "imperial"]),
            Choice::Land => rules.lands.keys().map(|land| said("app-land-", land)).collect(),
            Choice::Jurisdiction => {
                rules.jurisdictions.keys().map(|law| said("app-law-", law)).collect()
            }
            Choice::Part => Part::ALL.iter().map(|part| said("part-", part.word())).collect(),
            Choice::Recipe => {
                self.herbal().kitchen.recipes.keys().map(|name| said("app-recipe-", name)).collect()
            }
            Choice::Of(table) => {
                let named = all.iter().filter(|row| row.table == table);
                named.map(|row| (row.key.clone(), called(row))).collect()
            }
        }
    }
}

/// What a new outing begins with: the clock and place of this device.
pub(crate) fn fresh(day: jiff::civil::Date, zone: &str) -> TableRow {
    let cells = [
        ("date", Cell::Day(day)),
        ("zone", Cell::Words(zone.to_owned())),
        ("records-since", Cell::Day(day)),
    ];
    TableRow::new("outing", cells.map(|(field, cell)| (field.to_owned(), cell)).into())
}
