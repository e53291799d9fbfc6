//! The sources of a page: each fact names its number, and the list at the end says what it is.

use crate::{Block, Words};
use ground::SourceId;
use serde::Serialize;
use serde_json::Serializer;
use serde_json::ser::Formatter;
use std::collections::{BTreeMap, BTreeSet};
use std::io::{self, Write};

/// A number for every source that something names and that the herbal knows.
pub(in crate::views) fn numbers(
    cites: &impl Serialize,
    words: &Words<'_>,
) -> BTreeMap<SourceId, usize> {
    let known = |id: &SourceId| words.sources.is_some_and(|sources| sources.contains_key(id));
    cited(cites).into_iter().filter(known).zip(1..).collect()
}

/// The sources that something names: whatever stands in a field `source` or a list `sources`.
pub(in crate::views) fn cited(cites: &impl Serialize) -> BTreeSet<SourceId> {
    let mut cited = Cited::default();
    // Nothing is written, and what can be counted has no fault to tell.
    let _ = cites.serialize(&mut Serializer::with_formatter(io::sink(), &mut cited));
    cited.ids
}

/// Hears what would be written of a value in JSON, and notes the sources in it.
#[derive(Default)]
struct Cited {
    ids: BTreeSet<SourceId>,
    /// The words that are being said.
    said: String,
    stands: Stands,
}

/// Where the words stand that come next.
#[derive(Clone, Copy, Default, PartialEq, Eq)]
enum Stands {
    #[default]
    Elsewhere,
    /// They name a field.
    Field,
    /// They are a source, or a list of sources comes next.
    Source,
    /// They are in such a list.
    Among,
}

impl Formatter for &mut Cited {
    fn begin_object<W: ?Sized + Write>(&mut self, _: &mut W) -> io::Result<()> {
        self.stands = Stands::Elsewhere;
        Ok(())
    }

    fn begin_object_key<W: ?Sized + Write>(&mut self, _: &mut W, _: bool) -> io::Result<()> {
        self.stands = Stands::Field;
        Ok(())
    }

    fn begin_object_value<W: ?Sized + Write>(&mut self, _: &mut W) -> io::Result<()> {
        let names = ["source", "sources"].contains(&self.said.as_str());
        self.stands = if names { Stands::Source } else { Stands::Elsewhere };
        Ok(())
    }

    fn begin_array<W: ?Sized + Write>(&mut self, _: &mut W) -> io::Result<()> {
        let lists = self.stands == Stands::Source && self.said == "sources";
        self.stands = if lists { Stands::Among } else { Stands::Elsewhere };
        Ok(())
    }

    fn end_array<W: ?Sized + Write>(&mut self, _: &mut W) -> io::Result<()> {
        self.stands = Stands::Elsewhere;
        Ok(())
    }

    fn begin_string<W: ?Sized + Write>(&mut self, _: &mut W) -> io::Result<()> {
        if self.stands != Stands::Elsewhere {
            self.said.clear();
        }
        Ok(())
    }

    fn write_string_fragment<W: ?Sized + Write>(
        &mut self,
        _: &mut W,
        words: &str,
    ) -> io::Result<()> {
        if self.stands != Stands::Elsewhere {
            self.said.push_str(words);
        }
        Ok(())
    }

    fn end_string<W: ?Sized + Write>(&mut self, _: &mut W) -> io::Result<()> {
        if matches!(self.stands, Stands::Source | Stands::Among) {
            self.ids.insert(SourceId::from(self.said.as_str()));
        }
        Ok(())
    }

    fn write_f64<W: ?Sized + Write>(&mut self, _: &mut W, _: f64) -> io::Result<()> {
        Ok(())
    }
}

/// The list, in the order of the numbers.
pub(in crate::views) fn list(numbers: &BTreeMap<SourceId, usize>, words: &Words<'_>) -> Vec<Block> {
    if numbers.is_empty() {
        return Vec::new();
    }
    vec![Block::notes(numbers.keys().map(|id| words.source_in_full(id)))]
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::{Value, json};

    /// What is named, found by looking at all of a value.
    fn looked_for(value: &Value, found: &mut BTreeSet<SourceId>) {
        match value {
            Value::Object(fields) => fields.iter().for_each(|(field, value)| {
                let named = match (field.as_str(), value) {
                    ("source", one) => std::slice::from_ref(one),
                    ("sources", Value::Array(several)) => several.as_slice(),
                    _ => &[],
                };
                found.extend(named.iter().filter_map(Value::as_str).map(SourceId::from));
                looked_for(value, found);
            }),
            Value::Array(items) => items.iter().for_each(|item| looked_for(item, found)),
            _ => {}
        }
    }

    #[test]
    fn sources_are_what_stands_in_their_fields_however_deep() {
        let value = json!({
            "source": "flora",
            "name": "sources",
            "rows": [
                { "sources": ["a", "b", 3, { "source": null, "x": "not-this" }, ["nor-this"]] },
                [["sources", "nor-this"], { "sources": [] }, "nor-this"],
            ],
            "sources": "alone",
            "other": { "source": { "sources": ["within"] }, "again": "source" },
            "last": "nor-this",
        });
        let mut found = BTreeSet::new();
        looked_for(&value, &mut found);
        found.remove(&SourceId::from("alone"));
        let named = ["a", "b", "flora", "within"].map(SourceId::from);
        assert_eq!(found, BTreeSet::from(named));
        let mut cited = cited(&value);
        assert!(cited.remove(&SourceId::from("alone")));
        assert_eq!(cited, found);
    }
}
