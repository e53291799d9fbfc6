//! The front door: one request in, one reply out.
//!
//! [`answer`] is the only way to ask. The command line, a server and the app translate to a
//! [`Request`] and from a [`Reply`], and hold no formula of their own. What the app asks on a device
//! is a part of them by itself: [`device`]. Equal worlds and requests give equal bytes.

mod apart;
mod asking;
pub mod device;
mod door;
mod fade;
mod in_hand;
mod judging;
mod keying;
mod knowledge;
mod label;
mod making;
mod memory;
mod naming;
mod outing;
mod pairing;
mod plain;
mod plan;
mod reading;
mod recall;
mod serving;
mod sorting;
mod sums;
mod teaching;
mod world;

pub use apart::{ApartOrder, ApartReply, ApartTwin};
pub use door::{Reply, Request, answer};
pub use fade::{Trial, fade};
pub use in_hand::{InHandOrder, NextLookOrder, NextLookReply};
pub use keying::{KeyOrder, KeyPlant, KeyReply, MissingTwin};
pub use knowledge::{CheckReply, ListReply, ListRow, SheetReply, Tell, Twin, sheets};
pub use label::{Hundredths, LabelOrder, LabelSheet, LabelsReply, Paper, usual_paper};
pub use making::{MakeOrder, MakeReply};
pub use naming::{CompareReply, NameOrder, NameReply};
pub use outing::{
    Base, Cell, Change, Cost, Early, EmergencyWish, Fee, InputFile, MOST_BYTES, Make, MoneyWish,
    Outing, OwnContent, OwnFraction, Per, PhoneNumber, Reaches, Reader, Rung, Stop, TableRow,
    WayBack, Wishes, includes, read, rows, standing_rows, write,
};
pub use pairing::{PairRow, PairsOrder, PairsReply};
pub use plan::{
    About, Act, Allergen, Allergens, Asked, AtSize, BackBy, BreakEven, Count, Due, Emergency,
    Handed, Head, Instants, Intake, IntakeQuestion, Kept, Kit, LabelPlan, LabelPlant, LabelStand,
    Labelled, Light, LotPlan, MakePlan, Money, NumberPlan, NumberStanding, OpenQuestion, Plan,
    PlantPlan, PotPlan, Row, Scale, SealedRow, SignUp, Sorted, SpecimenPlan, StopPlace, Store,
    Strength, TakePlan, Timetable, Topic, Trouble, TwinPlan, Until, Workings,
};
pub use reading::{Asks, Reason, StepOrder, StepReply, Told, Why};
pub use recall::recall;
pub use serving::ServingReply;
pub use sorting::{
    CurvePoint, Find, NotEnough, Sample, Sorter, SorterMisses, SortingLook, SortingOrder,
    SortingPlant, SortingReply, SortingTwin,
};
pub use sums::{Sum, SumReply, SumResult, WalkLeg};
pub use teaching::{Leave, TeachReply, TeachSheet};
pub use world::World;
