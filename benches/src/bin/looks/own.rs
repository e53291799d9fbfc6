//! Our own work.

use super::cells::{Size, Table, Task};
use super::{Failure, Timed};
use identify::packed::{self, Column, Question, Running};
use nix::sys::resource::{UsageWho, getrusage};

pub(crate) fn run(task: &Task, size: &Size, table: &Table) -> Result<Timed, Failure> {
    let column = |codes: &Vec<u8>| {
        Column::new(codes.iter().map(|code| u16::from(*code)).collect(), table.kinds.len())
            .map_err(|fault| fault.to_string())
    };
    let columns = table.codes.iter().map(column).collect::<Result<Vec<_>, _>>()?;
    let packed = packed::Table::pack(columns).map_err(|fault| fault.to_string())?;
    // One for each character, though here their answers are alike.
    let questions: Vec<_> = table.codes.iter().map(|_| Question::new(&table.kinds)).collect();
    let (chances, bits) = session(&packed, &questions, table);
    let mut least = f64::INFINITY;
    for _ in 0..task.blocks {
        let start = user_seconds()?;
        for _ in 0..size.runs {
            std::hint::black_box(session(&packed, &questions, table));
        }
        least = least.min(user_seconds()? - start);
    }
    let seconds = least / f64::from(size.runs) / table.looks.len() as f64;
    Ok(Timed { chances, bits, seconds, bytes: packed.bytes() as f64 })
}

/// Each look in turn, and after each what every character would tell.
fn session(packed: &packed::Table, questions: &[Question], table: &Table) -> (Vec<f64>, Vec<f64>) {
    let mut running = Running::new(packed, &vec![1.0; packed.taxa()]);
    let mut last = (Vec::new(), Vec::new());
    for (character, answer) in &table.looks {
        let given: Vec<f64> =
            table.kinds.iter().filter_map(|kind| kind.get(*answer).copied()).collect();
        running.look(*character, *character, &given);
        let chances = running.chances();
        let kinds = chances.of_kinds();
        let bits = questions.iter().zip(&kinds).map(|(asked, kinds)| asked.tells(kinds)).collect();
        last = (chances.of_taxa().to_vec(), bits);
    }
    last
}

/// User CPU time of this process so far.
fn user_seconds() -> Result<f64, Failure> {
    let spent = getrusage(UsageWho::RUSAGE_SELF)?.user_time();
    Ok(spent.tv_sec() as f64 + spent.tv_usec() as f64 / 1e6)
}
