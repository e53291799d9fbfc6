//! Words from outside, made fit to stand in a line: no control character steers a terminal, and no
//! hidden mark turns the reading direction of what stands beside it.

/// Marks the start of a scientific name in a sentence on its way through the catalogue.
pub(crate) const TAXON_STARTS: char = '\u{E000}';
/// Marks its end.
pub(crate) const TAXON_ENDS: char = '\u{E001}';

const ISOLATE: char = '\u{2068}';
const END_ISOLATE: char = '\u{2069}';

/// A sentence of our own, in which words from outside may already stand.
pub(crate) fn own(words: &str) -> String {
    words.chars().filter_map(kept).collect()
}

/// What somebody else wrote: also without isolates of its own, but set in one when it holds
/// letters that run from right to left, so that the sentence around it keeps its order.
pub(crate) fn foreign(words: &str) -> String {
    let words: String = own(words).chars().filter(|c| !is_isolate(*c)).collect();
    if words.chars().any(runs_leftward) { format!("{ISOLATE}{words}{END_ISOLATE}") } else { words }
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

fn is_isolate(character: char) -> bool {
    ('\u{2066}'..='\u{2069}').contains(&character)
}

/// Whether a letter belongs to a script written from right to left (the blocks that Unicode
/// reserves for such scripts).
fn runs_leftward(character: char) -> bool {
    matches!(character,
        '\u{0590}'..='\u{08FF}' | '\u{FB1D}'..='\u{FDFF}' | '\u{FE70}'..='\u{FEFF}'
        | '\u{10800}'..='\u{10FFF}' | '\u{1E800}'..='\u{1EFFF}')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_cannot_steer_the_terminal() {
        assert_eq!(foreign("Ida\x1b[2J\r\nB\u{0}ell\u{9b}"), "Ida[2J  Bell");
    }

    #[test]
    fn a_name_cannot_turn_the_line_around_it() {
        assert_eq!(foreign("a\u{202E}b\u{2069}c"), "abc");
        assert_eq!(foreign("נועה"), "\u{2068}נועה\u{2069}");
    }

    #[test]
    fn accents_and_emoji_stay() {
        assert_eq!(foreign("Zoë 🌿 Nguyễn"), "Zoë 🌿 Nguyễn");
    }
}
