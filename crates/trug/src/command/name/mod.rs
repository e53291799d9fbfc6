//! `trug name`: what is this plant, or is it this one?

mod ask;

use crate::files;
use crate::read::{day, level, look};
use crate::world::Knowledge;
use clap::Args;
use desk::{NameOrder, Request};
use ground::{Faults, Region};
use identify::Level;
use jiff::civil::Date;
use std::path::PathBuf;

/// With no character, each is asked for in turn; the end of the input ends the questions.
#[derive(Args)]
#[command(
    after_help = "Example:\n  trug name --is ramsons leaf_venation=parallel crushed_smell=garlic"
)]
pub(crate) struct Name {
    /// Where in the world: europe or north-america
    #[arg(long)]
    region: Option<Region>,
    /// The day; today when left out
    #[arg(long, value_name = "YEAR-MONTH-DAY", value_parser = day)]
    date: Option<Date>,
    /// The plant that it is taken for
    #[arg(long, value_name = "SPECIES")]
    is: Option<String>,
    /// Another table of plants than the herbal's, in CSV or TOML
    #[arg(long, value_name = "FILE")]
    matrix: Option<PathBuf>,
    /// How well the readers read: leader, trained, public, or the share that they misread
    #[arg(long, value_name = "SHARE", value_parser = level, default_value = "public")]
    misread: Level,
    /// What a second reader saw, the candidates hidden
    #[arg(long, value_name = "CHARACTER=STATE", value_parser = look)]
    second: Vec<(String, String)>,
    /// What was seen, as a file of `trug look`
    #[arg(long = "looks", value_name = "FILE", conflicts_with_all = ["region", "date", "is", "matrix", "second", "looks"])]
    file: Option<PathBuf>,
    /// What was seen; several states that cannot be told apart are joined by |
    #[arg(value_name = "CHARACTER=STATE", value_parser = look)]
    looks: Vec<(String, String)>,
}

impl Name {
    pub(super) fn request(&self, knowledge: &Knowledge) -> Result<Request, Faults> {
        if let Some(file) = &self.file {
            return Ok(Request::Looks { file: files::read(file)? });
        }
        let order = NameOrder {
            is: self.is.clone(),
            region: self.region,
            day: self.date,
            looks: self.looks.clone(),
            second: self.second.clone(),
            level: self.misread,
            table: self.matrix.as_deref().map(files::read).transpose()?,
        };
        if order.looks.is_empty() && order.second.is_empty() {
            return ask::step_by_step(order, &knowledge.world());
        }
        Ok(Request::Name(order))
    }
}
