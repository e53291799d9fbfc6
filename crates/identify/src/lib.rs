//! Is it the plant? Judges looks at one specimen against a table of taxa.

mod assess;
mod bayes;
mod blocked;
#[cfg(test)]
mod cases;
mod cell;
mod character;
mod check;
mod compare;
pub mod evidence;
pub mod foreign;
mod judge;
mod ladder;
#[cfg(test)]
mod laws;
mod look;
mod matrix;
mod next;
mod offer;
mod posterior;
mod question;
mod reasons;
mod rival;
mod rules;
#[cfg(test)]
mod sample;
mod say;
mod spectrum;
mod states;
mod taxon;
mod testimony;
mod verdict;
mod weighing;
mod working;

pub use cell::{Cell, Rank, Value};
pub use character::{Character, Kind, Sense, Spoils, State, Tool};
pub use compare::{Comparison, Contrast};
pub use judge::Judge;
pub use look::{Glance, Level, Look, Reader, Seen};
pub use matrix::Matrix;
pub use next::{Next, Offer, Plan};
pub use offer::Means;
pub use posterior::{Chance, Priors, Telling};
pub use question::{Case, Material, Strictness};
pub use rival::RivalKind;
pub use rules::{Misfit, MustLook, MustLookState, SecondReading, Tell, Tells};
pub use taxon::{LookAlike, Relatives, RelativesStatement, Taxon};
pub use verdict::{Bar, Determination, InTheWay, Outcome, Verdict};
