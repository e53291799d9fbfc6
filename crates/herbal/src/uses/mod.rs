//! Uses and harm by part, cautions, usual amounts, contents and limits.

mod read;
mod rows;

use crate::file::Reader;
use crate::open::Open;
use crate::{Flora, Sheet};
use dose::{Kinship, SubstanceId, Table};
use read::Desk;
use rows::{PartsFile, UsesFile};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// Uses and harm by part, cautions, contents, limits.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Uses {
    /// What decisions on cups rest on.
    pub table: Table,
}

/// A row whose plant no sheet joins.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Unjoined<'a> {
    /// Its table: `caution`, `posology` or `content`.
    pub table: &'static str,
    /// Its identifier.
    pub id: &'a str,
    /// The plant it names.
    pub taxon: &'a str,
}

impl Uses {
    pub(crate) fn read(reader: &mut Reader<'_>, flora: &Flora) -> Self {
        Self::default().overlaid(reader, flora)
    }

    /// These rows with those of further files laid over them: rows with the same identifier replace,
    /// and a species file that gives part rows replaces all of that species.
    pub(crate) fn overlaid(&self, reader: &mut Reader<'_>, flora: &Flora) -> Self {
        let mut table = self.table.clone();
        let files: Vec<_> = reader
            .files_in("uses")
            .into_iter()
            .filter_map(|file| Some((file, reader.parse::<UsesFile>(file)?)))
            .collect();
        let mut seen = BTreeSet::new();
        // Substances first, since the other rows name them.
        for (file, read) in &files {
            let open = Open { reader: &mut *reader, file };
            Desk { open, table: &mut table, seen: &mut seen }.substances(&read.substance);
        }
        for (file, read) in files {
            let open = Open { reader: &mut *reader, file };
            Desk { open, table: &mut table, seen: &mut seen }.rows(read);
        }
        for file in reader.files_in("species") {
            if let Some(read) = reader.parse::<PartsFile>(file) {
                let open = Open { reader: &mut *reader, file };
                let mut desk = Desk { open, table: &mut table, seen: &mut seen };
                desk.borrowed(&read.caution_taxa);
                desk.parts(read);
            }
        }
        table.kin =
            flora.sheets().map(|sheet| (sheet.name.clone(), kinship(flora, sheet))).collect();
        sort(&mut table);
        Self { table }
    }

    /// Rows whose plant no sheet joins: they wait for one, and decide nothing.
    #[must_use]
    pub fn unjoined<'a>(&'a self, flora: &Flora) -> Vec<Unjoined<'a>> {
        let names =
            |sheet: &Sheet| [sheet.name.clone(), sheet.genus().to_owned(), sheet.family.clone()];
        let mut known: BTreeSet<_> = flora.sheets().flat_map(names).collect();
        known.extend(flora.sheets().flat_map(|sheet| sheet.caution_taxa.iter().map(|t| plain(t))));
        known.insert(Table::EVERY_PLANT.to_owned());
        let table = &self.table;
        let cautions = table.cautions.iter().map(|row| ("caution", &row.id, &row.taxon));
        let amounts = table.posology.iter().map(|row| ("posology", &row.id, &row.taxon));
        let contents = table.contents.iter().map(|row| ("content", &row.id, &row.taxon));
        let rows = cautions.chain(amounts).chain(contents);
        let lost = rows.filter(|(_, _, taxon)| !known.contains(*taxon));
        lost.map(|(table, id, taxon)| Unjoined { table, id, taxon }).collect()
    }

    /// What people call a substance.
    #[must_use]
    pub fn substance_name<'a>(&'a self, id: &'a SubstanceId) -> &'a str {
        self.table.name(id)
    }
}

/// The names by which rows join a species. What is said of a hybrid's parents may stop it too.
fn kinship(flora: &Flora, sheet: &Sheet) -> Kinship {
    let mut wider: BTreeSet<_> = [sheet.genus().to_owned(), sheet.family.clone()].into();
    wider.extend(sheet.aggregate.clone());
    let parents = sheet.parents.iter().filter_map(|name| flora.sheet(name));
    let of_parents = parents.flat_map(|parent| &parent.caution_taxa).chain(&sheet.parents);
    let relatives = sheet.caution_taxa.iter().chain(of_parents).map(|taxon| plain(taxon));
    let relatives =
        relatives.filter(|taxon| *taxon != sheet.name && !wider.contains(taxon)).collect();
    Kinship { wider, relatives }
}

/// A genus is also written `Salix spp.`
fn plain(taxon: &str) -> String {
    taxon.strip_suffix(" spp.").unwrap_or(taxon).to_owned()
}

/// The order of rows in files changes nothing.
fn sort(table: &mut Table) {
    table.cautions.sort_by(|a, b| a.id.cmp(&b.id));
    table.posology.sort_by(|a, b| a.id.cmp(&b.id));
    table.contents.sort_by(|a, b| a.id.cmp(&b.id));
    table.limits.sort_by(|a, b| a.id.cmp(&b.id));
    table.parts.sort_by(|a, b| {
        let key = |row: &dose::PartRow| {
            (row.taxon.clone(), row.part, row.route, row.stage.clone(), row.forms.clone())
        };
        key(a).cmp(&key(b)).then_with(|| a.note.cmp(&b.note))
    });
}
