//! The rows of a file of `species/`, and how each is read by itself.

use super::Glossary;
use super::cell::{CellRows, unknown_character};
use super::sheet::{Conflict, GatheredFor, Resemblance};
use crate::open::{Open, Src};
use ground::{Form, Month, Part, Season};
use serde::Deserialize;
use serde::de::IgnoredAny;
use std::collections::BTreeMap;
use toml::Spanned;

/// The table `[months]`: first and last month of each part.
pub(super) type MonthRows = BTreeMap<Spanned<String>, Spanned<(i64, i64)>>;

/// A file of `species/`.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct SheetFile {
    pub(super) name: Spanned<String>,
    pub(super) authority: Option<String>,
    pub(super) family: Option<String>,
    pub(super) common: Option<Vec<Spanned<String>>>,
    pub(super) former: Option<Vec<Spanned<String>>>,
    pub(super) regions: Option<Vec<Spanned<String>>>,
    pub(super) life_form: Option<Spanned<String>>,
    pub(super) harm: Option<Spanned<String>>,
    pub(super) harm_note: Option<String>,
    pub(super) harm_src: Src,
    pub(super) habitats: Option<Vec<String>>,
    pub(super) protected: Option<String>,
    pub(super) must_look: Option<Vec<Spanned<String>>>,
    pub(super) aggregate: Option<String>,
    pub(super) caution_taxa: Option<Vec<String>>,
    pub(super) parents: Option<Vec<String>>,
    pub(super) months: Option<MonthRows>,
    pub(super) characters: Option<CellRows>,
    #[serde(rename = "use")]
    pub(super) gathered_for: Option<Vec<UseRow>>,
    #[serde(default)]
    pub(super) look_alike: Vec<LookAlikeRow>,
    pub(super) relatives: Option<Spanned<KinRow>>,
    #[serde(default)]
    pub(super) conflict: Vec<ConflictRow>,
    /// Read by [`Uses`](crate::Uses).
    #[serde(default, rename = "part")]
    pub(super) _part: IgnoredAny,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct UseRow {
    pub(super) part: Spanned<String>,
    #[serde(rename = "as")]
    pub(super) forms: Vec<Spanned<String>>,
    pub(super) note: Option<String>,
    pub(super) src: Src,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct LookAlikeRow {
    pub(super) name: Spanned<String>,
    pub(super) why: String,
    pub(super) tells: Vec<Spanned<String>>,
    pub(super) says: String,
    #[serde(default)]
    pub(super) confirmed: bool,
    pub(super) src: Src,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct KinRow {
    pub(super) statement: Spanned<String>,
    pub(super) regions: Vec<Spanned<String>>,
    pub(super) note: String,
    pub(super) src: Src,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct ConflictRow {
    pub(super) about: Spanned<String>,
    pub(super) says: String,
    pub(super) kept: String,
    pub(super) src: Src,
}

impl UseRow {
    pub(super) fn read(&self, open: &mut Open<'_, '_>) -> Option<GatheredFor> {
        let from = open.sourcing(&self.src, self.part.span());
        let forms: Vec<Form> = open.words(&self.forms);
        open.need(!self.forms.is_empty(), "as", self.part.span());
        let part: Part = open.word(&self.part)?;
        let note = self.note.clone();
        Some(GatheredFor { part, forms: sorted(forms), note, from })
    }
}

impl LookAlikeRow {
    pub(super) fn read(&self, open: &mut Open<'_, '_>, glossary: &Glossary) -> Resemblance {
        Resemblance {
            why: self.why.clone(),
            tells: characters(open, &self.tells, glossary),
            says: self.says.clone(),
            confirmed: self.confirmed,
            from: open.sourcing(&self.src, self.name.span()),
        }
    }
}

impl ConflictRow {
    pub(super) fn read(&self, open: &mut Open<'_, '_>) -> Conflict {
        Conflict {
            about: self.about.get_ref().clone(),
            says: self.says.clone(),
            kept: self.kept.clone(),
            from: open.sourcing(&self.src, self.about.span()),
        }
    }
}

/// Names of characters, each known and named once.
pub(super) fn characters(
    open: &mut Open<'_, '_>,
    names: &[Spanned<String>],
    glossary: &Glossary,
) -> Vec<String> {
    for name in names {
        if glossary.term(name.get_ref()).is_none() {
            unknown_character(open, name);
        }
    }
    unlike(open, names)
}

/// Names of which none comes twice.
pub(super) fn unlike(open: &mut Open<'_, '_>, names: &[Spanned<String>]) -> Vec<String> {
    let mut read: Vec<String> = Vec::new();
    for name in names {
        if read.contains(name.get_ref()) {
            open.fault("name-twice", name.span(), name.get_ref());
        } else {
            read.push(name.get_ref().clone());
        }
    }
    read
}

pub(super) fn season_of(open: &mut Open<'_, '_>, season: &Spanned<(i64, i64)>) -> Option<Season> {
    let (first, last) = *season.get_ref();
    let month = |number: i64| u8::try_from(number).ok().and_then(Month::new);
    if let (Some(first), Some(last)) = (month(first), month(last)) {
        return Some(Season::new(first, last));
    }
    open.fault("no-such-month", season.span(), &format!("{first}, {last}"));
    None
}

pub(super) fn sorted<T: Ord>(mut items: Vec<T>) -> Vec<T> {
    items.sort();
    items.dedup();
    items
}
