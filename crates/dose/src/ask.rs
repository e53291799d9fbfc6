//! What rules ask about the people who come: the questions whose answers may change what is handed
//! out, and no others.
//!
//! It walks the rows that join a cup as [`decide`](crate::decide) does, with nobody's answers in
//! hand. What it leaves out counts for nothing: the tests hold both against each other.

use crate::caution::{Reach, Reached, may_hold, question};
use crate::decide::{Case, Findings};
use crate::doubt::Ledger;
use crate::hold::{hangs_on_worst_end, worst_end};
use crate::intake::{Intake, Intakes};
use crate::limit::decides;
use crate::naming::{measured, named};
use crate::shares::Yard;
use crate::{
    Action, Caution, Counted, Cup, Herb, Level, Limit, LimitUse, Posology, Question, Rule,
    SubstanceId, part,
};
use ground::{Condition, Fault, Faults};
use std::collections::{BTreeMap, BTreeSet};

/// What is asked about a person, and which kinds of rule ask it.
pub type Asked = BTreeMap<Question, BTreeSet<Rule>>;

/// What the rules that join a cup ask about whoever drinks it. The person of the case is not looked
/// at. A question about a plant is none about a person, and is not among these.
///
/// # Errors
/// Only a fault of our own: one quantity drawn in two ways.
pub fn asked(case: &Case<'_>, intakes: &mut Intakes) -> Result<Asked, Faults> {
    if !intakes.fits(case) {
        let mut ledger = Ledger::new(intakes.start);
        return Ok(walk(case, &mut Intake::new(case), &mut ledger)?);
    }
    let mut intake = intakes.take(case);
    let all = walk(case, &mut intake, &mut intakes.ledger);
    intakes.keep(intake);
    Ok(all?)
}

fn walk(case: &Case<'_>, intake: &mut Intake, ledger: &mut Ledger) -> Result<Asked, Fault> {
    let mut asks = Asks { case, all: Asked::new() };
    for herb in &case.cup.herbs {
        asks.herb(herb);
    }
    asks.unmeasured();
    asks.limits(intake, ledger)?;
    Ok(asks.all)
}

struct Asks<'c, 'a> {
    case: &'c Case<'a>,
    all: Asked,
}

impl Asks<'_, '_> {
    fn ask(&mut self, question: Question, by: Rule) {
        self.all.entry(question).or_default().insert(by);
    }

    fn about(&mut self, condition: Condition, by: Rule) {
        if condition != Condition::All {
            self.ask(question(condition), by);
        }
    }

    /// Whatever decides which end of a sum is held against a limit.
    fn worst_end(&mut self, by: Rule) {
        worst_end().into_iter().for_each(|condition| self.about(condition, by));
    }

    /// An amount for each kilogram of body mass; one that was not given is the least of the age band.
    fn per_body(&mut self, by: Rule) {
        self.ask(Question::BodyMass, by);
        self.ask(Question::Age, by);
    }

    fn herb(&mut self, herb: &Herb) {
        let case = self.case;
        let says = part::weigh(case, herb, &mut Findings::default());
        let reached = Reached::of(case, case.cup, herb);
        for row in &case.table.cautions {
            let joins = reached.tie(Reach::of_caution(row)).is_some();
            let spared = row.spares_food && says.plain_food(case.cup.form);
            if joins && !spared && says.used_as(&row.uses) && may_hold(herb, row) {
                self.caution(row);
            }
        }
        for row in &case.table.posology {
            if reached.tie(Reach::of_amount(row)).is_some() {
                self.amount(row);
            }
        }
    }

    fn caution(&mut self, row: &Caution) {
        if matches!(row.action, Action::Note | Action::NoneFound) {
            return;
        }
        self.about(row.who, Rule::Caution);
        let level = row.limit.as_ref().filter(|_| row.action == Action::Limit);
        let Some((of, level)) = level.and_then(|limit| Some((&limit.of, limit.level?))) else {
            return;
        };
        if level.per_body() {
            self.per_body(Rule::Caution);
        }
        let no_threshold = match of {
            Counted::Substance(substance) => self.case.table.no_safe_level(substance),
            _ => false,
        };
        if !no_threshold {
            self.worst_end(Rule::Caution);
        }
    }

    fn amount(&mut self, row: &Posology) {
        if row.age_from > 0 {
            self.ask(Question::Age, Rule::Amount);
        }
        if row.day_max_g.is_some() {
            self.worst_end(Rule::Amount);
        }
    }

    /// Constituents that nobody measured: whose limits concern whom.
    fn unmeasured(&mut self) {
        let case = self.case;
        let mut here: BTreeSet<_> = case.cup.holds.keys().cloned().collect();
        for herb in &case.cup.herbs {
            let names = named(case.table, &herb.taxon);
            self.unmeasured_in(case.cup, herb, &names);
            here.extend(names);
        }
        for cup in case.beside {
            for herb in &cup.herbs {
                let names = named(case.table, &herb.taxon).intersection(&here).cloned().collect();
                self.unmeasured_in(cup, herb, &names);
            }
        }
    }

    fn unmeasured_in(&mut self, cup: &Cup, herb: &Herb, names: &BTreeSet<SubstanceId>) {
        let case = self.case;
        if !case.cup.inward() || !cup.inward() {
            return;
        }
        for substance in names.iter().filter(|s| !measured(case.table, cup, herb, s)) {
            let screens =
                case.table.limits.iter().filter(|limit| {
                    limit.substance == *substance && limit.used == LimitUse::Screen
                });
            let screens: Vec<_> = screens.collect();
            if !screens.iter().any(|limit| limit.who.is_empty() && limit.to_age.is_none()) {
                screens.iter().for_each(|limit| self.whom(limit, Rule::Unmeasured));
            }
        }
    }

    /// Whom a limit concerns.
    fn whom(&mut self, limit: &Limit, by: Rule) {
        limit.who.iter().for_each(|condition| self.about(*condition, by));
        if limit.from_age.is_some() || limit.to_age.is_some() {
            self.ask(Question::Age, by);
        }
    }

    /// Limits on what is in the cup.
    fn limits(&mut self, intake: &mut Intake, ledger: &mut Ledger) -> Result<(), Fault> {
        let case = self.case;
        if !case.cup.inward() {
            return Ok(());
        }
        for substance in intake.limited.clone() {
            let yard = Yard::everywhere(Counted::Substance(substance.clone()));
            if let Ok(sum) = intake.sum(case, yard, ledger)?
                && sum.none_in_cup(ledger)?
            {
                continue;
            }
            let limits = case.table.limits.iter().filter(|limit| limit.substance == substance);
            let limits: Vec<_> = limits.filter(|limit| decides(limit, case)).collect();
            limits.iter().for_each(|limit| self.limit(limit));
            if hangs_on_worst_end(case, &substance, &limits) {
                self.worst_end(Rule::Limit);
            }
        }
        Ok(())
    }

    fn limit(&mut self, limit: &Limit) {
        self.whom(limit, Rule::Limit);
        limit.except.iter().for_each(|condition| self.about(*condition, Rule::Limit));
        // A value for grown-ups binds the young by their body mass.
        let adults = limit.from_age.is_some_and(|from| from >= 18);
        if adults || limit.level.is_some_and(Level::per_body) {
            self.per_body(Rule::Limit);
        }
    }
}
