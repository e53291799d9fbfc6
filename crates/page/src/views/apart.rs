//! What tells a plant from all that it is taken for: the fewest looks that do it, which twin each tells apart,
//! and which twins are not told apart as surely as the rules ask.

mod open;

use super::compare::looks;
use super::list;
use super::sheet::cell::statements;
use crate::{
    Block, Column, Details, Fact, Kind, Level as Depth, Notice, NoticeKind, Page, Prose, Table,
    Words,
};
use desk::{ApartReply, ApartTwin};
use ground::{Arg, Month, Text, Unit};
use identify::sets::{Between, Reach};
use identify::{Cell, Level, Reading};

/// A reply on its way to a page.
struct View<'a> {
    reply: &'a ApartReply,
    words: &'a Words<'a>,
}

pub(super) fn page(reply: &ApartReply, words: &Words<'_>) -> Page {
    let view = View { reply, words };
    let title = match reply.month {
        Some(at) => Text::new("view-apart-title-month").with("month", month(at)),
        None => Text::new("view-apart-title"),
    };
    let title = title.taxon("plant", &reply.plant.0).with("common", reply.plant.1.as_str());
    let page = words
        .page(Kind::Screen, &title)
        .with([words.notice(NoticeKind::Caution, [words.para(&Text::new("view-apart-plans"))])]);
    if reply.twins.is_empty() {
        return page.with([words.para(&Text::new("view-apart-no-twins"))]);
    }
    page.with(view.open())
        .with(view.fewest())
        .with(view.looks())
        .with([view.twins()])
        .with(view.says())
        .with(view.others())
}

fn month(month: Month) -> Text {
    Text::new(format!("month-{}", month.number()))
}

fn reader(level: Level) -> Text {
    match level {
        Level::Leader => Text::new("view-key-reader-leader"),
        Level::Trained => Text::new("view-key-reader-trained"),
        Level::Public => Text::new("view-key-reader-public"),
        Level::Misreads(share) => {
            Text::new("view-key-reader-own").amount("share", 100.0 * share.get(), Unit::Percent)
        }
    }
}

/// How long something takes, in seconds below two minutes.
fn timed(text: Text, seconds: u32) -> Text {
    match f64::from(seconds) {
        seconds @ ..120.0 => text.amount("time", seconds, Unit::Second),
        seconds => text.amount("time", seconds / 60.0, Unit::Minute),
    }
}

impl View<'_> {
    /// The characters of the quickest set, the quickest first; of equals the order of names.
    fn quickest(&self) -> Vec<(&String, &Reading)> {
        let set = self.reply.apart.smallest.sets.first().into_iter().flatten();
        let mut set: Vec<_> =
            set.filter_map(|id| Some((id, self.reply.apart.readings.get(id)?))).collect();
        set.sort_by_key(|(_, reading)| reading.seconds);
        set
    }

    fn pairs(&self) -> impl Iterator<Item = (&ApartTwin, &Between)> {
        self.reply.twins.iter().zip(&self.reply.apart.twins)
    }

    /// A twin with its common name and its harm.
    fn twin(&self, twin: &ApartTwin) -> Prose {
        let name = Prose::new().taxon(&twin.name);
        let common = twin.common.as_deref();
        let name = common.map_or(name.clone(), |common| name.text(", ").said(common));
        name.text(" — ").strong(&self.harm(twin))
    }

    fn harm(&self, twin: &ApartTwin) -> String {
        match twin.harm {
            Some(harm) => list::harm(harm, self.words),
            None => self.words.word("sheet-twin-unlisted"),
        }
    }

    /// How few looks do it, whether that is proved, and for whom it holds.
    fn fewest(&self) -> Vec<Block> {
        let smallest = &self.reply.apart.smallest;
        let size = smallest.size();
        let seconds = self.reply.apart.seconds.first().copied().unwrap_or_default();
        let proved = match (smallest.is_proved(), smallest.count) {
            (true, Some(count)) => Text::new("view-apart-proved").with("count", count as usize),
            (true, None) => Text::new("view-apart-proved-not-counted"),
            (false, _) => Text::new("view-apart-bound").with("least", smallest.at_least),
        };
        let counted = smallest.count.is_some();
        let time = if counted { "view-apart-time-proved" } else { "view-apart-time-found" };
        let against = match self.reply.region {
            None => Text::new("view-apart-named").with("count", self.reply.twins.len()),
            Some(region) => Text::new("view-apart-region")
                .with("count", self.reply.twins.len())
                .with("region", Text::new(format!("region-{}", region.word()))),
        };
        let when = match self.reply.month {
            Some(at) => Text::new("view-apart-in-month").with("month", month(at)),
            None => Text::new("view-apart-any-month"),
        };
        let facts = [
            ("view-apart-looks", Text::new("view-apart-size").with("count", size)),
            ("view-apart-fewest", proved),
            ("view-apart-time", timed(Text::new(time), seconds)),
            ("view-apart-against", against),
            ("view-apart-when", when),
            ("view-apart-reader", reader(self.reply.level)),
        ];
        let fact = |(label, says)| self.words.fact(&Text::new(label), self.words.prose(&says));
        vec![
            self.words.heading(Depth::Section, &Text::new("view-apart-section")),
            self.words.para(&Text::new("view-apart-rule")),
            Block::Facts(facts.into_iter().map(fact).collect()),
        ]
    }

    /// The looks of the quickest set: what each takes, and from how many twins it tells the plant.
    fn looks(&self) -> Option<Block> {
        let tells = |id: &String| {
            let told = self.reply.apart.twins.iter().filter(|twin| twin.tells.contains(id)).count();
            let text = Text::new("view-apart-so-many");
            self.words.prose(&text.with("told", told).with("of", self.reply.twins.len()))
        };
        let row = |(id, reading): (&String, &Reading)| {
            let name = looks::name(id, reading, self.words);
            let row = looks::row(&name, reading, self.words);
            row.into_iter().chain([tells(id)]).collect()
        };
        let rows: Vec<_> = self.quickest().into_iter().map(row).collect();
        let more = [Column::words(self.words.word("view-apart-tells"))];
        (!rows.is_empty()).then(|| looks::table("view-apart-looks-says", more, rows, self.words))
    }

    /// Each twin, with the looks of the quickest set that tell the plant from it.
    fn twins(&self) -> Block {
        let row = |(twin, between): (&ApartTwin, &Between)| {
            let set = self.quickest();
            let by = set.into_iter().filter(|(id, _)| between.tells.contains(id));
            let by: Vec<_> = by.map(|(id, _)| self.words.character(id)).collect();
            let by = match (by.is_empty(), between.reach) {
                (true, _) => Prose::new().strong(&self.words.word("view-apart-by-nothing")),
                (_, Reach::AsAsked) => self.words.catalogue.list(&by).into(),
                _ => {
                    let only = Text::new("view-apart-by-only");
                    self.words.prose(&only.with("characters", self.words.catalogue.list(&by)))
                }
            };
            vec![self.twin(twin), by]
        };
        Block::Table(Table {
            caption: self.words.word("view-apart-twins-says").into(),
            columns: ["view-apart-twin", "view-apart-by"]
                .map(|id| Column::words(self.words.word(id)))
                .into(),
            rows_have_heads: true,
            rows: self.pairs().map(row).collect(),
        })
    }

    /// What the plant and its twins show of each look of the quickest set.
    fn says(&self) -> Vec<Block> {
        let one = |(id, _): (&String, &Reading)| {
            let says = self.reply.says.get(id).map_or(&[][..], Vec::as_slice);
            let mut alike: Vec<(String, Vec<Arg>)> = Vec::new();
            for (plant, cell) in says {
                let shows = self.shows(id, cell);
                let plant = Arg::Taxon(plant.clone());
                // What the plant itself shows stands alone and first: its twins show something else.
                match alike.iter_mut().find(|(said, _)| *said == shows) {
                    Some((_, plants)) => plants.push(plant),
                    None => alike.push((shows, vec![plant])),
                }
            }
            let fact = |(shows, plants): (String, Vec<Arg>)| {
                let plants = Text::new("view-apart-plants").with("plants", plants);
                Fact::new(self.words.prose(&plants), Prose::new().said(&shows))
            };
            let summary = Prose::new().said(&self.words.character(id));
            let blocks = vec![Block::Facts(alike.into_iter().map(fact).collect())];
            Block::Details(Details { anchor: None, summary, open: false, blocks })
        };
        let all: Vec<_> = self.quickest().into_iter().map(one).collect();
        if all.is_empty() {
            return all;
        }
        let heading = self.words.heading(Depth::Section, &Text::new("view-apart-shows"));
        std::iter::once(heading).chain(all).collect()
    }

    fn shows(&self, id: &str, cell: &Cell) -> String {
        let term = self.words.glossary.and_then(|glossary| glossary.term(id));
        let Some(term) = term else { return self.words.word("unknown") };
        let (main, rare) = statements(self.words, term, &cell.value);
        main.into_iter().chain(rare).collect::<Vec<_>>().join("; ")
    }

    /// The next quickest sets.
    fn others(&self) -> Option<Block> {
        let apart = &self.reply.apart;
        let one = |(set, seconds): (&Vec<String>, &u32)| {
            let names: Vec<_> = set.iter().map(|id| self.words.character(id)).collect();
            let text = timed(Text::new("view-apart-other"), *seconds);
            self.words.prose(&text.with("characters", self.words.catalogue.list(&names)))
        };
        let others = apart.smallest.sets.iter().zip(&apart.seconds).skip(1).map(one);
        let others: Vec<Prose> = others.collect();
        let summary = self.words.word("view-apart-others").into();
        (!others.is_empty()).then(|| {
            let blocks = vec![Block::bullets(others)];
            Block::Details(Details { anchor: None, summary, open: false, blocks })
        })
    }

    /// The twins that are not told apart as the rules ask, each with what stands in the way.
    fn open(&self) -> Option<Block> {
        let open = self.pairs().filter(|(_, between)| between.reach < Reach::AsAsked);
        let blocks: Vec<_> =
            open.flat_map(|(twin, between)| self.in_the_way(twin, between)).collect();
        let head = self.words.word("view-apart-open").into();
        (!blocks.is_empty()).then_some(Block::Notice(Notice {
            kind: NoticeKind::DoNot,
            head,
            blocks,
        }))
    }
}
