//! The day in order: stops, ways between them, and how long there is light.

use crate::outing::{Stop, Wishes};
use ground::{Duration, Length};
use harvest::walk::{Leg, naismith};
use harvest::{Crossing, Position, daylight};
use jiff::civil::{DateTime, Time};
use journal::School;
use serde::Serialize;

/// The day in order.
#[derive(Clone, Debug, Serialize)]
pub struct Timetable {
    /// The stops.
    pub rows: Vec<Row>,
    /// When the sun rises and sets, by the clock of the place.
    pub light: Light,
}

/// One stop of the day.
#[derive(Clone, Debug, Serialize)]
pub struct Row {
    /// When it begins.
    pub at: Time,
    /// When it ends.
    pub until: Option<Time>,
    /// The site, by its short name.
    pub site: String,
    /// What the site is called.
    pub called: String,
    /// The plants shown there.
    pub plants: Vec<String>,
    /// How long the way there takes, by Naismith's rule.
    #[serde(rename = "way_min")]
    pub way: Option<Duration>,
    /// What is wrong with it.
    pub trouble: Option<Trouble>,
}

/// What is wrong with a stop.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Trouble {
    /// The way there takes longer than there is time.
    NoTimeForTheWay,
    /// It lasts beyond the end of the outing, or begins before its beginning.
    OutsideTheOuting,
    /// It lasts beyond sunset.
    AfterSunset,
}

/// When there is light.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Light {
    /// Nobody said where the outing is.
    NoPlace,
    /// The sun does not set that day.
    AllDay,
    /// The sun does not rise that day.
    None,
    /// It rises, sets and leaves twilight at these times.
    Day {
        /// Sunrise.
        rise: DateTime,
        /// Sunset.
        set: DateTime,
        /// The end of civil twilight, where there is one.
        dusk: Option<DateTime>,
    },
}

pub(super) fn timetable(wishes: &Wishes, school: &School) -> Timetable {
    let light = light(wishes);
    let mut before: Option<Time> = None;
    let mut rows = Vec::new();
    for stop in &wishes.stops {
        let row = row(wishes, school, stop, before, &light);
        before = row.until.or(Some(stop.at));
        rows.push(row);
    }
    Timetable { rows, light }
}

fn row(wishes: &Wishes, school: &School, stop: &Stop, before: Option<Time>, light: &Light) -> Row {
    let until = later(stop.at, stop.lasts);
    let way = stop.walk.map(|along| {
        let climb = stop.climb.unwrap_or(Length::ZERO);
        naismith(&[Leg { along, climb }])
    });
    let free = minutes_between(before.unwrap_or(wishes.from), stop.at);
    let trouble = if way.is_some_and(|way| way > free) {
        Some(Trouble::NoTimeForTheWay)
    } else if stop.at < wishes.from || until.is_none_or(|until| until > wishes.to) {
        Some(Trouble::OutsideTheOuting)
    } else {
        let dark = |until: Time| match light {
            Light::Day { set, .. } => until > set.time(),
            Light::None => true,
            Light::NoPlace | Light::AllDay => false,
        };
        until.is_some_and(dark).then_some(Trouble::AfterSunset)
    };
    let called = school.sites.get(&stop.site).map(|site| site.called.clone()).unwrap_or_default();
    Row {
        at: stop.at,
        until,
        site: stop.site.clone(),
        called,
        plants: stop.plants.clone(),
        way,
        trouble,
    }
}

/// The time of day so much later; nothing past midnight.
fn later(at: Time, lasts: Duration) -> Option<Time> {
    let minutes = jiff::SignedDuration::from_mins(lasts.minutes().ceil() as i64);
    at.checked_add(minutes).ok()
}

fn minutes_between(from: Time, to: Time) -> Duration {
    Duration::from_minutes(to.duration_since(from).as_secs() as f64 / 60.0)
}

fn light(wishes: &Wishes) -> Light {
    let Some((latitude, longitude)) = wishes.place else { return Light::NoPlace };
    let Ok(position) = Position::new(latitude, longitude) else { return Light::NoPlace };
    let Some(day) = daylight(wishes.date, position) else { return Light::NoPlace };
    let local = |crossing: Crossing| {
        crossing.at().map(|at| at.to_zoned_datetime(wishes.zone.clone()).datetime())
    };
    match (day.rise, day.set) {
        (Crossing::StaysAbove, _) | (_, Crossing::StaysAbove) => Light::AllDay,
        (rise, set) => match (local(rise), local(set)) {
            (Some(rise), Some(set)) => Light::Day { rise, set, dusk: local(day.dusk) },
            _ => Light::None,
        },
    }
}
