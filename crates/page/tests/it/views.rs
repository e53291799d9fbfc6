//! Pages of replies to real requests, as they stand on a terminal of eighty columns.

use crate::kit::{self, SPRING_EVENING};
use desk::{
    ApartOrder, KeyOrder, MakeOrder, NameOrder, NotEnough, Reply, Request, Sorter, SortingOrder,
    SortingReply, World, answer, device,
};
use ground::Part;
use identify::Level;
use identify::sorting::{Planted, Sees};
use page::view;
use std::sync::LazyLock;

static WORLD: LazyLock<World> =
    LazyLock::new(|| kit::world(jiff::civil::date(2027, 5, 1).at(9, 0, 0, 0)));

fn said(request: impl Into<Request>) -> String {
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
    insta::assert_snapshot!(said(device::Request::Compare { plants }));
}

fn apart(plant: &str, month: Option<u8>) -> Request {
    Request::Apart(ApartOrder {
        plant: plant.to_owned(),
        region: None,
        month: month.and_then(ground::Month::new),
        level: Level::Trained,
    })
}

#[test]
fn ramsons_and_all_that_it_is_taken_for_in_april() {
    insta::assert_snapshot!(said(apart("ramsons", Some(4))));
}

#[test]
fn elder_in_january_shows_too_little() {
    insta::assert_snapshot!(said(apart("black elder", Some(1))));
}

fn key(plants: &[&str], month: Option<u8>) -> Request {
    Request::Key(KeyOrder {
        plants: plants.iter().map(|plant| (*plant).to_owned()).collect(),
        month: month.and_then(ground::Month::new),
        level: Level::Public,
    })
}

const RAMSONS: [&str; 4] = ["ramsons", "lily of the valley", "autumn crocus", "lords-and-ladies"];

#[test]
fn a_key_to_ramsons_and_what_is_taken_for_it() {
    insta::assert_snapshot!(said(key(&RAMSONS, Some(4))));
}

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

fn sorter(name: &str, level: Level, planted: Option<(u32, u32)>) -> Sorter {
    let planted = planted.map(|(missed, of)| Planted { missed, of });
    let name = Some(name.to_owned()).filter(|name| !name.is_empty());
    Sorter { name, sees: Sees { level, planted } }
}

/// Two hundred pieces, one of them wrong, seen by two people of whom one made a trial.
fn basket() -> SortingOrder {
    SortingOrder {
        pieces: 200,
        wrong: 1,
        seen: None,
        sorters: vec![
            sorter("Ida", Level::Leader, None),
            sorter("Jon", Level::Trained, Some((1, 20))),
        ],
        plant: None,
        region: Some(ground::Region::Europe),
    }
}

fn sorted(order: SortingOrder) -> SortingReply {
    match answer(&WORLD, Request::Sorting(order)).unwrap() {
        Reply::Sorting(reply) => *reply,
        _ => panic!("no basket"),
    }
}

#[test]
fn a_basket_of_ramsons_that_two_people_sort() {
    let plant = Some(("ramsons".to_owned(), Part::Leaf));
    let said = said(Request::Sorting(SortingOrder { plant, ..basket() }));
    assert!(!said.contains("safe"), "{said}");
    insta::assert_snapshot!(said);
}

#[test]
fn a_sample_by_one_unnamed_person_is_not_enough() {
    let sorters = vec![sorter("", Level::Public, None)];
    let order = SortingOrder { seen: Some(20), wrong: 3, sorters, ..basket() };
    let reply = sorted(order.clone());
    let missing = [NotEnough::OnePerson, NotEnough::NotNamed, NotEnough::NotEveryPiece(180)];
    assert_eq!(reply.not_enough, missing);
    insta::assert_snapshot!(said(Request::Sorting(order)));
}

#[test]
fn two_named_people_who_see_every_piece_are_what_the_rule_asks_for() {
    assert_eq!(sorted(basket()).not_enough, []);
}

#[test]
fn who_sorts_first_changes_no_number() {
    let mut order = basket();
    let one = sorted(order.clone());
    order.sorters.reverse();
    let other = sorted(order);
    assert_eq!((one.stays, one.unnoticed, one.left), (other.stays, other.unnoticed, other.left));
    let last = |reply: &SortingReply| reply.curve.last().map(|point| (point.one, point.all));
    assert_eq!(last(&one), last(&other));
}

/// The end of the line is the headline, and nothing wrong leaves nothing.
#[test]
fn the_figure_ends_where_the_page_begins() {
    let reply = sorted(basket());
    assert_eq!(reply.curve.last().map(|point| point.all), Some(reply.stays));
    let none = sorted(SortingOrder { wrong: 0, ..basket() });
    assert!(none.curve.iter().all(|point| point.all.get() == 0.0) && none.stays.get() == 0.0);
}

/// A sorter more, a piece more: no look-alike of any plant is likelier to stay in; what nothing on a piece
/// tells stays in for certain.
#[test]
fn every_plant_can_be_sorted_on_paper() {
    let mut untold = 0;
    for (plant, part) in [
        ("ramsons", Part::Leaf),
        ("ramsons", Part::Flower),
        ("black elder", Part::Fruit),
        ("ground elder", Part::YoungLeaf),
        ("comfrey", Part::Root),
        ("Rubus idaeus", Part::Leaf),
    ] {
        let plant = Some((plant.to_owned(), part));
        let order = SortingOrder { plant: plant.clone(), ..basket() };
        let page = said(Request::Sorting(order.clone()));
        assert!(!page.contains('⟦') && !page.contains("safe"), "{page}");
        let two = sorted(order);
        let mut three = SortingOrder { plant, ..basket() };
        three.sorters.push(sorter("Oda", Level::Public, None));
        let three = sorted(three);
        let (two, three) = (two.plant.unwrap(), three.plant.unwrap());
        for (two, three) in two.twins.iter().zip(&three.twins) {
            assert!(three.stays <= two.stays, "{}", two.name);
            if two.looks.is_empty() {
                untold += 1;
                assert_eq!(two.stays.get(), 1.0, "{}", two.name);
            }
        }
    }
    assert!(untold > 0, "one of these has a look-alike that no piece tells");
}

#[test]
fn a_basket_that_cannot_be_is_told() {
    let twice = vec![sorter("Ida", Level::Public, None), sorter("Ida ", Level::Leader, None)];
    let trial = vec![sorter("Ida", Level::Public, Some((3, 2)))];
    for (order, code) in [
        (SortingOrder { pieces: 0, wrong: 0, ..basket() }, "sort-how-many-pieces"),
        (SortingOrder { wrong: 201, ..basket() }, "sort-more-wrong-than-pieces"),
        (SortingOrder { seen: Some(201), ..basket() }, "sort-more-seen-than-pieces"),
        (SortingOrder { sorters: Vec::new(), ..basket() }, "sort-by-nobody"),
        (SortingOrder { sorters: twice, ..basket() }, "sort-by-one-twice"),
        (SortingOrder { sorters: trial, ..basket() }, "sort-no-trial"),
    ] {
        let faults = answer(&WORLD, Request::Sorting(order)).unwrap_err();
        let codes: Vec<_> = faults.iter().map(|fault| fault.code.as_str()).collect();
        assert_eq!(codes, [code]);
    }
}

#[test]
fn a_syrup_from_what_is_at_hand() {
    insta::assert_snapshot!(said(device::Request::Make(Box::new(MakeOrder {
        recipe: "root-syrup".to_owned(),
        moisture: Some("10 %".parse().unwrap()),
        kitchen: Some(ground::MeasureSystem::Metric),
        ..MakeOrder::default()
    }))));
}

#[test]
fn a_tincture_let_down_from_a_bottle() {
    insta::assert_snapshot!(said(device::Request::Make(Box::new(MakeOrder {
        recipe: "fresh-tincture".to_owned(),
        moisture: Some("80 %".parse().unwrap()),
        stock: Some("96 % vol".parse().unwrap()),
        ..MakeOrder::default()
    }))));
}

#[test]
fn a_preparation_that_lacks_a_word() {
    insta::assert_snapshot!(said(device::Request::Make(Box::new(MakeOrder {
        recipe: "herb-tea".to_owned(),
        herb: Some("2 tsp".parse().unwrap()),
        ..MakeOrder::default()
    }))));
}

#[test]
fn what_may_go_from_each_stand() {
    insta::assert_snapshot!(said(device::Request::Allowance { files: kit::demo(SPRING_EVENING) }));
}

#[test]
fn who_may_have_what() {
    insta::assert_snapshot!(said(device::Request::Serving {
        files: kit::demo(SPRING_EVENING),
        reasons: false
    }));
}

#[test]
fn reasons_stand_only_where_they_are_asked_for() {
    let open = said(device::Request::Serving { files: kit::demo(SPRING_EVENING), reasons: false });
    let sealed = said(device::Request::Serving { files: kit::demo(SPRING_EVENING), reasons: true });
    assert!(sealed.contains("For the leader only") && !open.contains("For the leader only"));
    assert!(sealed.len() > 2 * open.len());
}
