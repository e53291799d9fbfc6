//! The season of the part, and when the one that runs now began.

use super::{Candidate, Kind, Outcome, RuleRef, shown};
use crate::Asked;
use crate::crop::part_text;
use ground::{Month, Place, Season, Text, Working};
use jiff::civil::{Date, date};

/// Whether the part can be had on the day.
pub(super) fn season(asked: &Asked) -> Candidate {
    let rule = RuleRef::new(Kind::Season, "");
    let text = |id: &str| {
        Text::new(id).taxon("taxon", asked.taxon.as_str()).with("part", part_text(asked.part))
    };
    let Some(season) = asked.season else {
        let settle = text("harvest-settle-season");
        return Candidate::open(rule, text("harvest-no-season"), settle);
    };
    let (id, outcome) = if season.contains(Month::of(asked.on)) {
        ("harvest-in-season", Outcome::Clear)
    } else {
        ("harvest-out-of-season", Outcome::Nothing)
    };
    let says = text(id)
        .with("day", asked.on)
        .with("first", month_text(season.first()))
        .with("last", month_text(season.last()));
    let at = Place::entry("species", &asked.taxon, "months");
    Candidate {
        working: Working::input(Text::new("harvest-what-season"), shown(&says), at),
        rule,
        outcome,
        says,
    }
}

fn month_text(month: Month) -> Text {
    Text::new(format!("month-{month}"))
}

/// The first day of the season that runs on a day, or of the last one before it.
pub(super) fn season_start(season: Season, on: Date) -> Date {
    // A month holds 1 to 12 and every month has a first day.
    let month = i8::try_from(season.first().number()).unwrap_or(1);
    let start = date(on.year(), month, 1);
    if start > on { years_before(start, 1) } else { start }
}

/// The same day so many years before; the first day of time when there is none.
pub(super) fn years_before(day: Date, years: u16) -> Date {
    let years = i16::try_from(years).unwrap_or(i16::MAX);
    day.year()
        .checked_sub(years)
        .and_then(|year| Date::new(year, day.month(), day.day()).ok())
        .unwrap_or(Date::MIN)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_season_over_the_turn_of_the_year_began_last_year() {
        let month = |n| Month::new(n).unwrap();
        let winter = Season::new(month(10), month(2));
        assert_eq!(season_start(winter, date(2027, 1, 15)), date(2026, 10, 1));
        assert_eq!(season_start(winter, date(2027, 10, 1)), date(2027, 10, 1));
        let spring = Season::new(month(3), month(5));
        assert_eq!(season_start(spring, date(2027, 2, 1)), date(2026, 3, 1));
        assert_eq!(years_before(date(2027, 3, 1), 9), date(2018, 3, 1));
    }
}
