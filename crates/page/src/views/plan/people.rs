//! Who may have how much, and never why.

use super::super::serving;
use crate::{Block, Column, Prose, Table, Words};
use desk::{Handed, MakePlan, Plan};
use ground::Text;
use std::collections::{BTreeMap, BTreeSet};

pub(super) fn people(plan: &Plan, words: &Words<'_>) -> Vec<Block> {
    if plan.makes.is_empty() || plan.people.is_empty() {
        return vec![words.para(&Text::new("view-serving-nobody"))];
    }
    let says = words.para(&Text::new("view-serving-proposal"));
    let dishes = plan.makes.iter().map(|wish| dish(wish, words));
    vec![says, table(plan, words), Block::bullets(dishes)]
        .into_iter()
        .chain(provisos(plan, words))
        .collect()
}

/// People down, dishes across.
pub(super) fn table(plan: &Plan, words: &Words<'_>) -> Block {
    let dishes = plan.makes.iter().map(|wish| Column::words(Prose::new().said(&wish.called)));
    let row = |(name, called): (&String, &String)| {
        let cells = plan.makes.iter().map(|wish| cell(wish.handed_out.get(name), words));
        std::iter::once(Prose::new().said(called)).chain(cells).collect()
    };
    Block::Table(Table {
        caption: words.word("view-serving-caption").into(),
        columns: std::iter::once(Column::words(words.word("view-serving-person")))
            .chain(dishes)
            .collect(),
        rows_have_heads: true,
        rows: plan.people.iter().map(row).collect(),
    })
}

/// What one person may be handed, with a tick where a named person stands for it.
pub(super) fn cell(handed: Option<&Handed>, words: &Words<'_>) -> Prose {
    let Some(handed) = handed else { return words.word("view-serving-not-for").into() };
    let tick = if handed.confirmed_by.is_some() { " ✓" } else { "" };
    let had = Text::new("view-serving-had").with("count", handed.had);
    let had = (handed.had > 0).then(|| words.prose(&had));
    serving::outcome(handed.outcome, words).text(tick).then(had.unwrap_or_default())
}

/// Who stands for decisions on a dish, and for how many.
fn confirmed(wish: &MakePlan, words: &Words<'_>) -> Prose {
    let mut by: BTreeMap<&str, usize> = BTreeMap::new();
    for name in wish.handed_out.values().filter_map(|handed| handed.confirmed_by.as_deref()) {
        *by.entry(name).or_default() += 1;
    }
    let said = by.into_iter().map(|(name, count)| {
        let text = Text::new("view-plan-stands-for").with("by", name).with("count", count);
        Prose::new().text(" ").then(words.prose(&text))
    });
    said.fold(Prose::new(), Prose::then)
}

/// How many people stand at each outcome, and what there is where nobody may.
fn dish(wish: &MakePlan, words: &Words<'_>) -> Prose {
    let counts = wish.counts.iter().map(|(strictness, count)| {
        let id = match strictness {
            dose::Strictness::NoReasonFound => "view-serving-count-no-reason-found",
            dose::Strictness::AtMost => "view-serving-count-at-most",
            dose::Strictness::AskFirst => "view-serving-count-ask-first",
            dose::Strictness::Withhold => "view-serving-count-withhold",
        };
        words.catalogue.say(&Text::new(id).with("count", *count))
    });
    let counts = words.catalogue.list(&counts.collect::<Vec<_>>());
    let says = Prose::new()
        .said_strong(&wish.called)
        .text(": ")
        .text(&counts)
        .text(".")
        .then(confirmed(wish, words));
    if wish.instead.is_empty() {
        return says;
    }
    let instead =
        Text::new("view-serving-instead").with("others", words.catalogue.list(&wish.instead));
    says.text(" ").then(words.prose(&instead))
}

/// What must hold first, each once.
pub(super) fn provisos(plan: &Plan, words: &Words<'_>) -> Vec<Block> {
    let all: BTreeSet<&Text> = plan.makes.iter().flat_map(|wish| &wish.provisos).collect();
    if all.is_empty() {
        return Vec::new();
    }
    vec![words.para(&Text::new("view-plan-provided")), words.bullets(all)]
}
