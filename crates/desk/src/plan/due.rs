//! What comes after the day: acts of a recipe that wait for hours or weeks, and the last day of what
//! was made.

use super::MakePlan;
use super::questions::{About, OpenQuestion};
use crate::outing::{Make, Wishes};
use ground::{Answer, Duration, Text};
use herbal::Herbal;
use jiff::SignedDuration;
use jiff::civil::{Date, DateTime};
use journal::School;
use prepare::{Brew, Step};
use serde::Serialize;

/// Something to do with a preparation on a later day than it was begun.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Due {
    /// The first day for it; of discarding, the last day that it is kept.
    pub on: Date,
    /// The last day for it, where the recipe leaves a choice.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub until: Option<Date>,
    /// The wish.
    pub make: String,
    /// What the wish is called.
    pub called: String,
    /// The batch, once it was made; before that the outing's own day is counted from.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub batch: Option<String>,
    /// What is to be done.
    pub act: Act,
}

/// What is to be done on a later day.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Act {
    /// Put something in.
    Add,
    /// Put it on the fire.
    Heat,
    /// Set it to draw or to rest.
    Rest,
    /// Strain it.
    Strain,
    /// Press it out.
    Press,
    /// Stir in the sugar.
    Sweeten,
    /// Dry it.
    Dry,
    /// Nothing more: it is ready.
    Ready,
    /// Hand it out for the first time.
    HandOut,
    /// Discard what is left.
    Discard,
}

impl Act {
    fn of(step: &Step) -> Self {
        match step {
            Step::Add(_) | Step::Mix(_) => Self::Add,
            Step::Steep { .. } | Step::Rest { .. } => Self::Rest,
            Step::Simmer { .. } | Step::Reduce { .. } => Self::Heat,
            Step::Strain { .. } => Self::Strain,
            Step::Press { .. } => Self::Press,
            Step::Dissolve { .. } => Self::Sweeten,
            Step::Dry { .. } => Self::Dry,
        }
    }
}

/// When the acts of a recipe come, least and most, counted from its beginning.
struct Course {
    acts: Vec<(Act, [DateTime; 2])>,
    ready: [DateTime; 2],
}

impl Course {
    /// Acts that follow on a wait of the recipe. Drying says no time of its own, so that what comes
    /// after it is counted from its beginning: a discard date is then too early, never too late.
    fn of(steps: &[Step], brew: &Brew, begun: DateTime) -> Option<Self> {
        let mut acts = Vec::new();
        let mut now = [begun; 2];
        let mut waited = false;
        for (step, done) in steps.iter().zip(&brew.steps) {
            if waited {
                acts.push((Act::of(step), now));
            }
            waited = done.time.is_some();
            if let ([soonest, latest], Some([least, most])) = (now, done.time) {
                now = [later(soonest, least)?, later(latest, most)?];
            }
        }
        if waited {
            acts.push((Act::Ready, now));
        }
        Some(Self { acts, ready: now })
    }
}

/// So much later by the clock on the wall; nothing beyond the calendar.
fn later(at: DateTime, by: Duration) -> Option<DateTime> {
    at.checked_add(SignedDuration::from_mins(by.minutes().floor() as i64)).ok()
}

/// What comes later of every batch, and of every wish that was not made yet, by date. What nobody may
/// have and nobody made has no later.
pub(super) fn due(
    wishes: &Wishes,
    school: &School,
    herbal: &Herbal,
    makes: &[MakePlan],
) -> Vec<Due> {
    let mut all = Vec::new();
    for plan in makes {
        let Some(make) = wishes.makes.get(&plan.name) else { continue };
        let Answer::Known(brew) = &plan.brew else { continue };
        let Some(recipe) = herbal.kitchen.recipes.get(&make.recipe) else { continue };
        for (batch, begun) in begun(wishes, school, plan) {
            if let Some(course) = Course::of(&recipe.steps, brew, begun) {
                all.extend(of_course(make, batch, begun, &course, brew));
            }
        }
    }
    all.sort();
    all
}

/// The batches of a wish and when they were begun; of none, the wish itself at the end of its day.
fn begun<'a>(
    wishes: &Wishes,
    school: &'a School,
    plan: &MakePlan,
) -> Vec<(Option<&'a str>, DateTime)> {
    let planned = wishes.date.to_datetime(wishes.to);
    let made = school.batches.values().filter(|(_, batch)| batch.make == plan.name);
    let made: Vec<_> =
        made.map(|(at, batch)| (Some(batch.name.as_str()), at.unwrap_or(planned))).collect();
    let nobody = |plan: &MakePlan| {
        !plan.counts.is_empty() && plan.counts.keys().all(|s| *s == dose::Strictness::Withhold)
    };
    match (made.is_empty(), nobody(plan)) {
        (false, _) => made,
        (true, true) => Vec::new(),
        (true, false) => vec![(None, planned)],
    }
}

fn of_course(
    make: &Make,
    batch: Option<&str>,
    begun: DateTime,
    course: &Course,
    brew: &Brew,
) -> Vec<Due> {
    let due = |act: Act, [least, most]: [Date; 2]| Due {
        on: least,
        until: (most > least).then_some(most),
        make: make.name.clone(),
        called: make.called.clone(),
        batch: batch.map(str::to_owned),
        act,
    };
    let acts = course.acts.iter().map(|(act, at)| due(*act, at.map(DateTime::date)));
    // Counted from the first day that it may be ready: the later one may be too late.
    let [ready, _] = course.ready;
    let discard = brew.keeping.known().and_then(|keeping| later(ready, keeping.most));
    let discard = discard.map(|at| due(Act::Discard, [at.date(); 2]));
    let hand_out = due(Act::HandOut, [make.on; 2]);
    acts.chain([hand_out]).chain(discard).filter(|due| due.on > begun.date()).collect()
}

/// What is wanted before it can be ready.
pub(super) fn too_early<'a>(
    wishes: &'a Wishes,
    due: &'a [Due],
) -> impl Iterator<Item = OpenQuestion> + 'a {
    let ready = |make: &Make| {
        let acts = due.iter().filter(|due| due.make == make.name);
        acts.filter(|due| !matches!(due.act, Act::HandOut | Act::Discard)).map(|due| due.on).max()
    };
    wishes.makes.values().filter_map(move |make| {
        let ready = ready(make).filter(|ready| *ready > make.on)?;
        let why = Text::new("plan-make-too-early")
            .with("make", make.called.as_str())
            .with("on", make.on)
            .with("ready", ready);
        let settle = Text::new("plan-settle-make-too-early");
        Some(OpenQuestion { about: About::Make, of: make.name.clone(), why, settle })
    })
}
