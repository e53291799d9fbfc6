//! Questions, one a screen; who is handed what; and why.

use super::in_hand::{DAY, tap};
use super::{app, demo, follow_on, take_in};
use app::{App, Kept, Message, SealAct, Shown};
use jiff::civil::{DateTime, date};

const PERSON: &str = "p01";
const BATCH: &str = "nettle-pot";

fn noon() -> DateTime {
    date(2027, 5, 1).at(12, 0, 0, 0)
}

/// The demo's day, with the answers of nobody, up to where somebody stands for what is handed out.
fn day() -> (App, String) {
    let mut app = app();
    let mut files = demo(&DAY);
    if let Some(day) = files.first_mut() {
        let end = day.text.find("# A decision is a proposal").unwrap();
        day.text.truncate(end);
    }
    let at = take_in(&mut app, files).at;
    (app, at)
}

/// As the browser does once the passphrase fits.
fn open(app: &mut App, at: &str, lines: Option<Vec<String>>) {
    let book = at.rsplit('/').next().unwrap().to_owned();
    let told = app.answer(&serde_json::to_vec(&Message::Opened { book, lines }).unwrap());
    assert!(String::from_utf8(told).unwrap().contains("\"main\":\"\""));
}

fn see(app: &mut App, to: &str) -> Shown {
    follow_on(app, to, noon())
}

/// How many questions a person is asked.
fn questions(shown: &Shown) -> usize {
    shown.main.matches("/answers/").count() - 2
}

/// Answers every question of a person: `no`, but for what is said here. What was kept last, and the
/// screen after the last question.
fn answer_all(app: &mut App, at: &str, yes: &[&str]) -> (Kept, Shown) {
    let person = format!("{at}/answers/{PERSON}");
    let mut shown = see(app, &format!("{person}/1"));
    let mut kept = None;
    while shown.at != person {
        let said = match shown.title.as_str() {
            "How old are you?" => "34",
            "How much do you weigh?" => "70 kg",
            title if yes.iter().any(|word| title.contains(word)) => "yes",
            _ => "no",
        };
        shown = tap(app, &shown.at.clone(), &[("said", said)], noon());
        assert_eq!(shown.keep.len(), 1, "{}: {}", shown.at, shown.main);
        kept = shown.keep.first().cloned();
    }
    (kept.unwrap(), shown)
}

#[test]
fn nobody_is_asked_and_nothing_is_known_while_the_answers_are_closed() {
    let (mut app, at) = day();
    let serving = see(&mut app, &format!("{at}/serving")).main;
    assert!(serving.contains("name=\"passphrase\"") && !serving.contains("/answers/p01"));
    for way in ["p01", "p01/1"] {
        let to = format!("{at}/answers/{way}");
        assert_eq!(see(&mut app, &to).title, "Nothing lies here");
        assert_eq!(tap(&mut app, &to, &[("said", "no")], noon()).title, "Nothing lies here");
    }
    let wrong = tap(&mut app, &format!("{at}/answers"), &[("opened", "no")], noon());
    assert!(wrong.main.contains("does not open the answers"), "{}", wrong.main);
    // Whoever lost the passphrase destroys the answers and asks anew.
    assert!(wrong.main.contains("name=\"destroy\""), "{}", wrong.main);
}

#[test]
fn what_somebody_says_is_sealed_and_goes_nowhere_else() {
    let (mut app, at) = day();
    open(&mut app, &at, Some(Vec::new()));
    let (kept, last) = answer_all(&mut app, &at, &["pregnant"]);
    assert_eq!(kept.seal.as_deref(), Some(PERSON));
    assert!(questions(&last) > 5 && last.main.contains("Has anything changed since?"));
    assert!(kept.line.contains("pregnant") && kept.line.contains("70 kg"));
    for way in ["file", "records"] {
        let text = see(&mut app, &format!("{at}/{way}")).file.unwrap().text;
        assert!(!text.contains("pregnant") && !text.contains("70 kg"), "{way}");
    }
    let journal = see(&mut app, &format!("{at}/journal")).main;
    assert!(!journal.contains("pregnant"), "{journal}");
    // Opened again on another day before the outing is over, it is what it was.
    open(&mut app, &at, Some(vec![kept.line.clone()]));
    let again = see(&mut app, &last.at).main;
    assert_eq!(again, last.main);
    let unread = "{\"row\": 3}".to_owned();
    open(&mut app, &at, Some(vec![unread]));
    assert!(see(&mut app, &format!("{at}/serving")).main.contains("not asked yet"));
}

#[test]
fn a_wrong_answer_is_refused_and_keeps_nothing() {
    let (mut app, at) = day();
    open(&mut app, &at, Some(Vec::new()));
    let number = (1..40).find(|number| {
        let shown = see(&mut app, &format!("{at}/answers/{PERSON}/{number}"));
        shown.title == "How much do you weigh?"
    });
    let to = format!("{at}/answers/{PERSON}/{}", number.unwrap());
    for said in ["", "heavy", "62", "62 km", "900 kg"] {
        let shown = tap(&mut app, &to, &[("said", said)], noon());
        assert!(shown.keep.is_empty() && shown.main.contains("role=\"alert\""), "{said:?}");
    }
    let rather_not = tap(&mut app, &to, &[("said", "rather-not")], noon());
    assert!(rather_not.keep.len() == 1 && !rather_not.main.contains("role=\"alert\""));
}

#[test]
fn answers_lapse_with_the_day_of_the_outing() {
    let (mut app, at) = day();
    open(&mut app, &at, Some(Vec::new()));
    answer_all(&mut app, &at, &[]);
    let later = date(2027, 5, 2).at(8, 0, 0, 0);
    let serving = follow_on(&mut app, &format!("{at}/serving"), later).main;
    assert!(serving.contains("no longer counts") && !serving.contains("passphrase"), "{serving}");
    let ask = follow_on(&mut app, &format!("{at}/answers/{PERSON}/1"), later);
    assert_eq!(ask.title, "Nothing lies here");
    let gone = tap(&mut app, &format!("{at}/answers"), &[("destroy", "yes")], later);
    assert!(matches!(gone.seal, Some(SealAct::Destroy { seal: None, .. })));
}

#[test]
fn nobody_was_asked_who_said_nothing() {
    let (mut app, at) = day();
    open(&mut app, &at, Some(Vec::new()));
    for (way, said) in [("", ("unchanged", "yes")), ("", ("said", "no")), ("/99", ("said", "no"))] {
        let shown = tap(&mut app, &format!("{at}/answers/{PERSON}{way}"), &[said], noon());
        assert!(shown.keep.is_empty() && shown.title == "Nothing lies here", "{}", shown.title);
    }
    let odd = tap(&mut app, &format!("{at}/answers/{PERSON}/3"), &[("said", "maybe")], noon());
    assert!(odd.keep.is_empty() && odd.main.contains("role=\"alert\""), "{}", odd.main);
    assert!(!see(&mut app, &format!("{at}/serving")).main.contains("asked today"));
}

#[test]
fn destroying_and_closing_are_told_to_the_browser() {
    let (mut app, at) = day();
    open(&mut app, &at, Some(Vec::new()));
    answer_all(&mut app, &at, &[]);
    let one = tap(&mut app, &format!("{at}/answers/{PERSON}"), &[("destroy", "yes")], noon());
    let Some(SealAct::Destroy { seal: Some(person), .. }) = one.seal else { panic!("not told") };
    assert_eq!(person, PERSON);
    let closed = tap(&mut app, &format!("{at}/answers"), &[("close", "yes")], noon());
    assert!(matches!(closed.seal, Some(SealAct::Close { .. })));
    assert!(closed.main.contains("name=\"passphrase\""));
}

#[test]
fn reasons_are_shown_to_a_form_alone_and_say_what_was_said() {
    let (mut app, at) = day();
    open(&mut app, &at, Some(Vec::new()));
    answer_all(&mut app, &at, &["pregnant"]);
    let before = see(&mut app, &format!("{at}/why")).main;
    let serving = see(&mut app, &format!("{at}/serving")).main;
    for public in [&before, &serving] {
        assert!(!public.contains("regnan"), "{public}");
    }
    let why = tap(&mut app, &format!("{at}/why"), &[], noon());
    assert!(why.main.contains("regnan") && why.keep.is_empty());
}

#[test]
fn a_serving_goes_to_whom_somebody_stands_for_and_to_nobody_else() {
    let (mut app, at) = day();
    let to = format!("{at}/hand-out/{BATCH}");
    let closed = see(&mut app, &to).main;
    assert!(
        !closed.contains("name=\"to\""),
        "nobody answered, and somebody is handed it: {closed}"
    );
    open(&mut app, &at, Some(Vec::new()));
    answer_all(&mut app, &at, &[]);
    let proposed = see(&mut app, &to).main;
    assert!(!proposed.contains("name=\"to\"") && proposed.contains("stands for it"), "{proposed}");
    let stood =
        tap(&mut app, &to, &[("participants", PERSON), ("stands", "Maren Holt")], noon()).main;
    assert!(stood.contains(&format!("name=\"to\" value=\"{PERSON}\"")), "{stood}");
    assert_eq!(stood.matches("name=\"to\"").count(), 1);
    let had = tap(&mut app, &to, &[("to", PERSON)], noon());
    assert!(had.keep.len() == 1 && had.main.contains("had one"), "{}", had.main);
    // A screen may be older than what it shows: nobody is handed more by it, or what is not theirs.
    for (person, said) in [(PERSON, "one more"), ("p02", "who never answered"), ("nobody", "")] {
        let refused = tap(&mut app, &to, &[("to", person)], noon());
        assert!(refused.keep.is_empty() && refused.main.contains("role=\"alert\""), "{said}");
    }
}

#[test]
fn a_device_without_the_answers_hands_out_by_the_flags_it_took_along() {
    let (mut home, at) = day();
    let closed = tap(&mut home, &format!("{at}/answers"), &[("flags", "yes")], noon());
    assert!(closed.keep.is_empty() && closed.main.contains("nothing to flag"), "{}", closed.main);
    open(&mut home, &at, Some(Vec::new()));
    answer_all(&mut home, &at, &[]);
    let left = tap(&mut home, &format!("{at}/answers"), &[("flags", "yes")], noon());
    assert!(left.keep.len() == 1 && !left.keep.iter().any(|kept| kept.line.contains("70 kg")));
    let records = see(&mut home, &format!("{at}/records")).file.unwrap();
    let mut afield = super::app();
    let file = desk::InputFile::from_bytes(&records.name, records.text.into_bytes()).unwrap();
    assert_eq!(take_in(&mut afield, vec![file]).at, at);
    let to = format!("{at}/hand-out/{BATCH}");
    let proposed = see(&mut afield, &to).main;
    let stands = [("participants", PERSON), ("stands", "Maren Holt")];
    assert!(proposed.matches("name=\"participants\"").count() == 1, "{proposed}");
    tap(&mut afield, &to, &stands, noon());
    assert!(tap(&mut afield, &to, &[("to", PERSON)], noon()).main.contains("had one"));
    assert!(see(&mut afield, &format!("{at}/serving")).main.contains("by a flag"));
}

/// How many flags stand, as the outing file says.
fn flags(app: &mut App, at: &str) -> usize {
    see(app, &format!("{at}/file")).file.unwrap().text.matches("[[flag]]").count()
}

#[test]
fn a_flag_does_not_outlive_the_answers_that_it_rests_on() {
    let (mut app, at) = day();
    open(&mut app, &at, Some(Vec::new()));
    answer_all(&mut app, &at, &[]);
    let leave = |app: &mut App, minute: i8| {
        let now = date(2027, 5, 1).at(12, minute, 0, 0);
        let left = tap(app, &format!("{at}/answers"), &[("flags", "yes")], now);
        assert!(left.keep.len() == 1, "{}", left.main);
        flags(app, &at)
    };
    let all = leave(&mut app, 1);
    assert!(all > 0);
    // Something changed since: the old flag must not stand once the answers are closed.
    let to = format!("{at}/answers/{PERSON}/3");
    let said = tap(&mut app, &to, &[("said", "yes")], noon());
    assert_eq!((said.keep.len(), flags(&mut app, &at)), (2, 0), "{}", said.main);
    // Nor is it brought back by taking back what took it out.
    let journal = see(&mut app, &format!("{at}/journal")).main;
    let last = journal.split("name=\"take-back\" value=\"").nth(1).unwrap();
    let last = last.split('"').next().unwrap().to_owned();
    let refused = tap(&mut app, &format!("{at}/journal"), &[("take-back", &last)], noon());
    assert!(
        refused.keep.is_empty() && refused.main.contains("do not come back"),
        "{}",
        refused.main
    );
    assert_eq!(leave(&mut app, 2), all);
    let one = tap(&mut app, &format!("{at}/answers/{PERSON}"), &[("destroy", "yes")], noon());
    assert!(one.seal.is_some() && flags(&mut app, &at) == 0);
    answer_all(&mut app, &at, &[]);
    assert_eq!(leave(&mut app, 3), all);
    let later = date(2027, 5, 1).at(13, 0, 0, 0);
    let every = tap(&mut app, &format!("{at}/answers"), &[("destroy", "yes")], later);
    assert!(every.seal.is_some() && flags(&mut app, &at) == 0);
}

#[test]
fn what_is_to_be_a_pdf_has_the_answers_only_while_they_are_open() {
    let (mut app, at) = day();
    let order = |app: &mut App, to: &str| {
        let shown = tap(app, to, &[("page", "run-sheet")], noon());
        assert!(shown.keep.is_empty() && shown.file.is_none(), "{to}");
        let pdf = shown.pdf.unwrap();
        assert_eq!((pdf.page.as_str(), pdf.now), ("run-sheet", noon()));
        (shown.at, pdf.file.text)
    };
    let pages = format!("{at}/pages");
    open(&mut app, &at, Some(Vec::new()));
    let (kept, _) = answer_all(&mut app, &at, &[]);
    for to in [pages.clone(), format!("{pages}/run-sheet")] {
        open(&mut app, &at, Some(vec![kept.line.clone()]));
        let (stays, text) = order(&mut app, &to);
        assert!(stays == to && text.contains("[[answers]]"), "{stays}");
        open(&mut app, &at, None);
        assert!(!order(&mut app, &to).1.contains("[[answers]]"));
    }
}
