//! What to bring: what looking takes, what gathering takes, what the recipes take.

use super::{MakePlan, PlantPlan};
use crate::World;
use crate::outing::Wishes;
use ground::{Answer, Mass, Text, Volume};
use identify::{Next, Tool};
use prepare::What;
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};

/// What to bring.
#[derive(Clone, Debug, Serialize)]
pub struct Kit {
    /// Things, each once.
    pub things: Vec<Text>,
    /// What the recipes take besides the herb, all together.
    pub stores: Vec<Store>,
}

/// Something that the recipes take.
#[derive(Clone, Debug, Serialize)]
pub struct Store {
    /// What it is.
    pub what: What,
    /// How the recipe calls it.
    pub name: Option<String>,
    /// Its mass.
    #[serde(rename = "mass_g")]
    pub mass: Mass,
    /// Its volume, of what is poured.
    #[serde(rename = "volume_ml")]
    pub volume: Option<Volume>,
}

pub(super) fn kit(world: &World, wishes: &Wishes, plants: &[PlantPlan], makes: &[MakePlan]) -> Kit {
    let tools = plants
        .iter()
        .flat_map(looks)
        .filter_map(|look| world.herbal.flora.glossary.character(look))
        .filter_map(|character| tool(character.tool));
    let mut things: BTreeSet<Text> = tools.map(Text::new).collect();
    // One bag for each kind and stand, so that a wrong piece stays with its own lot.
    let bags = wishes.makes.values().flat_map(|make| &make.stands).collect::<BTreeSet<_>>().len();
    if bags > 0 {
        things.insert(Text::new("plan-kit-bags").with("count", bags));
        things.insert(Text::new("plan-kit-scale"));
        things.insert(Text::new("plan-kit-labels"));
    }
    things.insert(Text::new("plan-kit-first-aid"));
    things.insert(Text::new("plan-kit-numbers"));
    Kit { things: things.into_iter().collect(), stores: stores(makes) }
}

/// The characters that must be looked at to be sure of a plant.
fn looks(plant: &PlantPlan) -> Vec<&str> {
    match &plant.to_look {
        Next::Look(plan) => plan.looks.iter().map(|offer| offer.character.as_str()).collect(),
        Next::Settled | Next::CannotSettle { .. } => Vec::new(),
    }
}

fn tool(tool: Tool) -> Option<&'static str> {
    Some(match tool {
        Tool::None => return None,
        Tool::Ruler => "plan-kit-ruler",
        Tool::Lens => "plan-kit-lens",
        Tool::Knife => "plan-kit-knife",
        Tool::Spade => "plan-kit-spade",
    })
}

fn stores(makes: &[MakePlan]) -> Vec<Store> {
    let mut sums: BTreeMap<(What, Option<String>), (Mass, Option<Volume>)> = BTreeMap::new();
    let brews = makes.iter().filter_map(|make| match &make.brew {
        Answer::Known(brew) => Some(brew),
        Answer::Refused(_) => None,
    });
    for helping in brews.flat_map(|brew| &brew.amounts).filter(|h| h.what != What::Herb) {
        let sum = sums.entry((helping.what, helping.name.clone())).or_insert((Mass::ZERO, None));
        sum.0 += helping.mass.middle;
        sum.1 = match (sum.1, helping.volume) {
            (Some(one), Some(other)) => Some(one + other),
            (one, other) => one.or(other),
        };
    }
    let store = |((what, name), (mass, volume))| Store { what, name, mass, volume };
    sums.into_iter().map(store).collect()
}
