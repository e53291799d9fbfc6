//! Records: what a device notes down, kept for good.
//!
//! A record is named by a [`RecordId`] and ordered by a hybrid logical [`Clock`].

mod clock;
mod id;

pub use clock::Clock;
pub use id::RecordId;
