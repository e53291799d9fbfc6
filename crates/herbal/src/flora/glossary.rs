//! The glossary: every character and state in plain words, and how each is looked at.

use crate::file::Reader;
use crate::open::{Open, Src};
use ground::{Organ, Sourcing};
use identify::{Character, Kind, Sense, Spoils, State, Tool};
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};
use toml::Spanned;

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

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct GlossaryFile {
    #[serde(default)]
    character: Vec<CharacterRow>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct CharacterRow {
    id: Spanned<String>,
    name: String,
    is: String,
    how: String,
    kind: Spanned<String>,
    organ: Spanned<String>,
    sense: Spanned<String>,
    tool: Spanned<String>,
    spoils: Spanned<String>,
    seconds: Spanned<i64>,
    group: String,
    misread_note: Option<String>,
    src: Src,
    #[serde(default)]
    state: Vec<StateRow>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct StateRow {
    id: Spanned<String>,
    says: Option<String>,
    kind_of: Option<Spanned<String>>,
    #[serde(default)]
    taken_for: Vec<Spanned<String>>,
}

impl CharacterRow {
    /// The term, with the states of the same character that an earlier reading knew.
    ///
    /// A word that cannot be read is a fault, so that what stands in for it is never handed out; it
    /// spares each sheet that speaks of the character a fault of its own.
    fn term(&self, open: &mut Open<'_, '_>, before: Option<&Term>) -> Option<Term> {
        let (states, says) = self.states(open, before);
        let kind = self.kind(open, states)?;
        if before.is_some_and(|b| !same_kind(&b.character.kind, &kind)) {
            open.fault("kind-changed", self.kind.span(), self.kind.get_ref());
        }
        let character = Character {
            id: self.id.get_ref().clone(),
            kind,
            organ: open.word(&self.organ).unwrap_or(Organ::Whole),
            group: self.group.clone(),
            sense: open.word(&self.sense).unwrap_or(Sense::Smell),
            tool: open.word(&self.tool).unwrap_or(Tool::Spade),
            spoils: open.word(&self.spoils).unwrap_or(Spoils::Plant),
            seconds: seconds(open, &self.seconds).unwrap_or(u16::MAX),
        };
        Some(Term {
            character,
            name: self.name.clone(),
            is: self.is.clone(),
            how: self.how.clone(),
            misread_note: self.misread_note.clone(),
            says,
            from: open.sourcing(&self.src, self.id.span()),
        })
    }

    fn kind(&self, open: &mut Open<'_, '_>, states: Vec<State>) -> Option<Kind> {
        let span = self.kind.span();
        let kind = match self.kind.get_ref().as_str() {
            "states" => Kind::States(states),
            "length" => Kind::Length,
            "count" => Kind::Count,
            other => {
                open.fault_with("unknown-word", span, other, ("known", "states, length, count"));
                return None;
            }
        };
        if kind == Kind::Length && !self.id.get_ref().ends_with("_mm") {
            open.fault("no-unit", self.id.span(), self.id.get_ref());
        }
        let fits = match &kind {
            Kind::States(states) => !states.is_empty(),
            Kind::Length | Kind::Count => self.state.is_empty(),
        };
        if !fits {
            open.fault("states-and-kind", span, self.kind.get_ref());
        }
        Some(kind)
    }

    fn states(
        &self,
        open: &mut Open<'_, '_>,
        before: Option<&Term>,
    ) -> (Vec<State>, BTreeMap<String, String>) {
        let mut states: BTreeMap<String, State> = BTreeMap::new();
        let mut says = BTreeMap::new();
        if let Some(Term { character, says: known, .. }) = before {
            says.clone_from(known);
            if let Kind::States(known) = &character.kind {
                states.extend(known.iter().map(|state| (state.id.clone(), state.clone())));
            }
        }
        let mut here = BTreeSet::new();
        for row in &self.state {
            let id = row.id.get_ref();
            if !here.insert(id) {
                open.fault("state-twice", row.id.span(), id);
            }
            states.insert(id.clone(), row.state());
            says.extend(row.says.iter().map(|words| (id.clone(), words.clone())));
        }
        for row in &self.state {
            row.check(open, &states);
        }
        (states.into_values().collect(), says)
    }
}

impl StateRow {
    fn state(&self) -> State {
        let mut taken_for: Vec<_> = self.taken_for.iter().map(|s| s.get_ref().clone()).collect();
        taken_for.sort();
        taken_for.dedup();
        State {
            id: self.id.get_ref().clone(),
            kind_of: self.kind_of.as_ref().map(|kind| kind.get_ref().clone()),
            taken_for,
        }
    }

    /// The states that it names exist and are others.
    fn check(&self, open: &mut Open<'_, '_>, states: &BTreeMap<String, State>) {
        for named in self.kind_of.iter().chain(&self.taken_for) {
            if named.get_ref() == self.id.get_ref() {
                open.fault("state-names-itself", named.span(), named.get_ref());
            } else if !states.contains_key(named.get_ref()) {
                let known: Vec<_> = states.keys().map(String::as_str).collect();
                let known = known.join(", ");
                open.fault_with("unknown-state", named.span(), named.get_ref(), ("known", &known));
            }
        }
        if let Some(kind) = self.kind_of.as_ref().filter(|_| in_a_ring(self.id.get_ref(), states)) {
            open.fault("kind-of-ring", kind.span(), kind.get_ref());
        }
    }
}

/// Whether going from a state to its kind, and on to the kind of that, comes back.
fn in_a_ring(state: &str, states: &BTreeMap<String, State>) -> bool {
    let kind_of = |id: &str| states.get(id).and_then(|state| state.kind_of.as_deref());
    let mut above = std::iter::successors(kind_of(state), |id| kind_of(id)).take(states.len());
    kind_of(state) != Some(state) && above.any(|id| id == state)
}

fn same_kind(a: &Kind, b: &Kind) -> bool {
    std::mem::discriminant(a) == std::mem::discriminant(b)
}

fn seconds(open: &mut Open<'_, '_>, seconds: &Spanned<i64>) -> Option<u16> {
    let read = u16::try_from(*seconds.get_ref()).ok().filter(|s| *s > 0);
    if read.is_none() {
        let got = seconds.get_ref().to_string();
        open.fault("impossible-seconds", seconds.span(), &got);
    }
    read
}
