//! What holds for every command: help, exit codes, JSON, pipes, letters.
#![expect(clippy::unwrap_used, reason = "a test reports by panicking")]
#![expect(clippy::expect_used, reason = "a test reports by panicking")]

mod common;

use common::{run, trug};
use std::io::Read as _;
use std::process::Stdio;

/// Every command that prints a result.
const COMMANDS: &[&[&str]] = &[
    &[],
    &["plan"],
    &["name"],
    &["look"],
    &["compare"],
    &["key"],
    &["sort"],
    &["allowance"],
    &["make"],
    &["serving"],
    &["label"],
    &["sheet"],
    &["herbal", "list"],
    &["herbal", "show"],
    &["herbal", "check"],
    &["sums", "alcohol"],
    &["sums", "dilute"],
    &["sums", "sugar"],
    &["sums", "dry"],
    &["sums", "measure"],
    &["sums", "daylight"],
    &["sums", "walk"],
    &["sums", "degree-days"],
    &["sums", "survey"],
];

/// The arguments of the example in the help of a command, as a shell would split them.
fn example(command: &[&str]) -> Vec<String> {
    let help = run(&[command, &["--help"]].concat());
    assert_eq!(help.code, Some(0), "{command:?}: {}", help.err);
    let (_, example) = help.out.split_once("Example:\n  trug ").expect("an example");
    let mut words = vec![String::new()];
    let mut quoted = false;
    for letter in example.trim_end().chars() {
        match letter {
            '"' => quoted = !quoted,
            ' ' if !quoted => words.push(String::new()),
            letter => words.last_mut().unwrap().push(letter),
        }
    }
    words
}

#[test]
fn every_example_of_the_help_runs_and_says_all_its_words() {
    for command in COMMANDS {
        let words = example(command);
        let args: Vec<_> = words.iter().map(String::as_str).collect();
        assert!(command.iter().zip(&args).all(|(a, b)| a == b), "{command:?}: {args:?}");
        let ran = run(&args);
        assert_eq!(ran.code, Some(0), "{args:?}: {}", ran.err);
        assert!(ran.err.is_empty() && !ran.out.is_empty(), "{args:?}: {}", ran.err);
        // What the catalogue lacks shows as ⟦its-name⟧, what a message lacks as {$name}.
        assert!(!ran.out.contains(['⟦', '{']), "{args:?}: {}", ran.out);
    }
}

#[test]
fn every_command_answers_in_json_too() {
    for command in COMMANDS {
        let words = example(command);
        let args: Vec<_> = words.iter().map(String::as_str).chain(["--json"]).collect();
        let ran = run(&args);
        let document: serde_json::Value = serde_json::from_str(&ran.out).expect("JSON");
        assert_eq!(document.as_object().map(serde_json::Map::len), Some(1), "{args:?}");
        assert!(!ran.out.contains('⟦'), "{args:?}");
    }
}

#[test]
fn every_line_fits_the_width_that_was_asked_for() {
    for command in COMMANDS {
        let words = example(command);
        let args: Vec<_> = words.iter().map(String::as_str).chain(["--width", "60"]).collect();
        let ran = run(&args);
        for line in ran.out.lines() {
            assert!(line.chars().count() <= 60, "{args:?}: {line}");
        }
    }
}

#[test]
fn equal_questions_get_equal_bytes() {
    let args = ["herbal", "show", "Urtica dioica", "--json"];
    assert_eq!(run(&args).out, run(&args).out);
}

#[test]
fn no_escape_leaves_for_a_pipe() {
    for args in [&["herbal", "show", "Urtica dioica"][..], &["--help"], &["sums", "dilute"]] {
        let ran = run(args);
        assert!(!ran.out.contains('\u{1b}') && !ran.err.contains('\u{1b}'), "{args:?}");
    }
}

#[test]
fn usage_that_cannot_be_read_is_told_on_the_error_stream_alone() {
    for args in [
        &["sums"][..],
        &["herbal", "burn"],
        &["sums", "dilute", "--from", "parsecs", "--to", "60 % vol", "--volume", "1 l"],
        &["sums", "daylight", "--on", "2026-13-01", "--at", "53,-6", "--zone", "Europe/Dublin"],
        &["sums", "walk", "uphill"],
        &["--width", "3", "herbal", "list"],
    ] {
        let ran = run(args);
        assert_eq!(ran.code, Some(2), "{args:?}");
        assert!(ran.out.is_empty() && !ran.err.is_empty(), "{args:?}");
    }
}

/// The herbal's list is longer than a pipe holds at once, so that writing meets the closed end.
#[test]
fn whoever_closes_the_pipe_has_seen_enough() {
    let mut child = trug()
        .args(["herbal", "check", "--json"])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    let mut said = String::new();
    child.stderr.take().unwrap().read_to_string(&mut said).unwrap();
    assert_eq!((child.wait().unwrap().code(), said.as_str()), (Some(0), ""));
}
