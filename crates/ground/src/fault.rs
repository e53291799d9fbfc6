//! Faults: what is wrong with an input, where, what was wanted and how to mend it.

use crate::{Arg, Text};
use serde::{Deserialize, Serialize};
use std::fmt;

/// Where in an input something stands.
///
/// A working names an input by table and identifier only; the line and column serve faults, since
/// reordering a file must change no answer.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Place {
    /// The file, as the reader was told it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub file: Option<String>,
    /// The table, such as `stand`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub table: Option<String>,
    /// The identifier of the entry in that table.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub entry: Option<String>,
    /// The field in that entry.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub field: Option<String>,
    /// The line, counted from 1.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub line: Option<u32>,
    /// The column, counted from 1 in characters.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub column: Option<u32>,
}

impl Place {
    /// A field of an entry of a table.
    #[must_use]
    pub fn entry(table: &str, entry: &str, field: &str) -> Self {
        let said = |word: &str| (!word.is_empty()).then(|| word.to_owned());
        Self { table: said(table), entry: said(entry), field: said(field), ..Self::default() }
    }

    /// The same place, in this file.
    #[must_use]
    pub fn in_file(mut self, file: impl Into<String>) -> Self {
        self.file = Some(file.into());
        self
    }

    /// The same place, on this line and column.
    #[must_use]
    pub fn at(mut self, line: u32, column: u32) -> Self {
        self.line = Some(line);
        self.column = Some(column);
        self
    }

    /// Line and column (from 1) of a byte offset in a text.
    ///
    /// An offset beyond the end, or inside a character, gives the last whole character before it.
    #[must_use]
    pub fn line_and_column(text: &str, offset: usize) -> (u32, u32) {
        let mut line = 1;
        let mut column = 1;
        for (at, character) in text.char_indices() {
            if at + character.len_utf8() > offset {
                break;
            }
            if character == '\n' {
                line += 1;
                column = 1;
            } else {
                column += 1;
            }
        }
        (line, column)
    }
}

/// One thing that is wrong with an input.
///
/// The catalogue holds three sentences for each code: the message itself, `.want` (what was
/// expected) and `.mend` (how to put it right).
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Fault {
    /// Where it stands.
    pub at: Place,
    /// The kind of fault, such as `unknown-species`.
    pub code: String,
    /// What stands there, as written.
    pub got: String,
    /// What the sentences need besides: the nearest names, the range that would fit.
    #[serde(flatten)]
    pub details: Text,
}

impl Fault {
    /// A fault of this kind at this place.
    ///
    /// ```
    /// use ground::{Fault, Place};
    /// let fault = Fault::new("unknown-species", Place::entry("stand", "bank", "species"), "Urtica dioca")
    ///     .with("near", "Urtica dioica");
    /// assert_eq!(fault.details.id, "fault-unknown-species");
    /// ```
    #[must_use]
    pub fn new(code: &str, at: Place, got: impl Into<String>) -> Self {
        let got = got.into();
        let details = Text::new(format!("fault-{code}")).with("got", got.as_str());
        Self { at, code: code.to_owned(), got, details }
    }

    /// The same fault with something more for its sentences.
    #[must_use]
    pub fn with(mut self, name: &str, arg: impl Into<Arg>) -> Self {
        self.details = self.details.with(name, arg);
        self
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Place { file, table, entry, field, line, column } = &self.at;
        let mut words = file.iter().chain(table).chain(entry).chain(field);
        if let Some(first) = words.next() {
            write!(f, "{first}")?;
        }
        for word in words {
            write!(f, " / {word}")?;
        }
        if let (Some(line), Some(column)) = (line, column) {
            write!(f, " {line}:{column}")?;
        }
        write!(f, ": {}: {}", self.code, self.got)
    }
}

/// All faults of an input, sorted by place. Never empty when it is an error.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Faults(Vec<Fault>);

impl Faults {
    /// No fault yet.
    #[must_use]
    pub const fn none() -> Self {
        Self(Vec::new())
    }

    /// Notes one more.
    pub fn add(&mut self, fault: Fault) {
        self.0.push(fault);
    }

    /// Takes the value, or notes the fault.
    pub fn note<T>(&mut self, result: Result<T, Fault>) -> Option<T> {
        match result {
            Ok(value) => Some(value),
            Err(fault) => {
                self.add(fault);
                None
            }
        }
    }

    /// Takes the value, or notes all the faults.
    pub fn note_all<T>(&mut self, result: Result<T, Faults>) -> Option<T> {
        match result {
            Ok(value) => Some(value),
            Err(faults) => {
                self.0.extend(faults.0);
                None
            }
        }
    }

    /// The value when no fault was noted, otherwise every fault, sorted by place.
    ///
    /// # Errors
    /// Every fault noted so far.
    pub fn or<T>(mut self, value: T) -> Result<T, Faults> {
        if self.0.is_empty() {
            return Ok(value);
        }
        self.sort();
        Err(self)
    }

    /// Whether none was noted.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The faults, in order of place.
    pub fn iter(&self) -> std::slice::Iter<'_, Fault> {
        self.0.iter()
    }

    fn sort(&mut self) {
        let key = |fault: &Fault| (fault.at.file.clone(), fault.at.line, fault.at.column);
        self.0.sort_by(|a, b| key(a).cmp(&key(b)).then_with(|| a.cmp(b)));
        self.0.dedup();
    }
}

impl From<Fault> for Faults {
    fn from(fault: Fault) -> Self {
        Self(vec![fault])
    }
}

impl FromIterator<Fault> for Faults {
    fn from_iter<I: IntoIterator<Item = Fault>>(faults: I) -> Self {
        let mut all = Self(faults.into_iter().collect());
        all.sort();
        all
    }
}

impl IntoIterator for Faults {
    type Item = Fault;
    type IntoIter = std::vec::IntoIter<Fault>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

impl fmt::Display for Faults {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for fault in &self.0 {
            writeln!(f, "{fault}")?;
        }
        Ok(())
    }
}

impl std::error::Error for Fault {}
impl std::error::Error for Faults {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_and_columns_are_counted_from_one_in_characters() {
        let text = "a = 1\nname = \"Süß\" x";
        assert_eq!(Place::line_and_column(text, 0), (1, 1));
        assert_eq!(Place::line_and_column(text, text.find('x').unwrap()), (2, 14));
        assert_eq!(Place::line_and_column(text, 10_000), (2, 15));
    }

    #[test]
    fn all_faults_come_back_sorted_by_line() {
        let mut faults = Faults::none();
        faults.add(Fault::new("b", Place::default().at(9, 1), "later"));
        faults.add(Fault::new("a", Place::default().at(2, 5), "earlier"));
        let all = faults.or(()).unwrap_err();
        let got: Vec<_> = all.iter().map(|f| f.got.as_str()).collect();
        assert_eq!(got, ["earlier", "later"]);
    }
}
