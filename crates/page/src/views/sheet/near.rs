//! The signs of a plant in the order in which somebody who walks up to it meets them.

use super::View;
use crate::{Block, Fact, Level};
use ground::{Organ, Text};
use herbal::Term;
use identify::{Character, Sense};

/// How near one must be to read a character. The order is that of a lesson: first the plant in its
/// place, then what is seen from beside it, then what must be felt, measured or smelt, and last what
/// would have to be dug up. A smell stays on the fingers, so it ends what is done in the hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Step {
    Afar,
    Leaf,
    Flower,
    Hand,
    Ground,
}

impl Step {
    const ALL: [(Self, &'static str); 5] = [
        (Self::Afar, "forms-step-afar"),
        (Self::Leaf, "forms-step-leaf"),
        (Self::Flower, "forms-step-flower"),
        (Self::Hand, "forms-step-hand"),
        (Self::Ground, "forms-step-ground"),
    ];

    fn of(character: &Character) -> Self {
        match (character.organ, character.sense) {
            (Organ::Whole, _) => Self::Afar,
            (Organ::Underground, _) => Self::Ground,
            (_, Sense::Touch | Sense::Measure | Sense::Smell) => Self::Hand,
            (Organ::Flower | Organ::Fruit, Sense::Sight) => Self::Flower,
            (Organ::Stem | Organ::Leaf | Organ::Bark, Sense::Sight) => Self::Leaf,
        }
    }
}

/// Within a step, organ by organ, what is seen at a glance before what takes long; a smell last.
fn order(term: &Term) -> impl Ord {
    let character = &term.character;
    (character.sense == Sense::Smell, character.organ, super::nearness(term))
}

impl View<'_> {
    /// What is said of each character, from far to near.
    pub(super) fn far_to_near(&self) -> Vec<Block> {
        let steps = Step::ALL.iter().flat_map(|(step, id)| self.step(*step, id));
        self.section("forms-sheet-near", steps)
    }

    fn step(&self, step: Step, id: &str) -> Vec<Block> {
        let terms = self.reply.cells.keys().filter_map(|id| self.reply.terms.get(id));
        let mut terms: Vec<_> = terms.filter(|term| Step::of(&term.character) == step).collect();
        terms.sort_by_key(|term| order(term));
        let facts: Vec<Fact> = terms.into_iter().filter_map(|term| self.character(term)).collect();
        if facts.is_empty() {
            return Vec::new();
        }
        vec![self.words.heading(Level::Part, &Text::new(id)), Block::Facts(facts)]
    }
}
