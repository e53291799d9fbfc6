//! Which signs a piece is held against.

use super::LOOKS;
use super::basket::chance;
use crate::Level;
use ground::Organ;
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// A character that can be read on a gathered piece.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Sign {
    /// The character.
    pub character: String,
    /// Its correlation group: characters of one are misread together.
    pub group: String,
    /// Its organ.
    pub organ: Organ,
    /// Seconds that reading it takes.
    pub seconds: u16,
}

/// The signs that tell each look-alike by [`LOOKS`] of its groups, as far as it has so many: one by one the
/// sign that serves most look-alikes a second, of equals the first by name.
#[must_use]
pub fn looks<'a>(twins: &[Vec<&'a Sign>]) -> Vec<&'a Sign> {
    let mut chosen: Vec<&Sign> = Vec::new();
    let all: BTreeSet<&Sign> = twins.iter().flatten().copied().collect();
    loop {
        let wants = |sign: &&Sign| {
            let serves = |twin: &&Vec<&Sign>| twin.contains(sign) && lacks(twin, &chosen, sign);
            twins.iter().filter(serves).count()
        };
        let worth = |sign: &&Sign| wants(sign) as f64 / f64::from(sign.seconds.max(1));
        let best =
            all.iter().filter(|sign| wants(sign) > 0).fold(None, |best: Option<&Sign>, sign| {
                match best {
                    Some(known) if worth(&known) >= worth(sign) => Some(known),
                    _ => Some(sign),
                }
            });
        let Some(best) = best else { return chosen };
        chosen.push(best);
    }
}

/// Whether a look-alike is told by too few of those chosen, and this one is of a new group.
fn lacks(twin: &[&Sign], chosen: &[&Sign], sign: &Sign) -> bool {
    let told = chosen.iter().filter(|other| twin.contains(other));
    let groups: BTreeSet<_> = told.map(|other| &other.group).collect();
    groups.len() < LOOKS && !groups.contains(&sign.group)
}

/// How likely somebody misreads every one of these on one piece: the product over their groups, of which each
/// is misread as often as its worst. Certain where there is none.
#[must_use]
pub fn misread_all(level: Level, signs: &[&Sign]) -> f64 {
    let groups: BTreeSet<_> = signs.iter().map(|sign| &sign.group).collect();
    let worst = |group: &&String| {
        let of_it = signs.iter().filter(|sign| sign.group == **group);
        of_it.map(|sign| level.misread(sign.organ)).fold(0.0, f64::max)
    };
    chance(groups.iter().map(worst).product())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sign(character: &str, group: &str, organ: Organ, seconds: u16) -> Sign {
        Sign { character: character.to_owned(), group: group.to_owned(), organ, seconds }
    }

    #[test]
    fn each_look_alike_is_told_twice_by_the_quickest() {
        let veins = sign("veins", "veins", Organ::Leaf, 5);
        let base = sign("base", "base", Organ::Leaf, 5);
        let tip = sign("tip", "base", Organ::Leaf, 2);
        let gloss = sign("gloss", "gloss", Organ::Leaf, 30);
        let twins = [vec![&veins, &base, &gloss], vec![&veins, &gloss, &tip], vec![]];
        let said: Vec<_> = looks(&twins).iter().map(|sign| sign.character.as_str()).collect();
        // The first is told by veins and base, the second by tip and veins; gloss is not needed.
        assert_eq!(said, ["tip", "veins", "base"]);
    }

    #[test]
    fn signs_of_one_group_are_misread_together() {
        let veins = sign("veins", "leaf", Organ::Leaf, 5);
        let base = sign("base", "leaf", Organ::Stem, 5);
        let bulb = sign("bulb", "bulb", Organ::Underground, 5);
        let public = |signs: &[&Sign]| misread_all(Level::Public, signs);
        assert!((public(&[&veins]) - 0.2625).abs() < 1e-12);
        assert_eq!(public(&[&veins, &base]), public(&[&veins]));
        assert!((public(&[&veins, &base, &bulb]) - 0.2625 * 0.21).abs() < 1e-12);
        assert_eq!(public(&[]), 1.0);
    }
}
