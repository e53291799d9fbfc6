//! What comes after an outing: what is due when, of what was planned and of what was made.

mod kit;

use desk::{About, Act, Due, InputFile, Plan};
use jiff::civil::{Date, date};
use kit::*;

fn planned(change: impl Fn(&str) -> String) -> Plan {
    let change = |file: InputFile| InputFile { text: change(&file.text), ..file };
    plan(&world(), demo(AUTUMN_EVENING).into_iter().map(change).collect(), false)
}

fn of<'a>(plan: &'a Plan, make: &str) -> Vec<&'a Due> {
    plan.due.iter().filter(|due| due.make == make).collect()
}

/// Acts with the first and the last day for them.
fn days(due: &[&Due]) -> Vec<(Act, Date, Option<Date>)> {
    due.iter().map(|due| (due.act, due.on, due.until)).collect()
}

/// Six to eight weeks after 2 October 2027 lie 13 and 27 November; 1095 days after the first of these,
/// with the leap day of 2028 among them, 12 November 2030; 28 days after the outing, 30 October.
#[test]
fn what_draws_for_weeks_is_pressed_on_a_day_and_discarded_on_another() {
    let plan = planned(str::to_owned);
    let tincture = of(&plan, "haw-tincture");
    let november = |day| date(2027, 11, day);
    let want = [
        (Act::Press, november(13), Some(november(27))),
        (Act::HandOut, november(27), None),
        (Act::Discard, date(2030, 11, 12), None),
    ];
    assert_eq!(days(&tincture), want);
    assert!(tincture.iter().all(|due| due.batch.is_none()));
    let syrup = of(&plan, "elder-syrup");
    assert_eq!(days(&syrup), [(Act::Discard, date(2027, 10, 30), None)]);
    let sorted = plan.due.windows(2).all(|two| two[0] <= two[1]);
    assert!(sorted, "{:?}", plan.due);
}

#[test]
fn what_nobody_may_have_and_nobody_made_has_no_later() {
    assert!(of(&planned(str::to_owned), "elder-tincture").is_empty());
    let day = plan(&world(), demo(AUTUMN_DAY), false);
    assert!(of(&day, "elder-tincture").is_empty());
}

#[test]
fn what_was_made_counts_from_when_it_was_made() {
    let made = |at: &str| {
        let from = "make = \"haw-tincture\"\nlots = [\"haw-1002\"]\nat = 2027-10-02T14:50:00";
        let change = |file: InputFile| {
            let text = file.text.replace(from, &from.replace("2027-10-02T14:50:00", at));
            InputFile { text, ..file }
        };
        plan(&world(), demo(AUTUMN_DAY).into_iter().map(change).collect(), false)
    };
    let today = made("2027-10-02T14:50:00");
    let press = of(&today, "haw-tincture")[0];
    assert_eq!(press.batch.as_deref(), Some("haw-jar"));
    assert_eq!((press.act, press.on), (Act::Press, date(2027, 11, 13)));
    let later = made("2027-10-05T09:00:00");
    assert_eq!(of(&later, "haw-tincture")[0].on, date(2027, 11, 16));
}

#[test]
fn what_is_wanted_before_it_can_be_ready_is_an_open_question() {
    let early = |plan: &Plan| {
        let asked = |question: &&desk::OpenQuestion| question.why.id == "plan-make-too-early";
        plan.questions.iter().find(asked).map(|question| (question.about, question.of.clone()))
    };
    assert_eq!(early(&planned(str::to_owned)), None);
    let sooner = planned(|text| text.replace("on = 2027-11-27", "on = 2027-11-12"));
    assert_eq!(early(&sooner), Some((About::Make, "haw-tincture".to_owned())));
    let on_the_day = planned(|text| text.replace("on = 2027-11-27", "on = 2027-11-13"));
    assert_eq!(early(&on_the_day), None);
}

/// In October London keeps summer time, an hour ahead of universal time; from the last Sunday of
/// October 2027, the 31st, it does not (Summer Time Order 2002).
#[test]
fn moments_are_those_of_the_zone_on_that_day() {
    let instants = |day: &str| {
        let moved = planned(|text| text.replace("date = 2027-10-02", &format!("date = {day}")));
        let instants = moved.head.instants.unwrap();
        [instants.from, instants.to].map(|at| at.to_string())
    };
    assert_eq!(instants("2027-10-02"), ["2027-10-02T09:00:00Z", "2027-10-02T15:00:00Z"]);
    assert_eq!(instants("2027-11-06"), ["2027-11-06T10:00:00Z", "2027-11-06T16:00:00Z"]);
}
