//! `trug sheet`: a sheet of each plant, for whoever teaches it.

use crate::pages;
use clap::Args;
use desk::Request;
use ground::Faults;
use std::path::PathBuf;

#[derive(Args)]
#[command(after_help = "Example:\n  trug sheet ramsons \"stinging nettle\"")]
pub(crate) struct Sheet {
    /// Plants, by their scientific, former or common names
    #[arg(required = true, value_name = "SPECIES")]
    names: Vec<String>,
    /// Write a page for each plant into this folder too
    #[arg(long, value_name = "DIR")]
    pub(crate) out: Option<PathBuf>,
}

impl Sheet {
    pub(super) fn request(&self) -> Result<Request, Faults> {
        if let Some(folder) = &self.out {
            pages::may_write(folder)?;
        }
        Ok(Request::Sheet { names: self.names.clone() })
    }
}
