//! Reading an outing: the tables of its files become entries and wishes, or every fault comes back.

use super::cross;
use super::emergency::{EmergencyWish, PhoneNumber, WayBack};
use super::entries::{Entries, all, counted, maybe, whole};
use super::file::{InputFile, Row, Said, Source};
use super::money;
use super::names::{Given, Names};
use super::shape::{
    ContentTable, DistTable, FractionTable, MakeTable, OutingFile, OutingTable, StopTable,
};
use super::wishes::{Make, OwnContent, OwnFraction, Reader, Stop, Wishes};
use ground::{
    AlcoholByVolume, Dimension, Dist, Fault, Faults, Fraction, Heap, MeasureSystem, Place, Region,
    Spoken,
};
use harvest::Purpose;
use herbal::Herbal;
use identify::Level;
use jiff::civil::{Date, Time};
use jiff::tz::TimeZone;
use journal::Journal;
use prepare::{HerbState, What};
use std::collections::{BTreeMap, BTreeSet};
use toml::Spanned;

/// An outing as read: what has happened, and what is wanted.
#[derive(Clone, Debug)]
pub struct Outing {
    /// What has happened, as far as its files say.
    pub journal: Journal,
    /// What is wanted.
    pub wishes: Wishes,
}

/// The further files that a file asks for, beside it.
///
/// # Errors
/// When the file cannot be read at all.
pub fn includes(file: &InputFile) -> Result<Vec<String>, Faults> {
    let source = Source::of(file);
    let shape: OutingFile = source.parse()?;
    Ok(shape.include.into_iter().map(Spanned::into_inner).collect())
}

/// Reads the files of an outing.
///
/// # Errors
/// Every fault in every file, with line and column, what was wanted and how to mend it.
pub fn read(files: &[InputFile], herbal: &Herbal) -> Result<Outing, Faults> {
    let mut faults = Faults::none();
    let parsed = parse_all(files, &mut faults);
    if !faults.is_empty() {
        // Names that a file gives would be missing in the others.
        return Err(faults.into_iter().collect());
    }
    let names = Names { herbal, given: names_given(&parsed, &mut faults) };
    cross::check(&parsed, herbal, &mut faults);
    let wishes = only_outing(&parsed, files, &mut faults)
        .and_then(|(source, table)| outing(source, &names, table, &mut faults));
    let mut wishes = wishes.unwrap_or_else(unread);
    wishes.money = money::read(&parsed, &mut faults);
    let mut journal = Journal::new();
    for (source, shape) in &parsed {
        let kitchen = wishes.kitchen;
        let mut entries = Entries {
            source,
            names: &names,
            kitchen,
            leader: &wishes.leader,
            faults: &mut faults,
            journal: &mut journal,
        };
        entries.read(shape);
        let mut reading =
            WishReader { source, names: &names, kitchen, faults: &mut faults, wishes: &mut wishes };
        reading.read(shape);
    }
    faults.or(Outing { journal, wishes })
}

/// A file with its tables.
pub(super) type Parsed<'a> = (Source<'a>, OutingFile);

fn parse_all<'a>(files: &'a [InputFile], faults: &mut Faults) -> Vec<Parsed<'a>> {
    let parse = |file: &'a InputFile| {
        let source = Source::of(file);
        let shape = source.parse()?;
        Ok((source, shape))
    };
    files.iter().filter_map(|file| faults.note(parse(file))).collect()
}

fn names_given(parsed: &[Parsed<'_>], faults: &mut Faults) -> Given {
    let mut given = Given::default();
    for (source, shape) in parsed {
        for (table, said) in given.add(shape) {
            let place = Place { table: Some(table.to_owned()), ..source.place(&said.span()) };
            faults.add(Fault::new("name-twice", place, said.get_ref()));
        }
    }
    given
}

/// The one `[outing]` table that all files together must hold.
fn only_outing<'p, 'a>(
    parsed: &'p [Parsed<'a>],
    files: &[InputFile],
    faults: &mut Faults,
) -> Option<(&'p Source<'a>, &'p OutingTable)> {
    let tables: Vec<_> = parsed
        .iter()
        .filter_map(|(source, shape)| shape.outing.as_ref().map(|table| (source, table)))
        .collect();
    if let [only] = tables.as_slice() {
        return Some(*only);
    }
    let file = files.first().map(|file| file.name.clone()).unwrap_or_default();
    let place = match tables.get(1) {
        Some((source, second)) => {
            Place { table: Some("outing".to_owned()), ..source.place(&second.date.span()) }
        }
        None => Place::entry("outing", "", "").in_file(file),
    };
    faults.add(Fault::new("one-outing-wanted", place, tables.len().to_string()));
    None
}

fn outing(
    source: &Source<'_>,
    names: &Names<'_>,
    table: &OutingTable,
    faults: &mut Faults,
) -> Option<Wishes> {
    let mut row = Row::new(source, None, "outing", "", faults);
    let date = row.date("date", &table.date);
    let from = row.time("from", &table.from);
    let to = row.time("to", &table.to);
    if from.zip(to).is_some_and(|(from, to)| to <= from) {
        row.fault("ends-before-it-begins", "to", &table.to);
    }
    let zone = zone(&mut row, &table.zone);
    let region = row.word("region", &table.region);
    let kitchen = table.kitchen.as_ref().map(|said| row.word::<MeasureSystem>("kitchen", said));
    let records_since = table.records_since.as_ref().map(|said| row.date("records-since", said));
    let leader = names.reader(&mut row, "leader", &table.leader);
    let purpose = names.purpose(&mut row, "purpose", &table.purpose);
    let field = "recipes-to-take-home";
    let recipes = table.recipes_to_take_home.iter().map(|said| names.plant(&mut row, field, said));
    let recipes = recipes.collect::<Vec<_>>().into_iter().collect::<Option<_>>();
    let latitude = table.latitude.as_ref().map(|said| row.degrees("latitude", said, 90.0));
    let longitude = table.longitude.as_ref().map(|said| row.degrees("longitude", said, 180.0));
    Some(Wishes {
        name: table.name.clone(),
        date: date?,
        from: from?,
        to: to?,
        zone: zone?,
        zone_name: table.zone.get_ref().clone(),
        region: region?,
        place: maybe(latitude)?.zip(maybe(longitude)?),
        leader: leader?,
        purpose: purpose?,
        kitchen: maybe(kitchen)?,
        as_of: None,
        records_since: maybe(records_since)?,
        sold: table.sold,
        recipes_to_take_home: recipes?,
        readers: BTreeMap::new(),
        stops: Vec::new(),
        way_back: WayBack::default(),
        emergency: EmergencyWish::default(),
        makes: BTreeMap::new(),
        contents: BTreeMap::new(),
        fractions: Vec::new(),
        money: None,
    })
}

/// Wishes to read the other tables into where the outing itself could not be read, so that their
/// faults are told as well. Nobody gets to see these.
fn unread() -> Wishes {
    Wishes {
        name: String::new(),
        date: Date::ZERO,
        from: Time::midnight(),
        to: Time::midnight(),
        zone: TimeZone::UTC,
        zone_name: String::new(),
        region: Region::Europe,
        place: None,
        leader: String::new(),
        purpose: Purpose::OwnUse,
        kitchen: None,
        as_of: None,
        records_since: None,
        sold: false,
        recipes_to_take_home: BTreeSet::new(),
        readers: BTreeMap::new(),
        stops: Vec::new(),
        way_back: WayBack::default(),
        emergency: EmergencyWish::default(),
        makes: BTreeMap::new(),
        contents: BTreeMap::new(),
        fractions: Vec::new(),
        money: None,
    }
}

fn zone(row: &mut Row<'_>, said: &Said) -> Option<TimeZone> {
    let zone = TimeZone::get(said.get_ref());
    if zone.is_err() {
        row.fault("no-such-zone", "zone", said);
    }
    zone.ok()
}

/// Reads the wishes of one file.
struct WishReader<'a> {
    source: &'a Source<'a>,
    names: &'a Names<'a>,
    kitchen: Option<MeasureSystem>,
    faults: &'a mut Faults,
    wishes: &'a mut Wishes,
}

impl WishReader<'_> {
    fn read(&mut self, file: &OutingFile) {
        if let Some(said) = &file.as_of {
            let mut row = Row::new(self.source, self.kitchen, "", "", self.faults);
            self.wishes.as_of = self.wishes.as_of.max(row.moment("as-of", said));
        }
        for table in &file.reader {
            let level = level(&mut self.row("reader", &table.name), &table.level);
            let Some(level) = level else { continue };
            let reader = Reader { called: table.called.clone(), level };
            self.wishes.readers.insert(table.name.get_ref().clone(), reader);
        }
        for table in &file.stop {
            let stop = stop(self.names, &mut self.row("stop", &table.site), table);
            self.wishes.stops.extend(stop);
        }
        self.wishes.stops.sort_by(|a, b| (a.at, &a.site).cmp(&(b.at, &b.site)));
        self.safety(file);
        for table in &file.make {
            let date = self.wishes.date;
            let make = make(self.names, &mut self.row("make", &table.name), table, date);
            self.wishes.makes.extend(make.map(|make| (make.name.clone(), make)));
        }
        for table in &file.content {
            let content = content(self.names, &mut self.row("content", &table.name), table);
            let name = table.name.get_ref().clone();
            self.wishes.contents.extend(content.map(|content| (name, content)));
        }
        for table in &file.fraction {
            let fraction = fraction(&mut self.row("fraction", &table.part), table);
            self.wishes.fractions.extend(fraction);
        }
    }

    /// The way back, and what is said of emergencies.
    fn safety(&mut self, file: &OutingFile) {
        let (source, kitchen) = (self.source, self.kitchen);
        if let Some(table) = &file.way_back {
            let mut row = Row::new(source, kitchen, "way-back", "", self.faults);
            self.wishes.way_back.take(&mut row, table.get_ref());
        }
        if let Some(table) = &file.emergency {
            let mut row = Row::new(source, kitchen, "emergency", "", self.faults);
            self.wishes.emergency.take(&mut row, table.get_ref());
        }
        for table in &file.number {
            let mut row = Row::new(source, kitchen, "number", &table.called, self.faults);
            self.wishes.emergency.numbers.extend(PhoneNumber::read(&mut row, table));
        }
        self.wishes.emergency.numbers.sort();
    }

    fn row(&mut self, table: &'static str, entry: &Said) -> Row<'_> {
        Row::new(self.source, self.kitchen, table, entry.get_ref(), self.faults)
    }
}

/// How well somebody reads, by its word.
pub(crate) fn level(row: &mut Row<'_>, said: &Said) -> Option<Level> {
    let found = Level::of(said.get_ref());
    if found.is_none() {
        let known = Level::NAMED.map(|(word, _)| word).join(", ");
        row.fault_with("unknown-word", "level", said, ("known", known));
    }
    found
}

fn stop(names: &Names<'_>, row: &mut Row<'_>, table: &StopTable) -> Option<Stop> {
    let site = names.site(row, "site", &table.site);
    let at = row.time("at", &table.at);
    let lasts = row.duration("lasts", &table.lasts);
    let walk = table.walk.as_ref().map(|said| row.length("walk", said));
    let climb = table.climb.as_ref().map(|said| row.length("climb", said));
    let plants = all(&table.plants, |said| names.plant(row, "plants", said));
    Some(Stop {
        site: site?,
        at: at?,
        lasts: lasts?,
        walk: maybe(walk)?,
        climb: maybe(climb)?,
        plants: plants?,
    })
}

fn make(names: &Names<'_>, row: &mut Row<'_>, table: &MakeTable, date: Date) -> Option<Make> {
    let recipe = names.recipe(row, "recipe", &table.recipe);
    let plant = names.plant(row, "plant", &table.plant);
    let part = row.word("part", &table.part);
    let stands = all(&table.stands, |said| names.stand(row, "stands", said));
    let lots = all(&table.lots, |said| names.lot(row, "lots", said));
    let herb = table.herb.as_ref().map(|said| herb_state(row, said));
    let moisture = table.moisture.as_ref().map(|said| row.share("moisture", said));
    let heap = table.heap.as_ref().map(|said| heap(row, said));
    let by_mass_or_volume =
        |said: &Spoken| said.measures(Dimension::Mass) || said.measures(Dimension::Volume);
    let serving =
        table.serving.as_ref().map(|said| row.spoken_as("serving", said, by_mass_or_volume));
    let amounts = Amounts::read(row, &table.amounts);
    let servings_a_day = counted(row, "servings-a-day", &table.servings_a_day, 100);
    let days = counted(row, "days", &table.days, 366);
    let people = all(&table.people, |said| names.participant(row, "people", said));
    let on = table.on.as_ref().map(|said| row.date("on", said));
    if table.everybody != table.people.is_empty() {
        row.fault("for-whom", "people", &table.name);
    }
    let Amounts { herb: herb_amount, others, stock, jar, sweetened } = amounts?;
    Some(Make {
        name: table.name.get_ref().clone(),
        called: table.called.clone(),
        recipe: recipe?,
        plant: plant?,
        part: part?,
        stands: stands?,
        lots: lots?,
        herb: maybe(herb)?,
        moisture: maybe(moisture)?,
        moisture_supposed: table.moisture_supposed,
        heap: maybe(heap)?,
        spoon: table.spoon.clone(),
        stage: table.stage.clone(),
        herb_amount,
        amounts: others,
        stock,
        jar,
        sweetened,
        serving: maybe(serving)?,
        weighed: table.weighed,
        servings_a_day: servings_a_day?,
        days: days?,
        people: people?,
        on: maybe(on)?.unwrap_or(date),
        taken_home: table.taken_home,
    })
}

/// What a make says of amounts and strengths.
#[derive(Default)]
struct Amounts {
    herb: Option<Spoken>,
    others: BTreeMap<What, Spoken>,
    stock: Option<AlcoholByVolume>,
    jar: Option<AlcoholByVolume>,
    sweetened: Option<Spoken>,
}

impl Amounts {
    fn read(row: &mut Row<'_>, table: &BTreeMap<String, Said>) -> Option<Self> {
        let mut amounts = Self::default();
        let mut whole = true;
        for (name, said) in table {
            whole &= amounts.take(row, name, said).is_some();
        }
        whole.then_some(amounts)
    }

    fn take(&mut self, row: &mut Row<'_>, name: &str, said: &Said) -> Option<()> {
        let others = [What::Water, What::Spirit, What::Sugar, What::Other];
        match (name, others.into_iter().find(|what| what.word() == name)) {
            ("herb", _) => self.herb = Some(ingredient(row, What::Herb, said)?),
            ("stock", _) => self.stock = Some(row.strength(name, said)?),
            ("jar", _) => self.jar = Some(row.strength(name, said)?),
            ("sweetened", _) => {
                self.sweetened = Some(row.spoken_as(name, said, |s| s.measures(Dimension::Mass))?);
            }
            (_, Some(what)) => drop(self.others.insert(what, ingredient(row, what, said)?)),
            (_, None) => {
                let list = "herb, water, spirit, sugar, other, stock, jar, sweetened";
                row.fault_with("unknown-amount", name, said, ("list", list));
                return None;
            }
        }
        Some(())
    }
}

fn ingredient(row: &mut Row<'_>, what: What, said: &Said) -> Option<Spoken> {
    row.spoken_as(what.word(), said, |spoken| what.is_measured_by(spoken))
}

fn herb_state(row: &mut Row<'_>, said: &Said) -> Option<HerbState> {
    let all = [HerbState::Fresh, HerbState::Dried];
    let found = all.into_iter().find(|state| state.word() == said.get_ref());
    if found.is_none() {
        row.fault_with("unknown-word", "herb", said, ("known", "fresh, dried"));
    }
    found
}

fn heap(row: &mut Row<'_>, said: &Said) -> Option<Heap> {
    match said.get_ref().as_str() {
        "level" => Some(Heap::Level),
        "heaped" => Some(Heap::Heaped),
        _ => {
            row.fault_with("unknown-word", "heap", said, ("known", "level, heaped"));
            None
        }
    }
}

fn content(names: &Names<'_>, row: &mut Row<'_>, table: &ContentTable) -> Option<OwnContent> {
    let plant = names.plant(row, "plant", &table.plant);
    let part = row.word("part", &table.part);
    let constituent = names.substance(row, "constituent", &table.constituent);
    let content = dist(row, "content", &table.content, &table.name);
    let transfer =
        table.transfer.as_ref().map(|dist| self::dist(row, "transfer", dist, &table.name));
    Some(OwnContent {
        plant: plant?,
        part: part?,
        constituent: constituent?,
        content: content?,
        transfer: maybe(transfer)?,
        source: table.source.clone(),
    })
}

fn dist(row: &mut Row<'_>, field: &str, table: &DistTable, name: &Said) -> Option<Dist> {
    let mut found = Vec::new();
    found.extend(table.exact.as_ref().map(|said| Dist::exact(*said.get_ref())));
    let two = |said: &Spanned<[f64; 2]>| *said.get_ref();
    found.extend(table.uniform.as_ref().map(two).map(|[a, b]| Dist::uniform(a, b)));
    found.extend(table.log_uniform.as_ref().map(two).map(|[a, b]| Dist::log_uniform(a, b)));
    found.extend(table.log_normal.as_ref().map(two).map(|[a, b]| Dist::log_normal(a, b)));
    let three = |said: &Spanned<[f64; 3]>| *said.get_ref();
    found.extend(table.triangular.as_ref().map(three).map(|[a, b, c]| Dist::triangular(a, b, c)));
    match (found.pop(), found.is_empty()) {
        (Some(Ok(dist)), true) => Some(dist),
        (Some(Err(why)), true) => {
            row.fault_with("no-such-distribution", field, name, ("why", why.to_string()));
            None
        }
        _ => {
            row.fault("one-distribution-wanted", field, name);
            None
        }
    }
}

fn fraction(row: &mut Row<'_>, table: &FractionTable) -> Option<OwnFraction> {
    let part = row.word("part", &table.part);
    let life_form = row.word("life-form", &table.life_form);
    let at_most = row.share("at-most", &table.at_most);
    let rest_years = whole(row, "rest-years", &table.rest_years, 100);
    Some(OwnFraction {
        part: part?,
        life_form: life_form?,
        at_most: Fraction::from_share(at_most?.0.share()),
        rest_years: rest_years?,
    })
}
