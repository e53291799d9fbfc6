//! What somebody takes home of a plant, in the order of a lesson: when it is there, how to know it from
//! afar to near, what it is taken for, what hurts, how much to leave, what to make of it, what holds for
//! everybody, and three questions.
//!
//! What holds for some people only is asked, not handed round. Notes on uses and titles of sources
//! speak of such people too: notes are left out, and sources go by their authors and addresses.

use super::notes::Notes;
use super::{View, drawn};
use crate::{Block, Kind, Page, Prose, Target, Words};
use desk::SheetReply;
use ground::{Condition, Source, SourceId, Text};
use std::collections::{BTreeMap, BTreeSet};

/// What an outing adds to what is known of a plant.
pub(in crate::views) struct FromOuting<'a> {
    /// The characters that settle it, besides those that must be looked at and the tells.
    pub(in crate::views) looks: BTreeSet<&'a str>,
    /// How much to leave, under its heading.
    pub(in crate::views) leave: Vec<Block>,
    /// What to make of it, under its heading.
    pub(in crate::views) recipe: Vec<Block>,
    /// When, by whom, from which herbal.
    pub(in crate::views) foot: Block,
}

/// What it is called.
pub(in crate::views) fn title(reply: &SheetReply) -> Text {
    Text::new("view-home-title")
        .taxon("name", &reply.sheet.name)
        .with("common", reply.sheet.usual_name())
}

pub(in crate::views) fn page(
    reply: &SheetReply,
    outing: FromOuting<'_>,
    words: &Words<'_>,
    cited: impl Fn(&SheetReply) -> BTreeSet<SourceId>,
) -> Page {
    let mut shared = shared(reply, &outing.looks);
    let kept = cited(&shared);
    shared.sources = reply.sources.clone();
    shared.sources.retain(|id, _| kept.contains(id));
    let words = words.with_sources(&shared.sources);
    let view = View { reply: &shared, words, notes: Notes::of(&shared.sources) };
    let (first, later) = view.harm_in_place(vec![view.harm()]);
    let parts = [
        first,
        view.drawn(),
        view.months(),
        view.far_to_near(),
        view.must_look(),
        view.twins_or_none(),
        later,
        outing.leave,
        view.parts(),
        outing.recipe,
        view.cautions(),
        vec![view.words.para(&Text::new("view-home-ask"))],
        view.questions(),
        vec![outing.foot],
        view.section("sheet-sources", by_author(&shared.sources)),
    ];
    words.page(Kind::Public, &title(reply)).with(parts.into_iter().flatten())
}

/// What of a sheet is for everybody, and no more of it than is looked at.
fn shared(reply: &SheetReply, looks: &BTreeSet<&str>) -> SheetReply {
    let mut shared = SheetReply { sources: BTreeMap::new(), ..reply.clone() };
    shared.cautions.retain(|caution| caution.who == Condition::All);
    shared.parts.iter_mut().for_each(|part| part.note = None);
    shared.sheet.gathered_for.clear();
    shared.sheet.conflicts.clear();
    let tells: BTreeSet<_> = reply.twins.iter().flat_map(|twin| twin.tells.keys()).collect();
    // What is drawn is also said, with its sources.
    let drawn = drawn::characters(&reply.cells);
    shared.cells.retain(|id, _| {
        drawn.contains(id.as_str())
            || looks.contains(id.as_str())
            || tells.contains(id)
            || reply.sheet.must_look.contains(id)
    });
    shared.sheet.characters.retain(|id, _| shared.cells.contains_key(id));
    shared
}

fn by_author(sources: &BTreeMap<SourceId, Source>) -> Option<Block> {
    let named =
        sources.values().map(|source| match source.address.as_deref().and_then(Target::web) {
            Some(to) => Prose::new().link(&source.author, to),
            None => Prose::new().said(&source.author),
        });
    (!sources.is_empty()).then(|| Block::notes(named))
}
