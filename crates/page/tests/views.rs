//! Pages of replies to real requests, as they stand on a terminal of eighty columns.
#![expect(clippy::unwrap_used, reason = "a test reports by panicking")]

use desk::{InputFile, MakeOrder, NameOrder, Reply, Request, World, answer};
use ground::RandomStart;
use identify::Level;
use journal::Journal;
use page::{Catalogue, Style, Words, text, view};
use std::fs;
use std::path::Path;
use std::sync::LazyLock;

static WORLD: LazyLock<World> = LazyLock::new(|| World {
    herbal: herbal_data::herbal(),
    herbal_version: "as-tested".to_owned(),
    journal: Journal::new(),
    now: jiff::civil::date(2027, 5, 1).at(9, 0, 0, 0),
    random_start: RandomStart(0),
});

fn said(request: Request) -> String {
    let reply: Reply = answer(&WORLD, request).unwrap();
    let catalogue = Catalogue::english();
    let words = Words::new(&catalogue).with_herbal(&WORLD.herbal);
    let said = text(&view(&reply, &words), Some(80), Style::Plain);
    assert!(!said.contains('⟦'), "a message is missing:\n{said}");
    said
}

fn looks(said: &str) -> Vec<(String, String)> {
    let look =
        |look: &str| look.split_once('=').map(|(a, b)| (a.to_owned(), b.to_owned())).unwrap();
    said.split_whitespace().map(look).collect()
}

fn name(is: Option<&str>, first: &str, second: &str) -> Request {
    Request::Name(NameOrder {
        is: is.map(str::to_owned),
        region: Some(ground::Region::Europe),
        day: None,
        looks: looks(first),
        second: looks(second),
        level: Level::Leader,
        table: None,
    })
}

/// The files of a demonstration outing.
fn outing(names: &[&str]) -> Vec<InputFile> {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo");
    let file =
        |name: &&str| InputFile::from_bytes(name, fs::read(demo.join(name)).unwrap()).unwrap();
    names.iter().map(file).collect()
}

const EVENING: [&str; 3] = ["spring-evening.toml", "spring-people.toml", "spring-health.toml"];
const NETTLE: &str = "habit=herb leaf_arrangement=opposite leaf_surface=stinging \
     stem_surface=stinging leaf_hairs=stinging leaf_margin=serrate stem_section=square \
     leaf_venation=netted stipules=small";

#[test]
fn a_nettle_that_was_looked_at_well() {
    insta::assert_snapshot!(said(name(Some("stinging nettle"), NETTLE, NETTLE)));
}

#[test]
fn a_leaf_that_is_not_settled() {
    insta::assert_snapshot!(said(name(
        Some("ramsons"),
        "leaf_venation=parallel crushed_smell=garlic",
        "",
    )));
}

#[test]
fn a_plant_that_nobody_named() {
    insta::assert_snapshot!(said(name(None, "leaf_venation=parallel leaf_shape=elliptic", "")));
}

#[test]
fn two_plants_side_by_side() {
    let plants = ["ramsons", "Convallaria majalis"].map(str::to_owned);
    insta::assert_snapshot!(said(Request::Compare { plants }));
}

#[test]
fn a_syrup_from_what_is_at_hand() {
    insta::assert_snapshot!(said(Request::Make(Box::new(MakeOrder {
        recipe: "root-syrup".to_owned(),
        moisture: Some("10 %".parse().unwrap()),
        kitchen: Some(ground::MeasureSystem::Metric),
        ..MakeOrder::default()
    }))));
}

#[test]
fn a_tincture_let_down_from_a_bottle() {
    insta::assert_snapshot!(said(Request::Make(Box::new(MakeOrder {
        recipe: "fresh-tincture".to_owned(),
        moisture: Some("80 %".parse().unwrap()),
        stock: Some("96 % vol".parse().unwrap()),
        ..MakeOrder::default()
    }))));
}

#[test]
fn a_preparation_that_lacks_a_word() {
    insta::assert_snapshot!(said(Request::Make(Box::new(MakeOrder {
        recipe: "herb-tea".to_owned(),
        herb: Some("2 tsp".parse().unwrap()),
        ..MakeOrder::default()
    }))));
}

#[test]
fn what_may_go_from_each_stand() {
    insta::assert_snapshot!(said(Request::Allowance { files: outing(&EVENING) }));
}

#[test]
fn who_may_have_what() {
    insta::assert_snapshot!(said(Request::Serving { files: outing(&EVENING), reasons: false }));
}

#[test]
fn reasons_stand_only_where_they_are_asked_for() {
    let open = said(Request::Serving { files: outing(&EVENING), reasons: false });
    let sealed = said(Request::Serving { files: outing(&EVENING), reasons: true });
    assert!(sealed.contains("For the leader only") && !open.contains("For the leader only"));
    assert!(sealed.len() > 2 * open.len());
}
