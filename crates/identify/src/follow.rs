//! What becomes of whoever follows the program: how often one plant ends as determined for another.
//!
//! Every answer that two readers may give to every look that they are asked for is followed, the likeliest first,
//! until the program says *determined* or that it cannot be settled. The chance of each way is exact, for the plant
//! that is in hand, by what its sheet says and by how people misread. Ways that were not followed to their end count
//! as determined, as often as that can be at most: so a figure is two ends between which the truth lies.

mod climb;
mod odds;
mod says;
mod walk;

use crate::judge::Judge;
use crate::offer::{Means, Offers};
use crate::rival::Rival;
use crate::weighing::Trial;
use crate::{Case, Level, Material, Strictness};
use ground::{Faults, Region};
use jiff::civil::Date;
use says::Says;
use std::collections::BTreeMap;
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
    /// How strictly is judged.
    pub strictness: Strictness,
    /// Ways less likely than this, whatever the plant, are not followed.
    pub least: f64,
    /// So many sets of answers are followed at most.
    pub most: usize,
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
    /// The program does not reckon with the plant: nobody wrote its sheet, or it is not said to grow there.
    Unlisted,
    /// The handful is mixed, half and half: every reading takes a piece of it.
    Mixed,
}

impl World {
    /// All of them.
    pub const ALL: [Self; 10] = [
        Self::AsTold,
        Self::Doubled,
        Self::Together,
        Self::OneBelieves,
        Self::BothBelieve,
        Self::Lingering,
        Self::HalfThere,
        Self::OtherHalfThere,
        Self::Unlisted,
        Self::Mixed,
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
    /// How often at most.
    pub at_most: f64,
}

/// What became of all.
#[derive(Clone, Debug, Default)]
pub struct Ends {
    /// By plant and world, in the order in which they were asked for.
    pub ends: Vec<End>,
    /// How many sets of answers were followed.
    pub followed: usize,
}

/// What a plant is, and in which world.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
struct Truth {
    row: usize,
    world: World,
}

impl Judge<'_> {
    /// How often each of these plants ends as determined for the target, each in its world. A plant that is not in
    /// the table is left out.
    ///
    /// # Errors
    /// A target that is not in the table.
    pub fn follow(
        &self,
        target: &str,
        truths: &[(&str, World)],
        setting: &Setting,
    ) -> Result<Ends, Faults> {
        let case = Case {
            specimen: String::new(),
            place: String::new(),
            day: setting.day,
            region: setting.region,
            material: Material::Living,
            strictness: setting.strictness,
            looks: Vec::new(),
        };
        let truth = |(plant, world): &(&str, World)| {
            Some(Truth { row: self.matrix().row(plant)?, world: *world })
        };
        let truths: Vec<Truth> = truths.iter().filter_map(truth).collect();
        self.try_target(target, &case, |trial, _| all_ends(trial, &truths, setting))
    }
}

/// Truths that meet the same program are followed together: one that it does not reckon with meets another.
fn all_ends(trial: &Trial<'_>, truths: &[Truth], setting: &Setting) -> Ends {
    let is_rival = |row: usize| trial.rivals.iter().any(|rival| rival.row() == Some(row));
    let missing = |truth: &Truth| {
        (truth.world == World::Unlisted && is_rival(truth.row)).then_some(truth.row)
    };
    let mut by_program: BTreeMap<Option<usize>, Vec<(usize, Truth)>> = BTreeMap::new();
    for (at, truth) in truths.iter().enumerate() {
        by_program.entry(missing(truth)).or_default().push((at, *truth));
    }
    let mut says = Says::new(trial, setting.level);
    let mut followed = 0;
    let mut ends = Vec::new();
    for (missing, together) in by_program {
        let rivals = without(trial, missing);
        let trial = Trial { rivals: &rivals, ..*trial };
        let truths = together.iter().map(|(_, truth)| *truth).collect();
        let means = Means::all(setting.level);
        let offers = Offers::new(&trial, &means);
        let found = Walk::new(&offers, setting, &mut says, truths).ends();
        followed += found.followed;
        ends.extend(together.iter().map(|(at, _)| *at).zip(found.ends));
    }
    ends.sort_by_key(|(at, _)| *at);
    Ends { ends: ends.into_iter().map(|(_, end)| end).collect(), followed }
}

/// The rivals, one of them without its sheet: where the target's names it, that is known.
fn without(trial: &Trial<'_>, missing: Option<usize>) -> Vec<Rival> {
    let named = |rival: &Rival| trial.taxon.look_alikes.iter().any(|a| a.name == rival.name);
    let less = |rival: &Rival| match (missing.is_some() && rival.row() == missing, named(rival)) {
        (false, _) => Some(rival.clone()),
        (true, true) => Some(Rival::without_sheet(&rival.name)),
        (true, false) => None,
    };
    trial.rivals.iter().filter_map(less).collect()
}

#[cfg(test)]
mod tests;
