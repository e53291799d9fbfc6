//! The sealed list: why each decision is what it is, each person on a sheet of paper of their own.
//! Its first page is its outside when it is folded, and says nothing but what it is.

use super::{sources, why_of};
use crate::{Block, Break, Kind, Level, Page, Prose, Words};
use desk::Plan;
use ground::{Answer, Text};

/// What it is called.
pub(super) fn title(plan: &Plan) -> Text {
    Text::new("view-sealed-outside").with("name", plan.head.name.as_str())
}

pub(super) fn sealed_list(plan: &Plan, words: &Words<'_>) -> Page {
    let numbers = sources::numbers(&plan.sealed, words);
    let words = &words.numbered(&numbers);
    let sheets = plan.people.keys().flat_map(|person| sheet(plan, person, words));
    let last = sources::list(&numbers, words);
    let count = plan.people.len() + usize::from(!last.is_empty());
    let inside = Text::new("view-sealed-sheets").with("count", count);
    let mut page = words.page(Kind::Sealed, &title(plan)).with([words.para(&inside)]).with(sheets);
    page.band = Some(words.word("view-sealed-band").into());
    if last.is_empty() {
        return page;
    }
    let heading = words.heading(Level::Section, &Text::new("view-plan-sources"));
    page.with([Block::Break(Break::Page), heading]).with(last)
}

/// The sheet of one person: the name and who may open it above the fold, all else below.
fn sheet(plan: &Plan, person: &str, words: &Words<'_>) -> Vec<Block> {
    let called = plan.people.get(person).map_or(person, String::as_str);
    let fold = Prose::from(words.word("view-sealed-fold"));
    let mut blocks = vec![
        Block::Break(Break::Page),
        Block::heading(Level::Section, Prose::new().said(called)),
        words.para(&opens(plan)),
        kept(plan, words),
        words.para(&Text::new("page-sealed")),
        Block::Para(fold),
        Block::Break(Break::Rule),
    ];
    blocks.extend(why_of(plan, person, words));
    blocks
}

fn opens(plan: &Plan) -> Text {
    let text = |id: &str| Text::new(id).with("leader", plan.head.leader.as_str());
    match &plan.emergency.first_aider {
        Some(aider) => text("view-sealed-opens").with("aider", aider.as_str()),
        None => text("view-sealed-opens-alone"),
    }
}

fn kept(plan: &Plan, words: &Words<'_>) -> Block {
    match &plan.keep_until {
        Answer::Known(day) => words.para(&Text::new("view-sealed-destroy").with("day", *day)),
        Answer::Refused(_) => {
            let open = words.word("view-sealed-destroy-open");
            Block::Para(Prose::from(open).text(" ").blank())
        }
    }
}
