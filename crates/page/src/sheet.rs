//! A page: a title, for whom it is, and its blocks.

use crate::large;
use crate::{Block, Prose};

/// Everything that a reader sees of one reply.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Page {
    /// What the page is.
    pub title: Prose,
    /// For whom it is.
    pub kind: Kind,
    /// Its language, as a BCP 47 tag such as `en`.
    pub language: String,
    /// A line at its head that says for whom it is, such as that only the leader may read it.
    pub band: Option<Prose>,
    /// Words of the link that skips to the content.
    pub skip: String,
    /// How large it is set.
    pub size: TypeSize,
    /// What it is printed on.
    pub format: Format,
    /// Its blocks, in reading order.
    pub blocks: Vec<Block>,
}

/// For whom a page is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// For whoever asked.
    Screen,
    /// For everybody: a hand-out, a label.
    Public,
    /// For the leader alone: it holds what people said about their health.
    Sealed,
}

/// How large a page is set.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum TypeSize {
    /// As usual.
    #[default]
    Normal,
    /// Large print: 20 points on paper, upright letters only.
    Large,
}

/// What a page is printed on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Format {
    /// Whole sheets, as many as it takes.
    #[default]
    Sheets,
    /// A whole sheet turned on its side, for wide tables.
    Wide,
    /// One side of half a sheet; in large print whole ones, as many as it takes.
    Half,
    /// One side of a card that folds in four to the size of a bank card, in large print of a whole
    /// sheet; a break between parts is a fold.
    Wallet,
}

impl Page {
    /// The same page, printed on this.
    #[must_use]
    pub fn on(mut self, format: Format) -> Self {
        self.format = format;
        self
    }

    /// The same page with these blocks after the others.
    #[must_use]
    pub fn with(mut self, blocks: impl IntoIterator<Item = Block>) -> Self {
        self.blocks.extend(blocks);
        self
    }

    /// The same page in large print, its wide tables spread out row by row.
    #[must_use]
    pub fn large(mut self) -> Self {
        self.size = TypeSize::Large;
        self.blocks = large::spread(self.blocks);
        self
    }

    /// The same page with everything open that opens on demand.
    #[must_use]
    pub fn opened(mut self) -> Self {
        self.blocks.iter_mut().for_each(Block::open);
        self
    }
}
