//! Faults in words: where it stands, what is wrong, what was wanted, how to mend it.

use crate::Catalogue;
use ground::{Fault, Faults, Place, Text};

/// A fault in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SaidFault {
    /// Where it stands: file, line and column, table, entry and field.
    pub place: String,
    /// What is wrong.
    pub what: String,
    /// What was wanted.
    pub want: String,
    /// How to mend it.
    pub mend: String,
}

impl Catalogue {
    /// A fault in words.
    ///
    /// ```
    /// use ground::{Fault, Place};
    /// let at = Place::entry("stand", "bank", "species").in_file("outing.toml").at(12, 9);
    /// let said = page::Catalogue::english().fault(&Fault::new("no-such-code", at, "x"));
    /// assert_eq!(said.place, "outing.toml:12:9, stand bank, species");
    /// ```
    #[must_use]
    pub fn fault(&self, fault: &Fault) -> SaidFault {
        SaidFault {
            place: self.place(&fault.at),
            what: self.say(&fault.details),
            want: self.say_field(&fault.details, "want"),
            mend: self.say_field(&fault.details, "mend"),
        }
    }

    /// Every fault in words, three lines each, the last of them the mend.
    #[must_use]
    pub fn faults(&self, faults: &Faults) -> String {
        let said: Vec<_> =
            faults.iter().map(|fault| self.fault_lines(fault).join("\n  ")).collect();
        said.join("\n\n") + "\n"
    }

    fn fault_lines(&self, fault: &Fault) -> [String; 3] {
        let said = self.fault(fault);
        let line = |id: &str, parts: &[(&str, &str)]| {
            let text =
                parts.iter().fold(Text::new(id), |text, (name, words)| text.with(name, *words));
            self.say(&text)
        };
        [
            line("said-fault", &[("place", &said.place), ("fault", &said.what)]),
            line("said-want", &[("want", &said.want)]),
            line("said-mend", &[("mend", &said.mend)]),
        ]
    }

    /// A place in an input, in words.
    #[must_use]
    pub fn place(&self, place: &Place) -> String {
        let parts = [self.place_in_file(place), self.place_in_table(place), place.field.clone()];
        let parts: Vec<_> = parts.into_iter().flatten().collect();
        if parts.is_empty() { self.word("place-unknown") } else { parts.join(", ") }
    }

    fn place_in_file(&self, place: &Place) -> Option<String> {
        let file = place.file.as_deref()?;
        let text = match (place.line, place.column) {
            (Some(line), Some(column)) => Text::new("place-file-line")
                .with("line", line.to_string())
                .with("column", column.to_string()),
            _ => Text::new("place-file"),
        };
        Some(self.say(&text.with("file", file)))
    }

    fn place_in_table(&self, place: &Place) -> Option<String> {
        let table = place.table.as_deref()?;
        let Some(entry) = place.entry.as_deref() else {
            return Some(table.to_owned());
        };
        let text = Text::new("place-entry").with("table", table).with("entry", entry);
        Some(self.say(&text))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fault_says_where_what_wanted_and_mend() {
        let at = Place::entry("lot", "a", "water").in_file("outing.toml").at(3, 7);
        let fault = Fault::new("one-key-two-distributions", at, "lot/a");
        let said = Catalogue::english().faults(&Faults::from(fault));
        let lines: Vec<_> = said.lines().collect();
        assert_eq!(lines.len(), 3);
        assert!(lines[0].starts_with("outing.toml:3:7, lot a, water: The same quantity “lot/a”"));
        assert!(lines[1].starts_with("  Wanted: "));
        assert!(lines[2].starts_with("  To mend it: "));
    }

    #[test]
    fn a_place_that_nobody_gave_is_the_input() {
        let catalogue = Catalogue::english();
        assert_eq!(catalogue.place(&Place::default()), "the input");
        let table_only = Place::entry("plan", "", "");
        assert_eq!(catalogue.place(&table_only), "plan");
    }
}
