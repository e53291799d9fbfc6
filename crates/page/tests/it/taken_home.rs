//! Every page of the demonstration that is taken home, and how easily it is read.

use crate::kit::{self, AUTUMN_EVENING, SPRING_EVENING};
use page::{NamedPage, Page, PlantNames, Reading};
use std::sync::LazyLock;

/// The names of every plant of the herbal.
pub(crate) static NAMES: LazyLock<PlantNames> = LazyLock::new(|| {
    let sheets = || kit::herbal().flora.sheets();
    let common = sheets().flat_map(|sheet| sheet.common.iter());
    PlantNames::of(sheets().map(|sheet| &sheet.name).chain(common))
});

/// How easily a page is read.
pub(crate) fn reading(page: &Page) -> Reading {
    kit::words().reading(page, &NAMES)
}

/// The pages about plants, of the evening before each outing, named by season and plant.
pub(crate) fn pages() -> Vec<NamedPage> {
    let outings = [("spring", SPRING_EVENING), ("autumn", AUTUMN_EVENING)];
    outings.into_iter().flat_map(|(season, outing)| pages_of(season, outing)).collect()
}

fn pages_of(season: &str, outing: &str) -> Vec<NamedPage> {
    let world = kit::world(jiff::civil::date(2027, 4, 30).at(9, 0, 0, 0));
    let plan = kit::plan(&world, kit::demo(outing), false);
    let of_plant = |named: NamedPage| {
        let plant = named.name.strip_prefix("plant-")?;
        Some(NamedPage { name: format!("{season}-{plant}"), ..named })
    };
    kit::pages(&world, &plan).into_iter().filter_map(of_plant).collect()
}
