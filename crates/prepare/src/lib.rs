//! Will it keep, and how strong is it? Recipes worked forwards and backwards.
//!
//! Mass is conserved, volume is not: every mixture is worked in grams of ethanol, water and sugar,
//! and turned to millilitres only at the end ([`alcohol`], [`sugar`]). Herb is weighed in one of
//! three states, fresh, dried as weighed, or without any water ([`Moisture`]), and each number says
//! which.

pub mod alcohol;
mod density;
mod drying;
mod heat;
mod refuse;
pub mod sugar;
mod water;

pub use density::Density;
pub use drying::{Drying, Moisture, MoistureRange};
pub use heat::{EvaporationRate, Lid, Stove, boiling_point, time_to_reduce};
