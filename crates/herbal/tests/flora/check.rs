//! What a check finds, and where.

use crate::small::{FAMILY, files, files_with};
use herbal::{Column, Finding, Herbal, Lack, Report, TextFile, check};

pub(crate) fn report(files: &[TextFile]) -> Report {
    let (herbal, account) = Herbal::read_with_account(files).unwrap();
    check(&herbal, &account)
}

/// The findings of one message, as lack, file and line.
pub(crate) fn found(report: &Report, id: &str) -> Vec<(Lack, String, u32)> {
    let of = report.findings.iter().filter(|finding| finding.text.id == id);
    let at = |f: &Finding| (f.lack, f.at.file.clone().unwrap(), f.at.line.unwrap());
    of.map(at).collect()
}

pub(crate) fn one(report: &Report, id: &str) -> (Lack, String, u32) {
    let all = found(report, id);
    assert_eq!(all.len(), 1, "{id}: {all:?}");
    all[0].clone()
}

const SHEET: &str = "species/urtica-dioica.toml";

#[test]
fn facts_are_counted_by_what_they_rest_on() {
    let report = report(&files());
    let species: usize = report.facts["species"].values().sum();
    // Nettle: harm, two cells, a use, a look-alike, relatives, a conflict. Hemlock: harm, a cell,
    // relatives.
    assert_eq!((report.species, species), (2, 10));
    assert_eq!(report.facts["species"][&ground::Standing::Remembered], 1);
    assert_eq!(report.facts["species"][&ground::Standing::Weak], 1);
    assert_eq!(report.facts["glossary"][&ground::Standing::Practice], 1);
}

#[test]
fn columns_count_what_groups_say_and_what_may_settle() {
    let files = files_with(
        "usually = [\"toothed\"], src = [\"flora\"]",
        "usually = [\"toothed\"], src = [\"memory\"]",
    );
    let columns = report(&files).columns;
    // The nettle's own leaf edge is published; that of hemlock is what its family is remembered for.
    assert_eq!(columns["leaf_margin"], Column { filled: 2, settling: 1 });
    assert_eq!(columns["leaf_length_mm"], Column { filled: 1, settling: 1 });
}

#[test]
fn a_tell_that_is_empty_or_tells_nothing_stands_where_the_look_alike_does() {
    let report = report(&files());
    // The smell of the nettle is not filled; the leaf edge of hemlock, toothed by its family, holds
    // the nettle's saw teeth.
    let place = (SHEET.to_owned(), 29);
    let empty = one(&report, "herbal-tell-empty");
    assert_eq!(empty, (Lack::Missing, place.0.clone(), place.1));
    let nothing = one(&report, "herbal-tell-tells-nothing");
    assert_eq!(nothing, (Lack::Contradictory, place.0.clone(), place.1));
    assert_eq!(one(&report, "herbal-few-tells"), (Lack::Missing, place.0, place.1));
}

#[test]
fn tells_that_differ_and_are_published_are_enough_at_three() {
    let rows = "[characters]\nleaf_margin = { always = [\"entire\"], src = [\"flora\"] }\n\
        leaf_length_mm = { range = [300, 400], src = [\"flora\"] }\n";
    let smell = "crushed_smell = { usually = [\"mousy\"], sometimes = [\"none\"], src = ";
    let mut files = files();
    files[3].text = files[3]
        .text
        .replace("[characters]\n", rows)
        .replace(&format!("{smell}[\"digest\"]"), &format!("{smell}[\"flora\"]"));
    files[2].text = files[2]
        .text
        .replace(
            "[characters]\n",
            "[characters]\ncrushed_smell = { always = [\"none\"], src = [\"flora\"] }\n",
        )
        .replace(
            "[\"crushed_smell\", \"leaf_margin\"]",
            "[\"crushed_smell\", \"leaf_margin\", \"leaf_length_mm\"]",
        );
    assert!(found(&report(&files), "herbal-few-tells").is_empty());
    // A weak source on one side is not enough.
    files[3].text = files[3].text.replace("400], src = [\"flora\"]", "400], src = [\"digest\"]");
    assert_eq!(found(&report(&files), "herbal-few-tells").len(), 1);
}

#[test]
fn a_look_alike_without_a_sheet_is_unjoined() {
    let files = files_with("name = \"Conium maculatum\"\nwhy", "name = \"Lamium album\"\nwhy");
    let found = one(&report(&files), "herbal-look-alike-without-sheet");
    assert_eq!(found, (Lack::Unjoined, SHEET.to_owned(), 29));
}

#[test]
fn what_is_remembered_is_told() {
    let report = report(&files_with("extreme = [20, 200], src", "src"));
    assert_eq!(one(&report, "herbal-cells-remembered").0, Lack::Remembered);
    let relatives = one(&report, "herbal-relatives-remembered");
    assert_eq!(relatives, (Lack::Remembered, SHEET.to_owned(), 37));
}

#[test]
fn what_nothing_uses_is_told() {
    let mut files = files_with("src = [\"digest\"]", "src = [\"flora\"]");
    files[1].text.push_str(
        &crate::small::GLOSSARY
            .rsplit_once("[[character]]")
            .map(|(_, row)| {
                format!("\n[[character]]{}", row.replace("leaf_length_mm", "petiole_length_mm"))
            })
            .unwrap(),
    );
    files.push(TextFile {
        path: "groups/genus-lamium.toml".to_owned(),
        text: FAMILY.replace("Apiaceae", "Lamium").replace("\"family\"", "\"genus\""),
    });
    let report = report(&files);
    let file = "glossary/characters.toml".to_owned();
    assert_eq!(one(&report, "herbal-character-unused"), (Lack::Unused, file, 66));
    let source = one(&report, "herbal-source-unused");
    assert_eq!(source, (Lack::Unused, "sources/all.toml".to_owned(), 9));
    let group = one(&report, "herbal-group-without-members");
    assert_eq!(group, (Lack::Unused, "groups/genus-lamium.toml".to_owned(), 1));
    // Nothing is said to be entire; toothed is the kind of serrate.
    assert_eq!(one(&report, "herbal-states-unused").0, Lack::Unused);
}

#[test]
fn a_state_without_plain_words_is_missing_them() {
    let report = report(&files_with("says = \"of mice\"\n", ""));
    assert_eq!(one(&report, "herbal-state-without-words").0, Lack::Missing);
}

#[test]
fn a_former_name_that_has_a_sheet_is_a_contradiction() {
    let files = files_with("\"Urtica galeopsifolia\"", "\"Conium maculatum\"");
    assert_eq!(one(&report(&files), "herbal-former-name-is-a-sheet").0, Lack::Contradictory);
}

#[test]
fn a_common_name_of_several_plants_is_told_when_one_harms() {
    let mut files = files_with("\"stinging nettle\", \"nettle\"", "\"nettle\", \"Hemlock\"");
    let found = one(&report(&files), "herbal-name-of-several");
    assert_eq!(found.0, Lack::Contradictory);
    files[3].text = files[3].text.replace("\"deadly\"", "\"none\"");
    assert!(self::found(&report(&files), "herbal-name-of-several").is_empty());
}

#[test]
fn a_flower_without_months_is_missing_them() {
    let mut files = files();
    let (before, after) = files[1].text.split_once("id = \"crushed_smell\"").unwrap();
    let after = after.replacen("organ = \"leaf\"", "organ = \"flower\"", 1);
    files[1].text = format!("{before}id = \"crushed_smell\"{after}");
    let hemlock = "species/conium-maculatum.toml".to_owned();
    let missing = found(&report(&files), "herbal-months-missing");
    assert_eq!(missing, [(Lack::Missing, hemlock, 1)]);
}
