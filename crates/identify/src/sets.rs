//! The smallest sets of characters that tell plants apart.
//!
//! For each pair of plants some characters separate it; wanted are the fewest characters among which
//! each pair finds one, or two or three of different correlation groups. That is a smallest hitting
//! set, which nobody knows how to find quickly in general; tables of plants are small enough to be
//! certain of it by branch and bound. The number of characters is raised one by one: each size that
//! is refuted is a bound that holds even if the steps run out, and the first size that is not refuted
//! is the smallest.
//!
//! ```
//! use identify::sets::{Effort, Separation};
//!
//! // Four characters, each alone in its group, and the three pairs of three plants.
//! let pairs = [vec![0, 1], vec![1, 2], vec![2, 3]];
//! let separation = Separation::new(&[0, 1, 2, 3], pairs);
//! let smallest = separation.smallest(1, Effort { list: 10, steps: 1_000 });
//! assert_eq!(smallest.sets, [[0, 2], [1, 2], [1, 3]]);
//! assert_eq!(smallest.count, Some(3));
//! ```

mod bound;
mod plants;
mod search;
mod task;
mod twins;

use crate::bits::Bits;
use search::Search;
use serde::{Deserialize, Serialize};
use task::Task;

pub use twins::{Between, FromTwins, Reach};

/// Which characters separate which pairs of plants.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Separation {
    /// For each character, the characters of its group, itself among them.
    kin: Vec<Bits>,
    /// For each pair, the characters that separate it.
    pairs: Vec<Bits>,
    /// Of each of these, one character is wanted too.
    also: Vec<Bits>,
    /// For each character, the seconds that reading it takes.
    seconds: Vec<u16>,
}

impl Separation {
    /// Characters by the number of their correlation group, and for each pair that is to be told
    /// apart the numbers of the characters that separate it. A number that is no character's
    /// separates nothing.
    pub fn new<Pair>(groups: &[usize], pairs: impl IntoIterator<Item = Pair>) -> Self
    where
        Pair: IntoIterator<Item = usize>,
    {
        let many = groups.len();
        let kin = |group: &usize| {
            let same = groups.iter().enumerate().filter(|(_, other)| *other == group);
            Bits::of(many, same.map(|(at, _)| at))
        };
        Self {
            kin: groups.iter().map(kin).collect(),
            pairs: pairs.into_iter().map(|pair| Bits::of(many, pair)).collect(),
            also: Vec::new(),
            seconds: vec![0; many],
        }
    }

    /// The same, where sets are listed the quickest first: characters by the seconds that reading them
    /// takes.
    #[must_use]
    pub fn in_seconds(mut self, seconds: impl IntoIterator<Item = u16>) -> Self {
        self.seconds = seconds.into_iter().collect();
        self
    }

    /// The same, where sets must hold one of each of these characters too. Of none nothing is asked.
    #[must_use]
    pub fn and_one_of<Some>(mut self, also: impl IntoIterator<Item = Some>) -> Self
    where
        Some: IntoIterator<Item = usize>,
    {
        let many = self.kin.len();
        let also = also.into_iter().map(|some| Bits::of(many, some));
        self.also.extend(also.filter(|some| !some.is_empty()));
        self
    }

    /// The smallest sets of characters that separate each pair by so many characters of different
    /// groups, or by as many as there are; the quickest first, then in order of their characters.
    ///
    /// Method: the pairs that others imply are left out; then depth first over the pair with the
    /// fewest choices, pruned by the bound of Held, Wolfe & Crowder 1974, *Validation of subgradient
    /// optimization*, Mathematical Programming 6:62–88, in whole numbers.
    #[must_use]
    pub fn smallest(&self, times: usize, effort: Effort) -> Smallest {
        let task = Task::new(self, times);
        let some = task.some_set();
        let mut search = Search::new(&task, effort);
        let mut at_least = 0;
        let mut count = None;
        while effort.list > 0 || at_least < some.len() {
            let all = search.sets_of(at_least);
            if all.is_none() || !search.found.is_empty() {
                count = all;
                break;
            }
            at_least += 1;
        }
        let mut sets: Vec<_> = search.found.into_iter().map(|(_, set)| set).collect();
        if sets.is_empty() {
            sets.push(some);
        }
        Smallest { sets, at_least, count, short: task.short }
    }
}

/// How much is asked for, and what it may take.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Effort {
    /// How many of the smallest sets to list; all are counted. With 0 only the size is sought, which
    /// takes less, and one set is given.
    pub list: usize,
    /// Steps that the search may take. The work of each grows with the pairs times the characters
    /// that separate them.
    pub steps: u64,
}

/// The smallest sets of characters that tell plants apart; pairs and characters by number, or by
/// name.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Smallest<P = usize, C = usize> {
    /// Sets of one size, at least one: the smallest, the quickest first, then in order of their
    /// characters, as many as were asked for; or, where the steps ran out, the best that were found.
    pub sets: Vec<Vec<C>>,
    /// No set of fewer characters does it.
    pub at_least: usize,
    /// How many smallest sets there are, where all were counted.
    pub count: Option<u64>,
    /// The pairs that cannot be separated as often as was asked, and by how many characters of
    /// different groups they can be: 0 where nothing separates them.
    pub short: Vec<(P, usize)>,
}

impl<P, C> Smallest<P, C> {
    /// How many characters each of the sets has.
    #[must_use]
    pub fn size(&self) -> usize {
        self.sets.first().map_or(0, Vec::len)
    }

    /// Whether it is proved that no smaller set does it.
    #[must_use]
    pub fn is_proved(&self) -> bool {
        self.at_least == self.size()
    }

    /// The pairs that nothing separates.
    pub fn inseparable(&self) -> impl Iterator<Item = &P> {
        self.short.iter().filter(|(_, times)| *times == 0).map(|(pair, _)| pair)
    }
}
