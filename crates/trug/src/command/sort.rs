//! `trug sort`: how likely a wrong piece stays in a basket, and how it is sorted.

use crate::pages::PageArgs;
use crate::read::{level, told};
use clap::Args;
use desk::{Request, Sorter, SortingOrder};
use ground::{Faults, Part, Region};
use identify::Level;
use identify::sorting::{Planted, Sees};

#[derive(Args)]
#[command(
    after_help = "Example:\n  trug sort 200 --plant ramsons --part leaf --by Ida=leader --by Jon=trained,1/20"
)]
pub(crate) struct Sort {
    /// How many pieces the basket holds
    #[arg(value_name = "PIECES")]
    pieces: u32,
    /// How many wrong pieces are supposed to be among them
    #[arg(long, value_name = "PIECES", default_value_t = 1)]
    wrong: u32,
    /// How many pieces are looked at; every piece when left out
    #[arg(long, value_name = "PIECES")]
    seen: Option<u32>,
    /// Who sorts, and how well they see: leader, trained, public or the share that they misread; behind a
    /// comma, how many they missed of those that were planted. Two trained people when left out
    #[arg(long, value_name = "NAME=LEVEL", value_parser = sorter)]
    by: Vec<Sorter>,
    /// The plant that it should be: says what each piece is looked at for
    #[arg(long, value_name = "SPECIES", requires = "part")]
    plant: Option<String>,
    /// Which part of it
    #[arg(long, requires = "plant")]
    part: Option<Part>,
    /// Where in the world it grew: europe or north-america
    #[arg(long)]
    region: Option<Region>,
    #[command(flatten)]
    pub(super) paper: PageArgs,
}

/// Somebody who sorts: a name, then what is known of how well they see, such as `leader` or `leader,1/20`.
fn sorter(written: &str) -> Result<Sorter, String> {
    let (name, known) = written.split_once('=').unwrap_or((written, ""));
    let (name, mut sees) = (name.trim(), TRAINED);
    if name.is_empty() {
        return Err(told("unreadable-sorter", written, ""));
    }
    for known in known.split(',').map(str::trim).filter(|known| !known.is_empty()) {
        match trial(known) {
            Some(trial) => sees.planted = Some(trial),
            None => sees.level = level(known)?,
        }
    }
    Ok(Sorter { name: Some(name.to_owned()), sees })
}

/// So many missed of those that were planted.
fn trial(written: &str) -> Option<Planted> {
    let (missed, of) = written.split_once('/')?;
    Some(Planted { missed: missed.trim().parse().ok()?, of: of.trim().parse().ok()? })
}

/// Of whom nothing is said.
const TRAINED: Sees = Sees { level: Level::Trained, planted: None };

impl Sort {
    pub(super) fn request(&self) -> Result<Request, Faults> {
        self.paper.may_write()?;
        let nobody = || Sorter { name: None, sees: TRAINED };
        let by = if self.by.is_empty() { vec![nobody(), nobody()] } else { self.by.clone() };
        Ok(Request::Sorting(SortingOrder {
            pieces: self.pieces,
            wrong: self.wrong,
            seen: self.seen,
            sorters: by,
            plant: self.plant.clone().zip(self.part),
            region: self.region,
        }))
    }
}
