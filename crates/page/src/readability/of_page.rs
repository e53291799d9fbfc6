//! How easily a page is read: its sentences, and nothing else that stands on it.

use super::{Counts, PlantNames, longer_than, readability};
use crate::{Block, Heading, Level, Page, Prose, Words};

/// How easily a page is read.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Reading {
    /// What its sentences hold.
    pub counts: Counts,
    /// Its sentences, block after block.
    pub texts: Vec<String>,
}

impl Reading {
    /// The sentences longer than this many words.
    #[must_use]
    pub fn longer_than(&self, words: u32, names: &PlantNames) -> Vec<String> {
        self.texts.iter().flat_map(|text| longer_than(text, words, names)).collect()
    }
}

impl Words<'_> {
    /// How easily a page is read, by the sentences of its paragraphs, points, boxes to tick and
    /// notices.
    ///
    /// No sentences are: headings, captions, the cells of tables, labels with their values, lines that
    /// open, drawings, the list of sources, and the marks behind a statement that say where it comes
    /// from.
    #[must_use]
    pub fn reading(&self, page: &Page, names: &PlantNames) -> Reading {
        let sources = self.word("sheet-sources");
        let mut in_sources = false;
        let mut texts = Vec::new();
        for block in &page.blocks {
            if let Block::Heading(Heading { level: Level::Section, says, .. }) = block {
                in_sources = says.plain() == sources;
            }
            if !in_sources {
                self.block(block, &mut texts);
            }
        }
        let each = texts.iter().map(|text| readability(text, names));
        Reading { counts: each.fold(Counts::default(), Counts::and), texts }
    }

    fn block(&self, block: &Block, texts: &mut Vec<String>) {
        let mut all = |blocks: &[Block]| blocks.iter().for_each(|block| self.block(block, texts));
        match block {
            Block::Notice(notice) => all(&notice.blocks),
            Block::Large(blocks) => all(blocks),
            Block::Details(details) => all(&details.blocks),
            Block::Facts(facts) => facts.iter().for_each(|fact| all(&fact.under)),
            Block::Para(says) => texts.push(self.unmarked(says)),
            Block::Ticks(ticks) => texts.extend(ticks.iter().map(|says| self.unmarked(says))),
            Block::List(list) => {
                for item in &list.items {
                    texts.push(self.unmarked(&item.says));
                    item.under.iter().for_each(|block| self.block(block, texts));
                }
            }
            Block::Heading(_)
            | Block::Table(_)
            | Block::Figure(_)
            | Block::Figures(_)
            | Block::Labels(_)
            | Block::Lines(_)
            | Block::Break(_) => {}
        }
    }

    /// Prose without the marks that say where it comes from.
    fn unmarked(&self, says: &Prose) -> String {
        let plain = without(&says.plain(), ('[', ']'), |inside| {
            inside.chars().all(|c| c.is_ascii_digit() || c == ',' || c.is_whitespace())
        });
        let standings = ["practice", "policy", "assumed", "remembered", "weak", "published"]
            .map(|standing| self.word(&format!("standing-{standing}")));
        without(&plain, ('(', ')'), |inside| {
            standings.iter().any(|standing| inside.ends_with(standing.as_str()))
                || inside.starts_with("source ")
                || inside.starts_with("sources ")
        })
    }
}

/// The text without what stands between these brackets, where it is such a mark.
fn without(text: &str, (opens, closes): (char, char), is_mark: impl Fn(&str) -> bool) -> String {
    let (mut kept, mut rest) = (String::new(), text);
    while let Some((before, after)) = rest.split_once(opens) {
        kept.push_str(before);
        match after.split_once(closes) {
            Some((inside, behind)) if is_mark(inside) => rest = behind,
            _ => {
                kept.push(opens);
                rest = after;
            }
        }
    }
    kept + rest
}
