//! Spectra: how often a taxon shows each rung of a character, and how far that may be trusted.

use crate::ladder::Ladder;
use crate::{Cell, Character, Kind, Seen, Value, evidence, states};
use ground::Finite;
use std::sync::OnceLock;

/// What a taxon shows of a character.
#[derive(Clone, Debug)]
pub(crate) struct Spectrum {
    /// Share of plants on each rung (state, length, count); sums to 1.
    pub(crate) shares: Vec<f64>,
    /// Whether it may speak for a plant. What is only remembered may speak against it.
    pub(crate) clears: bool,
    /// The part of the shares that is less to be trusted than the rest, where there is one.
    rare: Option<Vec<f64>>,
    /// Of a length, the probability that a reader with a ruler reports the likeliest one.
    peak: OnceLock<f64>,
}

impl Spectrum {
    /// What a cell says.
    pub(crate) fn new(character: &Character, cell: &Cell) -> Self {
        let (shares, rare) = shares(character, &cell.value);
        let clears = cell.standing.may_clear();
        let doubtful = clears && !cell.rare_standing.may_clear();
        Self { shares, clears, rare: doubtful.then_some(rare), peak: OnceLock::new() }
    }

    /// Half this, half what plants at large show: a relative that nobody has described.
    pub(crate) fn cousin(&self, at_large: &[f64]) -> Self {
        let half = |shares: &[f64]| -> Vec<f64> {
            shares.iter().zip(at_large).map(|(own, other)| 0.5 * own + 0.5 * other).collect()
        };
        Self {
            shares: half(&self.shares),
            clears: self.clears,
            rare: self.rare.clone(),
            peak: OnceLock::new(),
        }
    }

    /// The probability of a report, given what it weighs on each true rung.
    pub(crate) fn chance(&self, weights: &[f64]) -> f64 {
        dot(&self.shares, weights)
    }

    /// The probability that a plant is read as what it most typically shows.
    pub(crate) fn usual_chance(&self, character: &Character, misread: f64) -> f64 {
        match &character.kind {
            Kind::States(known) => {
                let shares = known.iter().zip(&self.shares);
                let most = shares.rev().max_by(|a, b| a.1.total_cmp(b.1));
                let state = most.map(|(state, _)| state.id.clone());
                self.chance(&states::weights(known, state.as_slice(), misread))
            }
            Kind::Length => {
                let peak = self.peak.get_or_init(|| Ladder::likeliest_length(&self.shares));
                Ladder::or_anywhere(*peak, misread)
            }
            Kind::Count => {
                let most = Ladder::likeliest_count(&self.shares);
                self.chance(&Ladder::counted(most, misread))
            }
        }
    }

    /// Whether a report may speak for a plant: not where it meets the doubtful part.
    pub(crate) fn may_favour(&self, weights: &[f64]) -> bool {
        let met = |rare: &Vec<f64>| dot(rare, weights) > 0.5 * self.chance(weights);
        self.clears && !self.rare.as_ref().is_some_and(met)
    }
}

/// Shares of a cell, and the part of them that rests on what is seen sometimes or rarely.
fn shares(character: &Character, value: &Value) -> (Vec<f64>, Vec<f64>) {
    match (&character.kind, value) {
        (Kind::States(known), Value::States { always, usually, sometimes, rarely }) => {
            let words: [(f64, &[String]); 4] = [
                (evidence::ALWAYS, always),
                (evidence::USUALLY, usually),
                (evidence::SOMETIMES, sometimes),
                (evidence::RARELY, rarely),
            ];
            let all = states::shares(known, words);
            let rare = known.iter().zip(&all).map(|(state, share)| {
                let rare = sometimes.contains(&state.id) || rarely.contains(&state.id);
                if rare { *share } else { 0.0 }
            });
            let rare = rare.collect();
            (all, rare)
        }
        (Kind::States(known), Value::Shares(shares)) => {
            let share = |state: &crate::State| shares.get(&state.id).copied().unwrap_or(0.0);
            (known.iter().map(share).collect(), vec![0.0; known.len()])
        }
        (_, Value::Range { ordinary, extreme }) => {
            ladder(&character.kind).shares(*ordinary, *extreme)
        }
        // The table refuses any other pair.
        _ => (Vec::new(), Vec::new()),
    }
}

/// What a report weighs on each true rung: the probability that the reader would make it.
pub(crate) fn weights(character: &Character, seen: &Seen, misread: f64) -> Vec<f64> {
    match (&character.kind, seen) {
        (Kind::States(known), Seen::State(_) | Seen::OneOf(_)) => {
            states::weights(known, seen.states(), misread)
        }
        (_, Seen::Measured { low, high }) => Ladder::measured(low.get(), high.get(), misread),
        (_, Seen::Counted(seen)) => Ladder::counted(*seen, misread),
        _ => Vec::new(),
    }
}

/// What a plant of a taxon most typically shows.
pub(crate) fn typical(character: &Character, cell: &Cell) -> Option<Seen> {
    match (&character.kind, &cell.value) {
        (Kind::Length, Value::Range { ordinary: (low, high), .. }) => {
            let middle = Finite::new(0.5 * (low + high)).filter(|middle| *middle > Finite::ZERO)?;
            Some(Seen::Measured { low: middle, high: middle })
        }
        // A conversion that stays within its type: counts of a sheet are not negative.
        (_, Value::Range { ordinary: (low, high), .. }) => {
            Some(Seen::Counted((0.5 * (low + high)) as u32))
        }
        (Kind::States(known), value) => {
            let (shares, _) = shares(character, value);
            let best = known.iter().zip(&shares).rev().max_by(|a, b| a.1.total_cmp(b.1))?;
            Some(Seen::State(best.0.id.clone()))
        }
        _ => None,
    }
}

/// The reports among which the likeliest one of a plant must be: every state, or what the plant
/// typically measures.
pub(crate) fn likely(character: &Character, cell: &Cell) -> Vec<Seen> {
    match &character.kind {
        Kind::States(known) => known.iter().map(|s| Seen::State(s.id.clone())).collect(),
        _ => typical(character, cell).into_iter().collect(),
    }
}

/// The answers that a reader may give of a character: they exclude one another, and one is given.
/// Lengths are answered in steps of half as much again.
pub(crate) struct Answers {
    kind: AnswerKind,
    misread: f64,
}

enum AnswerKind {
    /// For each state that may be reported, what it weighs on each true state.
    States(Vec<Vec<f64>>),
    Ladder(Ladder),
}

impl Answers {
    pub(crate) fn new(character: &Character, misread: f64) -> Self {
        let kind = match &character.kind {
            Kind::States(known) => AnswerKind::States(states::answers(known, misread)),
            kind => AnswerKind::Ladder(ladder(kind)),
        };
        Self { kind, misread }
    }

    /// The probability of each answer; of a taxon of which nothing is known, as if it showed every
    /// rung alike.
    pub(crate) fn chances(&self, of: Option<&Spectrum>) -> Vec<f64> {
        let rungs = match &self.kind {
            AnswerKind::States(weights) => weights.len(),
            AnswerKind::Ladder(ladder) => ladder.rungs(),
        };
        let even = || vec![1.0 / states::count(rungs); rungs];
        let shares = of.map_or_else(even, |spectrum| spectrum.shares.clone());
        match &self.kind {
            AnswerKind::States(weights) => weights.iter().map(|w| dot(&shares, w)).collect(),
            AnswerKind::Ladder(ladder) => ladder.answers(&shares, self.misread),
        }
    }
}

fn ladder(kind: &Kind) -> Ladder {
    if matches!(kind, Kind::Length) { Ladder::Lengths } else { Ladder::Counts }
}

/// Sum of products, in order.
pub(crate) fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}
