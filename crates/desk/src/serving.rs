//! Who may have what, and how much: the part of a plan that a serving table needs.

use crate::World;
use crate::outing::Outing;
use crate::plan::{MakePlan, SealedRow, plan};
use ground::Faults;
use serde::Serialize;
use std::collections::BTreeMap;

/// Who may have what.
#[derive(Clone, Debug, Serialize)]
pub struct ServingReply {
    /// What is made, and what may be handed to whom.
    pub makes: Vec<MakePlan>,
    /// Who comes, by short name.
    pub people: BTreeMap<String, String>,
    /// Why. Only where it was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sealed: Option<Vec<SealedRow>>,
}

pub(crate) fn servings(
    world: &World,
    outing: &Outing,
    reasons: bool,
) -> Result<ServingReply, Faults> {
    let plan = plan(world, outing, reasons)?;
    Ok(ServingReply { makes: plan.makes, people: plan.people, sealed: plan.sealed })
}
