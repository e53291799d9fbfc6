//! Genera and families: rows that hold for every member unless its own sheet says otherwise.

use super::Glossary;
use super::cell::{CellRows, cells};
use crate::file::Reader;
use crate::open::Open;
use identify::{Cell, Rank};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use toml::Spanned;

/// The name of the table by which places are kept.
pub(crate) const GROUP_TABLE: &str = "group";

/// A genus or a family.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Group {
    /// Its scientific name.
    pub name: String,
    /// Genus or family.
    pub rank: Rank,
    /// What should be known when its rows are used.
    pub note: Option<String>,
    /// What holds for every member.
    pub characters: BTreeMap<String, Cell>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct GroupFile {
    name: Spanned<String>,
    rank: Spanned<String>,
    note: Option<String>,
    #[serde(default)]
    characters: CellRows,
}

/// Reads the folder `groups/`, over what is known already.
pub(super) fn groups(
    reader: &mut Reader<'_>,
    glossary: &Glossary,
    base: &BTreeMap<String, Group>,
) -> BTreeMap<String, Group> {
    let mut read = BTreeMap::new();
    for file in reader.files_in("groups") {
        let Some(rows) = reader.parse::<GroupFile>(file) else {
            continue;
        };
        let mut open = Open { reader, file };
        let name = rows.name.get_ref();
        let Some(group) = rows.group(&mut open, glossary, base.get(name)) else {
            continue;
        };
        if read.insert(name.clone(), group).is_some() {
            open.fault("name-twice", rows.name.span(), name);
        }
    }
    let mut groups = base.clone();
    groups.append(&mut read);
    groups
}

impl GroupFile {
    fn group(
        &self,
        open: &mut Open<'_, '_>,
        glossary: &Glossary,
        base: Option<&Group>,
    ) -> Option<Group> {
        let name = self.name.get_ref();
        open.mark(&self.name.span(), GROUP_TABLE, name, "");
        for character in self.characters.keys() {
            open.mark(&character.span(), GROUP_TABLE, name, character.get_ref());
        }
        let rank = self.rank(open)?;
        let mut characters = base.map_or_else(BTreeMap::new, |base| base.characters.clone());
        characters.extend(cells(open, &self.characters, glossary, rank));
        Some(Group {
            name: name.clone(),
            rank,
            note: self.note.clone().or(base.and_then(|base| base.note.clone())),
            characters,
        })
    }

    fn rank(&self, open: &mut Open<'_, '_>) -> Option<Rank> {
        match open.word(&self.rank)? {
            Rank::Species => {
                let known = ("known", "genus, family");
                open.fault_with("unknown-word", self.rank.span(), self.rank.get_ref(), known);
                None
            }
            rank => Some(rank),
        }
    }
}
