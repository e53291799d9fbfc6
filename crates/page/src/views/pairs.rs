//! Pairs of what is gathered and what is dangerous, the worst first.

use super::compare::months;
use super::list::harm;
use crate::{Block, Column, Kind, Level, Page, Prose, Table, Words, whole};
use desk::{PairRow, PairsReply};
use ground::{Harm, Text};
use identify::pairs::Passes;
use std::collections::{BTreeMap, BTreeSet};

pub(super) fn page(reply: &PairsReply, words: &Words<'_>) -> Page {
    let title = Text::new("pairs-title").with("plants", reply.gathered).with("pairs", reply.count);
    let mut blocks = vec![words.para(&Text::new("pairs-says"))];
    if reply.never_determined > 0 {
        let never = Text::new("pairs-never-determined").with("count", reply.never_determined);
        blocks.push(words.para(&never));
    }
    blocks.push(counts(reply, words));
    blocks.push(words.heading(Level::Section, &Text::new("pairs-worst")));
    blocks.push(worst(reply, words));
    let left = reply.count - reply.pairs.len();
    if left > 0 {
        blocks.push(words.para(&Text::new("pairs-left-out").with("count", left)));
    }
    words.page(Kind::Screen, &title).with(blocks)
}

/// How many pairs of each harm pass after how many readings.
fn counts(reply: &PairsReply, words: &Words<'_>) -> Block {
    let harms: BTreeSet<_> =
        reply.counts.iter().map(|(harm, ..)| std::cmp::Reverse(*harm)).collect();
    let mut rows: BTreeMap<Passes, BTreeMap<Harm, usize>> = BTreeMap::new();
    for (harm, passes, count) in &reply.counts {
        rows.entry(*passes).or_default().insert(*harm, *count);
    }
    let number =
        |count: usize| Prose::new().number(&whole(i64::try_from(count).unwrap_or(i64::MAX)));
    let row = |(passes, of): (&Passes, &BTreeMap<Harm, usize>)| {
        let cells = harms.iter().map(|harm| number(of.get(&harm.0).copied().unwrap_or_default()));
        std::iter::once(Prose::from(said(*passes, words))).chain(cells).collect()
    };
    let heads = harms.iter().map(|one| Column::numbers(harm(one.0, words)));
    Block::Table(Table {
        caption: words.word("pairs-counts").into(),
        columns: std::iter::once(Column::words(words.word("pairs-passes"))).chain(heads).collect(),
        rows_have_heads: true,
        rows: rows.iter().map(row).collect(),
    })
}

fn worst(reply: &PairsReply, words: &Words<'_>) -> Block {
    let heads = ["target", "rival", "harm", "passes", "in-month", "tells", "seen"];
    let column = |id: &str| Column::words(words.word(&format!("pairs-{id}")));
    Block::Table(Table {
        caption: words.word("pairs-caption").into(),
        columns: heads.into_iter().map(column).collect(),
        rows_have_heads: false,
        rows: reply.pairs.iter().map(|pair| row(pair, words)).collect(),
    })
}

fn row(pair: &PairRow, words: &Words<'_>) -> Vec<Prose> {
    let rival = Prose::new().taxon(&pair.rival);
    let named = if pair.named { words.word("pairs-named") } else { String::new() };
    let tells = Text::new("pairs-tells-in")
        .with("count", pair.tells.len())
        .with("organs", pair.organs.len());
    vec![
        Prose::new().taxon(&pair.target),
        rival.text(&named),
        harm(pair.harm, words).into(),
        said(pair.passes, words).into(),
        months(&[pair.in_month], words).into(),
        words.prose(&tells),
        months(&pair.months, words).into(),
    ]
}

fn said(passes: Passes, words: &Words<'_>) -> String {
    match passes {
        Passes::After(times) => whole(i64::from(times)),
        Passes::AfterMore => words.word("pairs-after-more"),
        Passes::Never => words.word("pairs-never"),
    }
}
