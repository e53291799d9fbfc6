//! The front door: one request in, one reply out.
//!
//! [`answer`] is the only way to ask. The command line, a server and the app translate to a
//! [`Request`] and from a [`Reply`], and hold no formula of their own. Equal worlds and requests
//! give equal bytes.

mod door;
mod fade;
mod judging;
mod knowledge;
mod label;
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
pub use label::{Hundredths, LabelOrder, LabelSheet, LabelsReply, Paper, usual_paper};
pub use making::{MakeOrder, MakeReply};
pub use naming::{CompareReply, NameOrder, NameReply};
pub use outing::{
    Base, Early, EmergencyWish, InputFile, MOST_BYTES, Make, Outing, OwnContent, OwnFraction,
    PhoneNumber, Reaches, Reader, Stop, WayBack, Wishes, includes, read,
};
pub use plan::{
    About, Act, Allergen, Allergens, BackBy, Count, Due, Emergency, Handed, Head, Instants, Intake,
    IntakeQuestion, Kit, LabelPlan, LabelPlant, LabelStand, Labelled, Light, LotPlan, MakePlan,
    NumberPlan, NumberStanding, OpenQuestion, Plan, PlantPlan, Row, SealedRow, Sorted,
    SpecimenPlan, StopPlace, Store, Strength, TakePlan, Timetable, Topic, Trouble, TwinPlan,
};
pub use recall::recall;
pub use serving::ServingReply;
pub use sums::{Sum, SumReply, SumResult, WalkLeg};
pub use teaching::{Leave, TeachReply, TeachSheet};
pub use world::World;
