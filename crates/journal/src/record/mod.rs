//! Records: what a device notes down, kept for good.
//!
//! A [`Record`] is never changed. It says something, or takes an earlier record back; the
//! [`Log`] that holds it only grows, and two logs merge to their union. Records are ordered by a
//! hybrid logical [`Clock`], and each names the hash of the one its device wrote before, so that a
//! gap or a change shows. How a record is written is told at [`Log::lines`].

mod chain;
mod clock;
mod id;
mod line;
mod log;

pub use clock::Clock;
pub use id::RecordId;
pub use log::Log;

use ground::ContentId;
use serde::{Deserialize, Serialize};

/// One record: who said what on which device, and after which other record.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Record<P> {
    /// Its identifier.
    pub id: RecordId,
    /// Its moment; the device is part of it.
    pub clock: Clock,
    /// Who wrote it.
    pub by: String,
    /// The hash of the line of the record that the same device wrote before; none at the first.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub before: Option<ContentId>,
    /// What it does.
    pub what: Act<P>,
}

/// What a record does.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Act<P> {
    /// Says something.
    Say(P),
    /// Takes an earlier record back. What holds instead is said by a record of its own.
    TakeBack {
        /// The record.
        of: RecordId,
    },
}
