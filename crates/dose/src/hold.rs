//! What sums are held against: limits, and what cautions and usual amounts allow.

use crate::caution::{Allows, Reach, question};
use crate::content::hangs_on_moisture;
use crate::decide::{Case, Findings};
use crate::doubt::{Bound, Ledger};
use crate::held::{Held, Passed};
use crate::intake::Intake;
use crate::limit::{Concerns, body_mass, concerns, decides, grams};
use crate::part::about;
use crate::shares::{Gap, Yard};
use crate::sum::{Sum, search};
use crate::{
    Basis, Counted, Cup, Given, Herb, Level, Limit, LimitUse, Question, Rule, Strictness,
    SubstanceId, Window, say,
};
use ground::{Condition, Fault, Finite, Text, Unit};

/// What is taken, and where its draws come from.
type Taken<'a> = (&'a mut Intake, &'a mut Ledger);

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
    (intake, ledger): Taken<'_>,
) -> Result<(), Fault> {
    match allows {
        Allows::Amount(row) => {
            let Some(value) = row.day_max_g else { return Ok(()) };
            let level = Some(Level { value, unit: Unit::GramPerDay });
            let among = |cup: &Cup, herb: &Herb| Reach::of_amount(row).joins(case, cup, herb);
            let yard = Yard::among(case, Counted::DriedHerb, among);
            hold_level(case, herb, (yard, level, Rule::Amount), findings, (intake, ledger))
        }
        Allows::Caution(row) => {
            let Some(limit) = &row.limit else { return Ok(()) };
            let among = |cup: &Cup, herb: &Herb| Reach::of_caution(row).joins(case, cup, herb);
            let yard = match &limit.of {
                of @ Counted::Substance(_) => Yard::everywhere(of.clone()),
                of => Yard::among(case, of.clone(), among),
            };
            let level = limit.level;
            hold_level(case, herb, (yard, level, Rule::Caution), findings, (intake, ledger))
        }
    }
}

fn hold_level(
    case: &Case<'_>,
    herb: &Herb,
    (yard, level, rule): (Yard, Option<Level>, Rule),
    findings: &mut Findings,
    (intake, ledger): Taken<'_>,
) -> Result<(), Fault> {
    let body = body_mass(case.table, case.person);
    if level.is_some_and(Level::per_body) && !body.is_some_and(|(_, given)| given) {
        findings.open(Question::BodyMass);
    }
    let limit = level.zip(body).and_then(|(level, (body, _))| level.for_body(body));
    let no_threshold = match &yard.of {
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
    match intake.sum(case, yard, ledger)? {
        Err(Gap(text)) => unknown(findings, text.clone()),
        Ok(sum) => match search(sum, (Window::Day, bound, limit), ledger)? {
            None => unknown(findings, about("dose-gap-extreme", case.cup, herb)),
            Some(servings) => findings.servings(servings),
        },
    }
    Ok(())
}

/// Holds every limit on what is in the cup against the sum of what the person takes.
pub(crate) fn hold_limits(
    case: &Case<'_>,
    findings: &mut Findings,
    (intake, ledger): Taken<'_>,
) -> Result<(), Fault> {
    if !case.cup.inward() {
        return Ok(());
    }
    for substance in intake.limited.clone() {
        let limits = case.table.limits.iter().filter(|limit| limit.substance == substance);
        let limits: Vec<_> = limits.collect();
        hold_substance(case, &substance, &limits, findings, (intake, ledger))?;
    }
    Ok(())
}

fn hold_substance(
    case: &Case<'_>,
    substance: &SubstanceId,
    limits: &[&Limit],
    findings: &mut Findings,
    (intake, ledger): Taken<'_>,
) -> Result<(), Fault> {
    let yard = Yard::everywhere(Counted::Substance(substance.clone()));
    let sum = intake.sum(case, yard, ledger)?;
    if let Ok(sum) = sum
        && sum.none_in_cup(ledger)?
    {
        return Ok(());
    }
    if hangs_on_worst_end(case, substance, limits) {
        worst_end_questions(case, findings);
    }
    moisture_supposed(case, substance, findings);
    for limit in limits.iter().filter(|limit| concerns(limit, case.person) > Concerns::No) {
        let held = hold(case, limit, sum, ledger)?;
        weigh(case, limit, &held, findings);
        findings.hold(held);
    }
    match sum {
        Ok(sum) => findings.work(sum.working(case, substance, ledger)?),
        Err(Gap(text)) => findings.gap(text, limits),
    }
    uncovered(case, substance, limits, findings);
    Ok(())
}

/// Asks first where a sum hangs on water that nobody weighed.
fn moisture_supposed(case: &Case<'_>, substance: &SubstanceId, findings: &mut Findings) {
    let herbs = case.cups().flat_map(|cup| cup.herbs.iter().map(move |herb| (cup, herb)));
    for (cup, herb) in herbs.filter(|(_, herb)| herb.moisture_supposed) {
        if hangs_on_moisture(case.table, (cup, herb), substance) {
            let text = about("dose-moisture-supposed", cup, herb)
                .with("substance", case.table.name(substance));
            findings.add(Strictness::AskFirst, Rule::Unmeasured, text, None);
        }
    }
}

/// Whether it depends on the person which end of a sum some limit is held against.
pub(crate) fn hangs_on_worst_end(
    case: &Case<'_>,
    substance: &SubstanceId,
    limits: &[&Limit],
) -> bool {
    !case.table.no_safe_level(substance)
        && limits.iter().any(|limit| limit.basis != Basis::Acute && decides(limit, case))
}

/// What the worst end is needed for.
pub(crate) fn worst_end() -> [Condition; 3] {
    [Condition::Under18, Condition::Pregnant, Condition::Breastfeeding]
}

/// Who has not said whether the worst end is needed is asked.
fn worst_end_questions(case: &Case<'_>, findings: &mut Findings) {
    for condition in worst_end() {
        if case.person.answer(condition) == Given::Unanswered {
            findings.open(question(condition));
        }
    }
}

fn hold(
    case: &Case<'_>,
    limit: &Limit,
    sum: &mut Result<Sum, Gap>,
    ledger: &mut Ledger,
) -> Result<Held, Fault> {
    let bound = bound(case, limit);
    let limit_g = match limit.window {
        Window::Product => product_grams(case, limit),
        _ => grams(limit, case.table, case.person),
    };
    let planned = case.cup.servings_a_day;
    let (end, spread_g) = match sum {
        Ok(sum) => (
            sum.end((limit.window, bound), planned, ledger)?,
            sum.spread(limit.window, planned, ledger)?,
        ),
        Err(_) => (None, None),
    };
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
        spread_g,
        passed,
        most_servings,
        date: limit.date.clone(),
        from: limit.from.clone(),
    })
}

/// What a limit asks for, by its use.
fn weigh(case: &Case<'_>, limit: &Limit, held: &Held, findings: &mut Findings) {
    if decides(limit, case) {
        open_questions(case, limit, findings);
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

/// What a limit that decides asks of who has not said it.
fn open_questions(case: &Case<'_>, limit: &Limit, findings: &mut Findings) {
    if limit.level.is_some_and(Level::per_body) && case.person.body_mass.is_none() {
        findings.open(Question::BodyMass);
    }
    for condition in limit.who.iter().chain(&limit.except) {
        if case.person.answer(*condition) == Given::Unanswered {
            findings.open(question(*condition));
        }
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
