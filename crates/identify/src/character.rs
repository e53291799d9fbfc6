//! Characters: what can be looked at, felt, smelt, counted or measured.

use ground::Organ;
use serde::{Deserialize, Serialize};

/// A character: something that can be looked at, felt, smelt, counted or measured.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Character {
    /// Its name, such as `leaf_margin`.
    pub id: String,
    /// What can be said of it.
    pub kind: Kind,
    /// The organ it belongs to.
    pub organ: Organ,
    /// Characters of one correlation group count as one piece of evidence.
    pub group: String,
    /// The sense that reads it.
    pub sense: Sense,
    /// What it takes besides eyes and hands.
    pub tool: Tool,
    /// What reading it does to the plant.
    pub spoils: Spoils,
    /// Seconds that reading it takes.
    pub seconds: u16,
}

impl Character {
    /// Whether it and another are two pieces of evidence: of different groups, one of them not smelt, and,
    /// where that is asked, of different organs.
    pub(crate) fn stands_apart(&self, other: &Self, of_two_organs: bool) -> bool {
        self.group != other.group
            && (self.sense != Sense::Smell || other.sense != Sense::Smell)
            && (!of_two_organs || self.organ != other.organ)
    }
}

/// What can be said of a character.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Kind {
    /// One of a closed list of states.
    States(Vec<State>),
    /// A length in millimetres.
    Length,
    /// A number of things.
    Count,
}

/// A state of a character.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct State {
    /// Its name, such as `serrate`.
    pub id: String,
    /// The more general state that it is a kind of: `palmate` veins are a kind of `netted`. A state
    /// and its kind are no difference.
    pub kind_of: Option<String>,
    /// The states that people take it for. A misreading falls on these; between other states it is
    /// rare.
    pub taken_for: Vec<String>,
}

/// The sense that reads a character.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Sense {
    /// Looking.
    Sight,
    /// Feeling.
    Touch,
    /// Smelling: counts least, since the last plant stays on the fingers.
    Smell,
    /// Measuring or counting.
    Measure,
}

/// What reading a character takes besides eyes and hands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Tool {
    /// Nothing.
    None,
    /// A ruler.
    Ruler,
    /// A hand lens.
    Lens,
    /// A knife.
    Knife,
    /// A spade.
    Spade,
}

/// What reading a character does to the plant.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Spoils {
    /// Nothing.
    Nothing,
    /// A leaf, flower or fruit is bruised or picked.
    Piece,
    /// A stem is cut.
    Stem,
    /// The plant is dug up.
    Plant,
}
