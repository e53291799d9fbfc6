//! `trug sums`: the small sums.

mod kitchen;
mod outdoors;

use clap::Subcommand;
use desk::Sum;
use kitchen::{Alcohol, Dilute, Dry, Measure, Sugar};
use outdoors::{Daylight, DegreeDays, Survey, Walk};

#[derive(Subcommand)]
pub(crate) enum Sums {
    /// What is known of a spirit from its strength or density
    #[command(after_help = "Example:\n  trug sums alcohol \"58.9 % vol\" --volume \"5 ml\"")]
    Alcohol(Alcohol),
    /// Water that brings a spirit down to a strength
    #[command(
        after_help = "Example:\n  trug sums dilute --from \"96 % vol\" --to \"60 % vol\" --volume \"500 ml\""
    )]
    Dilute(Dilute),
    /// Sugar that brings a liquid up to a sweetness
    #[command(after_help = "Example:\n  trug sums sugar --liquid \"480 g\" --to \"60 °Bx\"")]
    Sugar(Sugar),
    /// What is left when herb is dried
    #[command(
        after_help = "Example:\n  trug sums dry --herb \"1 kg\" --from \"80 %\" --to \"10 %\""
    )]
    Dry(Dry),
    /// A spoon, cup or pint in millilitres and in other kitchens' measures
    #[command(after_help = "Example:\n  trug sums measure \"1½ cups\" --kitchen metric")]
    Measure(Measure),
    /// When the sun rises and sets
    #[command(
        after_help = "Example:\n  trug sums daylight --on 2026-06-21 --at 53.35,-6.26 --zone Europe/Dublin"
    )]
    Daylight(Daylight),
    /// How long a walk takes
    #[command(
        after_help = "Example:\n  trug sums walk \"1.2 km up 120 m\" \"0.8 km\" \"1.5 km down 150 m\""
    )]
    Walk(Walk),
    /// Degree-days of one day or several
    #[command(
        after_help = "Example:\n  trug sums degree-days --base \"5 °C\" --day \"4 to 11 °C\" --day \"-2 to 8 °C\""
    )]
    DegreeDays(DegreeDays),
    /// Mean and total of plots drawn at random, with their doubt
    #[command(after_help = "Example:\n  trug sums survey --of 50 26 18 14 25 10 20 15 42 25 8")]
    Survey(Survey),
}

impl Sums {
    /// The sum that the arguments ask for.
    pub(super) fn sum(&self) -> Sum {
        match self {
            Self::Alcohol(asked) => asked.sum(),
            Self::Dilute(asked) => asked.sum(),
            Self::Sugar(asked) => asked.sum(),
            Self::Dry(asked) => asked.sum(),
            Self::Measure(asked) => asked.sum(),
            Self::Daylight(asked) => asked.sum(),
            Self::Walk(asked) => asked.sum(),
            Self::DegreeDays(asked) => asked.sum(),
            Self::Survey(asked) => asked.sum(),
        }
    }
}
