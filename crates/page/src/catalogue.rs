//! The catalogue: every sentence that a person reads, by the name of its message.

use crate::clean::{TAXON_ENDS, TAXON_STARTS};
use crate::direction::{Direction, END_ISOLATE, ISOLATE};
use crate::habits::Habits;
use crate::number::whole;
use crate::prose::Prose;
use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentResource, FluentValue};
use fluent_syntax::ast::Entry;
use ground::Text;
use std::collections::BTreeMap;
use std::sync::Arc;
use unic_langid::LanguageIdentifier;

/// A file of messages in Fluent syntax.
#[derive(Clone, Copy, Debug)]
pub struct MessageFile<'a> {
    /// Its language, as a BCP 47 tag such as `en`.
    pub language: &'a str,
    /// Its name, for reports.
    pub name: &'a str,
    /// What it holds.
    pub text: &'a str,
}

/// Every message file of the crate, by language and name.
pub const MESSAGE_FILES: &[MessageFile<'static>] =
    include!(concat!(env!("OUT_DIR"), "/messages.rs"));

/// The messages of one language, said as a reader is used to it. A copy shares the messages.
#[derive(Clone)]
pub struct Catalogue {
    pub(crate) messages: Arc<Messages>,
    pub(crate) habits: Habits,
}

/// Messages as they were read.
pub(crate) struct Messages {
    pub(crate) bundle: FluentBundle<FluentResource>,
    language: LanguageIdentifier,
    pub(crate) direction: Direction,
    flaws: Vec<String>,
    fields: BTreeMap<String, Vec<String>>,
}

impl Catalogue {
    /// The catalogue in English. Built once, and used for every page.
    #[must_use]
    pub fn english() -> Self {
        let files = MESSAGE_FILES.iter().filter(|file| file.language == "en");
        Self::new("en", files.copied())
    }

    /// A catalogue of these files in a language given as BCP 47 tag. What cannot be read is left
    /// out, and stands in [`flaws`](Self::flaws).
    #[must_use]
    pub fn new<'a>(language: &str, files: impl IntoIterator<Item = MessageFile<'a>>) -> Self {
        let (language, flaws) = match language.parse::<LanguageIdentifier>() {
            Ok(known) => (known, Vec::new()),
            Err(error) => (LanguageIdentifier::default(), vec![format!("{language}: {error}")]),
        };
        let mut bundle = FluentBundle::new_concurrent(vec![language.clone()]);
        // The words that come from outside are isolated where they need it, when they come in.
        bundle.set_use_isolating(false);
        bundle.set_formatter(Some(|value, _| match value {
            FluentValue::Number(number) => Some(whole(number.value as i64)),
            _ => None,
        }));
        let direction = Direction::of_known(&language);
        let mut messages = Messages { bundle, language, direction, flaws, fields: BTreeMap::new() };
        for file in files {
            messages.add(file);
        }
        Self { messages: Arc::new(messages), habits: Habits::default() }
    }

    /// The same messages for a reader of these habits.
    ///
    /// ```
    /// use ground::Unit;
    /// use page::{Catalogue, Habits, Measures, Rounding};
    /// let us = Habits { measures: Measures::Us, ..Habits::default() };
    /// let catalogue = Catalogue::english().with_habits(us);
    /// let said = catalogue.amount(150.0, Unit::Gram, Rounding::Nearest);
    /// assert_eq!(said, "150\u{a0}g (5.3\u{a0}oz)");
    /// ```
    #[must_use]
    pub fn with_habits(&self, habits: Habits) -> Self {
        Self { habits, ..self.clone() }
    }

    /// What the reader is used to.
    #[must_use]
    pub fn habits(&self) -> Habits {
        self.habits
    }

    /// The language of the messages, as a BCP 47 tag.
    #[must_use]
    pub fn language(&self) -> String {
        self.messages.language.to_string()
    }

    /// What is wrong with the message files: lines that cannot be read, names used twice.
    #[must_use]
    pub fn flaws(&self) -> &[String] {
        &self.messages.flaws
    }

    /// Every message, with the names of its further sentences, such as `want` and `mend`.
    pub fn messages(&self) -> impl Iterator<Item = (&str, &[String])> {
        self.messages.fields.iter().map(|(id, fields)| (id.as_str(), fields.as_slice()))
    }

    /// Whether it holds a message.
    #[must_use]
    pub fn has(&self, id: &str) -> bool {
        self.messages.fields.contains_key(id)
    }

    /// Which of these messages it does not hold.
    #[must_use]
    pub fn missing(&self, ids: &[&str]) -> Vec<String> {
        ids.iter().filter(|id| !self.has(id)).map(|id| (*id).to_owned()).collect()
    }

    /// The sentence of a message. A message that is missing shows as `⟦its-name⟧`.
    ///
    /// ```
    /// use ground::{Text, Unit};
    /// let catalogue = page::Catalogue::english();
    /// let text = Text::new("range").amount("low", 3.0, Unit::Gram).amount("high", 5.0, Unit::Gram);
    /// assert_eq!(catalogue.say(&text), "3\u{a0}g to 5\u{a0}g");
    /// assert_eq!(catalogue.say(&Text::new("no-such-message")), "⟦no-such-message⟧");
    /// ```
    #[must_use]
    pub fn say(&self, text: &Text) -> String {
        self.unmarked(&self.compose(text, None, &mut Vec::new()))
    }

    /// The sentence of a message, in which scientific names stay set apart.
    #[must_use]
    pub fn say_inline(&self, text: &Text) -> Prose {
        unmark(&self.compose(text, None, &mut Vec::new()))
    }

    /// A further sentence of a message, such as `want` or `mend` of a fault.
    #[must_use]
    pub fn say_field(&self, text: &Text, field: &str) -> String {
        self.unmarked(&self.compose(text, Some(field), &mut Vec::new()))
    }

    /// A sentence without marks; where it runs from right to left, scientific names stay isolated.
    fn unmarked(&self, marked: &str) -> String {
        match self.messages.direction {
            Direction::LeftToRight => marked.replace([TAXON_STARTS, TAXON_ENDS], ""),
            Direction::RightToLeft => {
                marked.replace(TAXON_STARTS, ISOLATE).replace(TAXON_ENDS, END_ISOLATE)
            }
        }
    }

    /// The words of a message that takes nothing.
    #[must_use]
    pub fn word(&self, id: &str) -> String {
        self.say(&Text::new(id))
    }

    /// What a message would lack when said: messages that are missing, arguments not given.
    #[must_use]
    pub fn gaps(&self, text: &Text) -> Vec<String> {
        let mut gaps = Vec::new();
        self.compose(text, None, &mut gaps);
        gaps
    }
}

impl Messages {
    fn add(&mut self, file: MessageFile<'_>) {
        let resource = match FluentResource::try_new(file.text.to_owned()) {
            Ok(resource) => resource,
            Err((resource, errors)) => {
                let flaws =
                    errors.iter().map(|e| format!("{}: {e} (byte {})", file.name, e.pos.start));
                self.flaws.extend(flaws);
                resource
            }
        };
        for entry in resource.entries() {
            let Entry::Message(message) = entry else {
                continue;
            };
            let fields = message.attributes.iter().map(|a| a.id.name.to_owned());
            self.fields.insert(message.id.name.to_owned(), fields.collect());
        }
        if let Err(errors) = self.bundle.add_resource(resource) {
            let flaws = errors.iter().map(|e| format!("{}: {e}", file.name));
            self.flaws.extend(flaws);
        }
    }
}

/// Prose from a sentence in which scientific names are marked.
fn unmark(marked: &str) -> Prose {
    let mut prose = Prose::new();
    let mut rest = marked;
    while let Some((before, name, after)) = next_name(rest) {
        prose = text_unless_empty(prose, before).taxon(name);
        rest = after;
    }
    text_unless_empty(prose, rest)
}

fn next_name(marked: &str) -> Option<(&str, &str, &str)> {
    let (before, rest) = marked.split_once(TAXON_STARTS)?;
    let (name, after) = rest.split_once(TAXON_ENDS)?;
    Some((before, name, after))
}

fn text_unless_empty(prose: Prose, words: &str) -> Prose {
    if words.is_empty() { prose } else { prose.text(words) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Inline;
    use ground::{Arg, Finite, Unit};

    fn catalogue(text: &str) -> Catalogue {
        let file = MessageFile { language: "en", name: "test.ftl", text };
        Catalogue::new("en", [file])
    }

    #[test]
    fn an_amount_comes_to_the_nearest_down_and_up() {
        let said = catalogue("a = { $x }, { $x-down }, { $x-up }\n").say(&Text::new("a").amount(
            "x",
            7.96,
            Unit::Milligram,
        ));
        assert_eq!(said, "8\u{a0}mg, 7.9\u{a0}mg, 8\u{a0}mg");
    }

    #[test]
    fn scientific_names_stay_set_apart_within_other_messages_and_lists() {
        let names = vec![Arg::Taxon("Urtica dioica".into()), Arg::Taxon("Lamium album".into())];
        let inner = Text::new("inner").with("names", names);
        let catalogue = catalogue(
            "outer = Not { $what }.\ninner = { $names }\nlist-last = { $before } and { $last }\n",
        );
        let prose = catalogue.say_inline(&Text::new("outer").with("what", inner));
        let taxa: Vec<_> = prose
            .iter()
            .filter(|piece| matches!(piece, Inline::Taxon(_)))
            .map(Inline::words)
            .collect();
        assert_eq!(taxa, ["Urtica dioica", "Lamium album"]);
        assert_eq!(prose.plain(), "Not Urtica dioica and Lamium album.");
    }

    #[test]
    fn counts_choose_the_plural() {
        let catalogue =
            catalogue("cups = { $n ->\n    [one] { $n } cup\n   *[other] { $n } cups\n }\n");
        let say = |n: i64| catalogue.say(&Text::new("cups").with("n", n));
        assert_eq!((say(1), say(12_000)), ("1 cup".into(), "12\u{202F}000 cups".into()));
    }

    #[test]
    fn what_is_missing_is_seen_and_told() {
        let catalogue = catalogue("a = { $x } and { $y }\n");
        let text = Text::new("a").with("x", Text::new("b"));
        assert_eq!(catalogue.say(&text), "⟦b⟧ and {$y}");
        let gaps = catalogue.gaps(&text);
        assert_eq!(gaps.len(), 2);
        assert!(gaps[0].contains('b') && gaps[1].contains("$y"), "{gaps:?}");
        assert_eq!(catalogue.missing(&["a", "b"]), ["b"]);
    }

    #[test]
    fn flaws_of_a_file_are_told_with_its_name() {
        let flawed = catalogue("a = one\na = two\nb = { $x\n");
        assert_eq!(flawed.flaws().len(), 2, "{:?}", flawed.flaws());
        assert!(flawed.flaws().iter().all(|flaw| flaw.starts_with("test.ftl")));
    }

    #[test]
    fn words_from_outside_cannot_pass_for_a_scientific_name() {
        let text = Text::new("a").with("x", "\u{E000}Urtica\u{E001}");
        let prose = catalogue("a = { $x }\n").say_inline(&text);
        assert!(
            prose.iter().all(|piece| matches!(piece, Inline::Text(words) if words == "Urtica"))
        );
    }

    #[test]
    fn nothing_known_is_no_number() {
        let not_finite = Text::new("a").amount("x", f64::NAN, Unit::Gram);
        assert_eq!(catalogue("a = { $x }\n").say(&not_finite), "?");
        let amount = Arg::Amount(Finite::ZERO, Unit::Gram);
        let zero = Text::new("a").with("x", amount);
        assert_eq!(catalogue("a = { $x }\n").say(&zero), "0\u{a0}g");
    }
}
