//! Reading a plant in hand into a file, look by look.
#![expect(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test reports by panicking"
)]

mod kit;

use desk::{
    Asks, InputFile, Reason, Reply, Request, StepOrder, StepReply, Told, Why, World, answer, device,
};
use jiff::civil::{DateTime, date};
use kit::world;
use proptest::prelude::*;
use std::collections::BTreeMap;

/// Ramsons in flower, as the demo's leader reads them, with the smell and the bulb.
const RAMSONS: &[(&str, &str)] = &[
    ("habit", "herb"),
    ("flower_colour", "white"),
    ("leaf_venation", "parallel"),
    ("leaf_arrangement", "rosette"),
    ("leaf_type", "simple"),
    ("leaf_shape", "elliptic"),
    ("leaf_base", "petiolate"),
    ("leaf_emergence", "singly"),
    ("leaf_surface", "smooth"),
    ("leaf_hairs", "none"),
    ("leaf_texture", "soft-tearing"),
    ("leaf_underside_sheen", "matt"),
    ("leaf_width_mm", "46 mm"),
    ("leaf_length_mm", "18 cm"),
    ("crushed_smell", "garlic"),
    ("stem_section", "triangular"),
    ("stem_interior", "solid"),
    ("inflorescence", "umbel"),
    ("underground", "bulb"),
];

/// What is rightly said of ramsons; that it cannot be told where they are not read.
fn right(character: &str) -> &'static str {
    RAMSONS.iter().find(|(asked, _)| *asked == character).map_or("?", |(_, said)| said)
}

/// Somebody at a terminal, with a file that is kept for them.
struct Desk {
    world: World,
    file: InputFile,
    reader: Option<String>,
    asks: Asks,
    told: Vec<Told>,
}

impl Desk {
    fn at(text: &str, at: DateTime) -> Self {
        let mut world = world();
        world.now = at;
        let file = InputFile { name: "in-hand.toml".to_owned(), text: text.to_owned() };
        Self { world, file, reader: None, asks: Asks::Left, told: Vec::new() }
    }

    /// The usual beginning: what is taken for ramsons in Mill Wood, on a day in April.
    fn of_ramsons() -> Self {
        let mut desk = Self::at("", date(2027, 4, 20).at(10, 0, 0, 0));
        desk.reads("Maren");
        desk.types(&["ramsons", "Mill Wood", "europe", "leader"]);
        desk
    }

    fn reads(&mut self, reader: &str) {
        self.reader = Some(reader.to_owned());
        self.take(None);
    }

    fn types(&mut self, lines: &[&str]) {
        for line in lines {
            self.take(Some(line));
        }
    }

    fn take(&mut self, typed: Option<&str>) {
        let order = StepOrder {
            file: self.file.clone(),
            reader: self.reader.clone(),
            character: self.character().map(str::to_owned),
            typed: typed.map(str::to_owned),
        };
        let Reply::Step(step) = answer(&self.world, Request::Step(order)).unwrap() else {
            panic!("another reply")
        };
        let StepReply { file, reader, told, asks } = *step;
        self.file = file.unwrap_or_else(|| self.file.clone());
        (self.reader, self.told, self.asks) = (reader, told, asks);
    }

    fn character(&self) -> Option<&str> {
        match &self.asks {
            Asks::Look { character } => Some(character),
            _ => None,
        }
    }

    /// Answers every look by what a plant shows; what it does not say cannot be told.
    fn reads_all(&mut self, plant: &[(&str, &str)]) -> Vec<String> {
        let plant: BTreeMap<_, _> = plant.iter().copied().collect();
        let mut asked = Vec::new();
        while let Some(character) = self.character().map(str::to_owned) {
            self.types(&[plant.get(character.as_str()).copied().unwrap_or("?")]);
            assert!(matches!(self.told[0], Told::Kept { .. }), "{character}: {:?}", self.told);
            asked.push(character);
            assert!(asked.len() < 60, "it never ends: {asked:?}");
        }
        asked
    }

    fn outcome(&self) -> identify::Outcome {
        match &self.asks {
            Asks::Verdict(reply) => reply.verdicts[0].outcome.clone(),
            other => panic!("no verdict: {other:?}"),
        }
    }

    fn fault(&self) -> &str {
        match self.told.as_slice() {
            [Told::Fault(fault)] => &fault.code,
            other => panic!("no fault: {other:?}"),
        }
    }
}

#[test]
fn one_leader_and_a_second_reader_determine_ramsons() {
    let mut desk = Desk::of_ramsons();
    let first = desk.reads_all(RAMSONS);
    assert!(first.len() > 8, "{first:?}");
    assert!(matches!(desk.asks, Asks::Nothing { wants_another: true }), "{:?}", desk.asks);
    desk.reads("Tobias");
    desk.types(&["trained"]);
    let second = desk.reads_all(RAMSONS);
    assert!(!second.is_empty() && second.len() < first.len(), "{second:?}");
    assert!(desk.outcome().is_determined());
    // The verdict from the file alone is the same.
    let by_file = Request::Looks { file: desk.file.clone() };
    let Reply::Device(device::Reply::InHand(reply)) = answer(&desk.world, by_file).unwrap() else {
        panic!()
    };
    assert_eq!(reply.verdicts[0].outcome, desk.outcome());
}

#[test]
fn a_leader_alone_reads_again_ten_minutes_later_and_not_before() {
    let mut desk = Desk::of_ramsons();
    desk.reads_all(RAMSONS);
    desk.world.now = date(2027, 4, 20).at(10, 9, 59, 0);
    desk.reads("Maren");
    assert!(matches!(desk.asks, Asks::Nothing { wants_another: true }));
    desk.world.now = date(2027, 4, 20).at(10, 10, 0, 0);
    desk.reads("Maren");
    desk.types(&["why"]);
    let [Told::Why(Why::Look { reason, .. })] = desk.told.as_slice() else { panic!() };
    assert_eq!(*reason, Reason::ReadBefore);
    desk.reads_all(RAMSONS);
    assert!(desk.outcome().is_determined());
}

#[test]
fn what_a_second_reader_is_told_names_no_plant_and_nothing_of_the_first() {
    let mut desk = Desk::of_ramsons();
    desk.reads_all(RAMSONS);
    desk.reads("Tobias");
    let names: Vec<_> =
        herbal_data::herbal().flora.sheets().map(|sheet| sheet.name.clone()).collect();
    assert!(names.len() > 200);
    let mut said = Vec::new();
    desk.types(&["trained"]);
    while let Some(character) = desk.character().map(str::to_owned) {
        desk.types(&["why"]);
        said.push(serde_json::to_string(&(&desk.told, &desk.asks)).unwrap());
        let states = RAMSONS.iter().filter(|(known, _)| *known == character);
        let answers = states.map(|(_, state)| *state).collect::<Vec<_>>();
        for state in &answers {
            assert!(!said[said.len() - 1].contains(&format!("\"{state}\"")), "{said:?}");
        }
        desk.types(&[answers.first().copied().unwrap_or("?")]);
    }
    assert!(said.len() >= 2, "{said:?}");
    for text in said {
        let named = names.iter().find(|name| text.contains(name.as_str()));
        assert_eq!(named, None, "{text}");
    }
}

#[test]
fn what_one_cannot_tell_another_is_asked_and_nobody_twice() {
    let mut desk = Desk::of_ramsons();
    let first = desk.character().unwrap().to_owned();
    let asked = desk.reads_all(&[]);
    assert_eq!(asked.iter().filter(|character| **character == first).count(), 1);
    assert!(matches!(desk.asks, Asks::Nothing { wants_another: true }));
    desk.reads("Tobias");
    desk.types(&["trained"]);
    assert_eq!(desk.character(), Some(first.as_str()));
}

#[test]
fn whoever_was_shown_the_verdict_reads_no_second_time() {
    let mut desk = Desk::of_ramsons();
    desk.reads_all(RAMSONS);
    desk.reads("Tobias");
    desk.types(&["trained", "verdict"]);
    assert!(matches!(desk.outcome(), identify::Outcome::NotYet));
    assert!(desk.file.text.contains("candidates-shown = true"));
    desk.reads("Tobias");
    let Told::Reads { shown: true, .. } = desk.told[1] else { panic!("{:?}", desk.told) };
    desk.reads_all(RAMSONS);
    assert!(matches!(desk.asks, Asks::Nothing { wants_another: true }), "{:?}", desk.asks);
    // A third reader, who knows nothing, settles it.
    desk.reads("Ida");
    desk.types(&["public"]);
    desk.reads_all(RAMSONS);
    assert!(desk.outcome().is_determined());
}

#[test]
fn looks_of_another_day_are_told_and_asked_again() {
    let mut desk = Desk::of_ramsons();
    let first = desk.character().unwrap().to_owned();
    desk.types(&[right(&first)]);
    desk.world.now = date(2027, 4, 21).at(10, 0, 0, 0);
    desk.reads("Maren");
    assert_eq!(desk.told[1], Told::OtherDay { looks: 1 });
    assert_eq!(desk.character(), Some(first.as_str()));
    desk.types(&["back"]);
    assert_eq!(desk.told, [Told::NothingToTakeBack]);
}

#[test]
fn an_answer_that_is_none_is_told_and_changes_nothing() {
    let mut desk = Desk::of_ramsons();
    let plain = desk.file.clone();
    let first = desk.character().unwrap().to_owned();
    let states = herbal_data::herbal().flora.glossary.states(&first).len();
    let past = (states + 1).to_string();
    for none in ["0", &past, "-1", "1.5", "umbel", "18 mm", "1, 99", "\u{1b}[31m", "\"", "verdic"] {
        desk.types(&[none]);
        assert_eq!(desk.fault(), "answer-none-of-these", "{none}");
        assert_eq!(desk.character(), Some(first.as_str()), "{none}");
    }
    desk.types(&[""]);
    assert_eq!((desk.told.as_slice(), &desk.file), ([].as_slice(), &plain));
    while desk.character() != Some("leaf_width_mm") {
        let said = right(desk.character().unwrap());
        desk.types(&[said]);
    }
    let before = desk.file.clone();
    let lengths = [
        ("3 km", "answer-length-cannot-be"),
        ("0 mm", "answer-length-cannot-be"),
        ("-2 cm", "answer-length-cannot-be"),
        ("18", "answer-no-length"),
        ("18 g", "answer-other-unit"),
        ("wide", "answer-no-length"),
        ("1e999 mm", "answer-no-length"),
    ];
    for (said, code) in lengths {
        desk.types(&[said]);
        assert!([code, "answer-length-cannot-be", "answer-other-unit"].contains(&desk.fault()));
        assert_eq!(desk.file, before, "{said}");
    }
    desk.types(&["¾ in"]);
    let Told::Kept { seen: identify::Seen::Measured { low, .. }, .. } = &desk.told[0] else {
        panic!("{:?}", desk.told)
    };
    // An inch is 25.4 mm: the international yard and pound agreement of 1959.
    assert!((low.get() - 19.05).abs() < 1e-9);
}

#[test]
fn answers_are_taken_by_number_by_word_and_several_at_once() {
    let herbal = herbal_data::herbal();
    let first = Desk::of_ramsons().character().unwrap().to_owned();
    let state = right(&first);
    let states = herbal.flora.glossary.states(&first);
    let says = herbal.flora.glossary.says(&first, state).to_uppercase();
    let number = 1 + states.iter().position(|one| one.id == state).unwrap();
    for said in [state, &state.to_uppercase(), &number.to_string(), &says] {
        let mut desk = Desk::of_ramsons();
        desk.types(&[said]);
        assert!(desk.file.text.ends_with(&format!("{first} = \"{state}\"\n")), "{said}");
    }
    for said in ["1, 3", "1|3", "1 or 3", "3,1,3"] {
        let mut desk = Desk::of_ramsons();
        desk.types(&[said]);
        let Told::Kept { seen: identify::Seen::OneOf(both), .. } = &desk.told[0] else {
            panic!("{:?}", desk.told)
        };
        assert_eq!(both.len(), 2, "{said}");
    }
    let mut desk = Desk::of_ramsons();
    desk.types(&["-"]);
    assert!(desk.file.text.ends_with(&format!("{first} = \"not-there\"\n")));
}

#[test]
fn the_beginning_asks_again_for_what_cannot_be() {
    let mut desk = Desk::at("", date(2027, 4, 20).at(10, 0, 0, 0));
    desk.take(None);
    desk.types(&["xyzzy"]);
    assert_eq!(desk.fault(), "unknown-plant-none-near");
    desk.types(&["verdict"]);
    assert_eq!(desk.fault(), "answer-no-verdict-yet");
    assert!(desk.file.text.is_empty());
    desk.types(&["ramsons", &"x".repeat(81)]);
    assert_eq!(desk.fault(), "answer-name-too-long");
    desk.types(&["by the \"old\" mill = [x]", "asia"]);
    assert_eq!(desk.fault(), "answer-none-of-these");
    desk.types(&["?", "7"]);
    assert_eq!(desk.fault(), "answer-no-name");
    desk.types(&["Maren", "expert"]);
    assert_eq!(desk.fault(), "answer-none-of-these");
    desk.types(&["1"]);
    assert!(desk.character().is_some());
}

#[test]
fn everything_is_taken_back_down_to_the_empty_file() {
    let mut desk = Desk::at("", date(2027, 4, 20).at(10, 0, 0, 0));
    let mut files = vec![desk.file.text.clone()];
    desk.take(None);
    for line in ["ramsons", "Mill Wood", "europe", "Maren", "leader", "right", "?"] {
        let line = if line == "right" { right(desk.character().unwrap()) } else { line };
        desk.types(&[line]);
        files.push(desk.file.text.clone());
        // Another minute begins another table.
        desk.world.now = desk.world.now.checked_add(jiff::Span::new().minutes(1)).unwrap();
    }
    while let Some(before) = files.pop() {
        assert_eq!(desk.file.text, before);
        desk.types(&["back"]);
    }
    assert_eq!(desk.told, [Told::NothingToTakeBack]);
}

#[test]
fn nobody_takes_back_what_another_said() {
    let mut desk = Desk::of_ramsons();
    desk.types(&[right(desk.character().unwrap())]);
    desk.reads("Tobias");
    let before = desk.file.clone();
    desk.types(&["trained", "back"]);
    assert_eq!(desk.file, before);
    desk.types(&["back", "Maren"]);
    assert_eq!(desk.reader.as_deref(), Some("Maren"));
}

#[test]
fn a_file_at_fault_is_told_with_its_line() {
    let world = world();
    let fault = |text: &str| {
        let file = InputFile { name: "in-hand.toml".to_owned(), text: text.to_owned() };
        let order = StepOrder { file, reader: None, character: None, typed: None };
        let faults = answer(&world, Request::Step(order)).unwrap_err();
        let first = faults.iter().next().unwrap();
        (first.code.clone(), first.at.line)
    };
    let maren = "[[reader]]\nname = \"Maren\"\nlevel = \"leader\"\n";
    let looks = "[[looks]]\nreader = \"Maren\"\nat = 2027-04-20T10:00:00\n";
    let cases = [
        ("plant = ".to_owned(), "unreadable-looks", 1),
        ("[plant]\nis = \"x\"\n".to_owned(), "unreadable-looks", 1),
        ("[plant]\ntaken-for = \"xyzzy\"\n".to_owned(), "unknown-plant-none-near", 2),
        ("[plant]\nregion = \"asia\"\n".to_owned(), "unknown-word", 2),
        (format!("{maren}{maren}"), "name-twice", 5),
        ("[[reader]]\nname = \"M\"\nlevel = \"expert\"\n".to_owned(), "unknown-word", 3),
        (format!("{looks}saw = {{}}\n"), "no-such-name", 2),
        (format!("{maren}{looks}saw = {{ leaf_vein = \"x\" }}\n"), "no-such-character", 6),
        (format!("{maren}{looks}saw = {{ leaf_arrangement = \"x\" }}\n"), "unknown-state", 6),
    ];
    for (text, code, line) in cases {
        let (got, at) = fault(&text);
        assert_eq!(got, code, "{text}");
        assert!(at.is_some_and(|at| at >= line.min(1)), "{text}: {at:?}");
    }
}

#[test]
fn the_file_that_the_documentation_shows_is_one() {
    let page = include_str!("../../../docs/looks-file.md");
    let text = page.split("```toml").nth(1).and_then(|rest| rest.split("```").next()).unwrap();
    let mut desk = Desk::at(text, date(2027, 4, 20).at(11, 0, 0, 0));
    desk.reads("Maren");
    let Told::Reads { looks: 5, shown: true, .. } = desk.told[1] else { panic!("{:?}", desk.told) };
    desk.types(&["?"]);
    assert!(desk.file.text.starts_with(text));
}

/// A file that somebody began by hand, in an order and a shape of their own.
const BY_HAND: &str = "# Mill Wood, after the rain.\n\n[[looks]] # first\nreader = \"Maren\"\n\
     at = 2027-04-20T10:00:00\nsaw = { leaf_arrangement = \"rosette\" } # held to the light\n\n\
     [[reader]]\nlevel = \"leader\"\nname = \"Maren\"\n\n[plant]\nregion = \"europe\"\n\
     place = \"?\"\ntaken-for = 'wild garlic'\n# no more yet";

#[test]
fn a_file_by_hand_is_gone_on_with_and_nothing_of_it_is_lost() {
    let mut desk = Desk::at(BY_HAND, date(2027, 4, 20).at(10, 0, 0, 0));
    desk.reads("maren");
    assert_eq!(desk.reader.as_deref(), Some("Maren"));
    assert_eq!(desk.file.text, BY_HAND);
    desk.reads_all(RAMSONS);
    assert!(desk.file.text.starts_with(BY_HAND));
    desk.reads("Tobias");
    desk.types(&["trained"]);
    desk.reads_all(RAMSONS);
    assert!(desk.outcome().is_determined());
    assert!(desk.file.text.starts_with(BY_HAND));
}

#[test]
fn a_list_of_looks_that_no_line_can_go_on_with_is_told_and_kept() {
    let list = "looks = []\n[plant]\ntaken-for = \"ramsons\"\nplace = \"?\"\nregion = \"?\"\n\
         [[reader]]\nname = \"Maren\"\nlevel = \"leader\"\n";
    let mut desk = Desk::at(list, date(2027, 4, 20).at(10, 0, 0, 0));
    desk.reads("Maren");
    desk.types(&["?"]);
    assert_eq!(desk.fault(), "looks-cannot-go-on");
    assert_eq!(desk.file.text, list);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Whatever is typed, nothing is lost of the file, and `back` gives it byte for byte.
    #[test]
    fn a_line_adds_at_the_end_and_back_takes_it_away(
        lines in prop::collection::vec(
            prop_oneof![
                Just("?".to_owned()), Just("-".to_owned()), Just("1".to_owned()),
                Just("2".to_owned()), Just("1, 2".to_owned()), Just("4 cm".to_owned()),
                "\\PC{0,12}",
            ],
            1..6,
        ),
        minutes in prop::collection::vec(0_i64..3, 6),
    ) {
        let mut desk = Desk::of_ramsons();
        for (line, minutes) in lines.iter().zip(minutes) {
            let before = desk.file.text.clone();
            desk.world.now = desk.world.now.checked_add(jiff::Span::new().minutes(minutes)).unwrap();
            desk.types(&[line]);
            let is_word = ["back", "b", "verdict", "quit", "q"].contains(&line.to_lowercase().trim());
            if is_word {
                break;
            }
            prop_assert!(desk.file.text.starts_with(&before));
            if desk.file.text != before {
                let after = desk.file.clone();
                let asks = desk.character().map(str::to_owned);
                desk.types(&["back"]);
                prop_assert_eq!(&desk.file.text, &before);
                desk.types(&[line]);
                prop_assert_eq!(&desk.file, &after);
                prop_assert_eq!(desk.character().map(str::to_owned), asks);
            }
        }
    }
}
