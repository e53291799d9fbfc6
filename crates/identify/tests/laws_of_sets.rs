//! Laws of smallest sets, tried on invented pairs against every set there is.

#![expect(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "in a test a panic is the report"
)]

use identify::sets::{Effort, Separation, Smallest};
use proptest::prelude::*;
use std::collections::BTreeSet;

const CHARACTERS: usize = 9;
const ALL: Effort = Effort { list: 1_000, steps: 100_000 };

#[derive(Clone, Debug)]
struct World {
    groups: Vec<usize>,
    pairs: Vec<BTreeSet<usize>>,
    times: usize,
}

impl World {
    fn smallest(&self, effort: Effort) -> Smallest {
        Separation::new(&self.groups, self.pairs.iter().cloned()).smallest(self.times, effort)
    }

    /// Of how many groups are the characters of a set that separate a pair.
    fn often(&self, pair: &BTreeSet<usize>, set: &BTreeSet<usize>) -> usize {
        pair.intersection(set).map(|at| self.groups[*at]).collect::<BTreeSet<_>>().len()
    }

    /// How often a pair can be separated, as far as is asked.
    fn wanted(&self, pair: &BTreeSet<usize>) -> usize {
        self.often(pair, pair).min(self.times)
    }

    fn does(&self, set: &BTreeSet<usize>) -> bool {
        self.pairs.iter().all(|pair| self.often(pair, set) >= self.wanted(pair))
    }

    /// All smallest sets, out of all sets.
    fn by_trial(&self) -> Vec<Vec<usize>> {
        let subset = |bits: usize| (0..CHARACTERS).filter(move |at| bits >> at & 1 == 1);
        let sets = (0..1 << CHARACTERS).map(|bits| subset(bits).collect::<BTreeSet<_>>());
        let sets: BTreeSet<_> = sets.filter(|set| self.does(set)).collect();
        let least = sets.iter().map(BTreeSet::len).min().unwrap();
        let smallest = sets.into_iter().filter(|set| set.len() == least);
        smallest.map(|set| set.into_iter().collect()).collect()
    }

    /// The same, each character having the number that stands at its place.
    fn renumbered(&self, numbers: &[usize]) -> Self {
        let mut groups = vec![0; CHARACTERS];
        for (at, number) in numbers.iter().enumerate() {
            groups[*number] = self.groups[at];
        }
        let pairs = self.pairs.iter().map(|pair| pair.iter().map(|at| numbers[*at]).collect());
        Self { groups, pairs: pairs.collect(), times: self.times }
    }
}

fn worlds() -> impl Strategy<Value = World> {
    let groups = proptest::collection::vec(0..7_usize, CHARACTERS);
    let pair = proptest::collection::btree_set(0..CHARACTERS, 0..6);
    let pairs = proptest::collection::vec(pair, 0..14);
    (groups, pairs, 1..4_usize).prop_map(|(groups, pairs, times)| World { groups, pairs, times })
}

proptest! {
    #[test]
    fn smallest_sets_are_those_that_trying_all_sets_gives(world in worlds()) {
        let smallest = world.smallest(ALL);
        let tried = world.by_trial();
        prop_assert!(smallest.is_proved());
        prop_assert_eq!(smallest.count, Some(tried.len() as u64));
        prop_assert_eq!(&smallest.sets, &tried);
        let few = world.smallest(Effort { list: 2, ..ALL });
        prop_assert_eq!((&few.sets[..], few.count), (&tried[..tried.len().min(2)], smallest.count));
        let one = world.smallest(Effort { list: 0, ..ALL });
        prop_assert_eq!((one.size(), one.at_least, one.count), (smallest.size(), smallest.size(), None));
        prop_assert!(tried.contains(&one.sets[0]));
    }

    #[test]
    fn pairs_that_cannot_be_separated_so_often_are_told(world in worlds()) {
        let pairs = world.pairs.iter().map(|pair| world.wanted(pair)).enumerate();
        let short: Vec<_> = pairs.filter(|(_, often)| *often < world.times).collect();
        prop_assert_eq!(world.smallest(ALL).short, short);
    }

    #[test]
    fn numbering_the_characters_otherwise_changes_nothing(
        world in worlds(),
        numbers in Just((0..CHARACTERS).collect::<Vec<_>>()).prop_shuffle(),
    ) {
        let (here, there) = (world.smallest(ALL), world.renumbered(&numbers).smallest(ALL));
        let renumber = |set: &Vec<usize>| set.iter().map(|at| numbers[*at]).collect::<BTreeSet<_>>();
        let here_renumbered: BTreeSet<_> = here.sets.iter().map(renumber).collect();
        let there_sets: BTreeSet<_> = there.sets.iter().map(|set| set.iter().copied().collect()).collect();
        prop_assert_eq!(here_renumbered, there_sets);
        prop_assert_eq!((here.at_least, here.count, here.short), (there.at_least, there.count, there.short));
    }

    #[test]
    fn out_of_steps_a_set_still_does_it_and_the_bound_holds(world in worlds(), steps in 0..12_u64) {
        let hasty = world.smallest(Effort { list: 3, steps });
        let size = world.by_trial()[0].len();
        prop_assert!(hasty.at_least <= size && size <= hasty.size());
        prop_assert!(hasty.sets.iter().all(|set| world.does(&set.iter().copied().collect())));
    }
}
