//! Small tables for published examples.
#![allow(dead_code, unreachable_pub, reason = "each test file uses some of it")]
#![allow(clippy::unwrap_used, clippy::panic, reason = "a panic is how a test reports")]

use dose::{
    Action, AgeBand, Basis, Case, Caution, Content, ContentBasis, ContentKind, Cup, Decision,
    Exposure, Given, Herb, Level, Limit, LimitUse, PartRow, Person, Portion, Posology, Route,
    Substance, SubstanceId, Table, Tense, Transfer, UsedAs, Window, decide, exposure,
};
use ground::{
    Answer, Condition, Dist, Finite, Form, Harm, Mass, Part, RandomStart, Sourcing, Standing, Unit,
    Volume,
};
use std::collections::BTreeMap;

pub fn finite(value: f64) -> Finite {
    Finite::new(value).unwrap()
}

pub fn read_in(source: &str) -> Sourcing {
    Sourcing::published([source])
}

pub fn remembered() -> Sourcing {
    Sourcing::bare(Standing::Remembered)
}

pub fn substance(id: &str, no_safe_level: bool) -> (SubstanceId, Substance) {
    let row = Substance {
        id: id.into(),
        name: id.to_owned(),
        no_safe_level,
        counts_as: Vec::new(),
        from: read_in("test"),
    };
    (row.id.clone(), row)
}

pub fn part_row(taxon: &str, part: Part, forms: &[Form], harm: Harm, used_as: UsedAs) -> PartRow {
    PartRow {
        taxon: taxon.to_owned(),
        part,
        stage: None,
        harm,
        route: forms.first().map_or(Route::Mouth, |form| Route::of(*form)),
        forms: forms.to_vec(),
        used_as,
        caution_parts: Vec::new(),
        contact: None,
        note: None,
        from: read_in("test"),
    }
}

pub fn caution(taxon: &str, part: Part, form: Form, who: Condition, action: Action) -> Caution {
    Caution {
        id: format!("{taxon}-{part}-{form}-{who}"),
        taxon: taxon.to_owned(),
        parts: vec![part],
        forms: vec![form],
        who,
        action,
        when: None,
        uses: Vec::new(),
        spares_food: false,
        limit: None,
        names: Vec::new(),
        days: None,
        wording: "said".to_owned(),
        note: None,
        from: read_in("test"),
    }
}

pub fn posology(taxon: &str, part: Part, form: Form, day_max_g: f64, age_from: u8) -> Posology {
    Posology {
        id: format!("{taxon}-{part}-{form}"),
        taxon: taxon.to_owned(),
        parts: vec![part],
        forms: vec![form],
        grams: (finite(1.0), finite(2.0)),
        cup_ml: None,
        times: (1, 3),
        day_max_g: Some(finite(day_max_g)),
        max_days: None,
        age_from,
        note: None,
        from: read_in("test"),
    }
}

pub fn content(taxon: &str, part: Part, of: &str, basis: ContentBasis, amount: Dist) -> Content {
    Content {
        id: format!("{taxon}-{part}-{of}"),
        taxon: taxon.to_owned(),
        parts: vec![part],
        forms: Vec::new(),
        substance: of.into(),
        kind: ContentKind::Plant,
        basis,
        amount: Some(amount),
        only_high: false,
        averages: false,
        water: None,
        ethanol: None,
        note: None,
        from: read_in("test"),
    }
}

pub fn measured(share: Dist) -> Option<Transfer> {
    Some(Transfer { share, measured: true })
}

pub fn assumed(share: Dist) -> Option<Transfer> {
    Some(Transfer { share, measured: false })
}

pub fn limit(id: &str, of: &str, value: f64, unit: Unit, basis: Basis, used: LimitUse) -> Limit {
    Limit {
        id: id.to_owned(),
        substance: of.into(),
        level: Some(Level { value: finite(value), unit }),
        window: Window::Day,
        basis,
        used,
        from_age: None,
        to_age: None,
        who: Vec::new(),
        except: Vec::new(),
        forms: Vec::new(),
        max_days: None,
        population: "general".to_owned(),
        date: "2012".to_owned(),
        note: None,
        from: read_in("test"),
    }
}

/// A person of this age and mass who said no to everything.
pub fn person(age: AgeBand, kg: f64) -> Person {
    Person {
        id: "A".to_owned(),
        age: Some(age),
        body_mass: Some(Mass::from_kg(kg)),
        said: Condition::ALL.iter().map(|condition| (*condition, Given::No)).collect(),
    }
}

pub fn adult() -> Person {
    person(AgeBand::Adult, 70.0)
}

pub fn saying(mut person: Person, condition: Condition, given: Given) -> Person {
    person.said.insert(condition, given);
    person
}

pub fn herb(taxon: &str, part: Part, portion: Portion) -> Herb {
    Herb {
        taxon: taxon.to_owned(),
        part,
        lot: format!("lot of {taxon}"),
        portion,
        moisture: None,
        moisture_supposed: false,
        determined: Given::Yes,
        sorted: Given::Yes,
        stages: BTreeMap::new(),
        planned_stage: None,
    }
}

pub fn cup(form: Form, herb: Herb, servings_a_day: u32) -> Cup {
    Cup {
        batch: "pot".to_owned(),
        cook: "B".to_owned(),
        form,
        herbs: vec![herb],
        holds: BTreeMap::new(),
        volume: Some(Volume::from_ml(150.0)),
        mass: None,
        servings_a_day,
        days: 1,
        days_before: 0,
    }
}

pub fn case<'a>(table: &'a Table, person: &'a Person, cup: &'a Cup) -> Case<'a> {
    Case { table, person, cup, beside: &[], tense: Tense::OnTheDay, sold: false }
}

pub const START: RandomStart = RandomStart(20_260_411);

pub fn decided(table: &Table, person: &Person, cup: &Cup) -> Decision {
    decide(&case(table, person, cup), START).unwrap()
}

pub fn exposed(table: &Table, person: &Person, cup: &Cup, of: &str) -> Exposure {
    match exposure(&case(table, person, cup), &of.into(), START).unwrap() {
        Answer::Known(exposure) => exposure,
        Answer::Refused(refusal) => panic!("{refusal:?}"),
    }
}

/// Whether two numbers agree within a share of the second.
pub fn near(got: f64, want: f64, share: f64) -> bool {
    (got - want).abs() <= share * want.abs()
}
