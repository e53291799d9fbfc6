//! What is known of one plant: its names, what hurts, how to know it, what it is taken for.

pub(super) mod cell;
pub(super) mod home;
mod near;
mod notes;
mod quiz;
pub(super) mod teach;
mod twins;
mod uses;

use super::{drawn, list};
use crate::{Block, Column, Fact, Kind, Level, Notice, NoticeKind, Page, Prose, Table, Words};
use desk::SheetReply;
use ground::{Harm, Month, Organ, Part, Season, Sourcing, Text};
use herbal::Term;
use notes::Notes;

/// A sheet on its way to a page.
struct View<'a> {
    reply: &'a SheetReply,
    words: Words<'a>,
    notes: Notes<'a>,
}

pub(super) fn page(reply: &SheetReply, words: &Words<'_>) -> Page {
    let words = words.with_sources(&reply.sources);
    let view = View { reply, words, notes: Notes::of(&reply.sources) };
    let title = Text::new("sheet-title")
        .taxon("name", &reply.sheet.name)
        .with("authority", reply.sheet.authority.as_str());
    let parts = [
        view.names(),
        vec![view.harm()],
        view.drawn(),
        view.months(),
        view.must_look(),
        view.characters(),
        view.twins(),
        view.parts(),
        view.cautions(),
        view.gathered_for(),
        view.relatives(),
        view.conflicts(),
        view.sources(),
    ];
    words.page(Kind::Screen, &title).with(parts.into_iter().flatten())
}

impl View<'_> {
    fn section(&self, id: &str, blocks: impl IntoIterator<Item = Block>) -> Vec<Block> {
        let blocks: Vec<_> = blocks.into_iter().collect();
        if blocks.is_empty() {
            return Vec::new();
        }
        let heading = self.words.heading(Level::Section, &Text::new(id));
        std::iter::once(heading).chain(blocks).collect()
    }

    fn label(&self, id: &str, value: Prose) -> Option<Fact> {
        (!value.is_empty()).then(|| self.words.fact(&Text::new(id), value))
    }

    fn names(&self) -> Vec<Block> {
        let sheet = &self.reply.sheet;
        let regions =
            sheet.regions.iter().map(|r| self.words.word(&format!("region-{}", r.word())));
        let regions = self.words.catalogue.list(&regions.collect::<Vec<_>>());
        let habitats: Vec<_> = sheet.habitats.iter().map(|name| name.replace('-', " ")).collect();
        let life = self.words.word(&format!("life-form-{}", sheet.life_form.word()));
        let facts = [
            self.label("sheet-common", Prose::new().said(&sheet.common.join(", "))),
            self.label("sheet-family", Prose::new().said(&sheet.family)),
            self.label("sheet-former", taxa(&sheet.former)),
            self.label("sheet-life-form", life.into()),
            self.label("sheet-regions", regions.into()),
            self.label("sheet-habitats", Prose::new().said(&habitats.join(", "))),
            self.label("sheet-parents", taxa(&sheet.parents)),
            self.label("sheet-aggregate", taxa(&Vec::from_iter(sheet.aggregate.clone()))),
            self.label("sheet-protected", words_of(sheet.protected.as_ref())),
        ];
        vec![Block::Facts(facts.into_iter().flatten().collect())]
    }

    /// How badly it can hurt, in the frame that its harm asks for.
    fn harm(&self) -> Block {
        let sheet = &self.reply.sheet;
        let kind = match sheet.feared() {
            Harm::Deadly => NoticeKind::DoNot,
            Harm::Harmful | Harm::Irritant => NoticeKind::Caution,
            Harm::Unknown | Harm::None => NoticeKind::Question,
        };
        let head = self.words.word(&format!("sheet-harm-{}", sheet.feared().word()));
        let note = Prose::new().said(&sheet.harm_note).then(self.mark(&sheet.harm.from));
        Block::Notice(Notice { kind, head: head.into(), blocks: vec![Block::Para(note)] })
    }

    /// What is known of it, as small drawings beside each other.
    fn drawn(&self) -> Vec<Block> {
        let reply = self.reply;
        let subject = drawn::Subject { name: &reply.sheet.name, cells: &reply.cells };
        let figures = drawn::drawings(subject, &reply.terms, &self.words);
        self.section("drawn-title", (!figures.is_empty()).then_some(Block::Figures(figures)))
    }

    /// When each part is there, as words and as a strip of twelve boxes.
    fn months(&self) -> Vec<Block> {
        let seasons = &self.reply.sheet.months;
        if seasons.is_empty() {
            return Vec::new();
        }
        let short = |month: Month| self.words.word(&format!("month-short-{}", month.number()));
        let mut columns = vec![
            Column::words(self.words.word("sheet-part")),
            Column::words(self.words.word("view-plan-when")),
        ];
        columns.extend(Month::all().map(|month| Column::words(short(month))));
        let table = Table {
            caption: Prose::new().text(&self.words.word("sheet-months-caption")),
            columns,
            rows_have_heads: true,
            rows: seasons.iter().map(|(part, season)| self.strip(*part, *season)).collect(),
        };
        self.section("sheet-months", [Block::Table(table)])
    }

    fn strip(&self, part: Part, season: Season) -> Vec<Prose> {
        let boxes = Month::all().map(|month| if season.contains(month) { "■" } else { "·" });
        let all_year = Month::all().all(|month| season.contains(month));
        let months =
            if all_year { self.words.word("sheet-all-year") } else { self.words.season(season) };
        [self.words.word(&format!("part-{}", part.word())), months]
            .into_iter()
            .map(Prose::from)
            .chain(boxes.map(Prose::from))
            .collect()
    }

    /// What must be looked at before anything is said, and how.
    fn must_look(&self) -> Vec<Block> {
        let look = |id: &String| {
            let term = self.reply.terms.get(id)?;
            Some(Prose::new().said_strong(&term.name).text(": ").said(&term.how))
        };
        let looks: Vec<_> = self.reply.sheet.must_look.iter().filter_map(look).collect();
        self.section("sheet-must-look", (!looks.is_empty()).then_some(Block::Ticks(looks)))
    }

    /// What is said of each character: whole plant first, then organ by organ, and within each what
    /// is seen at a glance before what takes a lens, a knife or a spade.
    fn characters(&self) -> Vec<Block> {
        let organs = Organ::ALL.iter().filter_map(|organ| self.organ(*organ));
        self.section("sheet-characters", organs.flatten())
    }

    fn organ(&self, organ: Organ) -> Option<[Block; 2]> {
        let mut terms: Vec<_> = self
            .reply
            .cells
            .keys()
            .filter_map(|id| self.reply.terms.get(id))
            .filter(|term| term.character.organ == organ)
            .collect();
        terms.sort_by_key(|term| nearness(term));
        let facts: Vec<_> = terms.into_iter().filter_map(|term| self.character(term)).collect();
        let head =
            self.words.heading(Level::Part, &Text::new(format!("sheet-organ-{}", organ.word())));
        (!facts.is_empty()).then_some([head, Block::Facts(facts)])
    }

    fn character(&self, term: &Term) -> Option<Fact> {
        let cell = self.reply.cells.get(&term.character.id)?;
        Some(Fact::new(Prose::new().said(&term.name), self.cell_with_notes(term, cell)))
    }

    fn relatives(&self) -> Vec<Block> {
        let kin = &self.reply.sheet.relatives;
        let statement = self.words.word(match kin.statement {
            identify::RelativesStatement::AllListed => "sheet-relatives-listed",
            identify::RelativesStatement::UnlistedAlike => "sheet-relatives-alike",
            identify::RelativesStatement::UnlistedUnknown => "sheet-relatives-unknown",
        });
        let says = Prose::new().text(&statement).text(" ").said(&kin.note);
        self.section("sheet-relatives", [Block::Para(says.then(self.mark(&kin.from)))])
    }

    fn conflicts(&self) -> Vec<Block> {
        let kept = |kept: &str| self.words.prose(&Text::new("sheet-kept").with("kept", kept));
        let points = self.reply.sheet.conflicts.iter().map(|conflict| {
            Prose::new()
                .strong(&conflict.about.replace('_', " "))
                .text(": ")
                .said(&conflict.says)
                .text(" ")
                .then(kept(&conflict.kept))
                .then(self.mark(&conflict.from))
        });
        self.section("sheet-conflicts", uses::bullets(points))
    }

    fn sources(&self) -> Vec<Block> {
        let sources = self.reply.sources.iter().map(|(id, source)| {
            let weak =
                if source.weak { self.words.word("sheet-weak-source") } else { String::new() };
            self.words.source(id).text(&weak)
        });
        let any = !self.reply.sources.is_empty();
        self.section("sheet-sources", any.then(|| Block::notes(sources)))
    }

    /// Where something comes from: the numbers of its sources, and its standing where that is not
    /// plain.
    fn mark(&self, from: &Sourcing) -> Prose {
        self.notes.mark(&from.sources, from.standing, &self.words)
    }
}

/// What is seen at a glance comes before what takes long or spoils the plant.
fn nearness(term: &Term) -> impl Ord {
    let character = &term.character;
    (character.spoils, character.tool, character.sense, character.seconds)
}

fn taxa(names: &[String]) -> Prose {
    names.iter().fold(Prose::new(), |prose, name| {
        let prose = if prose.is_empty() { prose } else { prose.text(", ") };
        prose.taxon(name)
    })
}

fn words_of(said: Option<&String>) -> Prose {
    said.map_or_else(Prose::new, |words| Prose::new().said(words))
}
