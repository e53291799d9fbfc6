//! Four lognormal factors multiplied and three percentiles of the product, beside NumPy.
//!
//! `draws PYTHON PARAMETERS PEER` runs its own work and the peer's in turn, holds the answers
//! against each other, and only then prints the times: user CPU of one run, measured inside each
//! process, the least of many.

use ground::{Column, Dist, Draws, RandomStart, Spread};
use nix::sys::resource::{UsageWho, getrusage};
use std::error::Error;
use std::io::{self, Write};
use std::process::{Command, ExitCode};
use std::{env, fs};

/// A percentile of `n` independent draws of ln X, normal with this standard deviation, has the
/// standard error √(p(1−p)/n) · sd / φ(z). At 5 and 95 % that is 2.113 sd/√n, in the middle 1.253.
const STANDARD_ERRORS: [f64; 3] = [2.113, 1.253, 2.113];
/// Quantile of a standard normal number at 0.95.
const Z95: f64 = 1.644_853_626_951_472_2;

#[derive(serde::Deserialize)]
struct Task {
    draws: usize,
    random_start: u64,
    factors: Vec<Factor>,
    runs: u32,
    blocks: u32,
    rounds: u32,
}

#[derive(serde::Deserialize)]
struct Factor {
    name: String,
    p5: f64,
    p95: f64,
}

/// The percentiles of the product, and the least user CPU time of one run.
#[derive(Clone, Copy)]
struct Timed {
    percentiles: [f64; 3],
    seconds: f64,
}

type Failure = Box<dyn Error>;

fn main() -> ExitCode {
    match measure(&env::args().skip(1).collect::<Vec<_>>()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => {
            let _ = writeln!(io::stderr(), "draws: {failure}");
            ExitCode::FAILURE
        }
    }
}

fn measure(args: &[String]) -> Result<(), Failure> {
    let [python, parameters, peer] = args else {
        return Err("usage: draws PYTHON PARAMETERS PEER".into());
    };
    let task: Task = serde_json::from_str(&fs::read_to_string(parameters)?)?;
    let (mut ours, mut theirs) = (None, None);
    for _ in 0..task.rounds {
        ours = Some(faster(ours, own(&task)?));
        theirs = Some(faster(theirs, peers(python, peer, parameters)?));
    }
    let (ours, theirs) = (ours.ok_or("no round")?, theirs.ok_or("no round")?);
    compare(&task, ours, theirs)?;
    report(ours.seconds, theirs.seconds)?;
    Ok(())
}

fn faster(before: Option<Timed>, now: Timed) -> Timed {
    before.filter(|before| before.seconds <= now.seconds).unwrap_or(now)
}

fn own(task: &Task) -> Result<Timed, Failure> {
    let spread = run(task)?;
    let mut seconds = f64::INFINITY;
    for _ in 0..task.blocks {
        let start = user_seconds()?;
        for _ in 0..task.runs {
            std::hint::black_box(run(task)?);
        }
        seconds = seconds.min((user_seconds()? - start) / f64::from(task.runs));
    }
    let percentiles = [spread.p5, spread.p50, spread.p95].map(|value| value.get());
    Ok(Timed { percentiles, seconds })
}

/// The work itself, from parameters to percentiles, as a plan does it.
fn run(task: &Task) -> Result<Spread, Failure> {
    let mut draws = Draws::of(RandomStart(task.random_start), task.draws);
    let columns = task
        .factors
        .iter()
        .map(|factor| {
            let dist = Dist::log_normal(factor.p5, factor.p95)?;
            Ok(draws.column(&[&factor.name], &dist).map_err(|fault| fault.to_string())?)
        })
        .collect::<Result<Vec<Column>, Failure>>()?;
    let [a, b, c, d] = columns.as_slice() else {
        return Err("four factors are wanted".into());
    };
    let products = (0..task.draws).map(|i| a.at(i) * b.at(i) * c.at(i) * d.at(i));
    Ok(Spread::of(products.collect()).ok_or("a product is not finite")?)
}

/// User CPU time of this process so far.
fn user_seconds() -> Result<f64, Failure> {
    let spent = getrusage(UsageWho::RUSAGE_SELF)?.user_time();
    Ok(spent.tv_sec() as f64 + spent.tv_usec() as f64 / 1e6)
}

fn peers(python: &str, peer: &str, parameters: &str) -> Result<Timed, Failure> {
    let out = Command::new(python).args([peer, parameters]).output()?;
    if !out.status.success() {
        return Err(String::from_utf8_lossy(&out.stderr).into());
    }
    let text = String::from_utf8(out.stdout)?;
    let numbers = text.split_whitespace().map(str::parse).collect::<Result<Vec<f64>, _>>()?;
    let [p5, p50, p95, seconds] = *numbers.as_slice() else {
        return Err(format!("four numbers are wanted from {peer}, not {text:?}").into());
    };
    Ok(Timed { percentiles: [p5, p50, p95], seconds })
}

/// Both answers must agree within the sampling error before a time means anything: four standard
/// errors of the peer's, whose draws are independent; ours are stratified and err less.
fn compare(task: &Task, ours: Timed, theirs: Timed) -> Result<(), Failure> {
    let variance = |factor: &Factor| {
        let sd = libm::log(factor.p95 / factor.p5) / (2.0 * Z95);
        sd * sd
    };
    let sd = task.factors.iter().map(variance).sum::<f64>().sqrt();
    let pairs = ours.percentiles.iter().zip(theirs.percentiles);
    for ((ours, theirs), error) in pairs.zip(STANDARD_ERRORS) {
        let bound = 4.0 * error * sd / (task.draws as f64).sqrt();
        let apart = (ours / theirs - 1.0).abs();
        if apart.is_nan() || apart > bound {
            return Err(format!("{ours} and {theirs} differ by more than {bound} of either").into());
        }
    }
    Ok(())
}

fn report(ours: f64, theirs: f64) -> io::Result<()> {
    let mut out = io::stdout();
    writeln!(out, "draws\t{:.2}\tms user CPU", ours * 1e3)?;
    writeln!(out, "draws-numpy\t{:.2}\tms user CPU", theirs * 1e3)?;
    writeln!(out, "draws-ratio\t{:.2}\ttimes NumPy's (goal 1.5)", ours / theirs)
}
