//! What holds for every message of the catalogue.

use ground::{Condition, Form, Harm, LifeForm, MeasureSystem, Organ, Part, Region};
use page::{Catalogue, MESSAGE_FILES};

/// Phrases that no message may hold: nothing clears a plant in such words, no colour stands for a
/// verdict, no jargon for a number.
const FORBIDDEN: &[&str] = &[
    "safe to eat",
    "safe to drink",
    "safe for",
    "is safe",
    "are safe",
    "perfectly safe",
    "100 % safe",
    "nothing to fear",
    "no risk",
    "risk-free",
    "guarantee",
    "all clear",
    "traffic light",
    "green light",
    "red light",
    "red flag",
    "code red",
    "percentile",
    "quantile",
    "p95",
    "p50",
    "please",
    "forbidden",
    "invalid",
    "error:",
];

/// Colour words that may not stand in a message that tells a decision or a verdict.
const COLOURS: &[&str] = &["red", "amber", "green", "yellow", "orange"];

/// Lines of messages that hold words, by file. Comments speak to writers, not to readers.
fn lines() -> impl Iterator<Item = (&'static str, &'static str)> {
    MESSAGE_FILES.iter().flat_map(|file| {
        let lines = file.text.lines().filter(|line| !line.starts_with('#'));
        lines.map(|line| (file.name, line))
    })
}

#[test]
fn every_file_can_be_read_and_no_name_is_used_twice() {
    assert_eq!(Catalogue::english().flaws(), [""; 0]);
}

#[test]
fn every_fault_says_what_was_wanted_and_how_to_mend_it() {
    let catalogue = Catalogue::english();
    let faults = catalogue.messages().filter(|(id, _)| id.starts_with("fault-"));
    for (id, fields) in faults {
        assert!(["want", "mend"].iter().all(|f| fields.iter().any(|field| field == f)), "{id}");
    }
}

#[test]
fn names_of_messages_are_kebab_case() {
    let kebab = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
    for (id, _) in Catalogue::english().messages() {
        assert!(id.chars().all(kebab), "{id}");
    }
}

#[test]
fn no_message_holds_a_forbidden_phrase_or_raises_its_voice() {
    for (file, line) in lines() {
        let said = line.to_lowercase();
        for phrase in FORBIDDEN {
            assert!(!said.contains(phrase), "{file}: \"{phrase}\" in: {line}");
        }
        assert!(!line.contains('!'), "{file}: {line}");
    }
}

#[test]
fn no_decision_is_told_by_a_colour() {
    let tells = ["decision", "verdict", "outcome", "withhold", "ask-first", "no-reason"];
    for (file, line) in lines() {
        let Some((id, words)) = line.split_once(" = ") else { continue };
        if !tells.iter().any(|word| id.contains(word)) {
            continue;
        }
        let said = words.to_lowercase();
        let mut said = said.split(|c: char| !c.is_alphabetic());
        assert!(!said.any(|word| COLOURS.contains(&word)), "{file}: {line}");
    }
}

/// The phrases are found where they stand: the test above would otherwise hold of anything.
#[test]
fn a_forbidden_phrase_would_be_found() {
    let line = "decision-fine = This plant is Safe to Eat.".to_lowercase();
    assert!(FORBIDDEN.iter().any(|phrase| line.contains(phrase)));
}

#[test]
fn every_word_of_the_trade_has_its_message() {
    let mut ids: Vec<String> = Vec::new();
    let mut add = |kind: &str, word: &str| ids.push(format!("{kind}-{word}"));
    Part::ALL.iter().for_each(|p| add("part", p.word()));
    Form::ALL.iter().for_each(|f| add("form", f.word()));
    Organ::ALL.iter().for_each(|o| add("organ", o.word()));
    LifeForm::ALL.iter().for_each(|l| add("life-form", l.word()));
    Region::ALL.iter().for_each(|r| add("region", r.word()));
    Condition::ALL.iter().for_each(|c| add("condition", c.word()));
    Condition::ALL.iter().for_each(|c| add("label-who", c.word()));
    desk::Allergen::ALL.iter().for_each(|a| add("allergen", a.word()));
    ["room", "cool", "fridge"].iter().for_each(|s| add("label-shelf", s));
    MeasureSystem::ALL.iter().for_each(|m| add("measures", m.word()));
    let harms = [Harm::None, Harm::Irritant, Harm::Unknown, Harm::Harmful, Harm::Deadly];
    harms.iter().for_each(|h| add("harm", h.word()));
    let ids: Vec<_> = ids.iter().map(String::as_str).collect();
    assert_eq!(Catalogue::english().missing(&ids), [""; 0]);
}
