//! What a table must hold before anything is judged by it.

use crate::{Character, Kind, State, Taxon, Value};
use ground::{Fault, Faults, Place};
use std::collections::BTreeSet;

/// Shares of a cell must sum to 1 within this; they are read from decimal text and added up, which
/// costs a few units in the sixteenth place.
const SHARES_SUM: f64 = 1e-9;

/// Characters sorted by name: names given once, states that refer to one another.
pub(crate) fn characters(characters: &[Character], faults: &mut Faults) {
    names("character", characters.iter().map(|character| character.id.as_str()), faults);
    for character in characters {
        if let Kind::States(states) = &character.kind {
            let at = Place::entry("character", &character.id, "states");
            all_states(states, &at, faults);
        }
    }
}

/// Taxa sorted by name: names given once, and none but known characters to look at.
pub(crate) fn taxa(taxa: &[Taxon], characters: &[Character], faults: &mut Faults) {
    names("taxon", taxa.iter().map(|taxon| taxon.name.as_str()), faults);
    let known: BTreeSet<_> = characters.iter().map(|character| character.id.as_str()).collect();
    for taxon in taxa {
        let tells = taxon.look_alikes.iter().flat_map(|alike| &alike.tells);
        for (field, character) in
            taxon.must_look.iter().map(|c| ("must_look", c)).chain(tells.map(|c| ("tells", c)))
        {
            if !known.contains(character.as_str()) {
                let at = Place::entry("taxon", &taxon.name, field);
                faults.add(Fault::new("identify-unknown-character", at, character));
            }
        }
        if taxon.look_alikes.iter().any(|alike| alike.name == taxon.name) {
            let at = Place::entry("taxon", &taxon.name, "look_alikes");
            faults.add(Fault::new("identify-its-own-look-alike", at, &taxon.name));
        }
    }
}

/// A cell: says something that its character can have.
pub(crate) fn cell(character: &Character, value: &Value, at: &Place) -> Result<(), Fault> {
    match (&character.kind, value) {
        (Kind::States(known), Value::States { always, usually, sometimes, rarely }) => {
            let named = [always, usually, sometimes, rarely].into_iter().flatten();
            states_of_cell(known, named, at)
        }
        (Kind::States(known), Value::Shares(shares)) => {
            states_of_cell(known, shares.keys(), at)?;
            sums_to_one(shares.values(), at)
        }
        (Kind::Length | Kind::Count, Value::Range { ordinary, extreme }) => {
            range(*ordinary, extreme.unwrap_or(*ordinary), at)
        }
        _ => Err(Fault::new("identify-cell-kind", at.clone(), &character.id)),
    }
}

fn names<'a>(table: &str, sorted: impl Iterator<Item = &'a str>, faults: &mut Faults) {
    let mut before = None;
    for name in sorted {
        let at = Place::entry(table, name, "");
        if name.trim().is_empty() {
            faults.add(Fault::new("identify-no-name", at, name));
        } else if before == Some(name) {
            faults.add(Fault::new("identify-name-twice", at, name));
        }
        before = Some(name);
    }
}

fn all_states(states: &[State], at: &Place, faults: &mut Faults) {
    if states.is_empty() {
        faults.add(Fault::new("identify-no-states", at.clone(), ""));
    }
    let mut known = BTreeSet::new();
    for state in states {
        if !known.insert(state.id.as_str()) {
            faults.add(Fault::new("identify-state-twice", at.clone(), &state.id));
        }
    }
    for state in states {
        for other in state.kind_of.iter().chain(&state.taken_for) {
            if !known.contains(other.as_str()) || *other == state.id {
                faults.add(unknown_state(other, states, at));
            }
        }
        if kind_goes_round(state, states) {
            faults.add(Fault::new("identify-kind-of-itself", at.clone(), &state.id));
        }
    }
}

/// Whether following *kind of* from a state never ends.
fn kind_goes_round(state: &State, states: &[State]) -> bool {
    let kind = |of: &State| states.iter().find(|other| Some(&other.id) == of.kind_of.as_ref());
    std::iter::successors(Some(state), |at| kind(at)).nth(states.len()).is_some()
}

fn states_of_cell<'a>(
    known: &[State],
    named: impl Iterator<Item = &'a String>,
    at: &Place,
) -> Result<(), Fault> {
    let mut seen = BTreeSet::new();
    for state in named {
        if !known.iter().any(|other| other.id == *state) {
            return Err(unknown_state(state, known, at));
        }
        if !seen.insert(state) {
            return Err(Fault::new("identify-state-twice", at.clone(), state));
        }
    }
    if seen.is_empty() {
        return Err(Fault::new("identify-cell-empty", at.clone(), ""));
    }
    Ok(())
}

fn unknown_state(state: &str, known: &[State], at: &Place) -> Fault {
    let known: Vec<_> = known.iter().map(|state| state.id.as_str().into()).collect();
    Fault::new("identify-unknown-state", at.clone(), state).with("known", known)
}

fn sums_to_one<'a>(shares: impl Iterator<Item = &'a f64>, at: &Place) -> Result<(), Fault> {
    let mut sum = 0.0;
    for share in shares {
        if !(0.0..=1.0).contains(share) {
            return Err(Fault::new("identify-share", at.clone(), share.to_string()));
        }
        sum += share;
    }
    if (sum - 1.0).abs() > SHARES_SUM {
        return Err(Fault::new("identify-shares-sum", at.clone(), sum.to_string()));
    }
    Ok(())
}

fn range(ordinary: (f64, f64), extreme: (f64, f64), at: &Place) -> Result<(), Fault> {
    let ((low, high), (least, most)) = (ordinary, extreme);
    let ordered = 0.0 <= least && least <= low && low <= high && high <= most && most.is_finite();
    let written = format!("{low} to {high}, at the outside {least} to {most}");
    if ordered { Ok(()) } else { Err(Fault::new("identify-range", at.clone(), written)) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sample;
    use std::collections::BTreeMap;

    fn code(value: Value, kind: Kind) -> Option<String> {
        let character = Character { kind, ..sample::character("leaf_base", &[]) };
        cell(&character, &value, &Place::default()).err().map(|fault| fault.code)
    }

    fn two() -> Kind {
        sample::character("leaf_base", &["sessile", "petiolate"]).kind
    }

    #[test]
    fn a_cell_says_what_its_character_can_have() {
        let good = sample::always("sessile");
        assert_eq!(code(good.clone(), two()), None);
        assert_eq!(code(good, Kind::Length).as_deref(), Some("identify-cell-kind"));
        let odd = sample::always("winged");
        assert_eq!(code(odd, two()).as_deref(), Some("identify-unknown-state"));
    }

    #[test]
    fn shares_lie_between_none_and_all_and_sum_to_one() {
        let shares = |a: f64, b: f64| {
            let shares = [("sessile".to_owned(), a), ("petiolate".to_owned(), b)];
            Value::Shares(BTreeMap::from(shares))
        };
        assert_eq!(code(shares(0.3, 0.7), two()), None);
        assert_eq!(code(shares(0.3, 0.6), two()).as_deref(), Some("identify-shares-sum"));
        assert_eq!(code(shares(-0.3, 1.3), two()).as_deref(), Some("identify-share"));
        assert_eq!(code(shares(f64::NAN, 1.0), two()).as_deref(), Some("identify-share"));
    }

    #[test]
    fn a_range_lies_within_its_outer_limits() {
        let range = |ordinary, extreme| Value::Range { ordinary, extreme };
        assert_eq!(code(range((2.0, 3.0), Some((1.0, 3.0))), Kind::Length), None);
        for odd in [
            range((3.0, 2.0), None),
            range((2.0, 3.0), Some((2.5, 4.0))),
            range((-1.0, 3.0), None),
            range((f64::NAN, 3.0), None),
            range((1.0, f64::INFINITY), None),
        ] {
            assert_eq!(code(odd, Kind::Length).as_deref(), Some("identify-range"));
        }
    }

    #[test]
    fn states_that_are_kinds_of_each_other_are_a_fault() {
        let mut character = sample::character("venation", &["netted", "palmate"]);
        if let Kind::States(states) = &mut character.kind {
            states[0].kind_of = Some("palmate".to_owned());
            states[1].kind_of = Some("netted".to_owned());
        }
        let mut faults = Faults::none();
        characters(&[character], &mut faults);
        assert!(faults.iter().all(|fault| fault.code == "identify-kind-of-itself"));
        assert!(!faults.is_empty());
    }
}
