//! Sums over everything a person takes in a window, and what they are held against.

use crate::caution::{Allows, Reach, question};
use crate::decide::{Case, Findings};
use crate::exposure::{Bound, Doubt, Gap, Ledger, Share, Yard, in_servings, shares};
use crate::held::{Held, Passed};
use crate::limit::{Concerns, body_mass, concerns, grams};
use crate::naming::{counted, measured};
use crate::part::about;
use crate::search::most;
use crate::{
    Basis, Counted, Cup, Given, Herb, Level, Limit, LimitUse, Question, Rule, Strictness,
    SubstanceId, Window, say,
};
use ground::{
    Answer, Condition, Fault, Faults, Finite, Mass, RandomStart, Spread, Text, Unit, Working,
};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// Sums are compared with a limit up to the rounding of their additions: a few hundred terms, each
/// off by at most 1e-16 of the sum.
const ROUNDING: f64 = 1e-12;

/// What a person takes of one thing: in the cup that is decided on, and besides.
pub(crate) struct Sum {
    cup: Vec<Share>,
    beside: Doubt,
}

impl Sum {
    /// Gathers a thing over the cup and everything beside it.
    pub(crate) fn gather(
        case: &Case<'_>,
        yard: Yard<'_>,
        ledger: &mut Ledger,
    ) -> Result<Result<Self, Gap>, Fault> {
        let cup = match shares(case.table, case.cup, yard, ledger)? {
            Ok(cup) => cup,
            Err(gap) => return Ok(Err(gap)),
        };
        let mut beside = in_servings(&[], 0, ledger)?;
        for other in case.beside {
            match shares(case.table, other, yard, ledger)? {
                Ok(shares) => {
                    beside = beside.plus(&in_servings(&shares, other.servings_a_day, ledger)?);
                }
                Err(gap) => return Ok(Err(gap)),
            }
        }
        Ok(Ok(Self { cup, beside }))
    }

    /// Over a window, with so many servings of the cup a day; nothing for a window that is not
    /// summed.
    fn over(
        &self,
        window: Window,
        servings: u32,
        ledger: &mut Ledger,
    ) -> Result<Option<Doubt>, Fault> {
        Ok(match window {
            Window::Serving | Window::Product => Some(in_servings(&self.cup, 1, ledger)?),
            Window::Day => Some(self.day(servings, ledger)?),
            Window::Week => Some(self.day(servings, ledger)?.scaled(7.0)),
            Window::Lifetime => None,
        })
    }

    fn day(&self, servings: u32, ledger: &mut Ledger) -> Result<Doubt, Fault> {
        Ok(in_servings(&self.cup, servings, ledger)?.plus(&self.beside))
    }

    /// Whether so many servings stay within; nothing where the end that counts is not known.
    fn within(
        &self,
        (window, bound, limit): (Window, Bound, f64),
        servings: u32,
        ledger: &mut Ledger,
    ) -> Result<Option<bool>, Fault> {
        let sum = self.over(window, servings, ledger)?;
        let at = sum.and_then(|sum| sum.at(bound, ledger));
        Ok(at.map(|at| at <= limit * (1.0 + ROUNDING)))
    }
}

/// The bound that a limit is held to for this person.
fn bound(case: &Case<'_>, limit: &Limit) -> Bound {
    let worst = limit.basis == Basis::Acute
        || case.table.no_safe_level(&limit.substance)
        || case.person.needs_worst_end();
    if worst { Bound::Worst } else { Bound::Upper }
}

/// Holds what a caution or a usual amount allows against the sum of what it counts.
pub(crate) fn hold_allowed(
    case: &Case<'_>,
    (herb, allows): (&Herb, &Allows<'_>),
    findings: &mut Findings,
    ledger: &mut Ledger,
) -> Result<(), Fault> {
    let dried = Counted::DriedHerb;
    let everywhere = |_: &Cup, _: &Herb| true;
    let joins = |reach: Reach<'_>, cup: &Cup, herb: &Herb| reach.tie(case, cup, herb).is_some();
    match allows {
        Allows::Amount(row) => {
            let Some(value) = row.day_max_g else { return Ok(()) };
            let level = Some(Level { value, unit: Unit::GramPerDay });
            let among = |cup: &Cup, herb: &Herb| joins(Reach::of_amount(row), cup, herb);
            let yard = Yard { of: &dried, among: &among };
            hold_level(case, herb, (yard, level, Rule::Amount), findings, ledger)
        }
        Allows::Caution(row) => {
            let Some(limit) = &row.limit else { return Ok(()) };
            let among = |cup: &Cup, herb: &Herb| joins(Reach::of_caution(row), cup, herb);
            let substance = matches!(limit.of, Counted::Substance(_));
            let among: &dyn Fn(&Cup, &Herb) -> bool = if substance { &everywhere } else { &among };
            let yard = Yard { of: &limit.of, among };
            hold_level(case, herb, (yard, limit.level, Rule::Caution), findings, ledger)
        }
    }
}

fn hold_level(
    case: &Case<'_>,
    herb: &Herb,
    (yard, level, rule): (Yard<'_>, Option<Level>, Rule),
    findings: &mut Findings,
    ledger: &mut Ledger,
) -> Result<(), Fault> {
    let body = body_mass(case.table, case.person);
    if level.is_some_and(Level::per_body) && !body.is_some_and(|(_, given)| given) {
        findings.open(Question::BodyMass);
    }
    let limit = level.zip(body).and_then(|(level, (body, _))| level.for_body(body));
    let no_threshold = match yard.of {
        Counted::Substance(substance) => case.table.no_safe_level(substance),
        _ => false,
    };
    let worst = no_threshold || case.person.needs_worst_end();
    let bound = if worst { Bound::Worst } else { Bound::Upper };
    let unknown = |findings: &mut Findings, text: Text| {
        findings.add(Strictness::AskFirst, rule, text, None);
    };
    let Some(limit) = limit else {
        unknown(findings, about("dose-amount-unknown", case.cup, herb));
        return Ok(());
    };
    match Sum::gather(case, yard, ledger)? {
        Err(Gap(text)) => unknown(findings, text),
        Ok(sum) => match search(&sum, (Window::Day, bound, limit), ledger)? {
            None => unknown(findings, about("dose-gap-extreme", case.cup, herb)),
            Some(servings) => findings.servings(servings),
        },
    }
    Ok(())
}

/// The greatest number of servings within a limit; nothing where it cannot be told.
#[expect(clippy::option_option, reason = "not told, and told that no number binds, are two things")]
fn search(
    sum: &Sum,
    against: (Window, Bound, f64),
    ledger: &mut Ledger,
) -> Result<Option<Option<u32>>, Fault> {
    if sum.within(against, 1, ledger)?.is_none() {
        return Ok(None);
    }
    if matches!(against.0, Window::Serving | Window::Product) {
        let within = sum.within(against, 1, ledger)? == Some(true);
        return Ok(Some((!within).then_some(0)));
    }
    most(|n| Ok(sum.within(against, n, ledger)? == Some(true))).map(Some)
}

/// Every substance that the cup holds or is said to hold, as what limits count.
fn in_cup(case: &Case<'_>) -> BTreeSet<SubstanceId> {
    let of_herbs = case.table.contents.iter().map(|row| &row.substance);
    let of_cup = case.cup.holds.keys();
    let natural = ["ethanol", "free-sugars", "honey"].map(SubstanceId::from);
    of_herbs
        .chain(of_cup)
        .chain(&natural)
        .flat_map(|substance| counted(case.table, substance))
        .collect()
}

/// Holds every limit on what is in the cup against the sum of what the person takes.
pub(crate) fn hold_limits(
    case: &Case<'_>,
    findings: &mut Findings,
    ledger: &mut Ledger,
) -> Result<(), Fault> {
    if !case.cup.inward() {
        return Ok(());
    }
    for substance in in_cup(case) {
        let limits = case.table.limits.iter().filter(|limit| limit.substance == substance);
        let limits: Vec<_> = limits.collect();
        if limits.is_empty() {
            continue;
        }
        hold_substance(case, &substance, &limits, findings, ledger)?;
    }
    Ok(())
}

fn hold_substance(
    case: &Case<'_>,
    substance: &SubstanceId,
    limits: &[&Limit],
    findings: &mut Findings,
    ledger: &mut Ledger,
) -> Result<(), Fault> {
    let of = Counted::Substance(substance.clone());
    let yard = Yard { of: &of, among: &|_, _| true };
    let sum = Sum::gather(case, yard, ledger)?;
    if let Ok(sum) = &sum
        && in_servings(&sum.cup, 1, ledger)?.is_none()
    {
        return Ok(());
    }
    worst_end_questions(case, findings);
    for limit in limits.iter().filter(|limit| concerns(limit, case.person) > Concerns::No) {
        let held = hold(case, limit, sum.as_ref(), ledger)?;
        weigh(case, limit, &held, findings);
        findings.hold(held);
    }
    match &sum {
        Ok(sum) => {
            let working = working(case, substance, sum, ledger)?;
            findings.work(working);
        }
        Err(Gap(text)) => findings.gap(text, limits),
    }
    uncovered(case, substance, limits, findings);
    Ok(())
}

/// Who has not said whether the worst end is needed is asked.
fn worst_end_questions(case: &Case<'_>, findings: &mut Findings) {
    for condition in [Condition::Under18, Condition::Pregnant, Condition::Breastfeeding] {
        if case.person.answer(condition) == Given::Unanswered {
            findings.open(question(condition));
        }
    }
}

fn hold(
    case: &Case<'_>,
    limit: &Limit,
    sum: Result<&Sum, &Gap>,
    ledger: &mut Ledger,
) -> Result<Held, Fault> {
    let bound = bound(case, limit);
    let limit_g = match limit.window {
        Window::Product => product_grams(case, limit),
        _ => grams(limit, case.table, case.person),
    };
    let planned = case.cup.servings_a_day;
    let doubt = match sum {
        Ok(sum) => sum.over(limit.window, planned, ledger)?,
        Err(_) => None,
    };
    let end = doubt.as_ref().and_then(|doubt| doubt.at(bound, ledger));
    let (passed, most_servings) = match (sum, limit_g) {
        (_, None) => (Passed::NotHeld, None),
        _ if limit.window == Window::Lifetime => (Passed::NotHeld, None),
        (Err(_), Some(_)) => (Passed::Unknown, None),
        (Ok(sum), Some(grams)) => match search(sum, (limit.window, bound, grams), ledger)? {
            None => (Passed::Unknown, None),
            Some(most) if most.is_some_and(|most| most < planned) => (Passed::Above, most),
            Some(most) => (Passed::Within, most),
        },
    };
    Ok(Held {
        limit: limit.id.clone(),
        substance: limit.substance.clone(),
        window: limit.window,
        basis: limit.basis,
        used: limit.used,
        covers: concerns(limit, case.person) == Concerns::Covers,
        limit_g: limit_g.and_then(Finite::new),
        bound,
        sum_g: end.and_then(Finite::new),
        spread_g: doubt.and_then(|doubt| Spread::of(doubt.draws)),
        passed,
        most_servings,
        date: limit.date.clone(),
        from: limit.from.clone(),
    })
}

/// What a limit asks for, by its use.
fn weigh(case: &Case<'_>, limit: &Limit, held: &Held, findings: &mut Findings) {
    if limit.level.is_some_and(Level::per_body) && case.person.body_mass.is_none() {
        findings.open(Question::BodyMass);
    }
    for condition in limit.who.iter().chain(&limit.except) {
        if case.person.answer(*condition) == Given::Unanswered {
            findings.open(question(*condition));
        }
    }
    let from = Some(limit.from.clone());
    let text = |id: &str| say::held(id, case.table.name(&limit.substance), limit, held);
    match (limit.used, held.passed) {
        (LimitUse::Screen, Passed::Unknown | Passed::NotHeld) => {
            findings.add(Strictness::AskFirst, Rule::Limit, text("dose-limit-unknown"), from);
        }
        (LimitUse::Screen, _) => {
            findings.servings(held.most_servings);
            findings.days(limit.max_days);
            let id =
                if held.passed == Passed::Above { "dose-limit-above" } else { "dose-limit-within" };
            findings.add(Strictness::NoReasonFound, Rule::Limit, text(id), from);
        }
        (LimitUse::Guidance, Passed::Above) => {
            findings.add(Strictness::AskFirst, Rule::Limit, text("dose-guidance-above"), from);
        }
        (LimitUse::Guidance, Passed::Unknown | Passed::NotHeld) => {
            findings.add(Strictness::AskFirst, Rule::Limit, text("dose-limit-unknown"), from);
        }
        (LimitUse::Legal, _) if case.sold => sold(case, limit, held, findings),
        (LimitUse::None, _) => {
            findings.add(Strictness::NoReasonFound, Rule::Limit, text("dose-limit-none-set"), from);
        }
        _ => {}
    }
}

/// What a value for products comes to in one serving; nothing where the serving was not weighed.
fn product_grams(case: &Case<'_>, limit: &Limit) -> Option<f64> {
    limit.level?.for_product(case.cup.mass?)
}

/// A value for products binds what is sold.
fn sold(case: &Case<'_>, limit: &Limit, held: &Held, findings: &mut Findings) {
    let speaks = limit.forms.is_empty() || limit.forms.iter().any(|form| form.meets(case.cup.form));
    let (asks, id) = match held.passed {
        _ if !speaks => return,
        Passed::Within => return,
        Passed::Above => (Strictness::Withhold, "dose-legal-above"),
        Passed::Unknown | Passed::NotHeld => (Strictness::AskFirst, "dose-legal-unknown"),
    };
    let text = say::held(id, case.table.name(&limit.substance), limit, held);
    findings.add(asks, Rule::Limit, text, Some(limit.from.clone()));
}

/// Asks first where limits were set for a substance and none that was read holds for this person.
fn uncovered(case: &Case<'_>, substance: &SubstanceId, limits: &[&Limit], findings: &mut Findings) {
    let screens = limits.iter().filter(|limit| limit.used == LimitUse::Screen);
    let concerning = |limit: &&&Limit| concerns(limit, case.person) > Concerns::No;
    let covering = |limit: &&Limit| {
        concerns(limit, case.person) == Concerns::Covers
            && limit.from.may_clear()
            && limit.level.is_some()
    };
    let mut concerned = screens.filter(concerning).peekable();
    if concerned.peek().is_some() && !concerned.any(covering) {
        let text =
            Text::new("dose-limit-not-for-them").with("substance", case.table.name(substance));
        findings.add(Strictness::AskFirst, Rule::Limit, text, None);
    }
}

/// How the sum of a day came about.
fn working(
    case: &Case<'_>,
    substance: &SubstanceId,
    sum: &Sum,
    ledger: &mut Ledger,
) -> Result<Working, Fault> {
    let day = sum.day(case.cup.servings_a_day, ledger)?.scaled(1e3);
    Ok(say::working(case, substance, Spread::of(day.draws)))
}

/// What a person takes of one substance.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Exposure {
    /// Of what.
    pub substance: SubstanceId,
    /// In one serving of the cup, in grams.
    pub serving_g: Spread,
    /// In a day, with everything beside it, in grams.
    pub day_g: Spread,
    /// In a day, with every input at its worst end; nothing where no extreme is published.
    pub worst_day_g: Option<Mass>,
    /// How the day's sum came about.
    pub working: Working,
}

/// What a person takes of one substance, summed over everything in the case.
///
/// Formula: in every draw, the sum over servings of
/// `herb × solids × content × share that passes over`, in grams; content and moisture drawn once a
/// lot, the share once a batch, the spoon once a cook, the scale once a serving.
///
/// # Errors
/// Only a fault of our own: one quantity drawn in two ways.
pub fn exposure(
    case: &Case<'_>,
    substance: &SubstanceId,
    start: RandomStart,
) -> Result<Answer<Exposure>, Faults> {
    let mut ledger = Ledger::new(start);
    let of = Counted::Substance(substance.clone());
    let yard = Yard { of: &of, among: &|_, _| true };
    let settle = || Text::new("dose-settle-measure").with("substance", case.table.name(substance));
    if case.cup.herbs.iter().any(|herb| unmeasured(case, herb, substance)) {
        let why = Text::new("dose-gap-named").with("substance", case.table.name(substance));
        return Ok(Answer::refused(why, settle()));
    }
    let sum = match Sum::gather(case, yard, &mut ledger)? {
        Ok(sum) => sum,
        Err(Gap(why)) => return Ok(Answer::refused(why, settle())),
    };
    let serving = in_servings(&sum.cup, 1, &mut ledger)?;
    let day = sum.day(case.cup.servings_a_day, &mut ledger)?;
    let worst_day_g = day.worst.map(Mass::from_g);
    let working = working(case, substance, &sum, &mut ledger)?;
    let substance = substance.clone();
    Ok(match (Spread::of(serving.draws), Spread::of(day.draws)) {
        (Some(serving_g), Some(day_g)) => {
            Answer::Known(Exposure { substance, serving_g, day_g, worst_day_g, working })
        }
        _ => Answer::refused(Text::new("dose-gap-draws"), settle()),
    })
}

fn unmeasured(case: &Case<'_>, herb: &Herb, substance: &SubstanceId) -> bool {
    crate::naming::named(case.table, &herb.taxon).contains(substance)
        && !measured(case.table, case.cup, herb, substance)
}
