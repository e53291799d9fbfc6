//! What no table tells by itself: whether the tables of an outing fit each other.

use super::file::{Row, Said, Source};
use super::read::Parsed;
use super::shape::{LooksTable, MakeTable, StandTable, TakeTable};
use ground::{Fault, Faults, Part, Place};
use herbal::Herbal;
use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;

/// The tables of all files that others are held against, by name.
struct Tables<'p> {
    stands: BTreeMap<&'p str, &'p StandTable>,
    takes: BTreeMap<&'p str, &'p TakeTable>,
    lots: BTreeMap<&'p str, &'p [Said]>,
    makes: BTreeMap<&'p str, &'p MakeTable>,
    specimens: BTreeSet<&'p str>,
}

/// Notes every table that does not fit another. A name that is not known is told elsewhere.
pub(super) fn check(parsed: &[Parsed<'_>], herbal: &Herbal, faults: &mut Faults) {
    let tables = Tables::of(parsed);
    let mut seen_at = BTreeMap::new();
    let way_back = parsed.iter().filter_map(|(s, f)| Some((s, f.way_back.as_ref()?.span())));
    once("way-back", way_back, faults);
    let emergency = parsed.iter().filter_map(|(s, f)| Some((s, f.emergency.as_ref()?.span())));
    once("emergency", emergency, faults);
    for (source, file) in parsed {
        includes(source, &file.include, parsed, faults);
        for table in &file.looks {
            one_stand(&mut row(source, "looks", &table.specimen, faults), table, &mut seen_at);
        }
        for table in &file.take {
            pattern(&mut row(source, "take", &table.name, faults), table, &tables);
        }
        for make in &file.make {
            let mut row = row(source, "make", &make.name, faults);
            for said in &make.stands {
                stand_fits(&mut row, make, said, &tables, herbal);
            }
            for said in &make.lots {
                lot_fits(&mut row, make, said, &tables, herbal);
            }
        }
        for batch in &file.batch {
            let Some(make) = tables.makes.get(batch.make.get_ref().as_str()) else { continue };
            let mut row = row(source, "batch", &batch.name, faults);
            for said in &batch.lots {
                lot_fits(&mut row, make, said, &tables, herbal);
            }
        }
    }
}

fn row<'a>(
    source: &'a Source<'a>,
    table: &'static str,
    entry: &Said,
    faults: &'a mut Faults,
) -> Row<'a> {
    Row::new(source, None, table, entry.get_ref(), faults)
}

impl<'p> Tables<'p> {
    fn of(parsed: &'p [Parsed<'_>]) -> Self {
        let files = || parsed.iter().map(|(_, file)| file);
        Self {
            stands: files()
                .flat_map(|f| &f.stand)
                .map(|t| (t.name.get_ref().as_str(), t))
                .collect(),
            takes: files().flat_map(|f| &f.take).map(|t| (t.name.get_ref().as_str(), t)).collect(),
            lots: files()
                .flat_map(|f| &f.lot)
                .map(|t| (t.name.get_ref().as_str(), t.takes.as_slice()))
                .collect(),
            makes: files().flat_map(|f| &f.make).map(|t| (t.name.get_ref().as_str(), t)).collect(),
            specimens: files()
                .flat_map(|f| &f.looks)
                .map(|t| t.specimen.get_ref().as_str())
                .collect(),
        }
    }
}

/// A table that all files together hold once at most: of two, neither would be the right one.
fn once<'p, 'a: 'p>(
    table: &str,
    given: impl Iterator<Item = (&'p Source<'a>, Range<usize>)>,
    faults: &mut Faults,
) {
    for (source, span) in given.skip(1) {
        let place = Place { table: Some(table.to_owned()), ..source.place(&span) };
        faults.add(Fault::new("table-twice", place, table));
    }
}

/// A file that is asked for and did not come.
fn includes(source: &Source<'_>, wanted: &[Said], parsed: &[Parsed<'_>], faults: &mut Faults) {
    let bare = |name: &str| name.rsplit(['/', '\\']).next().unwrap_or_default().to_owned();
    for said in wanted {
        if parsed.iter().all(|(source, _)| bare(source.name) != bare(said.get_ref())) {
            faults.add(Fault::new("no-such-file", source.place(&said.span()), said.get_ref()));
        }
    }
}

/// A plant in hand grows at one stand.
fn one_stand<'p>(
    row: &mut Row<'_>,
    table: &'p LooksTable,
    seen_at: &mut BTreeMap<&'p str, &'p str>,
) {
    let stand = table.stand.get_ref().as_str();
    let first = *seen_at.entry(table.specimen.get_ref()).or_insert(stand);
    if first != stand {
        row.fault_with("specimen-at-two-stands", "stand", &table.stand, ("other", first));
    }
}

/// The pattern of a take was looked at, at the same stand.
fn pattern(row: &mut Row<'_>, table: &TakeTable, tables: &Tables<'_>) {
    let Some(said) = &table.pattern else { return };
    if !tables.specimens.contains(said.get_ref().as_str()) {
        let known: Vec<_> = tables.specimens.iter().map(|name| ground::Arg::from(*name)).collect();
        row.no_such_name("pattern", said, known);
    }
}

/// What is made of a plant comes from stands of that plant.
fn stand_fits(
    row: &mut Row<'_>,
    make: &MakeTable,
    said: &Said,
    tables: &Tables<'_>,
    herbal: &Herbal,
) {
    if let Some(stand) = tables.stands.get(said.get_ref().as_str())
        && !same_plant(herbal, &stand.plant, &make.plant)
    {
        row.fault_with(
            "stand-of-another-plant",
            "stands",
            said,
            ("plant", make.plant.get_ref().as_str()),
        );
    }
}

/// What is made of a part of a plant is made of lots of that part of that plant.
fn lot_fits(
    row: &mut Row<'_>,
    make: &MakeTable,
    said: &Said,
    tables: &Tables<'_>,
    herbal: &Herbal,
) {
    let takes = tables.lots.get(said.get_ref().as_str()).copied().unwrap_or_default();
    let takes = takes.iter().filter_map(|take| tables.takes.get(take.get_ref().as_str()));
    let fits = |take: &&TakeTable| {
        let stand = tables.stands.get(take.stand.get_ref().as_str());
        stand.is_none_or(|stand| same_plant(herbal, &stand.plant, &make.plant))
            && parts_meet(&take.part, &make.part)
    };
    if !takes.copied().all(|take| fits(&take)) {
        row.fault_with(
            "lot-of-another-plant",
            "lots",
            said,
            ("plant", make.plant.get_ref().as_str()),
        );
    }
}

/// Whether two names mean one plant; a name that means none is told elsewhere.
fn same_plant(herbal: &Herbal, one: &Said, other: &Said) -> bool {
    match (herbal.flora.find(one.get_ref()), herbal.flora.find(other.get_ref())) {
        (Ok(one), Ok(other)) => one.name == other.name,
        _ => true,
    }
}

fn parts_meet(one: &Said, other: &Said) -> bool {
    match (one.get_ref().parse::<Part>(), other.get_ref().parse::<Part>()) {
        (Ok(one), Ok(other)) => one.meets(other),
        _ => true,
    }
}
