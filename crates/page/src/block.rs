//! The kinds of block that a page is made of. Each has one look on a terminal, in a browser and on
//! paper.

mod label;
mod walk;

pub use label::{Label, LabelFace, LabelLine, Labels};

use crate::{Anchor, Drawing, Prose};

/// A part of a page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Block {
    /// A heading.
    Heading(Heading),
    /// A paragraph.
    Para(Prose),
    /// Points, with bullets or numbers.
    List(List),
    /// A table.
    Table(Table),
    /// Labels with their values.
    Facts(Vec<Fact>),
    /// A framed notice.
    Notice(Notice),
    /// A line that opens on demand.
    Details(Details),
    /// A drawing with its caption.
    Figure(Figure),
    /// Small drawings beside each other, as many in a row as fit.
    Figures(Vec<Figure>),
    /// Boxes to tick on paper.
    Ticks(Vec<Prose>),
    /// Lines to write on by hand.
    Lines(Lines),
    /// Blocks in large print, to be read from a step away.
    Large(Vec<Block>),
    /// Labels to stick on.
    Labels(Labels),
    /// A break between parts.
    Break(Break),
}

/// A heading.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Heading {
    /// How deep it stands.
    pub level: Level,
    /// What it says.
    pub says: Prose,
    /// The place that links lead to.
    pub anchor: Option<Anchor>,
}

/// How deep a heading stands below the title of the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// A section of the page.
    Section,
    /// A part of a section.
    Part,
    /// A point within a part.
    Point,
}

/// A list of points.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct List {
    /// What stands before each.
    pub marks: Marks,
    /// The points.
    pub items: Vec<Item>,
}

/// What stands before the points of a list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Marks {
    /// The order means nothing.
    Bullets,
    /// The order matters.
    Numbers,
    /// Numbers in small letters: what a page cites.
    Notes,
}

/// A point of a list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Item {
    /// What it says.
    pub says: Prose,
    /// What stands below it.
    pub under: Vec<Block>,
}

impl<P: Into<Prose>> From<P> for Item {
    fn from(says: P) -> Self {
        Self { says: says.into(), under: Vec::new() }
    }
}

/// A table with one row of column heads.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Table {
    /// What the table shows.
    pub caption: Prose,
    /// The columns, from left to right.
    pub columns: Vec<Column>,
    /// Whether the first cell of a row names the row.
    pub rows_have_heads: bool,
    /// The rows. A short row ends in empty cells; cells beyond the last column are not shown.
    pub rows: Vec<Vec<Prose>>,
}

/// A column of a table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Column {
    /// Its head.
    pub head: Prose,
    /// How its cells are set.
    pub align: Align,
}

/// How the cells of a column are set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Align {
    /// At the start: words.
    Start,
    /// At the end: numbers.
    End,
}

impl Column {
    /// A column of words.
    #[must_use]
    pub fn words(head: impl Into<Prose>) -> Self {
        Self { head: head.into(), align: Align::Start }
    }

    /// A column of numbers.
    #[must_use]
    pub fn numbers(head: impl Into<Prose>) -> Self {
        Self { head: head.into(), align: Align::End }
    }
}

/// A label with its value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fact {
    /// The label.
    pub label: Prose,
    /// The value.
    pub value: Prose,
    /// What stands below the value, such as its working.
    pub under: Vec<Block>,
}

impl Fact {
    /// A label with its value, and nothing below.
    #[must_use]
    pub fn new(label: impl Into<Prose>, value: impl Into<Prose>) -> Self {
        Self { label: label.into(), value: value.into(), under: Vec::new() }
    }
}

/// A framed notice. Its word and its frame tell its kind; colour tells nothing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Notice {
    /// Its kind, which chooses the frame.
    pub kind: NoticeKind,
    /// The word or sentence at its head.
    pub head: Prose,
    /// What it says.
    pub blocks: Vec<Block>,
}

/// Kinds of notice, from the mildest frame to the heaviest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum NoticeKind {
    /// Something is not known yet.
    Question,
    /// Something to mind.
    Caution,
    /// Something that must not be done.
    DoNot,
}

/// A line that opens on demand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Details {
    /// The place that links lead to: following one opens it.
    pub anchor: Option<Anchor>,
    /// The line.
    pub summary: Prose,
    /// Whether it stands open. On paper it always does.
    pub open: bool,
    /// What it opens; nothing where it is asked for only then.
    pub blocks: Vec<Block>,
}

/// A drawing with its caption.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Figure {
    /// The drawing; its description stands in for it where nothing can be drawn.
    pub drawing: Drawing,
    /// The caption.
    pub caption: Prose,
}

/// Lines to write on by hand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lines {
    /// What is written there.
    pub label: Prose,
    /// How many there are.
    pub count: u8,
}

/// A break between parts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Break {
    /// A line across.
    Rule,
    /// On paper, a new page.
    Page,
}

impl Block {
    /// A heading without an anchor.
    #[must_use]
    pub fn heading(level: Level, says: impl Into<Prose>) -> Self {
        Self::Heading(Heading { level, says: says.into(), anchor: None })
    }

    /// A heading that links can lead to.
    #[must_use]
    pub fn heading_at(level: Level, says: impl Into<Prose>, anchor: Anchor) -> Self {
        Self::Heading(Heading { level, says: says.into(), anchor: Some(anchor) })
    }

    /// A paragraph.
    #[must_use]
    pub fn para(says: impl Into<Prose>) -> Self {
        Self::Para(says.into())
    }

    /// Points with bullets.
    #[must_use]
    pub fn bullets(items: impl IntoIterator<Item = impl Into<Item>>) -> Self {
        Self::list(Marks::Bullets, items)
    }

    /// Points with numbers.
    #[must_use]
    pub fn numbered(items: impl IntoIterator<Item = impl Into<Item>>) -> Self {
        Self::list(Marks::Numbers, items)
    }

    /// What a page cites, with numbers, in small letters.
    #[must_use]
    pub fn notes(items: impl IntoIterator<Item = impl Into<Item>>) -> Self {
        Self::list(Marks::Notes, items)
    }

    fn list(marks: Marks, items: impl IntoIterator<Item = impl Into<Item>>) -> Self {
        let items = items.into_iter().map(Into::into).collect();
        Self::List(List { marks, items })
    }

    /// Lines to write on by hand.
    #[must_use]
    pub fn lines(label: impl Into<Prose>, count: u8) -> Self {
        Self::Lines(Lines { label: label.into(), count })
    }

    /// What opens in it at an anchor.
    fn opened_at(&self, anchor: &str) -> Option<&[Block]> {
        match self {
            Self::Details(details) => {
                let here = details.anchor.as_ref().is_some_and(|at| at.as_str() == anchor);
                if here { Some(&details.blocks) } else { opened_at(&details.blocks, anchor) }
            }
            Self::Notice(notice) => opened_at(&notice.blocks, anchor),
            Self::Large(blocks) => opened_at(blocks, anchor),
            Self::List(list) => list.items.iter().find_map(|item| opened_at(&item.under, anchor)),
            Self::Facts(facts) => facts.iter().find_map(|fact| opened_at(&fact.under, anchor)),
            _ => None,
        }
    }

    /// Opens every line in it that opens on demand.
    pub(crate) fn open(&mut self) {
        let open_all = |blocks: &mut Vec<Block>| blocks.iter_mut().for_each(Block::open);
        match self {
            Self::Details(details) => {
                details.open = true;
                open_all(&mut details.blocks);
            }
            Self::Notice(notice) => open_all(&mut notice.blocks),
            Self::Large(blocks) => open_all(blocks),
            Self::List(list) => list.items.iter_mut().for_each(|i| open_all(&mut i.under)),
            Self::Facts(facts) => facts.iter_mut().for_each(|f| open_all(&mut f.under)),
            Self::Heading(_)
            | Self::Para(_)
            | Self::Table(_)
            | Self::Figure(_)
            | Self::Figures(_)
            | Self::Ticks(_)
            | Self::Lines(_)
            | Self::Labels(_)
            | Self::Break(_) => {}
        }
    }
}

/// What opens at an anchor in any of these blocks.
pub(crate) fn opened_at<'b>(blocks: &'b [Block], anchor: &str) -> Option<&'b [Block]> {
    blocks.iter().find_map(|block| block.opened_at(anchor))
}
