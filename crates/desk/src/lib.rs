//! The front door: one request in, one reply out.
//!
//! [`answer`] is the only way to ask. The command line, a server and the app translate to a
//! [`Request`] and from a [`Reply`], and hold no formula of their own. Equal worlds and requests
//! give equal bytes.

mod door;
mod fade;
mod judging;
mod knowledge;
mod making;
mod naming;
mod outing;
mod plain;
mod plan;
mod recall;
mod serving;
mod sums;
mod teaching;
mod world;

pub use door::{Reply, Request, answer};
pub use fade::{Trial, fade};
pub use knowledge::{CheckReply, ListReply, ListRow, SheetReply, Tell, Twin};
pub use making::{MakeOrder, MakeReply};
pub use naming::{CompareReply, NameOrder, NameReply};
pub use outing::{
    InputFile, MOST_BYTES, Make, Outing, OwnContent, OwnFraction, Reader, Stop, Wishes, includes,
    read,
};
pub use plan::{
    About, Handed, Head, Intake, IntakeQuestion, Kit, Light, LotPlan, MakePlan, OpenQuestion, Plan,
    PlantPlan, Row, SealedRow, SpecimenPlan, Store, TakePlan, Timetable, Topic, Trouble, TwinPlan,
};
pub use recall::recall;
pub use serving::ServingReply;
pub use sums::{Sum, SumReply, SumResult, WalkLeg};
pub use teaching::{Leave, TeachReply, TeachSheet};
pub use world::World;
