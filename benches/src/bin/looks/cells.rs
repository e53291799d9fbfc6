//! Invented tables of characters of some states.

use identify::evidence;

#[derive(serde::Deserialize)]
pub(crate) struct Task {
    pub(crate) random_start: u64,
    pub(crate) characters: usize,
    pub(crate) states: u32,
    pub(crate) misread: f64,
    pub(crate) looks: usize,
    pub(crate) blocks: u32,
    pub(crate) rounds: u32,
    pub(crate) sizes: Vec<Size>,
}

#[derive(serde::Deserialize)]
pub(crate) struct Size {
    pub(crate) taxa: usize,
    pub(crate) runs: u32,
}

/// What a cell may say.
#[derive(Clone, Copy)]
pub(crate) enum Cells {
    /// Any of the states, or unknown: sixteen kinds of four states. So are published tables.
    Sets,
    /// A word for each state, none of them for all: two hundred and fifty-six kinds of four states,
    /// all that a byte can tell apart. So are floras.
    Words,
}

pub(crate) struct Table {
    /// By character, then by taxon: the kind of the cell.
    pub(crate) codes: Vec<Vec<u8>>,
    /// By kind: the probability of each answer.
    pub(crate) kinds: Vec<Vec<f64>>,
    /// Characters and answers.
    pub(crate) looks: Vec<(usize, usize)>,
}

impl Cells {
    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::Sets => "sets",
            Self::Words => "words",
        }
    }

    /// A table in which every kind of cell is as common as any other, and looks at one of its taxa.
    pub(crate) fn table(self, task: &Task, taxa: usize) -> Table {
        let kinds = self.kinds(task);
        let cell = |character: usize, taxon: usize| {
            let at = task.random_start.wrapping_mul(1 << 40) + (character * taxa + taxon) as u64;
            // The remainder is below the number of kinds, at most 256.
            (mixed(at) % kinds.len() as u64) as u8
        };
        let codes: Vec<Vec<u8>> = (0..task.characters)
            .map(|character| (0..taxa).map(|taxon| cell(character, taxon)).collect())
            .collect();
        let truth = (mixed(task.random_start) % taxa as u64) as usize;
        let looks = (0..task.looks).filter_map(|at| {
            let character = at * 7 % task.characters;
            let kind = *codes.get(character)?.get(truth)?;
            Some((character, likeliest(kinds.get(usize::from(kind))?)))
        });
        let looks = looks.collect();
        Table { codes, kinds, looks }
    }

    fn kinds(self, task: &Task) -> Vec<Vec<f64>> {
        let words: &[f64] = match self {
            Self::Sets => &[0.0, 1.0],
            Self::Words => {
                &[evidence::UNSEEN, evidence::RARELY, evidence::SOMETIMES, evidence::USUALLY]
            }
        };
        let many = words.len().pow(task.states);
        (0..many).map(|kind| answers(kind, words, task)).collect()
    }
}

/// The chances of the answers to a cell: the number has a digit for each state, its word.
fn answers(mut kind: usize, words: &[f64], task: &Task) -> Vec<f64> {
    let unknown = kind == 0;
    let mut weights = Vec::new();
    for _ in 0..task.states {
        let word = words.get(kind % words.len()).copied().unwrap_or_default();
        weights.push(if unknown { 1.0 } else { word });
        kind /= words.len();
    }
    let total: f64 = weights.iter().sum();
    let others = f64::from(task.states) - 1.0;
    let answer = |weight: &f64| {
        let share = weight / total;
        (1.0 - task.misread) * share + task.misread * (1.0 - share) / others
    };
    weights.iter().map(answer).collect()
}

fn likeliest(answers: &[f64]) -> usize {
    let all = answers.iter().enumerate().rev();
    all.max_by(|a, b| a.1.total_cmp(b.1)).map_or(0, |(at, _)| at)
}

/// SplitMix64: G. L. Steele, D. Lea & C. H. Flood 2014, *Fast splittable pseudorandom number
/// generators*, doi:10.1145/2660193.2660195.
fn mixed(at: u64) -> u64 {
    let mut z = at.wrapping_add(0x9E37_79B9_7F4A_7C15);
    z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    z ^ (z >> 31)
}
