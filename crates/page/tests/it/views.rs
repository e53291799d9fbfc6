//! Pages of replies to real requests, as they stand on a terminal of eighty columns.

use crate::kit::{self, SPRING_EVENING};
use desk::{MakeOrder, NameOrder, Request, World, answer};
use identify::Level;
use page::view;
use std::sync::LazyLock;

static WORLD: LazyLock<World> =
    LazyLock::new(|| kit::world(jiff::civil::date(2027, 5, 1).at(9, 0, 0, 0)));

fn said(request: Request) -> String {
    kit::said(&view(&answer(&WORLD, request).unwrap(), &kit::words()), Some(80))
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
    insta::assert_snapshot!(said(Request::Allowance { files: kit::demo(SPRING_EVENING) }));
}

#[test]
fn who_may_have_what() {
    insta::assert_snapshot!(said(Request::Serving {
        files: kit::demo(SPRING_EVENING),
        reasons: false
    }));
}

#[test]
fn reasons_stand_only_where_they_are_asked_for() {
    let open = said(Request::Serving { files: kit::demo(SPRING_EVENING), reasons: false });
    let sealed = said(Request::Serving { files: kit::demo(SPRING_EVENING), reasons: true });
    assert!(sealed.contains("For the leader only") && !open.contains("For the leader only"));
    assert!(sealed.len() > 2 * open.len());
}
