//! Every page of the demonstration that is taken home, and how easily it is read.

use crate::kit::{self, SPRING_EVENING};
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

/// The pages about plants, of the evening before.
pub(crate) fn pages() -> Vec<NamedPage> {
    let world = kit::world(jiff::civil::date(2027, 4, 30).at(9, 0, 0, 0));
    let plan = kit::plan(&world, kit::demo(SPRING_EVENING), false);
    let all = kit::pages(&world, &plan);
    all.into_iter().filter(|named| named.name.starts_with("plant-")).collect()
}
