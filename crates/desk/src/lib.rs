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
mod world;

pub use door::{Reply, Request, answer};
pub use fade::{Trial, fade};
pub use knowledge::{CheckReply, ListReply, ListRow, SheetReply, Tell, Twin};
pub use making::{MakeOrder, MakeReply};
pub use naming::{CompareReply, NameOrder, NameReply};
pub use outing::{
    Cost, Fee, InputFile, MOST_BYTES, Make, MoneyWish, Outing, OwnContent, OwnFraction, Per,
    Reader, Rung, Stop, Wishes, includes, read,
};
pub use plan::{
    About, Asked, AtSize, BreakEven, Handed, Head, Kept, Kit, Light, LotPlan, MakePlan, Money,
    OpenQuestion, Plan, PlantPlan, Row, Scale, SealedRow, SignUp, SpecimenPlan, Store, TakePlan,
    Timetable, Trouble, TwinPlan, Until, Workings,
};
pub use recall::recall;
pub use serving::ServingReply;
pub use sums::{Sum, SumReply, SumResult, WalkLeg};
pub use world::World;
