//! The table of a judge, packed.

use super::{Column, Question, Running, Table};
use crate::judge::Judge;
use crate::posterior::{in_order, most_first};
use crate::spectrum::Answers;
use crate::testimony::{Testimony, gather};
use crate::{Case, Chance, Level, Priors, Telling};
use ground::{Fault, Faults, Finite, Place};
use std::collections::{BTreeMap, BTreeSet};

/// A judge's table, packed for many questions: [`Judge::posterior`] and [`Judge::most_telling`] of
/// thousands of taxa.
#[derive(Clone, Debug)]
pub struct Flora<'m> {
    judge: Judge<'m>,
    /// The taxa, and after them *none of these*, of which nothing is known.
    table: Table,
    /// For each character and kind of cell a taxon that shows it; none: unknown.
    kinds: Vec<Vec<Option<usize>>>,
}

impl<'m> Judge<'m> {
    /// The same table, packed.
    ///
    /// # Errors
    /// A character of which more than 65,536 taxa show each something else.
    pub fn packed(&self) -> Result<Flora<'m>, Fault> {
        let packed = (0..self.characters().len()).map(|column| self.kinds(column));
        let (columns, kinds): (Vec<_>, Vec<_>) =
            packed.collect::<Result<Vec<_>, Fault>>()?.into_iter().unzip();
        Ok(Flora { judge: self.clone(), table: Table::pack(columns)?, kinds })
    }

    fn kinds(&self, column: usize) -> Result<(Column, Vec<Option<usize>>), Fault> {
        let mut known: BTreeMap<Vec<u64>, u16> = BTreeMap::new();
        let mut shown_by = vec![None];
        let mut codes = Vec::with_capacity(self.taxa().len() + 1);
        for row in 0..self.taxa().len() {
            let Some(spectrum) = self.shown(row, column) else {
                codes.push(0);
                continue;
            };
            let next = u16::try_from(shown_by.len());
            let bits = spectrum.shares.iter().map(|share| share.to_bits()).collect();
            let code = match known.get(&bits) {
                Some(code) => *code,
                None => {
                    let code = next.map_err(|_| self.too_many(column))?;
                    known.insert(bits, code);
                    shown_by.push(Some(row));
                    code
                }
            };
            codes.push(code);
        }
        codes.push(0);
        Ok((Column::new(codes, shown_by.len())?, shown_by))
    }

    fn too_many(&self, column: usize) -> Fault {
        let name = self.character(column).map_or("", |character| character.id.as_str());
        Fault::new("identify-packed-kinds", Place::entry("packed", name, ""), name)
    }
}

impl Flora<'_> {
    /// The bytes that the cells take.
    #[must_use]
    pub fn bytes(&self) -> usize {
        self.table.bytes()
    }

    /// As [`Judge::posterior`].
    ///
    /// # Errors
    /// As there.
    pub fn posterior(&self, case: &Case, priors: &Priors) -> Result<Vec<Chance>, Faults> {
        let (running, _) = self.running(case, priors)?;
        let chances = running.chances();
        let chance = |row: usize, taxon| {
            let chance = chances.of_taxa().get(row).copied().unwrap_or_default();
            Chance { taxon, chance: Finite::new(chance).unwrap_or_default() }
        };
        let taxa = self.judge.taxa();
        let rows = self.judge.rows(case.region).into_iter();
        let named = rows.filter_map(|row| Some(chance(row, Some(taxa.get(row)?.name.clone()))));
        let mut all: Vec<Chance> = named.collect();
        all.push(chance(taxa.len(), None));
        Ok(in_order(all))
    }

    /// As [`Judge::most_telling`].
    ///
    /// # Errors
    /// As there.
    pub fn most_telling(
        &self,
        case: &Case,
        priors: &Priors,
        level: Level,
    ) -> Result<Vec<Telling>, Faults> {
        let (running, read) = self.running(case, priors)?;
        let of_kinds = running.chances().of_kinds();
        let columns = self.judge.characters().iter().enumerate().zip(of_kinds.iter());
        let open = columns.filter(|((column, _), _)| !read.contains(column));
        let all = open.filter_map(|((column, character), chances)| {
            let answers = Answers::new(character, level.misread(character.organ));
            let given: Vec<Vec<f64>> = self
                .kinds
                .get(column)?
                .iter()
                .map(|row| answers.chances(row.and_then(|row| self.judge.shown(row, column))))
                .collect();
            Telling::new(character, Question::new(&given).tells(chances))
        });
        Ok(most_first(all.collect()))
    }

    /// The likelihoods after a case's looks, and which characters those were.
    fn running(
        &self,
        case: &Case,
        priors: &Priors,
    ) -> Result<(Running<'_>, BTreeSet<usize>), Faults> {
        priors.check(&self.judge)?;
        let testimonies = gather(&self.judge, &case.specimen, &case.session())?;
        let mut running = Running::new(&self.table, &self.weights(case, priors));
        let mut groups: BTreeMap<&str, usize> = BTreeMap::new();
        for testimony in &testimonies {
            let Some(character) = self.judge.character(testimony.column) else {
                continue;
            };
            let next = groups.len();
            let group = *groups.entry(&character.group).or_insert(next);
            if let Some(chances) = self.by_kind(testimony) {
                running.look(testimony.column, group, &chances);
            }
        }
        Ok((running, testimonies.iter().map(|testimony| testimony.column).collect()))
    }

    /// For each kind of cell the probability of what was read; nothing where nothing was said.
    fn by_kind(&self, testimony: &Testimony) -> Option<Vec<f64>> {
        let weights = testimony.joint()?;
        let kinds = self.kinds.get(testimony.column)?.iter();
        Some(kinds.map(|row| self.judge.chance(*row, testimony.column, &weights)).collect())
    }

    /// Taxa of other regions weigh nothing.
    fn weights(&self, case: &Case, priors: &Priors) -> Vec<f64> {
        let mut weights = vec![0.0; self.judge.taxa().len()];
        for row in self.judge.rows(case.region) {
            if let Some((weight, taxon)) = weights.get_mut(row).zip(self.judge.taxon(row)) {
                *weight = priors.of(taxon);
            }
        }
        let total: f64 = weights.iter().sum();
        let none = priors.none_of_these.get();
        weights.iter_mut().for_each(|weight| *weight *= (1.0 - none) / total);
        weights.push(none);
        weights
    }
}
