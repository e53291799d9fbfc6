//! `trug compare`: what tells two plants apart.

use clap::Args;
use desk::Request;

#[derive(Args)]
#[command(after_help = "Example:\n  trug compare ramsons \"lily of the valley\"")]
pub(crate) struct Compare {
    /// A plant, by its scientific, former or common name
    one: String,
    /// The other
    other: String,
}

impl Compare {
    pub(super) fn request(&self) -> Request {
        Request::Compare { plants: [self.one.clone(), self.other.clone()] }
    }
}
