//! `trug compare`: what tells two plants apart, or one from all that it is taken for.

use super::key::month;
use crate::pages::PageArgs;
use crate::read::level;
use clap::Args;
use desk::{ApartOrder, Request, device};
use ground::{Faults, Month, Region};
use identify::Level;

/// With two plants, character by character; with one, the fewest looks that tell it from its twins.
#[derive(Args)]
#[command(after_help = "Example:\n  trug compare ramsons \"lily of the valley\"")]
pub(crate) struct Compare {
    /// A plant, by its scientific, former or common name
    #[arg(value_name = "SPECIES")]
    one: String,
    /// Another; left out: everything that the first is taken for
    #[arg(value_name = "OTHER")]
    other: Option<String>,
    /// Of one plant: only what it shows in this month, from 1 to 12
    #[arg(long, value_name = "MONTH", value_parser = month, conflicts_with = "other")]
    month: Option<Month>,
    /// Of one plant: tell it from everything harmful here too: europe or north-america
    #[arg(long, conflicts_with = "other")]
    region: Option<Region>,
    /// Of one plant: who reads: leader, trained, public, or the share that they misread
    #[arg(long, value_name = "SHARE", value_parser = level, default_value = "trained", conflicts_with = "other")]
    level: Level,
    #[command(flatten)]
    pub(super) paper: PageArgs,
}

impl Compare {
    pub(super) fn request(&self) -> Result<Request, Faults> {
        self.paper.may_write()?;
        Ok(match &self.other {
            Some(other) => {
                device::Request::Compare { plants: [self.one.clone(), other.clone()] }.into()
            }
            None => Request::Apart(ApartOrder {
                plant: self.one.clone(),
                region: self.region,
                month: self.month,
                level: self.level,
            }),
        })
    }
}
