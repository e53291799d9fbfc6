//! Pseudo-locales: the English messages in letters of another look, to see how pages hold in other
//! languages. Arguments and the syntax of messages stay.
#![allow(dead_code, reason = "tests and example each take some of it")]

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement, Resource};
use fluent_syntax::{parser, serializer};
use page::{Catalogue, MESSAGE_FILES, MessageFile};

/// How much longer than English other languages are, in a sentence.
const LONGER: f64 = 0.4;

/// A language that is no language, for what it does to pages.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Pseudo {
    /// English as it is.
    English,
    /// Every letter that can have an accent has one, and sentences are longer by two fifths.
    Accented,
    /// Every letter is a Hebrew one.
    Hebrew,
    /// Every letter is an Arabic one.
    Arabic,
}

impl Pseudo {
    pub(crate) const ALL: [Self; 4] = [Self::English, Self::Accented, Self::Hebrew, Self::Arabic];

    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::English => "english",
            Self::Accented => "accented",
            Self::Hebrew => "hebrew",
            Self::Arabic => "arabic",
        }
    }

    /// The tag under which the pages go; fr stands in for a language with accents.
    pub(crate) fn tag(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::Accented => "fr",
            Self::Hebrew => "he",
            Self::Arabic => "ar",
        }
    }

    /// The English messages in this pseudo-locale.
    pub(crate) fn catalogue(self) -> Catalogue {
        let english = MESSAGE_FILES.iter().filter(|file| file.language == "en");
        let said: Vec<_> = english.map(|file| (file.name, self.messages(file.text))).collect();
        let file = |(name, text): &'_ (&'static str, String)| (*name, text.clone());
        let said: Vec<_> = said.iter().map(file).collect();
        let files =
            said.iter().map(|(name, text)| MessageFile { language: self.tag(), name, text });
        Catalogue::new(self.tag(), files)
    }

    fn messages(self, text: &str) -> String {
        let mut read: Resource<String> = match parser::parse(text.to_owned()) {
            Ok(read) | Err((read, _)) => read,
        };
        for entry in &mut read.body {
            if let Entry::Message(message) = entry {
                message.value.iter_mut().for_each(|value| self.pattern(value));
                message.attributes.iter_mut().for_each(|field| self.pattern(&mut field.value));
            }
        }
        serializer::serialize(&read)
    }

    fn pattern(self, pattern: &mut Pattern<String>) {
        for element in &mut pattern.elements {
            match element {
                PatternElement::TextElement { value } => *value = self.words(value),
                PatternElement::Placeable { expression } => self.expression(expression),
            }
        }
    }

    fn expression(self, expression: &mut Expression<String>) {
        match expression {
            Expression::Select { variants, .. } => {
                variants.iter_mut().for_each(|variant| self.pattern(&mut variant.value));
            }
            Expression::Inline(InlineExpression::Placeable { expression }) => {
                self.expression(expression);
            }
            Expression::Inline(_) => {}
        }
    }

    /// Words in this pseudo-locale.
    pub(crate) fn words(self, words: &str) -> String {
        match self {
            Self::English => words.to_owned(),
            Self::Accented => accented(words),
            Self::Hebrew => words.chars().map(|letter| one_of(HEBREW, letter)).collect(),
            Self::Arabic => words.chars().map(|letter| one_of(ARABIC, letter)).collect(),
        }
    }
}

/// Letters with accents; vowels are doubled as often as makes the sentence so much longer.
fn accented(words: &str) -> String {
    let mut short = 0.0;
    let mut said = String::new();
    for letter in words.chars() {
        let shown = accent(letter);
        said.push(shown);
        short += if letter.is_alphabetic() { LONGER } else { 0.0 };
        while short >= 1.0 && "aeiouAEIOU".contains(letter) {
            said.extend(shown.to_lowercase());
            short -= 1.0;
        }
    }
    said
}

fn accent(letter: char) -> char {
    const PLAIN: &str = "aeiouycnszAEIOUYCNSZ";
    const ACCENTED: &str = "áéîõüýçñšžÁÉÎÕÜÝÇÑŠŽ";
    PLAIN
        .chars()
        .zip(ACCENTED.chars())
        .find(|(plain, _)| *plain == letter)
        .map_or(letter, |(_, shown)| shown)
}

const HEBREW: &str = "אבגדהוזחטיכלמנסעפצקרשתיוהנ";
const ARABIC: &str = "ابتثجحخدذرزسشصضطظعغفقكلمنهو";

/// The letter of another script that stands for a Latin one.
fn one_of(script: &str, letter: char) -> char {
    if !letter.is_ascii_alphabetic() {
        return letter;
    }
    let at = usize::from(letter.to_ascii_lowercase() as u8 - b'a');
    script.chars().nth(at).unwrap_or(letter)
}
