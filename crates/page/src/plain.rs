//! Characters and states by their plain words.

use crate::Words;
use ground::{Text, Unit};
use identify::Seen;

impl Words<'_> {
    /// A character in plain words; by its name where no glossary has any.
    #[must_use]
    pub fn character(&self, id: &str) -> String {
        let term = self.glossary.and_then(|glossary| glossary.term(id));
        term.map_or_else(|| spaced(id), |term| term.name.clone())
    }

    /// A state of a character in plain words; by its name where no glossary has any.
    #[must_use]
    pub fn state(&self, character: &str, state: &str) -> String {
        let term = self.glossary.and_then(|glossary| glossary.term(character));
        let said = term.and_then(|term| term.says.get(state));
        said.cloned().unwrap_or_else(|| spaced(state))
    }

    /// What was seen of a character, in plain words.
    #[must_use]
    pub fn seen(&self, character: &str, seen: &Seen) -> String {
        let state = |state: &String| self.state(character, state);
        match seen {
            Seen::State(one) => state(one),
            Seen::OneOf(several) => self.either(&several.iter().map(state).collect::<Vec<_>>()),
            Seen::Measured { low, high } => {
                let ends = [low.get(), high.get()];
                let unit = length_unit(&ends);
                let [low, high] = ends.map(|mm| unit.of_base(mm));
                self.catalogue.range(low, high, unit)
            }
            Seen::Counted(count) => crate::whole(i64::from(*count)),
            Seen::NotThere => self.word("identify-seen-not-there"),
            Seen::CannotTell => self.word("identify-seen-cannot-tell"),
        }
    }

    /// Several things of which any will do: "a, b or c".
    #[must_use]
    pub fn either(&self, said: &[String]) -> String {
        match said {
            [] => String::new(),
            [only] => only.clone(),
            [before @ .., last] => {
                let text = Text::new("list-or").with("before", before.join(", "));
                self.catalogue.say(&text.with("last", last.as_str()))
            }
        }
    }
}

/// A name as words.
fn spaced(name: &str) -> String {
    name.replace(['_', '-'], " ")
}

/// The largest unit in which lengths, given in millimetres, lose no digit when they are written.
pub(crate) fn length_unit(ends: &[f64]) -> Unit {
    let largest = ends.iter().copied().fold(0.0, f64::max);
    let exact = |unit: &Unit| {
        let kept = |mm: f64| {
            let value = unit.of_base(mm);
            let grains = if value < 10.0 { value * 10.0 } else { value };
            (grains - grains.round()).abs() < 1e-6
        };
        unit.of_base(largest) >= 1.0 && ends.iter().all(|mm| kept(*mm))
    };
    [Unit::Metre, Unit::Centimetre].into_iter().find(exact).unwrap_or(Unit::Millimetre)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_are_said_in_the_largest_unit_that_loses_nothing() {
        assert_eq!(length_unit(&[500.0, 2000.0]), Unit::Metre);
        assert_eq!(length_unit(&[50.0, 150.0]), Unit::Centimetre);
        assert_eq!(length_unit(&[105.0, 120.0]), Unit::Millimetre);
        assert_eq!(length_unit(&[3.0, 8.0]), Unit::Millimetre);
        assert_eq!(length_unit(&[1150.0, 2000.0]), Unit::Centimetre);
    }
}
