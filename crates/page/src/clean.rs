//! Words from outside, made fit to stand in a line: no control character steers a terminal, and no
//! hidden mark turns the reading direction of what stands beside it.

use crate::direction::{ends_isolate, starts_isolate};

/// Marks the start of a scientific name in a sentence on its way through the catalogue.
pub(crate) const TAXON_STARTS: char = '\u{E000}';
/// Marks its end.
pub(crate) const TAXON_ENDS: char = '\u{E001}';

/// Words without anything hidden, but for isolates that end within them.
pub(crate) fn clean(words: &str) -> String {
    let mut cleaned: Vec<char> = words.chars().filter_map(kept).collect();
    for at in unmatched(&cleaned).into_iter().rev() {
        cleaned.remove(at);
    }
    cleaned.into_iter().collect()
}

fn kept(character: char) -> Option<char> {
    match character {
        '\n' | '\r' | '\t' | '\u{2028}' | '\u{2029}' => Some(' '),
        '\u{061C}' | '\u{200E}' | '\u{200F}' | '\u{202A}'..='\u{202E}' => None,
        TAXON_STARTS | TAXON_ENDS => None,
        c if c.is_control() => None,
        c => Some(c),
    }
}

/// Where isolates stand that do not end, and ends of none.
fn unmatched(characters: &[char]) -> Vec<usize> {
    let mut open = Vec::new();
    let mut ends = Vec::new();
    for (at, character) in characters.iter().enumerate() {
        if starts_isolate(*character) {
            open.push(at);
        } else if ends_isolate(*character) && open.pop().is_none() {
            ends.push(at);
        }
    }
    ends.extend(open);
    ends.sort_unstable();
    ends
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_cannot_steer_the_terminal() {
        assert_eq!(clean("Ida\x1b[2J\r\nB\u{0}ell\u{9b}"), "Ida[2J  Bell");
    }

    #[test]
    fn a_name_cannot_turn_the_line_around_it() {
        assert_eq!(clean("a\u{202E}b\u{2069}c\u{2067}d"), "abcd");
        assert_eq!(clean("\u{2068}נועה\u{2069}"), "\u{2068}נועה\u{2069}");
    }

    #[test]
    fn accents_and_emoji_stay() {
        assert_eq!(clean("Zoë 🌿 Nguyễn"), "Zoë 🌿 Nguyễn");
    }
}
