//! Worked preparations, to the digits they were worked to.

mod kitchen;

use ground::{AlcoholByVolume, Answer, Brix, Mass, PerVolume, Unit, Volume};
use kitchen::{decoction, dry_tincture, fresh_tincture, have, larder, moist, reduced, said, tea};
use prepare::{
    Brew, Class, EvaporationRate, Have, HerbState, Recipe, Span, Wanted, What, Yield, backwards,
    forwards,
};

#[expect(clippy::unwrap_used, reason = "a refusal here is the report of the test")]
fn known<T: std::fmt::Debug>(answer: Answer<T>) -> T {
    answer.ok().unwrap()
}

fn make(recipe: &Recipe, have: &Have) -> Brew {
    known(forwards(recipe, have, &larder()))
}

fn why(recipe: &Recipe, have: &Have) -> String {
    let refusal = forwards(recipe, have, &larder()).ok();
    refusal.map_or_else(|refusal| refusal.why.id, |_| "answered".to_owned())
}

#[expect(clippy::panic, reason = "the report of the test")]
fn ml(brew: &Brew) -> f64 {
    match brew.made {
        Yield::Volume(Span { middle, .. }) => middle.ml(),
        Yield::Mass(_) => panic!("a liquid is wanted"),
    }
}

fn per_ml(answer: &Answer<Span<PerVolume>>) -> f64 {
    known(answer.as_ref().map(|span| span.middle.0 / 100.0))
}

fn percent(brew: &Brew) -> f64 {
    known(brew.alcohol.as_ref().map(|span| span.middle.percent()))
}

fn close(got: f64, worked: f64, within: f64) {
    assert!((got - worked).abs() <= within, "got {got}, worked {worked}, allowed {within}");
}

/// 100 g of dried herb at 10 % moisture in 500 ml of 60 % vol, pressed at 1.0 ml for each g of
/// solids.
#[test]
fn a_dry_tincture_one_to_five() {
    let brew = make(&dry_tincture("pressed"), &moist(have(), 10.0, 10.0));
    let (made, losses) = (brew.composition, brew.losses);
    close(made.ethanol.g() + losses.held.ethanol.g(), 236.77, 0.005);
    close(made.water.g() + losses.held.water.g(), 227.79, 0.005);
    close(made.ethanol / (made.ethanol + mass_as(made.water.g())), 0.5097, 5e-5);
    close(percent(&brew), 58.9, 0.05);
    close(ml(&brew), 419.6, 0.05);
    close(known(losses.held.volume()).ml(), 90.0, 1e-9);
    close(per_ml(&brew.solids), 0.177, 0.0005);
    close(per_ml(&brew.stands_for), 0.196, 0.0005);
    close(brew.portion.one.composition.ethanol.g(), 2.32, 0.005);
    close(ml(&make(&dry_tincture("by-hand"), &moist(have(), 10.0, 10.0))), 352.0, 0.5);
    let keeping = known(brew.keeping);
    assert_eq!((keeping.class, keeping.binding.as_str()), (Class::Keeps, "strong"));
}

fn mass_as<S: ground::Substance>(g: f64) -> Mass<S> {
    Mass::from_g(g)
}

/// 200 g of fresh leaf at 75 % moisture in 400 ml of 96 % vol; and at 80 % in 40 % vol.
#[test]
fn a_fresh_tincture_one_to_two() {
    let brew = make(&fresh_tincture("96 % vol"), &moist(have(), 75.0, 75.0));
    let made = brew.composition;
    close(made.ethanol.g() + brew.losses.held.ethanol.g(), 303.07, 0.005);
    close(made.water.g() + brew.losses.held.water.g(), 169.90, 0.005);
    close(made.ethanol / (made.ethanol + mass_as(made.water.g())), 0.6408, 5e-5);
    close(percent(&brew), 71.6, 0.05);
    close(ml(&brew) + 50.0, 536.5, 0.05);
    close(ml(&brew), 486.5, 0.05);
    close(per_ml(&brew.solids), 0.093, 0.0005);

    let vodka = make(&fresh_tincture("40 % vol"), &moist(have(), 80.0, 80.0));
    close(percent(&vodka), 28.6, 0.05);
    close(ml(&vodka) + 40.0, 559.4, 0.05);
    assert_eq!(known(vodka.keeping).class, Class::Keeps);
}

/// Backwards: leaf at 80 %, 200 g in 400 ml, wanted 45.0 % vol in the jar, from 96 % vol.
#[test]
fn the_spirit_to_pour_for_a_strength_in_the_jar() {
    let mut want = moist(have(), 80.0, 80.0);
    want.jar = Some(AlcoholByVolume::from_percent(45.0));
    want.stock = Some(AlcoholByVolume::from_percent(96.0));
    let brew = make(&fresh_tincture("96 % vol"), &want);
    close(percent(&brew), 45.0, 1e-9);
    let spirit = brew.amounts.iter().find(|one| one.what == What::Spirit);
    let spirit = spirit.map(|one| (one.strength, one.pour));
    let (Some(strength), Some(pour)) = spirit.unwrap_or_default() else {
        unreachable!("the recipe has spirit, and a stock was named");
    };
    close(strength.percent(), 62.4, 0.05);
    close(pour.stock.g(), 210.05, 0.005);
    close(pour.stock_volume.ml(), 260.2, 0.05);
    close(pour.water.g(), 151.39, 0.005);
}

/// 40 g of dried root for 500 ml strained: 2.0 ml for each gram, 500 ml, and 13.1 ml for each of 20
/// minutes are 842 ml of water. 480 g of it with 720 g of sugar is a syrup of 60 %.
#[test]
fn a_decoction_and_its_syrup() {
    let brew = make(&decoction(""), &have());
    close(ml(&brew), 500.0, 1e-9);
    let wanted = Wanted::Volume(Volume::from_ml(500.0));
    let back = known(backwards(&decoction(""), wanted, &have(), &larder()));
    let water = back.amounts.iter().find(|one| one.what == What::Water);
    close(water.and_then(|one| one.volume).map_or(0.0, Volume::ml), 842.0, 1e-9);

    let mut part = have();
    part.sweetened = Some(said("480 g"));
    let syrup_of = |to: &str| decoction(&format!(r#", {{"dissolve": {{"to": "{to}"}}}}"#));
    let syrup = make(&syrup_of("60 °Bx"), &part);
    close(syrup.composition.sugar.g(), 720.0, 1e-9);
    close(syrup.composition.mass().g(), 1200.0, 1e-9);
    close(ml(&syrup), 932.8, 0.05);
    close(known(syrup.activity.clone()).0, 0.895, 0.0005);
    close(syrup.composition.herb.g(), 33.2, 0.05);
    close(10.0 * per_ml(&syrup.stands_for), 0.36, 0.005);
    close(syrup.sugar.degrees(), 60.0, 1e-9);

    let stronger = make(&syrup_of("65 % mass"), &part);
    close(stronger.composition.sugar.g(), 891.4, 0.05);
    close(stronger.composition.mass().g(), 1371.4, 0.05);
    close(ml(&stronger), 1041.9, 0.05);
    close(known(stronger.activity).0, 0.865, 0.0005);

    let mut stirred = part.clone();
    stirred.amounts.insert(What::Sugar, said("891.4 g"));
    let stronger = make(&syrup_of("60 °Bx"), &stirred);
    close(stronger.sugar.degrees(), 65.0, 0.005);
    close(stronger.composition.mass().g(), 1371.4, 1e-9);

    part.sweetened = Some(said("500 g"));
    assert_eq!(why(&syrup_of("60 °Bx"), &part), "prepare-refused-not-so-much");
}

/// 1000 g of nettle leaf at 80.0 %, dried to 10.0 %: 222.2 g, 777.8 g of water lost.
#[test]
fn drying_as_a_recipe() {
    let dry = kitchen::recipe(
        ground::Form::DriedFood,
        "10 g",
        r#"[
            {"add": {"what": "herb", "state": "fresh", "amount": "1 kg"}},
            {"dry": {"to": "10 %"}}
        ]"#,
    );
    assert_eq!(why(&dry, &have()), "prepare-refused-moisture-unknown");
    let brew = make(&dry, &moist(have(), 80.0, 80.0));
    close(brew.mass.middle.g(), 222.2, 0.05);
    close(brew.losses.steam.g(), 777.8, 0.05);
    assert_eq!(brew.portion.servings, 22);
}

/// Three cups down to two take 18 minutes at 13.1 ml a minute (common practice says "about 20").
#[test]
fn three_cups_simmered_to_two() {
    let mut us = have();
    us.kitchen = Some(ground::MeasureSystem::UsCustomary);
    let brew = make(&reduced(), &us);
    let time = brew.steps.iter().find_map(|step| step.time);
    close(time.map_or(0.0, |[least, _]| least.minutes()), 18.06, 0.005);
    close(ml(&brew), 2.0 * 236.588_236_5 - 50.0, 1e-9);
    // A pot that was measured to lose twice as much takes half as long, and yields the same.
    us.evaporation = Some(EvaporationRate::from_ml_per_minute(26.2));
    let fast = make(&reduced(), &us);
    let time = fast.steps.iter().find_map(|step| step.time);
    close(time.map_or(0.0, |[least, _]| least.minutes()), 9.03, 0.005);
    close(ml(&fast), ml(&brew), 1e-9);
}

/// For a group: herb = people × cups × grams a cup, water = people × cups × cup + 2.0 ml for each gram
/// of herb.
#[test]
fn a_pot_for_a_group() {
    let tea = kitchen::recipe(
        ground::Form::Infusion,
        "150 ml",
        r#"[
            {"add": {"what": "herb", "state": "dried", "amount": "1.5 g"}},
            {"add": {"what": "water", "amount": "153 ml", "heat": "boiling"}},
            {"steep": {"time": "10 min", "lid": "on"}},
            {"strain": {"holds": "open-pot"}}
        ]"#,
    );
    let pot = known(backwards(&tea, Wanted::Servings(12 * 2), &have(), &larder()));
    let of = |what: What| pot.amounts.iter().find(|one| one.what == what);
    close(of(What::Herb).map_or(0.0, |one| one.mass.middle.g()), 12.0 * 2.0 * 1.5, 1e-9);
    let water = of(What::Water).and_then(|one| one.volume);
    close(water.map_or(0.0, Volume::ml), 12.0 * 2.0 * 150.0 + 2.0 * 36.0, 1e-9);
}

#[test]
fn moisture_that_does_not_fit_the_state_is_refused() {
    let refused = "prepare-refused-moisture-of-state";
    assert_eq!(why(&dry_tincture("pressed"), &moist(have(), 10.0, 80.0)), refused);
    // 0.8 instead of 80.
    assert_eq!(why(&fresh_tincture("96 % vol"), &moist(have(), 0.8, 0.8)), refused);
}

#[test]
fn a_brew_reads_back_as_it_was_written() {
    let brew = make(&fresh_tincture("96 % vol"), &moist(have(), 70.0, 80.0));
    let written = serde_json::to_string(&brew).unwrap_or_default();
    let read: Option<Brew> = serde_json::from_str(&written).ok();
    assert_eq!(read, Some(brew));
    assert!(written.contains(r#""ethanol_g":"#));
}

#[test]
fn what_decides_and_was_not_said_is_asked() {
    let mut tea_of = have();
    assert_eq!(why(&tea(), &tea_of), "prepare-refused-fresh-or-dried");
    tea_of.herb.state = Some(HerbState::Dried);
    assert_eq!(why(&tea(), &tea_of), "refused-whose-spoon");
    tea_of.kitchen = Some(ground::MeasureSystem::UsCustomary);
    assert_eq!(why(&tea(), &tea_of), "prepare-refused-no-weight");
    tea_of.herb.spoon = Some("spearmint-dried".to_owned());
    assert_eq!(why(&tea(), &tea_of), "prepare-refused-heap");
    tea_of.herb.heap = Some(ground::Heap::Heaped);
    assert_eq!(why(&tea(), &tea_of), "prepare-refused-heaped");
    tea_of.herb.heap = Some(ground::Heap::Level);
    let brew = make(&tea(), &tea_of);
    assert_eq!(brew.solids.known(), None, "moisture was not said");

    let tincture = dry_tincture("pressed");
    assert_eq!(why(&tincture, &have()), "prepare-refused-moisture-unknown");
    let mut fresh = moist(have(), 80.0, 80.0);
    fresh.herb.state = Some(HerbState::Fresh);
    assert_eq!(why(&tincture, &fresh), "prepare-refused-other-state");
}

/// Two level US teaspoons of dried spearmint weigh 1.06 g (USDA), give or take 40 %.
#[test]
fn spoons_show_their_doubt() {
    let mut tea_of = have();
    tea_of.herb.state = Some(HerbState::Dried);
    tea_of.kitchen = Some(ground::MeasureSystem::UsCustomary);
    tea_of.herb.spoon = Some("spearmint-dried".to_owned());
    tea_of.herb.heap = Some(ground::Heap::Level);
    let brew = make(&tea(), &tea_of);
    let herb = brew.amounts.iter().find(|one| one.what == What::Herb);
    let herb = herb.map(|one| one.mass).unwrap_or(Span {
        low: Mass::ZERO,
        middle: Mass::ZERO,
        high: Mass::ZERO,
    });
    close(herb.low.g(), 0.636, 1e-9);
    close(herb.middle.g(), 1.06, 1e-9);
    close(herb.high.g(), 1.484, 1e-9);
    let stands_for = known(brew.stands_for);
    assert!(stands_for.low < stands_for.middle && stands_for.middle < stands_for.high);
    // The weight of a cupful that nobody has weighed is taken as it is said.
    tea_of.herb.amount = Some(said("1.5 g"));
    tea_of.herb.spoon = None;
    let brew = make(&tea(), &tea_of);
    close(brew.composition.herb.g() + brew.losses.held.herb.g(), 1.5, 1e-12);
}

#[test]
fn doubtful_moisture_gives_a_doubtful_strength_and_the_weak_end_decides() {
    let brew = make(&fresh_tincture("40 % vol"), &moist(have(), 70.0, 90.0));
    let strength = known(brew.alcohol);
    let at = |moisture: f64| {
        percent(&make(&fresh_tincture("40 % vol"), &moist(have(), moisture, moisture)))
    };
    close(strength.low.percent(), at(90.0), 1e-12);
    close(strength.middle.percent(), at(80.0), 1e-12);
    close(strength.high.percent(), at(70.0), 1e-12);
    // 35 % vol falls to 23 with sodden leaf, though the middle would keep.
    let brew = make(&fresh_tincture("35 % vol"), &moist(have(), 60.0, 98.0));
    assert_eq!(known(brew.keeping).class, Class::Borderline);
}

#[test]
fn pots_that_boil_dry_and_herbs_that_drink_everything_are_refused() {
    let mut little = have();
    little.amounts.insert(What::Water, said("300 ml"));
    little.herb.amount = Some(said("40 g"));
    assert_eq!(why(&decoction(""), &little), "prepare-refused-drinks-all");
    little.amounts.insert(What::Water, said("250 ml"));
    assert_eq!(why(&decoction(""), &little), "prepare-refused-boils-dry");
}

#[test]
fn a_syrup_beyond_what_water_holds_says_so() {
    let syrup = make(&decoction(r#", {"dissolve": {"to": "80 °Bx"}}"#), &have());
    close(syrup.sugar.degrees(), 67.0, 1e-9);
    let told = syrup.steps.last().map(|step| step.text.id.as_str());
    assert_eq!(told, Some("prepare-step-dissolve-all-it-holds"));
    assert!(syrup.sugar > Brix::from_degrees(66.9));
}

#[test]
fn a_working_goes_down_to_inputs_and_facts() {
    let brew = make(&dry_tincture("pressed"), &moist(have(), 10.0, 10.0));
    let leaves = brew.working.leaves();
    assert!(leaves.iter().all(|leaf| !matches!(leaf.how, ground::How::Computed { .. })));
    let moisture = leaves.iter().find(|leaf| leaf.what.id == "prepare-working-moisture");
    let shown = moisture.map(|leaf| leaf.value.clone());
    assert_eq!(shown, Some(ground::Shown::amount(10.0, Unit::Percent)));
}

#[test]
fn what_the_recipe_has_no_use_for_is_not_passed_over() {
    let with_sugar = |mut have: Have| {
        have.amounts.insert(What::Sugar, said("100 g"));
        have
    };
    assert_eq!(why(&decoction(""), &with_sugar(have())), "prepare-refused-no-use");
    let sweetened = Have { sweetened: Some(said("100 g")), ..have() };
    assert_eq!(why(&decoction(""), &sweetened), "prepare-refused-no-use");
    let stock = Have { stock: Some(AlcoholByVolume::from_percent(96.0)), ..have() };
    assert_eq!(why(&decoction(""), &stock), "prepare-refused-no-use");
}

#[test]
fn backwards_the_sugar_is_worked_out_and_not_said() {
    let syrup = decoction(r#", {"dissolve": {"to": "60 °Bx"}}"#);
    let mut told = have();
    told.amounts.insert(What::Sugar, said("100 g"));
    match backwards(&syrup, Wanted::Servings(10), &told, &larder()) {
        Answer::Refused(refusal) => assert_eq!(refusal.why.id, "prepare-refused-backwards"),
        Answer::Known(brew) => panic!("{brew:?}"),
    }
}
