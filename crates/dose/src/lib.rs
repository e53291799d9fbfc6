//! Who may have it, and how much? Exposure, limits, cautions, decisions.
//!
//! [`decide`] weighs one cup for one person: the rows of the part that is used, the cautions and
//! usual amounts of the plant, and every limit against the sum of all that the person takes of a
//! constituent in the limit's window. The strictest of these stands. Whatever is not known counts
//! as the worst it could be; whatever is only remembered may stop somebody and clears nobody. A
//! decision is a proposal: [`Decision::confirm`] takes a named person's word on it.
//!
//! The rows come from outside ([`Table`]), so that a published example runs with no herbal in sight.

mod ask;
mod caution;
mod confirm;
mod content;
mod cup;
mod decide;
mod decision;
mod doubt;
mod exposure;
mod flag;
mod held;
mod hold;
mod intake;
mod kin;
mod limit;
mod naming;
mod part;
mod person;
mod rows;
mod say;
mod search;
mod shares;
mod spoken;
mod sum;
mod table;

pub use ask::{Asked, asked};
pub use confirm::{Confirmation, Confirmed, Word};
pub use cup::{Cup, Herb, HerbState, HowMeasured, Portion};
pub use decide::{Case, Tense, decide, decide_in};
pub use decision::{Decision, HandedOut, Outcome, Question, Reason, Reasons, Rule, Strictness};
pub use doubt::Bound;
pub use exposure::{Exposure, exposure};
pub use flag::{Flag, flagged};
pub use held::{Held, Passed};
pub use intake::Intakes;
pub use kin::{Kinship, Tie};
pub use person::{AgeBand, Given, Person};
pub use rows::{
    Action, Basis, Body, Caution, Ceiling, Content, ContentBasis, ContentKind, Counted, Level,
    Limit, LimitUse, PartRow, Posology, Route, Substance, SubstanceId, Transfer, UsedAs, Window,
};
pub use spoken::{Spoken, Who, spoken};
pub use table::Table;
