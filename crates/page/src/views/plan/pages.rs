//! The pages of a plan: what the leader carries, what stands by the stove, what is stuck on jars, what is
//! handed round, and, where the reasons were asked for, the sealed list.

use super::super::labels;
use super::super::sheet::home::{self, FromOuting};
use super::super::sheet::teach::hand_out_foot;
use super::brew_sheet::brew_sheet;
use super::emergency::{copy_at_base, emergency};
use super::intake_form::intake_form;
use super::money::money_page;
use super::run_sheet::run_sheet;
use super::sealed_list::sealed_list;
use super::serving_list::serving_list;
use super::sign_up::sign_up;
use super::sorting_sheet::sorting_sheets;
use super::{made, section, sources, stands};
use crate::{Block, Format, Level, NoticeKind, Page, Prose, Words};
use desk::{LabelSheet, MakePlan, Paper, Plan, PlantPlan, SheetReply};
use ground::{Answer, Harm, Text};
use identify::Next;
use std::collections::{BTreeMap, BTreeSet};

/// A page with the name of the files it goes into.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NamedPage {
    /// The name of its files without their ends, of small letters, digits and `-`.
    pub name: String,
    /// The page.
    pub page: Page,
}

/// Every page of a plan. `sheets` holds what is known of each plant, by its scientific name: a plant
/// without a sheet there has no page to take home. Only `sealed-list` says why anybody is handed
/// what, and it is there only where the plan holds the reasons.
#[must_use]
pub fn pages(
    plan: &Plan,
    sheets: &BTreeMap<String, SheetReply>,
    paper: Paper,
    words: &Words<'_>,
) -> Vec<NamedPage> {
    let named = |name: &str, page: Page| NamedPage { name: name.to_owned(), page };
    let mut pages = vec![
        named("run-sheet", run_sheet(plan, words)),
        named("emergency-card", emergency(plan, words, Format::Half)),
        named("emergency-wallet", emergency(plan, words, Format::Wallet)),
        named("copy-at-base", copy_at_base(plan, words)),
        named("serving-list", serving_list(plan, words)),
        named("intake-form", intake_form(plan, words)),
        named("sign-up", sign_up(plan, words)),
    ];
    pages.extend(money_page(plan, words).map(|page| named("money", page)));
    let sorting = sorting_sheets(plan, sheets, words).into_iter();
    pages.extend(sorting.map(|(name, page)| named(&name, page)));
    pages.extend(plan.plants.iter().filter_map(|plant| {
        let sheet = sheets.get(&plant.taxon)?;
        let slug = plant.taxon.to_lowercase().replace(|c: char| !c.is_ascii_alphanumeric(), "-");
        Some(named(&format!("plant-{slug}"), plant_sheet(plan, plant, sheet, words)))
    }));
    pages.extend(brew_sheets(plan, words));
    let sheet = LabelSheet::usual(paper);
    pages.push(named("labels", labels::sheets(&plan.labels, sheet, words)));
    if plan.sealed.is_some() {
        pages.push(named("sealed-list", sealed_list(plan, words)));
    }
    pages
}

fn pot(wish: &MakePlan, words: &Words<'_>) -> Vec<Block> {
    let heading = Block::heading(Level::Part, Prose::new().said(&wish.called));
    let blocks = match &wish.brew {
        Answer::Known(known) => made::card(known, words),
        Answer::Refused(refusal) => vec![words.refusal(refusal)],
    };
    std::iter::once(heading).chain(made::withheld(wish, words)).chain(blocks).collect()
}

/// A sheet for each pot. Names that differ only in what cannot stand in the name of a file are
/// numbered.
fn brew_sheets(plan: &Plan, words: &Words<'_>) -> Vec<NamedPage> {
    let mut taken: BTreeMap<String, usize> = BTreeMap::new();
    let each = plan.makes.iter().map(|wish| {
        let slug = wish.name.to_lowercase().replace(|c: char| !c.is_ascii_alphanumeric(), "-");
        let before = taken.entry(slug.clone()).or_default();
        *before += 1;
        let number = if *before > 1 { format!("-{before}") } else { String::new() };
        NamedPage { name: format!("brew-{slug}{number}"), page: brew_sheet(plan, wish, words) }
    });
    each.collect()
}

/// What somebody takes home of one plant.
fn plant_sheet(plan: &Plan, plant: &PlantPlan, sheet: &SheetReply, words: &Words<'_>) -> Page {
    let leave: Vec<_> = plan
        .takes
        .iter()
        .filter(|take| take.taxon == plant.taxon)
        .filter_map(|take| stands::binding(take, words))
        .collect();
    let leave = if leave.is_empty() { Vec::new() } else { vec![Block::bullets(leave)] };
    let looks = match &plant.to_look {
        Next::Look(plan) => plan.looks.iter().map(|look| look.character.as_str()).collect(),
        Next::Settled | Next::CannotSettle { .. } => BTreeSet::new(),
    };
    let outing = FromOuting {
        looks,
        leave: section("view-home-leave", leave, words),
        recipe: section("view-home-recipe", recipes(plan, plant, sheet, words), words),
        foot: hand_out_foot(&plan.head, words),
    };
    home::page(sheet, outing, words, sources::cited)
}

/// Recipes of what somebody may have. Of a plant that something deadly is taken for they stand here only
/// where the leader asked for them by name, and then behind a warning; of a deadly one, never.
fn recipes(plan: &Plan, plant: &PlantPlan, sheet: &SheetReply, words: &Words<'_>) -> Vec<Block> {
    let deadly = sheet.twins.iter().any(|twin| twin.harm.is_none_or(|harm| harm == Harm::Deadly));
    let somebody = |wish: &&MakePlan| wish.counts.keys().any(|s| *s <= dose::Strictness::AtMost);
    if plant.harm == Harm::Deadly || (deadly && !plant.recipe_asked_for) {
        return vec![words.para(&Text::new("view-home-no-recipe"))];
    }
    let own = plan.makes.iter().filter(|wish| wish.plant == plant.taxon).filter(somebody);
    let pots: Vec<_> = own.flat_map(|wish| pot(wish, words)).collect();
    let warned = (deadly && !pots.is_empty()).then(|| {
        let says = words.para(&Text::new("forms-home-deadly-twin"));
        words.notice(NoticeKind::DoNot, [says])
    });
    warned.into_iter().chain(pots).collect()
}
