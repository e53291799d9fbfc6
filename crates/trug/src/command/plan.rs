//! `trug plan`: an outing, worked out.

use crate::files;
use crate::pages::PageArgs;
use crate::read::{moment, start};
use clap::Args;
use desk::{World, device};
use ground::{Faults, RandomStart};
use jiff::civil::DateTime;
use std::path::PathBuf;

#[derive(Args)]
#[command(after_help = "Example:\n  trug plan demo/spring-evening.toml")]
pub(crate) struct Plan {
    /// The outing file; what it includes is read beside it
    file: PathBuf,
    /// With the leader's reasons, which tell of people's health
    #[arg(long)]
    reasons: bool,
    #[command(flatten)]
    pub(super) paper: PageArgs,
    /// Only these pages, such as run-sheet,brew,labels; all when left out
    #[arg(long, value_name = "NAME", value_delimiter = ',', requires = "out")]
    pub(super) pages: Vec<String>,
    /// The moment it is worked out for; now when left out
    #[arg(long, value_name = "DATETIME", value_parser = moment)]
    now: Option<DateTime>,
    /// Where the draws begin: the same number gives the same plan
    #[arg(long, value_name = "N", value_parser = start)]
    random_start: Option<RandomStart>,
}

impl Plan {
    pub(super) fn request(&self) -> Result<device::Request, Faults> {
        self.paper.may_write()?;
        let files = files::outing(std::slice::from_ref(&self.file))?;
        Ok(device::Request::Plan { files, reasons: self.reasons })
    }

    /// The same world at the moment, and with the random start, that were asked for.
    pub(super) fn set(&self, world: &mut World) {
        world.now = self.now.unwrap_or(world.now);
        world.random_start = self.random_start.unwrap_or(world.random_start);
    }
}
