//! Land rules, fractions that may be taken, distances to keep.

use crate::file::Reader;
use serde::{Deserialize, Serialize};

/// Land rules, fractions that may be taken, distances to keep.
#[derive(Clone, Debug, Default, Serialize, Deserialize)]
pub struct Land {}

impl Land {
    pub(crate) fn read(_reader: &mut Reader<'_>) -> Self {
        Self::default()
    }
}
