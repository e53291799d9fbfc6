//! What a check finds of uses: part rows, and rows that join no plant.

use crate::check::{found, one, report};
use crate::small::files;
use herbal::{Lack, Report, TextFile};

const NETTLE: &str = "species/urtica-dioica.toml";

/// A part row for the leaf of the nettle.
fn part(harm: &str, forms: &str, used: &str, src: &str) -> String {
    format!(
        "\n[[part]]\npart = \"leaf\"\nharm = \"{harm}\"\nroute = \"mouth\"\nforms = {forms}\n\
         use = \"{used}\"\nsrc = [\"{src}\"]\n"
    )
}

/// What is found when the nettle, gathered to be cooked and infused, has these part rows.
fn with(rows: &str) -> Report {
    let mut files = files();
    files[2].text.push_str(rows);
    report(&files)
}

#[test]
fn a_plant_without_part_rows_is_told() {
    let report = report(&files());
    let missing = found(&report, "herbal-no-part-rows");
    let hemlock = "species/conium-maculatum.toml".to_owned();
    assert_eq!(missing, [(Lack::Missing, hemlock, 1), (Lack::Missing, NETTLE.to_owned(), 1)]);
}

#[test]
fn a_use_of_which_no_row_speaks_is_missing_one() {
    let food = part("none", "[\"cooked\"]", "food", "flora");
    let missing = one(&with(&food), "herbal-use-without-part-row");
    assert_eq!(missing, (Lack::Missing, NETTLE.to_owned(), 24));
    let tea = part("irritant", "[\"infusion\"]", "tea", "flora");
    assert!(found(&with(&format!("{food}{tea}")), "herbal-use-without-part-row").is_empty());
}

#[test]
fn a_use_that_every_row_refuses_contradicts_them() {
    let both = "[\"cooked\", \"infusion\"]";
    for row in [part("harmful", both, "food", "flora"), part("none", both, "none", "flora")] {
        let refused = one(&with(&row), "herbal-use-refused");
        assert_eq!(refused, (Lack::Contradictory, NETTLE.to_owned(), 24));
    }
    // At another stage it may be had.
    let two = part("harmful", both, "food", "flora") + &part("none", both, "food", "flora");
    assert!(found(&with(&two), "herbal-use-refused").is_empty());
}

#[test]
fn a_use_that_only_memory_clears_is_not_cleared() {
    let report = with(&part("none", "[\"cooked\", \"infusion\"]", "food", "memory"));
    assert_eq!(one(&report, "herbal-use-not-cleared").0, Lack::Remembered);
    assert_eq!(one(&report, "herbal-part-rows-remembered").0, Lack::Remembered);
}

#[test]
fn a_sheet_is_no_milder_than_its_leaf_eaten_raw() {
    let milder = |rows: &str| found(&with(rows), "herbal-harm-milder-than-part");
    let raw = part("harmful", "[\"raw\"]", "none", "flora");
    assert_eq!(milder(&raw), [(Lack::Contradictory, NETTLE.to_owned(), 8)]);
    assert!(milder(&raw.replace("harmful", "irritant")).is_empty());
    assert!(milder(&raw.replace("\"raw\"", "\"tincture\"")).is_empty());
    assert!(milder(&raw.replace("route", "stage = \"old\"\nroute")).is_empty());
}

#[test]
fn a_row_that_no_sheet_joins_is_told() {
    let caution = |id: &str, taxon: &str| {
        format!(
            "[[caution]]\nid = \"{id}\"\ntaxon = \"{taxon}\"\nparts = [\"leaf\"]\nforms = [\"any\"]\n\
             who = \"pregnant\"\naction = \"ask\"\nwording = \"\"\nsrc = [\"flora\"]\n\n"
        )
    };
    let mut files = files();
    files.push(TextFile {
        path: "uses/cautions.toml".to_owned(),
        text: caution("nettle", "Urtica dioica") + &caution("balm", "Melissa officinalis"),
    });
    let lost = one(&report(&files), "herbal-row-joins-nothing");
    assert_eq!(lost, (Lack::Unjoined, "uses/cautions.toml".to_owned(), 12));
}
