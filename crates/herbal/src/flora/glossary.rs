//! The glossary: every character and state in plain words, and how each is looked at.

use super::glossary_rows::{CharacterRow, GlossaryFile};
use crate::file::Reader;
use crate::open::Open;
use ground::Sourcing;
use identify::{Character, Kind, State};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Every character that a sheet may speak of.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Glossary {
    terms: BTreeMap<String, Term>,
}

/// A character in plain words.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Term {
    /// What judging needs to know of it; its states are sorted by name.
    pub character: Character,
    /// Its name in plain words, such as `leaf edge`.
    pub name: String,
    /// What it is, in one plain line.
    pub is: String,
    /// How to look.
    pub how: String,
    /// What goes wrong in reading it, where that is known.
    pub misread_note: Option<String>,
    /// The plain words of each state, by name.
    pub says: BTreeMap<String, String>,
    /// Where the words were read.
    pub from: Sourcing,
}

impl Glossary {
    /// Every term, in order of its character's name.
    pub fn terms(&self) -> impl Iterator<Item = &Term> {
        self.terms.values()
    }

    /// A character in plain words.
    #[must_use]
    pub fn term(&self, character: &str) -> Option<&Term> {
        self.terms.get(character)
    }

    /// What judging needs to know of a character.
    #[must_use]
    pub fn character(&self, character: &str) -> Option<&Character> {
        self.term(character).map(|term| &term.character)
    }

    /// The states of a character; none when it is measured, counted or unknown.
    #[must_use]
    pub fn states(&self, character: &str) -> &[State] {
        match self.character(character).map(|known| &known.kind) {
            Some(Kind::States(states)) => states,
            _ => &[],
        }
    }

    /// A state of a character.
    #[must_use]
    pub fn state(&self, character: &str, state: &str) -> Option<&State> {
        self.states(character).iter().find(|known| known.id == state)
    }

    /// The plain words of a state, or its name where nobody has given any.
    #[must_use]
    pub fn says<'a>(&'a self, character: &str, state: &'a str) -> &'a str {
        let words = self.term(character).and_then(|term| term.says.get(state));
        words.map_or(state, String::as_str)
    }

    /// Reads the folder `glossary/`, over what is known already.
    pub(super) fn read(reader: &mut Reader<'_>, base: &Self) -> Self {
        let mut read = Self::default();
        for file in reader.files_in("glossary") {
            let Some(rows) = reader.parse::<GlossaryFile>(file) else {
                continue;
            };
            let mut open = Open { reader, file };
            for row in rows.character {
                read.add(&mut open, &row, base);
            }
        }
        let mut terms = base.terms.clone();
        terms.append(&mut read.terms);
        Self { terms }
    }

    fn add(&mut self, open: &mut Open<'_, '_>, row: &CharacterRow, base: &Self) {
        let id = row.id.get_ref();
        open.mark(&row.id.span(), "character", id, "");
        if self.terms.contains_key(id) {
            open.fault("character-twice", row.id.span(), id);
            return;
        }
        if let Some(term) = row.term(open, base.term(id)) {
            self.terms.insert(id.clone(), term);
        }
    }
}
