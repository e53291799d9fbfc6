//! Cells: what a sheet or a group says of one character.

use super::Glossary;
use crate::file::Reader;
use crate::open::{Open, Src};
use ground::Sourcing;
use identify::{Cell, Kind, Rank, Value};
use serde::Deserialize;
use std::collections::BTreeMap;
use toml::Spanned;

/// The table `[characters]` of a file.
pub(super) type CellRows = BTreeMap<Spanned<String>, CellRow>;

/// A row such as `leaf_margin = { always = ["serrate"], src = ["gc91"] }`.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct CellRow {
    always: Option<Vec<Spanned<String>>>,
    usually: Option<Vec<Spanned<String>>>,
    sometimes: Option<Vec<Spanned<String>>>,
    rarely: Option<Vec<Spanned<String>>>,
    range: Option<Spanned<(f64, f64)>>,
    extreme: Option<Spanned<(f64, f64)>>,
    src: Src,
}

/// Reads the cells of a sheet or a group, each checked against the glossary.
pub(super) fn cells(
    open: &mut Open<'_, '_>,
    rows: &CellRows,
    glossary: &Glossary,
    from: Rank,
) -> BTreeMap<String, Cell> {
    let mut cells = BTreeMap::new();
    for (character, row) in rows {
        let name = character.get_ref();
        let Some(known) = glossary.character(name) else {
            unknown_character(open, character);
            continue;
        };
        let value = match &known.kind {
            Kind::States(_) => states(open, character, row, glossary),
            Kind::Length => range(open, character, row, 1e-3),
            Kind::Count => range(open, character, row, 0.0),
        };
        let sourcing = open.main_sourcing(&row.src, character.span());
        if let Some(value) = value {
            cells.insert(name.clone(), row.cell(value, sourcing, from));
        }
    }
    cells
}

/// A character that the glossary lacks; no fault when a file of the glossary could not be read.
pub(super) fn unknown_character(open: &mut Open<'_, '_>, name: &Spanned<String>) {
    if !open.reader.broken("glossary") {
        open.fault("unknown-character", name.span(), name.get_ref());
    }
}

impl CellRow {
    /// A word such as `memory` beside a source marks the rarer statements. Where there is none it
    /// must mark some of the main one, and nobody can tell which: then all of it is remembered.
    fn cell(&self, value: Value, sourcing: Sourcing, from: Rank) -> Cell {
        let src = self.src.as_ref().map(Spanned::get_ref);
        let bare = src.and_then(|src| Reader::bare_standing(src));
        let rare_standing = bare.map_or(sourcing.standing, |bare| bare.max(sourcing.standing));
        let standing = if self.has_rare() { sourcing.standing } else { rare_standing };
        Cell { value, standing, rare_standing, from, sources: sourcing.sources }
    }

    fn has_rare(&self) -> bool {
        self.sometimes.is_some() || self.rarely.is_some() || self.extreme.is_some()
    }

    /// The statements about states, with the word that each is made under.
    fn named(&self) -> [(&'static str, &[Spanned<String>]); 4] {
        [
            ("always", self.always.as_deref().unwrap_or_default()),
            ("usually", self.usually.as_deref().unwrap_or_default()),
            ("sometimes", self.sometimes.as_deref().unwrap_or_default()),
            ("rarely", self.rarely.as_deref().unwrap_or_default()),
        ]
    }
}

fn states(
    open: &mut Open<'_, '_>,
    character: &Spanned<String>,
    row: &CellRow,
    glossary: &Glossary,
) -> Option<Value> {
    let name = character.get_ref();
    if let Some(range) = row.range.as_ref().or(row.extreme.as_ref()) {
        open.fault("range-of-states", range.span(), name);
        return None;
    }
    let mut seen = BTreeMap::new();
    for (word, states) in row.named() {
        for state in states {
            known_state(open, glossary, name, state);
            if seen.insert(state.get_ref(), word).is_some() {
                open.fault("state-twice", state.span(), state.get_ref());
            }
        }
    }
    if seen.is_empty() {
        open.fault("empty-cell", character.span(), name);
        return None;
    }
    if row.always.is_some() && seen.values().any(|word| *word != "always") {
        open.fault("always-beside-others", character.span(), name);
    }
    let [always, usually, sometimes, rarely] = row.named().map(|(_, states)| sorted(states));
    Some(Value::States { always, usually, sometimes, rarely })
}

fn known_state(open: &mut Open<'_, '_>, glossary: &Glossary, name: &str, state: &Spanned<String>) {
    if glossary.state(name, state.get_ref()).is_some() {
        return;
    }
    let known: Vec<_> = glossary.states(name).iter().map(|s| s.id.as_str()).collect();
    let known = known.join(", ");
    open.fault_with("unknown-state", state.span(), state.get_ref(), ("known", &known));
}

fn sorted(states: &[Spanned<String>]) -> Vec<String> {
    let mut states: Vec<_> = states.iter().map(|state| state.get_ref().clone()).collect();
    states.sort();
    states
}

/// A range whose upper end is at least `least`: a count may be none, a length may not.
fn range(
    open: &mut Open<'_, '_>,
    character: &Spanned<String>,
    row: &CellRow,
    least: f64,
) -> Option<Value> {
    let name = character.get_ref();
    if let Some(state) = row.named().iter().find_map(|(_, states)| states.first()) {
        open.fault("state-of-range", state.span(), state.get_ref());
        return None;
    }
    let Some(range) = &row.range else {
        open.fault("empty-cell", character.span(), name);
        return None;
    };
    let ordinary = ordered(open, range, least)?;
    let extreme = match &row.extreme {
        Some(extreme) => Some(around(open, extreme, ordinary)?),
        None => None,
    };
    Some(Value::Range { ordinary, extreme })
}

/// The two ends of a range, which must be possible: none below zero, the lower one first.
fn ordered(open: &mut Open<'_, '_>, range: &Spanned<(f64, f64)>, least: f64) -> Option<(f64, f64)> {
    let (low, high) = *range.get_ref();
    let possible = high.is_finite() && 0.0 <= low && low <= high && least <= high;
    if !possible {
        open.fault("impossible-range", range.span(), &format!("{low} to {high}"));
    }
    possible.then_some((low, high))
}

/// Outer limits, which hold the ordinary range.
fn around(
    open: &mut Open<'_, '_>,
    extreme: &Spanned<(f64, f64)>,
    ordinary: (f64, f64),
) -> Option<(f64, f64)> {
    let (low, high) = ordered(open, extreme, 0.0)?;
    let holds = low <= ordinary.0 && ordinary.1 <= high;
    if !holds {
        open.fault("extreme-inside-range", extreme.span(), &format!("{low} to {high}"));
    }
    holds.then_some((low, high))
}
