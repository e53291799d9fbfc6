//! What an outing says of emergencies and of the way back: its tables, and what is read from them.

use super::entries::maybe;
use super::file::{Row, Said};
use ground::{Duration, Length};
use harvest::walk::GROUP_HOUR;
use jiff::civil::Date;
use serde::{Deserialize, Serialize};
use toml::Spanned;
use toml::value::Datetime;

/// How long a number that was looked up counts as known: 12 months. Common practice, no source; a
/// school sets its own.
const LOOK_UP_AFTER: Duration = Duration::from_minutes(365.0 * 1440.0);

/// How long before sunset the group is back: an hour. Common practice, no source; a school sets its
/// own.
const BEFORE_SUNSET: Duration = Duration::from_minutes(60.0);

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct EmergencyTable {
    pub(crate) first_aider: Option<Said>,
    pub(crate) deputy: Option<Said>,
    pub(crate) base: Option<BaseTable>,
    pub(crate) overdue_after: Option<Said>,
    pub(crate) meeting_point: Option<Said>,
    pub(crate) second_way: Option<Said>,
    pub(crate) look_up_after: Option<Said>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct BaseTable {
    pub(crate) name: Said,
    pub(crate) phone: Said,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct NumberTable {
    pub(crate) what: Said,
    pub(crate) called: String,
    pub(crate) number: Said,
    pub(crate) source: Option<Said>,
    pub(crate) looked_up: Option<Spanned<Datetime>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct WayBackTable {
    pub(crate) walk: Option<Said>,
    pub(crate) climb: Option<Said>,
    pub(crate) early: Option<Said>,
    pub(crate) in_an_hour: Option<Said>,
    pub(crate) before_sunset: Option<Said>,
}

/// What the outing says of emergencies.
#[derive(Clone, Debug)]
pub struct EmergencyWish {
    /// Who gives first aid.
    pub first_aider: Option<String>,
    /// Who leads if the leader cannot.
    pub deputy: Option<String>,
    /// Who stays at base.
    pub base: Option<Base>,
    /// How long after its end the group is overdue.
    pub overdue_after: Option<Duration>,
    /// Where everybody meets.
    pub meeting_point: Option<String>,
    /// How to call where the first way fails.
    pub second_way: Option<String>,
    /// After how long a number is looked up again.
    pub look_up_after: Duration,
    /// The numbers to call.
    pub numbers: Vec<PhoneNumber>,
}

impl Default for EmergencyWish {
    fn default() -> Self {
        Self {
            first_aider: None,
            deputy: None,
            base: None,
            overdue_after: None,
            meeting_point: None,
            second_way: None,
            look_up_after: LOOK_UP_AFTER,
            numbers: Vec::new(),
        }
    }
}

/// Who stays at base, and raises the alarm when the group is overdue.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Base {
    /// What they are called.
    pub name: String,
    /// Their telephone number.
    pub phone: String,
}

/// A number to call.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct PhoneNumber {
    /// Whom it reaches.
    pub reaches: Reaches,
    /// What they are called.
    pub called: String,
    /// The number, as it is dialled.
    pub number: String,
    /// Where it was found.
    pub source: Option<String>,
    /// When it was looked up there.
    pub looked_up: Option<Date>,
}

/// Whom a number reaches.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Reaches {
    /// The emergency services.
    Emergency,
    /// Those who know poisons.
    PoisonInformation,
    /// Somebody else.
    Other,
}

/// The way back to the end of the outing.
#[derive(Clone, Copy, Debug)]
pub struct WayBack {
    /// From the last stop to the end, and how far that way climbs.
    pub last: Option<(Length, Length)>,
    /// How the group gets back from a stop before the last.
    pub early: Option<Early>,
    /// How far it goes in an hour on the level.
    pub in_an_hour: Length,
    /// How long before sunset it is back.
    pub before_sunset: Duration,
}

impl Default for WayBack {
    fn default() -> Self {
        Self { last: None, early: None, in_an_hour: GROUP_HOUR, before_sunset: BEFORE_SUNSET }
    }
}

/// How a group gets back that turns before the last stop.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Early {
    /// The way it came: the outing ends where it began.
    SameWay,
    /// On through the stops that are left, and the way back from the last.
    Onward,
}

impl EmergencyWish {
    /// Reads the table; a field that cannot be read stays unknown, and its fault is told.
    pub(super) fn take(&mut self, row: &mut Row<'_>, table: &EmergencyTable) {
        self.first_aider = said(table.first_aider.as_ref());
        self.deputy = said(table.deputy.as_ref());
        self.meeting_point = said(table.meeting_point.as_ref());
        self.second_way = said(table.second_way.as_ref());
        self.base = table.base.as_ref().and_then(|table| {
            let phone = phone(row, "base", &table.phone);
            Some(Base { name: said(Some(&table.name))?, phone: phone? })
        });
        let overdue = table.overdue_after.as_ref();
        self.overdue_after = overdue.and_then(|said| row.duration("overdue-after", said));
        let again = table.look_up_after.as_ref();
        let again = again.and_then(|said| row.duration("look-up-after", said));
        self.look_up_after = again.unwrap_or(self.look_up_after);
    }
}

impl PhoneNumber {
    pub(super) fn read(row: &mut Row<'_>, table: &NumberTable) -> Option<Self> {
        let reaches = reaches(row, &table.what);
        let number = phone(row, "number", &table.number);
        let looked_up = table.looked_up.as_ref().map(|said| row.date("looked-up", said));
        Some(Self {
            reaches: reaches?,
            called: table.called.clone(),
            number: number?,
            source: said(table.source.as_ref()),
            looked_up: maybe(looked_up)?,
        })
    }
}

impl WayBack {
    /// Reads the table; a field that cannot be read stays unknown, and its fault is told.
    pub(super) fn take(&mut self, row: &mut Row<'_>, table: &WayBackTable) {
        let climb = table.climb.as_ref().map(|said| row.length("climb", said));
        let walk = table.walk.as_ref().and_then(|said| row.length("walk", said));
        self.last = walk.zip(climb.unwrap_or(Some(Length::ZERO)));
        self.early = table.early.as_ref().and_then(|said| early(row, said));
        let hour = table.in_an_hour.as_ref().and_then(|said| in_an_hour(row, said));
        self.in_an_hour = hour.unwrap_or(self.in_an_hour);
        let sunset = table.before_sunset.as_ref();
        let sunset = sunset.and_then(|said| row.duration("before-sunset", said));
        self.before_sunset = sunset.unwrap_or(self.before_sunset);
    }
}

/// What was written, unless it is nothing but gaps.
pub(super) fn said(said: Option<&Said>) -> Option<String> {
    let words = said?.get_ref().trim();
    (!words.is_empty()).then(|| words.to_owned())
}

/// A telephone number as it is dialled: 2 to 15 digits (no number has more, ITU-T E.164), a plus at
/// most before them, gaps between them.
fn phone(row: &mut Row<'_>, field: &str, said: &Said) -> Option<String> {
    let written = said.get_ref().trim();
    let dialled = written.strip_prefix('+').unwrap_or(written);
    let digits = dialled.chars().filter(char::is_ascii_digit).count();
    let plain = dialled.chars().all(|c| c.is_ascii_digit() || c == ' ');
    if plain && (2..=15).contains(&digits) {
        return Some(written.to_owned());
    }
    row.fault("no-such-phone", field, said);
    None
}

fn reaches(row: &mut Row<'_>, said: &Said) -> Option<Reaches> {
    match said.get_ref().as_str() {
        "emergency" => Some(Reaches::Emergency),
        "poison-information" => Some(Reaches::PoisonInformation),
        "other" => Some(Reaches::Other),
        _ => {
            let list = "emergency, poison-information, other";
            row.fault_with("unknown-word", "what", said, ("known", list));
            None
        }
    }
}

fn early(row: &mut Row<'_>, said: &Said) -> Option<Early> {
    match said.get_ref().as_str() {
        "same-way" => Some(Early::SameWay),
        "onward" => Some(Early::Onward),
        _ => {
            row.fault_with("unknown-word", "early", said, ("known", "same-way, onward"));
            None
        }
    }
}

/// How far a group goes in an hour; the rule it is timed by holds up to 5 km.
fn in_an_hour(row: &mut Row<'_>, said: &Said) -> Option<Length> {
    let far = row.length("in-an-hour", said)?;
    if (500.0..=5_000.0).contains(&far.m()) {
        return Some(far);
    }
    row.fault("no-such-pace", "in-an-hour", said);
    None
}
