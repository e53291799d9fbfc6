//! One value of a row, and its form in JSON.

use ground::Finite;
use jiff::civil::{Date, DateTime};
use serde::de::{Error, MapAccess, SeqAccess, Visitor};
use serde::ser::SerializeMap;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::collections::BTreeMap;
use std::fmt;
use std::str::FromStr;

/// One value of a row.
///
/// In JSON a day is `{"day":"2027-05-01"}`, a moment `{"at":"2027-05-01T10:40:00"}`, and everything
/// else what JSON has for it. A table whose only field is itself called `day` or `at` is told from
/// these by an equals sign before the name, which reading takes away again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Cell {
    /// Words, and amounts as people say them.
    Words(String),
    /// A whole number.
    Whole(i64),
    /// A number.
    Number(Finite),
    /// Yes or no.
    YesNo(bool),
    /// A day.
    Day(Date),
    /// A day with a time, as the clock on the wall shows it.
    Moment(DateTime),
    /// Several values.
    List(Vec<Cell>),
    /// Values by field.
    Table(BTreeMap<String, Cell>),
}

const DAY: &str = "day";
const AT: &str = "at";
const ESCAPE: char = '=';

/// Whether a lone field of this name needs its equals sign.
fn is_like_time(field: &str) -> bool {
    [DAY, AT].contains(&field.trim_start_matches(ESCAPE))
}

impl Serialize for Cell {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Words(words) => to.serialize_str(words),
            Self::Whole(number) => to.serialize_i64(*number),
            Self::Number(number) => number.serialize(to),
            Self::YesNo(yes) => to.serialize_bool(*yes),
            Self::Day(day) => lone(to, DAY, day),
            Self::Moment(at) => lone(to, AT, at),
            Self::List(list) => list.serialize(to),
            Self::Table(table) => match table.first_key_value() {
                Some((field, cell)) if table.len() == 1 && is_like_time(field) => {
                    lone(to, &format!("{ESCAPE}{field}"), cell)
                }
                _ => table.serialize(to),
            },
        }
    }
}

fn lone<S: Serializer>(to: S, field: &str, value: &impl Serialize) -> Result<S::Ok, S::Error> {
    let mut map = to.serialize_map(Some(1))?;
    map.serialize_entry(field, value)?;
    map.end()
}

impl<'de> Deserialize<'de> for Cell {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_any(CellVisitor)
    }
}

struct CellVisitor;

impl<'de> Visitor<'de> for CellVisitor {
    type Value = Cell;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("words, a number, yes or no, a list or a table")
    }

    fn visit_str<E: Error>(self, words: &str) -> Result<Cell, E> {
        Ok(Cell::Words(words.to_owned()))
    }

    fn visit_i64<E: Error>(self, number: i64) -> Result<Cell, E> {
        Ok(Cell::Whole(number))
    }

    fn visit_u64<E: Error>(self, number: u64) -> Result<Cell, E> {
        i64::try_from(number).map(Cell::Whole).map_err(E::custom)
    }

    fn visit_f64<E: Error>(self, number: f64) -> Result<Cell, E> {
        let finite = Finite::new(number).ok_or_else(|| E::custom("a finite number is wanted"))?;
        Ok(Cell::Number(finite))
    }

    fn visit_bool<E: Error>(self, yes: bool) -> Result<Cell, E> {
        Ok(Cell::YesNo(yes))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut from: A) -> Result<Cell, A::Error> {
        let mut list = Vec::new();
        while let Some(cell) = from.next_element()? {
            list.push(cell);
        }
        Ok(Cell::List(list))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut from: A) -> Result<Cell, A::Error> {
        let mut table = BTreeMap::new();
        while let Some((field, cell)) = from.next_entry::<String, Cell>()? {
            table.insert(field, cell);
        }
        if table.len() != 1 {
            return Ok(Cell::Table(table));
        }
        match table.pop_first() {
            Some((field, cell)) => of_lone(&field, cell),
            None => Ok(Cell::Table(table)),
        }
    }
}

/// What a JSON object with a single field stands for.
fn of_lone<E: Error>(field: &str, cell: Cell) -> Result<Cell, E> {
    match (field, cell) {
        (DAY, Cell::Words(words)) => civil(&words, Date::year).map(Cell::Day),
        (AT, Cell::Words(words)) => civil(&words, DateTime::year).map(Cell::Moment),
        (DAY | AT, _) => Err(E::custom("a day or a moment is wanted")),
        (field, cell) => {
            let escaped = field.strip_prefix(ESCAPE).filter(|field| is_like_time(field));
            Ok(Cell::Table(BTreeMap::from([(escaped.unwrap_or(field).to_owned(), cell)])))
        }
    }
}

/// A day or moment of a year that TOML writes: one of four digits (RFC 3339, section 5.6).
fn civil<T: Copy + FromStr<Err = jiff::Error>, E: Error>(
    words: &str,
    year: impl Fn(T) -> i16,
) -> Result<T, E> {
    let read: T = words.parse().map_err(E::custom)?;
    let four_digits = (0..=9999).contains(&year(read));
    four_digits.then_some(read).ok_or_else(|| E::custom("a year of four digits is wanted"))
}
