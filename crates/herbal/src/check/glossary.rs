//! The glossary: words that are missing, and words that nothing uses.

use super::{Lack, Notes};
use crate::{Flora, Term};
use ground::{Arg, Text};
use identify::{Cell, Kind, Value};
use std::collections::{BTreeMap, BTreeSet};

pub(super) fn check(flora: &Flora, notes: &mut Notes<'_>) {
    let filled = filled(flora);
    let named = named(flora);
    for term in flora.glossary.terms() {
        let id = term.character.id.as_str();
        without_words(term, notes);
        match filled.get(id) {
            Some(states) => unused_states(term, states, notes),
            None if named.contains(id) => note("herbal-column-empty", Lack::Missing, id, notes),
            None => note("herbal-character-unused", Lack::Unused, id, notes),
        }
    }
}

/// The characters of which some row says something, with the states it names.
fn filled(flora: &Flora) -> BTreeMap<&str, BTreeSet<&str>> {
    let mut filled: BTreeMap<&str, BTreeSet<&str>> = BTreeMap::new();
    let sheets = flora.sheets().flat_map(|sheet| &sheet.characters);
    let groups = flora.groups().flat_map(|group| &group.characters);
    for (character, cell) in sheets.chain(groups) {
        filled.entry(character).or_default().extend(states(cell));
    }
    filled
}

/// The characters that some row names as a tell or as one that must be looked at.
fn named(flora: &Flora) -> BTreeSet<&str> {
    let rows = flora.sheets().flat_map(|sheet| sheet.look_alikes.values());
    let tells = rows.flat_map(|row| &row.tells);
    let must_look = flora.sheets().flat_map(|sheet| &sheet.must_look);
    tells.chain(must_look).map(String::as_str).collect()
}

fn states(cell: &Cell) -> Vec<&str> {
    let Value::States { always, usually, sometimes, rarely } = &cell.value else {
        return Vec::new();
    };
    let all = always.iter().chain(usually).chain(sometimes).chain(rarely);
    all.map(String::as_str).collect()
}

/// States without plain words.
fn without_words(term: &Term, notes: &mut Notes<'_>) {
    let id = term.character.id.as_str();
    let Kind::States(states) = &term.character.kind else {
        return;
    };
    for state in states.iter().filter(|state| !term.says.contains_key(&state.id)) {
        let text = Text::new("herbal-state-without-words")
            .with("state", state.id.as_str())
            .with("character", id);
        notes.add(Lack::Missing, ("character", id, ""), text);
    }
}

/// States that no row names, nor any state that is a kind of them; one finding a character.
fn unused_states(term: &Term, used: &BTreeSet<&str>, notes: &mut Notes<'_>) {
    let id = term.character.id.as_str();
    let Kind::States(states) = &term.character.kind else {
        return;
    };
    let general: BTreeSet<_> = states.iter().filter_map(|state| state.kind_of.as_deref()).collect();
    let names = states.iter().map(|state| state.id.as_str());
    let unused = names.filter(|name| !used.contains(name) && !general.contains(name));
    let unused: Vec<Arg> = unused.map(Arg::from).collect();
    if !unused.is_empty() {
        let text = Text::new("herbal-states-unused").with("character", id).with("states", unused);
        notes.add(Lack::Unused, ("character", id, ""), text);
    }
}

fn note(text: &str, lack: Lack, character: &str, notes: &mut Notes<'_>) {
    let text = Text::new(text).with("character", character);
    notes.add(lack, ("character", character, ""), text);
}
