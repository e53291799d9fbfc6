//! Which way a language is written, and words in it that run the other way.

use crate::{Block, Inline, Page, Prose};
use unic_langid::{CharacterDirection, LanguageIdentifier};

/// Starts an isolate whose first letter says which way it runs.
pub(crate) const ISOLATE: &str = "\u{2068}";
/// Starts an isolate that runs from left to right.
const LEFT_TO_RIGHT_ISOLATE: &str = "\u{2066}";
/// Starts an isolate that runs from right to left.
const RIGHT_TO_LEFT_ISOLATE: &str = "\u{2067}";
/// Ends the last isolate.
pub(crate) const END_ISOLATE: &str = "\u{2069}";

/// Which way the lines of a language run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// As in English.
    LeftToRight,
    /// As in Arabic and Hebrew.
    RightToLeft,
}

impl Direction {
    /// The direction of a language given as BCP 47 tag, by what Unicode's CLDR says of its script; from
    /// left to right where that is not known.
    ///
    /// ```
    /// use page::Direction;
    /// assert_eq!(Direction::of("he-IL"), Direction::RightToLeft);
    /// assert_eq!(Direction::of("az-Arab"), Direction::RightToLeft);
    /// assert_eq!(Direction::of("en"), Direction::LeftToRight);
    /// ```
    #[must_use]
    pub fn of(language: &str) -> Self {
        language.parse().map_or(Self::LeftToRight, |language| Self::of_known(&language))
    }

    pub(crate) fn of_known(language: &LanguageIdentifier) -> Self {
        match language.character_direction() {
            CharacterDirection::RTL => Self::RightToLeft,
            _ => Self::LeftToRight,
        }
    }

    /// The direction of the first letter that has one.
    pub(crate) fn of_words(words: &str) -> Self {
        match words.chars().find(|letter| letter.is_alphabetic()) {
            Some(letter) if runs_leftward(letter) => Self::RightToLeft,
            _ => Self::LeftToRight,
        }
    }

    /// A line of this direction as it stands where lines run from left to right.
    pub(crate) fn line(self, words: &str) -> String {
        match self {
            Self::LeftToRight => words.to_owned(),
            Self::RightToLeft => format!("{RIGHT_TO_LEFT_ISOLATE}{words}{END_ISOLATE}"),
        }
    }

    /// Words as they stand in a line of this direction: set in an isolate of their own where they hold
    /// anything that runs against it, so that the line around them keeps its order (Unicode Standard
    /// Annex 9). What is isolated already stays as it is.
    ///
    /// ```
    /// use page::Direction;
    /// let isolated = Direction::RightToLeft.isolated("0800 11");
    /// assert_eq!(isolated, "\u{2066}0800 11\u{2069}");
    /// assert_eq!(Direction::RightToLeft.isolated(&isolated), isolated);
    /// assert_eq!(Direction::LeftToRight.isolated("0800 11"), "0800 11");
    /// ```
    #[must_use]
    pub fn isolated(self, words: &str) -> String {
        if !bare(words).any(|letter| self.is_left_by(letter)) {
            return words.to_owned();
        }
        // Numbers alone have no first letter that says which way they run.
        let lettered = bare(words).any(char::is_alphabetic);
        let isolate = if lettered { ISOLATE } else { LEFT_TO_RIGHT_ISOLATE };
        format!("{isolate}{words}{END_ISOLATE}")
    }

    /// Whether a letter runs against this direction. Numbers run from left to right everywhere, and so do
    /// their groups: those of a telephone number must not change places.
    fn is_left_by(self, letter: char) -> bool {
        match self {
            Self::LeftToRight => runs_leftward(letter),
            Self::RightToLeft => letter.is_alphanumeric() && !runs_leftward(letter),
        }
    }
}

pub(crate) fn starts_isolate(character: char) -> bool {
    ('\u{2066}'..='\u{2068}').contains(&character)
}

pub(crate) fn ends_isolate(character: char) -> bool {
    character == '\u{2069}'
}

/// What stands in no isolate.
fn bare(words: &str) -> impl Iterator<Item = char> + '_ {
    let mut depth = 0_usize;
    words.chars().filter(move |letter| {
        if starts_isolate(*letter) {
            depth += 1;
        } else if ends_isolate(*letter) {
            depth = depth.saturating_sub(1);
            return false;
        }
        depth == 0
    })
}

/// Whether a letter belongs to a script written from right to left (the blocks that Unicode
/// reserves for such scripts).
fn runs_leftward(character: char) -> bool {
    matches!(character,
        '\u{0590}'..='\u{08FF}' | '\u{FB1D}'..='\u{FDFF}' | '\u{FE70}'..='\u{FEFF}'
        | '\u{10800}'..='\u{10FFF}' | '\u{1E800}'..='\u{1EFFF}')
}

impl Page {
    /// Which way its lines run.
    #[must_use]
    pub fn direction(&self) -> Direction {
        Direction::of(&self.language)
    }

    /// The same page, with every name, number and address isolated that runs against its lines.
    #[must_use]
    pub fn isolated(&self) -> Self {
        let direction = self.direction();
        let mut page = self.clone();
        let mut isolate = |prose: &mut Prose| prose.isolate(direction);
        isolate(&mut page.title);
        page.band.iter_mut().for_each(&mut isolate);
        page.blocks.iter_mut().for_each(|block: &mut Block| block.each_prose(&mut isolate));
        page
    }
}

impl Prose {
    fn isolate(&mut self, direction: Direction) {
        for piece in self.iter_mut() {
            match piece {
                Inline::Said { words, .. }
                | Inline::Taxon(words)
                | Inline::Code(words)
                | Inline::Number { says: words, .. }
                | Inline::Link { says: words, .. } => *words = direction.isolated(words),
                Inline::Text(_) | Inline::Strong(_) | Inline::Blank => {}
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Catalogue, Kind, MessageFile, Words, html};
    use ground::{Text, Unit};

    #[test]
    fn only_what_runs_against_the_line_is_isolated() {
        let (left, right) = (Direction::LeftToRight, Direction::RightToLeft);
        assert_eq!(left.isolated("Ida"), "Ida");
        assert_eq!(left.isolated("נועה"), "\u{2068}נועה\u{2069}");
        assert_eq!(right.isolated("נועה"), "נועה");
        assert_eq!(right.isolated("Ida"), "\u{2068}Ida\u{2069}");
        assert_eq!(right.isolated("– ☐"), "– ☐");
    }

    const HEBREW: &str = "
says = { $who } נולד { $by }: { $weighs }, { $what }
list-last = { $before } וגם { $last }
";

    fn hebrew() -> Catalogue {
        Catalogue::new("he", [MessageFile { language: "he", name: "test.ftl", text: HEBREW }])
    }

    /// Two names side by side would else change places, and a number with its unit.
    #[test]
    fn a_sentence_that_runs_leftward_keeps_the_order_of_its_names_and_numbers() {
        let catalogue = hebrew();
        let text = Text::new("says")
            .with("who", "Ida (Bell)")
            .with("by", catalogue.list(&["נועה".to_owned(), "Ida".to_owned()]))
            .amount("weighs", 12.0, Unit::Gram)
            .taxon("what", "Urtica dioica");
        assert_eq!(
            catalogue.say(&text),
            "\u{2068}Ida (Bell)\u{2069} נולד נועה וגם \u{2068}Ida\u{2069}: \
             \u{2068}12\u{a0}g\u{2069}, \u{2068}Urtica dioica\u{2069}"
        );
    }

    #[test]
    fn a_page_that_runs_leftward_isolates_in_elements() {
        let catalogue = hebrew();
        let says = Prose::from("נולד").taxon("Urtica dioica").said_strong("07700 900461");
        let page = Words::new(&catalogue).page(Kind::Public, &Text::new("says"));
        let page = page.with([Block::Para(says)]);
        assert_eq!(page.isolated().isolated(), page.isolated());
        let shown = html(&page);
        assert!(shown.contains("<html lang=\"he\" dir=\"rtl\">"));
        assert!(shown.contains("נולד<i lang=\"la\"><bdi>Urtica dioica</bdi></i>"), "{shown}");
        assert!(shown.contains("<strong><bdi dir=\"ltr\">07700 900461</bdi></strong>"));
    }

    #[test]
    fn a_script_that_is_named_weighs_more_than_the_language() {
        assert_eq!(Direction::of("ar-Latn"), Direction::LeftToRight);
        assert_eq!(Direction::of("no such tag"), Direction::LeftToRight);
    }
}
