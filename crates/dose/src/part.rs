//! What is known of this part of this plant, at this stage, in this preparation, by this route.

use crate::decide::{Case, Findings, Tense};
use crate::{Cup, Given, Herb, PartRow, Question, Route, Rule, Strictness, Table, UsedAs};
use ground::{Form, Harm, Part, Text};

/// What the part rows say of a herb in a cup.
pub(crate) struct PartSays<'a> {
    /// The rows that decide.
    rows: Vec<&'a PartRow>,
}

impl PartSays<'_> {
    /// Whether it is plain food: a dish or a seasoning, and nothing else.
    pub(crate) fn plain_food(&self, form: Form) -> bool {
        let food = |row: &&PartRow| matches!(row.used_as, UsedAs::Food | UsedAs::Flavour);
        Form::Food.contains(form) && !self.rows.is_empty() && self.rows.iter().all(food)
    }

    /// Whether a row that was read calls it food without harm: somebody looked.
    pub(crate) fn sourced_food(&self) -> bool {
        let food = |row: &&PartRow| row.used_as == UsedAs::Food && row.feared() == Harm::None;
        !self.rows.is_empty() && self.rows.iter().all(food)
    }

    /// Whether any deciding row uses it like one of these; empty: always.
    pub(crate) fn used_as(&self, uses: &[UsedAs]) -> bool {
        uses.is_empty()
            || self.rows.is_empty()
            || self.rows.iter().any(|row| uses.contains(&row.used_as))
    }
}

/// The names under which cautions speak of a part: its own, and those its rows give.
pub(crate) fn caution_parts(table: &Table, cup: &Cup, herb: &Herb) -> Vec<Part> {
    let rows = matching(table, cup, herb);
    let mut parts: Vec<_> = rows.flat_map(|row| row.caution_parts.iter().copied()).collect();
    parts.push(herb.part);
    parts.sort_unstable();
    parts.dedup();
    parts
}

/// The rows that speak of a herb in a cup. A row of the whole holds for its parts, and a row of a
/// part holds for a mixture that has it in.
fn matching<'a>(
    table: &'a Table,
    cup: &'a Cup,
    herb: &'a Herb,
) -> impl Iterator<Item = &'a PartRow> {
    let route = Route::of(cup.form);
    table.parts.iter().filter(move |row| {
        row.taxon == herb.taxon
            && row.route == route
            && row.part.meets(herb.part)
            && row.forms.iter().any(|form| form.contains(cup.form))
    })
}

/// Weighs the part rows of a herb.
pub(crate) fn weigh<'a>(case: &Case<'a>, herb: &'a Herb, findings: &mut Findings) -> PartSays<'a> {
    let all: Vec<_> =
        matching(case.table, case.cup, herb).filter(|row| stage(row, herb) != Given::No).collect();
    let rows = settled(case, herb, &all, findings);
    if !rows.iter().any(|row| row.part.contains(herb.part)) {
        let text = about("dose-part-no-row", case.cup, herb);
        findings.add(Strictness::Withhold, Rule::Part, text, None);
    }
    for row in &rows {
        let (asks, id) = match (row.feared(), row.used_as) {
            (Harm::Deadly, _) => (Strictness::Withhold, "dose-part-deadly"),
            (Harm::Harmful, _) => (Strictness::Withhold, "dose-part-harmful"),
            (Harm::Unknown, _) => (Strictness::Withhold, "dose-part-unknown"),
            (_, UsedAs::None) => (Strictness::Withhold, "dose-part-no-use"),
            (Harm::Irritant, _) => (Strictness::AskFirst, "dose-part-irritant"),
            (Harm::None, _) => (Strictness::NoReasonFound, "dose-part-none"),
        };
        let mut text = about(id, case.cup, herb);
        text = text.with("note", row.note.as_deref().unwrap_or_default());
        findings.add(asks, Rule::Part, text, Some(row.from.clone()));
    }
    PartSays { rows }
}

/// The rows that decide once stages are reckoned with. One confirmed stage sets the others aside;
/// while several are possible all count, and the worst decides.
fn settled<'a>(
    case: &Case<'a>,
    herb: &Herb,
    all: &[&'a PartRow],
    findings: &mut Findings,
) -> Vec<&'a PartRow> {
    let confirmed = |row: &&&PartRow| stage(row, herb) == Given::Yes;
    let without_stage = |row: &&&PartRow| row.stage.is_none();
    if all.iter().any(|row| row.stage.is_some() && confirmed(&row)) {
        return all.iter().filter(|row| confirmed(row)).copied().collect();
    }
    let open: Vec<_> = all.iter().filter(|row| !without_stage(row)).copied().collect();
    for row in &open {
        findings.open(open_stage(herb, row.stage.as_deref().unwrap_or_default()));
    }
    if case.tense == Tense::Before {
        let planned: Vec<_> = all.iter().filter(|row| meant(row, herb, all)).copied().collect();
        if let Some(stage) = planned.iter().find_map(|row| row.stage.as_deref()) {
            findings.provide(about("dose-proviso-stage", case.cup, herb).with("stage", stage));
            return planned;
        }
        return all.to_vec();
    }
    for row in &open {
        let stage = row.stage.as_deref().unwrap_or_default();
        let text = about("dose-part-stage-open", case.cup, herb).with("stage", stage);
        findings.add(Strictness::Withhold, Rule::Part, text, Some(row.from.clone()));
    }
    all.to_vec()
}

/// Before the day: whether a row is the one that is meant, because its stage was named or because
/// there is no other.
fn meant(row: &PartRow, herb: &Herb, all: &[&PartRow]) -> bool {
    match (&herb.planned_stage, &row.stage) {
        (_, None) => true,
        (Some(planned), Some(stage)) => planned == stage,
        (None, Some(stage)) => all.iter().all(|o| o.stage.as_ref().is_none_or(|o| o == stage)),
    }
}

/// What was said of a row's stage; a row without one holds always.
fn stage(row: &PartRow, herb: &Herb) -> Given {
    match &row.stage {
        None => Given::Yes,
        Some(stage) => herb.stages.get(stage).copied().unwrap_or_default(),
    }
}

/// An open question about the state of a herb.
pub(crate) fn open_stage(herb: &Herb, stage: &str) -> Question {
    Question::Stage { taxon: herb.taxon.clone(), stage: stage.to_owned() }
}

/// A message about a herb in a cup.
pub(crate) fn about(id: &str, cup: &Cup, herb: &Herb) -> Text {
    let part = Text::new(format!("part-{}", herb.part.word()));
    let form = Text::new(format!("form-{}", cup.form.word()));
    Text::new(id).taxon("plant", herb.taxon.as_str()).with("part", part).with("form", form)
}
