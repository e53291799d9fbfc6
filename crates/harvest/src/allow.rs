//! How much may be taken now: the least that any rule leaves.

mod calendar;
mod hazard;
mod law;
mod leave;
mod share;
mod tally;

use crate::{Asked, Quantity, Rules};
use ground::{Answer, Formula, Refusal, Shown, Sourcing, Text, Working};
use serde::{Deserialize, Serialize};
use tally::Tally;

/// How much may be taken, which rule says so, and what is still open.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Allowance {
    /// How much. Nothing at all where a rule forbids it; refused where that hangs on a question.
    pub amount: Answer<Quantity>,
    /// The rule that decides.
    pub binding: Option<RuleRef>,
    /// Every rule that was asked, with what it leaves.
    pub candidates: Vec<Candidate>,
    /// What is not known, and what would answer it.
    pub open: Vec<Refusal>,
    /// What the law says and what to mind; each to be checked locally.
    pub notes: Vec<Note>,
    /// How the amount came about.
    pub working: Working,
}

/// A rule, by kind and identifier.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct RuleRef {
    /// What kind of rule.
    pub kind: Kind,
    /// Its identifier among those of its kind; empty where there is only one.
    pub id: String,
}

/// The kinds of rule that can bind, in the order in which they are told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// The law of the place.
    Law,
    /// Protection of the species.
    Protection,
    /// Whose leave.
    Leave,
    /// What lies near.
    Hazard,
    /// The season of the part.
    Season,
    /// Years of rest.
    Rest,
    /// The leader's share of the crop.
    Share,
    /// A published limit.
    Ceiling,
}

/// One rule and what it leaves.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Candidate {
    /// Which.
    pub rule: RuleRef,
    /// What it leaves.
    pub outcome: Outcome,
    /// The same in words.
    pub says: Text,
    /// How it came about.
    pub working: Working,
}

/// What a rule leaves.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Outcome {
    /// Nothing.
    Nothing,
    /// That depends on a question.
    Open(Refusal),
    /// So much.
    AtMost(Quantity),
    /// It does not stand in the way.
    Clear,
}

/// Something to know beside the amount.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Note {
    /// What.
    pub says: Text,
    /// Where it stands.
    pub from: Sourcing,
}

/// How much of a part may be taken at a stand: the smallest amount that any rule leaves.
///
/// A rule that leaves nothing decides at once, whatever else is open. Otherwise an open question
/// refuses the amount: no survey and no permission are neither a yes nor a no. Making anything
/// unknown that was known never raises the amount, if a refusal counts as none.
#[must_use]
pub fn allow(asked: &Asked, rules: &Rules) -> Allowance {
    let places = asked.site.jurisdiction.as_deref().map(|id| rules.places(id));
    let places = places.unwrap_or_default();
    let tally = Tally::new(asked);
    let mut candidates = law::candidates(asked, rules, &places, &tally);
    candidates.extend(law::protection(asked));
    candidates.extend(leave::candidates(asked, rules, &places, &tally));
    candidates.extend(hazard::candidates(asked, rules));
    candidates.push(calendar::season(asked));
    candidates.extend(share::candidates(asked, rules, &places, &tally));
    let mut notes = law::notes(asked, rules, &places);
    notes.extend(hazard::cares(asked, rules));
    notes.extend(share::notes(asked, &tally));
    conclude(asked, candidates, notes)
}

fn conclude(asked: &Asked, mut candidates: Vec<Candidate>, notes: Vec<Note>) -> Allowance {
    candidates.sort_by(|a, b| a.rule.cmp(&b.rule));
    let open: Vec<_> = candidates
        .iter()
        .filter_map(|candidate| match &candidate.outcome {
            Outcome::Open(refusal) => Some(refusal.clone()),
            _ => None,
        })
        .collect();
    let binding = candidates
        .iter()
        .min_by(|a, b| a.outcome.strictness().total_cmp(&b.outcome.strictness()))
        .filter(|candidate| !matches!(candidate.outcome, Outcome::Clear));
    let (amount, shown) = match binding.map(|candidate| &candidate.outcome) {
        Some(Outcome::AtMost(most)) => (Answer::Known(*most), most.shown()),
        Some(Outcome::Open(refusal)) => (Answer::Refused(refusal.clone()), Shown::Unknown),
        Some(Outcome::Nothing) => {
            let nothing = Quantity::of(asked.measure, 0.0);
            (Answer::Known(nothing), nothing.shown())
        }
        // Without any rule nobody has said yes.
        Some(Outcome::Clear) | None => (
            Answer::refused(Text::new("harvest-no-rule"), Text::new("harvest-settle-no-rule")),
            Shown::Unknown,
        ),
    };
    let formula = Formula::plain("harvest.allowance", "the least that any rule leaves");
    let workings = candidates.iter().map(|c| c.working.clone()).collect();
    Allowance {
        amount,
        binding: binding.map(|candidate| candidate.rule.clone()),
        open,
        notes,
        working: Working::computed(Text::new("harvest-what-allowance"), shown, formula, workings),
        candidates,
    }
}

impl Outcome {
    /// Nothing comes before a question, a question before any amount, an amount by its size.
    fn strictness(&self) -> f64 {
        match self {
            Self::Nothing => -2.0,
            Self::Open(_) => -1.0,
            Self::AtMost(most) => most.number(),
            Self::Clear => f64::INFINITY,
        }
    }
}

impl Candidate {
    /// A rule whose answer hangs on a question.
    fn open(rule: RuleRef, why: Text, settle: Text) -> Self {
        let working = Working::assumed(why.clone(), Shown::Unknown, settle.clone());
        Self { rule, outcome: Outcome::Open(Refusal::new(why.clone(), settle)), says: why, working }
    }
}

impl RuleRef {
    fn new(kind: Kind, id: &str) -> Self {
        Self { kind, id: id.to_owned() }
    }
}

/// A verdict in words as the value of a working.
fn shown(says: &Text) -> Shown {
    Shown::Words(says.clone())
}
