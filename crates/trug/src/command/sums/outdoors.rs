//! Sums of a day outdoors.

use crate::read::{amount, day, told};
use clap::Args;
use desk::{Sum, WalkLeg};
use ground::Spoken;
use jiff::civil::Date;

#[derive(Args)]
pub(crate) struct Daylight {
    /// The day
    #[arg(long, value_name = "YEAR-MONTH-DAY", value_parser = day)]
    on: Date,
    /// Degrees north and east, joined by a comma; below zero in the south and west
    #[arg(long, value_name = "NORTH,EAST", value_parser = position, allow_hyphen_values = true)]
    at: (f64, f64),
    /// Standard name of the time zone
    #[arg(long, value_name = "CONTINENT/CITY")]
    zone: String,
}

impl Daylight {
    pub(super) fn sum(&self) -> Sum {
        let (latitude, longitude) = self.at;
        Sum::Daylight { on: self.on, latitude, longitude, zone: self.zone.clone() }
    }
}

fn position(written: &str) -> Result<(f64, f64), String> {
    let number = |part: &str| part.trim().parse().ok();
    written
        .split_once(',')
        .and_then(|(north, east)| Some((number(north)?, number(east)?)))
        .ok_or_else(|| told("unreadable-position", written, ""))
}

#[derive(Args)]
pub(crate) struct Walk {
    /// Each stretch that climbs or falls evenly, such as "1.2 km up 120 m"
    #[arg(required = true, value_parser = leg)]
    legs: Vec<WalkLeg>,
}

impl Walk {
    pub(super) fn sum(&self) -> Sum {
        Sum::Walk { legs: self.legs.clone() }
    }
}

/// A leg: `1.2 km`, `1.2 km up 120 m`, `1.5 km down 150 m`.
fn leg(written: &str) -> Result<WalkLeg, String> {
    let (along, climb) = match (written.split_once(" up "), written.split_once(" down ")) {
        (Some((along, up)), None) => (along, Some(up.trim().to_owned())),
        (None, Some((along, down))) => (along, Some(format!("-{}", down.trim()))),
        _ => (written, None),
    };
    let read = |said: &str| said.parse::<Spoken>();
    let climb = climb.as_deref().map(read).transpose();
    match (read(along), climb) {
        (Ok(along), Ok(climb)) => Ok(WalkLeg { along, climb }),
        (Err(why), _) | (_, Err(why)) => Err(told("unreadable-leg", written, &why)),
    }
}

#[derive(Args)]
pub(crate) struct DegreeDays {
    /// Lowest and highest temperature of a day; once for each day
    #[arg(long = "day", value_name = "RANGE", required = true, value_parser = amount)]
    #[arg(allow_hyphen_values = true)]
    days: Vec<Spoken>,
    /// Temperature from which growth counts
    #[arg(long, value_name = "TEMPERATURE", value_parser = amount, allow_hyphen_values = true)]
    base: Spoken,
    /// Temperature above which it grows no faster
    #[arg(long, value_name = "TEMPERATURE", value_parser = amount, allow_hyphen_values = true)]
    cut_off: Option<Spoken>,
}

impl DegreeDays {
    pub(super) fn sum(&self) -> Sum {
        let Self { days, base, cut_off } = self;
        Sum::DegreeDays { days: days.clone(), base: base.clone(), cut_off: cut_off.clone() }
    }
}

#[derive(Args)]
pub(crate) struct Survey {
    /// What was found in each plot
    #[arg(required = true)]
    plots: Vec<f64>,
    /// How many plots the whole stand has
    #[arg(long, value_name = "N")]
    of: u32,
}

impl Survey {
    pub(super) fn sum(&self) -> Sum {
        Sum::Survey { plots: self.plots.clone(), of: self.of }
    }
}
