//! Laws of sorting.

use super::*;
use proptest::prelude::*;

fn basket() -> impl Strategy<Value = (u32, u32, u32)> {
    (1u32..400).prop_flat_map(|pieces| (Just(pieces), 0..=pieces, 0..=pieces))
}

fn misses() -> impl Strategy<Value = Vec<f64>> {
    prop::collection::vec(0.0..=1.0, 1..5)
}

proptest! {
    #[test]
    fn every_number_is_a_chance(
        (pieces, wrong, seen) in basket(), missed in 0.0..=1.0_f64, found in 0..5u32,
    ) {
        let basket = Basket::new(pieces, wrong, seen).unwrap();
        let prior = Prior { contaminated: CONTAMINATED, followed: FOLLOWED };
        let all = [
            basket.none_seen(), basket.all_seen(), basket.stays(missed), basket.unnoticed(missed),
            left(pieces, found, missed, 1.0, prior),
        ];
        prop_assert!(all.iter().all(|chance| (0.0..=1.0).contains(chance)), "{all:?}");
        prop_assert!((0.0..=f64::from(wrong) + 1e-9).contains(&basket.expected(missed)));
    }

    #[test]
    fn nothing_wrong_leaves_nothing(pieces in 1..1000u32, seen in 0..1000u32, missed in 0.0..=1.0_f64) {
        let basket = Basket::new(pieces, 0, seen.min(pieces)).unwrap();
        prop_assert_eq!(
            [basket.stays(missed), basket.unnoticed(missed), basket.expected(missed)], [0.0; 3]
        );
    }

    #[test]
    fn more_pieces_seen_never_raise_the_chance((pieces, wrong, seen) in basket(), missed in 0.0..=1.0_f64) {
        prop_assume!(seen < pieces);
        let less = Basket::new(pieces, wrong, seen).unwrap();
        let more = Basket::new(pieces, wrong, seen + 1).unwrap();
        for of in [Basket::stays, Basket::unnoticed, Basket::expected] {
            prop_assert!(of(more, missed) <= of(less, missed) + 1e-12);
        }
    }

    #[test]
    fn a_wrong_piece_more_never_lowers_the_chance_that_one_stays(
        (pieces, wrong, seen) in basket(), missed in 0.0..=1.0_f64,
    ) {
        prop_assume!(wrong < pieces);
        let less = Basket::new(pieces, wrong, seen).unwrap();
        let more = Basket::new(pieces, wrong + 1, seen).unwrap();
        prop_assert!(more.stays(missed) >= less.stays(missed) - 1e-12);
    }

    #[test]
    fn a_sorter_more_never_raises_the_chance(
        who in misses(), another in 0.0..=1.0_f64, shared in 0.0..=1.0_f64,
    ) {
        let more: Vec<f64> = who.iter().copied().chain([another]).collect();
        prop_assert!(missed_by_all(&more, shared) <= missed_by_all(&who, shared) + 1e-12);
    }

    #[test]
    fn what_is_shared_never_lowers_it(who in misses(), shared in 0.0..=1.0_f64, more in 0.0..=1.0_f64) {
        let (less, more) = (shared.min(more), shared.max(more));
        prop_assert!(missed_by_all(&who, less) <= missed_by_all(&who, more) + 1e-12);
    }

    #[test]
    fn the_order_of_sorters_changes_nothing(
        (who, shuffled) in misses().prop_flat_map(|who| (Just(who.clone()), Just(who).prop_shuffle())),
        shared in 0.0..=1.0_f64,
    ) {
        prop_assert_eq!(missed_by_all(&who, shared).to_bits(), missed_by_all(&shuffled, shared).to_bits());
    }

    #[test]
    fn a_sample_of_all_is_all((pieces, wrong, _) in basket(), missed in 0.0..=1.0_f64) {
        let full = Basket::new(pieces, wrong, pieces).unwrap();
        prop_assert_eq!(full.all_seen(), 1.0);
        if wrong > 0 {
            prop_assert_eq!((full.none_seen(), full.unnoticed(missed)), (0.0, missed));
        }
        prop_assert!((full.expected(missed) - f64::from(wrong) * missed).abs() < 1e-9);
    }

    #[test]
    fn a_sample_is_the_fewest_that_do((pieces, wrong, _) in basket(), surely in 0.5..0.999_f64) {
        prop_assume!(wrong > 0);
        let sample = Basket::sample(pieces, wrong, surely);
        let missing = |seen| Basket::new(pieces, wrong, seen).unwrap().none_seen();
        prop_assert!(missing(sample) <= 1.0 - surely + 1e-9);
        prop_assert!(sample == 0 || missing(sample - 1) > 1.0 - surely - 1e-9);
    }

    /// The sum over every number of wrong pieces among those looked at, each missed by itself or all
    /// together: the short forms bound both.
    #[test]
    fn the_chances_are_those_of_every_case((pieces, wrong, seen) in
        (1u32..25).prop_flat_map(|n| (Just(n), 1..=n, 0..=n)), missed in 0.0..=1.0_f64)
    {
        let choose = |n: u32, k: u32| {
            (0..k).fold(1.0, |ways, i| ways * f64::from(n - i) / f64::from(i + 1))
        };
        let (mut stays, mut silent, mut together) = (0.0, 0.0, 0.0);
        for among in wrong.saturating_sub(pieces - seen)..=wrong.min(seen) {
            let chance = choose(wrong, among) * choose(pieces - wrong, seen - among)
                / choose(pieces, seen);
            let found = if among == wrong { libm::pow(1.0 - missed, f64::from(wrong)) } else { 0.0 };
            stays += chance * (1.0 - found);
            silent += chance * libm::pow(missed, f64::from(among));
            together += chance * if among == 0 { 1.0 } else { missed };
        }
        let basket = Basket::new(pieces, wrong, seen).unwrap();
        prop_assert!((basket.stays(missed) - stays).abs() < 1e-9);
        prop_assert!((basket.unnoticed(missed) - together).abs() < 1e-9);
        prop_assert!(silent <= basket.unnoticed(missed) + 1e-9);
    }

    #[test]
    fn the_more_was_found_the_more_may_be_left(missed in 0.0..=1.0_f64, found in 1..20u32, again in 0.0..=1.0_f64) {
        let prior = Prior { contaminated: CONTAMINATED, followed: FOLLOWED };
        let of = |found, again| left(10_000, found, missed, again, prior);
        prop_assert!(of(found, 1.0) <= of(found + 1, 1.0) + 1e-12);
        // A second round that finds nothing leaves less.
        prop_assert!(of(found, again) <= of(found, 1.0) + 1e-12);
    }

    #[test]
    fn a_trial_that_missed_less_leaves_less_possible(missed in 0..30u32, of in 1..40u32) {
        prop_assume!(missed < of);
        prop_assert!(upper_bound(missed, of) <= upper_bound(missed + 1, of) + 1e-12);
        prop_assert!(upper_bound(missed, of) >= f64::from(missed) / f64::from(of));
        prop_assert!(upper_bound(missed, of + 1) <= upper_bound(missed, of) + 1e-12);
    }
}
