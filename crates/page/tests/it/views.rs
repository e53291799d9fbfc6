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

#[cfg(feature = "command-line")]
fn apart(plant: &str, month: Option<u8>) -> Request {
    Request::Apart(desk::ApartOrder {
        plant: plant.to_owned(),
        region: None,
        month: month.and_then(ground::Month::new),
        level: Level::Trained,
    })
}

#[cfg(feature = "command-line")]
#[test]
fn ramsons_and_all_that_it_is_taken_for_in_april() {
    insta::assert_snapshot!(said(apart("ramsons", Some(4))));
}

#[cfg(feature = "command-line")]
#[test]
fn elder_in_january_shows_too_little() {
    insta::assert_snapshot!(said(apart("black elder", Some(1))));
}

#[cfg(feature = "command-line")]
fn key(plants: &[&str], month: Option<u8>) -> Request {
    Request::Key(desk::KeyOrder {
        plants: plants.iter().map(|plant| (*plant).to_owned()).collect(),
        month: month.and_then(ground::Month::new),
        level: Level::Public,
    })
}

#[cfg(feature = "command-line")]
const RAMSONS: [&str; 4] = ["ramsons", "lily of the valley", "autumn crocus", "lords-and-ladies"];

#[cfg(feature = "command-line")]
#[test]
fn a_key_to_ramsons_and_what_is_taken_for_it() {
    insta::assert_snapshot!(said(key(&RAMSONS, Some(4))));
}

#[cfg(feature = "command-line")]
#[test]
fn a_key_to_umbellifers_measures_and_does_not_settle_everything() {
    let plants =
        ["ground elder", "caraway", "Conium maculatum", "Cicuta virosa", "Cicuta maculata"];
    let said = said(key(&plants, None));
    assert!(
        said.contains("this key does not settle it") && said.contains("harm: deadly"),
        "{said}"
    );
    insta::assert_snapshot!(said);
}

#[cfg(feature = "command-line")]
#[test]
fn a_key_determines_nothing_and_calls_nothing_safe() {
    for month in [None, Some(5), Some(12)] {
        let reply = answer(&WORLD, key(&RAMSONS, month)).unwrap();
        let said = kit::said(&view(&reply, &kit::words()), None);
        assert!(
            said.contains("teaches and does not determine") && !said.contains("safe"),
            "{said}"
        );
        // Every line that ends at a plant says how badly it can hurt.
        for line in said.lines().filter(|line| line.contains(" (Colchicum autumnale) — harm")) {
            assert!(line.ends_with("harm: deadly"), "{line}");
        }
    }
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
