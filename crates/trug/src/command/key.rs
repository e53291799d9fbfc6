//! `trug key`: a key to some plants, to be printed.

use crate::pages::PageArgs;
use crate::read::level;
use clap::Args;
use desk::{KeyOrder, Request};
use ground::{Faults, Month};
use identify::Level;

#[derive(Args)]
#[command(
    after_help = "Example:\n  trug key ramsons \"lily of the valley\" \"autumn crocus\" lords-and-ladies"
)]
pub(crate) struct Key {
    /// Plants, by their scientific, former or common names
    #[arg(required = true, value_name = "SPECIES")]
    plants: Vec<String>,
    /// Only what can be seen in this month, from 1 to 12
    #[arg(long, value_name = "MONTH", value_parser = month)]
    month: Option<Month>,
    /// Whose wrong ends are told plant by plant: leader, trained, public, or the share that is misread
    #[arg(long, value_name = "SHARE", value_parser = level, default_value = "public")]
    level: Level,
    #[command(flatten)]
    pub(super) paper: PageArgs,
}

/// A month by its number.
pub(super) fn month(written: &str) -> Result<Month, String> {
    let month = written.parse().ok().and_then(Month::new);
    month.ok_or_else(|| crate::read::told("no-such-month-number", written, ""))
}

impl Key {
    pub(super) fn request(&self) -> Result<Request, Faults> {
        self.paper.may_write()?;
        let order = KeyOrder { plants: self.plants.clone(), month: self.month, level: self.level };
        Ok(Request::Key(order))
    }
}
