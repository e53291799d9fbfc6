//! Flags: who may be handed what, for a device that knows nobody's answers.
//!
//! They are found where the answers are, as if the plant were determined, sorted and at the stage that is
//! meant, and as if every other state that a rule fears were there. How that stands is decided on the day,
//! as for a grown-up without any answer that matters. A flag holds until the end of the outing's day, and
//! for the very cup that it was found for: other amounts, another stage, another dish beside it, another
//! herbal, and it says nothing any more.

use super::certainty::Certainty;
use super::people::{People, plain_adult};
use super::{handed, worked};
use crate::World;
use crate::outing::{Make, Outing};
use dose::{Case, Cup, Decision, Given, Intakes, Tense, decide_in, flagged};
use ground::{Answer, ContentId, Faults};
use identify::Judge;
use journal::Flag;
use prepare::Brew;
use std::collections::BTreeMap;

/// A flag for every wish and everybody whose answers are there.
pub(crate) fn flags(world: &World, outing: &Outing) -> Result<Vec<Flag>, Faults> {
    let wishes = &outing.wishes;
    let school = world.journal.clone().merge(outing.journal.clone()).fold();
    let judge = Judge::new(world.herbal.flora.matrix()?);
    let certainty = Certainty::of(world, wishes, &school, &judge)?;
    let mut counting = world.counting(wishes);
    let table = counting.known.table();
    let people = People::of(world, wishes, &school, &certainty, table);
    let people = People { tense: Tense::OnTheDay, ..people };
    let flags = people.flags(&worked(world, wishes, &school), &mut counting.known)?;
    world.keep_counting(counting);
    Ok(flags)
}

impl People<'_> {
    fn flags(
        &self,
        worked: &BTreeMap<String, Answer<Brew>>,
        intakes: &mut Intakes,
    ) -> Result<Vec<Flag>, Faults> {
        let cup = |make: &Make| granted(as_meant(self.cup(make, worked.get(&make.name))));
        let makes = self.wishes.makes.values();
        let cups: BTreeMap<&str, Cup> = makes.map(|make| (make.name.as_str(), cup(make))).collect();
        let mut flags = Vec::new();
        for participant in self.school.answers.keys() {
            for make in self.wishes.makes.values().filter(|make| make.is_for(participant)) {
                let Some(cup) = cups.get(make.name.as_str()) else { continue };
                let (person, beside) =
                    (self.person(participant), self.beside(participant, make, &cups));
                let case = self.case(&person, cup, &beside);
                let Some(basis) = self.basis(&case) else { continue };
                let decision = decide_in(&case, intakes)?;
                let outcome = handed(self.school, make, participant, &decision).outcome;
                let dose::Flag { servings_a_day, days } =
                    dose::Flag::of(outcome, (make.servings_a_day, make.days));
                flags.push(Flag {
                    make: make.name.clone(),
                    participant: participant.clone(),
                    basis,
                    servings_a_day,
                    days,
                });
            }
        }
        Ok(flags)
    }

    /// What was flagged of a cup for somebody whose answers are not there. Of several flags all bind.
    pub(super) fn flag(&self, participant: &str, case: &Case<'_>) -> Option<dose::Flag> {
        let of_them = |flag: &&Flag| flag.participant == participant && flag.make == case.cup.batch;
        let mut own = self.school.flags.iter().filter(of_them).peekable();
        if own.peek().is_none() || self.school.answers.contains_key(participant) || self.over {
            return None;
        }
        let basis = self.basis(case)?;
        let holds = own.filter(|flag| flag.basis == basis);
        let says =
            holds.map(|flag| dose::Flag { servings_a_day: flag.servings_a_day, days: flag.days });
        says.reduce(dose::Flag::and)
    }

    /// What a cup is by itself, and never more than a flag allows.
    pub(super) fn under_flag(
        &self,
        flag: dose::Flag,
        case: &Case<'_>,
        intakes: &mut Intakes,
    ) -> Result<Decision, Faults> {
        let adult = plain_adult();
        let decision = decide_in(&Case { person: &adult, ..*case }, intakes)?;
        Ok(flagged(decision, flag, &case.person.id))
    }

    /// What a decision hangs on besides the person and what is seen to on the day, as an identifier. What
    /// cannot be written down is the basis of nothing.
    fn basis(&self, case: &Case<'_>) -> Option<String> {
        let cup = match case.tense {
            Tense::Before => as_meant(case.cup.clone()),
            Tense::OnTheDay => case.cup.clone(),
        };
        let beside = case.beside.iter().cloned().map(of_no_stage);
        let mut cups: Vec<_> = std::iter::once(cup).chain(beside).map(granted).collect();
        number(cups.iter_mut().map(|cup| &mut cup.cook));
        number(cups.iter_mut().flat_map(|cup| &mut cup.herbs).map(|herb| &mut herb.lot));
        let hangs_on = (self.herbal, self.wishes.date, case.sold, &self.wishes.contents, cups);
        Some(ContentId::of(&serde_json::to_vec(&hangs_on).ok()?).to_string())
    }
}

/// A cup as if everything had been seen to that the day must show, and nothing else.
fn granted(mut cup: Cup) -> Cup {
    for herb in &mut cup.herbs {
        (herb.determined, herb.sorted) = (Given::Yes, Given::Yes);
        herb.planned_stage = None;
        // Who says today that a feared state is not there does not say so for tomorrow.
        herb.stages.retain(|_, given| *given == Given::Yes);
    }
    cup
}

/// A cup with the stage that is meant, where none was confirmed.
fn as_meant(mut cup: Cup) -> Cup {
    for herb in &mut cup.herbs {
        let confirmed = herb.stages.values().any(|given| *given == Given::Yes);
        let meant = herb.planned_stage.take().filter(|_| !confirmed);
        herb.stages.extend(meant.map(|stage| (stage, Given::Yes)));
    }
    cup
}

/// A cup that is had beside another: no rule asks for its stage then.
fn of_no_stage(mut cup: Cup) -> Cup {
    cup.herbs.iter_mut().for_each(|herb| herb.stages.clear());
    cup
}

/// Names things by the order in which they come: which are the same matters, and not what they are called.
fn number<'a>(names: impl Iterator<Item = &'a mut String>) {
    let mut known: Vec<String> = Vec::new();
    for name in names {
        let at = known.iter().position(|other| other == name).unwrap_or_else(|| {
            known.push(name.clone());
            known.len() - 1
        });
        *name = at.to_string();
    }
}
