//! Weighing: what every testimony does to every rival, and what is left of the bar.

use crate::judge::Judge;
use crate::rival::Rival;
use crate::rules::dangerous;
use crate::spectrum::Spectrum;
use crate::testimony::Testimony;
use crate::{Character, Taxon};
use ground::{Month, Organ};
use std::collections::BTreeSet;
use std::rc::Rc;

/// Who is judged, against whom, and when.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Trial<'a> {
    pub(crate) judge: &'a Judge<'a>,
    /// The target's row.
    pub(crate) target: usize,
    pub(crate) taxon: &'a Taxon,
    pub(crate) rivals: &'a [Rival],
    pub(crate) month: Month,
    /// What may be left of the bar.
    pub(crate) allowed: f64,
}

impl<'a> Trial<'a> {
    /// A testimony with what it does to every rival.
    pub(crate) fn weigh(&self, testimony: &Testimony) -> Option<Weighed<'a>> {
        let character = self.judge.character(testimony.column)?;
        let factor = |rival: &Rival| self.factor(testimony, character, rival);
        let factors = self.rivals.iter().map(factor).collect();
        let denials = dangerous(self.rivals).filter_map(|(at, rival)| {
            let denials = self.denials(testimony, character, rival);
            (denials > 0).then_some((at, denials))
        });
        let denials = denials.collect();
        Some(Weighed { column: testimony.column, character, factors, denials })
    }

    /// How many readers deny a rival; none where the target should not show the organ now.
    fn denials(&self, testimony: &Testimony, character: &Character, rival: &Rival) -> usize {
        let denials =
            self.with_both(testimony.column, rival, |t, r| testimony.denials(character, (t, r)));
        denials.filter(|_| self.visible(character)).unwrap_or(0)
    }

    /// All of them on the scales.
    pub(crate) fn scales(&self, testimonies: &[Testimony]) -> Scales<'a> {
        let mut scales = Scales::empty(self.rivals);
        for weighed in testimonies.iter().filter_map(|testimony| self.weigh(testimony)) {
            scales.add(weighed);
        }
        scales
    }

    /// Whether a testimony is a second reading that counts against a rival.
    pub(crate) fn twice(&self, testimony: &Testimony, rival: &Rival) -> bool {
        self.with_both(testimony.column, rival, |t, r| testimony.twice(t, r)).unwrap_or(false)
    }

    /// Whether a character of the target can be seen in the month.
    pub(crate) fn visible(&self, character: &Character) -> bool {
        visible(self.taxon, character, self.month)
    }

    /// How many times likelier a testimony is of a rival than of the target; 1 where either sheet
    /// says nothing of the character, never below 1 where the target should not show the organ now.
    ///
    /// When the rival shows the organ does not matter: what is in hand is compared with what the
    /// rival looks like whenever it has one.
    pub(crate) fn factor(
        &self,
        testimony: &Testimony,
        character: &Character,
        rival: &Rival,
    ) -> f64 {
        let factor = self.with_both(testimony.column, rival, |t, r| testimony.factor(t, r));
        let factor = factor.unwrap_or(1.0);
        if self.visible(character) { factor } else { factor.max(1.0) }
    }

    fn with_both<T>(
        &self,
        column: usize,
        rival: &Rival,
        with: impl FnOnce(&Spectrum, &Spectrum) -> T,
    ) -> Option<T> {
        let target = self.judge.shown(self.target, column)?;
        let other = rival.shown(self.judge, self.target, column)?;
        Some(with(target, &other))
    }
}

/// Whether a character of a taxon can be seen in a month.
pub(crate) fn visible(taxon: &Taxon, character: &Character, month: Month) -> bool {
    taxon.seasons.get(&character.organ).is_none_or(|season| season.contains(month))
}

/// One character with what was read of it, weighed against every rival.
#[derive(Clone, Debug)]
pub(crate) struct Weighed<'a> {
    pub(crate) column: usize,
    pub(crate) character: &'a Character,
    /// By rival: how many times likelier what was read is of it than of the target.
    pub(crate) factors: Rc<[f64]>,
    /// By dangerous rival, in order: how many readers deny it, where any does.
    pub(crate) denials: Rc<[(usize, usize)]>,
}

impl Weighed<'_> {
    pub(crate) fn factor(&self, rival: usize) -> f64 {
        self.factors.get(rival).copied().unwrap_or(1.0)
    }

    /// How many readers deny a dangerous rival.
    pub(crate) fn denials(&self, rival: usize) -> usize {
        let at = self.denials.binary_search_by_key(&rival, |(at, _)| *at);
        at.ok().and_then(|at| self.denials.get(at)).map_or(0, |(_, denials)| *denials)
    }
}

/// Everything that was read, weighed.
#[derive(Clone, Debug)]
pub(crate) struct Scales<'a> {
    pub(crate) rivals: &'a [Rival],
    /// Sorted by name.
    groups: Vec<Group<'a>>,
}

/// Characters that go together, and what they come to by rival: the best of what speaks for the target, and all
/// of what speaks against it.
#[derive(Clone, Debug)]
struct Group<'a> {
    /// Sorted by column.
    weighed: Vec<Weighed<'a>>,
    favour: Rc<[f64]>,
    contrary: Rc<[f64]>,
}

impl<'a> Group<'a> {
    fn new(weighed: Vec<Weighed<'a>>, rivals: usize) -> Self {
        let sides = |at: usize| both_sides(weighed.iter().map(|w| w.factor(at)));
        let (favour, contrary): (Vec<f64>, Vec<f64>) = (0..rivals).map(sides).unzip();
        Self { favour: favour.into(), contrary: contrary.into(), weighed }
    }

    fn name(&self) -> Option<&'a str> {
        self.weighed.first().map(|weighed| weighed.character.group.as_str())
    }

    fn factor(&self, rival: usize) -> f64 {
        let sides = self.favour.get(rival).zip(self.contrary.get(rival));
        sides.map_or(1.0, |(favour, contrary)| favour * contrary)
    }
}

impl<'a> Scales<'a> {
    pub(crate) fn empty(rivals: &'a [Rival]) -> Self {
        Self { rivals, groups: Vec::new() }
    }

    pub(crate) fn add(&mut self, weighed: Weighed<'a>) {
        let name = Some(weighed.character.group.as_str());
        let found = self.groups.binary_search_by_key(&name, Group::name);
        let mut all = match found {
            Ok(at) => self.groups.remove(at).weighed,
            Err(_) => Vec::new(),
        };
        all.insert(all.partition_point(|other| other.column <= weighed.column), weighed);
        let (Ok(at) | Err(at)) = found;
        self.groups.insert(at, Group::new(all, self.rivals.len()));
    }

    /// The same without one character.
    pub(crate) fn without(&self, column: usize) -> Self {
        let less = |group: &Group<'a>| {
            let left = group.weighed.iter().filter(|weighed| weighed.column != column).cloned();
            match left.collect::<Vec<_>>() {
                left if left.is_empty() => None,
                left if left.len() == group.weighed.len() => Some(group.clone()),
                left => Some(Group::new(left, self.rivals.len())),
            }
        };
        Self { rivals: self.rivals, groups: self.groups.iter().filter_map(less).collect() }
    }

    /// Sorted by correlation group, then by column.
    pub(crate) fn weighed(&self) -> impl Iterator<Item = &Weighed<'a>> {
        self.groups.iter().flat_map(|group| &group.weighed)
    }

    /// What goes together.
    pub(crate) fn groups(&self) -> impl Iterator<Item = &[Weighed<'a>]> {
        self.groups.iter().map(|group| group.weighed.as_slice())
    }

    /// How many times likelier all that was read is of a rival than of the target: e^(−L).
    pub(crate) fn factor(&self, rival: usize) -> f64 {
        self.groups.iter().map(|group| group.factor(rival)).product()
    }

    /// The factor of one group alone.
    pub(crate) fn group(&self, group: &str, rival: usize) -> f64 {
        self.of_group(group).map_or(1.0, |group| group.factor(rival))
    }

    /// How many readings deny a dangerous rival, and of which organs: of one group those of one character, where
    /// the group as a whole speaks for the target.
    pub(crate) fn denied(&self, rival: usize) -> (usize, BTreeSet<Organ>) {
        let denies = |group: &&Group<'_>| group.factor(rival) < 1.0;
        let most = |group: &Group<'_>| group.weighed.iter().map(|w| w.denials(rival)).max();
        let groups = || self.groups.iter().filter(denies);
        let denying = groups().flat_map(|group| &group.weighed).filter(|w| w.denials(rival) > 0);
        (groups().filter_map(most).sum(), denying.map(|w| w.character.organ).collect())
    }

    /// What each rival contributes to the bar: π h e^(−L).
    pub(crate) fn contributions(&self) -> impl Iterator<Item = (&'a Rival, f64)> + '_ {
        let mut factors = vec![1.0; self.rivals.len()];
        for group in &self.groups {
            let sides = group.favour.iter().zip(&*group.contrary);
            for (factor, (favour, contrary)) in factors.iter_mut().zip(sides) {
                *factor *= favour * contrary;
            }
        }
        self.rivals.iter().zip(factors).map(|(rival, factor)| (rival, rival.weight * factor))
    }

    /// What is left of the bar, harmless twins and all.
    pub(crate) fn left(&self) -> f64 {
        self.contributions().map(|(_, part)| part).sum()
    }

    /// What all rivals would contribute with one more character on the scales.
    pub(crate) fn left_with(&self, contributions: &[f64], more: &Weighed<'_>) -> f64 {
        let parts = contributions.iter().zip(&*more.factors);
        let Some(group) = self.of_group(&more.character.group) else {
            return parts.map(|(part, factor)| part * factor).sum();
        };
        let sides = group.favour.iter().zip(&*group.contrary);
        let with = |((part, factor), (favour, contrary)): ((&f64, &f64), (&f64, &f64))| {
            let (better, worse) = one_more((*favour, *contrary), *factor);
            part / (favour * contrary) * (better * worse)
        };
        parts.zip(sides).map(with).sum()
    }

    fn of_group(&self, name: &str) -> Option<&Group<'a>> {
        let found = self.groups.binary_search_by_key(&Some(name), Group::name);
        found.ok().and_then(|at| self.groups.get(at))
    }
}

/// Characters that go together count once: the best of what speaks for the target, and all of what
/// speaks against it.
fn both_sides(factors: impl Iterator<Item = f64>) -> (f64, f64) {
    factors.fold((1.0, 1.0), one_more)
}

fn one_more((favour, contrary): (f64, f64), factor: f64) -> (f64, f64) {
    // Not `min` and `max`: they are calls on the machine of a browser, and this is most of a look.
    if factor < favour { (factor, contrary) } else { (favour, contrary * above_one(factor)) }
}

fn above_one(factor: f64) -> f64 {
    if factor > 1.0 { factor } else { 1.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_group_gives_its_best_favour_and_all_its_contraries() {
        assert_eq!(both_sides([0.1, 0.01, 0.5].into_iter()), (0.01, 1.0));
        assert_eq!(both_sides([0.25, 2.0, 3.0].into_iter()), (0.25, 6.0));
        assert_eq!(both_sides(std::iter::empty()), (1.0, 1.0));
    }
}
