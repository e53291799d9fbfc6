//! What an outing costs, what it brings, and from how many people on it carries itself.
//!
//! What was not said is open, and every number that hangs on it is missing: nothing is guessed.

mod formula;
mod working;

pub use formula::BreakEven;

use crate::outing::{Cost, Fee, MoneyWish, Per, Rung};
use formula as f;
use ground::{Arg, Cents, Currency, Text, Working};
use serde::Serialize;
use std::collections::BTreeSet;

/// Money, worked out.
#[derive(Clone, Debug, Serialize)]
pub struct Money {
    /// In which currency.
    pub currency: Currency,
    /// Every cost.
    pub costs: Vec<Cost>,
    /// What is paid once, however many come; none where no cost is listed.
    #[serde(rename = "once_cents")]
    pub once: Option<Cents>,
    /// What is paid for each person; none where no cost is listed.
    #[serde(rename = "each_cents")]
    pub each: Option<Cents>,
    /// What each person pays, where there is one price.
    #[serde(rename = "price_cents")]
    pub price: Option<Cents>,
    /// What a payment costs, where it is known.
    pub fee: Option<Fee>,
    /// How many people can come, where it is known.
    pub places: Option<u32>,
    /// How many have signed up.
    pub coming: u32,
    /// What so many people cost and bring, the fewest first.
    pub sizes: Vec<AtSize>,
    /// From how many people on it carries itself at its price.
    pub break_even: Option<BreakEven>,
    /// The costs of those who have signed up, paid evenly to the cent.
    pub evenly: Vec<Rung>,
    /// The sliding scale.
    pub scale: Option<Scale>,
    /// What is not known, and what hangs on it.
    pub open: Vec<Text>,
    /// What does not fit.
    pub mind: Vec<Text>,
    /// How the numbers came about.
    pub workings: Workings,
}

/// What so many people cost and bring.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct AtSize {
    /// How many people.
    pub people: u32,
    /// What all of them cost.
    #[serde(rename = "costs_cents")]
    pub costs: Option<Cents>,
    /// What each costs, up to a whole cent.
    #[serde(rename = "a_head_cents")]
    pub a_head: Option<Cents>,
    /// The least price at which they carry the outing, its fee paid.
    #[serde(rename = "least_price_cents")]
    pub least_price: Option<Cents>,
    /// What is left at the price; below zero, what is short.
    #[serde(rename = "left_cents")]
    pub left: Option<Cents>,
}

/// A sliding scale.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Scale {
    /// Its prices, the lowest first.
    pub rungs: Vec<Rung>,
    /// How many people all of them are.
    pub people: u32,
    /// What they pay.
    #[serde(rename = "taken_cents")]
    pub taken: Cents,
    /// What they pay on average, down to a whole cent.
    #[serde(rename = "mean_cents")]
    pub mean: Cents,
    /// What their payments cost.
    #[serde(rename = "fees_cents")]
    pub fees: Cents,
    /// What each of them costs, the fee of one even price included: the true cost.
    #[serde(rename = "true_cost_cents")]
    pub true_cost: Option<Cents>,
    /// What is left; below zero, what is short.
    #[serde(rename = "left_cents")]
    pub left: Option<Cents>,
    /// What the lowest price must be for the scale to carry itself.
    #[serde(rename = "lowest_must_be_cents")]
    pub lowest_must_be: Option<Cents>,
}

/// How the numbers came about.
#[derive(Clone, Debug, Default, Serialize)]
pub struct Workings {
    /// What a head costs.
    pub a_head: Option<Working>,
    /// The break-even point.
    pub break_even: Option<Working>,
    /// What is left at the price.
    pub left: Option<Working>,
    /// What is left of the scale.
    pub scale: Option<Working>,
    /// What the lowest price must be.
    pub lowest: Option<Working>,
}

impl Money {
    /// The number of people that the workings speak of: as many as there are places, else as many as
    /// have signed up.
    #[must_use]
    pub fn full(&self) -> Option<u32> {
        self.places.or((self.coming > 0).then_some(self.coming))
    }

    /// The fee that is counted: none where none was said.
    fn fee(&self) -> Fee {
        self.fee.unwrap_or_default()
    }

    /// What a head leaves at the price.
    fn leaves(&self) -> Option<Cents> {
        let price = self.price?;
        f::leaves(price, self.each?, f::fee_on(self.fee(), price)?)
    }
}

/// An amount of money as a message says it.
fn said(amount: Cents, currency: Currency) -> Arg {
    Arg::Money(amount, currency)
}

pub(super) fn money(wish: &MoneyWish, coming: usize) -> Money {
    let of = |per: Per| {
        let own = wish.costs.iter().filter(|cost| cost.per == per);
        let any = !wish.costs.is_empty();
        any.then(|| Cents::sum(own.map(|cost| cost.amount))).flatten()
    };
    let mut money = Money {
        currency: wish.currency,
        once: of(Per::Outing),
        each: of(Per::Person),
        costs: wish.costs.clone(),
        price: wish.price,
        fee: wish.fee,
        places: wish.places,
        coming: u32::try_from(coming).unwrap_or(u32::MAX),
        sizes: Vec::new(),
        break_even: None,
        evenly: Vec::new(),
        scale: None,
        open: open(wish),
        mind: Vec::new(),
        workings: Workings::default(),
    };
    money.break_even = money.once.zip(money.leaves()).and_then(|(once, m)| f::break_even(once, m));
    money.sizes = sizes(&money, &wish.scale).into_iter().map(|n| at_size(&money, n)).collect();
    money.evenly = evenly(&money).unwrap_or_default();
    money.scale = scale(&money, &wish.scale);
    money.mind = mind(&money);
    money.workings = working::workings(&money);
    money
}

/// What was not said.
fn open(wish: &MoneyWish) -> Vec<Text> {
    let missing = [
        (wish.costs.is_empty(), "money-open-costs"),
        (wish.price.is_none() && wish.scale.is_empty(), "money-open-price"),
        (wish.places.is_none(), "money-open-places"),
        (wish.fee.is_none(), "money-open-fee"),
    ];
    missing.into_iter().filter(|(open, _)| *open).map(|(_, id)| Text::new(id)).collect()
}

/// The numbers of people that are looked at: in five even steps up to all places, and those that mean
/// something. Without places, up to those who have signed up.
fn sizes(money: &Money, rungs: &[Rung]) -> BTreeSet<u32> {
    let most = money.full().unwrap_or(0);
    let step = most.div_ceil(5).max(1);
    let mut sizes: BTreeSet<u32> = (1..=5).map(|at| (at * step).min(most)).collect();
    sizes.insert(money.coming);
    if let Some(BreakEven::From { people, .. }) = money.break_even {
        sizes.insert(people);
    }
    sizes.extend(f::on_scale(rungs));
    sizes.remove(&0);
    sizes
}

fn at_size(money: &Money, people: u32) -> AtSize {
    let paid = money.once.zip(money.each);
    let costs = paid.and_then(|(once, each)| f::costs(once, each, people));
    AtSize {
        people,
        costs,
        a_head: paid.and_then(|(once, each)| f::a_head(once, each, people)),
        least_price: costs.and_then(|costs| f::least_price(costs, people, money.fee())),
        left: money.once.zip(money.leaves()).and_then(|(once, m)| f::left(once, m, people)),
    }
}

fn evenly(money: &Money) -> Option<Vec<Rung>> {
    f::evenly(f::costs(money.once?, money.each?, money.coming)?, money.coming)
}

fn scale(money: &Money, rungs: &[Rung]) -> Option<Scale> {
    let people = f::on_scale(rungs)?;
    let taken = f::taken(rungs)?;
    let fees = f::fees(rungs, money.fee())?;
    let paid = money.once.zip(money.each);
    let costs = paid.and_then(|(once, each)| f::costs(once, each, people));
    Some(Scale {
        rungs: rungs.to_vec(),
        people,
        taken,
        mean: taken.share_down(people)?,
        fees,
        true_cost: costs.and_then(|costs| f::least_price(costs, people, money.fee())),
        left: costs.and_then(|costs| taken.minus(fees)?.minus(costs)),
        lowest_must_be: costs.and_then(|costs| f::lowest_must_be(rungs, costs, money.fee())),
    })
}

/// What does not fit: more people than places, an outing that cannot carry itself.
fn mind(money: &Money) -> Vec<Text> {
    let mut mind = Vec::new();
    let over = |count: u32| money.places.filter(|places| count > *places);
    if let Some(places) = over(money.coming) {
        let text = Text::new("money-mind-full").with("places", places);
        mind.push(text.with("coming", money.coming));
    }
    match money.break_even {
        Some(BreakEven::Never) => mind.push(Text::new("money-mind-never")),
        Some(BreakEven::From { people, .. }) => mind.extend(over(people).map(|places| {
            Text::new("money-mind-too-many").with("people", people).with("places", places)
        })),
        None => {}
    }
    let Some(scale) = &money.scale else { return mind };
    if let Some(places) = over(scale.people) {
        let text = Text::new("money-mind-scale-full").with("places", places);
        mind.push(text.with("people", scale.people));
    }
    if let Some(left) = scale.left.filter(|left| *left < Cents::ZERO) {
        let short = Cents::ZERO.minus(left).unwrap_or(left);
        mind.push(Text::new("money-mind-scale-short").with("short", said(short, money.currency)));
    }
    mind
}

#[cfg(test)]
mod tests {
    use super::*;
    use ground::Millionths;

    fn wish() -> MoneyWish {
        let cost = |called: &str, amount, per| Cost {
            per,
            called: called.to_owned(),
            amount: Cents::new(amount),
        };
        MoneyWish {
            currency: "GBP".parse().unwrap(),
            price: Some(Cents::new(2800)),
            places: Some(16),
            fee: Some(Fee { share: Millionths::read("1.5 %").unwrap(), fixed: Cents::new(25) }),
            scale: vec![
                Rung { price: Cents::new(2000), people: 4 },
                Rung { price: Cents::new(2800), people: 8 },
                Rung { price: Cents::new(3600), people: 4 },
            ],
            terms: None,
            costs: vec![
                cost("leader", 18_000, Per::Outing),
                cost("hall", 6_000, Per::Outing),
                cost("food", 650, Per::Person),
            ],
        }
    }

    #[test]
    fn everything_said_leaves_nothing_open() {
        let money = money(&wish(), 14);
        assert!(money.open.is_empty() && money.mind.is_empty(), "{money:?}");
        assert_eq!(money.once, Some(Cents::new(24_000)));
        let twelve = BreakEven::From { people: 12, people_hundredths: 1152 };
        assert_eq!(money.break_even, Some(twelve));
        let people: Vec<_> = money.sizes.iter().map(|size| size.people).collect();
        assert_eq!(people, [4, 8, 12, 14, 16]);
        let scale = money.scale.unwrap();
        assert_eq!((scale.taken.get(), scale.mean.get()), (44_800, 2800));
        // By hand: 448 − 10.72 − 344.
        assert_eq!(scale.left, Some(Cents::new(9_328)));
    }

    #[test]
    fn what_was_not_said_is_open_and_every_number_that_hangs_on_it_is_missing() {
        let bare = MoneyWish { costs: Vec::new(), ..wish() };
        let without_costs = money(&bare, 14);
        assert!(without_costs.open.contains(&Text::new("money-open-costs")));
        assert!(without_costs.break_even.is_none());
        assert!(without_costs.sizes.iter().all(|s| s.a_head.is_none() && s.left.is_none()));
        assert!(without_costs.scale.unwrap().left.is_none());

        let unpriced = money(&MoneyWish { price: None, scale: Vec::new(), ..wish() }, 14);
        assert!(unpriced.open.contains(&Text::new("money-open-price")));
        assert!(unpriced.break_even.is_none() && unpriced.scale.is_none());
        assert!(unpriced.sizes.iter().all(|s| s.a_head.is_some() && s.left.is_none()));

        let placeless = money(&MoneyWish { places: None, ..wish() }, 0);
        assert!(placeless.open.contains(&Text::new("money-open-places")));
        assert_eq!(placeless.full(), None);
    }

    #[test]
    fn an_outing_that_cannot_carry_itself_is_told_so() {
        let ids = |wish: &MoneyWish, coming| {
            money(wish, coming).mind.into_iter().map(|text| text.id).collect::<Vec<_>>()
        };
        // By hand: 6.80 less 6.50, less 0.11 and 0.25 for the card.
        let cheap = MoneyWish { price: Some(Cents::new(680)), ..wish() };
        assert_eq!(ids(&cheap, 3), ["money-mind-never"]);
        let small = MoneyWish { places: Some(10), ..wish() };
        let told = ["money-mind-full", "money-mind-too-many", "money-mind-scale-full"];
        assert_eq!(ids(&small, 14), told);
        let mut dear = wish();
        dear.costs[0].amount = Cents::new(60_000);
        assert!(ids(&dear, 3).contains(&"money-mind-scale-short".to_owned()));
    }

    #[test]
    fn an_amount_that_does_not_fit_is_missing_and_never_wrong() {
        let mut huge = wish();
        huge.costs[0].amount = Cents::new(i64::MAX);
        let money = money(&huge, 14);
        assert_eq!((money.once, money.break_even), (None, None));
    }
}
