//! Is it the plant? Judges looks at one specimen against a table of taxa.

mod matrix;

pub use matrix::{
    Cell, Character, Kind, LookAlike, Matrix, Rank, Relatives, RelativesStatement, Sense, Spoils,
    State, Taxon, Tool, Value,
};
