//! What a plant in hand is: the verdict, what stands in the way, what to look at next.

use super::list;
use crate::{
    Anchor, Block, Column, Details, Item, Kind, Level, Notice, NoticeKind, Page, Prose, Rounding,
    Table, Words, numerals,
};
use desk::{NameReply, NextLookReply};
use ground::{Arg, Text, Unit};
use identify::{Chance, InTheWay, Next, Offer, Outcome, Plan, RivalKind, Tells, Verdict};

/// A chance below this is not listed.
const WORTH_NAMING: f64 = 0.001;
/// So many characters are named that would tell most.
const TELLING: usize = 5;
/// A rival that fills less of the bar than this is not listed.
const IN_THE_WAY: f64 = 0.01;

/// What somebody looks at next; never what that would show.
pub(super) fn next_look(reply: &NextLookReply, words: &Words<'_>) -> Page {
    let page = words.page(Kind::Screen, &Text::new("view-name-next"));
    if reply.look_at.is_empty() {
        let says = if reply.wants_another { "view-look-another" } else { "view-look-none" };
        return page.with([words.para(&Text::new(says))]);
    }
    page.with([Block::numbered(reply.look_at.iter().map(|character| how(character, words)))])
}

/// A character, and how to look at it.
fn how(character: &str, words: &Words<'_>) -> Prose {
    let name = Prose::new().said_strong(&words.character(character));
    let term = words.glossary.and_then(|glossary| glossary.term(character));
    name.then(term.map_or_else(Prose::new, |term| Prose::new().text(": ").said(&term.how)))
}

/// A reply on its way to a page.
struct View<'a> {
    reply: &'a NameReply,
    words: &'a Words<'a>,
}

pub(super) fn page(reply: &NameReply, words: &Words<'_>) -> Page {
    let view = View { reply, words };
    let title = match reply.verdicts.as_slice() {
        [only] => Text::new("view-name-is").taxon("plant", &only.target),
        _ => Text::new("view-name-what"),
    };
    let page = words.page(Kind::Screen, &title);
    let Some((first, others)) = reply.verdicts.split_first() else {
        return page.with([words.para(&Text::new("view-name-nothing"))]);
    };
    page.with([view.verdict(first)])
        .with(view.rivals(first))
        .with(view.tells(first))
        .with(view.telling())
        .with(view.next())
        .with(others.iter().map(|other| view.other(other)))
        .with(view.chances(first))
        .with([words.working(&Anchor::new(&first.target), &first.working)])
}

impl View<'_> {
    /// The word of a verdict, then why.
    fn verdict(&self, verdict: &Verdict) -> Block {
        let kind = match verdict.outcome {
            Outcome::Determined { .. } => NoticeKind::Caution,
            Outcome::NotYet => NoticeKind::Question,
            Outcome::RuledOut => NoticeKind::DoNot,
        };
        let head = verdict.reasons.first().map(|first| self.words.prose(first));
        let mut blocks = self.reasons(verdict);
        if verdict.outcome.is_determined() {
            blocks.extend(self.harm(&verdict.target));
            blocks.push(self.words.para(&Text::new("view-name-no-more-than-a-name")));
        }
        Block::Notice(Notice { kind, head: head.unwrap_or_default(), blocks })
    }

    /// What stands in the way. Characters that must be looked at share a line; what is wanted
    /// against each look-alike has a table of its own.
    fn reasons(&self, verdict: &Verdict) -> Vec<Block> {
        let mut said: Vec<Text> = Vec::new();
        let reasons = verdict.reasons.iter().skip(1);
        for reason in reasons.filter(|reason| reason.id != "identify-tells-open") {
            match (said.last_mut(), reason.args.get("character")) {
                (Some(last), Some(character)) if last.id == reason.id => {
                    join(last, character.clone());
                }
                _ => said.push(reason.clone()),
            }
        }
        if said.is_empty() { Vec::new() } else { vec![self.words.bullets(&said)] }
    }

    fn harm(&self, target: &str) -> Option<Block> {
        let harm = list::harm(*self.reply.harms.get(target)?, self.words);
        Some(self.words.para(&Text::new("view-name-harm").with("harm", harm)))
    }

    /// What is left of each rival, and what would set it aside.
    fn rivals(&self, verdict: &Verdict) -> Option<Block> {
        let bar = &verdict.bar;
        let least = IN_THE_WAY * bar.allowed.get();
        let heavy = bar.rivals.iter().filter(|rival| rival.contributes.get() > least);
        let rows: Vec<_> = heavy.map(|rival| self.rival(rival)).collect();
        let caption = Text::new("view-name-rivals")
            .with("left", rough(bar.left.get()))
            .with("allowed", rough(bar.allowed.get()))
            .with("others", bar.others)
            .with("others-left", rough(bar.others_left.get()));
        let columns = vec![
            Column::words(self.words.word("view-name-could-be")),
            Column::words(self.words.word("plants-harm")),
            Column::numbers(self.words.word("view-name-left")),
            Column::words(self.words.word("view-name-set-aside")),
        ];
        let caption = self.words.prose(&caption);
        let open = !verdict.outcome.is_determined() && !rows.is_empty();
        open.then_some(Block::Table(Table { caption, columns, rows_have_heads: true, rows }))
    }

    fn rival(&self, rival: &InTheWay) -> Vec<Prose> {
        let name = match rival.kind {
            RivalKind::Cousin => {
                let text = Text::new("identify-unlisted-relative");
                self.words.prose(&text.taxon("taxon", &rival.name))
            }
            _ => Prose::new().taxon(&rival.name),
        };
        let harm = match rival.kind {
            RivalKind::Listed(harm) => list::harm(harm, self.words),
            RivalKind::NoSheet => self.words.word("sheet-twin-unlisted"),
            RivalKind::Cousin => self.words.word("unknown"),
        };
        vec![
            name,
            harm.into(),
            Prose::new().number(&rough(rival.contributes.get())),
            self.characters(&rival.set_aside_by).into(),
        ]
    }

    /// Characters in plain words, as a list.
    fn characters(&self, ids: &[String]) -> String {
        ids.iter().map(|id| self.words.character(id)).collect::<Vec<_>>().join(", ")
    }

    /// What tells it from each dangerous look-alike.
    fn tells(&self, verdict: &Verdict) -> Vec<Block> {
        if verdict.tells.is_empty() {
            return Vec::new();
        }
        let heads = ["view-name-look-alike", "plants-harm", "view-name-told-apart", "view-name-by"];
        let table = Table {
            caption: self.words.word("view-name-tells-says").into(),
            columns: heads.map(|id| Column::words(self.words.word(id))).into(),
            rows_have_heads: true,
            rows: verdict.tells.iter().map(|tells| self.told(tells)).collect(),
        };
        let heading = self.words.heading(Level::Section, &Text::new("view-name-tells"));
        vec![heading, Block::Table(table)]
    }

    fn told(&self, tells: &Tells) -> Vec<Prose> {
        let harm =
            self.reply.harms.get(&tells.look_alike).map(|harm| list::harm(*harm, self.words));
        let met = if tells.met { "view-name-told" } else { "view-name-not-told" };
        let by = tells.characters.iter().map(|tell| {
            let text = Text::new("view-name-tell").with("times", rough(tell.times.get()));
            let text = text.with("character", self.words.character(&tell.character));
            self.words.catalogue.say(&text)
        });
        vec![
            Prose::new().taxon(&tells.look_alike),
            harm.unwrap_or_else(|| self.words.word("sheet-twin-unlisted")).into(),
            self.words.word(met).into(),
            by.collect::<Vec<_>>().join(", ").into(),
        ]
    }

    /// What would tell most of what it is, where nobody has named it.
    fn telling(&self) -> Vec<Block> {
        let telling = self.reply.telling.iter().take(TELLING);
        let points: Vec<_> = telling.map(|telling| how(&telling.character, self.words)).collect();
        if points.is_empty() {
            return Vec::new();
        }
        let heading = self.words.heading(Level::Section, &Text::new("view-name-telling"));
        vec![heading, Block::numbered(points)]
    }

    /// What to look at next, or why nothing settles it.
    fn next(&self) -> Vec<Block> {
        match &self.reply.next {
            None | Some(Next::Settled) => Vec::new(),
            Some(Next::Look(plan)) => self.plan(plan),
            Some(Next::CannotSettle { why }) => vec![Block::Notice(Notice {
                kind: NoticeKind::Question,
                head: self.words.word("view-name-cannot-settle").into(),
                blocks: vec![self.words.bullets(why)],
            })],
        }
    }

    fn plan(&self, plan: &Plan) -> Vec<Block> {
        let id = if self.reply.telling.is_empty() { "view-name-next" } else { "view-name-next-of" };
        let first = self.reply.verdicts.first().map_or("", |first| first.target.as_str());
        let heading = Text::new(id).taxon("plant", first);
        let mut blocks = vec![self.words.heading(Level::Section, &heading)];
        if !plan.looks.is_empty() {
            let says = Text::new("view-name-next-says").with("count", plan.looks.len());
            blocks.push(self.words.para(&timed(says, plan.seconds)));
            blocks.push(Block::numbered(plan.looks.iter().map(|offer| self.offer(offer))));
        }
        if !plan.again.is_empty() {
            let text =
                Text::new("view-name-again").with("characters", self.characters(&plan.again));
            blocks.push(self.words.para(&text));
        }
        blocks
    }

    /// A look: the character, what it typically shows, how to look.
    fn offer(&self, offer: &Offer) -> Item {
        let id = if offer.at_a_glance { "view-name-glance" } else { "view-name-offer" };
        let text = Text::new(id).with("typical", self.words.seen(&offer.character, &offer.typical));
        let text = timed(text, u32::from(offer.seconds));
        let name = Prose::new().said_strong(&self.words.character(&offer.character)).text(": ");
        let term = self.words.glossary.and_then(|glossary| glossary.term(&offer.character));
        let how = term.map(|term| Block::para(Prose::new().said(&term.how)));
        Item { says: name.then(self.words.prose(&text)), under: how.into_iter().collect() }
    }

    /// Another of the likeliest: its verdict, the rest on demand.
    fn other(&self, verdict: &Verdict) -> Block {
        let id = match verdict.outcome {
            Outcome::Determined { .. } => "view-name-determined",
            Outcome::NotYet => "view-name-not-yet",
            Outcome::RuledOut => "view-name-ruled-out",
        };
        let text = Text::new("view-name-other").taxon("plant", &verdict.target);
        let summary = self.words.prose(&text.with("verdict", self.words.word(id)));
        let blocks = self.reasons(verdict).into_iter().chain(self.rivals(verdict)).collect();
        Block::Details(Details { anchor: None, summary, open: false, blocks })
    }

    /// What it could be: it explains, and does not decide.
    fn chances(&self, verdict: &Verdict) -> Vec<Block> {
        let worth = |chance: &&Chance| chance.chance.get() >= WORTH_NAMING;
        let rows: Vec<_> =
            verdict.posterior.iter().filter(worth).map(|chance| self.chance(chance)).collect();
        let columns = vec![
            Column::words(self.words.word("plants-name")),
            Column::words(self.words.word("plants-harm")),
            Column::numbers(self.words.word("view-name-chance")),
        ];
        let table = Table {
            caption: self.words.word("view-name-chances-says").into(),
            columns,
            rows_have_heads: true,
            rows,
        };
        vec![
            self.words.heading(Level::Section, &Text::new("view-name-chances")),
            Block::Table(table),
        ]
    }

    fn chance(&self, chance: &Chance) -> Vec<Prose> {
        let (name, harm) = match &chance.taxon {
            Some(taxon) => {
                let harm = self.reply.harms.get(taxon);
                let harm = harm.map(|harm| list::harm(*harm, self.words));
                (Prose::new().taxon(taxon), harm.unwrap_or_else(|| self.words.word("unknown")))
            }
            None => (self.words.word("view-name-none-of-these").into(), self.words.word("unknown")),
        };
        vec![name, harm.into(), self.words.amount(100.0 * chance.chance.get(), Unit::Percent)]
    }
}

/// Puts one more thing into a message that names a character.
fn join(text: &mut Text, more: Arg) {
    let Some(named) = text.args.get_mut("character") else { return };
    match named {
        Arg::List(items) => items.push(more),
        _ => *named = Arg::List(vec![named.clone(), more]),
    }
}

/// A number that only its size matters of, to two significant digits.
fn rough(value: f64) -> String {
    if value.abs() < 10.0 {
        return numerals(value, Unit::One, Rounding::Nearest);
    }
    let mut step = 1.0;
    while value.abs() / step >= 100.0 {
        step *= 10.0;
    }
    numerals((value / step).round() * step, Unit::One, Rounding::Nearest)
}

/// How long something takes, in seconds below two minutes.
fn timed(text: Text, seconds: u32) -> Text {
    match seconds {
        0..120 => text.amount("time", f64::from(seconds), Unit::Second),
        _ => text.amount("time", f64::from(seconds) / 60.0, Unit::Minute),
    }
}
