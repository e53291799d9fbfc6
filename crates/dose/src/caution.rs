//! Cautions and usual amounts: who should not have what, how much, and for how long.

use crate::decide::{Case, Findings, Tense};
use crate::part::{PartSays, about, caution_parts, open_stage};
use crate::{Action, Caution, Cup, Given, Herb, Posology, Question, Rule, Strictness, Table, Tie};
use ground::{Condition, Form, Part, Text, Unit};

/// What a row reaches: by taxon, part and preparation, each through its tree.
#[derive(Clone, Copy)]
pub(crate) struct Reach<'a> {
    taxon: &'a str,
    parts: &'a [Part],
    forms: &'a [Form],
}

impl<'a> Reach<'a> {
    pub(crate) fn of_caution(row: &'a Caution) -> Self {
        Self { taxon: &row.taxon, parts: &row.parts, forms: &row.forms }
    }

    pub(crate) fn of_amount(row: &'a Posology) -> Self {
        Self { taxon: &row.taxon, parts: &row.parts, forms: &row.forms }
    }

    /// Whether the row joins a herb in a cup, where it alone is asked about.
    pub(crate) fn joins(self, case: &Case<'_>, cup: &Cup, herb: &Herb) -> bool {
        let tied = case.table.tie(self.taxon, &herb.taxon).is_some();
        tied && Reached::of(case, cup, herb).tie(self).is_some()
    }
}

/// A herb in a cup, as rows reach it: by which names they speak of its part is looked up once for all.
pub(crate) struct Reached<'a> {
    table: &'a Table,
    taxon: &'a str,
    form: Form,
    parts: Vec<Part>,
}

impl<'a> Reached<'a> {
    pub(crate) fn of(case: &Case<'a>, cup: &Cup, herb: &'a Herb) -> Self {
        let parts = caution_parts(case.table, cup, herb, case.tense);
        Self { table: case.table, taxon: &herb.taxon, form: cup.form, parts }
    }

    /// How a row joins it, if it does.
    pub(crate) fn tie(&self, row: Reach<'_>) -> Option<Tie> {
        let tie = self.table.tie(row.taxon, self.taxon)?;
        let form = row.forms.iter().any(|form| form.meets(self.form));
        let part = row.parts.iter().any(|part| self.parts.iter().any(|own| part.meets(*own)));
        (form && part).then_some(tie)
    }
}

/// The most of something that a row allows, with the rest of what it says.
pub(crate) enum Allows<'a> {
    /// A caution's limit.
    Caution(&'a Caution),
    /// A usual amount.
    Amount(&'a Posology),
}

/// Weighs the cautions and usual amounts of a herb; gives back what must be held against sums.
pub(crate) fn weigh<'a>(
    case: &Case<'a>,
    herb: &'a Herb,
    says: &PartSays<'_>,
    findings: &mut Findings,
) -> Vec<Allows<'a>> {
    let mut allows = Vec::new();
    let mut looked = says.sourced_food();
    let reached = Reached::of(case, case.cup, herb);
    for row in &case.table.cautions {
        let Some(tie) = reached.tie(Reach::of_caution(row)) else { continue };
        looked |= tie != Tie::EveryPlant && row.from.may_clear();
        if speaks(case.cup, row, says) && holds(case, herb, row, findings) {
            weigh_row(case, herb, row, findings);
            allows.extend((row.action == Action::Limit).then_some(Allows::Caution(row)));
        }
    }
    for row in &case.table.posology {
        if reached.tie(Reach::of_amount(row)).is_some() {
            weigh_amount(case, herb, row, findings);
            allows.push(Allows::Amount(row));
        }
    }
    if !looked {
        let text = about("dose-caution-nobody-looked", case.cup, herb);
        findings.add(Strictness::AskFirst, Rule::Caution, text, None);
    }
    allows
}

/// Whether a row that speaks only of material in some state may come to hold here: nobody denied it.
pub(crate) fn may_hold(herb: &Herb, row: &Caution) -> bool {
    let state = row.when.as_ref().map(|when| herb.stages.get(when).copied().unwrap_or_default());
    state != Some(Given::No)
}

/// Whether a row that joins a herb speaks of what it is used as.
pub(crate) fn speaks(cup: &Cup, row: &Caution, says: &PartSays<'_>) -> bool {
    let spared = row.spares_food && says.plain_food(cup.form);
    !spared && says.used_as(&row.uses)
}

/// Whether a row that speaks only of material in some state holds here. What nobody has looked at
/// counts as if it were so; before the day it is something to see to.
pub(crate) fn holds(case: &Case<'_>, herb: &Herb, row: &Caution, findings: &mut Findings) -> bool {
    let Some(when) = &row.when else { return true };
    match herb.stages.get(when).copied().unwrap_or_default() {
        Given::Yes => true,
        Given::No => false,
        Given::RatherNot | Given::Unanswered => {
            findings.open(open_stage(herb, when));
            if case.tense == Tense::Before {
                findings.provide(about("dose-proviso-not", case.cup, herb).with("stage", &**when));
            }
            case.tense == Tense::OnTheDay
        }
    }
}

/// Weighs one caution against what the person said.
fn weigh_row(case: &Case<'_>, herb: &Herb, row: &Caution, findings: &mut Findings) {
    let given = case.person.answer(row.who);
    if given == Given::No {
        return;
    }
    let text = about("dose-caution", case.cup, herb)
        .with("who", Text::new(format!("condition-{}", row.who.word())))
        .with("wording", row.wording.as_str())
        .with("note", row.note.as_deref().unwrap_or_default());
    let asks = match row.action {
        Action::Note | Action::NoneFound => Strictness::NoReasonFound,
        _ if given == Given::RatherNot && case.cup.inward() => Strictness::Withhold,
        Action::Exclude => Strictness::Withhold,
        Action::Ask => Strictness::AskFirst,
        Action::Limit if row.limit.is_none() && row.days.is_none() => Strictness::AskFirst,
        Action::Limit => Strictness::AtMost,
    };
    if given == Given::Unanswered && asks > Strictness::NoReasonFound {
        findings.open(question(row.who));
    }
    findings.add(asks, Rule::Caution, text, Some(row.from.clone()));
    if row.action == Action::Limit {
        findings.days(row.days);
    }
}

/// The question behind a condition: ages are asked as one.
pub(crate) fn question(condition: Condition) -> Question {
    if Condition::Under18.contains(condition) {
        Question::Age
    } else {
        Question::Condition(condition)
    }
}

/// Weighs the age and days of a usual amount.
fn weigh_amount(case: &Case<'_>, herb: &Herb, row: &Posology, findings: &mut Findings) {
    let text = |id: &str| about(id, case.cup, herb).with("years", u32::from(row.age_from));
    if case.person.may_be_under(row.age_from) {
        let text = text("dose-amount-no-data-under");
        findings.add(Strictness::Withhold, Rule::Amount, text, Some(row.from.clone()));
        if case.person.age.is_none() {
            findings.open(Question::Age);
        }
    }
    let day = row.day_max_g.map_or(f64::NAN, |most| most.get());
    let id = match (row.day_max_g, row.max_days) {
        (Some(_), Some(_)) => "dose-amount-day-and-days",
        (Some(_), None) => "dose-amount-day",
        (None, Some(_)) => "dose-amount-days",
        (None, None) => {
            return findings.add(
                Strictness::AskFirst,
                Rule::Amount,
                text("dose-amount-none"),
                Some(row.from.clone()),
            );
        }
    };
    let text =
        text(id).amount("most", day, Unit::Gram).with("days", row.max_days.unwrap_or_default());
    findings.add(Strictness::AtMost, Rule::Amount, text, Some(row.from.clone()));
    findings.days(row.max_days);
}
