//! Species, characters and look-alikes: sheets and glossary read into a table to judge by.

use crate::file::Reader;
use serde::{Deserialize, Serialize};

/// Species, characters and look-alikes: sheets and glossary read into a table to judge by.
#[derive(Clone, Debug, Default, Serialize, Deserialize)]
pub struct Flora {}

impl Flora {
    pub(crate) fn read(_reader: &mut Reader<'_>) -> Self {
        Self::default()
    }
}
