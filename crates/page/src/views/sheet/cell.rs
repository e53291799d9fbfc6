//! What is said of a character, in plain words.

use super::View;
use crate::plain::length_unit;
use crate::{Prose, Words, whole};
use ground::{Standing, Text, Unit};
use herbal::Term;
use identify::{Cell, Kind, Rank, Value};

impl View<'_> {
    /// A cell with the numbers of its sources, what is remembered of it, and whose row it is.
    pub(super) fn cell_with_notes(&self, term: &Term, cell: &Cell) -> Prose {
        let mut said = self.cell(term, cell);
        match cell.from {
            Rank::Species => {}
            Rank::Genus => said = said.text(&self.words.word("sheet-all-genus")),
            Rank::Family => said = said.text(&self.words.word("sheet-all-family")),
        }
        // Standings stand within the cell, beside what they are of.
        said.then(self.notes.mark(&cell.sources, Standing::Published, &self.words))
    }

    /// A cell without its sources: what is seen as a rule, and what now and then.
    pub(super) fn cell(&self, term: &Term, cell: &Cell) -> Prose {
        let (main, rare) = statements(&self.words, term, &cell.value);
        let mut said = self.trusted(&main.join("; "), cell.standing);
        if !rare.is_empty() {
            let gap = if main.is_empty() { "" } else { "; " };
            said = said.text(gap).then(self.trusted(&rare.join("; "), cell.rare_standing));
        }
        said
    }

    fn trusted(&self, says: &str, standing: Standing) -> Prose {
        Prose::new().said(says).then(self.notes.mark(&[], standing, &self.words))
    }
}

/// The statements of a cell: those of its main standing, and the rest.
pub(in crate::views) fn statements(
    words: &Words<'_>,
    term: &Term,
    value: &Value,
) -> (Vec<String>, Vec<String>) {
    let some = |id: &str, states: &[String]| {
        let said: Vec<_> = states.iter().map(|state| plain(term, state)).collect();
        let states = words.either(&said);
        (!said.is_empty()).then(|| words.catalogue.say(&Text::new(id).with("states", states)))
    };
    let both = |first, second| Vec::from_iter(Option::into_iter(first).chain(second));
    match value {
        Value::States { always, usually, sometimes, rarely } => (
            both(some("sheet-always", always), some("sheet-usually", usually)),
            both(some("sheet-sometimes", sometimes), some("sheet-rarely", rarely)),
        ),
        Value::Shares(shares) => {
            let states: Vec<_> = shares.keys().cloned().collect();
            (some("sheet-always", &states).into_iter().collect(), Vec::new())
        }
        Value::Range { ordinary, extreme } => ranges(words, term, *ordinary, *extreme),
    }
}

fn ranges(
    words: &Words<'_>,
    term: &Term,
    ordinary: (f64, f64),
    extreme: Option<(f64, f64)>,
) -> (Vec<String>, Vec<String>) {
    let ends = [Some(ordinary), extreme];
    let ends: Vec<f64> = ends.into_iter().flatten().flat_map(|(a, b)| [a, b]).collect();
    let unit = if term.character.kind == Kind::Length { length_unit(&ends) } else { Unit::One };
    let said = |(low, high): (f64, f64)| match unit {
        Unit::One if low == high => whole(low as i64),
        Unit::One => words.catalogue.range(low, high, Unit::One),
        unit => words.catalogue.range(unit.of_base(low), unit.of_base(high), unit),
    };
    let outer =
        |range| words.catalogue.say(&Text::new("sheet-outer-limits").with("range", said(range)));
    (vec![said(ordinary)], extreme.map(outer).into_iter().collect())
}

fn plain(term: &Term, state: &str) -> String {
    term.says.get(state).map_or(state, String::as_str).to_owned()
}
