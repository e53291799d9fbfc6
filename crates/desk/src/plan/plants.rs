//! Every plant of the outing: how to be sure of it, what it is taken for, and how it stands.

use super::certainty::{Certainty, case_of, looks};
use crate::outing::{Outing, Wishes};
use crate::{World, plain};
use ground::{Faults, Harm, Part, Season, Sourcing};
use herbal::{Resemblance, Sheet};
use identify::{Judge, Level, Means, Next, Verdict};
use journal::{LotState, School};
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};

/// One plant of the outing.
#[derive(Clone, Debug, Serialize)]
pub struct PlantPlan {
    /// Scientific name.
    pub taxon: String,
    /// Its usual common name.
    pub common: String,
    /// How badly it can hurt whoever takes it for something else.
    pub harm: Harm,
    /// What that harm is.
    pub harm_note: String,
    /// Where that was read.
    pub harm_from: Sourcing,
    /// Whether the leader asked by name that its recipes go home, whatever is taken for it.
    pub recipe_asked_for: bool,
    /// When its parts are there.
    pub months: BTreeMap<Part, Season>,
    /// The stands of it that the outing goes to.
    pub stands: Vec<String>,
    /// The shortest list of looks that would settle it on the day, or why nothing can.
    pub to_look: Next,
    /// What it is taken for, the worst first.
    pub twins: Vec<TwinPlan>,
    /// The specimens that were looked at on the day.
    pub specimens: Vec<SpecimenPlan>,
}

/// A plant it is taken for.
#[derive(Clone, Debug, Serialize)]
pub struct TwinPlan {
    /// Scientific name.
    pub taxon: String,
    /// Its usual common name, where it has a sheet.
    pub common: Option<String>,
    /// How badly it can hurt; none for one without a sheet, which counts as deadly.
    pub harm: Option<Harm>,
    /// Why people confuse the two, what tells them apart, and where that was read.
    pub resemblance: Resemblance,
}

/// A specimen that was looked at on the day.
#[derive(Clone, Debug, Serialize)]
pub struct SpecimenPlan {
    /// Where it stands.
    pub stand: String,
    /// Who read it.
    pub readers: Vec<String>,
    /// The verdict.
    pub verdict: Verdict,
}

/// A lot, and how it stands.
#[derive(Clone, Debug, Serialize)]
pub struct LotPlan {
    /// Short name.
    pub name: String,
    /// The stands it comes from.
    pub stands: Vec<String>,
    /// Of which plants and parts.
    pub gathered: BTreeSet<(String, Part)>,
    /// How much came in.
    #[serde(rename = "mass_g")]
    pub mass: ground::Mass<ground::Fresh>,
    /// How it stands.
    pub state: LotState,
    /// The batches that it went into.
    pub batches: Vec<String>,
    /// Every time somebody went through it, in order: when, who, and what was found.
    pub sortings: Vec<(Option<jiff::civil::DateTime>, journal::Sorting)>,
}

impl PlantPlan {
    /// Whether a specimen was determined at every stand.
    #[must_use]
    pub fn settled(&self) -> bool {
        let determined = |stand: &String| {
            let here = self.specimens.iter().filter(|specimen| specimen.stand == *stand);
            here.into_iter().any(|specimen| specimen.verdict.outcome.is_determined())
        };
        !self.stands.is_empty() && self.stands.iter().all(determined)
    }
}

pub(super) fn plants(
    world: &World,
    wishes: &Wishes,
    school: &School,
    (judge, certainty): (&Judge<'_>, &Certainty),
) -> Result<Vec<PlantPlan>, Faults> {
    let looks = looks(wishes, school);
    let mut plans = Vec::new();
    for taxon in taxa(wishes) {
        let Some(sheet) = world.herbal.flora.sheet(&taxon) else { continue };
        let stands = stands(wishes, school, &taxon);
        let nothing_read = case_of(wishes, school, &looks, "", wishes.date, None);
        plans.push(PlantPlan {
            common: sheet.usual_name().to_owned(),
            harm: sheet.feared(),
            harm_note: sheet.harm_note.clone(),
            harm_from: sheet.harm.from.clone(),
            recipe_asked_for: wishes.recipes_to_take_home.contains(&taxon),
            months: sheet.months.clone(),
            to_look: plain::next(
                &world.herbal.flora.glossary,
                world.next(judge, &taxon, nothing_read, Means::all(Level::Leader))?,
            ),
            twins: twins(world, sheet),
            specimens: specimens(world, certainty, school, &taxon),
            stands,
            taxon,
        });
    }
    Ok(plans)
}

/// The plants that are shown at a stop or gathered for a wish.
fn taxa(wishes: &Wishes) -> BTreeSet<String> {
    let shown = wishes.stops.iter().flat_map(|stop| &stop.plants);
    let gathered = wishes.makes.values().filter(|make| make.lots.is_empty()).map(|m| &m.plant);
    shown.chain(gathered).cloned().collect()
}

/// The stands of a plant that the outing goes to: those a wish names, and those at its stops.
fn stands(wishes: &Wishes, school: &School, taxon: &str) -> Vec<String> {
    let named = wishes.makes.values().flat_map(|make| &make.stands);
    let at_stops = school.stands.values().filter(|stand| {
        let here = |stop: &crate::outing::Stop| {
            stop.site == stand.site && stop.plants.iter().any(|plant| plant == taxon)
        };
        wishes.stops.iter().any(here)
    });
    let all: BTreeSet<_> = named.chain(at_stops.map(|stand| &stand.name)).collect();
    let of_it = |name: &&String| school.stands.get(*name).is_some_and(|s| s.taxon == taxon);
    all.into_iter().filter(of_it).cloned().collect()
}

fn twins(world: &World, sheet: &Sheet) -> Vec<TwinPlan> {
    let mut twins: Vec<_> = sheet
        .look_alikes
        .iter()
        .map(|(name, resemblance)| {
            let twin = world.herbal.flora.sheet(name);
            TwinPlan {
                taxon: name.clone(),
                common: twin.map(|twin| twin.usual_name().to_owned()),
                harm: twin.map(Sheet::feared),
                resemblance: resemblance.clone(),
            }
        })
        .collect();
    // One without a sheet counts as deadly.
    let feared = |twin: &TwinPlan| twin.harm.unwrap_or(Harm::Deadly);
    twins.sort_by(|a, b| feared(b).cmp(&feared(a)).then_with(|| a.taxon.cmp(&b.taxon)));
    twins
}

fn specimens(
    world: &World,
    certainty: &Certainty,
    school: &School,
    taxon: &str,
) -> Vec<SpecimenPlan> {
    let of_it = certainty.today.iter().filter(|verdict| verdict.target == taxon);
    let plan = |verdict: &Verdict| {
        let looks = school.looks.get(&verdict.specimen).map(Vec::as_slice).unwrap_or_default();
        let readers: BTreeSet<_> = looks.iter().map(|(_, _, look)| look.reader.clone()).collect();
        SpecimenPlan {
            stand: verdict.place.clone(),
            readers: readers.into_iter().collect(),
            verdict: plain::verdict(&world.herbal.flora.glossary, verdict.clone()),
        }
    };
    of_it.map(plan).collect()
}

/// The lots of an outing, with nothing else worked out.
pub(crate) fn basket(world: &World, outing: &Outing) -> Vec<LotPlan> {
    lots(&world.journal.clone().merge(outing.journal.clone()).fold())
}

pub(super) fn lots(school: &School) -> Vec<LotPlan> {
    let states = school.lot_states();
    let plan = |(name, state): (String, LotState)| {
        let takes = school.lots.get(&name).map(|lot| lot.takes.as_slice()).unwrap_or_default();
        let takes = takes.iter().filter_map(|take| school.takes.get(take)).map(|(_, take)| take);
        let stands: BTreeSet<_> = takes.clone().map(|take| take.stand.clone()).collect();
        let of = |take: &journal::Take| {
            let stand = school.stands.get(&take.stand)?;
            Some((stand.taxon.clone(), take.part))
        };
        let batches = school.batches.values().filter(|(_, batch)| batch.lots.contains(&name));
        let sortings = school.sortings.iter().filter(|(_, sorting)| sorting.lot == name);
        LotPlan {
            gathered: takes.filter_map(of).collect(),
            stands: stands.into_iter().collect(),
            mass: school.lot_mass(&name),
            batches: batches.map(|(_, batch)| batch.name.clone()).collect(),
            sortings: sortings.cloned().collect(),
            state,
            name,
        }
    };
    states.into_iter().map(plan).collect()
}
