//! What the plant could be, and how likely. This orders and explains; it decides nothing.

use crate::judge::Judge;
use crate::spectrum::Answers;
use crate::testimony::{Testimony, gather};
use crate::{Case, Character, Level, Taxon, bayes, evidence};
use ground::{Fault, Faults, Finite, Place, Region};
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

/// How likely each taxon is before any look.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Priors {
    /// The chance that the plant is none of the table's, from 0 to 1.
    pub none_of_these: Finite,
    /// Weights of the taxa by name; empty: all alike. A taxon that is left out weighs nothing.
    pub of: BTreeMap<String, Finite>,
}

impl Priors {
    /// All taxa alike, with this chance that the plant is none of them.
    #[must_use]
    pub fn equal(none_of_these: Finite) -> Self {
        Self { none_of_these, of: BTreeMap::new() }
    }

    /// All taxa alike, with a small chance that the plant is none of them.
    #[must_use]
    pub fn usual() -> Self {
        Self::equal(Finite::new(evidence::NONE_OF_THESE).unwrap_or_default())
    }

    pub(crate) fn check(&self, judge: &Judge<'_>) -> Result<(), Faults> {
        let mut faults = Faults::none();
        let none = self.none_of_these;
        if !(0.0..=1.0).contains(&none.get()) {
            let at = Place::entry("priors", "", "none_of_these");
            faults.add(Fault::new("identify-share", at, none.to_string()));
        }
        for (name, weight) in &self.of {
            let at = Place::entry("priors", name, "");
            if judge.matrix().row(name).is_none() {
                faults.add(Fault::new("identify-unknown-taxon", at.clone(), name));
            }
            if *weight < Finite::ZERO {
                faults.add(Fault::new("identify-weight", at, weight.to_string()));
            }
        }
        faults.or(())
    }

    pub(crate) fn of(&self, taxon: &Taxon) -> f64 {
        if self.of.is_empty() { 1.0 } else { self.of.get(&taxon.name).map_or(0.0, |w| w.get()) }
    }
}

/// How likely the plant is a taxon.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Chance {
    /// The taxon; none: the plant is none of the table's.
    pub taxon: Option<String>,
    /// The probability, from 0 to 1.
    pub chance: Finite,
}

/// A question by what its answer would tell.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Telling {
    /// The character to look at.
    pub character: String,
    /// What the answer is expected to tell, in bits.
    pub bits: Finite,
    /// The same for each second that it takes.
    pub bits_per_second: Finite,
}

impl Telling {
    pub(crate) fn new(character: &Character, bits: f64) -> Option<Self> {
        let seconds = f64::from(character.seconds.max(1));
        Some(Self {
            character: character.id.clone(),
            bits: Finite::new(bits)?,
            bits_per_second: Finite::new(bits / seconds)?,
        })
    }
}

/// The likeliest first.
pub(crate) fn in_order(mut chances: Vec<Chance>) -> Vec<Chance> {
    chances.sort_by(|a, b| b.chance.cmp(&a.chance).then_with(|| a.taxon.cmp(&b.taxon)));
    chances
}

/// What tells most for each second first.
pub(crate) fn most_first(mut all: Vec<Telling>) -> Vec<Telling> {
    all.sort_by(|a, b| {
        b.bits_per_second.cmp(&a.bits_per_second).then_with(|| a.character.cmp(&b.character))
    });
    all
}

impl Judge<'_> {
    /// What the plant could be, the likeliest first: over the taxa of the region, by Bayes' rule.
    ///
    /// An unknown cell says nothing of its taxon and does not remove it; *none of these* shows every
    /// state alike. The characters of one correlation group count as one: the geometric mean of
    /// their probabilities.
    ///
    /// # Errors
    /// Looks that do not fit the table; priors of unknown taxa.
    pub fn posterior(&self, case: &Case, priors: &Priors) -> Result<Vec<Chance>, Faults> {
        priors.check(self)?;
        let testimonies = gather(self, &case.specimen, &case.session())?;
        Ok(in_order(self.chances(case.region, &testimonies, priors)))
    }

    /// What would tell most of what the plant is, the best for each second first.
    ///
    /// Mutual information of the taxon and the answer that this reader would give.
    ///
    /// # Errors
    /// As [`Judge::posterior`].
    pub fn most_telling(
        &self,
        case: &Case,
        priors: &Priors,
        level: Level,
    ) -> Result<Vec<Telling>, Faults> {
        priors.check(self)?;
        let testimonies = gather(self, &case.specimen, &case.session())?;
        let read: BTreeSet<_> = testimonies.iter().map(|testimony| testimony.column).collect();
        let rows = self.rows(case.region);
        let chances = self.chances(case.region, &testimonies, priors);
        let chances: Vec<f64> = chances.iter().map(|chance| chance.chance.get()).collect();
        let open = self.characters().iter().enumerate().filter(|(at, _)| !read.contains(at));
        let telling = |(column, character): (usize, &Character)| {
            let answers = self.answers(column, character, level, &rows);
            Telling::new(character, bayes::information(&chances, &answers).max(0.0))
        };
        Ok(most_first(open.filter_map(telling).collect()))
    }

    /// The chances of the taxa of the region in their order, then that of none of them.
    pub(crate) fn chances(
        &self,
        region: Option<Region>,
        testimonies: &[Testimony],
        priors: &Priors,
    ) -> Vec<Chance> {
        let rows = self.rows(region);
        let weights: Vec<f64> =
            rows.iter().filter_map(|row| self.taxon(*row)).map(|taxon| priors.of(taxon)).collect();
        let total: f64 = weights.iter().sum();
        let none = priors.none_of_these.get();
        let own = rows.iter().zip(&weights).map(|(row, weight)| {
            libm::log((1.0 - none) * weight / total) + self.log_likelihood(Some(*row), testimonies)
        });
        let other = libm::log(none) + self.log_likelihood(None, testimonies);
        let logs: Vec<f64> = own.chain(std::iter::once(other)).collect();
        let names = rows.iter().map(|row| self.taxon(*row).map(|taxon| taxon.name.clone()));
        let names = names.chain(std::iter::once(None));
        let chance =
            |(taxon, chance)| Chance { taxon, chance: Finite::new(chance).unwrap_or_default() };
        names.zip(bayes::chances(&logs)).map(chance).collect()
    }

    /// The taxa that may grow in a region.
    pub(crate) fn rows(&self, region: Option<Region>) -> Vec<usize> {
        let grows = |taxon: &Taxon| {
            region.is_none_or(|here| taxon.regions.is_empty() || taxon.regions.contains(&here))
        };
        let rows = self.taxa().iter().enumerate().filter(|(_, taxon)| grows(taxon));
        rows.map(|(row, _)| row).collect()
    }

    /// The logarithm of the probability of all that was read, of a taxon or of none of the table's.
    fn log_likelihood(&self, row: Option<usize>, testimonies: &[Testimony]) -> f64 {
        let mut groups: BTreeMap<&str, (f64, f64)> = BTreeMap::new();
        for testimony in testimonies {
            let Some(character) = self.character(testimony.column) else {
                continue;
            };
            let Some(weights) = testimony.joint() else {
                continue;
            };
            let chance = self.chance(row, testimony.column, &weights);
            let (sum, count) = groups.entry(&character.group).or_insert((0.0, 0.0));
            *sum += libm::log(chance);
            *count += 1.0;
        }
        groups.values().map(|(sum, count)| sum / count).sum()
    }

    /// For each taxon, and for none of them, the probability of every answer that a reader may give.
    fn answers(
        &self,
        column: usize,
        character: &Character,
        level: Level,
        rows: &[usize],
    ) -> Vec<Vec<f64>> {
        let answers = Answers::new(character, level.misread(character.organ));
        let own = rows.iter().map(|row| answers.chances(self.shown(*row, column)));
        own.chain(std::iter::once(answers.chances(None))).collect()
    }

    /// The probability of a report; an even truth where nothing is known.
    pub(crate) fn chance(&self, row: Option<usize>, column: usize, weights: &[f64]) -> f64 {
        match row.and_then(|row| self.shown(row, column)) {
            Some(spectrum) => spectrum.chance(weights),
            None => weights.iter().sum::<f64>() / crate::states::count(weights.len()),
        }
    }
}

impl Testimony {
    /// What all readings together weigh on each true rung: one reader's own readings by their mean,
    /// those of several readers multiplied. Nothing where none says anything.
    pub(crate) fn joint(&self) -> Option<Vec<f64>> {
        let readers = self.readings.chunk_by(|a, b| a.reader == b.reader);
        let one = |readings: &[crate::testimony::Reading]| {
            let said: Vec<_> = readings.iter().filter(|r| r.seen.says_something()).collect();
            let mut weights = said.first()?.weights.clone();
            for other in said.iter().skip(1) {
                weights = weights.iter().zip(&other.weights).map(|(a, b)| a + b).collect();
            }
            let count = crate::states::count(said.len());
            Some(weights.iter().map(|weight| weight / count).collect::<Vec<f64>>())
        };
        readers.filter_map(one).reduce(|a, b| a.iter().zip(&b).map(|(a, b)| a * b).collect())
    }
}
