//! The day in order, and what to bring.

use crate::{Block, Column, Prose, Table, Words};
use desk::{Light, Plan, Row, Store, Trouble};
use ground::{Answer, Text, Unit};
use jiff::civil::Time;

/// A time of day by the clock, to the minute.
pub(super) fn clock(time: Time) -> String {
    format!("{:02}:{:02}", time.hour(), time.minute())
}

pub(super) fn timetable(plan: &Plan, words: &Words<'_>) -> Vec<Block> {
    let columns = [
        "view-plan-at",
        "view-day-leave-by",
        "view-plan-where",
        "view-plan-shown",
        "view-plan-way",
    ];
    let table = Table {
        caption: words.word("view-plan-stops").into(),
        columns: columns.map(|id| Column::words(words.word(id))).into(),
        rows_have_heads: true,
        rows: plan.timetable.rows.iter().map(|row| stop(plan, row, words)).collect(),
    };
    let table = (!plan.timetable.rows.is_empty()).then_some(Block::Table(table));
    let light = words.para(&light(&plan.timetable.light));
    table.into_iter().chain(back_by(plan, words)).chain([light]).collect()
}

fn stop(plan: &Plan, row: &Row, words: &Words<'_>) -> Vec<Prose> {
    let until = row.until.map_or(String::new(), |until| format!("–{}", clock(until)));
    let plants = row.plants.iter().map(|taxon| {
        let known = plan.plants.iter().find(|plant| plant.taxon == *taxon);
        known.map_or_else(|| taxon.clone(), |plant| plant.common.clone())
    });
    let way =
        row.way.map(|way| words.amount(way.minutes().ceil(), Unit::Minute)).unwrap_or_default();
    let trouble = row.trouble.map(|trouble| {
        Prose::new().text(" ").strong(&words.word(match trouble {
            Trouble::NoTimeForTheWay => "view-plan-no-time",
            Trouble::OutsideTheOuting => "view-plan-outside",
            Trouble::AfterSunset => "view-plan-dark",
            Trouble::TooLateToTurnBack => "view-plan-too-late",
        }))
    });
    vec![
        Prose::new().number(&format!("{}{until}", clock(row.at))),
        match &row.leave_by {
            Answer::Known(at) => Prose::new().strong(&clock(*at)),
            Answer::Refused(_) => words.word("view-day-not-known").into(),
        },
        Prose::new().said(&row.called),
        Prose::new().said(&plants.collect::<Vec<_>>().join(", ")),
        way.then(trouble.unwrap_or_default()),
    ]
}

/// By what time the group is back, and what the last moments to leave are worked out with.
fn back_by(plan: &Plan, words: &Words<'_>) -> Option<Block> {
    if plan.timetable.rows.is_empty() {
        return None;
    }
    let Some(back) = &plan.timetable.back_by else {
        return Some(words.para(&Text::new("view-day-back-by-open")));
    };
    let id = if back.before_sunset { "view-day-back-by-sunset" } else { "view-day-back-by-end" };
    let pace = plan.timetable.in_an_hour.m() / 1000.0;
    let text = Text::new(id).with("time", clock(back.at.time()));
    Some(words.para(&text.amount("pace", pace, Unit::Kilometre)))
}

/// When there is light.
pub(super) fn light(light: &Light) -> Text {
    match light {
        Light::NoPlace => Text::new("view-plan-light-no-place"),
        Light::AllDay => Text::new("view-plan-light-all-day"),
        Light::None => Text::new("view-plan-light-none"),
        Light::Day { rise, set, dusk } => {
            let id = if dusk.is_some() { "view-plan-light-dusk" } else { "view-plan-light" };
            let text =
                Text::new(id).with("rise", clock(rise.time())).with("set", clock(set.time()));
            dusk.iter().fold(text, |text, dusk| text.with("dusk", clock(dusk.time())))
        }
    }
}

/// What to bring: things first, then what the recipes take.
pub(super) fn kit(plan: &Plan, words: &Words<'_>) -> Vec<Block> {
    let stores: Vec<_> = plan.kit.stores.iter().map(|store| bring(store, words)).collect();
    let things = (!plan.kit.things.is_empty()).then(|| words.ticks(&plan.kit.things));
    let stores = (!stores.is_empty()).then_some(Block::Ticks(stores));
    things.into_iter().chain(stores).collect()
}

fn bring(store: &Store, words: &Words<'_>) -> Prose {
    let amount = match store.volume {
        Some(volume) => words.amount(volume.ml(), Unit::Millilitre),
        None => words.amount(store.mass.g(), Unit::Gram),
    };
    let what = match &store.name {
        Some(name) => Prose::new().said(name),
        None => words.word(&format!("view-make-{}", store.what.word())).into(),
    };
    what.text(", ").then(amount)
}
