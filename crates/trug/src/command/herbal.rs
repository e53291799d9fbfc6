//! `trug herbal`: what is known.

use crate::read::level;
use crate::world::Knowledge;
use clap::Subcommand;
use desk::{PairsOrder, Request, device};
use ground::Faults;
use identify::Level;

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
    /// What could pass for what: how many readings must go wrong, the worst first
    #[command(after_help = "Example:\n  trug herbal pairs ramsons --worst 10")]
    Pairs {
        /// A plant that is gathered, by any of its names; every one when left out
        plant: Vec<String>,
        /// How well the readers read: the better, the more they are believed
        #[arg(long, value_name = "LEVEL", default_value = "leader", value_parser = level)]
        readers: Level,
        /// How many of the worst pairs to show
        #[arg(long, value_name = "N", default_value_t = 40)]
        worst: usize,
    },
    /// What the herbal lacks: missing, remembered, contradictory, unjoined
    #[command(after_help = "Example:\n  trug herbal check")]
    Check,
}

impl Herbal {
    pub(super) fn request(&self, knowledge: &Knowledge) -> Result<Request, Faults> {
        Ok(match self {
            Self::List { words } => device::Request::HerbalList { words: words.join(" ") }.into(),
            Self::Show { name } => device::Request::HerbalShow { name: name.join(" ") }.into(),
            Self::Pairs { plant, readers, worst } => Request::HerbalPairs(PairsOrder {
                plant: Some(plant.join(" ")).filter(|said| !said.is_empty()),
                level: *readers,
                worst: Some(*worst),
            }),
            Self::Check => Request::HerbalCheck { account: knowledge.account()? },
        })
    }
}
