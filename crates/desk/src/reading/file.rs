//! The file of looks: one plant in hand, who reads it, and what each saw.
//!
//! ```toml
//! [plant]
//! taken-for = "Allium ursinum"      # any name of the herbal
//! place = "Mill Wood"               # "?" where nobody says
//! region = "europe"                 # "?": anything could grow there
//! material = "growing"              # or photograph, bought, chopped, dried; growing when left out
//!
//! [[reader]]
//! name = "Maren"
//! level = "leader"                  # or trained, public
//!
//! [[looks]]                         # as in an outing file, without specimen and stand
//! reader = "Maren"
//! at = 2027-04-20T10:30:00
//! [looks.saw]
//! leaf_venation = "parallel"
//! leaf_width_mm = "46 mm"
//! ```

use crate::judging;
use crate::outing::{Given, InputFile, Names, Row, Said, Source, level, material, read_tree};
use ground::{Fault, Faults, Region};
use herbal::Herbal;
use identify::{Case, Level, Look, Material, Reader, Strictness};
use jiff::civil::Date;
use serde::Deserialize;
use std::collections::BTreeMap;
use toml::Spanned;
use toml::value::Datetime;

/// What the plant in hand is called: a file of looks holds one.
const SPECIMEN: &str = "in-hand";
/// Not known, in the place of a word.
pub(super) const UNKNOWN: &str = "?";

#[derive(Default, Deserialize)]
#[serde(deny_unknown_fields, default, rename_all = "kebab-case")]
struct Tables {
    plant: PlantTable,
    reader: Vec<ReaderTable>,
    looks: Vec<LooksTable>,
}

#[derive(Default, Deserialize)]
#[serde(deny_unknown_fields, default, rename_all = "kebab-case")]
struct PlantTable {
    taken_for: Option<Said>,
    place: Option<Said>,
    region: Option<Said>,
    material: Option<Said>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
struct ReaderTable {
    name: Said,
    level: Option<Said>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
struct LooksTable {
    reader: Said,
    at: Spanned<Datetime>,
    #[serde(default)]
    candidates_shown: bool,
    saw: BTreeMap<String, Spanned<toml::Value>>,
}

/// What a file of looks says.
#[derive(Clone, Debug)]
pub(crate) struct Looks {
    /// The plant that it is taken for, by its scientific name.
    pub(super) target: Option<String>,
    /// Where it was found.
    pub(super) place: Option<String>,
    /// Where in the world; within, none where nobody knows.
    pub(super) region: Option<Option<Region>>,
    material: Material,
    /// Who reads, in the order of the file; how well, where that was said.
    pub(super) readers: Vec<(String, Option<Level>)>,
    /// What was seen.
    pub(super) looks: Vec<Look>,
    /// Who was shown what it could be.
    pub(super) shown: Vec<String>,
}

impl Looks {
    /// Reads a file; one without any table is a file in which nothing was said yet.
    ///
    /// # Errors
    /// Every fault, with line and column, what was wanted and how to mend it.
    pub(crate) fn read(file: &InputFile, herbal: &Herbal) -> Result<Self, Faults> {
        let source = Source::of(file);
        let tables: Tables = read_tree(source.text).map_err(|error| {
            let span = error.span.clone().unwrap_or(0..0);
            Fault::new("unreadable-looks", source.place(&span), error.message)
        })?;
        let mut faults = Faults::none();
        let names = Names { herbal, given: Given::default() };
        let readers = readers(&source, &tables.reader, &mut faults);
        let mut read = Self::of_plant(&source, &names, &tables.plant, &mut faults);
        for table in &tables.looks {
            let mut row = Row::new(&source, None, "looks", table.reader.get_ref(), &mut faults);
            read.looks.extend(looks(&mut row, &names, &readers, table));
        }
        let shown = tables.looks.iter().filter(|table| table.candidates_shown);
        read.shown = shown.map(|table| table.reader.get_ref().clone()).collect();
        read.readers = readers;
        faults.or(read)
    }

    fn of_plant(
        source: &Source<'_>,
        names: &Names<'_>,
        table: &PlantTable,
        faults: &mut Faults,
    ) -> Self {
        let mut row = Row::new(source, None, "plant", "", faults);
        let target = table.taken_for.as_ref();
        let target = target.and_then(|said| names.plant(&mut row, "taken-for", said));
        let region = table.region.as_ref().and_then(|said| match said.get_ref().as_str() {
            UNKNOWN => Some(None),
            _ => row.word("region", said).map(Some),
        });
        let material = table.material.as_ref().and_then(|said| material(&mut row, said));
        Self {
            target,
            place: table.place.as_ref().map(|said| said.get_ref().clone()),
            region,
            material: judging::material(material.unwrap_or(journal::Material::Growing)),
            readers: Vec::new(),
            looks: Vec::new(),
            shown: Vec::new(),
        }
    }

    /// How well somebody reads; whoever did not say reads like anybody else.
    pub(super) fn reader(&self, name: &str) -> Reader {
        let level = self.readers.iter().find(|(known, _)| known == name);
        let level = level.and_then(|(_, level)| *level).unwrap_or(Level::Public);
        Reader { name: name.to_owned(), level }
    }

    /// The day of the last look.
    pub(super) fn last_day(&self) -> Option<Date> {
        self.looks.iter().map(|look| look.time.date()).max()
    }

    /// The plant in hand with all that was read of it, on a day.
    pub(super) fn case(&self, day: Date) -> Case {
        let place = self.place.clone().filter(|place| place != UNKNOWN);
        Case {
            specimen: SPECIMEN.to_owned(),
            place: place.unwrap_or_default(),
            day,
            region: self.region.flatten(),
            material: self.material,
            strictness: Strictness::least(),
            looks: self.looks.clone(),
        }
    }
}

fn readers(
    source: &Source<'_>,
    tables: &[ReaderTable],
    faults: &mut Faults,
) -> Vec<(String, Option<Level>)> {
    let mut readers: Vec<(String, Option<Level>)> = Vec::new();
    for table in tables {
        let name = table.name.get_ref();
        let mut row = Row::new(source, None, "reader", name, faults);
        let level = table.level.as_ref().and_then(|said| level(&mut row, said));
        if readers.iter().any(|(known, _)| known == name) {
            row.fault("name-twice", "name", &table.name);
        }
        readers.push((name.clone(), level));
    }
    readers
}

fn looks(
    row: &mut Row<'_>,
    names: &Names<'_>,
    readers: &[(String, Option<Level>)],
    table: &LooksTable,
) -> Vec<Look> {
    let known = readers.iter().find(|(name, _)| name == table.reader.get_ref());
    if known.is_none() {
        let list = readers.iter().map(|(name, _)| name.as_str().into()).collect();
        row.no_such_name("reader", &table.reader, list);
    }
    let at = row.moment("at", &table.at);
    let seen: Vec<_> = table
        .saw
        .iter()
        .filter_map(|(character, said)| Some((character, names.saw(row, character, said)?)))
        .collect();
    let (Some((name, level)), Some(time)) = (known, at) else { return Vec::new() };
    let reader = Reader { name: name.clone(), level: level.unwrap_or(Level::Public) };
    let look = |(character, saw): (&String, journal::Saw)| {
        Some(Look {
            character: character.clone(),
            seen: judging::seen(&saw)?,
            reader: reader.clone(),
            time,
            specimen: SPECIMEN.to_owned(),
            blind: !table.candidates_shown,
        })
    };
    seen.into_iter().filter_map(look).collect()
}
