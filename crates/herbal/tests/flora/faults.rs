//! Each thing that can be wrong in a file of sources, glossary, species or groups is found where it
//! stands.

use crate::small;
use crate::small::{fault_of, faults, files, herbal};
use herbal::TextFile;

/// The place and name of a fault, without its file.
fn at(from: &str, to: &str) -> (u32, u32, String, String) {
    let (_, line, column, code, got) = fault_of(from, to);
    (line, column, code, got)
}

/// What a fault should be.
fn is(line: u32, column: u32, code: &str, got: &str) -> (u32, u32, String, String) {
    (line, column, code.to_owned(), got.to_owned())
}

#[test]
fn the_small_herbal_has_no_fault() {
    assert_eq!(herbal().flora.sheets().count(), 2);
}

#[test]
fn a_word_that_the_glossary_lacks_is_found_where_it_stands() {
    let unknown =
        at("leaf_margin = { always = [\"serrate\"]", "leaf_edge = { always = [\"serrate\"]");
    assert_eq!(unknown, is(20, 1, "unknown-character", "leaf_edge"));
    let unknown = at("always = [\"serrate\"]", "always = [\"jagged\"]");
    assert_eq!(unknown, is(20, 27, "unknown-state", "jagged"));
    let unknown = at("tells = [\"crushed_smell\", \"leaf_margin\"]", "tells = [\"aroma\"]");
    assert_eq!(unknown, is(31, 10, "unknown-character", "aroma"));
    let unknown = at("habitats = [\"hedge\"]", "habitats = []\nmust_look = [\"aroma\"]");
    assert_eq!(unknown, is(12, 14, "unknown-character", "aroma"));
}

#[test]
fn a_fact_without_a_source_that_is_listed_is_a_fault() {
    let unknown = at(
        "harm_note = \"Stings.\"\nharm_src = [\"flora\"]",
        "harm_note = \"Stings.\"\nharm_src = [\"flor\"]",
    );
    assert_eq!(unknown, is(10, 12, "unknown-source", "flor"));
    let none = at("always = [\"serrate\"], src = [\"flora\"]", "always = [\"serrate\"]");
    assert_eq!(none, is(20, 1, "no-source", ""));
    let none = at("always = [\"serrate\"], src = [\"flora\"]", "always = [\"serrate\"], src = []");
    assert_eq!(none, is(20, 45, "no-source", ""));
    let none = at("kept = \"not eaten\"\nsrc = [\"flora\"]", "kept = \"not eaten\"");
    assert_eq!(none, is(43, 9, "no-source", ""));
}

#[test]
fn a_source_is_listed_once_and_under_no_reserved_word() {
    let add = |id: &str| {
        let row =
            format!("[[source]]\nid = \"{id}\"\ntitle = \"\"\nauthor = \"\"\nkind = \"page\"\n");
        let mut files = files();
        files[0].text.push_str(&row);
        small::only(&files)
    };
    let row = |code: &str, got: &str| {
        let file = "sources/all.toml".to_owned();
        (file, 14, 6, code.to_owned(), got.to_owned())
    };
    assert_eq!(add("flora"), row("source-twice", "flora"));
    assert_eq!(add("memory"), row("source-reserved", "memory"));
}

#[test]
fn always_stands_alone() {
    let both = at("always = [\"serrate\"]", "always = [\"serrate\"], rarely = [\"entire\"]");
    assert_eq!(both, is(20, 1, "always-beside-others", "leaf_margin"));
}

#[test]
fn a_state_is_named_once_in_a_cell() {
    let twice = at("always = [\"serrate\"]", "usually = [\"serrate\"], rarely = [\"serrate\"]");
    assert_eq!(twice, is(20, 50, "state-twice", "serrate"));
}

#[test]
fn a_cell_says_something_of_the_kind_that_its_character_has() {
    let empty = at("{ always = [\"serrate\"], src", "{ src");
    assert_eq!(empty, is(20, 1, "empty-cell", "leaf_margin"));
    let empty = at("{ range = [40, 150], extreme = [20, 200], src", "{ src");
    assert_eq!(empty, is(21, 1, "empty-cell", "leaf_length_mm"));
    let range = at("always = [\"serrate\"]", "range = [1, 2]");
    assert_eq!(range, is(20, 25, "range-of-states", "leaf_margin"));
    let state = at("range = [40, 150], extreme = [20, 200]", "always = [\"long\"]");
    assert_eq!(state, is(21, 30, "state-of-range", "long"));
}

#[test]
fn a_range_is_possible() {
    let turned = at("range = [40, 150]", "range = [150, 140]");
    assert_eq!(turned.2, "impossible-range");
    assert_eq!(at("[40, 150]", "[-40, 150]"), is(21, 28, "impossible-range", "-40 to 150"));
    assert_eq!(at("[40, 150]", "[nan, 150]").2, "impossible-range");
    assert_eq!(
        at("range = [40, 150], extreme = [20, 200]", "range = [0, 0]").2,
        "impossible-range"
    );
    let inside = at("extreme = [20, 200]", "extreme = [50, 200]");
    assert_eq!(inside, is(21, 49, "extreme-inside-range", "50 to 200"));
}

#[test]
fn months_run_from_one_to_twelve() {
    assert_eq!(at("leaf = [3, 11]", "leaf = [3, 13]"), is(15, 8, "no-such-month", "3, 13"));
    assert_eq!(at("leaf = [3, 11]", "leaf = [0, 3]").2, "no-such-month");
    assert_eq!(at("leaf = [3, 11]", "needle = [3, 11]"), is(15, 1, "unknown-word", "needle"));
}

#[test]
fn a_word_outside_a_closed_list_is_answered_with_the_list() {
    let all = faults(&small::files_with("\"europe\", \"north-america\"", "\"asia\""));
    let fault = all.iter().next().unwrap();
    assert_eq!(
        (fault.code.as_str(), fault.at.line, fault.at.column),
        ("unknown-word", Some(6), Some(12))
    );
    let ground::Arg::Words(known) = &fault.details.args["known"] else {
        panic!("the list is words");
    };
    assert!(known.contains("europe") && known.contains("north-america"), "{known}");
    assert_eq!(at("\"perennial\"", "\"evergreen\""), is(7, 13, "unknown-word", "evergreen"));
    assert_eq!(at("\"irritant\"", "\"mild\""), is(8, 8, "unknown-word", "mild"));
    assert_eq!(at("part = \"leaf\"", "part = \"needle\""), is(24, 8, "unknown-word", "needle"));
    assert_eq!(at("\"unlisted-alike\"", "\"some\""), is(37, 13, "unknown-word", "some"));
    assert_eq!(at("tool = \"ruler\"", "tool = \"rule\"").2, "unknown-word");
    assert_eq!(at("rank = \"family\"", "rank = \"species\""), is(2, 8, "unknown-word", "species"));
}

#[test]
fn a_plant_has_one_sheet_and_a_name_comes_once() {
    let mut files = files();
    let mut again = files[2].clone();
    again.path = "species/nettle/urtica-dioica.toml".to_owned();
    files.push(again);
    let all = faults(&files);
    let twice = all.iter().find(|fault| fault.code == "name-twice").unwrap();
    let (file, line, column, _, got) = small::said(twice);
    assert_eq!((file.as_str(), line, column), ("species/urtica-dioica.toml", 1, 8));
    assert_eq!(got, "Urtica dioica");
}

#[test]
fn a_file_is_called_after_its_plant() {
    let mut files = files();
    files[2].path = "species/nettle.toml".to_owned();
    let all = faults(&files);
    let fault = all.iter().next().unwrap();
    assert_eq!(
        (fault.code.as_str(), fault.at.line, fault.at.column),
        ("file-name", Some(1), Some(8))
    );
}

#[test]
fn two_common_names_differ() {
    let twice = at("\"stinging nettle\", \"nettle\"", "\"nettle\", \"nettle\"");
    assert_eq!(twice, is(4, 21, "name-twice", "nettle"));
}

#[test]
fn no_plant_is_its_own_look_alike_and_none_is_named_twice() {
    let itself = at("name = \"Conium maculatum\"\nwhy", "name = \"Urtica dioica\"\nwhy");
    assert_eq!(itself, is(29, 8, "look-alike-itself", "Urtica dioica"));
    let row = "[[look_alike]]\nname = \"Conium maculatum\"\nwhy = \"\"\ntells = []\nsays = \"\"\nsrc = [\"flora\"]\n\n";
    let twice = at("[[look_alike]]", &format!("{row}[[look_alike]]"));
    assert_eq!(twice, is(36, 8, "look-alike-twice", "Conium maculatum"));
}

#[test]
fn a_new_sheet_is_complete() {
    assert_eq!(at("life_form = \"perennial\"\n", ""), is(1, 8, "missing-field", "life_form"));
    assert_eq!(at("harm_note = \"Stings.\"\n", ""), is(8, 8, "missing-field", "harm_note"));
    let (_, relatives) = small::HEMLOCK.split_once("[relatives]").unwrap();
    let none = at(&format!("[relatives]{relatives}"), "");
    assert_eq!(none, is(1, 8, "missing-field", "relatives"));
}

#[test]
fn the_states_of_a_character_lean_on_one_another() {
    assert_eq!(
        at("taken_for = [\"entire\"]", "taken_for = [\"smooth\"]"),
        is(23, 14, "unknown-state", "smooth")
    );
    assert_eq!(at("kind_of = \"toothed\"", "kind_of = \"serrate\"").2, "state-names-itself");
    let all = faults(&small::files_with(
        "says = \"with teeth\"",
        "says = \"with teeth\"\nkind_of = \"serrate\"",
    ));
    let ring: Vec<_> = all.iter().map(|fault| (fault.code.as_str(), fault.at.line)).collect();
    assert_eq!(ring, [("kind-of-ring", Some(18)), ("kind-of-ring", Some(23))]);
}

#[test]
fn a_character_fits_its_kind_and_names_its_unit() {
    let row = small::GLOSSARY.rsplit_once("[[character]]").unwrap().1;
    let add = |from: &str, to: &str| {
        let row = row.replace("leaf_length_mm", "petiole_length_mm").replace(from, to);
        let mut files = files();
        files[1].text.push_str(&format!("\n[[character]]{row}"));
        let (_, line, column, code, got) = small::only(&files);
        (line, column, code, got)
    };
    let no_unit = add("petiole_length_mm", "petiole_length");
    assert_eq!(no_unit, is(66, 6, "no-unit", "petiole_length"));
    let kind = add("kind = \"length\"", "kind = \"long\"");
    assert_eq!(kind, is(70, 8, "unknown-word", "long"));
    let stateless = add("kind = \"length\"", "kind = \"states\"");
    assert_eq!(stateless, is(70, 8, "states-and-kind", "states"));
    let stated = add("src", "state = [{ id = \"long\" }]\nsrc");
    assert_eq!(stated, is(70, 8, "states-and-kind", "length"));
    assert_eq!(add("seconds = 20", "seconds = 0"), is(75, 11, "impossible-seconds", "0"));
    assert_eq!(add("petiole_length_mm", "leaf_length_mm").2, "character-twice");
}

#[test]
fn what_is_no_toml_is_found_where_it_breaks() {
    let broken = at(
        "authority = \"L.\"\nfamily = \"Urticaceae\"",
        "authority = L.\nfamily = \"Urticaceae\"",
    );
    assert_eq!((broken.0, broken.2.as_str()), (2, "unreadable-toml"));
    let stray = at("habitats = [\"hedge\"]", "habitat = [\"hedge\"]");
    assert_eq!((stray.0, stray.1, stray.2.as_str()), (11, 1, "unreadable-toml"));
}

#[test]
fn every_fault_of_every_file_comes_at_once() {
    let mut files = small::files_with("always = [\"serrate\"]", "always = [\"jagged\"]");
    files[3].text = files[3].text.replace("\"deadly\"", "\"bad\"");
    files.push(TextFile { path: "notes/why.toml".to_owned(), text: String::new() });
    let all = faults(&files);
    let codes: Vec<_> = all.iter().map(|fault| fault.code.as_str()).collect();
    assert_eq!(codes, ["stray-file", "unknown-word", "unknown-state"]);
}

#[test]
fn a_file_that_cannot_be_read_is_one_fault_and_no_more() {
    let broken = at("author = \"Somebody\"\n", "author = Somebody\n");
    assert_eq!((broken.0, broken.2.as_str()), (4, "unreadable-toml"));
    let broken = at("says = \"with teeth\"", "says = with teeth");
    assert_eq!((broken.0, broken.2.as_str()), (17, "unreadable-toml"));
}
