//! The plan and its pages: what they show, and what no page that is handed round ever says.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a test reports by panicking")]

use desk::{InputFile, Plan, Reply, Request, World, answer};
use ground::{Condition, RandomStart};
use journal::Journal;
use page::{Catalogue, NamedPage, Style, Words, html, pages, text, view};
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

const EVENING: [&str; 3] = ["spring-evening.toml", "spring-people.toml", "spring-health.toml"];

/// The plan of the demonstration, with its health answers put through a change.
fn plan(reasons: bool, change: impl Fn(String) -> String) -> Plan {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo");
    let files = EVENING.map(|name| {
        let said = fs::read_to_string(demo.join(name)).unwrap();
        let said = if name.contains("health") { change(said) } else { said };
        InputFile::from_bytes(name, said.into_bytes()).unwrap()
    });
    match answer(&WORLD, Request::Plan { files: files.into(), reasons }).unwrap() {
        Reply::Plan(plan) => *plan,
        other => panic!("no plan: {other:?}"),
    }
}

fn written(plan: &Plan) -> Vec<NamedPage> {
    let catalogue = Catalogue::english();
    let words = Words::new(&catalogue).with_herbal(&WORLD.herbal);
    let mut sheets = BTreeMap::new();
    for plant in &plan.plants {
        let request = Request::HerbalShow { name: plant.taxon.clone() };
        if let Reply::HerbalShow(sheet) = answer(&WORLD, request).unwrap() {
            sheets.insert(plant.taxon.clone(), *sheet);
        }
    }
    pages(plan, &sheets, &words)
}

fn on_a_terminal(plan: Plan) -> String {
    let catalogue = Catalogue::english();
    let words = Words::new(&catalogue).with_herbal(&WORLD.herbal);
    text(&view(&Reply::Plan(Box::new(plan)), &words), Some(80), Style::Plain)
}

#[test]
fn the_plan_says_what_is_open_before_anything_else() {
    let said = on_a_terminal(plan(false, |said| said));
    let at = |part: &str| said.find(part).unwrap_or_else(|| panic!("{part} is missing:\n{said}"));
    assert!(at("What is still open") < at("The plants, and how to be sure"));
    assert!(at("The plants, and how to be sure") < at("Who may have how much"));
    assert!(!said.contains('⟦'), "a message is missing");
    let start: String = said.lines().take(40).collect::<Vec<_>>().join("\n");
    insta::assert_snapshot!(start);
}

#[test]
fn what_nobody_may_have_is_told_with_the_sum_that_passes_the_limit() {
    let plan = plan(false, |said| said);
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
fn no_page_but_the_sealed_list_asks_or_says_anything_of_health() {
    let plan = plan(true, |said| said);
    let catalogue = Catalogue::english();
    let words = Words::new(&catalogue);
    let mut looked_at = 0;
    // The intake form asks, and is blank: tests/forms.rs holds it to that.
    let asks = ["sealed-list.html", "intake-form.html"];
    for named in written(&plan).iter().filter(|named| !asks.contains(&named.file.as_str())) {
        let shown = html(&named.page);
        assert!(!shown.contains('⟦'), "a message is missing on {}", named.file);
        for condition in Condition::ALL.iter().filter(|c| **c != Condition::All) {
            let asked = words.word(&format!("condition-{}", condition.word()));
            assert!(!shown.contains(&asked), "{}: {asked}", named.file);
        }
        let shown = shown.to_lowercase();
        for word in
            ["pregnan", "epilep", "blood thin", "anticoag", "aspirin", "nursing", "years old"]
        {
            assert!(!shown.contains(word), "{}: {word}", named.file);
        }
        looked_at += 1;
    }
    assert!(looked_at > 4);
}

#[test]
fn the_sealed_list_is_written_only_where_reasons_were_asked_for() {
    let sealed = |pages: &[NamedPage]| pages.iter().any(|p| p.file == "sealed-list.html");
    assert!(!sealed(&written(&plan(false, |said| said))));
    assert!(sealed(&written(&plan(true, |said| said))));
}

#[test]
fn exchanging_the_answers_of_two_people_who_are_handed_the_same_changes_no_byte() {
    let exchange = |said: String| {
        said.replace("\"p05\"", "\"?\"").replace("\"p07\"", "\"p05\"").replace("\"?\"", "\"p07\"")
    };
    let (before, after) = (plan(false, |said| said), plan(false, exchange));
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
    let plan = plan(false, |said| said);
    let ramsons =
        written(&plan).into_iter().find(|p| p.file == "plant-allium-ursinum.html").unwrap();
    let said = text(&ramsons.page, None, Style::Plain);
    assert!(said.contains("No recipe stands here") && !said.contains("What goes in"));
}

#[test]
fn a_recipe_that_was_asked_for_by_name_stands_behind_a_warning_and_a_deadly_plant_has_none() {
    let mut plan = plan(false, |said| said);
    plan.plants.iter_mut().for_each(|plant| plant.recipe_asked_for = true);
    let said = |file: &str| {
        let page = written(&plan).into_iter().find(|page| page.file == file).unwrap();
        text(&page.page, None, Style::Plain)
    };
    let ramsons = said("plant-allium-ursinum.html");
    let warned = ramsons.find("Something deadly is taken for it. Do not make this").unwrap();
    assert!(warned < ramsons.find("Ramsons leaf on bread").unwrap());
    plan.plants.iter_mut().for_each(|plant| plant.harm = ground::Harm::Deadly);
    let page = written(&plan).into_iter().find(|p| p.file == "plant-allium-ursinum.html").unwrap();
    assert!(text(&page.page, None, Style::Plain).contains("No recipe stands here"));
}
