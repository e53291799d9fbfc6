//! What may go from each stand, and how the lots that came in stand.

use super::super::allowance;
use super::deeper;
use crate::{Block, Column, Prose, Table, Words};
use desk::{LotPlan, Plan, TakePlan};
use ground::{Text, Unit};
use journal::Fitness;

pub(super) fn takes(plan: &Plan, words: &Words<'_>) -> Vec<Block> {
    deeper(allowance::blocks(&plan.takes, words))
}

pub(in crate::views) fn lots(lots: &[LotPlan], words: &Words<'_>) -> Vec<Block> {
    if lots.is_empty() {
        return Vec::new();
    }
    let columns =
        ["view-plan-lot", "view-plan-lot-from", "view-plan-lot-mass", "view-plan-lot-state"];
    let table = Table {
        caption: words.word("view-plan-lots-says").into(),
        columns: columns.map(|id| Column::words(words.word(id))).into(),
        rows_have_heads: true,
        rows: lots.iter().map(|lot| row(lot, words)).collect(),
    };
    let sortings: Vec<_> = lots.iter().flat_map(|lot| sortings(lot, words)).collect();
    let told = (!sortings.is_empty()).then(|| Block::bullets(sortings));
    std::iter::once(Block::Table(table)).chain(told).collect()
}

fn row(lot: &LotPlan, words: &Words<'_>) -> Vec<Prose> {
    vec![
        Prose::new().said(&lot.name),
        Prose::new().said(&lot.stands.join(", ")),
        words.amount(lot.mass.g(), Unit::Gram),
        words.prose(&state(lot, words)),
    ]
}

/// Whether a lot may be used.
pub(super) fn state(lot: &LotPlan, words: &Words<'_>) -> Text {
    match &lot.state.fitness {
        Fitness::Unsorted => Text::new("view-plan-lot-unsorted"),
        Fitness::Sorted { by, .. } => {
            Text::new("view-plan-lot-sorted").with("by", words.catalogue.list(by))
        }
        Fitness::Held { lot, what } => Text::new("view-plan-lot-held")
            .with("lot", lot.as_str())
            .with("found", words.catalogue.list(what)),
    }
}

/// Every time somebody went through a lot: when, who, what was found.
pub(super) fn sortings<'a>(
    lot: &'a LotPlan,
    words: &'a Words<'_>,
) -> impl Iterator<Item = Prose> + 'a {
    lot.sortings.iter().map(|(at, sorting)| {
        let at = at.map_or_else(|| words.word("unknown"), |at| super::day::clock(at.time()));
        let found: Vec<_> = sorting.found.iter().map(|found| found.what.clone()).collect();
        let text = Text::new("view-plan-sorting")
            .with("at", at)
            .with("lot", lot.name.as_str())
            .with("by", words.catalogue.list(&sorting.sorters))
            .with("count", sorting.pieces)
            .with("found", words.catalogue.list(&found));
        words.prose(&text)
    })
}

/// The rule that leaves least at a stand, in words.
pub(super) fn binding(take: &TakePlan, words: &Words<'_>) -> Option<Prose> {
    let rule = take.allowance.binding.as_ref()?;
    let bound = take.allowance.candidates.iter().find(|candidate| candidate.rule == *rule)?;
    Some(words.prose(&bound.says))
}
