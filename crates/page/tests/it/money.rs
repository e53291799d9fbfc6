//! The pages about money and of those who come: what they show, and what they never ask.

use crate::kit::{self, SPRING_EVENING};
use desk::device::{Reply, Request, answer};
use desk::{InputFile, Paper, Plan, World};
use ground::Faults;
use page::{Block, Catalogue, Format, Inline, Page, Style, html, text};
use std::collections::BTreeMap;
use std::sync::LazyLock;

static WORLD: LazyLock<World> =
    LazyLock::new(|| kit::world(jiff::civil::date(2027, 4, 30).at(9, 0, 0, 0)));

/// An outing on which nothing is made, with these tables besides.
fn asked(tables: &str) -> Result<Plan, Faults> {
    let outing = r#"
[outing]
name = "A walk"
date = 2027-05-01
from = "10:00"
to = "12:00"
zone = "Europe/London"
region = "europe"
leader = "maren"
purpose = "paid-lesson"
[[reader]]
name = "maren"
called = "Maren Holt"
level = "leader"
"#;
    let file = InputFile::from_bytes("walk.toml", format!("{outing}{tables}").into_bytes());
    let request = Request::Plan { files: vec![file.unwrap()], reasons: false };
    answer(&WORLD, request).map(|reply| match reply {
        Reply::Plan(plan) => *plan,
        other => panic!("no plan: {other:?}"),
    })
}

fn plan(tables: &str) -> Plan {
    asked(tables).unwrap_or_else(|faults| panic!("{faults}"))
}

/// The tables about money of the demonstration.
fn demo() -> String {
    let said = kit::read(SPRING_EVENING);
    let (_, tables) = said.split_once("[money]").unwrap();
    let (tables, _) = tables.split_once("# Places, whose they are").unwrap();
    format!("[money]{tables}")
}

fn participants(names: &[String]) -> String {
    let one = |(at, name): (usize, &String)| {
        format!("[[participant]]\nname = \"p{at}\"\ncalled = \"{name}\"\n")
    };
    names.iter().enumerate().map(one).collect()
}

fn pages(plan: &Plan) -> (Option<Page>, Page) {
    let all = page::pages(plan, &BTreeMap::new(), Paper::A4, &kit::words());
    let named =
        |name: &str| all.iter().find(|page| page.name == name).map(|page| page.page.clone());
    (named("money"), named("sign-up").unwrap())
}

fn said(page: &Page) -> String {
    kit::said(page, Some(100))
}

#[test]
fn the_money_of_the_demonstration() {
    let (money, _) = pages(&plan(&demo()));
    insta::assert_snapshot!(said(&money.unwrap().opened()));
}

#[test]
fn the_list_for_those_who_come() {
    let names = ["Ansel Brookhouse", "Birte Calloway"].map(str::to_owned);
    let (_, list) = pages(&plan(&(demo() + &participants(&names))));
    assert_eq!(list.format, Format::Wide);
    insta::assert_snapshot!(text(&list, Some(160), Style::Plain));
}

#[test]
fn without_tables_about_money_there_is_no_page_about_it() {
    let (money, list) = pages(&plan(""));
    assert!(money.is_none());
    assert!(said(&list).contains("Not known: how many can come."));
}

#[test]
fn what_is_missing_is_an_open_line_and_never_a_guess() {
    let bare = "[money]\ncurrency = \"EUR\"\n";
    let money = said(&pages(&plan(bare)).0.unwrap());
    for what in ["what it costs", "what people pay", "how many can come", "what a payment costs"] {
        assert!(money.contains(&format!("Not known: {what}")), "{what}:\n{money}");
    }
    let amounts = money.matches('€').count();
    assert_eq!(amounts, 0, "{money}");
    let priced = said(&pages(&plan(&format!("{bare}price = \"28,00\"\nplaces = 12\n"))).0.unwrap());
    assert!(
        priced.contains("Not known: what it costs") && !priced.contains("Not known: what people")
    );
    assert!(!priced.contains("carries itself from"), "{priced}");
}

#[test]
fn there_is_a_line_for_every_place_and_never_fewer_than_people() {
    let rows = |page: &Page| {
        let tables = page.blocks.iter().filter_map(|block| match block {
            Block::Table(table) => Some(table),
            _ => None,
        });
        tables.map(|table| table.rows.clone()).next().unwrap()
    };
    let names: Vec<_> = (1..=40).map(|at| format!("Person {at}")).collect();
    let forty = pages(&plan(&(demo() + &participants(&names)))).1;
    assert_eq!(rows(&forty).len(), 40);
    let two = pages(&plan(&(demo() + &participants(&names[..2])))).1;
    assert_eq!(rows(&two).len(), 16);
    let open = pages(&plan(&participants(&names[..2]))).1;
    assert_eq!(rows(&open).len(), 8);
    let blank = |row: &Vec<page::Prose>| row[0].iter().any(|piece| *piece == Inline::Blank);
    assert_eq!(rows(&two).iter().filter(|row| blank(row)).count(), 14);
}

#[test]
fn names_of_every_kind_leave_the_list_in_one_piece() {
    let names =
        ["x".repeat(200), "مريم البستاني".to_owned(), "🌿🌿🌿".to_owned(), "<b>Bo</b>".to_owned()];
    let list = pages(&plan(&(demo() + &participants(&names)))).1;
    let shown = html(&list);
    assert!(shown.contains("مريم البستاني") && shown.contains("🌿🌿🌿"));
    assert!(shown.contains("&lt;b&gt;Bo") && !shown.contains("<b>Bo"));
    said(&list);
}

#[test]
fn a_fault_says_where_what_and_how_to_mend_it() {
    let codes = |tables: &str| -> Vec<(String, Option<String>, Option<u32>)> {
        let faults = asked(tables).expect_err(tables);
        let catalogue = Catalogue::english();
        faults
            .into_iter()
            .map(|fault| {
                for field in ["want", "mend"] {
                    let said = catalogue.say_field(&fault.details, field);
                    assert!(!said.contains('⟦') && !said.contains('{'), "{said}");
                }
                let said = catalogue.say(&fault.details);
                assert!(!said.contains('⟦') && !said.contains('{'), "{said}");
                (fault.code, fault.at.field, fault.at.line)
            })
            .collect()
    };
    let one = |tables: &str| {
        let all = codes(tables);
        assert_eq!(all.len(), 1, "{tables}: {all:?}");
        let (code, field, line) = all.into_iter().next().unwrap();
        assert!(line.is_some());
        (code, field.unwrap())
    };
    let money = "[money]\ncurrency = \"GBP\"\n";
    let is = |code: &str, field: &str| (code.to_owned(), field.to_owned());
    assert_eq!(one(&format!("{money}price = \"1,250\"")), is("unreadable-money", "price"));
    assert_eq!(one(&format!("{money}price = \"€28\"")), is("unreadable-money", "price"));
    assert_eq!(one(&format!("{money}price = \"-3\"")), is("unreadable-money", "price"));
    assert_eq!(one(&format!("{money}places = 0")), is("nothing-counted", "places"));
    assert_eq!(one(&format!("{money}places = 100000")), is("number-out-of-range", "places"));
    let fee = format!("{money}card-fee = {{ share = \"1.5\", fixed = \"0.25\" }}");
    assert_eq!(one(&fee), is("unreadable-money", "card-fee"));
    let rung = "{ price = \"20.00\", people = 4 }";
    assert_eq!(one(&format!("{money}scale = [{rung}, {rung}]")), is("name-twice", "scale"));
    assert_eq!(one("[money]\ncurrency = \"JPY\""), is("unknown-word", "currency"));
    let cost = |called: &str, per: &str| {
        format!("[[cost]]\ncalled = \"{called}\"\namount = \"5.00\"\nper = \"{per}\"\n")
    };
    assert_eq!(one(&cost("hall", "outing")), is("cost-without-currency", "amount"));
    assert_eq!(one(&format!("{money}{}", cost("hall", "day"))), is("unknown-word", "per"));
    let twice = cost("hall", "outing") + &cost("hall", "person");
    assert_eq!(one(&format!("{money}{twice}")), is("name-twice", "called"));
}

#[test]
fn the_order_of_costs_and_prices_changes_no_byte() {
    let demo = demo();
    let (head, costs) = demo.split_once("# What it costs").unwrap();
    let mut tables: Vec<_> = costs.split("[[cost]]").skip(1).collect();
    tables.reverse();
    let turned: String = tables.iter().map(|table| format!("[[cost]]{table}")).collect();
    let low = "{ price = \"20.00\", people = 4 }";
    let head = head.replace(&format!("{low}, "), "").replace("}]", &format!("}}, {low}]"));
    let turned = format!("{head}{turned}");
    let shown = |tables: &str| {
        let (money, list) = pages(&plan(tables));
        (html(&money.unwrap()), html(&list))
    };
    assert_eq!(shown(&demo), shown(&turned));
}
