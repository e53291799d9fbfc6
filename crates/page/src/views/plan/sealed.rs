//! Why each decision is what it is, person by person. For the leader alone.

use super::super::serving;
use super::made;
use crate::{Block, Details, Level, Prose, Words};
use desk::{MakePlan, SealedRow};
use ground::Text;
use std::collections::BTreeMap;

/// Every person with every dish.
pub(in crate::views) fn reasons(
    (people, makes): (&BTreeMap<String, String>, &[MakePlan]),
    rows: &[SealedRow],
    words: &Words<'_>,
) -> Vec<Block> {
    let person = |(name, called): (&String, &String)| {
        let heading = Block::heading(Level::Part, Prose::new().said(called));
        let own = rows.iter().filter(|row| row.decision.person == *name);
        std::iter::once(heading)
            .chain(own.flat_map(|row| dish(makes, row, words)))
            .collect::<Vec<_>>()
    };
    people.iter().flat_map(person).collect()
}

pub(super) fn dish(makes: &[MakePlan], row: &SealedRow, words: &Words<'_>) -> Vec<Block> {
    let wish = makes.iter().find(|wish| wish.name == row.make);
    let called = wish.map_or(row.make.as_str(), |wish| wish.called.as_str());
    let says =
        Prose::new().said_strong(called).text(": ").then(words.prose(&row.decision.outcome.text()));
    let sealed = &row.decision.sealed;
    let open = sealed.open.iter().map(|question| {
        words.prose(&Text::new("view-serving-unanswered").with("question", question.text()))
    });
    let points: Vec<_> =
        sealed.reasons.iter().map(|reason| serving::why(reason, words)).chain(open).collect();
    let points = (!points.is_empty()).then(|| Block::bullets(points));
    std::iter::once(Block::Para(says)).chain(points).chain(sums(row, words)).collect()
}

/// Limits and workings, on demand.
fn sums(row: &SealedRow, words: &Words<'_>) -> Option<Block> {
    let limits = made::limits(&row.decision.sealed.held, words);
    let workings = made::workings(&row.decision, words);
    let blocks: Vec<_> = limits.into_iter().chain(workings).collect();
    (!blocks.is_empty()).then(|| {
        let summary = words.word("view-plan-sums").into();
        Block::Details(Details { anchor: None, summary, open: false, blocks })
    })
}
