//! Pairs: what tells something dangerous from what is gathered, and how many readings must go wrong before it
//! passes for it.

mod fewest;
mod readable;

use crate::judge::Judge;
use crate::rival::{Rival, RivalKind};
use crate::rules::must_look;
use crate::told::Told;
use crate::weighing::{Trial, visible};
use crate::{Case, Character, Level, Material, Strictness, Taxon, evidence};
use fewest::{Demand, fewest};
use ground::{Faults, Harm, Month, Organ, Region};
use jiff::civil::{Date, date};
use readable::{Readable, readable};
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

/// A plant that is gathered, and one that harms.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Pair {
    /// What is gathered.
    pub target: String,
    /// What it must not be.
    pub rival: String,
    /// How badly that hurts.
    pub harm: Harm,
    /// Whether the sheet of one names the other as a look-alike.
    pub named: bool,
    /// The characters that tell them apart, in the order of the table.
    pub tells: Vec<Telling>,
    /// Whether two of these stand apart: of different groups and organs, not both smelt. Without, the target is
    /// never determined where the other is named as its look-alike and does harm.
    pub told_apart: bool,
    /// The months in which the target shows two such.
    pub told_apart_in: Vec<Month>,
    /// How many readings must go wrong, month by month.
    pub passes: Vec<(Month, Passes)>,
}

/// A character by which two plants are told apart: read as the target typically shows it, it speaks for the target
/// at least four times over, and both sheets were read, not remembered.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Telling {
    /// The character.
    pub character: String,
    /// Its organ.
    pub organ: Organ,
    /// The months in which the target shows it.
    pub months: Vec<Month>,
}

/// How many independent readings must go wrong before the rival is determined for the target.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Passes {
    /// So many; none where it passes by what it usually shows.
    After(u32),
    /// More than [`MOST`].
    AfterMore,
    /// However many go wrong it does not pass: nor does the target itself.
    Never,
}

/// More misreadings than this are not counted one by one.
pub const MOST: u32 = 12;

impl Pair {
    /// The month in which fewest readings must go wrong, and how many those are.
    #[must_use]
    pub fn worst(&self) -> Option<(Month, Passes)> {
        self.passes.iter().copied().min_by_key(|(month, passes)| (*passes, *month))
    }

    /// The organs of what tells the two apart.
    #[must_use]
    pub fn organs(&self) -> Vec<Organ> {
        let mut organs: Vec<_> = self.tells.iter().map(|tell| tell.organ).collect();
        organs.sort();
        organs.dedup();
        organs
    }
}

/// A table made ready for asking what passes for what.
pub struct Pairs<'m> {
    judge: Judge<'m>,
    told: Told,
}

impl<'m> Pairs<'m> {
    /// For readers of this level. The better they are the more they are believed: a leader's misreadings are
    /// the fewest that something passes by.
    #[must_use]
    pub fn new(judge: &Judge<'m>, level: Level) -> Self {
        Self { judge: judge.clone(), told: Told::new(judge, level) }
    }

    /// A target with each plant of the table that may harm where it grows; no region: anywhere.
    ///
    /// The count is of the rival's own bar, its tells, the must-looks and the second reading; that every other
    /// rival must be set aside too, and what misfits, can only make it more. A reading goes wrong that finds what the
    /// rival seldom or never shows: it was misread, or the plant is odd. What its sheet says nothing of may be
    /// anything. Within one correlation group readings go wrong together, and count once for each reader.
    ///
    /// # Errors
    /// A target that is not in the table.
    pub fn of(&self, target: &str, region: Option<Region>) -> Result<Vec<Pair>, Faults> {
        self.judge.try_target(target, &at_large(region), |trial, _| {
            trial.rivals.iter().filter_map(|rival| self.pair(trial, rival)).collect()
        })
    }

    fn pair(&self, trial: &Trial<'_>, rival: &Rival) -> Option<Pair> {
        let RivalKind::Listed(harm) = rival.kind else { return None };
        if harm < Harm::Unknown {
            return None;
        }
        let row = self.judge.matrix().row(&rival.name)?;
        let columns = 0..self.judge.characters().len();
        let rows = (trial.target, row);
        let columns: Vec<_> =
            columns.filter_map(|column| readable(&self.judge, &self.told, column, rows)).collect();
        let other = self.judge.taxon(row)?;
        let mut known = BTreeMap::new();
        let month = |month| {
            let trial = Trial { month, ..*trial };
            (month, in_month(&trial, (rival, other), &columns, &mut known))
        };
        let tells: Vec<_> =
            columns.iter().filter(|one| one.tells).map(|one| one.character).collect();
        let told_apart = |seen: &dyn Fn(&Character) -> bool| {
            let seen: Vec<_> = tells.iter().filter(|tell| seen(tell)).collect();
            seen.iter().any(|a| seen.iter().any(|b| a.stands_apart(b, true)))
        };
        let in_months = Month::all().filter(|now| told_apart(&|c| visible(trial.taxon, c, *now)));
        Some(Pair {
            told_apart: told_apart(&|_| true),
            told_apart_in: in_months.collect(),
            target: trial.taxon.name.clone(),
            rival: rival.name.clone(),
            harm,
            named: rival.named,
            tells: tells.iter().map(|tell| telling(trial, tell)).collect(),
            passes: Month::all().map(month).collect(),
        })
    }
}

fn telling(trial: &Trial<'_>, character: &Character) -> Telling {
    let seen = |month: &Month| visible(trial.taxon, character, *month);
    Telling {
        character: character.id.clone(),
        organ: character.organ,
        months: Month::all().filter(seen).collect(),
    }
}

/// Many months are alike: what was counted once is known by what is seen and by what must be.
fn in_month(
    trial: &Trial<'_>,
    (rival, other): (&Rival, &Taxon),
    columns: &[Readable<'_>],
    known: &mut BTreeMap<(Vec<usize>, BTreeSet<String>), Passes>,
) -> Passes {
    let must = must_look(trial);
    let both = |one: &Readable<'_>| {
        trial.visible(one.character) && visible(other, one.character, trial.month)
    };
    let seen = columns.iter().enumerate().filter(|(_, one)| both(one));
    let (places, seen): (Vec<usize>, Vec<_>) = seen.unzip();
    let is_seen = |id: &String| seen.iter().any(|one| one.can_be_done && one.character.id == *id);
    // A must-look that cannot be read is never done.
    if !must.iter().all(is_seen) {
        return Passes::Never;
    }
    let count = |(_, must): &(_, BTreeSet<String>)| passes(&seen, must, rival);
    let key = (places, must);
    let passes = known.get(&key).copied().unwrap_or_else(|| count(&key));
    known.insert(key, passes);
    passes
}

/// Nothing read yet, on a day that decides nothing.
fn at_large(region: Option<Region>) -> Case {
    Case {
        specimen: String::new(),
        place: String::new(),
        day: first_of(1),
        region,
        material: Material::Living,
        strictness: Strictness::least(),
        looks: Vec::new(),
    }
}

fn first_of(month: i8) -> Date {
    date(2001, month, 1)
}

fn passes(seen: &[&Readable<'_>], must: &BTreeSet<String>, rival: &Rival) -> Passes {
    let bar = libm::log(rival.weight);
    let denials = if rival.is_dangerous() { evidence::DENIALS } else { 0 };
    let organs = rival.wants_tells().then_some(true);
    let once = Demand { at_least: bar, organs, twice: false, denials };
    let ways = match (rival.is_deadly(), rival.named) {
        (false, _) => vec![once],
        (true, true) => vec![Demand { organs: Some(true), twice: true, ..once }],
        // A second reading, or so much that it no longer weighs.
        (true, false) => vec![
            Demand { organs: Some(false), twice: true, ..once },
            Demand { at_least: bar - libm::log(evidence::CLOSE), ..once },
        ],
    };
    ways.iter().map(|demand| fewest(seen, must, demand)).min().unwrap_or(Passes::Never)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::Assessment;
    use crate::cases::{self, SIX, TARGET};
    use crate::{Look, Matrix, Reader, Seen, sample};

    const RIVAL: &str = "Colchicum autumnale";

    /// Every choice of who says of which character that it is as the target shows it, Ada, Ben or both: the
    /// fewest readings by which the rival, being in hand, meets the plain rules, its own bar among them.
    fn tried(matrix: &Matrix) -> Option<u32> {
        let judge = Judge::new(matrix);
        let all = SIX.iter().flat_map(|character| [("Ada", character), ("Ben", character)]);
        let all = all.enumerate().map(|(at, (name, character))| Look {
            reader: Reader { name: name.to_owned(), level: Level::Leader },
            time: date(2026, 5, 1).at(10, i8::try_from(at).unwrap(), 0, 0),
            ..sample::look(character, Seen::State("one".to_owned()))
        });
        let all: Vec<Look> = all.collect();
        let chosen = |set: u32| {
            let looks = all.iter().enumerate().filter(move |(at, _)| set >> at & 1 == 1);
            looks.map(|(_, look)| look.clone()).collect::<Vec<_>>()
        };
        let passes = |set: &u32| {
            let case = cases::case(chosen(*set));
            let passes = judge.try_target(TARGET, &case, |trial, testimonies| {
                let assessment = Assessment::new(trial, testimonies);
                let mut left = assessment.scales.contributions();
                assessment.must_looks_done()
                    && assessment.tells_met()
                    && assessment.read_twice()
                    && assessment.hardly_denied.is_empty()
                    && left.any(|(rival, part)| rival.name == RIVAL && part <= 1.0)
            });
            passes.unwrap()
        };
        (0..1u32 << all.len()).filter(passes).map(u32::count_ones).min()
    }

    fn counted(matrix: &Matrix) -> Pair {
        let judge = Judge::new(matrix);
        let pairs = Pairs::new(&judge, Level::Leader).of(TARGET, Some(Region::Europe)).unwrap();
        pairs.into_iter().find(|pair| pair.rival == RIVAL).unwrap()
    }

    /// The plain rules, tried on every set of answers, are the oracle.
    #[test]
    fn the_fewest_misreadings_are_those_that_the_plain_rules_fall_for() {
        let derived = sample::matrix();
        let said = |must: &[&str]| {
            cases::with_target(|taxon| {
                taxon.must_look = must.iter().map(|m| (*m).to_owned()).collect()
            })
        };
        for matrix in [derived, said(&["bract"]), said(&["base", "vein"]), said(&SIX)] {
            let worst = counted(&matrix).worst().unwrap().1;
            assert_eq!(tried(&matrix).map(Passes::After), Some(worst));
        }
    }

    #[test]
    fn tells_come_with_their_organs_and_months() {
        let pair = counted(&sample::matrix());
        assert!(pair.named && pair.told_apart && pair.told_apart_in.len() == 12);
        assert_eq!(pair.tells.len(), 6);
        assert!(pair.tells.iter().all(|tell| tell.months.len() == 12));
        assert_eq!(pair.organs().len(), 4);
    }

    #[test]
    fn what_is_only_remembered_tells_nothing_and_lets_nothing_pass() {
        let faded = cases::remembered(&["base", "stem", "bulb", "bract"]);
        let pair = counted(&faded);
        assert!(!pair.told_apart && pair.organs() == [Organ::Leaf]);
        assert_eq!(pair.worst().unwrap().1, Passes::Never);
    }
}
