use super::*;
use crate::{Matrix, Taxon, sample};
use ground::{Organ, Season, Standing as Source};
use proptest::prelude::*;

const ALL: Effort = Effort { list: 10_000, steps: 200_000 };
const CHARACTERS: usize = 7;
const TWINS: usize = 4;
const ORGANS: [Organ; 3] = [Organ::Leaf, Organ::Stem, Organ::Flower];
const HARMS: [Harm; 3] = [Harm::None, Harm::Harmful, Harm::Deadly];

/// A small table: of each character its group, organ, whether it is smelt and its seconds; of each twin its
/// harm, and of each character whether it shows the same as the target, something else, or is not known.
#[derive(Clone, Debug)]
struct Small {
    characters: Vec<(usize, usize, bool, u16)>,
    twins: Vec<(usize, Vec<u8>)>,
}

const SAME: u8 = 0;
const UNKNOWN: u8 = 1;

fn id(at: usize) -> String {
    format!("c{at}")
}

fn name(twin: usize) -> String {
    format!("Twin {twin}")
}

impl Small {
    fn matrix(&self) -> Matrix {
        let character =
            |(at, (group, organ, smelt, seconds)): (usize, &(usize, usize, bool, u16))| Character {
                group: group.to_string(),
                organ: ORGANS[*organ],
                sense: if *smelt { Sense::Smell } else { Sense::Sight },
                seconds: *seconds,
                ..sample::character(&id(at), &["one", "two", "three", "four"])
            };
        let harms = self.twins.iter().map(|(harm, _)| HARMS[*harm]);
        let mut taxa: Vec<Taxon> =
            harms.enumerate().map(|(at, harm)| sample::taxon(&name(at), harm, &[])).collect();
        taxa.push(sample::taxon("Target", Harm::None, &[]));
        let shows =
            |taxon: String, at: usize, state| (taxon, id(at), sample::cell(sample::always(state)));
        let mut cells: Vec<_> =
            (0..CHARACTERS).map(|at| shows("Target".to_owned(), at, "one")).collect();
        for (twin, (_, shown)) in self.twins.iter().enumerate() {
            let known = shown.iter().enumerate().filter(|(_, shown)| **shown != UNKNOWN);
            cells.extend(known.map(|(at, shown)| {
                shows(name(twin), at, if *shown == SAME { "one" } else { "two" })
            }));
        }
        Matrix::new(self.characters.iter().enumerate().map(character).collect(), taxa, cells)
            .unwrap()
    }

    fn smallest(&self) -> FromTwins {
        let matrix = self.matrix();
        let twins: Vec<_> = (0..self.twins.len()).map(name).collect();
        Judge::new(&matrix).from_twins("Target", &twins, None, Level::Leader, ALL).unwrap()
    }

    /// The rule in plain words: how surely the characters of a set tell a twin apart.
    fn surely(&self, set: &[usize], twin: usize) -> Reach {
        let (harm, shown) = &self.twins[twin];
        let telling: Vec<_> = set.iter().filter(|at| shown[**at] > UNKNOWN).collect();
        let (mut groups, mut full) = (false, false);
        for (a, b) in telling.iter().flat_map(|a| telling.iter().map(move |b| (**a, **b))) {
            let ((group, organ, smelt, _), (group_b, organ_b, smelt_b, _)) =
                (self.characters[a], self.characters[b]);
            groups |= group != group_b;
            let organs = organ != organ_b && !(smelt && smelt_b);
            full |= group != group_b && (HARMS[*harm] == Harm::None || organs);
        }
        match (telling.len(), groups, full) {
            (0, ..) => Reach::Never,
            (_, false, _) => Reach::Once,
            (_, _, false) => Reach::NotOfTwoOrgans,
            _ => Reach::AsAsked,
        }
    }

    /// All smallest sets with their seconds, out of all sets: each twin is told apart as surely as by
    /// all characters together.
    fn by_trial(&self) -> Vec<(u32, Vec<String>)> {
        let all: Vec<_> = (0..CHARACTERS).collect();
        let sets = (0..1_usize << CHARACTERS)
            .map(|bits| all.iter().copied().filter(|at| bits >> at & 1 == 1).collect::<Vec<_>>());
        let does = |set: &Vec<usize>| {
            (0..self.twins.len()).all(|twin| self.surely(set, twin) == self.surely(&all, twin))
        };
        let sets: Vec<_> = sets.filter(does).collect();
        let least = sets.iter().map(Vec::len).min().unwrap();
        let seconds =
            |set: &Vec<usize>| set.iter().map(|at| u32::from(self.characters[*at].3)).sum();
        let smallest = sets.into_iter().filter(|set| set.len() == least);
        let mut smallest: Vec<(u32, Vec<String>)> =
            smallest.map(|set| (seconds(&set), set.into_iter().map(id).collect())).collect();
        smallest.sort();
        smallest
    }
}

fn tables() -> impl Strategy<Value = Small> {
    let character = (0..5_usize, 0..3_usize, any::<bool>(), 1..40_u16);
    let characters = proptest::collection::vec(character, CHARACTERS);
    let twin = (0..3_usize, proptest::collection::vec(0..5_u8, CHARACTERS));
    let twins = proptest::collection::vec(twin, 0..=TWINS);
    (characters, twins).prop_map(|(characters, twins)| Small { characters, twins })
}

proptest! {
    #[test]
    fn the_sets_are_those_that_trying_all_sets_gives_the_quickest_first(table in tables()) {
        let (found, tried) = (table.smallest(), table.by_trial());
        let sets: Vec<_> = found.seconds.iter().copied().zip(found.smallest.sets.iter().cloned()).collect();
        prop_assert!(found.smallest.is_proved());
        prop_assert_eq!(found.smallest.count, Some(tried.len() as u64));
        prop_assert_eq!(sets, tried);
        let all: Vec<_> = (0..CHARACTERS).collect();
        for (at, twin) in found.twins.iter().enumerate() {
            prop_assert_eq!(twin.reach, table.surely(&all, at));
        }
    }

    #[test]
    fn the_order_of_the_twins_changes_nothing(table in tables()) {
        let mut turned = table.clone();
        turned.twins.reverse();
        let (here, there) = (table.smallest(), turned.smallest());
        prop_assert_eq!(&here.smallest.sets, &there.smallest.sets);
        prop_assert_eq!((here.smallest.count, here.seconds), (there.smallest.count, there.seconds));
    }

    /// Where a twin was not told apart as asked and now can be, more is asked; else more knowledge never
    /// asks for more characters.
    #[test]
    fn to_know_more_of_a_twin_asks_for_no_more_characters(
        table in tables(),
        twin in 0..TWINS,
        at in 0..CHARACTERS,
    ) {
        let mut more = table.clone();
        let cell = more.twins.get_mut(twin).map(|(_, shown)| &mut shown[at]);
        prop_assume!(cell.is_some());
        if let Some(cell) = cell.filter(|cell| **cell == UNKNOWN) {
            *cell = 2;
        }
        let (here, there) = (table.smallest(), more.smallest());
        let reach = |found: &FromTwins| found.twins.iter().map(|twin| twin.reach).collect::<Vec<_>>();
        prop_assert!(reach(&here).iter().zip(reach(&there)).all(|(here, there)| *here <= there));
        if reach(&here) == reach(&there) {
            prop_assert!(there.smallest.size() <= here.smallest.size());
        }
    }

    #[test]
    fn lots_are_all_largest_lots(edges in proptest::collection::btree_set((0..7_usize, 0..7_usize), 0..25)) {
        let alike = |a: usize, b: usize| a == b || edges.contains(&(a.min(b), a.max(b)));
        let within = |set: u32| (0..7_usize).filter(move |at| set >> at & 1 == 1);
        let is_lot = |set: u32| within(set).all(|a| within(set).all(|b| alike(a, b)));
        let largest = |set: &u32| {
            is_lot(*set) && (0..7).all(|at| set >> at & 1 == 1 || !is_lot(set | 1 << at))
        };
        let tried: BTreeSet<Vec<usize>> =
            (0..128_u32).filter(largest).map(|set| within(set).collect()).collect();
        let found = lots(7, &alike);
        let sorted: BTreeSet<Vec<usize>> = found.iter().map(|lot| {
            let mut lot = lot.clone();
            lot.sort_unstable();
            lot
        }).collect();
        prop_assert_eq!(found.len(), sorted.len());
        prop_assert_eq!(sorted, tried);
    }
}

const RAMSONS: &str = "Allium ursinum";

fn of_sample(matrix: &Matrix, month: Option<u8>, level: Level) -> FromTwins {
    let twins = ["Colchicum autumnale", "Mentha pulegium"].map(str::to_owned);
    let month = month.and_then(Month::new);
    Judge::new(matrix).from_twins(RAMSONS, &twins, month, level, ALL).unwrap()
}

/// By hand: of six characters on four organs, three of them on leaves, 15 pairs less 3 of leaves alone.
#[test]
fn two_organs_are_asked_for_where_a_twin_harms() {
    let found = of_sample(&sample::matrix(), None, Level::Leader);
    assert_eq!((found.smallest.size(), found.smallest.count), (2, Some(12)));
    assert!(found.twins.iter().all(|twin| twin.dangerous && twin.reach == Reach::AsAsked));
    assert_eq!((found.seconds[0], found.readings.len()), (20, 6));
}

/// By hand: who misreads half of all characters, evenly into the two other states, says of what shows *one*
/// that it is *one* in ½ of readings, and of what shows another in ¼; of a flower in 0.6 and 0.2. A leader says
/// so of a leaf in 0.95 and 0.025.
#[test]
fn what_a_reader_misreads_too_often_tells_nothing() {
    let matrix = sample::matrix();
    let mut characters = matrix.characters().to_vec();
    for character in &mut characters {
        character.kind = sample::character("", &["one", "two", "three"]).kind;
    }
    let cells = matrix.cells().map(|(t, c, cell)| (t.name.clone(), c.id.clone(), cell.clone()));
    let matrix =
        Matrix::new(characters, matrix.taxa().to_vec(), cells.collect::<Vec<_>>()).unwrap();
    let half = Level::Misreads(ground::Finite::new(0.5).unwrap());
    let (worst, leader) = (of_sample(&matrix, None, half), of_sample(&matrix, None, Level::Leader));
    assert!(worst.twins.iter().all(|twin| twin.misread.len() == 6 && twin.reach == Reach::Never));
    assert!(leader.twins.iter().all(|twin| twin.tells.len() == 6 && twin.misread.is_empty()));
}

#[test]
fn what_a_twin_shows_now_and_then_tells_only_mostly() {
    let matrix = sample::matrix();
    let cells = matrix.cells().map(|(taxon, character, cell)| {
        let mut cell = cell.clone();
        if (taxon.name.as_str(), character.id.as_str()) == ("Colchicum autumnale", "stem") {
            let (usually, sometimes) = (vec!["two".to_owned()], vec!["one".to_owned()]);
            cell.value =
                crate::Value::States { always: vec![], usually, sometimes, rarely: vec![] };
        }
        (taxon.name.clone(), character.id.clone(), cell)
    });
    let cells: Vec<_> = cells.collect();
    let matrix = Matrix::new(matrix.characters().to_vec(), matrix.taxa().to_vec(), cells).unwrap();
    let crocus = &of_sample(&matrix, None, Level::Leader).twins[0];
    assert_eq!((&crocus.mostly[..], crocus.tells.len()), (&["stem".to_owned()][..], 5));
}

#[test]
fn it_is_said_why_a_twin_is_not_told_apart() {
    let matrix = sample::matrix();
    let mut taxa = matrix.taxa().to_vec();
    let may = Month::new(5).unwrap();
    for organ in [Organ::Leaf, Organ::Flower] {
        taxa[0].seasons.insert(organ, Season::new(may, may));
    }
    let cells = matrix.cells().filter_map(|(taxon, character, cell)| {
        let mut cell = cell.clone();
        match (taxon.name.as_str(), character.id.as_str()) {
            ("Colchicum autumnale", "bulb") => cell.standing = Source::Remembered,
            ("Colchicum autumnale", "stem") => return None,
            _ => {}
        }
        Some((taxon.name.clone(), character.id.clone(), cell))
    });
    let cells: Vec<_> = cells.collect();
    let matrix = Matrix::new(matrix.characters().to_vec(), taxa, cells).unwrap();
    let found = of_sample(&matrix, Some(9), Level::Leader);
    let crocus = &found.twins[0];
    assert_eq!(crocus.reach, Reach::Never);
    assert_eq!(crocus.not_now, ["base", "bract", "smell", "vein"]);
    assert_eq!(
        (&crocus.remembered[..], &crocus.empty[..]),
        (&["bulb".to_owned()][..], &["stem".to_owned()][..])
    );
    assert_eq!(found.twins[1].tells, ["bulb", "stem"]);
    let spring = of_sample(&matrix, Some(5), Level::Leader);
    assert_eq!(spring.twins[0].reach, Reach::AsAsked);
    assert!(spring.twins[0].not_now.is_empty());
}

#[test]
fn a_twin_without_a_sheet_counts_as_dangerous_and_is_never_told_apart() {
    let matrix = sample::matrix();
    let twins = ["Arum maculatum".to_owned()];
    let judge = Judge::new(&matrix);
    let found = judge.from_twins(RAMSONS, &twins, None, Level::Leader, ALL).unwrap();
    assert!(found.twins[0].dangerous && found.twins[0].reach == Reach::Never);
    assert_eq!((found.smallest.size(), found.smallest.count), (0, Some(1)));
    assert!(judge.from_twins("Allium", &twins, None, Level::Leader, ALL).is_err());
}
