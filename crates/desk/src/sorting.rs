//! Sorting a basket: how likely a wrong piece stays in it, what it takes, and what a find means.

mod plant;

use crate::World;
use crate::knowledge::SheetReply;
use ground::{Fault, Faults, Finite, Harm, Part, Place, Region};
use identify::sorting::{self, Basket, Planted, Prior, Sees, left, missed_by_all};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// More pieces than these nobody sorts.
const MOST_PIECES: u32 = 100_000;

/// The shares of a basket, in hundredths, for which the chances are drawn: close together where they fall.
const SHARES: [u32; 13] = [0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 95, 99, 100];

/// How many wrong pieces are supposed where it is told how large a sample had to be.
const SUPPOSED: [u32; 5] = [1, 2, 3, 5, 10];

/// How many are found where it is told what may be left.
const FOUND: [u32; 5] = [0, 1, 2, 3, 5];

/// A basket, and who sorts it how.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SortingOrder {
    /// How many pieces it holds.
    pub pieces: u32,
    /// How many wrong ones are supposed to be among them.
    pub wrong: u32,
    /// How many are looked at, by everybody who sorts; none: every piece.
    pub seen: Option<u32>,
    /// Who sorts.
    pub sorters: Vec<Sorter>,
    /// The plant that it should be, by any of its names, and which part of it.
    pub plant: Option<(String, Part)>,
    /// Where it grew: look-alikes that do not grow there are left out.
    pub region: Option<Region>,
}

/// Somebody who sorts.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sorter {
    /// Their name; none: nobody in particular.
    pub name: Option<String>,
    /// How well they see a wrong piece.
    pub sees: Sees,
}

/// A basket sorted on paper.
#[derive(Clone, Debug, Serialize)]
pub struct SortingReply {
    /// The version of the herbal.
    pub herbal_version: String,
    /// How many pieces it holds.
    pub pieces: u32,
    /// How many wrong ones are supposed to be among them.
    pub wrong: u32,
    /// How many are looked at.
    pub seen: u32,
    /// Who sorts, in the order given.
    pub sorters: Vec<SorterMisses>,
    /// What keeps the lot unsorted though nothing is found; nothing where the rule is kept.
    pub not_enough: Vec<NotEnough>,
    /// The share of misses that sorters have in common.
    pub shared: Finite,
    /// How likely all of them miss a wrong piece that they look at.
    pub missed: Finite,
    /// How likely at least one wrong piece stays in.
    pub stays: Finite,
    /// The same if nothing were overlooked, and nobody's misses hung on another's.
    pub at_best: Finite,
    /// How likely nothing is found although something is in it.
    pub unnoticed: Finite,
    /// How many wrong pieces stay in on average.
    pub left: Finite,
    /// How likely a wrong piece stays in, by how much of the basket is looked at.
    pub curve: Vec<CurvePoint>,
    /// How large a sample had to be.
    pub samples: Vec<Sample>,
    /// What may be left after every piece was looked at.
    pub finds: Vec<Find>,
    /// What is said of the plant, where one was named.
    pub plant: Option<Box<SortingPlant>>,
}

/// Somebody who sorts, and what they miss.
#[derive(Clone, Debug, Serialize)]
pub struct SorterMisses {
    /// Who.
    pub sorter: Sorter,
    /// The share of wrong pieces that they miss.
    pub misses: Finite,
}

/// Why a lot stays unsorted.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NotEnough {
    /// Only one person looks.
    OnePerson,
    /// Not everybody who looks is named.
    NotNamed,
    /// So many pieces are looked at by nobody.
    NotEveryPiece(u32),
}

/// How likely a wrong piece stays in after a look at a part of the basket.
#[derive(Clone, Debug, Serialize)]
pub struct CurvePoint {
    /// How many pieces are looked at.
    pub seen: u32,
    /// Their share of the basket.
    pub share: Finite,
    /// By one: whoever misses most.
    pub one: Finite,
    /// By all who sort; by two like that one, where there is only one.
    pub all: Finite,
}

/// How many pieces have to be looked at to have a wrong one among them.
#[derive(Clone, Debug, Serialize)]
pub struct Sample {
    /// How many wrong ones are in it.
    pub wrong: u32,
    /// How surely, and how many pieces that takes.
    pub takes: Vec<(Finite, u32)>,
}

/// What may be left after so many were found.
#[derive(Clone, Debug, Serialize)]
pub struct Find {
    /// How many wrong ones were found.
    pub found: u32,
    /// How likely more are left.
    pub left: Finite,
    /// How likely they still are after the same people went through it again and found nothing.
    pub left_again: Finite,
}

/// What a piece is held against.
#[derive(Clone, Debug, Serialize)]
pub struct SortingPlant {
    /// Which part.
    pub part: Part,
    /// What is known of the plant; look-alikes that do not grow there are left out.
    pub sheet: SheetReply,
    /// What every piece is looked at for, in the order of the table of characters.
    pub looks: Vec<SortingLook>,
    /// The dangerous look-alikes, the worst first.
    pub twins: Vec<SortingTwin>,
    /// Seconds that one piece takes one person; none where nothing can be looked at on it.
    pub seconds: Option<u32>,
    /// How many pieces make one tray.
    pub tray: Option<u32>,
}

/// A character that every piece is looked at for.
#[derive(Clone, Debug, Serialize)]
pub struct SortingLook {
    /// The character.
    pub character: String,
    /// Seconds that it takes.
    pub seconds: u16,
    /// The look-alikes that it tells apart.
    pub tells: Vec<String>,
    /// Whether the plant's sheet asks for it.
    pub must: bool,
}

/// A dangerous look-alike.
#[derive(Clone, Debug, Serialize)]
pub struct SortingTwin {
    /// Its scientific name.
    pub name: String,
    /// Its usual common name, where it has a sheet.
    pub common: Option<String>,
    /// How badly it can hurt; none for a plant without a sheet, which counts as deadly.
    pub harm: Option<Harm>,
    /// The looks that tell a piece of it.
    pub looks: Vec<String>,
    /// How likely a piece of it stays in, if it is what is wrong.
    pub stays: Finite,
}

pub(crate) fn sorting(world: &World, order: &SortingOrder) -> Result<SortingReply, Faults> {
    let basket = checked(order)?;
    let misses: Vec<f64> = order.sorters.iter().map(|sorter| misses(sorter.sees)).collect();
    let missed = missed_by_all(&misses, sorting::SHARED);
    let plant = order.plant.as_ref();
    let plant = plant.map(|(name, part)| plant::plant(world, order, basket, name, *part));
    Ok(SortingReply {
        herbal_version: world.herbal_version.clone(),
        pieces: order.pieces,
        wrong: order.wrong,
        seen: order.seen.unwrap_or(order.pieces),
        sorters: order.sorters.iter().map(told).collect(),
        not_enough: not_enough(order),
        shared: finite(sorting::SHARED),
        missed: finite(missed),
        stays: finite(basket.stays(missed)),
        at_best: finite(basket.stays(at_best(order))),
        unnoticed: finite(basket.unnoticed(missed)),
        left: finite(basket.expected(missed)),
        curve: curve(order, &misses),
        samples: samples(order.pieces),
        finds: finds(order.pieces, missed),
        plant: plant.transpose()?.map(Box::new),
    })
}

/// A chance or a number of pieces: all of them are finite.
fn finite(value: f64) -> Finite {
    Finite::new(value).unwrap_or_default()
}

/// The basket, or every fault of what was said of it.
fn checked(order: &SortingOrder) -> Result<Basket, Faults> {
    let mut faults = Faults::none();
    let at = |field: &str| Place::entry("sort", "", field);
    let seen = order.seen.unwrap_or(order.pieces);
    if order.pieces == 0 || order.pieces > MOST_PIECES {
        let fault = Fault::new("sort-how-many-pieces", at("pieces"), order.pieces.to_string());
        faults.add(fault.with("most", i64::from(MOST_PIECES)));
    }
    let fault = |code: &str, field: &str, got: u32| {
        let fault = Fault::new(code, at(field), got.to_string());
        fault.with("pieces", i64::from(order.pieces))
    };
    if order.wrong > order.pieces {
        faults.add(fault("sort-more-wrong-than-pieces", "wrong", order.wrong));
    }
    if seen > order.pieces {
        faults.add(fault("sort-more-seen-than-pieces", "seen", seen));
    }
    who(&order.sorters, &mut faults);
    let basket = Basket::new(order.pieces, order.wrong, seen);
    faults.or(())?;
    basket.ok_or_else(Faults::none)
}

/// Whether somebody sorts, each named once, and whether their trials can be.
fn who(sorters: &[Sorter], faults: &mut Faults) {
    let at = || Place::entry("sort", "", "by");
    if sorters.is_empty() {
        faults.add(Fault::new("sort-by-nobody", at(), "0"));
    }
    let mut known = BTreeSet::new();
    for sorter in sorters {
        let name = sorter.name.as_deref().map(str::trim);
        if name.is_some_and(|name| name.is_empty() || !known.insert(name)) {
            faults.add(Fault::new("sort-by-one-twice", at(), name.unwrap_or_default()));
        }
        if let Some(Planted { missed, of }) = sorter.sees.planted
            && (of == 0 || missed > of)
        {
            faults.add(Fault::new("sort-no-trial", at(), format!("{missed}/{of}")));
        }
    }
}

/// The share of wrong pieces that somebody misses, by one character of a leaf.
fn misses(sees: Sees) -> f64 {
    sees.misses(sees.misreads())
}

fn told(sorter: &Sorter) -> SorterMisses {
    SorterMisses { sorter: sorter.clone(), misses: finite(misses(sorter.sees)) }
}

/// How likely all misread a piece that all notice, each by themselves.
fn at_best(order: &SortingOrder) -> f64 {
    let misreads = order.sorters.iter().map(|sorter| sorter.sees.misreads());
    missed_by_all(&misreads.collect::<Vec<_>>(), 0.0)
}

/// The rule of the house: two named people look at every piece.
fn not_enough(order: &SortingOrder) -> Vec<NotEnough> {
    let away = order.pieces - order.seen.unwrap_or(order.pieces).min(order.pieces);
    let one = (order.sorters.len() < 2).then_some(NotEnough::OnePerson);
    let unnamed = order.sorters.iter().any(|sorter| sorter.name.is_none());
    let unnamed = unnamed.then_some(NotEnough::NotNamed);
    let part = (away > 0).then_some(NotEnough::NotEveryPiece(away));
    one.into_iter().chain(unnamed).chain(part).collect()
}

fn curve(order: &SortingOrder, misses: &[f64]) -> Vec<CurvePoint> {
    let worst = misses.iter().copied().fold(0.0, f64::max);
    let two = [worst, worst];
    let all = if misses.len() > 1 { misses } else { &two };
    let all = missed_by_all(all, sorting::SHARED);
    // So many pieces as are no more than the share; a small basket has fewer points.
    let pieces = |hundredths: &u32| {
        let seen = u64::from(order.pieces) * u64::from(*hundredths) / 100;
        u32::try_from(seen).unwrap_or(order.pieces)
    };
    let seen: BTreeSet<u32> = SHARES.iter().map(pieces).collect();
    let point = |seen: u32| {
        let basket = Basket::new(order.pieces, order.wrong, seen)?;
        Some(CurvePoint {
            seen,
            share: finite(f64::from(seen) / f64::from(order.pieces)),
            one: finite(basket.stays(worst)),
            all: finite(basket.stays(all)),
        })
    };
    seen.into_iter().filter_map(point).collect()
}

fn samples(pieces: u32) -> Vec<Sample> {
    let wrong = SUPPOSED.iter().copied().filter(|wrong| *wrong <= pieces);
    let takes = |wrong| {
        let takes = |surely| (finite(surely), Basket::sample(pieces, wrong, surely));
        Sample { wrong, takes: sorting::CONFIDENCES.map(takes).into() }
    };
    wrong.map(takes).collect()
}

/// What may be left of a basket like any other, after all who sort looked at every piece.
fn finds(pieces: u32, missed: f64) -> Vec<Find> {
    let prior = Prior { contaminated: sorting::CONTAMINATED, followed: sorting::FOLLOWED };
    // What hid a piece once may hide it again.
    let again = missed_by_all(&[missed, missed], sorting::SHARED) / missed.max(f64::MIN_POSITIVE);
    let find = |found| Find {
        found,
        left: finite(left(pieces, found, missed, 1.0, prior)),
        left_again: finite(left(pieces, found, missed, again, prior)),
    };
    FOUND.into_iter().filter(|found| *found <= pieces).map(find).collect()
}
