//! The pages of the demonstration, in the words of a catalogue.
#![allow(dead_code, reason = "tests and example each take some of it")]
#![allow(clippy::unwrap_used, clippy::panic, reason = "a fault here is one of the demonstration")]

use desk::device::{Reply, Request, answer};
use desk::{InputFile, Plan, World, includes};
use page::{Catalogue, NamedPage, Paper, Words, pages};
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::sync::LazyLock;

/// The outings on their day.
pub(crate) const DAYS: [&str; 2] = ["spring-day", "autumn-day"];

static WORLD: LazyLock<World> = LazyLock::new(|| {
    let now = jiff::civil::date(2027, 5, 1).at(16, 0, 0, 0);
    World::new(herbal_data::herbal(), "as-printed".to_owned(), now)
});

/// An outing and the files that it includes, each put through a change.
pub(crate) fn plan(outing: &str, change: impl Fn(&str, String) -> String) -> Plan {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo");
    let mut wanted = vec![format!("{outing}.toml")];
    let mut files: Vec<InputFile> = Vec::new();
    while let Some(name) = wanted.pop() {
        if files.iter().any(|file| file.name == name) {
            continue;
        }
        let said = change(&name, fs::read_to_string(folder.join(&name)).unwrap());
        let file = InputFile::from_bytes(&name, said.into_bytes()).unwrap();
        wanted.extend(includes(&file).unwrap());
        files.push(file);
    }
    match answer(&WORLD, Request::Plan { files, reasons: true }).unwrap() {
        Reply::Plan(plan) => *plan,
        other => panic!("no plan: {other:?}"),
    }
}

/// Every page of a plan.
pub(crate) fn written(plan: &Plan, paper: Paper, catalogue: &Catalogue) -> Vec<NamedPage> {
    let words = Words::new(catalogue).with_herbal(WORLD.herbal());
    let mut sheets = BTreeMap::new();
    for plant in &plan.plants {
        let request = Request::HerbalShow { name: plant.taxon.clone() };
        if let Reply::HerbalShow(sheet) = answer(&WORLD, request).unwrap() {
            sheets.insert(plant.taxon.clone(), *sheet);
        }
    }
    pages(plan, &sheets, paper, &words)
}
