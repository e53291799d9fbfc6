//! Names of plants, which count as one word each.

use std::collections::BTreeSet;

/// Names that count as one word each.
#[derive(Clone, Debug, Default)]
pub struct PlantNames(BTreeSet<(std::cmp::Reverse<usize>, String)>);

impl PlantNames {
    /// No names.
    #[must_use]
    pub fn none() -> Self {
        Self::default()
    }

    /// These names, as they are written or with any case of their letters.
    pub fn of<N: AsRef<str>>(names: impl IntoIterator<Item = N>) -> Self {
        let lower = |name: N| name.as_ref().trim().to_lowercase();
        let names = names.into_iter().map(lower).filter(|name| name.len() > 2);
        Self(names.map(|name| (std::cmp::Reverse(name.len()), name)).collect())
    }

    /// The text with each name, and with a second name in brackets behind it, as one short word; the
    /// longest names first.
    pub(super) fn hide(&self, text: &str) -> String {
        let mut text = text.to_owned();
        for (_, name) in &self.0 {
            text = hide_one(&text, name);
        }
        text.replace(&format!("{NAME} ({NAME})"), NAME).replace(&format!("{NAME}, {NAME}"), NAME)
    }
}

/// What stands for a name: one word of one syllable.
const NAME: &str = "plant";

fn hide_one(text: &str, name: &str) -> String {
    let lower = text.to_lowercase();
    if lower.len() != text.len() {
        // Letters whose small form is longer would move every place in the text.
        return text.to_owned();
    }
    let (mut hidden, mut at) = (String::new(), 0);
    for (found, _) in lower.match_indices(name) {
        let end = found + name.len();
        let inside = |side: Option<char>| side.is_some_and(char::is_alphanumeric);
        let before = text.get(..found).and_then(|before| before.chars().next_back());
        let after = text.get(end..).and_then(|after| after.chars().next());
        if found < at || inside(before) || inside(after) {
            continue;
        }
        hidden.push_str(text.get(at..found).unwrap_or_default());
        hidden.push_str(NAME);
        at = end;
    }
    hidden.push_str(text.get(at..).unwrap_or_default());
    hidden
}
