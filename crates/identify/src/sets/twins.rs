//! The smallest sets of characters that tell a plant from all that it is taken for, as surely as the rules
//! ask before it is determined.
//!
//! Two characters of different correlation groups must tell it from each twin; from one that harms, of
//! different organs and not both smelt. Characters of which no two go together so are pairwise alike:
//! of one group, of one organ, or smelt. So a set holds two that go together unless it lies within
//! one of the largest lots of characters that are pairwise alike; it is asked for one character beyond
//! each of these lots.

use super::{Effort, Separation, Smallest};
use crate::compare::never_alike;
use crate::judge::Judge;
use crate::spectrum::{typical, weights};
use crate::testimony::floored;
use crate::weighing::visible;
use crate::{Character, Level, Reading, Sense, evidence};
use ground::{Faults, Harm, Month};
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

/// What a plant is to be told apart by, each time another group.
const TIMES: usize = 2;

/// The smallest sets of characters that tell a plant from its twins.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct FromTwins {
    /// The sets.
    pub smallest: Smallest<String, String>,
    /// By set: seconds that it takes.
    pub seconds: Vec<u32>,
    /// What stands between the plant and each twin, in the order in which these were asked for.
    pub twins: Vec<Between>,
    /// What reading each character of the sets takes.
    pub readings: BTreeMap<String, Reading>,
}

/// What stands between a plant and a twin. Every character is in one list at most.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Between {
    /// The twin.
    pub twin: String,
    /// Whether it harms, or has no sheet: then two organs are asked for, and not two smells.
    pub dangerous: bool,
    /// How surely it can be told apart.
    pub reach: Reach,
    /// What tells them apart: both sheets were read, they name nothing in common, the plant shows it in
    /// the month, and what it mostly shows, as the reader reads it, is at least four times likelier of
    /// it than of the twin.
    pub tells: Vec<String>,
    /// What would mostly: now and then the two are alike.
    pub mostly: Vec<String>,
    /// What would, in a month in which the plant shows it.
    pub not_now: Vec<String>,
    /// What would, if it were not only remembered.
    pub remembered: Vec<String>,
    /// What would, if readers of this level read it better.
    pub misread: Vec<String>,
    /// What one sheet says and the other does not.
    pub empty: Vec<String>,
}

/// How surely two plants can be told apart. From the least.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Reach {
    /// Not at all.
    Never,
    /// By characters of one group.
    Once,
    /// By characters of two groups, but of one organ, or both smelt.
    NotOfTwoOrgans,
    /// As the rules ask.
    AsAsked,
}

/// What stands in the way of a character that might tell.
enum Standing {
    Tells,
    Mostly,
    NotNow,
    Remembered,
    Misread,
    Empty,
}

impl Judge<'_> {
    /// The smallest sets of characters that tell a plant from each of its twins as surely as the rules
    /// ask, or as surely as can be, in a month, by readers of a level.
    ///
    /// When the twins show a character does not matter: a plant in hand that lacks the organ is not the
    /// target either.
    ///
    /// # Errors
    /// A target that is not in the table. A twin that is not counts as dangerous, and nothing tells it
    /// apart.
    pub fn from_twins(
        &self,
        target: &str,
        twins: &[String],
        month: Option<Month>,
        level: Level,
        effort: Effort,
    ) -> Result<FromTwins, Faults> {
        let row = self.row("compare", target)?;
        let between: Vec<_> =
            twins.iter().map(|twin| self.between(row, twin, month, level)).collect();
        let columns = |twin: &Between| {
            let tells = twin.tells.iter().filter_map(|id| self.matrix().column(id));
            tells.collect::<Vec<_>>()
        };
        let also = between
            .iter()
            .filter(|twin| twin.dangerous)
            .flat_map(|twin| self.beyond(&columns(twin)));
        let smallest = Separation::new(&self.groups(), between.iter().map(columns))
            .in_seconds(self.characters().iter().map(|character| character.seconds))
            .and_one_of(also)
            .smallest(TIMES, effort);
        let used: BTreeSet<usize> = smallest.sets.iter().flatten().copied().collect();
        let used = used.into_iter().filter_map(|column| self.character(column));
        let names: Vec<&str> = twins.iter().map(String::as_str).collect();
        Ok(FromTwins {
            seconds: smallest.sets.iter().map(|set| self.seconds(set)).collect(),
            smallest: smallest.named(&names, &self.names()),
            twins: between,
            readings: used.map(|used| (used.id.clone(), Reading::of(used))).collect(),
        })
    }

    fn seconds(&self, set: &[usize]) -> u32 {
        set.iter().filter_map(|column| self.character(*column)).map(|c| u32::from(c.seconds)).sum()
    }

    fn between(&self, target: usize, twin: &str, month: Option<Month>, level: Level) -> Between {
        let row = self.matrix().row(twin);
        let harm = row.and_then(|row| self.taxon(row)).map_or(Harm::Deadly, |taxon| taxon.harm);
        let none = Vec::new;
        let mut between = Between {
            twin: twin.to_owned(),
            dangerous: harm >= Harm::Harmful,
            reach: Reach::Never,
            tells: none(),
            mostly: none(),
            not_now: none(),
            remembered: none(),
            misread: none(),
            empty: none(),
        };
        let mut tells = Vec::new();
        for column in 0..self.characters().len() {
            let standing = row.and_then(|row| self.standing((target, row), column, month, level));
            let Some((standing, character)) = standing.zip(self.character(column)) else {
                continue;
            };
            let list = match standing {
                Standing::Tells => {
                    tells.push(character);
                    &mut between.tells
                }
                Standing::Mostly => &mut between.mostly,
                Standing::NotNow => &mut between.not_now,
                Standing::Remembered => &mut between.remembered,
                Standing::Misread => &mut between.misread,
                Standing::Empty => &mut between.empty,
            };
            list.push(character.id.clone());
        }
        between.reach = reach(&tells, between.dangerous);
        between
    }

    /// What a character does for a target and a twin; nothing where they may look alike.
    fn standing(
        &self,
        (target, twin): (usize, usize),
        column: usize,
        month: Option<Month>,
        level: Level,
    ) -> Option<Standing> {
        let (taxon, character) = (self.taxon(target)?, self.character(column)?);
        let now = month.is_none_or(|month| visible(taxon, character, month));
        let cells = (self.matrix().at(target, column), self.matrix().at(twin, column));
        let (own, other) = match cells {
            (Some(own), Some(other)) => (own, other),
            (None, None) => return None,
            _ => return now.then_some(Standing::Empty),
        };
        let (here, there) = (self.shown(target, column)?, self.shown(twin, column)?);
        let seen = weights(character, &typical(character, own)?, level.misread(character.organ));
        let times = floored(here.chance(&seen)) / floored(there.chance(&seen));
        let speaks = here.may_favour(&seen) && there.may_favour(&seen) && times >= evidence::TELL;
        if !never_alike(&character.kind, &own.value, &other.value) {
            return (now && speaks).then_some(Standing::Mostly);
        }
        if !(here.clears && there.clears) {
            return Some(Standing::Remembered);
        }
        if !now {
            return Some(Standing::NotNow);
        }
        Some(if speaks { Standing::Tells } else { Standing::Misread })
    }

    /// For each largest lot of these characters that are pairwise alike, the others; lots of one group
    /// are left out.
    fn beyond(&self, columns: &[usize]) -> Vec<Vec<usize>> {
        let known: Vec<(usize, &Character)> =
            columns.iter().filter_map(|column| Some((*column, self.character(*column)?))).collect();
        let alike = |a: usize, b: usize| {
            let two = known.get(a).zip(known.get(b));
            two.is_some_and(|((_, a), (_, b))| !go_together(a, b, true))
        };
        let of_one_group = |lot: &Vec<usize>| {
            let group = |at: &usize| known.get(*at).map(|(_, character)| &character.group);
            lot.windows(2).all(|two| two.first().and_then(group) == two.last().and_then(group))
        };
        let lots = lots(known.len(), &alike).into_iter().filter(|lot| !of_one_group(lot));
        let others = |lot: Vec<usize>| {
            let all = known.iter().enumerate().filter(|(at, _)| !lot.contains(at));
            all.map(|(_, (column, _))| *column).collect()
        };
        lots.map(others).collect()
    }
}

/// Whether two characters tell apart as surely as the rules ask.
fn go_together(a: &Character, b: &Character, of_two_organs: bool) -> bool {
    let both_smelt = a.sense == Sense::Smell && b.sense == Sense::Smell;
    a.group != b.group && (!of_two_organs || (a.organ != b.organ && !both_smelt))
}

fn reach(tells: &[&Character], dangerous: bool) -> Reach {
    let any = |of_two_organs| {
        tells.iter().any(|a| tells.iter().any(|b| go_together(a, b, of_two_organs)))
    };
    match (tells.is_empty(), any(false), any(dangerous)) {
        (true, ..) => Reach::Never,
        (_, false, _) => Reach::Once,
        (_, _, false) => Reach::NotOfTwoOrgans,
        _ => Reach::AsAsked,
    }
}

/// The largest lots of so many things that are pairwise alike, each once (Bron & Kerbosch 1973,
/// Communications of the ACM 16:575–577, with the pivot of Tomita, Tanaka & Takahashi 2006,
/// Theoretical Computer Science 363:28–42).
fn lots(many: usize, alike: &impl Fn(usize, usize) -> bool) -> Vec<Vec<usize>> {
    let mut found = Vec::new();
    grow(&mut Vec::new(), (0..many).collect(), Vec::new(), alike, &mut found);
    found
}

/// Grows a lot by things that are alike all in it; those in `done` were tried already.
fn grow(
    lot: &mut Vec<usize>,
    mut open: Vec<usize>,
    mut done: Vec<usize>,
    alike: &impl Fn(usize, usize) -> bool,
    found: &mut Vec<Vec<usize>>,
) {
    let near = |of: usize, all: &[usize]| -> Vec<usize> {
        all.iter().copied().filter(|other| *other != of && alike(of, *other)).collect()
    };
    let pivot = open.iter().chain(&done).copied().max_by_key(|at| near(*at, &open).len());
    let Some(pivot) = pivot else {
        found.push(lot.clone());
        return;
    };
    let kin = near(pivot, &open);
    for next in open.clone().into_iter().filter(|at| !kin.contains(at)) {
        lot.push(next);
        grow(lot, near(next, &open), near(next, &done), alike, found);
        lot.pop();
        open.retain(|at| *at != next);
        done.push(next);
    }
}

#[cfg(test)]
mod tests;
