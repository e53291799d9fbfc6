//! Uses: part rows against what people gather a plant for, and rows that join no plant.

use super::{Lack, Notes};
use crate::flora::use_field;
use crate::{Flora, GatheredFor, Herbal, Sheet, Uses};
use dose::{PartRow, Route, UsedAs};
use ground::{Arg, Form, Harm, Part, Text};
use std::cmp::Reverse;

const TABLE: &str = "species";

pub(super) fn check(herbal: &Herbal, notes: &mut Notes<'_>) {
    unjoined(&herbal.flora, &herbal.uses, notes);
    for sheet in herbal.flora.sheets() {
        let rows = herbal.uses.table.parts.iter();
        let rows: Vec<_> = rows.filter(|row| row.taxon == sheet.name).collect();
        if rows.is_empty() {
            let text = Text::new("herbal-no-part-rows").taxon("plant", &sheet.name);
            notes.add(Lack::Missing, (TABLE, &sheet.name, ""), text);
            continue;
        }
        for gathered in &sheet.gathered_for {
            gathered_for(sheet, gathered, &rows, notes);
        }
        remembered(sheet, &rows, notes);
        milder_than_its_parts(sheet, &rows, notes);
    }
}

fn unjoined(flora: &Flora, uses: &Uses, notes: &mut Notes<'_>) {
    for row in uses.unjoined(flora) {
        let text = Text::new("herbal-row-joins-nothing")
            .with("table", row.table)
            .with("row", row.id)
            .taxon("plant", row.taxon);
        notes.add(Lack::Unjoined, (row.table, row.id, ""), text);
    }
}

/// What part rows make of a preparation that people gather a part for.
#[derive(PartialEq, Eq, PartialOrd, Ord)]
enum Word {
    /// A row lets it be made.
    Allowed,
    /// No row speaks of it.
    Silent,
    /// No row that speaks of it has a source that clears it.
    Uncleared,
    /// Every row that speaks of it says that it harms, or is no use.
    Refused,
}

fn word(gathered: &GatheredFor, form: Form, rows: &[&PartRow]) -> Word {
    let touched = rows.iter().filter(|row| touches(row, gathered, form));
    let words = touched.map(|row| match (row.used_as, row.feared()) {
        (UsedAs::None, _) | (_, Harm::Harmful | Harm::Deadly) => Word::Refused,
        (_, Harm::Unknown) => Word::Uncleared,
        (_, Harm::None | Harm::Irritant) => Word::Allowed,
    });
    words.min().unwrap_or(Word::Silent)
}

/// Each preparation that people gather a part for has a part row that does not refuse it.
fn gathered_for(sheet: &Sheet, gathered: &GatheredFor, rows: &[&PartRow], notes: &mut Notes<'_>) {
    let lacks = [
        (Word::Silent, Lack::Missing, "herbal-use-without-part-row"),
        (Word::Uncleared, Lack::Remembered, "herbal-use-not-cleared"),
        (Word::Refused, Lack::Contradictory, "herbal-use-refused"),
    ];
    for (said, lack, id) in lacks {
        let forms = gathered.forms.iter().filter(|form| word(gathered, **form, rows) == said);
        let forms: Vec<Arg> = forms.map(|form| form.word().into()).collect();
        if !forms.is_empty() {
            let part = gathered.part.word();
            let text = Text::new(id).taxon("plant", &sheet.name);
            let text = text.with("part", part).with("forms", forms);
            notes.add(lack, (TABLE, &sheet.name, &use_field(part)), text);
        }
    }
}

fn touches(row: &PartRow, gathered: &GatheredFor, form: Form) -> bool {
    row.part.meets(gathered.part) && row.forms.iter().any(|other| other.meets(form))
}

/// Part rows that call something harmless from memory: they refuse.
fn remembered(sheet: &Sheet, rows: &[&PartRow], notes: &mut Notes<'_>) {
    let hearsay = |row: &&&PartRow| row.harm == Harm::None && row.feared() != Harm::None;
    let count = rows.iter().filter(hearsay).count();
    if count > 0 {
        let text = Text::new("herbal-part-rows-remembered")
            .taxon("plant", &sheet.name)
            .with("count", count);
        notes.add(Lack::Remembered, (TABLE, &sheet.name, ""), text);
    }
}

/// A sheet that is milder than what its own rows say of eating a part raw, with no condition: whoever
/// takes the plant for another may do just that.
fn milder_than_its_parts(sheet: &Sheet, rows: &[&PartRow], notes: &mut Notes<'_>) {
    let eaten = |row: &&&PartRow| row.forms.contains(&Form::Raw) && row.route == Route::Mouth;
    let plain = |row: &&&PartRow| row.stage.is_none() && row.part != Part::EssentialOil;
    let known = rows.iter().filter(|row| row.harm != Harm::Unknown);
    let worst = known.filter(eaten).filter(plain).max_by_key(|row| (row.harm, Reverse(row.part)));
    if let Some(row) = worst.filter(|row| row.harm > sheet.feared()) {
        let text = Text::new("herbal-harm-milder-than-part")
            .taxon("plant", &sheet.name)
            .with("harm", sheet.harm.value.word())
            .with("part", row.part.word())
            .with("worst", row.harm.word());
        notes.add(Lack::Contradictory, (TABLE, &sheet.name, "harm"), text);
    }
}
