//! The calendar file beside the pages.
#![expect(clippy::expect_used, reason = "a test reports by panicking")]

mod common;

use common::run;
use std::fs;
use std::path::Path;

#[test]
fn the_pages_of_a_plan_come_with_its_dates() {
    let out = Path::new(env!("CARGO_TARGET_TMPDIR")).join("dates");
    let _ = fs::remove_dir_all(&out);
    // Twice: a folder with such a file in it is one of ours.
    for _ in 0..2 {
        let ran = run(&["plan", "demo/autumn-day.toml", "--out", out.to_str().unwrap()]);
        assert_eq!(ran.code, Some(0), "{}", ran.err);
        assert!(ran.out.contains("What comes later"), "{}", ran.out);
    }
    let dates = fs::read_to_string(out.join("dates.ics")).unwrap();
    assert!(dates.starts_with("BEGIN:VCALENDAR\r\nVERSION:2.0\r\n"), "{dates}");
    assert!(dates.contains("DTSTART:20271002T090000Z\r\n"), "{dates}");
    assert!(dates.contains("DTSTART;VALUE=DATE:20271113\r\n"), "{dates}");
}
