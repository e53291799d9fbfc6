//! Where a fact comes from, and how far it may be trusted.

use serde::{Deserialize, Serialize};
use std::fmt;

/// The identifier of a source in the herbal's list of sources.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct SourceId(pub String);

impl fmt::Display for SourceId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl From<&str> for SourceId {
    fn from(id: &str) -> Self {
        Self(id.to_owned())
    }
}

/// What kind of text a source is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum SourceKind {
    /// A flora, or a botanical database of that rank.
    Flora,
    /// A monograph, pharmacopoeia or handbook.
    Monograph,
    /// A paper in a journal.
    Paper,
    /// A government or an authority.
    Government,
    /// An extension service, museum, poison centre or teaching page.
    Extension,
    /// A published standard or law.
    Standard,
    /// A page of lesser weight.
    Page,
}

/// A published text that facts are taken from.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Source {
    /// The identifier by which facts name it.
    pub id: SourceId,
    /// Title, with edition, volume and page where known.
    pub title: String,
    /// Who wrote or published it, and when.
    pub author: String,
    /// Where it can be found. Left out for a page whose address may not be given: such a source is
    /// weak.
    pub address: Option<String>,
    /// What kind of text it is.
    pub kind: SourceKind,
    /// Whether it is a weak source: a digest, a shop's or hobby page, an address left out.
    pub weak: bool,
}

/// How far a fact may be trusted. Ordered from the strongest to the weakest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Standing {
    /// Read in a published source.
    Published,
    /// Read in a published but weak source: a digest, a page without an address.
    Weak,
    /// What makers do; no authority behind it: *common practice, no source*.
    Practice,
    /// A choice that the leader owns: *policy, no source*.
    Policy,
    /// Supposed for want of a measurement, and said so.
    Assumed,
    /// Remembered and not looked up: *from memory*.
    Remembered,
}

impl Standing {
    /// Whether a fact of this standing may help to clear a plant or a person.
    ///
    /// What is remembered, supposed, or merely customary may stop somebody; it clears nobody.
    #[must_use]
    pub fn may_clear(self) -> bool {
        matches!(self, Self::Published | Self::Weak)
    }
}

/// The sources of a fact and its standing.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Sourcing {
    /// How far it may be trusted.
    pub standing: Standing,
    /// The sources, in the order given; empty for what has none.
    #[serde(default)]
    pub sources: Vec<SourceId>,
}

impl Sourcing {
    /// Published in these sources.
    #[must_use]
    pub fn published(sources: impl IntoIterator<Item = impl Into<SourceId>>) -> Self {
        let sources = sources.into_iter().map(Into::into).collect();
        Self { standing: Standing::Published, sources }
    }

    /// Of this standing, with no source.
    #[must_use]
    pub fn bare(standing: Standing) -> Self {
        Self { standing, sources: Vec::new() }
    }

    /// Whether the fact may help to clear a plant or a person.
    #[must_use]
    pub fn may_clear(&self) -> bool {
        self.standing.may_clear()
    }
}

/// A value with its sources.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Sourced<T> {
    /// The value.
    pub value: T,
    /// Where it comes from.
    pub from: Sourcing,
}

impl<T> Sourced<T> {
    /// A value with its sources.
    #[must_use]
    pub fn new(value: T, from: Sourcing) -> Self {
        Self { value, from }
    }

    /// Whether the value may help to clear a plant or a person.
    #[must_use]
    pub fn may_clear(&self) -> bool {
        self.from.may_clear()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_was_read_somewhere_may_clear() {
        let may: Vec<_> = [
            Standing::Published,
            Standing::Weak,
            Standing::Practice,
            Standing::Policy,
            Standing::Assumed,
            Standing::Remembered,
        ]
        .into_iter()
        .filter(|s| s.may_clear())
        .collect();
        assert_eq!(may, [Standing::Published, Standing::Weak]);
    }
}
