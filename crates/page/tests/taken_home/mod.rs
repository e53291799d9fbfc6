//! Every page of the demonstration that is taken home, and how easily it is read.

use desk::{InputFile, Reply, Request, World, answer};
use ground::RandomStart;
use journal::Journal;
use page::{Catalogue, NamedPage, Page, PlantNames, Reading, Words};
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::sync::LazyLock;

static WORLD: LazyLock<World> = LazyLock::new(|| World {
    herbal: herbal_data::herbal(),
    herbal_version: "as-tested".to_owned(),
    journal: Journal::new(),
    now: jiff::civil::date(2027, 4, 30).at(9, 0, 0, 0),
    random_start: RandomStart(0),
});
static CATALOGUE: LazyLock<Catalogue> = LazyLock::new(Catalogue::english);

/// The names of every plant of the herbal.
pub(crate) static NAMES: LazyLock<PlantNames> = LazyLock::new(|| {
    let sheets = || WORLD.herbal.flora.sheets();
    let common = sheets().flat_map(|sheet| sheet.common.iter());
    PlantNames::of(sheets().map(|sheet| &sheet.name).chain(common))
});

fn words() -> Words<'static> {
    Words::new(&CATALOGUE).with_herbal(&WORLD.herbal)
}

/// How easily a page is read.
pub(crate) fn reading(page: &Page) -> Reading {
    words().reading(page, &NAMES)
}

/// The pages about plants, of the evening before.
pub(crate) fn pages() -> Vec<NamedPage> {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo");
    let names = ["spring-evening.toml", "spring-people.toml", "spring-health.toml"];
    let file =
        |name: &str| InputFile::from_bytes(name, fs::read(demo.join(name)).unwrap()).unwrap();
    let request = Request::Plan { files: names.map(file).into(), reasons: false };
    let Reply::Plan(plan) = answer(&WORLD, request).unwrap() else { return Vec::new() };
    let mut sheets = BTreeMap::new();
    for plant in &plan.plants {
        let request = Request::HerbalShow { name: plant.taxon.clone() };
        if let Reply::HerbalShow(sheet) = answer(&WORLD, request).unwrap() {
            sheets.insert(plant.taxon.clone(), *sheet);
        }
    }
    let all = page::pages(&plan, &sheets, desk::Paper::A4, &words());
    all.into_iter().filter(|named| named.name.starts_with("plant-")).collect()
}
