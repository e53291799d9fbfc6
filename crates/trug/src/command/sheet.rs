//! `trug sheet`: a sheet of each plant, for whoever teaches it.

use crate::pages::PageArgs;
use clap::Args;
use desk::Request;
use ground::Faults;

#[derive(Args)]
#[command(after_help = "Example:\n  trug sheet ramsons \"stinging nettle\"")]
pub(crate) struct Sheet {
    /// Plants, by their scientific, former or common names
    #[arg(required = true, value_name = "SPECIES")]
    names: Vec<String>,
    #[command(flatten)]
    pub(super) paper: PageArgs,
}

impl Sheet {
    pub(super) fn request(&self) -> Result<Request, Faults> {
        self.paper.may_write()?;
        Ok(Request::Sheet { names: self.names.clone() })
    }
}
