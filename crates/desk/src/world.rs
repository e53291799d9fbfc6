//! What an answer depends on besides the request.

use crate::memory::Memory;
use ground::{Faults, RandomStart};
use herbal::Herbal;
use identify::Judge;
use jiff::civil::DateTime;
use journal::Journal;

/// The knowledge, the records, the moment and the random start: with the request, all that an
/// answer depends on. Equal worlds and requests give equal bytes.
#[derive(Clone, Debug)]
pub struct World {
    pub(crate) herbal: Herbal,
    pub(crate) herbal_version: String,
    /// What has happened, besides what a request's files say.
    pub journal: Journal,
    /// Now, as the clock on the wall shows it.
    pub now: DateTime,
    /// Where draws begin.
    pub random_start: RandomStart,
    /// It hangs on the herbal, which therefore nobody changes in place.
    pub(crate) memory: Memory,
}

impl World {
    /// A herbal with its version, which is a hash of its files, at a moment: nothing has happened yet.
    #[must_use]
    pub fn new(herbal: Herbal, version: String, now: DateTime) -> Self {
        Self {
            herbal,
            herbal_version: version,
            journal: Journal::new(),
            now,
            random_start: RandomStart(0),
            memory: Memory::default(),
        }
    }

    /// Makes ready what every judgement of a plant rests on, so that the first one need not.
    ///
    /// # Errors
    /// As any judgement, where the herbal is no table.
    pub fn make_ready(&self) -> Result<(), Faults> {
        self.herbal.flora.matrix().map(Judge::new).map(drop)
    }

    /// What is known.
    #[must_use]
    pub fn herbal(&self) -> &Herbal {
        &self.herbal
    }
}
