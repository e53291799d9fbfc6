//! The list for those who come: what is asked of them, and until when it is kept.
//!
//! No more is asked than the outing needs. Health is not asked here: those questions have a form of
//! their own, for each person alone.

use crate::outing::{MoneyWish, Wishes};
use ground::{Cents, Currency};
use jiff::ToSpan;
use jiff::civil::Date;
use journal::School;
use serde::Serialize;

/// Lines beyond those for the people who are known, where nobody said how many can come.
const ROOM: u32 = 6;
/// How many days after the last jar's date it is known who was handed what: some poisons are silent
/// for long.
const AFTER_JARS_DAYS: u32 = 30;
/// How many days after the outing somebody must still be reachable, should anything turn up.
const REACHABLE_DAYS: i32 = 30;

/// The list for those who come.
#[derive(Clone, Debug, Serialize)]
pub struct SignUp {
    /// Who is on it already, by name.
    pub known: Vec<String>,
    /// How many lines are left to write on.
    pub lines: u32,
    /// How many can come, where it is known.
    pub places: Option<u32>,
    /// In which currency prices are said, where there are any.
    pub currency: Option<Currency>,
    /// The prices to choose from, the lowest first.
    #[serde(rename = "prices_cents")]
    pub prices: Vec<Cents>,
    /// On what terms people sign up, where it was said.
    pub terms: Option<String>,
    /// What is asked, and until when it is kept.
    pub kept: Vec<Kept>,
}

/// Something that is asked, and until when it is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Kept {
    /// What is asked.
    pub what: Asked,
    /// Until when.
    pub until: Until,
}

/// What is asked of those who come: what the outing cannot do without.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Asked {
    /// A name.
    Name,
    /// One way to be reached.
    Contact,
    /// How many come with them, by age.
    Party,
    /// Whom to call when something happens.
    EmergencyContact,
    /// What they pay.
    Price,
    /// That they have read the terms.
    Terms,
    /// Which pictures of them may be used.
    Photo,
}

/// Until when something is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Until {
    /// Through this day.
    Day(Date),
    /// So many days after the date on the last jar.
    AfterLastJarDays(u32),
    /// As long as the law wants accounts kept.
    Accounts,
    /// As long as a picture is used.
    Pictures,
}

pub(super) fn sign_up(wishes: &Wishes, school: &School) -> SignUp {
    let money = wishes.money.as_ref();
    let known: Vec<_> = school.participants.values().map(|p| p.called.clone()).collect();
    let count = u32::try_from(known.len()).unwrap_or(u32::MAX);
    let places = money.and_then(|money| money.places);
    SignUp {
        lines: places.map_or(ROOM, |places| places.saturating_sub(count)),
        known,
        places,
        currency: money.map(|money| money.currency),
        prices: money.map(prices).unwrap_or_default(),
        terms: money.and_then(|money| money.terms.clone()),
        kept: kept(wishes.date),
    }
}

fn prices(money: &MoneyWish) -> Vec<Cents> {
    match money.scale.as_slice() {
        [] => money.price.into_iter().collect(),
        rungs => rungs.iter().map(|rung| rung.price).collect(),
    }
}

fn kept(date: Date) -> Vec<Kept> {
    let day_after = date.saturating_add(1.day());
    let reachable = date.saturating_add(REACHABLE_DAYS.days());
    vec![
        Kept { what: Asked::Name, until: Until::AfterLastJarDays(AFTER_JARS_DAYS) },
        Kept { what: Asked::Contact, until: Until::Day(reachable) },
        Kept { what: Asked::Party, until: Until::Day(day_after) },
        Kept { what: Asked::EmergencyContact, until: Until::Day(day_after) },
        Kept { what: Asked::Price, until: Until::Accounts },
        Kept { what: Asked::Terms, until: Until::Day(reachable) },
        Kept { what: Asked::Photo, until: Until::Pictures },
    ]
}
