//! What an outing costs and brings: for those who run it.

use super::section;
use crate::{Anchor, Block, Column, Fact, Kind, NoticeKind, Page, Prose, Rounding, Table, Words};
use desk::{AtSize, BreakEven, Money, Per, Plan, Rung, Scale};
use ground::{Cents, Text, Unit, Working};

/// What it is called.
pub(super) fn title(plan: &Plan) -> Text {
    Text::new("view-money-title").with("name", plan.head.name.as_str())
}

/// The page of the money.
#[must_use]
pub(super) fn money_page(plan: &Plan, money: &Money, words: &Words<'_>) -> Page {
    let view = View { money, words };
    let says = Text::new("view-money-says").with("currency", money.currency.code());
    words
        .page(Kind::Screen, &title(plan))
        .with([words.para(&says)])
        .with(view.told("view-money-open", &money.open, NoticeKind::Question))
        .with(view.told("view-money-mind", &money.mind, NoticeKind::Caution))
        .with(section("view-money-costs", view.costs(), words))
        .with(section("view-money-sizes", view.sizes(), words))
        .with(section("view-money-break-even", view.break_even(), words))
        .with(section("view-money-scale", view.scale(), words))
        .with(section("view-money-workings", view.workings(), words))
}

/// Money on its way to a page.
struct View<'a> {
    money: &'a Money,
    words: &'a Words<'a>,
}

impl View<'_> {
    fn said(&self, amount: Cents) -> Prose {
        self.words.money(amount, self.money.currency)
    }

    /// An amount, or that it is not known.
    fn maybe(&self, amount: Option<Cents>) -> Prose {
        amount.map_or_else(|| self.words.word("unknown").into(), |amount| self.said(amount))
    }

    fn told(&self, head: &str, texts: &[Text], kind: NoticeKind) -> Option<Block> {
        let head = self.words.word(head).into();
        let blocks = vec![self.words.bullets(texts)];
        (!texts.is_empty()).then_some(Block::Notice(crate::Notice { kind, head, blocks }))
    }

    /// How each number came about: after all of them, since paper shows workings opened.
    fn workings(&self) -> Vec<Block> {
        let workings = &self.money.workings;
        let all = [
            ("money-a-head", &workings.a_head),
            ("money-left", &workings.left),
            ("money-break-even", &workings.break_even),
            ("money-scale", &workings.scale),
            ("money-lowest", &workings.lowest),
        ];
        let opens = |(name, working): (&str, &Option<Working>)| {
            working.as_ref().map(|working| self.words.working(&Anchor::new(name), working))
        };
        all.into_iter().filter_map(opens).collect()
    }

    fn fact(&self, label: &str, value: Prose) -> Fact {
        self.words.fact(&Text::new(label), value)
    }

    fn costs(&self) -> Vec<Block> {
        if self.money.costs.is_empty() {
            return Vec::new();
        }
        let words = self.words;
        let row = |cost: &desk::Cost| {
            let per = match cost.per {
                Per::Outing => "view-money-per-outing",
                Per::Person => "view-money-per-person",
            };
            vec![Prose::new().said(&cost.called), words.word(per).into(), self.said(cost.amount)]
        };
        let table = Table {
            caption: words.word("view-money-costs-caption").into(),
            columns: vec![
                Column::words(words.word("view-money-cost")),
                Column::words(words.word("view-money-per")),
                Column::numbers(words.word("view-money-amount")),
            ],
            rows_have_heads: true,
            rows: self.money.costs.iter().map(row).collect(),
        };
        let mut facts = vec![
            self.fact("view-money-once", self.maybe(self.money.once)),
            self.fact("view-money-each", self.maybe(self.money.each)),
        ];
        facts.extend(self.fee());
        vec![Block::Table(table), Block::Facts(facts)]
    }

    fn fee(&self) -> Option<Fact> {
        let fee = self.money.fee?;
        let share = f64::from(fee.share.get()) / 10_000.0;
        let share = self.words.catalogue.amount(share, Unit::Percent, Rounding::Up);
        let says = Text::new("view-money-fee-says")
            .with("share", share)
            .with("fixed", self.said(fee.fixed).plain());
        Some(self.fact("view-money-fee", self.words.prose(&says)))
    }

    fn sizes(&self) -> Vec<Block> {
        if self.money.sizes.is_empty() {
            return Vec::new();
        }
        let words = self.words;
        let mut columns: Vec<_> = ["people", "all-cost", "a-head", "least"]
            .map(|id| Column::numbers(words.word(&format!("view-money-{id}"))))
            .into();
        columns.extend(self.money.price.map(|price| {
            let left = Text::new("view-money-left-at").with("price", self.said(price).plain());
            Column::numbers(words.prose(&left))
        }));
        let table = Table {
            caption: words.word("view-money-sizes-caption").into(),
            columns,
            rows_have_heads: true,
            rows: self.money.sizes.iter().map(|size| self.size(size)).collect(),
        };
        std::iter::once(Block::Table(table)).chain(self.evenly()).collect()
    }

    fn size(&self, size: &AtSize) -> Vec<Prose> {
        let people = Prose::new().number(&crate::whole(size.people.into()));
        vec![
            people,
            self.maybe(size.costs),
            self.maybe(size.a_head),
            self.maybe(size.least_price),
            self.maybe(size.left),
        ]
    }

    /// What each of those who have signed up pays, where all pay the same but for a cent.
    fn evenly(&self) -> Option<Block> {
        let share = |rung: &Rung| {
            let text = Text::new("view-money-shares").with("people", rung.people);
            self.words.catalogue.say(&text.with("amount", self.said(rung.price).plain()))
        };
        let shares: Vec<_> = self.money.evenly.iter().map(share).collect();
        let text = Text::new("view-money-evenly")
            .with("people", self.money.coming)
            .with("shares", self.words.catalogue.list(&shares));
        (!shares.is_empty()).then(|| self.words.para(&text))
    }

    fn break_even(&self) -> Vec<Block> {
        let known = self.money.price.zip(self.money.break_even);
        let Some((price, break_even)) = known else {
            return vec![self.words.para(&Text::new("view-money-price-open"))];
        };
        let price = self.said(price).plain();
        let text = match break_even {
            BreakEven::Never => Text::new("view-money-never"),
            BreakEven::From { people, people_hundredths: exact } => Text::new("view-money-from")
                .with("people", people)
                .with("exact", format!("{}.{:02}", exact / 100, exact % 100)),
        };
        vec![self.words.para(&text.with("price", price))]
    }

    fn scale(&self) -> Vec<Block> {
        let Some(scale) = &self.money.scale else { return Vec::new() };
        let says = self.words.para(&Text::new("view-money-scale-says"));
        vec![self.rungs(scale), Block::Facts(self.on_scale(scale)), says]
    }

    fn rungs(&self, scale: &Scale) -> Block {
        let columns = ["view-money-rung", "view-money-people", "view-money-brings"];
        let row = |rung: &Rung| {
            let people = Prose::new().number(&crate::whole(rung.people.into()));
            vec![self.said(rung.price), people, self.maybe(rung.price.times(rung.people))]
        };
        Block::Table(Table {
            caption: self.words.word("view-money-scale-caption").into(),
            columns: columns.map(|id| Column::numbers(self.words.word(id))).into(),
            rows_have_heads: true,
            rows: scale.rungs.iter().map(row).collect(),
        })
    }

    fn on_scale(&self, scale: &Scale) -> Vec<Fact> {
        let true_cost = Text::new("view-money-true-cost").with("people", scale.people);
        vec![
            self.words.fact(&true_cost, self.maybe(scale.true_cost)),
            self.fact("view-money-taken", self.said(scale.taken)),
            self.fact("view-money-mean", self.said(scale.mean)),
            self.fact("view-money-fees", self.said(scale.fees)),
            self.fact("view-money-scale-left", self.maybe(scale.left)),
            self.fact("view-money-lowest", self.maybe(scale.lowest_must_be)),
        ]
    }
}
