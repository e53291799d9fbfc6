//! From the tree of a TOML file to its tables.
//!
//! The library's own way from the one to the other is compiled anew for every table and each kind of value:
//! it was a tenth of the program that a phone loads. This one is compiled once for every table.

use serde::de::value::StrDeserializer;
use serde::de::{
    DeserializeOwned, DeserializeSeed, IntoDeserializer, MapAccess, SeqAccess, Unexpected, Visitor,
};
use serde::{Deserializer, forward_to_deserialize_any};
use serde_spanned::de::{SpannedDeserializer, is_spanned};
use std::fmt::{self, Display};
use std::ops::Range;
use toml::Spanned;
use toml::de::{DeString, DeTable, DeValue};
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
    T::deserialize(Node { value: &root, span })
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
    value: &'t DeValue<'t>,
    span: Range<usize>,
}

impl<'t> Node<'t> {
    fn new(value: &'t Spanned<DeValue<'t>>) -> Self {
        Self { value: value.get_ref(), span: value.span() }
    }
}

impl IntoDeserializer<'_, Unread> for Node<'_> {
    type Deserializer = Self;

    fn into_deserializer(self) -> Self {
        self
    }
}

impl<'de> Deserializer<'de> for Node<'_> {
    type Error = Unread;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Unread> {
        let read = match self.value {
            DeValue::String(words) => visitor.visit_str(words),
            DeValue::Integer(whole) => match i64::from_str_radix(whole.as_str(), whole.radix()) {
                Ok(whole) => visitor.visit_i64(whole),
                Err(_) => {
                    let says = format!("integer `{}` as i128", whole.as_str());
                    Err(serde::de::Error::invalid_type(Unexpected::Other(&says), &visitor))
                }
            },
            DeValue::Float(number) => match number.as_str().parse::<f64>() {
                Ok(read) if read.is_finite() || !number.as_str().contains(char::is_numeric) => {
                    visitor.visit_f64(read)
                }
                _ => Err(serde::de::Error::custom("floating-point number overflowed")),
            },
            DeValue::Boolean(yes) => visitor.visit_bool(*yes),
            DeValue::Datetime(at) => visitor.visit_map(DatetimeDeserializer::new(*at)),
            DeValue::Array(all) => visitor.visit_seq(Items(all.iter())),
            DeValue::Table(table) => visitor.visit_map(Fields { left: table.iter(), value: None }),
        };
        read.map_err(|error| error.within(&self.span))
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
        if is_spanned(name) {
            let span = self.span.clone();
            return visitor.visit_map(SpannedDeserializer::new(self, span));
        }
        self.deserialize_any(visitor)
    }

    forward_to_deserialize_any! {
        bool u8 u16 u32 u64 u128 i8 i16 i32 i64 i128 f32 f64 char str string seq bytes byte_buf map unit
        ignored_any unit_struct tuple_struct tuple enum identifier
    }
}

/// What is left of a list.
struct Items<'t, I: Iterator<Item = &'t Spanned<DeValue<'t>>>>(I);

impl<'de, 't, I: Iterator<Item = &'t Spanned<DeValue<'t>>>> SeqAccess<'de> for Items<'t, I> {
    type Error = Unread;

    fn next_element_seed<T: DeserializeSeed<'de>>(
        &mut self,
        seed: T,
    ) -> Result<Option<T::Value>, Unread> {
        self.0.next().map(|item| seed.deserialize(Node::new(item))).transpose()
    }
}

type Field<'t> = (&'t Spanned<DeString<'t>>, &'t Spanned<DeValue<'t>>);

/// What is left of a table.
struct Fields<'t, I: Iterator<Item = Field<'t>>> {
    left: I,
    value: Option<&'t Spanned<DeValue<'t>>>,
}

impl<'de, 't, I: Iterator<Item = Field<'t>>> MapAccess<'de> for Fields<'t, I> {
    type Error = Unread;

    fn next_key_seed<K: DeserializeSeed<'de>>(
        &mut self,
        seed: K,
    ) -> Result<Option<K::Value>, Unread> {
        let Some((name, value)) = self.left.next() else { return Ok(None) };
        self.value = Some(value);
        let read = seed.deserialize(StrDeserializer::new(name.get_ref()));
        read.map(Some).map_err(|error: Unread| error.within(&name.span()))
    }

    fn next_value_seed<V: DeserializeSeed<'de>>(&mut self, seed: V) -> Result<V::Value, Unread> {
        match self.value.take() {
            Some(value) => seed.deserialize(Node::new(value)).map_err(|e| e.within(&value.span())),
            None => Err(serde::de::Error::custom("a value before its name")),
        }
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
