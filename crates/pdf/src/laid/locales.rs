//! The pages of the demonstration in languages that need more room, other letters, the other direction.

use super::demo;
use super::pseudo::Pseudo;
use super::{collisions, laid};
use crate::Press;
use desk::Plan;
use page::{Block, Break, NamedPage, Page, Paper};

/// Sheets of the sealed list that are looked at: they differ in names and numbers alone.
const SEALED: usize = 3;

/// Its first few parts.
fn begun(page: Page) -> Page {
    let parts = page.blocks.split(|block| *block == Block::Break(Break::Page)).take(SEALED);
    let blocks = parts.flat_map(|part| part.iter().cloned().chain([Block::Break(Break::Page)]));
    Page { blocks: blocks.collect(), ..page.clone() }
}

fn nothing_collides(outing: &str, locale: Pseudo, paper: Paper, change: impl Fn(Page) -> Page) {
    nothing_of_collides(&demo::plan(outing, |_, said| said), locale, paper, change);
}

fn nothing_of_collides(plan: &Plan, locale: Pseudo, paper: Paper, change: impl Fn(Page) -> Page) {
    let press = Press::new().unwrap();
    let catalogue = locale.catalogue();
    assert_eq!(catalogue.flaws(), [""; 0]);
    let mut found = Vec::new();
    for NamedPage { name, page } in demo::written(plan, paper, &catalogue) {
        let page = if name == "sealed-list" { begun(page) } else { page };
        match laid(&press, &change(page), paper) {
            Ok(runs) => {
                found.extend(collisions(&runs).iter().map(|said| format!("{name}: {said}")))
            }
            Err(fault) => found.push(format!("{name}: {}", fault.code)),
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn longer_words_fit() {
    nothing_collides("spring-day", Pseudo::Accented, Paper::A4, |page| page);
    nothing_collides("autumn-day", Pseudo::Accented, Paper::Letter, |page| page);
}

#[test]
fn longer_words_fit_in_large_print() {
    nothing_collides("spring-day", Pseudo::Accented, Paper::Letter, Page::large);
}

/// Two hundred letters of the widest kind, and a name of many parts.
#[test]
fn names_of_two_hundred_letters_stay_on_the_paper() {
    let long = |_: &str, said: String| {
        let said = said.replace("Delphine Ashgrove", &"Q".repeat(200));
        said.replace("Ansel Brookhouse", &"Wilhelmina-Constantia ".repeat(9))
    };
    let plan = demo::plan("spring-day", long);
    nothing_of_collides(&plan, Pseudo::Accented, Paper::A4, |page| page);
}

#[test]
fn what_runs_leftward_fits() {
    nothing_collides("autumn-day", Pseudo::Arabic, Paper::A4, |page| page);
}

#[test]
fn what_runs_leftward_fits_in_large_print() {
    nothing_collides("autumn-day", Pseudo::Hebrew, Paper::A4, Page::large);
}
