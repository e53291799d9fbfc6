//! What is known: text files read into the inputs that the crafts ask for.
//!
//! The folder `herbal/` at the root of the project holds the files; `docs/herbal-format.md` says
//! how they are written. [`Herbal::read`] reads all of them at once and either gives a herbal in
//! which every name resolves, every fact has a source and every range is possible, or every fault.

mod check;
mod day;
mod file;
mod flora;
mod kitchen;
mod land;
mod open;
mod overlay;
mod places;
mod search;
mod uses;

pub use check::{Column, Finding, Lack, Report, check};
pub use day::{Day, DayLine, DayRule};
pub use file::TextFile;
pub use flora::{
    Conflict, Flora, GatheredFor, Glossary, Group, Kin, MixUp, MonthFrom, Resemblance, Sheet, Term,
};
pub use kitchen::{DryingTarget, Growth, Kitchen, Ph, Warmth};
pub use land::{Land, Per, Yield};
pub use places::{Account, Places};
pub use search::{Hit, Match, NameKind, Near};
pub use uses::Uses;

use file::{Leavings, Reader};
use ground::{Faults, Source, SourceId};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Everything that is known: species, uses, kitchen and land, each fact with its sources.
#[derive(Clone, Debug, Default, Serialize, Deserialize)]
pub struct Herbal {
    /// Every source, by identifier.
    pub sources: BTreeMap<SourceId, Source>,
    /// Species, characters, look-alikes, mix-ups that were told.
    pub flora: Flora,
    /// Uses and harm by part, cautions, contents, limits.
    pub uses: Uses,
    /// Recipes, spoon weights, drying, keeping.
    pub kitchen: Kitchen,
    /// Land rules, fractions that may be taken, distances to keep.
    pub land: Land,
    /// Rules for weather and water, and what an emergency card says.
    pub day: Day,
}

impl Herbal {
    /// Reads the files of a herbal.
    ///
    /// # Errors
    /// Every fault in every file, with its line and column.
    pub fn read(files: &[TextFile]) -> Result<Self, Faults> {
        Self::read_with_account(files).map(|(herbal, _)| herbal)
    }

    /// Reads the files of a herbal, and gives account of where each row stands and what it rests on.
    ///
    /// # Errors
    /// Every fault in every file, with its line and column.
    pub fn read_with_account(files: &[TextFile]) -> Result<(Self, Account), Faults> {
        let mut reader = Reader::new(files);
        let flora = Flora::read(&mut reader);
        let uses = Uses::read(&mut reader, &flora);
        let kitchen = Kitchen::read(&mut reader);
        let land = Land::read(&mut reader);
        let day = Day::read(&mut reader);
        let Leavings { sources, account, faults } = reader.finish();
        let herbal = Self { sources, flora, uses, kitchen, land, day };
        faults.or((herbal, account))
    }
}
