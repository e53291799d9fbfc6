//! The day in order: stops, ways between them, and how long there is light.

use super::turning_back::{self, BackBy};
use crate::outing::{Stop, Wishes};
use ground::{Answer, Duration, Length};
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
    /// When the group is back at the latest; none where the sun does not rise.
    pub back_by: Option<BackBy>,
    /// How far the group goes in an hour on the level.
    #[serde(rename = "in_an_hour_mm")]
    pub in_an_hour: Length,
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
    /// The latest moment to leave it, so that the group is back in time.
    pub leave_by: Answer<Time>,
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
    /// It lasts beyond the latest moment to turn back.
    TooLateToTurnBack,
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
    let back_by = turning_back::back_by(wishes, &light);
    let mut before: Option<Time> = None;
    let mut rows = Vec::new();
    for (at, stop) in wishes.stops.iter().enumerate() {
        let called = school.sites.get(&stop.site).map_or("", |site| site.called.as_str());
        let leave_by = turning_back::leave_by(wishes, (at, called), back_by.as_ref());
        let row = row(wishes, stop, called, (before, leave_by), &light);
        before = row.until.or(Some(stop.at));
        rows.push(row);
    }
    Timetable { rows, light, back_by, in_an_hour: wishes.way_back.in_an_hour }
}

fn row(
    wishes: &Wishes,
    stop: &Stop,
    called: &str,
    (before, leave_by): (Option<Time>, Answer<Time>),
    light: &Light,
) -> Row {
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
        let too_late = |until: Time| leave_by.known().is_some_and(|latest| until > *latest);
        until
            .is_some_and(dark)
            .then_some(Trouble::AfterSunset)
            .or_else(|| until.is_some_and(too_late).then_some(Trouble::TooLateToTurnBack))
    };
    Row {
        at: stop.at,
        until,
        site: stop.site.clone(),
        called: called.to_owned(),
        plants: stop.plants.clone(),
        way,
        leave_by,
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
