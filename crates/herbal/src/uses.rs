//! Uses and harm by part, cautions, contents and limits.

use crate::file::Reader;
use serde::{Deserialize, Serialize};

/// Uses and harm by part, cautions, contents and limits.
#[derive(Clone, Debug, Default, Serialize, Deserialize)]
pub struct Uses {}

impl Uses {
    pub(crate) fn read(_reader: &mut Reader<'_>, _flora: &crate::Flora) -> Self {
        Self::default()
    }
}
