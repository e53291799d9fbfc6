//! Who is handed what, on paper: a box to tick and room for the time in each cell that may be handed.
//! It says what, and never why.

use super::people;
use crate::{Block, Column, Format, Kind, Page, Prose, Table, Words};
use desk::{Handed, MakePlan, Plan};
use dose::Strictness;
use ground::Text;

/// More dishes than this do not fit across a sheet that is turned on its side.
const ACROSS: usize = 5;
/// Letters of a name that are shown: the code beside it says who is meant.
const LETTERS: usize = 40;

/// What it is called.
pub(super) fn title(plan: &Plan) -> Text {
    Text::new("view-list-title").with("name", plan.head.name.as_str())
}

/// The list of an outing.
pub(super) fn serving_list(plan: &Plan, words: &Words<'_>) -> Page {
    let page = words.page(Kind::Public, &title(plan)).on(Format::Wide);
    if plan.makes.is_empty() || plan.people.is_empty() {
        return page.with([words.para(&Text::new("view-serving-nobody"))]);
    }
    page.with([
        words.para(&Text::new("view-serving-proposal")),
        words.para(&Text::new("forms-list-tick")),
        Block::lines(words.word("forms-list-head-count"), 1),
        Block::lines(words.word("forms-list-changed"), 1),
    ])
    .with(tables(plan, words))
    .with(people::provisos(plan, words))
    .with([words.para(&Text::new("view-list-ask"))])
}

/// People down, dishes across; as many tables as it takes, each about as wide as the others.
fn tables(plan: &Plan, words: &Words<'_>) -> Vec<Block> {
    let all = plan.makes.len();
    let each = all.div_ceil(all.div_ceil(ACROSS).max(1)).max(1);
    let parts = plan.makes.chunks(each).zip((1..).step_by(each));
    parts.map(|(makes, from)| table(plan, (makes, from), words)).collect()
}

fn table(plan: &Plan, (makes, from): (&[MakePlan], usize), words: &Words<'_>) -> Block {
    let dishes = makes.iter().map(|wish| Column::words(Prose::new().said(&shown(&wish.called))));
    let heads = ["forms-list-code", "view-serving-person"];
    let heads = heads.map(|id| Column::words(words.word(id)));
    let row = |(name, called): (&String, &String)| {
        let cells = makes.iter().map(|wish| cell(wish.handed_out.get(name), words));
        let who = [Prose::new().code(&shown(name)), Prose::new().said(&shown(called))];
        who.into_iter().chain(cells).collect()
    };
    let (from, to) = (from, from + makes.len() - 1);
    let caption = if makes.len() == plan.makes.len() {
        words.word("view-serving-caption").into()
    } else {
        words.prose(&Text::new("forms-list-dishes").with("from", from).with("to", to))
    };
    Block::Table(Table {
        caption,
        columns: heads.into_iter().chain(dishes).collect(),
        rows_have_heads: true,
        rows: plan.people.iter().map(row).collect(),
    })
}

/// What may be handed, with a box and room for the time; neither where nothing may be.
fn cell(handed: Option<&Handed>, words: &Words<'_>) -> Prose {
    let says = people::cell(handed, words);
    if handed.is_none_or(|handed| handed.outcome.strictness() > Strictness::AtMost) {
        return says;
    }
    says.text(&words.word("forms-list-box")).blank()
}

/// The beginning of a name, with a sign that it goes on.
fn shown(name: &str) -> String {
    if name.chars().count() <= LETTERS {
        return name.to_owned();
    }
    let start: String = name.chars().take(LETTERS - 1).collect();
    start.trim_end().to_owned() + "…"
}
