//! How large paper is, and how a page stands on it.

use page::{Format, Kind, Page, Paper, TypeSize};

/// Width and height in millimetres.
fn size_mm(paper: Paper) -> (f64, f64) {
    let (width, height) = paper.size();
    (width.mm(), height.mm())
}

/// Width and height of half a sheet in millimetres.
fn half_mm(paper: Paper) -> (f64, f64) {
    let (width, height) = size_mm(paper);
    (height / 2.0, width)
}

/// A bank card, width and height in millimetres (ISO/IEC 7810, ID-1).
const CARD_MM: (f64, f64) = (85.6, 53.98);

/// Millimetres in a point of 1/72 inch.
const MM_IN_PT: f64 = 25.4 / 72.0;

/// From one line to the next, in the size of its letters.
const LINE_EM: f64 = 1.35;

/// How one page stands on its paper.
#[derive(Clone, Debug)]
pub(crate) struct Setting {
    pub(crate) width_mm: f64,
    pub(crate) height_mm: f64,
    pub(crate) margin_mm: f64,
    /// The letters of the text.
    pub(crate) size_pt: f64,
    /// Whether it folds in four, each quarter a panel of its own.
    pub(crate) folds: bool,
    /// Whether it is one side that needs no number.
    pub(crate) one_side: bool,
}

impl Setting {
    /// How many lines a page holds.
    pub(crate) fn lines(&self) -> f64 {
        (self.height_mm - 2.0 * self.margin_mm) / MM_IN_PT / self.size_pt / LINE_EM
    }

    /// How long a line is, in the size of its letters.
    pub(crate) fn line_ems(&self) -> f64 {
        self.line_mm() / MM_IN_PT / self.size_pt
    }

    /// How long a line is, in millimetres.
    pub(crate) fn line_mm(&self) -> f64 {
        if self.folds {
            return self.width_mm / 2.0 - 2.0 * self.margin_mm;
        }
        self.width_mm - 2.0 * self.margin_mm
    }

    /// The usual setting of a page. Large print: 20 points, as the guidelines of the Council of
    /// Citizens with Low Vision International ask for at least 18.
    pub(crate) fn of(page: &Page, paper: Paper) -> Self {
        let (width, height) = size_mm(paper);
        let large = page.size == TypeSize::Large;
        let sheets = Self {
            width_mm: width,
            height_mm: height,
            margin_mm: if large { 25.0 } else { 18.0 },
            size_pt: letters(page),
            folds: false,
            one_side: false,
        };
        match page.format {
            Format::Sheets => sheets,
            Format::Wide => Self { width_mm: height, height_mm: width, ..sheets },
            Format::Half => {
                let (width_mm, height_mm) = half_mm(paper);
                Self { width_mm, height_mm, margin_mm: 9.0, one_side: true, ..sheets }
            }
            Format::Wallet => {
                let (width_mm, height_mm) = (2.0 * CARD_MM.0, 2.0 * CARD_MM.1);
                Self { width_mm, height_mm, margin_mm: 4.0, folds: true, one_side: true, ..sheets }
            }
        }
    }
}

/// Hand-outs in 12 points; what the leader alone reads is set closer, so that fewer sheets go along.
fn letters(page: &Page) -> f64 {
    match (page.size, page.kind) {
        (TypeSize::Large, _) => 20.0,
        (TypeSize::Normal, Kind::Public) => 12.0,
        (TypeSize::Normal, Kind::Screen | Kind::Sealed) => 11.0,
    }
}
