//! What a set of characters has to do, without what goes without saying.

use super::Separation;
use crate::bits::Bits;

/// What a set of characters has to do.
pub(super) struct Task<'s> {
    /// For each character, the characters of its group, itself among them.
    kin: &'s [Bits],
    /// For each character, the seconds that reading it takes.
    seconds: &'s [u16],
    /// The pairs that no other pair implies.
    pub(super) wants: Vec<Want>,
    /// The pairs that cannot be separated as often as was asked, and how often they can be.
    pub(super) short: Vec<(usize, usize)>,
}

/// A pair that wants to be separated.
#[derive(Clone)]
pub(super) struct Want {
    /// A number for it.
    pub(super) pair: usize,
    /// The characters that may still do it.
    pub(super) by: Bits,
    /// How often, each time by another group.
    pub(super) times: usize,
}

/// Some characters that are taken, and what is still wanted.
#[derive(Clone)]
pub(super) struct Choice {
    pub(super) taken: Bits,
    pub(super) open: Vec<Want>,
}

impl<'s> Task<'s> {
    pub(super) fn new(separation: &'s Separation, times: usize) -> Self {
        let Separation { kin, seconds, pairs, also } = separation;
        let mut task = Self { kin, seconds, wants: Vec::new(), short: Vec::new() };
        let once = |by: &Bits| Want { pair: 0, by: by.clone(), times: 1 };
        let mut wants: Vec<Want> = also.iter().map(once).collect();
        for (pair, by) in pairs.iter().enumerate() {
            let possible = task.groups(by, times);
            if possible < times {
                task.short.push((pair, possible));
            }
            if possible > 0 {
                wants.push(Want { pair, by: by.clone(), times: possible });
            }
        }
        // Of what the same characters do, what is wanted oftenest implies the rest.
        wants.sort_by(|a, b| {
            let key = |want: &Want| (want.by.len(), std::cmp::Reverse(want.times));
            key(a).cmp(&key(b)).then_with(|| a.by.cmp(&b.by))
        });
        for want in wants {
            if !task.wants.iter().any(|kept| kept.implies(&want)) {
                task.wants.push(Want { pair: task.wants.len(), ..want });
            }
        }
        task
    }

    pub(super) fn characters(&self) -> usize {
        self.kin.len()
    }

    /// Seconds that these characters take together.
    pub(super) fn seconds(&self, taken: &Bits) -> u32 {
        taken.iter().filter_map(|at| self.seconds.get(at)).map(|s| u32::from(*s)).sum()
    }

    /// No character taken, none barred.
    pub(super) fn no_choice(&self) -> Choice {
        Choice { taken: Bits::none(self.characters()), open: self.wants.clone() }
    }

    /// The choice with one more character.
    pub(super) fn with(&self, choice: &Choice, character: usize) -> Choice {
        let served = |want: &Want| match self.kin.get(character) {
            Some(kin) if want.by.contains(character) => {
                let mut left = want.clone();
                left.by.remove_all(kin);
                left.times = want.times.saturating_sub(1);
                left
            }
            _ => want.clone(),
        };
        let open = choice.open.iter().map(served).filter(|want| want.times > 0).collect();
        let mut taken = choice.taken.clone();
        taken.insert(character);
        Choice { taken, open }
    }

    /// Leaves characters out of a choice. Says whether what is wanted can still be done.
    pub(super) fn bar(&self, choice: &mut Choice, characters: &Bits) -> bool {
        choice.open.iter_mut().all(|want| {
            want.by.remove_all(characters);
            self.groups(&want.by, want.times) >= want.times
        })
    }

    /// How many groups these characters are of, counted no further than to `most`.
    fn groups(&self, characters: &Bits, most: usize) -> usize {
        if most <= 1 {
            return usize::from(!characters.is_empty()).min(most);
        }
        let mut left = characters.clone();
        let next = || {
            let character = left.iter().next()?;
            left.remove_all(self.kin.get(character)?);
            Some(())
        };
        std::iter::from_fn(next).take(most).count()
    }

    /// A set that does it, not always a smallest one: whatever serves most pairs, again and again;
    /// then without what has become needless.
    pub(super) fn some_set(&self) -> Vec<usize> {
        let mut choice = self.no_choice();
        while let Some(best) = self.most_wanted(&choice.open) {
            choice = self.with(&choice, best);
        }
        let mut set = choice.taken.clone();
        for character in choice.taken.iter() {
            set.remove(character);
            if !self.is_done_by(&set) {
                set.insert(character);
            }
        }
        set.iter().collect()
    }

    /// The first of the characters that serve most of the open pairs, if there are any.
    fn most_wanted(&self, open: &[Want]) -> Option<usize> {
        let serves = |at: &usize| open.iter().filter(|want| want.by.contains(*at)).count();
        let characters = (0..self.characters()).rev().filter(|character| serves(character) > 0);
        characters.max_by_key(serves)
    }

    fn is_done_by(&self, set: &Bits) -> bool {
        self.wants.iter().all(|want| {
            let by = Bits::of(self.characters(), want.by.common(set));
            self.groups(&by, want.times) >= want.times
        })
    }
}

impl Want {
    /// Whether every set that does this does that too.
    fn implies(&self, other: &Self) -> bool {
        self.times >= other.times && self.by.is_subset(&other.by)
    }
}
