//! A key to some plants, to be printed.

use crate::World;
use ground::{Arg, Fault, Faults, Harm, Month, Place};
use herbal::{Flora, Sheet};
use identify::key::{Arrivals, PlantKey};
use identify::{Judge, Level};
use serde::{Deserialize, Serialize};
use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};

/// The work for which the proof is sought that no key is quicker: sets of plants times the pairs in
/// them. Beyond it the key is mended as far as it goes, and the bound is told.
const WORK: usize = 1_200_000;

/// More plants than these make no key that anybody reads on paper.
const MOST: usize = 60;

/// A key to some plants.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct KeyOrder {
    /// The plants, by any of their names.
    pub plants: Vec<String>,
    /// Only what can be seen in this month; none: whenever it can be seen.
    pub month: Option<Month>,
    /// The readers for whom it is told how often each plant is missed.
    pub level: Level,
}

/// A key with what it is worth.
#[derive(Clone, Debug, Serialize)]
pub struct KeyReply {
    /// The version of the herbal.
    pub herbal_version: String,
    /// The plants, in the order in which they were asked for.
    pub plants: Vec<KeyPlant>,
    /// The month for which it holds; none: all of them.
    pub month: Option<Month>,
    /// The key.
    pub key: PlantKey,
    /// The readers for whom it was asked.
    pub level: Level,
    /// Where readers end up: of each level that has a word, and of the one that was asked for.
    pub arrivals: Vec<Arrivals>,
    /// Dangerous plants that are taken for one of these and that the key does not hold, the worst
    /// first.
    pub missing: Vec<MissingTwin>,
}

/// A plant of a key.
#[derive(Clone, Debug, Serialize)]
pub struct KeyPlant {
    /// Its scientific name.
    pub name: String,
    /// Its usual common name.
    pub common: String,
    /// How badly it can hurt.
    pub harm: Harm,
}

/// A dangerous plant that a key does not hold.
#[derive(Clone, Debug, Serialize)]
pub struct MissingTwin {
    /// Its scientific name.
    pub name: String,
    /// Its usual common name, where it has a sheet.
    pub common: Option<String>,
    /// How badly it can hurt; none for a plant without a sheet, which counts as deadly.
    pub harm: Option<Harm>,
    /// The plants of the key that are taken for it, or it for them.
    pub taken_for: Vec<String>,
}

pub(crate) fn key(world: &World, order: &KeyOrder) -> Result<KeyReply, Faults> {
    let flora = &world.herbal.flora;
    let sheets = sheets(flora, &order.plants)?;
    let names: Vec<String> = sheets.iter().map(|sheet| sheet.name.clone()).collect();
    let judge = Judge::new(flora.matrix()?);
    let pairs = names.len() * names.len();
    let key = judge.key(&names, order.month, WORK / pairs.max(1))?;
    let levels = Level::NAMED.map(|(_, level)| level);
    let own = Some(order.level).filter(|level| !levels.contains(level));
    let arrivals = levels.into_iter().chain(own);
    let arrivals = arrivals.map(|level| judge.arrivals(&key, order.month, level)).collect();
    Ok(KeyReply {
        herbal_version: world.herbal_version.clone(),
        plants: sheets.iter().map(|sheet| plant(sheet)).collect(),
        month: order.month,
        key,
        level: order.level,
        arrivals,
        missing: missing(flora, &sheets),
    })
}

/// The plants that were asked for: two or more, each once, and no more than a page can hold.
fn sheets<'f>(flora: &'f Flora, said: &[String]) -> Result<Vec<&'f Sheet>, Faults> {
    let mut faults = Faults::none();
    let at = || Place::entry("key", "", "plant");
    let mut sheets: Vec<&Sheet> = Vec::new();
    for name in said {
        let Some(sheet) = faults.note(flora.find(name).map_err(|near| near.fault(at()))) else {
            continue;
        };
        if sheets.iter().any(|known| known.name == sheet.name) {
            faults.add(
                Fault::new("key-plant-twice", at(), name)
                    .with("plant", Arg::Taxon(sheet.name.clone())),
            );
        }
        sheets.push(sheet);
    }
    if said.len() < 2 || said.len() > MOST {
        let fault = Fault::new("key-how-many", at(), said.len().to_string());
        faults.add(fault.with("most", MOST));
    }
    faults.or(sheets)
}

fn plant(sheet: &Sheet) -> KeyPlant {
    let common = sheet.usual_name().to_owned();
    KeyPlant { name: sheet.name.clone(), common, harm: sheet.feared() }
}

/// Dangerous look-alikes, named on either side, that are not among the plants.
fn missing(flora: &Flora, sheets: &[&Sheet]) -> Vec<MissingTwin> {
    let mut taken: BTreeMap<&String, BTreeSet<&String>> = BTreeMap::new();
    for sheet in sheets {
        let naming = flora.sheets().filter(|other| other.look_alikes.contains_key(&sheet.name));
        for twin in sheet.look_alikes.keys().chain(naming.map(|other| &other.name)) {
            taken.entry(twin).or_default().insert(&sheet.name);
        }
    }
    let twin = |(name, taken_for): (&String, BTreeSet<&String>)| {
        let sheet = flora.sheet(name);
        MissingTwin {
            name: name.clone(),
            common: sheet.map(|sheet| sheet.usual_name().to_owned()),
            harm: sheet.map(Sheet::feared),
            taken_for: taken_for.into_iter().cloned().collect(),
        }
    };
    let absent = |name: &String| sheets.iter().all(|sheet| sheet.name != *name);
    let twins = taken.into_iter().filter(|(name, _)| absent(name)).map(twin);
    let dangerous = |twin: &MissingTwin| twin.harm.is_none_or(|harm| harm >= Harm::Harmful);
    let mut missing: Vec<_> = twins.filter(dangerous).collect();
    missing.sort_by_key(|twin| Reverse(twin.harm.unwrap_or(Harm::Deadly)));
    missing
}
