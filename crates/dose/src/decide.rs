//! The decision: the strictest of everything that speaks to one cup for one person.

use crate::caution;
use crate::doubt::Ledger;
use crate::held::Held;
use crate::hold::{hold_allowed, hold_limits};
use crate::intake::{Intake, Intakes};
use crate::naming;
use crate::part::{self, about};
use crate::{
    Cup, Decision, Given, Limit, LimitUse, Outcome, Person, Question, Reason, Reasons, Rule,
    Strictness, Table,
};
use ground::{Fault, Faults, RandomStart, Sourcing, Text, Working};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// Whether anything is in hand yet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Tense {
    /// Before the day: what is still to be seen to is a proviso.
    Before,
    /// On the day: what is not seen to withholds.
    OnTheDay,
}

/// One cup for one person, and everything that bears on it.
#[derive(Clone, Copy, Debug)]
pub struct Case<'a> {
    /// What is known.
    pub table: &'a Table,
    /// Who.
    pub person: &'a Person,
    /// What.
    pub cup: &'a Cup,
    /// What else they take in the window: other cups, jars taken home, their own use.
    pub beside: &'a [Cup],
    /// Whether anything is in hand yet.
    pub tense: Tense,
    /// Whether it is sold.
    pub sold: bool,
}

impl Case<'_> {
    /// The cup that is decided on, and then those beside it.
    pub(crate) fn cups(&self) -> impl Iterator<Item = &Cup> {
        std::iter::once(self.cup).chain(self.beside)
    }
}

/// Decides on one cup for one person.
///
/// # Errors
/// Only a fault of our own: one quantity drawn in two ways.
pub fn decide(case: &Case<'_>, start: RandomStart) -> Result<Decision, Faults> {
    Ok(weigh(case, &mut Intake::new(case), &mut Ledger::new(start))?)
}

/// Decides on one cup for one person, with what was summed for others who take the same, and decided
/// before. The decision is that of [`decide`].
///
/// # Errors
/// Only a fault of our own: one quantity drawn in two ways.
pub fn decide_in(case: &Case<'_>, intakes: &mut Intakes) -> Result<Decision, Faults> {
    if !intakes.fits(case) {
        return decide(case, intakes.start);
    }
    let mut intake = intakes.take(case);
    if let Some(decision) = intake.decided(case) {
        intakes.keep(intake);
        return Ok(decision);
    }
    let decision = weigh(case, &mut intake, &mut intakes.ledger);
    if let Ok(decision) = &decision {
        intake.note(case, decision);
    }
    intakes.keep(intake);
    Ok(decision?)
}

/// Weighs everything that speaks to a cup for a person.
fn weigh(case: &Case<'_>, intake: &mut Intake, ledger: &mut Ledger) -> Result<Decision, Fault> {
    let mut findings = Findings::default();
    if case.cup.herbs.is_empty() {
        let text = Text::new("dose-part-nothing-in-it");
        findings.add(Strictness::Withhold, Rule::Part, text, None);
    }
    for herb in &case.cup.herbs {
        identity(case, herb, &mut findings);
        let says = part::weigh(case, herb, &mut findings);
        for allows in caution::weigh(case, herb, &says, &mut findings) {
            hold_allowed(case, (herb, &allows), &mut findings, (intake, ledger))?;
        }
    }
    naming::weigh(case, &mut findings);
    hold_limits(case, &mut findings, (intake, ledger))?;
    Ok(findings.conclude(case))
}

/// The plant is determined and the lot sorted: before the day a proviso, on the day a condition.
fn identity(case: &Case<'_>, herb: &crate::Herb, findings: &mut Findings) {
    let checks = [
        (
            herb.determined,
            "dose-identity-ruled-out",
            "dose-identity-not-determined",
            "dose-proviso-determined",
        ),
        (herb.sorted, "dose-identity-held", "dose-identity-not-sorted", "dose-proviso-sorted"),
    ];
    for (given, denied, missing, proviso) in checks {
        let id = match (given, case.tense) {
            (Given::Yes, _) => continue,
            (Given::No, _) => denied,
            (_, Tense::OnTheDay) => missing,
            (_, Tense::Before) => {
                findings.provide(about(proviso, case.cup, herb));
                continue;
            }
        };
        let text = about(id, case.cup, herb);
        findings.add(Strictness::Withhold, Rule::Identity, text, None);
    }
}

/// What was found on the way to a decision.
#[derive(Default)]
pub(crate) struct Findings {
    reasons: Vec<Reason>,
    open: BTreeSet<Question>,
    provisos: BTreeSet<Text>,
    held: Vec<Held>,
    workings: Vec<Working>,
    servings: Option<u32>,
    days: Option<u32>,
}

impl Findings {
    /// Notes a reason.
    pub(crate) fn add(&mut self, asks: Strictness, rule: Rule, text: Text, from: Option<Sourcing>) {
        self.reasons.push(Reason { asks, rule, text, from });
    }

    /// Notes an open question.
    pub(crate) fn open(&mut self, question: Question) {
        self.open.insert(question);
    }

    /// Notes something to see to on the day.
    pub(crate) fn provide(&mut self, text: Text) {
        self.provisos.insert(text);
    }

    /// Allows no more servings a day than this.
    pub(crate) fn servings(&mut self, most: Option<u32>) {
        self.servings = tighter(self.servings, most);
    }

    /// Allows no more days than this.
    pub(crate) fn days(&mut self, most: Option<u32>) {
        self.days = tighter(self.days, most);
    }

    /// Keeps how a limit stands.
    pub(crate) fn hold(&mut self, held: Held) {
        self.held.push(held);
    }

    /// Keeps how a sum came about.
    pub(crate) fn work(&mut self, working: Working) {
        self.workings.push(working);
    }

    /// Asks first because a sum that a limit binds cannot be told.
    pub(crate) fn gap(&mut self, text: &Text, limits: &[&Limit]) {
        if limits.iter().any(|limit| limit.used == LimitUse::Screen) {
            self.add(Strictness::AskFirst, Rule::Limit, text.clone(), None);
        }
    }

    /// The strictest of all.
    fn conclude(mut self, case: &Case<'_>) -> Decision {
        self.use_up_days(case);
        if self.servings == Some(0) || self.days == Some(0) {
            let id = if self.servings == Some(0) { "dose-none-fits" } else { "dose-days-used-up" };
            let text = Text::new(id).with("batch", case.cup.batch.as_str());
            self.add(Strictness::Withhold, Rule::Limit, text, None);
        }
        let asked = self.strictest(Strictness::Withhold);
        let unasked = self.strictest(Strictness::AtMost);
        let outcome = self.outcome(asked, case);
        let once_asked = (asked == Strictness::AskFirst).then(|| self.outcome(unasked, case));
        self.reasons.sort_by(|a, b| b.asks.cmp(&a.asks).then_with(|| a.cmp(b)));
        self.reasons.dedup();
        Decision {
            person: case.person.id.clone(),
            batch: case.cup.batch.clone(),
            outcome,
            once_asked,
            provisos: self.provisos.into_iter().collect(),
            sealed: Reasons {
                reasons: self.reasons,
                open: self.open.into_iter().collect(),
                held: self.held,
                workings: self.workings,
            },
        }
    }

    /// Days that were taken before count.
    fn use_up_days(&mut self, case: &Case<'_>) {
        self.days = self.days.map(|days| days.saturating_sub(case.cup.days_before));
    }

    /// The strictest reason that asks for no more than this.
    fn strictest(&self, up_to: Strictness) -> Strictness {
        let asks = self.reasons.iter().map(|reason| reason.asks).filter(|asks| *asks <= up_to);
        asks.max().unwrap_or(Strictness::NoReasonFound)
    }

    fn outcome(&self, strictness: Strictness, case: &Case<'_>) -> Outcome {
        let (servings_a_day, days) = (self.servings, self.days);
        let planned = (case.cup.servings_a_day, case.cup.days);
        let fits = servings_a_day.is_none_or(|most| planned.0 <= most)
            && days.is_none_or(|most| planned.1 <= most);
        match strictness {
            Strictness::Withhold => Outcome::Withhold,
            Strictness::AskFirst => Outcome::AskFirst,
            Strictness::NoReasonFound if fits => Outcome::NoReasonFound { servings_a_day, days },
            // A row that limits and does not bind this cup leaves no number. To call what is planned
            // one would let a real number stand above it once something else is not known.
            Strictness::AtMost | Strictness::NoReasonFound => {
                Outcome::AtMost { servings_a_day, days }
            }
        }
    }
}

fn tighter(one: Option<u32>, other: Option<u32>) -> Option<u32> {
    match (one, other) {
        (Some(one), Some(other)) => Some(one.min(other)),
        (one, other) => one.or(other),
    }
}
