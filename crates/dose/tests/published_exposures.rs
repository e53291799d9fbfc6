//! Exposures that are published, or follow from published measurements by one multiplication.

mod kit;

use dose::{
    AgeBand, Basis, ContentBasis, Cup, LimitUse, Outcome, Portion, Strictness, Table, UsedAs,
};
use ground::{Condition, Dist, Form, Harm, Mass, Part, Unit};
use kit::*;

fn mg(value: ground::Finite) -> f64 {
    value.get() * 1e3
}

fn tea(taxon: &str, part: Part, grams: f64, cups: u32) -> Cup {
    cup(Form::Infusion, herb(taxon, part, Portion::dried(Mass::from_g(grams))), cups)
}

fn one(taxon: &str, part: Part, of: &str, amount: Dist, share: Dist, bound: dose::Limit) -> Table {
    let mut row = content(taxon, part, of, ContentBasis::Dry, amount);
    row.water = measured(share);
    let looked = caution(taxon, part, Form::Tea, Condition::All, dose::Action::NoneFound);
    Table {
        parts: vec![part_row(taxon, part, &[Form::Tea], Harm::None, UsedAs::Tea)],
        cautions: vec![looked],
        contents: vec![row],
        limits: vec![bound],
        substances: [substance(of, false)].into(),
        ..Table::default()
    }
}

/// Survey of nitrate in dried herbs and their infusions, Krakow and Warsaw: dried nettle leaf
/// 6.764–16.921 mg/g, 20–70 % of the nitrate in the infusion, 7.35–47.23 mg in a cup of 200 ml.
/// About 4 g a cup fits both ends. ADI 3.7 mg/kg (SCF; JECFA 2002; EFSA 2008, Journal 689).
#[test]
fn nettle_tea_holds_the_nitrate_that_was_measured() {
    let (content, share) =
        (Dist::uniform(6.764, 16.921).unwrap(), Dist::uniform(0.20, 0.70).unwrap());
    let adi =
        limit("adi", "nitrate", 3.7, Unit::MilligramPerBodyDay, Basis::Chronic, LimitUse::Screen);
    let table = one("Urtica dioica", Part::Leaf, "nitrate", content, share, adi);
    let exposure = exposed(&table, &adult(), &tea("Urtica dioica", Part::Leaf, 4.0, 3), "nitrate");
    let cup = exposure.serving_g;
    assert!(near(mg(cup.p5), 9.0, 0.03) && near(mg(cup.p50), 19.9, 0.02), "{cup:?}");
    assert!(near(mg(cup.p95), 37.9, 0.03) && near(mg(exposure.day_g.p95), 114.0, 0.03));
    // All that was measured lies inside; ends are 4 × 6.764 × 0.20 and 4 × 16.921 × 0.70.
    assert!(mg(cup.least) < 7.35 && 47.23 < exposure.worst_day_g.unwrap().mg() / 3.0);
    // P95 of three cups is 44 % of the ADI at 70 kg.
    assert!(near(mg(exposure.day_g.p95) / 259.0, 0.44, 0.03));
    let three = tea("Urtica dioica", Part::Leaf, 4.0, 3);
    let free = decided(&table, &adult(), &three).outcome;
    assert_eq!(free, Outcome::NoReasonFound { servings_a_day: Some(6), days: None });
    // One strong cup (47.4 mg) is 107 % of a 12 kg child's ADI (44.4 mg): worst end, so none.
    let child = person(AgeBand::Toddler, 12.0);
    let one = tea("Urtica dioica", Part::Leaf, 4.0, 1);
    assert_eq!(decided(&table, &child, &one).outcome, Outcome::Withhold);
}

/// EFSA 2016, Journal 14:4572: borage tea from 2 g in 150 ml gives up to 67 µg of pyrrolizidine
/// alkaloids a kilogram of body mass. EMA/HMPC/893108/2011 Rev. 1: 1 µg a day. EFSA 2017, Journal
/// 15(7):4908: reference point 237 µg/kg.
#[test]
fn borage_tea_is_thousands_of_times_over_the_limit_and_withheld() {
    let (content, share) = (Dist::exact(2.345).unwrap(), Dist::exact(1.0).unwrap());
    let hmpc = limit("hmpc", "pa", 1.0, Unit::MicrogramPerDay, Basis::Chronic, LimitUse::Screen);
    let mut table = one("Borago officinalis", Part::Leaf, "pa", content, share, hmpc);
    table.substances = [substance("pa", true)].into();
    let cup = tea("Borago officinalis", Part::Leaf, 2.0, 1);
    let micrograms = mg(exposed(&table, &adult(), &cup, "pa").serving_g.p50) * 1e3;
    assert!(near(micrograms, 4690.0, 0.01), "{micrograms}");
    assert!((237.0 / (micrograms / 70.0) - 3.5).abs() < 0.1);
    assert_eq!(decided(&table, &adult(), &cup).outcome, Outcome::Withhold);
}

/// Asia Pac J Clin Nutr 2002;11(4):298–301: fifteen herbal teas, not detected to 3.00 mg of soluble
/// oxalate a gram; six cups a day of 1 g give at most 18.0 mg. Stone formers are told to stay
/// under 40–50 mg a day.
#[test]
fn six_herbal_teas_stay_under_a_low_oxalate_diet_and_black_tea_does_not() {
    let per_gram = |low: f64, high: f64| {
        let amount = Dist::uniform(low, high).unwrap();
        content("tea", Part::Leaf, "oxalate", ContentBasis::InDrinkPerG, amount)
    };
    let mut diet =
        limit("diet", "oxalate", 50.0, Unit::MilligramPerDay, Basis::Guidance, LimitUse::Guidance);
    diet.who = vec![Condition::OxalateStones];
    let exact = Dist::exact(1.0).unwrap();
    let mut table = one("tea", Part::Leaf, "oxalate", exact.clone(), exact, diet);
    table.contents = vec![per_gram(0.0, 3.0)];
    let cups = tea("tea", Part::Leaf, 1.0, 6);
    let day = exposed(&table, &adult(), &cups, "oxalate");
    assert!((day.worst_day_g.unwrap().mg() - 18.0).abs() < 0.1);
    assert!(near(mg(day.day_g.p95), 17.1, 0.02) && near(mg(day.day_g.p50), 9.0, 0.02));
    let stones = saying(adult(), Condition::OxalateStones, dose::Given::Yes);
    assert_eq!(decided(&table, &stones, &cups).outcome.strictness(), Strictness::NoReasonFound);
    // Six cups of loose black tea: 26.46–98.58 mg.
    table.contents = vec![per_gram(26.46 / 6.0, 98.58 / 6.0)];
    assert_eq!(decided(&table, &stones, &cups).outcome, Outcome::AskFirst);
    assert_eq!(decided(&table, &adult(), &cups).outcome.strictness(), Strictness::NoReasonFound);
}

/// Turkish Journal of Botany 21:323–327: dried dog rose hips give 0.85 of their vitamin C (20 mg/g)
/// when boiled for 80 min, 0.24 at 60 °C for 6 h. Upper level for adults 2000 mg a day.
#[test]
fn rose_hip_tea_holds_some_vitamin_c_and_never_the_upper_level() {
    let hips = |share: Dist| {
        let level = limit(
            "ul",
            "vitamin-c",
            2000.0,
            Unit::MilligramPerDay,
            Basis::Chronic,
            LimitUse::Screen,
        );
        one("Rosa canina", Part::RipeFruit, "vitamin-c", Dist::exact(20.0).unwrap(), share, level)
    };
    let cups = tea("Rosa canina", Part::RipeFruit, 2.5, 3);
    let serving = |share: f64| {
        let table = hips(Dist::exact(share).unwrap());
        mg(exposed(&table, &adult(), &cups, "vitamin-c").serving_g.p50)
    };
    assert!((serving(0.24) - 12.0).abs() < 0.1 && (serving(0.85) - 42.5).abs() < 0.1);
    let table = hips(Dist::uniform(0.24, 0.85).unwrap());
    let day = exposed(&table, &adult(), &cups, "vitamin-c").day_g;
    assert!(near(mg(day.p50), 81.8, 0.02) && near(mg(day.p95), 123.0, 0.02), "{day:?}");
    assert_eq!(decided(&table, &adult(), &cups).outcome.strictness(), Strictness::NoReasonFound);
}

/// Senica et al., J Berry Res: elder leaf holds up to 1.03 mg of cyanogenic glycosides a gram; molar
/// masses make 0.0915 mg of hydrogen cyanide of each milligram. Acute reference dose 20 µg/kg
/// (EFSA 2019, Journal 17(4):5662).
#[test]
fn elder_leaves_dropped_into_a_tea_pass_a_childs_acute_dose() {
    let arfd =
        limit("arfd", "cyanide", 20.0, Unit::MicrogramPerBody, Basis::Acute, LimitUse::Screen);
    let all = Dist::exact(1.0).unwrap();
    let high = Dist::uniform(0.5, 1.03).unwrap();
    let mut table = one("Sambucus nigra", Part::Leaf, "sambunigrin", high, all, arfd);
    let (id, mut sambunigrin) = substance("sambunigrin", false);
    sambunigrin.counts_as = vec![("cyanide".into(), finite(0.0915))];
    table.substances = [(id, sambunigrin), substance("cyanide", false)].into();
    let cup = tea("Sambucus nigra", Part::Leaf, 5.0, 1);
    let worst = exposed(&table, &adult(), &cup, "cyanide").worst_day_g.unwrap().mg();
    assert!(near(worst, 0.471, 0.01), "{worst}");
    for (kg, percent) in [(70.0, 34.0), (20.0, 118.0), (12.0, 196.0)] {
        assert!((worst / (0.020 * kg) * 100.0 - percent).abs() < 1.0, "{kg}");
    }
    let outcome = |age, kg| decided(&table, &person(age, kg), &cup).outcome;
    // The acute limit takes the worst end for everybody: two cups fit an adult of 70 kg.
    let two = Outcome::NoReasonFound { servings_a_day: Some(2), days: None };
    assert_eq!(outcome(AgeBand::Adult, 70.0), two);
    assert_eq!(outcome(AgeBand::Child, 20.0), Outcome::Withhold);
    assert_eq!(outcome(AgeBand::Toddler, 12.0), Outcome::Withhold);
}
