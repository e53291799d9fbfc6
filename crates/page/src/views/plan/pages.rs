//! The pages of a plan: a run sheet for the leader, a list of who is handed what, a sheet for each
//! plant to take home, and, where the reasons were asked for, the sealed list.

use super::super::sheet::home;
use super::{called, day, head, made, open, people, plants, section, sources, stands};
use crate::{Block, Break, Column, Kind, Level, Page, Prose, Table, Words};
use desk::{MakePlan, Plan, PlantPlan, Row, SheetReply, TakePlan};
use ground::{Answer, Harm, Text, Unit};
use harvest::Quantity;
use identify::Next;
use std::collections::{BTreeMap, BTreeSet};

/// A page with the name of the file it goes into.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NamedPage {
    /// The name of the file, of small letters, digits, `-` and one `.`.
    pub file: String,
    /// The page.
    pub page: Page,
}

/// Every page of a plan. `sheets` holds what is known of each plant, by its scientific name: a plant
/// without a sheet there has no page to take home. Only `sealed-list.html` says why anybody is handed
/// what, and it is there only where the plan holds the reasons.
#[must_use]
pub fn pages(
    plan: &Plan,
    sheets: &BTreeMap<String, SheetReply>,
    words: &Words<'_>,
) -> Vec<NamedPage> {
    let named = |file: &str, page: Page| NamedPage { file: file.to_owned(), page };
    let mut pages = vec![
        named("run-sheet.html", run_sheet(plan, words)),
        named("serving-list.html", serving_list(plan, words)),
        named("sign-up.html", super::sign_up(plan, words)),
    ];
    pages.extend(super::money_page(plan, words).map(|page| named("money.html", page)));
    pages.extend(plan.plants.iter().filter_map(|plant| {
        let sheet = sheets.get(&plant.taxon)?;
        let slug = plant.taxon.to_lowercase().replace(|c: char| !c.is_ascii_alphanumeric(), "-");
        Some(named(&format!("plant-{slug}.html"), plant_sheet(plan, plant, sheet, words)))
    }));
    if plan.sealed.is_some() {
        pages.push(named("sealed-list.html", sealed_list(plan, words)));
    }
    pages
}

/// What the leader carries: open questions, then stop after stop with room to write.
fn run_sheet(plan: &Plan, words: &Words<'_>) -> Page {
    let harms: Vec<_> = plan.plants.iter().map(|plant| &plant.harm_from).collect();
    let brews: Vec<_> = plan.makes.iter().map(|wish| &wish.brew).collect();
    let numbers = sources::numbers(&(harms, brews), words);
    let words = &words.numbered(&numbers);
    let title = Text::new("view-run-title").with("name", plan.head.name.as_str());
    let stops = plan.timetable.rows.iter().flat_map(|row| stop(plan, row, words)).collect();
    words
        .page(Kind::Screen, &title)
        .with(head(plan, words))
        .with(section("view-plan-open", open::questions(plan, words), words))
        .with(section("view-plan-day", day::timetable(plan, words), words))
        .with(section("view-run-stops", stops, words))
        .with(section("view-plan-lots", stands::lots(plan, words), words))
        .with(section("view-run-pots", pots(plan, words), words))
        .with(section("view-plan-kit", day::kit(plan, words), words))
        .with([words.ruler(15)])
        .with(section("view-plan-sources", sources::list(&numbers, words), words))
}

/// A stop: its plants, what must be seen, what may be taken, and lines for notes.
fn stop(plan: &Plan, row: &Row, words: &Words<'_>) -> Vec<Block> {
    let time = format!("{} ", day::clock(row.at));
    let heading = Block::heading(Level::Part, Prose::new().number(&time).said(&row.called));
    let shown = plan.plants.iter().filter(|plant| row.plants.contains(&plant.taxon));
    let takes = plan.takes.iter().filter(|take| take.site == row.site);
    let takes: Vec<_> = takes.map(|take| may_take(plan, take, words)).collect();
    let takes = (!takes.is_empty()).then_some(Block::Ticks(takes));
    std::iter::once(heading)
        .chain(shown.flat_map(|plant| at_stop(plant, words)))
        .chain(takes)
        .chain([Block::lines(words.word("view-run-notes"), 3)])
        .collect()
}

fn at_stop(plant: &PlantPlan, words: &Words<'_>) -> Vec<Block> {
    let name = Prose::new().said(&plant.common).text(" (").taxon(&plant.taxon).text(")");
    let mut blocks = vec![Block::heading(Level::Point, name)];
    if plant.harm > Harm::None {
        blocks.push(plants::harm(plant, words));
    }
    blocks.extend(looks_to_tick(plant, words));
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

/// A box for each look, and a second one for each that must be read twice.
fn looks_to_tick(plant: &PlantPlan, words: &Words<'_>) -> Vec<Block> {
    let Next::Look(looks) = &plant.to_look else { return plants::to_look(plant, words) };
    let columns = ["view-run-look", "view-run-shows", "view-run-first", "view-run-second"];
    let rows = looks.looks.iter().map(|look| {
        let twice = if looks.again.contains(&look.character) { "☐" } else { "" };
        vec![
            Prose::new().said(&words.character(&look.character)),
            Prose::new().said(&words.seen(&look.character, &look.typical)),
            "☐".into(),
            twice.into(),
        ]
    });
    vec![Block::Table(Table {
        caption: words.word("view-run-looks").into(),
        columns: columns.map(|id| Column::words(words.word(id))).into(),
        rows_have_heads: true,
        rows: rows.collect(),
    })]
}

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
    called(plan, &take.taxon).text(", ").then(words.prose(&says))
}

fn pots(plan: &Plan, words: &Words<'_>) -> Vec<Block> {
    plan.makes.iter().flat_map(|wish| pot(wish, words)).collect()
}

fn pot(wish: &MakePlan, words: &Words<'_>) -> Vec<Block> {
    let heading = Block::heading(Level::Part, Prose::new().said(&wish.called));
    let blocks = match &wish.brew {
        Answer::Known(known) => made::card(known, words),
        Answer::Refused(refusal) => vec![words.refusal(refusal)],
    };
    std::iter::once(heading).chain(made::withheld(wish, words)).chain(blocks).collect()
}

/// Who is handed what, and never why.
fn serving_list(plan: &Plan, words: &Words<'_>) -> Page {
    let title = Text::new("view-list-title").with("name", plan.head.name.as_str());
    words
        .page(Kind::Public, &title)
        .with([words.para(&Text::new("view-serving-proposal")), people::table(plan, words)])
        .with(people::provisos(plan, words))
        .with([words.para(&Text::new("view-list-ask"))])
}

/// What somebody takes home of one plant.
fn plant_sheet(plan: &Plan, plant: &PlantPlan, sheet: &SheetReply, words: &Words<'_>) -> Page {
    let leave: Vec<_> = plan
        .takes
        .iter()
        .filter(|take| take.taxon == plant.taxon)
        .filter_map(|take| binding(take, words))
        .collect();
    let leave = if leave.is_empty() { Vec::new() } else { vec![Block::bullets(leave)] };
    let looks = match &plant.to_look {
        Next::Look(plan) => plan.looks.iter().map(|look| look.character.as_str()).collect(),
        Next::Settled | Next::CannotSettle { .. } => BTreeSet::new(),
    };
    home::page(sheet, &looks, words, sources::cited)
        .with(section("view-home-leave", leave, words))
        .with(section("view-home-recipe", recipes(plan, plant, sheet, words), words))
}

/// The rule that leaves least at a stand, in words.
fn binding(take: &TakePlan, words: &Words<'_>) -> Option<Prose> {
    let rule = take.allowance.binding.as_ref()?;
    let bound = take.allowance.candidates.iter().find(|candidate| candidate.rule == *rule)?;
    Some(words.prose(&bound.says))
}

/// Recipes of a plant that nothing deadly is taken for, of what somebody may have.
fn recipes(plan: &Plan, plant: &PlantPlan, sheet: &SheetReply, words: &Words<'_>) -> Vec<Block> {
    let deadly = sheet.twins.iter().any(|twin| twin.harm.is_none_or(|harm| harm == Harm::Deadly));
    let somebody = |wish: &&MakePlan| wish.counts.keys().any(|s| *s <= dose::Strictness::AtMost);
    if deadly || plant.harm == Harm::Deadly {
        return vec![words.para(&Text::new("view-home-no-recipe"))];
    }
    let own = plan.makes.iter().filter(|wish| wish.plant == plant.taxon).filter(somebody);
    own.flat_map(|wish| pot(wish, words)).collect()
}

/// Why each decision is what it is: each person on a sheet of paper of their own.
fn sealed_list(plan: &Plan, words: &Words<'_>) -> Page {
    let numbers = sources::numbers(&plan.sealed, words);
    let words = &words.numbered(&numbers);
    let title = Text::new("view-sealed-title").with("name", plan.head.name.as_str());
    words
        .page(Kind::Sealed, &title)
        .with([people::table(plan, words), Block::Break(Break::Page)])
        .with(section("view-plan-why", super::why(plan, words), words))
        .with(section("view-plan-sources", sources::list(&numbers, words), words))
}
