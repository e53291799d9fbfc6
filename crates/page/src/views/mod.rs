//! Replies as pages. A view holds no formula and no sentence: it puts what a reply says into blocks.

mod allowance;
mod apart;
mod basket;
mod check;
mod compare;
mod drawn;
mod flags;
mod key;
mod labels;
mod list;
mod make;
mod name;
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
use desk::{Reply, device};

/// A reply, of the whole front door or of what a device asks.
pub trait Viewed {
    /// Its page.
    fn page(&self, words: &Words<'_>) -> Page;
}

/// The page of a reply.
#[must_use]
pub fn view(reply: &impl Viewed, words: &Words<'_>) -> Page {
    reply.page(words)
}

impl Viewed for Reply {
    fn page(&self, words: &Words<'_>) -> Page {
        match self {
            Self::Name(reply) => name::page(reply, words),
            Self::Step(reply) => step::page(reply, words),
            Self::Apart(reply) => apart::page(reply, words),
            Self::Key(reply) => key::page(reply, words),
            Self::Labels(reply) => labels::page(reply, words),
            Self::Sheet(reply) => sheet::teach::page(reply, words),
            Self::HerbalCheck(reply) => check::page(reply, words),
            Self::HerbalPairs(reply) => pairs::page(reply, words),
            Self::Sorting(reply) => sorting::page(reply, words),
            Self::Sum(reply) => sums::page(reply, words),
            Self::Device(reply) => reply.page(words),
        }
    }
}

impl Viewed for device::Reply {
    fn page(&self, words: &Words<'_>) -> Page {
        match self {
            Self::Plan(plan) => plan::page(plan, words),
            Self::InHand(reply) => name::page(reply, words),
            Self::NextLook(reply) => name::next_look(reply, words),
            Self::Compare(reply) => compare::page(reply, words),
            Self::Allowance(stands) => allowance::page(stands, words),
            Self::Basket(lots) => basket::page(lots, words),
            Self::Pots(pots) => make::pots(pots, words),
            Self::Make(reply) => make::page(reply, words),
            Self::Serving(reply) => serving::page(reply, words),
            Self::Flags(flags) => flags::page(flags, words),
            Self::HerbalList(reply) => list::page(reply, words),
            Self::HerbalShow(reply) => sheet::page(reply, words),
        }
    }
}
