//! The examples of `docs/herbal-format.md` are read as they stand, laid over the herbal.
#![expect(clippy::unwrap_used, reason = "a test may panic")]

use herbal::TextFile;

const DOCS: &str = include_str!("../../../docs/herbal-format.md");

/// The TOML examples under a heading, put together as one file.
fn examples(heading: &str) -> String {
    let (_, section) = DOCS.split_once(&format!("\n## {heading}\n")).unwrap();
    let section = section.split("\n## ").next().unwrap();
    let blocks = section.split("```toml\n").skip(1);
    blocks.map(|block| block.split("```").next().unwrap()).collect()
}

fn file(path: &str, text: String) -> TextFile {
    TextFile { path: path.to_owned(), text }
}

#[test]
fn the_plant_in_ten_minutes_is_read() {
    let nettle = file("species/urtica-dioica.toml", examples("A plant in ten minutes"));
    let over = herbal_data::herbal().overlay(&[nettle]).unwrap();
    let sheet = over.flora.sheet("Urtica dioica").unwrap();
    assert_eq!(sheet.harm_note, "The hairs sting.");
    assert!(sheet.look_alikes.contains_key("Lamium album"));
}

#[test]
fn a_file_of_ones_own_is_read() {
    let county = examples("Sources").replace("gc91", "county-flora");
    let files = [
        file("sources/own.toml", county),
        file("species/carum-carvi.toml", examples("Files of your own")),
    ];
    let over = herbal_data::herbal().overlay(&files).unwrap();
    let taxon = over.flora.sheet("Carum carvi").unwrap().taxon();
    assert!(taxon.relatives.standing.may_clear());
}

#[test]
fn the_example_of_a_source_and_of_a_character_are_read() {
    let source = examples("Sources").replace("gc91", "example");
    let character = examples("Glossary")
        .replace("leaf_margin", "example")
        .replace("\"dentate\", \"doubly-serrate\"", "\"toothed\"");
    let toothed = "\n[[character.state]]\nid = \"toothed\"\n";
    let files = [
        file("sources/own.toml", source),
        file("glossary/own.toml", format!("{character}{toothed}")),
    ];
    let over = herbal_data::herbal().overlay(&files).unwrap();
    assert_eq!(over.flora.glossary.states("example").len(), 2);
}

#[test]
fn the_example_of_a_mix_up_is_read() {
    let file = file("mix-ups/own.toml", examples("Mix-ups"));
    let over = herbal_data::herbal().overlay(&[file]).unwrap();
    let row = over.flora.mix_ups().find(|row| row.id == "crocus-for-ramsons-example").unwrap();
    assert_eq!((row.months.len(), row.deaths), (3, Some(4)));
}
