//! Whom a limit binds, whom it covers, and what it comes to for one person.

use crate::decide::Case;
use crate::{AgeBand, Given, Limit, LimitUse, Person, Table};
use ground::{Condition, Mass};

/// Young people are held to an adult's value by their body mass over this, never above it: the
/// reference mass of an adult in EMA/HMPC/893108/2011 Rev. 1.
const ADULT_KG: f64 = 50.0;

/// How a limit concerns a person.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Concerns {
    /// Not at all.
    No,
    /// It is held against, though it was not set for people like this one.
    Binds,
    /// It was set for people like this one.
    Covers,
}

/// Whether a limit may decide anything, and is not only shown.
pub(crate) fn decides(limit: &Limit, case: &Case<'_>) -> bool {
    match limit.used {
        LimitUse::Screen | LimitUse::Guidance => true,
        LimitUse::Legal => case.sold,
        LimitUse::Reference | LimitUse::History | LimitUse::None => false,
    }
}

/// How a limit concerns a person. Who has not answered counts as one it was not set for.
pub(crate) fn concerns(limit: &Limit, person: &Person) -> Concerns {
    let says = |condition: &Condition| person.answer(*condition) != Given::No;
    if !limit.who.is_empty() && !limit.who.iter().any(says) {
        return Concerns::No;
    }
    let covers = !limit.except.iter().any(says);
    match ages(limit, person.age) {
        Concerns::Covers if covers => Concerns::Covers,
        Concerns::No => Concerns::No,
        _ => Concerns::Binds,
    }
}

/// A value for adults binds the young too; one for the young does not bind adults.
fn ages(limit: &Limit, band: Option<AgeBand>) -> Concerns {
    if limit.from_age.is_none() && limit.to_age.is_none() {
        return Concerns::Covers;
    }
    let Some(band) = band else { return Concerns::Binds };
    let (youngest, oldest) = band.years();
    if limit.to_age.is_some_and(|to| to < youngest) {
        return Concerns::No;
    }
    // A band that reaches below the first year a value holds from is covered only where it is the
    // adults' own: the value "from 19" holds for a band that starts at 18.
    let covers = limit.from_age.is_none_or(|from| from <= oldest && adult_or_from(band, from));
    if covers { Concerns::Covers } else { Concerns::Binds }
}

fn adult_or_from(band: AgeBand, from: u8) -> bool {
    band == AgeBand::Adult || from <= band.years().0
}

/// The body mass to reckon with, and whether it was given.
pub(crate) fn body_mass(table: &Table, person: &Person) -> Option<(Mass, bool)> {
    if let Some(mass) = person.body_mass {
        return Some((mass, true));
    }
    let bodies = table.bodies.iter().filter(|(band, _)| person.age.is_none_or(|age| age == **band));
    let least = bodies.map(|(_, body)| body.mass).reduce(Mass::min)?;
    Some((least, false))
}

/// What a limit comes to for a person, in grams over its window; nothing when it has no value, or
/// none that a sum can be held against.
pub(crate) fn grams(limit: &Limit, table: &Table, person: &Person) -> Option<f64> {
    let level = limit.level?;
    let (body, _) = body_mass(table, person)?;
    let value = level.for_body(body)?;
    let adults = limit.from_age.is_some_and(|from| from >= 18);
    if adults && !level.per_body() && person.may_be_under(18) {
        return Some(value * (body.kg() / ADULT_KG).min(1.0));
    }
    Some(value)
}
