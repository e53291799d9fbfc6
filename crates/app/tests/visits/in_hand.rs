//! A plant in hand, read tap by tap.

use super::{app, demo, follow, moment, take_in};
use app::{App, Form, Shown, Visit};
use jiff::civil::{DateTime, date};

pub(super) const DAY: [&str; 4] =
    ["spring-day.toml", "spring-evening.toml", "spring-people.toml", "spring-health.toml"];

/// The outing before anybody looked at anything.
fn evening() -> (App, String) {
    let mut app = app();
    let at = take_in(&mut app, demo(DAY.get(1..).unwrap_or_default())).at;
    (app, at)
}

fn on_the_day(hour: i8, minute: i8) -> DateTime {
    date(2027, 5, 1).at(hour, minute, 0, 0)
}

pub(super) fn tap(app: &mut App, to: &str, said: &[(&str, &str)], now: DateTime) -> Shown {
    let form = said.iter().map(|(name, said)| ((*name).to_owned(), (*said).to_owned()));
    let seed = format!("{now} {said:?}");
    let ms = moment("").ms + i64::from(now.hour()) * 3_600_000 + i64::from(now.minute()) * 60_000;
    let at = app::Moment { now, ms, ..moment(&seed) };
    app.show(&Visit { to: to.to_owned(), at, form: Some(Form(form.collect())), ..Visit::default() })
}

/// What the demo's readers saw of the ramsons.
const RAMSONS: [(&str, &str); 11] = [
    ("leaf_venation", "parallel"),
    ("leaf_arrangement", "rosette"),
    ("leaf_shape", "elliptic"),
    ("leaf_base", "petiolate"),
    ("leaf_emergence", "singly"),
    ("leaf_hairs", "none"),
    ("leaf_texture", "soft-tearing"),
    ("leaf_underside_sheen", "matt"),
    ("stem_section", "triangular"),
    ("inflorescence", "umbel"),
    ("underground", "bulb"),
];

/// What the first of them saw besides.
const MORE: [(&str, &str); 7] = [
    ("crushed_smell", "garlic"),
    ("leaf_surface", "smooth"),
    ("leaf_type", "simple"),
    ("stem_interior", "solid"),
    ("leaf_width_mm", "46 mm"),
    ("leaf_length_mm", "7 in"),
    ("petal_count", "6"),
];

fn read(app: &mut App, to: &str, looks: &[(&str, &str)], now: DateTime) {
    for (character, saw) in looks {
        let shown = tap(app, to, &[("character", character), ("saw", saw)], now);
        assert_eq!(shown.keep.len(), 1, "{character}: {}", shown.main);
    }
}

#[test]
fn two_readers_determine_what_one_cannot() {
    let (mut app, outing) = evening();
    let of = format!("{outing}/in-hand/ramsons-brook/ramsons-brook-1");
    let list = follow(&mut app, &format!("{outing}/in-hand")).main;
    assert!(list.contains(&format!("#{of}/maren")), "{list}");
    read(&mut app, &format!("{of}/maren"), &RAMSONS, on_the_day(10, 30));
    read(&mut app, &format!("{of}/maren"), &MORE, on_the_day(10, 31));
    assert!(follow(&mut app, &of).main.contains("Not yet"));
    read(&mut app, &format!("{of}/tobias"), &RAMSONS, on_the_day(10, 42));
    let verdict = follow(&mut app, &of).main;
    assert!(verdict.contains("Determined:"), "{verdict}");
    // One row a reader: what was tapped is what an outing file would say.
    let file = follow(&mut app, &format!("{outing}/file")).file.unwrap().text;
    assert_eq!(file.matches("specimen = \"ramsons-brook-1\"").count(), 2, "{file}");
    let journal = follow(&mut app, &format!("{outing}/journal")).main;
    assert!(journal.contains("A plant in hand: ramsons-brook"), "{journal}");
}

#[test]
fn who_looks_on_another_day_is_asked_once_and_told_for_which_day_it_holds() {
    let (mut app, outing) = evening();
    let of = format!("{outing}/in-hand/ramsons-brook/ramsons-brook-1");
    let maren = format!("{of}/maren");
    let the_day_before = |minute| date(2027, 4, 30).at(10, minute, 0, 0);
    let mut asked = Vec::new();
    let first = [("character", "leaf_venation"), ("saw", "parallel")];
    let mut screen = tap(&mut app, &maren, &first, the_day_before(0)).main;
    while let Some((_, from)) = screen.split_once("name=\"character\" value=\"") {
        assert!(screen.contains("The day of this outing is"), "{screen}");
        let character = from.split_once('"').unwrap().0.to_owned();
        assert!(!asked.contains(&character), "{character} is asked for again");
        let said = [("character", character.as_str()), ("saw", "?")];
        screen = tap(&mut app, &maren, &said, the_day_before(1)).main;
        asked.push(character);
    }
    // What one reader cannot tell ends nothing: the rest is asked.
    assert!(
        ["crushed_smell", "underground"].iter().all(|a| asked.iter().any(|b| a == b)),
        "{asked:?}"
    );
    read(&mut app, &maren, &RAMSONS, the_day_before(10));
    read(&mut app, &maren, &MORE, the_day_before(11));
    read(&mut app, &format!("{of}/tobias"), &RAMSONS, the_day_before(15));
    read(&mut app, &format!("{of}/tobias"), &MORE, the_day_before(16));
    let verdict = follow(&mut app, &of).main;
    assert!(verdict.contains("30\u{a0}April 2027"), "{verdict}");
}

#[test]
fn what_it_could_be_is_hidden_until_a_reader_has_looked() {
    let (mut app, outing) = evening();
    let of = format!("{outing}/in-hand/ramsons-brook/ramsons-brook-1");
    let maren = format!("{of}/maren");
    let mut screen = follow(&mut app, &maren).main;
    for (character, saw) in RAMSONS {
        for name in ["Convallaria", "Colchicum", "Arum", "lily of the valley", "deadly"] {
            assert!(!screen.contains(name), "{name} on {screen}");
        }
        let said = [("character", character), ("saw", saw)];
        screen = tap(&mut app, &maren, &said, on_the_day(10, 30)).main;
    }
    let shown = tap(&mut app, &maren, &[("looked", "yes")], on_the_day(10, 33));
    assert_eq!(shown.at, of);
    assert!(shown.main.contains("Convallaria"), "{}", shown.main);
}

/// What a leader makes of it who reads twice, and is shown what it could be in between or not.
fn read_twice(shown_between: bool) -> String {
    let (mut app, outing) = evening();
    let of = format!("{outing}/in-hand/ramsons-brook/ramsons-brook-1");
    let maren = format!("{of}/maren");
    read(&mut app, &maren, &RAMSONS, on_the_day(10, 30));
    read(&mut app, &maren, &MORE, on_the_day(10, 31));
    if shown_between {
        tap(&mut app, &maren, &[("looked", "yes")], on_the_day(10, 33));
    }
    read(&mut app, &maren, &RAMSONS, on_the_day(10, 50));
    follow(&mut app, &of).main
}

#[test]
fn whoever_was_shown_what_it_could_be_is_no_second_reader() {
    assert!(!read_twice(false).contains("Not yet"));
    assert!(read_twice(true).contains("Not yet"));
}

#[test]
fn a_look_that_cannot_be_read_is_refused_and_keeps_nothing() {
    let (mut app, outing) = evening();
    let maren = format!("{outing}/in-hand/ramsons-brook/ramsons-brook-1/maren");
    let now = on_the_day(10, 30);
    for (character, saw) in [
        ("leaf_length_mm", "5 kg"),
        ("leaf_length_mm", "long"),
        ("leaf_length_mm", ""),
        ("leaf_base", "purple"),
        ("leaf_luck", "four"),
    ] {
        let shown = tap(&mut app, &maren, &[("character", character), ("saw", saw)], now);
        assert!(shown.keep.is_empty(), "{character} {saw}");
        assert!(shown.main.contains("role=\"alert\""), "{character} {saw}: {}", shown.main);
    }
    for nobody in ["ramsons-brook/ramsons-brook-1/nobody", "no-stand/x-1/maren"] {
        let to = format!("{outing}/in-hand/{nobody}");
        assert_eq!(tap(&mut app, &to, &[("looked", "yes")], now).title, "Nothing lies here");
    }
}

#[test]
fn a_slip_is_mended_by_saying_it_again_or_taking_it_back() {
    let (mut app, outing) = evening();
    let maren = format!("{outing}/in-hand/ramsons-brook/ramsons-brook-1/maren");
    let now = on_the_day(10, 30);
    tap(&mut app, &maren, &[("character", "leaf_base"), ("saw", "sessile")], now);
    tap(&mut app, &maren, &[("character", "leaf_base"), ("saw", "petiolate")], now);
    let file = |app: &mut App| follow(app, &format!("{outing}/file")).file.unwrap().text;
    let said = file(&mut app);
    assert!(said.contains("petiolate") && !said.contains("sessile"), "{said}");
    let journal = follow(&mut app, &format!("{outing}/journal")).main;
    let (_, rest) = journal.split_once("name=\"take-back\" value=\"").unwrap();
    let (id, _) = rest.split_once('"').unwrap();
    tap(&mut app, &format!("{outing}/journal"), &[("take-back", id)], now);
    assert!(file(&mut app).contains("sessile"));
}
