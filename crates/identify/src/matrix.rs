//! The table that judging works on: taxa, characters, and what is known of each pair.

use crate::judge::Shown;
use crate::{Cell, Character, Taxon, check};
use ground::{Fault, Faults, Once, Place};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Taxa, characters and cells, each sorted by name.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Parts", into = "Parts")]
pub struct Matrix {
    characters: Vec<Character>,
    taxa: Vec<Taxon>,
    /// One row a taxon, one entry a character.
    cells: Vec<Vec<Option<Cell>>>,
    /// What all of this shows, once somebody judges by it.
    shown: Once<Shown>,
}

impl Matrix {
    /// A table of these characters and taxa; a cell names its taxon and its character.
    ///
    /// The order in which they come changes nothing.
    ///
    /// # Errors
    /// Every name that is empty, given twice or not known; every state, range or share that is
    /// impossible.
    pub fn new(
        mut characters: Vec<Character>,
        mut taxa: Vec<Taxon>,
        cells: impl IntoIterator<Item = (String, String, Cell)>,
    ) -> Result<Self, Faults> {
        characters.sort_by(|a, b| a.id.cmp(&b.id));
        taxa.sort_by(|a, b| a.name.cmp(&b.name));
        let mut faults = Faults::none();
        check::characters(&characters, &mut faults);
        check::taxa(&taxa, &characters, &mut faults);
        let rows = vec![vec![None; characters.len()]; taxa.len()];
        let mut matrix = Self { characters, taxa, cells: rows, shown: Once::default() };
        let mut cells: Vec<_> = cells.into_iter().collect();
        cells.sort_by(|a, b| (&a.0, &a.1).cmp(&(&b.0, &b.1)));
        for (taxon, character, cell) in cells {
            matrix.put(taxon, &character, cell).unwrap_or_else(|fault| faults.add(fault));
        }
        faults.or(matrix)
    }

    /// The characters, sorted by name.
    #[must_use]
    pub fn characters(&self) -> &[Character] {
        &self.characters
    }

    /// The taxa, sorted by name.
    #[must_use]
    pub fn taxa(&self) -> &[Taxon] {
        &self.taxa
    }

    /// The character of this name.
    #[must_use]
    pub fn character(&self, id: &str) -> Option<&Character> {
        self.characters.get(self.column(id)?)
    }

    /// The taxon of this name.
    #[must_use]
    pub fn taxon(&self, name: &str) -> Option<&Taxon> {
        self.taxa.get(self.row(name)?)
    }

    /// What is known of a character of a taxon.
    #[must_use]
    pub fn cell(&self, taxon: &str, character: &str) -> Option<&Cell> {
        self.at(self.row(taxon)?, self.column(character)?)
    }

    /// Every cell, with the names of its taxon and its character, in their order.
    pub fn cells(&self) -> impl Iterator<Item = (&Taxon, &Character, &Cell)> {
        self.taxa.iter().zip(&self.cells).flat_map(|(taxon, row)| {
            let known = self.characters.iter().zip(row);
            known.filter_map(move |(character, cell)| Some((taxon, character, cell.as_ref()?)))
        })
    }

    /// What every taxon shows of every character.
    pub(crate) fn shown(&self) -> &Shown {
        self.shown.get(|| Shown::of(self))
    }

    /// The number of the row of a taxon.
    pub(crate) fn row(&self, taxon: &str) -> Option<usize> {
        self.taxa.binary_search_by(|known| known.name.as_str().cmp(taxon)).ok()
    }

    /// The number of the column of a character.
    pub(crate) fn column(&self, character: &str) -> Option<usize> {
        self.characters.binary_search_by(|known| known.id.as_str().cmp(character)).ok()
    }

    /// The cell in a row and a column.
    pub(crate) fn at(&self, row: usize, column: usize) -> Option<&Cell> {
        self.cells.get(row)?.get(column)?.as_ref()
    }

    fn put(&mut self, taxon: String, character: &str, cell: Cell) -> Result<(), Fault> {
        let at = Place::entry("cell", &taxon, character);
        let unknown = |what: &str, name: &str| {
            let code = format!("identify-unknown-{what}");
            Fault::new(&code, at.clone(), name)
        };
        let row = self.row(&taxon).ok_or_else(|| unknown("taxon", &taxon))?;
        let column = self.column(character).ok_or_else(|| unknown("character", character))?;
        if let Some(known) = self.characters.get(column) {
            check::cell(known, &cell.value, &at)?;
        }
        match self.cells.get_mut(row).and_then(|row| row.get_mut(column)) {
            Some(place @ None) => *place = Some(cell),
            _ => return Err(Fault::new("identify-cell-twice", at, taxon)),
        }
        Ok(())
    }
}

/// A table as it is written: read back, it is checked again.
#[derive(Serialize, Deserialize)]
struct Parts {
    characters: Vec<Character>,
    taxa: Vec<Taxon>,
    /// By taxon, then by character.
    cells: BTreeMap<String, BTreeMap<String, Cell>>,
}

impl TryFrom<Parts> for Matrix {
    type Error = Faults;

    fn try_from(parts: Parts) -> Result<Self, Faults> {
        let cells = parts.cells.into_iter().flat_map(|(taxon, row)| {
            row.into_iter().map(move |(character, cell)| (taxon.clone(), character, cell))
        });
        Self::new(parts.characters, parts.taxa, cells)
    }
}

impl From<Matrix> for Parts {
    fn from(matrix: Matrix) -> Self {
        let mut cells: BTreeMap<String, BTreeMap<String, Cell>> = BTreeMap::new();
        for (taxon, character, cell) in matrix.cells() {
            let row = cells.entry(taxon.name.clone()).or_default();
            row.insert(character.id.clone(), cell.clone());
        }
        Self { characters: matrix.characters, taxa: matrix.taxa, cells }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sample;

    #[test]
    fn order_of_characters_taxa_and_cells_changes_nothing() {
        let matrix = sample::matrix();
        let cells = matrix.cells().map(|(t, c, cell)| (t.name.clone(), c.id.clone(), cell.clone()));
        let mut cells: Vec<_> = cells.collect();
        cells.reverse();
        let (mut characters, mut taxa) = (matrix.characters.clone(), matrix.taxa.clone());
        characters.reverse();
        taxa.reverse();
        assert_eq!(Matrix::new(characters, taxa, cells).unwrap(), matrix);
    }

    #[test]
    fn what_is_written_reads_back() {
        let matrix = sample::matrix();
        let text = serde_json::to_string(&matrix).unwrap();
        assert_eq!(serde_json::from_str::<Matrix>(&text).unwrap(), matrix);
    }

    #[test]
    fn a_cell_of_an_unknown_plant_or_character_and_one_given_twice_are_faults() {
        let matrix = sample::matrix();
        let cell = matrix.cell("Allium ursinum", "smell").unwrap().clone();
        let put =
            |taxon: &str, character: &str| (taxon.to_owned(), character.to_owned(), cell.clone());
        let cells = [
            put("Allium ursinum", "smell"),
            put("Allium ursinum", "smell"),
            put("Allium ursinum", "sound"),
            put("Alium ursinum", "smell"),
        ];
        let faults = Matrix::new(matrix.characters, matrix.taxa, cells).unwrap_err();
        let codes: Vec<_> = faults.iter().map(|fault| fault.code.as_str()).collect();
        assert_eq!(
            codes,
            ["identify-unknown-taxon", "identify-cell-twice", "identify-unknown-character"]
        );
    }
}
