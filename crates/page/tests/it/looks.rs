//! How a page looks: the text and HTML of a sample with every kind of block, and names that try to
//! break out of their place.

use crate::sample;
use page::*;
use proptest::prelude::*;
use unicode_width::UnicodeWidthStr;

#[test]
fn text_in_eighty_columns() {
    insta::assert_snapshot!(text(&sample::page(), Some(80), Style::Plain));
}

#[test]
fn text_without_a_width_with_everything_open() {
    insta::assert_snapshot!(text(&sample::page().opened(), None, Style::Plain));
}

#[test]
fn html_of_every_block() {
    let said = html(&sample::page());
    // The style sheet is its own file; here it would drown the page.
    let (head, rest) = said.split_once("<style>").unwrap();
    let (_, body) = rest.split_once("</style>").unwrap();
    insta::assert_snapshot!(format!("{head}<style></style>{body}").replace("><", ">\n<"));
}

#[test]
fn equal_pages_are_equal_bytes() {
    assert_eq!(html(&sample::page()), html(&sample::page()));
}

#[test]
fn no_line_is_wider_than_the_terminal() {
    for width in [40, 52, 80, 120] {
        let said = text(&sample::page().opened(), Some(width), Style::Plain);
        for line in said.lines() {
            assert!(line.width() <= width, "{width}: {line}");
        }
    }
}

#[test]
fn no_escape_leaves_for_a_pipe_and_only_letters_change_on_a_terminal() {
    let plain = text(&sample::page(), Some(80), Style::Plain);
    assert!(!plain.contains('\u{1b}'));
    let styled = text(&sample::page(), Some(80), Style::Ansi);
    let codes = ["\u{1b}[1m", "\u{1b}[22m", "\u{1b}[3m", "\u{1b}[23m"];
    let bare = codes.iter().fold(styled, |text, code| text.replace(code, ""));
    assert_eq!(bare, plain);
}

fn one(block: Block) -> Page {
    let catalogue = sample::catalogue();
    let page = Words::new(&catalogue).page(Kind::Public, &ground::Text::new("list-none"));
    page.with([block])
}

#[test]
fn a_name_cannot_write_html() {
    let name = "<script>alert(1)</script>\"onload='x' & co";
    let everywhere = [
        Block::Para(Prose::new().said(name).strong(name).taxon(name).code(name)),
        Block::Para(Prose::new().worked(name, &Anchor::new(name))),
        Block::Para(Prose::new().link(name, Target::beside(name))),
        Block::heading_at(Level::Section, name, Anchor::new(name)),
        Block::Ticks(vec![Prose::from(name)]),
        Block::Facts(vec![Fact::new(name, name)]),
    ];
    for block in everywhere {
        let said = html(&one(block));
        assert!(!said.contains("<script") && !said.contains("\"onload"), "{said}");
        assert!(said.contains("&lt;script&gt;"));
    }
}

#[test]
fn a_long_name_wraps_and_a_name_of_emoji_keeps_its_column() {
    let long = "x".repeat(200);
    let table = |name: &str| {
        Block::Table(Table {
            caption: Prose::from("Names"),
            columns: vec![Column::words("Name"), Column::numbers("Cups")],
            rows_have_heads: false,
            rows: vec![vec![Prose::new().said(name), Prose::from("3")]],
        })
    };
    let said = text(&one(table(&long)), Some(80), Style::Plain);
    assert_eq!(said.matches('x').count(), 200);
    assert!(said.lines().all(|line| line.chars().count() <= 80));
    let said = text(&one(table("Zoë 🌿 נועה")), Some(80), Style::Plain);
    insta::assert_snapshot!(said);
}

#[test]
fn a_table_too_wide_for_the_terminal_stands_row_by_row() {
    let columns = (0..12).map(|n| Column::words(format!("column {n}"))).collect();
    let cells = (0..12).map(|n| Prose::from(format!("cell {n}"))).collect();
    let table = Block::Table(Table {
        caption: Prose::from("Many columns"),
        columns,
        rows_have_heads: false,
        rows: vec![cells],
    });
    let said = text(&one(table), Some(60), Style::Plain);
    assert!(said.contains("• column 0: cell 0\n  column 1: cell 1\n"), "{said}");
}

#[test]
fn a_page_in_a_language_from_right_to_left_runs_that_way() {
    let mut page = sample::page();
    assert!(!html(&page).contains("dir="));
    page.language = "he-IL".to_owned();
    assert!(html(&page).contains("<html lang=\"he-IL\" dir=\"rtl\">"));
}

#[test]
fn large_print_is_marked_and_a_sealed_page_says_so() {
    let said = html(&sample::page().large());
    assert!(said.contains("<html lang=\"en\" class=\"large\">"));
    assert!(said.contains("<body class=\"sealed\">") && said.contains("For the leader only."));
    assert!(said.contains("noindex"));
}

proptest! {
    #[test]
    fn no_table_is_wider_than_the_terminal(
        rows in prop::collection::vec(prop::collection::vec("\\PC{0,60}", 0..7), 0..4),
        width in 24..100_usize,
    ) {
        let table = Table {
            caption: Prose::from("Cells"),
            columns: (0..6).map(|n| Column::numbers(format!("column {n}"))).collect(),
            rows_have_heads: true,
            rows: rows.iter().map(|row| row.iter().map(|c| Prose::new().said(c)).collect()).collect(),
        };
        let said = text(&one(Block::Table(table)), Some(width), Style::Plain);
        for line in said.lines() {
            prop_assert!(line.width() <= width, "{}: {}", line.width(), line);
        }
    }
}
