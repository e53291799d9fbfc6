//! What a plan settles, without what surrounds it: the verdicts, the decisions and the allowances.
//! It is worked out from inputs that can be blanked one by one.

use super::certainty::{Certainty, case_of, looks};
use super::people::{Decisions, People};
use super::{handed, make, people, take, worked};
use crate::World;
use crate::outing::{Make, Outing, Wishes};
use dose::{Intakes, Table};
use ground::{Faults, Part};
use identify::{Case, Judge, Matrix};
use jiff::civil::Date;
use journal::{Journal, School};
use std::collections::BTreeMap;
use std::rc::Rc;
use std::sync::Arc;

/// Everything a plan is worked out from, besides the recipes and land rules of the herbal.
#[derive(Clone, Debug)]
pub(crate) struct Inputs {
    /// What plants look like, and how they are told apart.
    pub(crate) matrix: Rc<Matrix>,
    /// What has happened.
    pub(crate) journal: Journal,
    /// What is wanted.
    pub(crate) wishes: Wishes,
    /// What decisions on cups rest on.
    pub(crate) table: Table,
}

/// What is settled. Something that was refused is left out or counts as nothing.
#[derive(Clone, Debug, Default)]
pub(crate) struct Settled {
    /// The verdict on each specimen of the day.
    pub(crate) verdicts: BTreeMap<String, identify::Outcome>,
    /// The decision on each wish for each person.
    pub(crate) decisions: BTreeMap<(String, String), Decided>,
    /// How many grams may go, by stand and part.
    pub(crate) allowances: BTreeMap<(String, Part), f64>,
}

/// A decision, and what may be handed out by it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Decided {
    /// As proposed.
    pub(crate) proposed: dose::Outcome,
    /// What may be handed out, with the word that a named person gave.
    pub(crate) handed: dose::Outcome,
}

impl Inputs {
    /// What a world and an outing say.
    ///
    /// # Errors
    /// Only a fault of our own.
    pub(crate) fn of(world: &World, outing: &Outing) -> Result<Self, Faults> {
        Ok(Self {
            matrix: Rc::new(world.herbal.flora.matrix()?.clone()),
            journal: world.journal.clone().merge(outing.journal.clone()),
            wishes: outing.wishes.clone(),
            table: people::table(&world.herbal, &outing.wishes),
        })
    }

    /// Works out what they settle.
    pub(crate) fn settle(&self, world: &World) -> Result<Settled, Faults> {
        let school = self.journal.fold();
        let certainty = self.certainty(world)?;
        let worked = worked(world, &self.wishes, &school);
        let wanted = make::wanted(&self.wishes, &world.herbal, &worked);
        let takes = take::take_plans(&self.wishes, &school, &world.herbal, &wanted);
        let allowance = |plan: take::TakePlan| {
            let grams = plan.allowance.amount.known().map_or(0.0, |amount| amount.number());
            ((plan.stand, plan.part), grams)
        };
        let verdict =
            |verdict: &identify::Verdict| (verdict.specimen.clone(), verdict.outcome.clone());
        Ok(Settled {
            verdicts: certainty.today.iter().map(verdict).collect(),
            decisions: self.decided(world, &school, &certainty)?,
            allowances: takes.into_iter().map(allowance).collect(),
        })
    }

    /// The decisions for one person, as far as blanking their own answers can move them: verdicts and
    /// allowances do not hang on these.
    pub(crate) fn settle_person(
        &self,
        world: &World,
        certainty: &Certainty,
        person: &str,
    ) -> Result<Settled, Faults> {
        let mut school = self.journal.fold();
        school.participants.retain(|name, _| name == person);
        let decisions = self.decided(world, &school, certainty)?;
        Ok(Settled { decisions, ..Settled::default() })
    }

    /// What the records say of plants in hand and of lots.
    pub(crate) fn certainty(&self, world: &World) -> Result<Certainty, Faults> {
        Certainty::of(world, &self.wishes, &self.journal.fold(), &Judge::new(&self.matrix))
    }

    fn decided(
        &self,
        world: &World,
        school: &School,
        certainty: &Certainty,
    ) -> Result<BTreeMap<(String, String), Decided>, Faults> {
        let table = Arc::new(self.table.clone());
        let people = People::of(world, &self.wishes, school, certainty, table);
        // The pot is that of everybody, also where one person alone is decided on.
        let worked = worked(world, &self.wishes, &self.journal.fold());
        let mut intakes = Intakes::new(Arc::clone(&people.table), world.random_start);
        let all = people.decide(&worked, &mut intakes)?;
        let makes = self.wishes.makes.values();
        let makes = makes.filter_map(|make| Some((make, all.get(&make.name)?)));
        Ok(makes.flat_map(|(make, decided)| each(school, make, decided)).collect())
    }
}

fn each<'a>(
    school: &'a School,
    make: &'a Make,
    decided: &'a Decisions,
) -> impl Iterator<Item = ((String, String), Decided)> + 'a {
    decided.iter().map(move |(name, decision)| {
        let decided = Decided {
            proposed: decision.outcome,
            handed: handed(school, make, name, decision).outcome,
        };
        ((make.name.clone(), name.clone()), decided)
    })
}

/// Whether the one look that a journal holds of a specimen favours the plant of its stand: whether it
/// brings the bar down by itself.
pub(crate) fn favours(
    judge: &Judge<'_>,
    wishes: &Wishes,
    alone: &Journal,
    (specimen, stand): (&str, &str),
    day: Date,
) -> bool {
    let school = alone.fold();
    let Some(target) = school.stands.get(stand).map(|stand| &stand.taxon) else { return false };
    let read = looks(wishes, &school);
    let with = case_of(wishes, &school, &read, specimen, day, None);
    let without = Case { looks: Vec::new(), ..with.clone() };
    let left = |case: &Case| judge.verdict(target, case).ok().map(|verdict| verdict.bar.left);
    match (left(&with), left(&without)) {
        (Some(with), Some(without)) => with < without,
        _ => false,
    }
}
