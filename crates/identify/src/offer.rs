//! Offers: characters that could be looked at here and now, and what the answer would weigh.

use crate::spectrum::{typical, weights};
use crate::testimony::{Reading, Testimony};
use crate::weighing::{Scales, Trial, Weighed};
use crate::{Cell, Character, Kind, Level, Seen, Spoils, Tool, evidence};
use jiff::civil::DateTime;
use serde::{Deserialize, Serialize};
use std::cell::OnceCell;

/// What there is to look with, and what may be done to the plant.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Means {
    /// The tools at hand.
    pub tools: Vec<Tool>,
    /// The most that may be done to the plant.
    pub may_spoil: Spoils,
    /// How well whoever looks next reads.
    pub level: Level,
}

impl Means {
    /// Every tool, and a plant that may be dug up.
    #[must_use]
    pub fn all(level: Level) -> Self {
        let tools = vec![Tool::Ruler, Tool::Lens, Tool::Knife, Tool::Spade];
        Self { tools, may_spoil: Spoils::Plant, level }
    }

    fn allow(&self, character: &Character) -> bool {
        let at_hand = character.tool == Tool::None || self.tools.contains(&character.tool);
        at_hand && character.spoils <= self.may_spoil
    }
}

impl Character {
    /// Whether it is taken in at a glance, with others of its kind: seen, with nothing in hand, at
    /// once, and nothing is spoiled.
    #[must_use]
    pub fn at_a_glance(&self) -> bool {
        let bare = self.tool == Tool::None && self.spoils == Spoils::Nothing;
        bare && self.sense == crate::Sense::Sight && self.seconds <= 10
    }
}

/// What can be looked at of a target, and what the answers would weigh: each is worked out when it is first
/// wanted, since most of them never are.
pub(crate) struct Offers<'t, 'a> {
    pub(crate) trial: &'t Trial<'a>,
    pub(crate) means: &'t Means,
    /// By column: weighed as if the plant showed what the target typically does.
    typical: Vec<OnceCell<Option<Weighed<'a>>>>,
    /// By column: whatever the target may show, with its share.
    shown: Vec<OnceCell<Vec<(f64, Weighed<'a>)>>>,
}

impl<'t, 'a> Offers<'t, 'a> {
    pub(crate) fn new(trial: &'t Trial<'a>, means: &'t Means) -> Self {
        let columns = trial.judge.characters().len();
        let (typical, shown) = (vec![OnceCell::new(); columns], vec![OnceCell::new(); columns]);
        Self { trial, means, typical, shown }
    }

    /// Every character that can be looked at now and was not yet, weighed as if the plant showed
    /// what the target typically does.
    pub(crate) fn unread(&self, scales: &Scales<'_>) -> Vec<Weighed<'a>> {
        let unread = |column: &usize| scales.weighed().all(|w| w.column != *column);
        let typical = self.typical.iter().enumerate().filter(|(column, _)| unread(column));
        let weighed = |(column, cell): (usize, &OnceCell<Option<Weighed<'a>>>)| {
            cell.get_or_init(|| self.typical(column)).clone()
        };
        typical.filter_map(weighed).collect()
    }

    fn typical(&self, column: usize) -> Option<Weighed<'a>> {
        let (character, cell) = self.described(column)?;
        let can_be_seen = self.means.allow(character) && self.trial.visible(character);
        let seen = typical(character, cell).filter(|_| can_be_seen)?;
        self.weigh(column, character, seen)
    }

    /// How much one look is expected to lower the logarithm of what is left, if the plant is the
    /// target: over the states that it shows.
    ///
    /// The logarithm, because the expected odds themselves stay what they are under every look
    /// (they are a martingale), so that by them no look would be better than another.
    pub(crate) fn expected_lowering(&self, scales: &Scales<'_>, column: usize) -> f64 {
        let contributions: Vec<f64> = scales.contributions().map(|(_, part)| part).collect();
        let before = libm::log(contributions.iter().sum());
        let mut lowering = 0.0;
        let mut covered = 0.0;
        let shown = self.shown.get(column).map(|cell| cell.get_or_init(|| self.shown(column)));
        for (share, weighed) in shown.into_iter().flatten() {
            let after = scales.left_with(&contributions, weighed);
            lowering += share * (before - libm::log(after));
            covered += share;
        }
        if covered > 0.0 { lowering / covered } else { 0.0 }
    }

    fn shown(&self, column: usize) -> Vec<(f64, Weighed<'a>)> {
        let Some((character, _)) = self.described(column) else {
            return Vec::new();
        };
        let weigh = |(seen, share)| Some((share, self.weigh(column, character, seen)?));
        self.may_show(column).into_iter().filter_map(weigh).collect()
    }

    /// What the target shows of a character, with its share: every state that a sheet names, or the
    /// typical measure.
    fn may_show(&self, column: usize) -> Vec<(Seen, f64)> {
        let Some((character, cell)) = self.described(column) else {
            return Vec::new();
        };
        let Kind::States(states) = &character.kind else {
            return typical(character, cell).map(|seen| (seen, 1.0)).into_iter().collect();
        };
        let shares = self.trial.judge.shown(self.trial.target, column);
        let shown = states.iter().zip(shares.into_iter().flat_map(|spectrum| &spectrum.shares));
        let named = shown.filter(|(_, share)| **share > 2.0 * evidence::UNSEEN);
        named.map(|(state, share)| (Seen::State(state.id.clone()), *share)).collect()
    }

    fn weigh(&self, column: usize, character: &Character, seen: Seen) -> Option<Weighed<'a>> {
        self.trial.weigh(&imagined(column, character, seen, self.means.level))
    }

    /// A character with what the target's sheet says of it.
    fn described(&self, column: usize) -> Option<(&'a Character, &'a Cell)> {
        let judge = self.trial.judge;
        judge.character(column).zip(judge.matrix().at(self.trial.target, column))
    }
}

/// A look that nobody has made yet.
fn imagined(column: usize, character: &Character, seen: Seen, level: Level) -> Testimony {
    let weights = weights(character, &seen, level.misread(character.organ));
    let reading = Reading {
        reader: String::new(),
        level,
        time: DateTime::constant(1, 1, 1, 0, 0, 0, 0),
        blind: true,
        seen,
        weights,
        tainted: false,
    };
    Testimony { column, readings: vec![reading] }
}
