//! The calendar file of the autumn outing: its events, and what never stands in it.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a test reports by panicking")]

use desk::{InputFile, Plan, Reply, Request, World, answer};
use ground::{Condition, RandomStart};
use journal::Journal;
use page::{Catalogue, Style, Words, calendar, text, view};
use std::fs;
use std::path::Path;
use std::sync::LazyLock;

static WORLD: LazyLock<World> = LazyLock::new(|| World {
    herbal: herbal_data::herbal(),
    herbal_version: "as-tested".to_owned(),
    journal: Journal::new(),
    now: jiff::civil::date(2027, 10, 1).at(19, 0, 0, 0),
    random_start: RandomStart(0),
});

const AUTUMN: [&str; 4] =
    ["autumn-day.toml", "autumn-evening.toml", "autumn-people.toml", "autumn-health.toml"];

/// The plan of the autumn outing, in the evening or on the day, with its files put through a change.
fn plan(on_the_day: bool, change: impl Fn(String) -> String) -> Plan {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo");
    let names = AUTUMN.iter().skip(usize::from(!on_the_day));
    let files = names.map(|name| {
        let said = change(fs::read_to_string(demo.join(name)).unwrap());
        InputFile::from_bytes(name, said.into_bytes()).unwrap()
    });
    let request = Request::Plan { files: files.collect(), reasons: true };
    match answer(&WORLD, request).unwrap() {
        Reply::Plan(plan) => *plan,
        other => panic!("no plan: {other:?}"),
    }
}

fn dates(plan: &Plan) -> String {
    let catalogue = Catalogue::english();
    calendar(plan, &Words::new(&catalogue).with_herbal(&WORLD.herbal))
}

/// A calendar without its folds, line by line.
fn lines(dates: &str) -> Vec<String> {
    dates.replace("\r\n ", "").split_terminator("\r\n").map(str::to_owned).collect()
}

#[test]
fn the_outing_and_what_comes_after_it() {
    insta::assert_snapshot!(lines(&dates(&plan(true, |said| said))).join("\n"));
}

#[test]
fn every_line_ends_as_the_standard_says_and_none_is_too_long() {
    let dates =
        dates(&plan(false, |said| said.replace("Tile Lane", &"Längs der Mühle, ".repeat(30))));
    assert!(dates.ends_with("END:VCALENDAR\r\n") && !dates.contains('⟦'));
    let pieces: Vec<_> = dates.split_terminator("\r\n").collect();
    assert!(pieces.iter().all(|piece| piece.len() <= 75 && !piece.contains(['\r', '\n'])));
    assert!(pieces.iter().any(|piece| piece.starts_with(' ')), "nothing was long enough to fold");
}

#[test]
fn what_is_planned_keeps_its_identity_once_it_is_made() {
    let identities = |plan: &Plan| -> Vec<String> {
        let lines = lines(&dates(plan)).into_iter();
        lines.filter(|line| line.starts_with("UID:")).collect()
    };
    let (evening, day) = (plan(false, |said| said), plan(true, |said| said));
    assert_eq!(identities(&evening), identities(&day));
    let mut all = identities(&day);
    assert_eq!(all.len(), 1 + day.due.len());
    all.sort();
    all.dedup();
    assert_eq!(all.len(), 1 + day.due.len(), "two events share an identity");
}

#[test]
fn a_calendar_names_nobody_who_comes_and_nothing_of_health() {
    let plan = plan(true, |said| said);
    let dates = lines(&dates(&plan)).join("\n");
    for (short, called) in &plan.people {
        assert!(!dates.contains(short) && !dates.contains(called), "{called}");
    }
    let catalogue = Catalogue::english();
    for condition in Condition::ALL.iter().filter(|c| **c != Condition::All) {
        let asked = catalogue.word(&format!("condition-{}", condition.word()));
        assert!(!dates.contains(&asked), "{asked}");
    }
    let health = |said: String| said.replace("\"yes\"", "\"rather-not\"");
    let less = self::plan(true, health);
    assert_eq!(dates, lines(&self::dates(&less)).join("\n"));
}

#[test]
fn a_name_cannot_end_a_line_of_the_calendar() {
    let name = "Evil\\nEND:VEVENT\\nBEGIN:VALARM; a, b \\\\ \u{202E}c";
    let plan = plan(false, |said| said.replace("Autumn berries in the Velmer valley", name));
    let lines = lines(&dates(&plan));
    let starts = lines.iter().filter(|line| line.starts_with("BEGIN:VEVENT")).count();
    assert_eq!(starts, 1 + plan.due.len());
    assert!(!lines.iter().any(|line| line.starts_with("BEGIN:VALARM")));
    let summary = lines.iter().find(|line| line.starts_with("SUMMARY:Evil")).unwrap();
    assert_eq!(summary, "SUMMARY:Evil END:VEVENT BEGIN:VALARM\\; a\\, b \\\\ c");
}

#[test]
fn the_plan_says_what_comes_later() {
    let catalogue = Catalogue::english();
    let words = Words::new(&catalogue).with_herbal(&WORLD.herbal);
    let plan = Plan { sealed: None, ..plan(true, |said| said) };
    let said = text(&view(&Reply::Plan(Box::new(plan)), &words), Some(80), Style::Plain);
    assert!(!said.contains('⟦'), "a message is missing:\n{said}");
    let (_, later) = said.split_once("What comes later\n").unwrap();
    let (later, _) = later.split_once("Sources\n").unwrap();
    insta::assert_snapshot!(later.trim_end());
}

#[test]
fn the_plan_of_the_day_says_what_is_still_open() {
    let catalogue = Catalogue::english();
    let words = Words::new(&catalogue).with_herbal(&WORLD.herbal);
    let plan = Plan { sealed: None, ..plan(true, |said| said) };
    let said = text(&view(&Reply::Plan(Box::new(plan)), &words), Some(80), Style::Plain);
    let (open, _) = said.split_once("The plants, and how to be sure").unwrap();
    let (_, handed) = said.split_once("What may be handed to whom\n").unwrap();
    let (handed, _) = handed.split_once("The day in order\n").unwrap();
    insta::assert_snapshot!(format!("{}\n…\n{}", open.trim_end(), handed.trim_end()));
}
