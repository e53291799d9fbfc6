//! Plants of the herbal, one a row.

use crate::{Block, Column, Kind, Page, Prose, Table, Words};
use desk::{ListReply, ListRow};
use ground::{Harm, Text};
use herbal::Match;

pub(super) fn page(reply: &ListReply, words: &Words<'_>) -> Page {
    let page = words.page(Kind::Screen, &title(reply));
    if reply.plants.is_empty() {
        return page.with([words.para(&Text::new("plants-none-mend"))]);
    }
    page.with([Block::Table(Table {
        caption: words.word("plants-caption").into(),
        columns: ["plants-name", "plants-common", "plants-family", "plants-harm"]
            .into_iter()
            .map(|id| Column::words(words.word(id)))
            .collect(),
        rows_have_heads: false,
        rows: reply.plants.iter().map(|plant| row(plant, words)).collect(),
    })])
}

fn title(reply: &ListReply) -> Text {
    let misspelt = |plant: &ListRow| {
        plant.hit.as_ref().is_some_and(|hit| matches!(hit.fit, Match::Letters(_)))
    };
    let id = match reply.plants.as_slice() {
        _ if reply.words.is_empty() => "plants-all",
        [] => "plants-none",
        plants if plants.iter().all(misspelt) => "plants-near",
        _ => "plants-fit",
    };
    Text::new(id).with("count", reply.plants.len()).with("words", reply.words.as_str())
}

fn row(plant: &ListRow, words: &Words<'_>) -> Vec<Prose> {
    vec![
        Prose::new().taxon(&plant.name),
        Prose::new().said(&plant.common),
        Prose::new().said(&plant.family),
        harm(plant.harm, words).into(),
    ]
}

/// The word for a harm, short enough for a column.
pub(super) fn harm(harm: Harm, words: &Words<'_>) -> String {
    words.word(&format!("plants-harm-{}", harm.word()))
}
