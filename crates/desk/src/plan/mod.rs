//! The plan: everything an outing asks, worked out, what is open first.

mod certainty;
mod counting;
mod destroy;
mod due;
mod emergency;
pub(crate) mod flags;
mod instants;
mod intake;
mod kit;
mod labels;
mod make;
mod money;
mod people;
mod plants;
mod questions;
pub(crate) mod settled;
mod sign_up;
mod take;
mod timetable;
mod turning_back;

pub use due::{Act, Due};
pub use emergency::{Count, Emergency, NumberPlan, NumberStanding, StopPlace};
pub use instants::Instants;
pub use intake::{Intake, IntakeQuestion, Topic};
pub use kit::{Kit, Store};
pub use labels::{
    Allergen, Allergens, LabelPlan, LabelPlant, LabelStand, Labelled, Sorted, Strength,
};
pub use money::{AtSize, BreakEven, Money, Scale, Workings};
pub use plants::{LotPlan, PlantPlan, SpecimenPlan, TwinPlan};
pub use questions::{About, OpenQuestion};
pub use sign_up::{Asked, Kept, SignUp, Until};
pub use take::TakePlan;
pub use timetable::{Light, Row, Timetable, Trouble};
pub use turning_back::BackBy;

pub(crate) use certainty::{case_of, looks};
pub(crate) use counting::Counting;
pub(crate) use plants::basket;
pub(crate) use take::{allowances, surveyed};

use crate::World;
use crate::outing::{Make, Outing, Wishes};
use crate::serving::ServingReply;
use certainty::Certainty;
use dose::{Confirmed, Decision, HandedOut, Held, Outcome, Strictness, Tense};
use ground::{Answer, Faults, Region};
use herbal::DayRule;
use identify::Judge;
use jiff::civil::{Date, DateTime, Time};
use journal::School;
use people::{Decisions, People};
use prepare::Brew;
use serde::Serialize;
use std::collections::BTreeMap;

/// An outing, worked out.
#[derive(Clone, Debug, Serialize)]
pub struct Plan {
    /// Which outing, and when it was worked out.
    pub head: Head,
    /// What is still open, in the order in which a leader needs it.
    pub questions: Vec<OpenQuestion>,
    /// Every plant of the outing.
    pub plants: Vec<PlantPlan>,
    /// What may go from each stand.
    pub takes: Vec<TakePlan>,
    /// The lots that there are.
    pub lots: Vec<LotPlan>,
    /// What is made, and who may have it.
    pub makes: Vec<MakePlan>,
    /// What stands on each label.
    pub labels: Vec<LabelPlan>,
    /// Who comes, by short name.
    pub people: BTreeMap<String, String>,
    /// The day in order.
    pub timetable: Timetable,
    /// Who reads characters, by what they are called, the leader first.
    pub readers: Vec<String>,
    /// What the emergency card says.
    pub emergency: Emergency,
    /// Rules for weather and water that hold where this outing goes.
    pub rules: Vec<DayRule>,
    /// What to bring.
    pub kit: Kit,
    /// What comes after the day, by date.
    pub due: Vec<Due>,
    /// What people are asked before they come.
    pub intake: Intake,
    /// The last day on which the sealed list is kept.
    pub keep_until: Answer<Date>,
    /// The list for those who come.
    pub sign_up: SignUp,
    /// What it costs and brings. Only where the outing speaks of money.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub money: Option<Money>,
    /// Why the decisions are what they are. Only where it was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sealed: Option<Vec<SealedRow>>,
}

/// Which outing, and when it was worked out.
#[derive(Clone, Debug, Serialize)]
pub struct Head {
    /// What it is called.
    pub name: String,
    /// The day.
    pub date: Date,
    /// When it begins.
    pub from: Time,
    /// When it ends.
    pub to: Time,
    /// The standard name of its time zone.
    pub zone: String,
    /// Where in the world.
    pub region: Region,
    /// Who leads.
    pub leader: String,
    /// The moment it was worked out for.
    pub as_of: DateTime,
    /// The same moments in universal time; none beyond the ends of the calendar.
    pub instants: Option<Instants>,
    /// Whether anything is in hand yet.
    pub tense: Tense,
    /// The version of the herbal.
    pub herbal_version: String,
}

/// Something to make, and who may have it.
#[derive(Clone, Debug, Serialize)]
pub struct MakePlan {
    /// Short name.
    pub name: String,
    /// What it is called.
    pub called: String,
    /// Of which plant.
    pub plant: String,
    /// Of which part.
    pub part: ground::Part,
    /// Servings that each person is meant to have in a day.
    pub servings_a_day: u32,
    /// On how many days.
    pub days: u32,
    /// What comes out, or what must be said first.
    pub brew: Answer<Brew>,
    /// What may be handed to whom, by short name of the participant. Never why.
    pub handed_out: BTreeMap<String, Handed>,
    /// How many people stand at each outcome.
    pub counts: BTreeMap<Strictness, usize>,
    /// What nobody may have: what else is planned that somebody may.
    pub instead: Vec<String>,
    /// What must hold on the day, the same for everybody.
    pub provisos: Vec<ground::Text>,
    /// What the pot alone would be for a grown-up without any answer that matters: why, against every
    /// limit. It speaks of nobody who comes.
    pub plain_adult: Option<Decision>,
    /// How the sums of that would stand if as much passed over as is supposed where nobody measured
    /// it, as far as that changes them. It decides nothing.
    pub as_supposed: Vec<Held>,
}

/// A pot: what goes in, and what comes of it.
#[derive(Clone, Debug, Serialize)]
pub struct PotPlan {
    /// Short name of the wish.
    pub name: String,
    /// What it is called.
    pub called: String,
    /// What comes out, or what must be said first.
    pub brew: Answer<Brew>,
}

/// What may be handed to one person.
#[derive(Clone, Debug, Serialize)]
pub struct Handed {
    /// What may be handed out.
    pub outcome: Outcome,
    /// Who stands for it; a decision without a name is a proposal.
    pub confirmed_by: Option<String>,
    /// Whether a word was given that does not fit the decision, such as one that would lift
    /// *withhold*. It changes nothing: the decision is a proposal again.
    pub word_does_not_fit: bool,
    /// How many servings were handed out already.
    pub had: u32,
    /// Whether it rests on a flag, since the answers of this person are not here.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub by_flag: bool,
}

impl Handed {
    /// Servings that may still be handed over if somebody stands for it. An outcome that names no number of
    /// a day leaves one. All that were had count, of whatever day.
    #[must_use]
    pub fn left(&self) -> u32 {
        let most = match self.outcome {
            Outcome::NoReasonFound { servings_a_day, .. }
            | Outcome::AtMost { servings_a_day, .. } => servings_a_day.unwrap_or(1),
            Outcome::AskFirst | Outcome::Withhold => 0,
        };
        most.saturating_sub(self.had)
    }

    /// Whether one more may be handed over now: a named person stands for it.
    #[must_use]
    pub fn may_have_one(&self) -> bool {
        self.confirmed_by.is_some() && self.left() > 0
    }
}

/// Why one decision is what it is.
#[derive(Clone, Debug, Serialize)]
pub struct SealedRow {
    /// The wish.
    pub make: String,
    /// Everything about the decision.
    pub decision: Decision,
}

/// Works an outing out.
///
/// # Errors
/// Only a fault of our own.
pub(crate) fn plan(world: &World, outing: &Outing, reasons: bool) -> Result<Plan, Faults> {
    let wishes = &outing.wishes;
    let school = world.journal.clone().merge(outing.journal.clone()).fold();
    let as_of = wishes.as_of.unwrap_or(world.now);
    let matrix = world.herbal.flora.matrix()?;
    let judge = Judge::new(matrix);
    let certainty = Certainty::of(world, wishes, &school, &judge)?;
    let worked = worked(world, wishes, &school);
    let mut counting = world.counting(wishes);
    let people = People::of(world, wishes, &school, &certainty, counting.known.table());
    let tense = people.tense;
    let decisions = people.decide(&worked, &mut counting.known)?;
    let wanted = make::wanted(wishes, &world.herbal, &worked);
    let takes = take::take_plans(wishes, &school, &world.herbal, &wanted);
    let plants = plants::plants(world, wishes, &school, (&judge, &certainty))?;
    let lots = plants::lots(&school);
    let makes = makes(&people, &worked, &decisions, &mut counting)?;
    let intake = people.intake(&worked, &mut counting.known)?;
    world.keep_counting(counting);
    let due = due::due(wishes, &school, &world.herbal, &makes);
    let timetable = timetable::timetable(wishes, &school);
    let emergency = emergency::emergency(world, wishes, &school);
    let labels = labels::labels(&labels::Known {
        world,
        wishes,
        school: &school,
        certainty: &certainty,
        people: &people,
        worked: &worked,
        makes: &makes,
        tense,
    });
    let questions = questions::questions(&questions::Known {
        wishes,
        school: &school,
        tense,
        plants: &plants,
        takes: &takes,
        lots: &lots,
        makes: &makes,
        due: &due,
        decisions: &decisions,
        timetable: &timetable,
        emergency: &emergency,
    });
    Ok(Plan {
        head: head(world, wishes, as_of, tense),
        kit: kit::kit(world, wishes, &plants, &makes),
        intake,
        keep_until: destroy::keep_until(wishes, &school, &makes),
        timetable,
        readers: readers(wishes),
        emergency,
        rules: rules(world, wishes, &school),
        sign_up: sign_up::sign_up(wishes, &school),
        money: wishes.money.as_ref().map(|wish| money::money(wish, school.participants.len())),
        questions,
        plants,
        takes,
        lots,
        makes,
        labels,
        people: called(&school),
        due,
        sealed: reasons.then(|| sealed(decisions)),
    })
}

/// What is made and who may have it, with nothing else worked out.
pub(crate) fn servings(
    world: &World,
    outing: &Outing,
    reasons: bool,
) -> Result<ServingReply, Faults> {
    let wishes = &outing.wishes;
    let school = world.journal.clone().merge(outing.journal.clone()).fold();
    let judge = Judge::new(world.herbal.flora.matrix()?);
    let certainty = Certainty::of(world, wishes, &school, &judge)?;
    let worked = worked(world, wishes, &school);
    let mut counting = world.counting(wishes);
    let people = People::of(world, wishes, &school, &certainty, counting.known.table());
    let decisions = people.decide(&worked, &mut counting.known)?;
    let makes = makes(&people, &worked, &decisions, &mut counting)?;
    world.keep_counting(counting);
    let sealed = reasons.then(|| sealed(decisions));
    Ok(ServingReply { makes, people: called(&school), sealed })
}

/// What goes into each pot and what comes of it, with nothing else worked out.
pub(crate) fn pots(world: &World, outing: &Outing) -> Vec<PotPlan> {
    let wishes = &outing.wishes;
    let school = world.journal.clone().merge(outing.journal.clone()).fold();
    let mut worked = worked(world, wishes, &school);
    let pot = |make: &Make| {
        let brew = worked.remove(&make.name)?;
        Some(PotPlan { name: make.name.clone(), called: make.called.clone(), brew })
    };
    wishes.makes.values().filter_map(pot).collect()
}

/// Who comes, as people call them, by short name.
fn called(school: &School) -> BTreeMap<String, String> {
    school.participants.values().map(|p| (p.name.clone(), p.called.clone())).collect()
}

fn head(world: &World, wishes: &Wishes, as_of: DateTime, tense: Tense) -> Head {
    let leader = wishes.readers.get(&wishes.leader).map(|reader| reader.called.clone());
    Head {
        name: wishes.name.clone(),
        date: wishes.date,
        from: wishes.from,
        to: wishes.to,
        zone: wishes.zone_name.clone(),
        region: wishes.region,
        leader: leader.unwrap_or_else(|| wishes.leader.clone()),
        as_of,
        instants: Instants::of(wishes, as_of),
        tense,
        herbal_version: world.herbal_version.clone(),
    }
}

/// Who reads characters, the leader first.
fn readers(wishes: &Wishes) -> Vec<String> {
    let mut readers: Vec<_> = wishes.readers.iter().collect();
    readers.sort_by_key(|(name, _)| **name != wishes.leader);
    readers.into_iter().map(|(_, reader)| reader.called.clone()).collect()
}

/// Rules that speak of water plants are left out only where somebody looked, and no stand of the
/// outing is in water.
fn rules(world: &World, wishes: &Wishes, school: &School) -> Vec<DayRule> {
    let here = |site: &String| wishes.stops.iter().any(|stop| stop.site == *site);
    let mut stands = school.stands.values().filter(|stand| here(&stand.site));
    let wet = stands.any(|stand| stand.in_water != Some(false));
    world.herbal.day.rules.iter().filter(|rule| wet || !rule.water_only).cloned().collect()
}

/// Every wish worked through its recipe.
fn worked(world: &World, wishes: &Wishes, school: &School) -> BTreeMap<String, Answer<Brew>> {
    let brew = |make: &Make| {
        let people = school.participants.keys().filter(|name| make.is_for(name)).count();
        let people = u32::try_from(people).unwrap_or(u32::MAX);
        (make.name.clone(), make::work(wishes, &world.herbal, make, people))
    };
    wishes.makes.values().map(brew).collect()
}

/// What is made, who may have it, and what the pots alone would be.
fn makes(
    people: &People<'_>,
    worked: &BTreeMap<String, Answer<Brew>>,
    decisions: &BTreeMap<String, Decisions>,
    counting: &mut Counting,
) -> Result<Vec<MakePlan>, Faults> {
    let mut makes = handed_out(people.wishes, people.school, worked, decisions);
    let mut adults = people.plain_adult(worked, &mut counting.known)?;
    let mut supposed = people.as_supposed(worked, &adults, counting)?;
    for make in &mut makes {
        let adult = adults.remove(&make.name);
        make.provisos = adult.as_ref().map(provisos).unwrap_or_default();
        make.plain_adult = adult;
        make.as_supposed = supposed.remove(&make.name).unwrap_or_default();
    }
    Ok(makes)
}

fn handed_out(
    wishes: &Wishes,
    school: &School,
    worked: &BTreeMap<String, Answer<Brew>>,
    decisions: &BTreeMap<String, Decisions>,
) -> Vec<MakePlan> {
    let none = Decisions::new();
    let mut plans = Vec::new();
    for (make, brew) in wishes.makes.values().filter_map(|m| Some((m, worked.get(&m.name)?))) {
        let decided = decisions.get(&make.name).unwrap_or(&none);
        let handed_out: BTreeMap<_, _> = decided
            .iter()
            .map(|(name, decision)| (name.clone(), handed(school, make, name, decision)))
            .collect();
        let mut counts = BTreeMap::new();
        for handed in handed_out.values() {
            *counts.entry(handed.outcome.strictness()).or_insert(0) += 1;
        }
        plans.push(MakePlan {
            name: make.name.clone(),
            called: make.called.clone(),
            plant: make.plant.clone(),
            part: make.part,
            servings_a_day: make.servings_a_day,
            days: make.days,
            brew: brew.clone(),
            handed_out,
            counts,
            instead: Vec::new(),
            provisos: Vec::new(),
            plain_adult: None,
            as_supposed: Vec::new(),
        });
    }
    suggest_instead(&mut plans);
    plans
}

/// What may be handed to one person, with the word that a named person gave on it.
fn handed(school: &School, make: &Make, participant: &str, decision: &Decision) -> Handed {
    let of_it = school.batches.values().filter(|(_, batch)| batch.make == make.name);
    let batches: Vec<_> = of_it.map(|(_, batch)| &batch.name).collect();
    let had = school
        .servings
        .iter()
        .filter(|(_, s)| s.participant == participant && batches.contains(&&s.batch))
        .map(|(_, serving)| serving.servings)
        .sum();
    let by_flag = decision.sealed.reasons.iter().any(|reason| reason.rule == dose::Rule::Flag);
    let proposed = |word_does_not_fit| Handed {
        outcome: decision.outcome,
        confirmed_by: None,
        word_does_not_fit,
        had,
        by_flag,
    };
    let key = (make.name.clone(), participant.to_owned());
    let Some((_, by, said)) = school.confirmations.get(&key) else { return proposed(false) };
    let confirmation = dose::Confirmation { by: by.clone(), word: word(decision, &said.given) };
    match decision.confirm(confirmation) {
        Ok(Confirmed { handed_out: HandedOut { outcome, .. }, .. }) => {
            let lifted = matches!(said.given, journal::Given::ClinicianSaid { .. });
            let outcome = if lifted { as_planned(outcome, make) } else { outcome };
            let confirmed_by = Some(by.clone());
            Handed { outcome, confirmed_by, word_does_not_fit: false, had, by_flag }
        }
        // What was found since may have made the decision stricter than the word that was given on
        // it; the plan is needed then more than ever.
        Err(_) => proposed(true),
    }
}

/// What a clinician let pass: no more than what was planned, since that is what they were asked about.
fn as_planned(outcome: Outcome, make: &Make) -> Outcome {
    let least = |most: Option<u32>, planned: u32| Some(most.map_or(planned, |m| m.min(planned)));
    match outcome {
        Outcome::NoReasonFound { servings_a_day, days } => Outcome::NoReasonFound {
            servings_a_day: least(servings_a_day, make.servings_a_day),
            days: least(days, make.days),
        },
        Outcome::AtMost { servings_a_day, days } => Outcome::AtMost {
            servings_a_day: least(servings_a_day, make.servings_a_day),
            days: least(days, make.days),
        },
        Outcome::AskFirst | Outcome::Withhold => outcome,
    }
}

fn word(decision: &Decision, given: &journal::Given) -> dose::Word {
    match given {
        journal::Given::AsProposed => dose::Word::AsProposed,
        journal::Given::AtMost(0) => dose::Word::Tighter(Outcome::Withhold),
        journal::Given::AtMost(most) => {
            let days = match decision.outcome {
                Outcome::NoReasonFound { days, .. } | Outcome::AtMost { days, .. } => days,
                Outcome::AskFirst | Outcome::Withhold => None,
            };
            dose::Word::Tighter(Outcome::AtMost { servings_a_day: Some(*most), days })
        }
        journal::Given::ClinicianSaid { role, on, preparation } => dose::Word::Clinician {
            role: role.clone(),
            date: Some(*on),
            preparation: preparation.clone(),
        },
    }
}

/// What must hold on the day, where the pot itself is not withheld. It speaks of plants and lots; that it
/// comes from nobody's answers keeps it from speaking of people.
fn provisos(adult: &Decision) -> Vec<ground::Text> {
    if adult.outcome == Outcome::Withhold { Vec::new() } else { adult.provisos.clone() }
}

/// For what nobody may have: what else is planned that somebody may.
fn suggest_instead(plans: &mut [MakePlan]) {
    let someone =
        |plan: &MakePlan| plan.counts.keys().any(|outcome| *outcome <= Strictness::AtMost);
    let others: Vec<_> = plans.iter().filter(|p| someone(p)).map(|p| p.called.clone()).collect();
    for plan in plans.iter_mut().filter(|plan| !someone(plan) && !plan.counts.is_empty()) {
        plan.instead = others.clone();
    }
}

fn sealed(decisions: BTreeMap<String, Decisions>) -> Vec<SealedRow> {
    let rows = decisions.into_iter().flat_map(|(make, decided)| {
        decided.into_values().map(move |decision| SealedRow { make: make.clone(), decision })
    });
    rows.collect()
}
