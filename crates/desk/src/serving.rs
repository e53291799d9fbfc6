//! Who may have what, and how much: the part of a plan that a serving table needs.

use crate::plan::{MakePlan, SealedRow};
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
