//! Offers: characters that could be looked at here and now, and what the answer would weigh.

use crate::spectrum::{typical, weights};
use crate::testimony::{Reading, Testimony};
use crate::weighing::{Scales, Trial, Weighed};
use crate::{Cell, Character, Kind, Level, Seen, Spoils, Tool, evidence};
use jiff::civil::DateTime;
use serde::{Deserialize, Serialize};

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

impl<'a> Trial<'a> {
    /// Every character that can be looked at now and was not yet, weighed as if the plant showed
    /// what the target typically does.
    pub(crate) fn offers(&self, scales: &Scales<'_>, means: &Means) -> Vec<Weighed<'a>> {
        let unread = |column: &usize| scales.weighed().iter().all(|w| w.column != *column);
        let columns = (0..self.judge.characters().len()).filter(unread);
        columns.filter_map(|column| self.offer(column, means)).collect()
    }

    /// The same, whatever it takes, read by a leader.
    pub(crate) fn unread_typical(&self, scales: &Scales<'_>) -> Vec<Weighed<'a>> {
        self.offers(scales, &Means::all(Level::Leader))
    }

    fn offer(&self, column: usize, means: &Means) -> Option<Weighed<'a>> {
        let (character, cell) = self.described(column)?;
        let can_be_seen = means.allow(character) && self.visible(character);
        let seen = typical(character, cell).filter(|_| can_be_seen)?;
        self.weigh(&imagined(column, character, seen, means.level))
    }

    /// How much one look is expected to lower the logarithm of what is left, if the plant is the
    /// target: over the states that it shows.
    ///
    /// The logarithm, because the expected odds themselves stay what they are under every look
    /// (they are a martingale), so that by them no look would be better than another.
    pub(crate) fn expected_lowering(
        &self,
        scales: &Scales<'_>,
        offer: &Weighed<'_>,
        means: &Means,
    ) -> f64 {
        let contributions: Vec<f64> = scales.contributions().map(|(_, part)| part).collect();
        let before = libm::log(contributions.iter().sum());
        let mut lowering = 0.0;
        let mut covered = 0.0;
        for (seen, share) in self.may_show(offer.column) {
            let reading = imagined(offer.column, offer.character, seen, means.level);
            let Some(weighed) = self.weigh(&reading) else {
                continue;
            };
            let after: f64 = scales.with(&contributions, &weighed).sum();
            lowering += share * (before - libm::log(after));
            covered += share;
        }
        if covered > 0.0 { lowering / covered } else { 0.0 }
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
        let shares = self.judge.shown(self.target, column).map(|spectrum| &spectrum.shares);
        let shown = states.iter().zip(shares.into_iter().flatten());
        let named = shown.filter(|(_, share)| **share > 2.0 * evidence::UNSEEN);
        named.map(|(state, share)| (Seen::State(state.id.clone()), *share)).collect()
    }

    /// A character with what the target's sheet says of it.
    fn described(&self, column: usize) -> Option<(&'a Character, &'a Cell)> {
        self.judge.character(column).zip(self.judge.matrix().at(self.target, column))
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
