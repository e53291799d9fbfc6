//! Bad input loses nothing: every fault comes back at once, with file, line and column.
#![expect(clippy::unwrap_used, reason = "a panic is how a test reports")]

mod kit;

use desk::{InputFile, MOST_BYTES};
use ground::Place;
use kit::*;

/// A small outing without a fault, to put faults into.
const GOOD: &str = r#"
[outing]
name = "A walk"
date = 2027-05-01
from = "10:00"
to = "15:30"
zone = "Europe/London"
region = "europe"
leader = "maren"
purpose = "lesson"
kitchen = "metric"

[[reader]]
name = "maren"
called = "Maren Holt"
level = "leader"

[[site]]
name = "meadow"
called = "Weir Meadow"
landholder = "Oda Pellwright"
land = "private"
jurisdiction = "england-and-wales"

[[stand]]
name = "bank"
site = "meadow"
plant = "Urtica dioica"

[[stand]]
name = "ditch"
site = "meadow"
plant = "Allium ursinum"

[[survey]]
stand = "bank"
part = "leaf"
on = 2027-04-26
by = "Maren Holt"
plots-in-stand = 180
weights = ["140 g", "95 g"]

[[looks]]
specimen = "nettle-1"
stand = "bank"
reader = "maren"
at = 2027-05-01T12:00:00
saw = { leaf_arrangement = "opposite", leaf_length_mm = "70 mm" }

[[take]]
name = "basket"
stand = "bank"
part = "leaf"
amount = "300 g"
at = 2027-05-01T12:30:00
pattern = "nettle-1"
pickers = ["maren"]

[[lot]]
name = "bag"
takes = ["basket"]

[[sorting]]
lot = "bag"
at = 2027-05-01T13:00:00
sorters = ["maren", "tobias"]
pieces = 200
every-piece = true

[[make]]
name = "dish"
called = "Cooked nettle tops"
recipe = "cooked-leaf"
plant = "Urtica dioica"
part = "leaf"
stands = ["bank"]
herb = "fresh"
moisture = "80–84 %"
amounts = { herb = "300 g" }
serving = "60 g"
servings-a-day = 1
days = 1
people = ["p01"]

[[batch]]
name = "pot"
make = "dish"
lots = ["bag"]
at = 2027-05-01T14:00:00
cook = "maren"

[[weighing]]
of = "pot"
what = "herb"
at = 2027-05-01T13:50:00
mass = "300 g"

[[participant]]
name = "p01"
called = "Ansel Brookhouse"

[[answers]]
participant = "p01"
age = 44
weight = "78 kg"
rest = "no"
"#;

/// The good outing with changes made to it; each is written once in it.
fn with(changes: &[(&str, &str)]) -> String {
    changes.iter().fold(GOOD.to_owned(), |text, (good, bad)| {
        assert_eq!(text.matches(good).count(), 1, "{good}");
        text.replace(good, bad)
    })
}

/// The faults of a text as code and place, and the places where these words stand in it.
fn compare(text: &str, want: &[(&str, &str)]) {
    let got = faults(&world(), vec![file("walk.toml", text)]);
    let mut want: Vec<_> = want
        .iter()
        .map(|(code, word)| {
            let (line, column) = Place::line_and_column(text, text.find(word).unwrap());
            ("walk.toml".to_owned(), line, column, (*code).to_owned())
        })
        .collect();
    want.sort();
    assert_eq!(got, want);
}

#[test]
fn the_outing_that_faults_are_put_into_has_none() {
    assert!(desk::read(&[file("walk.toml", GOOD)], world().herbal()).is_ok());
}

#[test]
fn an_unknown_plant_comes_back_with_the_nearest_names() {
    let text = with(&[(
        "plant = \"Urtica dioica\"\n\n[[stand]]",
        "plant = \"Urtica dioca\"\n\n[[stand]]",
    )]);
    compare(&text, &[("unknown-plant", "\"Urtica dioca\"")]);
    let all = desk::read(&[file("walk.toml", &text)], world().herbal()).unwrap_err();
    let near = all.iter().next().and_then(|fault| fault.details.args.get("near")).cloned();
    assert!(format!("{near:?}").contains("Urtica dioica"), "{near:?}");
}

#[test]
fn characters_and_states_that_the_glossary_lacks_are_told() {
    let text = with(&[(
        "leaf_arrangement = \"opposite\"",
        "leaf_arangement = \"opposite\", leaf_margin = \"wavyish\"",
    )]);
    compare(&text, &[("no-such-character", "\"opposite\""), ("unknown-state", "\"wavyish\"")]);
}

#[test]
fn units_amounts_and_counts_that_cannot_be_are_told() {
    let text = with(&[
        ("leaf_length_mm = \"70 mm\"", "leaf_length_mm = \"70 ml\""),
        ("amount = \"300 g\"", "amount = \"-300 g\""),
        ("mass = \"300 g\"", "mass = \"30000 kg\""),
        ("weight = \"78 kg\"", "weight = \"780 kg\""),
        ("age = 44", "age = 440"),
        ("servings-a-day = 1", "servings-a-day = 0"),
        ("moisture = \"80–84 %\"", "moisture = \"180 %\""),
        ("herb = \"300 g\"", "herb = \"301 ml\""),
        ("serving = \"60 g\"", "serving = \"a handful of luck\""),
    ]);
    compare(
        &text,
        &[
            ("unit-does-not-fit", "\"70 ml\""),
            ("amount-out-of-range", "\"-300 g\""),
            ("amount-out-of-range", "\"30000 kg\""),
            ("amount-out-of-range", "\"780 kg\""),
            ("number-out-of-range", "440"),
            ("nothing-counted", "0\ndays"),
            ("amount-out-of-range", "\"180 %\""),
            ("unit-does-not-fit", "\"301 ml\""),
            ("unreadable-amount", "\"a handful of luck\""),
        ],
    );
}

#[test]
fn a_day_that_is_not_in_the_calendar_is_told() {
    // 31 April and 29 February of a common year.
    for day in ["2027-04-31", "2027-02-29"] {
        let text = with(&[("on = 2027-04-26", &format!("on = {day}"))]);
        let got = faults(&world(), vec![file("walk.toml", &text)]);
        let (line, _) = Place::line_and_column(&text, text.find(day).unwrap());
        assert_eq!(got.len(), 1, "{got:?}");
        assert_eq!((got[0].1, got[0].0.as_str()), (line, "walk.toml"), "{got:?}");
    }
    let text = with(&[("to = \"15:30\"", "to = \"09:30\"")]);
    compare(&text, &[("ends-before-it-begins", "\"09:30\"")]);
}

#[test]
fn a_participant_twice_is_told_where_the_second_stands() {
    let second = "[[participant]]\nname = \"p01\" # again\ncalled = \"Birte Calloway\"\n";
    let text = format!("{GOOD}\n{second}");
    compare(&text, &[("name-twice", "\"p01\" # again")]);
}

#[test]
fn what_names_nothing_in_the_outing_is_told() {
    let text = with(&[
        ("stand = \"bank\"\nreader", "stand = \"hedge\"\nreader"),
        ("people = [\"p01\"]", "people = [\"p02\"]"),
        ("pattern = \"nettle-1\"", "pattern = \"nettle-2\""),
        ("lots = [\"bag\"]", "lots = [\"sack\"]"),
    ]);
    compare(
        &text,
        &[
            ("no-such-name", "\"hedge\""),
            ("no-such-name", "\"p02\""),
            ("no-such-name", "\"nettle-2\""),
            ("no-such-name", "\"sack\""),
        ],
    );
}

#[test]
fn tables_that_do_not_fit_each_other_are_told() {
    let second_look = "\n[[looks]]\nspecimen = \"nettle-1\"\nstand = \"ditch\" # another\nreader = \"maren\"\n\
                       at = 2027-05-01T12:10:00\nsaw = { habit = \"herb\" }\n";
    let text = with(&[
        ("stands = [\"bank\"]", "stands = [\"ditch\"]"),
        ("stand = \"bank\"\npart = \"leaf\"\namount", "stand = \"ditch\"\npart = \"leaf\"\namount"),
        ("mass = \"300 g\"\n", ""),
    ]) + second_look;
    compare(
        &text,
        &[
            ("stand-of-another-plant", "\"ditch\"]"),
            ("lot-of-another-plant", "\"bag\"]\nat"),
            ("nothing-weighed", "\"pot\"\nwhat"),
            ("specimen-at-two-stands", "\"ditch\" # another"),
        ],
    );
}

#[test]
fn surveys_that_make_no_sense_are_told() {
    let survey = |plots: &str| with(&[("weights = [\"140 g\", \"95 g\"]", plots)]);
    let stand = "\"bank\"\npart = \"leaf\"\non";
    compare(&survey("weights = []"), &[("survey-no-plots", stand)]);
    compare(&survey("weights = [\"140 g\"]\npieces = [3]"), &[("counted-and-weighed", stand)]);
    compare(
        &survey("pieces = [3, 4]\npiece-weights = [\"0 g\"]"),
        &[("survey-piece-weight", stand)],
    );
    let few = with(&[("plots-in-stand = 180", "plots-in-stand = 1")]);
    compare(&few, &[("survey-too-many-plots", stand)]);
}

#[test]
fn the_faults_of_the_outing_table_do_not_hide_those_of_others() {
    let text = with(&[
        ("zone = \"Europe/London\"", "zone = \"Europe/Velmer\""),
        ("region = \"europe\"", "region = \"atlantis\""),
        ("land = \"private\"", "land = \"moon\""),
        ("recipe = \"cooked-leaf\"", "recipe = \"alchemy\""),
        ("level = \"leader\"", "level = \"wizard\""),
    ]);
    compare(
        &text,
        &[
            ("no-such-zone", "\"Europe/Velmer\""),
            ("unknown-word", "\"atlantis\""),
            ("unknown-word", "\"moon\""),
            ("unknown-word", "\"alchemy\""),
            ("unknown-word", "\"wizard\""),
        ],
    );
}

#[test]
fn one_outing_table_is_wanted_in_all_files_together() {
    let two =
        [file("walk.toml", GOOD), file("more.toml", GOOD.split("[[reader]]").next().unwrap())];
    let got = faults(&world(), two.to_vec());
    assert_eq!(got, [("more.toml".to_owned(), 4, 8, "one-outing-wanted".to_owned())]);
    // Twice in one file is no TOML.
    let twice = format!("{GOOD}\n[outing]\nname = \"again\"\n");
    assert_eq!(faults(&world(), vec![file("walk.toml", &twice)])[0].3, "unreadable-outing");
    let none = faults(
        &world(),
        vec![file("more.toml", "[[participant]]\nname = \"a\"\ncalled = \"A\"\n")],
    );
    assert_eq!(none[0].3, "one-outing-wanted");
}

#[test]
fn a_file_that_is_asked_for_and_missing_is_told() {
    let text = format!("include = [\"people.toml\"]\n{GOOD}");
    let got = faults(&world(), vec![file("walk.toml", &text)]);
    assert_eq!(got, [("walk.toml".to_owned(), 1, 12, "no-such-file".to_owned())]);
}

#[test]
fn a_field_that_no_table_has_is_told() {
    let text = with(&[("level = \"leader\"", "levle = \"leader\"")]);
    let got = faults(&world(), vec![file("walk.toml", &text)]);
    let (line, _) = Place::line_and_column(&text, text.find("levle").unwrap());
    assert_eq!((got.len(), got[0].1, got[0].3.as_str()), (1, line, "unreadable-outing"));
}

#[test]
fn files_that_are_empty_too_large_or_no_text_are_refused() {
    let refused = |bytes: Vec<u8>| told(&InputFile::from_bytes("walk.toml", bytes).unwrap_err());
    assert_eq!(refused(Vec::new()).3, "empty-file");
    assert_eq!(refused(b" \n\n".to_vec()).3, "empty-file");
    assert_eq!(refused(vec![b' '; MOST_BYTES + 1]).3, "file-too-large");
    let latin = b"name = \"x\"\ncalled = \"M\xfcller\"\n".to_vec();
    assert_eq!(refused(latin), ("walk.toml".to_owned(), 2, 12, "not-utf-8".to_owned()));
}

#[test]
fn a_lot_that_one_person_went_through_stays_unsorted() {
    let alone = with(&[("sorters = [\"maren\", \"tobias\"]", "sorters = [\"maren\"]")]);
    let sorted = |text: &str| {
        let plan = plan(&world(), vec![file("walk.toml", text)], false);
        plan.lots[0].state.fitness.is_sorted()
    };
    assert!(sorted(GOOD) && !sorted(&alone));
}

#[test]
fn an_outing_without_people_decides_on_nobody() {
    let (nobody, _) = GOOD.split_once("[[participant]]").unwrap();
    let text = nobody.replace("people = [\"p01\"]", "everybody = true");
    let plan = plan(&world(), vec![file("walk.toml", &text)], true);
    assert!(plan.makes[0].handed_out.is_empty() && plan.makes[0].instead.is_empty());
    assert!(plan.people.is_empty() && plan.sealed.unwrap().is_empty());
}

#[test]
fn a_recipe_to_take_home_names_a_plant_that_the_herbal_knows() {
    let with = |names: &str| {
        let line = format!("purpose = \"lesson\"\nrecipes-to-take-home = [{names}]");
        vec![file("good.toml", &GOOD.replace("purpose = \"lesson\"", &line))]
    };
    let world = world();
    let wishes = desk::read(&with("\"ramsons\""), world.herbal()).unwrap().wishes;
    assert_eq!(Vec::from_iter(wishes.recipes_to_take_home), ["Allium ursinum"]);
    let told = faults(&world, with("\"Allium ursinun\", \"ramsons\", \"no such weed\""));
    let codes: Vec<_> = told.iter().map(|(.., code)| code.as_str()).collect();
    assert!(
        codes.len() == 2 && codes.iter().all(|code| code.starts_with("unknown-plant")),
        "{told:?}"
    );
}
