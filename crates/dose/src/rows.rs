//! The rows that decisions rest on, each with its sources.

use ground::{Condition, Dimension, Dist, Finite, Form, Harm, Mass, Part, Sourcing, Unit};
use serde::{Deserialize, Serialize};

/// The name of something that is counted, such as `thujone`.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct SubstanceId(pub String);

impl From<&str> for SubstanceId {
    fn from(id: &str) -> Self {
        Self(id.to_owned())
    }
}

/// Something that is counted.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Substance {
    /// Its identifier.
    pub id: SubstanceId,
    /// What people call it.
    pub name: String,
    /// Whether authorities know no threshold below which it does nothing.
    pub no_safe_level: bool,
    /// So many grams of the other are counted for each gram of this one.
    pub counts_as: Vec<(SubstanceId, Finite)>,
    /// Where this comes from.
    pub from: Sourcing,
}

/// How something meets the body.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Route {
    /// Eaten or drunk.
    Mouth,
    /// On the skin.
    Skin,
    /// Breathed in.
    Breath,
}

impl Route {
    /// The route of a preparation.
    #[must_use]
    pub fn of(form: Form) -> Self {
        if Form::Outward.contains(form) {
            Self::Skin
        } else if Form::Breath.contains(form) {
            Self::Breath
        } else {
            Self::Mouth
        }
    }
}

/// What a part row says that the part is used as.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum UsedAs {
    /// A dish.
    Food,
    /// A seasoning.
    Flavour,
    /// A drink.
    Tea,
    /// A remedy.
    Medicinal,
    /// On the skin.
    Skin,
    /// Nothing.
    None,
}

/// Harm and use of one part of one species, at a stage, in some preparations, by one route.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct PartRow {
    /// The species.
    pub taxon: String,
    /// The part.
    pub part: Part,
    /// What a person must confirm for the row to hold, such as *dried fully*.
    pub stage: Option<String>,
    /// How badly it can hurt.
    pub harm: Harm,
    /// By which route.
    pub route: Route,
    /// In which preparations.
    pub forms: Vec<Form>,
    /// As what it is used.
    pub used_as: UsedAs,
    /// Parts under whose names cautions speak of it.
    pub caution_parts: Vec<Part>,
    /// What it does to the skin.
    pub contact: Option<String>,
    /// A remark.
    pub note: Option<String>,
    /// Where this comes from.
    pub from: Sourcing,
}

impl PartRow {
    /// The harm that a decision must reckon with: *none* holds only where it was read.
    #[must_use]
    pub fn feared(&self) -> Harm {
        match self.harm {
            Harm::None if !self.from.may_clear() => Harm::Unknown,
            harm => harm,
        }
    }
}

/// What a caution asks for, from the strictest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Action {
    /// Not for them.
    Exclude,
    /// A clinician decides.
    Ask,
    /// Up to an amount, or for some days.
    Limit,
    /// Said, and no more.
    Note,
    /// Somebody looked for a caution and found none.
    NoneFound,
}

/// What a ceiling counts.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Counted {
    /// A constituent, or something added.
    Substance(SubstanceId),
    /// Herb by its dried mass.
    DriedHerb,
    /// Herb by its fresh mass.
    FreshHerb,
    /// Herb by whatever mass it is weighed at.
    HerbAsWeighed,
    /// Servings.
    Servings,
}

/// A number in a unit that a sum is held against.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Level {
    /// The number.
    pub value: Finite,
    /// Its unit.
    pub unit: Unit,
}

impl Level {
    /// What it comes to for a body: grams, or a number of servings. Nothing for a unit that no sum
    /// of grams can be held against, such as a strength of blood.
    #[must_use]
    pub fn for_body(self, body: Mass) -> Option<f64> {
        let base = self.unit.to_base(self.value.get());
        match self.unit.dimension() {
            Dimension::Mass | Dimension::MassPerDay | Dimension::Number => Some(base),
            Dimension::MassPerBody | Dimension::MassPerBodyDay => Some(base * body.kg()),
            _ => None,
        }
    }

    /// What it comes to in so much of a product, in grams.
    #[must_use]
    pub fn for_product(self, product: Mass) -> Option<f64> {
        let share = self.unit.dimension() == Dimension::MassShare;
        share.then(|| self.unit.to_base(self.value.get()) * product.g())
    }

    /// Whether it grows with the body.
    #[must_use]
    pub fn per_body(self) -> bool {
        matches!(self.unit.dimension(), Dimension::MassPerBody | Dimension::MassPerBodyDay)
    }
}

/// The most that a caution allows.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Ceiling {
    /// Of what.
    pub of: Counted,
    /// How much a day; nothing when that is not known.
    pub level: Option<Level>,
}

/// Who should not have what.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Caution {
    /// Its identifier.
    pub id: String,
    /// A species, a genus, a family, or [`Table::EVERY_PLANT`](crate::Table::EVERY_PLANT).
    pub taxon: String,
    /// Of which parts it speaks.
    pub parts: Vec<Part>,
    /// Of which preparations.
    pub forms: Vec<Form>,
    /// Of whom.
    pub who: Condition,
    /// What it asks for.
    pub action: Action,
    /// It holds only when the material is like this, such as *mouldy or musty*.
    pub when: Option<String>,
    /// It speaks only of parts used like this; empty: of all.
    pub uses: Vec<UsedAs>,
    /// It leaves plain food in food amounts alone.
    pub spares_food: bool,
    /// The most that it allows.
    pub limit: Option<Ceiling>,
    /// Constituents that it names.
    pub names: Vec<SubstanceId>,
    /// For how many days at a time.
    pub days: Option<u32>,
    /// What it says.
    pub wording: String,
    /// A remark.
    pub note: Option<String>,
    /// Where this comes from.
    pub from: Sourcing,
}

/// The usual amount of a preparation.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Posology {
    /// Its identifier.
    pub id: String,
    /// A species or a genus.
    pub taxon: String,
    /// Of which parts.
    pub parts: Vec<Part>,
    /// In which preparations.
    pub forms: Vec<Form>,
    /// Grams of dried herb in a serving, from and to.
    pub grams: (Finite, Finite),
    /// Millilitres of a serving.
    pub cup_ml: Option<Finite>,
    /// Servings a day, from and to.
    pub times: (u32, u32),
    /// Most grams of dried herb in a day; nothing where no text says so.
    pub day_max_g: Option<Finite>,
    /// Most days at a time; nothing where no text says so.
    pub max_days: Option<u32>,
    /// There is no data under this age in years.
    pub age_from: u8,
    /// A remark.
    pub note: Option<String>,
    /// Where this comes from.
    pub from: Sourcing,
}

/// What the number of a content row counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ContentBasis {
    /// Milligrams in a gram of dried herb.
    Dry,
    /// Milligrams in a gram of fresh herb.
    Fresh,
    /// Milligrams in the drink for a gram of herb.
    InDrinkPerG,
    /// Milligrams in a litre of drink.
    Drink,
}

/// What kind of finding a content row is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ContentKind {
    /// Of the plant: joins a serving.
    Plant,
    /// Of plants that came in with it: answered by sorting.
    Contamination,
    /// Of several plants: shown only.
    Survey,
    /// A finding that contradicts the others and joins nothing.
    Contradiction,
}

/// The share of a content that reaches the drink.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Transfer {
    /// The share, from 0 to 1.
    pub share: Dist,
    /// Whether it was measured or worked out from measurements. A supposed share decides nothing:
    /// all of the content is counted then.
    pub measured: bool,
}

/// What a part holds of a constituent.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Content {
    /// Its identifier.
    pub id: String,
    /// A species or a genus.
    pub taxon: String,
    /// In which parts.
    pub parts: Vec<Part>,
    /// In which preparations the row is used; empty: in all.
    pub forms: Vec<Form>,
    /// Of what.
    pub substance: SubstanceId,
    /// What kind of finding it is.
    pub kind: ContentKind,
    /// What its number counts.
    pub basis: ContentBasis,
    /// How much; nothing when that is not known.
    pub amount: Option<Dist>,
    /// The lower end was not read: a decision takes the upper one.
    pub only_high: bool,
    /// The ends are averages, or one analysis: no extreme is known.
    pub averages: bool,
    /// The share that passes into water.
    pub water: Option<Transfer>,
    /// The share that passes into spirit.
    pub ethanol: Option<Transfer>,
    /// A remark.
    pub note: Option<String>,
    /// Where this comes from.
    pub from: Sourcing,
}

/// Over what a limit sums.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Window {
    /// One serving.
    Serving,
    /// A day.
    Day,
    /// Seven days.
    Week,
    /// A lifetime: never summed here.
    Lifetime,
    /// A kilogram of product.
    Product,
}

/// What kind of question a limit answers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Basis {
    /// What one person may take at once or in a day.
    Acute,
    /// What one may take for some days.
    ShortTerm,
    /// What one may take daily for life.
    Chronic,
    /// What may be sold.
    Legal,
    /// Advice.
    Guidance,
}

/// What a limit is used for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LimitUse {
    /// It binds.
    Screen,
    /// It binds what is sold.
    Legal,
    /// Above it, the groups it names ask first.
    Guidance,
    /// It is shown beside the others.
    Reference,
    /// It was superseded, and is shown as history.
    History,
    /// Authorities looked and set no value: said, and deciding nothing.
    None,
}

/// A limit for a substance, a window and a population.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Limit {
    /// Its identifier.
    pub id: String,
    /// For what.
    pub substance: SubstanceId,
    /// How much; nothing when none was set, or it is not known.
    pub level: Option<Level>,
    /// Over what it sums.
    pub window: Window,
    /// What kind of question it answers.
    pub basis: Basis,
    /// What it is used for.
    pub used: LimitUse,
    /// Years from which it holds, included.
    pub from_age: Option<u8>,
    /// Years up to which it holds, included.
    pub to_age: Option<u8>,
    /// It concerns only people who say so; empty: everybody.
    pub who: Vec<Condition>,
    /// People for whom the value was not set.
    pub except: Vec<Condition>,
    /// Products a legal value speaks of; empty: all.
    pub forms: Vec<Form>,
    /// For how many days at a time.
    pub max_days: Option<u32>,
    /// The population as it was published.
    pub population: String,
    /// When it was set.
    pub date: String,
    /// A remark.
    pub note: Option<String>,
    /// Where this comes from.
    pub from: Sourcing,
}

/// The body mass to reckon with where somebody's is not known.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Body {
    /// How much.
    pub mass: Mass,
    /// Where this comes from.
    pub from: Sourcing,
}
