//! The form of one row: as it stands, or as it was filled in and what is wrong with that.

use super::rows::{called, leader};
use super::{Screen, nowhere};
use crate::App;
use crate::address::Address;
use crate::edit::RowAt;
use crate::fields::{Choice, Field, Kind, Table, said, table};
use crate::in_hand::LOOKS;
use crate::visit::{Form, Moment};
use desk::{Cell, TableRow};
use ground::{Fault, Faults, MeasureSystem, Part, Region};
use harvest::Purpose;
use identify::Level;
use maud::{Markup, html};
use page::Measures;
use std::collections::BTreeSet;

/// A form that was filled in, and what is wrong with it.
type Tried<'a> = Option<(&'a Form, &'a Faults)>;

/// The form of a row.
pub(crate) fn row(app: &App, at: &RowAt<'_>, tried: Tried<'_>) -> Screen {
    let (Some(all), Some(table)) = (app.books.rows(at.book), table(at.table)) else {
        return nowhere(app, at.table);
    };
    let is = |row: &&TableRow| row.table == at.table && Some(row.key.as_str()) == at.key;
    let was = all.iter().find(is);
    if at.key.is_some() && was.is_none() && !table.is_single() {
        return nowhere(app, at.table);
    }
    let (book, name) = (at.book.to_owned(), at.table.to_owned());
    let to = Address::Row(book, name, at.key.map(str::to_owned));
    Filling { app, to: &to, table, all, was, is_new: was.is_none(), tried }.screen()
}

/// The form of a row to come, of which one field is known.
pub(crate) fn row_with(app: &App, at: &RowAt<'_>, (field, said): &(String, String)) -> Screen {
    let (Some(all), Some(table)) = (app.books.rows(at.book), table(at.table)) else {
        return nowhere(app, at.table);
    };
    let cell = Cell::Words(said.clone());
    let known = TableRow::new(at.table, [(field.clone(), cell)].into());
    let to = Address::Row(at.book.to_owned(), at.table.to_owned(), None);
    Filling { app, to: &to, table, all, was: Some(&known), is_new: true, tried: None }.screen()
}

/// The form that an outing begins with: it knows the clock and place of this device.
pub(crate) fn new(app: &App, at: &Moment, tried: Tried<'_>) -> Screen {
    let day = Cell::Day(at.now.date());
    let zone = Cell::Words(at.zone.clone());
    let cells = [("date", day.clone()), ("zone", zone), ("records-since", day)];
    let row = TableRow::new("outing", cells.map(|(field, cell)| (field.to_owned(), cell)).into());
    match table("outing") {
        Some(table) => {
            let (to, was) = (&Address::New, Some(&row));
            Filling { app, to, table, all: &[], was, is_new: true, tried }.screen()
        }
        None => nowhere(app, "outing"),
    }
}

/// A form that is being filled in.
struct Filling<'a> {
    app: &'a App,
    /// Where it goes.
    to: &'a Address,
    table: &'static Table,
    /// The other rows of the outing, from which some fields choose.
    all: &'a [TableRow],
    /// The row as it stands, or what is known of one to come.
    was: Option<&'a TableRow>,
    is_new: bool,
    tried: Tried<'a>,
}

/// A field on its way to the screen.
struct Asked<'a> {
    id: String,
    field: &'a Field,
    label: Markup,
    /// A hint, and what is wrong.
    about: Markup,
    /// The identifier of `about`, where there is anything.
    described: Option<String>,
    invalid: Option<&'static str>,
    /// What stands in it.
    shown: Vec<String>,
}

impl Filling<'_> {
    fn screen(&self) -> Screen {
        let Self { app, to, table, .. } = self;
        let name = app.word(&format!("app-row-{}", table.name));
        let title = match self.tried {
            Some(_) => format!("{} {name}", app.word("app-wrong")),
            None => name.clone(),
        };
        let there = !self.is_new && !table.is_single();
        let main = html! {
            h1 tabindex="-1" { (name) }
            @if let Some((_, faults)) = self.tried { (self.summary(faults)) }
            form.fill method="post" action=(to.link()) {
                @for field in table.fields { (self.asked(field)) }
                button { (app.word("app-keep")) }
                @if there {
                    button.quiet name="take-out" value="yes" { (app.word("app-take-out")) }
                }
            }
        };
        Screen { title, main }
    }

    /// What is wrong, each a way to its field, in the order of the form; it takes the focus.
    fn summary(&self, faults: &Faults) -> Markup {
        let said = |fault: &Fault| self.app.words().catalogue.fault(fault).what;
        let fields = self.table.fields;
        let elsewhere = |fault: &&Fault| {
            fields.iter().all(|field| Some(field.name) != fault.at.field.as_deref())
        };
        html! {
            div.warned role="alert" tabindex="-1" {
                h2 { (self.app.word("app-wrong-head")) }
                ul {
                    @for (field, fault) in fields.iter().filter_map(|field| Some((field, of(field, faults)?))) {
                        li {
                            a href=(format!("#field-{}", field.name)) {
                                (self.app.label(self.table.name, field.name)) ": " (said(fault))
                            }
                        }
                    }
                    @for fault in faults.iter().filter(elsewhere) { li { (said(fault)) } }
                }
            }
        }
    }

    fn asked(&self, field: &Field) -> Markup {
        let Self { app, table, .. } = self;
        let id = format!("field-{}", field.name);
        let says = format!("{id}-says");
        let wrong = self.tried.and_then(|(_, faults)| of(field, faults));
        let wrong = wrong.map(|fault| app.words().catalogue.fault(fault));
        let hint = app.hint(table.name, field.name);
        let described = (hint.is_some() || wrong.is_some()).then(|| says.clone());
        let about = html! {
            @if described.is_some() {
                p.says id=(says) {
                    @if let Some(hint) = &hint { (hint) " " }
                    @if let Some(wrong) = &wrong { strong { (wrong.what) " " (wrong.mend) } }
                }
            }
        };
        let label = html! {
            (app.label(table.name, field.name))
            @if !field.needed { " " span.may { (app.word("app-may")) } }
        };
        let invalid = wrong.map(|_| "true");
        self.control(&Asked {
            id,
            field,
            label,
            about,
            described,
            invalid,
            shown: self.shown(field),
        })
    }

    fn shown(&self, field: &Field) -> Vec<String> {
        match self.tried {
            Some((form, _)) => form.all(field.name).into_iter().map(str::to_owned).collect(),
            None => {
                let known = self.was.and_then(|row| row.cells.get(field.name)).map(said);
                known.or_else(|| self.usual(field)).unwrap_or_default()
            }
        }
    }

    /// What is written down is mostly written down at once, by whoever leads.
    fn usual(&self, field: &Field) -> Option<Vec<String>> {
        let now = self.app.now();
        let said = match (field.kind, field.name) {
            _ if !self.is_new => return None,
            (Kind::Moment, _) => said(&Cell::Moment(now)),
            (Kind::Day, "on") => said(&Cell::Day(now.date())),
            (_, "by" | "cook") => vec![leader(self.all)],
            (_, "servings-a-day" | "days") => vec!["1".to_owned()],
            (_, "everybody") => vec!["yes".to_owned()],
            _ => return None,
        };
        Some(said)
    }

    fn control(&self, asked: &Asked<'_>) -> Markup {
        // What stands in a row is never lost for want of being offered.
        let choices = |choice| {
            let mut offered = self.app.choices(choice, self.all);
            let own = asked.shown.iter().filter(|said| !said.is_empty());
            for said in own {
                if offered.iter().all(|(word, _)| word != said) {
                    offered.push((said.clone(), said.clone()));
                }
            }
            offered
        };
        match asked.field.kind {
            Kind::YesNo => asked.answers("radio", &yes_no(self.app), None),
            Kind::Choices(choice) => {
                asked.answers("checkbox", &choices(choice), Some(&self.none_yet(choice)))
            }
            Kind::Choice(choice) if !choices(choice).is_empty() => {
                asked.select(&self.app.word("app-choose"), &choices(choice))
            }
            Kind::Lines | Kind::Plants | Kind::Wholes | Kind::Found | Kind::Amounts => {
                asked.lines()
            }
            Kind::Day => asked.input("date", None),
            Kind::Time => asked.input("time", None),
            Kind::Moment => asked.input("datetime-local", None),
            Kind::Whole => asked.input("text", Some("numeric")),
            // A phone's keys for numbers lack the sign of the west and the south.
            Kind::Number | Kind::Contact | Kind::Words | Kind::Plant | Kind::Choice(_) => {
                asked.input("text", None)
            }
        }
    }

    /// That there is none to choose, and where one is written down.
    fn none_yet(&self, choice: Choice) -> Markup {
        let table = match choice {
            Choice::Of(table) => Some(table),
            Choice::Picker => Some("participant"),
            _ => None,
        };
        html! {
            p { (self.app.word("app-none-yet")) }
            @if let (Some(table), Address::Row(book, ..)) = (table, self.to) {
                p.alone {
                    a href=(Address::of_new(book, table).link()) {
                        (self.app.word(&format!("app-row-{table}")))
                    }
                }
            }
        }
    }
}

fn of<'a>(field: &Field, faults: &'a Faults) -> Option<&'a Fault> {
    faults.iter().find(|fault| fault.at.field.as_deref() == Some(field.name))
}

fn yes_no(app: &App) -> Vec<(String, String)> {
    let said = |word: &str| (word.to_owned(), app.word(&format!("app-{word}")));
    vec![said("yes"), said("no"), (String::new(), app.word("app-not-known"))]
}

impl Asked<'_> {
    fn first(&self) -> &str {
        self.shown.first().map(String::as_str).unwrap_or_default()
    }

    /// Its label above whatever takes the answer.
    fn labelled(&self, control: &Markup) -> Markup {
        html! { div.field { label for=(self.id) { (self.label) } (self.about) (control) } }
    }

    fn input(&self, kind: &str, mode: Option<&str>) -> Markup {
        self.labelled(&html! {
            input id=(self.id) name=(self.field.name) type=(kind) value=(self.first())
                inputmode=[mode] autocomplete="off" aria-describedby=[&self.described]
                aria-invalid=[self.invalid];
        })
    }

    fn lines(&self) -> Markup {
        self.labelled(&html! {
            textarea id=(self.id) name=(self.field.name) rows="3"
                aria-describedby=[&self.described] aria-invalid=[self.invalid] {
                (self.shown.join("\n"))
            }
        })
    }

    fn select(&self, choose: &str, choices: &[(String, String)]) -> Markup {
        self.labelled(&html! {
            select id=(self.id) name=(self.field.name)
                aria-describedby=[&self.described] aria-invalid=[self.invalid] {
                option value="" { (choose) }
                @for (word, says) in choices {
                    option value=(word) selected[word == self.first()] { (says) }
                }
            }
        })
    }

    /// Answers below each other, each large enough to tap.
    fn answers(&self, kind: &str, answers: &[(String, String)], none: Option<&Markup>) -> Markup {
        let unsaid = |word: &str| kind == "radio" && word.is_empty() && self.shown.is_empty();
        let chosen = |word: &str| unsaid(word) || self.shown.iter().any(|one| one == word);
        html! {
            fieldset.field id=(self.id) {
                legend { (self.label) }
                (self.about)
                @if let Some(none) = none.filter(|_| answers.is_empty()) { (none) }
                @for (word, says) in answers {
                    label.answer {
                        input type=(kind) name=(self.field.name) value=(word) checked[chosen(word)];
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
        let metric = [own, any].into_iter().find(|id| self.has(id))?;
        let other = format!("{metric}-not-metric");
        let is_metric = self.words().catalogue.habits().measures == Measures::Metric;
        Some(self.word(if is_metric || !self.has(&other) { &metric } else { &other }))
    }

    /// The stages that the herbal tells apart, of the plants that grow at the stands of an outing or
    /// are made into something.
    fn stages(&self, all: &[TableRow]) -> BTreeSet<String> {
        let named = all.iter().filter_map(|row| match row.cells.get("plant") {
            Some(Cell::Words(plant)) => self.herbal().flora.find(plant).ok(),
            _ => None,
        });
        let plants: BTreeSet<&str> = named.map(|sheet| sheet.name.as_str()).collect();
        let rows = self.herbal().uses.table.parts.iter();
        let own = rows.filter(|row| plants.contains(row.taxon.as_str()));
        own.filter_map(|row| row.stage.clone()).collect()
    }

    /// The words of a list with what they say to people.
    fn choices(&self, choice: Choice, all: &[TableRow]) -> Vec<(String, String)> {
        let said = |prefix: &str, words: &mut dyn Iterator<Item = &str>| {
            let says = |word: &str| {
                let id = format!("{prefix}{word}");
                let says = if self.has(&id) { self.word(&id) } else { word.replace('-', " ") };
                (word.to_owned(), says)
            };
            words.map(says).collect()
        };
        let rules = &self.herbal().land.rules;
        let recipes = &self.herbal().kitchen.recipes;
        match choice {
            Choice::Region => said("region-", &mut Region::ALL.iter().map(|one| one.word())),
            Choice::Purpose => said("app-purpose-", &mut Purpose::ALL.iter().map(|one| one.word())),
            Choice::Level => said("app-level-", &mut Level::NAMED.iter().map(|(word, _)| *word)),
            Choice::Kitchen => {
                said("app-kitchen-", &mut MeasureSystem::ALL.iter().map(|one| one.word()))
            }
            Choice::Land => {
                let says = |(id, is): (&String, &String)| {
                    (id.clone(), format!("{}: {is}", id.replace('-', " ")))
                };
                rules.lands.iter().map(says).collect()
            }
            Choice::Jurisdiction => {
                let all = rules.jurisdictions.iter();
                all.map(|(id, place)| (id.clone(), place.name.clone())).collect()
            }
            Choice::Reaches => {
                let all = ["emergency", "poison-information", "other"];
                said("plan-reaches-", &mut all.into_iter())
            }
            Choice::Early => said("app-early-", &mut ["same-way", "onward"].into_iter()),
            Choice::Hazard => {
                let ids: BTreeSet<_> =
                    rules.hazards.iter().map(|hazard| hazard.id.as_str()).collect();
                said("app-hazard-", &mut ids.into_iter())
            }
            Choice::Part => said("part-", &mut Part::ALL.iter().map(|one| one.word())),
            Choice::Recipe => {
                let mut all: Vec<_> =
                    recipes.iter().map(|(id, one)| (id.clone(), one.name.clone())).collect();
                all.sort_by(|(_, one), (_, other)| one.cmp(other));
                all
            }
            Choice::State => said("app-state-", &mut ["fresh", "dried"].into_iter()),
            Choice::Stage => self.stages(all).into_iter().map(|one| (one.clone(), one)).collect(),
            Choice::Picker => {
                let may = |row: &&TableRow| ["reader", "participant"].contains(&&*row.table);
                let named = all.iter().filter(may);
                named.map(|row| (row.key.clone(), called(self, row))).collect()
            }
            Choice::Specimen => {
                let seen = all.iter().filter(|row| row.table == LOOKS);
                let named =
                    seen.filter_map(|row| row.cells.get("specimen")).flat_map(crate::fields::said);
                let once: BTreeSet<String> = named.collect();
                once.into_iter().map(|name| (name.clone(), name)).collect()
            }
            Choice::Of(table) => {
                let named = all.iter().filter(|row| row.table == table);
                named.map(|row| (row.key.clone(), called(self, row))).collect()
            }
        }
    }
}
