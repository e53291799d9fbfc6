//! Laws of judging, tried on invented tables.
//!
//! Two things are held fixed where a law speaks of one change: what plants at large show, which is a
//! property of the flora and not of one sheet; and one reader's readings of one character, of which
//! the less favourable stands, so that dropping a favourable one may do anything.

use crate::assess::Assessment;
use crate::judge::Judge;
use crate::look::Look;
use crate::rival::{Rival, rivals};
use crate::testimony::gather;
use crate::weighing::Trial;
use crate::{
    Case, Cell, Character, Kind, Level, LookAlike, Material, Matrix, Reader, Seen, Sense,
    Strictness, Taxon, Value, sample,
};
use ground::{Finite, Harm, Month, Organ, Standing};
use jiff::civil::date;
use proptest::prelude::*;

const STATES: [&str; 3] = ["one", "two", "three"];
const TARGET: &str = "Aaa";

/// A stream of small choices.
struct Choices<'a>(std::iter::Cycle<std::slice::Iter<'a, u8>>);

impl Choices<'_> {
    fn of(&mut self, many: usize) -> usize {
        usize::from(*self.0.next().unwrap()) % many
    }

    fn one_in(&mut self, many: usize) -> bool {
        self.of(many) == 0
    }

    fn pick<T: Clone>(&mut self, from: &[T]) -> T {
        from[self.of(from.len())].clone()
    }
}

/// An invented table with looks at one plant that mostly shows what the target does.
#[derive(Clone, Debug)]
pub(crate) struct World {
    characters: Vec<Character>,
    taxa: Vec<Taxon>,
    cells: Vec<(String, String, Cell)>,
    looks: Vec<Look>,
}

impl World {
    pub(crate) fn new(bytes: &[u8]) -> Self {
        let mut choose = Choices(bytes.iter().cycle());
        let many = 9 + choose.of(4);
        let characters: Vec<_> = (0..many).map(|at| character(at, &mut choose)).collect();
        let names = [TARGET, "Bbb", "Ccc", "Ddd"];
        let taxa: Vec<_> = names.iter().map(|name| taxon(name, &mut choose)).collect();
        let mut cells = Vec::new();
        for (at, taxon) in taxa.iter().enumerate() {
            for character in &characters {
                if choose.one_in(8) {
                    continue;
                }
                cells.push((
                    taxon.name.clone(),
                    character.id.clone(),
                    cell(character, at, &mut choose),
                ));
            }
        }
        let mut looks = Vec::new();
        for character in &characters {
            looks.extend(looks_at(character, &cells, &mut choose));
        }
        Self { characters, taxa, cells, looks }
    }

    pub(crate) fn matrix(&self) -> Matrix {
        Matrix::new(self.characters.clone(), self.taxa.clone(), self.cells.clone()).unwrap()
    }

    pub(crate) fn case(&self) -> Case {
        Case {
            specimen: "A".to_owned(),
            place: "wood".to_owned(),
            day: date(2026, 5, 1),
            region: None,
            material: Material::Living,
            strictness: Strictness::least(),
            looks: self.looks.clone(),
        }
    }

    fn without_look(&self, at: usize) -> Self {
        let mut less = self.clone();
        less.looks.remove(at);
        less
    }
}

fn character(at: usize, choose: &mut Choices<'_>) -> Character {
    let mut character = sample::character(&format!("c{at:02}"), &STATES);
    character.group = format!("g{}", at - usize::from(at > 0 && choose.one_in(4)));
    character.organ = choose.pick(&[Organ::Leaf, Organ::Stem, Organ::Underground]);
    if at == 0 {
        character.sense = Sense::Smell;
    }
    match choose.of(8) {
        0 => character.kind = Kind::Length,
        1 => character.kind = Kind::Count,
        2 | 3 => {
            if let Kind::States(states) = &mut character.kind {
                states[0].taken_for = vec!["two".to_owned()];
            }
        }
        _ => {}
    }
    character
}

fn taxon(name: &str, choose: &mut Choices<'_>) -> Taxon {
    let harm = match name {
        TARGET => Harm::None,
        _ => choose.pick(&[Harm::None, Harm::Irritant, Harm::Harmful, Harm::Deadly]),
    };
    let mut taxon = sample::taxon(name, harm, &[]);
    let named = if name == TARGET { choose.pick(&["Bbb", "Ccc"]) } else { TARGET };
    if choose.one_in(2) {
        let tells = if choose.one_in(2) { vec!["c01".to_owned()] } else { Vec::new() };
        taxon.look_alikes = vec![LookAlike { name: named.to_owned(), tells, confirmed: false }];
    }
    taxon
}

/// Mostly a state of its own for each taxon, so that the target can be told from the others.
fn cell(character: &Character, at: usize, choose: &mut Choices<'_>) -> Cell {
    let own = if choose.one_in(4) { choose.of(3) } else { usize::from(at > 0) };
    let value = match &character.kind {
        Kind::States(_) if choose.one_in(4) => {
            let word = |at: usize| vec![STATES[at % 3].to_owned()];
            let none = Vec::new();
            Value::States {
                always: none.clone(),
                usually: word(own),
                sometimes: word(own + 1),
                rarely: none,
            }
        }
        Kind::States(_) => sample::always(STATES[own]),
        _ => {
            let foot = [10.0, 40.0, 100.0][own];
            let extreme = choose.one_in(2).then_some((foot / 2.0, foot * 3.0));
            Value::Range { ordinary: (foot, foot * 2.0), extreme }
        }
    };
    let standing = |choose: &mut Choices<'_>| {
        if choose.one_in(10) { Standing::Remembered } else { Standing::Published }
    };
    Cell { standing: standing(choose), rare_standing: standing(choose), ..sample::cell(value) }
}

/// What one or two readers found: mostly what the target typically shows.
fn looks_at(
    character: &Character,
    cells: &[(String, String, Cell)],
    choose: &mut Choices<'_>,
) -> Vec<Look> {
    let own = cells.iter().find(|(taxon, id, _)| taxon == TARGET && *id == character.id);
    let typical = own.and_then(|(_, _, cell)| crate::spectrum::typical(character, cell));
    let odd = || match character.kind {
        Kind::States(_) => Seen::State("three".to_owned()),
        Kind::Length => {
            let length = Finite::new(90.0).unwrap();
            Seen::Measured { low: length, high: length }
        }
        Kind::Count => Seen::Counted(90),
    };
    let readers = if character.sense == Sense::Smell { 1 } else { 2 };
    let look = |reader: usize, choose: &mut Choices<'_>| {
        let seen = match choose.of(24) {
            0 => odd(),
            1 => Seen::CannotTell,
            _ => typical.clone().unwrap_or_else(odd),
        };
        let level = [Level::Leader, Level::Trained][reader];
        let name = ["Ada", "Ben"][reader].to_owned();
        Look { reader: Reader { name, level }, ..sample::look(&character.id, seen) }
    };
    (0..readers).map(|reader| look(reader, choose)).collect()
}

/// Sets up the trial of the target and hands it on.
fn with_trial<T>(
    judge: &Judge<'_>,
    world: &World,
    with: impl FnOnce(&Trial<'_>, &[crate::testimony::Testimony]) -> T,
) -> T {
    let case = world.case();
    let testimonies = gather(judge, "A", &case.session()).unwrap();
    let target = judge.matrix().row(TARGET).unwrap();
    let rivals: Vec<Rival> = rivals(judge, target, None);
    let taxon = judge.taxon(target).unwrap();
    let month = Month::of(case.day);
    let trial = Trial { judge, target, taxon, rivals: &rivals, month, allowed: 1.0 };
    with(&trial, &testimonies)
}

/// What is left of the bar, which tells are met, and whether all rules are.
fn assess(world: &World, flora: &World) -> (f64, Vec<bool>, bool) {
    let (matrix, at_large) = (world.matrix(), flora.matrix());
    let judge = Judge::new(&matrix).among(&Judge::new(&at_large));
    with_trial(&judge, world, |trial, testimonies| {
        let assessment = Assessment::new(trial, testimonies);
        let met = assessment.tells.iter().map(|tells| tells.met).collect();
        (assessment.scales.left(), met, assessment.settled())
    })
}

/// By rival: how many times likelier one look alone is of it than of the target; and whether the
/// look agrees with the target.
fn alone(world: &World, look: usize) -> (Vec<f64>, bool) {
    let matrix = world.matrix();
    let judge = Judge::new(&matrix);
    let one = World { looks: vec![world.looks[look].clone()], ..world.clone() };
    with_trial(&judge, &one, |trial, testimonies| {
        let factors = trial.weigh(&testimonies[0]).unwrap().factors;
        let misfit = crate::rules::misfit(
            trial,
            &crate::rules::heard(trial, testimonies),
            &Default::default(),
        );
        (factors.to_vec(), misfit.agreeing == 1)
    })
}

/// Rounding of sums and products of a few dozen numbers.
const ROUNDING: f64 = 1.0 - 1e-12;

fn worlds() -> impl Strategy<Value = World> {
    proptest::collection::vec(any::<u8>(), 150..400).prop_map(|bytes| World::new(&bytes))
}

#[test]
fn invented_tables_give_both_outcomes() {
    let mut bytes: Vec<u8> = (0..251).collect();
    let mut determined = 0;
    for round in 0..200_usize {
        bytes.rotate_left(1);
        for (at, byte) in bytes.iter_mut().enumerate() {
            *byte = byte.wrapping_mul(141).wrapping_add((at + round) as u8 | 1).rotate_left(3);
        }
        let world = World::new(&bytes);
        determined += usize::from(assess(&world, &world).2);
    }
    assert!((20..180).contains(&determined), "{determined} of 200 are determined");
}

proptest! {
    #[test]
    fn a_look_that_favours_over_no_rival_never_helps(world in worlds(), at in any::<prop::sample::Index>()) {
        let at = at.index(world.looks.len());
        prop_assume!(alone(&world, at).0.iter().all(|factor| *factor >= 1.0));
        let (with, without) = (assess(&world, &world), assess(&world.without_look(at), &world));
        prop_assert!(with.0 >= without.0 * ROUNDING);
        prop_assert!(with.1.iter().zip(&without.1).all(|(with, without)| *without || !*with));
    }

    #[test]
    fn dropping_a_look_that_favours_never_betters(world in worlds(), at in any::<prop::sample::Index>()) {
        let at = at.index(world.looks.len());
        let (factors, agrees) = alone(&world, at);
        prop_assume!(agrees && factors.iter().all(|factor| *factor <= 1.0));
        let (with, without) = (assess(&world, &world), assess(&world.without_look(at), &world));
        prop_assert!(without.0 >= with.0 * ROUNDING);
        prop_assert!(with.2 || !without.2);
    }

    #[test]
    fn a_cell_that_is_only_remembered_never_betters(world in worlds(), at in any::<prop::sample::Index>()) {
        let at = at.index(world.cells.len());
        let mut faded = world.clone();
        faded.cells[at].2.standing = Standing::Remembered;
        let (known, remembered) = (assess(&world, &world), assess(&faded, &world));
        prop_assert!(remembered.0 >= known.0 * ROUNDING);
        prop_assert!(known.2 || !remembered.2);
    }

    #[test]
    fn a_favouring_cell_that_becomes_unknown_never_betters(world in worlds(), at in any::<prop::sample::Index>()) {
        let at = at.index(world.cells.len());
        let (taxon, character, _) = world.cells[at].clone();
        let favours = world.looks.iter().enumerate().filter(|(_, l)| l.character == character).all(|(look, _)| {
            let (factors, agrees) = alone(&world, look);
            let matrix = world.matrix();
            let judge = Judge::new(&matrix);
            let own = with_trial(&judge, &world, |trial, _| trial.rivals.iter().position(|r| r.name == taxon && taxon != TARGET));
            match own {
                Some(own) => factors[own] <= 1.0,
                None => (agrees || world.looks[look].seen == Seen::CannotTell) && factors.iter().all(|f| *f <= 1.0),
            }
        });
        prop_assume!(favours);
        let mut faded = world.clone();
        faded.cells.remove(at);
        let (known, unknown) = (assess(&world, &world), assess(&faded, &world));
        prop_assert!(unknown.0 >= known.0 * ROUNDING);
        prop_assert!(known.2 || !unknown.2);
    }

    #[test]
    fn one_more_harmful_rival_never_betters(world in worlds(), bytes in proptest::collection::vec(any::<u8>(), 40)) {
        let mut choose = Choices(bytes.iter().cycle());
        let mut more = world.clone();
        let mut rival = taxon("Eee", &mut choose);
        rival.harm = choose.pick(&[Harm::Irritant, Harm::Unknown, Harm::Harmful, Harm::Deadly]);
        more.taxa.push(rival);
        for character in &world.characters {
            more.cells.push(("Eee".to_owned(), character.id.clone(), cell(character, 1, &mut choose)));
        }
        let (before, after) = (assess(&world, &world), assess(&more, &world));
        prop_assert!(after.0 >= before.0 * ROUNDING);
        prop_assert!(before.2 || !after.2);
    }

    #[test]
    fn a_rival_that_does_more_harm_never_betters(world in worlds(), at in 1_usize..4) {
        let mut worse = world.clone();
        worse.taxa[at].harm = Harm::Deadly;
        let (before, after) = (assess(&world, &world), assess(&worse, &world));
        prop_assert!(after.0 >= before.0 * ROUNDING);
        prop_assert!(before.2 || !after.2);
    }

    #[test]
    fn order_of_looks_taxa_characters_and_cells_changes_no_byte(world in worlds()) {
        let mut turned = world.clone();
        turned.looks.reverse();
        turned.taxa.reverse();
        turned.characters.reverse();
        turned.cells.reverse();
        let verdict = |world: &World| {
            let matrix = world.matrix();
            let verdict = Judge::new(&matrix).verdict(TARGET, &world.case()).unwrap();
            let next = Judge::new(&matrix).next(TARGET, &world.case(), &crate::Means::all(Level::Leader));
            serde_json::to_string(&(verdict, next.unwrap())).unwrap()
        };
        prop_assert_eq!(verdict(&world), verdict(&turned));
    }
}
