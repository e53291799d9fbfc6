//! The sheet of a pot: what stands beside the stove, with room for what is found.

use super::super::{labels, make};
use super::{called, made, section, sources};
use crate::{Block, Column, Fact, Kind, Page, Prose, Table, Words};
use desk::{LabelPlan, MakePlan, Plan};
use ground::{Answer, Form, Text, Unit};
use prepare::{Brew, Done, What, Yield};
use std::collections::BTreeSet;

/// What it is called.
pub(super) fn title(wish: &MakePlan) -> Text {
    Text::new("view-brew-title").with("name", wish.called.as_str())
}

/// Everything about one wish that a cook needs, and nothing of who drinks it.
pub(super) fn brew_sheet(plan: &Plan, wish: &MakePlan, words: &Words<'_>) -> Page {
    let label = plan.labels.iter().find(|label| label.make.as_ref() == Some(&wish.name));
    let rows = label.map(|label| &label.spoken);
    let numbers = sources::numbers(&(&wish.brew, rows), words);
    let words = &words.numbered(&numbers);
    let of = Text::new("view-brew-of")
        .with("part", Text::new(format!("part-{}", wish.part.word())))
        .with("outing", plan.head.name.as_str())
        .with("day", plan.head.date);
    let of = called(plan, &wish.plant).text(": ").then(words.prose(&of));
    let provisos: Vec<_> = wish.provisos.iter().map(|text| words.prose(text)).collect();
    let provisos = (!provisos.is_empty()).then_some(Block::Ticks(provisos));
    let pot = match &wish.brew {
        Answer::Known(brew) => stove(brew, label, words),
        Answer::Refused(refusal) => vec![words.refusal(refusal)],
    };
    words
        .page(Kind::Public, &title(wish))
        .with([Block::Para(of)])
        .with(made::withheld(wish, words))
        .with(provisos)
        .with(pot)
        .with(section("view-brew-cautions", cautions(label, words), words))
        .with(section("view-brew-label", preview(plan, label, words), words))
        .with(section("view-plan-sources", sources::list(&numbers, words), words))
}

fn cautions(label: Option<&LabelPlan>, words: &Words<'_>) -> Vec<Block> {
    let said = label.and_then(|label| labels::cautions(label, words));
    vec![said.unwrap_or_else(|| words.para(&Text::new("view-brew-no-cautions")))]
}

fn preview(plan: &Plan, label: Option<&LabelPlan>, words: &Words<'_>) -> Vec<Block> {
    let sheet = desk::LabelSheet::usual(desk::usual_paper(plan.head.region));
    label.map(|label| labels::preview(label, sheet, words)).unwrap_or_default()
}

/// The pot itself: amounts in large print, then what is done and checked.
fn stove(brew: &Brew, label: Option<&LabelPlan>, words: &Words<'_>) -> Vec<Block> {
    let herb = vec![Block::Facts(herb(brew, label, words))];
    // The section has a heading of its own.
    let mut keeping: Vec<_> = make::keeping(&brew.keeping, words).into_iter().skip(1).collect();
    let away =
        label.map(|label| words.fact(&Text::new("view-brew-away"), labels::until(label, words)));
    if let Some(Block::Facts(facts)) = keeping.first_mut() {
        facts.splice(0..0, away);
    }
    std::iter::once(Block::Large(vec![make::helpings(brew, words)]))
        .chain(section("view-brew-herb", herb, words))
        .chain(section("view-brew-steps", vec![steps(&brew.steps, words)], words))
        .chain(section("view-brew-checks", checks(brew, words), words))
        .chain(section("view-brew-keeping", keeping, words))
        .chain(make::notes(&brew.notes, words))
        .collect()
}

fn herb(brew: &Brew, label: Option<&LabelPlan>, words: &Words<'_>) -> Vec<Fact> {
    let state = words.word(&format!("view-brew-{}", brew.state.word()));
    let state = words.fact(&Text::new("view-brew-state"), Prose::new().strong(&state));
    let said = |id: &str, prose: Prose| words.fact(&Text::new(id), prose);
    let rest = label.map(|label| {
        [
            said("view-brew-moisture", labels::moisture(label, words)),
            said("view-brew-from", labels::stands(label, words)),
            said("view-brew-lots", labels::sorted(label, words)),
        ]
    });
    let whom = label.map(|label| labels::for_whom(label, words)).into_iter().flatten();
    let whom = whom.map(|line| Fact::new(line.label, line.value));
    let tools = words.fact(&Text::new("view-brew-equipment"), equipment(brew, words));
    std::iter::once(state).chain(whom).chain(rest.into_iter().flatten()).chain([tools]).collect()
}

/// What must be at hand, from what goes in and what is done.
fn equipment(brew: &Brew, words: &Words<'_>) -> Prose {
    let weighed = brew.amounts.iter().any(|helping| helping.volume.is_none());
    let poured = brew.amounts.iter().any(|helping| helping.volume.is_some());
    let steps: Vec<&str> = brew.steps.iter().map(|step| step.text.id.as_str()).collect();
    let does = |names: &[&str]| {
        steps
            .iter()
            .any(|id| names.iter().any(|name| id.strip_prefix("prepare-step-") == Some(name)))
    };
    let spirit = Form::Spirit.contains(brew.form);
    let tools = [
        (weighed, "view-brew-tool-scale"),
        (poured, "view-brew-tool-jug"),
        (!spirit && does(&["simmer", "reduce", "pour-boiling", "dissolve"]), "view-brew-tool-pot"),
        (does(&["steep"]), "view-brew-tool-lid"),
        (does(&["strain", "press"]), "view-brew-tool-cloth"),
        (spirit || Form::Sweet.contains(brew.form), "view-brew-tool-jar"),
        (brew.steps.iter().any(|step| step.time.is_some()), "view-brew-tool-clock"),
        (true, "view-brew-tool-labels"),
    ];
    let needed = tools.into_iter().filter(|(needed, _)| *needed);
    needed.fold(Prose::new(), |all, (_, id)| all.text(" ☐ ").text(&words.word(id)))
}

/// Each step with a box to tick, and room for when it was done and what was found.
fn steps(steps: &[Done], words: &Words<'_>) -> Block {
    let boiling: BTreeSet<&str> =
        ["prepare-step-simmer", "prepare-step-reduce", "prepare-step-pour-boiling"].into();
    let row = |step: &Done| {
        let said = Prose::new().text("☐ ").then(words.prose(&step.text));
        let hot = boiling.contains(step.text.id.as_str());
        let hot = hot.then(|| Prose::from(format!(" ({})", words.word("view-brew-boiling"))));
        vec![said.then(hot.unwrap_or_default()), Prose::new().blank(), Prose::new().blank()]
    };
    let columns = ["view-brew-step", "view-brew-done-at", "view-brew-found"];
    Block::Table(Table {
        caption: words.word("view-brew-tick").into(),
        columns: columns.map(|id| Column::words(words.word(id))).into(),
        rows_have_heads: false,
        rows: steps.iter().map(row).collect(),
    })
}

/// What is weighed or measured, between which ends it should lie, and room for what was found.
fn checks(brew: &Brew, words: &Words<'_>) -> Vec<Block> {
    let row =
        |id: &str, expected: Prose| vec![words.word(id).into(), expected, Prose::new().blank()];
    let herb = brew.amounts.iter().find(|helping| helping.what == What::Herb);
    let herb = herb.map(|herb| {
        row("view-brew-check-herb", make::spanned(herb.mass, |mass| mass.g(), Unit::Gram, words))
    });
    let made = match brew.made {
        Yield::Volume(span) => make::spanned(span, |v| v.ml(), Unit::Millilitre, words),
        Yield::Mass(span) => make::spanned(span, |m| m.g(), Unit::Gram, words),
    };
    let one = match brew.portion.one.volume {
        Some(volume) => words.amount(volume.ml(), Unit::Millilitre),
        None => words.amount(brew.portion.one.mass.g(), Unit::Gram),
    };
    let rest = [row("view-brew-check-yield", made), row("view-brew-check-serving", one)];
    let columns = ["view-brew-check", "view-brew-expected", "view-brew-found"];
    let table = Block::Table(Table {
        caption: words.word("view-brew-weigh").into(),
        columns: columns.map(|id| Column::words(words.word(id))).into(),
        rows_have_heads: true,
        rows: herb.into_iter().chain(rest).collect(),
    });
    vec![table, words.para(&Text::new("view-brew-done"))]
}
