//! A plant in hand, which answers every look with what its sheet says that it shows.

use ground::{Finite, Month, Organ};
use identify::{Cell, Character, Kind, Matrix, Seen, Value};
use std::collections::BTreeSet;

/// A plant in hand.
#[derive(Clone)]
pub(crate) struct InHand<'h> {
    matrix: &'h Matrix,
    plant: &'h str,
    /// The organs that can be looked at; none given: all.
    organs: Option<&'h BTreeSet<Organ>>,
    /// The month that it is; none given: every organ is there.
    month: Option<Month>,
    shows: Shows<'h>,
}

/// Which of all that a plant ordinarily shows it shows.
#[derive(Clone, Copy)]
pub(crate) enum Shows<'h> {
    /// The commonest.
    Typically,
    /// What is most like this other plant; where its own sheet is silent, what that one shows.
    AsLike(&'h str),
}

impl<'h> InHand<'h> {
    /// All of a plant as it typically looks, each organ whenever it is asked for.
    pub(crate) fn new(matrix: &'h Matrix, plant: &'h str) -> Self {
        Self { matrix, plant, organs: None, month: None, shows: Shows::Typically }
    }

    pub(crate) fn only(self, organs: &'h BTreeSet<Organ>) -> Self {
        Self { organs: Some(organs), ..self }
    }

    pub(crate) fn in_month(self, month: Month) -> Self {
        Self { month: Some(month), ..self }
    }

    pub(crate) fn shows(self, shows: Shows<'h>) -> Self {
        Self { shows, ..self }
    }

    /// What a look finds: nothing where the organ is not there, no answer where no sheet gives one.
    pub(crate) fn answer(&self, character: &str) -> Seen {
        let Some(character) = self.matrix.character(character) else {
            return Seen::CannotTell;
        };
        if self.has(character.organ) {
            self.known(character).unwrap_or(Seen::CannotTell)
        } else {
            Seen::NotThere
        }
    }

    /// What a look at an organ that is there finds, where that is known.
    pub(crate) fn known(&self, character: &Character) -> Option<Seen> {
        if !self.has(character.organ) {
            return None;
        }
        let own = self.matrix.cell(self.plant, &character.id);
        match self.shows {
            Shows::Typically => own.and_then(|own| shown(character, own, None)),
            Shows::AsLike(other) => {
                let other = self.matrix.cell(other, &character.id);
                own.or(other).and_then(|own| shown(character, own, other))
            }
        }
    }

    fn has(&self, organ: Organ) -> bool {
        let taxon = self.matrix.taxon(self.plant);
        let season = taxon.and_then(|taxon| taxon.seasons.get(&organ));
        let there = season.zip(self.month).is_none_or(|(season, month)| season.contains(month));
        there && self.organs.is_none_or(|organs| organs.contains(&organ))
    }
}

/// What a plant shows of a character: the middle of the ordinary range or the commonest state, the
/// first by name of several; or of these what comes nearest to another plant.
fn shown(character: &Character, own: &Cell, like: Option<&Cell>) -> Option<Seen> {
    if let Some((low, high)) = range(own) {
        let middle = |(low, high): (f64, f64)| 0.5 * (low + high);
        let wanted = like.and_then(range).map_or(middle((low, high)), middle);
        return measured(&character.kind, wanted.clamp(low, high));
    }
    let (common, theirs) = (commonest(own), like.map(commonest).unwrap_or_default());
    let alike = common.iter().find(|state| theirs.contains(state));
    alike.or(common.first()).cloned().map(Seen::State)
}

fn range(cell: &Cell) -> Option<(f64, f64)> {
    match cell.value {
        Value::Range { ordinary, .. } => Some(ordinary),
        _ => None,
    }
}

/// The states under the strongest word that a sheet uses.
fn commonest(cell: &Cell) -> Vec<String> {
    let Value::States { always, usually, sometimes, rarely } = &cell.value else {
        return Vec::new();
    };
    let said = [always, usually, sometimes, rarely].into_iter().find(|states| !states.is_empty());
    said.cloned().unwrap_or_default()
}

fn measured(kind: &Kind, value: f64) -> Option<Seen> {
    match kind {
        Kind::Length => {
            let length = Finite::new(value)?;
            Some(Seen::Measured { low: length, high: length })
        }
        // A conversion that stays within its type: counts of a sheet are not negative.
        _ => Some(Seen::Counted(value as u32)),
    }
}
