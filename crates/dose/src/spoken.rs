//! What the published rows say of a cup to whoever reads them. It speaks of plants and of groups of
//! people, and of nobody who comes: it can stand on a label.

use crate::caution::{Reach, Reached, holds, speaks};
use crate::decide::{Case, Findings, Tense};
use crate::{Action, Caution, Cup, Herb, Person, Posology, Table, part};
use ground::{Condition, Sourcing};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// One caution, as it is said to everybody.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Spoken {
    /// What it asks for.
    pub action: Action,
    /// Of whom.
    pub who: Who,
    /// For how many days at a time.
    pub days: Option<u32>,
    /// What it says; nothing where an age says it all.
    pub wording: String,
    /// Where it comes from.
    pub from: Sourcing,
}

/// Of whom a caution speaks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Who {
    /// A group of people, or everybody.
    Group(Condition),
    /// Whoever is younger than this, in years.
    Under(u8),
}

/// The cautions and usual amounts that join a cup, the strictest first. A row that holds only of
/// material in some state counts on the day unless somebody denied it, as it does in a decision.
#[must_use]
pub fn spoken(table: &Table, cup: &Cup, tense: Tense) -> Vec<Spoken> {
    let person = Person::default();
    let case = Case { table, person: &person, cup, beside: &[], tense, sold: false };
    let all: BTreeSet<Spoken> = cup.herbs.iter().flat_map(|herb| of_herb(&case, herb)).collect();
    all.into_iter().collect()
}

fn of_herb(case: &Case<'_>, herb: &Herb) -> Vec<Spoken> {
    // What a decision would note on the way is not asked for here.
    let mut aside = Findings::default();
    let says = part::weigh(case, herb, &mut aside);
    let table = case.table;
    let reached = Reached::of(case, case.cup, herb);
    let cautions = table.cautions.iter().filter(|row| {
        row.action != Action::NoneFound
            && reached.tie(Reach::of_caution(row)).is_some()
            && speaks(case.cup, row, &says)
            && holds(case, herb, row, &mut aside)
    });
    let amounts = table.posology.iter();
    let amounts = amounts.filter(|row| reached.tie(Reach::of_amount(row)).is_some());
    cautions.map(caution).chain(amounts.map(amount)).collect()
}

fn caution(row: &Caution) -> Spoken {
    Spoken {
        action: row.action,
        who: Who::Group(row.who),
        days: row.days,
        wording: row.wording.clone(),
        from: row.from.clone(),
    }
}

/// There is no data under the age of a usual amount.
fn amount(row: &Posology) -> Spoken {
    Spoken {
        action: Action::Exclude,
        who: Who::Under(row.age_from),
        days: row.max_days,
        wording: String::new(),
        from: row.from.clone(),
    }
}
