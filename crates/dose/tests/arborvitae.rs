//! A strong tea of arborvitae tips: 30 g fresh at 55 % water in a cup, the pot of two cups made one
//! and a half times a day, three cups drunk.
//!
//! Nobody is known to have measured thujone in a Thuja tea. Content of the dried leafy twig: 7 to
//! 32 mg/g, worked out from oil (1.4–4 %) and its share of thujone (49–79 %; Herba Polonica, two
//! cultivars; PDR 2000). Adult ceiling 6 mg a day. Health Canada's monograph on Thuja lists 1–2 g of
//! dried tops up to three times a day: the two texts of one authority do not agree.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a panic is how a test reports")]

mod kit;

use dose::{
    Action, AgeBand, Basis, ContentBasis, Cup, LimitUse, Outcome, Portion, Rule, Strictness, Table,
    Tense, UsedAs, decide,
};
use ground::{Condition, Dist, Form, Harm, Mass, Part, Unit};
use kit::*;

const THUJA: &str = "Thuja occidentalis";

fn table(share: dose::Transfer) -> Table {
    let mut tips = content(
        THUJA,
        Part::ShootTip,
        "thujone",
        ContentBasis::Dry,
        Dist::uniform(7.0, 32.0).unwrap(),
    );
    tips.water = Some(share);
    let excluded = caution("Thuja", Part::ShootTip, Form::Inward, Condition::All, Action::Exclude);
    let mut now =
        limit("2012", "thujone", 6.0, Unit::MilligramPerDay, Basis::ShortTerm, LimitUse::Screen);
    now.from_age = Some(18);
    Table {
        parts: vec![part_row(
            THUJA,
            Part::ShootTip,
            &[Form::Infusion],
            Harm::Harmful,
            UsedAs::None,
        )],
        cautions: vec![excluded],
        contents: vec![tips],
        limits: vec![now],
        substances: [substance("thujone", false)].into(),
        ..Table::default()
    }
}

fn strong_tea() -> Cup {
    let mut tips = herb(THUJA, Part::ShootTip, Portion::fresh(Mass::from_g(30.0)));
    tips.moisture = Some(Dist::exact(0.55).unwrap());
    // The pot of two cups is made 1.5 times a day, so 3 cups of 15 g fresh.
    tips.portion = Portion::fresh(Mass::from_g(30.0 / 2.0));
    cup(Form::Infusion, tips, 3)
}

fn day_mg(share: f64) -> (f64, f64, f64) {
    let table = table(measured(Dist::exact(share).unwrap()).unwrap());
    let day = exposed(&table, &adult(), &strong_tea(), "thujone").day_g;
    let mg = |value: ground::Finite| value.get() * 1e3;
    (mg(day.least), mg(day.p50), mg(day.most))
}

#[test]
fn a_day_of_it_holds_some_twenty_to_sixty_times_the_ceiling() {
    // 3 × 15 g × 0.45 = 20.25 g of solids; × 19.5 mg/g × 0.30 = 118.5 mg.
    assert!(near(day_mg(0.30).1, 118.5, 0.001));
    assert!(near(day_mg(1.0).1, 394.9, 0.001));
    // The least: 20.25 g × 7 mg/g × 0.10 = 14.2 mg, still more than twice 6 mg.
    assert!(near(day_mg(0.10).0, 14.2, 0.005));
}

#[test]
fn a_share_that_is_only_supposed_counts_as_all_of_it() {
    let supposed = table(assumed(Dist::triangular(0.10, 0.30, 0.50).unwrap()).unwrap());
    let day = exposed(&supposed, &adult(), &strong_tea(), "thujone").day_g;
    assert!(near(day.p50.get() * 1e3, day_mg(1.0).1, 1e-12));
}

#[test]
fn nobody_may_have_it_and_each_rule_says_so_for_itself() {
    let full = table(assumed(Dist::triangular(0.10, 0.30, 0.50).unwrap()).unwrap());
    let says = |table: &Table, rule: Rule| {
        let decision = decided(table, &adult(), &strong_tea());
        assert_eq!(decision.outcome, Outcome::Withhold);
        let mut reasons = decision.sealed.reasons.iter();
        reasons.any(|reason| reason.rule == rule && reason.asks == Strictness::Withhold)
    };
    assert!([Rule::Part, Rule::Caution, Rule::Limit].into_iter().all(|rule| says(&full, rule)));
    // Without the part row and the caution, the numbers alone withhold it.
    let mut numbers = full.clone();
    numbers.parts =
        vec![part_row(THUJA, Part::ShootTip, &[Form::Infusion], Harm::None, UsedAs::Tea)];
    numbers.cautions[0].action = Action::Note;
    assert!(says(&numbers, Rule::Limit));
}

#[test]
fn before_the_day_it_is_withheld_from_everybody_too() {
    let table = table(assumed(Dist::triangular(0.10, 0.30, 0.50).unwrap()).unwrap());
    let cup = strong_tea();
    for age in AgeBand::ALL {
        let person = person(age, 70.0);
        let mut case = case(&table, &person, &cup);
        case.tense = Tense::Before;
        assert_eq!(decide(&case, START).unwrap().outcome, Outcome::Withhold);
    }
}
