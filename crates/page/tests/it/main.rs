//! Pages of real requests, of the demonstration and of an invented outing.
#![expect(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test reports by panicking"
)]

mod calendar;
mod drawings;
mod forms;
mod habits;
mod health;
mod kit;
mod labels;
mod looks;
mod money;
mod plan;
mod planted;
mod readability;
mod sample;
mod taken_home;
mod used;
mod views;
mod words;
mod workings;
