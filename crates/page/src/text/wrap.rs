//! Prose into lines no wider than a column. Widths are those of a terminal: an emoji takes two
//! cells, an accent none.

use super::Style;
use crate::{Inline, Prose, Target};
use unicode_width::{UnicodeWidthChar, UnicodeWidthStr};

/// How letters look.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Face {
    Plain,
    Bold,
    Italic,
}

/// Letters of one look.
#[derive(Clone, Debug)]
struct Piece {
    face: Face,
    letters: String,
}

/// A line, or a word on its way into one.
#[derive(Clone, Debug, Default)]
pub(super) struct Line {
    pieces: Vec<Piece>,
    pub(super) width: usize,
}

impl Line {
    fn push(&mut self, face: Face, letters: &str) {
        match self.pieces.last_mut() {
            Some(last) if last.face == face => last.letters.push_str(letters),
            _ => self.pieces.push(Piece { face, letters: letters.to_owned() }),
        }
        // Measured as a whole, since an emoji may be joined of several.
        self.width = self.pieces.iter().map(|piece| piece.letters.width()).sum();
    }

    fn append(&mut self, other: &Line) {
        for piece in &other.pieces {
            self.push(piece.face, &piece.letters);
        }
    }

    /// The space between two words takes the look that both share, so that an italic name is
    /// one stretch.
    fn space(&mut self, next: &Line) {
        let before = self.pieces.last().map(|piece| piece.face);
        let after = next.pieces.first().map(|piece| piece.face);
        let face = if before == after { before } else { None };
        self.push(face.unwrap_or(Face::Plain), " ");
    }

    /// The line in the given style; every letter as bold as `all` says.
    pub(super) fn render(&self, style: Style) -> String {
        let piece = |piece: &Piece| match (style, piece.face) {
            (Style::Plain, _) | (_, Face::Plain) => piece.letters.clone(),
            (Style::Ansi, Face::Bold) => format!("\u{1b}[1m{}\u{1b}[22m", piece.letters),
            (Style::Ansi, Face::Italic) => format!("\u{1b}[3m{}\u{1b}[23m", piece.letters),
        };
        self.pieces.iter().map(piece).collect()
    }
}

/// Prose in lines no wider than `width`, its plain letters in `face`.
pub(super) fn wrap(prose: &Prose, width: Option<usize>, face: Face) -> Vec<Line> {
    let most = width.unwrap_or(usize::MAX).max(1);
    let mut lines = Vec::new();
    let mut line = Line::default();
    for word in words(prose, face) {
        let begun = !line.pieces.is_empty();
        if begun && line.width + 1 + word.width <= most {
            line.space(&word);
            line.append(&word);
            continue;
        }
        if begun {
            lines.push(std::mem::take(&mut line));
        }
        let mut parts = cut(word, most);
        line = parts.pop().unwrap_or_default();
        lines.extend(parts);
    }
    if !line.pieces.is_empty() || lines.is_empty() {
        lines.push(line);
    }
    lines
}

/// The words of prose: what stands between plain spaces. A non-breaking space is none.
fn words(prose: &Prose, plain: Face) -> Vec<Line> {
    let mut words = vec![Line::default()];
    for (face, letters) in prose.iter().flat_map(|inline| looks(inline, plain)) {
        for (at, part) in letters.split(' ').enumerate() {
            if at > 0 {
                words.push(Line::default());
            }
            if let (Some(word), false) = (words.last_mut(), part.is_empty()) {
                word.push(face, part);
            }
        }
    }
    words.retain(|word| !word.pieces.is_empty());
    words
}

/// A piece of prose as it looks on a terminal: an address stands behind the words that lead to it.
fn looks(inline: &Inline, plain: Face) -> Vec<(Face, String)> {
    let words = inline.words().to_owned();
    match inline {
        Inline::Text(_)
        | Inline::Said { strong: false, .. }
        | Inline::Number { .. }
        | Inline::Blank => vec![(plain, words)],
        Inline::Strong(_) | Inline::Said { strong: true, .. } => vec![(Face::Bold, words)],
        Inline::Taxon(_) => vec![(Face::Italic, words)],
        Inline::Code(_) => vec![(plain, format!("`{words}`"))],
        Inline::Link { to, .. } => match to {
            Target::Web(address) if *address != words => {
                vec![(plain, format!("{words} <{address}>"))]
            }
            _ => vec![(plain, words)],
        },
    }
}

/// A word in parts no wider than a line. A letter without width stays with the letter before it.
fn cut(word: Line, most: usize) -> Vec<Line> {
    if word.width <= most {
        return vec![word];
    }
    let mut parts = Vec::new();
    let mut part = Line::default();
    for piece in &word.pieces {
        for letter in letters(&piece.letters) {
            let mut longer = part.clone();
            longer.push(piece.face, letter);
            if longer.width > most && part.width > 0 {
                parts.push(std::mem::take(&mut part));
                part.push(piece.face, letter);
            } else {
                part = longer;
            }
        }
    }
    parts.push(part);
    parts
}

/// Each letter with what follows it without a width of its own: a selector may make it wider.
fn letters(words: &str) -> Vec<&str> {
    let wide = |letter: &char| letter.width().unwrap_or(0) > 0;
    let starts = words.char_indices().filter(|(at, letter)| *at == 0 || wide(letter));
    let starts: Vec<_> = starts.map(|(at, _)| at).chain([words.len()]).collect();
    let edges = starts.iter().zip(starts.iter().skip(1));
    edges.filter_map(|(from, to)| words.get(*from..*to)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn lines(prose: &Prose, width: usize) -> Vec<String> {
        wrap(prose, Some(width), Face::Plain).iter().map(|line| line.render(Style::Plain)).collect()
    }

    #[test]
    fn a_number_stays_with_its_unit() {
        let prose = Prose::from("take 12\u{a0}g of leaf");
        assert_eq!(lines(&prose, 8), ["take", "12\u{a0}g of", "leaf"]);
    }

    #[test]
    fn a_scientific_name_is_one_italic_stretch() {
        let prose = Prose::new().text("Not ").taxon("Conium maculatum").text(".");
        let line = &wrap(&prose, None, Face::Plain)[0];
        assert_eq!(line.render(Style::Ansi), "Not \u{1b}[3mConium maculatum\u{1b}[23m.");
    }

    #[test]
    fn an_emoji_takes_two_cells() {
        assert_eq!(lines(&Prose::from("🌿🌿🌿"), 5), ["🌿🌿", "🌿"]);
    }

    #[test]
    fn a_letter_that_a_selector_widens_goes_on_in_the_next_line() {
        assert_eq!(lines(&Prose::from("abc🕯\u{fe0f}"), 4), ["abc", "🕯\u{fe0f}"]);
    }

    #[test]
    fn a_hidden_mark_that_stands_alone_is_no_letter_to_lose() {
        let prose = Prose::from("\u{2068} ﯓ\u{2069}");
        assert_eq!(lines(&prose, 2), ["\u{2068} ﯓ\u{2069}"]);
    }

    proptest! {
        #[test]
        fn no_line_is_too_wide_and_no_letter_lost(words in "\\PC{0,200}", width in 2..40_usize) {
            let prose = Prose::new().said(&words);
            let wrapped = wrap(&prose, Some(width), Face::Plain);
            prop_assert!(wrapped.iter().all(|line| line.width <= width));
            let kept = |text: &str| text.chars().filter(|c| *c != ' ').collect::<String>();
            let all: String = wrapped.iter().map(|line| line.render(Style::Plain)).collect();
            prop_assert_eq!(kept(&all), kept(&prose.plain()));
        }
    }
}
