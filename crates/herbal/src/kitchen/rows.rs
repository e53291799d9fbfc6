//! The rows of the kitchen's files, as they are written.

use crate::open::Src;
use ground::{Form, KitchenMeasure, MeasureSystem, Part, Spoken};
use prepare::{Class, HerbBasis, HerbState, Shelf, Step, When};
use serde::Deserialize;
use toml::Spanned;

/// A file of `kitchen/`: any table may stand in any file.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct KitchenFile {
    #[serde(default)]
    pub(super) recipe: Vec<Spanned<RecipeRow>>,
    #[serde(default)]
    pub(super) retention: Vec<Spanned<RetentionRow>>,
    #[serde(default)]
    pub(super) spoon: Vec<Spanned<SpoonRow>>,
    #[serde(default)]
    pub(super) keeping: Vec<Spanned<KeepingRow>>,
    #[serde(default)]
    pub(super) note: Vec<Spanned<NoteRow>>,
    #[serde(default, rename = "yield")]
    pub(super) yields: Vec<Spanned<YieldRow>>,
    #[serde(default)]
    pub(super) target: Vec<Spanned<TargetRow>>,
    #[serde(default)]
    pub(super) warmth: Vec<Spanned<WarmthRow>>,
    #[serde(default)]
    pub(super) growth: Vec<Spanned<GrowthRow>>,
    pub(super) stove: Option<Spanned<StoveRow>>,
    pub(super) spread: Option<Spanned<SpreadRow>>,
    pub(super) dried_to: Option<Spanned<DriedToRow>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RecipeRow {
    pub(super) id: String,
    pub(super) name: String,
    pub(super) form: Form,
    pub(super) serving: Spoken,
    pub(super) times_a_day: Option<u32>,
    pub(super) step: Vec<Step>,
    pub(super) src: Src,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RetentionRow {
    pub(super) id: String,
    pub(super) says: String,
    pub(super) ml_per_g: f64,
    pub(super) of: HerbBasis,
    pub(super) src: Src,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct SpoonRow {
    pub(super) id: String,
    pub(super) what: String,
    pub(super) measure: KitchenMeasure,
    pub(super) of: MeasureSystem,
    pub(super) g: f64,
    pub(super) src: Src,
}

/// How far a spoonful may lie off; one for all spoons.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct SpreadRow {
    pub(super) percent: f64,
    pub(super) src: Src,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoveRow {
    pub(super) open_ml_per_min: f64,
    pub(super) open_src: Src,
    pub(super) covered_percent: f64,
    pub(super) covered_src: Src,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct KeepingRow {
    pub(super) id: String,
    pub(super) forms: Vec<Form>,
    #[serde(default)]
    pub(super) when: When,
    pub(super) class: Class,
    pub(super) place: Shelf,
    pub(super) days: f64,
    pub(super) why: String,
    pub(super) src: Src,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct NoteRow {
    pub(super) id: String,
    pub(super) says: String,
    pub(super) forms: Vec<Form>,
    pub(super) state: Option<HerbState>,
    pub(super) recipe: Option<Spanned<String>>,
    pub(super) src: Src,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct YieldRow {
    pub(super) id: String,
    pub(super) taxon: Option<String>,
    pub(super) part: Part,
    pub(super) least_percent: f64,
    pub(super) most_percent: f64,
    pub(super) src: Src,
}

/// How dry the herb of the yields is taken to be.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct DriedToRow {
    pub(super) moisture_percent: f64,
    pub(super) src: Src,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct TargetRow {
    pub(super) id: String,
    pub(super) says: String,
    pub(super) parts: Vec<Part>,
    pub(super) least_percent: f64,
    pub(super) most_percent: f64,
    pub(super) src: Src,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct WarmthRow {
    pub(super) id: String,
    pub(super) says: String,
    pub(super) least_c: Option<f64>,
    pub(super) most_c: f64,
    pub(super) src: Src,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct GrowthRow {
    pub(super) id: String,
    pub(super) says: String,
    pub(super) activity_from: f64,
    pub(super) ph_above: Option<f64>,
    pub(super) src: Src,
}
