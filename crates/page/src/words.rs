//! Blocks from messages: how a view writes a page without writing a sentence.

use crate::{
    Anchor, Block, Catalogue, Fact, Figure, Format, Item, Kind, Level, MonthStrip, Notice,
    NoticeKind, Page, Prose, Rounding, Ruler, TypeSize, so_many_in,
};
use desk::About;
use ground::{Fraction, Month, Refusal, Season, Source, SourceId, Spread, Text, Unit};
use herbal::{Glossary, Herbal};
use std::collections::{BTreeMap, BTreeSet};

/// What a view needs to find words: a catalogue, and the sources that facts name.
#[derive(Clone, Copy)]
pub struct Words<'a> {
    /// The messages.
    pub catalogue: &'a Catalogue,
    pub(crate) sources: Option<&'a BTreeMap<SourceId, Source>>,
    pub(crate) glossary: Option<&'a Glossary>,
    pub(crate) numbers: Option<&'a BTreeMap<SourceId, usize>>,
    pub(crate) workings: Workings<'a>,
    pub(crate) ways: Option<Ways<'a>>,
}

/// Where something that is open is answered: what it is about, and of which plant, stand, lot, wish or
/// person, to what leads there.
pub type Ways<'a> = &'a dyn Fn(About, &str) -> Vec<Way>;

/// What leads to a place where something is answered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Way {
    /// What the place is called.
    pub says: String,
    /// Its address, beside the page.
    pub to: String,
}

/// Which workings are written: all together they are most of a page.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Workings<'a> {
    All,
    /// The one at this anchor, if any; the others stay empty.
    Only(Option<&'a str>),
}

impl<'a> Words<'a> {
    /// Words from a catalogue; sources are named by their identifiers.
    #[must_use]
    pub fn new(catalogue: &'a Catalogue) -> Self {
        Self {
            catalogue,
            sources: None,
            glossary: None,
            numbers: None,
            workings: Workings::All,
            ways: None,
        }
    }

    /// The same, with the herbal's sources, and its plain words for characters and states.
    #[must_use]
    pub fn with_herbal(self, herbal: &'a Herbal) -> Self {
        Self { sources: Some(&herbal.sources), glossary: Some(&herbal.flora.glossary), ..self }
    }

    /// The same, with sources named by author and title.
    #[must_use]
    pub fn with_sources(self, sources: &'a BTreeMap<SourceId, Source>) -> Self {
        Self { sources: Some(sources), ..self }
    }

    /// The same, for a reader who asks for each working once it is to be opened: all are empty but the one
    /// at this anchor.
    #[must_use]
    pub fn with_working(self, anchor: Option<&'a str>) -> Self {
        Self { workings: Workings::Only(anchor), ..self }
    }

    /// The same, where what is open can be answered.
    #[must_use]
    pub fn with_ways(self, ways: Ways<'a>) -> Self {
        Self { ways: Some(ways), ..self }
    }

    /// The same, with sources named by their numbers in a list that the page ends with.
    pub(crate) fn numbered(self, numbers: &'a BTreeMap<SourceId, usize>) -> Self {
        Self { numbers: Some(numbers), ..self }
    }

    /// An empty page.
    #[must_use]
    pub fn page(&self, kind: Kind, title: &Text) -> Page {
        Page {
            title: self.prose(title),
            kind,
            language: self.catalogue.language(),
            band: (kind == Kind::Sealed).then(|| self.catalogue.word("page-sealed").into()),
            skip: self.catalogue.word("page-skip"),
            size: TypeSize::Normal,
            format: Format::Sheets,
            blocks: Vec::new(),
        }
    }

    /// The prose of a message.
    #[must_use]
    pub fn prose(&self, text: &Text) -> Prose {
        self.catalogue.say_inline(text)
    }

    /// The words of a message that takes nothing.
    #[must_use]
    pub fn word(&self, id: &str) -> String {
        self.catalogue.word(id)
    }

    /// An amount, rounded to the nearest.
    #[must_use]
    pub fn amount(&self, value: f64, unit: Unit) -> Prose {
        self.rounded(value, unit, Rounding::Nearest)
    }

    /// An amount, rounded this way: limits down, loads up.
    #[must_use]
    pub fn rounded(&self, value: f64, unit: Unit, rounding: Rounding) -> Prose {
        Prose::new().number(&self.catalogue.amount(value, unit, rounding))
    }

    /// An amount that leads to its working.
    #[must_use]
    pub fn worked(&self, value: f64, unit: Unit, rounding: Rounding, working: &Anchor) -> Prose {
        Prose::new().worked(&self.catalogue.amount(value, unit, rounding), working)
    }

    /// A doubtful amount: its middle, and between which ends 9 in 10 lie.
    #[must_use]
    pub fn spread(&self, spread: &Spread, unit: Unit) -> Prose {
        let id = if spread.least == spread.most { "spread-exact" } else { "spread" };
        let text = Text::new(id)
            .amount("middle", spread.p50.get(), unit)
            .amount("low", spread.p5.get(), unit)
            .amount("high", spread.p95.get(), unit);
        self.prose(&text)
    }

    /// A percentile in words, such as "19 batches in 20 stay below 36 ml"; nothing when the share
    /// is no usual one.
    #[must_use]
    pub fn stays_below(
        &self,
        share: Fraction,
        things: &Text,
        value: f64,
        unit: Unit,
    ) -> Option<Prose> {
        let (many, of) = so_many_in(share)?;
        let text = Text::new("stays-below")
            .with("many", many)
            .with("of", of)
            .with("things", things.clone())
            .amount("amount", value, unit);
        Some(self.prose(&text))
    }

    /// A heading.
    #[must_use]
    pub fn heading(&self, level: Level, text: &Text) -> Block {
        Block::heading(level, self.prose(text))
    }

    /// A paragraph.
    #[must_use]
    pub fn para(&self, text: &Text) -> Block {
        Block::Para(self.prose(text))
    }

    /// Points with bullets.
    #[must_use]
    pub fn bullets<'t>(&self, texts: impl IntoIterator<Item = &'t Text>) -> Block {
        Block::bullets(texts.into_iter().map(|text| self.prose(text)))
    }

    /// A label with its value.
    #[must_use]
    pub fn fact(&self, label: &Text, value: impl Into<Prose>) -> Fact {
        Fact::new(self.prose(label), value)
    }

    /// A framed notice, headed by the word of its kind.
    #[must_use]
    pub fn notice(&self, kind: NoticeKind, blocks: impl IntoIterator<Item = Block>) -> Block {
        let word = match kind {
            NoticeKind::Question => "notice-question",
            NoticeKind::Caution => "notice-caution",
            NoticeKind::DoNot => "notice-do-not",
        };
        Block::Notice(Notice {
            kind,
            head: self.word(word).into(),
            blocks: blocks.into_iter().collect(),
        })
    }

    /// A refusal as an open question: why there is no answer, and what would give one.
    #[must_use]
    pub fn refusal(&self, refusal: &Refusal) -> Block {
        let settle = Text::new("refusal-settle").with("settle", refusal.settle.clone());
        let blocks = [self.para(&refusal.why), self.para(&settle)];
        self.notice(NoticeKind::Question, blocks)
    }

    /// Boxes to tick.
    #[must_use]
    pub fn ticks<'t>(&self, texts: impl IntoIterator<Item = &'t Text>) -> Block {
        Block::Ticks(texts.into_iter().map(|text| self.prose(text)).collect())
    }

    /// A point with other points below it.
    #[must_use]
    pub fn item(&self, text: &Text, under: impl IntoIterator<Item = Block>) -> Item {
        Item { says: self.prose(text), under: under.into_iter().collect() }
    }

    /// A stretch of months.
    #[must_use]
    pub fn season(&self, season: Season) -> String {
        let name = |month: Month| Text::new(format!("month-{}", month.number()));
        if season.first() == season.last() {
            return self.catalogue.say(&name(season.first()));
        }
        let between = Text::new("months-between")
            .with("first", name(season.first()))
            .with("last", name(season.last()));
        self.catalogue.say(&between)
    }

    /// A ruler to measure with on paper.
    #[must_use]
    pub fn ruler(&self, centimetres: u8) -> Block {
        let ruler = Ruler {
            title: self.word("ruler-title"),
            describes: self.word("ruler-describes"),
            centimetres,
        };
        Block::Figure(Figure { drawing: ruler.draw(), caption: self.word("ruler-check").into() })
    }

    /// The sources that facts of a page name, each once, with their addresses.
    #[must_use]
    pub fn source_list<'s>(&self, ids: impl IntoIterator<Item = &'s SourceId>) -> Block {
        let ids: BTreeSet<_> = ids.into_iter().collect();
        Block::bullets(ids.into_iter().map(|id| self.source(id)))
    }

    /// A strip of twelve months in which those of some seasons are filled.
    #[must_use]
    pub fn month_strip(&self, title: &Text, seasons: &[Season]) -> Block {
        let said: Vec<_> = seasons.iter().map(|season| self.season(*season)).collect();
        let describes =
            if said.is_empty() { self.word("months-none") } else { self.catalogue.list(&said) };
        let strip = MonthStrip {
            title: self.catalogue.say(title),
            describes,
            letters: Month::all()
                .map(|month| self.word(&format!("month-short-{}", month.number())))
                .collect(),
            filled: Month::all()
                .map(|month| seasons.iter().any(|season| season.contains(month)))
                .collect(),
        };
        Block::Figure(Figure { drawing: strip.draw(), caption: self.prose(title) })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use ground::Finite;

    #[test]
    fn a_percentile_is_said_in_words() {
        let catalogue = Catalogue::english();
        let said = Words::new(&catalogue).stays_below(
            Fraction::from_percent(95.0),
            &Text::new("unknown"),
            35.2,
            Unit::Millilitre,
        );
        let plain = said.unwrap().plain();
        assert_eq!(plain, "19 not known in 20 stay below 36\u{a0}ml");
    }

    #[test]
    fn a_spread_names_its_middle_and_what_lies_between() {
        let catalogue = Catalogue::english();
        let words = Words::new(&catalogue);
        let at = |value| Finite::new(value).unwrap();
        let spread = Spread {
            least: at(20.0),
            p5: at(25.0),
            p50: at(36.0),
            p95: at(49.0),
            p95_bound: at(49.4),
            most: at(60.0),
        };
        assert_eq!(
            words.spread(&spread, Unit::Millilitre).plain(),
            "about 36\u{a0}ml; 9 in 10 lie between 25\u{a0}ml and 49\u{a0}ml"
        );
        let exact = Spread::exact(36.0).unwrap();
        assert_eq!(words.spread(&exact, Unit::Gram).plain(), "36\u{a0}g");
    }

    #[test]
    fn a_refusal_is_an_open_question_with_what_would_settle_it() {
        let catalogue = Catalogue::english();
        let refusal = Refusal::new(
            Text::new("refused-whose-spoon").with("written", "1 cup"),
            Text::new("settle-whose-spoon"),
        );
        let Block::Notice(notice) = Words::new(&catalogue).refusal(&refusal) else {
            panic!("no notice");
        };
        assert_eq!(notice.kind, NoticeKind::Question);
        assert_eq!(notice.blocks.len(), 2);
    }
}
