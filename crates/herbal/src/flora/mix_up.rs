//! Mix-ups that were told: which plant was taken for which, when, and what could have been seen.

use super::Sheet;
use crate::file::Reader;
use crate::open::{Open, Src};
use ground::{Month, Organ, Part, Region, Sourcing};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use toml::Spanned;

/// The folder of their files.
const FOLDER: &str = "mix-ups";

/// The name of the table by which places are kept.
pub(crate) const MIX_UP_TABLE: &str = "mix_up";

/// A mix-up that was told: somebody took one plant for another.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct MixUp {
    /// Identifier.
    pub id: String,
    /// The plant that it was, by scientific name.
    pub was: String,
    /// The plant that it was taken for.
    pub taken_for: String,
    /// The part that was gathered.
    pub part: Part,
    /// The months in which it may have been gathered, the likeliest first.
    pub months: Vec<Month>,
    /// How the months are known.
    pub month_from: MonthFrom,
    /// Where it happened; none: outside the regions of the herbal, or not told.
    pub region: Option<Region>,
    /// How many people ate or drank of it, where that is told.
    pub people: Option<u32>,
    /// How many of them died; none: not told.
    pub deaths: Option<u32>,
    /// The organs that whoever gathered it could have looked at.
    pub organs: Vec<Organ>,
    /// What happened, in a sentence.
    pub says: String,
    /// Where it was read.
    pub from: Sourcing,
}

/// How the months of a mix-up are known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum MonthFrom {
    /// The source tells them.
    Source,
    /// The source tells none: they are those in which the plant that was meant is gathered.
    Season,
}

/// A file of the folder.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct MixUpFile {
    #[serde(default)]
    mix_up: Vec<MixUpRow>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct MixUpRow {
    id: Spanned<String>,
    was: Spanned<String>,
    taken_for: Spanned<String>,
    part: Spanned<String>,
    months: Spanned<Vec<Spanned<i64>>>,
    month_from: Spanned<String>,
    region: Option<Spanned<String>>,
    people: Option<u32>,
    deaths: Option<Spanned<u32>>,
    organs: Spanned<Vec<Spanned<String>>>,
    says: String,
    src: Src,
}

/// Reads the folder over what is known already: a row with a known identifier replaces.
pub(super) fn mix_ups(
    reader: &mut Reader<'_>,
    sheets: &BTreeMap<String, Sheet>,
    base: &BTreeMap<String, MixUp>,
) -> BTreeMap<String, MixUp> {
    let mut read = BTreeMap::new();
    for file in reader.files_in(FOLDER) {
        let Some(rows) = reader.parse::<MixUpFile>(file) else {
            continue;
        };
        let mut open = Open { reader, file };
        for row in rows.mix_up {
            let id = row.id.get_ref().clone();
            open.mark(&row.id.span(), MIX_UP_TABLE, &id, "");
            let mix_up = row.read(&mut open, sheets);
            if mix_up.and_then(|mix_up| read.insert(id.clone(), mix_up)).is_some() {
                open.fault("mix-up-twice", row.id.span(), &id);
            }
        }
    }
    let mut all = base.clone();
    all.append(&mut read);
    all
}

impl MixUpRow {
    fn read(&self, open: &mut Open<'_, '_>, sheets: &BTreeMap<String, Sheet>) -> Option<MixUp> {
        self.two_plants(open, sheets);
        self.no_more_deaths_than_people(open);
        let from = open.sourcing(&self.src, self.id.span());
        let months = self.months(open);
        let organs = self.organs(open);
        let region = self.region.as_ref().and_then(|word| open.word(word));
        let (part, month_from) = (open.word(&self.part), open.word(&self.month_from));
        Some(MixUp {
            id: self.id.get_ref().clone(),
            was: self.was.get_ref().clone(),
            taken_for: self.taken_for.get_ref().clone(),
            part: part?,
            months,
            month_from: month_from?,
            region,
            people: self.people,
            deaths: self.deaths.as_ref().map(|deaths| *deaths.get_ref()),
            organs,
            says: self.says.clone(),
            from,
        })
    }

    /// Two plants, each with a sheet: without one nothing could be compared.
    fn two_plants(&self, open: &mut Open<'_, '_>, sheets: &BTreeMap<String, Sheet>) {
        for name in [&self.was, &self.taken_for] {
            if !sheets.contains_key(name.get_ref()) && !open.reader.broken("species") {
                open.fault("no-sheet", name.span(), name.get_ref());
            }
        }
        if self.was.get_ref() == self.taken_for.get_ref() {
            open.fault("mix-up-itself", self.taken_for.span(), self.taken_for.get_ref());
        }
    }

    fn no_more_deaths_than_people(&self, open: &mut Open<'_, '_>) {
        if let (Some(people), Some(deaths)) = (self.people, &self.deaths)
            && *deaths.get_ref() > people
        {
            open.fault("mix-up-deaths", deaths.span(), &deaths.get_ref().to_string());
        }
    }

    fn months(&self, open: &mut Open<'_, '_>) -> Vec<Month> {
        let months = self.months.get_ref();
        if months.is_empty() {
            open.fault("mix-up-empty", self.months.span(), "months");
        }
        let month = |number: &Spanned<i64>| {
            let month = u8::try_from(*number.get_ref()).ok().and_then(Month::new);
            if month.is_none() {
                open.fault("no-month", number.span(), &number.get_ref().to_string());
            }
            month
        };
        months.iter().filter_map(month).collect()
    }

    fn organs(&self, open: &mut Open<'_, '_>) -> Vec<Organ> {
        let organs = self.organs.get_ref();
        if organs.is_empty() {
            open.fault("mix-up-empty", self.organs.span(), "organs");
        }
        open.words(organs)
    }
}
