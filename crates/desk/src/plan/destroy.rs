//! When what people said of their health is destroyed.

use super::MakePlan;
use crate::outing::{Make, Wishes};
use ground::{Answer, Duration};
use jiff::civil::Date;
use jiff::{SignedDuration, ToSpan};
use journal::School;

/// How long after the last of it may be eaten: some poisons are silent for hours, and somebody may
/// ask later still. Policy of this project.
const DAYS_AFTER: i32 = 30;

/// The last day on which answers and the sealed list are kept: 30 days after the last serving, or
/// after the date that the last jar taken home is good for. Refused where nobody knows how a jar
/// keeps.
pub(super) fn keep_until(wishes: &Wishes, school: &School, makes: &[MakePlan]) -> Answer<Date> {
    let mut last = wishes.date;
    for (plan, make) in makes.iter().filter_map(|m| Some((m, wishes.makes.get(&m.name)?))) {
        let had = last_had(make, school);
        last = last.max(had);
        if goes_home(make, school) {
            let keeping = match &plan.brew {
                Answer::Known(brew) => &brew.keeping,
                Answer::Refused(refusal) => return Answer::Refused(refusal.clone()),
            };
            match keeping {
                Answer::Known(keeping) => {
                    last = last.max(days_later(had, whole_days(keeping.most)))
                }
                Answer::Refused(refusal) => return Answer::Refused(refusal.clone()),
            }
        }
    }
    Answer::Known(last.saturating_add(DAYS_AFTER.days()))
}

/// The last day on which a dish is known to be had or made.
fn last_had(make: &Make, school: &School) -> Date {
    let batches = school.batches.values().filter(|(_, batch)| batch.make == make.name);
    let made = batches.filter_map(|(at, _)| at.map(|at| at.date()));
    made.fold(days_later(make.on, i64::from(make.days.saturating_sub(1))), Date::max)
}

fn goes_home(make: &Make, school: &School) -> bool {
    let of_it = |batch: &String| {
        school.batches.get(batch).is_some_and(|(_, batch)| batch.make == make.name)
    };
    make.taken_home || school.servings.iter().any(|(_, s)| s.taken_home && of_it(&s.batch))
}

fn whole_days(lasts: Duration) -> i64 {
    (lasts.minutes() / 1440.0).ceil() as i64
}

fn days_later(day: Date, days: i64) -> Date {
    day.saturating_add(SignedDuration::from_hours(24 * days))
}
