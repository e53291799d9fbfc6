//! Tables as they are read, and the folds.

use super::Failure;
use std::collections::BTreeSet;
use std::fs;

#[derive(serde::Deserialize)]
pub(crate) struct Task {
    folds: usize,
    random_start: u64,
    /// How often readers take a state for another, where a table is to be misread.
    misread: f64,
    pub(crate) tables: Vec<Source>,
}

#[derive(serde::Deserialize)]
pub(crate) struct Source {
    name: String,
    file: String,
    class: String,
    /// Columns that are left out.
    titles: Vec<String>,
    cells: Cells,
    #[serde(default)]
    misread: bool,
}

#[derive(Clone, Copy, PartialEq, Eq, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
enum Cells {
    Numbers,
    States,
    /// Several states in a cell: a row for each way to show one of each.
    Descriptions,
}

#[derive(serde::Serialize)]
pub(crate) struct Table {
    pub(crate) name: String,
    pub(crate) classes: usize,
    /// The class of each row.
    pub(crate) truth: Vec<usize>,
    pub(crate) folds: Vec<usize>,
    /// How many states each character has; none: numbers.
    pub(crate) states: Vec<usize>,
    /// Numbers, or those of states.
    pub(crate) rows: Vec<Vec<f64>>,
    /// The rows as readers read them.
    pub(crate) read: Vec<Vec<f64>>,
    /// Where rows were misread: the class that must not be missed.
    pub(crate) harmful: Option<usize>,
}

/// A row of text: its class, and its cells.
type Row = (String, Vec<String>);

impl Table {
    pub(crate) fn read(task: &Task, source: &Source) -> Result<Self, Failure> {
        let mut rows = rows(source)?;
        if source.cells == Cells::Descriptions {
            rows = multiplied(&rows);
            let mut order: Vec<_> = rows.into_iter().enumerate().collect();
            order.sort_by_key(|(at, _)| mixed(task.random_start, *at as u64));
            rows = order.into_iter().map(|(_, row)| row).collect();
        }
        let classes: Vec<&String> =
            rows.iter().map(|row| &row.0).collect::<BTreeSet<_>>().into_iter().collect();
        let truth = rows.iter().filter_map(|row| classes.iter().position(|of| **of == row.0));
        let (states, numbers) = numbers(source, &rows)?;
        let read = if source.misread { misread(task, &states, &numbers) } else { numbers.clone() };
        Ok(Self {
            name: source.name.clone(),
            classes: classes.len(),
            truth: truth.collect(),
            folds: (0..rows.len()).map(|at| at % task.folds).collect(),
            states,
            rows: numbers,
            read,
            harmful: source.misread.then(|| classes.iter().position(|of| *of == "p")).flatten(),
        })
    }
}

fn rows(source: &Source) -> Result<Vec<Row>, Failure> {
    let text = fs::read_to_string(&source.file)?;
    let mut lines = text.lines().filter(|line| !line.starts_with('#'));
    let header: Vec<&str> = lines.next().ok_or("no header")?.split(',').collect();
    let row = |line: &str| {
        let mut row = (String::new(), Vec::new());
        for (column, cell) in header.iter().zip(line.split(',')) {
            if *column == source.class {
                row.0 = cell.to_owned();
            } else if !source.titles.iter().any(|title| title == column) {
                row.1.push(cell.to_owned());
            }
        }
        row
    };
    Ok(lines.map(row).collect())
}

/// Every way to show one of the states of each cell, in order.
fn multiplied(rows: &[Row]) -> Vec<Row> {
    let one = |(class, cells): &Row| {
        let mut all = vec![Vec::new()];
        for cell in cells {
            let longer = |row: &Vec<String>| {
                let with = |state: char| {
                    let mut row = row.clone();
                    row.push(state.to_string());
                    row
                };
                cell.chars().map(with).collect::<Vec<_>>()
            };
            all = all.iter().flat_map(longer).collect();
        }
        all.into_iter().map(|row| (class.clone(), row)).collect::<Vec<_>>()
    };
    rows.iter().flat_map(one).collect()
}

/// How many states each character has, and the cells as numbers.
fn numbers(source: &Source, rows: &[Row]) -> Result<(Vec<usize>, Vec<Vec<f64>>), Failure> {
    if source.cells == Cells::Numbers {
        let row = |row: &Row| row.1.iter().map(|cell| cell.parse()).collect();
        return Ok((Vec::new(), rows.iter().map(row).collect::<Result<_, _>>()?));
    }
    let many = rows.first().map_or(0, |row| row.1.len());
    let states = |column: usize| {
        let cells = rows.iter().filter_map(|row| row.1.get(column));
        cells.collect::<BTreeSet<_>>().into_iter().collect::<Vec<_>>()
    };
    let states: Vec<Vec<&String>> = (0..many).map(states).collect();
    let number = |(cell, states): (&String, &Vec<&String>)| {
        states.iter().position(|state| *state == cell).unwrap_or_default() as f64
    };
    let row = |row: &Row| row.1.iter().zip(&states).map(number).collect();
    Ok((states.iter().map(Vec::len).collect(), rows.iter().map(row).collect()))
}

/// Each cell, as often as the task says, taken for one of the other states of its character.
fn misread(task: &Task, states: &[usize], rows: &[Vec<f64>]) -> Vec<Vec<f64>> {
    let mut at = 0;
    let mut share = || {
        at += 1;
        (mixed(task.random_start ^ 0x6d69_7372, at) >> 11) as f64 / (1_u64 << 53) as f64
    };
    let mut read = rows.to_vec();
    for row in &mut read {
        for (cell, many) in row.iter_mut().zip(states) {
            let (slips, other) = (share() < task.misread, share());
            if slips && *many > 1 {
                let step = 1.0 + (other * (*many as f64 - 1.0)).floor();
                *cell = (*cell + step) % *many as f64;
            }
        }
    }
    read
}

/// SplitMix64: G. L. Steele, D. Lea & C. H. Flood 2014, *Fast splittable pseudorandom number
/// generators*, doi:10.1145/2660193.2660195.
fn mixed(start: u64, at: u64) -> u64 {
    let mut z = start.wrapping_add(at.wrapping_add(1).wrapping_mul(0x9E37_79B9_7F4A_7C15));
    z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    z ^ (z >> 31)
}
