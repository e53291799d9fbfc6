//! Rules for weather and water, and the lines of the emergency card: what ships, what is refused.

#![expect(clippy::unwrap_used, reason = "a test reports by panicking, in its helpers too")]

use ground::Standing;
use herbal::{Herbal, TextFile};

fn file(path: &str, text: &str) -> TextFile {
    TextFile { path: path.to_owned(), text: text.to_owned() }
}

fn shipped() -> Vec<TextFile> {
    vec![
        file("day/emergency.toml", include_str!("../../../herbal/day/emergency.toml")),
        file("day/rules.toml", include_str!("../../../herbal/day/rules.toml")),
        file("sources/day.toml", include_str!("../../../herbal/sources/day.toml")),
        file("sources/land.toml", include_str!("../../../herbal/sources/land.toml")),
    ]
}

fn codes(files: &[TextFile]) -> Vec<(String, String)> {
    let faults = Herbal::read(files).unwrap_err();
    faults.into_iter().map(|fault| (fault.code, fault.got)).collect()
}

#[test]
fn every_line_of_the_emergency_card_was_published() {
    let day = Herbal::read(&shipped()).unwrap().day;
    assert!(day.say.len() >= 5 && day.keep.len() >= 3);
    for line in day.say.iter().chain(&day.keep) {
        assert_eq!(line.from.standing, Standing::Published, "{}", line.id);
    }
}

/// The card says whom to call, what to say and what to keep; whoever answers says what to do.
#[test]
fn no_line_of_the_emergency_card_is_treatment() {
    let day = Herbal::read(&shipped()).unwrap().day;
    for line in day.say.iter().chain(&day.keep) {
        let said = line.says.to_lowercase();
        for word in ["vomit", "charcoal", "milk", "salt", "drink", "rinse", "give ", "antidote"] {
            assert!(!said.contains(word), "{}: {word}", line.id);
        }
    }
}

#[test]
fn rows_come_in_their_order_whatever_the_order_of_the_file() {
    let day = Herbal::read(&shipped()).unwrap().day;
    let orders: Vec<_> = day.rules.iter().map(|rule| rule.order).collect();
    assert!(orders.is_sorted() && orders.len() >= 8);
    let turned: Vec<_> = shipped().into_iter().rev().collect();
    assert_eq!(day, Herbal::read(&turned).unwrap().day);
}

#[test]
fn a_rule_without_a_source_and_a_rule_given_twice_are_refused() {
    let row = "[[rule]]\nid = \"fog\"\norder = 1\nwhen = \"Fog\"\ndone = \"Stay.\"\nsrc = []\n";
    assert_eq!(codes(&[file("day/a.toml", row)]), [("no-source".into(), String::new())]);
    let row = row.replace("[]", "[\"practice\"]");
    let twice = [file("day/a.toml", &row), file("day/b.toml", &row)];
    assert_eq!(codes(&twice), [("day-twice".into(), "fog".into())]);
}

#[test]
fn a_school_replaces_a_rule_by_its_identifier() {
    let over = "[[rule]]\nid = \"wind\"\norder = 3\nwhen = \"Wind\"\ndone = \"Home.\"\nsrc = [\"policy\"]\n";
    let herbal = Herbal::read(&shipped()).unwrap();
    let over = herbal.overlay(&[file("day/own.toml", over)]).unwrap();
    assert_eq!(over.day.rules.len(), herbal.day.rules.len());
    let wind = over.day.rules.iter().find(|rule| rule.id == "wind").unwrap();
    assert_eq!((wind.done.as_str(), wind.from.standing), ("Home.", Standing::Policy));
}
