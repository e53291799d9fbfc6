//! What goes in and comes out.

use jiff::civil::DateTime;
use serde::{Deserialize, Serialize};

/// One tap: an address, and what a form said.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct Visit {
    /// The address after the `#`, such as `/herbal/Urtica%20dioica`.
    pub to: String,
    /// The clock on the wall.
    pub now: DateTime,
    /// What a form said; none where a link was followed.
    #[serde(default)]
    pub form: Option<Form>,
}

/// The fields of a form in their order; one with several answers stands several times.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Form(pub Vec<(String, String)>);

impl Form {
    /// What a field says, without the white around it.
    #[must_use]
    pub fn said(&self, field: &str) -> Option<&str> {
        let said = self.0.iter().find(|(name, _)| name == field);
        said.map(|(_, said)| said.trim()).filter(|said| !said.is_empty())
    }
}

/// A screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Shown {
    /// Its address, which a form may have changed.
    pub at: String,
    /// Its title.
    pub title: String,
    /// What stands in `main`, as HTML.
    pub main: String,
}
