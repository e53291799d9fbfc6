//! What becomes of whoever follows the program: how often one plant ends as determined for another.
//!
//! Every answer that two readers may give to every look that they are asked for is followed, until the program says
//! *determined* or that it cannot be settled. The chance of each way is exact, for the plant that is in hand, by what
//! its sheet says and by how people misread. Ways that are too unlikely to be worth following count as determined:
//! so a figure is two ends between which the truth lies.

mod says;
mod walk;

use crate::judge::Judge;
use crate::offer::{Means, Offers};
use crate::{Case, Level, Material, Strictness};
use ground::{Faults, Region};
use jiff::civil::Date;
use walk::Walk;

/// Who reads, when and where.
#[derive(Clone, Debug)]
pub struct Setting {
    /// The day.
    pub day: Date,
    /// The region.
    pub region: Option<Region>,
    /// How well both readers read, as the program is told.
    pub level: Level,
    /// Ways less likely than this, whatever the plant, are not followed.
    pub least: f64,
}

/// How the world differs from what the program is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum World {
    /// Not at all.
    AsTold,
    /// Everybody misreads twice as often.
    Doubled,
    /// Whoever took one character of a group for the target's takes the others of it likewise.
    Together,
    /// The first reader believes to know the plant, and whatever can be taken for what the belief expects is, every
    /// other time.
    OneBelieves,
    /// Both do.
    BothBelieve,
    /// A smell stays on the fingers: whatever is smelt smells of the target.
    Lingering,
    /// Half the organs are missing on the plant in hand: every second one.
    HalfThere,
    /// The other half.
    OtherHalfThere,
}

impl World {
    /// All of them.
    pub const ALL: [Self; 8] = [
        Self::AsTold,
        Self::Doubled,
        Self::Together,
        Self::OneBelieves,
        Self::BothBelieve,
        Self::Lingering,
        Self::HalfThere,
        Self::OtherHalfThere,
    ];
}

/// How often a plant that is taken for the target ends as determined for it.
#[derive(Clone, Debug, PartialEq)]
pub struct End {
    /// What the plant is.
    pub plant: String,
    /// In which world.
    pub world: World,
    /// How often at least.
    pub determined: f64,
    /// How much more it may be: the ways that were not followed.
    pub lost: f64,
}

/// What became of all.
#[derive(Clone, Debug, Default)]
pub struct Ends {
    /// By plant and world.
    pub ends: Vec<End>,
    /// How many sets of answers were followed.
    pub followed: usize,
}

impl Judge<'_> {
    /// How often each of these plants ends as determined for the target, in each world.
    ///
    /// # Errors
    /// A target that is not in the table.
    pub fn follow(&self, target: &str, plants: &[&str], setting: &Setting) -> Result<Ends, Faults> {
        let case = Case {
            specimen: String::new(),
            place: String::new(),
            day: setting.day,
            region: setting.region,
            material: Material::Living,
            strictness: Strictness::least(),
            looks: Vec::new(),
        };
        let rows: Vec<usize> = plants.iter().filter_map(|plant| self.matrix().row(plant)).collect();
        self.try_target(target, &case, |trial, _| {
            let means = Means::all(setting.level);
            let offers = Offers::new(trial, &means);
            Walk::new(&offers, setting, &rows).ends()
        })
    }
}

#[cfg(test)]
mod tests;
