//! The fonts, compiled in, and which letters they can draw.
//!
//! All are under the SIL Open Font License 1.1; their notices are in `fonts/LICENSES.txt`.

use typst::foundations::Bytes;
use typst::text::{Font, FontBook};

/// What stands where no font has the letter.
const MISSING: char = '▯';

/// Andika sets the text: it was drawn for people who learn to read, with letters that are hard to
/// take for one another. Vollkorn sets headings; the others are asked for what Andika lacks.
const FILES: &[&[u8]] = &[
    include_bytes!("../fonts/Andika-Regular.ttf"),
    include_bytes!("../fonts/Andika-Bold.ttf"),
    include_bytes!("../fonts/Andika-Italic.ttf"),
    include_bytes!("../fonts/Andika-BoldItalic.ttf"),
    include_bytes!("../fonts/Vollkorn-Bold.ttf"),
    include_bytes!("../fonts/NotoSansHebrew-Regular.ttf"),
    include_bytes!("../fonts/NotoSansHebrew-Bold.ttf"),
    include_bytes!("../fonts/NotoSansArabic-Regular.ttf"),
    include_bytes!("../fonts/NotoSansArabic-Bold.ttf"),
    include_bytes!("../fonts/NotoSansSymbols2-Regular.ttf"),
];

/// The family that letters of drawings are set in.
pub(crate) const DRAWN: &str = "Andika";

pub(crate) struct Fonts {
    fonts: Vec<Font>,
}

impl Fonts {
    /// The fonts that are compiled in; nothing when one of them is damaged.
    pub(crate) fn embedded() -> Option<Self> {
        let font = |file: &&'static [u8]| Font::new(Bytes::new(*file), 0);
        Some(Self { fonts: FILES.iter().map(font).collect::<Option<_>>()? })
    }

    pub(crate) fn book(&self) -> FontBook {
        FontBook::from_fonts(&self.fonts)
    }

    pub(crate) fn get(&self, index: usize) -> Option<Font> {
        self.fonts.get(index).cloned()
    }

    /// The words as they can be drawn: what no font has becomes one frame, however many letters it
    /// was made of. Printing a file without a letter that it names would break PDF/A. Isolates are drawn
    /// as nothing, and turn lines.
    pub(crate) fn drawable(&self, words: &str) -> String {
        let mut drawn = String::with_capacity(words.len());
        for letter in words.chars() {
            if is_isolate(letter) || self.fonts.iter().any(|font| has(font, letter)) {
                drawn.push(letter);
            } else if !drawn.ends_with(MISSING) {
                drawn.push(MISSING);
            }
        }
        drawn
    }
}

fn has(font: &Font, letter: char) -> bool {
    font.info().coverage.contains(letter.into())
}

fn is_isolate(letter: char) -> bool {
    ('\u{2066}'..='\u{2069}').contains(&letter)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_that_no_font_has_become_one_frame() {
        let fonts = Fonts::embedded().unwrap();
        assert_eq!(
            fonts.drawable("Ødegård נועה نور ☐ ✓ ½ µg ≤ 5 °C"),
            "Ødegård נועה نور ☐ ✓ ½ µg ≤ 5 °C"
        );
        assert_eq!(fonts.drawable("Wen 文字 Li"), "Wen ▯ Li");
        assert_eq!(fonts.drawable("\u{2068}נועה\u{2069}"), "\u{2068}נועה\u{2069}");
    }
}
