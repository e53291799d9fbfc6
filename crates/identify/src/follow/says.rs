//! What somebody says who has a plant before them.

use super::odds::{Odds, jointly};
use super::{Truth, World};
use crate::reports::{Reports, reports_of};
use crate::rival::{Rival, RivalKind};
use crate::spectrum::{dot, typical, weights};
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
    /// What is said, as the program hears it.
    pub(super) readings: Vec<Reading>,
    not_there: Reading,
    /// By the answers of two readers, how likely both are of the target.
    pub(super) jointly: Vec<Vec<f64>>,
    /// What the target typically shows, among these.
    pub(super) typical: Option<usize>,
    /// By answer, how likely it is on each true rung: as told, by who misreads twice as often, and by who believes
    /// to have the target.
    told: Vec<Vec<f64>>,
    doubled: Vec<Vec<f64>>,
    believing: Vec<Vec<f64>>,
}

pub(super) struct Says<'s> {
    trial: Trial<'s>,
    columns: Vec<Option<Column>>,
    /// What is said of a character that was not read before: by truth, column and reader.
    fresh: HashMap<(Truth, usize, usize), Rc<[f64]>>,
    /// By a rival's row and the column.
    odds: HashMap<(Option<usize>, usize), Option<Rc<Odds>>>,
}

impl<'s> Says<'s> {
    pub(super) fn new(trial: &Trial<'s>, level: Level) -> Self {
        let columns = 0..trial.judge.characters().len();
        let columns = columns.map(|column| Column::new(trial, column, level)).collect();
        Self { trial: *trial, columns, fresh: HashMap::new(), odds: HashMap::new() }
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
        let key = (self.alike(truth, column), column, reader);
        if let Some(known) = self.fresh.get(&key).filter(|_| fresh) {
            return known.clone();
        }
        let chances: Rc<[f64]> = self.worked_out(path, truth, (column, reader)).into();
        if fresh {
            self.fresh.insert(key, chances.clone());
        }
        chances
    }

    /// A truth of which the same is said of this character.
    pub(super) fn alike(&self, truth: Truth, column: usize) -> Truth {
        let character = self.trial.judge.character(column);
        let smelt = character.is_some_and(|character| character.sense == Sense::Smell);
        let there = character.is_some_and(|c| !missing(truth.world, c.organ));
        let world = match truth.world {
            World::Lingering if !smelt => World::AsTold,
            World::HalfThere | World::OtherHalfThere if there => World::AsTold,
            World::Unlisted => World::AsTold,
            world => world,
        };
        Truth { world, ..truth }
    }

    /// What may come of asking, whatever was read of other characters; where one mistake brings the next, also
    /// what a reader says who is misled, which comes last.
    pub(super) fn may_say(
        &self,
        path: &[Step],
        truth: Truth,
        (column, reader): (usize, usize),
    ) -> (Vec<f64>, Option<Vec<f64>>) {
        let said = self.worked_out(path, truth, (column, reader));
        // Whoever sees that the organ is not there is not misled.
        let there = said.last().is_some_and(|not_there| *not_there < 1.0);
        let known = self.column(column).filter(|_| there && self.goes_on(truth, column));
        let misled = known.map(|known| known.surely(known.typical));
        (said, misled)
    }

    /// Whether one mistake in a character may bring the next one.
    pub(super) fn goes_on(&self, truth: Truth, column: usize) -> bool {
        truth.world == World::Together && self.group(column).nth(1).is_some()
    }

    /// The characters that go together with one, itself among them.
    pub(super) fn group(&self, column: usize) -> impl Iterator<Item = usize> {
        let characters = self.trial.judge.characters();
        let group = characters.get(column).map(|character| character.group.as_str());
        let same =
            characters.iter().enumerate().filter(move |(_, c)| Some(c.group.as_str()) == group);
        same.map(|(at, _)| at)
    }

    /// An answer by its number; nothing where the organ is not there.
    pub(super) fn answer(&self, column: usize, answer: usize) -> Option<usize> {
        Some(answer)
            .filter(|answer| self.column(column).is_some_and(|c| *answer < c.readings.len()))
    }

    /// How much likelier each answer is of the target than of a rival; nothing where nobody knows.
    pub(super) fn odds(&mut self, rival: &Rival, column: usize) -> Option<Rc<Odds>> {
        if rival.kind == RivalKind::NoSheet {
            return None;
        }
        let key = (rival.row(), column);
        if let Some(known) = self.odds.get(&key) {
            return known.clone();
        }
        let known = self.column(column);
        let odds = known.and_then(|known| Odds::new(&self.trial, (rival, column), known));
        let odds = odds.map(Rc::new);
        self.odds.insert(key, odds.clone());
        odds
    }

    /// An answer as the program is told of it.
    pub(super) fn reading(&self, step: &Step, tainted: bool) -> Option<Reading> {
        let known = self.column(step.column)?;
        let reading = step.answer.and_then(|answer| known.readings.get(answer));
        let reader = (*READERS.get(step.reader)?).to_owned();
        Some(Reading { reader, tainted, ..reading.unwrap_or(&known.not_there).clone() })
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
        if !visible(taxon, character, self.trial.month) || missing(truth.world, character.organ) {
            return column.surely(None);
        }
        let lingers = truth.world == World::Lingering && character.sense == Sense::Smell;
        let fooled = lingers || self.fooled(path, truth, (at, reader));
        // Of what the sheet says nothing, the plant may look like the target.
        let Some(spectrum) = judge.shown(truth.row, at).filter(|_| !fooled) else {
            return column.surely(column.typical);
        };
        let mut shares = spectrum.shares.clone();
        let before = path.iter().filter(|step| step.column == at);
        for on in before.filter_map(|step| column.on(truth.world, step.reader).get(step.answer?)) {
            shares.iter_mut().zip(on).for_each(|(share, on)| *share *= on);
        }
        let total: f64 = shares.iter().sum();
        if total <= 0.0 {
            // Nobody says that of it: the worst is taken.
            return column.surely(column.typical);
        }
        let mut chances = vec![0.0; column.readings.len() + 1];
        for (chance, on) in chances.iter_mut().zip(column.on(truth.world, reader)) {
            *chance = dot(&shares, on) / total;
        }
        chances
    }

    /// Every reading takes another piece, one of the plant or one of the target, whatever was read of others.
    fn mixed(&self, truth: Truth, asked: (usize, usize)) -> Vec<f64> {
        let of = |row| self.worked_out(&[], Truth { row, world: World::AsTold }, asked);
        let both = of(truth.row).into_iter().zip(of(self.trial.target));
        both.map(|(one, other)| 0.5 * (one + other)).collect()
    }

    /// Whether, in that world, this reader already took another character of the group for the target's.
    pub(super) fn fooled(
        &self,
        path: &[Step],
        truth: Truth,
        (column, reader): (usize, usize),
    ) -> bool {
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

    /// Whether somebody who answers this takes the plant for the target.
    pub(super) fn takes(&self, truth: Truth, (column, answer): (usize, usize)) -> bool {
        let step = Step { column, reader: 0, answer: self.answer(column, answer) };
        self.favours(&step, truth.row)
    }

    fn favours(&self, step: &Step, row: usize) -> bool {
        let judge = self.trial.judge;
        let both = judge.shown(self.trial.target, step.column).zip(judge.shown(row, step.column));
        let on = self.column(step.column).and_then(|column| column.told.get(step.answer?));
        both.zip(on).is_some_and(|((own, other), on)| own.chance(on) > other.chance(on))
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
        let believing = believing(character, &told, typical);
        let doubled = reports_of(character, twice).on;
        let reading = |seen| heard(character, seen, level);
        let readings: Vec<Reading> = said.into_iter().map(reading).collect();
        let not_there = reading(Seen::NotThere);
        let own = trial.judge.shown(trial.target, column);
        let jointly = own.map_or_else(Vec::new, |own| jointly(&own.shares, &readings));
        Some(Self { typical, told, doubled, believing, readings, not_there, jointly })
    }

    /// This answer and no other, or that the organ is not there.
    fn surely(&self, answer: Option<usize>) -> Vec<f64> {
        let mut chances = vec![0.0; self.readings.len() + 1];
        if let Some(chance) = chances.get_mut(answer.unwrap_or(self.readings.len())) {
            *chance = 1.0;
        }
        chances
    }

    /// By answer, how likely a reader gives it on each true rung.
    fn on(&self, world: World, reader: usize) -> &[Vec<f64>] {
        match (world, reader) {
            (World::Doubled, _) => &self.doubled,
            (World::BothBelieve, _) | (World::OneBelieves, 0) => &self.believing,
            _ => &self.told,
        }
    }
}

/// What the program hears of whoever says this.
fn heard(character: &Character, seen: Seen, level: Level) -> Reading {
    Reading {
        reader: String::new(),
        level,
        time: DateTime::constant(1, 1, 1, 0, 0, 0, 0),
        blind: true,
        weights: weights(character, &seen, level.misread(character.organ)),
        seen,
        tainted: false,
    }
}

/// What somebody says who believes to have the target.
fn believing(character: &Character, told: &[Vec<f64>], typical: Option<usize>) -> Vec<Vec<f64>> {
    let Some(typical) = typical else { return told.to_vec() };
    let one = |(answer, on): (usize, &Vec<f64>)| {
        let drawn = |(rung, chance): (usize, &f64)| {
            let pull = pull(character, rung, typical);
            (1.0 - pull) * chance + if answer == typical { pull } else { 0.0 }
        };
        on.iter().enumerate().map(drawn).collect()
    };
    told.iter().enumerate().map(one).collect()
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
