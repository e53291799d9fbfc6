//! Look-alikes: whether what is said to tell two plants apart does.

use super::{Lack, Notes};
use crate::flora::look_alike_field;
use crate::{Flora, Glossary, Sheet};
use ground::{Arg, Harm, Standing, Text};
use identify::{Cell, Value};
use std::collections::BTreeSet;

/// How many tells a gathered plant should have against each plant that harms.
const ENOUGH: usize = 3;

pub(super) fn check(flora: &Flora, notes: &mut Notes<'_>) {
    for sheet in flora.sheets() {
        for name in sheet.look_alikes.keys() {
            match flora.sheet(name) {
                None => no_sheet(sheet, name, notes),
                Some(other) => tells(flora, sheet, other, notes),
            }
        }
    }
    for (gathered, harmful) in pairs(flora) {
        few_tells(flora, gathered, harmful, notes);
    }
}

/// A look-alike that has no sheet counts as deadly.
fn no_sheet(sheet: &Sheet, name: &str, notes: &mut Notes<'_>) {
    let text = Text::new("herbal-look-alike-without-sheet")
        .taxon("plant", &sheet.name)
        .taxon("other", name);
    note(Lack::Unjoined, sheet, name, text, notes);
}

/// Each tell is filled on both sides, and differs.
fn tells(flora: &Flora, sheet: &Sheet, other: &Sheet, notes: &mut Notes<'_>) {
    let Some(resemblance) = sheet.look_alikes.get(&other.name) else {
        return;
    };
    for tell in &resemblance.tells {
        let text = |id: &str| {
            Text::new(id)
                .with("tell", tell.as_str())
                .taxon("plant", &sheet.name)
                .taxon("other", &other.name)
        };
        let (here, there) = (flora.cell(sheet, tell), flora.cell(other, tell));
        let (lack, text) = match (here, there) {
            (None, _) => (Lack::Missing, text("herbal-tell-empty").taxon("empty", &sheet.name)),
            (_, None) => (Lack::Missing, text("herbal-tell-empty").taxon("empty", &other.name)),
            (Some(a), Some(b)) if !differ(&flora.glossary, tell, a, b) => {
                (Lack::Contradictory, text("herbal-tell-tells-nothing"))
            }
            _ => continue,
        };
        note(lack, sheet, &other.name, text, notes);
    }
}

/// A gathered plant and each harmful one that it is taken for, or that is taken for it.
fn pairs(flora: &Flora) -> BTreeSet<(&str, &str)> {
    let mut pairs = BTreeSet::new();
    for sheet in flora.sheets() {
        for other in sheet.look_alikes.keys().filter_map(|name| flora.sheet(name)) {
            for (a, b) in [(sheet, other), (other, sheet)] {
                if a.is_gathered() && harmful(b) {
                    pairs.insert((a.name.as_str(), b.name.as_str()));
                }
            }
        }
    }
    pairs
}

/// Fewer than three published tells that differ: such a pair can hardly be settled.
fn few_tells(flora: &Flora, gathered: &str, harmful: &str, notes: &mut Notes<'_>) {
    let (Some(plant), Some(other)) = (flora.sheet(gathered), flora.sheet(harmful)) else {
        return;
    };
    let row = |sheet: &Sheet, name: &str| {
        let row = sheet.look_alikes.get(name);
        row.map(|row| row.tells.clone()).unwrap_or_default()
    };
    let mut tells = row(plant, harmful);
    tells.extend(row(other, gathered));
    let good: BTreeSet<_> =
        tells.iter().filter(|tell| published(flora, plant, other, tell)).collect();
    if good.len() < ENOUGH {
        let names: Vec<Arg> = good.iter().map(|tell| tell.as_str().into()).collect();
        let text = Text::new("herbal-few-tells")
            .taxon("plant", gathered)
            .taxon("other", harmful)
            .with("count", good.len())
            .with("tells", names);
        note(Lack::Missing, plant, harmful, text, notes);
    }
}

fn published(flora: &Flora, plant: &Sheet, other: &Sheet, tell: &str) -> bool {
    let (Some(a), Some(b)) = (flora.cell(plant, tell), flora.cell(other, tell)) else {
        return false;
    };
    let published = |cell: &Cell| cell.standing == Standing::Published;
    published(a) && published(b) && differ(&flora.glossary, tell, a, b)
}

fn harmful(sheet: &Sheet) -> bool {
    sheet.feared() >= Harm::Unknown
}

/// Whether what is seen as a rule differs: no state in common, nor a state and its kind; ordinary
/// ranges apart.
fn differ(glossary: &Glossary, character: &str, a: &Cell, b: &Cell) -> bool {
    match (&a.value, &b.value) {
        (Value::Range { ordinary: a, .. }, Value::Range { ordinary: b, .. }) => {
            a.1 < b.0 || b.1 < a.0
        }
        (a, b) => {
            let (a, b) = (main_states(a), main_states(b));
            let same = |x: &str, y: &str| {
                kinds(glossary, character, x).contains(y)
                    || kinds(glossary, character, y).contains(x)
            };
            !a.is_empty() && !b.is_empty() && !a.iter().any(|x| b.iter().any(|y| same(x, y)))
        }
    }
}

/// The states that are seen as a rule.
fn main_states(value: &Value) -> Vec<&str> {
    match value {
        Value::States { always, usually, .. } => {
            always.iter().chain(usually).map(String::as_str).collect()
        }
        Value::Shares(_) | Value::Range { .. } => Vec::new(),
    }
}

/// A state, its kind, and the kind of that, and so on.
fn kinds<'a>(glossary: &'a Glossary, character: &str, state: &'a str) -> BTreeSet<&'a str> {
    let kind_of = |id: &&str| glossary.state(character, id)?.kind_of.as_deref();
    std::iter::successors(Some(state), kind_of).collect()
}

fn note(lack: Lack, sheet: &Sheet, other: &str, text: Text, notes: &mut Notes<'_>) {
    notes.add(lack, ("species", &sheet.name, &look_alike_field(other)), text);
}
