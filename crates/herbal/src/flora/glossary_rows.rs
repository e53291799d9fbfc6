//! The rows of a file of `glossary/`, and how each is read by itself.

use super::Term;
use crate::open::{Open, Src};
use ground::Organ;
use identify::{Character, Kind, Sense, Spoils, State, Tool};
use serde::Deserialize;
use std::collections::{BTreeMap, BTreeSet};
use toml::Spanned;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct GlossaryFile {
    #[serde(default)]
    pub(super) character: Vec<CharacterRow>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct CharacterRow {
    pub(super) id: Spanned<String>,
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
    pub(super) fn term(&self, open: &mut Open<'_, '_>, before: Option<&Term>) -> Option<Term> {
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
