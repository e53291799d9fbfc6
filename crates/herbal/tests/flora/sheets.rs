//! What a reading makes of the rows: standings, seasons, ranks.

use crate::small::{files_with, herbal};
use ground::{Harm, Month, Organ, Standing};
use herbal::Herbal;
use identify::Rank;

#[test]
fn memory_beside_a_source_marks_the_rarer_statements() {
    let herbal = herbal();
    let cell = &herbal.flora.sheet("Urtica dioica").unwrap().characters["leaf_length_mm"];
    assert_eq!((cell.standing, cell.rare_standing), (Standing::Published, Standing::Remembered));
}

#[test]
fn memory_beside_a_source_with_no_rarer_statement_marks_everything() {
    let files = files_with("range = [40, 150], extreme = [20, 200]", "range = [40, 150]");
    let herbal = Herbal::read(&files).unwrap();
    let cell = &herbal.flora.sheet("Urtica dioica").unwrap().characters["leaf_length_mm"];
    assert_eq!((cell.standing, cell.rare_standing), (Standing::Remembered, Standing::Remembered));
}

#[test]
fn a_source_without_an_address_is_weak() {
    let herbal = herbal();
    let cell = &herbal.flora.sheet("Conium maculatum").unwrap().characters["crushed_smell"];
    assert_eq!((cell.standing, cell.rare_standing), (Standing::Weak, Standing::Weak));
}

#[test]
fn a_family_speaks_where_the_sheet_is_silent() {
    let herbal = herbal();
    let sheet = herbal.flora.sheet("Conium maculatum").unwrap();
    let from = |character| herbal.flora.cell(sheet, character).map(|cell| cell.from);
    assert_eq!(from("leaf_margin"), Some(Rank::Family));
    assert_eq!(from("crushed_smell"), Some(Rank::Species));
    assert_eq!(from("leaf_length_mm"), None);
}

#[test]
fn only_leaf_flower_and_fruit_have_a_season_in_which_they_are_seen() {
    let herbal = herbal();
    let seasons = herbal.flora.sheet("Urtica dioica").unwrap().taxon().seasons;
    let july = Month::new(7).unwrap();
    assert!(seasons[&Organ::Leaf].contains(july) && seasons[&Organ::Flower].contains(july));
    assert!(!seasons.contains_key(&Organ::Underground));
}

#[test]
fn the_table_to_judge_by_has_the_rows_of_families_too() {
    let herbal = herbal();
    let matrix = herbal.flora.matrix().unwrap();
    let from = |character| matrix.cell("Conium maculatum", character).map(|cell| cell.from);
    assert_eq!(from("leaf_margin"), Some(Rank::Family));
    assert_eq!(from("crushed_smell"), Some(Rank::Species));
    assert_eq!(matrix.taxa().len(), 2);
}

#[test]
fn harmless_by_hearsay_is_unknown_to_whoever_judges() {
    let read = |src: &str| {
        let from = "harm = \"irritant\"\nharm_note = \"Stings.\"\nharm_src = [\"flora\"]";
        let to = format!("harm = \"none\"\nharm_note = \"Eaten.\"\nharm_src = [\"{src}\"]");
        let herbal = Herbal::read(&files_with(from, &to)).unwrap();
        herbal.flora.sheet("Urtica dioica").unwrap().taxon().harm
    };
    assert_eq!((read("flora"), read("memory")), (Harm::None, Harm::Unknown));
    assert_eq!((read("digest"), read("practice")), (Harm::None, Harm::Unknown));
}

#[test]
fn a_hybrid_takes_the_stricter_parent() {
    let read = |parents: &str| {
        let from = "harm = \"irritant\"\nharm_note = \"Stings.\"\nharm_src = [\"flora\"]";
        let to = format!("{from}\nparents = [{parents}]");
        let herbal = Herbal::read(&files_with(from, &to)).unwrap();
        let joined = |row| herbal.uses.table.tie(row, "Urtica dioica");
        let tie = joined("Conium maculatum");
        (herbal.flora.sheet("Urtica dioica").unwrap().taxon().harm, tie)
    };
    assert_eq!(read(""), (Harm::Irritant, None));
    // What stops a parent stops the hybrid; what clears a parent clears no hybrid.
    assert_eq!(read("\"Conium maculatum\""), (Harm::Deadly, Some(dose::Tie::Relative)));
    // A parent without a sheet may do anything.
    assert_eq!(read("\"Urtica urens\"").0, Harm::Unknown);
}
