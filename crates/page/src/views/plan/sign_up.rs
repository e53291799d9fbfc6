//! The list for those who come: what the outing cannot do without, and until when it is kept. It
//! asks nothing about health.

use super::section;
use crate::{Block, Column, Format, Kind, Page, Prose, Table, Words};
use desk::{Asked, Kept, Plan, SignUp, Until};
use ground::Text;

/// The columns of the list, in order.
const COLUMNS: [&str; 11] = [
    "view-sign-name",
    "view-sign-contact",
    "view-sign-grown",
    "view-sign-13",
    "view-sign-9",
    "view-sign-4",
    "view-sign-0",
    "view-sign-emergency",
    "view-sign-price",
    "view-sign-read",
    "view-sign-photo",
];

/// What it is called.
pub(super) fn title(plan: &Plan) -> Text {
    Text::new("view-sign-title").with("name", plan.head.name.as_str())
}

/// The list, with the names that are known and room for the others.
#[must_use]
pub(super) fn sign_up(plan: &Plan, words: &Words<'_>) -> Page {
    let list = &plan.sign_up;
    let paras = ["view-sign-photo-says", "view-sign-not-here"].map(|id| words.para(&Text::new(id)));
    words
        .page(Kind::Screen, &title(plan))
        .on(Format::Wide)
        .with([words.para(&Text::new("view-sign-says")), words.para(&taken(list))])
        .with([table(list, words)])
        .with(prices(list, words))
        .with(paras)
        .with(section("view-sign-terms", vec![terms(list, words)], words))
        .with(section("view-sign-kept", vec![kept(list, words)], words))
}

fn taken(list: &SignUp) -> Text {
    let text = match list.places {
        Some(places) => Text::new("view-sign-places").with("places", places),
        None => Text::new("view-sign-places-open"),
    };
    text.with("known", list.known.len())
}

fn table(list: &SignUp, words: &Words<'_>) -> Block {
    let known = list.known.iter().map(|name| row(Prose::new().said(name)));
    let free = (0..list.lines).map(|_| row(Prose::new().blank()));
    Block::Table(Table {
        caption: words.word("view-sign-caption").into(),
        columns: COLUMNS.map(|id| Column::words(words.word(id))).into(),
        rows_have_heads: true,
        rows: known.chain(free).collect(),
    })
}

/// A line: what is known of it, and room for the rest.
fn row(name: Prose) -> Vec<Prose> {
    let rest = COLUMNS.iter().skip(1).map(|id| match *id {
        "view-sign-read" => "☐".into(),
        _ => Prose::new().blank(),
    });
    std::iter::once(name).chain(rest).collect()
}

/// The prices there are to choose from.
fn prices(list: &SignUp, words: &Words<'_>) -> Option<Block> {
    let currency = list.currency.filter(|_| !list.prices.is_empty())?;
    let said: Vec<_> =
        list.prices.iter().map(|price| words.catalogue.money(*price, currency)).collect();
    let text = Text::new("view-sign-prices").with("prices", words.catalogue.list(&said));
    Some(words.para(&text))
}

fn terms(list: &SignUp, words: &Words<'_>) -> Block {
    match &list.terms {
        Some(terms) => Block::Para(Prose::new().said(terms)),
        None => Block::lines(words.word("view-sign-terms-lines"), 3),
    }
}

fn kept(list: &SignUp, words: &Words<'_>) -> Block {
    let columns = ["view-sign-asked", "view-sign-why", "view-sign-until"];
    let row = |kept: &Kept| {
        let asked = asked(kept.what);
        let said = |what: &str| words.word(&format!("view-sign-{what}-{asked}")).into();
        vec![said("asked"), said("why"), until(kept.until, words)]
    };
    Block::Table(Table {
        caption: words.word("view-sign-kept-caption").into(),
        columns: columns.map(|id| Column::words(words.word(id))).into(),
        rows_have_heads: true,
        rows: list.kept.iter().map(row).collect(),
    })
}

fn asked(what: Asked) -> &'static str {
    match what {
        Asked::Name => "name",
        Asked::Contact => "contact",
        Asked::Party => "party",
        Asked::EmergencyContact => "emergency-contact",
        Asked::Price => "price",
        Asked::Terms => "terms",
        Asked::Photo => "photo",
    }
}

fn until(until: Until, words: &Words<'_>) -> Prose {
    match until {
        Until::Day(day) => words.catalogue.day(day).into(),
        Until::AfterLastJarDays(days) => {
            words.prose(&Text::new("view-sign-until-jar").with("days", days))
        }
        Until::Accounts => words.word("view-sign-until-accounts").into(),
        Until::Pictures => words.word("view-sign-until-pictures").into(),
    }
}
