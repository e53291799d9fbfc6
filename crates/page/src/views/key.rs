//! A key to print: what it is worth, its couplets one below the other, and how to look.

mod ends;
mod worth;

pub(super) use worth::reader;

use super::list;
use crate::plain::length_unit;
use crate::{Anchor, Block, Column, Fact, Kind, Level, Notice, NoticeKind, Page, Prose, Table};
use crate::{Target, Words};
use desk::{KeyPlant, KeyReply};
use ground::{Arg, Harm, Month, Text, Unit};
use identify::key::{Couplet, PlantLead, Reads, Stretch, To};
use std::collections::BTreeSet;

/// A reply on its way to a page.
struct View<'a> {
    reply: &'a KeyReply,
    words: &'a Words<'a>,
}

pub(super) fn page(reply: &KeyReply, words: &Words<'_>) -> Page {
    let view = View { reply, words };
    let count = reply.plants.len();
    let title = match reply.month {
        Some(at) => Text::new("view-key-title-month").with("month", month(at)),
        None => Text::new("view-key-title"),
    };
    words
        .page(Kind::Public, &title.with("count", count))
        .with([view.teaches()])
        .with(view.missing())
        .with([view.plants()])
        .with(view.worth())
        .with(view.key())
        .with(view.how())
        .with(view.each())
        .with([words.para(&Text::new("view-key-herbal").with("herbal", view.version()))])
}

fn month(month: Month) -> Text {
    Text::new(format!("month-{}", month.number()))
}

impl View<'_> {
    fn version(&self) -> String {
        self.reply.herbal_version.chars().take(12).collect()
    }

    /// What a key is not.
    fn teaches(&self) -> Block {
        let says = ["view-key-teaches", "view-key-not-listed"];
        let says = says.map(|id| self.words.para(&Text::new(id)));
        self.words.notice(NoticeKind::Caution, says)
    }

    /// Dangerous twins that somebody may have in hand and that the key cannot name.
    fn missing(&self) -> Option<Block> {
        let twin = |twin: &desk::MissingTwin| {
            let harm = match twin.harm {
                Some(harm) => list::harm(harm, self.words),
                None => self.words.word("sheet-twin-unlisted"),
            };
            let name = match &twin.common {
                Some(common) => Text::new("view-key-end").with("common", common.as_str()),
                None => Text::new("view-key-missing-name"),
            };
            let text = Text::new("view-key-missing-twin")
                .with("name", name.taxon("name", &twin.name))
                .with("harm", harm);
            self.words.prose(&text.with("plants", taxa(&twin.taken_for)))
        };
        let twins: Vec<Prose> = self.reply.missing.iter().map(twin).collect();
        let head = self.words.word("view-key-missing").into();
        let notice = |blocks| Notice { kind: NoticeKind::DoNot, head, blocks };
        (!twins.is_empty()).then(|| Block::Notice(notice(vec![Block::bullets(twins)])))
    }

    fn plants(&self) -> Block {
        let row = |plant: &KeyPlant| {
            vec![
                Prose::new().said(&plant.common),
                Prose::new().taxon(&plant.name),
                Prose::new().strong(&list::harm(plant.harm, self.words)),
            ]
        };
        let caption = Prose::new().text(&self.words.word("view-key-plants")).text(". ");
        Block::Table(Table {
            caption: caption.text(&self.words.word("view-key-plants-says")).text("."),
            columns: ["plants-common", "plants-name", "plants-harm"]
                .map(|id| Column::words(self.words.word(id)))
                .into(),
            rows_have_heads: false,
            rows: self.reply.plants.iter().map(row).collect(),
        })
    }

    /// Every couplet under its number, each lead on a line of its own.
    fn key(&self) -> Vec<Block> {
        let mut blocks = vec![self.words.heading(Level::Section, &Text::new("view-key-key"))];
        let key = &self.reply.key;
        if key.couplets.is_empty() {
            blocks.push(self.words.para(&Text::new("view-key-nothing-tells")));
            blocks.extend(key.ends.iter().flat_map(|end| self.together(end)));
        }
        for (number, couplet) in key.couplets.iter().enumerate() {
            blocks.extend(self.couplet(number, couplet));
        }
        blocks
    }

    fn couplet(&self, number: usize, couplet: &Couplet) -> [Block; 2] {
        let character = self.words.character(&couplet.character);
        let text = match couplet.from {
            Some(from) => Text::new("view-key-couplet-from").with("from", from + 1),
            None => Text::new("view-key-couplet"),
        };
        let text = text.with("number", number + 1).with("character", character);
        let head = Block::heading_at(Level::Part, self.words.prose(&text), place(number));
        let lead = |lead: &PlantLead| self.lead(&couplet.character, lead);
        [head, Block::Facts(couplet.leads.iter().map(lead).collect())]
    }

    fn lead(&self, character: &str, lead: &PlantLead) -> Fact {
        let reads = Prose::new().said(&self.reads(character, &lead.reads));
        match lead.to {
            To::Couplet(next) => {
                let text = Text::new("view-key-go-to").with("number", next + 1);
                let says = self.words.catalogue.say(&text);
                Fact::new(reads, Prose::new().link(&says, Target::Here(place(next))))
            }
            To::End(end) => match self.reply.key.ends.get(end) {
                Some(end) => self.end(reads, end),
                None => Fact::new(reads, Prose::new()),
            },
        }
    }

    fn reads(&self, character: &str, reads: &Reads) -> String {
        match reads {
            Reads::States(states) => {
                let said = states.iter().map(|state| self.words.state(character, state));
                self.words.either(&said.collect::<Vec<_>>())
            }
            Reads::Within(stretches) => {
                let counted = self.is_counted(character);
                let said = stretches.iter().map(|stretch| {
                    let text = if counted { counts(*stretch) } else { lengths(*stretch) };
                    self.words.catalogue.say(&text)
                });
                self.words.either(&said.collect::<Vec<_>>())
            }
        }
    }

    fn is_counted(&self, character: &str) -> bool {
        let term = self.words.glossary.and_then(|glossary| glossary.term(character));
        term.is_some_and(|term| term.character.kind == identify::Kind::Count)
    }

    /// How each of its characters is looked at, in the order in which they are met.
    fn how(&self) -> Vec<Block> {
        let mut met = BTreeSet::new();
        let couplets = self.reply.key.couplets.iter().map(|couplet| &couplet.character);
        let checks = self.reply.key.ends.iter().flat_map(|end| &end.checks);
        let checks = checks.flat_map(|check| &check.looks).map(|look| &look.character);
        let new = couplets.chain(checks).filter(|character| met.insert(*character));
        let terms = new.filter_map(|character| self.words.glossary?.term(character));
        let facts: Vec<_> = terms
            .map(|term| Fact::new(Prose::new().said(&term.name), Prose::new().said(&term.how)))
            .collect();
        if facts.is_empty() {
            return Vec::new();
        }
        let heading = self.words.heading(Level::Section, &Text::new("view-key-how"));
        vec![heading, Block::Facts(facts)]
    }

    fn plant(&self, name: &str) -> Option<&KeyPlant> {
        self.reply.plants.iter().find(|plant| plant.name == name)
    }

    fn harm_of(&self, name: &str) -> Harm {
        self.plant(name).map_or(Harm::Deadly, |plant| plant.harm)
    }
}

/// Where a couplet stands.
fn place(number: usize) -> Anchor {
    Anchor::new(&format!("couplet-{}", number + 1))
}

fn taxa(names: &[String]) -> Vec<Arg> {
    names.iter().map(|name| Arg::Taxon(name.clone())).collect()
}

fn lengths(Stretch { over, up_to }: Stretch) -> Text {
    let ends = [over, up_to].into_iter().flatten().map(|end| end.get());
    let unit = length_unit(&ends.collect::<Vec<_>>());
    ended(over.map(|end| end.get()), up_to.map(|end| end.get()), "", |text, name, mm| {
        text.amount(name, unit.of_base(mm), unit)
    })
}

/// Counts are whole: more than four is five or more.
fn counts(Stretch { over, up_to }: Stretch) -> Text {
    let over = over.map(|end| end.get() + 1.0);
    ended(over, up_to.map(|end| end.get()), "count-", |text, name, count| {
        text.with(name, Arg::Count(count as i64))
    })
}

fn ended(
    low: Option<f64>,
    high: Option<f64>,
    kind: &str,
    put: impl Fn(Text, &str, f64) -> Text,
) -> Text {
    let says = |id: &str| Text::new(format!("view-key-{kind}{id}"));
    match (low, high) {
        (Some(low), Some(high)) => put(put(says("between"), "low", low), "high", high),
        (Some(low), None) => put(says("over"), "low", low),
        (None, Some(high)) => put(says("up-to"), "high", high),
        (None, None) => Text::new("unknown"),
    }
}

/// A share in per cent.
fn percent(text: Text, name: &str, share: f64) -> Text {
    text.amount(name, 100.0 * share, Unit::Percent)
}
