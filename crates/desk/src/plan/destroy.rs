//! When the sealed list is destroyed.

use super::MakePlan;
use crate::outing::Wishes;
use ground::{Answer, Duration};
use jiff::civil::Date;
use jiff::{SignedDuration, ToSpan};

/// How long after the last of it may be eaten: some poisons are silent for hours, and somebody may
/// ask later still. Policy of this project.
const DAYS_AFTER: i32 = 30;

/// The last day on which the sealed list is kept: 30 days after the last serving planned, or after
/// the date that the last jar taken home is good for. Refused where it is not known how a jar keeps.
pub(super) fn keep_until(wishes: &Wishes, makes: &[MakePlan]) -> Answer<Date> {
    let mut last = wishes.date;
    for (make, wish) in makes.iter().filter_map(|m| Some((m, wishes.makes.get(&m.name)?))) {
        let served = days_later(wish.on, i64::from(make.days.saturating_sub(1)));
        let jar = match (&make.brew, wish.taken_home) {
            (_, false) => None,
            (Answer::Refused(refusal), true) => return Answer::Refused(refusal.clone()),
            (Answer::Known(brew), true) => match &brew.keeping {
                Answer::Known(keeping) => Some(days_later(wish.on, whole_days(keeping.most))),
                Answer::Refused(refusal) => return Answer::Refused(refusal.clone()),
            },
        };
        last = last.max(served).max(jar.unwrap_or(last));
    }
    Answer::Known(last.saturating_add(DAYS_AFTER.days()))
}

fn whole_days(lasts: Duration) -> i64 {
    (lasts.minutes() / 1440.0).ceil() as i64
}

fn days_later(day: Date, days: i64) -> Date {
    day.saturating_add(SignedDuration::from_hours(24 * days))
}
