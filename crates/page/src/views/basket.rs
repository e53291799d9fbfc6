//! What came in: whether each lot may be used, and what a piece that does not belong holds up.

use super::plan;
use crate::{Block, Kind, NoticeKind, Page, Words};
use desk::LotPlan;
use ground::Text;
use journal::Fitness;

pub(super) fn page(lots: &[LotPlan], words: &Words<'_>) -> Page {
    let page = words.page(Kind::Screen, &Text::new("view-basket-title"));
    if lots.is_empty() {
        return page.with([words.para(&Text::new("view-basket-empty"))]);
    }
    let held = lots.iter().filter_map(|lot| holds_up(lot, words));
    page.with(held).with(plan::lots(lots, words)).with([words.para(&Text::new("view-basket-rule"))])
}

/// What waits for this lot, where something was found in it.
fn holds_up(lot: &LotPlan, words: &Words<'_>) -> Option<Block> {
    let Fitness::Held { lot: of, what } = &lot.state.fitness else { return None };
    let says = Text::new("view-basket-held")
        .with("lot", lot.name.as_str())
        .with("of", of.as_str())
        .with("found", words.catalogue.list(what));
    let waiting = Text::new("view-basket-holds-up")
        .with("count", lot.batches.len())
        .with("batches", words.catalogue.list(&lot.batches));
    Some(words.notice(NoticeKind::DoNot, [words.para(&says), words.para(&waiting)]))
}
