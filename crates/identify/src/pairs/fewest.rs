//! The fewest misreadings that lift the rival over all that is asked of the target.

use super::{MOST, Passes, Readable};
use crate::{Sense, evidence};
use std::collections::{BTreeMap, BTreeSet};

/// What is asked against one rival.
#[derive(Clone, Copy, Debug)]
pub(super) struct Demand {
    /// The natural logarithm of how many times over the target must be spoken for.
    pub(super) at_least: f64,
    /// Whether two groups must speak strongly, not both smelt, and whether of different organs.
    pub(super) organs: Option<bool>,
    /// Whether these two must be read twice, and neither be smelt.
    pub(super) twice: bool,
    /// How many readings must deny the rival, of two organs; of one organ twice as many.
    pub(super) denials: usize,
}

/// A correlation group.
#[derive(Clone, Copy, Debug)]
struct Group {
    /// By how many readers misread it, none, one or two: how far it then speaks for the target.
    speaks: [Option<f64>; 3],
    /// The organs of what may be misread, as bits.
    organs: u32,
}

/// Groups of which at least so many readers must misread.
type Forced<'g> = BTreeMap<&'g str, usize>;

pub(super) fn fewest(seen: &[&Readable<'_>], must: &BTreeSet<String>, demand: &Demand) -> Passes {
    let mut by_group: BTreeMap<&str, Vec<&Readable<'_>>> = BTreeMap::new();
    for one in seen {
        by_group.entry(&one.character.group).or_default().push(one);
    }
    let groups: BTreeMap<&str, Group> =
        by_group.iter().map(|(name, members)| (*name, group(members, must))).collect();
    let ways = match demand.organs {
        None => BTreeSet::from([Forced::new()]),
        Some(of_two_organs) => strong_pairs(seen, of_two_organs, demand.twice),
    };
    let least = least(&ways);
    least.map(|forced| with(&groups, forced, demand)).min().unwrap_or(Passes::Never)
}

/// Those that no other one is part of: whoever is forced to less can do whatever the other can.
fn least<'w, 'g>(ways: &'w BTreeSet<Forced<'g>>) -> impl Iterator<Item = &'w Forced<'g>> {
    let part = |less: &Forced<'_>, of: &Forced<'_>| {
        less.iter().all(|(group, times)| of.get(group).is_some_and(|more| more >= times))
    };
    ways.iter().filter(move |way| !ways.iter().any(|other| other != *way && part(other, way)))
}

/// The best that favours, and all that is contrary of what must be looked at; nothing where what must be looked at
/// does not agree.
fn group(members: &[&Readable<'_>], must: &BTreeSet<String>) -> Group {
    let is_must = |one: &&&Readable<'_>| must.contains(&one.character.id);
    let musts = || members.iter().filter(is_must);
    let honest = |one: &&Readable<'_>| {
        if must.contains(&one.character.id) { one.honest_agreeing } else { one.honest }
    };
    let contrary: f64 = musts().filter_map(|one| one.honest_agreeing).map(|f| f.min(0.0)).sum();
    let best = members.iter().filter_map(honest).fold(0.0, f64::max);
    let possible = musts().all(|one| one.honest_agreeing.is_some());
    let misread =
        |of: fn(&Readable<'_>) -> f64| members.iter().map(|one| of(one)).fold(best, f64::max);
    let speaks = [
        possible.then_some(best + contrary),
        Some(misread(|one| one.misread)),
        Some(misread(|one| one.misread_twice)),
    ];
    let deniable = members.iter().filter(|one| one.deniable);
    Group { speaks, organs: deniable.fold(0, |bits, one| bits | 1 << one.character.organ as u32) }
}

/// Every two characters that may be read as strong tells, by how often their groups must be misread for it.
fn strong_pairs<'g>(
    seen: &[&'g Readable<'_>],
    of_two_organs: bool,
    twice: bool,
) -> BTreeSet<Forced<'g>> {
    let strong = libm::log(evidence::TELL);
    let times = |one: &Readable<'_>| {
        if one.honest.is_some_and(|favour| favour >= strong) {
            Some(0)
        } else {
            (one.misread >= strong).then_some(if twice { 2 } else { 1 })
        }
    };
    let smelt = |one: &Readable<'_>| one.character.sense == Sense::Smell;
    let could = seen.iter().filter(|one| !(twice && smelt(one)));
    let could: Vec<_> = could.filter_map(|one| Some((*one, times(one)?))).collect();
    let mut ways = BTreeSet::new();
    for (at, (a, first)) in could.iter().enumerate() {
        for (b, second) in could.iter().skip(at + 1) {
            let (one, other) = (a.character, b.character);
            if one.stands_apart(other, of_two_organs) {
                let both = [(one.group.as_str(), *first), (other.group.as_str(), *second)];
                ways.insert(both.into_iter().filter(|(_, times)| *times > 0).collect());
            }
        }
    }
    ways
}

/// By how many misreadings, and by whether they are of no organ, of which one, or of several: the most that they
/// speak for the target, where they can at all.
type Reached = Vec<Vec<Option<f64>>>;

/// The organs of some misreadings, and of more, among so many; where organs do not matter there is one place.
fn joined(known: usize, more: u32, organs: usize) -> usize {
    let several = organs + 1;
    let bits = match known {
        _ if organs == 0 => return 0,
        0 => more,
        known if known == several => return several,
        one => more | 1 << (one - 1),
    };
    match (bits, bits.is_power_of_two()) {
        (0, _) => 0,
        (bits, true) => bits.trailing_zeros() as usize + 1,
        _ => several,
    }
}

/// The fewest misreadings that reach what is asked, by the most that each number of them reaches.
fn with(groups: &BTreeMap<&str, Group>, forced: &Forced<'_>, demand: &Demand) -> Passes {
    let all = groups.values().fold(0, |bits, group| bits | group.organs);
    let organs = if demand.denials > 0 { 32 - all.leading_zeros() as usize } else { 0 };
    let places = if organs > 0 { organs + 2 } else { 1 };
    // Beyond the last row nothing is counted one by one.
    let nowhere: Reached = vec![vec![None; places]; MOST as usize + 2];
    let mut most = nowhere.clone();
    put(&mut most, (0, 0), 0.0);
    for (name, group) in groups {
        let from = forced.get(name).copied().unwrap_or(0);
        let mut next = nowhere.clone();
        for (times, speaks) in group.speaks.iter().enumerate().skip(from) {
            let Some(speaks) = speaks else { continue };
            let more = if times > 0 { group.organs } else { 0 };
            for (before, by_organs) in most.iter().enumerate() {
                for (known, sum) in by_organs.iter().enumerate() {
                    let Some(sum) = sum else { continue };
                    put(&mut next, (before + times, joined(known, more, organs)), sum + speaks);
                }
            }
        }
        most = next;
    }
    let reaches = |sum: &Option<f64>| sum.is_some_and(|sum| sum >= demand.at_least);
    let enough = |(times, by_organs): &(usize, &Vec<Option<f64>>)| {
        let of_several = *times >= demand.denials && by_organs.last().is_some_and(reaches);
        of_several || (*times >= 2 * demand.denials && by_organs.iter().any(reaches))
    };
    match most.iter().enumerate().find(enough).map(|(times, _)| u32::try_from(times)) {
        None => Passes::Never,
        Some(Ok(times)) if times <= MOST => Passes::After(times),
        Some(_) => Passes::AfterMore,
    }
}

fn put(reached: &mut Reached, (times, organs): (usize, usize), sum: f64) {
    let last = reached.len() - 1;
    let place = reached.get_mut(times.min(last)).and_then(|by_organs| by_organs.get_mut(organs));
    if let Some(place) = place {
        *place = Some(place.map_or(sum, |known| known.max(sum)));
    }
}
