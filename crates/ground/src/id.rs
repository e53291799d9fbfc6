//! Identifiers that come from content: equal content, equal identifier, whatever its place.

use serde::{Deserialize, Serialize};
use std::fmt;

/// An identifier made from what it names: the first 128 bits of a BLAKE3 hash, in hexadecimal.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct ContentId(String);

impl ContentId {
    /// The identifier of this content.
    #[must_use]
    pub fn of(content: &[u8]) -> Self {
        let hash = blake3::hash(content).to_hex();
        Self(hash.as_str().chars().take(32).collect())
    }

    /// The identifier that somebody wrote, when it has the form of one.
    #[must_use]
    pub fn read(written: &str) -> Option<Self> {
        let hexadecimal = written.bytes().all(|b| b.is_ascii_digit() || (b'a'..=b'f').contains(&b));
        (written.len() == 32 && hexadecimal).then(|| Self(written.to_owned()))
    }

    /// The identifier as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for ContentId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

/// A name in lower case with single hyphens, as used in identifiers and file names.
///
/// ```
/// assert_eq!(ground::slug("Taxus ×media, Mill Wood"), "taxus-x-media-mill-wood");
/// ```
#[must_use]
pub fn slug(name: &str) -> String {
    let mut slug = String::new();
    let mut gap = false;
    for character in name.chars() {
        let kept: String = match character {
            '×' => "x-".to_owned(),
            c if c.is_alphanumeric() => c.to_lowercase().collect(),
            _ => String::new(),
        };
        gap |= kept.is_empty();
        if kept.is_empty() {
            continue;
        }
        if gap && !slug.is_empty() && !slug.ends_with('-') {
            slug.push('-');
        }
        gap = false;
        slug.push_str(&kept);
    }
    slug
}
