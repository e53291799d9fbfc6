//! Mix-ups that were told: how they are read, laid over, and what is wrong with them where it stands.

use crate::check::{found, report};
use crate::small::{faults, files, only, said};
use ground::{Month, Organ, Part, Region, Standing};
use herbal::{Herbal, Lack, MixUp, MonthFrom, TextFile};

const PATH: &str = "mix-ups/leaves.toml";

const ROW: &str = r#"[[mix_up]]
id = "hemlock-for-nettle"
was = "Conium maculatum"
taken_for = "Urtica dioica"
part = "leaf"
months = [4, 3]
month_from = "source"
region = "europe"
people = 2
deaths = 1
organs = ["leaf", "stem"]
says = "Invented for a test."
src = ["flora"]
"#;

fn with(text: &str) -> Vec<TextFile> {
    let mut files = files();
    files.push(TextFile { path: PATH.to_owned(), text: text.to_owned() });
    files
}

/// The one fault that a change of the row brings.
fn at(from: &str, to: &str) -> (u32, u32, String, String) {
    assert!(ROW.contains(from), "{from}");
    let (file, line, column, code, got) = only(&with(&ROW.replacen(from, to, 1)));
    assert_eq!(file, PATH);
    (line, column, code, got)
}

fn is(line: u32, column: u32, code: &str, got: &str) -> (u32, u32, String, String) {
    (line, column, code.to_owned(), got.to_owned())
}

fn told(herbal: &Herbal) -> Vec<&MixUp> {
    herbal.flora.mix_ups().collect()
}

#[test]
fn a_mix_up_is_read_with_everything_it_tells() {
    let herbal = Herbal::read(&with(ROW)).unwrap();
    let [row] = told(&herbal)[..] else { panic!("there is one") };
    let months: Vec<_> = row.months.iter().copied().map(Month::number).collect();
    assert_eq!((row.was.as_str(), row.taken_for.as_str()), ("Conium maculatum", "Urtica dioica"));
    assert_eq!((row.part, months, row.month_from), (Part::Leaf, vec![4, 3], MonthFrom::Source));
    assert_eq!((row.region, row.people, row.deaths), (Some(Region::Europe), Some(2), Some(1)));
    assert_eq!(row.organs, [Organ::Leaf, Organ::Stem]);
    assert_eq!(row.from.standing, Standing::Published);
}

#[test]
fn what_the_source_does_not_tell_is_left_out() {
    let text = ROW.replace("region = \"europe\"\npeople = 2\ndeaths = 1\n", "");
    let herbal = Herbal::read(&with(&text)).unwrap();
    let row = told(&herbal)[0];
    assert_eq!((row.region, row.people, row.deaths), (None, None, None));
}

#[test]
fn each_thing_that_can_be_wrong_is_found_where_it_stands() {
    assert_eq!(at("Conium maculatum", "Conium"), is(3, 7, "no-sheet", "Conium"));
    assert_eq!(at("Urtica dioica", "Urtica urens"), is(4, 13, "no-sheet", "Urtica urens"));
    let itself = at("Urtica dioica", "Conium maculatum");
    assert_eq!(itself, is(4, 13, "mix-up-itself", "Conium maculatum"));
    assert_eq!(at("\"stem\"", "\"stalk\""), is(11, 19, "unknown-word", "stalk"));
    assert_eq!(at("[\"leaf\", \"stem\"]", "[]"), is(11, 10, "mix-up-empty", "organs"));
    assert_eq!(at("part = \"leaf\"", "part = \"needle\""), is(5, 8, "unknown-word", "needle"));
    assert_eq!(at("[4, 3]", "[4, 13]"), is(6, 14, "no-month", "13"));
    assert_eq!(at("[4, 3]", "[-4]"), is(6, 11, "no-month", "-4"));
    assert_eq!(at("[4, 3]", "[]"), is(6, 10, "mix-up-empty", "months"));
    assert_eq!(at("\"source\"", "\"guess\""), is(7, 14, "unknown-word", "guess"));
    assert_eq!(at("\"europe\"", "\"asia\""), is(8, 10, "unknown-word", "asia"));
    assert_eq!(at("deaths = 1", "deaths = 3"), is(10, 10, "mix-up-deaths", "3"));
    assert_eq!(at("[\"flora\"]", "[\"flor\"]"), is(13, 7, "unknown-source", "flor"));
    assert_eq!(at("src = [\"flora\"]\n", ""), is(2, 6, "no-source", ""));
    assert_eq!(at("people", "eaters").2, "unreadable-toml");
}

#[test]
fn a_mix_up_is_told_once() {
    let all = faults(&with(&format!("{ROW}\n{ROW}")));
    let list: Vec<_> = all.iter().map(said).collect();
    let twice =
        (PATH.to_owned(), 16, 6, "mix-up-twice".to_owned(), "hemlock-for-nettle".to_owned());
    assert_eq!(list, [twice]);
}

#[test]
fn files_laid_over_replace_a_known_mix_up_and_add_others() {
    let base = Herbal::read(&with(ROW)).unwrap();
    let mine = format!(
        "{}\n{}",
        ROW.replace("deaths = 1", "deaths = 0"),
        ROW.replace("hemlock-for-nettle", "again")
    );
    let over = base.overlay(&[TextFile { path: "mix-ups/mine.toml".to_owned(), text: mine }]);
    let over = over.unwrap();
    let deaths: Vec<_> = told(&over).iter().map(|row| (row.id.as_str(), row.deaths)).collect();
    assert_eq!(deaths, [("again", Some(1)), ("hemlock-for-nettle", Some(0))]);
    let untouched = base.overlay(&[]).unwrap();
    assert_eq!(told(&untouched), told(&base));
}

#[test]
fn a_sheet_that_does_not_warn_of_what_has_happened_is_found() {
    // The nettle's sheet warns of hemlock, and not the other way round.
    let lacks = found(&report(&with(ROW)), "herbal-mix-up-unconfirmed");
    assert_eq!(lacks, [(Lack::Contradictory, PATH.to_owned(), 2)]);
}
