//! A sheet of one plant for whoever teaches it, in the order of a lesson: where and when it stands, its
//! signs from far to near, its twins beside it, what hurts, how much to leave, the kitchen, who should
//! not have it, and three questions.

use super::notes::Notes;
use super::{View, uses};
use crate::{Block, Fact, Kind, Level, Page, Prose, Words};
use desk::{Leave, TeachReply, TeachSheet};
use ground::{Harm, Text};
use harvest::TakeRule;

/// Centimetres of the ruler.
const RULER: u8 = 15;

/// The sheets of a reply: one plant is a page of its own, several stand below one another.
pub(in crate::views) fn page(reply: &TeachReply, words: &Words<'_>) -> Page {
    let pages = reply.sheets.iter().map(|sheet| plant_page(sheet, &reply.herbal_version, words));
    let mut pages: Vec<Page> = pages.collect();
    if let [_] = pages.as_slice()
        && let Some(only) = pages.pop()
    {
        return only;
    }
    let title = Text::new("forms-sheets-title").with("count", pages.len());
    let blocks = pages.into_iter().flat_map(|page| {
        let head = Block::heading(Level::Section, page.title);
        let parts = crate::views::plan::deeper(page.blocks);
        std::iter::once(head).chain(parts).chain([Block::Break(crate::Break::Page)])
    });
    words.page(Kind::Screen, &title).with(blocks.collect::<Vec<_>>())
}

/// The sheet of one plant.
pub(in crate::views) fn plant_page(sheet: &TeachSheet, herbal: &str, words: &Words<'_>) -> Page {
    let known = &sheet.known;
    let words = words.with_sources(&known.sources);
    let view = View { reply: known, words, notes: Notes::of(&known.sources) };
    let title = Text::new("forms-sheet-title")
        .taxon("name", &known.sheet.name)
        .with("common", known.sheet.usual_name());
    let harm = view.section("forms-sheet-hurts", [view.harm()]);
    let (first, later) = view.harm_in_place(harm);
    let parts = [
        first,
        view.names(),
        view.months(),
        view.far_to_near(),
        vec![view.words.ruler(RULER)],
        view.must_look(),
        view.twins_or_none(),
        later,
        view.gather(sheet),
        view.parts(),
        view.cautions(),
        view.questions(),
        view.foot(herbal),
        view.sources(),
    ];
    words.page(Kind::Screen, &title).with(parts.into_iter().flatten())
}

impl View<'_> {
    /// What hurts has its place behind the twins. What is deadly says so before anything that helps to
    /// find it.
    pub(super) fn harm_in_place(&self, harm: Vec<Block>) -> (Vec<Block>, Vec<Block>) {
        let deadly = self.reply.sheet.feared() == Harm::Deadly;
        if deadly { (harm, Vec::new()) } else { (Vec::new(), harm) }
    }

    /// Its twins; that none is named is said.
    pub(super) fn twins_or_none(&self) -> Vec<Block> {
        let none = Text::new("forms-sheet-no-twins");
        if self.reply.twins.is_empty() {
            return self.section("forms-sheet-twins", [self.words.para(&none)]);
        }
        self.twins()
    }

    /// How much of each part may go, what else limits it, what is done once it is picked.
    fn gather(&self, sheet: &TeachSheet) -> Vec<Block> {
        let protected =
            self.reply.sheet.protected.as_deref().map(|says| {
                self.words.prose(&Text::new("forms-sheet-protected").with("says", says))
            });
        let shares = sheet.leave.iter().flat_map(|row| self.leave(row));
        let cares = sheet
            .cares
            .iter()
            .map(|care| Prose::new().said(&care.says).then(self.mark(&care.from)));
        let points = protected.into_iter().chain(shares).chain(cares);
        self.section("forms-sheet-gather", uses::bullets(points))
    }

    fn leave(&self, row: &Leave) -> Vec<Prose> {
        let part = || Text::new(format!("part-{}", row.part.word()));
        let rule = |rule: &TakeRule| {
            let says = Text::new("forms-sheet-share")
                .with("part", part())
                .with("says", rule.says.as_str());
            self.words.prose(&says).then(self.mark(&rule.from))
        };
        let none = || self.words.prose(&Text::new("forms-sheet-no-share").with("part", part()));
        let share = row.share.as_ref().map_or_else(none, rule);
        std::iter::once(share).chain(row.limits.iter().map(rule)).collect()
    }

    /// Date and teacher to fill in, and the version of the herbal.
    fn foot(&self, herbal: &str) -> Vec<Block> {
        let blank = |id: &str| Block::Para(self.words.prose(&Text::new(id)).blank());
        let version: String = herbal.chars().take(12).collect();
        let version = Text::new("forms-sheet-version").with("herbal", version);
        vec![blank("forms-sheet-date"), blank("forms-sheet-author"), self.words.para(&version)]
    }
}

/// A line at the foot of a hand-out: when, by whom, from which herbal.
pub(in crate::views) fn hand_out_foot(head: &desk::Head, words: &Words<'_>) -> Block {
    let facts: [Fact; 3] = [
        words.fact(&Text::new("view-plan-when"), words.catalogue.day(head.date)),
        words.fact(&Text::new("view-plan-leader"), Prose::new().said(&head.leader)),
        words.fact(
            &Text::new("forms-sheet-herbal"),
            head.herbal_version.chars().take(12).collect::<String>(),
        ),
    ];
    Block::Facts(facts.into())
}
