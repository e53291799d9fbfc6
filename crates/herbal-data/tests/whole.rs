//! What holds for the herbal as a whole, whatever plants it lists.

use ground::Harm;
use herbal_data::{account, herbal, version};

#[test]
fn the_version_names_the_content() {
    assert_eq!(version().len(), 32);
}

#[test]
fn every_plant_is_found_by_its_scientific_name() {
    let herbal = herbal();
    assert!(herbal.flora.sheets().count() > 0);
    for sheet in herbal.flora.sheets() {
        assert_eq!(herbal.flora.find(&sheet.name).unwrap().name, sheet.name);
    }
}

#[test]
fn a_common_name_never_settles_for_one_of_several() {
    let herbal = herbal();
    for sheet in herbal.flora.sheets() {
        for name in &sheet.common {
            if let Ok(found) = herbal.flora.find(name) {
                assert_eq!(found.name, sheet.name, "{name}");
            }
        }
    }
}

#[test]
fn every_row_has_a_place_in_its_file() {
    let (herbal, places) = (herbal(), account().places);
    for sheet in herbal.flora.sheets() {
        for character in sheet.characters.keys() {
            let at = places.at("species", &sheet.name, character);
            assert!(at.line.is_some(), "{} {character}", sheet.name);
        }
    }
}

#[test]
fn what_harms_says_how() {
    for sheet in herbal().flora.sheets() {
        if sheet.harm.value > Harm::None {
            assert!(!sheet.harm_note.is_empty(), "{}", sheet.name);
        }
    }
}

#[test]
fn the_table_to_judge_by_has_every_sheet_and_character() {
    let flora = herbal().flora;
    let matrix = flora.matrix().unwrap();
    assert_eq!(matrix.taxa().len(), flora.sheets().count());
    assert_eq!(matrix.characters().len(), flora.glossary.terms().count());
    assert_eq!(matrix.cells().count(), flora.cells().count());
}

#[test]
fn what_is_compiled_in_is_what_a_second_reading_of_it_gives() {
    let once = postcard::to_allocvec(&herbal()).unwrap();
    let again: herbal::Herbal = postcard::from_bytes(&once).unwrap();
    assert_eq!(postcard::to_allocvec(&again).unwrap(), once);
}

#[test]
fn a_member_of_a_genus_or_family_has_its_rows() {
    let herbal = herbal();
    for sheet in herbal.flora.sheets() {
        let groups = [sheet.genus(), sheet.family.as_str()];
        let rows = groups.iter().filter_map(|name| herbal.flora.group(name));
        for character in rows.flat_map(|group| group.characters.keys()) {
            assert!(herbal.flora.cell(sheet, character).is_some());
        }
    }
}

/// What has happened stands in both sheets as confirmed.
#[test]
fn both_sheets_warn_of_every_mix_up_that_was_told() {
    let report = herbal::check(&herbal(), &account());
    let silent = report.findings.iter().filter(|f| f.text.id == "herbal-mix-up-unconfirmed");
    let silent: Vec<_> = silent.map(|finding| format!("{:?}", finding.text.args)).collect();
    assert_eq!(silent, Vec::<String>::new());
}
