//! A table made ready for one kind of reader: how likely each taxon is to be read as each answer.

use crate::judge::Judge;
use crate::reports::reports;
use crate::spectrum::{Spectrum, dot, typical, weights};
use crate::testimony::floored;
use crate::{Kind, Level, evidence};

/// How likely each taxon is to be read as each answer, by a reader of one level.
pub(crate) struct Told {
    columns: Vec<Column>,
}

/// One character: every list is by answer, then by row.
struct Column {
    once: Vec<Vec<f64>>,
    /// Two readers say the same.
    twice: Vec<Vec<f64>>,
    may_favour: Vec<Vec<bool>>,
    /// By row alone: the likeliest answer's chance; nothing where the sheet says nothing.
    best: Vec<Option<f64>>,
    /// The chance of what it most typically shows.
    usual: Vec<f64>,
}

impl Told {
    pub(crate) fn new(judge: &Judge<'_>, level: Level) -> Self {
        let columns = 0..judge.characters().len();
        Self { columns: columns.filter_map(|column| Column::new(judge, column, level)).collect() }
    }

    /// How many answers there are to a character.
    pub(crate) fn answers(&self, column: usize) -> usize {
        self.columns.get(column).map_or(0, |column| column.once.len())
    }

    /// Whether an answer is as good as what a taxon shows most.
    pub(crate) fn agrees(&self, column: usize, answer: usize, row: usize) -> bool {
        let chance = self
            .columns
            .get(column)
            .and_then(|c| Some((at(&c.once, answer, row)?, (*c.best.get(row)?)?)));
        chance.is_some_and(|(chance, best)| chance >= evidence::AGREES * best)
    }

    /// Whether an answer denies a taxon, of which the sheet says something: it usually shows something else.
    pub(crate) fn denies(&self, column: usize, answer: usize, row: usize) -> bool {
        let chances = self
            .columns
            .get(column)
            .and_then(|c| Some((at(&c.once, answer, row)?, *c.usual.get(row)?)));
        chances.is_some_and(|(chance, usual)| chance < evidence::AGREES * usual)
    }

    /// The answer that a taxon is likeliest to be read as; nothing where its sheet says nothing.
    pub(crate) fn likeliest(&self, column: usize, row: usize) -> Option<usize> {
        let column = self.columns.get(column)?;
        column.best.get(row).copied().flatten()?;
        let chance = |answer: &usize| at(&column.once, *answer, row).unwrap_or(0.0);
        (0..column.once.len()).rev().max_by(|a, b| chance(a).total_cmp(&chance(b)))
    }

    /// How many times likelier an answer is of the rival than of the target, read once and read twice.
    pub(crate) fn factors(
        &self,
        column: usize,
        answer: usize,
        target: usize,
        rival: usize,
    ) -> Option<(f64, f64)> {
        let column = self.columns.get(column)?;
        let known = |row: usize| column.best.get(row).copied().flatten();
        known(target).zip(known(rival))?;
        let ratio = |of: &[Vec<f64>]| {
            Some(floored(at(of, answer, rival)?) / floored(at(of, answer, target)?))
        };
        let (once, twice) = (ratio(&column.once)?, ratio(&column.twice)?);
        let favours =
            at(&column.may_favour, answer, target)? && at(&column.may_favour, answer, rival)?;
        Some(match (once < 1.0, favours) {
            (true, true) => (once, once.min(twice)),
            (true, false) => (1.0, 1.0),
            (false, _) => (once, once.max(twice)),
        })
    }
}

impl Column {
    fn new(judge: &Judge<'_>, column: usize, level: Level) -> Option<Self> {
        let character = judge.character(column)?;
        let misread = level.misread(character.organ);
        let rows = 0..judge.taxa().len();
        let spectra: Vec<Option<&Spectrum>> = rows.map(|row| judge.shown(row, column)).collect();
        let said: Vec<Vec<f64>> =
            reports(character).iter().map(|said| weights(character, said, misread)).collect();
        let chances = |weights: &Vec<f64>| -> Vec<f64> {
            spectra.iter().map(|s| s.map_or(0.0, |s| dot(&s.shares, weights))).collect()
        };
        let both = |weights: &Vec<f64>| chances(&weights.iter().map(|w| w * w).collect());
        let may = |weights: &Vec<f64>| {
            spectra.iter().map(|s| s.is_some_and(|s| s.may_favour(weights))).collect()
        };
        let once: Vec<Vec<f64>> = said.iter().map(chances).collect();
        let best = spectra.iter().enumerate().map(|(row, spectrum)| {
            let (spectrum, cell) = (*spectrum).zip(judge.matrix().at(row, column))?;
            Some(match character.kind {
                Kind::States(_) => {
                    once.iter().filter_map(|of| of.get(row)).fold(0.0, |a, b| b.max(a))
                }
                _ => spectrum.chance(&weights(character, &typical(character, cell)?, misread)),
            })
        });
        let usual = |spectrum: &Option<&Spectrum>| {
            spectrum.map_or(0.0, |spectrum| spectrum.usual_chance(character, misread))
        };
        Some(Self {
            usual: spectra.iter().map(usual).collect(),
            twice: said.iter().map(both).collect(),
            may_favour: said.iter().map(may).collect(),
            best: best.collect(),
            once,
        })
    }
}

fn at<T: Copy>(of: &[Vec<T>], answer: usize, row: usize) -> Option<T> {
    of.get(answer)?.get(row).copied()
}
