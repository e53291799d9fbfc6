//! From the tree of a TOML file to its tables.
//!
//! The library's own way from the one to the other is compiled anew for every table and each kind of value:
//! it was a tenth of the program that a phone loads. This one is compiled once for every table.

use serde::de::value::BorrowedStrDeserializer;
use serde::de::{
    DeserializeOwned, DeserializeSeed, Error as _, Expected, MapAccess, SeqAccess, Unexpected,
    Visitor,
};
use serde::{Deserializer, forward_to_deserialize_any};
use serde_spanned::de::{SpannedDeserializer, is_spanned};
use std::borrow::Cow;
use std::fmt::{self, Display};
use std::ops::Range;
use std::{slice, vec};
use toml::de::{DeString, DeTable, DeValue};
use toml::{Spanned, map};
use toml_datetime::de::DatetimeDeserializer;

/// Why a file is no outing, and where in it.
#[derive(Debug)]
pub(crate) struct Unread {
    pub(crate) message: String,
    pub(crate) span: Option<Range<usize>>,
}

/// A file as tables of this shape.
pub(crate) fn read<T: DeserializeOwned>(text: &str) -> Result<T, Unread> {
    let tree = DeTable::parse(text)?;
    let span = tree.span();
    let root = DeValue::Table(tree.into_inner());
    T::deserialize(Node { value: Value::Plain(&root), span })
}

impl Unread {
    /// Where it is at least: within this.
    fn within(self, span: &Range<usize>) -> Self {
        Self { span: self.span.or_else(|| Some(span.clone())), ..self }
    }
}

impl From<toml::de::Error> for Unread {
    fn from(error: toml::de::Error) -> Self {
        Self { message: error.message().to_owned(), span: error.span() }
    }
}

impl serde::de::Error for Unread {
    fn custom<T: Display>(message: T) -> Self {
        Self { message: message.to_string(), span: None }
    }
}

impl Display for Unread {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.message)
    }
}

impl std::error::Error for Unread {}

/// A value of the tree, and where it stands.
struct Node<'t> {
    value: Value<'t>,
    span: Range<usize>,
}

enum Value<'t> {
    /// As it stands there.
    Plain(&'t DeValue<'t>),
    /// With where it stands beside it.
    Placed(&'t DeValue<'t>),
    /// A part of what the library reads by parts.
    Text(String),
    Offset(usize),
}

/// What a visitor is shown of a value. The fields of a table, of a date and of a value with its place are
/// one type: each type of fields compiles the visitor of every table anew.
enum Shown<'t> {
    Text(Cow<'t, str>),
    Whole(i64),
    Number(f64),
    Truth(bool),
    Items(Items<'t>),
    Fields(Fields<'t>),
}

impl<'t> Node<'t> {
    fn new(value: &'t Spanned<DeValue<'t>>) -> Self {
        Self { value: Value::Plain(value.get_ref()), span: value.span() }
    }

    fn shown(self, wanted: &dyn Expected) -> Result<Shown<'t>, Unread> {
        match self.value {
            Value::Plain(value) => shown(value, &self.span, wanted),
            Value::Placed(value) => placed(value, &self.span),
            Value::Text(words) => Ok(Shown::Text(words.into())),
            Value::Offset(offset) => Ok(Shown::Whole(offset as i64)),
        }
    }
}

fn shown<'t>(
    value: &'t DeValue<'t>,
    span: &Range<usize>,
    wanted: &dyn Expected,
) -> Result<Shown<'t>, Unread> {
    Ok(match value {
        DeValue::String(words) => Shown::Text(Cow::Borrowed(words)),
        DeValue::Integer(whole) => match i64::from_str_radix(whole.as_str(), whole.radix()) {
            Ok(whole) => Shown::Whole(whole),
            Err(_) => {
                let says = format!("integer `{}` as i128", whole.as_str());
                return Err(Unread::invalid_type(Unexpected::Other(&says), wanted));
            }
        },
        DeValue::Float(number) => match number.as_str().parse::<f64>() {
            Ok(read) if read.is_finite() || !number.as_str().contains(char::is_numeric) => {
                Shown::Number(read)
            }
            _ => return Err(Unread::custom("floating-point number overflowed")),
        },
        DeValue::Boolean(yes) => Shown::Truth(*yes),
        DeValue::Datetime(at) => {
            let part = DatetimeDeserializer::<Unread>::new(*at).next_entry::<&str, String>()?;
            let part = part.map(|(name, words)| (name, Value::Text(words)));
            Shown::Fields(Fields::parts(part, span))
        }
        DeValue::Array(all) => Shown::Items(Items(all.iter())),
        DeValue::Table(table) => Shown::Fields(Fields::new(Left::Table(table.iter()))),
    })
}

/// A value beside where it starts and ends, by the names under which the library looks for them.
fn placed<'t>(value: &'t DeValue<'t>, span: &Range<usize>) -> Result<Shown<'t>, Unread> {
    let mut library = SpannedDeserializer::<_, Unread>::new((), span.clone());
    let mut parts = Vec::new();
    for _ in ["start", "end"] {
        let part = library.next_entry::<&str, usize>()?;
        parts.extend(part.map(|(name, offset)| (name, Value::Offset(offset))));
    }
    parts.extend(library.next_key::<&str>()?.map(|name| (name, Value::Plain(value))));
    Ok(Shown::Fields(Fields::parts(parts, span)))
}

impl<'de> Deserializer<'de> for Node<'de> {
    type Error = Unread;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Unread> {
        let span = self.span.clone();
        let read = self.shown(&visitor).and_then(|shown| match shown {
            Shown::Text(words) => visitor.visit_str(&words),
            Shown::Whole(whole) => visitor.visit_i64(whole),
            Shown::Number(number) => visitor.visit_f64(number),
            Shown::Truth(yes) => visitor.visit_bool(yes),
            Shown::Items(items) => visitor.visit_seq(items),
            Shown::Fields(fields) => visitor.visit_map(fields),
        });
        read.map_err(|error| error.within(&span))
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Unread> {
        visitor.visit_some(self)
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        visitor: V,
    ) -> Result<V::Value, Unread> {
        visitor.visit_newtype_struct(self)
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Unread> {
        let value = match self.value {
            Value::Plain(value) if is_spanned(name) => Value::Placed(value),
            value => value,
        };
        Node { value, ..self }.deserialize_any(visitor)
    }

    forward_to_deserialize_any! {
        bool u8 u16 u32 u64 u128 i8 i16 i32 i64 i128 f32 f64 char str string seq bytes byte_buf map unit
        ignored_any unit_struct tuple_struct tuple enum identifier
    }
}

/// What is left of a list.
struct Items<'t>(slice::Iter<'t, Spanned<DeValue<'t>>>);

impl<'de> SeqAccess<'de> for Items<'de> {
    type Error = Unread;

    fn next_element_seed<T: DeserializeSeed<'de>>(
        &mut self,
        seed: T,
    ) -> Result<Option<T::Value>, Unread> {
        self.0.next().map(|item| seed.deserialize(Node::new(item))).transpose()
    }
}

/// What is left of a table, or of what is read by parts.
struct Fields<'t> {
    left: Left<'t>,
    value: Option<Node<'t>>,
}

enum Left<'t> {
    Table(map::Iter<'t, Spanned<DeString<'t>>, Spanned<DeValue<'t>>>),
    Parts(vec::IntoIter<(&'static str, Node<'t>)>),
}

impl<'t> Fields<'t> {
    fn new(left: Left<'t>) -> Self {
        Self { left, value: None }
    }

    fn parts(
        parts: impl IntoIterator<Item = (&'static str, Value<'t>)>,
        span: &Range<usize>,
    ) -> Self {
        let parts = parts.into_iter();
        let parts = parts.map(|(name, value)| (name, Node { value, span: span.clone() }));
        Self::new(Left::Parts(parts.collect::<Vec<_>>().into_iter()))
    }

    /// The next name and where it stands; its value is held ready.
    fn step(&mut self) -> Option<(&'t str, Range<usize>)> {
        let (name, span, value) = match &mut self.left {
            Left::Table(fields) => {
                let (name, value) = fields.next()?;
                (name.get_ref().as_ref(), name.span(), Node::new(value))
            }
            Left::Parts(parts) => {
                let (name, value) = parts.next()?;
                (name, value.span.clone(), value)
            }
        };
        self.value = Some(value);
        Some((name, span))
    }
}

impl<'de> MapAccess<'de> for Fields<'de> {
    type Error = Unread;

    fn next_key_seed<K: DeserializeSeed<'de>>(
        &mut self,
        seed: K,
    ) -> Result<Option<K::Value>, Unread> {
        let Some((name, span)) = self.step() else { return Ok(None) };
        let read = seed.deserialize(BorrowedStrDeserializer::new(name));
        read.map(Some).map_err(|error: Unread| error.within(&span))
    }

    fn next_value_seed<V: DeserializeSeed<'de>>(&mut self, seed: V) -> Result<V::Value, Unread> {
        let value = self.value.take();
        let value = value.ok_or_else(|| Unread::custom("a value before its name"))?;
        let span = value.span.clone();
        seed.deserialize(value).map_err(|error| error.within(&span))
    }
}

#[cfg(test)]
mod tests {
    use super::super::shape::OutingFile;
    use super::*;

    /// What is wrong with a text, by this reader and by the library's own.
    fn wrong(text: &str) -> [Option<(String, Option<Range<usize>>)>; 2] {
        let own = read::<OutingFile>(text).err();
        let library = toml::from_str::<OutingFile>(text).err();
        [
            own.map(|error| (error.message, error.span)),
            library.map(|error| (error.message().to_owned(), error.span())),
        ]
    }

    #[test]
    fn a_broken_file_is_told_of_as_the_library_tells_of_it() {
        let broken = [
            "outing = 3",
            "[outing]\nname = \"x\"",
            "[outing]\nname = 3\ndate = 2027-05-01",
            "[[reader]]\nname = \"x\"\ncalled = \"y\"\nlevel = [1, 2]",
            "[[reader]]\nname = \"x\"\ncalled = \"y\"\nlevle = \"leader\"",
            "[[stop]]\nsite = \"x\"\nat = 10:20:00",
            "[[take]]\nname = \"x\"\nat = 2027-05-01",
            "[[serving]]\nbatch = \"b\"\nat = 2027-05-01T10:00:00\nto = [\"a\"]\nservings = 99999999999999999999",
            "[[serving]]\nbatch = \"b\"\nat = 2027-05-01T10:00:00\nto = [\"a\", 3]\nservings = 1",
            "as-of = true",
            "as-of = 2027-02-30",
            "[outing\n",
            "unheard-of = 1",
        ];
        for text in broken {
            let [own, library] = wrong(text);
            assert!(own.is_some(), "{text}");
            assert_eq!(own, library, "{text}");
        }
    }

    #[test]
    fn every_kind_of_value_is_read_as_the_library_reads_it() {
        type Read = std::collections::BTreeMap<String, Spanned<toml::Value>>;
        let text = "a = \"x\\ny\"\nb = 1_000\nc = 0xff\nd = 1.5e3\ne = inf\nf = true\ng = 2027-05-01\n\
            h = 2027-05-01T10:00:00\ni = 10:00:00\nj = [1, [\"x\", 2]]\n\"k l\" = { m = 1, n = { o = \"p\" } }";
        let own = read::<Read>(text).unwrap();
        let library: Read = toml::from_str(text).unwrap();
        assert_eq!(own.len(), 11);
        for (name, value) in &library {
            let found = own.get(name).unwrap();
            assert_eq!((found.get_ref(), found.span()), (value.get_ref(), value.span()), "{name}");
        }
        let [own, library] = wrong("[outing]\nlatitude = 1e999");
        assert_eq!(own, library);
    }
}
