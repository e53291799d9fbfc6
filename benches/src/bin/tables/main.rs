//! Open tables, whose specimens are named beside naive Bayes and a decision tree.
//!
//! `tables PYTHON PARAMETERS PEER FOLDER` names every row of each table from the rows of the other
//! folds, has scikit-learn do the same on the same folds, and prints for all how many were right and
//! how far their chances may be believed.

mod data;
mod scores;
mod specimens;

use data::{Table, Task};
use identify::evidence;
use scores::Scores;
use std::error::Error;
use std::io::{self, Write};
use std::path::Path;
use std::process::{Command, ExitCode};
use std::{env, fs};

type Failure = Box<dyn Error>;
/// By row, the chance of each class.
type Chances = Vec<Vec<f64>>;

/// What the peers said of a table.
#[derive(serde::Deserialize)]
struct Peers {
    bayes: Chances,
    tree: Chances,
}

fn main() -> ExitCode {
    match measure(&env::args().skip(1).collect::<Vec<_>>()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => {
            let _ = writeln!(io::stderr(), "tables: {failure}");
            ExitCode::FAILURE
        }
    }
}

fn measure(args: &[String]) -> Result<(), Failure> {
    let [python, parameters, peer, folder] = args else {
        return Err("usage: tables PYTHON PARAMETERS PEER FOLDER".into());
    };
    let task: Task = serde_json::from_str(&fs::read_to_string(parameters)?)?;
    let tables: Vec<Table> =
        task.tables.iter().map(|source| Table::read(&task, source)).collect::<Result<_, _>>()?;
    let file = Path::new(folder).join("tables.json");
    fs::write(&file, serde_json::to_string(&tables)?)?;
    let out = Command::new(python).arg(peer).arg(&file).output()?;
    if !out.status.success() {
        return Err(String::from_utf8_lossy(&out.stderr).into());
    }
    let peers: Vec<Peers> = serde_json::from_slice(&out.stdout)?;
    if peers.len() != tables.len() {
        return Err("the peers named other tables".into());
    }
    let mut short = Vec::new();
    for (table, peers) in tables.iter().zip(&peers) {
        let own = specimens::named(table)?;
        if table.harmful.is_some() {
            report_harm(table, &own, peers)?;
        } else {
            short.push((report(table, &own, peers)?, table.name.as_str()));
        }
    }
    short.sort_by(|a, b| b.0.total_cmp(&a.0));
    let (least, name) = short.first().ok_or("no table")?;
    writeln!(
        io::stdout(),
        "tables-worst\t{:+.1}\tpoints beside the better peer: {name} (goal -1)",
        -least
    )?;
    Ok(())
}

/// Prints the scores of a table, and gives how many points fewer than the better peer were right.
fn report(table: &Table, own: &Chances, peers: &Peers) -> io::Result<f64> {
    let [own, bayes, tree] =
        [own, &peers.bayes, &peers.tree].map(|chances| Scores::of(chances, &table.truth));
    let mut out = io::stdout();
    let name = format!("tables-{}", table.name);
    let beside = |of: fn(&Scores) -> f64, digits: usize| {
        format!("naive Bayes {:.digits$}, tree {:.digits$}", of(&bayes), of(&tree))
    };
    let right = |scores: &Scores| 100.0 * scores.right;
    let goal = right(&bayes).max(right(&tree)) - 1.0;
    let peers = beside(|scores| 100.0 * scores.right, 1);
    writeln!(out, "{name}\t{:.1}\t% named rightly; {peers} (goal {goal:.1})", right(&own))?;
    let peers = beside(|scores| scores.calibration, 3);
    let goal = bayes.calibration / 2.0;
    let calibration = own.calibration;
    writeln!(
        out,
        "{name}-calibration\t{calibration:.3}\texpected error; {peers} (goal {goal:.3})"
    )?;
    let peers = beside(|scores| scores.brier, 3);
    writeln!(out, "{name}-brier\t{:.3}\tBrier score, of 2; {peers}", own.brier)?;
    Ok(right(&bayes).max(right(&tree)) - right(&own))
}

/// Prints how many harmful rows were called harmless, and how many harmless ones could be.
fn report_harm(table: &Table, own: &Chances, peers: &Peers) -> io::Result<()> {
    let harmful = table.harmful.unwrap_or_default();
    let called = |chances: &Chances, weight: f64| {
        let (mut wrongly, mut settled, mut harmless) = (0, 0, 0.0);
        for (chances, truth) in chances.iter().zip(&table.truth) {
            let harm = chances.get(harmful).copied().unwrap_or(1.0);
            let clear = harm * weight <= 1.0 - harm;
            wrongly += usize::from(clear && *truth == harmful);
            settled += usize::from(clear && *truth != harmful);
            harmless += if *truth == harmful { 0.0 } else { 1.0 };
        }
        (wrongly, 100.0 * settled as f64 / harmless)
    };
    let (wrongly, settled) = called(own, evidence::WEIGHT_DEADLY);
    let (bayes, by_bayes) = called(&peers.bayes, 1.0);
    let (tree, by_tree) = called(&peers.tree, 1.0);
    let mut out = io::stdout();
    let name = format!("tables-{}", table.name);
    writeln!(
        out,
        "{name}\t{wrongly}\tpoisonous ones called edible; naive Bayes {bayes}, tree {tree} (goal 0)"
    )?;
    writeln!(
        out,
        "{name}-settled\t{settled:.1}\t% of edible ones; naive Bayes {by_bayes:.1}, tree {by_tree:.1}"
    )
}
