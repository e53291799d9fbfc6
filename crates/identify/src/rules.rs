//! The rules beside the bar: tells, must-look characters, misfit, second reading.

use crate::rival::Rival;
use crate::spectrum::{Spectrum, likely, weights};
use crate::testimony::{Reading, Testimony};
use crate::weighing::{Scales, Trial, Weighed};
use crate::{Character, Seen, evidence};
use ground::Finite;
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

/// What tells the target from one dangerous look-alike, as far as it was looked at.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Tells {
    /// The look-alike.
    pub look_alike: String,
    /// Whether enough of them speak for the target: two groups of different organs, not both
    /// smelt.
    pub met: bool,
    /// The characters that speak for the target at least four times over, strongest first.
    pub characters: Vec<Tell>,
}

/// A character that speaks for the target over a look-alike.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Tell {
    /// The character.
    pub character: String,
    /// How many times likelier what was seen is of the target.
    pub times: Finite,
}

/// A character that must be looked at.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct MustLook {
    /// The character.
    pub character: String,
    /// How far that has been done.
    pub state: MustLookState,
}

/// How far a character that must be looked at has been.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MustLookState {
    /// Read, and agreeing with what the target mostly shows; no reading misfits.
    Done,
    /// Not yet read, or it could not be told.
    Open,
    /// Read by one reader, who found what the target shows now and then: somebody else must read it.
    Doubtful,
    /// Read, and not agreeing.
    Contrary,
    /// The target's sheet says nothing of it, or only from memory.
    NotKnown,
}

/// A rival that poisons or kills, and that too few readings deny.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Denial {
    /// The rival.
    pub rival: String,
    /// How many readings deny it, one of each reader and correlation group at most.
    pub readings: usize,
    /// Of how many organs.
    pub organs: usize,
}

/// A deadly rival that calls for a second reading.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct SecondReading {
    /// The rival.
    pub against: String,
    /// Whether there was one.
    pub had: bool,
}

/// How well what was read fits the target.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Misfit {
    /// Correlation groups in which something was read that the target hardly ever shows.
    pub groups: Vec<String>,
    /// Must-look characters in which that is so.
    pub must_look: Vec<String>,
    /// How many groups agree with the target.
    pub agreeing: usize,
}

impl Misfit {
    /// Whether it blocks: a must-look character, or two groups, or one that fewer than six
    /// agreeing groups stand against.
    #[must_use]
    pub fn blocks(&self) -> bool {
        let outweighed = self.groups.is_empty()
            || (self.groups.len() == 1 && self.agreeing >= evidence::OUTWEIGH);
        !self.must_look.is_empty() || !outweighed
    }

    /// Whether it is beyond one slip: two groups, or a must-look character.
    #[must_use]
    pub fn is_grave(&self) -> bool {
        self.groups.len() >= 2 || !self.must_look.is_empty()
    }
}

/// The tells against every look-alike that calls for them.
pub(crate) fn tells(scales: &Scales<'_>) -> Vec<Tells> {
    let calling = scales.rivals.iter().enumerate().filter(|(_, rival)| rival.wants_tells());
    calling.map(|(at, rival)| tells_against(scales, at, rival)).collect()
}

/// Whether they are enough against every one.
pub(crate) fn tells_met(scales: &Scales<'_>) -> bool {
    let mut calling = scales.rivals.iter().enumerate().filter(|(_, rival)| rival.wants_tells());
    calling.all(|(at, _)| told_apart(&strong(scales, at), true))
}

fn tells_against(scales: &Scales<'_>, at: usize, rival: &Rival) -> Tells {
    let mut strong = strong(scales, at);
    let met = told_apart(&strong, true);
    strong.sort_by(|a, b| a.factor(at).total_cmp(&b.factor(at)).then(a.column.cmp(&b.column)));
    let tell = |weighed: &&Weighed<'_>| Tell {
        character: weighed.character.id.clone(),
        times: Finite::new(1.0 / weighed.factor(at)).unwrap_or_default(),
    };
    Tells { look_alike: rival.name.clone(), met, characters: strong.iter().map(tell).collect() }
}

/// The characters that speak strongly for the target over a rival, in groups that as a whole do.
pub(crate) fn strong<'s, 'a>(scales: &'s Scales<'a>, rival: usize) -> Vec<&'s Weighed<'a>> {
    let is_strong = |factor: f64| factor <= 1.0 / evidence::TELL;
    let all = scales.weighed().filter(|weighed| is_strong(weighed.factor(rival)));
    all.filter(|weighed| is_strong(scales.group(&weighed.character.group, rival))).collect()
}

/// Whether two of these lie in different groups, one of them not smelt, and, where that is asked,
/// in different organs.
pub(crate) fn told_apart(strong: &[&Weighed<'_>], of_two_organs: bool) -> bool {
    let all = || strong.iter().map(|weighed| weighed.character);
    let mut pairs = all().flat_map(|a| all().map(move |b| (a, b)));
    pairs.any(|(a, b)| a.stands_apart(b, of_two_organs))
}

/// The dangerous rivals of the table that too few readings deny.
pub(crate) fn denied_too_seldom(scales: &Scales<'_>) -> Vec<Denial> {
    dangerous(scales.rivals).filter_map(|(at, _)| denial(scales, at)).collect()
}

/// How many readings must deny a dangerous rival: twice as many where all are of one organ, such as the needles of a
/// young spruce.
pub(crate) fn denials_wanted(organs: usize) -> usize {
    if organs >= 2 { evidence::DENIALS } else { 2 * evidence::DENIALS }
}

/// The rivals of the table that poison or kill, with their numbers.
pub(crate) fn dangerous(rivals: &[Rival]) -> impl Iterator<Item = (usize, &Rival)> {
    rivals.iter().enumerate().filter(|(_, rival)| rival.is_dangerous())
}

/// How a dangerous rival is denied, where that is not enough.
pub(crate) fn denial(scales: &Scales<'_>, at: usize) -> Option<Denial> {
    let (readings, organs) = scales.denied(at);
    let rival = scales.rivals.get(at).filter(|_| readings < denials_wanted(organs.len()))?;
    Some(Denial { rival: rival.name.clone(), readings, organs: organs.len() })
}

/// The numbers of the deadly rivals that call for a second reading: every deadly look-alike that is
/// named, and every deadly rival that still weighs on the bar.
pub(crate) fn calling_twice(scales: &Scales<'_>) -> Vec<usize> {
    let weighs = |at: usize, rival: &Rival| rival.weight * scales.factor(at) >= evidence::CLOSE;
    let rivals = scales.rivals.iter().enumerate();
    let calling = rivals.filter(|(at, r)| r.is_deadly() && (r.named || weighs(*at, r)));
    calling.map(|(at, _)| at).collect()
}

/// The deadly rivals that call for a second reading, and whether each has had it: whether the
/// characters that were read twice would by themselves tell the two apart.
pub(crate) fn second_reading(
    trial: &Trial<'_>,
    heard: &[Heard<'_>],
    scales: &Scales<'_>,
) -> Vec<SecondReading> {
    let one = |at: usize| {
        let rival = scales.rivals.get(at)?;
        let mut twice = strong(scales, at);
        twice
            .retain(|w| heard_of(heard, w.column).is_some_and(|h| trial.twice(h.testimony, rival)));
        Some(SecondReading { against: rival.name.clone(), had: told_apart(&twice, rival.named) })
    };
    calling_twice(scales).into_iter().filter_map(one).collect()
}

/// The characters that must be looked at: those that the sheet says; where it says none, those said
/// to tell the target from its dangerous look-alikes and to be seen this month.
pub(crate) fn must_look(trial: &Trial<'_>) -> BTreeSet<String> {
    let taxon = trial.taxon;
    if !taxon.must_look.is_empty() {
        return taxon.must_look.iter().cloned().collect();
    }
    let dangerous: Vec<_> = trial.rivals.iter().filter(|rival| rival.wants_tells()).collect();
    let own = taxon.look_alikes.iter().filter(|a| dangerous.iter().any(|r| r.name == a.name));
    let others = dangerous.iter().filter_map(|rival| rival.taxon(trial.judge));
    let theirs =
        others.flat_map(|other| &other.look_alikes).filter(|alike| alike.name == taxon.name);
    let tells = own.chain(theirs).flat_map(|alike| &alike.tells);
    let seen_now = |tell: &&String| {
        trial.judge.matrix().character(tell).is_some_and(|character| trial.visible(character))
    };
    tells.filter(seen_now).cloned().collect()
}

/// How far each of these has been looked at.
pub(crate) fn must_look_states(
    trial: &Trial<'_>,
    heard: &[Heard<'_>],
    must: &BTreeSet<String>,
) -> Vec<MustLook> {
    let state = |character: &String| {
        let column = trial.judge.matrix().column(character);
        let said = column.and_then(|column| known(trial, column));
        let read = column.and_then(|column| heard_of(heard, column));
        let fits = read.map(|heard| &*heard.fits).unwrap_or_default();
        match said {
            None => MustLookState::NotKnown,
            Some(_) if fits.is_empty() => MustLookState::Open,
            Some(_) if fits.contains(&Fit::Agrees) && !fits.contains(&Fit::Misfits) => {
                MustLookState::Done
            }
            Some(_) if fits.contains(&Fit::Misfits) => MustLookState::Contrary,
            Some(_) if read.is_some_and(|h| h.testimony.readers() < 2) => MustLookState::Doubtful,
            Some(_) => MustLookState::Contrary,
        }
    };
    let one =
        |character: &String| MustLook { character: character.clone(), state: state(character) };
    must.iter().map(one).collect()
}

/// What the target shows of a character that must be looked at: to agree with what somebody only remembers
/// clears nobody.
pub(crate) fn known<'a>(trial: &Trial<'a>, column: usize) -> Option<&'a Spectrum> {
    trial.judge.shown(trial.target, column).filter(|spectrum| spectrum.clears)
}

/// A testimony, and how each of its readings that says something fits the target.
#[derive(Clone, Debug)]
pub(crate) struct Heard<'t> {
    pub(crate) testimony: &'t Testimony,
    pub(crate) fits: Rc<[Fit]>,
}

/// All testimonies, with how they fit.
pub(crate) fn heard<'t>(trial: &Trial<'_>, testimonies: &'t [Testimony]) -> Vec<Heard<'t>> {
    let one = |testimony| Heard { testimony, fits: fits(trial, testimony).into() };
    testimonies.iter().map(one).collect()
}

/// What was heard of a character.
pub(crate) fn heard_of<'h, 't>(heard: &'h [Heard<'t>], column: usize) -> Option<&'h Heard<'t>> {
    heard.iter().find(|heard| heard.testimony.column == column)
}

/// How a reading fits the target. From the worst to the best.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Fit {
    /// The target hardly ever shows it.
    Misfits,
    /// The target shows it, but shows something else far more.
    Strains,
    /// It is as good as what the target shows most.
    Agrees,
}

/// How well the readings fit the target, group by group.
pub(crate) fn misfit(trial: &Trial<'_>, heard: &[Heard<'_>], must: &BTreeSet<String>) -> Misfit {
    let mut groups: BTreeMap<&str, Fit> = BTreeMap::new();
    let mut misfit = Misfit::default();
    for Heard { testimony, fits } in heard {
        let Some(character) = trial.judge.character(testimony.column) else {
            continue;
        };
        for fit in fits.iter() {
            let worst = groups.entry(&character.group).or_insert(*fit);
            *worst = (*fit).min(*worst);
            if *fit == Fit::Misfits && must.contains(&character.id) {
                misfit.must_look.push(character.id.clone());
            }
        }
    }
    misfit.must_look.dedup();
    misfit.agreeing = groups.values().filter(|fit| **fit == Fit::Agrees).count();
    let misfits = groups.iter().filter(|(_, fit)| **fit == Fit::Misfits);
    misfit.groups = misfits.map(|(group, _)| (*group).to_owned()).collect();
    misfit
}

/// How each reading of a testimony that says something fits the target.
pub(crate) fn fits(trial: &Trial<'_>, testimony: &Testimony) -> Vec<Fit> {
    let character = trial.judge.character(testimony.column);
    let spectrum = trial.judge.shown(trial.target, testimony.column);
    let Some((character, spectrum)) = character.zip(spectrum) else {
        return Vec::new();
    };
    let Some(cell) = trial.judge.matrix().at(trial.target, testimony.column) else {
        return Vec::new();
    };
    let said = testimony.readings.iter().filter(|reading| reading.seen.says_something());
    said.map(|reading| fit(spectrum, reading, &likely(character, cell), character)).collect()
}

fn fit(spectrum: &Spectrum, reading: &Reading, likely: &[Seen], character: &Character) -> Fit {
    let misread = reading.level.misread(character.organ);
    let chance = |seen| spectrum.chance(&weights(character, seen, misread));
    let best = likely.iter().map(chance).fold(0.0, f64::max);
    let share = spectrum.chance(&reading.weights) / best;
    if share < evidence::MISFIT {
        Fit::Misfits
    } else if share < evidence::AGREES {
        Fit::Strains
    } else {
        Fit::Agrees
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::judge::Judge;
    use crate::sample;
    use crate::{Level, Look, Reader, Sense, cases};
    use ground::Organ;

    fn weighed(character: &Character) -> Weighed<'_> {
        Weighed { column: 0, character, factors: [0.01].into(), denials: [].into() }
    }

    #[test]
    fn tells_are_of_two_groups_and_two_organs_and_not_both_smelt() {
        let base = sample::character("base", &["one"]);
        let stem = Character { organ: Organ::Stem, ..sample::character("stem", &["one"]) };
        let same_group = Character { group: "base".to_owned(), ..stem.clone() };
        let same_organ = sample::character("vein", &["one"]);
        let smelt = |character: &Character| Character { sense: Sense::Smell, ..character.clone() };
        let apart = |a: &Character, b: &Character| told_apart(&[&weighed(a), &weighed(b)], true);
        assert!(apart(&base, &stem) && apart(&smelt(&base), &stem));
        assert!(!apart(&base, &base) && !apart(&base, &same_group) && !apart(&base, &same_organ));
        assert!(!apart(&smelt(&base), &smelt(&stem)));
        assert!(told_apart(&[&weighed(&base), &weighed(&same_organ)], false));
    }

    /// A rival of the invented table, after these were read as ramsons show them: how many readings deny it, of
    /// how many organs; nothing where that is enough.
    fn denied_after(rival: &str, read: &[(&[&str], &str)]) -> Option<(usize, usize)> {
        let matrix = sample::matrix();
        let judge = Judge::new(&matrix);
        let looks = read.iter().flat_map(|(characters, name)| {
            characters.iter().map(|character| Look {
                reader: Reader { name: (*name).to_owned(), level: Level::Leader },
                ..sample::look(character, Seen::State("one".to_owned()))
            })
        });
        let case = cases::case(looks.collect());
        let found = judge.try_target(cases::TARGET, &case, |trial, testimonies| {
            denied_too_seldom(&trial.scales(testimonies))
        });
        let found = found.unwrap().into_iter().find(|denial| denial.rival == rival);
        found.map(|denial| (denial.readings, denial.organs))
    }

    #[test]
    fn whatever_poisons_is_denied_by_five_readings_of_two_organs() {
        let leaf = &["smell", "base", "vein"][..];
        for rival in ["Colchicum autumnale", "Mentha pulegium"] {
            let after = |read: &[(&[&str], &str)]| denied_after(rival, read);
            assert_eq!(after(&[]), Some((0, 0)));
            assert_eq!(after(&[(&["stem", "bulb"], "Ada")]), Some((2, 2)));
            assert_eq!(after(&[(&["stem", "bulb", "base", "vein"], "Ada")]), Some((4, 3)));
            assert_eq!(after(&[(&["stem", "bulb", "base", "vein", "smell"], "Ada")]), None);
            let again = |twice: &'static [&str]| (twice, "Ben");
            assert_eq!(
                after(&[(&["stem", "bulb", "base"], "Ada"), again(&["bulb"])]),
                Some((4, 3))
            );
            assert_eq!(
                after(&[(&["stem", "bulb", "base"], "Ada"), again(&["bulb", "stem"])]),
                None
            );
            assert_eq!(after(&[(&["stem"], "Ada"), (&["stem"], "Ben")]), Some((2, 1)));
            assert_eq!(after(&[(leaf, "Ada")]), Some((3, 1)));
            assert_eq!(after(&[(leaf, "Ada"), (leaf, "Ben")]), Some((6, 1)));
        }
    }

    #[test]
    fn one_misfit_is_outweighed_by_six_groups_and_never_in_a_must_look() {
        let misfit = |groups: &[&str], must_look: &[&str], agreeing| Misfit {
            groups: groups.iter().map(|group| (*group).to_owned()).collect(),
            must_look: must_look.iter().map(|must| (*must).to_owned()).collect(),
            agreeing,
        };
        assert!(!misfit(&[], &[], 0).blocks());
        assert!(misfit(&["a"], &[], 5).blocks() && !misfit(&["a"], &[], 6).blocks());
        assert!(misfit(&["a", "b"], &[], 20).blocks() && misfit(&["a", "b"], &[], 20).is_grave());
        assert!(misfit(&["a"], &["c"], 20).blocks() && misfit(&["a"], &["c"], 20).is_grave());
        assert!(!misfit(&["a"], &[], 0).is_grave());
    }
}
