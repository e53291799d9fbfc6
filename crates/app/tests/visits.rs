//! Visits as a browser makes them: what is shown, what is kept, what is refused.
#![expect(clippy::unwrap_used, reason = "a test reports by panicking")]

use app::{App, Form, Kept, Message, Moment, Shown, Visit};
use desk::InputFile;
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

fn demo(names: &[&str]) -> Vec<InputFile> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo");
    let file = |name: &&str| InputFile {
        name: (*name).to_owned(),
        text: fs::read_to_string(folder.join(name)).unwrap(),
    };
    names.iter().map(file).collect()
}

fn take_in(app: &mut App, files: Vec<InputFile>) -> Shown {
    let to = "/take-in".to_owned();
    app.show(&Visit { to, at: moment("take in"), form: Some(Form::default()), files })
}

const EVENING: [&str; 3] = ["spring-evening.toml", "spring-people.toml", "spring-health.toml"];

/// The app on another day: opened anew, and told what was kept.
fn again(keep: Vec<Kept>) -> App {
    let mut app = app();
    let told = Message::Kept { device: "phone".to_owned(), lines: keep };
    let shown = app.answer(&serde_json::to_vec(&told).unwrap());
    assert!(String::from_utf8(shown).unwrap().contains("\"main\":\"\""));
    app
}

#[test]
fn an_outing_that_was_taken_in_is_there_again_with_its_plan_and_pages() {
    let shown = take_in(&mut app(), demo(&EVENING));
    assert_eq!(shown.title, "Spring leaves in the Velmer valley");
    assert!(shown.at.starts_with("/outing/") && shown.keep.len() > 30, "{}", shown.keep.len());
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
    assert!(String::from_utf8(nonsense).unwrap().contains("The school"));
}

/// Fills a form in. Each field is written as `field=what is said`.
fn fill(app: &mut App, to: &str, said: &[&str]) -> Shown {
    let fields = said.iter().map(|said| {
        let (field, said) = said.split_once('=').unwrap();
        (field.to_owned(), said.to_owned())
    });
    let form = Some(Form(fields.collect()));
    let at = moment(&format!("{to} {said:?}"));
    app.show(&Visit { to: to.to_owned(), at, form, files: Vec::new() })
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
    assert_eq!((begun.title.as_str(), begun.keep.len()), ("Nettles by the weir", 2));
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
    fill(&mut app, &format!("{at}/undo"), &[]);
    assert!(follow(&mut app, &row).main.contains("value=\"55 m²\""));
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
