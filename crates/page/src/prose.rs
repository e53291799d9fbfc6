//! Prose: a run of words in reading order, some of them set apart.

use crate::clean::clean;
use ground::slug;

/// A place on a page that a link can lead to.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Anchor(String);

impl Anchor {
    /// The anchor of this name; what cannot stand in an address is left out.
    #[must_use]
    pub fn new(name: &str) -> Self {
        let slug = slug(name);
        Self(if slug.is_empty() { "here".to_owned() } else { slug })
    }

    /// The anchor as text, without `#`.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

/// A piece of prose.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Inline {
    /// Plain words.
    Text(String),
    /// Words that carry the sentence.
    Strong(String),
    /// Words that somebody else wrote, which may run against the line: a name, a note.
    Said {
        /// The words.
        words: String,
        /// Whether they carry the sentence.
        strong: bool,
    },
    /// A scientific name: Latin, in italics where that is possible.
    Taxon(String),
    /// A number, with its unit, and the place where its working stands.
    Number {
        /// The number as said.
        says: String,
        /// Where its working stands, if the page holds it.
        working: Option<Anchor>,
    },
    /// Words that lead elsewhere.
    Link {
        /// The words.
        says: String,
        /// Where they lead.
        to: Target,
    },
    /// Something to be typed or found in a file.
    Code(String),
    /// Room to write by hand: the rest of the line or cell.
    Blank,
}

/// What stands for room to write where nothing but letters can stand.
const BLANK: &str = "________";

/// Where a link leads.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Target {
    /// To a place on this page.
    Here(Anchor),
    /// To a web address.
    Web(String),
    /// To a page beside this one.
    Beside(String),
}

impl Target {
    /// A web address, when it is one: nothing else may stand in a link that came from a file.
    #[must_use]
    pub fn web(address: &str) -> Option<Self> {
        let plain = address.chars().all(|c| !c.is_control() && c != ' ');
        let scheme = ["https://", "http://"].iter().any(|scheme| address.starts_with(scheme));
        (plain && scheme).then(|| Self::Web(address.to_owned()))
    }

    /// A page beside this one, by its file name; folders and schemes are left out of the name.
    #[must_use]
    pub fn beside(file: &str) -> Self {
        Self::Beside(file.replace(['/', '\\', ':'], "-"))
    }
}

impl Inline {
    /// The words alone.
    #[must_use]
    pub fn words(&self) -> &str {
        match self {
            Self::Text(words)
            | Self::Strong(words)
            | Self::Said { words, .. }
            | Self::Taxon(words)
            | Self::Code(words) => words,
            Self::Number { says, .. } | Self::Link { says, .. } => says,
            Self::Blank => BLANK,
        }
    }
}

/// A run of words in reading order. It holds no control character and no hidden mark that turns what
/// stands beside it, wherever the words came from.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Prose(Vec<Inline>);

impl Prose {
    /// No words yet.
    #[must_use]
    pub const fn new() -> Self {
        Self(Vec::new())
    }

    /// With plain words after it.
    #[must_use]
    pub fn text(self, words: &str) -> Self {
        self.and(Inline::Text(clean(words)))
    }

    /// With words after it that somebody else wrote: a name, a note.
    #[must_use]
    pub fn said(self, words: &str) -> Self {
        self.and(Inline::Said { words: clean(words), strong: false })
    }

    /// With words after it that somebody else wrote and that carry the sentence.
    #[must_use]
    pub fn said_strong(self, words: &str) -> Self {
        self.and(Inline::Said { words: clean(words), strong: true })
    }

    /// With words after it that carry the sentence.
    #[must_use]
    pub fn strong(self, words: &str) -> Self {
        self.and(Inline::Strong(clean(words)))
    }

    /// With a scientific name after it.
    #[must_use]
    pub fn taxon(self, name: &str) -> Self {
        self.and(Inline::Taxon(clean(name)))
    }

    /// With a number after it, already said with its unit.
    #[must_use]
    pub fn number(self, says: &str) -> Self {
        self.and(Inline::Number { says: clean(says), working: None })
    }

    /// With a number after it that opens its working.
    #[must_use]
    pub fn worked(self, says: &str, working: &Anchor) -> Self {
        self.and(Inline::Number { says: clean(says), working: Some(working.clone()) })
    }

    /// With a link after it.
    #[must_use]
    pub fn link(self, says: &str, to: Target) -> Self {
        self.and(Inline::Link { says: clean(says), to })
    }

    /// With something to be typed after it.
    #[must_use]
    pub fn code(self, words: &str) -> Self {
        self.and(Inline::Code(clean(words)))
    }

    /// With room after it to write by hand.
    #[must_use]
    pub fn blank(self) -> Self {
        self.and(Inline::Blank)
    }

    /// With other prose after it.
    #[must_use]
    pub fn then(mut self, other: Self) -> Self {
        self.0.extend(other.0);
        self
    }

    /// The first so many letters of it, and an ellipsis.
    #[must_use]
    pub fn cut(&self, letters: usize) -> Self {
        let mut left = letters;
        let mut short = Self::new();
        for piece in &self.0 {
            let words: String = piece.words().chars().take(left).collect();
            left -= words.chars().count();
            let words = clean(&words);
            short = short.and(match piece {
                Inline::Strong(_) => Inline::Strong(words),
                Inline::Said { strong, .. } => Inline::Said { words, strong: *strong },
                Inline::Taxon(_) => Inline::Taxon(words),
                _ => Inline::Text(words),
            });
        }
        short.and(Inline::Text("…".to_owned()))
    }

    /// The same words, all of them carrying the sentence.
    #[must_use]
    pub(crate) fn emphasised(&self) -> Self {
        let strong = |piece: &Inline| match piece {
            Inline::Text(words) | Inline::Strong(words) => Inline::Strong(words.clone()),
            Inline::Blank => Inline::Blank,
            other => Inline::Said { words: other.words().to_owned(), strong: true },
        };
        Self(self.0.iter().map(strong).collect())
    }

    pub(crate) fn iter_mut(&mut self) -> std::slice::IterMut<'_, Inline> {
        self.0.iter_mut()
    }

    /// Its pieces, in order.
    pub fn iter(&self) -> std::slice::Iter<'_, Inline> {
        self.0.iter()
    }

    /// Whether it holds no words.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.iter().all(|piece| piece.words().is_empty())
    }

    /// The words alone.
    #[must_use]
    pub fn plain(&self) -> String {
        self.0.iter().map(Inline::words).collect()
    }

    fn and(mut self, piece: Inline) -> Self {
        self.0.push(piece);
        self
    }
}

impl From<&str> for Prose {
    fn from(words: &str) -> Self {
        Self::new().text(words)
    }
}

impl From<String> for Prose {
    fn from(words: String) -> Self {
        Self::new().text(&words)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_web_addresses_become_links() {
        assert!(Target::web("https://www.nist.gov/pml").is_some());
        assert_eq!(Target::web("javascript:alert(1)"), None);
        assert_eq!(Target::web("https://a b"), None);
        assert_eq!(
            Target::beside("../../etc/passwd"),
            Target::Beside("..-..-etc-passwd".to_owned())
        );
    }

    #[test]
    fn an_anchor_can_stand_in_an_address() {
        assert_eq!(Anchor::new("Working: tea, 1").as_str(), "working-tea-1");
        assert_eq!(Anchor::new("  ").as_str(), "here");
    }
}
