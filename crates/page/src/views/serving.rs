//! Who may have what: people and dishes, what must hold first, and, where it was asked for, why.

use crate::{Block, Column, Kind, Level, Page, Prose, Table, Words};
use desk::{Handed, MakePlan, SealedRow, ServingReply};
use dose::{Outcome, Reason};
use ground::Text;

pub(super) fn page(reply: &ServingReply, words: &Words<'_>) -> Page {
    let kind = if reply.sealed.is_some() { Kind::Sealed } else { Kind::Screen };
    let page = words.page(kind, &Text::new("view-serving-title"));
    if reply.makes.is_empty() || reply.people.is_empty() {
        return page.with([words.para(&Text::new("view-serving-nobody"))]);
    }
    page.with([table(reply, words), words.para(&Text::new("view-serving-proposal"))])
        .with(reply.makes.iter().flat_map(|make| dish(make, words)))
        .with(reply.sealed.iter().flat_map(|rows| sealed(reply, rows, words)))
}

/// People down, dishes across.
fn table(reply: &ServingReply, words: &Words<'_>) -> Block {
    let dishes = reply.makes.iter().map(|make| Column::words(Prose::new().said(&make.called)));
    let person = Column::words(words.word("view-serving-person"));
    let row = |(name, called): (&String, &String)| {
        let cells = reply.makes.iter().map(|make| cell(make.handed_out.get(name), words));
        std::iter::once(Prose::new().said(called)).chain(cells).collect()
    };
    Block::Table(Table {
        caption: words.word("view-serving-caption").into(),
        columns: std::iter::once(person).chain(dishes).collect(),
        rows_have_heads: true,
        rows: reply.people.iter().map(row).collect(),
    })
}

/// What one person may be handed, in few words.
pub(super) fn cell(handed: Option<&Handed>, words: &Words<'_>) -> Prose {
    let Some(handed) = handed else { return words.word("view-serving-not-for").into() };
    let by = handed.confirmed_by.as_deref();
    let by = by.map(|by| words.prose(&Text::new("view-serving-confirmed").with("by", by)));
    let had = Text::new("view-serving-had").with("count", handed.had);
    let had = (handed.had > 0).then(|| words.prose(&had));
    let flag = handed.by_flag.then(|| words.prose(&Text::new("view-serving-by-flag")));
    let parts = [flag, by, had].into_iter().flatten();
    parts.fold(outcome(handed.outcome, words), Prose::then)
}

/// An outcome in few words; *withhold* and *ask first* stand out by weight.
pub(super) fn outcome(outcome: Outcome, words: &Words<'_>) -> Prose {
    match outcome {
        Outcome::Withhold => Prose::new().strong(&words.word("view-serving-withhold")),
        Outcome::AskFirst => Prose::new().strong(&words.word("view-serving-ask-first")),
        Outcome::AtMost { servings_a_day, days } => {
            bounded("view-serving-at-most", servings_a_day, days, words)
        }
        Outcome::NoReasonFound { servings_a_day, days } => {
            bounded("view-serving-no-reason", servings_a_day, days, words)
        }
    }
}

fn bounded(id: &str, servings: Option<u32>, days: Option<u32>, words: &Words<'_>) -> Prose {
    let servings = servings.map(|n| Text::new("view-serving-servings").with("count", n));
    let days = days.map(|n| Text::new("view-serving-days").with("count", n));
    let bounds: Vec<_> =
        servings.iter().chain(&days).map(|bound| words.catalogue.say(bound)).collect();
    if bounds.is_empty() {
        return words.word(id).into();
    }
    words.prose(&Text::new(format!("{id}-within")).with("bounds", bounds.join(", ")))
}

/// What must hold for a dish, how many stand at each outcome, and what there is instead.
fn dish(make: &MakePlan, words: &Words<'_>) -> Vec<Block> {
    let head = Text::new("view-serving-dish")
        .with("name", make.called.as_str())
        .with("part", Text::new(format!("part-{}", make.part.word())))
        .taxon("plant", &make.plant)
        .with("count", make.servings_a_day);
    let mut blocks = vec![words.heading(Level::Section, &head)];
    let counts: Vec<_> = make
        .counts
        .iter()
        .map(|(strictness, count)| {
            let id = serde_json::to_value(strictness).ok();
            let id = id.as_ref().and_then(|id| id.as_str()).unwrap_or_default();
            words
                .catalogue
                .say(&Text::new(format!("view-serving-count-{id}")).with("count", *count))
        })
        .collect();
    if !counts.is_empty() {
        blocks.push(Block::para(words.catalogue.list(&counts)));
    }
    if let ground::Answer::Refused(refusal) = &make.brew {
        blocks.push(words.refusal(refusal));
    }
    if !make.provisos.is_empty() {
        blocks.push(words.bullets(&make.provisos));
    }
    if !make.instead.is_empty() {
        let instead =
            Text::new("view-serving-instead").with("others", words.catalogue.list(&make.instead));
        blocks.push(words.para(&instead));
    }
    blocks
}

/// Why, person by person. Only on the sealed list.
fn sealed(reply: &ServingReply, rows: &[SealedRow], words: &Words<'_>) -> Vec<Block> {
    let heading = words.heading(Level::Section, &Text::new("view-serving-why"));
    let why = super::plan::reasons((&reply.people, &reply.makes), rows, words);
    std::iter::once(heading).chain(why).collect()
}

pub(super) fn why(reason: &Reason, words: &Words<'_>) -> Prose {
    let says = words.prose(&reason.text);
    match &reason.from {
        Some(from) => says.text(" (").then(words.sourcing(from)).text(")"),
        None => says,
    }
}
