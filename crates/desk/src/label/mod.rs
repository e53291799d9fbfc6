//! Labels for what there is: for each jar of a batch or wish, and for each lot.

mod sheet;

pub use sheet::{Hundredths, LabelSheet, Paper};

use crate::World;
use crate::outing::Outing;
use crate::plan::{LabelPlan, plan};
use ground::{Fault, Faults, Place, Region};
use serde::{Deserialize, Serialize};

/// More copies of one label than anybody sticks on in a day are a slip of the pen.
const MOST_COPIES: u32 = 99;

/// Which labels are wanted, and on what.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct LabelOrder {
    /// Width and height of a label in millimetres, such as `63.5x38.1`; the largest that are sold
    /// when left out.
    pub size: Option<String>,
    /// What they are printed on; what is usual where the outing goes when left out.
    pub paper: Option<Paper>,
    /// How many of each; a label for each jar when left out.
    pub copies: Option<u32>,
    /// Only those of these wishes, batches and lots; all when empty.
    pub only: Vec<String>,
}

/// Labels, and the sheet they go on.
#[derive(Clone, Debug, Serialize)]
pub struct LabelsReply {
    /// The sheet.
    pub sheet: LabelSheet,
    /// The labels, each once, with the number of its copies.
    pub labels: Vec<LabelPlan>,
}

/// What labels are usually printed on in a region.
#[must_use]
pub fn usual_paper(region: Region) -> Paper {
    match region {
        Region::Europe => Paper::A4,
        Region::NorthAmerica => Paper::Letter,
    }
}

pub(crate) fn labels(
    world: &World,
    outing: &Outing,
    order: &LabelOrder,
) -> Result<LabelsReply, Faults> {
    let mut faults = Faults::none();
    let paper = order.paper.unwrap_or_else(|| usual_paper(outing.wishes.region));
    let sheet = match &order.size {
        Some(size) => faults.note_all(LabelSheet::of(size, paper)),
        None => Some(LabelSheet::usual(paper)),
    };
    let copies = order.copies.unwrap_or(1);
    if !(1..=MOST_COPIES).contains(&copies) {
        let at = Place::entry("label", "", "copies");
        let fault = Fault::new("label-copies", at, copies.to_string());
        faults.add(fault.with("most", MOST_COPIES));
    }
    let mut labels = plan(world, outing, false)?.labels;
    for name in &order.only {
        if !labels.iter().any(|label| label.answers_to(name)) {
            let known: Vec<_> = labels.iter().map(|label| label.name.as_str().into()).collect();
            let at = Place::entry("label", "", "only");
            faults.add(Fault::new("no-such-label", at, name.as_str()).with("known", known));
        }
    }
    labels.retain(|label| {
        order.only.is_empty() || order.only.iter().any(|name| label.answers_to(name))
    });
    for label in &mut labels {
        label.copies = order.copies.unwrap_or(label.copies).clamp(1, MOST_COPIES);
    }
    let sheet = sheet.unwrap_or_else(|| LabelSheet::usual(paper));
    faults.or(LabelsReply { sheet, labels })
}
