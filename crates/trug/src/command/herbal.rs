//! `trug herbal`: what is known.

use crate::world::Knowledge;
use clap::Subcommand;
use desk::Request;
use ground::Faults;

#[derive(Subcommand)]
pub(crate) enum Herbal {
    /// The plants of the herbal, or those whose names fit
    #[command(after_help = "Example:\n  trug herbal list nettle")]
    List {
        /// Words of a scientific, former or common name; all plants when left out
        words: Vec<String>,
    },
    /// What is known of one plant
    #[command(after_help = "Example:\n  trug herbal show \"Urtica dioica\"")]
    Show {
        /// Its scientific, former or common name
        #[arg(required = true)]
        name: Vec<String>,
    },
    /// What the herbal lacks: missing, remembered, contradictory, unjoined
    #[command(after_help = "Example:\n  trug herbal check")]
    Check,
}

impl Herbal {
    pub(super) fn request(&self, knowledge: &Knowledge) -> Result<Request, Faults> {
        Ok(match self {
            Self::List { words } => Request::HerbalList { words: words.join(" ") },
            Self::Show { name } => Request::HerbalShow { name: name.join(" ") },
            Self::Check => Request::HerbalCheck { account: knowledge.account()? },
        })
    }
}
