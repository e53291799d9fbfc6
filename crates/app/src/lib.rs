//! The app, without its browser: a visit in, a screen out.
//!
//! A browser sends every tap as a [`Visit`]: an address, and what a form said. The answer is a
//! [`Shown`]: a screen as HTML, and lines to keep before it may be shown. Nothing here knows a clock,
//! a database or a network; the scripts of `web/` have those, and no rule of the trade. Equal visits
//! to equal apps give equal bytes.

#[cfg(target_arch = "wasm32")]
mod abi;
mod address;
mod answers;
mod app;
mod books;
mod edit;
mod fields;
mod flags;
mod hand_out;
mod in_hand;
mod screen;
mod shell;
mod take_in;
mod visit;
mod work_out;

pub use app::{App, NotOpened};
pub use shell::{Host, ShellFile, shell};
pub use visit::{ChosenFile, Form, Kept, Message, Moment, PdfOrder, Saved, SealAct, Shown, Visit};
