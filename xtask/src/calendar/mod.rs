//! Calendar files read by a library that shares no line with ours.
//!
//! The dates of the demo, and of an outing that the clock changes in, are parsed, written anew by the
//! library and parsed again. What it read is held against what the outing file says.

use crate::house::{House, Outcome, read, say};
use crate::{demo, tools};
use std::fs;
use std::path::Path;

/// The calendar file beside the pages of a plan.
const DATES: &str = "dates.ics";

/// A night in which the clock is put back, in this folder.
const CLOCK_CHANGE: &str = "xtask/src/calendar/clock-change.toml";

/// What the library must read of a calendar.
struct Wanted {
    /// Where the pages go.
    folder: &'static str,
    outing: &'static str,
    /// Beginning, end and summary of some of its events.
    lines: &'static [&'static str],
}

/// Six weeks after 2 October 2027 is 13 November, and eight 27 November, whose end is the day after.
/// On 31 October 2027 clocks in London go back at 1:00 universal time (Summer Time Order 2002): from
/// 0:30 in summer time to 4:00 in winter time is four and a half hours.
const WANTED: [Wanted; 3] = [
    Wanted {
        folder: "autumn-evening",
        outing: "demo/autumn-evening.toml",
        lines: &[
            "2027-10-02T09:00:00+00:00\t2027-10-02T15:00:00+00:00\tAutumn berries in the Velmer valley",
            "2027-11-13\t2027-11-28\tHawthorn berry tincture: press it out",
            "2027-10-30\t2027-10-31\tBoiled elderberry syrup: discard what is left",
        ],
    },
    Wanted {
        folder: "autumn-day",
        outing: "demo/autumn-day.toml",
        lines: &["2030-11-12\t2030-11-13\tHawthorn berry tincture: discard what is left"],
    },
    Wanted {
        folder: "clock-change",
        outing: CLOCK_CHANGE,
        lines: &[
            "2027-10-30T23:30:00+00:00\t2027-10-31T04:00:00+00:00\tOwls, moths; roots, and \\ the \
             night in which the clock goes back: Eulen und Falter über der Mühle 🦉🦋",
        ],
    },
];

/// Fails where the library reads anything else than was meant.
pub(crate) fn check(house: &House) -> Outcome {
    let python = tools::python_with_icalendar(house)?;
    let trug = demo::build(house)?;
    let folder = house.fresh("calendar")?;
    prove(house, &python, &folder)?;
    for wanted in &WANTED {
        let pages = folder.join(wanted.folder);
        read(house.command(&trug).args(["plan", wanted.outing, "--out"]).arg(&pages))?;
        check_one(house, &python, &pages.join(DATES), wanted)?;
    }
    Ok(())
}

/// A calendar with a fault: its event ends before it begins.
const PLANTED: &str = "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//made up//EN\r\n\
    BEGIN:VEVENT\r\nUID:1\r\nDTSTAMP:20271002T090000Z\r\nDTSTART:20271002T090000Z\r\n\
    DTEND:20271002T080000Z\r\nSUMMARY:made up\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n";

/// The check must refuse what is wrong, and nothing else of it, before its silence means anything.
fn prove(house: &House, python: &Path, folder: &Path) -> Outcome {
    let dates = folder.join("planted.ics");
    let mended = PLANTED.replace("T080000Z", "T100000Z");
    fs::write(&dates, mended)?;
    events(house, python, &dates)?;
    fs::write(&dates, PLANTED)?;
    match events(house, python, &dates) {
        Err(_) => Ok(()),
        Ok(_) => Err("the check overlooked a planted fault".into()),
    }
}

fn events(house: &House, python: &Path, dates: &Path) -> Outcome<String> {
    let script = house.root.join("xtask/src/calendar/events.py");
    read(house.command(python).arg(script).arg(dates))
}

fn check_one(house: &House, python: &Path, dates: &Path, wanted: &Wanted) -> Outcome {
    let events = events(house, python, dates)?;
    let found: Vec<_> = events.lines().collect();
    let text = fs::read_to_string(dates)?;
    let written = text.matches("BEGIN:VEVENT\r\n").count();
    if found.len() != written || written == 0 {
        return Err(format!("{written} events were written and {} read", found.len()).into());
    }
    match wanted.lines.iter().find(|line| !found.contains(line)) {
        Some(missing) => Err(format!("no event reads\n{missing}\nbut\n{events}").into()),
        None => {
            say(format_args!("{}: {written} events as meant", house.short(dates)));
            Ok(())
        }
    }
}
