//! Species sheets: what is known of one plant.

use ground::{Form, Harm, LifeForm, Organ, Part, Region, Season, Sourced, Sourcing};
use identify::{Cell, LookAlike, Relatives, RelativesStatement, Taxon};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// What is known of one species.
///
/// What each part of it may be used for stands in [`Uses`](crate::Uses).
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// Scientific name, without authority.
    pub name: String,
    /// Who named it.
    pub authority: String,
    /// Its family.
    pub family: String,
    /// Common names, the usual one first.
    pub common: Vec<String>,
    /// Scientific names that it had.
    pub former: Vec<String>,
    /// Where it grows.
    pub regions: Vec<Region>,
    /// How it grows.
    pub life_form: LifeForm,
    /// How badly it can hurt whoever takes it for something else, as written; see
    /// [`Sheet::feared`].
    pub harm: Sourced<Harm>,
    /// What that harm is.
    pub harm_note: String,
    /// Where to look for it.
    pub habitats: Vec<String>,
    /// What protects it by law, where a source says so.
    pub protected: Option<String>,
    /// When each part is there to be seen and gathered.
    pub months: BTreeMap<Part, Season>,
    /// Characters that must be looked at, where a sheet says so.
    pub must_look: Vec<String>,
    /// What its own rows say of each character; [`Flora::cell`](crate::Flora::cell) adds those of
    /// its genus and family.
    pub characters: BTreeMap<String, Cell>,
    /// What people gather it for. Shown, and clears nothing.
    pub gathered_for: Vec<GatheredFor>,
    /// The plants it is taken for, by name.
    pub look_alikes: BTreeMap<String, Resemblance>,
    /// What is known of relatives without a sheet.
    pub relatives: Kin,
    /// The aggregate to which one determines, where its members share use and harm.
    pub aggregate: Option<String>,
    /// The names under which the table of cautions knows it.
    pub caution_taxa: Vec<String>,
    /// Of a hybrid: its parents. It takes the stricter harm of them and its own, and what stops them
    /// stops it.
    pub parents: Vec<String>,
    /// The worst harm of its parents, worked out from their sheets; a parent without one is unknown.
    pub inherited: Option<Harm>,
    /// Where sources disagree.
    pub conflicts: Vec<Conflict>,
}

/// What people gather a part for, as a flora said.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct GatheredFor {
    /// The part.
    pub part: Part,
    /// What it is made into.
    pub forms: Vec<Form>,
    /// What else the source says.
    pub note: Option<String>,
    /// Where it was read.
    pub from: Sourcing,
}

/// Why and by what a species is taken for another, and what tells them apart.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Resemblance {
    /// Why people confuse the two.
    pub why: String,
    /// The characters that tell them apart.
    pub tells: Vec<String>,
    /// What tells them apart, in a sentence.
    pub says: String,
    /// Whether poisonings by this mix-up are published.
    pub confirmed: bool,
    /// Where it was read.
    pub from: Sourcing,
}

/// What is known of relatives that have no sheet.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Kin {
    /// What is said of them.
    pub statement: RelativesStatement,
    /// The regions it is said of.
    pub regions: Vec<Region>,
    /// Which they are.
    pub note: String,
    /// Where it was read.
    pub from: Sourcing,
}

/// A disagreement between sources, kept in sight.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Conflict {
    /// What it is about.
    pub about: String,
    /// What each side says.
    pub says: String,
    /// What the herbal goes by.
    pub kept: String,
    /// Where it was read.
    pub from: Sourcing,
}

impl Sheet {
    /// The genus: the first word of the scientific name.
    #[must_use]
    pub fn genus(&self) -> &str {
        let words = self.name.split_whitespace();
        words.map(|word| word.trim_start_matches('×')).find(|word| !word.is_empty()).unwrap_or("")
    }

    /// The name that most people know it by.
    #[must_use]
    pub fn usual_name(&self) -> &str {
        self.common.first().unwrap_or(&self.name)
    }

    /// Whether people gather it, and its sheet does not call it harmful.
    #[must_use]
    pub fn is_gathered(&self) -> bool {
        !self.gathered_for.is_empty() && self.harm.value < Harm::Unknown
    }

    /// The harm that judging must reckon with: *none* holds only where it was read, and of a hybrid
    /// only where it was read of its parents too.
    #[must_use]
    pub fn feared(&self) -> Harm {
        self.inherited.map_or(self.own_harm(), |parents| parents.max(self.own_harm()))
    }

    /// The same without its parents.
    pub(crate) fn own_harm(&self) -> Harm {
        match self.harm.value {
            Harm::None if !self.harm.may_clear() => Harm::Unknown,
            harm => harm,
        }
    }

    /// The row of the table to judge by.
    #[must_use]
    pub fn taxon(&self) -> Taxon {
        Taxon {
            name: self.name.clone(),
            harm: self.feared(),
            regions: self.regions.clone(),
            relatives: Relatives {
                statement: self.relatives.statement,
                standing: self.relatives.from.standing,
            },
            aggregate: self.aggregate.clone(),
            seasons: self.seasons(),
            look_alikes: self.look_alikes.iter().map(look_alike).collect(),
            must_look: self.must_look.clone(),
        }
    }

    /// When leaf, flower and fruit can be seen. What grows below ground, bark, stem and sap are there
    /// all year: their months say when they are gathered.
    fn seasons(&self) -> BTreeMap<Organ, Season> {
        let organ = |part: &Part| match part {
            Part::Leaf => Some(Organ::Leaf),
            Part::Flower => Some(Organ::Flower),
            Part::Fruit => Some(Organ::Fruit),
            _ => None,
        };
        let seen = |(part, season): (&Part, &Season)| Some((organ(part)?, *season));
        self.months.iter().filter_map(seen).collect()
    }
}

fn look_alike((name, resemblance): (&String, &Resemblance)) -> LookAlike {
    LookAlike {
        name: name.clone(),
        tells: resemblance.tells.clone(),
        confirmed: resemblance.confirmed,
    }
}
