//! Requests and replies.

use crate::World;
#[cfg(feature = "command-line")]
use crate::apart::{ApartOrder, ApartReply, apart};
use crate::in_hand::{InHandOrder, NextLookOrder, NextLookReply, in_hand, next_look};
#[cfg(feature = "command-line")]
use crate::keying::{KeyOrder, KeyReply, key};
use crate::knowledge::{CheckReply, ListReply, SheetReply, check, list, show};
use crate::label::{LabelOrder, LabelsReply, labels};
use crate::making::{MakeOrder, MakeReply, make};
use crate::naming::{CompareReply, NameOrder, NameReply, compare, name};
use crate::outing::InputFile;
#[cfg(feature = "command-line")]
use crate::pairing::{PairsOrder, PairsReply, pairs};
use crate::plan::flags::flags;
use crate::plan::{LotPlan, Plan, PotPlan, TakePlan, allowances, basket, plan, pots, servings};
use crate::reading::{StepOrder, StepReply, by_looks, step};
use crate::serving::ServingReply;
use crate::sorting::{SortingOrder, SortingReply, sorting};
use crate::sums::{Sum, SumReply, work_out};
use crate::teaching::{TeachReply, teach};
use ground::Faults;
use serde::{Deserialize, Serialize};

/// Everything that can be asked.
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
    /// What a plant in hand is, or whether it is this one.
    Name(NameOrder),
    /// What a plant in hand is, at a stand of an outing.
    InHand(InHandOrder),
    /// What a reader looks at next of a plant in hand.
    NextLook(NextLookOrder),
    /// What a plant in hand is, by a file of looks.
    Looks {
        /// The file.
        file: InputFile,
    },
    /// The next step of reading a plant in hand into a file of looks.
    Step(StepOrder),
    /// What tells two plants apart.
    Compare {
        /// The plants, by any of their names.
        plants: [String; 2],
    },
    /// What tells a plant from all that it is taken for.
    #[cfg(feature = "command-line")]
    Apart(ApartOrder),
    /// A key to some plants, to be printed.
    #[cfg(feature = "command-line")]
    Key(KeyOrder),
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
    /// Labels for what is made and for the lots there are.
    Labels {
        /// The file, and those that it includes.
        files: Vec<InputFile>,
        /// Which, and on what.
        order: LabelOrder,
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
    /// A sheet for the teacher of each of these plants.
    Sheet {
        /// Their scientific, common or former names.
        names: Vec<String>,
    },
    /// What the herbal lacks.
    HerbalCheck {
        /// Where each of its rows stands and what it rests on.
        account: herbal::Account,
    },
    /// How many readings must go wrong before something dangerous passes for what is gathered.
    #[cfg(feature = "command-line")]
    HerbalPairs(PairsOrder),
    /// How likely a wrong piece stays in a basket, and how it is sorted.
    Sorting(SortingOrder),
    /// A small sum.
    Sum(Sum),
}

/// What comes back.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Reply {
    /// An outing, worked out.
    Plan(Box<Plan>),
    /// What a plant in hand is.
    Name(Box<NameReply>),
    /// What a plant in hand is so far.
    InHand(Box<NameReply>),
    /// What to look at next.
    NextLook(NextLookReply),
    /// What a step did, and what is asked now.
    Step(Box<StepReply>),
    /// What tells two plants apart.
    Compare(CompareReply),
    /// What tells a plant from all that it is taken for.
    #[cfg(feature = "command-line")]
    Apart(Box<ApartReply>),
    /// A key.
    #[cfg(feature = "command-line")]
    Key(Box<KeyReply>),
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
    /// Labels.
    Labels(LabelsReply),
    /// Plants.
    HerbalList(ListReply),
    /// One plant.
    HerbalShow(Box<SheetReply>),
    /// Sheets for the teacher.
    Sheet(TeachReply),
    /// What the herbal lacks.
    HerbalCheck(CheckReply),
    /// What could pass for what.
    #[cfg(feature = "command-line")]
    HerbalPairs(PairsReply),
    /// A basket, and how it is sorted.
    Sorting(Box<SortingReply>),
    /// A small sum.
    Sum(SumReply),
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
        Request::Name(order) => Reply::Name(Box::new(name(world, &order)?)),
        Request::InHand(order) => Reply::InHand(Box::new(in_hand(world, &order)?)),
        Request::NextLook(order) => Reply::NextLook(next_look(world, &order)?),
        Request::Looks { file } => Reply::InHand(Box::new(by_looks(world, &file)?)),
        Request::Step(order) => Reply::Step(Box::new(step(world, &order)?)),
        Request::Compare { plants } => Reply::Compare(compare(world, &plants)?),
        #[cfg(feature = "command-line")]
        Request::Apart(order) => Reply::Apart(Box::new(apart(world, &order)?)),
        #[cfg(feature = "command-line")]
        Request::Key(order) => Reply::Key(Box::new(key(world, &order)?)),
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
        Request::Labels { files, order } => {
            Reply::Labels(labels(world, &*world.outing(&files)?, &order)?)
        }
        Request::HerbalList { words } => Reply::HerbalList(list(&world.herbal, &words)),
        Request::HerbalShow { name } => Reply::HerbalShow(Box::new(show(world, &name)?)),
        Request::Sheet { names } => Reply::Sheet(teach(world, &names)?),
        #[cfg(feature = "command-line")]
        Request::HerbalPairs(order) => Reply::HerbalPairs(pairs(world, &order)?),
        Request::HerbalCheck { account } => Reply::HerbalCheck(check(world, &account)),
        Request::Sorting(order) => Reply::Sorting(Box::new(sorting(world, &order)?)),
        Request::Sum(sum) => Reply::Sum(work_out(sum)?),
    })
}
