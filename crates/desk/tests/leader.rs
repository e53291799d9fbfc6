//! The leader's day: when to turn back, whom to call, and what is asked where nobody said.
#![expect(clippy::unwrap_used, reason = "a panic is how a test reports")]

mod kit;

use desk::{About, InputFile, NumberStanding, Plan, Trouble};
use ground::Answer;
use jiff::civil::{date, time};
use kit::{EVENING, demo, faults, plan, world};

/// The evening's files with the first one put through a change.
fn evening(change: impl Fn(&str) -> String) -> Vec<InputFile> {
    let mut files = demo(EVENING);
    let first = files.iter_mut().find(|file| file.name == EVENING).unwrap();
    let changed = change(&first.text);
    assert_ne!(changed, first.text, "nothing was changed");
    first.text = changed;
    files
}

fn planned(change: impl Fn(&str) -> String) -> Plan {
    plan(&world(), evening(change), false)
}

fn leave_by(plan: &Plan) -> Vec<Option<jiff::civil::Time>> {
    plan.timetable.rows.iter().map(|row| row.leave_by.known().copied()).collect()
}

fn asked(plan: &Plan, about: About) -> Vec<&str> {
    let of = plan.questions.iter().filter(|question| question.about == about);
    of.map(|question| question.why.id.as_str()).collect()
}

/// Worked by hand, at 2.5 km in an hour, back by 15:30. Mill Wood, the way it came: 600 m take 14.4
/// minutes, so 15. Weir Meadow: 900 m take 21.6 minutes and 5 m up half a minute more, so 23.
#[test]
fn the_last_moment_to_leave_is_that_of_the_hand() {
    let plan = plan(&world(), demo(EVENING), false);
    assert_eq!(leave_by(&plan), [Some(time(15, 15, 0, 0)), Some(time(15, 7, 0, 0))]);
    assert!(plan.timetable.rows.iter().all(|row| row.trouble.is_none()));
    assert!(!plan.timetable.back_by.unwrap().before_sunset);
}

/// Onward from Mill Wood: 1.1 km (26.4 min), 30 m up (3 min), and the 22.1 min back: 51.5, so 52.
#[test]
fn onward_is_timed_through_the_stops_that_are_left() {
    let plan = planned(|said| said.replace("\"same-way\"", "\"onward\""));
    assert_eq!(leave_by(&plan), [Some(time(14, 38, 0, 0)), Some(time(15, 7, 0, 0))]);
}

/// Back the way it came from Weir Meadow: 1.7 km take 40.8 minutes, and the 30 m that were climbed
/// take 3 going down.
#[test]
fn a_way_down_takes_as_long_as_the_way_up() {
    let plan = planned(|said| said.replace("walk = \"900 m\"\nclimb = \"5 m\"\n", ""));
    assert_eq!(leave_by(&plan)[1], Some(time(14, 46, 0, 0)));
}

/// Sunset is at 20:36 that day: an outing to 22:00 is back an hour before it.
#[test]
fn the_light_says_when_to_be_back_where_it_goes_first() {
    let plan = planned(|said| said.replace("to = \"15:30\"", "to = \"22:00\""));
    let back = plan.timetable.back_by.unwrap();
    assert!(back.before_sunset);
    let hour = (back.at.hour(), back.at.minute());
    assert_eq!(hour, (19, 36));
    let far_north = |said: &str| {
        said.replace("latitude = 52.31 ", "latitude = 78.2 ").replace("2027-05-01", "2027-12-21")
    };
    let dark = planned(far_north);
    assert_eq!(dark.timetable.back_by, None);
    assert_eq!(leave_by(&dark), [None, None]);
    assert_eq!(asked(&dark, About::WayBack), ["plan-no-daylight"]);
}

#[test]
fn without_a_way_back_it_is_not_known_when_to_turn() {
    let plan = planned(|said| {
        let (before, rest) = said.split_once("[way-back]").unwrap();
        let (_, after) = rest.split_once("# What the emergency card says").unwrap();
        format!("{before}#{after}")
    });
    assert_eq!(leave_by(&plan), [None, None]);
    assert_eq!(asked(&plan, About::WayBack), ["plan-no-way-back", "plan-no-way-back"]);
    // How to turn early is not said: only from the last stop is it known.
    let plan = planned(|said| said.replace("early = \"same-way\"\n", ""));
    assert_eq!(leave_by(&plan), [None, Some(time(15, 7, 0, 0))]);
    // A leg that nobody measured.
    let plan = planned(|said| said.replace("walk = \"600 m\"\n", ""));
    assert!(matches!(plan.timetable.rows[0].leave_by, Answer::Refused(_)));
}

#[test]
fn a_stop_that_lasts_past_the_last_moment_is_told() {
    let plan = planned(|said| said.replace("lasts = \"60 min\"", "lasts = \"170 min\""));
    assert_eq!(plan.timetable.rows[1].trouble, Some(Trouble::TooLateToTurnBack));
}

#[test]
fn a_number_that_was_looked_up_long_ago_is_looked_up_again() {
    let standings = |plan: &Plan| {
        plan.emergency.numbers.iter().map(|number| number.standing).collect::<Vec<_>>()
    };
    let usual = plan(&world(), demo(EVENING), false);
    use NumberStanding::{LookedUp, Missing, Old, Unsourced};
    assert_eq!(standings(&usual), [LookedUp, Old, LookedUp]);
    assert_eq!(asked(&usual, About::Emergency), ["plan-number-old"]);
    // 365 days before the first of May 2027, and a day more.
    let on = |day: &str| planned(|said| said.replace("2025-03-02", day));
    assert_eq!(standings(&on("2026-05-01"))[1], LookedUp);
    assert_eq!(standings(&on("2026-04-30"))[1], Old);
    // After the outing, or from nowhere: nobody looked it up.
    assert_eq!(standings(&on("2027-05-02"))[1], Unsourced);
    let plan = planned(|said| said.replace("source = \"National", "source = \" \" # \"National"));
    assert_eq!(standings(&plan)[1], Unsourced);
    let plan = planned(|said| said.replace("\"poison-information\"", "\"other\""));
    assert_eq!(standings(&plan)[1], Missing);
    assert!(asked(&plan, About::Emergency).contains(&"plan-number-missing"));
}

#[test]
fn what_the_card_lacks_is_asked() {
    let plan = planned(|said| {
        let said = said.replace("first-aider = \"Tobias Quill\"\n", "");
        let said = said.replace("overdue-after = \"45 min\"\n", "");
        said.replace("grid = \"VM 318 864\"\nroad = \"Weir Road, at the ford\"\n", "")
    });
    let asked = asked(&plan, About::Emergency);
    let wanted = [
        "plan-no-first-aider",
        "plan-card-gaps",
        "plan-number-old",
        "plan-no-place",
        "plan-no-road",
    ];
    assert!(wanted.iter().all(|id| asked.contains(id)) && asked.len() == wanted.len(), "{asked:?}");
    assert_eq!(plan.emergency.alarm_at, None);
}

/// 45 minutes after 15:30.
#[test]
fn base_raises_the_alarm_when_the_group_is_overdue() {
    let plan = plan(&world(), demo(EVENING), false);
    assert_eq!(plan.emergency.alarm_at, Some(date(2027, 5, 1).at(16, 15, 0, 0)));
    let counts: Vec<_> = plan.emergency.counts.iter().map(|count| count.at).collect();
    assert_eq!(
        counts,
        [time(10, 0, 0, 0), time(10, 20, 0, 0), time(12, 30, 0, 0), time(15, 30, 0, 0)]
    );
}

/// Nothing goes home in jars: 30 days after the first of May.
#[test]
fn the_sealed_list_is_kept_for_thirty_days() {
    let plan = plan(&world(), demo(EVENING), false);
    assert_eq!(plan.keep_until.known(), Some(&date(2027, 5, 31)));
}

#[test]
fn rules_for_water_plants_are_left_out_only_where_somebody_looked() {
    let shown = |plan: &Plan| plan.rules.iter().any(|rule| rule.id == "water-plants");
    assert!(!shown(&plan(&world(), demo(EVENING), false)));
    assert!(shown(&planned(|said| said.replacen("in-water = false\n", "", 1))));
    assert!(shown(&planned(|said| said.replacen("in-water = false", "in-water = true", 1))));
}

#[test]
fn what_cannot_be_a_number_a_pace_or_a_way_is_a_fault() {
    let told = |change: &dyn Fn(&str) -> String| {
        let codes = faults(&world(), evening(change)).into_iter().map(|(.., code)| code);
        codes.collect::<Vec<_>>()
    };
    for written in ["ask Hedda", "1", "+", "", "0163 2960 1830 1830 18", "01632-960183", "1+2 34"] {
        let change = |said: &str| said.replace("01632 960183", written);
        assert_eq!(told(&change), ["no-such-phone"], "{written}");
    }
    assert_eq!(told(&|said| said.replace("\"2.5 km\"", "\"12 km\"")), ["no-such-pace"]);
    assert_eq!(told(&|said| said.replace("\"same-way\"", "\"by bus\"")), ["unknown-word"]);
    assert_eq!(told(&|said| said.replace("what = \"other\"", "what = \"vet\"")), ["unknown-word"]);
    let mut files = demo(EVENING);
    files.push(kit::file("more.toml", "[way-back]\nwalk = \"1 km\"\n"));
    let codes: Vec<_> = faults(&world(), files).into_iter().map(|(.., code)| code).collect();
    assert_eq!(codes, ["table-twice"]);
}
