//! Replies as pages. A view holds no formula and no sentence: it puts what a reply says into blocks.

mod allowance;
#[cfg(feature = "command-line")]
mod apart;
mod basket;
mod check;
mod compare;
mod drawn;
mod flags;
#[cfg(feature = "command-line")]
mod key;
mod labels;
mod list;
mod make;
mod name;
#[cfg(feature = "command-line")]
mod pairs;
mod plan;
mod serving;
mod sheet;
mod sheets;
mod signs;
mod sorting;
mod step;
mod sums;

pub use drawn::{plate, state_drawing};
pub(crate) use plan::act;
pub use plan::{Asking, NamedPage, PlannedPage, asking, pages, planned_pages};
pub use sheets::sheet_pages;

use crate::{Page, Words};
use desk::Reply;

/// The page of a reply.
#[must_use]
pub fn view(reply: &Reply, words: &Words<'_>) -> Page {
    match reply {
        Reply::Plan(plan) => plan::page(plan, words),
        Reply::Name(reply) | Reply::InHand(reply) => name::page(reply, words),
        Reply::NextLook(reply) => name::next_look(reply, words),
        Reply::Step(reply) => step::page(reply, words),
        Reply::Compare(reply) => compare::page(reply, words),
        #[cfg(feature = "command-line")]
        Reply::Apart(reply) => apart::page(reply, words),
        #[cfg(feature = "command-line")]
        Reply::Key(reply) => key::page(reply, words),
        Reply::Allowance(stands) => allowance::page(stands, words),
        Reply::Basket(lots) => basket::page(lots, words),
        Reply::Pots(pots) => make::pots(pots, words),
        Reply::Make(reply) => make::page(reply, words),
        Reply::Serving(reply) => serving::page(reply, words),
        Reply::Flags(flags) => flags::page(flags, words),
        Reply::Labels(reply) => labels::page(reply, words),
        Reply::HerbalList(reply) => list::page(reply, words),
        Reply::HerbalShow(reply) => sheet::page(reply, words),
        Reply::Sheet(reply) => sheet::teach::page(reply, words),
        Reply::HerbalCheck(reply) => check::page(reply, words),
        #[cfg(feature = "command-line")]
        Reply::HerbalPairs(reply) => pairs::page(reply, words),
        Reply::Sorting(reply) => sorting::page(reply, words),
        Reply::Sum(reply) => sums::page(reply, words),
    }
}
