//! `trug label`: labels for jars and bags.

use crate::files;
use crate::pages::PageArgs;
use clap::Args;
use desk::{LabelOrder, Request};
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
    /// How many of each; one for each jar when left out
    #[arg(long, value_name = "N")]
    copies: Option<u32>,
    /// Only those of this wish, batch, lot or code; may be given several times
    #[arg(long, value_name = "NAME")]
    only: Vec<String>,
    #[command(flatten)]
    pub(super) paper: PageArgs,
}

impl Label {
    pub(super) fn request(&self) -> Result<Request, Faults> {
        self.paper.may_write()?;
        let files = files::outing(std::slice::from_ref(&self.file))?;
        let order = LabelOrder {
            size: self.size.clone(),
            paper: self.paper.paper(),
            copies: self.copies,
            only: self.only.clone(),
        };
        Ok(Request::Labels { files, order })
    }
}
