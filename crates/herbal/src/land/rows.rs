//! How the files in `land/` are written.

use ground::{LifeForm, Part, Spoken};
use harvest::{Period, Purpose};
use serde::{Deserialize, Serialize};
use std::num::NonZeroU16;
use toml::Spanned;

/// Any file in the folder: each may hold any of the tables.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct LandFile {
    #[serde(default)]
    pub(super) jurisdiction: Vec<JurisdictionRow>,
    #[serde(default)]
    pub(super) land: Vec<LandRow>,
    #[serde(default)]
    pub(super) law: Vec<LawRow>,
    #[serde(default)]
    pub(super) share: Vec<ShareRow>,
    #[serde(default)]
    pub(super) ceiling: Vec<ShareRow>,
    #[serde(default)]
    pub(super) hazard: Vec<HazardRow>,
    #[serde(default)]
    pub(super) care: Vec<CareRow>,
    #[serde(default, rename = "yield")]
    pub(super) yields: Vec<YieldRow>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct JurisdictionRow {
    pub(super) id: Spanned<String>,
    pub(super) name: String,
    pub(super) within: Option<Spanned<String>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct LandRow {
    pub(super) id: Spanned<String>,
    pub(super) is: String,
}

/// What a rule is about.
pub(super) struct ScopeRow {
    pub(super) taxa: Vec<String>,
    pub(super) parts: Vec<Part>,
    pub(super) life_forms: Vec<LifeForm>,
    pub(super) jurisdictions: Vec<Spanned<String>>,
    pub(super) lands: Vec<Spanned<String>>,
    pub(super) purposes: Vec<Purpose>,
}

/// Declares a row that says beside its own fields what it is about. (Flattening one struct into
/// another would lose the positions of its words.)
macro_rules! scoped_row {
    ($name:ident { $( $(#[$meta:meta])* $field:ident: $kind:ty, )+ }) => {
        #[derive(Deserialize)]
        #[serde(deny_unknown_fields)]
        pub(super) struct $name {
            $( $(#[$meta])* pub(super) $field: $kind, )+
            #[serde(default)]
            taxa: Vec<String>,
            #[serde(default)]
            parts: Vec<Part>,
            #[serde(default)]
            life_forms: Vec<LifeForm>,
            #[serde(default)]
            jurisdictions: Vec<Spanned<String>>,
            #[serde(default)]
            lands: Vec<Spanned<String>>,
            #[serde(default)]
            purposes: Vec<Purpose>,
        }

        impl $name {
            /// What it is about; the row keeps the rest.
            pub(super) fn take_scope(&mut self) -> ScopeRow {
                ScopeRow {
                    taxa: std::mem::take(&mut self.taxa),
                    parts: std::mem::take(&mut self.parts),
                    life_forms: std::mem::take(&mut self.life_forms),
                    jurisdictions: std::mem::take(&mut self.jurisdictions),
                    lands: std::mem::take(&mut self.lands),
                    purposes: std::mem::take(&mut self.purposes),
                }
            }
        }
    };
}

scoped_row! {
    LawRow {
        id: Spanned<String>,
        effect: EffectWord,
        amount: Option<Spanned<Spoken>>,
        period: Option<Period>,
        says: String,
        seen: Option<String>,
        src: Spanned<Vec<String>>,
    }
}

scoped_row! {
    ShareRow {
        id: Spanned<String>,
        share: Spanned<f64>,
        every_years: Option<NonZeroU16>,
        says: String,
        src: Spanned<Vec<String>>,
    }
}

#[derive(Clone, Copy, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum EffectWord {
    Forbidden,
    AskOwner,
    Consent,
    AtMost,
    PublicRight,
    Note,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct HazardRow {
    pub(super) id: Spanned<String>,
    pub(super) name: String,
    pub(super) keep: Option<Spanned<Spoken>>,
    pub(super) never: Option<Spanned<Spoken>>,
    #[serde(default)]
    pub(super) anywhere: bool,
    #[serde(default)]
    pub(super) water_only: bool,
    pub(super) why: String,
    pub(super) src: Spanned<Vec<String>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct CareRow {
    pub(super) id: Spanned<String>,
    #[serde(default)]
    pub(super) water_only: bool,
    pub(super) says: String,
    pub(super) src: Spanned<Vec<String>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct YieldRow {
    pub(super) id: Spanned<String>,
    pub(super) taxon: String,
    pub(super) part: Part,
    pub(super) low: Spanned<Spoken>,
    pub(super) high: Option<Spanned<Spoken>>,
    pub(super) per: Per,
    #[serde(default)]
    pub(super) dried: bool,
    pub(super) says: String,
    pub(super) src: Spanned<Vec<String>>,
}

/// Of what a yield is given.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Per {
    /// Of a square metre of the stand.
    SquareMetre,
    /// Of one piece.
    Piece,
}
