//! Recipes, spoon weights, drying and keeping.

use crate::file::Reader;
use serde::{Deserialize, Serialize};

/// Recipes, spoon weights, drying and keeping.
#[derive(Clone, Debug, Default, Serialize, Deserialize)]
pub struct Kitchen {}

impl Kitchen {
    pub(crate) fn read(_reader: &mut Reader<'_>) -> Self {
        Self::default()
    }
}
