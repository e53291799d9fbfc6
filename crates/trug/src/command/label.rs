//! `trug label`: labels for jars and bags.

use crate::files;
use crate::pages;
use clap::{Args, ValueEnum};
use desk::{LabelOrder, Paper, Request};
use ground::Faults;
use std::path::PathBuf;

#[derive(Args)]
#[command(
    after_help = "Example:\n  trug label demo/spring-day.toml --size 63.5x38.1 --only ramsons-0501"
)]
pub(crate) struct Label {
    /// The outing file; what it includes is read beside it
    file: PathBuf,
    /// Width and height of a label in millimetres; the largest that are sold when left out
    #[arg(long, value_name = "WxH")]
    size: Option<String>,
    /// What they are printed on; what is usual where the outing goes when left out
    #[arg(long)]
    paper: Option<Sheet>,
    /// How many of each; one for each jar when left out
    #[arg(long, value_name = "N")]
    copies: Option<u32>,
    /// Only those of this wish, batch, lot or code; may be given several times
    #[arg(long, value_name = "NAME")]
    only: Vec<String>,
    /// Write the page of the labels into this folder too
    #[arg(long, value_name = "DIR")]
    pub(crate) out: Option<PathBuf>,
}

#[derive(Clone, Copy, ValueEnum)]
enum Sheet {
    A4,
    Letter,
}

impl Label {
    pub(super) fn request(&self) -> Result<Request, Faults> {
        if let Some(folder) = &self.out {
            pages::may_write(folder)?;
        }
        let files = files::outing(std::slice::from_ref(&self.file))?;
        let order = LabelOrder {
            size: self.size.clone(),
            paper: self.paper.map(|paper| match paper {
                Sheet::A4 => Paper::A4,
                Sheet::Letter => Paper::Letter,
            }),
            copies: self.copies,
            only: self.only.clone(),
        };
        Ok(Request::Labels { files, order })
    }
}
