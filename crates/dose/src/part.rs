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

/// The names under which cautions speak of a part: its own, and those its deciding rows give.
pub(crate) fn caution_parts(table: &Table, cup: &Cup, herb: &Herb, tense: Tense) -> Vec<Part> {
    let rows = deciding(table, cup, herb, tense);
    let mut parts: Vec<_> = rows.iter().flat_map(|row| row.caution_parts.iter().copied()).collect();
    parts.push(herb.part);
    parts.sort_unstable();
    parts.dedup();
    parts
}

/// The rows that speak of a herb in a cup, but for stages that were denied.
///
/// The row of the part itself speaks, or that of the smallest part it belongs to: what is said of
/// the herb as a whole is said of the rest where the flower has a row of its own. A row that says
/// *poisonous* or *deadly* is never set aside so, whether of a wider part or of one that is in the
/// mixture.
fn matching<'a>(table: &'a Table, cup: &Cup, herb: &Herb) -> Vec<&'a PartRow> {
    let route = Route::of(cup.form);
    let rows = table.parts.iter().filter(|row| {
        row.taxon == herb.taxon
            && row.route == route
            && row.part.meets(herb.part)
            && row.forms.iter().any(|form| form.contains(cup.form))
            && stage(row, herb) != Given::No
    });
    let rows: Vec<_> = rows.collect();
    let covering = rows.iter().filter(|row| row.part.contains(herb.part));
    let closest = covering.map(|row| depth(row.part)).max();
    let speaks = |row: &&PartRow| {
        row.feared() >= Harm::Harmful
            || (row.part.contains(herb.part) && Some(depth(row.part)) == closest)
    };
    rows.into_iter().filter(speaks).collect()
}

/// How many parts a part lies within.
fn depth(part: Part) -> usize {
    std::iter::successors(Some(part), |part| part.parent()).count()
}

/// The rows that decide once stages are reckoned with. One confirmed stage sets the others aside;
/// before the day the stage that is meant does; while several are possible all count.
fn deciding<'a>(table: &'a Table, cup: &Cup, herb: &Herb, tense: Tense) -> Vec<&'a PartRow> {
    let all = matching(table, cup, herb);
    let confirmed = |row: &&PartRow| row.stage.is_some() && stage(row, herb) == Given::Yes;
    if all.iter().any(confirmed) {
        return all.into_iter().filter(|row| stage(row, herb) == Given::Yes).collect();
    }
    if tense == Tense::Before && all.iter().any(|row| row.stage.is_some() && meant(row, herb, &all))
    {
        return all.iter().filter(|row| meant(row, herb, &all)).copied().collect();
    }
    all
}

/// Weighs the part rows of a herb.
pub(crate) fn weigh<'a>(case: &Case<'a>, herb: &Herb, findings: &mut Findings) -> PartSays<'a> {
    let rows = deciding(case.table, case.cup, herb, case.tense);
    stages(case, herb, &rows, findings);
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

/// Stages that nobody confirmed: before the day the one that is meant is to be seen to, and on the
/// day each withholds, unless a row that asks for no stage covers the part: then each only counts
/// with its harm.
fn stages(case: &Case<'_>, herb: &Herb, deciding: &[&PartRow], findings: &mut Findings) {
    let all = matching(case.table, case.cup, herb);
    let covers = |row: &&PartRow| row.stage.is_none() && row.part.contains(herb.part);
    let covered = deciding.iter().any(covers);
    for row in deciding.iter().filter(|row| stage(row, herb) != Given::Yes) {
        let stage = row.stage.as_deref().unwrap_or_default();
        findings.open(open_stage(herb, stage));
        if case.tense == Tense::OnTheDay && !covered {
            let text = about("dose-part-stage-open", case.cup, herb).with("stage", stage);
            findings.add(Strictness::Withhold, Rule::Part, text, Some(row.from.clone()));
        } else if case.tense == Tense::Before && meant(row, herb, &all) {
            findings.provide(about("dose-proviso-stage", case.cup, herb).with("stage", stage));
        }
    }
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
