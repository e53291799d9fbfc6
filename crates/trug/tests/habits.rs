//! Measures and dates of the reader, as they are named on the command line.
#![expect(clippy::expect_used, reason = "a test reports by panicking")]

mod common;

use common::run;
use std::fs;
use std::path::Path;

const TINCTURE: [&str; 10] = [
    "make",
    "dry-tincture",
    "--herb",
    "100 g",
    "--state",
    "dried",
    "--moisture",
    "10 %",
    "--spirit",
    "500 ml",
];
const US: [&str; 4] = ["--measures", "us", "--dates", "month-day-year"];

#[test]
fn the_measures_of_the_reader_stand_beside_the_metric_ones() {
    let metric = run(&TINCTURE).out;
    assert!(metric.contains("100\u{a0}g") && !metric.contains("\u{a0}oz)"), "{metric}");
    let us = run(&[&TINCTURE[..], &US].concat()).out;
    assert!(us.contains("100\u{a0}g (3.5\u{a0}oz)"), "{us}");
    assert_eq!(run(&[&TINCTURE[..], &["--measures", "metric"]].concat()).out, metric);
}

#[test]
fn json_is_the_same_for_every_reader() {
    let json = [&TINCTURE[..], &["--json"]].concat();
    assert_eq!(run(&[&json[..], &US].concat()).out, run(&json).out);
}

/// The cards are cut to one side: a second figure must not push a line off it.
#[test]
fn pages_for_a_reader_in_the_us_are_all_written() {
    let out = Path::new(env!("CARGO_TARGET_TMPDIR")).join("habits");
    let _ = fs::remove_dir_all(&out);
    let plan = ["plan", "demo/spring-day.toml", "--out", out.to_str().unwrap()];
    let ran = run(&[&plan[..], &US].concat());
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let page = fs::read_to_string(out.join("run-sheet.html")).unwrap();
    assert!(page.contains("\u{a0}oz)") && page.contains("May\u{a0}1, 2027"), "{page}");
}
