//! The sums about money, each in whole cents. A sum that does not fit is nothing.
//!
//! Cost, volume and profit as handbooks of accounting have them: what a head leaves is its price less
//! what it costs (the contribution margin), and at the break-even point all that is taken equals all
//! that is paid. Terms after OpenStax, Principles of Accounting, volume 2: Managerial Accounting,
//! chapter 3, <https://openstax.org/books/principles-managerial-accounting/pages/3-key-terms>. The
//! numbers of the tests were worked by hand here.

use crate::outing::{Fee, Rung};
use ground::Cents;
use serde::Serialize;

/// Everything that so many people cost: `F + n·v`, of what is paid once and what is paid for each.
pub(super) fn costs(once: Cents, each: Cents, people: u32) -> Option<Cents> {
    once.plus(each.times(people)?)
}

/// What each of so many people costs: `F/n + v`, up to a whole cent. None for nobody.
pub(super) fn a_head(once: Cents, each: Cents, people: u32) -> Option<Cents> {
    once.share_up(people)?.plus(each)
}

/// What one payment costs: its share of the price, up to a whole cent, and the fixed amount. Where
/// nothing is paid, nothing is taken off.
pub(super) fn fee_on(fee: Fee, price: Cents) -> Option<Cents> {
    if price == Cents::ZERO {
        return Some(Cents::ZERO);
    }
    fee.share.of_up(price)?.plus(fee.fixed)
}

/// What one head leaves towards what is paid once: `p − v − c`; below zero, each head loses.
pub(super) fn leaves(price: Cents, each: Cents, fee: Cents) -> Option<Cents> {
    price.minus(each)?.minus(fee)
}

/// From how many people on an outing carries itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum BreakEven {
    /// From so many.
    From {
        /// How many, up to a whole person.
        people: u32,
        /// The same in hundredths of a person, rounded down.
        people_hundredths: i64,
    },
    /// From no number: a head leaves nothing, or loses.
    Never,
}

/// The break-even point: `n = ⌈F / m⌉`, of what is paid once and what a head leaves.
pub(super) fn break_even(once: Cents, leaves: Cents) -> Option<BreakEven> {
    if leaves <= Cents::ZERO {
        return Some(BreakEven::Never);
    }
    let (once, leaves) = (once.get(), leaves.get());
    let people_hundredths = once.checked_mul(100)?.checked_div(leaves)?;
    let down = once.checked_div(leaves)?;
    let up = if once.checked_rem(leaves)? == 0 { down } else { down.checked_add(1)? };
    Some(BreakEven::From { people: u32::try_from(up).ok()?, people_hundredths })
}

/// What is left when so many came: `n·m − F`; below zero, what is short.
pub(super) fn left(once: Cents, leaves: Cents, people: u32) -> Option<Cents> {
    leaves.times(people)?.minus(once)
}

/// The least price at which so many payments bring this much once their fees are off. None for
/// nobody, and where no price does.
pub(super) fn least_price(wanted: Cents, people: u32, fee: Fee) -> Option<Cents> {
    if wanted <= Cents::ZERO {
        return Some(Cents::ZERO);
    }
    let enough = |price: Cents| {
        let net = price.minus(fee_on(fee, price)?)?.times(people)?;
        Some(net >= wanted)
    };
    // A cent more never brings less, as no share is above the whole: the least price is found by
    // halving.
    let (mut below, mut reached) = (0, 1);
    while !enough(Cents::new(reached))? {
        (below, reached) = (reached, reached.checked_mul(2)?);
    }
    while reached - below > 1 {
        let middle = below + (reached - below) / 2;
        if enough(Cents::new(middle))? {
            reached = middle;
        } else {
            below = middle;
        }
    }
    Some(Cents::new(reached))
}

/// How many people stand on a scale.
pub(super) fn on_scale(rungs: &[Rung]) -> Option<u32> {
    rungs.iter().try_fold(0, |all: u32, rung| all.checked_add(rung.people))
}

/// What a scale brings: `Σ pᵢ·nᵢ`.
pub(super) fn taken(rungs: &[Rung]) -> Option<Cents> {
    rungs.iter().try_fold(Cents::ZERO, |all, rung| all.plus(rung.price.times(rung.people)?))
}

/// What the payments on a scale cost: `Σ cᵢ·nᵢ`.
pub(super) fn fees(rungs: &[Rung], fee: Fee) -> Option<Cents> {
    let all = |all: Cents, rung: &Rung| all.plus(fee_on(fee, rung.price)?.times(rung.people)?);
    rungs.iter().try_fold(Cents::ZERO, all)
}

/// What the lowest price of a scale must be for the scale to carry these costs, all other prices and
/// every number of people as they stand.
pub(super) fn lowest_must_be(rungs: &[Rung], costs: Cents, fee: Fee) -> Option<Cents> {
    let (lowest, others) = rungs.split_first()?;
    let brought = taken(others)?.minus(fees(others, fee)?)?;
    least_price(costs.minus(brought)?, lowest.people, fee)
}

/// So many people paying these costs evenly, to the cent: how much, and how many of them.
pub(super) fn evenly(costs: Cents, people: u32) -> Option<Vec<Rung>> {
    let shares = costs.split(&vec![1; usize::try_from(people).ok()?])?;
    let mut rungs: Vec<Rung> = Vec::new();
    for price in shares {
        match rungs.last_mut() {
            Some(rung) if rung.price == price => rung.people += 1,
            _ => rungs.push(Rung { price, people: 1 }),
        }
    }
    Some(rungs)
}

#[cfg(test)]
mod tests {
    use super::*;
    use ground::Millionths;
    use proptest::prelude::*;

    const ONCE: Cents = Cents::new(24_000);
    const EACH: Cents = Cents::new(650);

    fn card() -> Fee {
        Fee { share: Millionths::read("1.5 %").unwrap(), fixed: Cents::new(25) }
    }

    fn cents(some: Option<Cents>) -> i64 {
        some.unwrap().get()
    }

    /// By hand: 240/12 + 6.50 = 20 + 6.50; 240/20 + 6.50 = 12 + 6.50; 240/14 = 17.142….
    #[test]
    fn a_head_costs_its_share_and_its_own() {
        assert_eq!(cents(a_head(ONCE, EACH, 12)), 2650);
        assert_eq!(cents(a_head(ONCE, EACH, 20)), 1850);
        assert_eq!(cents(a_head(ONCE, EACH, 14)), 2365);
        assert_eq!(a_head(ONCE, EACH, 0), None);
        assert_eq!(cents(costs(ONCE, EACH, 12)), 31_800);
    }

    /// By hand: 240/(28 − 6.50) = 240/21.50 = 11.16…; the card takes 0.42 + 0.25 = 0.67 of 28.00,
    /// and 240/20.83 = 11.52….
    #[test]
    fn it_breaks_even_at_twelve_with_and_without_a_card() {
        let at = |fee| break_even(ONCE, leaves(Cents::new(2800), EACH, fee).unwrap()).unwrap();
        let twelve = |people_hundredths| BreakEven::From { people: 12, people_hundredths };
        assert_eq!(at(Cents::ZERO), twelve(1116));
        assert_eq!(cents(fee_on(card(), Cents::new(2800))), 67);
        assert_eq!(at(Cents::new(67)), twelve(1152));
    }

    #[test]
    fn what_divides_exactly_is_not_rounded_up() {
        let exact = break_even(Cents::new(24_000), Cents::new(2_000)).unwrap();
        assert_eq!(exact, BreakEven::From { people: 12, people_hundredths: 1200 });
        assert_eq!(break_even(ONCE, Cents::ZERO), Some(BreakEven::Never));
        assert_eq!(break_even(ONCE, Cents::new(-1)), Some(BreakEven::Never));
    }

    /// By hand: 16 · 21.50 − 240 = 344 − 240.
    #[test]
    fn sixteen_people_leave_a_hundred_and_four() {
        assert_eq!(cents(left(ONCE, Cents::new(2150), 16)), 10_400);
        assert_eq!(cents(left(ONCE, Cents::new(2150), 11)), -350);
    }

    fn scale() -> Vec<Rung> {
        [(2000, 4), (2800, 8), (3600, 4)]
            .map(|(price, people)| Rung { price: Cents::new(price), people })
            .into()
    }

    /// By hand: 4·20 + 8·28 + 4·36 = 80 + 224 + 144 = 448, over 16 people 28 each. 16 people cost
    /// 240 + 16·6.50 = 344; the other two prices bring 368, so the lowest may be nothing. With the
    /// card: 4·0.55 + 8·0.67 + 4·0.79 = 2.20 + 5.36 + 3.16 = 10.72.
    #[test]
    fn a_scale_brings_what_its_rungs_bring() {
        let scale = scale();
        assert_eq!((cents(taken(&scale)), on_scale(&scale)), (44_800, Some(16)));
        assert_eq!(cents(taken(&scale).unwrap().share_down(16)), 2800);
        assert_eq!(cents(fees(&scale, card())), 1072);
        let all = costs(ONCE, EACH, 16).unwrap();
        assert_eq!(cents(lowest_must_be(&scale, all, Fee::default())), 0);
    }

    /// By hand: costs of 500 less 368 from the others leave 132 for 4 people, 33.00 each. With the
    /// card the others bring 368 − 8.52 = 359.48; 140.52/4 = 35.13 must be left of each price, and
    /// 35.92 less 0.54 (1.5 % are 0.5388) less 0.25 is 35.13.
    #[test]
    fn the_lowest_price_carries_what_the_others_leave() {
        let costs = Cents::new(50_000);
        assert_eq!(cents(lowest_must_be(&scale(), costs, Fee::default())), 3300);
        assert_eq!(cents(lowest_must_be(&scale(), costs, card())), 3592);
    }

    #[test]
    fn an_even_split_pays_every_cent() {
        let shares = evenly(Cents::new(33_100), 14).unwrap();
        let said: Vec<_> = shares.iter().map(|rung| (rung.price.get(), rung.people)).collect();
        assert_eq!(said, [(2365, 4), (2364, 10)]);
        assert_eq!(evenly(Cents::new(100), 0), None);
    }

    proptest! {
        #[test]
        fn the_break_even_point_is_the_first_number_that_leaves_nothing_short(
            once in 1..10_000_000i64,
            leaves in 1..100_000i64,
        ) {
            let (once, leaves) = (Cents::new(once), Cents::new(leaves));
            let Some(BreakEven::From { people, .. }) = break_even(once, leaves) else {
                return Err(TestCaseError::fail("it never breaks even"));
            };
            prop_assert!(left(once, leaves, people).unwrap() >= Cents::ZERO);
            prop_assert!(left(once, leaves, people - 1).unwrap() < Cents::ZERO);
        }

        #[test]
        fn the_least_price_is_enough_and_a_cent_less_is_not(
            wanted in 1..10_000_000i64,
            people in 1..200u32,
            share in 0..100_000u32,
            fixed in 0..200i64,
        ) {
            let share = format!("{}.{:04} %", share / 10_000, share % 10_000);
            let fee = Fee { share: Millionths::read(&share).unwrap(), fixed: Cents::new(fixed) };
            let net = |price: Cents| {
                price.minus(fee_on(fee, price).unwrap()).unwrap().times(people).unwrap()
            };
            let wanted = Cents::new(wanted);
            let least = least_price(wanted, people, fee).unwrap();
            prop_assert!(net(least) >= wanted);
            prop_assert!(net(Cents::new(least.get() - 1)) < wanted);
        }

        #[test]
        fn a_scale_at_its_lowest_bearable_price_is_not_short(
            people in proptest::collection::vec(1..20u32, 1..6),
            costs in 1..1_000_000i64,
        ) {
            let mut rungs: Vec<_> = people
                .iter()
                .zip(1..)
                .map(|(people, at)| Rung { price: Cents::new(at * 1000), people: *people })
                .collect();
            let costs = Cents::new(costs);
            rungs[0].price = lowest_must_be(&rungs, costs, card()).unwrap();
            let net = taken(&rungs).unwrap().minus(fees(&rungs, card()).unwrap()).unwrap();
            prop_assert!(net >= costs);
        }
    }
}
