//! What the app on a device asks: a part of everything that can be asked.
//!
//! A program that asks [`answer`] alone is linked without whatever answers the rest, and is that much
//! smaller on its way to a phone.

use crate::World;
use crate::in_hand::{InHandOrder, NextLookOrder, NextLookReply, in_hand, next_look};
use crate::knowledge::{ListReply, SheetReply, list, show};
use crate::making::{MakeOrder, MakeReply, make};
use crate::naming::{CompareReply, NameReply, compare};
use crate::outing::InputFile;
use crate::plan::flags::flags;
use crate::plan::{LotPlan, Plan, PotPlan, TakePlan, allowances, basket, plan, pots, servings};
use crate::serving::ServingReply;
use ground::Faults;
use serde::{Deserialize, Serialize};

/// What can be asked on a device.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Request {
    /// An outing, worked out.
    Plan {
        /// Its file, and those that it includes.
        files: Vec<InputFile>,
        /// Whether the leader's reasons are wanted too.
        reasons: bool,
    },
    /// What a plant in hand is, at a stand of an outing.
    InHand(InHandOrder),
    /// What a reader looks at next of a plant in hand.
    NextLook(NextLookOrder),
    /// What tells two plants apart.
    Compare {
        /// The plants, by any of their names.
        plants: [String; 2],
    },
    /// How much may go from the stands of an outing file.
    Allowance {
        /// The file, and those that it includes.
        files: Vec<InputFile>,
    },
    /// How the lots of an outing file stand.
    Basket {
        /// The file, and those that it includes.
        files: Vec<InputFile>,
    },
    /// What goes into the pots of an outing file, and what comes of it.
    Pots {
        /// The file, and those that it includes.
        files: Vec<InputFile>,
    },
    /// A preparation, forwards or backwards.
    Make(Box<MakeOrder>),
    /// Who may have what, and how much.
    Serving {
        /// The file, and those that it includes.
        files: Vec<InputFile>,
        /// Whether the leader's reasons are wanted too.
        reasons: bool,
    },
    /// Who may be handed what, for a device that knows nobody's answers.
    Flags {
        /// The file, and those that it includes.
        files: Vec<InputFile>,
    },
    /// The plants of the herbal, or those whose names fit these words.
    HerbalList {
        /// Words of a name; all plants when empty.
        words: String,
    },
    /// What is known of one plant.
    HerbalShow {
        /// Its scientific, common or former name.
        name: String,
    },
}

/// What comes back.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Reply {
    /// An outing, worked out.
    Plan(Box<Plan>),
    /// What a plant in hand is so far.
    InHand(Box<NameReply>),
    /// What to look at next.
    NextLook(NextLookReply),
    /// What tells two plants apart.
    Compare(CompareReply),
    /// How much may go.
    Allowance(Vec<TakePlan>),
    /// How lots stand.
    Basket(Vec<LotPlan>),
    /// Pots.
    Pots(Vec<PotPlan>),
    /// A preparation.
    Make(Box<MakeReply>),
    /// Who may have what.
    Serving(ServingReply),
    /// Flags.
    Flags(Vec<journal::Flag>),
    /// Plants.
    HerbalList(ListReply),
    /// One plant.
    HerbalShow(Box<SheetReply>),
}

/// Answers a request.
///
/// # Errors
/// Every fault of the request, with what was wanted and how to mend it.
pub fn answer(world: &World, request: Request) -> Result<Reply, Faults> {
    Ok(match request {
        Request::Plan { files, reasons } => {
            Reply::Plan(Box::new(plan(world, &*world.outing(&files)?, reasons)?))
        }
        Request::InHand(order) => Reply::InHand(Box::new(in_hand(world, &order)?)),
        Request::NextLook(order) => Reply::NextLook(next_look(world, &order)?),
        Request::Compare { plants } => Reply::Compare(compare(world, &plants)?),
        Request::Allowance { files } => {
            Reply::Allowance(allowances(world, &*world.outing(&files)?))
        }
        Request::Basket { files } => Reply::Basket(basket(world, &*world.outing(&files)?)),
        Request::Pots { files } => Reply::Pots(pots(world, &*world.outing(&files)?)),
        Request::Make(order) => Reply::Make(Box::new(make(world, &order)?)),
        Request::Serving { files, reasons } => {
            Reply::Serving(servings(world, &*world.outing(&files)?, reasons)?)
        }
        Request::Flags { files } => Reply::Flags(flags(world, &*world.outing(&files)?)?),
        Request::HerbalList { words } => Reply::HerbalList(list(&world.herbal, &words)),
        Request::HerbalShow { name } => Reply::HerbalShow(Box::new(show(world, &name)?)),
    })
}
