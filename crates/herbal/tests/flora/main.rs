//! What a reading of sources, glossary, species and groups promises.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "in a test a panic is the report"
)]

mod check;
mod check_uses;
mod faults;
mod laws;
mod messages;
mod mix_ups;
mod overlay;
mod search;
mod sheets;
mod small;
