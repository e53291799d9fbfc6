//! Labels and the sheets of pots: what they say, what they must say first, and what they never say.

use crate::kit::{self, SPRING_DAY, SPRING_EVENING, SPRING_HEALTH};
use desk::{InputFile, LabelOrder, LabelSheet, LabelsReply, Paper, Reply, Request, World, answer};
use page::{Block, Catalogue, Label, NamedPage, Page, html, view};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

static WORLD: LazyLock<World> =
    LazyLock::new(|| kit::world(jiff::civil::date(2027, 5, 1).at(16, 0, 0, 0)));

/// The files of the day, with this of one of them put otherwise.
fn otherwise(file: &str, this: &str, otherwise: &str) -> Vec<InputFile> {
    kit::changed(SPRING_DAY, file, |said| said.replace(this, otherwise))
}

fn labels(files: Vec<InputFile>, order: LabelOrder) -> LabelsReply {
    match answer(&WORLD, Request::Labels { files, order }).unwrap() {
        Reply::Labels(reply) => reply,
        other => panic!("no labels: {other:?}"),
    }
}

fn shown(reply: LabelsReply) -> Page {
    view(&Reply::Labels(reply), &kit::words())
}

fn each(page: &Page) -> Vec<Label> {
    let labels = page.blocks.iter().filter_map(|block| match block {
        Block::Labels(labels) => Some(labels.labels.clone()),
        _ => None,
    });
    labels.flatten().collect()
}

fn written(files: Vec<InputFile>) -> Vec<NamedPage> {
    kit::pages(&WORLD, &kit::plan(&WORLD, files, false))
}

fn said(page: &Page) -> String {
    kit::said(page, Some(80))
}

#[test]
fn the_labels_of_a_day_say_what_is_in_the_jars() {
    let order = LabelOrder { size: Some("63.5x38.1".to_owned()), ..LabelOrder::default() };
    let page = shown(labels(kit::demo(SPRING_DAY), order));
    insta::assert_snapshot!(said(&page));
}

#[test]
fn before_the_day_every_jar_but_the_old_one_says_that_it_must_not_be_used() {
    let reply = labels(kit::demo(SPRING_EVENING), LabelOrder::default());
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
    let said = |files: &[InputFile], name: &str| {
        let reply = labels(files.to_vec(), LabelOrder::default());
        let label = reply.labels.into_iter().find(|label| label.name == name).unwrap();
        let ids: Vec<_> = label.do_not.iter().map(|text| text.id.clone()).collect();
        ids
    };
    let whole = kit::demo(SPRING_DAY);
    assert_eq!(said(&whole, "nettle-pot"), [""; 0]);
    assert!(said(&whole, "arborvitae-tea").contains(&"label-withheld".to_owned()));
    let unsorted = otherwise(SPRING_DAY, "pieces = 420\nevery-piece = true", "pieces = 20");
    assert!(said(&unsorted, "nettle-pot").contains(&"label-not-sorted".to_owned()));
    assert!(said(&unsorted, "nettle-0501").contains(&"label-not-sorted".to_owned()));
    let held = otherwise(SPRING_DAY, "Lamium album", "Conium maculatum");
    assert!(said(&held, "nettle-pot").contains(&"label-held".to_owned()));
    let no_pattern = otherwise(SPRING_DAY, "pattern = \"nettle-1\"\n", "");
    assert!(said(&no_pattern, "nettle-pot").contains(&"label-not-determined".to_owned()));
}

/// Cautions on labels and sheets of pots are published facts of the plant: they are there whatever
/// anybody said, and the same.
#[test]
fn no_label_and_no_sheet_of_a_pot_hangs_on_what_anybody_said_of_their_health() {
    let silent = |_: &str| "# Nobody said anything.\n".to_owned();
    let others = |said: &str| {
        said.replace("\"p05\"", "\"?\"").replace("\"p03\"", "\"p05\"").replace("\"?\"", "\"p03\"")
    };
    let bytes = |files: Vec<InputFile>| -> BTreeMap<String, String> {
        let ours = |named: &NamedPage| named.name.starts_with("brew-") || named.name == "labels";
        let all = written(files);
        all.iter().filter(|n| ours(n)).map(|n| (n.name.clone(), html(&n.page))).collect()
    };
    let said = bytes(kit::demo(SPRING_DAY));
    assert_eq!(said.len(), 6);
    assert!(said == bytes(kit::changed(SPRING_DAY, SPRING_HEALTH, silent)));
    assert!(said == bytes(kit::changed(SPRING_DAY, SPRING_HEALTH, others)));
    let evening = bytes(kit::demo(SPRING_EVENING));
    assert!(evening == bytes(kit::changed(SPRING_EVENING, SPRING_HEALTH, others)));
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
    let [one, other] = [(); 2].map(|()| shown(labels(kit::demo(SPRING_DAY), order.clone())));
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
        let files = otherwise(SPRING_EVENING, "Nettle leaf tea, dried", name);
        for paper in [Paper::A4, Paper::Letter] {
            for sheet in LabelSheet::sold(paper) {
                let order = LabelOrder {
                    size: Some(sheet.size()),
                    paper: Some(paper),
                    only: vec!["nettle-tea".to_owned()],
                    copies: None,
                };
                let page = shown(labels(files.clone(), order));
                assert!(each(&page).iter().all(|label| label.code.is_some()));
                let all = said(&page).replace('\n', "");
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
    let faults =
        answer(&WORLD, Request::Labels { files: kit::demo(SPRING_DAY), order }).unwrap_err();
    let said = Catalogue::english().faults(&faults);
    assert_eq!(faults.iter().count(), 3, "{said}");
    insta::assert_snapshot!(said);
}

#[test]
fn the_sheet_of_a_pot_says_what_a_cook_needs() {
    let page = kit::named(&written(kit::demo(SPRING_DAY)), "brew-nettle-tea");
    insta::assert_snapshot!(said(&page));
}

#[test]
fn a_pot_that_nobody_may_have_says_so_before_anything_else() {
    let page = kit::named(&written(kit::demo(SPRING_EVENING)), "brew-arborvitae-tea");
    let said = said(&page);
    assert!(said.find("Do not").unwrap() < said.find("What goes in").unwrap(), "{said}");
}

/// Of 2.25 l of water on 30 g of dried herb some 2.19 l run off: 14 cups of 150 ml and a rest.
#[test]
fn what_goes_home_gets_a_label_for_each_whole_share() {
    let dried = "stage = \"dried fully\"";
    let home = otherwise(SPRING_EVENING, dried, &format!("{dried}\ntaken-home = true"));
    let copies = |files: Vec<InputFile>| {
        let only = vec!["nettle-tea".to_owned()];
        labels(files, LabelOrder { only, ..LabelOrder::default() }).labels[0].copies
    };
    assert_eq!((copies(kit::demo(SPRING_DAY)), copies(home)), (1, 14));
}
