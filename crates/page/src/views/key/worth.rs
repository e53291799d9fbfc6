//! What a key is worth: how long it takes, and how often its readers end at a wrong name.

use super::{View, month, percent};
use crate::{Block, Column, Details, Fact, Level as Depth, Prose, Rounding, Table, numerals};
use ground::{Finite, Text, Unit};
use identify::Level;
use identify::key::{Arrival, Arrivals};

impl View<'_> {
    pub(super) fn worth(&self) -> Vec<Block> {
        let heading = self.words.heading(Depth::Section, &Text::new("view-key-worth"));
        vec![heading, Block::Facts(self.figures()), self.readers()]
    }

    fn figures(&self) -> Vec<Fact> {
        let key = &self.reply.key;
        let looks = numerals(key.looks.get(), Unit::One, Rounding::Nearest);
        let looks = Text::new("view-key-looks-says").with("looks-said", looks);
        // Only one in all is said in the singular.
        let looks = looks.with("looks", if key.looks.get() == 1.0 { 1 } else { 2 });
        let proved = if key.is_proved() {
            Text::new("view-key-proved")
        } else {
            timed(Text::new("view-key-bound"), key.at_least)
        };
        let signs = if key.tried == key.of {
            Text::new("view-key-all-signs")
        } else {
            Text::new("view-key-some-signs").with("tried", key.tried).with("of", key.of)
        };
        let proved = proved.with("signs", signs);
        let when = match self.reply.month {
            Some(at) => Text::new("view-key-in-month").with("month", month(at)),
            None => Text::new("view-key-any-month"),
        };
        let time = timed(Text::new("view-key-time-says"), key.seconds);
        let facts = [
            ("view-key-looks", looks),
            ("view-key-time", time),
            ("view-key-shortest", proved),
            ("view-key-month", when),
        ];
        let fact = |(label, says)| self.words.fact(&Text::new(label), self.words.prose(&says));
        facts.into_iter().map(fact).collect()
    }

    /// One row for each kind of reader.
    fn readers(&self) -> Block {
        let columns = [
            Column::words(self.words.word("view-key-reader")),
            Column::numbers(self.words.word("view-key-wrong")),
            Column::numbers(self.words.word("view-key-stopped")),
            Column::words(self.words.word("view-key-worst")),
            Column::words(self.words.word("view-key-dangerous")),
        ];
        let caption = Prose::new().text(&self.words.word("view-key-readers")).text(". ");
        Block::Table(Table {
            caption: caption.text(&self.words.word("view-key-readers-says")).text("."),
            columns: columns.into(),
            rows_have_heads: true,
            rows: self.reply.arrivals.iter().map(|arrivals| self.reader(arrivals)).collect(),
        })
    }

    fn reader(&self, arrivals: &Arrivals) -> Vec<Prose> {
        let worst = arrivals.worst().map(|worst| (worst, worst.wrong));
        let dangerous = arrivals.most_dangerous();
        let dangerous = dangerous.and_then(|worst| Some((worst, worst.harmless?)));
        vec![
            self.words.prose(&reader(arrivals.level)),
            self.share(arrivals.wrong),
            self.share(arrivals.stopped),
            self.worst(worst),
            self.worst(dangerous),
        ]
    }

    fn worst(&self, worst: Option<(&Arrival, Finite)>) -> Prose {
        let some = worst.filter(|(_, share)| *share > Finite::ZERO);
        let Some((plant, share)) = some else {
            return self.words.word("view-key-nobody").into();
        };
        let text = Text::new("view-key-worst-says").taxon("plant", &plant.plant);
        self.words.prose(&percent(text, "share", share.get()))
    }

    fn share(&self, share: Finite) -> Prose {
        self.words.amount(100.0 * share.get(), Unit::Percent)
    }

    /// Plant by plant, for the reader who was asked for.
    pub(super) fn each(&self) -> Option<Block> {
        let arrivals = self.reply.arrivals.iter().find(|a| a.level == self.reply.level)?;
        let heads = ["plants-name", "view-key-right", "view-key-wrong", "view-key-stopped"];
        let heads = heads.into_iter().chain(["view-key-harmless"]).enumerate();
        let column = |(at, id): (usize, &str)| {
            let head = self.words.word(id);
            if at == 0 { Column::words(head) } else { Column::numbers(head) }
        };
        let row = |arrival: &Arrival| {
            let harmless = arrival.harmless.map(|share| self.share(share));
            vec![
                Prose::new().taxon(&arrival.plant),
                self.share(arrival.right),
                self.share(arrival.wrong),
                self.share(arrival.stopped),
                harmless.unwrap_or_else(|| self.words.word("view-key-nobody").into()),
            ]
        };
        let table = Table {
            caption: self.words.word("view-key-each-says").into(),
            columns: heads.map(column).collect(),
            rows_have_heads: true,
            rows: arrivals.plants.iter().map(row).collect(),
        };
        let summary = Text::new("view-key-each").with("reader", reader(arrivals.level));
        let summary = self.words.prose(&summary);
        let blocks = vec![Block::Table(table)];
        Some(Block::Details(Details { anchor: None, summary, open: false, blocks }))
    }
}

/// A reader in words.
pub(in crate::views) fn reader(level: Level) -> Text {
    match level {
        Level::Leader => Text::new("view-key-reader-leader"),
        Level::Trained => Text::new("view-key-reader-trained"),
        Level::Public => Text::new("view-key-reader-public"),
        Level::Misreads(share) => percent(Text::new("view-key-reader-own"), "share", share.get()),
    }
}

/// How long something takes, in seconds below two minutes.
fn timed(text: Text, seconds: Finite) -> Text {
    match seconds.get() {
        seconds @ ..120.0 => text.amount("time", seconds.round(), Unit::Second),
        seconds => text.amount("time", seconds / 60.0, Unit::Minute),
    }
}
