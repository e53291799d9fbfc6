//! The pages of a plan: what the leader carries, what stands by the stove, what is stuck on jars, what is
//! handed round, and, where the reasons were asked for, the sealed list.

use super::super::labels;
use super::super::sheet::home::{self, FromOuting};
use super::super::sheet::teach::hand_out_foot;
use super::emergency::{copy_at_base, emergency};
use super::sorting_sheet::sorting_sheets;
use super::{
    brew_sheet, emergency, intake_form, made, money, run_sheet, sealed_list, section, serving_list,
    sign_up, sources, stands,
};
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

/// A page of a plan before it is written: what it is called, and a way to write it.
pub struct PlannedPage<'p> {
    /// The name of its files without their ends, of small letters, digits and `-`.
    pub name: String,
    title: Text,
    write: Box<dyn Fn(&Words<'_>) -> Page + 'p>,
}

impl<'p> PlannedPage<'p> {
    pub(super) fn new(
        name: impl Into<String>,
        title: Text,
        write: impl Fn(&Words<'_>) -> Page + 'p,
    ) -> Self {
        Self { name: name.into(), title, write: Box::new(write) }
    }

    /// What the page is.
    #[must_use]
    pub fn title(&self, words: &Words<'_>) -> String {
        words.prose(&self.title).plain()
    }

    /// The page.
    #[must_use]
    pub fn write(&self, words: &Words<'_>) -> Page {
        (self.write)(words)
    }
}

/// Every page of a plan, written; see [`planned_pages`].
#[must_use]
pub fn pages(
    plan: &Plan,
    sheets: &BTreeMap<String, SheetReply>,
    paper: Paper,
    words: &Words<'_>,
) -> Vec<NamedPage> {
    let planned = planned_pages(plan, sheets, paper).into_iter();
    planned.map(|one| NamedPage { page: one.write(words), name: one.name }).collect()
}

/// Every page of a plan. `sheets` holds what is known of each plant, by its scientific name: a plant
/// without a sheet there has no page to take home. Only `sealed-list` says why anybody is handed
/// what, and it is there only where the plan holds the reasons.
#[must_use]
pub fn planned_pages<'p>(
    plan: &'p Plan,
    sheets: &'p BTreeMap<String, SheetReply>,
    paper: Paper,
) -> Vec<PlannedPage<'p>> {
    type Writer = fn(&Plan, &Words<'_>) -> Page;
    let of = |name: &str, title: Text, writer: Writer| {
        PlannedPage::new(name, title, move |words| writer(plan, words))
    };
    let card = |plan: &Plan, words: &Words<'_>| emergency(plan, words, Format::Half);
    let wallet = |plan: &Plan, words: &Words<'_>| emergency(plan, words, Format::Wallet);
    let mut pages = vec![
        of("run-sheet", run_sheet::title(plan), run_sheet::run_sheet),
        of("emergency-card", emergency::title(plan), card),
        of("emergency-wallet", emergency::title(plan), wallet),
        of("copy-at-base", emergency::title_at_base(plan), copy_at_base),
        of("serving-list", serving_list::title(plan), serving_list::serving_list),
        of("intake-form", intake_form::title(plan), intake_form::intake_form),
        of("sign-up", sign_up::title(plan), sign_up::sign_up),
    ];
    pages.extend(plan.money.as_ref().map(|money| {
        PlannedPage::new("money", money::title(plan), move |words| {
            money::money_page(plan, money, words)
        })
    }));
    pages.extend(sorting_sheets(plan, sheets));
    pages.extend(plan.plants.iter().filter_map(|plant| {
        let sheet = sheets.get(&plant.taxon)?;
        let name = format!("plant-{}", slug(&plant.taxon));
        let write = move |words: &Words<'_>| plant_sheet(plan, plant, sheet, words);
        Some(PlannedPage::new(name, home::title(sheet), write))
    }));
    pages.extend(brew_sheets(plan));
    pages.push(PlannedPage::new("labels", labels::title(), move |words| {
        labels::sheets(&plan.labels, LabelSheet::usual(paper), words)
    }));
    if plan.sealed.is_some() {
        pages.push(of("sealed-list", sealed_list::title(plan), sealed_list::sealed_list));
    }
    pages
}

/// Small letters, digits and `-`.
fn slug(name: &str) -> String {
    name.to_lowercase().replace(|c: char| !c.is_ascii_alphanumeric(), "-")
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
fn brew_sheets(plan: &Plan) -> Vec<PlannedPage<'_>> {
    let mut taken: BTreeMap<String, usize> = BTreeMap::new();
    let each = plan.makes.iter().map(|wish| {
        let slug = slug(&wish.name);
        let before = taken.entry(slug.clone()).or_default();
        *before += 1;
        let number = if *before > 1 { format!("-{before}") } else { String::new() };
        let write = move |words: &Words<'_>| brew_sheet::brew_sheet(plan, wish, words);
        PlannedPage::new(format!("brew-{slug}{number}"), brew_sheet::title(wish), write)
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
