//! Looks at large tables beside NumPy.
//!
//! `looks PYTHON PARAMETERS PEER FOLDER` makes tables of growing size, runs its own work and the
//! peer's in turn, holds the answers against each other, and only then prints the times: user CPU of
//! one look on one core, measured inside each process, the least of many. One look is: the likelihood
//! of every taxon, its chance, and what each character not yet looked at would tell.

mod cells;
mod own;
mod peer;

use cells::{Cells, Task};
use std::error::Error;
use std::io::{self, Write};
use std::path::Path;
use std::process::ExitCode;
use std::{env, fs};

type Failure = Box<dyn Error>;

/// NumPy sums a hundred thousand products in numbers of seven decimals. In the measured runs chances
/// were 2e-7 of each other apart at most, and bits 1e-6; ten times and a hundred times that is
/// refused.
const CHANCES_APART: f64 = 2e-6;
const BITS_APART: f64 = 1e-4;

/// From so many taxa on a table is large.
const LARGE: usize = 100_000;

/// What came out after the last look, and what a look took.
struct Timed {
    chances: Vec<f64>,
    /// By character, those looked at too.
    bits: Vec<f64>,
    /// The least user CPU time of one look.
    seconds: f64,
    /// What the cells take.
    bytes: f64,
}

fn main() -> ExitCode {
    match measure(&env::args().skip(1).collect::<Vec<_>>()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => {
            let _ = writeln!(io::stderr(), "looks: {failure}");
            ExitCode::FAILURE
        }
    }
}

fn measure(args: &[String]) -> Result<(), Failure> {
    let [python, parameters, peer, folder] = args else {
        return Err("usage: looks PYTHON PARAMETERS PEER FOLDER".into());
    };
    let task: Task = serde_json::from_str(&fs::read_to_string(parameters)?)?;
    for cells in [Cells::Sets, Cells::Words] {
        for size in &task.sizes {
            let table = cells.table(&task, size.taxa);
            let work = peer::Work::write(&task, size, &table, Path::new(folder))?;
            let (mut ours, mut theirs) = (None, None);
            for _ in 0..task.rounds {
                ours = Some(faster(ours, own::run(&task, size, &table)?));
                theirs = Some(faster(theirs, work.run(python, peer)?));
            }
            let (ours, theirs) = (ours.ok_or("no round")?, theirs.ok_or("no round")?);
            let apart = compare(&table, &ours, &theirs)?;
            report(cells, size.taxa, &table, (&ours, &theirs), apart)?;
        }
    }
    Ok(())
}

fn faster(before: Option<Timed>, now: Timed) -> Timed {
    before.filter(|before| before.seconds <= now.seconds).unwrap_or(now)
}

/// How far the answers are apart, chances in proportion, where that is near enough to speak of times.
fn compare(table: &cells::Table, ours: &Timed, theirs: &Timed) -> Result<(f64, f64), Failure> {
    if ours.chances.len() != theirs.chances.len() || ours.bits.len() != theirs.bits.len() {
        return Err("the answers are not of one table".into());
    }
    let worst = |apart: &mut dyn Iterator<Item = f64>| {
        // Not a number is as far apart as can be.
        apart.fold(0.0, |worst, apart| if apart <= worst { worst } else { apart })
    };
    let pairs = ours.chances.iter().zip(&theirs.chances);
    let chances = worst(&mut pairs.map(|(ours, theirs)| (ours / theirs - 1.0).abs()));
    let bits = ours.bits.iter().zip(&theirs.bits).enumerate();
    let open = bits.filter(|(at, _)| table.looks.iter().all(|(looked, _)| looked != at));
    let bits = worst(&mut open.map(|(_, (ours, theirs))| (ours - theirs).abs()));
    if chances <= CHANCES_APART && bits <= BITS_APART {
        return Ok((chances, bits));
    }
    Err(format!("answers differ: chances by {chances:e} of each other, {bits:e} bits").into())
}

fn report(
    cells: Cells,
    taxa: usize,
    table: &cells::Table,
    (ours, theirs): (&Timed, &Timed),
    (chances, bits): (f64, f64),
) -> io::Result<()> {
    let name = format!("looks-{}-{}", cells.name(), taxa);
    let cell = (taxa * table.codes.len()) as f64;
    let mut out = io::stdout();
    writeln!(out, "{name}\t{:.3}\tms user CPU a look", ours.seconds * 1e3)?;
    writeln!(out, "{name}-numpy\t{:.3}\tms user CPU a look", theirs.seconds * 1e3)?;
    let apart = format!("chances within {chances:.0e}, bits within {bits:.0e}");
    let times = theirs.seconds / ours.seconds;
    let goal = if taxa >= LARGE { " (goal 5)" } else { "" };
    writeln!(out, "{name}-ratio\t{times:.1}\ttimes as fast as NumPy{goal}; {apart}")?;
    let theirs = theirs.bytes / cell;
    let ours = ours.bytes / cell;
    writeln!(out, "{name}-cell\t{ours:.2}\tbytes a cell (goal 1); NumPy's {theirs:.0}")
}
