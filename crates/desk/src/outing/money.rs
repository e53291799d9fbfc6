//! What an outing says of money: its tables `[money]` and `[[cost]]`, read into what a plan counts
//! with.

use super::entries::{counted, maybe};
use super::file::{Row, Said};
use super::read::Parsed;
use ground::{Cents, Currency, Faults, Millionths};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;
use toml::Spanned;

/// The most people that an outing has places for: beyond it, somebody's finger slipped.
const MOST_PLACES: u32 = 500;

/// Everything about money but the costs. In all files together it stands once.
#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct MoneyTable {
    currency: Said,
    price: Option<Said>,
    places: Option<Spanned<i64>>,
    card_fee: Option<FeeTable>,
    #[serde(default)]
    scale: Vec<RungTable>,
    terms: Option<String>,
}

/// What a payment by card costs.
#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct FeeTable {
    share: Said,
    fixed: Said,
}

/// One price of a sliding scale.
#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct RungTable {
    price: Said,
    people: Spanned<i64>,
}

/// One cost.
#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub(crate) struct CostTable {
    called: Said,
    amount: Said,
    per: Said,
}

/// What an outing says of money.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MoneyWish {
    /// In which currency everything is said.
    pub currency: Currency,
    /// What each person pays where there is one price.
    pub price: Option<Cents>,
    /// How many people can come.
    pub places: Option<u32>,
    /// What a payment costs; none means that nobody said so.
    pub fee: Option<Fee>,
    /// The prices of a sliding scale, the lowest first.
    pub scale: Vec<Rung>,
    /// On what terms people sign up, in words.
    pub terms: Option<String>,
    /// What the outing costs, by name.
    pub costs: Vec<Cost>,
}

/// What a payment costs the school: a share of the price, and a fixed amount.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Fee {
    /// The share, in millionths of the price.
    #[serde(rename = "share_millionths")]
    pub share: Millionths,
    /// The fixed amount.
    #[serde(rename = "fixed_cents")]
    pub fixed: Cents,
}

/// One price of a sliding scale, and how many people are expected to choose it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Rung {
    /// The price.
    #[serde(rename = "price_cents")]
    pub price: Cents,
    /// How many people.
    pub people: u32,
}

/// One cost.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Cost {
    /// Whether it is paid once or for each person.
    pub per: Per,
    /// What it is called.
    pub called: String,
    /// How much.
    #[serde(rename = "amount_cents")]
    pub amount: Cents,
}

/// How often a cost is paid.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Per {
    /// Once, however many come.
    Outing,
    /// Once for each person who comes.
    Person,
}

/// Reads what all files together say of money; nothing where none says anything.
pub(super) fn read(parsed: &[Parsed<'_>], faults: &mut Faults) -> Option<MoneyWish> {
    let mut tables =
        parsed.iter().filter_map(|(source, file)| Some((source, file.money.as_ref()?)));
    let first = tables.next();
    for (source, table) in tables {
        let said = &table.currency;
        Row::new(source, None, "money", "", faults).fault("money-twice", "currency", said);
    }
    let Some((source, table)) = first else {
        unpriced(parsed, faults);
        return None;
    };
    let mut row = Row::new(source, None, "money", "", faults);
    let currency = row.word("currency", &table.currency)?;
    let wish = money(&mut row, currency, table);
    let costs = costs(parsed, currency, faults);
    Some(MoneyWish { costs: costs?, ..wish? })
}

/// Costs without a currency.
fn unpriced(parsed: &[Parsed<'_>], faults: &mut Faults) {
    for (source, file) in parsed {
        for cost in &file.cost {
            let called = cost.called.get_ref();
            Row::new(source, None, "cost", called, faults).fault(
                "cost-without-currency",
                "amount",
                &cost.amount,
            );
        }
    }
}

fn money(row: &mut Row<'_>, currency: Currency, table: &MoneyTable) -> Option<MoneyWish> {
    let price = table.price.as_ref().map(|said| cents(row, currency, "price", said));
    let places = table.places.as_ref().map(|places| counted(row, "places", places, MOST_PLACES));
    let fee = table.card_fee.as_ref().map(|table| fee(row, currency, table));
    let scale = scale(row, currency, &table.scale);
    Some(MoneyWish {
        currency,
        price: maybe(price)?,
        places: maybe(places)?,
        fee: maybe(fee)?,
        scale: scale?,
        terms: table.terms.clone(),
        costs: Vec::new(),
    })
}

fn fee(row: &mut Row<'_>, currency: Currency, table: &FeeTable) -> Option<Fee> {
    let share = match Millionths::read(table.share.get_ref()) {
        Ok(share) => Some(share),
        Err(why) => {
            row.fault_with("unreadable-money", "card-fee", &table.share, ("why", why));
            None
        }
    };
    let fixed = cents(row, currency, "card-fee", &table.fixed);
    Some(Fee { share: share?, fixed: fixed? })
}

/// The rungs, the lowest price first: their order in the file changes nothing.
fn scale(row: &mut Row<'_>, currency: Currency, tables: &[RungTable]) -> Option<Vec<Rung>> {
    let (mut rungs, mut seen, mut whole) = (Vec::new(), BTreeSet::new(), true);
    for table in tables {
        let price = cents(row, currency, "scale", &table.price);
        let people = counted(row, "scale", &table.people, MOST_PLACES);
        if price.is_some_and(|price| !seen.insert(price)) {
            row.fault("name-twice", "scale", &table.price);
        }
        let rung = price.zip(people).map(|(price, people)| Rung { price, people });
        whole &= rung.is_some();
        rungs.extend(rung);
    }
    rungs.sort_unstable();
    whole.then_some(rungs)
}

/// The costs of all files, those that are paid once first, then by name.
fn costs(parsed: &[Parsed<'_>], currency: Currency, faults: &mut Faults) -> Option<Vec<Cost>> {
    let (mut costs, mut seen, mut whole) = (Vec::new(), BTreeSet::new(), true);
    for (source, file) in parsed {
        for table in &file.cost {
            let called = table.called.get_ref();
            let mut row = Row::new(source, None, "cost", called, faults);
            if !seen.insert(called) {
                row.fault("name-twice", "called", &table.called);
            }
            let cost = cost(&mut row, currency, table);
            whole &= cost.is_some();
            costs.extend(cost);
        }
    }
    costs.sort();
    whole.then_some(costs)
}

fn cost(row: &mut Row<'_>, currency: Currency, table: &CostTable) -> Option<Cost> {
    let amount = cents(row, currency, "amount", &table.amount);
    let per = match table.per.get_ref().as_str() {
        "outing" => Some(Per::Outing),
        "person" => Some(Per::Person),
        _ => {
            row.fault_with("unknown-word", "per", &table.per, ("known", "outing, person"));
            None
        }
    };
    Some(Cost { per: per?, called: table.called.get_ref().clone(), amount: amount? })
}

/// An amount of money, from nothing up.
fn cents(row: &mut Row<'_>, currency: Currency, field: &str, said: &Said) -> Option<Cents> {
    let read = currency.read(said.get_ref());
    let read = read.and_then(|cents| match cents < Cents::ZERO {
        true => Err(ground::Text::new("money-below-nothing")),
        false => Ok(cents),
    });
    match read {
        Ok(cents) => Some(cents),
        Err(why) => {
            let why = why.with("currency", currency.code());
            row.fault_with("unreadable-money", field, said, ("why", why));
            None
        }
    }
}
