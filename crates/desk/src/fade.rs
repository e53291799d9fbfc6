//! Fading: every input that is known is made unknown in turn, and nobody may end up with more.
//!
//! What fades: every answer about health, every content and transfer and every level of a limit or
//! caution that bears on a wish, permissions, sites, consents, surveys, distances to hazards, the day
//! since which takes are written down, what a wish says of its herb, and of looks those that favour
//! their plant. A look that speaks against its plant is left alone: without it the plant may well be
//! likelier.

use crate::World;
use crate::outing::Outing;
use crate::plan::settled::{Decided, Inputs, Settled, favours};
use dose::{Outcome, Strictness, Table};
use ground::{Condition, ContentId, Faults};
use identify::Judge;
use journal::{Answers, Entry, Payload, Permission, Saw, Sealed, Stand, Survey, Word};
use std::num::NonZeroUsize;

/// One thing changed, and what it moved.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Trial {
    /// What was made unknown, or forgotten.
    pub what: String,
    /// What that moved the wrong way; it should be nothing.
    pub moved: Vec<String>,
}

/// Makes every `step`-th known input of an outing unknown, each by itself, and says what got looser:
/// a verdict, the number of servings, or the amount that may be taken.
///
/// # Errors
/// A fault of our own while something is worked out.
pub fn fade(world: &World, outing: &Outing, step: NonZeroUsize) -> Result<Vec<Trial>, Faults> {
    let inputs = Inputs::of(world, outing)?;
    let before = inputs.settle(world)?;
    let certainty = inputs.certainty(world)?;
    let mut trials = Vec::new();
    for blank in blanks(&inputs).into_iter().step_by(step.get()) {
        let faded = blank.apply(&inputs);
        let after = match &blank.person {
            Some(person) => faded.settle_person(world, &certainty, person)?,
            None => faded.settle(world)?,
        };
        trials.push(Trial { moved: widened(&before, &after), what: blank.what });
    }
    Ok(trials)
}

/// An input to be made unknown.
struct Blank {
    what: String,
    /// Whose answer it is; it can move nobody else's decisions.
    person: Option<String>,
    change: Change,
}

enum Change {
    /// An entry gives way to another, or to none.
    Entry(ContentId, Option<Box<Entry>>),
    /// Something in the table that decisions rest on.
    Table(Box<dyn Fn(&mut Table)>),
    /// Something that is wanted.
    Wish(Box<dyn Fn(&mut crate::Wishes)>),
}

impl Blank {
    fn entry(what: String, id: &ContentId, instead: Option<Entry>) -> Self {
        let change = Change::Entry(id.clone(), instead.map(Box::new));
        Self { what, person: None, change }
    }

    fn table(what: String, change: impl Fn(&mut Table) + 'static) -> Self {
        Self { what, person: None, change: Change::Table(Box::new(change)) }
    }

    fn wish(what: String, change: impl Fn(&mut crate::Wishes) + 'static) -> Self {
        Self { what, person: None, change: Change::Wish(Box::new(change)) }
    }

    fn apply(&self, inputs: &Inputs) -> Inputs {
        let mut faded = inputs.clone();
        match &self.change {
            Change::Entry(blanked, instead) => {
                let kept = inputs.journal.iter().filter(|(id, _)| *id != blanked);
                let kept = kept.map(|(_, entry)| entry.clone());
                faded.journal = kept.chain(instead.as_deref().cloned()).collect();
            }
            Change::Table(change) => change(&mut faded.table),
            Change::Wish(change) => change(&mut faded.wishes),
        }
        faded
    }
}

/// Everything that is known and can be made unknown.
fn blanks(inputs: &Inputs) -> Vec<Blank> {
    let mut blanks = Vec::new();
    for (id, entry) in inputs.journal.standing() {
        match &entry.what {
            Payload::Answers(sealed) => blanks.extend(answers(id, entry, sealed.open())),
            Payload::Permission(permission) => {
                let what = format!("permission: {} from {}", permission.site, permission.from);
                blanks.push(Blank::entry(what, id, None));
                blanks.extend(permitted(id, entry, permission));
            }
            Payload::Site(site) => {
                blanks.push(Blank::entry(format!("site: {}", site.name), id, None));
                for at in 0..site.consents.len() {
                    let mut less = site.clone();
                    let gone = less.consents.remove(at);
                    let what = format!("site: {}, consent to {}", site.name, gone.rule);
                    blanks.push(Blank::entry(what, id, Some(with(entry, Payload::Site(less)))));
                }
            }
            Payload::Stand(stand) => blanks.extend(around(id, entry, stand)),
            Payload::Survey(survey) => blanks.extend(surveyed(id, entry, survey)),
            _ => {}
        }
    }
    blanks.extend(looks(inputs));
    blanks.extend(of_table(inputs));
    blanks.extend(of_wishes(inputs));
    blanks
}

fn with(entry: &Entry, what: Payload) -> Entry {
    Entry { what, ..entry.clone() }
}

/// Each answer of one person: age, weight, every question, and all questions together.
fn answers(id: &ContentId, entry: &Entry, answers: &Answers) -> Vec<Blank> {
    let one = |what: &str, faded: Answers| Blank {
        what: format!("answers of {}: {what}", answers.participant),
        person: Some(answers.participant.clone()),
        change: Change::Entry(
            id.clone(),
            Some(Box::new(with(entry, Payload::Answers(Sealed::new(faded))))),
        ),
    };
    let mut blanks = vec![
        one("age", Answers { age: None, ..answers.clone() }),
        one("weight", Answers { body_mass_g: None, ..answers.clone() }),
        one("rest", Answers { rest: Word::Unanswered, ..answers.clone() }),
        Blank {
            what: format!("answers of {}: all", answers.participant),
            person: Some(answers.participant.clone()),
            change: Change::Entry(id.clone(), None),
        },
    ];
    // Who would rather not say is unknown already.
    let known = |condition: &&Condition| {
        let word = answers.said.get(*condition).copied().unwrap_or(answers.rest);
        matches!(word, Word::Yes | Word::No)
    };
    for condition in Condition::ALL.iter().filter(known) {
        let mut faded = answers.clone();
        faded.said.insert(*condition, Word::Unanswered);
        blanks.push(one(condition.word(), faded));
    }
    blanks
}

/// What a permission names.
fn permitted(id: &ContentId, entry: &Entry, permission: &Permission) -> Vec<Blank> {
    let one = |what: &str, faded: Permission| {
        let what = format!("permission: {} from {}, {what}", permission.site, permission.from);
        Blank::entry(what, id, Some(with(entry, Payload::Permission(faded))))
    };
    vec![
        one("purposes", Permission { purposes: Vec::new(), ..permission.clone() }),
        one("plants", Permission { taxa: Vec::new(), ..permission.clone() }),
        one("parts", Permission { parts: Vec::new(), ..permission.clone() }),
    ]
}

/// What lies around a stand.
fn around(id: &ContentId, entry: &Entry, stand: &Stand) -> Vec<Blank> {
    let one = |what: String, faded: Stand| {
        let what = format!("stand: {}, {what}", stand.name);
        Blank::entry(what, id, Some(with(entry, Payload::Stand(faded))))
    };
    let mut blanks = vec![
        one("in water".to_owned(), Stand { in_water: None, ..stand.clone() }),
        one("area".to_owned(), Stand { area_m2: None, ..stand.clone() }),
    ];
    for hazard in stand.hazards_mm.keys() {
        let mut faded = stand.clone();
        faded.hazards_mm.remove(hazard);
        blanks.push(one(format!("distance to {hazard}"), faded));
    }
    for hazard in &stand.without {
        let mut faded = stand.clone();
        faded.without.retain(|other| other != hazard);
        blanks.push(one(format!("no {hazard}"), faded));
    }
    blanks
}

/// A survey, and the weights of single pieces in it.
fn surveyed(id: &ContentId, entry: &Entry, survey: &Survey) -> Vec<Blank> {
    let what = format!("survey: {} {}", survey.stand, survey.part);
    let unweighed = Survey { piece_g: Vec::new(), ..survey.clone() };
    let mut blanks = vec![Blank::entry(what.clone(), id, None)];
    if !survey.piece_g.is_empty() {
        let instead = with(entry, Payload::Survey(unweighed));
        blanks.push(Blank::entry(format!("{what}, weights of pieces"), id, Some(instead)));
    }
    blanks
}

/// Every look that favours its plant, made into one that could not tell.
fn looks(inputs: &Inputs) -> Vec<Blank> {
    let judge = Judge::new(&inputs.matrix);
    let mut blanks = Vec::new();
    for (id, entry) in inputs.journal.standing() {
        let (Payload::Look(look), Some(at)) = (&entry.what, entry.at) else { continue };
        let other = |other: &Entry| matches!(other.what, Payload::Look(_)) && other != entry;
        let alone = inputs.journal.iter().filter(|(_, entry)| !other(entry));
        let alone = alone.map(|(_, entry)| entry.clone()).collect();
        let plant = (look.specimen.as_str(), look.stand.as_str());
        if !favours(&judge, &inputs.wishes, &alone, plant, at.date()) {
            continue;
        }
        let mut faded = look.clone();
        faded.saw = Saw::CannotTell;
        let what = format!("look: {} {} by {}", look.specimen, look.character, look.reader);
        blanks.push(Blank::entry(what, id, Some(with(entry, Payload::Look(faded)))));
    }
    blanks
}

/// Contents, transfers and levels that bear on a wish, and every limit.
fn of_table(inputs: &Inputs) -> Vec<Blank> {
    let bears = |taxon: &str| {
        let mut makes = inputs.wishes.makes.values();
        makes.any(|make| inputs.table.tie(taxon, &make.plant).is_some())
    };
    let mut blanks = Vec::new();
    for (at, row) in inputs.table.contents.iter().enumerate().filter(|(_, r)| bears(&r.taxon)) {
        let mut add = |what: &str, change: fn(&mut dose::Content)| {
            let change =
                move |table: &mut Table| table.contents.get_mut(at).into_iter().for_each(change);
            blanks.push(Blank::table(format!("content: {}, {what}", row.id), change));
        };
        if row.amount.is_some() {
            add("amount", |row| row.amount = None);
        }
        if row.water.is_some() {
            add("share that goes into water", |row| row.water = None);
        }
        if row.ethanol.is_some() {
            add("share that goes into spirit", |row| row.ethanol = None);
        }
    }
    for (at, row) in inputs.table.limits.iter().enumerate().filter(|(_, r)| r.level.is_some()) {
        let change = move |table: &mut Table| {
            table.limits.get_mut(at).into_iter().for_each(|row| row.level = None);
        };
        blanks.push(Blank::table(format!("limit: {}", row.id), change));
    }
    for (at, row) in inputs.table.cautions.iter().enumerate().filter(|(_, r)| bears(&r.taxon)) {
        if row.limit.as_ref().is_some_and(|limit| limit.level.is_some()) {
            let change = move |table: &mut Table| {
                let limits =
                    table.cautions.get_mut(at).into_iter().filter_map(|r| r.limit.as_mut());
                limits.for_each(|limit| limit.level = None);
            };
            blanks.push(Blank::table(format!("caution: {}, its amount", row.id), change));
        }
    }
    blanks
}

/// What the outing says of its records and of the herb of each wish.
fn of_wishes(inputs: &Inputs) -> Vec<Blank> {
    let mut blanks = vec![
        Blank::wish("outing: records since".to_owned(), |wishes| wishes.records_since = None),
        Blank::wish("outing: kitchen".to_owned(), |wishes| wishes.kitchen = None),
        Blank::wish("outing: place".to_owned(), |wishes| wishes.place = None),
    ];
    for name in inputs.wishes.makes.keys() {
        let mut add = |what: &str, change: fn(&mut crate::Make)| {
            let make = name.clone();
            blanks.push(Blank::wish(format!("make: {name}, {what}"), move |wishes| {
                wishes.makes.get_mut(&make).into_iter().for_each(change);
            }));
        };
        add("fresh or dried", |make| make.herb = None);
        add("moisture", |make| make.moisture = None);
        add("stage", |make| make.stage = None);
        add("level or heaped", |make| make.heap = None);
        add("spoon", |make| make.spoon = None);
        add("weighed", |make| make.weighed = false);
    }
    blanks
}

/// What got looser. What is no longer there got no looser.
pub(crate) fn widened(before: &Settled, after: &Settled) -> Vec<String> {
    let verdicts = after.verdicts.iter().filter_map(|(specimen, after)| {
        let better = before.verdicts.get(specimen).is_none_or(|before| betters(after, before));
        better.then(|| format!("verdict on {specimen}: {after:?}"))
    });
    let decisions = after.decisions.iter().filter_map(|((make, person), after)| {
        let before = before.decisions.get(&(make.clone(), person.clone()));
        let looser = before.is_none_or(|before| !no_milder(after, before));
        looser.then(|| format!("{make} for {person}: {before:?} became {after:?}"))
    });
    let allowances = after.allowances.iter().filter_map(|((stand, part), after)| {
        let before = before.allowances.get(&(stand.clone(), *part)).copied().unwrap_or(0.0);
        (*after > before).then(|| format!("{part} at {stand}: {before} g became {after} g"))
    });
    verdicts.chain(decisions).chain(allowances).collect()
}

/// Whether a verdict is better than another: further down, or with fewer twins left.
fn betters(after: &identify::Outcome, before: &identify::Outcome) -> bool {
    use identify::Outcome::Determined;
    match (after, before) {
        (Determined { level: a, twins: fewer }, Determined { level: b, twins: more }) => {
            a > b || more.iter().any(|twin| !fewer.contains(twin))
        }
        (after, before) => after > before,
    }
}

/// Whether a decision, and what is handed out by it, allows no more than before. Between *ask first*
/// and *withhold* nobody is allowed anything: where a number is blanked that withheld, nobody can say
/// any longer that it is too much, and somebody must be asked.
fn no_milder(after: &Decided, before: &Decided) -> bool {
    let fits = |after: Outcome, before: Outcome| {
        after.strictness() >= Strictness::AskFirst || after.no_milder_than(before)
    };
    fits(after.proposed, before.proposed) && fits(after.handed, before.handed)
}
