//! Reading a file of `species/`: whole, or laid over a sheet that is known.

use super::cell::cells;
use super::sheet::{Conflict, Kin, Sheet};
use super::sheet_rows::{SheetFile, characters, season_of, sorted, unlike};
use super::{Glossary, TABLE};
use crate::open::Open;
use ground::{Harm, LifeForm, Sourced, Sourcing, Standing};
use identify::{Rank, RelativesStatement};
use std::collections::BTreeMap;
use std::ops::Range;

impl SheetFile {
    /// The sheet that the file gives. Over a known sheet only what is given is replaced, each
    /// character, month and look-alike by itself; a sheet of its own must be complete.
    pub(super) fn sheet(
        &self,
        open: &mut Open<'_, '_>,
        glossary: &Glossary,
        base: Option<&Sheet>,
    ) -> Sheet {
        self.mark(open);
        let mut sheet = base.cloned().unwrap_or_else(|| {
            self.must_be_complete(open);
            blank(self.name.get_ref())
        });
        self.names(open, &mut sheet);
        self.nature(open, &mut sheet);
        self.harm(open, &mut sheet);
        self.months(open, &mut sheet);
        if let Some(rows) = &self.characters {
            sheet.characters.extend(cells(open, rows, glossary, Rank::Species));
        }
        if let Some(rows) = &self.must_look {
            sheet.must_look = characters(open, rows, glossary);
        }
        self.gathered_for(open, &mut sheet);
        self.look_alikes(open, glossary, &mut sheet);
        self.relatives(open, &mut sheet);
        self.conflicts(open, &mut sheet);
        sheet
    }

    fn must_be_complete(&self, open: &mut Open<'_, '_>) {
        let fields = [
            (self.authority.is_some(), "authority"),
            (self.family.is_some(), "family"),
            (self.common.is_some(), "common"),
            (self.regions.is_some(), "regions"),
            (self.life_form.is_some(), "life_form"),
            (self.harm.is_some(), "harm"),
            (self.habitats.is_some(), "habitats"),
            (self.months.is_some(), "months"),
            (self.characters.is_some(), "characters"),
            (self.relatives.is_some(), "relatives"),
        ];
        for (there, field) in fields {
            open.need(there, field, self.name.span());
        }
    }

    fn names(&self, open: &mut Open<'_, '_>, sheet: &mut Sheet) {
        replace(&mut sheet.authority, self.authority.as_ref());
        replace(&mut sheet.family, self.family.as_ref());
        if let Some(names) = &self.common {
            sheet.common = unlike(open, names);
        }
        if let Some(names) = &self.former {
            sheet.former = unlike(open, names);
        }
        if let Some(own) = sheet.former.iter().find(|former| **former == sheet.name) {
            open.fault("name-twice", self.name.span(), own);
        }
        replace(&mut sheet.caution_taxa, self.caution_taxa.as_ref());
        replace(&mut sheet.parents, self.parents.as_ref());
        sheet.aggregate = self.aggregate.clone().or(sheet.aggregate.take());
    }

    fn nature(&self, open: &mut Open<'_, '_>, sheet: &mut Sheet) {
        if let Some(words) = &self.regions {
            sheet.regions = sorted(open.words(words));
            open.need(!words.is_empty(), "regions", self.name.span());
        }
        if let Some(form) = self.life_form.as_ref().and_then(|word| open.word(word)) {
            sheet.life_form = form;
        }
        replace(&mut sheet.habitats, self.habitats.as_ref());
        sheet.protected = self.protected.clone().or(sheet.protected.take());
    }

    /// Harm is said with its note and its sources, or not at all.
    fn harm(&self, open: &mut Open<'_, '_>, sheet: &mut Sheet) {
        replace(&mut sheet.harm_note, self.harm_note.as_ref());
        let Some(word) = &self.harm else {
            if let Some(src) = &self.harm_src {
                open.fault("missing-field", src.span(), "harm");
            }
            return;
        };
        open.need(self.harm_note.is_some(), "harm_note", word.span());
        let from = open.sourcing(&self.harm_src, word.span());
        if let Some(harm) = open.word(word) {
            sheet.harm = Sourced::new(harm, from);
        }
    }

    fn months(&self, open: &mut Open<'_, '_>, sheet: &mut Sheet) {
        for (part, season) in self.months.iter().flatten() {
            let read = season_of(open, season);
            if let (Some(part), Some(season)) = (open.word(part), read) {
                sheet.months.insert(part, season);
            }
        }
    }

    fn gathered_for(&self, open: &mut Open<'_, '_>, sheet: &mut Sheet) {
        if let Some(rows) = &self.gathered_for {
            let read = rows.iter().filter_map(|row| row.read(open)).collect();
            sheet.gathered_for = sorted(read);
        }
    }

    fn look_alikes(&self, open: &mut Open<'_, '_>, glossary: &Glossary, sheet: &mut Sheet) {
        let mut read = BTreeMap::new();
        for row in &self.look_alike {
            let name = row.name.get_ref();
            if *name == sheet.name {
                open.fault("look-alike-itself", row.name.span(), name);
            }
            let resemblance = row.read(open, glossary);
            if read.insert(name.clone(), resemblance).is_some() {
                open.fault("look-alike-twice", row.name.span(), name);
            }
        }
        sheet.look_alikes.append(&mut read);
    }

    fn relatives(&self, open: &mut Open<'_, '_>, sheet: &mut Sheet) {
        let Some(row) = &self.relatives else {
            return;
        };
        let from = open.sourcing(&row.get_ref().src, row.span());
        let row = row.get_ref();
        let regions = sorted(open.words(&row.regions));
        if let Some(statement) = open.word(&row.statement) {
            sheet.relatives = Kin { statement, regions, note: row.note.clone(), from };
        }
    }

    fn conflicts(&self, open: &mut Open<'_, '_>, sheet: &mut Sheet) {
        let read: Vec<_> = self.conflict.iter().map(|row| row.read(open)).collect();
        let again = |known: &Conflict| read.iter().any(|new| new.about == known.about);
        sheet.conflicts.retain(|known| !again(known));
        sheet.conflicts.extend(read);
        sheet.conflicts.sort();
    }

    /// Remembers where each row stands.
    fn mark(&self, open: &mut Open<'_, '_>) {
        let name = self.name.get_ref();
        let mut mark = |span: Range<usize>, field: &str| open.mark(&span, TABLE, name, field);
        mark(self.name.span(), "");
        for character in self.characters.iter().flat_map(BTreeMap::keys) {
            mark(character.span(), character.get_ref());
        }
        for row in &self.look_alike {
            mark(row.name.span(), &look_alike_field(row.name.get_ref()));
        }
        for row in self.gathered_for.iter().flatten() {
            mark(row.part.span(), &use_field(row.part.get_ref()));
        }
        if let Some(harm) = &self.harm {
            mark(harm.span(), "harm");
        }
        if let Some(row) = &self.relatives {
            mark(row.get_ref().statement.span(), "relatives");
        }
    }
}

/// The field under which the place of a look-alike is kept.
pub(crate) fn look_alike_field(name: &str) -> String {
    format!("look_alike {name}")
}

/// The field under which the place of a `[[use]]` is kept.
pub(crate) fn use_field(part: &str) -> String {
    format!("use {part}")
}

fn replace<T: Clone>(field: &mut T, given: Option<&T>) {
    if let Some(given) = given {
        field.clone_from(given);
    }
}

/// What a new sheet is filled into. Each field that the file leaves out is a fault, so that nothing
/// of it is ever handed out.
fn blank(name: &str) -> Sheet {
    let nowhere = Sourcing::bare(Standing::Remembered);
    Sheet {
        name: name.to_owned(),
        authority: String::new(),
        family: String::new(),
        common: Vec::new(),
        former: Vec::new(),
        regions: Vec::new(),
        life_form: LifeForm::Perennial,
        harm: Sourced::new(Harm::Unknown, nowhere.clone()),
        harm_note: String::new(),
        habitats: Vec::new(),
        protected: None,
        months: BTreeMap::new(),
        must_look: Vec::new(),
        characters: BTreeMap::new(),
        gathered_for: Vec::new(),
        look_alikes: BTreeMap::new(),
        relatives: Kin {
            statement: RelativesStatement::UnlistedUnknown,
            regions: Vec::new(),
            note: String::new(),
            from: nowhere,
        },
        aggregate: None,
        caution_taxa: Vec::new(),
        parents: Vec::new(),
        inherited: None,
        conflicts: Vec::new(),
    }
}
