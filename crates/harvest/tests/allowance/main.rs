//! How much may be taken: examples, and laws that hold for every wish.

#![expect(clippy::unwrap_used, reason = "a test reports by panicking, in its helpers too")]

mod examples;
mod laws;

use ground::{Fraction, Fresh, Length, LifeForm, Mass, Month, Part, Season, Sourcing, Standing};
use harvest::*;
use jiff::civil::{Date, date};
use std::collections::BTreeMap;

pub(crate) const DAY: Date = date(2027, 5, 8);

pub(crate) fn grams(g: f64) -> Quantity {
    Quantity::Mass(Mass::<Fresh>::from_g(g))
}

pub(crate) fn season(first: u8, last: u8) -> Season {
    Season::new(Month::new(first).unwrap(), Month::new(last).unwrap())
}

/// Ten plots of fifty, in grams: at least 699 g stand there.
pub(crate) fn survey(plots: &[f64]) -> Survey {
    Survey::new(SurveyNotes {
        on: date(2027, 5, 1),
        stand: "bank".to_owned(),
        part: Part::Leaf,
        plots_in_stand: 50,
        plots: Plots::Weights(plots.iter().copied().map(Mass::from_g).collect()),
        piece_weights: vec![],
    })
    .unwrap()
}

pub(crate) const PLOTS: [f64; 10] = [26., 18., 14., 25., 10., 20., 15., 42., 25., 8.];

pub(crate) fn take(on: Date, g: f64) -> Taken {
    Taken {
        on,
        site: "wood".to_owned(),
        stand: "bank".to_owned(),
        taxon: "Urtica dioica".to_owned(),
        part: Part::Leaf,
        amount: grams(g),
    }
}

/// A wish that nothing stands in the way of.
pub(crate) fn asked() -> Asked {
    let hazards = [
        ("busy-road", Nearness::At(Length::from_m(120.0))),
        ("old-works", Nearness::NotThere),
        ("grazing", Nearness::NotThere),
    ];
    Asked {
        on: DAY,
        taxon: "Urtica dioica".to_owned(),
        part: Part::Leaf,
        measure: Measure::Mass,
        life_form: Some(LifeForm::Perennial),
        season: Some(season(3, 9)),
        protected: None,
        purpose: Some(Purpose::PaidLesson),
        site: Site {
            name: "wood".to_owned(),
            landholder: Some("Ann Hill".to_owned()),
            land: Some("private".to_owned()),
            jurisdiction: Some("scotland".to_owned()),
            consents: vec![],
        },
        stand: Stand {
            name: "bank".to_owned(),
            hazards: hazards.map(|(id, near)| (id.to_owned(), near)).into(),
            in_water: Some(false),
        },
        leave: Some(Leave::Given(Permission {
            from: "Ann Hill".to_owned(),
            given: date(2027, 1, 1),
            until: date(2027, 12, 31),
            purposes: vec![Purpose::PaidLesson],
            taxa: vec!["Urtica dioica".to_owned()],
            parts: vec![Part::Herb],
            at_most: None,
        })),
        survey: Some(survey(&PLOTS)),
        history: Some(History { since: date(2020, 1, 1), takes: vec![] }),
    }
}

fn rule(id: &str, scope: Scope, share: f64, every_years: u16) -> TakeRule {
    TakeRule {
        id: id.to_owned(),
        scope,
        share: Fraction::from_share(share),
        every_years,
        says: id.to_owned(),
        from: Sourcing::bare(Standing::Policy),
    }
}

pub(crate) fn law(id: &str, scope: Scope, effect: Effect) -> LandRule {
    LandRule {
        id: id.to_owned(),
        scope,
        effect,
        says: id.to_owned(),
        from: Sourcing::published(["statute"]),
        seen: Some("2026-11".to_owned()),
    }
}

pub(crate) fn ceiling(share: f64, every_years: u16) -> TakeRule {
    rule("ceiling", Scope::default(), share, every_years)
}

fn hazard(id: &str, reach: Reach, water_only: bool) -> Hazard {
    Hazard {
        id: id.to_owned(),
        name: id.to_owned(),
        reach,
        water_only,
        why: "metals".to_owned(),
        from: Sourcing::published(["paper"]),
        narrowed: None,
    }
}

pub(crate) fn rules() -> Rules {
    let within = |place: &str| Scope { jurisdictions: vec![place.to_owned()], ..Scope::default() };
    let leaf = Scope {
        parts: vec![Part::Leaf],
        life_forms: vec![LifeForm::Perennial],
        ..Scope::default()
    };
    let roots = Scope { parts: vec![Part::Underground], ..within("great-britain") };
    let road = Reach::Distance { keep: Length::from_m(50.0), never: Length::from_m(25.0) };
    let places = [("great-britain", None), ("scotland", Some("great-britain"))];
    Rules {
        shares: vec![rule("leaf-perennial", leaf, 0.2, 1)],
        ceilings: vec![],
        laws: vec![
            law("uprooting", roots, Effect::AskOwner),
            law("guided", within("scotland"), Effect::PublicRight),
        ],
        hazards: vec![
            hazard("busy-road", road, false),
            hazard("old-works", Reach::Anywhere, false),
            hazard("grazing", Reach::Anywhere, true),
        ],
        cares: vec![],
        jurisdictions: places
            .map(|(id, within)| {
                let within = within.map(str::to_owned);
                (id.to_owned(), Jurisdiction { name: id.to_owned(), within })
            })
            .into(),
        lands: BTreeMap::from([("private".to_owned(), "farmland".to_owned())]),
    }
}

/// The amount, a refusal counting as none.
pub(crate) fn amount(asked: &Asked, rules: &Rules) -> f64 {
    allow(asked, rules).amount.known().map_or(0.0, |amount| amount.number())
}
