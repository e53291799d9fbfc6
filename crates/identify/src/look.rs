//! Looks: what was seen, by whom and when.

use crate::{Character, Kind, Matrix, State, evidence};
use ground::{Fault, Finite, Organ, Place};
use jiff::civil::DateTime;
use serde::{Deserialize, Serialize};

/// The longest that any part of a plant is, in millimetres: no tree grows beyond 130 m.
///
/// Koch et al. 2004, Nature 428:851.
pub const LONGEST_MM: f64 = 130_000.0;

/// One character seen, smelt, felt or measured on one plant in hand.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Look {
    /// The character, by name.
    pub character: String,
    /// What was found.
    pub seen: Seen,
    /// Who looked.
    pub reader: Reader,
    /// When; the looks of one day are a session.
    pub time: DateTime,
    /// The plant in hand, as the day's records call it.
    pub specimen: String,
    /// Whether the candidates were hidden from the reader.
    pub blind: bool,
}

/// What was found.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Seen {
    /// This state.
    State(String),
    /// One of these; which one cannot be told.
    OneOf(Vec<String>),
    /// A length that lies between these, in millimetres; both the same for a single reading.
    Measured {
        /// Lower end.
        low: Finite,
        /// Upper end.
        high: Finite,
    },
    /// So many.
    Counted(u32),
    /// The organ is not there to be looked at.
    NotThere,
    /// It cannot be told.
    CannotTell,
}

impl Seen {
    /// Whether anything was found that can speak for or against a plant.
    #[must_use]
    pub fn says_something(&self) -> bool {
        !matches!(self, Self::NotThere | Self::CannotTell)
    }

    /// The states named.
    #[must_use]
    pub fn states(&self) -> &[String] {
        match self {
            Self::State(state) => std::slice::from_ref(state),
            Self::OneOf(states) => states,
            _ => &[],
        }
    }
}

/// Somebody who looks.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Reader {
    /// The name by which the day's records know them.
    pub name: String,
    /// How well they read.
    pub level: Level,
}

/// How well somebody reads characters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Level {
    /// A leader of outings.
    Leader,
    /// Somebody who was shown the characters.
    Trained,
    /// Anybody else.
    Public,
    /// Somebody of whom it is known how often they read wrongly: this share of characters.
    Misreads(Finite),
}

impl Level {
    /// The levels that have a word, as files and commands write it.
    pub const NAMED: [(&str, Self); 3] =
        [("leader", Self::Leader), ("trained", Self::Trained), ("public", Self::Public)];

    /// The level of this word.
    #[must_use]
    pub fn of(word: &str) -> Option<Self> {
        Self::NAMED.iter().find(|(name, _)| *name == word).map(|(_, level)| *level)
    }

    /// The share of characters of an organ that are read wrongly, from 0 to ½.
    #[must_use]
    pub fn misread(self, organ: Organ) -> f64 {
        let share = match self {
            Self::Leader => evidence::LEADER,
            Self::Trained => evidence::TRAINED,
            Self::Public => evidence::PUBLIC,
            Self::Misreads(share) => share.get(),
        };
        (share * evidence::organ_factor(organ)).clamp(0.0, evidence::MOST_MISREAD)
    }
}

/// Several coarse characters taken in at once: habit, leaf form, arrangement, veins.
///
/// A glance is worth as much as the looks it is made of, and takes the time of one.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Glance {
    /// What was found, by character.
    pub seen: std::collections::BTreeMap<String, Seen>,
    /// Who looked.
    pub reader: Reader,
    /// When.
    pub time: DateTime,
    /// The plant in hand.
    pub specimen: String,
    /// Whether the candidates were hidden from the reader.
    pub blind: bool,
}

impl Glance {
    /// The looks it is made of.
    #[must_use]
    pub fn looks(&self) -> Vec<Look> {
        let look = |(character, seen): (&String, &Seen)| Look {
            character: character.clone(),
            seen: seen.clone(),
            reader: self.reader.clone(),
            time: self.time,
            specimen: self.specimen.clone(),
            blind: self.blind,
        };
        self.seen.iter().map(look).collect()
    }
}

/// Checks a look against the table; gives the number of its character's column.
pub(crate) fn column(matrix: &Matrix, look: &Look) -> Result<usize, Fault> {
    let at = Place::entry("look", &look.specimen, &look.character);
    if look.reader.name.trim().is_empty() {
        return Err(Fault::new("identify-no-reader", at, &look.reader.name));
    }
    let column = matrix.column(&look.character);
    let known = column.and_then(|column| matrix.characters().get(column).zip(Some(column)));
    let Some((character, column)) = known else {
        return Err(Fault::new("identify-unknown-character", at, &look.character));
    };
    fits(character, &look.seen, at)?;
    Ok(column)
}

fn fits(character: &Character, seen: &Seen, at: Place) -> Result<(), Fault> {
    match (&character.kind, seen) {
        (_, Seen::NotThere | Seen::CannotTell) => Ok(()),
        (Kind::States(known), Seen::State(_) | Seen::OneOf(_)) => known_states(known, seen, at),
        (Kind::Length, Seen::Measured { low, high }) => {
            let ordered = Finite::ZERO < *low && low <= high;
            let can_be = ordered && high.get() <= LONGEST_MM;
            let written = format!("{low} to {high}");
            if can_be { Ok(()) } else { Err(Fault::new("identify-measured", at, written)) }
        }
        (Kind::Count, Seen::Counted(_)) => Ok(()),
        _ => Err(Fault::new("identify-look-kind", at, &character.id)),
    }
}

fn known_states(known: &[State], seen: &Seen, at: Place) -> Result<(), Fault> {
    if seen.states().is_empty() {
        return Err(Fault::new("identify-no-state-named", at, ""));
    }
    let unknown = seen.states().iter().find(|state| !known.iter().any(|k| k.id == **state));
    let Some(state) = unknown else {
        return Ok(());
    };
    let known: Vec<_> = known.iter().map(|state| state.id.as_str().into()).collect();
    Err(Fault::new("identify-unknown-state", at, state).with("known", known))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sample;

    #[test]
    fn leaves_are_read_worse_than_flowers_and_nobody_worse_than_a_coin() {
        assert_eq!(Level::Leader.misread(Organ::Stem), 0.04);
        assert_eq!(Level::Leader.misread(Organ::Leaf), 0.05);
        assert!(Level::Public.misread(Organ::Flower) < Level::Public.misread(Organ::Leaf));
        let wild = Level::Misreads(Finite::new(7.0).unwrap());
        assert_eq!(wild.misread(Organ::Leaf), 0.5);
    }

    #[test]
    fn a_look_must_fit_its_character() {
        let matrix = sample::matrix();
        let code = |character: &str, seen| {
            column(&matrix, &sample::look(character, seen)).err().map(|fault| fault.code)
        };
        assert_eq!(code("smell", Seen::State("one".to_owned())), None);
        assert_eq!(code("smell", Seen::CannotTell), None);
        let cases = [
            ("sound", Seen::CannotTell, "identify-unknown-character"),
            ("smell", Seen::State("four".to_owned()), "identify-unknown-state"),
            ("smell", Seen::OneOf(Vec::new()), "identify-no-state-named"),
            ("smell", Seen::Counted(3), "identify-look-kind"),
        ];
        for (character, seen, wanted) in cases {
            assert_eq!(code(character, seen).as_deref(), Some(wanted));
        }
    }

    #[test]
    fn no_part_of_a_plant_is_longer_than_the_tallest_tree() {
        let length = Character { kind: Kind::Length, ..sample::character("long", &[]) };
        let code = |mm| {
            let end = Finite::new(mm).unwrap();
            let measured = Seen::Measured { low: end, high: end };
            fits(&length, &measured, Place::default()).err().map(|fault| fault.code)
        };
        assert_eq!(code(100_000.0), None);
        assert_eq!(code(3_000_000.0).as_deref(), Some("identify-measured"));
        assert_eq!(code(0.0).as_deref(), Some("identify-measured"));
    }
}
