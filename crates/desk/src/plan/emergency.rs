//! The emergency card: whom to call, where the stops are, who does what. Nothing of health is in it.

use crate::World;
use crate::outing::{Base, PhoneNumber, Reaches, Wishes};
use ground::Duration;
use herbal::DayLine;
use jiff::SignedDuration;
use jiff::civil::{Date, DateTime, Time};
use journal::School;
use serde::Serialize;

/// What the emergency card says.
#[derive(Clone, Debug, Serialize)]
pub struct Emergency {
    /// Who gives first aid.
    pub first_aider: Option<String>,
    /// Who leads if the leader cannot.
    pub deputy: Option<String>,
    /// Who stays at base.
    pub base: Option<Base>,
    /// When base raises the alarm.
    pub alarm_at: Option<DateTime>,
    /// Where everybody meets.
    pub meeting_point: Option<String>,
    /// How to call where the first way fails.
    pub second_way: Option<String>,
    /// The numbers to call; a kind that must be there and is not stands here too, without a number.
    pub numbers: Vec<NumberPlan>,
    /// After how long a number is looked up again.
    #[serde(rename = "look_up_after_min")]
    pub look_up_after: Duration,
    /// Where the stops are, in the order of the walk.
    pub places: Vec<StopPlace>,
    /// When heads are counted: at the start, at each stop, at the end.
    pub counts: Vec<Count>,
    /// What to say on the phone.
    pub say: Vec<DayLine>,
    /// What to keep for those who help.
    pub keep: Vec<DayLine>,
}

/// A number to call, and whether it may be relied on.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct NumberPlan {
    /// Whom it reaches.
    pub reaches: Reaches,
    /// What they are called.
    pub called: Option<String>,
    /// The number, as it is dialled.
    pub number: Option<String>,
    /// Where it was found.
    pub source: Option<String>,
    /// When it was looked up there.
    pub looked_up: Option<Date>,
    /// Whether it may be relied on.
    pub standing: NumberStanding,
}

/// Whether a number may be relied on. Every standing but the first says: look it up now.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NumberStanding {
    /// It was looked up, and not too long ago.
    LookedUp,
    /// It was looked up too long ago.
    Old,
    /// Nobody says where and when it was looked up.
    Unsourced,
    /// There is none.
    Missing,
}

/// Where a stop is.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StopPlace {
    /// The site, by its short name.
    pub site: String,
    /// What the site is called.
    pub called: String,
    /// Its grid reference, as it was written.
    pub grid: Option<String>,
    /// Latitude and longitude in degrees north and east.
    pub degrees: Option<(f64, f64)>,
    /// The nearest road.
    pub road: Option<String>,
    /// How whoever comes to help gets in.
    pub way_in: Option<String>,
}

/// A time at which heads are counted.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Count {
    /// When.
    pub at: Time,
    /// Where; none at the start and at the end.
    pub called: Option<String>,
}

impl StopPlace {
    /// Whether it can be found on a map.
    #[must_use]
    pub fn is_placed(&self) -> bool {
        self.grid.is_some() || self.degrees.is_some()
    }
}

pub(super) fn emergency(world: &World, wishes: &Wishes, school: &School) -> Emergency {
    let said = wishes.emergency.clone();
    Emergency {
        numbers: numbers(wishes),
        alarm_at: said.overdue_after.and_then(|after| alarm_at(wishes, after)),
        places: places(wishes, school),
        counts: counts(wishes, school),
        first_aider: said.first_aider,
        deputy: said.deputy,
        base: said.base,
        meeting_point: said.meeting_point,
        second_way: said.second_way,
        look_up_after: said.look_up_after,
        say: world.herbal.day.say.clone(),
        keep: world.herbal.day.keep.clone(),
    }
}

fn alarm_at(wishes: &Wishes, after: Duration) -> Option<DateTime> {
    let after = SignedDuration::from_mins(after.minutes().ceil() as i64);
    wishes.date.to_datetime(wishes.to).checked_add(after).ok()
}

/// Every number that was given, and a gap for each kind that must be there.
fn numbers(wishes: &Wishes) -> Vec<NumberPlan> {
    let given = &wishes.emergency.numbers;
    let wanted = [Reaches::Emergency, Reaches::PoisonInformation];
    let lacking = wanted.into_iter().filter(|kind| given.iter().all(|n| n.reaches != *kind));
    let gap = |reaches| NumberPlan {
        reaches,
        called: None,
        number: None,
        source: None,
        looked_up: None,
        standing: NumberStanding::Missing,
    };
    let given = given.iter().map(|number| NumberPlan {
        reaches: number.reaches,
        called: Some(number.called.clone()),
        number: Some(number.number.clone()),
        source: number.source.clone(),
        looked_up: number.looked_up,
        standing: standing(wishes, number),
    });
    let mut numbers: Vec<_> = given.chain(lacking.map(gap)).collect();
    numbers.sort_by_key(|number| number.reaches);
    numbers
}

/// A number that was looked up after the day of the outing was not looked up at all.
fn standing(wishes: &Wishes, number: &PhoneNumber) -> NumberStanding {
    let Some(on) = number.looked_up.filter(|on| *on <= wishes.date) else {
        return NumberStanding::Unsourced;
    };
    if number.source.is_none() {
        return NumberStanding::Unsourced;
    }
    let days = wishes.date.duration_since(on).as_hours() / 24;
    if days as f64 * 1440.0 > wishes.emergency.look_up_after.minutes() {
        NumberStanding::Old
    } else {
        NumberStanding::LookedUp
    }
}

/// Each site of the walk once, in order.
fn places(wishes: &Wishes, school: &School) -> Vec<StopPlace> {
    let mut places: Vec<StopPlace> = Vec::new();
    for site in wishes.stops.iter().filter_map(|stop| school.sites.get(&stop.site)) {
        if places.iter().all(|place| place.site != site.name) {
            places.push(StopPlace {
                site: site.name.clone(),
                called: site.called.clone(),
                grid: site.grid.clone(),
                degrees: site.latitude.zip(site.longitude),
                road: site.road.clone(),
                way_in: site.way_in.clone(),
            });
        }
    }
    places
}

fn counts(wishes: &Wishes, school: &School) -> Vec<Count> {
    let stops = wishes.stops.iter().map(|stop| {
        let called = school.sites.get(&stop.site).map(|site| site.called.clone());
        Count { at: stop.at, called }
    });
    let edge = |at| Count { at, called: None };
    std::iter::once(edge(wishes.from)).chain(stops).chain([edge(wishes.to)]).collect()
}
