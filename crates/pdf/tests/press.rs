//! What the press does with pages, good and bad.
#![expect(clippy::unwrap_used, reason = "a panic is how a test reports")]

use ground::Text;
use jiff::civil::{DateTime, date};
use page::{
    Block, Catalogue, Column, Format, Kind, Level, NoticeKind, Page, Paper, Prose, Table, Words,
};
use pdf::Press;

fn made() -> DateTime {
    date(2027, 5, 1).at(15, 10, 0, 0)
}

fn page(blocks: impl IntoIterator<Item = Block>) -> Page {
    let catalogue = Catalogue::english();
    Words::new(&catalogue).page(Kind::Public, &Text::new("notice-question")).with(blocks)
}

fn print(page: &Page) -> Vec<u8> {
    Press::new().unwrap().print(page, Paper::A4, made()).unwrap()
}

fn every_block() -> Vec<Block> {
    let catalogue = Catalogue::english();
    let words = Words::new(&catalogue);
    vec![
        Block::heading(Level::Point, "a heading that skips two steps"),
        Block::Para(Prose::from("a line to fill: ").blank()),
        Block::bullets(["one", "two"]),
        Block::Ticks(vec!["a box".into()]),
        Block::lines("notes", 3),
        words.ruler(15),
        words.notice(NoticeKind::Caution, [Block::para("mind the gap")]),
        words.notice(NoticeKind::DoNot, [Block::para("do not")]),
        Block::Table(names(&["Ada"])),
    ]
}

fn names(names: &[&str]) -> Table {
    Table {
        caption: "who comes".into(),
        columns: vec![Column::words("name"), Column::words("had")],
        rows_have_heads: true,
        rows: names
            .iter()
            .map(|name| vec![Prose::new().said(name), Prose::new().blank()])
            .collect(),
    }
}

#[test]
fn equal_pages_give_equal_bytes() {
    let page = page(every_block());
    let press = Press::new().unwrap();
    let first = press.print(&page, Paper::A4, made()).unwrap();
    assert!(first.starts_with(b"%PDF-1.7"));
    assert_eq!(first, press.print(&page, Paper::A4, made()).unwrap());
    assert_eq!(first, print(&page));
    assert_ne!(first, press.print(&page, Paper::Letter, made()).unwrap());
}

#[test]
fn every_format_and_large_print_take_every_block() {
    let press = Press::new().unwrap();
    for format in [Format::Sheets, Format::Wide] {
        for paper in [Paper::A4, Paper::Letter] {
            let page = page(every_block()).on(format);
            press.print(&page, paper, made()).unwrap();
            press.print(&page.large(), paper, made()).unwrap();
        }
    }
}

#[test]
fn names_that_nobody_foresaw_are_printed() {
    let long = "Wolfeschlegelsteinhausen".repeat(9);
    let strange = [
        long.as_str(),
        "נועה בן־דוד",
        "نور الهدى",
        "Ada 👩‍🌾🌿 Lovage",
        "文字",
        "#panic(\"no\") $x$ *b* `c` <d> @e // f /* g",
        "\\\"; pagebreak(); \"",
        "[#{ } ]",
    ];
    print(&page([Block::Table(names(&strange))]));
    print(&page(strange.map(|name| Block::Para(Prose::new().said(name)))));
}

#[test]
fn forty_people_fit_on_several_sheets() {
    print(&page([Block::Table(names(&["Ansel Brookhouse"; 40]))]));
}

#[test]
fn what_does_not_fit_on_one_side_is_a_fault_and_no_half_page() {
    let press = Press::new().unwrap();
    let few = page([Block::para("Call 112.")]);
    let many = page((0..80).map(|_| Block::para("Call, say where you are, keep what was eaten.")));
    for format in [Format::Half, Format::Wallet] {
        press.print(&few.clone().on(format), Paper::A4, made()).unwrap();
        let fault = press.print(&many.clone().on(format), Paper::A4, made()).unwrap_err();
        assert_eq!(fault.code, "page-does-not-fit");
    }
}
