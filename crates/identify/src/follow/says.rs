//! What somebody says who has a plant before them.

use super::{Truth, World};
use crate::reports::{Reports, reports_of};
use crate::spectrum::{typical, weights};
use crate::testimony::Reading;
use crate::weighing::{Trial, visible};
use crate::{Character, Kind, Level, Seen, Sense, evidence};
use ground::Organ;
use jiff::civil::DateTime;
use std::collections::HashMap;
use std::rc::Rc;

const READERS: [&str; 2] = ["A", "B"];

/// An answer on the way: which of the answers to a character, or that the organ is not there.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(super) struct Step {
    pub(super) column: usize,
    pub(super) reader: usize,
    pub(super) answer: Option<usize>,
}

/// What may be said of a character by somebody of the level that the program is told.
pub(super) struct Column {
    pub(super) said: Vec<Seen>,
    /// What the target typically shows, among these.
    typical: Option<usize>,
    /// By answer, what it weighs on each true rung: as told, and by who misreads twice as often.
    told: Vec<Vec<f64>>,
    doubled: Vec<Vec<f64>>,
}

pub(super) struct Says<'s> {
    trial: Trial<'s>,
    level: Level,
    columns: Vec<Option<Column>>,
    /// What is said of a character that was not read before: by truth, column and reader.
    fresh: HashMap<(Truth, usize, usize), Rc<[f64]>>,
}

impl<'s> Says<'s> {
    pub(super) fn new(trial: &Trial<'s>, level: Level) -> Self {
        let columns = 0..trial.judge.characters().len();
        let columns = columns.map(|column| Column::new(trial, column, level)).collect();
        Self { trial: *trial, level, columns, fresh: HashMap::new() }
    }

    pub(super) fn column(&self, column: usize) -> Option<&Column> {
        self.columns.get(column)?.as_ref()
    }

    /// The chance of each answer, after what was answered before; last, that the organ is not there.
    pub(super) fn chances(
        &mut self,
        path: &[Step],
        truth: Truth,
        (column, reader): (usize, usize),
    ) -> Rc<[f64]> {
        let fresh = truth.world != World::Together && path.iter().all(|s| s.column != column);
        let key = (truth, column, reader);
        if let Some(known) = self.fresh.get(&key).filter(|_| fresh) {
            return known.clone();
        }
        let chances: Rc<[f64]> = self.worked_out(path, truth, (column, reader)).into();
        if fresh {
            self.fresh.insert(key, chances.clone());
        }
        chances
    }

    /// How likely either reader says one of these of a character.
    pub(super) fn either(&self, truth: Truth, column: usize, these: &[bool]) -> f64 {
        let first = self.worked_out(&[], truth, (column, 0));
        let sum = |chances: &[f64], these: &[bool]| -> f64 {
            chances.iter().zip(these).filter(|(_, is)| **is).map(|(chance, _)| chance).sum()
        };
        let missed =
            first.iter().zip(these).enumerate().filter(|(_, (chance, is))| !**is && **chance > 0.0);
        let later = missed.map(|(answer, (chance, _))| {
            let step = Step { column, reader: 0, answer: Some(answer) };
            chance * sum(&self.worked_out(&[step], truth, (column, 1)), these)
        });
        sum(&first, these) + later.sum::<f64>()
    }

    /// An answer as the program is told of it.
    pub(super) fn reading(&self, step: &Step, tainted: bool) -> Option<Reading> {
        let character = self.trial.judge.character(step.column)?;
        let said = &self.column(step.column)?.said;
        let seen = step.answer.and_then(|answer| said.get(answer)).unwrap_or(&Seen::NotThere);
        Some(Reading {
            reader: (*READERS.get(step.reader)?).to_owned(),
            level: self.level,
            time: DateTime::constant(1, 1, 1, 0, 0, 0, 0),
            blind: true,
            seen: seen.clone(),
            weights: weights(character, seen, self.misread(character)),
            tainted,
        })
    }

    /// As [`Says::chances`], not remembered.
    pub(super) fn worked_out(
        &self,
        path: &[Step],
        truth: Truth,
        (at, reader): (usize, usize),
    ) -> Vec<f64> {
        if truth.world == World::Mixed {
            return self.mixed(truth, (at, reader));
        }
        let judge = self.trial.judge;
        let known = judge.character(at).zip(judge.taxon(truth.row)).zip(self.column(at));
        let Some(((character, taxon), column)) = known else { return Vec::new() };
        let mut chances = vec![0.0; column.said.len() + 1];
        let mut surely = |answer: usize| {
            if let Some(chance) = chances.get_mut(answer) {
                *chance = 1.0;
            }
        };
        if !visible(taxon, character, self.trial.month) || missing(truth.world, character.organ) {
            surely(column.said.len());
            return chances;
        }
        let lingers = truth.world == World::Lingering && character.sense == Sense::Smell;
        let fooled = lingers || self.fooled(path, truth, (at, reader));
        // Of what the sheet says nothing, the plant may look like the target.
        let Some(spectrum) = judge.shown(truth.row, at).filter(|_| !fooled) else {
            surely(column.typical.unwrap_or(column.said.len()));
            return chances;
        };
        let mut shares = spectrum.shares.clone();
        for step in path.iter().filter(|step| step.column == at) {
            let Some(answer) = step.answer else { continue };
            for (rung, share) in shares.iter_mut().enumerate() {
                *share *= self.weight(column, character, truth.world, (step.reader, answer, rung));
            }
        }
        let total: f64 = shares.iter().sum();
        if total <= 0.0 {
            // Nobody says that of it: the worst is taken.
            surely(column.typical.unwrap_or(column.said.len()));
            return chances;
        }
        for (answer, chance) in chances.iter_mut().enumerate().take(column.said.len()) {
            let say = |(rung, share): (usize, &f64)| {
                share * self.weight(column, character, truth.world, (reader, answer, rung))
            };
            *chance = shares.iter().enumerate().map(say).sum::<f64>() / total;
        }
        chances
    }

    /// Every reading takes another piece, one of the plant or one of the target, whatever was read of others.
    fn mixed(&self, truth: Truth, asked: (usize, usize)) -> Vec<f64> {
        let of = |row| self.worked_out(&[], Truth { row, world: World::AsTold }, asked);
        let both = of(truth.row).into_iter().zip(of(self.trial.target));
        both.map(|(one, other)| 0.5 * (one + other)).collect()
    }

    /// The probability that a reader says this before a true rung.
    fn weight(
        &self,
        column: &Column,
        character: &Character,
        world: World,
        (reader, answer, rung): (usize, usize, usize),
    ) -> f64 {
        let told = if world == World::Doubled { &column.doubled } else { &column.told };
        let weight = told.get(answer).and_then(|on| on.get(rung)).copied().unwrap_or(0.0);
        let believes = world == World::BothBelieve || (world == World::OneBelieves && reader == 0);
        match column.typical.filter(|_| believes) {
            Some(typical) => {
                let pull = pull(character, rung, typical);
                let hit = if answer == typical { pull } else { 0.0 };
                (1.0 - pull) * weight + hit
            }
            None => weight,
        }
    }

    /// Whether, in that world, this reader already took another character of the group for the target's.
    fn fooled(&self, path: &[Step], truth: Truth, (column, reader): (usize, usize)) -> bool {
        let judge = self.trial.judge;
        let group = |column: usize| judge.character(column).map(|character| &character.group);
        truth.world == World::Together
            && path.iter().any(|step| {
                step.reader == reader
                    && step.column != column
                    && group(step.column) == group(column)
                    && self.favours(step, truth.row)
            })
    }

    fn favours(&self, step: &Step, row: usize) -> bool {
        let judge = self.trial.judge;
        let both = judge.shown(self.trial.target, step.column).zip(judge.shown(row, step.column));
        let on = self.column(step.column).and_then(|column| column.told.get(step.answer?));
        both.zip(on).is_some_and(|((own, other), on)| own.chance(on) > other.chance(on))
    }

    fn misread(&self, character: &Character) -> f64 {
        self.level.misread(character.organ)
    }
}

impl Column {
    fn new(trial: &Trial<'_>, column: usize, level: Level) -> Option<Self> {
        let character = trial.judge.character(column)?;
        let misread = level.misread(character.organ);
        let Reports { said, on: told } = reports_of(character, misread);
        let twice = (2.0 * misread).min(evidence::MOST_MISREAD);
        let cell = trial.judge.matrix().at(trial.target, column);
        let usual = cell.and_then(|cell| typical(character, cell));
        let is_usual = |one: &Seen| match (one, &usual) {
            (Seen::Measured { low, high }, Some(Seen::Measured { low: at, .. })) => {
                low <= at && at < high
            }
            (one, usual) => Some(one) == usual.as_ref(),
        };
        let typical = said.iter().position(is_usual);
        Some(Self { typical, told, doubled: reports_of(character, twice).on, said })
    }
}

/// How far a belief pulls a reader: as far as misreading ever goes, where people take one for the other.
fn pull(character: &Character, rung: usize, typical: usize) -> f64 {
    let Kind::States(states) = &character.kind else {
        return evidence::FAR * evidence::MOST_MISREAD;
    };
    let even = states.iter().all(|state| state.taken_for.is_empty());
    let both = states.get(rung).zip(states.get(typical));
    let taken = both.is_some_and(|(is, other)| is.taken_for.contains(&other.id));
    if even || taken { evidence::MOST_MISREAD } else { evidence::FAR * evidence::MOST_MISREAD }
}

/// Whether an organ is missing in a world in which half of them are.
fn missing(world: World, organ: Organ) -> bool {
    match world {
        World::HalfThere => organ as u32 & 1 == 1,
        World::OtherHalfThere => organ as u32 & 1 == 0,
        _ => false,
    }
}
