//! The dates of a plan as a calendar file: iCalendar, RFC 5545 (2009).
//!
//! It holds the outing and what comes after it, and nobody who comes: a calendar is shared more
//! lightly than a page. Written by hand, since the identifiers and stamps of a pure crate come from
//! what it is given.

use crate::views::act;
use crate::{Habits, Words};
use desk::{Act, Due, Plan};
use ground::{ContentId, Text};
use jiff::Timestamp;
use jiff::civil::{Date, DateTime, Time};
use jiff::tz::TimeZone;
use std::collections::BTreeMap;

/// Whom the file names as its maker (RFC 5545, 3.7.3).
const MAKER: &str = "-//trug//dates of an outing//EN";

/// The most octets of a line, its end not counted (RFC 5545, 3.1).
const MOST_OCTETS: usize = 75;

/// The outing and every date after it as a calendar file. Equal plans give equal bytes.
///
/// Times are in universal time, so that no rule of a time zone has to stand in the file; dates are
/// whole days.
#[must_use]
pub fn calendar(plan: &Plan, words: &Words<'_>) -> String {
    let stamp = stamp(plan);
    // Programs read it, too: it hangs on nobody's habits.
    let catalogue = words.catalogue.with_habits(Habits::default());
    let words = &Words { catalogue: &catalogue, ..*words };
    let events = std::iter::once(outing(plan, words)).chain(dues(plan, words));
    let mut lines = vec![
        "BEGIN:VCALENDAR".to_owned(),
        "VERSION:2.0".to_owned(),
        format!("PRODID:{MAKER}"),
        "CALSCALE:GREGORIAN".to_owned(),
    ];
    lines.extend(events.flat_map(|event| event.lines(&stamp)));
    lines.push("END:VCALENDAR".to_owned());
    lines.iter().map(|line| fold(line) + "\r\n").collect()
}

/// One event.
struct Event {
    /// What stays the same of it when the plan is worked out anew.
    identity: Vec<String>,
    when: When,
    summary: String,
    place: Option<String>,
    description: String,
}

/// When an event is.
enum When {
    /// Between two moments.
    Moments(Timestamp, Timestamp),
    /// From one day to another, both included.
    Days(Date, Date),
}

impl Event {
    fn lines(&self, stamp: &str) -> Vec<String> {
        let mut lines = vec![
            "BEGIN:VEVENT".to_owned(),
            format!("UID:{}", identifier(&self.identity)),
            format!("DTSTAMP:{stamp}"),
        ];
        lines.extend(self.when.lines());
        lines.push(format!("SUMMARY:{}", escape(&self.summary)));
        lines.extend(self.place.iter().map(|place| format!("LOCATION:{}", escape(place))));
        if !self.description.is_empty() {
            lines.push(format!("DESCRIPTION:{}", escape(&self.description)));
        }
        lines.push("END:VEVENT".to_owned());
        lines
    }
}

impl When {
    fn lines(&self) -> Vec<String> {
        match self {
            Self::Moments(from, to) => {
                // Where the clock is put forward within the outing, its end may come before its
                // beginning; an event must not.
                let end = (to > from).then(|| format!("DTEND:{}", moment(*to)));
                std::iter::once(format!("DTSTART:{}", moment(*from))).chain(end).collect()
            }
            Self::Days(first, last) => {
                let end = last.tomorrow().ok();
                let end = end.map(|end| format!("DTEND;VALUE=DATE:{}", day(end)));
                let start = format!("DTSTART;VALUE=DATE:{}", day(*first));
                // A day of looking after a jar leaves the day free.
                let free = "TRANSP:TRANSPARENT".to_owned();
                std::iter::once(start).chain(end).chain([free]).collect()
            }
        }
    }
}

fn outing(plan: &Plan, words: &Words<'_>) -> Event {
    let head = &plan.head;
    let when = match head.instants {
        Some(instants) => When::Moments(instants.from, instants.to),
        None => When::Days(head.date, head.date),
    };
    let stops: Vec<_> =
        plan.timetable.rows.iter().map(|row| words.catalogue.name(&row.called)).collect();
    let said = Text::new("calendar-stops").with("stops", words.catalogue.list(&stops));
    Event {
        identity: identity(plan, &["outing"]),
        when,
        summary: words.catalogue.name(&head.name),
        place: stops.first().cloned(),
        description: if stops.is_empty() { String::new() } else { words.catalogue.say(&said) },
    }
}

/// What comes later. A second batch of a wish is told from the first by its place among them, so that
/// what was planned keeps its identity once it is made.
fn dues<'a>(plan: &'a Plan, words: &'a Words<'_>) -> impl Iterator<Item = Event> + 'a {
    let mut seen: BTreeMap<(&str, Act), usize> = BTreeMap::new();
    plan.due.iter().map(move |due| {
        let count = seen.entry((&due.make, due.act)).or_default();
        *count += 1;
        later(plan, due, *count, words)
    })
}

fn later(plan: &Plan, due: &Due, count: usize, words: &Words<'_>) -> Event {
    let act = act(due.act);
    let summary =
        Text::new("calendar-due").with("make", due.called.as_str()).with("act", Text::new(act));
    let batch = match &due.batch {
        Some(batch) => Text::new("calendar-batch").with("batch", batch.as_str()),
        None => Text::new("calendar-not-made"),
    };
    let until = due.until.map(|until| Text::new("calendar-until").with("until", until));
    let said: Vec<_> = until.iter().chain([&batch]).map(|text| words.catalogue.say(text)).collect();
    Event {
        identity: identity(plan, &[&due.make, act, &count.to_string()]),
        when: When::Days(due.on, due.until.unwrap_or(due.on)),
        summary: words.catalogue.say(&summary),
        place: None,
        description: said.join("\n"),
    }
}

fn identity(plan: &Plan, of: &[&str]) -> Vec<String> {
    let outing = [plan.head.name.clone(), plan.head.date.to_string()];
    outing.into_iter().chain(of.iter().map(|part| (*part).to_owned())).collect()
}

/// A name that no other event has, and that this one keeps.
fn identifier(identity: &[String]) -> String {
    // No part can hold the character that parts them: it is a control character.
    format!("{}@trug", ContentId::of(identity.join("\u{1f}").as_bytes()))
}

/// The moment that the plan was worked out for.
fn stamp(plan: &Plan) -> String {
    match plan.head.instants {
        Some(instants) => moment(instants.as_of),
        None => form_two(plan.head.as_of),
    }
}

/// A moment as a date with universal time (RFC 5545, 3.3.5, form 2).
fn moment(at: Timestamp) -> String {
    form_two(TimeZone::UTC.to_datetime(at))
}

fn form_two(at: DateTime) -> String {
    format!("{}T{}Z", day(at.date()), clock(at.time()))
}

/// A day (RFC 5545, 3.3.4).
fn day(date: Date) -> String {
    format!("{:04}{:02}{:02}", date.year(), date.month(), date.day())
}

fn clock(time: Time) -> String {
    format!("{:02}{:02}{:02}", time.hour(), time.minute(), time.second())
}

/// Text, in which four characters mean something else than themselves (RFC 5545, 3.3.11).
fn escape(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for character in text.chars() {
        match character {
            '\\' | ';' | ',' => escaped.extend(['\\', character]),
            '\n' => escaped.push_str("\\n"),
            c if c.is_control() => {}
            c => escaped.push(c),
        }
    }
    escaped
}

/// A line in pieces of at most [`MOST_OCTETS`], each after the first begun with a space (RFC 5545,
/// 3.1). No character is split.
fn fold(line: &str) -> String {
    let mut folded = String::with_capacity(line.len());
    let mut octets = 0;
    for character in line.chars() {
        if octets + character.len_utf8() > MOST_OCTETS {
            folded.push_str("\r\n ");
            octets = 1;
        }
        folded.push(character);
        octets += character.len_utf8();
    }
    folded
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// A line without the folds of a reader's copy (RFC 5545, 3.1).
    fn unfold(folded: &str) -> String {
        folded.replace("\r\n ", "")
    }

    /// Text as its reader has it back (RFC 5545, 3.3.11).
    fn unescape(text: &str) -> String {
        let mut plain = String::new();
        let mut characters = text.chars();
        while let Some(character) = characters.next() {
            match character {
                '\\' => match characters.next() {
                    Some('n' | 'N') => plain.push('\n'),
                    Some(other) => plain.push(other),
                    None => {}
                },
                other => plain.push(other),
            }
        }
        plain
    }

    /// Written characters of one to four octets; no line of a calendar holds a control character.
    fn line() -> impl Strategy<Value = String> {
        let ascii = proptest::char::range(' ', '~');
        let any = any::<char>().prop_filter("a control character", |c| !c.is_control());
        let wide = proptest::sample::select(vec!['é', '€', '字', '😀']);
        let all = proptest::collection::vec(prop_oneof![ascii, any, wide], 0..300);
        all.prop_map(String::from_iter)
    }

    proptest! {
        #[test]
        fn a_folded_line_is_short_and_unfolds_to_itself(line in line()) {
            let folded = fold(&line);
            prop_assert_eq!(unfold(&folded), line);
            for piece in folded.split("\r\n") {
                prop_assert!(piece.len() <= MOST_OCTETS);
            }
        }

        #[test]
        fn a_line_is_folded_no_more_than_it_must(line in line()) {
            let folded = fold(&line);
            let pieces: Vec<_> = folded.split("\r\n").collect();
            for two in pieces.windows(2) {
                let next = two[1].chars().nth(1).unwrap();
                prop_assert!(two[0].len() + next.len_utf8() > MOST_OCTETS);
            }
        }

        #[test]
        fn escaped_text_comes_back_and_ends_no_line(text in "[ -~é\\\\;,\n]{0,120}") {
            let escaped = escape(&text);
            prop_assert!(!escaped.contains(['\n', '\r']));
            prop_assert_eq!(unescape(&escaped), text);
        }
    }

    /// RFC 5545, 3.3.11, the example of that section.
    #[test]
    fn text_is_escaped_as_in_the_standard() {
        let said = "Project XYZ Final Review\nConference Room - 3B\nCome Prepared.";
        let written = "Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.";
        assert_eq!(escape(said), written);
        assert_eq!(escape("a;b,c\\d\u{7}"), "a\\;b\\,c\\\\d");
    }

    /// RFC 5545, 3.3.4 and 3.3.5: the forms of a day and of a moment in universal time.
    #[test]
    fn days_and_moments_have_the_forms_of_the_standard() {
        assert_eq!(day(jiff::civil::date(1997, 7, 14)), "19970714");
        let noon: Timestamp = "1998-01-19T07:00:00Z".parse().unwrap();
        assert_eq!(moment(noon), "19980119T070000Z");
    }

    #[test]
    fn an_end_that_is_no_end_is_left_out() {
        let [early, late]: [Timestamp; 2] =
            ["2027-03-28T01:10:00Z", "2027-03-28T01:30:00Z"].map(|at| at.parse().unwrap());
        assert_eq!(When::Moments(late, early).lines(), ["DTSTART:20270328T013000Z"]);
        assert_eq!(When::Moments(early, late).lines().len(), 2);
    }
}
