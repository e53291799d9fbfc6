//! What tells a plant from all that it is taken for, by as few looks as the rules allow.

use crate::World;
use ground::{Faults, Harm, Month, Place, Region};
use herbal::{Flora, Sheet};
use identify::sets::{Effort, FromTwins};
use identify::{Cell, Judge, Level};
use serde::{Deserialize, Serialize};
use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};

/// How many of the smallest sets are listed.
const LIST: usize = 5;

/// Steps for which the proof is sought that no set is smaller, and the smallest ones are counted.
const STEPS: u64 = 40_000;

/// A plant and what else it could be.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ApartOrder {
    /// The plant, by any of its names.
    pub plant: String,
    /// Where everything harmful counts as a twin too; none: only what is named as a look-alike.
    pub region: Option<Region>,
    /// Only what the plant shows in this month; none: whenever it does.
    pub month: Option<Month>,
    /// How well the readers read.
    pub level: Level,
}

/// What tells a plant from its twins.
#[derive(Clone, Debug, Serialize)]
pub struct ApartReply {
    /// The plant, by scientific name and usual name.
    pub plant: (String, String),
    /// How badly it can hurt.
    pub harm: Harm,
    /// Where everything harmful counts as a twin too.
    pub region: Option<Region>,
    /// The month for which it holds; none: all of them.
    pub month: Option<Month>,
    /// The readers for whom it holds.
    pub level: Level,
    /// The twins, the worst first, in the order of `apart.twins`.
    pub twins: Vec<ApartTwin>,
    /// The smallest sets, the quickest first, and what stands between the plant and each twin.
    pub apart: FromTwins,
    /// What the sheets say of each character of the quickest set, of the plant first, then of the twins that
    /// it tells apart.
    pub says: BTreeMap<String, Vec<(String, Cell)>>,
}

/// A plant that another is taken for.
#[derive(Clone, Debug, Serialize)]
pub struct ApartTwin {
    /// Its scientific name.
    pub name: String,
    /// Its usual common name, where it has a sheet.
    pub common: Option<String>,
    /// How badly it can hurt; none for a plant without a sheet, which counts as deadly.
    pub harm: Option<Harm>,
    /// Whether the sheet of either names the other.
    pub named: bool,
}

pub(crate) fn apart(world: &World, order: &ApartOrder) -> Result<ApartReply, Faults> {
    let flora = &world.herbal.flora;
    let place = Place::entry("compare", "", "plant");
    let sheet = flora.find(&order.plant).map_err(|near| near.fault(place))?;
    let twins = twins(flora, sheet, order.region);
    let names: Vec<String> = twins.iter().map(|twin| twin.name.clone()).collect();
    let matrix = flora.matrix()?;
    let effort = Effort { list: LIST, steps: STEPS };
    let apart =
        Judge::new(matrix).from_twins(&sheet.name, &names, order.month, order.level, effort)?;
    let quickest = apart.smallest.sets.first();
    let says = quickest.into_iter().flatten().map(|character| {
        let told = apart.twins.iter().filter(|twin| twin.tells.contains(character));
        let plants = std::iter::once(&sheet.name).chain(told.map(|twin| &twin.twin));
        let cell = |plant: &String| Some((plant.clone(), matrix.cell(plant, character)?.clone()));
        (character.clone(), plants.filter_map(cell).collect())
    });
    let says = says.collect();
    Ok(ApartReply {
        plant: (sheet.name.clone(), sheet.usual_name().to_owned()),
        harm: sheet.feared(),
        region: order.region,
        month: order.month,
        level: order.level,
        twins,
        apart,
        says,
    })
}

/// What either sheet names as a look-alike, and with a region whatever harms there; the worst first, then
/// those that are named.
fn twins(flora: &Flora, sheet: &Sheet, region: Option<Region>) -> Vec<ApartTwin> {
    let naming = flora.sheets().filter(|other| other.look_alikes.contains_key(&sheet.name));
    let named: BTreeSet<&String> =
        sheet.look_alikes.keys().chain(naming.map(|other| &other.name)).collect();
    let grows = |other: &&Sheet| region.is_some_and(|here| other.regions.contains(&here));
    let harms = flora.sheets().filter(grows).filter(|other| other.feared() >= Harm::Harmful);
    let all: BTreeSet<&String> =
        harms.map(|other| &other.name).chain(named.iter().copied()).collect();
    let twin = |name: &String| {
        let other = flora.sheet(name);
        ApartTwin {
            name: name.clone(),
            common: other.map(|other| other.usual_name().to_owned()),
            harm: other.map(Sheet::feared),
            named: named.contains(name),
        }
    };
    let others = all.into_iter().filter(|name| **name != sheet.name);
    let mut twins: Vec<_> = others.map(twin).collect();
    twins.sort_by_key(|twin| (Reverse(twin.harm.unwrap_or(Harm::Deadly)), !twin.named));
    twins
}
