//! What a herbal lacks: counts first, then every finding with its place.

use crate::{Block, Column, Fact, Item, Kind, Level, Page, Prose, Table, Words, whole};
use desk::CheckReply;
use ground::{Standing, Text};
use herbal::{Finding, Lack, Report};
use std::collections::BTreeMap;

/// Standings, with the head of each one's column.
const STANDINGS: [(Standing, &str); 6] = [
    (Standing::Published, "standing-published"),
    (Standing::Weak, "check-weak"),
    (Standing::Practice, "check-practice"),
    (Standing::Policy, "check-policy"),
    (Standing::Assumed, "check-assumed"),
    (Standing::Remembered, "standing-remembered"),
];

/// Kinds of lack, the gravest first.
const LACKS: [(Lack, &str); 5] = [
    (Lack::Contradictory, "check-contradictory"),
    (Lack::Missing, "check-missing"),
    (Lack::Unjoined, "check-unjoined"),
    (Lack::Remembered, "check-remembered"),
    (Lack::Unused, "check-unused"),
];

pub(super) fn page(reply: &CheckReply, words: &Words<'_>) -> Page {
    let mut blocks = vec![Block::Facts(counts(reply, words)), facts(&reply.report, words)];
    for (lack, id) in LACKS {
        let points: Vec<_> = of(&reply.report, lack).map(|finding| point(finding, words)).collect();
        if !points.is_empty() {
            let head = Text::new(id).with("count", points.len());
            blocks.push(words.heading(Level::Section, &head));
            blocks.push(words.para(&Text::new(format!("{id}-says"))));
            blocks.push(Block::bullets(points));
        }
    }
    words.page(Kind::Screen, &Text::new("check-title")).with(blocks)
}

fn of(report: &Report, lack: Lack) -> impl Iterator<Item = &Finding> {
    report.findings.iter().filter(move |finding| finding.lack == lack)
}

fn counts(reply: &CheckReply, words: &Words<'_>) -> Vec<Fact> {
    let fact = |id: &str, value: String| words.fact(&Text::new(id), Prose::new().number(&value));
    let count = |n: usize| whole(i64::try_from(n).unwrap_or(i64::MAX));
    let mut facts = vec![
        fact("check-version", reply.version.clone()),
        fact("check-species", count(reply.report.species)),
    ];
    let lacks = LACKS
        .into_iter()
        .map(|(lack, id)| fact(&format!("{id}-label"), count(of(&reply.report, lack).count())));
    facts.extend(lacks);
    facts
}

/// How many facts rest on what, by folder.
fn facts(report: &Report, words: &Words<'_>) -> Block {
    let head = |(_, id): (Standing, &str)| Column::numbers(words.word(id));
    let row = |(folder, facts): (&String, &BTreeMap<Standing, usize>)| {
        let count = |standing| facts.get(&standing).copied().unwrap_or_default();
        let number = |(standing, _)| {
            Prose::new().number(&whole(i64::try_from(count(standing)).unwrap_or(i64::MAX)))
        };
        let numbers = STANDINGS.into_iter().map(number);
        std::iter::once(Prose::new().said(folder)).chain(numbers).collect()
    };
    Block::Table(Table {
        caption: words.word("check-facts").into(),
        columns: std::iter::once(Column::words(words.word("check-folder")))
            .chain(STANDINGS.into_iter().map(head))
            .collect(),
        rows_have_heads: true,
        rows: report.facts.iter().map(row).collect(),
    })
}

/// A finding, its place first: an editor opens it there.
fn point(finding: &Finding, words: &Words<'_>) -> Item {
    let place = ground::Place { table: None, entry: None, field: None, ..finding.at.clone() };
    let place = if place.file.is_some() { &place } else { &finding.at };
    let says = Prose::new().said(&words.place(place)).text(": ");
    Item::from(says.then(words.prose(&finding.text)))
}
