//! Each rule of a decision on a case of its own.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a panic is how a test reports")]

mod kit;

use dose::{
    Action, AgeBand, Basis, Case, Ceiling, ContentBasis, ContentKind, Counted, Cup, Decision,
    Given, Kinship, Level, LimitUse, Outcome, Person, Portion, Question, Strictness, Table, Tense,
    UsedAs, Window, decide,
};
use ground::{Condition, Dist, Form, Harm, Mass, Part, Unit};
use kit::*;

const PLANT: &str = "Rubus idaeus";

/// A leaf that is drunk, and of which somebody found no caution.
fn plain() -> Table {
    Table {
        parts: vec![part_row(PLANT, Part::Leaf, &[Form::Tea], Harm::None, UsedAs::Tea)],
        cautions: vec![caution(PLANT, Part::Leaf, Form::Tea, Condition::All, Action::NoneFound)],
        substances: [substance("x", false)].into(),
        ..Table::default()
    }
}

fn tea(grams: f64, cups: u32) -> Cup {
    cup(Form::Infusion, herb(PLANT, Part::Leaf, Portion::dried(Mass::from_g(grams))), cups)
}

fn outcome(table: &Table, person: &Person, cup: &Cup) -> Outcome {
    decided(table, person, cup).outcome
}

fn asks(table: &Table, person: &Person, cup: &Cup) -> Strictness {
    outcome(table, person, cup).strictness()
}

/// The plain table, holding `mg` of x in a gram, with a limit of 10 mg a day.
fn holding(mg: f64) -> Table {
    let mut table = plain();
    let amount = Dist::exact(mg).unwrap();
    table.contents = vec![content(PLANT, Part::Leaf, "x", ContentBasis::Dry, amount)];
    let ten = limit("ten", "x", 10.0, Unit::MilligramPerDay, Basis::Chronic, LimitUse::Screen);
    table.limits = vec![ten];
    table
}

const FREE: Outcome = Outcome::NoReasonFound { servings_a_day: None, days: None };

#[test]
fn outcomes_stand_in_one_order_and_the_strictest_wins() {
    let order =
        [Strictness::NoReasonFound, Strictness::AtMost, Strictness::AskFirst, Strictness::Withhold];
    assert!(order.is_sorted());
    assert_eq!(outcome(&plain(), &adult(), &tea(2.0, 3)), FREE);
    let mut table = plain();
    table.cautions.push(caution(PLANT, Part::Leaf, Form::Tea, Condition::All, Action::Ask));
    assert_eq!(outcome(&table, &adult(), &tea(2.0, 3)), Outcome::AskFirst);
    table.cautions.push(caution(PLANT, Part::Leaf, Form::Tea, Condition::All, Action::Exclude));
    assert_eq!(outcome(&table, &adult(), &tea(2.0, 3)), Outcome::Withhold);
}

#[test]
fn harm_and_use_of_the_part_decide() {
    let with = |harm, used_as| {
        let mut table = plain();
        table.parts = vec![part_row(PLANT, Part::Leaf, &[Form::Tea], harm, used_as)];
        asks(&table, &adult(), &tea(2.0, 1))
    };
    for harm in [Harm::Deadly, Harm::Harmful, Harm::Unknown] {
        assert_eq!(with(harm, UsedAs::Tea), Strictness::Withhold);
    }
    assert_eq!(with(Harm::None, UsedAs::None), Strictness::Withhold);
    assert_eq!(with(Harm::Irritant, UsedAs::Tea), Strictness::AskFirst);
    assert_eq!(with(Harm::None, UsedAs::Tea), Strictness::NoReasonFound);
}

#[test]
fn another_part_preparation_or_route_has_no_row_and_is_withheld() {
    let mut other = tea(2.0, 1);
    other.herbs[0].part = Part::Root;
    assert_eq!(outcome(&plain(), &adult(), &other), Outcome::Withhold);
    for form in [Form::Tincture, Form::Cooked, Form::Salve] {
        let mut other = tea(2.0, 1);
        other.form = form;
        assert_eq!(outcome(&plain(), &adult(), &other), Outcome::Withhold, "{form}");
    }
    // A row for the young leaf does not clear the grown one; one for the leaf clears the young.
    let mut table = plain();
    table.parts[0].part = Part::YoungLeaf;
    assert_eq!(outcome(&table, &adult(), &tea(2.0, 1)), Outcome::Withhold);
    let mut young = tea(2.0, 1);
    young.herbs[0].part = Part::YoungLeaf;
    assert_eq!(outcome(&plain(), &adult(), &young), FREE);
}

#[test]
fn of_several_stages_the_worst_decides_until_one_is_confirmed() {
    let mut table = plain();
    let mut old = part_row(PLANT, Part::Leaf, &[Form::Tea], Harm::Irritant, UsedAs::None);
    old.stage = Some("after flowering".to_owned());
    table.parts[0].stage = Some("dried fully".to_owned());
    table.parts.push(old);
    let mut cup = tea(2.0, 1);
    let person = adult();
    let before = |cup: &Cup| {
        let case = Case { tense: Tense::Before, ..case(&table, &person, cup) };
        decide(&case, START).unwrap()
    };
    assert_eq!(before(&cup).outcome, Outcome::Withhold);
    assert_eq!(before(&cup).sealed.open.len(), 2);
    cup.herbs[0].planned_stage = Some("dried fully".to_owned());
    assert_eq!((before(&cup).outcome, before(&cup).provisos.len()), (FREE, 1));
    cup.herbs[0].stages.insert("dried fully".to_owned(), Given::Yes);
    assert_eq!(outcome(&table, &person, &cup), FREE);
    cup.herbs[0].stages = [("after flowering".to_owned(), Given::Yes)].into();
    assert_eq!(outcome(&table, &person, &cup), Outcome::Withhold);
}

#[test]
fn the_row_of_the_part_itself_speaks_before_that_of_the_herb_unless_that_one_poisons() {
    let mut table = plain();
    let herb_row = |harm| part_row(PLANT, Part::Herb, &[Form::Tea], harm, UsedAs::None);
    table.parts.push(herb_row(Harm::Unknown));
    assert_eq!(outcome(&table, &adult(), &tea(2.0, 1)), FREE);
    table.parts[1] = herb_row(Harm::Harmful);
    assert_eq!(outcome(&table, &adult(), &tea(2.0, 1)), Outcome::Withhold);
    // A mixture with a poisonous part in it is poisonous.
    table.parts[1] = part_row(PLANT, Part::YoungLeaf, &[Form::Tea], Harm::Deadly, UsedAs::None);
    assert_eq!(outcome(&table, &adult(), &tea(2.0, 1)), Outcome::Withhold);
}

#[test]
fn names_for_cautions_come_from_the_rows_that_decide() {
    let mut table = plain();
    let mut raw = part_row(PLANT, Part::Leaf, &[Form::Tea], Harm::Irritant, UsedAs::None);
    raw.stage = Some("raw".to_owned());
    raw.caution_parts = vec![Part::Root];
    table.parts[0].stage = Some("boiled".to_owned());
    table.parts.push(raw);
    table.cautions.push(caution(PLANT, Part::Root, Form::Any, Condition::All, Action::Exclude));
    let mut cup = tea(2.0, 1);
    cup.herbs[0].stages.insert("boiled".to_owned(), Given::Yes);
    assert_eq!(outcome(&table, &adult(), &cup), FREE);
    table.parts[0].caution_parts = vec![Part::Root];
    assert_eq!(outcome(&table, &adult(), &cup), Outcome::Withhold);
}

#[test]
fn nobody_looked_asks_first_and_a_remembered_row_or_one_for_every_plant_is_no_look() {
    let mut table = plain();
    table.cautions[0].from = remembered();
    assert_eq!(asks(&table, &adult(), &tea(2.0, 1)), Strictness::AskFirst);
    table.cautions = vec![caution("*", Part::Whole, Form::Any, Condition::Surgery, Action::Ask)];
    assert_eq!(asks(&table, &adult(), &tea(2.0, 1)), Strictness::AskFirst);
    table.parts[0].used_as = UsedAs::Food;
    assert_eq!(asks(&table, &adult(), &tea(2.0, 1)), Strictness::NoReasonFound);
}

#[test]
fn a_rule_for_every_plant_may_leave_plain_food_alone_and_not_its_tea() {
    let mut every = caution("*", Part::Whole, Form::Any, Condition::Pregnant, Action::Ask);
    every.spares_food = true;
    let mut table = plain();
    table.parts =
        vec![part_row(PLANT, Part::Leaf, &[Form::Tea, Form::Cooked], Harm::None, UsedAs::Food)];
    table.cautions.push(every);
    let pregnant = saying(adult(), Condition::Pregnant, Given::Yes);
    assert_eq!(asks(&table, &pregnant, &tea(2.0, 1)), Strictness::AskFirst);
    let mut dish = tea(2.0, 1);
    dish.form = Form::Cooked;
    assert_eq!(asks(&table, &pregnant, &dish), Strictness::NoReasonFound);
    table.cautions.push(caution(
        PLANT,
        Part::Leaf,
        Form::Food,
        Condition::Pregnant,
        Action::Exclude,
    ));
    assert_eq!(asks(&table, &pregnant, &dish), Strictness::Withhold);
}

#[test]
fn rows_of_genus_family_and_relatives_join_and_those_of_relatives_clear_nothing() {
    let mut table = plain();
    table.cautions[0].taxon = "Rubus".to_owned();
    let kin = Kinship {
        wider: ["Rubus".to_owned(), "Rosaceae".to_owned()].into(),
        relatives: ["Fragaria vesca".to_owned()].into(),
    };
    table.kin = [(PLANT.to_owned(), kin)].into();
    assert_eq!(outcome(&table, &adult(), &tea(2.0, 1)), FREE);
    table.cautions.push(caution(
        "Fragaria vesca",
        Part::Leaf,
        Form::Tea,
        Condition::All,
        Action::Exclude,
    ));
    assert_eq!(outcome(&table, &adult(), &tea(2.0, 1)), Outcome::Withhold);
    let mut table = Table { kin: table.kin, ..holding(1.0) };
    table.contents[0].taxon = "Fragaria vesca".to_owned();
    assert_eq!(outcome(&table, &adult(), &tea(2.0, 1)), Outcome::AskFirst);
}

#[test]
fn a_question_that_a_row_asks_counts_as_feared_until_it_is_answered() {
    let mut table = plain();
    table.cautions.push(caution(PLANT, Part::Leaf, Form::Tea, Condition::Kidney, Action::Ask));
    let said = |given| decided(&table, &saying(adult(), Condition::Kidney, given), &tea(2.0, 1));
    assert_eq!(said(Given::No).outcome, FREE);
    assert_eq!(said(Given::Yes).outcome, Outcome::AskFirst);
    assert_eq!(said(Given::Yes).once_asked, Some(FREE));
    let open = said(Given::Unanswered);
    assert_eq!(open.outcome, Outcome::AskFirst);
    assert_eq!(open.sealed.open, [Question::Condition(Condition::Kidney)]);
    // Who would rather not say has no cup of it.
    assert_eq!(said(Given::RatherNot).outcome, Outcome::Withhold);
    assert!(said(Given::RatherNot).sealed.open.is_empty());
}

#[test]
fn what_everybody_may_see_tells_no_reason() {
    let mut table = plain();
    table.cautions.push(caution(PLANT, Part::Leaf, Form::Tea, Condition::Kidney, Action::Exclude));
    let decision = decided(&table, &saying(adult(), Condition::Kidney, Given::Yes), &tea(2.0, 1));
    let open = serde_json::to_string(&decision.open()).unwrap();
    assert!(serde_json::to_string(&decision).unwrap().contains("kidney"));
    assert!(!open.contains("kidney") && open.contains("withhold"));
}

#[test]
fn a_state_of_the_material_counts_as_feared_until_somebody_looked() {
    let mut table = plain();
    let mut mouldy = caution(PLANT, Part::Leaf, Form::Any, Condition::All, Action::Exclude);
    mouldy.when = Some("mouldy".to_owned());
    table.cautions.push(mouldy);
    let mut cup = tea(2.0, 1);
    assert_eq!(outcome(&table, &adult(), &cup), Outcome::Withhold);
    cup.herbs[0].stages.insert("mouldy".to_owned(), Given::No);
    assert_eq!(outcome(&table, &adult(), &cup), FREE);
}

#[test]
fn a_limit_without_number_and_days_asks_first_and_with_days_counts_those_before() {
    let mut table = plain();
    table.cautions.push(caution(PLANT, Part::Leaf, Form::Tea, Condition::All, Action::Limit));
    assert_eq!(outcome(&table, &adult(), &tea(2.0, 1)), Outcome::AskFirst);
    table.cautions[1].days = Some(7);
    let mut cup = tea(2.0, 1);
    let days = |days| Outcome::AtMost { servings_a_day: None, days: Some(days) };
    assert_eq!(outcome(&table, &adult(), &cup), days(7));
    cup.days_before = 5;
    assert_eq!(outcome(&table, &adult(), &cup), days(2));
    cup.days_before = 7;
    assert_eq!(outcome(&table, &adult(), &cup), Outcome::Withhold);
}

#[test]
fn limits_count_servings_and_herb_fresh_dried_or_as_weighed() {
    let most = |of: Counted, value: f64, unit: Unit, portion: Portion| {
        let mut table = plain();
        let mut row = caution(PLANT, Part::Leaf, Form::Tea, Condition::All, Action::Limit);
        let level = Some(Level { value: finite(value), unit });
        row.limit = Some(Ceiling { of, level });
        table.cautions.push(row);
        let mut cup = tea(2.0, 1);
        cup.herbs[0].portion = portion;
        cup.herbs[0].moisture = Some(Dist::exact(0.75).unwrap());
        outcome(&table, &adult(), &cup)
    };
    let at_most = |n| Outcome::AtMost { servings_a_day: Some(n), days: None };
    let (dried, fresh) = (Portion::dried(Mass::from_g(2.0)), Portion::fresh(Mass::from_g(8.0)));
    assert_eq!(most(Counted::Servings, 1.0, Unit::One, dried.clone()), at_most(1));
    assert_eq!(most(Counted::DriedHerb, 6.0, Unit::GramPerDay, dried.clone()), at_most(3));
    assert_eq!(most(Counted::DriedHerb, 6.0, Unit::GramPerDay, fresh.clone()), at_most(3));
    // 2 g dried were 2 / 0.25 = 8 g fresh.
    assert_eq!(most(Counted::FreshHerb, 20.0, Unit::GramPerDay, dried.clone()), at_most(2));
    assert_eq!(most(Counted::FreshHerb, 20.0, Unit::GramPerDay, fresh.clone()), at_most(2));
    assert_eq!(most(Counted::HerbAsWeighed, 10.0, Unit::GramPerDay, dried), at_most(5));
    assert_eq!(most(Counted::HerbAsWeighed, 7.9, Unit::GramPerDay, fresh), Outcome::Withhold);
}

#[test]
fn usual_amounts_limit_and_say_nothing_of_the_young() {
    let mut table = plain();
    table.posology = vec![posology(PLANT, Part::Leaf, Form::Tea, 6.0, 12)];
    let at_most = Outcome::AtMost { servings_a_day: Some(3), days: None };
    assert_eq!(outcome(&table, &adult(), &tea(2.0, 1)), at_most);
    let aged = |age| outcome(&table, &person(age, 45.0), &tea(2.0, 1));
    assert_eq!(aged(AgeBand::Adolescent), at_most);
    assert_eq!(aged(AgeBand::Child), Outcome::Withhold);
    let unsaid = Person { age: None, ..adult() };
    let decision = decided(&table, &unsaid, &tea(2.0, 1));
    assert_eq!(decision.outcome, Outcome::Withhold);
    assert!(decision.sealed.open.contains(&Question::Age));
}

#[test]
fn sums_run_over_everything_that_is_taken_that_day() {
    let (table, person) = (holding(1.0), adult());
    let cup = tea(2.0, 2);
    let mut jar = tea(2.0, 2);
    jar.batch = "jar".to_owned();
    let beside = [jar];
    let case = Case { beside: &beside, ..case(&table, &person, &cup) };
    let most = |outcome| match outcome {
        Outcome::NoReasonFound { servings_a_day, .. } => servings_a_day,
        other => panic!("{other:?}"),
    };
    assert_eq!(most(outcome(&table, &person, &cup)), Some(5));
    assert_eq!(most(decide(&case, START).unwrap().outcome), Some(3));
}

#[test]
fn constituents_that_count_together_are_summed() {
    let mut table = holding(1.0);
    let (id, mut part_of) = substance("y", false);
    part_of.counts_as = vec![("x".into(), finite(0.5))];
    table.substances.insert(id, part_of);
    let mut other =
        content("Mentha", Part::Leaf, "y", ContentBasis::Dry, Dist::exact(6.0).unwrap());
    other.taxon = "Mentha".to_owned();
    table.contents.push(other);
    table.parts.push(part_row(
        "Mentha spicata",
        Part::Leaf,
        &[Form::Tea],
        Harm::None,
        UsedAs::Food,
    ));
    let mut blend = tea(2.0, 1);
    blend.herbs.push(herb("Mentha spicata", Part::Leaf, Portion::dried(Mass::from_g(1.0))));
    // 2 g × 1 mg/g + 1 g × 6 mg/g × 0.5 = 5 mg, so two of them are 10 mg.
    assert_eq!(
        outcome(&table, &adult(), &blend),
        Outcome::NoReasonFound { servings_a_day: Some(2), days: None }
    );
}

#[test]
fn a_constituent_that_is_named_and_not_measured_asks_first() {
    let mut named = plain();
    named.limits = holding(1.0).limits;
    assert_eq!(outcome(&named, &adult(), &tea(2.0, 1)), FREE);
    named.cautions[0].names = vec!["x".into()];
    assert_eq!(outcome(&named, &adult(), &tea(2.0, 1)), Outcome::AskFirst);
    let mut recalled = holding(1.0);
    recalled.contents[0].from = remembered();
    assert_eq!(outcome(&recalled, &adult(), &tea(2.0, 1)), Outcome::AskFirst);
    // What is remembered still stops.
    assert_eq!(outcome(&recalled, &adult(), &tea(11.0, 1)), Outcome::Withhold);
    // Without a limit that binds, a constituent decides nothing by itself.
    recalled.limits[0].used = LimitUse::Reference;
    assert_eq!(outcome(&recalled, &adult(), &tea(11.0, 1)), FREE);
}

#[test]
fn a_supposed_moisture_asks_first_where_a_sum_hangs_on_it() {
    let mut named = holding(1.0);
    named.cautions[0].names = vec!["x".into()];
    let mut cup = tea(2.0, 1);
    cup.herbs[0].moisture_supposed = true;
    // Dried herb is weighed as it is.
    assert_eq!(outcome(&named, &adult(), &cup), outcome(&named, &adult(), &tea(2.0, 1)));
    cup.herbs[0].portion.state = dose::HerbState::Fresh;
    cup.herbs[0].moisture = Some(Dist::exact(0.5).unwrap());
    assert_eq!(outcome(&named, &adult(), &cup), Outcome::AskFirst);
    // So does what it weighs dried, which a usual amount counts.
    let mut usual = plain();
    usual.posology = vec![posology(PLANT, Part::Leaf, Form::Tea, 6.0, 12)];
    assert_eq!(outcome(&usual, &adult(), &cup), Outcome::AskFirst);
    cup.herbs[0].moisture_supposed = false;
    assert!(outcome(&usual, &adult(), &cup).strictness() < Strictness::AskFirst);
    assert!(outcome(&named, &adult(), &cup).strictness() < Strictness::AskFirst);
}

#[test]
fn a_remembered_limit_stops_and_clears_nobody() {
    let mut table = holding(1.0);
    table.limits[0].from = remembered();
    assert_eq!(outcome(&table, &adult(), &tea(2.0, 1)), Outcome::AskFirst);
    assert_eq!(outcome(&table, &adult(), &tea(11.0, 1)), Outcome::Withhold);
}

#[test]
fn an_acute_limit_or_no_safe_level_takes_the_worst_end_and_refuses_where_there_is_none() {
    let doubtful = |basis, no_safe_level, amount: Dist| {
        let mut table = holding(1.0);
        table.contents[0].amount = Some(amount);
        table.limits[0].basis = basis;
        table.substances = [substance("x", no_safe_level)].into();
        outcome(&table, &adult(), &tea(1.0, 1))
    };
    let most = |n| Outcome::NoReasonFound { servings_a_day: Some(n), days: None };
    let range = || Dist::triangular(0.0, 1.0, 5.0).unwrap();
    assert_eq!(doubtful(Basis::Acute, false, range()), most(2));
    assert_eq!(doubtful(Basis::Chronic, true, range()), most(2));
    // P95 of the triangle is 5 − √(0.05 × 5 × 4) = 4.0, its upper bound a little more.
    let low = Dist::triangular(0.0, 1.0, 4.0).unwrap();
    assert_eq!(doubtful(Basis::Chronic, false, low), most(3));
    let endless = || Dist::log_normal(0.5, 1.0).unwrap();
    assert_eq!(doubtful(Basis::Chronic, false, endless()), most(9));
    assert_eq!(doubtful(Basis::Acute, false, endless()), Outcome::AskFirst);
}

#[test]
fn averages_have_no_extreme_and_a_lower_end_that_was_not_read_is_left_out() {
    let mut table = holding(1.0);
    table.contents[0].amount = Some(Dist::uniform(1.0, 2.0).unwrap());
    table.contents[0].averages = true;
    assert!(matches!(outcome(&table, &adult(), &tea(1.0, 1)), Outcome::NoReasonFound { .. }));
    table.limits[0].basis = Basis::Acute;
    assert_eq!(outcome(&table, &adult(), &tea(1.0, 1)), Outcome::AskFirst);
    let mut table = holding(1.0);
    table.contents[0].amount = Some(Dist::uniform(0.0, 2.0).unwrap());
    table.contents[0].only_high = true;
    let most = Outcome::NoReasonFound { servings_a_day: Some(5), days: None };
    assert_eq!(outcome(&table, &adult(), &tea(1.0, 1)), most);
}

#[test]
fn of_several_rows_the_strictest_holds_and_findings_of_other_plants_join_nothing() {
    let mut table = holding(1.0);
    let add = |table: &mut Table, mg: f64, kind| {
        let mut row = content(PLANT, Part::Leaf, "x", ContentBasis::Dry, Dist::exact(mg).unwrap());
        row.kind = kind;
        table.contents.push(row);
    };
    add(&mut table, 2.0, ContentKind::Plant);
    add(&mut table, 100.0, ContentKind::Contamination);
    add(&mut table, 100.0, ContentKind::Survey);
    add(&mut table, 100.0, ContentKind::Contradiction);
    let most = Outcome::NoReasonFound { servings_a_day: Some(5), days: None };
    assert_eq!(outcome(&table, &adult(), &tea(1.0, 1)), most);
}

#[test]
fn body_mass_that_was_not_said_is_the_lowest_of_the_age() {
    let mut table = holding(1.0);
    table.limits[0].level = Some(Level { value: finite(0.1), unit: Unit::MilligramPerBodyDay });
    let body = |kg| dose::Body { mass: Mass::from_kg(kg), from: read_in("test") };
    table.bodies = [(AgeBand::Child, body(12.0)), (AgeBand::Adult, body(40.0))].into();
    let most = |n| Outcome::NoReasonFound { servings_a_day: Some(n), days: None };
    assert_eq!(outcome(&table, &adult(), &tea(1.0, 1)), most(7));
    let unsaid = decided(&table, &Person { body_mass: None, ..adult() }, &tea(1.0, 1));
    assert_eq!(unsaid.outcome, most(4));
    assert!(unsaid.sealed.open.contains(&Question::BodyMass));
    let child = Person { body_mass: None, age: Some(AgeBand::Child), ..adult() };
    assert_eq!(outcome(&table, &child, &tea(1.0, 1)), most(1));
}

#[test]
fn a_value_for_other_people_binds_and_does_not_cover() {
    let mut table = holding(1.0);
    table.limits[0].except = vec![Condition::Epilepsy];
    assert!(matches!(outcome(&table, &adult(), &tea(1.0, 1)), Outcome::NoReasonFound { .. }));
    let epilepsy = saying(adult(), Condition::Epilepsy, Given::Yes);
    assert_eq!(outcome(&table, &epilepsy, &tea(1.0, 1)), Outcome::AskFirst);
    assert_eq!(outcome(&table, &epilepsy, &tea(11.0, 1)), Outcome::Withhold);
    // A value for some says nothing to the others.
    table.limits[0].except.clear();
    table.limits[0].who = vec![Condition::AnyMedicine];
    assert_eq!(outcome(&table, &adult(), &tea(11.0, 1)), FREE);
    let medicine = saying(adult(), Condition::AnyMedicine, Given::Yes);
    assert_eq!(outcome(&table, &medicine, &tea(11.0, 1)), Outcome::Withhold);
}

#[test]
fn young_people_are_held_to_an_adults_value_by_their_mass_and_never_above_it() {
    let mut table = holding(1.0);
    table.limits[0].from_age = Some(18);
    let decision = |kg| decided(&table, &person(AgeBand::Adolescent, kg), &tea(1.0, 1));
    let most = |decision: &Decision| decision.sealed.held[0].most_servings;
    // 10 mg × 25 / 50 = 5 mg; at 60 kg no more than the adult's 10 mg.
    assert_eq!((most(&decision(25.0)), most(&decision(60.0))), (Some(5), Some(10)));
    // The value was set for adults, so it clears no adolescent.
    assert_eq!(decision(25.0).outcome, Outcome::AskFirst);
}

#[test]
fn guidance_asks_first_above_it_and_only_the_groups_it_names() {
    let mut table = holding(1.0);
    table.limits[0].used = LimitUse::Guidance;
    table.limits[0].who = vec![Condition::OxalateStones];
    let stones = saying(adult(), Condition::OxalateStones, Given::Yes);
    assert_eq!(outcome(&table, &stones, &tea(11.0, 1)), Outcome::AskFirst);
    assert_eq!(outcome(&table, &stones, &tea(9.0, 1)), FREE);
    assert_eq!(outcome(&table, &adult(), &tea(11.0, 1)), FREE);
}

#[test]
fn what_may_be_sold_binds_only_what_is_sold() {
    let mut table = holding(1.0);
    table.limits[0].used = LimitUse::Legal;
    table.limits[0].window = Window::Product;
    table.limits[0].level = Some(Level { value: finite(10.0), unit: Unit::MilligramPerKilogram });
    let person = adult();
    let sold = |grams: f64, mass: Option<f64>| {
        let mut cup = tea(grams, 1);
        cup.mass = mass.map(Mass::from_g);
        decide(&Case { sold: true, ..case(&table, &person, &cup) }, START).unwrap().outcome
    };
    // 1 mg in 150 g is 6.7 mg/kg; 2 mg are 13.3 mg/kg.
    assert_eq!(sold(1.0, Some(150.0)), FREE);
    assert_eq!(sold(2.0, Some(150.0)), Outcome::Withhold);
    assert_eq!(sold(1.0, None), Outcome::AskFirst);
    assert_eq!(outcome(&table, &person, &tea(2.0, 1)), FREE);
}

#[test]
fn a_week_is_seven_days_and_a_serving_one() {
    let mut table = holding(1.0);
    let most = |table: &Table| match outcome(table, &adult(), &tea(1.0, 1)) {
        Outcome::NoReasonFound { servings_a_day, .. } => servings_a_day,
        other => panic!("{other:?}"),
    };
    table.limits[0].window = Window::Week;
    assert_eq!(most(&table), Some(1));
    table.limits[0].window = Window::Serving;
    assert_eq!(most(&table), None);
    assert_eq!(outcome(&table, &adult(), &tea(11.0, 1)), Outcome::Withhold);
}

#[test]
fn spirit_of_which_nobody_said_the_ethanol_asks_first() {
    let mut table = plain();
    table.parts[0].forms = vec![Form::Tincture];
    table.cautions[0].forms = vec![Form::Tincture];
    table.substances.extend([substance("ethanol", false)]);
    let dose = limit("dose", "ethanol", 3.0, Unit::Gram, Basis::Acute, LimitUse::Screen);
    table.limits = vec![dose];
    let mut drops = tea(1.0, 1);
    drops.form = Form::Tincture;
    assert_eq!(outcome(&table, &adult(), &drops), Outcome::AskFirst);
    drops.holds.insert("ethanol".into(), Dist::exact(2.0).unwrap());
    let most = Outcome::NoReasonFound { servings_a_day: Some(1), days: None };
    assert_eq!(outcome(&table, &adult(), &drops), most);
}

#[test]
fn one_persons_decision_does_not_hang_on_who_else_comes() {
    let table = holding(1.0);
    let (cup, adult, child) = (tea(2.0, 1), adult(), person(AgeBand::Child, 20.0));
    let people = [&adult, &child];
    let all = people.map(|person| decided(&table, person, &cup));
    assert_eq!(decided(&table, &adult, &cup), all[0]);
    assert_eq!(decided(&table, &child, &cup), all[1]);
}
