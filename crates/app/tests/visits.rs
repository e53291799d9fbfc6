//! Visits as a browser makes them: what is shown, what is kept, what is refused.
#![expect(clippy::unwrap_used, reason = "a test reports by panicking")]

#[path = "visits/habits.rs"]
mod habits;
#[path = "visits/in_hand.rs"]
mod in_hand;
#[path = "visits/serving.rs"]
mod serving;

use app::{App, ChosenFile, Form, Kept, Message, Moment, Shown, Visit};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use desk::InputFile;
use page::Habits;
use std::fs;
use std::path::Path;

fn app() -> App {
    App::open(herbal_data::bytes()).unwrap()
}

fn moment(seed: &str) -> Moment {
    let now = jiff::civil::date(2027, 4, 30).at(19, 0, 0, 0);
    let zone = "Europe/London".to_owned();
    Moment { now, ms: 1_809_111_600_000, zone, seed: seed.to_owned() }
}

fn follow(app: &mut App, to: &str) -> Shown {
    app.show(&Visit { to: to.to_owned(), at: moment("follow"), ..Visit::default() })
}

fn follow_on(app: &mut App, to: &str, now: jiff::civil::DateTime) -> Shown {
    let at = Moment { now, ..moment("follow") };
    app.show(&Visit { to: to.to_owned(), at, ..Visit::default() })
}

fn demo(names: &[&str]) -> Vec<InputFile> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo");
    let file = |name: &&str| InputFile {
        name: (*name).to_owned(),
        text: fs::read_to_string(folder.join(name)).unwrap(),
    };
    names.iter().map(file).collect()
}

fn take_in(app: &mut App, files: Vec<InputFile>) -> Shown {
    let bytes = files.into_iter().map(|file| (file.name, file.text.into_bytes()));
    take_in_bytes(app, bytes.collect())
}

fn take_in_bytes(app: &mut App, files: Vec<(String, Vec<u8>)>) -> Shown {
    let to = "/take-in".to_owned();
    let file = |(name, bytes)| ChosenFile { name, base64: STANDARD.encode::<Vec<u8>>(bytes) };
    let files = files.into_iter().map(file).collect();
    app.show(&Visit {
        to,
        at: moment("take in"),
        form: Some(Form::default()),
        files,
        ..Visit::default()
    })
}

const EVENING: [&str; 3] = ["spring-evening.toml", "spring-people.toml", "spring-health.toml"];

/// The app on another day: opened anew, and told what was kept.
fn again(keep: Vec<Kept>) -> App {
    on("phone", keep)
}

fn on(device: &str, lines: Vec<Kept>) -> App {
    let mut app = app();
    let told = Message::Kept { device: device.to_owned(), lines, saved: Vec::new() };
    let shown = app.answer(&serde_json::to_vec(&told).unwrap());
    assert!(String::from_utf8(shown).unwrap().contains("\"main\":\"\""));
    app
}

#[test]
fn before_the_herbal_was_read_there_is_the_first_screen_alone() {
    let mut app = App::new();
    assert!(follow(&mut app, "/").main.contains("<h1"));
    assert!(take_in(&mut app, demo(&EVENING)).unread);
    for to in ["/herbal", "/new", "/emergency", "/no-such-screen"] {
        let shown = follow(&mut app, to);
        assert!(shown.unread && shown.main.is_empty(), "{to}");
    }
    app.read(herbal_data::bytes()).unwrap();
    assert!(follow(&mut app, "/herbal").main.contains("<h1"));
}

#[test]
fn an_outing_that_was_taken_in_is_there_again_with_its_plan_and_pages() {
    let shown = take_in(&mut app(), demo(&EVENING));
    assert_eq!(shown.title, "Spring leaves in the Velmer valley");
    assert!(shown.at.starts_with("/outing/") && shown.keep.len() == 1, "{}", shown.keep.len());
    let mut app = again(shown.keep.clone());
    assert_eq!(follow(&mut app, &shown.at).title, shown.title);
    assert!(follow(&mut app, "/").main.contains(&format!("#{}", shown.at)));
    let plan = follow(&mut app, &format!("{}/plan", shown.at));
    assert!(plan.main.contains("What is still open"), "{}", plan.title);
    let pages = follow(&mut app, &format!("{}/pages", shown.at));
    assert!(
        pages.main.contains("/pages/run-sheet") && pages.main.contains("/pages/emergency-card")
    );
    let sheet = follow(&mut app, &format!("{}/pages/run-sheet", shown.at));
    assert!(sheet.main.contains("Stop by stop"));
}

/// The addresses that open questions of a plan lead to.
fn ways(plan: &str) -> Vec<String> {
    let answers = plan.split("Answer it: ").skip(1).filter_map(|rest| rest.split("</p>").next());
    let links = answers.flat_map(|says| says.split("href=\"#").skip(1));
    links.map(|link| link.split('"').next().unwrap().to_owned()).collect()
}

#[test]
fn every_open_question_leads_to_where_it_is_answered() {
    for files in [demo(&EVENING), demo(&in_hand::DAY)] {
        let mut app = app();
        let at = take_in(&mut app, files).at;
        let plan = follow(&mut app, &format!("{at}/plan")).main;
        let open = plan.split("<h2").find(|part| part.contains("What is still open")).unwrap();
        let asked = open.matches("What would settle it").count();
        assert_eq!(open.matches("Answer it: ").count(), asked);
        assert!(asked > 1, "{asked}");
        for to in ways(&plan) {
            let shown = follow(&mut app, &to);
            assert_ne!(shown.title, "Nothing lies here", "{to}");
        }
    }
}

#[test]
fn a_plant_of_which_no_look_would_settle_anything_is_said_to_be_one() {
    let mut app = app();
    let winter =
        OUTING.map(|said| if said.starts_with("date=") { "date=2027-12-13" } else { said });
    let at = fill(&mut app, "/new", &winter).at;
    let nothing = follow(&mut app, &format!("{at}/in-hand")).main;
    assert!(nothing.contains(&format!("#{at}/new/site")), "{nothing}");
    let site = ["called=Weir", "landholder=Oda", "land=private", "jurisdiction=england-and-wales"];
    fill(&mut app, &format!("{at}/new/site"), &site);
    let stand =
        ["name=bank", "site=weir", "plant=stinging nettle", "area=40 sq m", "without=railway"];
    assert_eq!(fill(&mut app, &format!("{at}/new/stand"), &stand).keep.len(), 1);
    let day = jiff::civil::date(2027, 12, 13).at(11, 0, 0, 0);
    let reading = follow_on(&mut app, &format!("{at}/in-hand/bank/bank-1/maren-holt"), day);
    assert!(reading.main.contains("No look that can be made here today"), "{}", reading.main);
    assert!(!reading.main.contains("Urtica") && !reading.main.contains("nettle"));
}

#[test]
fn what_the_emergency_card_lacks_is_filled_in_and_no_longer_asked() {
    let mut app = app();
    let at = fill(&mut app, "/new", &OUTING).at;
    let open = |app: &mut App| {
        let plan = follow(app, &format!("{at}/plan")).main;
        let ways = ways(&plan);
        (plan.contains("Can help be called?"), ways)
    };
    let (asked, to) = open(&mut app);
    let number = |kind: &str| format!("{at}/new/number/what/{kind}");
    let card = format!("{at}/row/emergency/");
    for to_come in [card.clone(), number("emergency"), number("poison-information")] {
        assert!(to.contains(&to_come), "{to_come}: {to:?}");
        assert!(follow(&mut app, &to_come).main.contains("Keep it"));
    }
    assert!(asked);
    let no_comma = fill(&mut app, &card, &["base=Hedda Marrow"]);
    assert!(no_comma.keep.is_empty() && no_comma.main.contains("This was not kept yet"));
    let said = [
        "first-aider=Tobias Quill",
        "deputy=Tobias Quill",
        "base=Hedda Marrow, 01632 960183",
        "overdue-after=45 min",
        "meeting-point=the mill yard",
        "second-way=the landline at the lodge",
    ];
    assert_eq!(fill(&mut app, &card, &said).keep.len(), 1);
    assert!(follow(&mut app, &card).main.contains("value=\"Hedda Marrow, 01632 960183\""));
    for (kind, dialled) in [("emergency", "999"), ("poison-information", "111")] {
        let what = format!("what={kind}");
        let number = format!("number={dialled}");
        let form = format!("{at}/new/number");
        let said = [
            &what,
            "called=Whoever answers",
            &number,
            "source=their own page",
            "looked-up=2027-04-20",
        ];
        assert_eq!(fill(&mut app, &form, &said).keep.len(), 1, "{kind}");
    }
    assert!(!open(&mut app).0);
    let card = follow(&mut app, &format!("{at}/pages/emergency-card")).main;
    assert!(card.contains("01632 960183") && card.contains("999"));
}

#[test]
fn a_working_is_asked_for_when_it_is_opened() {
    let mut app = app();
    let at = take_in(&mut app, demo(&EVENING)).at;
    for to in [format!("{at}/plan"), format!("{at}/allowance")] {
        let screen = follow(&mut app, &to).main;
        let (_, rest) = screen.split_once("data-later").unwrap();
        let (_, rest) = rest.split_once("id=\"").unwrap();
        let opens = rest.split_once('"').map(|(anchor, _)| anchor.to_owned());
        let visit = Visit { to: to.clone(), at: moment("open"), opens, ..Visit::default() };
        let opened = app.show(&visit);
        assert!(opened.main.starts_with("<ul><li>") && opened.keep.is_empty(), "{}", opened.main);
        assert!(!screen.contains(&opened.main));
        // Whatever is no place opens nothing.
        let nowhere = Visit { opens: Some("nowhere".to_owned()), ..visit };
        assert_eq!(app.show(&nowhere).main, "");
        assert_eq!(follow(&mut app, &to).main, screen);
    }
}

#[test]
fn what_people_said_of_their_health_is_neither_kept_nor_handed_out() {
    let shown = take_in(&mut app(), demo(&EVENING));
    let health = ["answers", "anticoagulant", "81 kg", "epilepsy"];
    for Kept { line, .. } in &shown.keep {
        assert!(health.iter().all(|word| !line.contains(word)), "{line}");
    }
    let mut app = again(shown.keep.clone());
    for way in ["file", "records"] {
        let text = follow(&mut app, &format!("{}/{way}", shown.at)).file.unwrap().text;
        assert!(text.contains("Mill Wood"));
        assert!(health.iter().all(|word| !text.contains(word)), "{way}");
    }
    // Nothing is known of anybody: nobody is cleared for what asks anything.
    let plan = follow(&mut app, &format!("{}/plan", shown.at)).main;
    assert!(plan.contains("have not answered all that matters"));
}

#[test]
fn the_file_that_is_handed_out_can_be_taken_in_again() {
    let shown = take_in(&mut app(), demo(&EVENING));
    let mut first = again(shown.keep.clone());
    let file = follow(&mut first, &format!("{}/file", shown.at)).file.unwrap();
    let second = take_in(&mut app(), vec![file.clone()]);
    let mut other = again(second.keep.clone());
    assert_eq!(follow(&mut other, &format!("{}/file", second.at)).file.unwrap(), file);
}

#[test]
fn what_cannot_be_taken_in_keeps_nothing_and_says_what_is_wrong() {
    let bad = |name: &str, text: &str| vec![InputFile { name: name.into(), text: text.into() }];
    let broken = [
        (Vec::new(), "No file was chosen"),
        (bad("empty.toml", " \n"), "empty.toml"),
        (bad("half.toml", "[outing\nname ="), "half.toml:1"),
        (bad("other.toml", "[shopping]\nmilk = 2"), "other.toml:1"),
        (demo(&["spring-people.toml"]), "outing"),
    ];
    let latin =
        take_in_bytes(&mut app(), vec![("old.toml".into(), b"name = \"M\xfchle\"".to_vec())]);
    assert!(latin.keep.is_empty() && latin.main.contains("old.toml:1"), "{}", latin.main);
    for (files, said) in broken {
        let shown = take_in(&mut app(), files);
        assert!(shown.keep.is_empty());
        assert!(
            shown.main.contains("role=\"alert\"") && shown.main.contains(said),
            "{}",
            shown.main
        );
    }
}

#[test]
fn addresses_that_lead_nowhere_say_so() {
    let mut app = app();
    for to in ["/outing/none", "/outing/none/plan", "/shop", "/outing/none/pages/x"] {
        assert_eq!(follow(&mut app, to).title, "Nothing lies here", "{to}");
    }
    assert!(follow(&mut app, "/herbal/no%20such%20plant").main.contains("role=\"alert\""));
    assert_eq!(follow(&mut app, "").title, "The school");
}

#[test]
fn equal_visits_to_equal_apps_give_equal_bytes() {
    let told = |app: &mut App| {
        let visit = Visit { to: "/compare/elder/Sambucus%20ebulus".into(), ..Visit::default() };
        app.answer(&serde_json::to_vec(&Message::Visit(visit)).unwrap())
    };
    assert!(told(&mut app()) == told(&mut app()));
    let nonsense = app().answer(b"no message");
    assert!(String::from_utf8(nonsense).unwrap().contains("did not understand each other"));
}

/// Fills a form in. Each field is written as `field=what is said`.
fn fill(app: &mut App, to: &str, said: &[&str]) -> Shown {
    fill_as(Habits::default(), app, to, said)
}

fn fill_as(habits: Habits, app: &mut App, to: &str, said: &[&str]) -> Shown {
    let fields = said.iter().map(|said| {
        let (field, said) = said.split_once('=').unwrap();
        (field.to_owned(), said.to_owned())
    });
    let form = Some(Form(fields.collect()));
    let at = moment(&format!("{to} {said:?}"));
    app.show(&Visit { to: to.to_owned(), at, form, habits, ..Visit::default() })
}

const OUTING: [&str; 8] = [
    "name=Nettles by the weir",
    "date=2027-05-13",
    "from=10:00",
    "to=12:30",
    "leader=Maren Holt",
    "region=europe",
    "purpose=lesson",
    "zone=Europe/London",
];

#[test]
fn an_outing_is_filled_in_from_nothing_and_planned() {
    let mut app = again(Vec::new());
    let fresh = follow(&mut app, "/new").main;
    assert!(fresh.contains("value=\"2027-04-30\"") && fresh.contains("value=\"Europe/London\""));
    let begun = fill(&mut app, "/new", &OUTING);
    assert_eq!((begun.title.as_str(), begun.keep.len()), ("Nettles by the weir", 1));
    let at = begun.at;
    let mut add = |table: &str, said: &[&str]| {
        let shown = fill(&mut app, &format!("{at}/new/{table}"), said);
        assert_eq!(shown.keep.len(), 1, "{table}: {}", shown.main);
    };
    add("reader", &["called=Tobias Quill", "level=trained"]);
    let site = ["called=Weir Meadow", "landholder=Oda Pellwright", "land=private"];
    add("site", &[&site[..], &["jurisdiction=england-and-wales"]].concat());
    add("stand", &["name=bank", "site=weir-meadow", "plant=stinging nettle", "area=40 m²"]);
    add("stop", &["site=weir-meadow", "at=10:20", "lasts=1 h", "plants=stinging nettle"]);
    add("participant", &["called=Ansel Brookhouse"]);
    let plan = follow(&mut app, &format!("{at}/plan")).main;
    for said in ["What is still open", "Weir Meadow", "stinging nettle"] {
        assert!(plan.contains(said), "{said}");
    }
    // What was filled in stands in the form again, and can be changed, taken out and brought back.
    let row = format!("{at}/row/stand/bank");
    assert!(follow(&mut app, &row).main.contains("value=\"40 m²\""));
    let same = ["name=bank", "site=weir-meadow", "plant=stinging nettle"];
    fill(&mut app, &row, &[&same[..], &["area=55 m²"]].concat());
    assert!(follow(&mut app, &row).main.contains("value=\"55 m²\""));
    fill(&mut app, &row, &[&same[..], &["take-out=yes"]].concat());
    assert_eq!(follow(&mut app, &row).title, "Nothing lies here");
    undo(&mut app, &at);
    assert!(follow(&mut app, &row).main.contains("value=\"55 m²\""));
}

/// Taps the first button of an outing that takes something back.
fn undo(app: &mut App, at: &str) -> Shown {
    let outing = follow(app, at).main;
    let (_, button) = outing.split_once("name=\"take-back\" value=\"").unwrap();
    let id = button.split('"').next().unwrap();
    fill(app, &format!("{at}/journal"), &[&format!("take-back={id}")])
}

#[test]
fn whatever_was_done_can_be_taken_back_and_brought_back() {
    let mut app = again(Vec::new());
    let at = take_in(&mut app, demo(&EVENING)).at;
    let stand = ["name=bank", "site=mill-wood", "plant=stinging nettle", "area=40 m²"];
    fill(&mut app, &format!("{at}/new/stand"), &stand);
    let row = format!("{at}/row/stand/bank");
    let is_there = |app: &mut App| follow(app, &row).title != "Nothing lies here";
    assert!(is_there(&mut app));
    let undone = undo(&mut app, &at);
    assert_eq!(undone.keep.len(), 1);
    assert!(!is_there(&mut app));
    let journal = follow(&mut app, &format!("{at}/journal")).main;
    for said in ["A stand: bank", "Taken back: A stand: bank", "Bring it back"] {
        assert!(journal.contains(said), "{said}: {journal}");
    }
    // The latest entry is the taking-back itself.
    let (_, button) = journal.split_once("name=\"take-back\" value=\"").unwrap();
    let id = button.split('"').next().unwrap().to_owned();
    fill(&mut app, &format!("{at}/journal"), &[&format!("take-back={id}")]);
    assert!(is_there(&mut app));
    let twice = fill(&mut app, &format!("{at}/journal"), &[&format!("take-back={id}")]);
    assert!(twice.keep.is_empty() && twice.main.contains("taken back already"), "{}", twice.main);
}

#[test]
fn two_devices_agree_after_each_took_in_the_records_of_the_other() {
    let begun = take_in(&mut again(Vec::new()), demo(&EVENING));
    let at = begun.at.clone();
    let (mut phone, mut laptop) = (on("phone", begun.keep.clone()), on("laptop", begun.keep));
    let stand =
        |name: &str| [format!("name={name}"), "site=mill-wood".into(), "plant=black elder".into()];
    let add = |app: &mut App, name: &str| {
        let said = stand(name);
        let said: Vec<_> = said.iter().map(String::as_str).collect();
        let kept = fill(app, &format!("{at}/new/stand"), &said);
        assert_eq!(kept.keep.len(), 1, "{}", kept.main);
    };
    add(&mut phone, "north-bank");
    add(&mut laptop, "south-bank");
    let records = |app: &mut App| follow(app, &format!("{at}/records")).file.unwrap();
    let (of_phone, of_laptop) = (records(&mut phone), records(&mut laptop));
    assert_eq!(take_in(&mut phone, vec![of_laptop.clone()]).keep.len(), 1);
    assert_eq!(take_in(&mut laptop, vec![of_phone.clone()]).keep.len(), 1);
    assert_eq!(records(&mut phone), records(&mut laptop));
    let outing = |app: &mut App| follow(app, &format!("{at}/file")).file.unwrap();
    assert_eq!(outing(&mut phone), outing(&mut laptop));
    for name in ["north-bank", "south-bank"] {
        assert!(outing(&mut phone).text.contains(name));
    }
    // Once more changes nothing.
    assert!(take_in(&mut phone, vec![of_laptop]).keep.is_empty());
    assert!(take_in(&mut laptop, vec![of_phone]).keep.is_empty());
}

#[test]
fn records_with_a_gap_or_a_change_are_refused_whole() {
    let mut app = again(Vec::new());
    let at = fill(&mut app, "/new", &OUTING).at;
    for name in ["Ansel Brookhouse", "Wren Ashby"] {
        fill(&mut app, &format!("{at}/new/participant"), &[&format!("called={name}")]);
    }
    let records = follow(&mut app, &format!("{at}/records")).file.unwrap();
    let lines: Vec<_> = records.text.lines().collect();
    assert_eq!(lines.len(), 3);
    let bad = [
        (format!("{}\n{}\n", lines[0], lines[2]), "is not here as it was"),
        (records.text.replace("Wren Ashby", "Wren Ashley"), "changed"),
        (records.text.replace("{\"v\":1", "{\"v\":9"), "newer"),
        ("{\"v\":1}\n".to_owned(), "record"),
    ];
    for (text, said) in bad {
        let file = InputFile { name: "records.jsonl".to_owned(), text };
        let mut fresh = again(Vec::new());
        let refused = take_in(&mut fresh, vec![file]);
        assert!(refused.keep.is_empty() && refused.main.contains(said), "{}", refused.main);
        assert!(follow(&mut fresh, "/").main.contains("None is kept"));
    }
}

#[test]
fn a_book_with_a_broken_line_is_set_aside_and_can_be_saved() {
    let mut app = again(Vec::new());
    let begun = fill(&mut app, "/new", &OUTING);
    let more = fill(&mut app, &format!("{}/new/participant", begun.at), &["called=Wren Ashby"]);
    let mut kept = [begun.keep, more.keep].concat();
    kept[0].line = kept[0].line.replace("weir", "wier");
    let mut app = again(kept.clone());
    assert!(follow(&mut app, "/").main.contains("cannot be read"));
    let outing = follow(&mut app, &begun.at);
    assert!(outing.main.contains("role=\"alert\""), "{}", outing.main);
    let saved = follow(&mut app, &format!("{}/records", begun.at)).file.unwrap().text;
    assert!(kept.iter().all(|kept| saved.contains(&kept.line)));
    for way in ["plan", "pages", "new/stand", "rows/stand"] {
        assert_eq!(follow(&mut app, &format!("{}/{way}", begun.at)).title, "Nothing lies here");
    }
}

#[test]
fn a_form_with_errors_keeps_nothing_and_loses_nothing() {
    let mut app = again(Vec::new());
    let at = fill(&mut app, "/new", &OUTING).at;
    let empty = fill(&mut app, &format!("{at}/new/stand"), &[]);
    assert!(empty.keep.is_empty() && empty.title.starts_with("Not kept:"), "{}", empty.title);
    for field in ["name", "site", "plant"] {
        assert!(empty.main.contains(&format!("href=\"#field-{field}\"")), "{field}");
    }
    let site = ["called=Weir Meadow", "landholder=Oda Pellwright", "land=private"];
    let site = [&site[..], &["jurisdiction=england-and-wales"]].concat();
    fill(&mut app, &format!("{at}/new/site"), &site);
    let wrong = ["name=bank", "site=weir-meadow", "plant=no such plant", "area=3 km"];
    let wrong = fill(&mut app, &format!("{at}/new/stand"), &wrong);
    assert!(wrong.keep.is_empty());
    for said in ["value=\"no such plant\"", "value=\"3 km\"", "aria-invalid=\"true\""] {
        assert!(wrong.main.contains(said), "{said}: {}", wrong.main);
    }
    assert!(!wrong.main.contains("outing.toml"), "a place that nobody can see is named");
    let no_day = fill(&mut app, "/new", &[&OUTING[2..], &["name=x", "date=tomorrow"]].concat());
    assert!(no_day.keep.is_empty() && no_day.main.contains("tomorrow"));
}

#[test]
fn words_that_a_form_does_not_offer_are_refused() {
    let mut app = again(Vec::new());
    let purpose = fill(&mut app, "/new", &[&OUTING[..6], &["purpose=fun", OUTING[7]]].concat());
    assert!(purpose.keep.is_empty() && purpose.main.contains("fun"), "{}", purpose.main);
    let at = fill(&mut app, "/new", &OUTING).at;
    let site =
        ["called=Weir Meadow", "landholder=Oda Pellwright", "jurisdiction=england-and-wales"];
    let site = |land, right| [&site[..], &[land, right]].concat();
    for said in [site("land=moon", "public-right="), site("land=private", "public-right=maybe")] {
        let refused = fill(&mut app, &format!("{at}/new/site"), &said);
        assert!(refused.keep.is_empty() && refused.title.starts_with("Not kept:"), "{said:?}");
    }
}

#[test]
fn what_lies_on_this_device_alone_is_counted_until_it_is_handed_out() {
    let mut app = again(Vec::new());
    let at = fill(&mut app, "/new", &OUTING).at;
    fill(&mut app, &format!("{at}/new/participant"), &["called=Ansel Brookhouse"]);
    let says = |app: &mut App, to: &str, words: &str| {
        let main = follow(app, to).main;
        assert!(main.contains(words), "{words}: {main}");
    };
    says(&mut app, &at, "2 records lie on this device alone");
    says(&mut app, "/", "2 records lie on this device alone");
    let handed = follow(&mut app, &format!("{at}/records"));
    assert_eq!(handed.saved.as_ref().map(|saved| saved.records), Some(2));
    says(&mut app, &at, "Every record of this device was handed out");
    assert_eq!(follow(&mut app, &at).saved, None);
    fill(&mut app, &format!("{at}/new/participant"), &["called=Birte Calloway"]);
    says(&mut app, &at, "One record lies on this device alone");
    // What comes back from another device lies there.
    let mut other = on("laptop", Vec::new());
    take_in(&mut other, vec![handed.file.unwrap()]);
    let back = follow(&mut other, &format!("{at}/records")).file.unwrap();
    let mut again = again(Vec::new());
    let merged = take_in(&mut again, vec![back]);
    assert_eq!(merged.saved.map(|saved| saved.records), Some(2));
}

#[test]
fn a_clock_that_is_a_year_off_is_told_of_and_nothing_is_lost() {
    let mut phone = again(Vec::new());
    let at = take_in(&mut phone, demo(&EVENING)).at;
    let on = |app: &mut App, to: &str, year: i16, ms: i64| {
        let now = jiff::civil::date(year, 4, 30).at(19, 0, 0, 0);
        let at = Moment { now, ms, ..moment("clock") };
        app.show(&Visit { to: to.to_owned(), at, ..Visit::default() }).main
    };
    let (then, year) = (moment("").ms, 365 * 24 * 3_600_000);
    assert!(!on(&mut phone, "/", 2027, then).contains("set it"));
    assert!(on(&mut phone, "/", 2026, then - year).contains("If the clock is wrong, set it"));
    assert!(on(&mut phone, &at, 2026, then - year).contains("in 366 days"));
    assert!(on(&mut phone, &at, 2028, then + year).contains("365 days ago"));
    // What is written by the wrong clock comes after what was written before.
    let kept = fill(&mut phone, &format!("{at}/new/participant"), &["called=Lovis Marsh"]);
    assert_eq!(kept.keep.len(), 1, "{}", kept.main);
    assert!(on(&mut phone, &format!("{at}/rows/participant"), 2027, then).contains("Lovis Marsh"));
}

#[test]
fn outings_to_come_stand_first_the_next_one_before_all() {
    let mut app = app();
    for day in ["2027-04-01", "2027-06-01", "2027-05-01", "2027-03-01"] {
        let mut files = demo(&EVENING);
        files[0].text = files[0].text.replace("date = 2027-05-01", &format!("date = {day}"));
        files[0].text = files[0].text.replace("name = \"Spring", &format!("name = \"{day} Spring"));
        let file = |file: InputFile| ChosenFile {
            name: file.name,
            base64: STANDARD.encode(file.text.into_bytes()),
        };
        let (to, at) = ("/take-in".to_owned(), moment(day));
        let files = files.into_iter().map(file).collect();
        let begun =
            app.show(&Visit { to, at, form: Some(Form::default()), files, ..Visit::default() });
        assert_eq!(begun.keep.len(), 1, "{}", begun.main);
    }
    let home = follow(&mut app, "/").main;
    let days: Vec<_> = home.split("called\">").skip(1).filter_map(|rest| rest.get(..10)).collect();
    assert_eq!(days, ["2027-05-01", "2027-06-01", "2027-04-01", "2027-03-01"]);
}
