use super::*;
use crate::cases::{TARGET, case};
use crate::reports::reports_of;
use crate::{Character, Look, Matrix, Next, Reader, Strictness, sample};
use jiff::civil::date;

const CROCUS: &str = "Colchicum autumnale";

fn setting(level: Level, least: f64) -> Setting {
    Setting {
        day: date(2026, 5, 1),
        region: None,
        level,
        strictness: Strictness::least(),
        least,
        most: usize::MAX,
    }
}

fn end(plant: &str, world: World, setting: &Setting) -> End {
    end_in(&sample::matrix(), plant, world, setting)
}

fn end_in(matrix: &Matrix, plant: &str, world: World, setting: &Setting) -> End {
    Judge::new(matrix).follow(TARGET, &[(plant, world)], setting).unwrap().ends.remove(0)
}

/// The invented table, in which another character goes together with one and shows the same.
fn with_twin(of: &str) -> Matrix {
    let matrix = sample::matrix();
    let twin = Character { id: "twin".to_owned(), ..matrix.character(of).unwrap().clone() };
    let characters = matrix.characters().iter().cloned().chain([twin]).collect();
    let ids =
        |id: &String| if id == of { vec![id.clone(), "twin".to_owned()] } else { vec![id.clone()] };
    let cells = matrix.cells().flat_map(|(taxon, character, cell)| {
        let ids = ids(&character.id).into_iter();
        ids.map(|id| (taxon.name.clone(), id, cell.clone()))
    });
    Matrix::new(characters, matrix.taxa().to_vec(), cells).unwrap()
}

/// The high bits of a linear congruential generator (Knuth 1997, 3.3.4, table 1, line 26).
struct Chance(u64);

impl Chance {
    fn one_of(&mut self, shares: impl Iterator<Item = f64>) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
        let mut left = (self.0 >> 40) as f64 / f64::from(1 << 24);
        let beyond = |share: f64| {
            left -= share;
            left >= 0.0
        };
        shares.map(beyond).take_while(|beyond| *beyond).count()
    }
}

/// One plant that is read from the first look to the last.
struct Played<'a> {
    judge: &'a Judge<'a>,
    level: Level,
    /// What it truly shows, character by character.
    shows: Vec<usize>,
    chance: &'a mut Chance,
}

impl Played<'_> {
    fn look(&mut self, character: &str, name: &str) -> Look {
        let column = self.judge.matrix().column(character).unwrap();
        let character = self.judge.character(column).unwrap();
        let reports = reports_of(character, self.level.misread(character.organ));
        let rung = self.shows[column];
        let answer = self.chance.one_of(reports.on.iter().map(|on| on[rung]));
        let seen = reports.said[answer.min(reports.said.len() - 1)].clone();
        let reader = Reader { name: name.to_owned(), level: self.level };
        Look { reader, ..sample::look(&character.id, seen) }
    }

    fn is_determined(&mut self) -> bool {
        let mut case = case(Vec::new());
        loop {
            let plan = match self.judge.next(TARGET, &case, &Means::all(self.level)).unwrap() {
                Next::Settled => return true,
                Next::CannotSettle { .. } => return false,
                Next::Look(plan) => plan,
            };
            let read = |character: &&String| {
                case.looks.iter().any(|l| l.reader.name == "B" && l.character == **character)
            };
            let first = plan.looks.first().map(|offer| (&offer.character, "A"));
            let again = || Some((plan.again.iter().find(|character| !read(character))?, "B"));
            let Some((character, name)) = first.or_else(again) else { return false };
            case.looks.push(self.look(character, name));
        }
    }
}

fn played(plant: &str, level: Level, times: u32) -> f64 {
    let matrix = sample::matrix();
    let judge = Judge::new(&matrix);
    let row = matrix.row(plant).unwrap();
    let mut chance = Chance(20_261_127);
    let once = |_: &u32| {
        let columns = 0..matrix.characters().len();
        let shows =
            |column| chance.one_of(judge.shown(row, column).unwrap().shares.iter().copied()).min(2);
        let shows = columns.map(shows).collect();
        Played { judge: &judge, level, shows, chance: &mut chance }.is_determined()
    };
    f64::from(u32::try_from((0..times).filter(once).count()).unwrap()) / f64::from(times)
}

/// By playing it out: an independent walk by the front door alone, within four standard errors.
#[test]
fn what_is_followed_comes_about_as_often_when_it_is_played() {
    for level in [Level::Leader, Level::Trained, Level::Public] {
        let end = end(TARGET, World::AsTold, &setting(level, 0.0));
        assert!(end.at_most - end.determined < 1e-12);
        let times = 2000;
        let error = (end.determined * (1.0 - end.determined) / f64::from(times)).sqrt();
        let played = played(TARGET, level, times);
        assert!((played - end.determined).abs() < 4.0 * error, "{level:?} {played} {end:?}");
        assert!(end.determined > 0.1, "{end:?}");
    }
}

/// A likelihood ratio reaches a million with a chance of one in a million at most (Ville 1939).
#[test]
fn a_deadly_plant_that_is_read_as_told_passes_less_than_once_in_a_million() {
    for level in [Level::Leader, Level::Trained, Level::Public] {
        let end = end(CROCUS, World::AsTold, &setting(level, 0.0));
        assert!(end.determined > 0.0 && end.determined < 1e-6, "{level:?} {end:?}");
    }
}

/// The same before a single look was followed: the bound by itself, for every plant that the program reckons with.
#[test]
fn that_it_passes_so_seldom_needs_no_way_to_be_followed() {
    for level in [Level::Leader, Level::Trained, Level::Public] {
        let unfollowed = Setting { most: 0, ..setting(level, 0.0) };
        for plant in [CROCUS, "Mentha pulegium"] {
            let whole = end(plant, World::AsTold, &setting(level, 0.0));
            let bound = end(plant, World::AsTold, &unfollowed);
            assert_eq!(bound.determined, 0.0);
            // Two readers who differ are weighed apart, not through what both saw: a few in a hundred.
            assert!(whole.at_most <= bound.at_most && bound.at_most < 1.1e-6, "{bound:?}");
        }
    }
}

#[test]
fn the_further_it_is_followed_the_nearer_lie_the_two_ends() {
    for world in World::ALL {
        let mut before = 1.0;
        for most in [0, 10, 100, 1000] {
            let end = end(CROCUS, world, &Setting { most, ..setting(Level::Trained, 0.0) });
            assert!(end.at_most <= before * (1.0 + 1e-9), "{world:?} {most} {end:?} {before}");
            before = end.at_most;
        }
    }
}

#[test]
fn a_worse_world_lets_more_pass_and_one_with_fewer_organs_less() {
    let passes = |world| end(CROCUS, world, &setting(Level::Trained, 0.0)).determined;
    let told = passes(World::AsTold);
    for world in [World::Doubled, World::OneBelieves, World::Lingering] {
        assert!(passes(world) > told, "{world:?}");
    }
    assert!(passes(World::BothBelieve) > passes(World::OneBelieves));
    assert_eq!((passes(World::HalfThere), passes(World::OtherHalfThere)), (0.0, 0.0));
}

#[test]
fn what_is_not_followed_lies_between_the_two_ends() {
    for world in World::ALL {
        let whole = end(CROCUS, world, &setting(Level::Public, 0.0));
        let cut = Setting { most: 20, ..setting(Level::Public, 0.0) };
        for cut in [setting(Level::Public, 1e-4), cut] {
            let part = end(CROCUS, world, &cut);
            let rounding = 1.0 + 1e-9;
            assert!(part.determined <= whole.determined * rounding, "{world:?}");
            assert!(whole.determined <= part.at_most * rounding, "{world:?} {whole:?} {part:?}");
        }
    }
}

#[test]
fn one_mistake_that_brings_the_next_is_bounded_in_a_group() {
    let matrix = with_twin("base");
    let end = |world, most| {
        end_in(&matrix, CROCUS, world, &Setting { most, ..setting(Level::Public, 0.0) })
    };
    let whole = end(World::Together, usize::MAX);
    assert!(whole.at_most - whole.determined < 1e-12);
    assert!(whole.determined > end(World::AsTold, usize::MAX).determined);
    for most in [0, 1, 5, 20, 100] {
        let bound = end(World::Together, most).at_most;
        assert!(whole.determined <= bound * (1.0 + 1e-9), "{most} {bound}");
    }
}

#[test]
fn a_plant_that_the_program_does_not_reckon_with_passes_more_often() {
    // The sheet of the target names the crocus, and without a sheet it can never be set aside.
    let setting = setting(Level::Public, 0.0);
    assert_eq!(end(CROCUS, World::Unlisted, &setting).at_most, 0.0);
    let mint = |world| end("Mentha pulegium", world, &setting).determined;
    assert!(mint(World::Unlisted) >= mint(World::AsTold));
    assert!(mint(World::Mixed) > mint(World::AsTold));
}

#[test]
fn whoever_judges_more_strictly_lets_less_pass() {
    let least = setting(Level::Public, 0.0);
    let strict = Setting { strictness: Strictness::times(1e3).unwrap(), ..least.clone() };
    for world in [World::AsTold, World::BothBelieve] {
        let passes = |setting| end(CROCUS, world, setting).determined;
        assert!(passes(&strict) < passes(&least), "{world:?}");
    }
}
