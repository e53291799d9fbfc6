//! What each taxon's likelihood has come to, look after look.

use super::bundle::Bundle;
use super::{Table, sums};
use crate::states;

/// The parts of a chance of 1, and one for each taxon that may be rounded up.
const PARTS: f64 = u32::MAX as f64;
/// From here on the next number is one more, so that the last bits count what was added.
const WHOLE: f64 = (1_u64 << 52) as f64;

/// Running logarithms: of the prior, and of all that was read so far.
#[derive(Clone, Debug)]
pub struct Running<'t> {
    table: &'t Table,
    pub(super) logs: Vec<f64>,
    looked: Vec<Looked>,
}

/// A look that was made, by its character.
#[derive(Clone, Debug)]
struct Looked {
    column: usize,
    group: usize,
    /// For each kind of cell the logarithm of the probability of what was read.
    logs: Vec<f64>,
}

impl<'t> Running<'t> {
    /// Before any look: the weight of each taxon, of any sum. A taxon that is left out weighs nothing.
    #[must_use]
    pub fn new(table: &'t Table, weights: &[f64]) -> Self {
        let mut logs: Vec<f64> = weights.iter().map(|weight| libm::log(*weight)).collect();
        logs.resize(table.taxa(), f64::NEG_INFINITY);
        Self { table, logs, looked: Vec::new() }
    }

    /// Adds what was read of a character, all its readings together: for each kind of cell the
    /// probability of that.
    ///
    /// The characters of one group count as one, the geometric mean of their probabilities. So
    /// another of a group takes from those before it what it adds.
    pub fn look(&mut self, column: usize, group: usize, chances: &[f64]) {
        let logs: Vec<f64> = chances.iter().map(|chance| libm::log(*chance)).collect();
        let mates: Vec<&Looked> = self.looked.iter().filter(|look| look.group == group).collect();
        let before = states::count(mates.len());
        let share = 1.0 / (before + 1.0);
        for mate in mates {
            let less = scaled(&mate.logs, share - 1.0 / before);
            self.table.add(mate.column, &less, &mut self.logs);
        }
        self.table.add(column, &scaled(&logs, share), &mut self.logs);
        self.looked.push(Looked { column, group, logs });
    }

    /// The chances of the taxa as they stand now.
    #[must_use]
    pub fn chances(&self) -> Chances<'t> {
        Chances { table: self.table, of: sums::chances(&self.logs) }
    }
}

/// What has become impossible stays so, whatever is added.
fn scaled(logs: &[f64], by: f64) -> Vec<f64> {
    let scale = |log: &f64| match *log {
        f64::NEG_INFINITY if by < 0.0 => 0.0,
        log => log * by,
    };
    logs.iter().map(scale).collect()
}

/// How likely each taxon is, after some looks.
#[derive(Clone, Debug)]
pub struct Chances<'t> {
    table: &'t Table,
    of: Vec<f64>,
}

impl Chances<'_> {
    /// In the order of the taxa; they sum to 1, or are all nought where nothing is possible.
    #[must_use]
    pub fn of_taxa(&self) -> &[f64] {
        &self.of
    }

    /// For each character, how likely the plant is of each kind of cell: what
    /// [`Question::tells`](super::Question::tells) asks for.
    ///
    /// Each chance is rounded to a whole number of parts, some four milliards in all.
    #[must_use]
    pub fn of_kinds(&self) -> Vec<Vec<f64>> {
        let scale = (PARTS - self.of.len() as f64).max(0.0);
        let part = |chance: &f64| (chance * scale + WHOLE).to_bits() as u32;
        let parts: Vec<u32> = self.of.iter().map(part).collect();
        let all = f64::from(parts.iter().sum::<u32>().max(1));
        let sums = Bundle::sums(&self.table.bundles, &parts);
        let shares = |kinds: &Vec<u32>| kinds.iter().map(|sum| f64::from(*sum) / all).collect();
        sums.iter().map(shares).collect()
    }
}
