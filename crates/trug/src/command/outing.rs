//! `trug allowance` and `trug serving`: the parts of a plan by themselves.

use crate::files;
use clap::Args;
use desk::device;
use ground::Faults;
use std::path::PathBuf;

#[derive(Args)]
#[command(after_help = "Example:\n  trug allowance demo/spring-evening.toml")]
pub(crate) struct Allowance {
    /// Outing files with stands, surveys and permissions
    #[arg(required = true)]
    files: Vec<PathBuf>,
}

impl Allowance {
    pub(super) fn request(&self) -> Result<device::Request, Faults> {
        Ok(device::Request::Allowance { files: files::outing(&self.files)? })
    }
}

#[derive(Args)]
#[command(after_help = "Example:\n  trug serving demo/spring-evening.toml")]
pub(crate) struct Serving {
    /// Outing files with people and what is made
    #[arg(required = true)]
    files: Vec<PathBuf>,
    /// With the leader's reasons, which tell of people's health
    #[arg(long)]
    reasons: bool,
}

impl Serving {
    pub(super) fn request(&self) -> Result<device::Request, Faults> {
        Ok(device::Request::Serving { files: files::outing(&self.files)?, reasons: self.reasons })
    }
}
