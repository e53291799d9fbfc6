//! Naming by a table of specimens: each row that is known is a taxon of its own, and the chances of a
//! class are those of its specimens.
//!
//! A look weighs a specimen by how near it is to what was read. Of states it is 1 − e for the same and
//! e shared by the others (J. Aitchison & C. G. G. Aitken 1976, Biometrika 63:413); of numbers a
//! normal density about the specimen's own, as wide as some share of the spread within a class. So
//! characters that go together are not counted as if each said something new, as they are where a
//! class is a list of separate shares. What all characters say together is raised to a power besides.
//!
//! Width and power are chosen for each fold from the rows that are known: of each the probability of
//! its own class is asked, itself left out.

use super::data::Table;
use super::{Chances, Failure};
use identify::evidence;
use identify::packed::{self, Column, Running};
use std::collections::BTreeSet;

/// Chances of another state, and widths of numbers in spreads within a class.
const OTHERS: [f64; 9] = [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.15, 0.2];
const WIDTHS: [f64; 9] = [0.2, 0.3, 0.4, 0.5, 0.65, 0.8, 1.0, 1.25, 1.6];
const POWERS: [f64; 4] = [1.0, 0.7, 0.5, 0.35];
/// How many rows the choice is tried on at most, evenly spread.
const TRIED: usize = 400;

/// How a look weighs specimens.
#[derive(Clone, Copy)]
struct Nearness {
    width: f64,
    power: f64,
}

/// A character of the specimens.
struct Character {
    /// Its different cells, in order.
    kinds: Vec<f64>,
    /// How many states there are; none: a number, with this spread within a class.
    states: Option<f64>,
    spread: f64,
}

struct Specimens {
    table: packed::Table,
    characters: Vec<Character>,
    classes: Vec<usize>,
    many: usize,
}

/// The chances of every row, from the rows of the other folds.
pub(crate) fn named(table: &Table) -> Result<Chances, Failure> {
    let folds: BTreeSet<usize> = table.folds.iter().copied().collect();
    let mut all = vec![Vec::new(); table.rows.len()];
    for fold in folds {
        let at = |inside: bool| {
            let rows = table.folds.iter().enumerate();
            rows.filter(|(_, of)| (**of == fold) == inside).map(|(at, _)| at).collect::<Vec<_>>()
        };
        let known = at(false);
        let specimens = Specimens::new(table, &known)?;
        let nearness = specimens.choose(table, &known);
        for row in at(true) {
            if let (Some(place), Some(read)) = (all.get_mut(row), table.read.get(row)) {
                *place = specimens.chances(read, nearness, None);
            }
        }
    }
    Ok(all)
}

impl Specimens {
    fn new(table: &Table, known: &[usize]) -> Result<Self, Failure> {
        let classes: Vec<usize> = picked(&table.truth, known).copied().collect();
        let rows: Vec<&Vec<f64>> = picked(&table.rows, known).collect();
        let many = rows.first().map_or(0, |row| row.len());
        let (mut characters, mut columns) = (Vec::new(), Vec::new());
        for column in 0..many {
            let cells: Vec<f64> = rows.iter().filter_map(|row| row.get(column)).copied().collect();
            let mut kinds = cells.clone();
            kinds.sort_by(f64::total_cmp);
            kinds.dedup();
            let code = |cell: &f64| kinds.binary_search_by(|kind| kind.total_cmp(cell));
            let codes = cells.iter().filter_map(|cell| u16::try_from(code(cell).ok()?).ok());
            let packed = Column::new(codes.collect(), kinds.len());
            columns.push(packed.map_err(|fault| fault.to_string())?);
            let states = table.states.get(column).map(|many| *many as f64);
            let spread = spread(&cells, &classes, table.classes);
            characters.push(Character { kinds, states, spread });
        }
        let packed = packed::Table::pack(columns).map_err(|fault| fault.to_string())?;
        Ok(Self { table: packed, characters, classes, many: table.classes })
    }

    /// The nearness by which the known rows, as they were read, name each other best: the least mean
    /// of −log of the chance of the true class.
    fn choose(&self, table: &Table, known: &[usize]) -> Nearness {
        let numbers = self.characters.iter().any(|character| character.states.is_none());
        let widths = if numbers { WIDTHS } else { OTHERS };
        let mut best = (f64::INFINITY, Nearness { width: 1.0, power: 1.0 });
        for width in widths {
            for power in POWERS {
                let nearness = Nearness { width, power };
                let loss = self.loss(table, known, nearness);
                if loss < best.0 {
                    best = (loss, nearness);
                }
            }
        }
        best.1
    }

    fn loss(&self, table: &Table, known: &[usize], nearness: Nearness) -> f64 {
        let step = known.len().div_ceil(TRIED);
        // No row, however odd, may weigh more than as much as its like can be said to be rare.
        let least = 1.0 / (known.len() as f64 + 1.0);
        let rows = picked(&table.read, known).zip(&self.classes).enumerate().step_by(step);
        let loss = |(at, (read, class)): (usize, (&Vec<f64>, &usize))| {
            let chances = self.chances(read, nearness, Some(at));
            -libm::log(chances.get(*class).copied().unwrap_or(0.0).max(least))
        };
        rows.map(loss).sum()
    }

    /// The chances of the classes of what was read, one specimen left out.
    fn chances(&self, read: &[f64], nearness: Nearness, without: Option<usize>) -> Vec<f64> {
        let mut weights = vec![1.0; self.table.taxa()];
        if let Some(weight) = without.and_then(|at| weights.get_mut(at)) {
            *weight = 0.0;
        }
        let mut running = Running::new(&self.table, &weights);
        for (at, (cell, character)) in read.iter().zip(&self.characters).enumerate() {
            running.look(at, at, &character.chances(*cell, nearness));
        }
        let mut classes = vec![0.0; self.many];
        for (chance, class) in running.chances().of_taxa().iter().zip(&self.classes) {
            if let Some(sum) = classes.get_mut(*class) {
                *sum += chance;
            }
        }
        classes
    }
}

impl Character {
    /// For each kind of cell the probability of what was read.
    fn chances(&self, read: f64, nearness: Nearness) -> Vec<f64> {
        let width = nearness.width;
        let chance = |kind: &f64| match self.states {
            Some(many) if many < 2.0 => 1.0,
            Some(_) if kind.total_cmp(&read).is_eq() => 1.0 - width,
            Some(many) => width / (many - 1.0),
            None => {
                let apart = (read - kind) / (width * self.spread);
                libm::exp(-0.5 * apart * apart).max(evidence::FLOOR)
            }
        };
        self.kinds.iter().map(|kind| libm::pow(chance(kind), nearness.power)).collect()
    }
}

/// What stands in these places.
fn picked<'a, T>(all: &'a [T], places: &'a [usize]) -> impl Iterator<Item = &'a T> {
    places.iter().filter_map(|at| all.get(*at))
}

/// The standard deviation within a class, over all classes together.
fn spread(cells: &[f64], classes: &[usize], many: usize) -> f64 {
    let mut sums = vec![(0.0, 0.0); many];
    for (cell, class) in cells.iter().zip(classes) {
        if let Some((count, sum)) = sums.get_mut(*class) {
            *count += 1.0;
            *sum += cell;
        }
    }
    let square = |(cell, class): (&f64, &usize)| {
        let (count, sum) = sums.get(*class).copied().unwrap_or((1.0, *cell));
        (cell - sum / count) * (cell - sum / count)
    };
    let squares: f64 = cells.iter().zip(classes).map(square).sum();
    let free = (cells.len() as f64 - many as f64).max(1.0);
    (squares / free).sqrt().max(f64::MIN_POSITIVE)
}
