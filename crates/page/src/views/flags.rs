//! Flags for a device that knows nobody's answers: numbers, and never why.

use crate::{Column, Kind, Page, Prose, Table, Words};
use ground::Text;
use journal::Flag;

pub(super) fn page(flags: &[Flag], words: &Words<'_>) -> Page {
    let page = words.page(Kind::Screen, &Text::new("view-flags-title"));
    if flags.is_empty() {
        return page.with([words.para(&Text::new("view-flags-none"))]);
    }
    let heads = ["view-flags-person", "view-flags-wish", "view-flags-says"];
    let table = Table {
        caption: words.word("view-flags-caption").into(),
        columns: heads.into_iter().map(|id| Column::words(words.word(id))).collect(),
        rows_have_heads: true,
        rows: flags.iter().map(|flag| row(flag, words)).collect(),
    };
    page.with([crate::Block::Table(table)])
}

fn row(flag: &Flag, words: &Words<'_>) -> Vec<Prose> {
    let says = match flag.servings_a_day.min(flag.days) {
        0 => words.word("view-flags-not").into(),
        _ => words.prose(
            &Text::new("view-flags-most")
                .with("count", flag.servings_a_day)
                .with("days", flag.days),
        ),
    };
    vec![Prose::new().said(&flag.participant), Prose::new().said(&flag.make), says]
}
