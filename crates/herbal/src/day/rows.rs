//! How the files in `day/` are written.

use serde::Deserialize;
use toml::Spanned;

/// Any file in the folder: each may hold any of the tables.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct DayFile {
    #[serde(default)]
    pub(super) rule: Vec<RuleRow>,
    #[serde(default)]
    pub(super) say: Vec<LineRow>,
    #[serde(default)]
    pub(super) keep: Vec<LineRow>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RuleRow {
    pub(super) id: Spanned<String>,
    pub(super) order: u8,
    #[serde(default)]
    pub(super) water_only: bool,
    pub(super) when: String,
    pub(super) done: String,
    pub(super) src: Spanned<Vec<String>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct LineRow {
    pub(super) id: Spanned<String>,
    pub(super) order: u8,
    pub(super) says: String,
    pub(super) src: Spanned<Vec<String>>,
}
