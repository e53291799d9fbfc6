//! What is known: the herbal listed, shown and checked.

use crate::{Plan, World};
use dose::{Caution, PartRow, Tie};
use ground::{Faults, Harm, Place, Source, SourceId};
use herbal::{Account, Flora, Herbal, Hit, Report, Resemblance, Sheet, Term};
use identify::Cell;
use serde::Serialize;
use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};

/// Plants of the herbal.
#[derive(Clone, Debug, Serialize)]
pub struct ListReply {
    /// The words that were asked for.
    pub words: String,
    /// The plants.
    pub plants: Vec<ListRow>,
}

/// One plant of a list.
#[derive(Clone, Debug, Serialize)]
pub struct ListRow {
    /// Scientific name.
    pub name: String,
    /// Its usual common name.
    pub common: String,
    /// Its family.
    pub family: String,
    /// How badly it can hurt whoever takes it for something else.
    pub harm: Harm,
    /// How the name fits, where words were asked for.
    pub hit: Option<Hit>,
}

/// What is known of one plant.
#[derive(Clone, Debug, Serialize)]
pub struct SheetReply {
    /// Its sheet.
    pub sheet: Sheet,
    /// What is said of each character, from the sheet or from its genus or family.
    pub cells: BTreeMap<String, Cell>,
    /// The plants it is taken for or that are taken for it, the worst first.
    pub twins: Vec<Twin>,
    /// Harm and use of each part.
    pub parts: Vec<PartRow>,
    /// Who should not have it, or not without asking: its own rows and those of its relatives, the
    /// strictest first.
    pub cautions: Vec<Caution>,
    /// The plain words of every character that is named.
    pub terms: BTreeMap<String, Term>,
    /// The sources that are named.
    pub sources: BTreeMap<SourceId, Source>,
}

/// A plant that is taken for another.
#[derive(Clone, Debug, Serialize)]
pub struct Twin {
    /// Its scientific name.
    pub name: String,
    /// Its usual common name, where it has a sheet.
    pub common: Option<String>,
    /// How badly it can hurt; none for a plant without a sheet, which counts as deadly.
    pub harm: Option<Harm>,
    /// What the plant's sheet says of the two.
    pub here: Option<Resemblance>,
    /// What the twin's sheet says of the two.
    pub there: Option<Resemblance>,
    /// What is said of each character that tells them apart.
    pub tells: BTreeMap<String, Tell>,
}

/// What is said of a character of two plants that it tells apart.
#[derive(Clone, Debug, Serialize)]
pub struct Tell {
    /// Of the plant.
    pub here: Option<Cell>,
    /// Of its twin.
    pub there: Option<Cell>,
}

/// What the herbal lacks.
#[derive(Clone, Debug, Serialize)]
pub struct CheckReply {
    /// The version of the herbal.
    pub version: String,
    /// The report.
    pub report: Report,
}

pub(crate) fn list(herbal: &Herbal, words: &str) -> ListReply {
    let row = |sheet: &Sheet, hit| ListRow {
        name: sheet.name.clone(),
        common: sheet.usual_name().to_owned(),
        family: sheet.family.clone(),
        harm: sheet.feared(),
        hit,
    };
    let plants = if words.trim().is_empty() {
        herbal.flora.sheets().map(|sheet| row(sheet, None)).collect()
    } else {
        let found = |hit: Hit| Some(row(herbal.flora.sheet(&hit.species)?, Some(hit)));
        herbal.flora.search(words).into_iter().filter_map(found).collect()
    };
    ListReply { words: words.trim().to_owned(), plants }
}

pub(crate) fn show(world: &World, name: &str) -> Result<SheetReply, Faults> {
    let flora = &world.herbal.flora;
    let sheet = flora.find(name).map_err(|near| near.fault(Place::entry("", "", "species")))?;
    let cells: BTreeMap<_, _> = flora
        .glossary
        .terms()
        .filter_map(|term| {
            let id = &term.character.id;
            flora.cell(sheet, id).map(|cell| (id.clone(), cell.clone()))
        })
        .collect();
    let twins = twins(flora, sheet);
    let tells = twins.iter().flat_map(|twin| twin.tells.keys());
    let named: BTreeSet<_> = cells.keys().chain(tells).chain(&sheet.must_look).collect();
    let term = |id: &String| Some((id.clone(), flora.glossary.term(id)?.clone()));
    let terms = named.into_iter().filter_map(term).collect();
    let (parts, cautions) = uses(&world.herbal, &sheet.name);
    let mut reply = SheetReply {
        sheet: sheet.clone(),
        cells,
        twins,
        parts,
        cautions,
        terms,
        sources: BTreeMap::new(),
    };
    reply.sources = sources(&world.herbal, &reply);
    Ok(reply)
}

/// The plants that a sheet names as look-alikes or that name it, the worst first.
/// What is known of each plant that a plan names, for the pages that it is printed on.
#[must_use]
pub fn sheets(world: &World, plan: &Plan) -> BTreeMap<String, SheetReply> {
    let in_lots = plan.lots.iter().flat_map(|lot| lot.gathered.iter().map(|(taxon, _)| taxon));
    let named = plan.plants.iter().map(|plant| &plant.taxon).chain(in_lots);
    named.filter_map(|name| Some((name.clone(), show(world, name).ok()?))).collect()
}

fn twins(flora: &Flora, sheet: &Sheet) -> Vec<Twin> {
    let takes_for_it = |other: &&Sheet| other.look_alikes.contains_key(&sheet.name);
    let naming = flora.sheets().filter(takes_for_it).map(|other| &other.name);
    let names: BTreeSet<_> = sheet.look_alikes.keys().chain(naming).collect();
    let mut twins: Vec<_> = names.into_iter().map(|name| twin(flora, sheet, name)).collect();
    twins.sort_by_key(|twin| Reverse(twin.harm.unwrap_or(Harm::Deadly)));
    twins
}

fn twin(flora: &Flora, sheet: &Sheet, name: &str) -> Twin {
    let other = flora.sheet(name);
    let here = sheet.look_alikes.get(name);
    let there = other.and_then(|other| other.look_alikes.get(&sheet.name));
    let tells = here.into_iter().chain(there).flat_map(|row| &row.tells);
    let tell = |id: &String| Tell {
        here: flora.cell(sheet, id).cloned(),
        there: other.and_then(|other| flora.cell(other, id)).cloned(),
    };
    Twin {
        name: name.to_owned(),
        common: other.map(|other| other.usual_name().to_owned()),
        harm: other.map(|other| other.feared()),
        here: here.cloned(),
        there: there.cloned(),
        tells: tells.map(|id| (id.clone(), tell(id))).collect(),
    }
}

/// Harm and use of each part of a plant, and the cautions that name it or its relatives. Those for
/// every plant are no knowledge of this one.
fn uses(herbal: &Herbal, plant: &str) -> (Vec<PartRow>, Vec<Caution>) {
    let table = &herbal.uses.table;
    let joined =
        |row: &&Caution| table.tie(&row.taxon, plant).is_some_and(|tie| tie != Tie::EveryPlant);
    let parts = table.parts.iter().filter(|row| row.taxon == plant);
    let mut cautions: Vec<_> = table.cautions.iter().filter(joined).cloned().collect();
    cautions.sort_by_key(|row| (row.action, row.who));
    (parts.cloned().collect(), cautions)
}

/// Every source that a reply names.
fn sources(herbal: &Herbal, reply: &SheetReply) -> BTreeMap<SourceId, Source> {
    let sheet = &reply.sheet;
    let tells = reply.twins.iter().flat_map(|twin| twin.tells.values());
    let tells = tells.flat_map(|tell| tell.here.iter().chain(&tell.there));
    let of_cells = reply.cells.values().chain(tells).flat_map(|cell| &cell.sources);
    let twins = reply.twins.iter().flat_map(|twin| twin.here.iter().chain(&twin.there));
    let of_rows = [&sheet.harm.from, &sheet.relatives.from]
        .into_iter()
        .chain(twins.map(|row| &row.from))
        .chain(reply.parts.iter().map(|row| &row.from))
        .chain(reply.cautions.iter().map(|row| &row.from))
        .chain(sheet.gathered_for.iter().map(|row| &row.from))
        .chain(sheet.conflicts.iter().map(|row| &row.from))
        .flat_map(|from| &from.sources);
    let known = |id: &SourceId| Some((id.clone(), herbal.sources.get(id)?.clone()));
    of_cells.chain(of_rows).filter_map(known).collect()
}

pub(crate) fn check(world: &World, account: &Account) -> CheckReply {
    CheckReply {
        version: world.herbal_version.clone(),
        report: herbal::check(&world.herbal, account),
    }
}
