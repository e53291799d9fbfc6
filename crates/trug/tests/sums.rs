//! `trug sums`: what is asked in words comes back in words.
#![expect(clippy::expect_used, reason = "a test reports by panicking")]

mod common;

use common::run;

const DILUTE: [&str; 8] =
    ["sums", "dilute", "--from", "96 % vol", "--to", "60 % vol", "--volume", "500 ml"];

/// By volumes alone 300 ml of water would do: by weight it takes 324.2 ml (OIML R 22).
#[test]
fn spirit_is_let_down_to_a_strength() {
    let ran = run(&[&DILUTE[..], &["--width", "80"]].concat());
    insta::assert_snapshot!(ran.out);
}

#[test]
fn the_json_of_a_sum_keeps_every_digit_and_the_unit() {
    let ran = run(&[&DILUTE[..], &["--json"]].concat());
    let document: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    let water = &document["sum"]["results"][0];
    assert_eq!(water["what"]["text"], "water to add");
    let amount = &water["value"]["known"]["amount"];
    assert!((amount[0].as_f64().unwrap() - 324.165).abs() < 0.001);
    assert_eq!(amount[1], "ml");
}

#[test]
fn a_sum_that_cannot_be_done_says_why_and_ends_with_one() {
    let ran = run(&["sums", "dilute", "--from", "40 % vol", "--to", "60 % vol", "--volume", "1 l"]);
    assert_eq!(ran.code, Some(1));
    assert!(ran.out.contains("Open question") && ran.out.contains("cannot be let down"));
    let spoon = run(&["sums", "measure", "1 cup"]);
    assert_eq!(spoon.code, Some(1));
    assert!(spoon.out.contains("Whose spoons and cups"), "{}", spoon.out);
}

#[test]
fn every_fault_of_a_sum_is_told_at_once() {
    let ran = run(&["sums", "dilute", "--from", "96 %", "--to", "60 g", "--volume", "0 ml"]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.out.is_empty());
    assert_eq!(ran.err.matches("To mend it: ").count(), 3, "{}", ran.err);
}

/// An ephemeris gives 3:42:38 and 20:20:46 in universal time; the clock of the summer is an hour
/// ahead.
#[test]
fn daylight_is_told_by_the_clock() {
    let args = ["--on", "2024-06-20", "--at", "51.4769,-0.0005", "--zone", "Europe/London"];
    let ran = run(&[&["sums", "daylight"][..], &args].concat());
    let at = |what: &str| {
        let line = ran.out.lines().find(|line| line.starts_with(what)).expect(what);
        line.split_whitespace().last().unwrap().to_owned()
    };
    assert_eq!((at("sunrise").as_str(), at("sunset").as_str()), ("04:43", "21:21"));
}

/// A temperature below zero is a value and no option.
#[test]
fn frost_can_be_written_as_it_is() {
    let ran = run(&["sums", "degree-days", "--day", "-4 to 9 °C", "--base", "-1 °C"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let ran = run(&["sums", "alcohol", "40 % vol", "--at", "-5 °C"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
}
