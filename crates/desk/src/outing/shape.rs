//! The tables of an outing file, as they are written. `demo/spring-evening.toml` and
//! `demo/spring-day.toml` are their documentation.

use super::emergency::{EmergencyTable, NumberTable, WayBackTable};
use super::file::Said;
use super::money::{CostTable, MoneyTable};
use serde::Deserialize;
use std::collections::BTreeMap;
use toml::Spanned;
use toml::value::Datetime;

/// A whole file. Every table may be left out; several files together make an outing.
#[derive(Default, Deserialize)]
#[serde(deny_unknown_fields, default, rename_all = "kebab-case")]
pub(crate) struct OutingFile {
    pub(crate) include: Vec<Said>,
    pub(crate) as_of: Option<Spanned<Datetime>>,
    pub(crate) outing: Option<OutingTable>,
    pub(crate) reader: Vec<ReaderTable>,
    pub(crate) site: Vec<SiteTable>,
    pub(crate) permission: Vec<PermissionTable>,
    pub(crate) stand: Vec<StandTable>,
    pub(crate) survey: Vec<SurveyTable>,
    pub(crate) stop: Vec<StopTable>,
    pub(crate) way_back: Option<Spanned<WayBackTable>>,
    pub(crate) emergency: Option<Spanned<EmergencyTable>>,
    pub(crate) number: Vec<NumberTable>,
    pub(crate) make: Vec<MakeTable>,
    pub(crate) content: Vec<ContentTable>,
    pub(crate) fraction: Vec<FractionTable>,
    pub(crate) participant: Vec<ParticipantTable>,
    pub(crate) answers: Vec<AnswersTable>,
    pub(crate) looks: Vec<LooksTable>,
    pub(crate) take: Vec<TakeTable>,
    pub(crate) lot: Vec<LotTable>,
    pub(crate) sorting: Vec<SortingTable>,
    pub(crate) batch: Vec<BatchTable>,
    pub(crate) weighing: Vec<WeighingTable>,
    pub(crate) serving: Vec<ServingTable>,
    pub(crate) confirmation: Vec<ConfirmationTable>,
    pub(crate) flag: Vec<FlagTable>,
    pub(crate) correction: Vec<CorrectionTable>,
    pub(crate) money: Option<MoneyTable>,
    pub(crate) cost: Vec<CostTable>,
}

/// The outing itself.
#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct OutingTable {
    pub(crate) name: String,
    pub(crate) date: Spanned<Datetime>,
    pub(crate) from: Said,
    pub(crate) to: Said,
    pub(crate) zone: Said,
    pub(crate) region: Said,
    pub(crate) latitude: Option<Spanned<f64>>,
    pub(crate) longitude: Option<Spanned<f64>>,
    pub(crate) leader: Said,
    pub(crate) purpose: Said,
    pub(crate) kitchen: Option<Said>,
    pub(crate) records_since: Option<Spanned<Datetime>>,
    #[serde(default)]
    pub(crate) sold: bool,
    #[serde(default)]
    pub(crate) recipes_to_take_home: Vec<Said>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct ReaderTable {
    pub(crate) name: Said,
    pub(crate) called: String,
    pub(crate) level: Said,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct SiteTable {
    pub(crate) name: Said,
    pub(crate) called: String,
    pub(crate) landholder: String,
    pub(crate) land: Said,
    pub(crate) jurisdiction: Said,
    pub(crate) latitude: Option<Spanned<f64>>,
    pub(crate) longitude: Option<Spanned<f64>>,
    pub(crate) grid: Option<Said>,
    pub(crate) road: Option<Said>,
    pub(crate) way_in: Option<Said>,
    #[serde(default)]
    pub(crate) public_right: bool,
    #[serde(default)]
    pub(crate) consents: Vec<ConsentTable>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct ConsentTable {
    pub(crate) rule: Said,
    pub(crate) from: String,
    pub(crate) until: Spanned<Datetime>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct PermissionTable {
    pub(crate) site: Said,
    pub(crate) from: String,
    pub(crate) given: Spanned<Datetime>,
    pub(crate) until: Spanned<Datetime>,
    pub(crate) purposes: Vec<Said>,
    pub(crate) plants: Vec<Said>,
    pub(crate) parts: Vec<Said>,
    pub(crate) at_most: Option<Said>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct StandTable {
    pub(crate) name: Said,
    pub(crate) site: Said,
    pub(crate) plant: Said,
    pub(crate) area: Option<Said>,
    #[serde(default)]
    pub(crate) hazards: BTreeMap<String, Said>,
    #[serde(default)]
    pub(crate) without: Vec<Said>,
    pub(crate) in_water: Option<bool>,
    pub(crate) latitude: Option<Spanned<f64>>,
    pub(crate) longitude: Option<Spanned<f64>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct SurveyTable {
    pub(crate) stand: Said,
    pub(crate) part: Said,
    pub(crate) on: Spanned<Datetime>,
    pub(crate) by: String,
    pub(crate) plots_in_stand: Spanned<i64>,
    #[serde(default)]
    pub(crate) pieces: Vec<Spanned<i64>>,
    #[serde(default)]
    pub(crate) weights: Vec<Said>,
    #[serde(default)]
    pub(crate) piece_weights: Vec<Said>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct StopTable {
    pub(crate) site: Said,
    pub(crate) at: Said,
    pub(crate) lasts: Said,
    pub(crate) walk: Option<Said>,
    pub(crate) climb: Option<Said>,
    #[serde(default)]
    pub(crate) plants: Vec<Said>,
}

/// Something to make. Amounts that the recipe asks for stand by name under `amounts`.
#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct MakeTable {
    pub(crate) name: Said,
    pub(crate) called: String,
    pub(crate) recipe: Said,
    pub(crate) plant: Said,
    pub(crate) part: Said,
    #[serde(default)]
    pub(crate) stands: Vec<Said>,
    #[serde(default)]
    pub(crate) lots: Vec<Said>,
    pub(crate) herb: Option<Said>,
    pub(crate) moisture: Option<Said>,
    #[serde(default)]
    pub(crate) moisture_supposed: bool,
    pub(crate) heap: Option<Said>,
    pub(crate) spoon: Option<String>,
    pub(crate) stage: Option<String>,
    #[serde(default)]
    pub(crate) amounts: BTreeMap<String, Said>,
    pub(crate) serving: Option<Said>,
    #[serde(default)]
    pub(crate) weighed: bool,
    pub(crate) servings_a_day: Spanned<i64>,
    pub(crate) days: Spanned<i64>,
    #[serde(default)]
    pub(crate) people: Vec<Said>,
    #[serde(default)]
    pub(crate) everybody: bool,
    pub(crate) on: Option<Spanned<Datetime>>,
    #[serde(default)]
    pub(crate) taken_home: bool,
}

/// A content of a constituent that the outing uses in place of the herbal's.
#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct ContentTable {
    pub(crate) name: Said,
    pub(crate) plant: Said,
    pub(crate) part: Said,
    pub(crate) constituent: Said,
    pub(crate) content: DistTable,
    pub(crate) transfer: Option<DistTable>,
    pub(crate) source: String,
}

/// A distribution: exactly one of its keys.
#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct DistTable {
    pub(crate) exact: Option<Spanned<f64>>,
    pub(crate) uniform: Option<Spanned<[f64; 2]>>,
    pub(crate) log_uniform: Option<Spanned<[f64; 2]>>,
    pub(crate) triangular: Option<Spanned<[f64; 3]>>,
    pub(crate) log_normal: Option<Spanned<[f64; 2]>>,
}

/// A share of a stand that the leader allows in place of the herbal's.
#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct FractionTable {
    pub(crate) part: Said,
    pub(crate) life_form: Said,
    pub(crate) at_most: Said,
    pub(crate) rest_years: Spanned<i64>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct ParticipantTable {
    pub(crate) name: Said,
    pub(crate) called: String,
}

/// What a person said of their health. Kept in a file of its own.
#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct AnswersTable {
    pub(crate) participant: Said,
    pub(crate) age: Option<Spanned<i64>>,
    pub(crate) weight: Option<Said>,
    #[serde(default)]
    pub(crate) said: BTreeMap<String, Said>,
    pub(crate) rest: Option<Said>,
}

/// What one reader saw of one plant in hand at one time.
#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct LooksTable {
    pub(crate) specimen: Said,
    pub(crate) stand: Said,
    pub(crate) reader: Said,
    pub(crate) at: Spanned<Datetime>,
    pub(crate) material: Option<Said>,
    #[serde(default)]
    pub(crate) candidates_shown: bool,
    pub(crate) saw: BTreeMap<String, Spanned<toml::Value>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct TakeTable {
    pub(crate) name: Said,
    pub(crate) stand: Said,
    pub(crate) part: Said,
    pub(crate) amount: Said,
    pub(crate) at: Spanned<Datetime>,
    pub(crate) pattern: Option<Said>,
    #[serde(default)]
    pub(crate) stages: Vec<Said>,
    pub(crate) pickers: Vec<Said>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct LotTable {
    pub(crate) name: Said,
    pub(crate) takes: Vec<Said>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct SortingTable {
    pub(crate) lot: Said,
    pub(crate) at: Spanned<Datetime>,
    pub(crate) sorters: Vec<Said>,
    pub(crate) pieces: Spanned<i64>,
    #[serde(default)]
    pub(crate) every_piece: bool,
    #[serde(default)]
    pub(crate) found: Vec<FoundTable>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct FoundTable {
    pub(crate) what: String,
    pub(crate) pieces: Spanned<i64>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct BatchTable {
    pub(crate) name: Said,
    pub(crate) make: Said,
    pub(crate) lots: Vec<Said>,
    pub(crate) at: Spanned<Datetime>,
    #[serde(default)]
    pub(crate) stages: Vec<Said>,
    pub(crate) cook: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct WeighingTable {
    pub(crate) of: Said,
    pub(crate) what: Said,
    pub(crate) at: Spanned<Datetime>,
    pub(crate) mass: Option<Said>,
    pub(crate) volume: Option<Said>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct ServingTable {
    pub(crate) batch: Said,
    pub(crate) at: Spanned<Datetime>,
    pub(crate) to: Vec<Said>,
    pub(crate) servings: Spanned<i64>,
    #[serde(default)]
    pub(crate) taken_home: bool,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct ConfirmationTable {
    pub(crate) make: Said,
    pub(crate) participants: Vec<Said>,
    pub(crate) by: String,
    pub(crate) at: Spanned<Datetime>,
    pub(crate) at_most: Option<Spanned<i64>>,
    pub(crate) clinician: Option<ClinicianTable>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct FlagTable {
    pub(crate) make: Said,
    pub(crate) participant: Said,
    pub(crate) basis: String,
    pub(crate) at_most: Spanned<i64>,
    pub(crate) days: Spanned<i64>,
    pub(crate) by: String,
    pub(crate) at: Spanned<Datetime>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct ClinicianTable {
    pub(crate) role: String,
    pub(crate) on: Spanned<Datetime>,
    pub(crate) preparation: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct CorrectionTable {
    pub(crate) of: Said,
    pub(crate) why: String,
    pub(crate) by: String,
    pub(crate) at: Spanned<Datetime>,
}
