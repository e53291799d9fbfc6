//! A set of entries; merging is union.

use crate::{Entry, Payload, School};
use ground::ContentId;
use std::collections::{BTreeMap, BTreeSet};

/// A set of entries, by identifier.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Journal {
    entries: BTreeMap<ContentId, Entry>,
}

impl Journal {
    /// An empty journal.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds an entry; one that is there already changes nothing.
    pub fn add(&mut self, entry: Entry) {
        self.entries.insert(entry.id(), entry);
    }

    /// The union of two journals: associative, commutative, and merging twice changes nothing.
    #[must_use]
    pub fn merge(mut self, other: Self) -> Self {
        self.entries.extend(other.entries);
        self
    }

    /// How many entries it holds, those taken back included.
    #[must_use]
    pub fn len(&self) -> usize {
        self.entries.len()
    }

    /// Whether it holds none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.entries.is_empty()
    }

    /// Every entry, in the order of identifiers.
    pub fn iter(&self) -> impl Iterator<Item = (&ContentId, &Entry)> {
        self.entries.iter()
    }

    /// The entries that stand, in the order in which they happened.
    ///
    /// A correction takes its entry back for good. A correction of a correction is an entry like
    /// any other and restores what it took back.
    #[must_use]
    pub fn standing(&self) -> Vec<(&ContentId, &Entry)> {
        let taken_back = self.taken_back();
        let mut standing: Vec<_> =
            self.entries.iter().filter(|(id, _)| !taken_back.contains(*id)).collect();
        standing.sort_by(|(a_id, a), (b_id, b)| (a.at, *a_id).cmp(&(b.at, *b_id)));
        standing
    }

    /// The state of the school that these entries make.
    #[must_use]
    pub fn fold(&self) -> School {
        School::of(&self.standing())
    }

    /// The entries that a standing correction takes back.
    fn taken_back(&self) -> BTreeSet<&ContentId> {
        let corrections: BTreeMap<_, _> = self
            .entries
            .iter()
            .filter_map(|(id, entry)| match &entry.what {
                Payload::Correction(correction) => Some((id, &correction.of)),
                _ => None,
            })
            .collect();
        corrections.iter().filter(|(id, _)| stands(id, &corrections)).map(|(_, of)| *of).collect()
    }
}

/// Whether a correction stands: whether no standing correction takes it back.
///
/// An identifier is a hash of the content it names, so corrections cannot point at each other in a
/// ring and the walk ends.
fn stands(id: &ContentId, corrections: &BTreeMap<&ContentId, &ContentId>) -> bool {
    !corrections.iter().any(|(by, of)| *of == id && stands(by, corrections))
}

impl FromIterator<Entry> for Journal {
    fn from_iter<I: IntoIterator<Item = Entry>>(entries: I) -> Self {
        let mut journal = Self::new();
        for entry in entries {
            journal.add(entry);
        }
        journal
    }
}
