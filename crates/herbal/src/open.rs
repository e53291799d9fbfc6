//! One file under the reader's eye: the small questions that every row asks.

use crate::file::{Reader, TextFile};
use ground::{Fault, Sourcing};
use serde::Deserialize;
use serde::de::IntoDeserializer;
use std::ops::Range;
use toml::Spanned;

/// The sources of a row as its file lists them; a row without them is a fault, not a syntax error.
pub(crate) type Src = Option<Spanned<Vec<String>>>;

/// One file that is being read.
pub(crate) struct Open<'r, 'a> {
    pub(crate) reader: &'r mut Reader<'a>,
    pub(crate) file: &'a TextFile,
}

impl Open<'_, '_> {
    /// Notes a fault at a byte range.
    pub(crate) fn fault(&mut self, code: &str, span: Range<usize>, got: &str) {
        self.reader.fault(code, self.file, span, got);
    }

    /// Notes a fault whose sentences need one word more.
    pub(crate) fn fault_with(
        &mut self,
        code: &str,
        span: Range<usize>,
        got: &str,
        (name, word): (&str, &str),
    ) {
        let at = crate::file::place(self.file, &span);
        self.reader.add_fault(Fault::new(code, at, got).with(name, word));
    }

    /// Remembers where a row stands.
    pub(crate) fn mark(&mut self, span: &Range<usize>, table: &str, entry: &str, field: &str) {
        self.reader.mark(self.file, span, table, entry, field);
    }

    /// The standing of a row that begins at this place.
    pub(crate) fn sourcing(&mut self, src: &Src, row: Range<usize>) -> Sourcing {
        let none = Spanned::new(row, Vec::new());
        self.reader.sourcing(self.file, src.as_ref().unwrap_or(&none))
    }

    /// The standing of the main statement of a cell that begins at this place.
    pub(crate) fn main_sourcing(&mut self, src: &Src, cell: Range<usize>) -> Sourcing {
        let none = Spanned::new(cell, Vec::new());
        self.reader.main_sourcing(self.file, src.as_ref().unwrap_or(&none))
    }

    /// A word of a closed list.
    pub(crate) fn word<'w, T: Deserialize<'w>>(&mut self, word: &'w Spanned<String>) -> Option<T> {
        let text = word.get_ref().as_str();
        let read: Result<T, serde::de::value::Error> = T::deserialize(text.into_deserializer());
        match read {
            Ok(item) => Some(item),
            Err(why) => {
                let known = why.to_string();
                self.fault_with("unknown-word", word.span(), text, ("known", &known));
                None
            }
        }
    }

    /// Several words of a closed list.
    pub(crate) fn words<'w, T: Deserialize<'w>>(&mut self, words: &'w [Spanned<String>]) -> Vec<T> {
        words.iter().filter_map(|word| self.word(word)).collect()
    }

    /// Notes that a field is missing, unless it is there.
    pub(crate) fn need(&mut self, there: bool, field: &str, row: Range<usize>) {
        if !there {
            self.fault("missing-field", row, field);
        }
    }
}
