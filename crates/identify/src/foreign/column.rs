//! Columns of a foreign table, made into characters and cells.

use crate::{
    Cell, Character, Kind, Matrix, Rank, Relatives, RelativesStatement, Sense, Spoils, State,
    Taxon, Tool, Value,
};
use ground::{Fault, Faults, Harm, Organ, Place, SourceId, Standing};
use std::collections::{BTreeMap, BTreeSet};

/// Least and greatest share that a cell of frequencies is taken for.
const KEPT_WITHIN: (f64, f64) = (0.01, 0.99);
/// The states of a character of which a share is given.
const POSITIVE: &str = "+";
const NEGATIVE: &str = "-";
const HARMS: [Harm; 5] = [Harm::None, Harm::Irritant, Harm::Unknown, Harm::Harmful, Harm::Deadly];

/// A cell as it was written.
#[derive(Clone, Debug)]
pub(super) enum Written {
    /// Per cent that show the positive state.
    Percent(f64),
    /// One of these states.
    States(Vec<String>),
    /// Per cent that show each state.
    Shares(BTreeMap<String, f64>),
    /// From so many millimetres to so many.
    Range(f64, f64),
}

/// A taxon as it was written.
#[derive(Debug)]
pub(super) struct Row {
    pub(super) name: String,
    pub(super) harm: Option<String>,
    pub(super) relatives: Option<String>,
    pub(super) cells: Vec<(String, Written)>,
    pub(super) at: Place,
}

impl Written {
    /// A cell of text; nothing where it is unknown.
    pub(super) fn parse(text: &str) -> Option<Self> {
        let text = text.trim();
        if text.is_empty() || text == "?" {
            return None;
        }
        let number = text.strip_suffix('%').unwrap_or(text).trim();
        let states = || text.split('|').map(|state| state.trim().to_owned()).collect();
        Some(number.parse().map_or_else(|_| Self::States(states()), Self::Percent))
    }

    fn states(&self) -> Vec<String> {
        match self {
            Self::Percent(_) => vec![POSITIVE.to_owned(), NEGATIVE.to_owned()],
            Self::States(states) => states.clone(),
            Self::Shares(shares) => shares.keys().cloned().collect(),
            Self::Range(..) => Vec::new(),
        }
    }

    fn value(&self, at: &Place) -> Result<Value, Fault> {
        match self {
            Self::Percent(percent) => {
                let shares = [(POSITIVE, *percent), (NEGATIVE, 100.0 - percent)];
                shares_value(shares.map(|(state, share)| (state.to_owned(), share)), at)
            }
            Self::Shares(shares) => shares_value(shares.clone(), at),
            Self::States(states) => Ok(Value::States {
                always: states.clone(),
                usually: Vec::new(),
                sometimes: Vec::new(),
                rarely: Vec::new(),
            }),
            Self::Range(low, high) => Ok(Value::Range { ordinary: (*low, *high), extreme: None }),
        }
    }
}

/// Shares from per cent, kept within bounds and summing to 1.
fn shares_value(
    percent: impl IntoIterator<Item = (String, f64)>,
    at: &Place,
) -> Result<Value, Fault> {
    let (least, most) = KEPT_WITHIN;
    let mut shares = BTreeMap::new();
    let (mut sum, mut kept) = (0.0, 0.0);
    for (state, percent) in percent {
        if !(0.0..=100.0).contains(&percent) {
            return Err(Fault::new("identify-percent", at.clone(), percent.to_string()));
        }
        let share = (percent / 100.0).clamp(least, most);
        sum += percent;
        kept += share;
        shares.insert(state, share);
    }
    if (sum - 100.0).abs() > 0.5 {
        return Err(Fault::new("identify-percent-sum", at.clone(), sum.to_string()));
    }
    for share in shares.values_mut() {
        *share /= kept;
    }
    Ok(Value::Shares(shares))
}

/// The table of these rows.
pub(super) fn matrix(rows: Vec<Row>) -> Result<Matrix, Faults> {
    let mut faults = Faults::none();
    let mut columns: BTreeMap<String, Column> = BTreeMap::new();
    let (mut taxa, mut cells) = (Vec::new(), Vec::new());
    for row in rows {
        for (character, written) in &row.cells {
            let at = Place { field: Some(character.clone()), ..row.at.clone() };
            let column = columns.entry(character.clone()).or_default();
            faults.note(column.add(written, &at));
            if let Some(value) = faults.note(written.value(&at)) {
                cells.push((row.name.clone(), character.clone(), cell(value)));
            }
        }
        if let Some(taxon) = faults.note_all(taxon(&row)) {
            taxa.push(taxon);
        }
    }
    faults.or(())?;
    let characters = columns.into_iter().map(|(id, column)| character(id, column));
    Matrix::new(characters.collect(), taxa, cells)
}

/// What the cells of one column have said so far.
#[derive(Default)]
struct Column {
    lengths: bool,
    percents: bool,
    states: BTreeSet<String>,
}

impl Column {
    /// Adds a cell, which must be of a kind with those above it: a number among names of states, or
    /// a name among numbers, is a slip.
    fn add(&mut self, written: &Written, at: &Place) -> Result<(), Fault> {
        self.lengths |= matches!(written, Written::Range(..));
        self.percents |= matches!(written, Written::Percent(_));
        self.states.extend(written.states());
        let only_signs =
            self.states.iter().all(|state| [POSITIVE, NEGATIVE].contains(&state.as_str()));
        let mixed = (self.percents && !only_signs) || (self.lengths && !self.states.is_empty());
        let character = at.field.clone().unwrap_or_default();
        if mixed { Err(Fault::new("identify-mixed-column", at.clone(), character)) } else { Ok(()) }
    }
}

fn taxon(row: &Row) -> Result<Taxon, Faults> {
    let mut faults = Faults::none();
    let place = |field: &str| Place { field: Some(field.to_owned()), ..row.at.clone() };
    let harm = row.harm.as_deref().map_or(Ok(Harm::Deadly), |word| {
        let known = |harm: &&Harm| harm.word() == word;
        HARMS
            .iter()
            .find(known)
            .copied()
            .ok_or_else(|| Fault::new("identify-harm", place("harm"), word))
    });
    let relatives = row.relatives.as_deref().map_or(Ok(unknown()), |word| {
        statement(word).ok_or_else(|| Fault::new("identify-relatives", place("relatives"), word))
    });
    let known = faults.note(harm).zip(faults.note(relatives));
    let Some((harm, relatives)) = known else {
        return Err(faults);
    };
    Ok(Taxon {
        name: row.name.clone(),
        harm,
        regions: Vec::new(),
        relatives,
        aggregate: None,
        seasons: BTreeMap::new(),
        look_alikes: Vec::new(),
        must_look: Vec::new(),
    })
}

fn unknown() -> Relatives {
    Relatives { statement: RelativesStatement::UnlistedUnknown, standing: Standing::Assumed }
}

fn statement(word: &str) -> Option<Relatives> {
    let statement = match word {
        "all-listed" => RelativesStatement::AllListed,
        "unlisted-alike" => RelativesStatement::UnlistedAlike,
        "unlisted-unknown" => RelativesStatement::UnlistedUnknown,
        _ => return None,
    };
    Some(Relatives { statement, standing: Standing::Published })
}

fn cell(value: Value) -> Cell {
    Cell {
        value,
        standing: Standing::Published,
        rare_standing: Standing::Published,
        from: Rank::Species,
        sources: vec![SourceId::from("foreign-table")],
    }
}

fn character(id: String, column: Column) -> Character {
    let state = |id| State { id, kind_of: None, taken_for: Vec::new() };
    let states = column.states.into_iter().map(state).collect();
    let kind = if column.lengths { Kind::Length } else { Kind::States(states) };
    Character {
        group: id.clone(),
        id,
        kind,
        organ: Organ::Whole,
        sense: Sense::Sight,
        tool: Tool::None,
        spoils: Spoils::Nothing,
        seconds: 10,
    }
}
