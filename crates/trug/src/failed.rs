//! Why something was not done.

use ground::{Fault, Faults};
use std::io;

/// Something was not done.
pub(crate) enum Failed {
    /// What was asked for, or this program, is at fault.
    AtFault(Faults),
    /// The machine would not.
    Machine(io::Error),
}

impl From<io::Error> for Failed {
    fn from(error: io::Error) -> Self {
        Self::Machine(error)
    }
}

impl From<Faults> for Failed {
    fn from(faults: Faults) -> Self {
        Self::AtFault(faults)
    }
}

impl From<Fault> for Failed {
    fn from(fault: Fault) -> Self {
        Self::AtFault(fault.into())
    }
}
