//! Sheets of labels that stick: where each stands on the paper, in millimetres alone.

use ground::{Fault, Faults, Place};
use serde::{Deserialize, Serialize};
use std::fmt;

/// A length on paper, in hundredths of a millimetre: whole, so that a grid adds up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Hundredths(pub u32);

impl Hundredths {
    /// In millimetres.
    #[must_use]
    pub fn mm(self) -> f64 {
        f64::from(self.0) / 100.0
    }
}

impl fmt::Display for Hundredths {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.mm())
    }
}

/// What labels are printed on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Paper {
    /// 210 mm × 297 mm (ISO 216).
    A4,
    /// 215.9 mm × 279.4 mm.
    Letter,
}

impl Paper {
    /// Its width and height.
    #[must_use]
    pub fn size(self) -> (Hundredths, Hundredths) {
        let (width, height) = match self {
            Self::A4 => (21_000, 29_700),
            Self::Letter => (21_590, 27_940),
        };
        (Hundredths(width), Hundredths(height))
    }

    /// The word, as files and commands write it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::A4 => "a4",
            Self::Letter => "letter",
        }
    }
}

/// A sheet of equal labels in a grid, in the middle of the paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct LabelSheet {
    /// What it is.
    pub paper: Paper,
    /// Width and height of a label, in hundredths of a millimetre.
    pub label: (Hundredths, Hundredths),
    /// Labels beside each other.
    pub columns: u32,
    /// Labels below each other.
    pub rows: u32,
    /// From one label to the next, across and down.
    pub gap: (Hundredths, Hundredths),
}

/// A label must hold the code and beside it some 18 letters; and the seven lines that no label goes
/// without: name, scientific name, two of what must not be done, the code, the last day, where the
/// rest stands. Letters have an x-height of 1.2 mm and more (Regulation (EU) No 1169/2011, article
/// 13 (2)); the 0.9 mm that it allows for small packages are not made use of.
const LEAST: (Hundredths, Hundredths) = (Hundredths(5000), Hundredths(2500));

/// Labels of this height and more have room for larger letters and a larger code.
const TALL: Hundredths = Hundredths(4500);

/// Sizes that are sold everywhere: width, height, columns, rows, gap across, in hundredths of a
/// millimetre. Common practice, no source.
const SIZES: &[(Paper, u32, u32, u32, u32, u32)] = &[
    (Paper::A4, 6_350, 3_810, 3, 7, 250),
    (Paper::A4, 7_000, 3_700, 3, 8, 0),
    (Paper::A4, 9_910, 3_810, 2, 7, 250),
    (Paper::A4, 9_910, 6_770, 2, 4, 250),
    (Paper::Letter, 6_670, 2_540, 3, 10, 317),
    (Paper::Letter, 10_160, 5_080, 2, 5, 476),
];

impl LabelSheet {
    /// The sheets that are sold everywhere, of this paper.
    pub fn sold(paper: Paper) -> impl Iterator<Item = Self> {
        SIZES.iter().filter(move |size| size.0 == paper).map(
            |&(paper, width, height, columns, rows, across)| Self {
                paper,
                label: (Hundredths(width), Hundredths(height)),
                columns,
                rows,
                gap: (Hundredths(across), Hundredths(0)),
            },
        )
    }

    /// The sheet that is taken where nothing was said: the one with the largest labels.
    #[must_use]
    pub fn usual(paper: Paper) -> Self {
        let area = |sheet: &Self| u64::from(sheet.label.0.0) * u64::from(sheet.label.1.0);
        let largest = Self::sold(paper).max_by_key(area);
        largest.unwrap_or_else(|| Self::cut(paper, LEAST))
    }

    /// The sheet with labels of this size, written in millimetres as `63.5x38.1`. A size that is not
    /// sold on this paper fills the paper edge to edge, to be cut out.
    ///
    /// # Errors
    /// A size that cannot be read, a label that is too small for what it must say, and one that is
    /// larger than the paper.
    pub fn of(written: &str, paper: Paper) -> Result<Self, Faults> {
        let fault = |code: &str| {
            let sizes: Vec<_> = Self::sold(paper).map(|sheet| sheet.size().into()).collect();
            Fault::new(code, Place::entry("label", "", "size"), written)
                .with("sizes", sizes)
                .with("paper", paper.word())
        };
        let label = read(written).ok_or_else(|| fault("unreadable-label-size"))?;
        if let Some(sheet) = Self::sold(paper).find(|sheet| sheet.label == label) {
            return Ok(sheet);
        }
        if label.0 < LEAST.0 || label.1 < LEAST.1 {
            let next = Self::next_larger(paper, label).size();
            return Err(fault("label-too-small").with("next", next).into());
        }
        let sheet = Self::cut(paper, label);
        if sheet.columns == 0 || sheet.rows == 0 {
            return Err(fault("label-larger-than-paper").into());
        }
        Ok(sheet)
    }

    /// The smallest sold size that holds this one.
    fn next_larger(paper: Paper, label: (Hundredths, Hundredths)) -> Self {
        let holds = |s: &Self| s.label.0 >= label.0 && s.label.1 >= label.1;
        let area = |s: &Self| u64::from(s.label.0.0) * u64::from(s.label.1.0);
        Self::sold(paper).filter(holds).min_by_key(area).unwrap_or_else(|| Self::usual(paper))
    }

    /// As many labels as fit, edge to edge.
    fn cut(paper: Paper, label: (Hundredths, Hundredths)) -> Self {
        let (width, height) = paper.size();
        let many = |paper: Hundredths, label: Hundredths| paper.0.checked_div(label.0).unwrap_or(0);
        Self {
            paper,
            label,
            columns: many(width, label.0),
            rows: many(height, label.1),
            gap: (Hundredths(0), Hundredths(0)),
        }
    }

    /// Whether its labels have room for larger letters and a larger code.
    #[must_use]
    pub fn roomy(&self) -> bool {
        self.label.1 >= TALL
    }

    /// The size of its labels, as files and commands write it.
    #[must_use]
    pub fn size(&self) -> String {
        format!("{}x{}", self.label.0, self.label.1)
    }

    /// How many labels a sheet holds: at least one, whoever made it.
    #[must_use]
    pub fn holds(&self) -> usize {
        usize::try_from(self.columns.saturating_mul(self.rows)).unwrap_or(usize::MAX).max(1)
    }

    /// From the left and the upper edge of the paper to the corner of a label, counted from 0 by rows;
    /// those of the next sheet begin anew.
    #[must_use]
    pub fn corner(&self, at: usize) -> (Hundredths, Hundredths) {
        let at = u32::try_from(at % self.holds()).unwrap_or(0);
        let (column, row) = (at % self.columns.max(1), at / self.columns.max(1));
        let (width, height) = self.paper.size();
        let place = |paper: Hundredths, label: Hundredths, gap: Hundredths, of: u32, at: u32| {
            let all = of * label.0 + of.saturating_sub(1) * gap.0;
            Hundredths(paper.0.saturating_sub(all) / 2 + at * (label.0 + gap.0))
        };
        (
            place(width, self.label.0, self.gap.0, self.columns, column),
            place(height, self.label.1, self.gap.1, self.rows, row),
        )
    }
}

/// Width and height as written.
fn read(written: &str) -> Option<(Hundredths, Hundredths)> {
    let (width, height) = written.split_once(['x', '×'])?;
    Some((millimetres(width)?, millimetres(height)?))
}

/// Millimetres with up to two decimals; a metre and more is no label.
fn millimetres(written: &str) -> Option<Hundredths> {
    let (whole, part) = written.trim().split_once('.').unwrap_or((written.trim(), ""));
    let digits = |text: &str| text.bytes().all(|b| b.is_ascii_digit());
    let fits = (1..=3).contains(&whole.len()) && part.len() <= 2 && digits(whole) && digits(part);
    let all = format!("{whole}{part:0<2}");
    fits.then(|| all.parse().ok().map(Hundredths)).flatten()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn all() -> impl Iterator<Item = LabelSheet> {
        [Paper::A4, Paper::Letter].into_iter().flat_map(LabelSheet::sold)
    }

    /// Every label lies on the paper, and none on another.
    fn fits(sheet: &LabelSheet) {
        let (width, height) = sheet.paper.size();
        let corners: Vec<_> = (0..sheet.holds()).map(|at| sheet.corner(at)).collect();
        for (x, y) in &corners {
            assert!(
                x.0 + sheet.label.0.0 <= width.0 && y.0 + sheet.label.1.0 <= height.0,
                "{sheet:?}"
            );
        }
        for (at, (x, y)) in corners.iter().enumerate() {
            for (other_x, other_y) in &corners[at + 1..] {
                let apart = x.0.abs_diff(other_x.0) >= sheet.label.0.0
                    || y.0.abs_diff(other_y.0) >= sheet.label.1.0;
                assert!(apart, "{sheet:?}");
            }
        }
    }

    #[test]
    fn every_sold_size_fits_its_paper_and_what_a_label_must_say() {
        assert_eq!(all().count(), SIZES.len());
        for sheet in all() {
            fits(&sheet);
            assert!(sheet.label.0 >= LEAST.0 && sheet.label.1 >= LEAST.1, "{}", sheet.size());
            assert_eq!(LabelSheet::of(&sheet.size(), sheet.paper).unwrap(), sheet);
        }
    }

    #[test]
    fn a_grid_stands_in_the_middle_of_its_paper() {
        let sheet = LabelSheet::of("63.5x38.1", Paper::A4).unwrap();
        assert_eq!((sheet.corner(0).0.mm(), sheet.corner(0).1.mm()), (7.25, 15.15));
        assert_eq!((sheet.corner(4).0.mm(), sheet.corner(4).1.mm()), (73.25, 53.25));
        assert_eq!(sheet.corner(21), sheet.corner(0));
    }

    #[test]
    fn a_label_that_is_too_small_or_too_large_is_told_what_would_do() {
        let code = |written: &str| {
            let faults = LabelSheet::of(written, Paper::A4).unwrap_err();
            faults
                .iter()
                .map(|fault| (fault.code.clone(), fault.details.args.clone()))
                .next()
                .unwrap()
        };
        let (small, args) = code("38.1x21.2");
        assert_eq!(small, "label-too-small");
        assert_eq!(args["next"], ground::Arg::from("63.5x38.1"));
        assert_eq!(code("220x100").0, "label-larger-than-paper");
        for unreadable in
            ["", "x", "63,5x38", "63.5", "-1x5", "63.555x38", "63.5xx38", "1e3x9", "😀x3"]
        {
            assert_eq!(code(unreadable).0, "unreadable-label-size", "{unreadable}");
        }
    }

    proptest! {
        #[test]
        fn whatever_size_is_granted_fits(width in 1_u32..400, height in 1_u32..400, letter: bool) {
            let paper = if letter { Paper::Letter } else { Paper::A4 };
            if let Ok(sheet) = LabelSheet::of(&format!("{width}x{height}"), paper) {
                fits(&sheet);
            }
        }
    }
}
