//! Will it keep, and how strong is it? Recipes worked forwards and backwards.
//!
//! Mass is conserved, volume is not: every mixture is worked in grams of ethanol, water and sugar,
//! and turned to millilitres only at the end ([`alcohol`], [`sugar`]). Herb is weighed in one of
//! three states, fresh, dried as weighed, or without any water ([`Moisture`]), and each number says
//! which. A [`Recipe`] is a row of fixed operations; [`forwards`] works it from what is at hand,
//! [`backwards`] from the servings that are wanted, and a [`Brew`] says what came out: composition,
//! strength, yield, steps, how it keeps, and the working of it all. [`sums`] holds the small sums.
//!
//! What a brew *stands for* is the herb whose share of the liquid it holds. How much of a
//! constituent went over is another question, which needs an extraction fraction with its source;
//! nothing here answers it.

pub mod alcohol;
mod brew;
mod density;
mod drying;
mod heat;
mod keeping;
mod larder;
mod recipe;
mod refuse;
pub mod sugar;
pub mod sums;
mod water;

pub use brew::{
    Brew, Composition, Done, Have, Helping, HerbHave, KitchenAmount, Losses, Portion, Serving,
    Span, Wanted, Yield, backwards, forwards, in_kitchen,
};
pub use density::Density;
pub use drying::{Drying, Moisture, MoistureRange};
pub use heat::{EvaporationRate, Lid, Stove, boiling_point, time_to_reduce};
pub use keeping::{Class, Keeping, KeepingRule, Shelf, When, keeping_of_dried};
pub use larder::{DryingYield, HerbBasis, Holds, KitchenNote, Larder, Retention, SpoonWeight};
pub use recipe::{Heat, HerbState, Ingredient, Recipe, Step, What};
