//! The sources of a page: each fact names its number, and the list at the end says what it is.

use crate::{Block, Words};
use ground::SourceId;
use serde::Serialize;
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};

/// A number for every source that something names and that the herbal knows.
pub(in crate::views) fn numbers(
    cites: &impl Serialize,
    words: &Words<'_>,
) -> BTreeMap<SourceId, usize> {
    let known = |id: &SourceId| words.sources.is_some_and(|sources| sources.contains_key(id));
    cited(cites).into_iter().filter(known).zip(1..).collect()
}

/// The sources that something names.
pub(in crate::views) fn cited(cites: &impl Serialize) -> BTreeSet<SourceId> {
    let mut cited = BTreeSet::new();
    if let Ok(value) = serde_json::to_value(cites) {
        collect(&value, &mut cited);
    }
    cited
}

/// Every name that stands where a source is named: in a field `source` or a list `sources`.
fn collect(value: &Value, cited: &mut BTreeSet<SourceId>) {
    match value {
        Value::Object(fields) => fields.iter().for_each(|(field, value)| {
            let named = match (field.as_str(), value) {
                ("source", one) => std::slice::from_ref(one),
                ("sources", Value::Array(several)) => several.as_slice(),
                _ => &[],
            };
            cited.extend(named.iter().filter_map(Value::as_str).map(SourceId::from));
            collect(value, cited);
        }),
        Value::Array(items) => items.iter().for_each(|item| collect(item, cited)),
        _ => {}
    }
}

/// The list, in the order of the numbers.
pub(in crate::views) fn list(numbers: &BTreeMap<SourceId, usize>, words: &Words<'_>) -> Vec<Block> {
    if numbers.is_empty() {
        return Vec::new();
    }
    vec![Block::notes(numbers.keys().map(|id| words.source_in_full(id)))]
}
