//! `trug herbal`: names, sheets, the check, and one's own files.
#![expect(clippy::unwrap_used, reason = "a test reports by panicking")]
#![expect(clippy::expect_used, reason = "a test reports by panicking")]

mod common;

use common::run;
use std::fs;
use std::path::PathBuf;

#[test]
fn a_sheet_reads_well_in_eighty_columns() {
    let ran = run(&["herbal", "show", "Urtica dioica", "--width", "80"]);
    insta::assert_snapshot!(ran.out);
}

#[test]
fn a_common_or_former_name_finds_the_plant() {
    for name in ["stinging nettle", "Stinging-Nettle", "urtica  DIOICA"] {
        let ran = run(&["herbal", "show", name]);
        assert!(ran.out.starts_with("Urtica dioica L.\n"), "{name}: {}", ran.err);
    }
}

#[test]
fn an_unknown_plant_is_answered_with_the_nearest_names() {
    let ran = run(&["herbal", "show", "Urtica dioca"]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.out.is_empty());
    assert!(ran.err.contains("Urtica dioica") && ran.err.contains("To mend it: "), "{}", ran.err);
}

#[test]
fn a_name_of_several_plants_lists_them_and_chooses_none() {
    let ran = run(&["herbal", "show", "hemlock"]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.out.is_empty());
    assert!(ran.err.contains("Conium maculatum") && ran.err.contains("Tsuga canadensis"));
}

#[test]
fn a_list_says_how_badly_each_plant_can_hurt() {
    let ran = run(&["herbal", "list", "hemlock"]);
    let row = ran.out.lines().find(|line| line.starts_with("Conium maculatum")).unwrap();
    assert!(row.ends_with("deadly"), "{row}");
    let none = run(&["herbal", "list", "no such plant at all"]);
    assert_eq!(none.code, Some(0));
    assert!(none.out.starts_with("No plant is called"));
}

/// A deadly plant's frame, its word and its place at the top are what a reader sees first.
#[test]
fn a_deadly_plant_says_so_before_anything_that_helps_to_find_it() {
    let ran = run(&["herbal", "show", "Conium maculatum", "--width", "80"]);
    let at = |words: &str| ran.out.find(words).expect(words);
    assert!(
        at("┏━ Deadly") < at("When it is there") && at("When it is there") < at("How to know it")
    );
}

/// Knowledge of months and characters must not look like leave: no page says so.
#[test]
fn no_sheet_says_that_a_plant_may_be_eaten() {
    let list = run(&["herbal", "list", "--json"]);
    let document: serde_json::Value = serde_json::from_str(&list.out).unwrap();
    let plants = document["herbal-list"]["plants"].as_array().unwrap().clone();
    assert!(plants.len() > 100);
    for plant in plants.iter().step_by(40) {
        let name = plant["name"].as_str().unwrap();
        let said = run(&["herbal", "show", name]).out.to_lowercase();
        assert!(!said.contains("safe to eat") && !said.contains("is safe"), "{name}");
    }
}

#[test]
fn a_check_counts_first_and_then_tells_each_finding_at_its_place() {
    let ran = run(&["herbal", "check"]);
    assert_eq!(ran.code, Some(0));
    let (counts, findings) = ran.out.split_once("\nRemembered: ").expect("remembered facts");
    let count = counts.lines().find_map(|line| line.strip_prefix("remembered ")).unwrap();
    let (said, findings) = findings.split_once('\n').unwrap();
    assert_eq!(count.trim(), said);
    let first = findings.lines().find_map(|line| line.strip_prefix("• ")).unwrap();
    let mut place = first.splitn(4, ':');
    assert!(place.next().unwrap().ends_with(".toml"), "{first}");
    assert!(place.by_ref().take(2).all(|number| number.parse::<u32>().is_ok()), "{first}");
    let told = findings.lines().take_while(|line| !line.starts_with("Unused: "));
    let told = told.filter(|line| line.starts_with("• ")).count();
    assert_eq!(told.to_string(), said);
}

/// A folder of one's own herbal files, which is removed again.
struct Own(PathBuf);

impl Own {
    fn with(name: &str, text: &str) -> Self {
        let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
        fs::create_dir_all(folder.join("species")).unwrap();
        fs::write(folder.join("species/urtica-dioica.toml"), text).unwrap();
        Self(folder)
    }

    fn path(&self) -> &str {
        self.0.to_str().unwrap()
    }
}

impl Drop for Own {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}

#[test]
fn own_files_are_laid_over_the_herbal() {
    let own = Own::with("own", "name = \"Urtica dioica\"\ncommon = [\"brennnessel\"]\n");
    let ran = run(&["herbal", "show", "brennnessel", "--own", own.path()]);
    assert!(ran.out.starts_with("Urtica dioica L.\n"), "{}", ran.err);
    let versions = [run(&["herbal", "check"]), run(&["herbal", "check", "--own", own.path()])];
    let [plain, own] = versions.map(|ran| {
        ran.out.lines().find(|line| line.starts_with("version")).map(str::to_owned).unwrap()
    });
    assert_ne!(plain, own);
}

#[test]
fn a_fault_in_ones_own_files_names_file_line_and_column() {
    let own = Own::with("own-at-fault", "name = \"Urtica dioica\"\nregions = [\"atlantis\"]\n");
    let ran = run(&["herbal", "list", "--own", own.path()]);
    assert_eq!(ran.code, Some(2));
    let place = format!("{}/species/urtica-dioica.toml:2:12", own.path());
    assert!(ran.err.contains(&place) && ran.err.contains("To mend it: "), "{}", ran.err);
}

#[test]
fn a_folder_without_herbal_files_is_no_herbal() {
    let missing = run(&["herbal", "list", "--own", "no/such/folder"]);
    assert_eq!(missing.code, Some(2));
    assert!(missing.err.contains("no/such/folder"), "{}", missing.err);
}

/// The worst come first, every one with its harm, and what is left out is counted.
#[test]
fn pairs_are_listed_the_worst_first() {
    let ran = run(&["herbal", "pairs", "ramsons", "--worst", "5", "--json"]);
    let reply: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    let pairs = reply.pointer("/reply/herbal-pairs/pairs").or(reply.pointer("/herbal-pairs/pairs"));
    let pairs = pairs.and_then(|pairs| pairs.as_array()).expect(&ran.out);
    assert_eq!(pairs.len(), 5);
    let all = run(&["herbal", "pairs", "ramsons", "--worst", "1000"]);
    assert!(all.out.contains("Colchicum autumnale") && !all.out.contains("not shown"));
    let few = run(&["herbal", "pairs", "ramsons", "--worst", "5"]);
    assert!(few.out.contains("not shown"), "{}", few.out);
}

#[test]
fn a_plant_that_nobody_knows_has_no_pairs() {
    let ran = run(&["herbal", "pairs", "ramsonz"]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.err.contains("Allium ursinum"), "{}", ran.err);
}
