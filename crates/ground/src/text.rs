//! Messages: a craft names a message and its arguments; the catalogue turns it into a sentence.

use crate::{Cents, Currency, Finite, Unit};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// A message to a person: its name in the catalogue and what goes into it.
///
/// Crafts write no sentences. That keeps every word a person reads in one place, and lets the same
/// answer be read in another language.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Text {
    /// The name of the message, such as `refused-no-survey`.
    #[serde(rename = "text_id")]
    pub id: String,
    /// What goes into it, by name.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub args: BTreeMap<String, Arg>,
}

/// Something that goes into a message.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Arg {
    /// Words that stand as they are: a name, an identifier, what somebody wrote.
    Words(String),
    /// A scientific name: never translated, set in italics where that is possible.
    Taxon(String),
    /// A number in a unit; the catalogue chooses how it is rounded and written.
    Amount(Finite, Unit),
    /// An amount of money.
    Money(Cents, Currency),
    /// A whole number of things.
    Count(i64),
    /// A day.
    Day(jiff::civil::Date),
    /// Another message.
    Text(Text),
    /// Several of them, in the order given.
    List(Vec<Arg>),
}

impl Text {
    /// A message without arguments yet.
    #[must_use]
    pub fn new(id: impl Into<String>) -> Self {
        Self { id: id.into(), args: BTreeMap::new() }
    }

    /// The same message with one more argument.
    ///
    /// ```
    /// use ground::Text;
    /// let text = Text::new("take-from").with("stand", "Mill Wood, south edge").with("pots", 3);
    /// assert_eq!(text.args.len(), 2);
    /// ```
    #[must_use]
    pub fn with(mut self, name: &str, arg: impl Into<Arg>) -> Self {
        self.args.insert(name.to_owned(), arg.into());
        self
    }

    /// The same message with an amount; a number that is not finite becomes the word `?`.
    #[must_use]
    pub fn amount(self, name: &str, value: f64, unit: Unit) -> Self {
        match Finite::new(value) {
            Some(value) => self.with(name, Arg::Amount(value, unit)),
            None => self.with(name, "?"),
        }
    }

    /// The same message with a scientific name.
    #[must_use]
    pub fn taxon(self, name: &str, taxon: impl Into<String>) -> Self {
        self.with(name, Arg::Taxon(taxon.into()))
    }
}

impl From<&str> for Arg {
    fn from(words: &str) -> Self {
        Self::Words(words.to_owned())
    }
}

impl From<String> for Arg {
    fn from(words: String) -> Self {
        Self::Words(words)
    }
}

impl From<Text> for Arg {
    fn from(text: Text) -> Self {
        Self::Text(text)
    }
}

impl From<jiff::civil::Date> for Arg {
    fn from(day: jiff::civil::Date) -> Self {
        Self::Day(day)
    }
}

impl From<Vec<Arg>> for Arg {
    fn from(list: Vec<Arg>) -> Self {
        Self::List(list)
    }
}

impl From<i64> for Arg {
    fn from(count: i64) -> Self {
        Self::Count(count)
    }
}

impl From<i32> for Arg {
    fn from(count: i32) -> Self {
        Self::Count(count.into())
    }
}

impl From<u32> for Arg {
    fn from(count: u32) -> Self {
        Self::Count(count.into())
    }
}

impl From<usize> for Arg {
    fn from(count: usize) -> Self {
        Self::Count(i64::try_from(count).unwrap_or(i64::MAX))
    }
}
