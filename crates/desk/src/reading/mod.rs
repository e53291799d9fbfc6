//! Reading one plant in hand, look by look, into a file of looks.
//!
//! The file is the whole state: what was answered stands in it, one line each, and whoever comes
//! back goes on where it ends. A step takes the file and what was typed, and gives the file as it
//! stands after that, what to say, and what is asked now.

mod file;
mod lines;
mod step;
mod typed;

pub use step::{Asks, Reason, StepOrder, StepReply, Told, Why};

pub(crate) use step::{by_looks, step};
