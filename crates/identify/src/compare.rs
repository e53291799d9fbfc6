//! What tells two taxa apart.

use crate::judge::Judge;
use crate::states::related;
use crate::weighing::visible;
use crate::{Cell, Character, Kind, State, Taxon, Value, evidence};
use ground::{Fault, Faults, Finite, Month, Place};
use serde::{Deserialize, Serialize};

/// Two taxa side by side.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Comparison {
    /// One.
    pub a: String,
    /// The other.
    pub b: String,
    /// The characters of which both sheets say something, the most telling first.
    pub contrasts: Vec<Contrast>,
}

/// One character of two taxa.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Contrast {
    /// The character.
    pub character: String,
    /// How far apart they are: 0 where they show the same, 1 where they share nothing. One less the
    /// overlap of their shares.
    pub apart: Finite,
    /// Whether no plant of one shows what a plant of the other may show, as far as the sheets name
    /// it.
    pub never_alike: bool,
    /// Whether both statements may speak for a plant: published, not remembered.
    pub published: bool,
    /// Whether a sheet names the character as telling the two apart.
    pub named: bool,
    /// What the sheet of the one says.
    pub a: Cell,
    /// What the sheet of the other says.
    pub b: Cell,
    /// Months in which both can be seen.
    pub months: Vec<Month>,
}

impl Judge<'_> {
    /// What tells two taxa apart: published characters first, then by how far apart they are.
    ///
    /// # Errors
    /// Names that are not in the table.
    pub fn compare(&self, a: &str, b: &str) -> Result<Comparison, Faults> {
        let mut faults = Faults::none();
        let mut row = |name: &str| faults.note(self.row("compare", name));
        let rows = row(a).zip(row(b));
        let Some((first, second)) = rows else {
            return Err(faults);
        };
        let columns = 0..self.characters().len();
        let contrasts = columns.filter_map(|column| self.contrast(first, second, column));
        let mut contrasts: Vec<_> = contrasts.collect();
        contrasts.sort_by(|x, y| {
            let key = |c: &Contrast| (!c.published, std::cmp::Reverse(c.apart));
            key(x).cmp(&key(y)).then_with(|| x.character.cmp(&y.character))
        });
        Ok(Comparison { a: a.to_owned(), b: b.to_owned(), contrasts })
    }

    /// The row of a taxon that was named where this says.
    pub(crate) fn row(&self, place: &str, name: &str) -> Result<usize, Fault> {
        let unknown = || Fault::new("identify-unknown-taxon", Place::entry(place, name, ""), name);
        self.matrix().row(name).ok_or_else(unknown)
    }

    fn contrast(&self, first: usize, second: usize, column: usize) -> Option<Contrast> {
        let character = self.character(column)?;
        let (a, b) = (self.taxon(first)?, self.taxon(second)?);
        let (one, other) = (self.shown(first, column)?, self.shown(second, column)?);
        let (cell, against) = (self.matrix().at(first, column)?, self.matrix().at(second, column)?);
        let both = |month: &Month| visible(a, character, *month) && visible(b, character, *month);
        Some(Contrast {
            character: character.id.clone(),
            apart: Finite::new(apart(&character.kind, &one.shares, &other.shares))?,
            never_alike: never_alike(&character.kind, &cell.value, &against.value),
            published: one.clears && other.clears,
            named: names(a, b, character) || names(b, a, character),
            a: cell.clone(),
            b: against.clone(),
            months: Month::all().filter(both).collect(),
        })
    }
}

/// Whether a sheet names a character as telling its taxon from another.
fn names(sheet: &Taxon, other: &Taxon, character: &Character) -> bool {
    let alike = sheet.look_alikes.iter().filter(|alike| alike.name == other.name);
    alike.flat_map(|alike| &alike.tells).any(|tell| *tell == character.id)
}

/// One less the overlap of two lists of shares, a state and its kind being no difference.
fn apart(kind: &Kind, one: &[f64], other: &[f64]) -> f64 {
    let overlap = |one: &[f64], other: &[f64]| one.iter().zip(other).map(|(a, b)| a.min(*b)).sum();
    let overlap: f64 = match kind {
        Kind::States(states) => {
            let merged = |shares: &[f64]| merged(states, shares, one, other);
            overlap(&merged(one), &merged(other))
        }
        _ => overlap(one, other),
    };
    (1.0 - overlap).clamp(0.0, 1.0)
}

/// Shares in which a special state counts as the general one wherever either taxon shows the
/// general one.
fn merged(states: &[State], shares: &[f64], one: &[f64], other: &[f64]) -> Vec<f64> {
    let shows = |at: usize| {
        [one, other].iter().any(|s| s.get(at).is_some_and(|share| *share > 2.0 * evidence::UNSEEN))
    };
    let index = |id: &str| states.iter().position(|state| state.id == id);
    let mut merged = vec![0.0; shares.len()];
    for (at, share) in shares.iter().enumerate() {
        let up = |at: &usize| index(states.get(*at)?.kind_of.as_deref()?);
        let general = std::iter::successors(Some(at), up).filter(|at| shows(*at)).last();
        if let Some(place) = merged.get_mut(general.unwrap_or(at)) {
            *place += share;
        }
    }
    merged
}

/// Whether what two cells name has nothing in common, a state and its kind being no difference.
pub(crate) fn never_alike(kind: &Kind, a: &Value, b: &Value) -> bool {
    match (kind, a, b) {
        (Kind::States(states), a, b) => {
            let shared = |one: &&String| named(b).iter().any(|other| related(states, one, other));
            !named(a).iter().any(shared)
        }
        (
            _,
            Value::Range { ordinary, extreme },
            Value::Range { ordinary: other, extreme: outer },
        ) => {
            let ((least, most), (low, high)) =
                (extreme.unwrap_or(*ordinary), outer.unwrap_or(*other));
            most < low || high < least
        }
        // The table refuses any other pair.
        _ => false,
    }
}

/// Every state that a cell names.
pub(crate) fn named(value: &Value) -> Vec<&String> {
    match value {
        Value::States { always, usually, sometimes, rarely } => {
            [always, usually, sometimes, rarely].into_iter().flatten().collect()
        }
        Value::Shares(shares) => {
            shares.iter().filter(|(_, share)| **share > 0.0).map(|(state, _)| state).collect()
        }
        Value::Range { .. } => Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sample;

    #[test]
    fn a_state_and_its_kind_do_not_tell_two_plants_apart() {
        let Kind::States(mut states) =
            sample::character("vein", &["netted", "palmate", "parallel"]).kind
        else {
            panic!("states");
        };
        states[1].kind_of = Some("netted".to_owned());
        let kind = Kind::States(states);
        assert!(apart(&kind, &[1.0, 0.0, 0.0], &[0.0, 1.0, 0.0]) < 1e-12);
        assert!(apart(&kind, &[1.0, 0.0, 0.0], &[0.0, 0.0, 1.0]) > 0.99);
        let never = |a, b| never_alike(&kind, &sample::always(a), &sample::always(b));
        assert!(!never("netted", "palmate") && !never("palmate", "netted"));
        assert!(never("netted", "parallel") && never("parallel", "palmate"));
    }

    #[test]
    fn a_named_tell_is_marked_and_names_must_be_known() {
        let matrix = sample::matrix();
        let judge = Judge::new(&matrix);
        let told = judge.compare("Colchicum autumnale", "Allium ursinum").unwrap();
        assert_eq!(told.contrasts.len(), 6);
        assert!(
            told.contrasts.iter().all(|c| c.published && c.never_alike && c.months.len() == 12)
        );
        let named: Vec<_> =
            told.contrasts.iter().filter(|c| c.named).map(|c| &c.character).collect();
        assert_eq!(named, ["base", "bulb", "smell", "stem"]);
        assert!(judge.compare("Colchicum autumnale", "Crocus").is_err());
    }
}
