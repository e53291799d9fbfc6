//! An outing, worked out: what is open first, then plants, stands, pots and people, then the day.

mod brew_sheet;
mod day;
mod due;
mod emergency;
mod intake_form;
mod made;
mod money;
mod open;
mod pages;
mod people;
mod plants;
mod run_sheet;
mod sealed;
mod sealed_list;
mod serving_list;
mod sign_up;
mod sorting_sheet;
pub(super) mod sources;
mod stands;

pub(crate) use due::act;

pub use intake_form::{Asking, asking};
pub use pages::{NamedPage, PlannedPage, pages, planned_pages};
pub(super) use sealed::reasons;
pub(super) use sorting_sheet::look as sorting_look;
pub(super) use stands::lots;

use crate::{Block, Fact, Kind, Level, Page, Prose, Words};
use desk::Plan;
use dose::Tense;
use ground::Text;

/// The whole plan.
pub(super) fn page(plan: &Plan, words: &Words<'_>) -> Page {
    let numbers = sources::numbers(plan, words);
    let words = &words.numbered(&numbers);
    let kind = if plan.sealed.is_some() { Kind::Sealed } else { Kind::Screen };
    words
        .page(kind, &Text::new("view-plan-title").with("name", plan.head.name.as_str()))
        .with(head(plan, words))
        .with(section("view-plan-open", open::questions(plan, words), words))
        .with(section("view-plan-plants", plants::plants(plan, words), words))
        .with(section("view-plan-stands", stands::takes(plan, words), words))
        .with(section("view-plan-lots", stands::lots(&plan.lots, words), words))
        .with(section("view-plan-made", made::makes(plan, words), words))
        .with(section("view-plan-people", people::people(plan, words), words))
        .with(section("view-plan-day", day::timetable(plan, words), words))
        .with(section("view-plan-kit", day::kit(plan, words), words))
        .with(section("view-plan-due", due::due(plan, words), words))
        .with(section("view-plan-why", why(plan, words), words))
        .with(section("view-plan-sources", sources::list(&numbers, words), words))
}

/// Why each decision is what it is; nothing where that was not asked for.
fn why(plan: &Plan, words: &Words<'_>) -> Vec<Block> {
    let rows = plan.sealed.iter();
    rows.flat_map(|rows| reasons((&plan.people, &plan.makes), rows, words)).collect()
}

/// The same for one person, without the name.
fn why_of(plan: &Plan, person: &str, words: &Words<'_>) -> Vec<Block> {
    let rows = plan.sealed.iter().flatten().filter(|row| row.decision.person == person);
    rows.flat_map(|row| sealed::dish(&plan.makes, row, words)).collect()
}

/// A heading with what stands below it; neither where there is nothing.
fn section(id: &str, blocks: Vec<Block>, words: &Words<'_>) -> Vec<Block> {
    if blocks.is_empty() {
        return blocks;
    }
    let heading = words.heading(Level::Section, &Text::new(id));
    std::iter::once(heading).chain(blocks).collect()
}

/// The tense, and which outing this is.
fn head(plan: &Plan, words: &Words<'_>) -> Vec<Block> {
    let head = &plan.head;
    let tense = match head.tense {
        Tense::Before => "view-plan-before",
        Tense::OnTheDay => "view-plan-on-the-day",
    };
    let hours = Text::new("view-plan-hours")
        .with("day", head.date)
        .with("from", day::clock(head.from))
        .with("to", day::clock(head.to));
    let as_of = Text::new("view-plan-as-of")
        .with("day", head.as_of.date())
        .with("time", day::clock(head.as_of.time()))
        .with("herbal", head.herbal_version.chars().take(12).collect::<String>());
    let fact = |id: &str, value: Prose| words.fact(&Text::new(id), value);
    let facts: Vec<Fact> = vec![
        fact("view-plan-when", words.prose(&hours)),
        fact("view-plan-leader", Prose::new().said(&head.leader)),
        fact("view-plan-region", words.word(&format!("region-{}", head.region.word())).into()),
        fact("view-plan-worked", words.prose(&as_of)),
    ];
    vec![words.para(&Text::new(tense)), Block::Facts(facts)]
}

/// The same blocks one step deeper, so that their headings stand below one of ours.
pub(in crate::views) fn deeper(blocks: impl IntoIterator<Item = Block>) -> Vec<Block> {
    let down = |block| match block {
        Block::Heading(mut heading) => {
            heading.level = match heading.level {
                Level::Section => Level::Part,
                Level::Part | Level::Point => Level::Point,
            };
            Block::Heading(heading)
        }
        other => other,
    };
    blocks.into_iter().map(down).collect()
}

/// The usual name of a plant with its scientific one.
fn called(plan: &Plan, taxon: &str) -> Prose {
    let known = plan.plants.iter().find(|plant| plant.taxon == taxon);
    match known {
        Some(plant) => Prose::new().said(&plant.common).text(" (").taxon(taxon).text(")"),
        None => Prose::new().taxon(taxon),
    }
}
