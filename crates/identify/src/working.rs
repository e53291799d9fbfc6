//! How the bar came about: every heavy rival, every group, every look, down to the cells.

use crate::rival::{Rival, RivalKind};
use crate::testimony::Testimony;
use crate::weighing::{Scales, Trial, Weighed};
use crate::{Cell, Rank};
use ground::{Formula, Place, Shown, Sourcing, Standing, Text, Unit, Working};

/// Rivals shown one by one in a working; the others are summed.
const SHOWN: usize = 3;

/// The working of what is left of the bar.
pub(crate) fn bar(trial: &Trial<'_>, scales: &Scales<'_>, testimonies: &[Testimony]) -> Working {
    let mut heavy: Vec<(usize, f64)> =
        scales.contributions().map(|(_, part)| part).enumerate().collect();
    heavy.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    let light: f64 = heavy.iter().skip(SHOWN).map(|(_, part)| part).sum();
    let count = heavy.len().saturating_sub(SHOWN);
    let shown = heavy.iter().take(SHOWN).filter_map(|(at, part)| {
        Some(contribution(trial, scales, testimonies, *at, scales.rivals.get(*at)?, *part))
    });
    let mut from: Vec<Working> = shown.collect();
    if count > 0 {
        let why = Text::new("identify-working-others-why");
        let what = Text::new("identify-working-others").with("count", count);
        from.push(Working::assumed(what, number(light), why));
    }
    let says = "Σ over rivals of prior × harm × e^(−L)";
    Working::computed(
        Text::new("identify-working-bar").taxon("taxon", &trial.taxon.name),
        number(scales.left()),
        Formula::plain("identify.bar", says),
        from,
    )
}

fn contribution(
    trial: &Trial<'_>,
    scales: &Scales<'_>,
    testimonies: &[Testimony],
    at: usize,
    rival: &Rival,
    part: f64,
) -> Working {
    let weight = Working::fact(
        Text::new("identify-working-weight"),
        number(rival.weight),
        Sourcing::bare(Standing::Policy),
    );
    let groups = scales.groups();
    let groups = groups.filter_map(|group| {
        let first = group.first()?;
        let looks = group.iter().map(|w| character(trial, testimonies, w, at, rival));
        Some(Working::computed(
            Text::new("identify-working-group").with("group", first.character.group.as_str()),
            number(scales.group(&first.character.group, at)),
            Formula::plain("identify.group", "best of what favours × all that is contrary"),
            looks.collect(),
        ))
    });
    Working::computed(
        name(rival),
        number(part),
        Formula::plain("identify.contribution", "prior × harm × Π over groups"),
        std::iter::once(weight).chain(groups).collect(),
    )
}

fn name(rival: &Rival) -> Text {
    let id = match rival.kind {
        RivalKind::Listed(_) => "identify-working-rival",
        RivalKind::NoSheet => "identify-working-no-sheet",
        RivalKind::Cousin => "identify-working-cousin",
    };
    Text::new(id).taxon("taxon", &rival.name)
}

/// How many times likelier what was read of a character is of a rival than of the target.
fn character(
    trial: &Trial<'_>,
    testimonies: &[Testimony],
    weighed: &Weighed<'_>,
    at: usize,
    rival: &Rival,
) -> Working {
    let id = weighed.character.id.as_str();
    let read = testimonies.iter().find(|testimony| testimony.column == weighed.column);
    let looks = read.into_iter().flat_map(|testimony| looks(id, testimony));
    let own = said(trial, &trial.taxon.name, weighed.column);
    let other = match rival.kind {
        RivalKind::Listed(_) => said(trial, &rival.name, weighed.column),
        _ => None,
    };
    Working::computed(
        Text::new("identify-working-character").with("character", id),
        number(weighed.factor(at)),
        Formula::plain("identify.look", "q of the rival ÷ q of the target, misreading included"),
        looks.chain(own).chain(other).collect(),
    )
}

fn looks<'a>(id: &'a str, testimony: &'a Testimony) -> impl Iterator<Item = Working> + 'a {
    testimony.readings.iter().map(move |reading| {
        Working::input(
            Text::new("identify-working-look").with("reader", reading.reader.as_str()),
            Shown::Words(crate::say::seen(&reading.seen)),
            Place::entry("look", &reading.reader, id),
        )
    })
}

/// What a sheet says of a character, with its sources.
fn said(trial: &Trial<'_>, taxon: &str, column: usize) -> Option<Working> {
    let matrix = trial.judge.matrix();
    let row = matrix.row(taxon)?;
    let cell = matrix.at(row, column)?;
    Some(Working::fact(
        Text::new(from(cell.from)).taxon("taxon", taxon),
        Shown::Words(crate::say::value(&cell.value)),
        sourcing(cell),
    ))
}

fn from(rank: Rank) -> &'static str {
    match rank {
        Rank::Species => "identify-working-sheet",
        Rank::Genus => "identify-working-genus",
        Rank::Family => "identify-working-family",
    }
}

fn sourcing(cell: &Cell) -> Sourcing {
    Sourcing { standing: cell.standing, sources: cell.sources.clone() }
}

fn number(value: f64) -> Shown {
    Shown::amount(value, Unit::One)
}
