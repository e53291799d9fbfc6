//! What comes after the day, by date.

use crate::{Block, Column, Prose, Table, Words};
use desk::{Act, Due, Plan};
use ground::Text;

pub(super) fn due(plan: &Plan, words: &Words<'_>) -> Vec<Block> {
    if plan.due.is_empty() {
        return Vec::new();
    }
    let columns = ["view-due-when", "view-due-what", "view-due-make"];
    let table = Block::Table(Table {
        caption: words.word("view-due-caption").into(),
        columns: columns.map(|id| Column::words(words.word(id))).into(),
        rows_have_heads: true,
        rows: plan.due.iter().map(|due| row(due, words)).collect(),
    });
    vec![table, words.para(&Text::new("view-due-counted"))]
}

fn row(due: &Due, words: &Words<'_>) -> Vec<Prose> {
    let batch = match &due.batch {
        Some(batch) => Prose::new().said(batch),
        None => words.word("view-due-not-made").into(),
    };
    vec![
        words.prose(&when(due)),
        words.word(act(due.act)).into(),
        Prose::new().said(&due.called).text(", ").then(batch),
    ]
}

fn when(due: &Due) -> Text {
    let id = match (due.until, due.act) {
        (Some(_), _) => "view-due-between",
        (None, Act::Discard) => "view-due-by",
        (None, _) => "view-due-on",
    };
    let text = Text::new(id).with("on", due.on);
    due.until.iter().fold(text, |text, until| text.with("until", *until))
}

/// The message of what is to be done.
pub(crate) fn act(act: Act) -> &'static str {
    match act {
        Act::Add => "due-add",
        Act::Heat => "due-heat",
        Act::Rest => "due-rest",
        Act::Strain => "due-strain",
        Act::Press => "due-press",
        Act::Sweeten => "due-sweeten",
        Act::Dry => "due-dry",
        Act::Ready => "due-ready",
        Act::HandOut => "due-hand-out",
        Act::Discard => "due-discard",
    }
}
