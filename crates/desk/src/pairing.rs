//! What is gathered, each with everything dangerous: how many readings must go wrong before that passes for it.

use crate::World;
use ground::{Faults, Harm, Month, Organ, Place};
use herbal::Sheet;
use identify::pairs::{Pair, Pairs, Passes};
use identify::{Judge, Level};
use serde::{Deserialize, Serialize};
use std::cmp::Reverse;
use std::collections::BTreeMap;

/// Which pairs.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PairsOrder {
    /// The plant that is gathered, by any of its names; none: every one.
    pub plant: Option<String>,
    /// How well the readers read.
    pub level: Level,
    /// How many of the worst are wanted; none: all.
    pub worst: Option<usize>,
}

/// Pairs, the worst harm first, and of it those that pass after the fewest readings.
#[derive(Clone, Debug, Serialize)]
pub struct PairsReply {
    /// How many plants are gathered.
    pub gathered: usize,
    /// How many pairs there are.
    pub count: usize,
    /// How many of each harm pass after how many readings.
    pub counts: Vec<(Harm, Passes, usize)>,
    /// How many harmful look-alikes that a sheet names are told apart by fewer than two organs.
    pub never_determined: usize,
    /// The worst.
    pub pairs: Vec<PairRow>,
}

/// A plant that is gathered, and one that it must not be.
#[derive(Clone, Debug, Serialize)]
pub struct PairRow {
    /// What is gathered.
    pub target: String,
    /// What it must not be.
    pub rival: String,
    /// How badly that hurts.
    pub harm: Harm,
    /// Whether the sheet of one names the other.
    pub named: bool,
    /// What tells them apart by what was read, not remembered.
    pub tells: Vec<String>,
    /// The organs of these.
    pub organs: Vec<Organ>,
    /// The months in which the target shows enough of that, on two organs.
    pub months: Vec<Month>,
    /// How many readings must go wrong, in the month in which fewest must.
    pub passes: Passes,
    /// That month.
    pub in_month: Month,
}

pub(crate) fn pairs(world: &World, order: &PairsOrder) -> Result<PairsReply, Faults> {
    let flora = &world.herbal.flora;
    let judge = Judge::new(flora.matrix()?);
    let ready = Pairs::new(&judge, order.level);
    let plants: Vec<&Sheet> = match &order.plant {
        None => flora.sheets().filter(|sheet| sheet.is_gathered()).collect(),
        Some(said) => {
            let place = Place::entry("pairs", "", "plant");
            vec![flora.find(said).map_err(|near| near.fault(place))?]
        }
    };
    // Of unknown harm a look-alike answers to the bar alone, and no tells are asked for.
    let untold = |pair: &&Pair| pair.named && pair.harm >= Harm::Harmful && !pair.told_apart;
    let mut all: Vec<PairRow> = Vec::new();
    let mut never_determined = 0;
    for plant in &plants {
        let pairs = ready.of(&plant.name, None)?;
        never_determined += pairs.iter().filter(untold).count();
        all.extend(pairs.into_iter().filter_map(row));
    }
    // The sort is stable: of equals the order of names stays.
    all.sort_by_key(|pair| (Reverse(pair.harm), pair.passes, Reverse(pair.named)));
    let (count, counts) = (all.len(), counts(&all));
    all.truncate(order.worst.unwrap_or(count));
    Ok(PairsReply { gathered: plants.len(), count, counts, never_determined, pairs: all })
}

fn row(pair: Pair) -> Option<PairRow> {
    let (in_month, passes) = pair.worst()?;
    let organs = pair.organs();
    let tells = pair.tells.into_iter().map(|tell| tell.character).collect();
    let Pair { target, rival, harm, named, told_apart_in: months, .. } = pair;
    Some(PairRow { target, rival, harm, named, tells, organs, months, passes, in_month })
}

/// The worst harm first, then the fewest readings.
fn counts(pairs: &[PairRow]) -> Vec<(Harm, Passes, usize)> {
    let mut counts = BTreeMap::new();
    for pair in pairs {
        *counts.entry((Reverse(pair.harm), pair.passes)).or_insert(0) += 1;
    }
    counts.into_iter().map(|((harm, passes), count)| (harm.0, passes, count)).collect()
}
