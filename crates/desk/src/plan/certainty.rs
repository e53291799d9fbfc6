//! Is it the plant, and was the basket sorted? What the records say of each stand and lot.

use crate::outing::{Make, Wishes};
use crate::{World, judging};
use dose::Given;
use ground::{Faults, Form};
use herbal::Herbal;
use identify::{Case, Judge, Level, Look, Outcome, Strictness, Verdict};
use jiff::civil::{Date, DateTime};
use journal::{Batch, Fitness, LotState, School, Take};
use std::collections::{BTreeMap, BTreeSet};

/// What the records say of plants in hand and of lots.
pub(crate) struct Certainty {
    /// Verdicts on specimens that were looked at on the day of the outing.
    pub(super) today: Vec<Verdict>,
    /// Whether the pattern of each take was determined when it was made.
    patterns: BTreeMap<String, Given>,
    lots: BTreeMap<String, LotState>,
    /// The stages that were confirmed, by take.
    stages: BTreeMap<String, Vec<String>>,
    takes_of_lot: BTreeMap<String, Vec<String>>,
    stand_of_verdict: BTreeMap<String, String>,
    forms: BTreeMap<String, Form>,
}

impl Certainty {
    pub(super) fn of(
        world: &World,
        wishes: &Wishes,
        school: &School,
        judge: &Judge<'_>,
    ) -> Result<Self, Faults> {
        let judged = Judged { world, judge, wishes, school, looks: looks(wishes, school) };
        let mut faults = Faults::none();
        let today: Vec<_> = judged.specimens_of(wishes.date);
        let today = today
            .into_iter()
            .filter_map(|(specimen, target)| {
                faults.note_all(judged.verdict(&specimen, &target, None))
            })
            .collect();
        let mut patterns = BTreeMap::new();
        for (name, (at, take)) in &school.takes {
            if let Some(given) = faults.note_all(judged.pattern(take, *at)) {
                patterns.insert(name.clone(), given);
            }
        }
        faults.or(Self {
            today,
            patterns,
            lots: school.lot_states(),
            stages: school
                .takes
                .iter()
                .map(|(name, (_, t))| (name.clone(), t.stages.clone()))
                .collect(),
            takes_of_lot: school
                .lots
                .iter()
                .map(|(n, lot)| (n.clone(), lot.takes.clone()))
                .collect(),
            stand_of_verdict: stands(school),
            forms: forms(&world.herbal, wishes),
        })
    }

    /// What a wish makes.
    pub(super) fn form_of(&self, make: &Make) -> Form {
        self.forms.get(&make.name).copied().unwrap_or(Form::Any)
    }

    /// Whether the plant in a wish was determined: of material that is there, by the patterns of its
    /// takes; before that, by a specimen of today at each stand.
    pub(super) fn determined(&self, make: &Make, batch: Option<&Batch>) -> Given {
        let lots = batch.map_or(&make.lots, |batch| &batch.lots);
        if !lots.is_empty() {
            let takes = lots.iter().flat_map(|lot| self.takes_of(lot));
            return all(takes.map(|take| self.patterns.get(take).copied().unwrap_or_default()));
        }
        all(make.stands.iter().map(|stand| self.at_stand(stand, &make.plant)))
    }

    /// Whether a specimen of today at a stand was determined.
    fn at_stand(&self, stand: &str, plant: &str) -> Given {
        let here = self.today.iter().filter(|verdict| {
            verdict.target == plant
                && self.stand_of_verdict.get(&verdict.specimen).is_some_and(|s| s == stand)
        });
        let outcomes: Vec<_> = here.map(|verdict| &verdict.outcome).collect();
        if outcomes.contains(&&Outcome::RuledOut) {
            return Given::No;
        }
        if outcomes.iter().any(|outcome| outcome.is_determined()) {
            Given::Yes
        } else {
            Given::Unanswered
        }
    }

    /// Whether the plant in a lot was determined, by the patterns of its takes.
    pub(super) fn lot_determined(&self, lot: &str) -> Given {
        let takes = self.takes_of(lot).iter();
        all(takes.map(|take| self.patterns.get(take).copied().unwrap_or_default()))
    }

    /// Whether the lots of a wish were sorted.
    pub(super) fn sorted(&self, make: &Make, batch: Option<&Batch>) -> Given {
        self.lots_sorted(batch.map_or(&make.lots, |batch| &batch.lots))
    }

    /// Whether all of these lots were sorted.
    pub(super) fn lots_sorted(&self, lots: &[String]) -> Given {
        all(lots.iter().map(|lot| match self.lots.get(lot).map(|state| &state.fitness) {
            Some(Fitness::Sorted { .. }) => Given::Yes,
            Some(Fitness::Held { .. }) => Given::No,
            Some(Fitness::Unsorted) | None => Given::Unanswered,
        }))
    }

    /// The stages that were confirmed of every batch; of no batch, of what is there for one.
    pub(super) fn stages_of_each(
        &self,
        make: &Make,
        batches: &[&Batch],
    ) -> BTreeMap<String, Given> {
        let each = batches.iter().map(|batch| self.stages(make, Some(batch)));
        let both = |mut one: BTreeMap<String, Given>, other: BTreeMap<String, Given>| {
            one.retain(|stage, given| other.get(stage) == Some(given));
            one
        };
        each.reduce(both).unwrap_or_else(|| self.stages(make, None))
    }

    /// The stages that were confirmed of all that went in.
    fn stages(&self, make: &Make, batch: Option<&Batch>) -> BTreeMap<String, Given> {
        let lots = batch.map_or(&make.lots, |batch| &batch.lots);
        let takes: Vec<_> = lots.iter().flat_map(|lot| self.takes_of(lot)).collect();
        let of = |take: &&String| self.stages.get(*take).map(Vec::as_slice).unwrap_or_default();
        let seen: BTreeSet<&String> = takes.iter().flat_map(of).collect();
        let everywhere = |stage: &&&String| takes.iter().all(|take| of(take).contains(stage));
        let confirmed = seen.iter().filter(everywhere).map(|stage| (**stage).clone());
        let at_stove = batch.iter().flat_map(|batch| batch.stages.iter().cloned());
        confirmed.chain(at_stove).map(|stage| (stage, Given::Yes)).collect()
    }

    fn takes_of(&self, lot: &str) -> &[String] {
        self.takes_of_lot.get(lot).map(Vec::as_slice).unwrap_or_default()
    }
}

/// The worst of what holds of each batch; of no batch, of what is there for one.
pub(super) fn of_each(batches: &[&Batch], holds: impl Fn(Option<&Batch>) -> Given) -> Given {
    if batches.is_empty() { holds(None) } else { all(batches.iter().map(|one| holds(Some(one)))) }
}

/// Whether all hold: *no* outweighs what is open, what is open outweighs *yes*; of nothing, nobody
/// has said so.
fn all(given: impl Iterator<Item = Given>) -> Given {
    let worst = |a: Given, b: Given| match (a, b) {
        (Given::No, _) | (_, Given::No) => Given::No,
        (Given::Yes, Given::Yes) => Given::Yes,
        _ => Given::Unanswered,
    };
    given.reduce(worst).unwrap_or(Given::Unanswered)
}

/// The stand of each specimen; none for one that the records put at two.
fn stands(school: &School) -> BTreeMap<String, String> {
    let stand = |looks: &[Written]| {
        let stands: BTreeSet<_> = looks.iter().map(|(_, _, look)| &look.stand).collect();
        let mut stands = stands.into_iter();
        stands.next().filter(|_| stands.next().is_none()).cloned()
    };
    school.looks.iter().filter_map(|(name, looks)| Some((name.clone(), stand(looks)?))).collect()
}

/// A look as it was written down.
type Written = (ground::ContentId, Option<DateTime>, journal::Look);

fn forms(herbal: &Herbal, wishes: &Wishes) -> BTreeMap<String, Form> {
    let form = |make: &Make| herbal.kitchen.recipes.get(&make.recipe).map(|recipe| recipe.form);
    wishes.makes.values().filter_map(|make| Some((make.name.clone(), form(make)?))).collect()
}

/// Judging with everything it needs at hand.
struct Judged<'a> {
    world: &'a World,
    judge: &'a Judge<'a>,
    wishes: &'a Wishes,
    school: &'a School,
    looks: Vec<Look>,
}

impl Judged<'_> {
    /// The specimens that were looked at on a day, each with the plant its stand is one of.
    fn specimens_of(&self, day: Date) -> Vec<(String, String)> {
        let on_day = |looks: &[Written]| {
            looks.iter().any(|(_, at, _)| at.is_some_and(|at| at.date() == day))
        };
        let seen = self.school.looks.iter().filter(|(_, looks)| on_day(looks));
        seen.filter_map(|(name, _)| Some((name.clone(), self.target(name)?))).collect()
    }

    fn target(&self, specimen: &str) -> Option<String> {
        let (_, _, look) = self.school.looks.get(specimen)?.first()?;
        Some(self.school.stands.get(&look.stand)?.taxon.clone())
    }

    /// The verdict on a specimen, from the looks made up to a moment.
    fn verdict(
        &self,
        specimen: &str,
        target: &str,
        until: Option<DateTime>,
    ) -> Result<Verdict, Faults> {
        let day = until.map_or(self.wishes.date, |until| until.date());
        let case = case_of(self.wishes, self.school, &self.looks, specimen, day, until);
        self.world.verdict(self.judge, target, case)
    }

    /// Whether the pattern of a take was determined by what had been seen when it was made, at the
    /// same stand on the same day.
    fn pattern(&self, take: &Take, at: Option<DateTime>) -> Result<Given, Faults> {
        let stand = self.school.stands.get(&take.stand);
        let (Some(pattern), Some(at), Some(stand)) = (&take.pattern, at, stand) else {
            return Ok(Given::Unanswered);
        };
        let here = self
            .school
            .looks
            .get(pattern)
            .is_some_and(|looks| looks.iter().all(|(_, _, look)| look.stand == take.stand));
        if !here {
            return Ok(Given::Unanswered);
        }
        Ok(match self.verdict(pattern, &stand.taxon, Some(at))?.outcome {
            Outcome::Determined { .. } => Given::Yes,
            Outcome::RuledOut => Given::No,
            Outcome::NotYet => Given::Unanswered,
        })
    }
}

/// One specimen with what was read of it, up to a moment of a day.
pub(crate) fn case_of(
    wishes: &Wishes,
    school: &School,
    looks: &[Look],
    specimen: &str,
    day: Date,
    until: Option<DateTime>,
) -> Case {
    let known = school.looks.get(specimen);
    // Of several materials the one that can be determined least.
    let material = known.into_iter().flatten().map(|(_, _, look)| look.material).max();
    Case {
        specimen: specimen.to_owned(),
        place: known
            .and_then(|looks| looks.first())
            .map(|(_, _, look)| look.stand.clone())
            .unwrap_or_default(),
        day,
        region: Some(wishes.region),
        material: judging::material(material.unwrap_or(journal::Material::Growing)),
        strictness: Strictness::least(),
        looks: looks
            .iter()
            .filter(|look| until.is_none_or(|until| look.time <= until))
            .cloned()
            .collect(),
    }
}

/// Every look that was written down; whoever is no reader of this outing counts as the public.
pub(crate) fn looks(wishes: &Wishes, school: &School) -> Vec<Look> {
    let level = |name: &str| wishes.readers.get(name).map_or(Level::Public, |reader| reader.level);
    judging::looks(&school.looks, level)
}
