//! The plan and its pages: what they show, and in which order.

use crate::kit::{self, SPRING_EVENING, SPRING_HEALTH, said};
use desk::device::Reply;
use desk::{Plan, StopPlace, World};
use page::{Block, Break, Format, NamedPage, Page, html, view};
use std::sync::LazyLock;

static WORLD: LazyLock<World> =
    LazyLock::new(|| kit::world(jiff::civil::date(2027, 4, 30).at(9, 0, 0, 0)));

fn plan(reasons: bool) -> Plan {
    kit::plan(&WORLD, kit::demo(SPRING_EVENING), reasons)
}

fn written(plan: &Plan) -> Vec<NamedPage> {
    kit::pages(&WORLD, plan)
}

fn page_of(plan: &Plan, name: &str) -> Page {
    kit::page(&WORLD, plan, name)
}

fn on_a_terminal(plan: Plan) -> String {
    said(&view(&Reply::Plan(Box::new(plan)), &kit::words()), Some(80))
}

#[test]
fn the_plan_says_what_is_open_before_anything_else() {
    let said = on_a_terminal(plan(false));
    let at = |part: &str| said.find(part).unwrap_or_else(|| panic!("{part} is missing:\n{said}"));
    assert!(at("What is still open") < at("The plants, and how to be sure"));
    assert!(at("The plants, and how to be sure") < at("Who may have how much"));
    let start: String = said.lines().take(40).collect::<Vec<_>>().join("\n");
    insta::assert_snapshot!(start);
}

#[test]
fn what_nobody_may_have_is_told_with_the_sum_that_passes_the_limit() {
    let plan = plan(false);
    let tea = plan.makes.iter().find(|make| make.plant == "Thuja occidentalis").unwrap();
    assert_eq!(Vec::from_iter(tea.counts.keys()), [&dose::Strictness::Withhold]);
    let said = on_a_terminal(plan.clone());
    let said = said.split_whitespace().collect::<Vec<_>>().join(" ");
    let parts = [
        "mg at the very least. The limits are 4.4 mg and 6 mg.",
        "Nobody may have it",
        "above; history",
    ];
    for part in parts {
        assert!(said.contains(part), "{part} is missing");
    }
}

#[test]
fn the_outside_of_the_sealed_list_says_nothing_but_what_it_is() {
    let plan = plan(true);
    let sealed = page_of(&plan, "sealed-list");
    let mut sheets = sealed.blocks.split(|block| *block == Block::Break(Break::Page));
    let outside = Page { blocks: sheets.next().unwrap().to_vec(), ..sealed.clone() };
    let said = said(&outside, None);
    let lines: Vec<_> = said.lines().filter(|line| line.contains(char::is_alphanumeric)).collect();
    let title = "Sealed: Spring leaves in the Velmer valley";
    assert_eq!(lines, [title, "Sealed", "15 sheets inside, more where one runs over"]);
    // Each of fourteen people stands on one sheet, and on no other; the last has the sources.
    let inside: Vec<_> = sheets
        .map(|blocks| kit::said(&Page { blocks: blocks.to_vec(), ..sealed.clone() }, None))
        .collect();
    assert_eq!((plan.people.len(), inside.len()), (14, 15));
    for called in plan.people.values() {
        let of = inside.iter().filter(|sheet| sheet.contains(called.as_str())).count();
        assert_eq!(of, 1, "{called}");
    }
    for sheet in &inside[..14] {
        let (above, _) = sheet.split_once("fold the lower edge").unwrap();
        assert!(above.contains("May open this sheet: Maren Holt. In an emergency: Tobias Quill."));
        assert!(above.contains("Kept until 31\u{a0}May 2027, then destroyed."));
    }
}

#[test]
fn the_emergency_card_says_whom_to_call_and_leaves_room_for_what_must_be_looked_up() {
    let plan = plan(false);
    let card = page_of(&plan, "emergency-card");
    assert_eq!(card.format, Format::Half);
    insta::assert_snapshot!(said(&card, Some(80)));
    let wallet = page_of(&plan, "emergency-wallet");
    assert_eq!(wallet.format, Format::Wallet);
    insta::assert_snapshot!("wallet", said(&wallet, Some(46)));
    for file in ["emergency-card", "emergency-wallet", "copy-at-base"] {
        let said = html(&page_of(&plan, file));
        assert!(said.contains("look up now") && said.contains("VM 318 864"), "{file}");
        assert!(said.contains("Hedda Marrow") && said.contains("16:15"), "{file}");
        for treatment in ["vomit", "charcoal", "milk", "rinse", "antidote", "make them"] {
            assert!(!said.to_lowercase().contains(treatment), "{file}: {treatment}");
        }
    }
}

/// Nobody said anything, and everybody is called something that fits on no card.
#[test]
fn a_card_of_which_nothing_is_known_is_a_card_to_fill_in() {
    let mut plan = plan(false);
    let long = "A\u{202e}نرگس🌿".repeat(40);
    plan.emergency.first_aider = Some(long.clone());
    plan.emergency.base = None;
    plan.emergency.alarm_at = None;
    plan.emergency.numbers.clear();
    let place = StopPlace {
        site: String::new(),
        called: long,
        grid: None,
        degrees: None,
        road: None,
        way_in: None,
    };
    plan.emergency.places = vec![place; 40];
    for file in ["emergency-card", "emergency-wallet", "copy-at-base"] {
        let said = said(&page_of(&plan, file), Some(80));
        assert!(said.contains("more stops: see the run sheet") && said.contains('…'), "{file}");
        assert!(said.lines().count() < 140, "{file}: {}", said.lines().count());
        assert!(!said.contains('\u{202e}'));
    }
}

/// It goes into the wood: the plan has all the sources and every working.
#[test]
fn the_run_sheet_is_short_and_has_what_the_leader_needs() {
    let plan = plan(false);
    let sheet = said(&page_of(&plan, "run-sheet"), Some(80));
    let at = |part: &str| sheet.find(part).unwrap_or_else(|| panic!("{part} is missing:\n{sheet}"));
    assert!(at("What is still open") < at("The day at a glance"));
    assert!(at("The day at a glance") < at("Weather, water, ticks"));
    assert!(at("Weather, water, ticks") < at("Stop by stop"));
    for part in ["15:15", "Thunder within 30 seconds", "Tobias Quill", "Heads counted", "withheld"]
    {
        at(part);
    }
    let sources = sheet.split("the plan has them all").nth(1).unwrap();
    let listed = sources.lines().filter(|line| line.contains(". ")).count();
    assert!(listed <= 20, "{listed} sources:\n{sources}");
}

#[test]
fn the_sealed_list_is_written_only_where_reasons_were_asked_for() {
    let sealed = |pages: &[NamedPage]| pages.iter().any(|p| p.name == "sealed-list");
    assert!(!sealed(&written(&plan(false))));
    assert!(sealed(&written(&plan(true))));
}

#[test]
fn exchanging_the_answers_of_two_people_who_are_handed_the_same_changes_no_byte() {
    let exchange = |said: &str| {
        said.replace("\"p05\"", "\"?\"").replace("\"p07\"", "\"p05\"").replace("\"?\"", "\"p07\"")
    };
    let exchanged = kit::changed(SPRING_EVENING, SPRING_HEALTH, exchange);
    let (before, after) = (plan(false), kit::plan(&WORLD, exchanged, false));
    for make in &before.makes {
        assert_eq!(make.handed_out["p05"].outcome, make.handed_out["p07"].outcome);
    }
    let bytes =
        |plan: &Plan| written(plan).iter().map(|named| html(&named.page)).collect::<Vec<_>>();
    assert!(bytes(&before) == bytes(&after));
    assert_eq!(on_a_terminal(before), on_a_terminal(after));
}

#[test]
fn a_plant_that_something_deadly_is_taken_for_carries_no_recipe() {
    let plan = plan(false);
    let said = said(&page_of(&plan, "plant-allium-ursinum"), None);
    assert!(said.contains("No recipe stands here") && !said.contains("What goes in"));
}

#[test]
fn a_recipe_that_was_asked_for_by_name_stands_behind_a_warning_and_a_deadly_plant_has_none() {
    let mut plan = plan(false);
    plan.plants.iter_mut().for_each(|plant| plant.recipe_asked_for = true);
    let ramsons = said(&page_of(&plan, "plant-allium-ursinum"), None);
    let warned = ramsons.find("Something deadly is taken for it. Do not make this").unwrap();
    assert!(warned < ramsons.find("Ramsons leaf on bread").unwrap());
    plan.plants.iter_mut().for_each(|plant| plant.harm = ground::Harm::Deadly);
    let deadly = said(&page_of(&plan, "plant-allium-ursinum"), None);
    assert!(deadly.contains("No recipe stands here"));
}
