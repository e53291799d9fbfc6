//! What a reading leaves beside the herbal, for whoever reports on it: where each row was read, and
//! what it rests on.

use crate::file::folder;
use ground::{Place, SourceId, Standing};
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

/// What a reading leaves beside the herbal.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Account {
    /// Where each row stands.
    pub places: Places,
    /// The sources that some fact names.
    pub used: BTreeSet<SourceId>,
    /// How many facts of each standing each folder holds.
    pub facts: BTreeMap<String, BTreeMap<Standing, usize>>,
}

impl Account {
    /// Counts a fact of a file.
    pub(crate) fn count(&mut self, path: &str, standing: Standing, sources: &[SourceId]) {
        let facts = self.facts.entry(folder(path).to_owned()).or_default();
        *facts.entry(standing).or_default() += 1;
        self.used.extend(sources.iter().cloned());
    }

    /// This account with a later reading's laid over it: its facts count beside those it replaces.
    pub(crate) fn overlaid(mut self, later: &Self) -> Self {
        self.places = self.places.overlaid(&later.places);
        self.used.extend(later.used.iter().cloned());
        for (folder, facts) in &later.facts {
            let known = self.facts.entry(folder.clone()).or_default();
            for (standing, count) in facts {
                *known.entry(*standing).or_default() += count;
            }
        }
        self
    }
}

/// Where each row of a herbal stands in its files.
///
/// A row is named by table, entry and field, such as `species`, `Urtica dioica`, `leaf_margin`. The
/// herbal itself holds no positions, since moving a line must change nothing that is computed.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Places {
    files: Vec<String>,
    spots: BTreeMap<(String, String), BTreeMap<String, Spot>>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
struct Spot {
    file: u32,
    line: u32,
    column: u32,
}

impl Places {
    /// Where a row stands: the field if it is known, else the entry, else its name alone.
    #[must_use]
    pub fn at(&self, table: &str, entry: &str, field: &str) -> Place {
        let named = Place::entry(table, entry, field);
        let key = (table.to_owned(), entry.to_owned());
        let fields = self.spots.get(&key);
        let spot = fields.and_then(|fields| fields.get(field).or_else(|| fields.get("")));
        let file = |spot: &Spot| self.files.get(usize::try_from(spot.file).ok()?);
        match spot.and_then(|spot| Some((spot, file(spot)?))) {
            Some((spot, file)) => named.in_file(file).at(spot.line, spot.column),
            None => named,
        }
    }

    /// Remembers where a row stands; the last word counts.
    pub(crate) fn mark(
        &mut self,
        file: &str,
        (line, column): (u32, u32),
        table: &str,
        entry: &str,
        field: &str,
    ) {
        let at = self.file_number(file);
        let spot = Spot { file: at, line, column };
        let key = (table.to_owned(), entry.to_owned());
        let fields = self.spots.entry(key).or_default();
        fields.insert(field.to_owned(), spot);
    }

    /// Files are read one after the other, so that the file is nearly always the last one.
    fn file_number(&mut self, file: &str) -> u32 {
        let at = self.files.iter().rposition(|known| known == file);
        let at = at.unwrap_or_else(|| {
            self.files.push(file.to_owned());
            self.files.len() - 1
        });
        u32::try_from(at).unwrap_or(u32::MAX)
    }

    /// These places, with those of a later reading before them.
    pub(crate) fn overlaid(mut self, later: &Self) -> Self {
        for ((table, entry), fields) in &later.spots {
            for (field, spot) in fields {
                let file = usize::try_from(spot.file).ok();
                let Some(file) = file.and_then(|file| later.files.get(file)) else {
                    continue;
                };
                self.mark(file, (spot.line, spot.column), table, entry, field);
            }
        }
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_field_that_was_not_marked_stands_where_its_entry_stands() {
        let mut places = Places::default();
        places.mark("a.toml", (1, 1), "species", "Urtica dioica", "");
        places.mark("a.toml", (9, 1), "species", "Urtica dioica", "habit");
        let line = |field| places.at("species", "Urtica dioica", field).line;
        assert_eq!((line("habit"), line("sap")), (Some(9), Some(1)));
        assert_eq!(places.at("species", "Urtica urens", "habit").line, None);
    }

    #[test]
    fn an_overlay_says_where_the_newer_row_stands() {
        let (mut base, mut later) = (Places::default(), Places::default());
        base.mark("a.toml", (9, 1), "species", "Urtica dioica", "habit");
        later.mark("mine.toml", (2, 1), "species", "Urtica dioica", "habit");
        let both = base.overlaid(&later);
        let at = both.at("species", "Urtica dioica", "habit");
        assert_eq!((at.file.as_deref(), at.line), (Some("mine.toml"), Some(2)));
    }
}
