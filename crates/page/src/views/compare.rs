//! What tells two plants apart: side by side in plain words, the most telling first for its time; then what
//! each look takes, and how often it goes wrong.

pub(super) mod looks;

use super::sheet::cell::statements;
use super::{drawn, list};
use crate::{Block, Column, Details, Kind, Level, Notice, NoticeKind, Page, Prose, Table, Words};
use desk::CompareReply;
use ground::{Harm, Month, Season, Text};
use identify::{Cell, Contrast};
use std::collections::BTreeMap;

/// A character that tells apart so many plants of each helps to tell the two apart.
const TELLING: f64 = 0.5;

pub(super) fn page(reply: &CompareReply, words: &Words<'_>) -> Page {
    let [(one, _), (other, _)] = &reply.plants;
    let title = Text::new("view-compare-title").taxon("one", one).taxon("other", other);
    let (telling, alike): (Vec<&Contrast>, Vec<&Contrast>) =
        reply.comparison.contrasts.iter().partition(|c| c.told.get() >= TELLING);
    let (telling, remembered): (Vec<_>, Vec<_>) = telling.into_iter().partition(|c| c.published);
    words
        .page(Kind::Screen, &title)
        .with([harms(reply, words)])
        .with(reply.said.iter().map(|row| {
            let why = Text::new("sheet-why").with("why", row.why.as_str());
            Block::Para(words.prose(&why).text(" ").said(&row.says))
        }))
        .with(side_by_side(reply, words))
        .with(section("view-compare-telling", &telling, reply, words))
        .with(looks::of_contrasts(&telling, &reply.plants, words))
        .with(section("view-compare-remembered", &remembered, reply, words))
        .with(table("view-compare-alike", &alike, reply, words).map(|table| {
            let summary = words.word("view-compare-alike").into();
            Block::Details(Details { anchor: None, summary, open: false, blocks: vec![table] })
        }))
}

/// What differs in their drawings.
fn side_by_side(reply: &CompareReply, words: &Words<'_>) -> Vec<Block> {
    let Some(glossary) = words.glossary else { return Vec::new() };
    let cells = |cell: fn(&Contrast) -> &Cell| -> BTreeMap<_, _> {
        let each = reply.comparison.contrasts.iter();
        each.map(|contrast| (contrast.character.clone(), cell(contrast).clone())).collect()
    };
    let (here, there) = (cells(|contrast| &contrast.a), cells(|contrast| &contrast.b));
    let terms: BTreeMap<_, _> =
        glossary.terms().map(|term| (term.character.id.clone(), term.clone())).collect();
    let [(one, _), (other, _)] = &reply.plants;
    let figures = drawn::twins_drawn(
        drawn::Subject { name: one, cells: &here },
        drawn::Subject { name: other, cells: &there },
        &terms,
        words,
    );
    if figures.is_empty() {
        return Vec::new();
    }
    let heading = words.heading(Level::Section, &Text::new("drawn-twins-title"));
    vec![heading, Block::Figures(figures)]
}

/// How badly each can hurt, in the frame of the worse.
fn harms(reply: &CompareReply, words: &Words<'_>) -> Block {
    let [one, other] = reply.harms;
    let kind = match one.max(other) {
        Harm::Deadly => NoticeKind::DoNot,
        Harm::Harmful | Harm::Irritant => NoticeKind::Caution,
        Harm::Unknown | Harm::None => NoticeKind::Question,
    };
    let said = reply.plants.iter().zip(reply.harms).map(|((name, common), harm)| {
        Prose::new().taxon(name).text(", ").said(common).text(": ").strong(&list::harm(harm, words))
    });
    let head = words.word("view-compare-harm").into();
    Block::Notice(Notice { kind, head, blocks: vec![Block::bullets(said)] })
}

fn section(
    id: &str,
    contrasts: &[&Contrast],
    reply: &CompareReply,
    words: &Words<'_>,
) -> Vec<Block> {
    let heading = words.heading(Level::Section, &Text::new(id));
    table(id, contrasts, reply, words).map_or_else(Vec::new, |table| vec![heading, table])
}

fn table(
    id: &str,
    contrasts: &[&Contrast],
    reply: &CompareReply,
    words: &Words<'_>,
) -> Option<Block> {
    let [(one, _), (other, _)] = &reply.plants;
    let columns = [
        Prose::from(words.word("view-compare-look-at")),
        Prose::new().taxon(one),
        Prose::new().taxon(other),
        words.word("view-compare-told").into(),
    ];
    let table = Table {
        caption: words.word(&format!("{id}-says")).into(),
        columns: columns.into_iter().map(Column::words).collect(),
        rows_have_heads: true,
        rows: contrasts.iter().map(|contrast| row(contrast, reply.month, words)).collect(),
    };
    (!contrasts.is_empty()).then_some(Block::Table(table))
}

/// One character; whether both plants show it in this month stands out.
fn row(contrast: &Contrast, month: Month, words: &Words<'_>) -> Vec<Prose> {
    let now = if contrast.months.contains(&month) {
        Prose::new().strong(&words.word("view-compare-now")).text(" ")
    } else {
        Prose::new()
    };
    let name = Prose::new().said(&words.character(&contrast.character));
    let named = if contrast.named { words.word("view-compare-named") } else { String::new() };
    vec![
        name.text(&named),
        side(contrast, &contrast.a, words),
        side(contrast, &contrast.b, words),
        looks::share(contrast.told, words)
            .text("; ")
            .then(now)
            .text(&months(&contrast.months, words)),
    ]
}

/// What one sheet says; what is only remembered is marked.
fn side(contrast: &Contrast, cell: &Cell, words: &Words<'_>) -> Prose {
    let term = words.glossary.and_then(|glossary| glossary.term(&contrast.character));
    let Some(term) = term else { return words.word("unknown").into() };
    let (main, rare) = statements(words, term, &cell.value);
    let marked = |said: &[String], standing| {
        let remembered = standing == ground::Standing::Remembered && !said.is_empty();
        let mark = if remembered { words.word("view-compare-mark") } else { String::new() };
        said.join("; ") + &mark
    };
    let all = [marked(&main, cell.standing), marked(&rare, cell.rare_standing)];
    let all: Vec<_> = all.into_iter().filter(|said| !said.is_empty()).collect();
    Prose::new().said(&all.join("; "))
}

/// Months in which both can be seen: one stretch where they are one, else a list.
pub(super) fn months(months: &[Month], words: &Words<'_>) -> String {
    if months.len() == 12 {
        return words.word("view-compare-all-year");
    }
    let starts: Vec<_> =
        months.iter().filter(|month| !months.contains(&shifted(**month, 11))).copied().collect();
    let stretch = |first: Month| {
        let last = std::iter::successors(Some(first), |month| {
            Some(shifted(*month, 1)).filter(|next| months.contains(next))
        });
        words.season(Season::new(first, last.last().unwrap_or(first)))
    };
    let said: Vec<_> = starts.into_iter().map(stretch).collect();
    if said.is_empty() { words.word("view-compare-never") } else { words.catalogue.list(&said) }
}

/// The month before another, or after it, around the year.
fn shifted(month: Month, by: u8) -> Month {
    Month::new((month.number() - 1 + by) % 12 + 1).unwrap_or(month)
}
