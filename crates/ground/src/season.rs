//! Months and seasons, which may run over the turn of the year.

use serde::{Deserialize, Serialize};
use std::fmt;

/// A month of the year.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "u8", into = "u8")]
pub struct Month(u8);

impl Month {
    /// The month of this number, 1 for January.
    #[must_use]
    pub fn new(number: u8) -> Option<Self> {
        (1..=12).contains(&number).then_some(Self(number))
    }

    /// The month in which a day lies.
    #[must_use]
    pub fn of(day: jiff::civil::Date) -> Self {
        // A civil date has months 1 to 12 only.
        Self(day.month().unsigned_abs())
    }

    /// Its number, 1 for January.
    #[must_use]
    pub fn number(self) -> u8 {
        self.0
    }

    /// All twelve, in order.
    pub fn all() -> impl Iterator<Item = Self> {
        (1..=12).map(Self)
    }
}

impl TryFrom<u8> for Month {
    type Error = String;

    fn try_from(number: u8) -> Result<Self, String> {
        Self::new(number).ok_or_else(|| format!("{number} is no month; 1 to 12 are"))
    }
}

impl From<Month> for u8 {
    fn from(month: Month) -> u8 {
        month.0
    }
}

impl fmt::Display for Month {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

/// A stretch of months, first and last included; `[10, 6]` runs from October to June.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Season(Month, Month);

impl Season {
    /// From this month to that.
    #[must_use]
    pub fn new(first: Month, last: Month) -> Self {
        Self(first, last)
    }

    /// First month.
    #[must_use]
    pub fn first(self) -> Month {
        self.0
    }

    /// Last month.
    #[must_use]
    pub fn last(self) -> Month {
        self.1
    }

    /// Whether it runs over the turn of the year.
    #[must_use]
    pub fn wraps(self) -> bool {
        self.0 > self.1
    }

    /// Whether a month lies in it.
    ///
    /// ```
    /// use ground::{Month, Season};
    /// let month = |n| Month::new(n).unwrap();
    /// let winter = Season::new(month(10), month(6));
    /// assert!(winter.contains(month(1)) && !winter.contains(month(8)));
    /// ```
    #[must_use]
    pub fn contains(self, month: Month) -> bool {
        if self.wraps() {
            month >= self.0 || month <= self.1
        } else {
            self.0 <= month && month <= self.1
        }
    }

    /// Whether it shares a month with another.
    #[must_use]
    pub fn meets(self, other: Self) -> bool {
        Month::all().any(|m| self.contains(m) && other.contains(m))
    }
}
