//! The calendar file of the autumn outing: its events, and what never stands in it.

use crate::kit::{self, AUTUMN_DAY, AUTUMN_EVENING, AUTUMN_HEALTH};
use desk::device::Reply;
use desk::{InputFile, Plan, World};
use ground::Condition;
use page::{calendar, view};
use std::sync::LazyLock;

static WORLD: LazyLock<World> =
    LazyLock::new(|| kit::world(jiff::civil::date(2027, 10, 1).at(19, 0, 0, 0)));

fn plan(files: Vec<InputFile>) -> Plan {
    kit::plan(&WORLD, files, true)
}

fn evening() -> Plan {
    plan(kit::demo(AUTUMN_EVENING))
}

fn day() -> Plan {
    plan(kit::demo(AUTUMN_DAY))
}

/// The plan of the evening, with something called otherwise.
fn renamed(called: &str, otherwise: &str) -> Plan {
    plan(kit::changed(AUTUMN_EVENING, AUTUMN_EVENING, |said| said.replace(called, otherwise)))
}

fn dates(plan: &Plan) -> String {
    calendar(plan, &kit::words())
}

/// A calendar without its folds, line by line.
fn lines(dates: &str) -> Vec<String> {
    dates.replace("\r\n ", "").split_terminator("\r\n").map(str::to_owned).collect()
}

#[test]
fn the_outing_and_what_comes_after_it() {
    insta::assert_snapshot!(lines(&dates(&day())).join("\n"));
}

#[test]
fn every_line_ends_as_the_standard_says_and_none_is_too_long() {
    let dates = dates(&renamed("Tile Lane", &"Längs der Mühle, ".repeat(30)));
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
    let (evening, day) = (evening(), day());
    assert_eq!(identities(&evening), identities(&day));
    let mut all = identities(&day);
    assert_eq!(all.len(), 1 + day.due.len());
    all.sort();
    all.dedup();
    assert_eq!(all.len(), 1 + day.due.len(), "two events share an identity");
}

#[test]
fn a_calendar_names_nobody_who_comes_and_nothing_of_health() {
    let plan = day();
    let dates = lines(&dates(&plan)).join("\n");
    for (short, called) in &plan.people {
        assert!(!dates.contains(short) && !dates.contains(called), "{called}");
    }
    for condition in Condition::ALL.iter().filter(|c| **c != Condition::All) {
        let asked = kit::words().word(&format!("condition-{}", condition.word()));
        assert!(!dates.contains(&asked), "{asked}");
    }
    let less = |said: &str| said.replace("\"yes\"", "\"rather-not\"");
    let less = self::plan(kit::changed(AUTUMN_DAY, AUTUMN_HEALTH, less));
    assert_eq!(dates, lines(&self::dates(&less)).join("\n"));
}

#[test]
fn a_name_cannot_end_a_line_of_the_calendar() {
    let name = "Evil\\nEND:VEVENT\\nBEGIN:VALARM; a, b \\\\ \u{202E}c";
    let plan = renamed("Autumn berries in the Velmer valley", name);
    let lines = lines(&dates(&plan));
    let starts = lines.iter().filter(|line| line.starts_with("BEGIN:VEVENT")).count();
    assert_eq!(starts, 1 + plan.due.len());
    assert!(!lines.iter().any(|line| line.starts_with("BEGIN:VALARM")));
    let summary = lines.iter().find(|line| line.starts_with("SUMMARY:Evil")).unwrap();
    assert_eq!(summary, "SUMMARY:Evil END:VEVENT BEGIN:VALARM\\; a\\, b \\\\ c");
}

/// The plan of the day on a terminal, without reasons.
fn on_the_day() -> String {
    let plan = Plan { sealed: None, ..day() };
    kit::said(&view(&Reply::Plan(Box::new(plan)), &kit::words()), Some(80))
}

#[test]
fn the_plan_says_what_comes_later() {
    let said = on_the_day();
    let (_, later) = said.split_once("What comes later\n").unwrap();
    let (later, _) = later.split_once("Sources\n").unwrap();
    insta::assert_snapshot!(later.trim_end());
}

#[test]
fn the_plan_of_the_day_says_what_is_still_open() {
    let said = on_the_day();
    let (open, _) = said.split_once("The plants, and how to be sure").unwrap();
    let (_, handed) = said.split_once("What may be handed to whom\n").unwrap();
    let (handed, _) = handed.split_once("The day in order\n").unwrap();
    insta::assert_snapshot!(format!("{}\n…\n{}", open.trim_end(), handed.trim_end()));
}
