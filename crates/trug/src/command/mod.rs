//! The commands: each turns its arguments into a request.

pub(crate) mod app;
mod compare;
mod herbal;
mod key;
mod label;
pub(crate) mod look;
mod make;
mod name;
mod outing;
mod plan;
mod sheet;
mod sort;
mod sums;

use crate::pages::PageArgs;
use crate::world::Knowledge;
use clap::Subcommand;
use desk::{Request, World};
use ground::Faults;

/// What can be done.
#[derive(Subcommand)]
pub(crate) enum Command {
    #[command(flatten)]
    Ask(Ask),
    /// A plant in hand, asked for look by look and kept in a file
    Look(look::Look),
    /// The app, for a browser: on this machine, or as a folder for any web space
    App(app::App),
}

/// What can be asked.
#[derive(Subcommand)]
pub(crate) enum Ask {
    /// An outing, worked out: what is open first
    Plan(plan::Plan),
    /// What a plant in hand is, or whether it is this one
    Name(name::Name),
    /// What tells two plants apart, or one from all that it is taken for
    Compare(compare::Compare),
    /// A key to some plants, to be printed
    Key(key::Key),
    /// How much may be taken
    Allowance(outing::Allowance),
    /// A preparation: amounts, steps, strength, keeping
    Make(Box<make::Make>),
    /// Who may have what, and how much
    Serving(outing::Serving),
    /// Labels for jars and bags, with a code that leads back to the stand
    Label(label::Label),
    /// A basket: how it is sorted, and how likely a wrong piece stays in it
    Sort(sort::Sort),
    /// A sheet of each plant, for whoever teaches it
    Sheet(sheet::Sheet),
    /// What is known: list, show and check the herbal
    #[command(subcommand)]
    Herbal(herbal::Herbal),
    /// The small sums of kitchen and wood
    #[command(subcommand)]
    Sums(sums::Sums),
}

impl Ask {
    /// The request that the arguments make.
    ///
    /// # Errors
    /// What the arguments name and cannot be read.
    pub(crate) fn request(&self, knowledge: &Knowledge) -> Result<Request, Faults> {
        match self {
            Self::Plan(asked) => Ok(asked.request()?.into()),
            Self::Name(asked) => asked.request(knowledge),
            Self::Compare(asked) => asked.request(),
            Self::Key(asked) => asked.request(),
            Self::Allowance(asked) => Ok(asked.request()?.into()),
            Self::Make(asked) => Ok(asked.request().into()),
            Self::Serving(asked) => Ok(asked.request()?.into()),
            Self::Label(asked) => asked.request(),
            Self::Sort(asked) => asked.request(),
            Self::Sheet(asked) => asked.request(),
            Self::Herbal(asked) => asked.request(knowledge),
            Self::Sums(asked) => Ok(Request::Sum(asked.sum())),
        }
    }

    /// Sets the moment and the random start, where the arguments name them.
    pub(crate) fn set(&self, world: &mut World) {
        if let Self::Plan(asked) = self {
            asked.set(world);
        }
    }

    /// Where its pages are written and which of them, for what has pages.
    pub(crate) fn pages(&self) -> Option<(&PageArgs, &[String])> {
        match self {
            Self::Plan(asked) => Some((&asked.paper, &asked.pages)),
            Self::Label(asked) => Some((&asked.paper, &[])),
            Self::Sheet(asked) => Some((&asked.paper, &[])),
            Self::Key(asked) => Some((&asked.paper, &[])),
            Self::Sort(asked) => Some((&asked.paper, &[])),
            Self::Compare(asked) => Some((&asked.paper, &[])),
            _ => None,
        }
    }
}
