//! What a herbal lacks: missing, remembered, contradictory, unjoined.
//!
//! None of this is a fault: a herbal with findings can be used, since what is missing or remembered
//! clears nothing. The report says where work is worth most.

mod glossary;
mod mix_ups;
mod pairs;
mod sheets;
mod uses;

use crate::{Account, Flora, Herbal};
use ground::{Place, Standing, Text};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// What a check of a herbal found.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Report {
    /// How many species have a sheet.
    pub species: usize,
    /// How many facts of each standing each folder holds.
    pub facts: BTreeMap<String, BTreeMap<Standing, usize>>,
    /// How far each character is filled, by name.
    pub columns: BTreeMap<String, Column>,
    /// What was found, by kind and place.
    pub findings: Vec<Finding>,
}

/// How far a character is filled: what blocks a determination is mostly a plant of which nothing is
/// said where others were looked at.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Column {
    /// Species of which something is said, on their own sheet or by their genus or family.
    pub filled: usize,
    /// Those of them whose main statement may settle something.
    pub settling: usize,
}

/// One thing that a herbal lacks.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Finding {
    /// What kind of lack it is.
    pub lack: Lack,
    /// Where it stands.
    pub at: Place,
    /// What it is.
    pub text: Text,
}

/// Kinds of lack, the gravest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Lack {
    /// Two rows do not go together.
    Contradictory,
    /// Something that judging needs is not there.
    Missing,
    /// A row speaks of something that has no row.
    Unjoined,
    /// A fact rests on memory: it may stop, and clears nothing.
    Remembered,
    /// A row that nothing speaks of.
    Unused,
}

/// Everything that a herbal lacks.
#[must_use]
pub fn check(herbal: &Herbal, account: &Account) -> Report {
    let mut notes = Notes { account, findings: Vec::new() };
    sheets::check(&herbal.flora, &mut notes);
    pairs::check(&herbal.flora, &mut notes);
    mix_ups::check(&herbal.flora, &mut notes);
    glossary::check(&herbal.flora, &mut notes);
    uses::check(herbal, &mut notes);
    unused_sources(herbal, &mut notes);
    notes.findings.sort();
    Report {
        species: herbal.flora.sheets().count(),
        facts: account.facts.clone(),
        columns: columns(&herbal.flora),
        findings: notes.findings,
    }
}

fn columns(flora: &Flora) -> BTreeMap<String, Column> {
    let terms = flora.glossary.terms();
    let empty = terms.map(|term| (term.character.id.clone(), Column::default()));
    let mut columns: BTreeMap<_, _> = empty.collect();
    for (_, character, cell) in flora.cells() {
        let column = columns.entry(character.to_owned()).or_default();
        column.filled += 1;
        column.settling += usize::from(cell.standing.may_clear());
    }
    columns
}

fn unused_sources(herbal: &Herbal, notes: &mut Notes<'_>) {
    let unused = |id: &&ground::SourceId| !notes.account.used.contains(*id);
    let unused: Vec<_> = herbal.sources.keys().filter(unused).collect();
    for id in unused {
        let text = Text::new("herbal-source-unused").with("source", id.0.as_str());
        notes.add(Lack::Unused, ("source", &id.0, ""), text);
    }
}

/// The findings so far, and where rows stand.
pub(crate) struct Notes<'a> {
    account: &'a Account,
    findings: Vec<Finding>,
}

impl Notes<'_> {
    /// Notes a finding about a row, named by table, entry and field.
    pub(crate) fn add(
        &mut self,
        lack: Lack,
        (table, entry, field): (&str, &str, &str),
        text: Text,
    ) {
        let at = self.account.places.at(table, entry, field);
        self.findings.push(Finding { lack, at, text });
    }
}
