//! What the leader carries: open questions, the day at a glance, then stop after stop with room to
//! write. It has what is needed in the rain, and no more: the plan has the rest.

use super::day::{clock, kit, timetable};
use super::emergency::heads;
use super::{called, due, head, open, plants, section, sources, stands};
use crate::{Block, Column, Kind, Level, Page, Prose, Table, Words};
use desk::{MakePlan, Plan, PlantPlan, Row, TakePlan};
use dose::Strictness;
use ground::{Answer, Harm, SourceId, Text, Unit};
use harvest::Quantity;
use identify::Next;
use prepare::What;
use std::collections::BTreeMap;

/// How many readers have a column of their own; more than these write their names.
const MOST_READERS: usize = 3;

/// What it is called.
pub(super) fn title(plan: &Plan) -> Text {
    Text::new("view-run-title").with("name", plan.head.name.as_str())
}

pub(super) fn run_sheet(plan: &Plan, words: &Words<'_>) -> Page {
    let harms: Vec<_> = plan.plants.iter().map(|plant| &plant.harm_from).collect();
    let numbers = sources::numbers(&(harms, &plan.rules), words);
    let words = &words.numbered(&numbers);
    let stops = plan.timetable.rows.iter().flat_map(|row| stop(plan, row, words)).collect();
    words
        .page(Kind::Screen, &title(plan))
        .with(head(plan, words))
        .with(section("view-plan-open", open::questions(plan, words), words))
        .with(section("view-run-glance", glance(plan, words), words))
        .with(section("view-run-rules", rules(plan, words), words))
        .with(section("view-run-stops", stops, words))
        .with(section("view-plan-lots", stands::lots(&plan.lots, words), words))
        .with(section("view-run-pots", pots(plan, words), words))
        .with(section("view-plan-due", due::due(plan, words), words))
        .with(section("view-plan-kit", kit(plan, words), words))
        .with([Block::lines(words.word("view-run-notes"), 4), words.ruler(15)])
        .with(section("view-run-plan-sources", listed(&numbers, words), words))
}

/// The stops with the last moment to leave each, the light, and where heads are counted.
fn glance(plan: &Plan, words: &Words<'_>) -> Vec<Block> {
    let mut blocks = timetable(plan, words);
    blocks.push(heads(plan, usize::MAX, words));
    blocks
}

fn rules(plan: &Plan, words: &Words<'_>) -> Vec<Block> {
    let rule = |rule: &herbal::DayRule| {
        let when = Prose::new().said_strong(&rule.when).text(": ").said(&rule.done);
        when.text(" (").then(words.sourcing(&rule.from)).text(")")
    };
    if plan.rules.is_empty() {
        return Vec::new();
    }
    vec![Block::bullets(plan.rules.iter().map(rule))]
}

/// A stop: what may be taken, its plants, what must be seen, and lines for notes.
fn stop(plan: &Plan, row: &Row, words: &Words<'_>) -> Vec<Block> {
    let says = Prose::new().number(&clock(row.at)).text(" ").said(&row.called);
    let heading = Block::heading(Level::Part, says);
    let shown = plan.plants.iter().filter(|plant| row.plants.contains(&plant.taxon));
    let takes = plan.takes.iter().filter(|take| take.site == row.site);
    let takes: Vec<_> = takes.map(|take| may_take(plan, take, words)).collect();
    let takes = (!takes.is_empty()).then_some(Block::Ticks(takes));
    std::iter::once(heading)
        .chain(takes)
        .chain(shown.flat_map(|plant| at_stop(plan, plant, words)))
        .chain([Block::lines(words.word("view-run-notes"), 2)])
        .collect()
}

fn at_stop(plan: &Plan, plant: &PlantPlan, words: &Words<'_>) -> Vec<Block> {
    let name = Prose::new().said(&plant.common).text(" (").taxon(&plant.taxon).text(")");
    let mut blocks = vec![Block::heading(Level::Point, name)];
    if plant.harm > Harm::None {
        blocks.push(plants::harm(plant, words));
    }
    blocks.extend(looks_to_tick(plan, plant, words));
    let deadly =
        plant.twins.iter().filter(|twin| twin.harm.is_none_or(|harm| harm == Harm::Deadly));
    let deadly: Vec<_> =
        deadly.map(|twin| twin_named(twin.common.as_deref(), &twin.taxon)).collect();
    if !deadly.is_empty() {
        let beware = Text::new("view-run-beware").with("twins", words.catalogue.list(&deadly));
        blocks.push(words.para(&beware));
    }
    blocks
}

fn twin_named(common: Option<&str>, taxon: &str) -> String {
    common.map_or_else(|| taxon.to_owned(), |common| format!("{common} ({taxon})"))
}

/// Each look with a box for each reader; what must be read twice says so.
fn looks_to_tick(plan: &Plan, plant: &PlantPlan, words: &Words<'_>) -> Vec<Block> {
    let Next::Look(looks) = &plant.to_look else { return plants::to_look(plant, words) };
    let readers = readers(plan, words);
    let rows = looks.looks.iter().map(|look| {
        let twice = looks.again.contains(&look.character);
        let twice = twice.then(|| Prose::from(", ").strong(&words.word("view-run-twice")));
        let character = Prose::new().said(&words.character(&look.character));
        let shows = Prose::new().said(&words.seen(&look.character, &look.typical));
        let boxes = readers.iter().map(|_| Prose::from("☐"));
        [character.then(twice.unwrap_or_default()), shows].into_iter().chain(boxes).collect()
    });
    let columns = ["view-run-look", "view-run-shows"].map(|id| words.word(id).into());
    vec![Block::Table(Table {
        caption: words.word("view-run-looks").into(),
        columns: columns.into_iter().chain(readers.iter().cloned()).map(Column::words).collect(),
        rows_have_heads: true,
        rows: rows.collect(),
    })]
}

/// The heads of the columns to tick: who reads, or room for two.
fn readers(plan: &Plan, words: &Words<'_>) -> Vec<Prose> {
    let known = plan.readers.len();
    if (2..=MOST_READERS).contains(&known) {
        return plan.readers.iter().map(|reader| Prose::new().said(reader)).collect();
    }
    ["view-run-first", "view-run-second"].map(|id| words.word(id).into()).into()
}

/// How much may go, what binds, and what is wanted.
fn may_take(plan: &Plan, take: &TakePlan, words: &Words<'_>) -> Prose {
    let amount = match &take.allowance.amount {
        Answer::Known(Quantity::Mass(mass)) if mass.g() > 0.0 => {
            Text::new("view-run-at-most").amount("most", mass.g(), Unit::Gram)
        }
        Answer::Known(Quantity::Pieces(pieces)) if pieces.0 > 0.0 => {
            Text::new("view-run-at-most").amount("most", pieces.0, Unit::One)
        }
        Answer::Known(_) => Text::new("view-run-nothing"),
        Answer::Refused(_) => Text::new("view-run-not-settled"),
    };
    let says = Text::new("view-run-take")
        .with("stand", take.stand.as_str())
        .with("part", Text::new(format!("part-{}", take.part.word())))
        .with("amount", amount);
    let says = match &take.wanted {
        Answer::Known(wanted) => says.amount("wanted", wanted.g(), Unit::Gram),
        Answer::Refused(_) => says.with("wanted", Text::new("view-run-wanted-open")),
    };
    let binds = stands::binding(take, words);
    let binds = binds.map(|binds| Prose::from(". ").then(binds)).unwrap_or_default();
    called(plan, &take.taxon).text(", ").then(words.prose(&says)).then(binds)
}

/// What the kitchen weighs out and how many servings that makes; the recipe cards have the rest.
fn pots(plan: &Plan, words: &Words<'_>) -> Vec<Block> {
    if plan.makes.is_empty() {
        return Vec::new();
    }
    let columns = ["view-run-dish", "view-run-herb", "view-run-servings"];
    vec![Block::Table(Table {
        caption: words.word("view-run-pots").into(),
        columns: columns.map(|id| Column::words(words.word(id))).into(),
        rows_have_heads: true,
        rows: plan.makes.iter().map(|wish| pot(wish, words)).collect(),
    })]
}

fn pot(wish: &MakePlan, words: &Words<'_>) -> Vec<Prose> {
    let dish = Prose::new().said(&wish.called);
    let nobody = wish.counts.keys().all(|outcome| *outcome == Strictness::Withhold);
    if nobody && !wish.counts.is_empty() {
        return vec![dish, Prose::new().strong(&words.word("view-run-nobody"))];
    }
    let Answer::Known(brew) = &wish.brew else {
        return vec![dish, words.word("view-run-open").into()];
    };
    let herb = brew.amounts.iter().find(|helping| helping.what == What::Herb);
    let herb = herb.map(|herb| words.amount(herb.mass.middle.g(), Unit::Gram));
    let one = brew.portion.one;
    let size = match one.volume {
        Some(volume) => words.amount(volume.ml(), Unit::Millilitre).plain(),
        None => words.amount(one.mass.g(), Unit::Gram).plain(),
    };
    let servings =
        Text::new("view-make-servings").with("count", brew.portion.servings).with("size", size);
    vec![dish, herb.unwrap_or_default(), words.prose(&servings)]
}

/// Author and title of each source that this sheet names; addresses are in the plan.
fn listed(numbers: &BTreeMap<SourceId, usize>, words: &Words<'_>) -> Vec<Block> {
    if numbers.is_empty() {
        return Vec::new();
    }
    let short = |id: &SourceId| Prose::new().said(&words.source_in_full(id).plain());
    vec![Block::notes(numbers.keys().map(short))]
}
