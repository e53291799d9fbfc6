//! The sheet that lies beside the basket: what may lie among it, the signs that tell, two rounds to fill
//! in, and what was written down so far.

use super::super::list;
use super::super::signs::{self, Sign};
use super::pages::PlannedPage;
use super::{called, section, stands};
use crate::{Block, Column, Kind, Notice, NoticeKind, Page, Prose, Table, Words};
use desk::{LotPlan, Plan, SheetReply, Twin};
use ground::{Harm, Part, Text};
use journal::Fitness;
use std::collections::BTreeMap;

/// Rows to write in where nothing came out yet.
const ROWS: usize = 4;

/// What is sorted: a plant's part from a stand, and the lots that came in from there.
struct Basket<'a> {
    /// Which plant, by scientific name.
    taxon: &'a str,
    /// Which part.
    part: Part,
    /// Stand or lot, by short name.
    name: &'a str,
    /// The lots.
    lots: Vec<&'a LotPlan>,
}

/// Letters of a file's name that tell of what it is: longer names are cut.
const LETTERS: usize = 40;

/// A sheet for each take that is planned, and for each unsorted lot that comes from none of their
/// stands, with the name of its file. `sheets` holds what is known of each plant.
pub(super) fn sorting_sheets<'p>(
    plan: &'p Plan,
    sheets: &'p BTreeMap<String, SheetReply>,
) -> Vec<PlannedPage<'p>> {
    let mut pages: Vec<PlannedPage<'p>> = Vec::new();
    for basket in baskets(plan) {
        let sheet = sheets.get(basket.taxon);
        let file = (1..)
            .map(|number| file(basket.name, number))
            .find(|file| pages.iter().all(|other| other.name != *file));
        let title = title(&basket, sheet);
        let write = move |words: &Words<'_>| sorting_sheet(plan, &basket, sheet, words);
        pages.extend(file.map(|file| PlannedPage::new(file, title, write)));
    }
    pages
}

fn baskets(plan: &Plan) -> Vec<Basket<'_>> {
    let from = |stand: &String| plan.lots.iter().filter(|lot| lot.stands.contains(stand)).collect();
    let takes = plan.takes.iter().map(|take| {
        let lots = from(&take.stand);
        Basket { taxon: &take.taxon, part: take.part, name: &take.stand, lots }
    });
    let planned = |lot: &LotPlan| plan.takes.iter().any(|take| lot.stands.contains(&take.stand));
    let sorted = |lot: &LotPlan| matches!(lot.state.fitness, Fitness::Sorted { .. });
    let others = plan.lots.iter().filter(|lot| !planned(lot) && !sorted(lot));
    let others = others.flat_map(|lot| {
        lot.gathered.iter().map(move |(taxon, part)| Basket {
            taxon,
            part: *part,
            name: &lot.name,
            lots: vec![lot],
        })
    });
    takes.chain(others).collect()
}

/// The name of a file, of small letters, digits and `-`; the second of a name is numbered.
fn file(name: &str, number: usize) -> String {
    let plain = name.to_lowercase().replace(|c: char| !c.is_ascii_alphanumeric(), "-");
    let plain: String = plain.chars().take(LETTERS).collect();
    let plain = plain.trim_matches('-');
    let number = if number > 1 { format!("-{number}") } else { String::new() };
    format!("sorting-{plain}{number}").replace("--", "-")
}

fn title(basket: &Basket<'_>, sheet: Option<&SheetReply>) -> Text {
    let common = sheet.map_or(basket.taxon, |sheet| sheet.sheet.usual_name());
    Text::new("forms-sorting-title")
        .taxon("name", basket.taxon)
        .with("common", common)
        .with("stand", basket.name)
}

/// The sheet of a basket. `sheet` is what is known of the plant.
fn sorting_sheet(
    plan: &Plan,
    basket: &Basket<'_>,
    sheet: Option<&SheetReply>,
    words: &Words<'_>,
) -> Page {
    let done = section("forms-sorting-done", recorded(basket, words), words);
    let rounds = if sorted_today(plan, basket) { Vec::new() } else { rounds(words) };
    words
        .page(Kind::Public, &title(basket, sheet))
        .with([from(plan, basket, words), rules(words)])
        .with(sheet.map_or_else(|| unknown(words), |sheet| look(sheet, basket.part, words)))
        .with(done)
        .with(rounds)
}

fn from(plan: &Plan, basket: &Basket<'_>, words: &Words<'_>) -> Block {
    let part = Text::new(format!("part-{}", basket.part.word()));
    let from = Text::new("forms-sorting-take").with("stand", basket.name).with("part", part);
    Block::Para(called(plan, basket.taxon).text(", ").then(words.prose(&from)))
}

fn rules(words: &Words<'_>) -> Block {
    let rules = [
        "forms-sorting-rule",
        "forms-sorting-sample",
        "forms-sorting-holds",
        "forms-sorting-again",
    ];
    Block::bullets(rules.map(|id| words.word(id)))
}

fn unknown(words: &Words<'_>) -> Vec<Block> {
    let says = words.para(&Text::new("forms-sorting-unknown-plant"));
    vec![words.notice(NoticeKind::DoNot, [says])]
}

/// What may lie among pieces of this part, and the signs side by side.
pub(in crate::views) fn look(sheet: &SheetReply, part: Part, words: &Words<'_>) -> Vec<Block> {
    if sheet.twins.is_empty() {
        let says = words.para(&Text::new("forms-sorting-no-twins"));
        let mut blocks = section("forms-sorting-twins", vec![says], words);
        blocks.extend(section("forms-sorting-signs", own(sheet, part, words), words));
        return blocks;
    }
    let mut signs = signs::signs(sheet);
    // What can be seen on a piece comes first; the order within stays.
    signs.sort_by_key(|sign| !on_it(part, sign));
    let told =
        |twin: &Twin| signs.iter().any(|sign| sign.there.iter().any(|(t, _)| t.name == twin.name));
    let named = sheet.twins.iter().map(|twin| named(twin, told(twin), words));
    let kind = match sheet.twins.iter().map(signs::harm).max() {
        Some(Harm::Deadly) => NoticeKind::DoNot,
        _ => NoticeKind::Caution,
    };
    let head = words.word("forms-sorting-twins").into();
    let mut blocks =
        vec![Block::Notice(Notice { kind, head, blocks: vec![Block::bullets(named)] })];
    let table = (!signs.is_empty()).then(|| table(sheet, part, &signs, words));
    blocks.extend(section("forms-sorting-signs", table.into_iter().collect(), words));
    blocks
}

fn on_it(part: Part, sign: &Sign<'_>) -> bool {
    part.shows(sign.term.character.organ)
}

/// A twin, what it does, and its signs in words where the table has none of it.
fn named(twin: &Twin, told: bool, words: &Words<'_>) -> Prose {
    let harm = match twin.harm {
        Some(harm) => list::harm(harm, words),
        None => words.word("sheet-twin-unlisted"),
    };
    let says = signs::names(twin).text(" — ").strong(&harm).text(". ");
    let row = twin.here.iter().chain(&twin.there).next();
    match row.filter(|_| !told) {
        Some(row) => {
            let text = Text::new("forms-sorting-no-sign").with("says", row.says.as_str());
            says.then(words.prose(&text))
        }
        None => says,
    }
}

fn table(sheet: &SheetReply, part: Part, signs: &[Sign<'_>], words: &Words<'_>) -> Block {
    let this = Text::new("forms-sorting-this").with("plant", sheet.sheet.usual_name());
    let columns = [
        words.word("forms-sorting-sign").into(),
        words.prose(&this),
        words.word("forms-sorting-other").into(),
    ];
    Block::Table(Table {
        caption: words.word("forms-sorting-signs-says").into(),
        columns: columns.map(Column::words).into(),
        rows_have_heads: true,
        rows: signs.iter().map(|sign| row(part, sign, words)).collect(),
    })
}

fn row(part: Part, sign: &Sign<'_>, words: &Words<'_>) -> Vec<Prose> {
    let away = (!on_it(part, sign)).then(|| words.word("forms-sorting-on-plant"));
    vec![
        Prose::new().said(&sign.term.name).text(&away.unwrap_or_default()),
        Prose::new().said(&signs::said(sign.term, sign.here, words)),
        instead(sign, words),
    ]
}

/// What twins show, those that show the same together, the worst first.
fn instead(sign: &Sign<'_>, words: &Words<'_>) -> Prose {
    let mut shown: Vec<(String, Vec<String>)> = Vec::new();
    for (twin, cell) in &sign.there {
        let says = signs::said(sign.term, cell, words);
        let name = signs::name(twin).to_owned();
        match shown.iter_mut().find(|(other, _)| *other == says) {
            Some((_, names)) => names.push(name),
            None => shown.push((says, vec![name])),
        }
    }
    shown.iter().fold(Prose::new(), |prose, (says, names)| {
        let gap = if prose.is_empty() { "" } else { ". " };
        let names = words.catalogue.list(names);
        prose.text(gap).said_strong(&names).text(": ").said(says)
    })
}

/// The signs of the plant itself: those that must be looked at, else those on a piece.
fn own(sheet: &SheetReply, part: Part, words: &Words<'_>) -> Vec<Block> {
    let must = |id: &String| sheet.sheet.must_look.contains(id);
    let some = sheet.cells.keys().any(must);
    let rows = sheet.cells.iter().filter_map(|(id, cell)| {
        let term = sheet.terms.get(id)?;
        let shown = if some { must(id) } else { part.shows(term.character.organ) };
        let says = Prose::new().said(&signs::said(term, cell, words));
        shown.then(|| vec![Prose::new().said(&term.name), says])
    });
    let rows: Vec<_> = rows.collect();
    let this = Text::new("forms-sorting-this").with("plant", sheet.sheet.usual_name());
    let columns = [words.word("forms-sorting-sign").into(), words.prose(&this)];
    let table = Table {
        caption: words.word("forms-sorting-own-says").into(),
        columns: columns.map(Column::words).into(),
        rows_have_heads: true,
        rows,
    };
    (!table.rows.is_empty()).then_some(Block::Table(table)).into_iter().collect()
}

/// What was written down of the lots so far.
fn recorded(basket: &Basket<'_>, words: &Words<'_>) -> Vec<Block> {
    let lot = |lot: &&LotPlan| {
        let text = Text::new("forms-sorting-lot")
            .with("lot", lot.name.as_str())
            .with("state", words.prose(&stands::state(lot, words)).plain());
        let sortings: Vec<_> = stands::sortings(lot, words).collect();
        let sortings = (!sortings.is_empty()).then(|| Block::bullets(sortings));
        [words.para(&text)].into_iter().chain(sortings).collect::<Vec<_>>()
    };
    basket.lots.iter().flat_map(lot).collect()
}

/// Whether all that came in was sorted, some of it on the day of the outing.
fn sorted_today(plan: &Plan, basket: &Basket<'_>) -> bool {
    let sorted = |lot: &&LotPlan| matches!(lot.state.fitness, Fitness::Sorted { .. });
    let times = basket.lots.iter().flat_map(|lot| lot.sortings.iter().filter_map(|(at, _)| *at));
    let today = times.map(|at| at.date()).any(|day| day == plan.head.date);
    today && basket.lots.iter().all(sorted)
}

/// Two rounds to fill in.
fn rounds(words: &Words<'_>) -> Vec<Block> {
    let first = round(["forms-sorting-passed", "forms-sorting-held"], words);
    let second = round(["forms-sorting-passed-again", "forms-sorting-held-again"], words);
    let mut blocks = section("forms-sorting-first", first, words);
    blocks.extend(section("forms-sorting-second", second, words));
    blocks
}

fn round(ends: [&str; 2], words: &Words<'_>) -> Vec<Block> {
    let fields = [
        "forms-sorting-one",
        "forms-sorting-two",
        "forms-sorting-began",
        "forms-sorting-ended",
        "forms-sorting-pieces",
    ];
    let fields = fields.map(|id| Block::Para(words.prose(&Text::new(id)).blank()));
    let heads =
        ["forms-sorting-found-what", "forms-sorting-found-pieces", "forms-sorting-found-where"];
    let empty = || vec![Prose::new().blank(); heads.len()];
    let table = Block::Table(Table {
        caption: words.word("forms-sorting-found").into(),
        columns: heads.map(|id| Column::words(words.word(id))).into(),
        rows_have_heads: false,
        rows: std::iter::repeat_with(empty).take(ROWS).collect(),
    });
    let ends = words.ticks(&ends.map(Text::new));
    fields.into_iter().chain([table, ends]).collect()
}
