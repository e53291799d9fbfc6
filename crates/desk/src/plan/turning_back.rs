//! The latest moment to leave each stop, so that the group is back in time and in the light.

use super::timetable::Light;
use crate::outing::{Early, Stop, WayBack, Wishes};
use ground::{Answer, Length, Text};
use harvest::walk::{Leg, group};
use jiff::SignedDuration;
use jiff::civil::{DateTime, Time};
use serde::Serialize;

/// When the group is back at the latest, and what says so.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct BackBy {
    /// The moment.
    pub at: DateTime,
    /// Whether it is the light that says so, and not the end of the outing.
    pub before_sunset: bool,
}

/// When the group is back at the latest: at the end of the outing, or so long before sunset; none
/// where the sun does not rise.
pub(super) fn back_by(wishes: &Wishes, light: &Light) -> Option<BackBy> {
    let end = BackBy { at: wishes.date.to_datetime(wishes.to), before_sunset: false };
    match light {
        Light::None => None,
        Light::NoPlace | Light::AllDay => Some(end),
        Light::Day { set, .. } => {
            let margin = SignedDuration::from_mins(whole_minutes(wishes.way_back.before_sunset));
            let at = set.checked_sub(margin).ok()?;
            Some(if at < end.at { BackBy { at, before_sunset: true } } else { end })
        }
    }
}

/// The latest moment to leave the stop at this place of the walk.
pub(super) fn leave_by(
    wishes: &Wishes,
    (stop, called): (usize, &str),
    back_by: Option<&BackBy>,
) -> Answer<Time> {
    let Some(back_by) = back_by else {
        return Answer::refused(
            Text::new("plan-no-daylight"),
            Text::new("plan-settle-no-daylight"),
        );
    };
    let Some(legs) = way_back(&wishes.stops, stop, &wishes.way_back) else {
        let why = Text::new("plan-no-way-back").with("site", called);
        return Answer::refused(why, Text::new("plan-settle-way-back"));
    };
    let takes = group(&legs, wishes.way_back.in_an_hour);
    let latest = back_by.at.checked_sub(SignedDuration::from_mins(whole_minutes(takes)));
    match latest {
        Ok(latest) if latest.date() == wishes.date => Answer::Known(floor(latest.time())),
        _ => Answer::refused(
            Text::new("plan-way-back-too-long"),
            Text::new("plan-settle-way-back-too-long"),
        ),
    }
}

/// The legs from a stop to the end of the outing; none where one of them is not known.
fn way_back(stops: &[Stop], stop: usize, way: &WayBack) -> Option<Vec<Leg>> {
    let last = way.last.map(|(along, climb)| Leg { along, climb });
    let leg = |stop: &Stop| {
        let along = stop.walk?;
        Some(Leg { along, climb: stop.climb.unwrap_or(Length::ZERO) })
    };
    let is_last = stop + 1 == stops.len();
    match (last, way.early) {
        (Some(last), _) if is_last => Some(vec![last]),
        (_, Some(Early::SameWay)) => stops.get(..=stop)?.iter().map(leg).collect(),
        (Some(last), Some(Early::Onward)) => {
            let left = stops.get(stop + 1..)?.iter().map(leg);
            left.chain([Some(last)]).collect()
        }
        _ => None,
    }
}

/// Whole minutes, rounded up: a way is never timed too short.
fn whole_minutes(takes: ground::Duration) -> i64 {
    takes.minutes().ceil() as i64
}

/// The time of day without its seconds.
fn floor(time: Time) -> Time {
    time.with().second(0).subsec_nanosecond(0).build().unwrap_or(time)
}
