//! The peer's work, in a process of its own.

use super::cells::{Size, Table, Task};
use super::{Failure, Timed};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// Libraries that NumPy multiplies with, each told to use one core.
const ONE_CORE: [&str; 4] =
    ["OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS", "BLIS_NUM_THREADS"];

/// A task as the peer reads it.
pub(crate) struct Work {
    task: PathBuf,
    answers: PathBuf,
    taxa: usize,
}

#[derive(serde::Serialize)]
struct Told<'a> {
    taxa: usize,
    characters: usize,
    kinds: &'a [Vec<f64>],
    looks: &'a [(usize, usize)],
    runs: u32,
    blocks: u32,
    cells: &'a Path,
    answers: &'a Path,
}

impl Work {
    pub(crate) fn write(
        task: &Task,
        size: &Size,
        table: &Table,
        folder: &Path,
    ) -> Result<Self, Failure> {
        let place = |name: &str| folder.join(name);
        let (cells, answers) = (place("cells"), place("answers"));
        fs::write(&cells, table.codes.concat())?;
        let told = Told {
            taxa: size.taxa,
            characters: task.characters,
            kinds: &table.kinds,
            looks: &table.looks,
            runs: size.runs,
            blocks: task.blocks,
            cells: &cells,
            answers: &answers,
        };
        let task = place("task.json");
        fs::write(&task, serde_json::to_string(&told)?)?;
        Ok(Self { task, answers, taxa: size.taxa })
    }

    pub(crate) fn run(&self, python: &str, peer: &str) -> Result<Timed, Failure> {
        let mut command = Command::new(python);
        command.arg(peer).arg(&self.task).envs(ONE_CORE.map(|name| (name, "1")));
        let out = command.output()?;
        if !out.status.success() {
            return Err(String::from_utf8_lossy(&out.stderr).into());
        }
        let text = String::from_utf8(out.stdout)?;
        let numbers = text.split_whitespace().map(str::parse).collect::<Result<Vec<f64>, _>>()?;
        let [seconds, bytes] = *numbers.as_slice() else {
            return Err(format!("two numbers are wanted from {peer}, not {text:?}").into());
        };
        let answers = fs::read(&self.answers)?;
        let (answers, _) = answers.as_chunks::<8>();
        let mut chances: Vec<f64> = answers.iter().map(|of| f64::from_le_bytes(*of)).collect();
        let bits = chances.split_off(self.taxa.min(chances.len()));
        Ok(Timed { chances, bits, seconds, bytes })
    }
}
