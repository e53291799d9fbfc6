//! Sheets: what rests on memory, and names that lead nowhere or to two places.

use super::{Lack, Notes};
use crate::{Flora, Sheet};
use ground::{Arg, Harm, Organ, Part, Standing, Text};
use std::collections::{BTreeMap, BTreeSet};

const TABLE: &str = "species";

pub(super) fn check(flora: &Flora, notes: &mut Notes<'_>) {
    for sheet in flora.sheets() {
        remembered_cells(sheet, notes);
        remembered_rows(sheet, notes);
        former_names(flora, sheet, notes);
        unseen_seasons(flora, sheet, notes);
    }
    names_of_several(flora, notes);
    groups_without_members(flora, notes);
}

/// Characters whose main statement is remembered, one finding a sheet.
fn remembered_cells(sheet: &Sheet, notes: &mut Notes<'_>) {
    let cells = sheet.characters.iter();
    let remembered = cells.filter(|(_, cell)| !cell.standing.may_clear());
    let names: Vec<Arg> = remembered.map(|(name, _)| name.as_str().into()).collect();
    if !names.is_empty() {
        let text = Text::new("herbal-cells-remembered")
            .taxon("plant", &sheet.name)
            .with("count", names.len())
            .with("characters", names);
        notes.add(Lack::Remembered, (TABLE, &sheet.name, ""), text);
    }
}

fn remembered_rows(sheet: &Sheet, notes: &mut Notes<'_>) {
    let mut note = |standing: Standing, id: &str, field: &str| {
        if !standing.may_clear() {
            let text = Text::new(id).taxon("plant", &sheet.name);
            notes.add(Lack::Remembered, (TABLE, &sheet.name, field), text);
        }
    };
    note(sheet.harm.from.standing, "herbal-harm-remembered", "harm");
    let relatives = sheet.relatives.from.standing;
    note(relatives, "herbal-relatives-remembered", "relatives");
}

/// A former name that is the name of another sheet: one of the two is wrong.
fn former_names(flora: &Flora, sheet: &Sheet, notes: &mut Notes<'_>) {
    for former in sheet.former.iter().filter(|name| flora.sheet(name).is_some()) {
        let text = Text::new("herbal-former-name-is-a-sheet")
            .taxon("plant", &sheet.name)
            .taxon("former", former);
        notes.add(Lack::Contradictory, (TABLE, &sheet.name, ""), text);
    }
}

/// Flower or fruit of which something is said, but not when it is seen: looks at it count all year.
fn unseen_seasons(flora: &Flora, sheet: &Sheet, notes: &mut Notes<'_>) {
    let organ = |name: &String| flora.glossary.character(name).map(|known| known.organ);
    let organs: BTreeSet<_> = sheet.characters.keys().filter_map(organ).collect();
    for (organ, part) in [(Organ::Flower, Part::Flower), (Organ::Fruit, Part::Fruit)] {
        if organs.contains(&organ) && !sheet.months.contains_key(&part) {
            let text = Text::new("herbal-months-missing")
                .taxon("plant", &sheet.name)
                .with("part", part.word());
            notes.add(Lack::Missing, (TABLE, &sheet.name, ""), text);
        }
    }
}

/// Common names that several plants carry, where one of them harms.
fn names_of_several(flora: &Flora, notes: &mut Notes<'_>) {
    let mut carriers: BTreeMap<String, Vec<&Sheet>> = BTreeMap::new();
    for sheet in flora.sheets() {
        for name in &sheet.common {
            carriers.entry(name.to_lowercase()).or_default().push(sheet);
        }
    }
    for (name, sheets) in carriers {
        let harms = sheets.iter().any(|sheet| sheet.feared() >= Harm::Unknown);
        if let ([first, _, ..], true) = (sheets.as_slice(), harms) {
            let plants: Vec<_> = sheets.iter().map(|s| Arg::Taxon(s.name.clone())).collect();
            let text = Text::new("herbal-name-of-several").with("name", name);
            let text = text.with("plants", plants);
            notes.add(Lack::Contradictory, (TABLE, &first.name, ""), text);
        }
    }
}

fn groups_without_members(flora: &Flora, notes: &mut Notes<'_>) {
    let families = flora.sheets().map(|sheet| sheet.family.as_str());
    let known: BTreeSet<_> = families.chain(flora.sheets().map(Sheet::genus)).collect();
    for group in flora.groups().filter(|group| !known.contains(group.name.as_str())) {
        let text = Text::new("herbal-group-without-members").taxon("group", &group.name);
        notes.add(Lack::Unused, ("group", &group.name, ""), text);
    }
}
