//! A preparation: what goes in, what is done, what comes out, how strong it is, how it keeps.

use crate::{
    Anchor, Block, Column, Details, Fact, Kind, Level, NoticeKind, Page, Prose, Rounding, Table,
    Words, numerals,
};
use desk::{MakeReply, PotPlan};
use ground::{Answer, PerVolume, Text, Unit};
use prepare::{Brew, Done, Helping, Keeping, KitchenNote, Span, What, Yield};

pub(super) fn page(reply: &MakeReply, words: &Words<'_>) -> Page {
    let brew = match &reply.brew {
        Answer::Known(brew) => brew,
        Answer::Refused(refusal) => {
            let page = words.page(Kind::Screen, &Text::new("view-make-open"));
            return page.with([words.refusal(refusal)]);
        }
    };
    let title = Text::new("view-make-title")
        .with("name", brew.name.as_str())
        .with("state", Text::new(format!("view-make-{}", brew.state.word())));
    words
        .page(Kind::Screen, &title)
        .with([Block::Facts(comes_out(brew, words))])
        .with([helpings(brew, words)])
        .with(steps(&brew.steps, words))
        .with(strength(brew, words))
        .with(keeping(&brew.keeping, words))
        .with(notes(&brew.notes, words))
        .with([lost(brew, words), words.working(&Anchor::new(&brew.recipe), &brew.working)])
}

/// What comes of each pot of an outing.
pub(super) fn pots(pots: &[PotPlan], words: &Words<'_>) -> Page {
    let page = words.page(Kind::Screen, &Text::new("view-pots-title"));
    let pot = |pot: &PotPlan| {
        let heading = Block::heading(Level::Section, Prose::new().said(&pot.called));
        let says = match &pot.brew {
            Answer::Known(brew) => Block::Facts(comes_out(brew, words)),
            Answer::Refused(refusal) => words.refusal(refusal),
        };
        [heading, says]
    };
    page.with(pots.iter().flat_map(pot))
}

/// What comes out, and in how many servings.
pub(super) fn comes_out(brew: &Brew, words: &Words<'_>) -> Vec<Fact> {
    let made = match brew.made {
        Yield::Volume(span) => spanned(span, |v| v.ml(), Unit::Millilitre, words),
        Yield::Mass(span) => spanned(span, |m| m.g(), Unit::Gram, words),
    };
    let one = brew.portion.one;
    let size = match one.volume {
        Some(volume) => words.amount(volume.ml(), Unit::Millilitre).plain(),
        None => words.amount(one.mass.g(), Unit::Gram).plain(),
    };
    let servings =
        Text::new("view-make-servings").with("count", brew.portion.servings).with("size", size);
    let a_day = brew.portion.times_a_day.map(|times| {
        let text = Text::new("view-make-times").with("count", times);
        words.fact(&Text::new("view-make-a-day"), words.prose(&text))
    });
    let form = words.word(&format!("form-{}", brew.form.word()));
    let facts = [
        words.fact(&Text::new("view-make-form"), form),
        words.fact(&Text::new("view-make-yield"), made),
        words.fact(&Text::new("view-make-handed"), words.prose(&servings)),
    ];
    facts.into_iter().chain(a_day).collect()
}

/// An amount, with its ends where they are seen to differ from it.
pub(super) fn spanned<T: Copy>(
    span: Span<T>,
    number: impl Fn(T) -> f64,
    unit: Unit,
    words: &Words<'_>,
) -> Prose {
    let [low, middle, high] = [span.low, span.middle, span.high].map(number);
    let said = words.amount(middle, unit);
    let [first, read, last] =
        [low, middle, high].map(|value| numerals(value, unit, Rounding::Nearest));
    if first == read && read == last {
        return said;
    }
    let range = words.catalogue.range(low, high, unit);
    let text = Text::new("view-make-about").with("middle", said.plain()).with("range", range);
    words.prose(&text)
}

/// What goes in, weighed or measured, and in the measures of the kitchen where one was named.
pub(super) fn helpings(brew: &Brew, words: &Words<'_>) -> Block {
    let kitchen = brew.amounts.iter().any(|helping| helping.kitchen.is_some());
    let mut columns = vec![
        Column::words(words.word("view-make-what")),
        Column::words(words.word("view-make-amount")),
    ];
    if kitchen {
        columns.push(Column::words(words.word("view-make-kitchen")));
    }
    Block::Table(Table {
        caption: words.word("view-make-goes-in").into(),
        columns,
        rows_have_heads: true,
        rows: brew.amounts.iter().map(|helping| row(helping, words)).collect(),
    })
}

fn row(helping: &Helping, words: &Words<'_>) -> Vec<Prose> {
    let what = match &helping.name {
        Some(name) => Prose::new().said(name),
        None => words.word(&format!("view-make-{}", helping.what.word())).into(),
    };
    let strength = helping.strength.map(|strength| {
        Prose::new().text(", ").then(words.amount(strength.percent(), Unit::PercentVolume))
    });
    let amount = match helping.volume {
        Some(volume) if helping.what == What::Spirit => poured(helping, volume.ml(), words),
        Some(volume) => words.amount(volume.ml(), Unit::Millilitre),
        None => spanned(helping.mass, |mass| mass.g(), Unit::Gram, words),
    };
    let kitchen = helping.kitchen.map(|kitchen| words.prose(&kitchen.text()));
    vec![what.then(strength.unwrap_or_default()), amount, kitchen.unwrap_or_default()]
}

/// Spirit, and how it is let down from the one in the bottle.
fn poured(helping: &Helping, ml: f64, words: &Words<'_>) -> Prose {
    let volume = words.amount(ml, Unit::Millilitre);
    let Some(pour) = helping.pour.filter(|pour| pour.water_volume.ml() >= 0.5) else {
        return volume;
    };
    let text = Text::new("view-make-pour")
        .amount("stock", pour.stock_volume.ml(), Unit::Millilitre)
        .amount("water", pour.water_volume.ml(), Unit::Millilitre);
    volume.text(": ").then(words.prose(&text))
}

pub(super) fn steps(steps: &[Done], words: &Words<'_>) -> Vec<Block> {
    let told = steps.iter().map(|step| words.prose(&step.text));
    vec![words.heading(Level::Section, &Text::new("view-make-steps")), Block::numbered(told)]
}

/// How strong it is: herb, alcohol, sugar.
pub(super) fn strength(brew: &Brew, words: &Words<'_>) -> Vec<Block> {
    let alcohol = brew.alcohol.known().filter(|span| span.high.percent() > 0.0);
    let alcohol = alcohol.map(|span| {
        let said = spanned(*span, |strength| strength.percent(), Unit::PercentVolume, words);
        words.fact(&Text::new("view-make-alcohol"), said)
    });
    let sugar = (brew.sugar.degrees() > 0.0).then(|| {
        let said = words.amount(brew.sugar.degrees(), Unit::PercentMass);
        words.fact(&Text::new("view-make-sugar-share"), said)
    });
    let facts: Vec<_> = [
        per_volume("view-make-stands-for", &brew.stands_for, words),
        per_volume("view-make-solids", &brew.solids, words),
        in_one(brew, words),
        alcohol,
        sugar,
    ]
    .into_iter()
    .flatten()
    .collect();
    if facts.is_empty() {
        return Vec::new();
    }
    vec![words.heading(Level::Section, &Text::new("view-make-strength")), Block::Facts(facts)]
}

/// Grams that 100 ml stand for; of a dish there is nothing to say.
fn per_volume(id: &str, of: &Answer<Span<PerVolume>>, words: &Words<'_>) -> Option<Fact> {
    let span = of.known()?;
    Some(words.fact(&Text::new(id), spanned(*span, |per| per.0, Unit::Gram, words)))
}

/// The herb in one serving.
fn in_one(brew: &Brew, words: &Words<'_>) -> Option<Fact> {
    let herb = brew.portion.one.composition.herb.g();
    let said = words.amount(herb, Unit::Gram);
    (herb > 0.0).then(|| words.fact(&Text::new("view-make-in-one"), said))
}

/// How it keeps, and why.
pub(super) fn keeping(keeping: &Answer<Keeping>, words: &Words<'_>) -> Vec<Block> {
    let heading = words.heading(Level::Section, &Text::new("view-make-keeping"));
    let keeping = match keeping {
        Answer::Known(keeping) => keeping,
        Answer::Refused(refusal) => return vec![heading, words.refusal(refusal)],
    };
    let why =
        Prose::new().said(&keeping.why).text(" (").then(words.sourcing(&keeping.from)).text(")");
    let facts = [
        ("view-make-kept", words.prose(&keeping.text())),
        ("view-make-class", words.prose(&keeping.class_text())),
        ("view-make-why", why),
    ];
    let facts = facts.into_iter().map(|(id, said)| words.fact(&Text::new(id), said));
    vec![heading, Block::Facts(facts.collect())]
}

/// What to know about pot, fire and spirit.
pub(super) fn notes(notes: &[KitchenNote], words: &Words<'_>) -> Option<Block> {
    let points: Vec<_> = notes
        .iter()
        .map(|note| {
            Prose::new().said(&note.says).text(" (").then(words.sourcing(&note.from)).text(")")
        })
        .collect();
    (!points.is_empty()).then(|| words.notice(NoticeKind::Caution, [Block::bullets(points)]))
}

/// What does not come out, on demand.
fn lost(brew: &Brew, words: &Words<'_>) -> Block {
    let losses = &brew.losses;
    let weight = |id: &str, grams: f64| {
        let said = words.amount(grams, Unit::Gram);
        (grams > 0.0).then(|| words.fact(&Text::new(id), said))
    };
    let facts = [
        weight("view-make-steam", losses.steam.g()),
        weight("view-make-held", losses.held.mass().g()),
        weight("view-make-spent", losses.spent.g()),
        weight("view-make-set-aside", losses.set_aside.mass().g()),
    ];
    let facts: Vec<_> = facts.into_iter().flatten().collect();
    let blocks = if facts.is_empty() {
        vec![words.para(&Text::new("list-none"))]
    } else {
        vec![Block::Facts(facts)]
    };
    let summary = words.word("view-make-lost").into();
    Block::Details(Details { anchor: None, summary, open: false, blocks })
}
