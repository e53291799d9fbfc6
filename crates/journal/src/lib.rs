//! What happened: one entry a fact, never changed, only added to.
//!
//! An [`Entry`] takes its identifier from its content, so the same fact noted twice is one entry.
//! A [`Journal`] is a set of entries: merging two is their union. [`Journal::fold`] makes the
//! [`School`]'s state out of them, the same in whatever order they arrived. A correction is an entry
//! that takes another one back; nothing leaves without a trace.
//!
//! A [`Log`] is what a device keeps of its own and others' notes: [`Record`]s of any kind, ordered by
//! a clock that never goes back, chained by hashes, written as JSON lines.

mod entry;
mod fold;
mod label_code;
mod lot;
mod record;
mod sealed;
mod set;

pub use entry::{
    Answers, Batch, Confirmation, Consent, Correction, Entry, Flag, Found, Given, Look, Lot,
    Material, Participant, Payload, Permission, Plot, Saw, Serving, Site, Sorting, Stand, Survey,
    Take, Weighing, Word,
};
pub use fold::{LooksBySpecimen, School};
pub use label_code::LabelCode;
pub use lot::{Fitness, LotState};
pub use record::{Act, Clock, Log, Record, RecordId};
pub use sealed::Sealed;
pub use set::Journal;
