//! The emergency card: call, say, keep. On half a sheet, folded in a wallet, and as a copy at base.
//! It says nothing of anybody's health, and nothing of treatment.

use super::day::clock;
use crate::{
    Block, Break, Column, Fact, Format, Kind, Level, NoticeKind, Page, Prose, Table, Words,
};
use desk::{Count, Emergency, NumberPlan, NumberStanding, Plan, Reaches, StopPlace};
use ground::Text;
use herbal::DayLine;

/// Letters of a name that a card has room for; the run sheet has all of them.
const HALF_LETTERS: usize = 90;
const WALLET_LETTERS: usize = 56;
/// Stops that a card has room for.
const HALF_STOPS: usize = 12;
const WALLET_STOPS: usize = 5;

/// The card on one side of half a sheet, or folded to the size of a bank card.
pub(super) fn emergency(plan: &Plan, words: &Words<'_>, format: Format) -> Page {
    let page = words.page(Kind::Screen, &title(plan)).on(format);
    let card = Card { plan, card: &plan.emergency, words, small: format == Format::Wallet };
    if card.small { page.with(card.folded()) } else { page.with(card.half()) }
}

/// The same card for whoever stays at base, with when to raise the alarm.
pub(super) fn copy_at_base(plan: &Plan, words: &Words<'_>) -> Page {
    let card = Card { plan, card: &plan.emergency, words, small: false };
    words
        .page(Kind::Screen, &title_at_base(plan))
        .on(Format::Half)
        .with([card.overdue()])
        .with(card.half())
        .with([Block::lines(words.word("view-card-heard"), 1)])
}

/// What the card is called.
pub(super) fn title(plan: &Plan) -> Text {
    named("view-card-title", plan)
}

/// What its copy is called.
pub(super) fn title_at_base(plan: &Plan) -> Text {
    named("view-card-base-title", plan)
}

fn named(id: &str, plan: &Plan) -> Text {
    Text::new(id).with("name", short(&plan.head.name, WALLET_LETTERS).as_str())
}

struct Card<'a> {
    plan: &'a Plan,
    card: &'a Emergency,
    words: &'a Words<'a>,
    small: bool,
}

impl Card<'_> {
    fn half(&self) -> Vec<Block> {
        let card = self.card;
        let mut blocks = vec![self.head("view-card-call"), self.numbers()];
        blocks.push(self.words.para(&Text::new("view-card-no-treatment")));
        blocks.extend([self.head("view-card-say"), self.lines(&card.say)]);
        blocks.extend([self.head("view-card-keep"), self.lines(&card.keep)]);
        blocks.extend([self.head("view-card-where"), self.places()]);
        blocks.extend(self.more(HALF_STOPS));
        blocks.extend([Block::Facts(self.people()), self.counts()]);
        blocks
    }

    /// Four panels of few words, in reading order.
    fn folded(&self) -> Vec<Block> {
        let card = self.card;
        let numbers = card.numbers.iter().map(|number| self.short_number(number));
        let stops = card.places.iter().take(WALLET_STOPS).map(|place| {
            Prose::new().said(&self.name(&place.called)).text(": ").then(self.place(place))
        });
        let counts = card.counts.iter().take(WALLET_STOPS + 2);
        let counts = counts.map(|count| Prose::from(clock(count.at)).text(" ").blank());
        let fold = Block::Break(Break::Page);
        let mut blocks = vec![self.head("view-card-call"), Block::bullets(numbers)];
        blocks.extend([self.head("view-card-where"), Block::bullets(stops)]);
        blocks.extend(self.more(WALLET_STOPS));
        blocks.extend([fold.clone(), self.head("view-card-say"), self.lines(&card.say)]);
        blocks.extend([self.head("view-card-keep"), self.lines(&card.keep)]);
        blocks.extend([fold.clone(), Block::Facts(self.people())]);
        blocks.extend([fold, self.head("view-card-heads"), Block::Ticks(counts.collect())]);
        blocks
    }

    fn head(&self, id: &str) -> Block {
        self.words.heading(Level::Section, &Text::new(id))
    }

    fn name(&self, name: &str) -> String {
        short(name, if self.small { WALLET_LETTERS } else { HALF_LETTERS })
    }

    fn lines(&self, lines: &[DayLine]) -> Block {
        Block::bullets(lines.iter().map(|line| Prose::new().said(&line.says)))
    }

    fn numbers(&self) -> Block {
        let fact = |number: &NumberPlan| {
            let value = self.dialled(number).text(" (").then(self.looked_up(number)).text(")");
            Fact::new(self.called(number), value)
        };
        Block::Facts(self.card.numbers.iter().map(fact).collect())
    }

    fn called(&self, number: &NumberPlan) -> Prose {
        let kind = match number.reaches {
            Reaches::Emergency => "plan-reaches-emergency",
            Reaches::PoisonInformation => "plan-reaches-poison-information",
            Reaches::Other => "plan-reaches-other",
        };
        match &number.called {
            Some(called) if self.small || number.reaches != Reaches::PoisonInformation => {
                Prose::new().said(&self.name(called))
            }
            Some(called) => Prose::from(self.words.word(kind)).text(": ").said(&self.name(called)),
            None => self.words.word(kind).into(),
        }
    }

    /// The number, or room for it: what was not looked up, or too long ago, is looked up now.
    fn dialled(&self, number: &NumberPlan) -> Prose {
        match (&number.number, number.standing) {
            (Some(dialled), NumberStanding::LookedUp) => Prose::new().said_strong(dialled),
            _ => {
                let now = self.words.word("view-card-look-up");
                Prose::new().strong(&now).text(": ").blank()
            }
        }
    }

    /// Where and when it was looked up; of one that is too old, what it was.
    fn looked_up(&self, number: &NumberPlan) -> Prose {
        let dialled = number.number.as_deref().unwrap_or_default();
        let text = match (number.standing, &number.source, number.looked_up) {
            (NumberStanding::LookedUp, Some(source), Some(day)) => Text::new("view-card-source")
                .with("source", short(source, HALF_LETTERS).as_str())
                .with("day", day),
            (NumberStanding::Old, _, Some(day)) => {
                Text::new("view-card-old").with("number", dialled).with("day", day)
            }
            (NumberStanding::Missing, ..) => Text::new("view-card-none"),
            _ => Text::new("view-card-unsourced").with("number", dialled),
        };
        self.words.prose(&text)
    }

    fn short_number(&self, number: &NumberPlan) -> Prose {
        self.called(number).text(": ").then(self.dialled(number))
    }

    fn places(&self) -> Block {
        let fact = |place: &StopPlace| {
            let label = Prose::new().said(&self.name(&place.called));
            Fact::new(label, self.place(place).text("; ").then(self.road(place)))
        };
        Block::Facts(self.card.places.iter().take(HALF_STOPS).map(fact).collect())
    }

    fn more(&self, room: usize) -> Option<Block> {
        self.left_out(room).map(|more| self.words.para(&more))
    }

    /// That there are more stops than the card has room for.
    fn left_out(&self, room: usize) -> Option<Text> {
        let more = self.card.places.len().saturating_sub(room);
        (more > 0).then(|| Text::new("view-card-more").with("count", more))
    }

    /// Grid reference and coordinates, or room for them.
    fn place(&self, place: &StopPlace) -> Prose {
        let degrees = place.degrees.map(|at| self.words.prose(&degrees(at)));
        match (&place.grid, degrees) {
            (Some(grid), Some(degrees)) if !self.small => {
                Prose::new().said_strong(&self.name(grid)).text("; ").then(degrees)
            }
            (Some(grid), _) => Prose::new().said_strong(&self.name(grid)),
            (None, Some(degrees)) => degrees,
            (None, None) => Prose::new().blank(),
        }
    }

    fn road(&self, place: &StopPlace) -> Prose {
        let said = |said: &String| Prose::new().said(&self.name(said));
        match (&place.road, &place.way_in) {
            (Some(road), Some(way)) => said(road).text("; ").then(said(way)),
            (Some(one), None) => said(one),
            (None, Some(way)) => Prose::new().blank().text("; ").then(said(way)),
            (None, None) => Prose::new().blank(),
        }
    }

    /// Who does what, with room wherever nobody said.
    fn people(&self) -> Vec<Fact> {
        let card = self.card;
        let said = |said: &Option<String>| match said {
            Some(said) => Prose::new().said(&self.name(said)),
            None => Prose::new().blank(),
        };
        let base = card.base.as_ref().map_or_else(
            || Prose::new().blank(),
            |base| Prose::new().said(&self.name(&base.name)).text(", ").said_strong(&base.phone),
        );
        let leader = Prose::new().said(&self.name(&self.plan.head.leader));
        let facts = [
            ("view-card-leads", leader),
            ("view-card-deputy", said(&card.deputy)),
            ("view-card-first-aider", said(&card.first_aider)),
            ("view-card-base", base),
            ("view-card-overdue", self.alarm()),
            ("view-card-meeting", said(&card.meeting_point)),
            ("view-card-second-way", said(&card.second_way)),
        ];
        facts.into_iter().map(|(id, value)| self.words.fact(&Text::new(id), value)).collect()
    }

    fn alarm(&self) -> Prose {
        let Some(at) = self.card.alarm_at else { return Prose::new().blank() };
        let text =
            Text::new("view-card-alarm").with("day", at.date()).with("time", clock(at.time()));
        self.words.prose(&text)
    }

    /// What whoever stays at base does, and when.
    fn overdue(&self) -> Block {
        let what = self.words.para(&Text::new("view-card-base-do"));
        self.words.notice(NoticeKind::Caution, [Block::Para(self.alarm()), what])
    }

    fn counts(&self) -> Block {
        heads(self.plan, HALF_STOPS + 2, self.words)
    }
}

/// Times at which heads are counted, with room for the number.
pub(super) fn heads(plan: &Plan, room: usize, words: &Words<'_>) -> Block {
    let columns = ["view-card-time", "view-card-heads-at", "view-card-heads-how-many"];
    let last = plan.emergency.counts.len().saturating_sub(1);
    let row = |(at, count): (usize, &Count)| {
        let place = match &count.called {
            Some(called) => Prose::new().said(&short(called, HALF_LETTERS)),
            None if at == last => words.word("view-card-end").into(),
            None => words.word("view-card-start").into(),
        };
        vec![Prose::new().number(&clock(count.at)), place, Prose::from("☐ ").blank()]
    };
    Block::Table(Table {
        caption: words.word("view-card-heads").into(),
        columns: columns.map(|id| Column::words(words.word(id))).into(),
        rows_have_heads: true,
        rows: plan.emergency.counts.iter().enumerate().take(room).map(row).collect(),
    })
}

/// Coordinates as they are read out on the phone.
fn degrees((latitude, longitude): (f64, f64)) -> Text {
    let north = if latitude < 0.0 { "view-card-south" } else { "view-card-north" };
    let east = if longitude < 0.0 { "view-card-west" } else { "view-card-east" };
    Text::new("view-card-degrees")
        .with("latitude", format!("{:.5}", latitude.abs()))
        .with("north", Text::new(north))
        .with("longitude", format!("{:.5}", longitude.abs()))
        .with("east", Text::new(east))
}

/// The beginning of what would not fit.
fn short(said: &str, letters: usize) -> String {
    if said.chars().count() <= letters {
        return said.to_owned();
    }
    said.chars().take(letters).chain(['…']).collect()
}
