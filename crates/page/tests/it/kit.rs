//! The herbal and the demonstration, ready to be put on pages.
#![allow(dead_code, reason = "the examples use some of it")]
#![expect(clippy::unwrap_used, clippy::panic, reason = "a test reports by panicking")]

use desk::device::{Reply, Request, answer};
use desk::{InputFile, Paper, Plan, SheetReply, World, includes};
use herbal::Herbal;
use jiff::civil::DateTime;
use page::{Catalogue, NamedPage, Page, Style, Words, text};
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::sync::LazyLock;

pub(crate) const SPRING_EVENING: &str = "spring-evening.toml";
pub(crate) const SPRING_DAY: &str = "spring-day.toml";
pub(crate) const AUTUMN_EVENING: &str = "autumn-evening.toml";
pub(crate) const AUTUMN_DAY: &str = "autumn-day.toml";
pub(crate) const SPRING_HEALTH: &str = "spring-health.toml";
pub(crate) const AUTUMN_HEALTH: &str = "autumn-health.toml";

static HERBAL: LazyLock<Herbal> = LazyLock::new(herbal_data::herbal);
static CATALOGUE: LazyLock<Catalogue> = LazyLock::new(Catalogue::english);

pub(crate) fn herbal() -> &'static Herbal {
    &HERBAL
}

/// The herbal with an empty journal, at an hour.
pub(crate) fn world(now: DateTime) -> World {
    World::new(HERBAL.clone(), "as-tested".to_owned(), now)
}

pub(crate) fn words() -> Words<'static> {
    Words::new(&CATALOGUE).with_herbal(&HERBAL)
}

/// A text of the demonstration.
pub(crate) fn read(name: &str) -> String {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo");
    fs::read_to_string(demo.join(name)).unwrap()
}

/// A file of the demonstration and all that it includes.
pub(crate) fn demo(name: &str) -> Vec<InputFile> {
    let mut wanted = vec![name.to_owned()];
    let mut files = Vec::new();
    while let Some(name) = wanted.pop() {
        let file = InputFile::from_bytes(&name, read(&name).into_bytes()).unwrap();
        wanted.extend(includes(&file).unwrap());
        files.push(file);
    }
    files
}

/// The same, with one of its files put through a change.
pub(crate) fn changed(name: &str, file: &str, change: impl Fn(&str) -> String) -> Vec<InputFile> {
    let mut files = demo(name);
    let found = files.iter_mut().find(|known| known.name == file);
    let found = found.unwrap_or_else(|| panic!("{name} does not include {file}"));
    let said = change(&found.text);
    assert_ne!(said, found.text, "nothing was changed in {file}");
    found.text = said;
    files
}

pub(crate) fn plan(world: &World, files: Vec<InputFile>, reasons: bool) -> Plan {
    match answer(world, Request::Plan { files, reasons }) {
        Ok(Reply::Plan(plan)) => *plan,
        Ok(other) => panic!("no plan: {other:?}"),
        Err(faults) => panic!("{faults}"),
    }
}

/// What is known of each plant of a plan.
pub(crate) fn sheets(world: &World, plan: &Plan) -> BTreeMap<String, SheetReply> {
    let sheet = |name: &String| match answer(world, Request::HerbalShow { name: name.clone() }) {
        Ok(Reply::HerbalShow(sheet)) => (name.clone(), *sheet),
        other => panic!("no sheet: {other:?}"),
    };
    plan.plants.iter().map(|plant| sheet(&plant.taxon)).collect()
}

pub(crate) fn pages(world: &World, plan: &Plan) -> Vec<NamedPage> {
    page::pages(plan, &sheets(world, plan), Paper::A4, &words())
}

/// One page of a plan.
pub(crate) fn page(world: &World, plan: &Plan, name: &str) -> Page {
    named(&pages(world, plan), name)
}

pub(crate) fn named(pages: &[NamedPage], name: &str) -> Page {
    let found = pages.iter().find(|named| named.name == name);
    found.unwrap_or_else(|| panic!("no page {name}")).page.clone()
}

/// A page as text, which says all that it is meant to say.
pub(crate) fn said(page: &Page, width: Option<usize>) -> String {
    let said = text(page, width, Style::Plain);
    assert!(!said.contains(['⟦', '{']), "a message is missing:\n{said}");
    said
}
