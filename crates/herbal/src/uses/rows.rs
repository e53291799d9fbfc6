//! How the files in `uses/`, and the part rows of species, are written.

use crate::open::Src;
use ground::Dist;
use serde::Deserialize;
use toml::Spanned;

/// A word of a closed list, with its place.
pub(super) type Word = Spanned<String>;

/// Any file in the folder: each may hold any of the tables.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct UsesFile {
    #[serde(default)]
    pub(super) substance: Vec<SubstanceRow>,
    #[serde(default)]
    pub(super) caution: Vec<CautionRow>,
    #[serde(default)]
    pub(super) posology: Vec<PosologyRow>,
    #[serde(default)]
    pub(super) content: Vec<ContentRow>,
    #[serde(default)]
    pub(super) limit: Vec<LimitRow>,
    #[serde(default)]
    pub(super) body: Vec<BodyRow>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct SubstanceRow {
    pub(super) id: Word,
    pub(super) name: String,
    #[serde(default)]
    pub(super) no_safe_level: bool,
    #[serde(default)]
    pub(super) counts_as: Vec<CountsAs>,
    #[serde(rename = "note")]
    pub(super) _note: Option<String>,
    pub(super) src: Src,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct CountsAs {
    pub(super) substance: Word,
    pub(super) factor: Spanned<f64>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct CautionRow {
    pub(super) id: Word,
    pub(super) taxon: Word,
    pub(super) parts: Vec<Word>,
    pub(super) forms: Vec<Word>,
    pub(super) who: Word,
    pub(super) action: Word,
    pub(super) when: Option<String>,
    #[serde(default)]
    pub(super) uses: Vec<Word>,
    #[serde(default)]
    pub(super) spares_food: bool,
    pub(super) limit: Option<CeilingRow>,
    #[serde(default)]
    pub(super) names: Vec<Word>,
    pub(super) days: Option<u32>,
    pub(super) wording: String,
    pub(super) note: Option<String>,
    pub(super) src: Src,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct CeilingRow {
    pub(super) of: Word,
    pub(super) amount: Option<Spanned<f64>>,
    pub(super) unit: Option<Word>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct PosologyRow {
    pub(super) id: Word,
    pub(super) taxon: Word,
    pub(super) parts: Vec<Word>,
    pub(super) forms: Vec<Word>,
    pub(super) grams: Spanned<(f64, f64)>,
    pub(super) cup_ml: Option<Spanned<f64>>,
    pub(super) times: (u32, u32),
    pub(super) day_max_g: Option<Spanned<f64>>,
    pub(super) max_days: Option<u32>,
    pub(super) age_from: u8,
    pub(super) note: Option<String>,
    pub(super) src: Src,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct ContentRow {
    pub(super) id: Word,
    pub(super) taxon: Word,
    pub(super) parts: Vec<Word>,
    #[serde(default)]
    pub(super) forms: Vec<Word>,
    pub(super) substance: Word,
    pub(super) kind: Option<Word>,
    pub(super) basis: Word,
    pub(super) amount: Option<Spanned<Dist>>,
    #[serde(default)]
    pub(super) only_high: bool,
    #[serde(default)]
    pub(super) averages: bool,
    #[serde(rename = "sample")]
    pub(super) _sample: Option<String>,
    pub(super) water: Option<Spanned<TransferRow>>,
    pub(super) ethanol: Option<Spanned<TransferRow>>,
    pub(super) note: Option<String>,
    pub(super) src: Src,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct TransferRow {
    pub(super) low: f64,
    pub(super) mode: f64,
    pub(super) high: f64,
    pub(super) standing: TransferStanding,
}

/// How a share that passes over is known.
#[derive(Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum TransferStanding {
    Measured,
    Derived,
    Assumed,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct LimitRow {
    pub(super) id: Word,
    pub(super) substance: Word,
    pub(super) value: Option<Spanned<f64>>,
    pub(super) unit: Option<Word>,
    pub(super) window: Word,
    pub(super) basis: Word,
    #[serde(rename = "use")]
    pub(super) used: Word,
    pub(super) from_age: Option<u8>,
    pub(super) to_age: Option<u8>,
    #[serde(default)]
    pub(super) who: Vec<Word>,
    #[serde(default)]
    pub(super) except: Vec<Word>,
    #[serde(default)]
    pub(super) forms: Vec<Word>,
    pub(super) max_days: Option<u32>,
    pub(super) population: String,
    pub(super) date: String,
    pub(super) note: Option<String>,
    pub(super) src: Src,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct BodyRow {
    pub(super) band: Word,
    pub(super) kg: Spanned<f64>,
    #[serde(rename = "note")]
    pub(super) _note: Option<String>,
    pub(super) src: Src,
}

/// A species file, as far as its part rows go.
#[derive(Deserialize)]
pub(super) struct PartsFile {
    pub(super) name: Word,
    #[serde(default)]
    pub(super) caution_taxa: Vec<Word>,
    #[serde(default)]
    pub(super) part: Vec<Spanned<PartRow>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct PartRow {
    pub(super) part: Word,
    pub(super) stage: Option<String>,
    pub(super) harm: Word,
    pub(super) route: Word,
    pub(super) forms: Vec<Word>,
    #[serde(rename = "use")]
    pub(super) used_as: Word,
    #[serde(default)]
    pub(super) caution_parts: Vec<Word>,
    pub(super) contact: Option<String>,
    pub(super) note: Option<String>,
    pub(super) src: Src,
}
