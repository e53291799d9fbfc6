//! A square code that a telephone reads, true to size on paper.

use super::{Drawing, UNITS_IN_MM};
use ground::{Fault, Place};
use qrcode::{Color, EcLevel, QrCode};

/// Modules of white that ISO/IEC 18004 asks for on each side.
const QUIET: u32 = 4;

/// A QR code after ISO/IEC 18004, with the highest correction of errors: level H restores some 30 % of
/// its code words.
#[derive(Clone, Debug)]
pub struct Code {
    /// What it is.
    pub title: String,
    /// What it says, in words that can stand in its place.
    pub describes: String,
    /// What it holds.
    pub says: String,
    /// The side of one module, in quarters of a millimetre; two and more can be read from ordinary
    /// printers.
    pub module: u32,
}

impl Code {
    /// Draws it, with its quiet zone.
    ///
    /// # Errors
    /// More words than the largest code holds.
    pub fn draw(&self) -> Result<Drawing, Fault> {
        let code = QrCode::with_error_correction_level(&self.says, EcLevel::H)
            .map_err(|_| Fault::new("code-too-long", Place::default(), self.says.as_str()))?;
        let modules = u32::try_from(code.width()).unwrap_or_default();
        let side = (modules + 2 * QUIET) * self.module;
        let mut drawing = Drawing::new(&self.title, &self.describes, side, side).true_to_size();
        drawing.fill(runs(&code).map(|(column, row, length)| {
            let at = |module: u32| (QUIET + module) * self.module;
            (at(column), at(row), length * self.module, self.module)
        }));
        Ok(drawing)
    }

    /// How wide and high a code of so few letters as a label's is on paper, in millimetres: the second
    /// version, which holds 20 capital letters and digits, has 25 modules (ISO/IEC 18004).
    #[must_use]
    pub fn side_mm(module: u32) -> f64 {
        f64::from((25 + 2 * QUIET) * module) / f64::from(UNITS_IN_MM)
    }
}

/// Dark modules that stand beside each other: column, row and how many.
fn runs(code: &QrCode) -> impl Iterator<Item = (u32, u32, u32)> {
    let colors = code.to_colors();
    let rows: Vec<Vec<Color>> = colors.chunks(code.width()).map(<[Color]>::to_vec).collect();
    (0_u32..).zip(rows).flat_map(|(row, modules)| {
        let mut column = 0_u32;
        let mut found = Vec::new();
        for run in modules.chunk_by(|a, b| a == b) {
            let length = u32::try_from(run.len()).unwrap_or_default();
            if run.first() == Some(&Color::Dark) {
                found.push((column, row, length));
            }
            column += length;
        }
        found
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn code(says: &str) -> Code {
        let says = says.to_owned();
        Code { title: String::new(), describes: String::new(), says, module: 2 }
    }

    /// The drawing as dots, ten to a module, taken from its path as a reader of the file would.
    fn dots(drawing: &Drawing) -> Vec<Vec<bool>> {
        let side = drawing.size.0 as usize * 5;
        let mut dots = vec![vec![false; side]; side];
        let path = drawing.marks.split('"').find(|part| part.starts_with('M')).unwrap();
        for rect in path.split('z').filter(|rect| !rect.is_empty()) {
            let numbers: Vec<usize> = rect
                .split(|c: char| !c.is_ascii_digit())
                .filter_map(|number| number.parse().ok())
                .collect();
            let [x, y, width, height, _] = numbers[..] else { panic!("{rect}") };
            for row in &mut dots[5 * y..5 * (y + height)] {
                row[5 * x..5 * (x + width)].fill(true);
            }
        }
        dots
    }

    fn read(dots: &[Vec<bool>]) -> Option<String> {
        let side = dots.len();
        let mut image = rqrr::PreparedImage::prepare_from_greyscale(side, side, |x, y| {
            if dots[y][x] { 0 } else { 255 }
        });
        image.detect_grids().first()?.decode().ok().map(|(_, said)| said)
    }

    #[test]
    fn a_code_holds_what_it_says_and_is_true_to_size() {
        let drawing = code("B7F-3K9-MQX/12").draw().unwrap();
        assert_eq!(read(&dots(&drawing)).as_deref(), Some("B7F-3K9-MQX/12"));
        assert_eq!(Code::side_mm(2), 16.5);
        assert!(drawing.svg("c").contains("width=\"16.5mm\" height=\"16.5mm\""));
        let quiet = 4 * 10;
        assert!(dots(&drawing)[..quiet].iter().flatten().all(|dark| !dark));
        assert!(dots(&drawing)[quiet][quiet], "the finder pattern begins after the quiet zone");
    }

    #[test]
    fn more_than_a_code_holds_is_a_fault() {
        assert_eq!(code(&"x".repeat(2000)).draw().unwrap_err().code, "code-too-long");
    }

    proptest! {
        /// A blot of 5 % of the code's area, anywhere but on the upper left corner, where a reader learns
        /// how the code is to be read, and trusts that. A reader must still find the code by its marks;
        /// where it cannot, what the code says stands on the label in letters.
        #[test]
        fn a_blot_of_a_twentieth_is_survived(
            says in "[LB][2-9A-HJ-NP-Z]{2}-[2-9A-HJ-NP-Z]{3}-[2-9A-HJ-NP-Z]{3}/[1-9]",
            (column, row) in (0..20_usize, 0..20_usize),
            dark: bool,
        ) {
            prop_assume!(column > 8 || row > 8);
            // 5 % of 25 × 25 modules are 31; a square of 6 × 6 is more.
            let blot = |x: usize, y: usize| (column..column + 6).contains(&x) && (row..row + 6).contains(&y);
            let dots = dots(&code(&says).draw().unwrap());
            let module = |x: usize, y: usize| {
                if blot(x, y) { dark } else { dots[10 * (4 + y) + 5][10 * (4 + x) + 5] }
            };
            let grid = rqrr::Grid::new(rqrr::SimpleGrid::from_func(25, module));
            prop_assert_eq!(grid.decode().ok().map(|(_, said)| said), Some(says));
        }
    }
}
