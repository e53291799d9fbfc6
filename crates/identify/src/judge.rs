//! A table made ready for judging.

use crate::spectrum::Spectrum;
use crate::{Character, Matrix, Taxon};

/// What a table shows, worked out once: it costs some milliseconds for a few hundred taxa.
#[derive(Debug)]
pub(crate) struct Shown {
    /// By column, then by row.
    by_taxon: Vec<Vec<Option<Spectrum>>>,
    /// By column: what plants at large show.
    at_large: Vec<Vec<f64>>,
}

impl Shown {
    pub(crate) fn of(matrix: &Matrix) -> Self {
        let columns = matrix.characters().iter().enumerate();
        let by_taxon: Vec<_> =
            columns.map(|(column, character)| spectra(matrix, column, character)).collect();
        let at_large = by_taxon.iter().map(|column| mean(column)).collect();
        Self { by_taxon, at_large }
    }
}

/// A table made ready for judging.
#[derive(Clone, Debug)]
pub struct Judge<'m> {
    matrix: &'m Matrix,
    shown: &'m Shown,
    at_large: &'m [Vec<f64>],
}

impl<'m> Judge<'m> {
    /// Makes a table ready. Only the first judge of a table has work with it.
    #[must_use]
    pub fn new(matrix: &'m Matrix) -> Self {
        let shown = matrix.shown();
        Self { matrix, shown, at_large: &shown.at_large }
    }

    /// The same, where what plants at large show is taken from another table of the same characters.
    #[cfg(test)]
    pub(crate) fn among(self, flora: &Judge<'m>) -> Self {
        Self { at_large: flora.at_large, ..self }
    }

    /// The table.
    #[must_use]
    pub fn matrix(&self) -> &'m Matrix {
        self.matrix
    }

    /// The characters, sorted by name.
    pub(crate) fn characters(&self) -> &'m [Character] {
        self.matrix.characters()
    }

    /// The taxa, sorted by name.
    pub(crate) fn taxa(&self) -> &'m [Taxon] {
        self.matrix.taxa()
    }

    pub(crate) fn character(&self, column: usize) -> Option<&'m Character> {
        self.characters().get(column)
    }

    pub(crate) fn taxon(&self, row: usize) -> Option<&'m Taxon> {
        self.taxa().get(row)
    }

    /// What a taxon shows of a character, where that is known.
    pub(crate) fn shown(&self, row: usize, column: usize) -> Option<&Spectrum> {
        self.shown.by_taxon.get(column)?.get(row)?.as_ref()
    }

    /// What a relative that nobody has described shows of a character.
    pub(crate) fn cousin(&self, row: usize, column: usize) -> Option<Spectrum> {
        Some(self.shown(row, column)?.cousin(self.at_large.get(column)?))
    }
}

fn spectra(matrix: &Matrix, column: usize, character: &Character) -> Vec<Option<Spectrum>> {
    let spectrum = |row| matrix.at(row, column).map(|cell| Spectrum::new(character, cell));
    (0..matrix.taxa().len()).map(spectrum).collect()
}

/// What plants at large show: the mean over the taxa of which it is known.
fn mean(column: &[Option<Spectrum>]) -> Vec<f64> {
    let mut sum = Vec::new();
    let mut known = 0.0;
    for spectrum in column.iter().flatten() {
        sum.resize(spectrum.shares.len(), 0.0);
        for (sum, share) in sum.iter_mut().zip(&spectrum.shares) {
            *sum += share;
        }
        known += 1.0;
    }
    sum.iter().map(|sum| sum / known).collect()
}
