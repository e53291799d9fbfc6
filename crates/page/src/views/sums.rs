//! A small sum: its results, and what to know about them.

use crate::number::fixed;
use crate::{Block, Fact, Kind, Page, Prose, Words, numerals};
use desk::{Sum, SumReply, SumResult};
use ground::{Answer, Shown, Text, Unit};

pub(super) fn page(reply: &SumReply, words: &Words<'_>) -> Page {
    let known: Vec<_> = reply.results.iter().filter_map(|result| fact(result, words)).collect();
    let refused = reply.results.iter().filter_map(|result| match &result.value {
        Answer::Known(_) => None,
        Answer::Refused(refusal) => Some(words.refusal(refusal)),
    });
    let mut blocks = if known.is_empty() { Vec::new() } else { vec![Block::Facts(known)] };
    blocks.extend(refused);
    if !reply.notes.is_empty() {
        blocks.push(words.bullets(&reply.notes));
    }
    words.page(Kind::Screen, &title(&reply.asked)).with(blocks)
}

/// What was asked, in a line.
fn title(asked: &Sum) -> Text {
    let said = |id: &str, parts: &[(&str, &dyn ToString)]| {
        parts.iter().fold(Text::new(id), |text, (name, value)| text.with(name, value.to_string()))
    };
    match asked {
        Sum::Alcohol { strength, volume: None, .. } => {
            said("sums-of-alcohol", &[("strength", strength)])
        }
        Sum::Alcohol { strength, volume: Some(volume), .. } => {
            said("sums-of-alcohol-in", &[("strength", strength), ("volume", volume)])
        }
        Sum::Dilute { from, to, volume } => {
            said("sums-of-dilute", &[("from", from), ("to", to), ("volume", volume)])
        }
        Sum::Sugar { to, liquid, .. } => said("sums-of-sugar", &[("to", to), ("liquid", liquid)]),
        Sum::Dry { herb, from, to } => {
            said("sums-of-dry", &[("herb", herb), ("from", from), ("to", to)])
        }
        Sum::Measure { said: measure, .. } => said("sums-of-measure", &[("said", measure)]),
        Sum::Daylight { on, latitude, longitude, zone } => Text::new("sums-of-daylight")
            .with("day", *on)
            .with("place", place(*latitude, *longitude))
            .with("zone", zone.as_str()),
        Sum::Walk { legs } => Text::new("sums-of-walk").with("legs", legs.len()),
        Sum::DegreeDays { days, base, .. } => {
            Text::new("sums-of-degree-days").with("days", days.len()).with("base", base.to_string())
        }
        Sum::Survey { plots, of } => {
            Text::new("sums-of-survey").with("plots", plots.len()).with("of", *of)
        }
    }
}

/// A place, such as `53.35° N, 6.26° W`.
fn place(latitude: f64, longitude: f64) -> Text {
    let degrees = |value: f64| value.abs().to_string();
    let north = if latitude < 0.0 { "sums-south" } else { "sums-north" };
    let east = if longitude < 0.0 { "sums-west" } else { "sums-east" };
    Text::new("sums-place")
        .with("latitude", Text::new(north).with("degrees", degrees(latitude)))
        .with("longitude", Text::new(east).with("degrees", degrees(longitude)))
}

fn fact(result: &SumResult, words: &Words<'_>) -> Option<Fact> {
    let value = match result.value.known()? {
        Shown::Amount(value, Unit::Minute) => Prose::new().number(&time(value.get(), words)),
        Shown::Amount(value, unit) => {
            let number = number(value.get(), *unit);
            Prose::new().number(&words.catalogue.with_unit(number, value.get(), *unit))
        }
        other => words.shown(other),
    };
    Some(words.fact(&result.what, value))
}

/// The number of a sum is shown more finely than that of a plan: nothing doubtful went into it.
fn number(value: f64, unit: Unit) -> String {
    let places = match unit {
        Unit::GramPerMillilitre => 4,
        Unit::One if value.abs() >= 100.0 => 0,
        Unit::One | Unit::Kilometre => 2,
        Unit::Metre => 0,
        _ => 1,
    };
    let smallest = (0..places).fold(1.0, |step, _| step / 10.0);
    if value != 0.0 && value.abs() < smallest {
        return numerals(value, unit, crate::Rounding::Nearest);
    }
    fixed(value, places)
}

/// Minutes, as hours and minutes from an hour up.
fn time(minutes: f64, words: &Words<'_>) -> String {
    let minutes = minutes.round();
    let hours = (minutes / 60.0).floor();
    let text = Text::new(if hours > 0.0 { "sums-hours" } else { "sums-minutes" });
    let text = text.with("hours", fixed(hours, 0));
    words.catalogue.say(&text.with("minutes", fixed(minutes - 60.0 * hours, 0)))
}
