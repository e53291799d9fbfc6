//! What is known: text files read into the inputs that the crafts ask for.
//!
//! The folder `herbal/` at the root of the project holds the files; `docs/herbal-format.md` says
//! how they are written. [`Herbal::read`] reads all of them at once and either gives a herbal in
//! which every name resolves, every fact has a source and every range is possible, or every fault.

mod file;
mod flora;
mod kitchen;
mod land;
mod uses;

pub use file::TextFile;
pub use flora::Flora;
pub use kitchen::Kitchen;
pub use land::Land;
pub use uses::Uses;

use file::Reader;
use ground::{Faults, Source, SourceId};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Everything that is known: species, uses, kitchen and land, each fact with its sources.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct Herbal {
    /// Every source, by identifier.
    pub sources: BTreeMap<SourceId, Source>,
    /// Species, characters, look-alikes.
    pub flora: Flora,
    /// Uses and harm by part, cautions, contents, limits.
    pub uses: Uses,
    /// Recipes, spoon weights, drying, keeping.
    pub kitchen: Kitchen,
    /// Land rules, fractions that may be taken, distances to keep.
    pub land: Land,
}

impl Herbal {
    /// Reads the files of a herbal.
    ///
    /// # Errors
    /// Every fault in every file, with its line.
    pub fn read(files: &[TextFile]) -> Result<Self, Faults> {
        let mut reader = Reader::new(files);
        let flora = Flora::read(&mut reader);
        let uses = Uses::read(&mut reader, &flora);
        let kitchen = Kitchen::read(&mut reader);
        let land = Land::read(&mut reader);
        let (sources, faults) = reader.finish();
        faults.or(Self {
            sources,
            flora,
            uses,
            kitchen,
            land,
        })
    }
}
