//! Marks behind a statement: the numbers of its sources, and how far it may be trusted.

use crate::{Prose, Words};
use ground::{Source, SourceId, Standing};
use std::collections::BTreeMap;

/// The number of each source in the list at the end of a sheet.
pub(super) struct Notes<'a> {
    numbers: BTreeMap<&'a SourceId, usize>,
}

impl<'a> Notes<'a> {
    pub(super) fn of(sources: &'a BTreeMap<SourceId, Source>) -> Self {
        Self { numbers: sources.keys().zip(1..).collect() }
    }

    /// The mark of a statement, such as ` [2, 5]` or ` (from memory)`.
    pub(super) fn mark(
        &self,
        sources: &[SourceId],
        standing: Standing,
        words: &Words<'_>,
    ) -> Prose {
        let mut numbers: Vec<_> = sources.iter().filter_map(|id| self.numbers.get(id)).collect();
        numbers.sort_unstable();
        let standing = match standing {
            Standing::Published | Standing::Weak => String::new(),
            Standing::Practice => words.word("standing-practice"),
            Standing::Policy => words.word("standing-policy"),
            Standing::Assumed => words.word("standing-assumed"),
            Standing::Remembered => words.word("standing-remembered"),
        };
        let mut mark = Prose::new();
        if !standing.is_empty() {
            mark = mark.text(" (").text(&standing).text(")");
        }
        if !numbers.is_empty() {
            let numbers: Vec<_> = numbers.iter().map(ToString::to_string).collect();
            // The numbers of one statement stay on its line.
            mark = mark.text(&format!(" [{}]", numbers.join(",\u{a0}")));
        }
        mark
    }
}
