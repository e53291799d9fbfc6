//! Species, characters and look-alikes: sheets and glossary read into a table to judge by.

mod cell;
mod glossary;
mod glossary_rows;
mod group;
mod mix_up;
mod sheet;
mod sheet_file;
mod sheet_rows;

pub use glossary::{Glossary, Term};
pub use group::Group;
pub use mix_up::{MixUp, MonthFrom};
pub use sheet::{Conflict, GatheredFor, Kin, Resemblance, Sheet};

pub(crate) use mix_up::MIX_UP_TABLE;
pub(crate) use sheet_file::{look_alike_field, use_field};

use crate::file::{Reader, TextFile};
use crate::open::Open;
use crate::search::Name;
use ground::{Faults, Harm, Once, slug};
use identify::{Cell, Character, Matrix, Taxon};
use serde::{Deserialize, Serialize};
use sheet_rows::SheetFile;
use std::collections::BTreeMap;

/// The name of the table of sheets by which places are kept.
pub(crate) const TABLE: &str = "species";

/// Species, characters and look-alikes.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Flora {
    /// Characters and states in plain words.
    pub glossary: Glossary,
    sheets: BTreeMap<String, Sheet>,
    groups: BTreeMap<String, Group>,
    mix_ups: BTreeMap<String, MixUp>,
    #[serde(skip)]
    table: Once<Result<Matrix, Faults>>,
    #[serde(skip)]
    pub(crate) names: Once<Vec<Name>>,
}

impl Flora {
    /// The sheets, in order of their scientific names.
    pub fn sheets(&self) -> impl Iterator<Item = &Sheet> {
        self.sheets.values()
    }

    /// The sheet of this scientific name, letter by letter; [`Flora::find`] is kinder.
    #[must_use]
    pub fn sheet(&self, name: &str) -> Option<&Sheet> {
        self.sheets.get(name)
    }

    /// Genera and families, in order of their names.
    pub fn groups(&self) -> impl Iterator<Item = &Group> {
        self.groups.values()
    }

    /// A genus or family.
    #[must_use]
    pub fn group(&self, name: &str) -> Option<&Group> {
        self.groups.get(name)
    }

    /// The mix-ups that were told, in order of their identifiers.
    pub fn mix_ups(&self) -> impl Iterator<Item = &MixUp> {
        self.mix_ups.values()
    }

    /// What is known of a character of a species: from its own sheet, else its genus, else its
    /// family.
    #[must_use]
    pub fn cell<'a>(&'a self, sheet: &'a Sheet, character: &str) -> Option<&'a Cell> {
        let group = |name: &str| self.group(name)?.characters.get(character);
        let own = sheet.characters.get(character);
        own.or_else(|| group(sheet.genus())).or_else(|| group(&sheet.family))
    }

    /// The characters to judge by, sorted by name.
    #[must_use]
    pub fn characters(&self) -> Vec<Character> {
        let terms = self.glossary.terms();
        terms.map(|term| term.character.clone()).collect()
    }

    /// The taxa to judge by, sorted by name.
    #[must_use]
    pub fn taxa(&self) -> Vec<Taxon> {
        self.sheets().map(Sheet::taxon).collect()
    }

    /// What is known of every character of every taxon, in their order.
    pub fn cells(&self) -> impl Iterator<Item = (&Sheet, &str, &Cell)> {
        self.sheets().flat_map(move |sheet| {
            let characters = self.glossary.terms().map(|term| term.character.id.as_str());
            characters.filter_map(move |id| Some((sheet, id, self.cell(sheet, id)?)))
        })
    }

    /// The table to judge by.
    ///
    /// # Errors
    /// What the table finds at fault; nothing, for a herbal that was read without faults.
    pub fn matrix(&self) -> Result<&Matrix, Faults> {
        self.table.get(|| self.work_out_matrix()).as_ref().map_err(Clone::clone)
    }

    fn work_out_matrix(&self) -> Result<Matrix, Faults> {
        let owned = |(sheet, id, cell): (&Sheet, &str, &Cell)| {
            (sheet.name.clone(), id.to_owned(), cell.clone())
        };
        Matrix::new(self.characters(), self.taxa(), self.cells().map(owned))
    }

    pub(crate) fn read(reader: &mut Reader<'_>) -> Self {
        Self::default().overlaid(reader)
    }

    /// Reads files that are laid over these: what they give replaces, all else stays.
    pub(crate) fn overlaid(&self, reader: &mut Reader<'_>) -> Self {
        let glossary = Glossary::read(reader, &self.glossary);
        let groups = group::groups(reader, &glossary, &self.groups);
        let mut sheets = self.sheets.clone();
        sheets.append(&mut self.sheets_over(reader, &glossary));
        inherit(&mut sheets);
        let mix_ups = mix_up::mix_ups(reader, &sheets, &self.mix_ups);
        Self { glossary, sheets, groups, mix_ups, ..Self::default() }
    }

    fn sheets_over(&self, reader: &mut Reader<'_>, glossary: &Glossary) -> BTreeMap<String, Sheet> {
        let mut read = BTreeMap::new();
        for file in reader.files_in(TABLE) {
            let Some(rows) = reader.parse::<SheetFile>(file) else {
                continue;
            };
            let mut open = Open { reader, file };
            let name = rows.name.get_ref();
            if named_otherwise(file, name) {
                open.fault_with("file-name", rows.name.span(), name, ("slug", &slug(name)));
            }
            let sheet = rows.sheet(&mut open, glossary, self.sheet(name));
            if read.insert(name.clone(), sheet).is_some() {
                open.fault("name-twice", rows.name.span(), name);
            }
        }
        read
    }
}

/// Gives every hybrid the worst harm of its parents, and of theirs.
fn inherit(sheets: &mut BTreeMap<String, Sheet>) {
    let inherited = |sheet: &Sheet| {
        let mut forebears = sheet.parents.clone();
        let mut at = 0;
        while let Some(name) = forebears.get(at) {
            let theirs = sheets.get(name).map_or(&[][..], |parent| &parent.parents);
            let new: Vec<_> = theirs.iter().filter(|name| !forebears.contains(name)).collect();
            let new: Vec<String> = new.into_iter().cloned().collect();
            forebears.extend(new);
            at += 1;
        }
        let harm = |name: &String| sheets.get(name).map_or(Harm::Unknown, Sheet::own_harm);
        forebears.iter().map(harm).max()
    };
    let all: Vec<_> = sheets.values().map(inherited).collect();
    for (sheet, inherited) in sheets.values_mut().zip(all) {
        sheet.inherited = inherited;
    }
}

/// Whether a file is named after something else than the plant in it.
fn named_otherwise(file: &TextFile, name: &str) -> bool {
    file.path != format!("{TABLE}/{}.toml", slug(name))
}
