//! What runs from right to left is the mirror image of what runs from left to right.

use super::{Run, laid};
use crate::Press;
use page::{
    Block, Break, Catalogue, Column, Details, Fact, Format, Kind, Label, LabelLine, Labels, Level,
    Notice, NoticeKind, Page, Paper, Prose, Table, Words,
};

/// A word whose letters run the same way in either page.
const WORD: &str = "נועה";

fn page(language: &str, blocks: Vec<Block>) -> Page {
    let catalogue = Catalogue::new(language, []);
    let page = Words::new(&catalogue).page(Kind::Public, &ground::Text::new("notice-question"));
    Page { title: WORD.into(), ..page.with(blocks) }
}

/// Everything that has a side.
fn one_sided() -> Vec<Block> {
    let notice =
        |kind| Block::Notice(Notice { kind, head: Prose::new(), blocks: vec![Block::para(WORD)] });
    let table = Table {
        caption: WORD.into(),
        columns: vec![Column::words(WORD), Column::numbers(WORD), Column::words(WORD)],
        rows_have_heads: true,
        rows: vec![vec![WORD.into(), WORD.into(), WORD.into()]],
    };
    let details =
        Details { anchor: None, summary: WORD.into(), open: true, blocks: vec![Block::para(WORD)] };
    vec![
        Block::heading(Level::Section, WORD),
        Block::bullets([WORD, WORD]),
        Block::Ticks(vec![WORD.into()]),
        Block::Facts(vec![Fact::new(WORD, WORD)]),
        Block::Table(table),
        notice(NoticeKind::Question),
        notice(NoticeKind::DoNot),
        Block::Details(details),
        Block::lines(WORD, 1),
    ]
}

/// How far a run is from the start of its line.
type FromStart = fn(&Run) -> f64;

const FROM_LEFT: FromStart = |run| run.body.left - run.clip.left;
const FROM_RIGHT: FromStart = |run| run.clip.right - run.body.right;

/// Whether runs say the same on the same lines, equally far from where these start.
fn are_mirrored(left: &[Run], right: &[Run]) {
    let near = |one: f64, other: f64| (one - other).abs() < 0.1;
    assert_eq!(left.len(), right.len());
    for (left, right) in left.iter().zip(right) {
        let same = left.says.trim() == right.says.trim() && left.page == right.page;
        assert!(same && near(left.body.bottom, right.body.bottom), "{left}, {right}");
        assert!(near(FROM_LEFT(left), FROM_RIGHT(right)), "{left}, {right}");
    }
}

fn each_mirrored(format: Format, paper: Paper, blocks: &[Block]) {
    let press = Press::new().unwrap();
    let set = |language| {
        let page = page(language, blocks.to_vec()).on(format);
        let mut runs = laid(&press, &page, paper).unwrap();
        // The number of a page is of other pieces in a page that runs leftward.
        runs.retain(|run| !run.says.contains(['1', '/']));
        runs
    };
    let (left, right) = (set("en"), set("he"));
    assert!(left.iter().filter(|run| run.says.contains(WORD)).count() > 4);
    are_mirrored(&left, &right);
}

#[test]
fn a_page_that_runs_leftward_is_the_mirror_image_of_the_other() {
    each_mirrored(Format::Sheets, Paper::A4, &one_sided());
    each_mirrored(Format::Wide, Paper::Letter, &one_sided());
}

#[test]
fn the_panels_of_a_card_follow_each_other_leftward() {
    let fold = Block::Break(Break::Page);
    let panels: Vec<_> = (0..4).flat_map(|_| [fold.clone(), Block::para(WORD)]).skip(1).collect();
    each_mirrored(Format::Wallet, Paper::A4, &panels);
}

/// The code stands at the end of the upper part; labels themselves stay where the sheet has them.
#[test]
fn a_label_that_runs_leftward_is_mirrored_within_its_edges() {
    let label = Label {
        title: WORD.into(),
        scientific: Prose::new().taxon(WORD),
        do_not: Some(WORD.into()),
        beside: vec![LabelLine::new("", WORD)],
        below: vec![LabelLine::new("", WORD)],
        code: None,
        code_says: String::new(),
    };
    let sheet = desk::LabelSheet::usual(Paper::A4);
    let labels = Block::Labels(Labels { sheet, labels: vec![label; sheet.holds()] });
    let press = Press::new().unwrap();
    let on_labels = |language| {
        let mut runs = laid(&press, &page(language, vec![labels.clone()]), Paper::A4).unwrap();
        let last = runs.iter().map(|run| run.page).max().unwrap();
        runs.retain(|run| run.page == last);
        runs
    };
    let (left, right) = (on_labels("en"), on_labels("he"));
    assert_eq!(left.len(), 5 * sheet.holds());
    are_mirrored(&left, &right);
    let stay = |(left, right): (&Run, &Run)| left.clip.left == right.clip.left;
    assert!(left.iter().zip(&right).all(stay));
}
