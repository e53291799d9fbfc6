//! Requests and replies.

use crate::apart::{ApartOrder, ApartReply, apart};
use crate::keying::{KeyOrder, KeyReply, key};
use crate::knowledge::{CheckReply, check};
use crate::label::{LabelOrder, LabelsReply, labels};
use crate::naming::{NameOrder, NameReply, name};
use crate::outing::InputFile;
use crate::pairing::{PairsOrder, PairsReply, pairs};
use crate::reading::{StepOrder, StepReply, by_looks, step};
use crate::sorting::{SortingOrder, SortingReply, sorting};
use crate::sums::{Sum, SumReply, work_out};
use crate::teaching::{TeachReply, teach};
use crate::{World, device};
use ground::Faults;
use serde::{Deserialize, Serialize};

/// Everything that can be asked.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Request {
    /// What a plant in hand is, or whether it is this one.
    Name(NameOrder),
    /// What a plant in hand is, by a file of looks.
    Looks {
        /// The file.
        file: InputFile,
    },
    /// The next step of reading a plant in hand into a file of looks.
    Step(StepOrder),
    /// What tells a plant from all that it is taken for.
    Apart(ApartOrder),
    /// A key to some plants, to be printed.
    Key(KeyOrder),
    /// Labels for what is made and for the lots there are.
    Labels {
        /// The file, and those that it includes.
        files: Vec<InputFile>,
        /// Which, and on what.
        order: LabelOrder,
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
    HerbalPairs(PairsOrder),
    /// How likely a wrong piece stays in a basket, and how it is sorted.
    Sorting(SortingOrder),
    /// A small sum.
    Sum(Sum),
    /// What is asked on a device too.
    #[serde(untagged)]
    Device(device::Request),
}

/// What comes back.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Reply {
    /// What a plant in hand is.
    Name(Box<NameReply>),
    /// What a step did, and what is asked now.
    Step(Box<StepReply>),
    /// What tells a plant from all that it is taken for.
    Apart(Box<ApartReply>),
    /// A key.
    Key(Box<KeyReply>),
    /// Labels.
    Labels(LabelsReply),
    /// Sheets for the teacher.
    Sheet(TeachReply),
    /// What the herbal lacks.
    HerbalCheck(CheckReply),
    /// What could pass for what.
    HerbalPairs(PairsReply),
    /// A basket, and how it is sorted.
    Sorting(Box<SortingReply>),
    /// A small sum.
    Sum(SumReply),
    /// What comes back on a device too.
    #[serde(untagged)]
    Device(device::Reply),
}

impl From<device::Request> for Request {
    fn from(request: device::Request) -> Self {
        Self::Device(request)
    }
}

/// Answers a request.
///
/// # Errors
/// Every fault of the request, with what was wanted and how to mend it.
pub fn answer(world: &World, request: impl Into<Request>) -> Result<Reply, Faults> {
    Ok(match request.into() {
        Request::Name(order) => Reply::Name(Box::new(name(world, &order)?)),
        Request::Looks { file } => {
            Reply::Device(device::Reply::InHand(Box::new(by_looks(world, &file)?)))
        }
        Request::Step(order) => Reply::Step(Box::new(step(world, &order)?)),
        Request::Apart(order) => Reply::Apart(Box::new(apart(world, &order)?)),
        Request::Key(order) => Reply::Key(Box::new(key(world, &order)?)),
        Request::Labels { files, order } => {
            Reply::Labels(labels(world, &*world.outing(&files)?, &order)?)
        }
        Request::Sheet { names } => Reply::Sheet(teach(world, &names)?),
        Request::HerbalPairs(order) => Reply::HerbalPairs(pairs(world, &order)?),
        Request::HerbalCheck { account } => Reply::HerbalCheck(check(world, &account)),
        Request::Sorting(order) => Reply::Sorting(Box::new(sorting(world, &order)?)),
        Request::Sum(sum) => Reply::Sum(work_out(sum)?),
        Request::Device(request) => Reply::Device(device::answer(world, request)?),
    })
}
