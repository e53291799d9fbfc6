//! Laws that hold for every recipe and every amount.

mod kitchen;

use ground::{AlcoholByVolume, Answer, MassFraction, Substance, Temperature, Volume};
use kitchen::{decoction, dry_tincture, fresh_tincture, have, larder, moist, reduced, said};
use prepare::alcohol::{Spirit, Strength, dilute};
use prepare::{Brew, Composition, Recipe, Wanted, What, Yield, backwards, forwards};
use proptest::prelude::*;

#[expect(clippy::unwrap_used, reason = "a refusal here is the report of the test")]
fn known<T: std::fmt::Debug>(answer: Answer<T>) -> T {
    answer.ok().unwrap()
}

fn by_volume(percent: f64) -> Strength {
    known(Strength::by_volume(AlcoholByVolume::from_percent(percent)))
}

#[expect(clippy::panic, reason = "the report of the test")]
fn ml(brew: &Brew) -> f64 {
    match brew.made {
        Yield::Volume(span) => span.middle.ml(),
        Yield::Mass(_) => panic!("a liquid is wanted"),
    }
}

/// Recipes of each kind, with what they need to be told.
fn recipes() -> Vec<(Recipe, prepare::Have)> {
    let mut us = have();
    us.kitchen = Some(ground::MeasureSystem::UsCustomary);
    vec![
        (dry_tincture("pressed"), moist(have(), 10.0, 10.0)),
        (dry_tincture("by-hand"), moist(have(), 8.0, 12.0)),
        (fresh_tincture("96 % vol"), moist(have(), 75.0, 85.0)),
        (decoction(""), have()),
        (decoction(r#", {"dissolve": {"to": "60 °Bx"}}"#), have()),
        (decoction(r#", {"dissolve": {"to": "65 °Bx", "of": "0.5"}}"#), have()),
        (reduced(), us),
    ]
}

/// Grams of everything that goes in or comes out, as water, ethanol, sugar, herb solids and herb.
fn out(brew: &Brew) -> Composition {
    let losses = &brew.losses;
    let mut all = brew.composition.and(&losses.held).and(&losses.set_aside);
    all.water += losses.steam;
    all
}

fn near(a: f64, b: f64) -> bool {
    // A dozen additions of numbers of the same size.
    (a - b).abs() <= 1e-12 * a.abs().max(b.abs()).max(1.0)
}

fn grams<S: Substance>(mass: ground::Mass<S>) -> f64 {
    mass.g()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Every gram that goes in comes out, steams off or stays behind: of water, ethanol and sugar,
    /// and of the herb.
    #[test]
    fn nothing_is_made_or_lost(which in 0..7usize, times in 0.8..20.0f64) {
        let (recipe, mut have) = recipes().swap_remove(which);
        let herb = recipe.ingredients().next().map(|one| one.amount.amount.low).unwrap_or(0.0);
        have.herb.amount = Some(said(&format!("{} g", herb * times)));
        let brew = known(forwards(&recipe, &have, &larder()));
        let out = out(&brew);
        let went_in = |what: What| {
            let found = brew.amounts.iter().filter(|one| one.what == what);
            found.map(|one| one.mass.middle.g()).sum::<f64>()
        };
        let spirit = brew.amounts.iter().find(|one| one.what == What::Spirit);
        let spirit = spirit.and_then(|one| Some(Spirit::of(one.volume?, by_volume(one.strength?.percent()))));
        let ethanol = spirit.map_or(0.0, |spirit| spirit.ethanol.g());
        prop_assert!(near(grams(out.ethanol), ethanol));
        prop_assert!(near(grams(out.sugar), went_in(What::Sugar)));
        prop_assert!(near(grams(out.herb), went_in(What::Herb)));
        let all_in: f64 = brew.amounts.iter().map(|one| one.mass.middle.g()).sum();
        let all_out = grams(out.mass()) + grams(brew.losses.spent);
        prop_assert!(near(all_in, all_out), "{all_in} in, {all_out} out");
    }

    /// What is asked for comes out, and working it forwards again asks for the same.
    #[test]
    fn backwards_then_forwards_gives_what_was_wanted(which in 0..7usize, servings in 1..200u32) {
        let (recipe, mut have) = recipes().swap_remove(which);
        let back = known(backwards(&recipe, Wanted::Servings(servings), &have, &larder()));
        prop_assert!((back.portion.exactly - f64::from(servings)).abs() <= 1e-9 * f64::from(servings));
        prop_assert_eq!(back.portion.servings, servings);
        for one in &back.amounts {
            match (one.what, one.volume) {
                (What::Herb, _) => have.herb.amount = Some(said(&format!("{} g", one.mass.middle.g()))),
                (what, Some(volume)) => {
                    have.amounts.insert(what, said(&format!("{} ml", volume.ml())));
                }
                _ => {}
            }
        }
        let again = known(forwards(&recipe, &have, &larder()));
        prop_assert!((ml(&again) / ml(&back) - 1.0).abs() <= 1e-9);
        prop_assert!((again.composition.mass() / back.composition.mass() - 1.0).abs() <= 1e-9);
    }

    /// Where a recipe scales as a whole, backwards undoes forwards.
    #[test]
    fn forwards_then_backwards_gives_the_amounts_back(which in 0..3usize, times in 0.1..30.0f64) {
        let (recipe, mut have) = recipes().swap_remove(which);
        let herb = recipe.ingredients().next().map(|one| one.amount.amount.low).unwrap_or(0.0);
        have.herb.amount = Some(said(&format!("{} g", herb * times)));
        let there = known(forwards(&recipe, &have, &larder()));
        let wanted = Wanted::Volume(Volume::from_ml(ml(&there)));
        have.herb.amount = None;
        let back = known(backwards(&recipe, wanted, &have, &larder()));
        for (a, b) in there.amounts.iter().zip(&back.amounts) {
            prop_assert!((a.mass.middle / b.mass.middle - 1.0).abs() <= 1e-9);
        }
    }

    /// The weaker the target, the more water it takes, and ethanol is conserved.
    #[test]
    fn dilution_is_monotone(from in 30.0..100.0f64, one in 0.05..0.95f64, two in 0.05..0.95f64) {
        let (weak, strong) = (one.min(two), one.max(two));
        prop_assume!(strong - weak > 1e-6);
        let stock = by_volume(from);
        let sum = |share: f64| {
            known(dilute(Volume::from_ml(500.0), stock, by_volume(from * share)))
        };
        prop_assert!(sum(weak).water > sum(strong).water);
        prop_assert!((sum(weak).result.ethanol / Spirit::of(Volume::from_ml(500.0), stock).ethanol - 1.0).abs() < 1e-12);
        prop_assert!((sum(weak).volume.ml() - 500.0 / weak).abs() < 1e-9 / weak);
    }

    /// By volume, by mass and back; strength rises with the share of ethanol.
    #[test]
    fn strength_converts_both_ways(percent in 0.0..100.0f64) {
        let back = by_volume(percent).volume_percent().percent();
        prop_assert!((back - percent).abs() < 1e-10);
        let share = MassFraction::from_percent(percent);
        let there = known(Strength::by_mass(share));
        let back = by_volume(there.volume_percent().percent()).mass_share().percent();
        prop_assert!((back - percent).abs() < 1e-10);
    }

    /// Density falls with strength wherever a hydrometer is used, so that it can be read back.
    #[test]
    fn density_falls_with_strength(p in 0.0..0.999f64, celsius in 10.0..40.0f64) {
        let at = Temperature::from_celsius(celsius);
        let density = |p: f64| {
            let strength = known(Strength::by_mass(MassFraction::from_share(p)));
            known(strength.density_at(at)).kg_per_m3()
        };
        prop_assert!(density(p + 0.001) < density(p));
    }
}
