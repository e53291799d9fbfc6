//! The kitchen as its files have it: every recipe can be worked, and worked preparations come out.

#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test may panic"
)]

use ground::{AlcoholByVolume, Amount, Answer, Form, Heap, MeasureSystem, Part, Place, SourceId};
use herbal::{Herbal, Kitchen, TextFile};
use prepare::sugar::WaterActivity;
use prepare::{Brew, Class, Have, HerbState, Shelf, Wanted, What, Yield, backwards, forwards};
use std::path::Path;

fn files(folders: &[&str]) -> Vec<TextFile> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../herbal");
    let mut found = Vec::new();
    for folder in folders {
        for entry in std::fs::read_dir(root.join(folder)).expect("the folder is there") {
            let path = entry.expect("it can be listed").path();
            let name = path.file_name().unwrap().to_string_lossy().into_owned();
            let text = std::fs::read_to_string(&path).expect("it is text");
            found.push(TextFile { path: format!("{folder}/{name}"), text });
        }
    }
    found
}

fn herbal() -> Herbal {
    Herbal::read(&files(&["sources", "kitchen"])).expect("no fault")
}

fn kitchen() -> Kitchen {
    herbal().kitchen
}

fn known<T: std::fmt::Debug>(answer: Answer<T>) -> T {
    answer.ok().unwrap()
}

fn have(moisture: f64) -> Have {
    let mut have = Have::at(Place::entry("brew", "test", ""));
    have.kitchen = Some(MeasureSystem::UsCustomary);
    have.herb.moisture_percent = Some(Amount::exact(moisture));
    have
}

fn make(kitchen: &Kitchen, id: &str, have: &Have) -> Brew {
    known(forwards(&kitchen.recipes[id], have, &kitchen.larder))
}

fn ml(brew: &Brew) -> f64 {
    match brew.made {
        Yield::Volume(span) => span.middle.ml(),
        Yield::Mass(_) => panic!("a liquid is wanted"),
    }
}

fn percent(brew: &Brew) -> f64 {
    known(brew.alcohol.as_ref().map(|span| span.middle.percent()))
}

fn close(got: f64, worked: f64, within: f64) {
    assert!((got - worked).abs() <= within, "got {got}, worked {worked}, allowed {within}");
}

#[test]
fn the_dry_tincture_comes_out_as_worked() {
    let kitchen = kitchen();
    let brew = make(&kitchen, "dry-tincture", &have(10.0));
    close(ml(&brew), 419.6, 0.05);
    close(percent(&brew), 58.9, 0.05);
    close(known(brew.solids.as_ref()).middle.0, 17.7, 0.05);
    close(known(brew.stands_for.as_ref()).middle.0, 19.6, 0.05);
    close(brew.portion.one.composition.ethanol.g(), 2.32, 0.005);
    let keeping = known(brew.keeping);
    assert_eq!((keeping.class, keeping.place), (Class::Keeps, Shelf::Cool));
    close(ml(&make(&kitchen, "dry-tincture-by-hand", &have(10.0))), 352.0, 0.5);
}

#[test]
fn the_fresh_tincture_comes_out_as_worked() {
    let kitchen = kitchen();
    let brew = make(&kitchen, "fresh-tincture", &have(75.0));
    close(ml(&brew), 486.5, 0.05);
    close(percent(&brew), 71.6, 0.05);
    close(known(brew.solids.as_ref()).middle.0, 9.3, 0.05);
    let mut wet = have(80.0);
    wet.jar = Some(AlcoholByVolume::from_percent(45.0));
    wet.stock = Some(AlcoholByVolume::from_percent(96.0));
    let brew = make(&kitchen, "fresh-tincture", &wet);
    let spirit = brew.amounts.iter().find(|one| one.what == What::Spirit).unwrap();
    close(spirit.strength.unwrap().percent(), 62.4, 0.05);
    close(spirit.pour.unwrap().stock_volume.ml(), 260.2, 0.05);
    close(spirit.pour.unwrap().water.g(), 151.39, 0.005);
}

#[test]
fn the_decoction_syrup_comes_out_as_worked() {
    let kitchen = kitchen();
    let decoction = make(&kitchen, "root-decoction", &have(10.0));
    close(ml(&decoction), 500.0, 1e-9);
    let mut part = have(10.0);
    part.sweetened = Some("480 g".parse().unwrap());
    let syrup = make(&kitchen, "root-syrup", &part);
    close(syrup.composition.sugar.g(), 720.0, 1e-9);
    close(ml(&syrup), 932.8, 0.05);
    close(known(syrup.activity).0, 0.895, 0.0005);
    close(known(syrup.stands_for).middle.0, 3.6, 0.05);
    let keeping = known(syrup.keeping);
    assert_eq!((keeping.place, keeping.most.days()), (Shelf::Fridge, 7.0));
}

/// Every recipe is worked both ways once all that it asks is answered.
#[test]
fn every_recipe_can_be_made() {
    let kitchen = kitchen();
    for recipe in kitchen.recipes.values() {
        let herb = recipe.ingredients().find(|one| one.what == What::Herb).unwrap();
        let fresh = herb.state == Some(HerbState::Fresh);
        let mut have = have(if fresh { 80.0 } else { 12.0 });
        have.herb.amount = Some("40 g".parse().unwrap());
        let there = known(forwards(recipe, &have, &kitchen.larder));
        assert!(there.keeping.known().is_some(), "{} has no rule of keeping", recipe.id);
        assert!(!there.steps.is_empty() && there.portion.exactly > 0.0);
        let went_in: f64 = there.amounts.iter().map(|one| one.mass.middle.g()).sum();
        let losses = there.losses;
        let stayed = losses.held.mass() + losses.set_aside.mass() + losses.spent;
        let came_out = there.mass.middle.g() + stayed.g() + losses.steam.g();
        assert!((went_in - came_out).abs() < 1e-9, "{}: {went_in} {came_out}", recipe.id);
        let back = backwards(recipe, Wanted::Servings(12), &have, &kitchen.larder);
        let servings = known(back).portion.exactly;
        assert!((servings - 12.0).abs() < 1e-9 * 12.0, "{}: {servings}", recipe.id);
    }
}

/// Nobody has published what a spoon or half a cup of chopped conifer leaf weighs.
#[test]
fn conifer_teas_ask_for_grams() {
    let kitchen = kitchen();
    let mut have = have(60.0);
    have.herb.state = Some(HerbState::Fresh);
    have.herb.heap = Some(Heap::Level);
    for id in ["conifer-flavour-tea", "conifer-strong-tea", "spruce-tip-tea"] {
        let refusal = forwards(&kitchen.recipes[id], &have, &kitchen.larder).ok().unwrap_err();
        assert_eq!(refusal.why.id, "prepare-refused-no-weight");
    }
    have.herb.amount = Some("30 g".parse().unwrap());
    let strong = make(&kitchen, "conifer-strong-tea", &have);
    close(ml(&strong), 2.0 * 236.588_236_5, 1e-9);
    assert_eq!((strong.portion.servings, strong.portion.times_a_day), (2, Some(3)));
    let minutes = strong.steps.iter().find_map(|step| step.time).unwrap();
    close(minutes[0].minutes(), 18.06, 0.005);
}

#[test]
fn a_tincture_says_fire_and_kind_of_spirit() {
    let kitchen = kitchen();
    let brew = make(&kitchen, "dry-tincture", &have(10.0));
    let notes: Vec<_> = brew.notes.iter().map(|note| note.id.as_str()).collect();
    assert_eq!(notes, ["fire", "pot", "spirit-kind", "tincture-time"]);
}

/// Nettle leaf gives 20 kg from 100 (collectors' table): 82 % if it was dried to 12.
#[test]
fn yields_give_a_moisture_to_start_from() {
    let kitchen = kitchen();
    let nettle = known(kitchen.fresh_moisture("Urtica dioica", Part::Leaf));
    close(nettle.low.share().percent(), 82.4, 0.05);
    close(nettle.high.share().percent(), 82.4, 0.05);
    let other = known(kitchen.fresh_moisture("Plantago lanceolata", Part::Leaf));
    assert!(other.low < other.high);
    assert!(kitchen.fresh_moisture("Plantago lanceolata", Part::Sap).known().is_none());
}

/// At 0.70 only osmophilic yeasts, xerophilic moulds and their like go on; below 0.60 nothing does.
#[test]
fn growth_has_its_lines() {
    let kitchen = kitchen();
    assert!(kitchen.growing_at(WaterActivity(0.59)).is_empty());
    assert_eq!(kitchen.growing_at(WaterActivity(0.70)).len(), 2);
    assert_eq!(kitchen.growing_at(WaterActivity(0.96)).len(), kitchen.growth.len());
}

#[test]
fn formulas_name_sources_that_are_listed() {
    let herbal = herbal();
    for id in ["oiml-r22", "hackbarth-2011", "baeza-2010"] {
        assert!(herbal.sources.contains_key(&SourceId::from(id)));
    }
}

/// Each watery form that a recipe may have is caught by a rule, and a strengthless spirit is not
/// kept.
#[test]
fn weak_spirit_is_used_at_once() {
    let kitchen = kitchen();
    let mut weak = have(90.0);
    weak.jar = Some(AlcoholByVolume::from_percent(19.0));
    let brew = make(&kitchen, "fresh-tincture", &weak);
    assert_eq!(known(brew.keeping).class, Class::UseAtOnce);
    assert_eq!(brew.form, Form::Tincture);
}

#[test]
fn wrong_rows_are_named_with_their_lines() {
    let mut all = files(&["sources", "kitchen"]);
    let text = r#"
[[retention]]
id = "open-pot"
says = "twice"
ml_per_g = 99
of = "weighed"
src = ["nobody"]

[[recipe]]
id = "odd"
name = "odd"
form = "syrup"
serving = "10 ml"
src = []
step = [
  { add = { what = "spirit", amount = "5 g" } },
  { strain = { holds = "nowhere" } },
]
"#;
    all.push(TextFile { path: "kitchen/zz.toml".to_owned(), text: text.to_owned() });
    let faults = Herbal::read(&all).expect_err("five rows are wrong");
    let mut codes: Vec<_> = faults.iter().map(|fault| fault.code.as_str()).collect();
    assert!(faults.iter().all(|fault| fault.at.line.is_some()));
    codes.sort_unstable();
    assert_eq!(
        codes,
        [
            "kitchen-out-of-range",
            "kitchen-twice",
            "no-source",
            "recipe-no-herb",
            "recipe-strength",
            "recipe-unit",
            "unknown-source",
        ]
    );
}

#[test]
fn a_recipe_names_only_retentions_that_are_listed() {
    let mut all = files(&["sources", "kitchen"]);
    let text = r#"
[[recipe]]
id = "mine"
name = "mine"
form = "infusion"
serving = "1 cup"
src = ["practice"]
step = [
  { add = { what = "herb", state = "dried", amount = "2 g" } },
  { add = { what = "water", amount = "1 cup" } },
  { strain = { holds = "nowhere" } },
]
"#;
    all.push(TextFile { path: "kitchen/zz.toml".to_owned(), text: text.to_owned() });
    let faults = Herbal::read(&all).expect_err("nothing is called nowhere");
    let codes: Vec<_> = faults.iter().map(|fault| fault.code.as_str()).collect();
    assert_eq!(codes, ["kitchen-unknown-retention"]);
}
