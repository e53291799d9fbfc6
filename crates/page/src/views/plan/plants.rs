//! Each plant: what hurts, how to be sure of it, what it is taken for, what was seen of it.

use super::super::list;
use crate::{Anchor, Block, Item, Level, Notice, NoticeKind, Prose, Words};
use desk::{Plan, PlantPlan, SpecimenPlan, TwinPlan};
use ground::{Harm, Text, Unit};
use identify::{Next, Offer, Outcome};

pub(super) fn plants(plan: &Plan, words: &Words<'_>) -> Vec<Block> {
    plan.plants.iter().flat_map(|plant| one(plant, words)).collect()
}

fn one(plant: &PlantPlan, words: &Words<'_>) -> Vec<Block> {
    let name = Prose::new().said(&plant.common).text(" (").taxon(&plant.taxon).text(")");
    let mut blocks = vec![Block::heading(Level::Part, name), harm(plant, words)];
    blocks.extend(plant.specimens.iter().flat_map(|specimen| seen(specimen, words)));
    if !plant.settled() {
        blocks.extend(to_look(plant, words));
    }
    blocks.extend(twins(plant, words));
    blocks
}

/// What hurts, in the frame that its harm asks for.
pub(super) fn harm(plant: &PlantPlan, words: &Words<'_>) -> Block {
    let kind = match plant.harm {
        Harm::Deadly => NoticeKind::DoNot,
        Harm::Harmful | Harm::Irritant => NoticeKind::Caution,
        Harm::Unknown | Harm::None => NoticeKind::Question,
    };
    let note = Prose::new()
        .said(&plant.harm_note)
        .text(" (")
        .then(words.sourcing(&plant.harm_from))
        .text(")");
    if plant.harm == Harm::None {
        return Block::Para(
            Prose::new().strong(&words.word("view-plan-no-harm")).text(" ").then(note),
        );
    }
    let head = words.word(&format!("sheet-harm-{}", plant.harm.word()));
    Block::Notice(Notice { kind, head: head.into(), blocks: vec![Block::Para(note)] })
}

/// The looks that settle it, and who must read twice.
pub(super) fn to_look(plant: &PlantPlan, words: &Words<'_>) -> Vec<Block> {
    let heading = words.heading(Level::Point, &Text::new("view-plan-to-look"));
    match &plant.to_look {
        Next::Settled => Vec::new(),
        Next::CannotSettle { why } => {
            let head = words.word("view-name-cannot-settle").into();
            let blocks = vec![words.bullets(why)];
            vec![heading, Block::Notice(Notice { kind: NoticeKind::Question, head, blocks })]
        }
        Next::Look(looks) => {
            let says = Text::new("view-plan-looks").with("count", looks.looks.len()).amount(
                "time",
                (f64::from(looks.seconds) / 60.0).ceil(),
                Unit::Minute,
            );
            let offers = looks.looks.iter().map(|look| offer(look, words));
            let again: Vec<_> = looks.again.iter().map(|id| words.character(id)).collect();
            let again = (!again.is_empty()).then(|| {
                let text = Text::new("view-plan-again");
                words.para(&text.with("characters", words.catalogue.list(&again)))
            });
            [heading, words.para(&says), Block::numbered(offers)].into_iter().chain(again).collect()
        }
    }
}

/// One look: the character, what the plant typically shows, how to look.
fn offer(look: &Offer, words: &Words<'_>) -> Item {
    let text = Text::new("view-plan-look")
        .with("typical", words.seen(&look.character, &look.typical))
        .amount("time", f64::from(look.seconds), Unit::Second);
    let says = Prose::new()
        .said_strong(&words.character(&look.character))
        .text(": ")
        .then(words.prose(&text));
    let term = words.glossary.and_then(|glossary| glossary.term(&look.character));
    match term {
        Some(term) => Item::from(says.text(". ").said(&term.how)),
        None => Item::from(says),
    }
}

/// What was seen of one plant in hand: the verdict of the day and its reasons.
pub(super) fn seen(specimen: &SpecimenPlan, words: &Words<'_>) -> Vec<Block> {
    let verdict = &specimen.verdict;
    let (id, kind) = match verdict.outcome {
        Outcome::Determined { .. } => ("view-name-determined", NoticeKind::Caution),
        Outcome::NotYet => ("view-name-not-yet", NoticeKind::Question),
        Outcome::RuledOut => ("view-name-ruled-out", NoticeKind::DoNot),
    };
    let who = Text::new("view-plan-seen")
        .with("specimen", verdict.specimen.as_str())
        .with("stand", specimen.stand.as_str())
        .with("readers", words.catalogue.list(&specimen.readers));
    let bar = Text::new("view-plan-bar")
        .with("left", words.amount(verdict.bar.left.get(), Unit::One).plain())
        .with("allowed", words.amount(verdict.bar.allowed.get(), Unit::One).plain());
    let blocks = vec![words.para(&who), words.bullets(&verdict.reasons), words.para(&bar)];
    let anchor = Anchor::new(&format!("bar-{}-{}", specimen.stand, verdict.specimen));
    vec![
        Block::Notice(Notice { kind, head: words.word(id).into(), blocks }),
        words.working(&anchor, &verdict.working),
    ]
}

/// What it is taken for, the worst first, with what tells the two apart.
pub(super) fn twins(plant: &PlantPlan, words: &Words<'_>) -> Vec<Block> {
    if plant.twins.is_empty() {
        return Vec::new();
    }
    let heading = words.heading(Level::Point, &Text::new("view-plan-twins"));
    vec![heading, Block::bullets(plant.twins.iter().map(|twin| one_twin(twin, words)))]
}

fn one_twin(twin: &TwinPlan, words: &Words<'_>) -> Prose {
    let harm = match twin.harm {
        Some(harm) => list::harm(harm, words),
        None => words.word("sheet-twin-unlisted"),
    };
    let common = twin.common.as_deref().map(|common| Prose::new().said(common).text(", "));
    common
        .unwrap_or_default()
        .taxon(&twin.taxon)
        .text(" — ")
        .strong(&harm)
        .text(". ")
        .said(&twin.resemblance.says)
        .text(" (")
        .then(words.sourcing(&twin.resemblance.from))
        .text(")")
}
