//! A larder and recipes to work with.
#![allow(dead_code, reason = "each test file uses some of it")]
#![expect(clippy::unwrap_used, reason = "a refusal here is the report of the test")]

use ground::{
    AlcoholByVolume, Amount, Duration, Form, Fraction, KitchenMeasure, Mass, MassFraction,
    MeasureSystem, Place, Sourced, Sourcing, Spoken, Standing,
};
use prepare::{
    Class, EvaporationRate, Have, HerbBasis, Holds, KeepingRule, Larder, Recipe, Retention, Shelf,
    SpoonWeight, Stove, When,
};
use std::collections::BTreeMap;

pub(crate) fn practice() -> Sourcing {
    Sourcing::bare(Standing::Practice)
}

pub(crate) fn said(written: &str) -> Spoken {
    written.parse().unwrap()
}

fn retention(ml_per_g: f64, basis: HerbBasis) -> Retention {
    Retention { says: String::new(), keeps: Holds(ml_per_g), basis, from: practice() }
}

fn tincture_rule(id: &str, from: f64, below: f64, class: Class, days: f64) -> KeepingRule {
    KeepingRule {
        id: id.to_owned(),
        forms: vec![Form::Tincture],
        when: When {
            alcohol_from: Some(AlcoholByVolume::from_percent(from)),
            alcohol_below: Some(AlcoholByVolume::from_percent(below)),
            ..When::default()
        },
        class,
        place: Shelf::Cool,
        most: Duration::from_days(days),
        why: "by its final strength".to_owned(),
        from: practice(),
    }
}

pub(crate) fn larder() -> Larder {
    let retentions = [
        ("open-pot", retention(2.0, HerbBasis::Weighed)),
        ("fresh-in-water", retention(0.0, HerbBasis::Weighed)),
        ("pressed", retention(1.0, HerbBasis::Solids)),
        ("by-hand", retention(1.75, HerbBasis::Solids)),
    ];
    let spearmint = SpoonWeight {
        what: "spearmint, dried".to_owned(),
        measure: KitchenMeasure::Teaspoon,
        system: MeasureSystem::UsCustomary,
        weight: Mass::from_g(0.53),
        spread: Sourced::new(MassFraction::from_percent(40.0), practice()),
        from: practice(),
    };
    Larder {
        retentions: retentions.map(|(name, row)| (name.to_owned(), row)).into(),
        spoons: BTreeMap::from([("spearmint-dried".to_owned(), spearmint)]),
        stove: Some(Stove {
            open: Sourced::new(EvaporationRate::from_ml_per_minute(13.1), practice()),
            covered: Sourced::new(Fraction::from_share(0.25), practice()),
        }),
        keeping: vec![
            tincture_rule("weak", 0.0, 20.0, Class::UseAtOnce, 1.0),
            tincture_rule("near", 20.0, 25.0, Class::Borderline, 28.0),
            tincture_rule("strong", 25.0, 101.0, Class::Keeps, 1095.0),
        ],
        notes: Vec::new(),
    }
}

pub(crate) fn recipe(form: Form, serving: &str, steps: &str) -> Recipe {
    let recipe = Recipe {
        id: "test".to_owned(),
        name: "test".to_owned(),
        form,
        serving: said(serving),
        times_a_day: None,
        steps: serde_json::from_str(steps).unwrap(),
        from: practice(),
    };
    recipe.checked().unwrap()
}

pub(crate) fn have() -> Have {
    Have::at(Place::entry("brew", "test", ""))
}

/// The same with herb of this moisture, in per cent.
pub(crate) fn moist(mut have: Have, low: f64, high: f64) -> Have {
    have.herb.moisture_percent = Some(Amount { low, high });
    have
}

pub(crate) fn dry_tincture(holds: &str) -> Recipe {
    recipe(
        Form::Tincture,
        "5 ml",
        &format!(
            r#"[
            {{"add": {{"what": "herb", "state": "dried", "amount": "100 g"}}}},
            {{"add": {{"what": "spirit", "amount": "500 ml", "strength": "60 % vol"}}}},
            {{"steep": {{"time": "6–8 weeks", "lid": "on"}}}},
            {{"press": {{"holds": "{holds}"}}}}
        ]"#
        ),
    )
}

pub(crate) fn fresh_tincture(strength: &str) -> Recipe {
    recipe(
        Form::Tincture,
        "5 ml",
        &format!(
            r#"[
            {{"add": {{"what": "herb", "state": "fresh", "amount": "200 g"}}}},
            {{"add": {{"what": "spirit", "amount": "400 ml", "strength": "{strength}"}}}},
            {{"steep": {{"time": "7–10 d", "lid": "on"}}}},
            {{"press": {{"holds": "pressed"}}}}
        ]"#
        ),
    )
}

/// A decoction, and the syrup of a share of it at a sweetness.
pub(crate) fn decoction(then: &str) -> Recipe {
    recipe(
        if then.is_empty() { Form::Decoction } else { Form::Syrup },
        "10 ml",
        &format!(
            r#"[
            {{"add": {{"what": "herb", "state": "dried", "amount": "40 g"}}}},
            {{"add": {{"what": "water", "amount": "842 ml", "heat": "cold"}}}},
            {{"simmer": {{"time": "20 min", "lid": "off"}}}},
            {{"strain": {{"holds": "open-pot"}}}}{then}
        ]"#
        ),
    )
}

/// Simmered down from three parts to two, as common practice has it.
pub(crate) fn reduced() -> Recipe {
    recipe(
        Form::Decoction,
        "1 cup",
        r#"[
            {"add": {"what": "herb", "state": "dried", "amount": "25 g"}},
            {"add": {"what": "water", "amount": "3 cups", "heat": "cold"}},
            {"reduce": {"to": "2/3"}},
            {"strain": {"holds": "open-pot"}}
        ]"#,
    )
}

/// A tea whose recipe takes herb fresh or dried, by the spoon.
pub(crate) fn tea() -> Recipe {
    recipe(
        Form::Infusion,
        "1 cup",
        r#"[
            {"add": {"what": "herb", "amount": "2 tsp"}},
            {"add": {"what": "water", "amount": "1 cup", "heat": "boiling"}},
            {"steep": {"time": "10 min", "lid": "on"}},
            {"strain": {"holds": "open-pot"}}
        ]"#,
    )
}
