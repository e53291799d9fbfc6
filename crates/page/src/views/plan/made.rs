//! What is made: what goes in, what comes out, how strong it is, how it keeps, and what the pot means
//! for a grown-up, whoever comes.

use super::super::{make, serving};
use super::deeper;
use crate::{Anchor, Block, Column, Details, Level, NoticeKind, Prose, Table, Words};
use desk::{MakePlan, Plan};
use dose::{Decision, Held, LimitUse, Passed};
use ground::{Answer, Text, Unit};
use prepare::Brew;

pub(super) fn makes(plan: &Plan, words: &Words<'_>) -> Vec<Block> {
    plan.makes.iter().flat_map(|wish| one(plan, wish, words)).collect()
}

fn one(plan: &Plan, wish: &MakePlan, words: &Words<'_>) -> Vec<Block> {
    let of = Text::new("view-plan-made-of")
        .with("part", Text::new(format!("part-{}", wish.part.word())))
        .with("count", wish.servings_a_day)
        .with("days", wish.days);
    let of = called(plan, wish).then(words.prose(&of));
    let heading = Block::heading(Level::Part, Prose::new().said(&wish.called));
    let mut blocks = vec![heading, Block::Para(of)];
    blocks.extend(withheld(wish, words));
    match &wish.brew {
        Answer::Known(known) => blocks.extend(brew(&wish.name, known, words)),
        Answer::Refused(refusal) => blocks.push(words.refusal(refusal)),
    }
    blocks.extend(
        wish.plain_adult.iter().flat_map(|adult| for_a_grown_up((adult, &wish.as_supposed), words)),
    );
    blocks
}

/// That the pot is withheld even from a grown-up of whom nothing is known that matters: it stands
/// before the recipe.
pub(super) fn withheld(wish: &MakePlan, words: &Words<'_>) -> Option<Block> {
    let adult = wish.plain_adult.as_ref()?;
    let withheld = adult.outcome == dose::Outcome::Withhold;
    let says = words.para(&Text::new("view-plan-pot-withheld"));
    withheld.then(|| words.notice(NoticeKind::DoNot, [says]))
}

fn called(plan: &Plan, wish: &MakePlan) -> Prose {
    super::called(plan, &wish.plant)
}

/// The pot: a recipe card, with its workings on demand.
fn brew(wish: &str, brew: &Brew, words: &Words<'_>) -> Vec<Block> {
    let working = words.working(&Anchor::new(&format!("pot-{wish}")), &brew.working);
    card(brew, words).into_iter().chain([working]).collect()
}

/// The pot as a recipe card: what goes in, what comes out, what is done, how it keeps.
pub(super) fn card(brew: &Brew, words: &Words<'_>) -> Vec<Block> {
    let steps = Block::Details(Details {
        anchor: None,
        summary: words.word("view-make-steps").into(),
        open: true,
        blocks: without_heads(make::steps(&brew.steps, words)),
    });
    let out = [Block::Facts(make::comes_out(brew, words)), make::helpings(brew, words)];
    out.into_iter()
        .chain(deeper(deeper(make::strength(brew, words))))
        .chain(deeper(deeper(make::keeping(&brew.keeping, words))))
        .chain(make::notes(&brew.notes, words))
        .chain([steps])
        .collect()
}

fn without_heads(blocks: Vec<Block>) -> Vec<Block> {
    blocks.into_iter().filter(|block| !matches!(block, Block::Heading(_))).collect()
}

/// What the pot alone means for a grown-up: the outcome, why, and every limit, history and
/// disagreement side by side. It says nothing of anybody who comes.
pub(super) fn for_a_grown_up(
    (decision, as_supposed): (&Decision, &[Held]),
    words: &Words<'_>,
) -> Vec<Block> {
    let head = words.heading(Level::Point, &Text::new("view-plan-adult"));
    let says = Text::new("view-plan-adult-says").with("outcome", decision.outcome.text());
    let reasons = &decision.sealed.reasons;
    let whys = reasons.iter().map(|reason| serving::why(reason, words));
    let whys = (!reasons.is_empty()).then(|| Block::bullets(whys));
    let how_much = |id: &'static str, held: &[Held]| {
        let all = passed(held).into_iter();
        all.filter_map(|passed| by_how_much(id, &passed, words)).collect::<Vec<_>>()
    };
    let limits = limits(&decision.sealed.held, words);
    [head, words.para(&says)]
        .into_iter()
        .chain(how_much("view-plan-passes", &decision.sealed.held))
        .chain(how_much("view-plan-supposed", as_supposed))
        .chain(whys)
        .chain(limits)
        .chain(workings(decision, words))
        .collect()
}

/// Of each substance and window the limits that bind and are passed, the strictest first.
fn passed(held: &[Held]) -> Vec<Vec<&Held>> {
    let passed = |held: &&Held| held.used == LimitUse::Screen && held.passed == Passed::Above;
    let mut passed: Vec<_> = held.iter().filter(passed).collect();
    passed.sort_by_key(|held| (&held.substance, held.window, held.limit_g));
    let same = |a: &&Held, b: &&Held| a.substance == b.substance && a.window == b.window;
    passed.chunk_by(same).map(<[&Held]>::to_vec).collect()
}

/// The whole doubt about a sum that passes limits: even the least that it may be is said.
fn by_how_much(id: &str, passed: &[&Held], words: &Words<'_>) -> Option<Block> {
    let held = passed.first()?;
    let spread = held.spread_g?;
    let mg = |grams: ground::Finite| grams.get() * 1000.0;
    let limits = passed.iter().filter_map(|held| held.limit_g);
    let limits: Vec<_> =
        limits.map(|limit| words.amount(mg(limit), Unit::Milligram).plain()).collect();
    let text = Text::new(id)
        .with("substance", held.substance.0.replace('-', " "))
        .amount("middle", mg(spread.p50), Unit::Milligram)
        .amount("low", mg(spread.p5), Unit::Milligram)
        .amount("high", mg(spread.p95), Unit::Milligram)
        .amount("least", mg(spread.least), Unit::Milligram)
        .with("count", limits.len())
        .with("limits", words.catalogue.list(&limits))
        .with("window", Text::new(window(held.window)));
    Some(words.para(&text))
}

fn window(window: dose::Window) -> &'static str {
    match window {
        dose::Window::Serving => "view-plan-in-a-serving",
        dose::Window::Day => "view-plan-in-a-day",
        dose::Window::Week => "view-plan-in-a-week",
        dose::Window::Lifetime => "view-plan-in-a-lifetime",
        dose::Window::Product => "view-plan-in-a-product",
    }
}

/// How the sums of a decision came about.
pub(super) fn workings(decision: &Decision, words: &Words<'_>) -> Vec<Block> {
    let name = |at: usize| format!("{}-{}-{at}", decision.batch, decision.person);
    let each = decision.sealed.workings.iter().enumerate();
    each.map(|(at, working)| words.working(&Anchor::new(&name(at)), working)).collect()
}

/// Every limit beside what would be taken; what was superseded stands as history.
pub(super) fn limits(held: &[Held], words: &Words<'_>) -> Option<Block> {
    let columns = [
        Column::words(words.word("view-plan-limit-of")),
        Column::numbers(words.word("view-plan-limit-taken")),
        Column::numbers(words.word("view-plan-limit-most")),
        Column::words(words.word("view-plan-limit-stands")),
        Column::words(words.word("view-plan-limit-who")),
    ];
    (!held.is_empty()).then(|| {
        Block::Table(Table {
            caption: words.word("view-plan-limits").into(),
            columns: columns.into(),
            rows_have_heads: true,
            rows: binding_first(held).into_iter().map(|held| limit(held, words)).collect(),
        })
    })
}

/// What binds, then what is shown, then history.
fn binding_first(held: &[Held]) -> Vec<&Held> {
    let mut held: Vec<&Held> = held.iter().collect();
    held.sort_by_key(|held| held.used);
    held
}

fn limit(held: &Held, words: &Words<'_>) -> Vec<Prose> {
    let mg = |grams: Option<ground::Finite>| match grams {
        Some(grams) => words.amount(grams.get() * 1000.0, Unit::Milligram),
        None => words.word("unknown").into(),
    };
    let stands = match held.passed {
        Passed::Within => Prose::from(words.word("view-plan-limit-within")),
        Passed::Above => Prose::new().strong(&words.word("view-plan-limit-above")),
        Passed::Unknown => words.word("view-plan-limit-unknown").into(),
        Passed::NotHeld => words.word("view-plan-limit-not-held").into(),
    };
    let used = words.word(match held.used {
        LimitUse::Screen => "view-plan-limit-binds",
        LimitUse::Legal => "view-plan-limit-legal",
        LimitUse::Guidance => "view-plan-limit-guidance",
        LimitUse::Reference => "view-plan-limit-shown",
        LimitUse::History => "view-plan-limit-history",
        LimitUse::None => "view-plan-limit-none",
    });
    vec![
        Prose::new().said(&held.substance.0.replace('-', " ")),
        mg(held.sum_g),
        mg(held.limit_g),
        stands.text("; ").text(&used),
        words.sourcing(&held.from).text(", ").said(&held.date),
    ]
}
