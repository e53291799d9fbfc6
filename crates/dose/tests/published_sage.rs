//! Sage tea and thujone.
//!
//! Walch, Kuballa, Stuehlinger & Lachenmeier 2011, Chem Cent J 5:44: average infusions hold 4.4 mg/l
//! (food grade) and 11.3 mg/l (medicinal grade), and hot water takes out 0.30 on average of what
//! 60 % ethanol does. The adult ceiling is 6 mg a day (Health Canada after EMA/HMPC 2012); until
//! 2009 it was 5 mg (EMA/HMPC/41843/2009). The contents and shares of the model run stand around
//! these measurements.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a panic is how a test reports")]

mod kit;

use dose::{
    Action, AgeBand, Basis, Ceiling, ContentBasis, Counted, Cup, HerbState, HowMeasured, Level,
    LimitUse, Outcome, Passed, Portion, Strictness, Table, UsedAs, decide,
};
use ground::{Condition, Dist, Form, Harm, Mass, Part, Unit};
use kit::*;

const SAGE: &str = "Salvia officinalis";

fn table() -> Table {
    let mut sage =
        content(SAGE, Part::Leaf, "thujone", ContentBasis::Dry, Dist::uniform(2.0, 5.5).unwrap());
    sage.water = measured(Dist::triangular(0.20, 0.30, 0.40).unwrap());
    sage.ethanol = measured(Dist::exact(1.0).unwrap());
    let mut ceiling = caution(SAGE, Part::Leaf, Form::Tea, Condition::All, Action::Limit);
    let level = Level { value: finite(6.0), unit: Unit::MilligramPerDay };
    ceiling.limit = Some(Ceiling { of: Counted::Substance("thujone".into()), level: Some(level) });
    ceiling.days = Some(14);
    let mut now =
        limit("2012", "thujone", 6.0, Unit::MilligramPerDay, Basis::ShortTerm, LimitUse::Screen);
    now.from_age = Some(18);
    now.max_days = Some(14);
    let then =
        limit("2009", "thujone", 5.0, Unit::MilligramPerDay, Basis::ShortTerm, LimitUse::History);
    Table {
        parts: vec![part_row(
            SAGE,
            Part::Leaf,
            &[Form::Tea, Form::Tincture],
            Harm::None,
            UsedAs::Medicinal,
        )],
        cautions: vec![ceiling],
        contents: vec![sage],
        limits: vec![now, then],
        substances: [substance("thujone", false)].into(),
        ..Table::default()
    }
}

fn tea(cups: u32) -> Cup {
    cup(Form::Infusion, herb(SAGE, Part::Leaf, Portion::dried(Mass::from_g(1.5))), cups)
}

fn mg(value: ground::Finite) -> f64 {
    value.get() * 1e3
}

#[test]
fn a_cup_and_three_of_one_batch_hold_what_was_measured() {
    let exposure = exposed(&table(), &adult(), &tea(3), "thujone");
    let (cup, day) = (exposure.serving_g, exposure.day_g);
    // A cup of 150 ml of the medicinal grade held 11.3 mg/l × 0.15 l = 1.70 mg.
    assert!(mg(cup.p5) < 1.70 && 1.70 < mg(cup.p95));
    // 200,000 plain draws gave P5 0.93, P50 1.65, P95 2.58 a cup and P95 7.72 for three.
    assert!(near(mg(cup.p5), 0.93, 0.03), "{cup:?}");
    assert!(near(mg(cup.p50), 1.65, 0.03), "{cup:?}");
    assert!(near(mg(cup.p95), 2.58, 0.03), "{cup:?}");
    assert!(near(mg(day.p95), 7.72, 0.03), "{day:?}");
    // Worst end: 3 × 1.5 g × 5.5 mg/g × 0.40.
    assert!(near(exposure.worst_day_g.unwrap().mg(), 9.9, 1e-12));
}

#[test]
fn cups_at_the_average_content_reach_the_old_and_the_new_ceiling() {
    // 6 mg / (4.4 or 11.3 mg/l × 0.15 l) = 9.1 and 3.5 cups; 5 mg: 7.6 and 2.9.
    let cups = |strength: f64, ceiling: f64| {
        let mut table = table();
        let strength = Dist::exact(strength).unwrap();
        table.contents = vec![content(SAGE, Part::Leaf, "thujone", ContentBasis::Drink, strength)];
        ceiling / mg(exposed(&table, &adult(), &tea(1), "thujone").serving_g.p50)
    };
    for (strength, ceiling, want) in
        [(4.4, 6.0, 9.1), (11.3, 6.0, 3.5), (4.4, 5.0, 7.6), (11.3, 5.0, 2.9)]
    {
        assert!((cups(strength, ceiling) - want).abs() < 0.06, "{strength} {ceiling}");
    }
}

#[test]
fn a_healthy_adult_may_have_two_cups_a_day_for_two_weeks() {
    let at_most = Outcome::AtMost { servings_a_day: Some(2), days: Some(14) };
    assert_eq!(decided(&table(), &adult(), &tea(3)).outcome, at_most);
    assert_eq!(decided(&table(), &adult(), &tea(1)).outcome, at_most);
}

#[test]
fn cups_of_one_batch_share_its_content_and_are_not_averaged() {
    // Three cups whose contents were drawn anew each time would come to a P95 near 6.6 mg.
    let shared = exposed(&table(), &adult(), &tea(3), "thujone").day_g;
    assert!(mg(shared.p95) > 7.4);
    let others = ["second", "third"].map(|name| {
        let mut other = tea(1);
        other.batch = name.to_owned();
        other.herbs[0].lot = name.to_owned();
        other
    });
    let (table, person, first) = (table(), adult(), tea(1));
    let mut case = case(&table, &person, &first);
    case.beside = &others;
    let apart = dose::exposure(&case, &"thujone".into(), START).unwrap();
    let apart = apart.known().unwrap().day_g;
    assert!(near(mg(apart.p95), 6.6, 0.03), "{apart:?}");
}

#[test]
fn spoons_of_one_cook_err_together_and_weighings_apart() {
    let doubtful = |how| {
        let grams = Dist::uniform(1.0, 2.0).ok();
        let mut cup = tea(3);
        cup.herbs[0].portion = Portion { state: HerbState::Dried, grams, how };
        exposed(&table(), &adult(), &cup, "thujone").day_g.p95
    };
    assert!(doubtful(HowMeasured::Spooned) > doubtful(HowMeasured::Weighed));
}

#[test]
fn spirit_takes_out_all_of_it() {
    let mut tincture = tea(1);
    tincture.form = Form::Tincture;
    let all = exposed(&table(), &adult(), &tincture, "thujone").serving_g.p50;
    // 1.5 g × 3.75 mg/g.
    assert!(near(mg(all), 5.625, 0.001));
}

#[test]
fn the_old_value_is_shown_and_does_not_bind() {
    let decision = decided(&table(), &adult(), &tea(2));
    let held = |id: &str| decision.sealed.held.iter().find(|held| held.limit == id).unwrap();
    assert_eq!((held("2012").passed, held("2009").passed), (Passed::Within, Passed::Above));
    assert_eq!(held("2009").used, LimitUse::History);
}

#[test]
fn who_needs_the_worst_end_may_have_one_cup_and_a_child_has_no_value_of_its_own() {
    // Worst cup: 1.5 g × 5.5 mg/g × 0.40 = 3.3 mg, so one stays under 6 mg and two do not.
    let unsaid = saying(adult(), Condition::Breastfeeding, dose::Given::Unanswered);
    let at_most = Outcome::AtMost { servings_a_day: Some(1), days: Some(14) };
    assert_eq!(decided(&table(), &unsaid, &tea(1)).outcome, at_most);
    // A child of 20 kg is held to 6 mg × 20 / 50 = 2.4 mg.
    let child = person(AgeBand::Child, 20.0);
    let decision = decide(&case(&table(), &child, &tea(1)), START).unwrap();
    assert_eq!(decision.outcome.strictness(), Strictness::Withhold);
}
