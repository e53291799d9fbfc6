//! What every craft stands on: quantities with their units, draws for doubt, workings that show how
//! a number came about, sources, faults, refusals and messages.
//!
//! Nothing here reads a clock, a file or a generator: equal input gives equal bits, on every
//! machine. Nothing here knows a plant.

mod answer;
mod check_character;
mod dist;
mod draw;
mod fault;
mod finite;
mod id;
mod measure;
mod money;
mod normal;
mod once;
mod quantity;
mod season;
mod source;
mod spoken;
mod spread;
mod text;
mod trade;
mod unit;
mod working;

pub use answer::{Answer, Refusal};
pub use check_character::{check_character, ends_in_check_character};
pub use dist::{Dist, DistError};
pub use draw::{Column, DRAWS, Draws, Key, RandomStart};
pub use fault::{Fault, Faults, Place};
pub use finite::Finite;
pub use id::{ContentId, slug};
pub use measure::{Heap, KitchenMeasure, MeasureSystem};
pub use money::{Cents, Currency, Millionths};
pub use normal::{normal_cdf, normal_quantile};
pub use once::Once;
pub use quantity::{
    AlcoholByVolume, Any, Area, Brix, Dried, Duration, Ethanol, Fraction, Fresh, Length, Mass,
    MassFraction, PerBodyMass, PerDay, PerMass, PerVolume, Solids, Substance, Sugar, Temperature,
    Volume, Water,
};
pub use season::{Month, Season};
pub use source::{Source, SourceId, SourceKind, Sourced, Sourcing, Standing};
pub use spoken::{Amount, SaidUnit, Spoken};
pub use spread::{Spread, upper_rank};
pub use text::{Arg, Text};
pub use trade::{Condition, Form, Harm, LifeForm, Organ, Part, Region};
pub use unit::{Dimension, Unit};
pub use working::{Formula, How, Shown, Working};
