//! Large tables, packed: less than a byte for a cell, and one pass over the cells for a look.
//!
//! A character has far fewer different cells than taxa: *hairy*, *smooth or hairy*, *unknown*. So a
//! cell is its number among the **kinds** of its column, and characters of few kinds share one
//! number, a **bundle**, column by column. What a look weighs is worked out once for each kind; the
//! logarithm of the likelihood of each taxon then grows by one entry of a small table.
//!
//! What the next look would tell needs no more of the taxa than how likely the plant is of each
//! kind. One pass over a bundle sums that up for all of its characters, and the rest is arithmetic
//! on a few kinds:
//!
//! I = H(Σ m_k q_k) − Σ m_k H(q_k), m_k the chance of kind k, q_k the chances of its answers.
//!
//! For these sums a chance is rounded to a part in four milliards: whole numbers, so that the order of
//! the taxa changes nothing, and half the bytes to read. A hundred thousand roundings come to some
//! 10⁻⁸ of a chance. The chances themselves, and the logarithms from which they come, are `f64`: of
//! some hundred looks logarithms reach thousands, of which an `f32` keeps three decimals, and it is
//! the cells that take the time.
//!
//! [`Judge::packed`](crate::Judge::packed) packs a judge's table; [`Table::pack`] any.

mod bundle;
mod flora;
#[cfg(test)]
mod laws;
mod running;
mod sums;

pub use flora::Flora;
pub use running::{Chances, Running};

use crate::bayes;
use bundle::Bundle;
use ground::{Fault, Place};
use sums::dot;

/// How many taxa there are for each number of a bundle at least: summing up its numbers is then
/// little beside reading its cells.
const TAXA_A_NUMBER: usize = 16;
/// The numbers of a bundle: those of a byte at least; as many as sums fit near the processor at most.
const NUMBERS: (usize, usize) = (256, bundle::MOST_SHARED);

/// One character of every taxon.
#[derive(Clone, Debug)]
pub struct Column {
    codes: Vec<u16>,
    kinds: usize,
}

impl Column {
    /// The kind of each taxon's cell, in the order of the taxa, of so many kinds from 0.
    ///
    /// # Errors
    /// A kind that is not below `kinds`.
    pub fn new(codes: Vec<u16>, kinds: usize) -> Result<Self, Fault> {
        match codes.iter().position(|code| usize::from(*code) >= kinds) {
            None => Ok(Self { codes, kinds }),
            Some(row) => {
                let at = Place::entry("packed", &row.to_string(), "");
                Err(Fault::new("identify-packed-kind", at, kinds.to_string()))
            }
        }
    }
}

/// Characters of many taxa, packed.
#[derive(Clone, Debug, Default)]
pub struct Table {
    taxa: usize,
    bundles: Vec<Bundle>,
    /// For each column its bundle, and its place there.
    places: Vec<(usize, usize)>,
}

impl Table {
    /// Packs columns; characters that stand beside each other share bundles.
    ///
    /// # Errors
    /// A column that has more or fewer cells than the first.
    pub fn pack(columns: impl IntoIterator<Item = Column>) -> Result<Self, Fault> {
        let mut table = Self::default();
        let mut open: Vec<Column> = Vec::new();
        let mut numbers = 1;
        for (at, column) in columns.into_iter().enumerate() {
            if at == 0 {
                table.taxa = column.codes.len();
            } else if column.codes.len() != table.taxa {
                let place = Place::entry("packed", &at.to_string(), "");
                let cells = column.codes.len().to_string();
                return Err(Fault::new("identify-packed-length", place, cells));
            }
            if numbers * column.kinds > table.numbers() {
                table.close(&mut open);
                numbers = 1;
            }
            numbers *= column.kinds;
            open.push(column);
        }
        table.close(&mut open);
        Ok(table)
    }

    /// How many taxa.
    #[must_use]
    pub fn taxa(&self) -> usize {
        self.taxa
    }

    /// How many characters.
    #[must_use]
    pub fn columns(&self) -> usize {
        self.places.len()
    }

    /// The bytes that the cells take.
    #[must_use]
    pub fn bytes(&self) -> usize {
        self.bundles.iter().map(Bundle::bytes).sum()
    }

    /// How many numbers a bundle of several characters may have.
    fn numbers(&self) -> usize {
        let (least, most) = NUMBERS;
        (self.taxa / TAXA_A_NUMBER).clamp(least, most)
    }

    fn close(&mut self, open: &mut Vec<Column>) {
        if open.is_empty() {
            return;
        }
        let bundle = self.bundles.len();
        self.places.extend((0..open.len()).map(|place| (bundle, place)));
        self.bundles.push(Bundle::new(open));
        open.clear();
    }

    /// Adds to each taxon's sum what stands for the kind of its cell.
    fn add(&self, column: usize, by_kind: &[f64], to: &mut [f64]) {
        let found = self.places.get(column);
        let found = found.and_then(|(bundle, place)| Some((self.bundles.get(*bundle)?, *place)));
        if let Some((bundle, place)) = found {
            bundle.add(place, by_kind, to);
        }
    }
}

/// A character that may be asked for: how likely each answer is of each kind of cell.
#[derive(Clone, Debug)]
pub struct Question {
    /// By answer, then by kind.
    given: Vec<Vec<f64>>,
    /// By kind: the doubt that is left in the answer, in bits.
    doubts: Vec<f64>,
}

impl Question {
    /// From the chances of all answers, by kind.
    #[must_use]
    pub fn new(answers: &[Vec<f64>]) -> Self {
        let many = answers.iter().map(Vec::len).max().unwrap_or(0);
        let of = |answer: usize| {
            answers.iter().map(|kind| kind.get(answer).copied().unwrap_or(0.0)).collect()
        };
        let doubts = answers.iter().map(|kind| bayes::entropy(kind)).collect();
        Self { given: (0..many).map(of).collect(), doubts }
    }

    /// What the answer is expected to tell, in bits, from the chance of each kind of cell.
    ///
    /// The mutual information of kind and answer, which is that of taxon and answer: a taxon answers
    /// by its kind alone.
    #[must_use]
    pub fn tells(&self, kinds: &[f64]) -> f64 {
        let answers: Vec<f64> = self.given.iter().map(|given| dot(kinds, given)).collect();
        (bayes::entropy(&answers) - dot(kinds, &self.doubts)).max(0.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cell_takes_less_than_a_byte_where_characters_have_few_kinds() {
        let column = || Column::new((0..100_000_u32).map(|n| (n % 16) as u16).collect(), 16);
        let table = Table::pack((0..6).map(|_| column().unwrap())).unwrap();
        assert_eq!((table.columns(), table.bytes()), (6, 400_000));
        let small = Table::pack([Column::new(vec![0, 3, 1], 4).unwrap()]).unwrap();
        assert_eq!((small.taxa(), small.bytes()), (3, 3));
    }

    #[test]
    fn a_kind_that_is_not_there_and_a_short_column_are_faults() {
        assert_eq!(Column::new(vec![0, 2], 2).unwrap_err().code, "identify-packed-kind");
        let columns = [vec![0, 1], vec![1]].map(|codes| Column::new(codes, 2).unwrap());
        assert_eq!(Table::pack(columns).unwrap_err().code, "identify-packed-length");
    }

    #[test]
    fn an_answer_tells_no_more_than_there_is_to_know() {
        let sure = [vec![1.0, 0.0], vec![0.0, 1.0]];
        assert!((Question::new(&sure).tells(&[0.5, 0.5]) - 1.0).abs() < 1e-15);
        let alike = Question::new(&[vec![0.3, 0.7], vec![0.3, 0.7]]);
        assert!(alike.tells(&[0.5, 0.5]).abs() < 1e-15);
    }
}
