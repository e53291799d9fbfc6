//! Open questions: what is not settled, in the order in which a leader needs it settled.

mod help;

use super::due::{self, Due};
use super::people::Decisions;
use super::{Emergency, LotPlan, MakePlan, PlantPlan, TakePlan, Timetable};
use crate::outing::{Make, Wishes};
use dose::Tense;
use ground::{Answer, Fresh, Mass, Refusal, Text, Unit};
use journal::{Fitness, School};
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};

/// What is not settled.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct OpenQuestion {
    /// What it is about; questions come in this order.
    pub about: About,
    /// The plant, stand, lot, wish or person.
    pub of: String,
    /// Why it is open.
    pub why: Text,
    /// What would settle it.
    pub settle: Text,
}

/// What a question is about, in the order in which it must be settled.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum About {
    /// Somebody was handed more than was decided.
    Handed,
    /// A lot that is held.
    HeldLot,
    /// Whether help can be called.
    Emergency,
    /// Whether it is the plant.
    Plant,
    /// Whether and how much may be taken.
    Take,
    /// Whether there is enough.
    Amount,
    /// Whether a lot was sorted.
    Sorting,
    /// How something is made.
    Make,
    /// When to turn back.
    WayBack,
    /// Somebody's answers.
    Person,
    /// Somebody's word on decisions.
    Confirmation,
}

/// What questions are gathered from.
pub(super) struct Known<'a> {
    pub(super) wishes: &'a Wishes,
    pub(super) school: &'a School,
    pub(super) tense: Tense,
    pub(super) plants: &'a [PlantPlan],
    pub(super) takes: &'a [TakePlan],
    pub(super) lots: &'a [LotPlan],
    pub(super) makes: &'a [MakePlan],
    pub(super) due: &'a [Due],
    pub(super) decisions: &'a BTreeMap<String, Decisions>,
    pub(super) timetable: &'a Timetable,
    pub(super) emergency: &'a Emergency,
}

pub(super) fn questions(known: &Known<'_>) -> Vec<OpenQuestion> {
    let mut all = BTreeSet::new();
    all.extend(of_servings(known));
    all.extend(of_lots(known));
    all.extend(help::of_emergency(known.emergency));
    all.extend(help::of_the_way_back(known.timetable));
    all.extend(of_plants(known));
    all.extend(of_takes(known));
    all.extend(of_makes(known));
    all.extend(of_people(known));
    all.extend(of_confirmations(known));
    all.into_iter().collect()
}

fn question(about: About, of: &str, why: Text, settle: Text) -> OpenQuestion {
    OpenQuestion { about, of: of.to_owned(), why, settle }
}

fn refused(about: About, of: &str, refusal: &Refusal) -> OpenQuestion {
    question(about, of, refusal.why.clone(), refusal.settle.clone())
}

/// Who was handed more than what may be handed out, or something that was not meant for them. It says
/// no more than the serving list does.
fn of_servings<'a>(known: &'a Known<'_>) -> impl Iterator<Item = OpenQuestion> + 'a {
    let mut had: BTreeMap<(&str, &str), u32> = BTreeMap::new();
    for (_, serving) in &known.school.servings {
        if let Some((_, batch)) = known.school.batches.get(&serving.batch) {
            *had.entry((&batch.make, &serving.participant)).or_default() += serving.servings;
        }
    }
    known.makes.iter().flat_map(move |make| {
        let of_it = had.iter().filter(|((of, _), _)| *of == make.name);
        let too_much =
            of_it.filter_map(|((_, name), had)| handed_too_much(known, make, name, *had));
        too_much.collect::<Vec<_>>()
    })
}

fn handed_too_much(
    known: &Known<'_>,
    make: &MakePlan,
    name: &str,
    had: u32,
) -> Option<OpenQuestion> {
    let allowed = make.handed_out.get(name);
    // Where no number was found, no more is decided than was planned.
    let most = allowed.map_or(0, |handed| match handed.outcome.most_servings() {
        u32::MAX => make.servings_a_day,
        most => most,
    });
    let days = allowed.map_or(0, |handed| handed.outcome.most_days().min(make.days));
    let most = most.saturating_mul(days);
    (had > most).then(|| {
        let who = known.school.participants.get(name).map_or(name, |person| &person.called);
        let why = Text::new("plan-handed-too-much")
            .with("who", who)
            .with("make", make.called.as_str())
            .with("had", had)
            .with("most", most);
        question(About::Handed, name, why, Text::new("plan-settle-handed-too-much"))
    })
}

fn of_lots<'a>(known: &'a Known<'_>) -> impl Iterator<Item = OpenQuestion> + 'a {
    known.lots.iter().filter_map(|lot| match &lot.state.fitness {
        Fitness::Sorted { .. } => None,
        Fitness::Unsorted => Some(question(
            About::Sorting,
            &lot.name,
            Text::new("plan-lot-unsorted").with("lot", lot.name.as_str()),
            Text::new("plan-settle-sort"),
        )),
        Fitness::Held { lot: other, what } => {
            let what: Vec<_> = what.iter().map(|what| what.as_str().into()).collect();
            let why = Text::new("plan-lot-held")
                .with("lot", lot.name.as_str())
                .with("found", what)
                .with("other", other.as_str());
            Some(question(About::HeldLot, &lot.name, why, Text::new("plan-settle-sort-again")))
        }
    })
}

fn of_plants<'a>(known: &'a Known<'_>) -> impl Iterator<Item = OpenQuestion> + 'a {
    known.plants.iter().filter(|plant| !plant.settled()).map(|plant| {
        let id = match known.tense {
            Tense::Before => "plan-plant-to-be-determined",
            Tense::OnTheDay => "plan-plant-not-determined",
        };
        let why = Text::new(id)
            .taxon("plant", plant.taxon.as_str())
            .with("common", plant.common.as_str());
        question(About::Plant, &plant.taxon, why, Text::new("plan-settle-determine"))
    })
}

fn of_takes<'a>(known: &'a Known<'_>) -> impl Iterator<Item = OpenQuestion> + 'a {
    known.takes.iter().flat_map(|take| {
        let open =
            take.allowance.open.iter().map(|refusal| refused(About::Take, &take.stand, refusal));
        let short = match &take.wanted {
            Answer::Refused(refusal) => Some(refused(About::Amount, &take.stand, refusal)),
            Answer::Known(wanted) => {
                let short = take.allowance.open.is_empty() && !take.enough;
                short.then(|| not_enough(&take.stand, *wanted))
            }
        };
        open.chain(short)
    })
}

fn not_enough(stand: &str, wanted: Mass<Fresh>) -> OpenQuestion {
    let why = Text::new("plan-not-enough").with("stand", stand);
    let why = why.amount("wanted", wanted.g(), Unit::Gram);
    question(About::Amount, stand, why, Text::new("plan-settle-want-less"))
}

fn of_makes<'a>(known: &'a Known<'_>) -> impl Iterator<Item = OpenQuestion> + 'a {
    let worked = known.makes.iter().filter_map(|make| match &make.brew {
        Answer::Known(_) => None,
        Answer::Refused(refusal) => Some(refused(About::Make, &make.name, refusal)),
    });
    let early = due::too_early(known.wishes, known.due);
    let from_nowhere = known.wishes.makes.values().filter_map(|make| from_nowhere(known, make));
    worked.chain(early).chain(from_nowhere)
}

/// A wish that names neither where its plant is gathered nor what is there of it already.
fn from_nowhere(known: &Known<'_>, make: &Make) -> Option<OpenQuestion> {
    let batches = known.school.batches.values();
    let made =
        batches.filter(|(_, batch)| batch.make == make.name).any(|(_, b)| !b.lots.is_empty());
    let named = !make.stands.is_empty() || !make.lots.is_empty() || made;
    (!named).then(|| {
        let why = Text::new("plan-make-from-nowhere")
            .with("make", make.called.as_str())
            .taxon("plant", &make.plant);
        question(About::Make, &make.name, why, Text::new("plan-settle-make-from-nowhere"))
    })
}

/// How many people have not answered all that matters. Who they are stands on the sealed list only:
/// that a name has something left to say is itself a word about its health.
fn of_people(known: &Known<'_>) -> Option<OpenQuestion> {
    let open = |name: &&String| {
        known.decisions.values().filter_map(|decided| decided.get(*name)).any(|decision| {
            !decision.sealed.open.iter().all(|q| matches!(q, dose::Question::Stage { .. }))
        })
    };
    let count = known.school.participants.keys().filter(open).count();
    (count > 0).then(|| {
        let why = Text::new("plan-people-open").with("count", count);
        question(About::Person, "", why, Text::new("plan-settle-ask-people"))
    })
}

/// Words on decisions that do not fit them, and on the day, batches whose decisions nobody stands
/// for yet. Neither says whose.
fn of_confirmations<'a>(known: &'a Known<'_>) -> impl Iterator<Item = OpenQuestion> + 'a {
    let made = |make: &MakePlan| {
        known.tense == Tense::OnTheDay
            && known.school.batches.values().any(|(_, batch)| batch.make == make.name)
    };
    let ask = |make: &MakePlan, id: &str, count: usize| {
        let why = Text::new(id)
            .with("make", make.called.as_str())
            .with("leader", known.wishes.leader.as_str())
            .with("count", count);
        (count > 0).then(|| {
            question(About::Confirmation, &make.name, why, Text::new("plan-settle-confirm"))
        })
    };
    known.makes.iter().flat_map(move |make| {
        let unfit = make.handed_out.values().filter(|h| h.word_does_not_fit).count();
        let proposals = make.handed_out.values().filter(|h| h.confirmed_by.is_none()).count();
        let proposals = if made(make) { proposals } else { 0 };
        [ask(make, "plan-word-does-not-fit", unfit), ask(make, "plan-not-confirmed", proposals)]
            .into_iter()
            .flatten()
    })
}
