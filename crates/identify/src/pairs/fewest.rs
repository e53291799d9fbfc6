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
    /// How many readings must deny the rival, of two organs.
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
    ways.iter().map(|forced| with(&groups, forced, demand)).min().unwrap_or(Passes::Never)
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

/// What misreadings come to: how many, and of which organs.
type Misread = (usize, u32);

/// The fewest misreadings that reach what is asked, by the most that each number of them reaches.
fn with(groups: &BTreeMap<&str, Group>, forced: &Forced<'_>, demand: &Demand) -> Passes {
    let mut most: BTreeMap<Misread, f64> = BTreeMap::from([((0, 0), 0.0)]);
    for (name, group) in groups {
        let from = forced.get(name).copied().unwrap_or(0);
        let mut next = BTreeMap::new();
        for (times, speaks) in group.speaks.iter().enumerate().skip(from) {
            let Some(speaks) = speaks else { continue };
            let organs = if times > 0 { group.organs } else { 0 };
            for ((before, known), sum) in &most {
                // More than can be told apart below count alike.
                let place = ((before + times).min(MOST as usize + 1), known | organs);
                let best = next.entry(place).or_insert(f64::NEG_INFINITY);
                *best = f64::max(*best, sum + speaks);
            }
        }
        most = next;
    }
    let enough = |((times, organs), sum): &(&Misread, &f64)| {
        let denied = *times >= demand.denials && (demand.denials == 0 || organs.count_ones() >= 2);
        denied && **sum >= demand.at_least
    };
    match most.iter().find(enough).map(|((times, _), _)| u32::try_from(*times)) {
        None => Passes::Never,
        Some(Ok(times)) if times <= MOST => Passes::After(times),
        Some(_) => Passes::AfterMore,
    }
}
