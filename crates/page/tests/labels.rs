//! Labels and the sheets of pots: what they say, what they must say first, and what they never say.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a test reports by panicking")]

use desk::{
    InputFile, LabelOrder, LabelSheet, LabelsReply, Paper, Plan, Reply, Request, World, answer,
};
use ground::RandomStart;
use journal::Journal;
use page::{Block, Catalogue, Label, NamedPage, Page, Style, Words, html, pages, text, view};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;
use std::sync::LazyLock;

static WORLD: LazyLock<World> = LazyLock::new(|| World {
    herbal: herbal_data::herbal(),
    herbal_version: "as-tested".to_owned(),
    journal: Journal::new(),
    now: jiff::civil::date(2027, 5, 1).at(16, 0, 0, 0),
    random_start: RandomStart(0),
});

const EVENING: [&str; 3] = ["spring-evening.toml", "spring-people.toml", "spring-health.toml"];
const DAY: [&str; 4] =
    ["spring-day.toml", "spring-evening.toml", "spring-people.toml", "spring-health.toml"];

/// The files of the demonstration, each put through a change.
fn files(names: &[&str], change: impl Fn(&str, String) -> String) -> Vec<InputFile> {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo");
    let file = |name: &&str| {
        let said = fs::read_to_string(demo.join(name)).unwrap();
        InputFile::from_bytes(name, change(name, said).into_bytes()).unwrap()
    };
    names.iter().map(file).collect()
}

fn same(_: &str, said: String) -> String {
    said
}

fn labels(files: Vec<InputFile>, order: LabelOrder) -> LabelsReply {
    match answer(&WORLD, Request::Labels { files, order }).unwrap() {
        Reply::Labels(reply) => reply,
        other => panic!("no labels: {other:?}"),
    }
}

fn shown(reply: LabelsReply) -> Page {
    let catalogue = Catalogue::english();
    view(&Reply::Labels(reply), &Words::new(&catalogue).with_herbal(&WORLD.herbal))
}

fn each(page: &Page) -> Vec<Label> {
    let labels = page.blocks.iter().filter_map(|block| match block {
        Block::Labels(labels) => Some(labels.labels.clone()),
        _ => None,
    });
    labels.flatten().collect()
}

fn plan(files: Vec<InputFile>) -> Plan {
    match answer(&WORLD, Request::Plan { files, reasons: false }).unwrap() {
        Reply::Plan(plan) => *plan,
        other => panic!("no plan: {other:?}"),
    }
}

fn written(plan: &Plan) -> Vec<NamedPage> {
    let catalogue = Catalogue::english();
    pages(
        plan,
        &BTreeMap::new(),
        desk::Paper::A4,
        &Words::new(&catalogue).with_herbal(&WORLD.herbal),
    )
}

fn of(page: &Page) -> String {
    let said = text(page, Some(80), Style::Plain);
    assert!(!said.contains(['⟦', '{']), "a message is missing:\n{said}");
    said
}

#[test]
fn the_labels_of_a_day_say_what_is_in_the_jars() {
    let order = LabelOrder { size: Some("63.5x38.1".to_owned()), ..LabelOrder::default() };
    let page = shown(labels(files(&DAY, same), order));
    insta::assert_snapshot!(of(&page));
}

#[test]
fn before_the_day_every_jar_but_the_old_one_says_that_it_must_not_be_used() {
    let reply = labels(files(&EVENING, same), LabelOrder::default());
    for label in &reply.labels {
        assert_eq!(label.do_not.is_empty(), label.name == "nettle-jar-2026", "{}", label.name);
    }
    for label in each(&shown(reply)).iter().filter(|label| label.do_not.is_some()) {
        let said: Vec<_> =
            label.beside.iter().chain(&label.below).map(|line| line.prose().plain()).collect();
        for words in ["allergens", "not for", "strength"] {
            assert!(said.iter().all(|line| !line.starts_with(words)), "{said:?}");
        }
    }
}

#[test]
fn what_is_withheld_unsorted_or_not_determined_says_so_on_the_label() {
    let said = |change: &dyn Fn(String) -> String, name: &str| {
        let change = |file: &str, said: String| {
            if file == "spring-day.toml" { change(said) } else { said }
        };
        let reply = labels(files(&DAY, change), LabelOrder::default());
        let label = reply.labels.into_iter().find(|label| label.name == name).unwrap();
        let ids: Vec<_> = label.do_not.iter().map(|text| text.id.clone()).collect();
        ids
    };
    let whole = |said: String| said;
    assert_eq!(said(&whole, "nettle-pot"), [""; 0]);
    assert!(said(&whole, "arborvitae-tea").contains(&"label-withheld".to_owned()));
    let unsorted = |said: String| said.replace("pieces = 420\nevery-piece = true", "pieces = 20");
    assert!(said(&unsorted, "nettle-pot").contains(&"label-not-sorted".to_owned()));
    assert!(said(&unsorted, "nettle-0501").contains(&"label-not-sorted".to_owned()));
    let held = |said: String| said.replace("Lamium album", "Conium maculatum");
    assert!(said(&held, "nettle-pot").contains(&"label-held".to_owned()));
    let no_pattern = |said: String| said.replace("pattern = \"nettle-1\"\n", "");
    assert!(said(&no_pattern, "nettle-pot").contains(&"label-not-determined".to_owned()));
}

/// Cautions on labels and sheets of pots are published facts of the plant: they are there whatever
/// anybody said, and the same.
#[test]
fn no_label_and_no_sheet_of_a_pot_hangs_on_what_anybody_said_of_their_health() {
    let silent = |name: &str, said: String| {
        if name == "spring-health.toml" { "# Nobody said anything.\n".to_owned() } else { said }
    };
    let others = |name: &str, said: String| {
        if name == "spring-health.toml" {
            return said
                .replace("\"p05\"", "\"?\"")
                .replace("\"p03\"", "\"p05\"")
                .replace("\"?\"", "\"p03\"");
        }
        said
    };
    let bytes = |change: &dyn Fn(&str, String) -> String| -> BTreeMap<String, String> {
        let plan = plan(files(&DAY, change));
        let ours = |named: &NamedPage| named.name.starts_with("brew-") || named.name == "labels";
        let all = written(&plan);
        all.iter().filter(|n| ours(n)).map(|n| (n.name.clone(), html(&n.page))).collect()
    };
    let said = bytes(&same);
    assert_eq!(said.len(), 6);
    assert!(said == bytes(&silent) && said == bytes(&others));
    assert!(said["brew-nettle-tea"].contains("Not for: pregnancy"));
    for page in said.values() {
        for name in ["p01", "p05", "Pell", "52.31"] {
            assert!(!page.contains(&format!(">{name}")), "{name}");
        }
    }
}

#[test]
fn equal_requests_give_equal_labels_and_every_jar_has_its_own_code() {
    let order = LabelOrder { copies: Some(3), ..LabelOrder::default() };
    let [one, other] = [(); 2].map(|()| shown(labels(files(&DAY, same), order.clone())));
    assert_eq!(html(&one), html(&other));
    let codes: Vec<_> =
        each(&one).into_iter().map(|l| l.code_says).filter(|code| !code.is_empty()).collect();
    assert_eq!(codes.iter().collect::<BTreeSet<_>>().len(), codes.len());
    assert!(codes.iter().any(|code| code.ends_with("/3")));
}

#[test]
fn a_name_that_is_too_long_or_runs_leftward_still_reads() {
    let long = "x".repeat(200);
    for name in [long.as_str(), "🌿🌿 תה סרפדים 🌿", "  ", "<b>tea</b>"] {
        let change = |file: &str, said: String| {
            if file == "spring-evening.toml" {
                said.replace("Nettle leaf tea, dried", name)
            } else {
                said
            }
        };
        for paper in [Paper::A4, Paper::Letter] {
            for sheet in LabelSheet::sold(paper) {
                let order = LabelOrder {
                    size: Some(sheet.size()),
                    paper: Some(paper),
                    only: vec!["nettle-tea".to_owned()],
                    copies: None,
                };
                let page = shown(labels(files(&DAY, change), order));
                assert!(each(&page).iter().all(|label| label.code.is_some()));
                let all = of(&page).replace('\n', "");
                assert!(name != long || (all.contains('…') && all.matches('x').count() >= 200));
                assert!(!html(&page).contains("<b>tea"));
            }
        }
    }
}

#[test]
fn every_fault_of_an_order_is_told_at_once_with_what_would_do() {
    let order = LabelOrder {
        size: Some("38.1x21.2".to_owned()),
        copies: Some(0),
        only: vec!["nettle-soup".to_owned()],
        paper: None,
    };
    let faults = answer(&WORLD, Request::Labels { files: files(&DAY, same), order }).unwrap_err();
    let said = Catalogue::english().faults(&faults);
    assert_eq!(faults.iter().count(), 3, "{said}");
    insta::assert_snapshot!(said);
}

#[test]
fn the_sheet_of_a_pot_says_what_a_cook_needs() {
    let all = written(&plan(files(&DAY, same)));
    let page = all.iter().find(|named| named.name == "brew-nettle-tea").unwrap();
    insta::assert_snapshot!(of(&page.page));
}

#[test]
fn a_pot_that_nobody_may_have_says_so_before_anything_else() {
    let all = written(&plan(files(&EVENING, same)));
    let page = all.iter().find(|named| named.name == "brew-arborvitae-tea").unwrap();
    let said = of(&page.page);
    assert!(said.find("Do not").unwrap() < said.find("What goes in").unwrap(), "{said}");
}

/// Of 2.25 l of water on 30 g of dried herb some 2.19 l run off: 14 cups of 150 ml and a rest.
#[test]
fn what_goes_home_gets_a_label_for_each_whole_share() {
    let home = |file: &str, said: String| {
        if file != "spring-evening.toml" {
            return said;
        }
        said.replace("stage = \"dried fully\"", "stage = \"dried fully\"\ntaken-home = true")
    };
    let copies = |change: &dyn Fn(&str, String) -> String| {
        let only = vec!["nettle-tea".to_owned()];
        labels(files(&DAY, change), LabelOrder { only, ..LabelOrder::default() }).labels[0].copies
    };
    assert_eq!((copies(&same), copies(&home)), (1, 14));
}
