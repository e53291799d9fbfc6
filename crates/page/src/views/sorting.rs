//! Sorting a basket: what may stay in it, why a sample will not do, how it is done, and what a find means.

mod figure;
mod plant;

use crate::{Block, Column, Kind, Level, NoticeKind, Page, Prose, Rounding, Table, Words, whole};
use desk::{NotEnough, SorterMisses, SortingReply};
use ground::{Finite, Text, Unit};
use identify::sorting::{CONTAMINATED, DEADLY, FOLLOWED, SHARED, TRAY_MINUTES, UNNOTICED};

/// A reply on its way to a page.
struct View<'a> {
    reply: &'a SortingReply,
    words: &'a Words<'a>,
}

pub(super) fn page(reply: &SortingReply, words: &Words<'_>) -> Page {
    let view = View { reply, words };
    words
        .page(Kind::Public, &view.title())
        .with([view.stands()])
        .with(view.section("sort-comes-to", view.comes_to()))
        .with(view.section("sort-sample", view.sample()))
        .with(view.section("sort-how", view.how()))
        .with(view.plant())
        .with(view.section("sort-find", view.find()))
        .with(view.section("sort-numbers", vec![view.numbers()]))
        .with([words.para(&Text::new("view-key-herbal").with("herbal", view.version()))])
}

impl View<'_> {
    fn version(&self) -> String {
        self.reply.herbal_version.chars().take(12).collect()
    }

    fn title(&self) -> Text {
        let count = self.reply.pieces;
        match &self.reply.plant {
            None => Text::new("sort-title").with("count", count),
            Some(plant) => Text::new("sort-title-plant")
                .with("count", count)
                .with("plant", plant.sheet.sheet.usual_name())
                .with("part", Text::new(format!("part-{}", plant.part.word()))),
        }
    }

    fn section(&self, id: &str, blocks: Vec<Block>) -> Vec<Block> {
        let heading = self.words.heading(Level::Section, &Text::new(id));
        std::iter::once(heading).chain(blocks).collect()
    }

    /// Whether the rule is kept; if not, what is missing.
    fn stands(&self) -> Block {
        let rule = self.words.para(&Text::new("sort-rule"));
        if self.reply.not_enough.is_empty() {
            let says = self.words.para(&Text::new("sort-rule-kept"));
            return self.words.notice(NoticeKind::Caution, [says, rule]);
        }
        let missing = self.reply.not_enough.iter().map(|missing| match missing {
            NotEnough::OnePerson => Text::new("sort-one-person"),
            NotEnough::NotNamed => Text::new("sort-not-named"),
            NotEnough::NotEveryPiece(away) => {
                Text::new("sort-not-every-piece").with("count", *away)
            }
        });
        let missing: Vec<Prose> = missing.map(|text| self.words.prose(&text)).collect();
        let says = self.words.para(&Text::new("sort-not-enough"));
        self.words.notice(NoticeKind::DoNot, [says, Block::bullets(missing), rule])
    }

    fn comes_to(&self) -> Vec<Block> {
        let reply = self.reply;
        let of = |id: &str, count: u32| Text::new(id).with("count", count).with("of", reply.pieces);
        let seen = match reply.pieces - reply.seen {
            0 => Text::new("sort-every-piece"),
            _ => of("sort-so-many", reply.seen),
        };
        let wrong = match reply.wrong {
            0 => Text::new("sort-none-wrong"),
            wrong => of("sort-so-many", wrong),
        };
        let mut facts =
            vec![("sort-wrong", self.words.prose(&wrong)), ("sort-seen", self.words.prose(&seen))];
        facts.extend(reply.sorters.iter().map(|sorter| ("sort-sorter", self.sorter(sorter))));
        facts.extend([
            ("sort-both-miss", self.share(reply.missed)),
            ("sort-stays", self.strong_share(reply.stays)),
            ("sort-unnoticed", self.share(reply.unnoticed)),
            ("sort-left", self.words.rounded(reply.left.get(), Unit::One, Rounding::Up)),
        ]);
        facts.push(("sort-at-best", self.share(reply.at_best)));
        let facts = facts.into_iter();
        let facts = facts.map(|(label, says)| self.words.fact(&Text::new(label), says));
        let last = self.words.para(&Text::new("sort-last-net"));
        vec![Block::Facts(facts.collect()), last]
    }

    /// Who sorts, and what they miss.
    fn sorter(&self, sorter: &SorterMisses) -> Prose {
        let name = match &sorter.sorter.name {
            Some(name) => Prose::new().said(name),
            None => self.words.word("sort-somebody").into(),
        };
        let sees = match sorter.sorter.sees.planted {
            None => Text::new("sort-reads"),
            Some(trial) => {
                Text::new("sort-planted").with("missed", trial.missed).with("of", trial.of)
            }
        };
        let sees = sees.with("reader", super::key::reader(sorter.sorter.sees.level));
        let sees = sees.amount("misses", 100.0 * sorter.misses.get(), Unit::Percent);
        name.text(", ").then(self.words.prose(&sees))
    }

    /// A chance that something bad happens: never less than it is.
    fn share(&self, share: Finite) -> Prose {
        self.words.rounded(100.0 * share.get(), Unit::Percent, Rounding::Up)
    }

    fn strong_share(&self, share: Finite) -> Prose {
        let said = self.words.catalogue.amount(100.0 * share.get(), Unit::Percent, Rounding::Up);
        Prose::new().strong(&said)
    }

    /// Why a sample will not do: the figure with its numbers, and how large it had to be.
    fn sample(&self) -> Vec<Block> {
        let tenth = Text::new("sort-tenth").with("count", self.reply.pieces);
        let mut blocks = vec![self.words.para(&tenth)];
        blocks.extend(self.figure());
        blocks.push(self.samples());
        blocks.push(self.words.para(&Text::new("sort-so-every-piece")));
        blocks
    }

    fn samples(&self) -> Block {
        let first = self.reply.samples.first().into_iter().flat_map(|sample| &sample.takes);
        let head = |(surely, _): &(Finite, u32)| {
            let surely = 100.0 * surely.get();
            let head = Text::new("sort-samples-surely").amount("surely", surely, Unit::Percent);
            Column::numbers(self.words.prose(&head))
        };
        let columns = [Column::numbers(self.words.word("sort-samples-wrong"))];
        let number = |count: u32| Prose::new().number(&whole(i64::from(count)));
        let rows = self.reply.samples.iter().map(|sample| {
            let takes = sample.takes.iter().map(|(_, takes)| number(*takes));
            std::iter::once(number(sample.wrong)).chain(takes).collect()
        });
        Block::Table(Table {
            caption: self.words.prose(&Text::new("sort-samples").with("count", self.reply.pieces)),
            columns: columns.into_iter().chain(first.map(head)).collect(),
            rows_have_heads: true,
            rows: rows.collect(),
        })
    }

    /// How the two work, step by step.
    fn how(&self) -> Vec<Block> {
        let tray = match self.reply.plant.as_ref().and_then(|plant| plant.tray) {
            Some(tray) => Text::new("sort-step-tray-of").with("count", tray.min(self.reply.pieces)),
            None => Text::new("sort-step-tray"),
        };
        let steps = ["sort-step-count", "sort-step-pattern"].map(Text::new).into_iter();
        let then = ["sort-step-piece", "sort-step-doubt", "sort-step-second", "sort-step-plant"];
        let steps = steps.chain([tray]).chain(then.map(Text::new));
        let steps = steps.chain([Text::new("sort-step-write")]);
        vec![Block::numbered(steps.map(|step| self.words.prose(&step)))]
    }

    /// What happens when something is found, and what may still be in it.
    fn find(&self) -> Vec<Block> {
        let rules = ["forms-sorting-holds", "forms-sorting-again"];
        let heads = ["sort-find-found", "sort-find-left", "sort-find-again"];
        let rows = self.reply.finds.iter().map(|find| {
            let found = Prose::new().number(&whole(i64::from(find.found)));
            vec![found, self.share(find.left), self.share(find.left_again)]
        });
        let table = Table {
            caption: self.words.word("sort-find-says").into(),
            columns: heads.map(|id| Column::numbers(self.words.word(id))).into(),
            rows_have_heads: true,
            rows: rows.collect(),
        };
        let rules = Block::bullets(rules.map(|id| self.words.word(id)));
        vec![rules, Block::Table(table)]
    }

    /// Where each number comes from, and which of them are policy.
    fn numbers(&self) -> Block {
        let share =
            |id: &str, share: f64| Text::new(id).amount("share", 100.0 * share, Unit::Percent);
        let texts = [
            Text::new("sort-from-exact"),
            Text::new("sort-from-reading"),
            share("sort-from-rare", UNNOTICED),
            share("sort-from-shared", SHARED),
            Text::new("sort-from-trial"),
            share("sort-from-baskets", CONTAMINATED).amount(
                "deadly",
                100.0 * DEADLY,
                Unit::Percent,
            ),
            share("sort-from-followed", FOLLOWED),
            Text::new("sort-from-tray").amount("time", TRAY_MINUTES, Unit::Minute),
        ];
        self.words.bullets(&texts)
    }
}
