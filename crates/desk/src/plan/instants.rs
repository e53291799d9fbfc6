//! The moments of a plan in universal time, for whoever reads it by another clock.

use crate::outing::Wishes;
use jiff::Timestamp;
use jiff::civil::DateTime;
use serde::Serialize;

/// The moments of a plan in universal time. A time that the clock skips counts as if it had not been
/// put forward; of a time that it shows twice, the first is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Instants {
    /// When the outing begins.
    pub from: Timestamp,
    /// When it ends.
    pub to: Timestamp,
    /// The moment that the plan was worked out for.
    pub as_of: Timestamp,
}

impl Instants {
    /// Nothing beyond the ends of the calendar.
    pub(super) fn of(wishes: &Wishes, as_of: DateTime) -> Option<Self> {
        let instant = |at: DateTime| wishes.zone.to_timestamp(at).ok();
        Some(Self {
            from: instant(wishes.date.to_datetime(wishes.from))?,
            to: instant(wishes.date.to_datetime(wishes.to))?,
            as_of: instant(as_of)?,
        })
    }
}
