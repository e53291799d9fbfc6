//! Is it the plant? Judges looks at one specimen against a table of taxa.

mod cell;
mod character;
mod check;
mod matrix;
#[cfg(test)]
mod sample;
mod taxon;

pub use cell::{Cell, Rank, Value};
pub use character::{Character, Kind, Sense, Spoils, State, Tool};
pub use matrix::Matrix;
pub use taxon::{LookAlike, Relatives, RelativesStatement, Taxon};
