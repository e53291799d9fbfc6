//! How much may go from each stand: the amount and the rule that binds, then what is open, then
//! every rule.

use crate::{Anchor, Block, Column, Details, Fact, Kind, Level, Page, Prose, Table, Words};
use desk::TakePlan;
use ground::{Answer, Mass, Text, Unit};
use harvest::{Allowance, Candidate, Kind as RuleKind, Note, Outcome, Quantity};

pub(super) fn page(stands: &[TakePlan], words: &Words<'_>) -> Page {
    let page = words.page(Kind::Screen, &Text::new("view-allowance-title"));
    if stands.is_empty() {
        return page.with([words.para(&Text::new("view-allowance-none"))]);
    }
    page.with(blocks(stands, words))
}

/// Every stand, then once what holds at several.
pub(super) fn blocks(stands: &[TakePlan], words: &Words<'_>) -> Vec<Block> {
    let everywhere: Vec<&Note> = stands.iter().flat_map(|take| shared(take, stands)).collect();
    let mut once: Vec<&Note> = Vec::new();
    everywhere.into_iter().for_each(|note| {
        if !once.contains(&note) {
            once.push(note);
        }
    });
    let each = stands.iter().flat_map(|take| stand(take, stands, words));
    each.chain(to_know(&once, words)).collect()
}

/// The notes of a stand that another stand has too.
fn shared<'a>(take: &'a TakePlan, stands: &'a [TakePlan]) -> impl Iterator<Item = &'a Note> {
    take.allowance.notes.iter().filter(|note| at_several(note, stands))
}

fn at_several(note: &Note, stands: &[TakePlan]) -> bool {
    stands.iter().filter(|take| take.allowance.notes.contains(note)).count() > 1
}

/// What holds at several stands, told once.
fn to_know(once: &[&Note], words: &Words<'_>) -> Vec<Block> {
    let heading = words.heading(Level::Section, &Text::new("view-allowance-to-know"));
    notes(once, words).map_or_else(Vec::new, |points| vec![heading, points])
}

fn stand(take: &TakePlan, stands: &[TakePlan], words: &Words<'_>) -> Vec<Block> {
    let allowance = &take.allowance;
    let head = Text::new("view-allowance-stand")
        .with("stand", take.stand.as_str())
        .with("part", Text::new(format!("part-{}", take.part.word())))
        .taxon("plant", &take.taxon);
    let mut blocks = vec![words.heading(Level::Section, &head), Block::Facts(facts(take, words))];
    let open = allowance.open.iter().enumerate();
    let fresh =
        open.filter(|(at, refusal)| !allowance.open.iter().take(*at).any(|o| o == *refusal));
    blocks.extend(fresh.map(|(_, refusal)| words.refusal(refusal)));
    blocks.extend(rules(allowance, words));
    let own: Vec<_> = allowance.notes.iter().filter(|note| !at_several(note, stands)).collect();
    blocks.extend(notes(&own, words));
    blocks.push(
        words.working(&Anchor::new(&format!("{}-{}", take.stand, take.part)), &allowance.working),
    );
    blocks
}

fn facts(take: &TakePlan, words: &Words<'_>) -> Vec<Fact> {
    let allowance = &take.allowance;
    let most = match &allowance.amount {
        Answer::Known(quantity) if quantity.number() <= 0.0 => {
            Prose::new().strong(&words.word("view-allowance-nothing"))
        }
        Answer::Known(quantity) => words.prose(&amount(*quantity)),
        Answer::Refused(_) => Prose::new().strong(&words.word("view-allowance-open")),
    };
    let binding = allowance.binding.as_ref().and_then(|binding| {
        let rule = allowance.candidates.iter().find(|candidate| candidate.rule == *binding)?;
        Some(words.fact(&Text::new("view-allowance-binds"), words.prose(&rule.says)))
    });
    let site = Prose::new().said(&take.site_called);
    let weight = |id: &str, mass: Mass<ground::Fresh>| {
        (mass > Mass::ZERO).then(|| words.fact(&Text::new(id), words.amount(mass.g(), Unit::Gram)))
    };
    let facts = [
        Some(words.fact(&Text::new("view-allowance-may"), most)),
        binding,
        Some(words.fact(&Text::new("view-allowance-site"), site)),
        match &take.wanted {
            Answer::Known(wanted) => weight("view-allowance-wanted", *wanted),
            Answer::Refused(refusal) => {
                Some(words.fact(&Text::new("view-allowance-wanted"), words.prose(&refusal.why)))
            }
        },
        weight("view-allowance-today", take.taken_today),
    ];
    facts.into_iter().flatten().collect()
}

fn amount(quantity: Quantity) -> Text {
    match quantity {
        Quantity::Mass(mass) => Text::new("harvest-grams").amount("mass", mass.g(), Unit::Gram),
        Quantity::Pieces(pieces) => Text::new("harvest-pieces").with("n", pieces.0 as i64),
    }
}

/// Every rule that leaves less than all there is; those that do not stand in the way on demand.
fn rules(allowance: &Allowance, words: &Words<'_>) -> Vec<Block> {
    let clear = |candidate: &&Candidate| candidate.outcome == Outcome::Clear;
    let (clear, binding): (Vec<_>, Vec<_>) = allowance.candidates.iter().partition(clear);
    let text = Text::new("view-allowance-clear-rules").with("count", clear.len());
    let clear = table("view-allowance-clear-says", &clear, words).map(|table| {
        let summary = words.prose(&text);
        Block::Details(Details { anchor: None, summary, open: false, blocks: vec![table] })
    });
    table("view-allowance-rules-says", &binding, words).into_iter().chain(clear).collect()
}

fn table(caption: &str, candidates: &[&Candidate], words: &Words<'_>) -> Option<Block> {
    let heads = ["view-allowance-rule", "view-allowance-leaves", "view-allowance-says"];
    let table = Table {
        caption: words.word(caption).into(),
        columns: heads.map(|id| Column::words(words.word(id))).into(),
        rows_have_heads: true,
        rows: candidates.iter().map(|candidate| rule(candidate, words)).collect(),
    };
    (!candidates.is_empty()).then_some(Block::Table(table))
}

fn rule(candidate: &Candidate, words: &Words<'_>) -> Vec<Prose> {
    let leaves = match &candidate.outcome {
        Outcome::Nothing => words.word("view-allowance-nothing").into(),
        Outcome::Open(_) => words.word("view-allowance-question").into(),
        Outcome::AtMost(quantity) => words.prose(&amount(*quantity)),
        Outcome::Clear => words.word("view-allowance-clear").into(),
    };
    vec![words.word(kind(candidate.rule.kind)).into(), leaves, words.prose(&candidate.says)]
}

fn kind(kind: RuleKind) -> &'static str {
    match kind {
        RuleKind::Law => "view-allowance-law",
        RuleKind::Protection => "view-allowance-protection",
        RuleKind::Leave => "view-allowance-leave",
        RuleKind::Hazard => "view-allowance-hazard",
        RuleKind::Season => "view-allowance-season",
        RuleKind::Rest => "view-allowance-rest",
        RuleKind::Share => "view-allowance-share",
        RuleKind::Ceiling => "view-allowance-ceiling",
    }
}

/// What to know beside the amount.
fn notes(notes: &[&Note], words: &Words<'_>) -> Option<Block> {
    let points = notes.iter().map(|note| {
        let from = words.sourcing(&note.from);
        let says = words.prose(&note.says);
        if from.is_empty() { says } else { says.text(" (").then(from).text(")") }
    });
    let points: Vec<_> = points.collect();
    (!points.is_empty()).then(|| Block::bullets(points))
}
