//! What tells two taxa apart.

use crate::judge::Judge;
use crate::states::{normalised, related};
use crate::weighing::visible;
use crate::{Cell, Character, Kind, Level, Sense, Spoils, State, Taxon, Tool, Value, evidence};
use ground::{Fault, Faults, Finite, Month, Organ, Place};
use serde::{Deserialize, Serialize};
use std::cmp::Reverse;

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
    /// The share of plants that it tells apart, from 0 to 1, by what the sheets say: one plant of each
    /// side by side, drawn at random, are told apart where what they show is at least four times
    /// likelier of the two as they are than of the two exchanged. With p(s) and q(t) for the shares of
    /// plants of the one and the other that show s and t, the sum of p(s) q(t) over all s and t with
    /// p(s) q(t) ≥ 4 p(t) q(s); a state and its kind are one.
    pub told: Finite,
    /// Plants told apart in a minute of looking, as the character ranks: `told`, times the share of
    /// readings by anybody that are right, by 60 over the seconds that one takes. Nought where a
    /// statement is only remembered.
    pub in_a_minute: Finite,
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
    /// Months in which the one shows it.
    pub a_months: Vec<Month>,
    /// Months in which the other shows it.
    pub b_months: Vec<Month>,
    /// What reading it takes.
    pub reading: Reading,
}

/// What reading a character takes, and how often it goes wrong.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Reading {
    /// The organ that is looked at.
    pub organ: Organ,
    /// The sense that reads it.
    pub sense: Sense,
    /// What it takes besides eyes and hands.
    pub tool: Tool,
    /// What it does to the plant.
    pub spoils: Spoils,
    /// Seconds that it takes.
    pub seconds: u16,
    /// The share of readings that go wrong, of a leader, of somebody trained, and of anybody.
    pub misread: [Finite; 3],
}

impl Reading {
    pub(crate) fn of(character: &Character) -> Self {
        let misread = |(_, level): (_, Level)| level.misread(character.organ);
        Self {
            organ: character.organ,
            sense: character.sense,
            tool: character.tool,
            spoils: character.spoils,
            seconds: character.seconds,
            misread: Level::NAMED.map(misread).map(|share| Finite::new(share).unwrap_or_default()),
        }
    }
}

impl Judge<'_> {
    /// What tells two taxa apart: published characters first, then by what they tell for the time that
    /// they take.
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
            let key = |c: &Contrast| (!c.published, Reverse(c.in_a_minute), Reverse(c.told));
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
        let shown = [(cell, one), (against, other)]
            .map(|(cell, spectrum)| said(&character.kind, &cell.value, &spectrum.shares));
        let told = told(&character.kind, &shown);
        let published = one.clears && other.clears;
        let months = |taxon| Month::all().filter(|at| visible(taxon, character, *at)).collect();
        let (a_months, b_months): (Vec<Month>, Vec<Month>) = (months(a), months(b));
        Some(Contrast {
            character: character.id.clone(),
            told: Finite::new(told)?,
            in_a_minute: Finite::new(if published { in_a_minute(told, character) } else { 0.0 })?,
            never_alike: never_alike(&character.kind, &cell.value, &against.value),
            published,
            named: names(a, b, character) || names(b, a, character),
            a: cell.clone(),
            b: against.clone(),
            months: a_months.iter().filter(|month| b_months.contains(month)).copied().collect(),
            a_months,
            b_months,
            reading: Reading::of(character),
        })
    }
}

fn in_a_minute(told: f64, character: &Character) -> f64 {
    let right = 1.0 - Level::Public.misread(character.organ);
    60.0 * told * right / f64::from(character.seconds.max(1))
}

/// Whether a sheet names a character as telling its taxon from another.
fn names(sheet: &Taxon, other: &Taxon, character: &Character) -> bool {
    let alike = sheet.look_alikes.iter().filter(|alike| alike.name == other.name);
    alike.flat_map(|alike| &alike.tells).any(|tell| *tell == character.id)
}

/// The shares of plants by what a sheet names alone; of lengths and counts by all that is likely of
/// them.
fn said(kind: &Kind, value: &Value, shares: &[f64]) -> Vec<f64> {
    let Kind::States(states) = kind else { return shares.to_vec() };
    let named = named(value);
    let share = |(state, share): (&State, &f64)| {
        if named.contains(&&state.id) { *share } else { 0.0 }
    };
    normalised(states.iter().zip(shares).map(share).collect())
}

/// The share of plants told apart, one of each side by side: see [`Contrast::told`].
fn told(kind: &Kind, [one, other]: &[Vec<f64>; 2]) -> f64 {
    let (one, other) = match kind {
        Kind::States(states) => {
            let merged = |shares: &[f64]| merged(states, shares, one, other);
            (merged(one), merged(other))
        }
        _ => (one.clone(), other.clone()),
    };
    let shown = |shares: &[f64]| -> Vec<(usize, f64)> {
        shares.iter().copied().enumerate().filter(|(_, share)| *share > 0.0).collect()
    };
    let (here, there) = (shown(&one), shown(&other));
    let at = |shares: &[f64], at: usize| shares.get(at).copied().unwrap_or(0.0);
    let mut told = 0.0;
    for (s, p) in &here {
        let exchanged = at(&other, *s);
        for (t, q) in &there {
            if p * q >= evidence::TELL * at(&one, *t) * exchanged {
                told += p * q;
            }
        }
    }
    told.clamp(0.0, 1.0)
}

/// Shares in which a special state counts as the general one wherever either taxon shows the
/// general one.
fn merged(states: &[State], shares: &[f64], one: &[f64], other: &[f64]) -> Vec<f64> {
    let shows =
        |at: usize| [one, other].iter().any(|shares| shares.get(at).is_some_and(|s| *s > 0.0));
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
#[must_use]
pub fn never_alike(kind: &Kind, a: &Value, b: &Value) -> bool {
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
    use crate::{Matrix, sample};
    use ground::{Season, Standing};
    use proptest::prelude::*;

    fn of_states(states: &[&str]) -> Kind {
        sample::character("c", states).kind
    }

    #[test]
    fn a_state_and_its_kind_do_not_tell_two_plants_apart() {
        let Kind::States(mut states) = of_states(&["netted", "palmate", "parallel"]) else {
            panic!("states");
        };
        states[1].kind_of = Some("netted".to_owned());
        let kind = Kind::States(states);
        let [netted, palmate, parallel] =
            [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]].map(Vec::from);
        assert_eq!(told(&kind, &[netted.clone(), palmate]), 0.0);
        assert_eq!(told(&kind, &[netted, parallel]), 1.0);
        let never = |a, b| never_alike(&kind, &sample::always(a), &sample::always(b));
        assert!(!never("netted", "palmate") && !never("palmate", "netted"));
        assert!(never("netted", "parallel") && never("parallel", "palmate"));
    }

    /// By hand. What one always shows and the other in a tenth of plants is told apart in the nine
    /// other tenths. Of what each shows in nine plants of ten and the other in one, 0.9 × 0.9 pairs
    /// are the right way round, 81 times likelier than exchanged; the pairs that show the same say
    /// nothing. Three to one is 9 times likelier; 3:2 against 2:3 is 2.25 times likelier, too little.
    #[test]
    fn the_share_told_apart_is_what_is_counted_by_hand() {
        let kind = of_states(&["x", "y"]);
        let cases = [
            ([1.0, 0.0], [0.1, 0.9], 0.9),
            ([0.9, 0.1], [0.1, 0.9], 0.81),
            ([0.75, 0.25], [0.25, 0.75], 0.5625),
            ([0.6, 0.4], [0.4, 0.6], 0.0),
            ([0.5, 0.5], [0.5, 0.5], 0.0),
            ([1.0, 0.0], [0.0, 1.0], 1.0),
        ];
        for (one, other, expected) in cases {
            let told = told(&kind, &[one.to_vec(), other.to_vec()]);
            assert!((told - expected).abs() < 1e-12, "{one:?} {other:?}: {told}");
        }
    }

    #[test]
    fn what_a_sheet_does_not_name_nobody_is_said_to_show() {
        let kind = of_states(&["x", "y", "z"]);
        let says = Value::States {
            always: Vec::new(),
            usually: vec!["x".to_owned()],
            sometimes: vec!["y".to_owned()],
            rarely: Vec::new(),
        };
        let shares = said(&kind, &says, &[0.85, 0.12, 0.004]);
        assert!((shares[0] - 0.85 / 0.97).abs() < 1e-12 && shares[2] == 0.0);
    }

    #[test]
    fn lengths_far_apart_tell_nearly_all_plants_and_the_same_length_none() {
        let far = [(10.0, 20.0), (200.0, 400.0)];
        let shares = |range| {
            crate::spectrum::Spectrum::new(
                &Character { kind: Kind::Length, ..sample::character("long", &[]) },
                &sample::cell(Value::Range { ordinary: range, extreme: None }),
            )
            .shares
        };
        let [short, long] = far.map(shares);
        assert!(told(&Kind::Length, &[short.clone(), long]) > 0.95);
        assert_eq!(told(&Kind::Length, &[short.clone(), short]), 0.0);
    }

    proptest! {
        /// It cannot be more than the pairs that differ at all, nor hang on which comes first.
        #[test]
        fn plants_told_apart_differ_and_either_may_come_first(
            one in proptest::collection::vec(0.0..1.0_f64, 4),
            other in proptest::collection::vec(0.0..1.0_f64, 4),
        ) {
            let kind = of_states(&["w", "x", "y", "z"]);
            let [one, other] = [one, other].map(|shares| normalised(shares.iter().map(|s| s + 1e-3).collect()));
            let alike: f64 = one.iter().zip(&other).map(|(p, q)| p * q).sum();
            let here = told(&kind, &[one.clone(), other.clone()]);
            prop_assert!(here <= 1.0 - alike + 1e-12);
            prop_assert!((here - told(&kind, &[other, one.clone()])).abs() < 1e-12);
            prop_assert_eq!(told(&kind, &[one.clone(), one]), 0.0);
        }
    }

    #[test]
    fn a_named_tell_is_marked_and_names_must_be_known() {
        let matrix = sample::matrix();
        let judge = Judge::new(&matrix);
        let told = judge.compare("Colchicum autumnale", "Allium ursinum").unwrap();
        assert_eq!(told.contrasts.len(), 6);
        let plain = |c: &Contrast| c.published && c.never_alike && c.months.len() == 12;
        assert!(told.contrasts.iter().all(|c| plain(c) && c.told.get() == 1.0));
        let named: Vec<_> =
            told.contrasts.iter().filter(|c| c.named).map(|c| c.character.as_str()).collect();
        assert_eq!(named.iter().collect::<std::collections::BTreeSet<_>>().len(), 4);
        assert!(["base", "bulb", "smell", "stem"].iter().all(|tell| named.contains(tell)));
        assert!(judge.compare("Colchicum autumnale", "Crocus").is_err());
    }

    /// By hand: a flower is misread by anybody in 0.21 × 0.8 = 0.168 of readings, a leaf in 0.21 × 1.25
    /// = 0.2625; ten seconds are six looks a minute.
    #[test]
    fn what_is_read_better_or_faster_comes_first_and_what_is_remembered_last() {
        let matrix = sample::matrix();
        let mut characters = matrix.characters().to_vec();
        characters.iter_mut().filter(|c| c.id == "vein").for_each(|c| c.seconds = 5);
        let mut taxa = matrix.taxa().to_vec();
        let months = [4, 6].map(|month| Month::new(month).unwrap());
        taxa[0].seasons.insert(Organ::Flower, Season::new(months[0], months[1]));
        let cells = matrix.cells().map(|(taxon, character, cell)| {
            let mut cell = cell.clone();
            if character.id == "bulb" {
                cell.standing = Standing::Remembered;
            }
            (taxon.name.clone(), character.id.clone(), cell)
        });
        let cells: Vec<_> = cells.collect();
        let matrix = Matrix::new(characters, taxa, cells).unwrap();
        let told = Judge::new(&matrix).compare("Allium ursinum", "Mentha pulegium").unwrap();
        let order: Vec<_> = told.contrasts.iter().map(|c| c.character.as_str()).collect();
        assert_eq!(order, ["vein", "bract", "stem", "base", "smell", "bulb"]);
        let minute: Vec<_> = told.contrasts.iter().map(|c| c.in_a_minute.get()).collect();
        assert!((minute[0] - 12.0 * 0.7375).abs() < 1e-12 && minute[5] == 0.0);
        let bract = &told.contrasts[1];
        assert!((bract.reading.misread[2].get() - 0.168).abs() < 1e-12);
        assert_eq!((bract.a_months.len(), bract.b_months.len(), bract.months.len()), (3, 12, 3));
    }
}
