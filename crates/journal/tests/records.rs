//! The laws of the log: merging is union, nothing is lost to a wrong clock, and no change of a line
//! goes unseen.

#![expect(clippy::unwrap_used, clippy::indexing_slicing, reason = "a panic is how a test reports")]

use ground::{ContentId, Faults};
use journal::{Act, Log, Record, RecordId};
use proptest::prelude::*;
use serde::{Deserialize, Serialize};

const YEAR_MS: i64 = 365 * 86_400_000;
const NOON: i64 = 1_809_172_800_000; // 1 May 2027 at 12:00 UTC

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
struct Note {
    words: String,
    grams: f64,
}

fn note(words: &str) -> Act<Note> {
    Act::Say(Note { words: words.to_owned(), grams: 0.5 })
}

/// Bytes that no other call of a test gives.
fn random(turn: usize) -> [u8; 10] {
    let mut bytes = [0; 10];
    bytes[2..].copy_from_slice(&(turn as u64).to_be_bytes());
    bytes
}

fn append<P>(log: &mut Log<P>, device: &str, now_ms: i64, what: Act<P>) -> RecordId
where
    P: Serialize + serde::de::DeserializeOwned,
{
    let turn = log.len() + 1000 * usize::from(device.as_bytes()[0]);
    log.append(device, now_ms, random(turn), "maren", what).unwrap()
}

fn text<P>(log: &Log<P>) -> String {
    log.lines().map(|line| format!("{line}\n")).collect()
}

fn said(log: &Log<Note>) -> Vec<&str> {
    log.standing().into_iter().map(|(_, note)| note.words.as_str()).collect()
}

fn codes(faults: &Faults) -> Vec<(&str, Option<u32>)> {
    faults.iter().map(|fault| (fault.code.as_str(), fault.at.line)).collect()
}

/// Three notes of two devices that know of each other.
fn three() -> Log<Note> {
    let mut log = Log::new();
    append(&mut log, "tablet", NOON, note("nettles, \"the bank\""));
    append(&mut log, "phone", NOON + 7, note("ramsons – 150 g"));
    append(&mut log, "tablet", NOON + 9, note("spruce"));
    log
}

#[test]
fn a_line_is_written_like_this() {
    let mut log = Log::new();
    append(&mut log, "tablet", NOON, note("nettles"));
    let id = append(&mut log, "tablet", NOON - 5, note("ramsons"));
    append(&mut log, "tablet", NOON + 1, Act::TakeBack { of: id });
    let lines: Vec<_> = log.lines().collect();
    let record = r#"{"id":"01a53b1a-21fb-7000-8000-00000001c521","clock":{"ms":1809172800000,"count":1,"device":"tablet"},"by":"maren","before":"BEFORE","what":{"say":{"words":"ramsons","grams":0.5}}}"#
        .replace("BEFORE", ContentId::of(lines[0].as_bytes()).as_str());
    let sum = ContentId::of(record.as_bytes());
    assert_eq!(lines[1], format!(r#"{{"v":1,"sum":"{sum}","record":{record}}}"#));
    assert!(lines[2].ends_with(&format!(r#""what":{{"take-back":{{"of":"{id}"}}}}}}}}"#)));
    assert!(!lines[0].contains("before"));
}

#[test]
fn a_wall_clock_that_was_a_year_ahead_loses_nothing() {
    let mut log = Log::new();
    append(&mut log, "tablet", NOON + YEAR_MS, note("from the future"));
    append(&mut log, "phone", NOON, note("now"));
    append(&mut log, "tablet", NOON + 60_000, note("put right"));
    append(&mut log, "phone", NOON - 50 * YEAR_MS, note("battery flat"));
    assert_eq!(said(&log), ["from the future", "now", "put right", "battery flat"]);
    let moments: Vec<_> = log.iter().map(|r| (r.clock.ms - NOON, r.clock.count)).collect();
    assert_eq!(moments, [0, 1, 2, 3].map(|count| (YEAR_MS, count)));
    append(&mut log, "phone", NOON + YEAR_MS + 1, note("a year on"));
    assert_eq!(
        log.last_of("phone").map(|r| (r.clock.ms - NOON, r.clock.count)),
        Some((YEAR_MS + 1, 0))
    );
}

#[test]
fn what_is_taken_back_is_not_said_until_the_taking_back_is_taken_back() {
    let mut log = three();
    let ids: Vec<_> = log.iter().map(|record| record.id).collect();
    let back = append(&mut log, "phone", NOON, Act::TakeBack { of: ids[0] });
    assert_eq!(said(&log), ["ramsons – 150 g", "spruce"]);
    let restored = append(&mut log, "tablet", NOON, Act::TakeBack { of: back });
    assert_eq!(said(&log).len(), 3);
    append(&mut log, "tablet", NOON, Act::TakeBack { of: restored });
    assert_eq!(said(&log).len(), 2);
    assert_eq!(log.len(), 6);
}

#[test]
fn two_takings_back_are_both_to_be_undone() {
    let mut log = three();
    let first = log.iter().next().map(|record| record.id).unwrap();
    let one = append(&mut log, "phone", NOON, Act::TakeBack { of: first });
    append(&mut log, "tablet", NOON, Act::TakeBack { of: first });
    append(&mut log, "phone", NOON, Act::TakeBack { of: one });
    assert_eq!(said(&log).len(), 2);
}

#[test]
fn the_same_identifier_with_other_content_is_told_and_nothing_is_overwritten() {
    let (mut one, mut other) = (three(), Log::new());
    other.append("tablet", NOON, random(116_000), "tobias", note("thyme")).unwrap();
    append(&mut other, "laptop", NOON, note("yarrow"));
    let before = one.clone();
    let clash = one.merge(&other).unwrap_err();
    let id = one.iter().next().map(|record| record.id).unwrap();
    assert_eq!(codes(&clash), [("record-id-taken", None)]);
    assert_eq!(clash.iter().next().map(|fault| fault.got.clone()), Some(id.to_string()));
    assert_eq!(one, before);
    let read = Log::<Note>::read("both", &(text(&one) + &text(&other))).unwrap_err();
    assert_eq!(codes(&read), [("record-id-taken", Some(4))]);
    let again = one.append("phone", NOON, random(116_000), "tobias", note("thyme")).unwrap_err();
    assert_eq!(again.code, "record-id-taken");
    assert_eq!(one, before);
}

#[test]
fn what_could_not_be_read_back_is_refused_when_it_is_said() {
    let mut log = three();
    let what = Act::Say(Note { words: "weightless".to_owned(), grams: f64::NAN });
    let refused = log.append("phone", NOON, random(1), "maren", what).unwrap_err();
    assert_eq!(refused.code, "record-cannot-be-written");
    assert_eq!(log, three());
}

#[test]
fn every_broken_line_is_told_by_its_number() {
    let log = three();
    let lines: Vec<_> = log.lines().collect();
    let cut: String = lines[2].chars().take(200).collect();
    let newer = lines[1].replacen("\"v\":1", "\"v\":2", 1);
    let other = lines[1].replacen("150", "450", 1);
    let file = [lines[0], "", "stray", &newer, &other, lines[1], &cut].join("\r\n");
    let faults = Log::<Note>::read("log.jsonl", &file).unwrap_err();
    assert_eq!(
        codes(&faults),
        [
            ("unreadable-record", Some(3)),
            ("newer-record", Some(4)),
            ("changed-record", Some(5)),
            ("unreadable-record", Some(7)),
        ]
    );
    let got: Vec<_> = faults.iter().map(|fault| fault.got.as_str()).collect();
    assert_eq!((got[0], got[1]), ("stray", "2"));
    assert!(other.starts_with(got[2]) && !got[2].contains("maren"), "{}", got[2]);
    assert!(faults.iter().all(|fault| fault.at.file.as_deref() == Some("log.jsonl")));
}

#[test]
fn a_line_of_another_kind_of_log_is_not_read() {
    let read = Log::<u32>::read("log", &text(&three())).unwrap_err();
    assert_eq!(codes(&read), [1, 2, 3].map(|line| ("unreadable-record", Some(line))));
}

#[test]
fn a_text_that_is_empty_or_too_large_or_no_log_at_all_is_refused() {
    let code = |text: &str| {
        let faults = Log::<Note>::read("log", text).unwrap_err();
        (faults.iter().len(), faults.iter().next().map(|fault| fault.code.clone()).unwrap())
    };
    assert_eq!(code(""), (1, "empty-file".to_owned()));
    assert_eq!(code(" \n\n"), (1, "empty-file".to_owned()));
    assert_eq!(code(&"x".repeat(10_000_001)), (1, "file-too-large".to_owned()));
    assert_eq!(code(&"x\n".repeat(5_000_000)), (1000, "unreadable-record".to_owned()));
}

#[test]
fn a_gap_and_a_fork_are_told_and_nothing_is_dropped() {
    let mut log = three();
    append(&mut log, "tablet", NOON + 20, note("yarrow"));
    assert!(log.check().is_ok());
    let without = |gone: usize| {
        let lines = log.lines().enumerate().filter(|(at, _)| *at != gone);
        Log::<Note>::read("log", &lines.map(|(_, line)| format!("{line}\n")).collect::<String>())
    };
    for gone in [0, 2] {
        let gap = without(gone).unwrap();
        assert_eq!(codes(&gap.check().unwrap_err()), [("record-missing", None)]);
        assert_eq!(gap.len(), 3);
    }
    // The only note of the phone: no other names it.
    assert!(without(1).unwrap().check().is_ok());

    let (mut one, mut restored) = (three(), three());
    one.append("tablet", NOON + 30, random(1), "maren", note("here")).unwrap();
    restored.append("tablet", NOON + 40, random(2), "maren", note("there")).unwrap();
    one.merge(&restored).unwrap();
    let fork = one.check().unwrap_err();
    assert_eq!(codes(&fork), [("record-forked", None)]);
    assert_eq!(fork.iter().next().map(|fault| fault.got.as_str()), Some("tablet"));
    assert_eq!(one.len(), 5);
}

#[test]
fn no_flipped_bit_of_a_line_goes_unseen() {
    let log = text(&three());
    for at in 0..log.trim_end().len() {
        for bit in 0..8 {
            assert!(is_seen(&log, at, 1 << bit), "byte {at}, bit {bit}");
        }
    }
}

/// Whether a change of one byte is found.
fn is_seen(text: &str, at: usize, flip: u8) -> bool {
    let mut bytes = text.as_bytes().to_vec();
    bytes[at] ^= flip;
    let Ok(changed) = String::from_utf8(bytes) else { return true };
    Log::<Note>::read("log", &changed).is_err()
}

/// What happens to three logs.
#[derive(Clone, Debug)]
enum Event {
    /// One device says something, its wall clock being so many milliseconds off.
    Say { log: usize, off_ms: i64, words: String, grams: f64 },
    /// It takes a record back, counted from the first.
    TakeBack { log: usize, nth: usize },
    /// It hears of everything that another knows.
    Merge { from: usize, to: usize },
}

fn events() -> impl Strategy<Value = Vec<Event>> {
    let off = prop_oneof![-5_i64..5, Just(YEAR_MS), Just(-YEAR_MS), any::<i64>()];
    let grams = prop::num::f64::NORMAL | prop::num::f64::ZERO | prop::num::f64::SUBNORMAL;
    let one = prop_oneof![
        3 => (0..3_usize, off, any::<String>(), grams)
            .prop_map(|(log, off_ms, words, grams)| Event::Say { log, off_ms, words, grams }),
        1 => (0..3_usize, 0..20_usize).prop_map(|(log, nth)| Event::TakeBack { log, nth }),
        1 => (0..3_usize, 0..3_usize).prop_map(|(from, to)| Event::Merge { from, to }),
    ];
    prop::collection::vec(one, 0..24)
}

/// The three logs after all that, each written to by a device of its own; every record that is added
/// is later than all that the log held.
fn logs(events: Vec<Event>) -> [Log<Note>; 3] {
    let mut logs = [const { Log::new() }; 3];
    for (turn, event) in events.into_iter().enumerate() {
        let (log, off_ms, what) = match event {
            Event::Say { log, off_ms, words, grams } => {
                (log, off_ms, Act::Say(Note { words, grams }))
            }
            Event::TakeBack { log, nth } => match logs[log].iter().nth(nth).map(|r| r.id) {
                Some(of) => (log, 0, Act::TakeBack { of }),
                None => continue,
            },
            Event::Merge { from, to } => {
                let from = logs[from].clone();
                logs[to].merge(&from).unwrap();
                continue;
            }
        };
        let latest = logs[log].iter().next_back().map(|r| r.clock.clone());
        let now = NOON.saturating_add(10 * turn as i64).saturating_add(off_ms);
        let device = ["laptop", "phone", "tablet"][log];
        let id = logs[log].append(device, now, random(turn), "maren", what).unwrap();
        let added = logs[log].get(&id).map(|r| r.clock.clone());
        assert!(added > latest, "{added:?} is not later than {latest:?}");
        assert_eq!(logs[log].last_of(device).map(|r| r.id), Some(id));
    }
    logs
}

fn merged(logs: &[&Log<Note>]) -> Log<Note> {
    let mut all = Log::new();
    for log in logs {
        all.merge(log).unwrap();
    }
    all
}

proptest! {
    #[test]
    fn merging_is_associative_commutative_and_idempotent(events in events()) {
        let [a, b, c] = logs(events);
        let all = merged(&[&merged(&[&a, &b]), &c]);
        prop_assert_eq!(&all, &merged(&[&a, &merged(&[&b, &c])]));
        prop_assert_eq!(&all, &merged(&[&c, &b, &a]));
        prop_assert_eq!(&all, &merged(&[&all, &a, &all]));
        prop_assert!(all.check().is_ok());
    }

    #[test]
    fn the_order_of_arrival_changes_nothing(
        (log, shuffled) in events().prop_flat_map(|events| {
            let [a, b, c] = logs(events);
            let log = merged(&[&a, &b, &c]);
            let lines: Vec<_> = log.lines().map(str::to_owned).collect();
            (Just(log), Just(lines).prop_shuffle())
        }),
    ) {
        let mut other = Log::new();
        for line in shuffled {
            other.merge(&Log::read("one", &line).unwrap()).unwrap();
        }
        prop_assert_eq!(&other, &log);
        prop_assert_eq!(other.standing(), log.standing());
        prop_assert!(other.iter().zip(log.iter()).all(|(a, b)| a == b));
    }

    #[test]
    fn what_is_written_is_read_again_as_the_same(events in events()) {
        let [a, b, c] = logs(events);
        let log = merged(&[&a, &b, &c]);
        prop_assume!(!log.is_empty());
        let read = Log::read("log", &text(&log)).unwrap();
        prop_assert_eq!(&read, &log);
        prop_assert_eq!(text(&read), text(&log));
        let records: Vec<Record<Note>> = read.iter().cloned().collect();
        prop_assert!(records.is_sorted_by_key(|record| (record.clock.clone(), record.id)));
    }

    #[test]
    fn no_changed_byte_of_a_line_goes_unseen(
        events in events(),
        at in any::<prop::sample::Index>(),
        flip in 1..=u8::MAX,
    ) {
        let [a, ..] = logs(events);
        prop_assume!(!a.is_empty());
        let text = text(&a);
        prop_assert!(is_seen(&text, at.index(text.trim_end().len()), flip));
    }
}
