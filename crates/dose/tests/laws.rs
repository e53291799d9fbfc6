//! Laws: more servings never lower an exposure; what is not known never loosens; order is nothing.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a panic is how a test reports")]

mod kit;

use dose::{
    Action, AgeBand, Asked, Basis, Case, Ceiling, Content, ContentBasis, Counted, Cup, Given,
    HerbState, HowMeasured, Intakes, Level, LimitUse, Outcome, Person, Portion, Question, Table,
    Tense, UsedAs, asked, decide, decide_in, exposure,
};
use ground::{Condition, Dist, Form, Harm, Mass, Part, Sourcing, Unit};
use kit::*;
use proptest::prelude::*;
use std::sync::Arc;

const PLANT: &str = "Urtica dioica";
const ASKED: [Condition; 5] = [
    Condition::Pregnant,
    Condition::Breastfeeding,
    Condition::Kidney,
    Condition::Epilepsy,
    Condition::AnyMedicine,
];

fn given() -> impl Strategy<Value = Given> {
    prop_oneof![4 => Just(Given::No), 1 => Just(Given::Yes), 1 => Just(Given::Unanswered)]
}

fn sourcing() -> impl Strategy<Value = Sourcing> {
    prop_oneof![5 => Just(read_in("test")), 1 => Just(remembered())]
}

fn action() -> impl Strategy<Value = Action> {
    prop_oneof![
        1 => Just(Action::Exclude),
        1 => Just(Action::Ask),
        2 => Just(Action::Limit),
        2 => Just(Action::Note)
    ]
}

fn content_row() -> impl Strategy<Value = Content> {
    let share = (0.1..0.5f64, 0.5..1.0f64, any::<bool>());
    (0.1..2.0f64, 2.0..8.0f64, prop::option::of(share), sourcing(), any::<bool>()).prop_map(
        |(low, high, share, from, fresh)| {
            let basis = if fresh { ContentBasis::Fresh } else { ContentBasis::Dry };
            let mut row = content(PLANT, Part::Leaf, "x", basis, Dist::uniform(low, high).unwrap());
            row.id = format!("x {low} {high}");
            row.water = share.map(|(low, high, measured)| dose::Transfer {
                share: Dist::uniform(low, high).unwrap(),
                measured,
            });
            row.from = from;
            row
        },
    )
}

prop_compose! {
    fn cautions()(
        who in prop::sample::select(&ASKED[..]),
        rows in prop::collection::vec((action(), sourcing(), prop::option::of(1u32..20)), 1..4),
        most in 5.0..60.0f64,
    ) -> Vec<dose::Caution> {
        let level = Level { value: finite(most), unit: Unit::MilligramPerDay };
        rows.into_iter().enumerate().map(|(i, (action, from, days))| {
            let who = if i == 0 { Condition::All } else { who };
            let action = if i == 0 && action <= Action::Ask { Action::Note } else { action };
            let mut row = caution(PLANT, Part::Leaf, Form::Tea, who, action);
            row.id = format!("c{i}");
            row.limit = (action == Action::Limit).then(|| Ceiling {
                of: Counted::Substance("x".into()),
                level: Some(level),
            });
            row.days = days;
            row.from = from;
            row
        }).collect()
    }
}

prop_compose! {
    fn tables()(
        contents in prop::collection::vec(content_row(), 1..3),
        cautions in cautions(),
        person_mg in 5.0..200.0f64,
        body_mg in 0.1..3.0f64,
        basis in prop::sample::select(vec![Basis::Acute, Basis::Chronic]),
        from in sourcing(),
        guidance in prop::option::of(1.0..50.0f64),
    ) -> Table {
        let mut adults = limit("adults", "x", person_mg, Unit::MilligramPerDay, basis, LimitUse::Screen);
        adults.from_age = Some(18);
        adults.except = vec![Condition::Epilepsy];
        adults.from = from;
        let all = limit("all", "x", body_mg, Unit::MilligramPerBodyDay, Basis::Chronic, LimitUse::Screen);
        let mut limits = vec![adults, all];
        limits.extend(guidance.map(|mg| {
            let mut row = limit("advice", "x", mg, Unit::MilligramPerDay, Basis::Guidance, LimitUse::Guidance);
            row.who = vec![Condition::Kidney];
            row
        }));
        let body = |kg| dose::Body { mass: Mass::from_kg(kg), from: read_in("test") };
        Table {
            parts: vec![part_row(PLANT, Part::Leaf, &[Form::Tea], Harm::None, UsedAs::Tea)],
            cautions,
            contents,
            limits,
            substances: [substance("x", false)].into(),
            bodies: [(AgeBand::Child, body(12.0)), (AgeBand::Adult, body(40.0))].into(),
            ..Table::default()
        }
    }
}

prop_compose! {
    fn people()(
        adult in prop::bool::weighted(0.8),
        kg in prop::option::weighted(0.7, 40.0..100.0f64),
        said in prop::collection::vec(given(), ASKED.len()),
    ) -> Person {
        let age = if adult { AgeBand::Adult } else { AgeBand::Child };
        let mut person = person(age, kg.unwrap_or(40.0));
        person.body_mass = kg.map(Mass::from_kg);
        person.said.extend(ASKED.iter().copied().zip(said));
        person
    }
}

prop_compose! {
    fn cups()(
        low in 0.2..2.0f64,
        more in 0.0..2.0f64,
        fresh in any::<bool>(),
        spooned in any::<bool>(),
        moisture in prop::option::weighted(0.8, 0.5..0.8f64),
        servings in 1u32..5,
        lot in prop::sample::select(vec!["a", "b"]),
        batch in prop::sample::select(vec!["one", "two"]),
    ) -> Cup {
        let portion = Portion {
            state: if fresh { HerbState::Fresh } else { HerbState::Dried },
            grams: Dist::uniform(low, low + more).ok(),
            how: if spooned { HowMeasured::Spooned } else { HowMeasured::Weighed },
        };
        let mut nettle = herb(PLANT, Part::Leaf, portion);
        nettle.lot = lot.to_owned();
        nettle.moisture = moisture.map(|water| Dist::uniform(water, water + 0.1).unwrap());
        let mut cup = cup(Form::Infusion, nettle, servings);
        cup.batch = batch.to_owned();
        cup
    }
}

fn of<'a>(table: &'a Table, person: &'a Person, cup: &'a Cup, beside: &'a [Cup]) -> Case<'a> {
    Case { beside, ..case(table, person, cup) }
}

fn outcome(table: &Table, person: &Person, cup: &Cup, beside: &[Cup]) -> Outcome {
    decide(&of(table, person, cup, beside), START).unwrap().outcome
}

/// Medicines that are a medicine, whatever was said to the wider question.
const MEDICINES: [Condition; 4] =
    [Condition::Anticoagulant, Condition::HeartMedicine, Condition::Diuretic, Condition::Sedative];

fn asks(table: &Table, cup: &Cup, beside: &[Cup]) -> Asked {
    let nobody = Person::default();
    let mut shared = Intakes::new(Arc::new(table.clone()), START);
    asked(&of(&shared.table(), &nobody, cup, beside), &mut shared).unwrap()
}

/// Whatever is not asked may be answered in any way, or not at all: the outcome is the same. Whatever
/// is open where nothing was answered is asked.
fn not_asked_decides_nothing(
    table: &Table,
    mut person: Person,
    (cup, beside): (&Cup, &[Cup]),
    others: &[Given],
) -> Result<(), TestCaseError> {
    let form = asks(table, cup, beside);
    let known = outcome(table, &person, cup, beside);
    let nobody = decide(&of(table, &Person::default(), cup, beside), START).unwrap();
    for open in nobody.sealed.open {
        prop_assert!(form.contains_key(&open), "{open:?} of {form:?}");
    }
    for (condition, given) in Condition::ALL.iter().zip(others) {
        let is_age = Condition::Under18.contains(*condition);
        // Who takes a blood thinner takes a medicine, and is asked that.
        let given = if MEDICINES.contains(condition) { Given::Unanswered } else { *given };
        if !is_age && !form.contains_key(&Question::Condition(*condition)) {
            person.said.insert(*condition, given);
        }
    }
    if !form.contains_key(&Question::Age) {
        person.age = None;
    }
    if !form.contains_key(&Question::BodyMass) {
        person.body_mass = None;
    }
    prop_assert_eq!(known, outcome(table, &person, cup, beside), "{:?}", form);
    Ok(())
}

/// Every way in which one known thing may come to be unknown.
fn faded(table: &Table, person: &Person, cup: &Cup, beside: &[Cup]) -> Vec<(String, Outcome)> {
    let mut all = Vec::new();
    let mut note = |what: String, table: &Table, person: &Person, cup: &Cup| {
        all.push((what, outcome(table, person, cup, beside)));
    };
    for condition in ASKED {
        for fade in [Given::Unanswered, Given::RatherNot] {
            note(
                format!("{condition} {fade:?}"),
                table,
                &saying(person.clone(), condition, fade),
                cup,
            );
        }
    }
    note("age".into(), table, &Person { age: None, ..person.clone() }, cup);
    note("body".into(), table, &Person { body_mass: None, ..person.clone() }, cup);
    for (what, fade) in table_fades(table) {
        note(what, &fade, person, cup);
    }
    for (what, fade) in cup_fades(cup) {
        note(what, table, person, &fade);
    }
    all
}

fn table_fades(table: &Table) -> Vec<(String, Table)> {
    let mut all: Vec<(String, Table)> = Vec::new();
    let mut fade = |what: String, change: &dyn Fn(&mut Table)| {
        let mut table = table.clone();
        change(&mut table);
        all.push((what, table));
    };
    for i in 0..table.contents.len() {
        fade(format!("content {i}"), &|table| table.contents[i].amount = None);
        fade(format!("content source {i}"), &|table| table.contents[i].from = remembered());
        fade(format!("transfer {i}"), &|table| table.contents[i].water = None);
        fade(format!("transfer supposed {i}"), &|table| {
            if let Some(water) = &mut table.contents[i].water {
                water.measured = false;
            }
        });
    }
    for i in 0..table.limits.len() {
        fade(format!("limit {i}"), &|table| table.limits[i].level = None);
        fade(format!("limit source {i}"), &|table| table.limits[i].from = remembered());
    }
    for i in 0..table.cautions.len() {
        fade(format!("caution source {i}"), &|table| table.cautions[i].from = remembered());
        fade(format!("caution level {i}"), &|table| {
            if let Some(limit) = &mut table.cautions[i].limit {
                limit.level = None;
            }
        });
    }
    fade("harm".into(), &|table| table.parts[0].harm = Harm::Unknown);
    fade("part source".into(), &|table| table.parts[0].from = remembered());
    fade("part row".into(), &|table| table.parts.clear());
    fade("stage".into(), &|table| table.parts[0].stage = Some("dried fully".to_owned()));
    fade("substance".into(), &|table| table.substances.clear());
    all
}

fn cup_fades(cup: &Cup) -> Vec<(String, Cup)> {
    let mut all: Vec<(String, Cup)> = Vec::new();
    let mut fade = |what: &str, change: &dyn Fn(&mut Cup)| {
        let mut cup = cup.clone();
        change(&mut cup);
        all.push((what.to_owned(), cup));
    };
    fade("moisture", &|cup| cup.herbs[0].moisture = None);
    fade("portion", &|cup| cup.herbs[0].portion.grams = None);
    fade("determined", &|cup| cup.herbs[0].determined = Given::Unanswered);
    fade("sorted", &|cup| cup.herbs[0].sorted = Given::Unanswered);
    fade("plant", &|cup| cup.herbs[0].taxon = "Incerta incerta".to_owned());
    all
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, ..ProptestConfig::default() })]

    #[test]
    fn what_comes_to_be_unknown_never_loosens(
        table in tables(),
        person in people(),
        cup in cups(),
        beside in prop::collection::vec(cups(), 0..2),
    ) {
        let known = outcome(&table, &person, &cup, &beside);
        for (what, faded) in faded(&table, &person, &cup, &beside) {
            prop_assert!(
                faded.most_servings() <= known.most_servings() && faded.most_days() <= known.most_days(),
                "{what}: {known:?} -> {faded:?}"
            );
            prop_assert!(
                known.strictness() < dose::Strictness::AskFirst
                    || faded.strictness() >= dose::Strictness::AskFirst,
                "{what}: {known:?} -> {faded:?}"
            );
        }
    }

    #[test]
    fn what_others_take_is_summed_once_and_changes_no_decision(
        (table, another) in (tables(), tables()),
        persons in prop::collection::vec(people(), 2..4),
        (one, other) in (cups(), cups()),
    ) {
        let mut shared = Intakes::new(Arc::new(table), START);
        let table = shared.table();
        for person in persons.iter().chain(&persons) {
            for (cup, beside) in [(&one, &[][..]), (&one, std::slice::from_ref(&other)), (&other, &[])] {
                for table in [&*table, &another] {
                    for (tense, sold) in [(Tense::Before, false), (Tense::OnTheDay, true)] {
                        let case = Case { tense, sold, ..of(table, person, cup, beside) };
                        prop_assert_eq!(decide_in(&case, &mut shared).unwrap(), decide(&case, START).unwrap());
                    }
                }
            }
            shared.end_round();
        }
    }

    #[test]
    fn more_servings_never_lower_an_exposure_and_never_a_number(
        table in tables(),
        person in people(),
        cup in cups(),
        other in cups(),
    ) {
        let day = |cup: &Cup, beside: &[Cup]| {
            exposure(&of(&table, &person, cup, beside), &"x".into(), START).unwrap()
        };
        let mut more = cup.clone();
        more.servings_a_day += 1;
        if let (Some(few), Some(many)) = (day(&cup, &[]).known(), day(&more, &[]).known()) {
            prop_assert!(few.day_g.p95_bound <= many.day_g.p95_bound);
            prop_assert!(few.day_g.least <= many.day_g.least);
        }
        if let (Some(alone), Some(both)) =
            (day(&cup, &[]).known(), day(&cup, std::slice::from_ref(&other)).known())
        {
            prop_assert!(alone.day_g.p50 <= both.day_g.p50);
        }
        let alone = outcome(&table, &person, &cup, &[]);
        let both = outcome(&table, &person, &cup, std::slice::from_ref(&other));
        prop_assert!(both.most_servings() <= alone.most_servings(), "{alone:?} {both:?}");
    }

    #[test]
    fn the_order_of_rows_and_of_cups_changes_nothing(
        table in tables(),
        person in people(),
        cup in cups(),
        mut beside in prop::collection::vec(cups(), 2),
    ) {
        let once = outcome(&table, &person, &cup, &beside);
        let mut turned = table.clone();
        turned.contents.reverse();
        turned.cautions.reverse();
        turned.limits.reverse();
        beside.reverse();
        prop_assert_eq!(once, outcome(&turned, &person, &cup, &beside));
    }

    #[test]
    fn what_is_not_asked_decides_nothing_and_what_is_open_was_asked(
        mut table in tables(),
        person in people(),
        (cup, beside) in (cups(), prop::collection::vec(cups(), 0..2)),
        used in prop::sample::select(vec![LimitUse::Screen, LimitUse::Reference, LimitUse::Guidance]),
        others in prop::collection::vec(given(), Condition::ALL.len()),
    ) {
        table.limits.iter_mut().for_each(|limit| limit.used = used);
        not_asked_decides_nothing(&table, person, (&cup, &beside), &others)?;
    }

    #[test]
    fn what_is_not_asked_decides_nothing_where_only_usual_amounts_speak(
        (mut table, most_g, age_from) in (tables(), 1.0..9.0f64, 0u8..19),
        person in people(),
        (cup, beside) in (cups(), prop::collection::vec(cups(), 0..2)),
        others in prop::collection::vec(given(), Condition::ALL.len()),
    ) {
        table.limits.clear();
        table.cautions.retain(|row| row.action == Action::Note);
        table.posology.push(posology(PLANT, Part::Leaf, Form::Tea, most_g, age_from));
        not_asked_decides_nothing(&table, person, (&cup, &beside), &others)?;
    }

    #[test]
    fn what_no_row_names_is_not_asked(
        mut table in tables(),
        (cup, beside) in (cups(), prop::collection::vec(cups(), 0..2)),
        gone in prop::sample::select(&ASKED[2..]),
    ) {
        let names = |limit: &dose::Limit| limit.who.contains(&gone) || limit.except.contains(&gone);
        table.cautions.retain(|row| row.who != gone || row.action >= Action::Note);
        table.limits.retain(|limit| !names(limit));
        let form = asks(&table, &cup, &beside);
        prop_assert!(!form.contains_key(&Question::Condition(gone)), "{gone}: {form:?}");
        table.cautions.iter_mut().for_each(|row| row.taxon = "Salix alba".to_owned());
        table.contents.clear();
        prop_assert_eq!(asks(&table, &cup, &beside), Asked::new());
    }

    #[test]
    fn as_many_as_it_says_are_within_and_one_more_is_not(
        table in tables(),
        cup in cups(),
    ) {
        let person = adult();
        let mut cup = cup;
        cup.servings_a_day = 1;
        let decision = decide(&of(&table, &person, &cup, &[]), START).unwrap();
        if let Outcome::NoReasonFound { servings_a_day: Some(most), .. } = decision.outcome {
            let at = |n: u32| {
                let mut cup = cup.clone();
                cup.servings_a_day = n;
                outcome(&table, &person, &cup, &[])
            };
            prop_assert_eq!(at(most).strictness(), dose::Strictness::NoReasonFound);
            let is_at_most = matches!(at(most + 1), Outcome::AtMost { .. });
            prop_assert!(is_at_most);
        }
    }
}

#[test]
fn the_same_case_gives_the_same_bytes() {
    let run = || {
        let row =
            content(PLANT, Part::Leaf, "x", ContentBasis::Dry, Dist::uniform(1.0, 2.0).unwrap());
        let table = Table {
            parts: vec![part_row(PLANT, Part::Leaf, &[Form::Tea], Harm::None, UsedAs::Tea)],
            contents: vec![row],
            limits: vec![limit(
                "l",
                "x",
                9.0,
                Unit::MilligramPerDay,
                Basis::Chronic,
                LimitUse::Screen,
            )],
            substances: [substance("x", false)].into(),
            ..Table::default()
        };
        let cup =
            cup(Form::Infusion, herb(PLANT, Part::Leaf, Portion::dried(Mass::from_g(1.0))), 2);
        serde_json::to_string(&decided(&table, &adult(), &cup)).unwrap()
    };
    assert_eq!(run(), run());
}

#[test]
fn before_the_day_what_is_not_seen_to_is_a_proviso_and_on_the_day_it_withholds() {
    let mut row = part_row(PLANT, Part::Leaf, &[Form::Tea], Harm::None, UsedAs::Food);
    row.stage = Some("dried fully".to_owned());
    let table = Table { parts: vec![row], ..Table::default() };
    let mut cup =
        cup(Form::Infusion, herb(PLANT, Part::Leaf, Portion::dried(Mass::from_g(1.0))), 1);
    cup.herbs[0].determined = Given::Unanswered;
    cup.herbs[0].sorted = Given::Unanswered;
    let person = adult();
    let at =
        |cup: &Cup, tense| decide(&Case { tense, ..case(&table, &person, cup) }, START).unwrap();
    let before = at(&cup, Tense::Before);
    assert_eq!(before.outcome, Outcome::NoReasonFound { servings_a_day: None, days: None });
    assert_eq!(before.provisos.len(), 3);
    assert_eq!(at(&cup, Tense::OnTheDay).outcome, Outcome::Withhold);
    cup.herbs[0].determined = Given::Yes;
    cup.herbs[0].sorted = Given::Yes;
    assert_eq!(at(&cup, Tense::OnTheDay).outcome, Outcome::Withhold);
    cup.herbs[0].stages.insert("dried fully".to_owned(), Given::Yes);
    let settled = at(&cup, Tense::OnTheDay);
    assert_eq!(settled.outcome, before.outcome);
    assert!(settled.provisos.is_empty());
    cup.herbs[0].determined = Given::No;
    assert_eq!(at(&cup, Tense::Before).outcome, Outcome::Withhold);
}

/// The laws above say nothing if every case is withheld to begin with.
#[test]
fn the_cases_that_the_laws_run_on_are_of_every_kind() {
    use proptest::strategy::ValueTree;
    use proptest::test_runner::TestRunner;
    let mut runner = TestRunner::deterministic();
    let mut kinds = std::collections::BTreeMap::new();
    for _ in 0..200 {
        let (table, person, cup) =
            (tables(), people(), cups()).new_tree(&mut runner).unwrap().current();
        *kinds.entry(outcome(&table, &person, &cup, &[]).strictness()).or_insert(0) += 1;
    }
    assert_eq!(kinds.len(), 4, "{kinds:?}");
    assert!(kinds.values().all(|count| *count >= 10), "{kinds:?}");
}
