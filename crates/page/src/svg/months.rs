//! Twelve boxes, one a month; those that count are filled.

use super::{Drawing, Hold, LETTERS};

const BOX: f64 = 26.0;
/// From one box to the next.
const PITCH: f64 = 29.7;

/// A strip of twelve months.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MonthStrip {
    /// What the months are for.
    pub title: String,
    /// The months in words.
    pub describes: String,
    /// A letter or two for each month.
    pub letters: Vec<String>,
    /// Which months count.
    pub filled: Vec<bool>,
}

impl MonthStrip {
    /// The drawing: a filled box with a light letter counts, an open box does not.
    #[must_use]
    pub fn draw(&self) -> Drawing {
        let mut drawing = Drawing::new(&self.title, &self.describes, 360, 36);
        let mut x = 3.0;
        for (letter, filled) in self.letters.iter().zip(&self.filled) {
            drawing.rect((x, 3.0), (BOX, BOX), *filled);
            let at = (x + BOX / 2.0, 3.0 + BOX / 2.0 + LETTERS * 0.35);
            if *filled {
                drawing.words_on_ink(at, letter);
            } else {
                drawing.words(at, Hold::Middle, letter);
            }
            x += PITCH;
        }
        drawing
    }
}
