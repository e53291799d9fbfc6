//! An outing: what it leads to, its plan, its pages.

use super::journal::last_done;
use super::rows::tables;
use super::{Screen, at_fault, nowhere, rows, viewed};
use crate::App;
use crate::address::Address;
use crate::books::day_of;
use crate::visit::Moment;
use desk::device::{Reply, Request};
use desk::{About, Cell, Plan, TableRow, usual_paper};
use ground::{Faults, Text};
use jiff::civil::Date;
use maud::{Markup, PreEscaped, html};
use page::{Way, html_body, planned_pages};

/// What an outing is called, and when it is.
pub(super) fn called(app: &App, rows: &[TableRow]) -> (String, String) {
    let outing = rows.iter().find(|row| row.table == "outing");
    let name = match outing.and_then(|row| row.cells.get("name")) {
        Some(Cell::Words(name)) => name.clone(),
        _ => app.word("app-outing-unnamed"),
    };
    (name, day_of(rows).map(|day| app.day(day)).unwrap_or_default())
}

/// How many days lie between; less than none for one that is over.
pub(super) fn days_until(today: Date, day: Date) -> i32 {
    today.until(day).map_or(0, |span| span.get_days())
}

/// When an outing is from today on: a clock or a date that is a year off stands out here.
fn from_today(app: &App, rows: &[TableRow]) -> String {
    let Some(day) = day_of(rows) else { return String::new() };
    let days = days_until(app.today(), day);
    let id = if days < 0 { "app-days-ago" } else { "app-days-until" };
    app.say(&Text::new(id).with("count", days.unsigned_abs()))
}

/// The outing, and the ways from it.
pub(crate) fn outing(app: &App, book: &str) -> Screen {
    if let Some(faults) = app.books.wrong_with(book) {
        return unread(app, book, faults);
    }
    let Some(rows) = app.books.rows(book) else { return nowhere(app, book) };
    let (title, day) = called(app, rows);
    let way = |to: Address, id: &str| html! { li { a href=(to.link()) { (app.word(id)) } } };
    let book = || book.to_owned();
    let main = html! {
        h1 tabindex="-1" { (title) }
        p { (day) " " (from_today(app, rows)) }
        ul.ways role="list" {
            (way(Address::InHand(book()), "app-in-hand"))
            (way(Address::Allowance(book()), "app-allowance"))
            (way(Address::Basket(book()), "app-basket"))
            (way(Address::Kitchen(book()), "app-kitchen"))
            (way(Address::Serving(book()), "app-serving"))
            (way(Address::Plan(book()), "app-plan"))
            (way(Address::Pages(book()), "app-pages"))
            (way(Address::Page(book(), CARD.to_owned()), "app-emergency"))
        }
        (last_done(app, &book()))
        h2 { (app.word("app-tables")) }
        (tables(app, &book(), rows))
        h2 { (app.word("app-hand-out")) }
        p { (app.word("app-hand-out-says")) }
        p.did { (app.counted("app-unsaved", app.books.unsaved(&book()))) }
        ul.ways role="list" {
            (way(Address::OutingFile(book()), "app-outing-file"))
            (way(Address::Records(book()), "app-records"))
        }
    };
    Screen { title, main }
}

/// A book of which a line cannot be read: what is wrong, and the way to save what there is.
fn unread(app: &App, book: &str, faults: &Faults) -> Screen {
    let title = app.word("app-unread");
    let main = html! {
        h1 tabindex="-1" { (title) }
        p { (app.word("app-unread-says")) }
        p.faults role="alert" { (app.words().catalogue.faults(faults)) }
        p { a.button href=(Address::Records(book.to_owned()).link()) { (app.word("app-records")) } }
    };
    Screen { title, main }
}

/// The plan, open questions first.
pub(crate) fn plan(app: &App, book: &str) -> Screen {
    let Some(file) = app.file_with_answers(book) else { return nowhere(app, book) };
    let ways = |about: About, of: &str| ways(app, book, about, of);
    match app.ask(Request::Plan { files: vec![file], reasons: false }) {
        Ok(reply) => {
            viewed(app, &reply, &app.words().with_ways(&ways), &back(app, book), &html! {})
        }
        Err(faults) => at_fault(app, &faults),
    }
}

/// The screens where an open question of a book is answered.
fn ways(app: &App, book: &str, about: About, of: &str) -> Vec<Way> {
    let way = |to: Address, says: String| Way { says, to: to.link() };
    let screen = |to: fn(String) -> Address, id: &str| way(to(book.to_owned()), app.word(id));
    let form = |table: &str, key: &str, says: String| {
        way(Address::Row(book.to_owned(), table.to_owned(), Some(key.to_owned())), says)
    };
    let single = |table: &str| form(table, "", app.word(&format!("app-table-{table}")));
    let new =
        |table: &str| way(Address::of_new(book, table), app.word(&format!("app-row-{table}")));
    let row = |table: &str| {
        let mut rows = app.books.rows(book).unwrap_or_default().iter();
        let row = rows.find(|row| row.table == table && row.key == of)?;
        Some(form(table, of, rows::called(app, row)))
    };
    match about {
        About::Emergency if of.is_empty() => vec![single("emergency")],
        About::Emergency => vec![row("site").unwrap_or_else(|| {
            way(to_number(app, book, of), app.word(&format!("plan-reaches-{of}")))
        })],
        About::WayBack => vec![single("way-back"), single("outing")],
        About::HeldLot | About::Sorting => vec![screen(Address::Basket, "app-basket")],
        About::Plant => vec![screen(Address::InHand, "app-in-hand")],
        About::Take | About::Amount => {
            row("stand").into_iter().chain([new("permission"), new("survey")]).collect()
        }
        About::Make => {
            row("make").into_iter().chain([screen(Address::Kitchen, "app-kitchen")]).collect()
        }
        About::Handed | About::Person | About::Confirmation => {
            vec![screen(Address::Serving, "app-serving")]
        }
    }
}

/// The numbers where one of this kind is written down, else the form of one.
fn to_number(app: &App, book: &str, kind: &str) -> Address {
    let what = Cell::Words(kind.to_owned());
    let is = |row: &TableRow| row.table == "number" && row.cells.get("what") == Some(&what);
    if app.books.rows(book).unwrap_or_default().iter().any(is) {
        return Address::Rows(book.to_owned(), "number".to_owned());
    }
    Address::RowWith(book.to_owned(), "number".to_owned(), ("what".to_owned(), kind.to_owned()))
}

pub(super) fn back(app: &App, book: &str) -> Markup {
    let rows = app.books.rows(book).unwrap_or_default();
    html! {
        p.back.alone { a href=(Address::Outing(book.to_owned()).link()) { (called(app, rows).0) } }
    }
}

/// The pages of the plan, by name.
pub(crate) fn pages(app: &App, book: &str) -> Screen {
    let plan = match planned(app, book) {
        None => return nowhere(app, book),
        Some(Err(faults)) => return at_fault(app, &faults),
        Some(Ok(plan)) => plan,
    };
    let sheets = app.sheets(&plan);
    let title = app.word("app-pages");
    let main = html! {
        h1 tabindex="-1" { (title) }
        (back(app, book))
        ul.ways.pages role="list" {
            @for page in planned_pages(&plan, &sheets, usual_paper(plan.head.region)) {
                @let title = page.title(&app.words());
                li {
                    a href=(Address::Page(book.to_owned(), page.name.clone()).link()) {
                        (title) @if page.name == WALLET { ", " (app.word("app-to-fold")) }
                    }
                    (as_pdf(app, &Address::Pages(book.to_owned()), &page.name, &title))
                }
            }
        }
    };
    Screen { title, main }
}

/// One page, to be read or printed.
pub(crate) fn page(app: &App, book: &str, name: &str) -> Screen {
    let plan = match planned(app, book) {
        None => return nowhere(app, book),
        Some(Err(faults)) => return at_fault(app, &faults),
        Some(Ok(plan)) => plan,
    };
    let sheets = app.sheets(&plan);
    let mut all = planned_pages(&plan, &sheets, usual_paper(plan.head.region)).into_iter();
    let Some(found) = all.find(|page| page.name == name) else { return nowhere(app, name) };
    let page = found.write(&app.words());
    let title = page.title.plain();
    let main = html! {
        p.back.alone { a href=(Address::Pages(book.to_owned()).link()) { (app.word("app-pages")) } }
        div.to-paper {
            button.print type="button" { (app.word("app-print")) }
            (as_pdf(app, &Address::Page(book.to_owned(), name.to_owned()), name, &title))
        }
        h1 tabindex="-1" { (title) }
        (PreEscaped(html_body(&page)))
    };
    Screen { title, main }
}

/// The field of a form that names the page to be made a PDF.
pub(crate) const PAGE: &str = "page";

/// A page as PDF, by the program that serves the app; where none does, the style hides it.
fn as_pdf(app: &App, at: &Address, name: &str, title: &str) -> Markup {
    let says = Text::new("app-as-pdf-of").with("page", title);
    html! {
        form.as-pdf method="post" action=(at.link()) {
            button name=(PAGE) value=(name) aria-label=(app.say(&says)) { (app.word("app-as-pdf")) }
        }
    }
}

/// The page for whoever needs help.
const CARD: &str = "emergency-card";
/// The same card on a smaller piece of paper.
const WALLET: &str = "emergency-wallet";

/// The emergency card of the one outing of today, or the ways to those of all.
pub(crate) fn emergency(app: &App, at: &Moment) -> Screen {
    let is_today = |rows: &[TableRow]| day_of(rows) == Some(at.now.date());
    let today: Vec<_> = app.books.iter().filter(|(_, rows)| is_today(rows)).collect();
    if let [(book, _)] = today.as_slice() {
        return page(app, book, CARD);
    }
    let title = app.word("app-emergency");
    let main = html! {
        h1 tabindex="-1" { (title) }
        p { (app.word("app-emergency-says")) }
        ul.ways role="list" {
            @for (book, rows) in app.books.iter() {
                @let (name, day) = called(app, rows);
                li {
                    a href=(Address::Page(book.to_owned(), CARD.to_owned()).link()) {
                        (name) @if !day.is_empty() { ", " (day) }
                    }
                }
            }
        }
    };
    Screen { title, main }
}

/// The plan of a book; none where there is no such book.
fn planned(app: &App, book: &str) -> Option<Result<Box<Plan>, Faults>> {
    let files = vec![app.file_with_answers(book)?];
    match app.ask(Request::Plan { files, reasons: false }) {
        Ok(Reply::Plan(plan)) => Some(Ok(plan)),
        Ok(_) => None,
        Err(faults) => Some(Err(faults)),
    }
}
