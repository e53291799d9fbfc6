//! Shares against shares: lines that fall, or do not, from 0 to 100 %.

use super::{Drawing, Hold, LETTERS, Stroke};
use crate::number::{Rounding, numerals};
use ground::{Finite, Unit};

const WIDTH: f64 = 360.0;
/// Room for the numbers at the left.
const LEFT: f64 = 52.0;
const RIGHT: f64 = WIDTH - 22.0;
const TOP: f64 = 12.0;
const BOTTOM: f64 = 232.0;
/// How long the sample of a line is in the list below.
const SAMPLE: f64 = 36.0;

/// Lines over one square of shares, from 0 to 100 % both ways.
#[derive(Clone, Debug, PartialEq)]
pub struct Curves {
    /// What is shown.
    pub title: String,
    /// What it comes to, in words.
    pub describes: String,
    /// What runs up, in words.
    pub up: String,
    /// What runs across, in words.
    pub across: String,
    /// The lines, from the thinnest to the heaviest.
    pub lines: Vec<Curve>,
}

/// A line with its words.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// What it is.
    pub says: String,
    /// Whether it is dashed.
    pub dashed: bool,
    /// Its points: across, then up, each from 0 to 1.
    pub points: Vec<(Finite, Finite)>,
}

impl Curves {
    /// The drawing. A ring marks where each line ends.
    #[must_use]
    pub fn draw(&self) -> Drawing {
        let mut drawing = Drawing::new(&self.title, &self.describes, WIDTH as u32, 0);
        let up = drawing.lines(4.0, WIDTH - 4.0, 2.0, &self.up);
        let down = up - TOP + 8.0;
        Self::frame(&mut drawing, down);
        for line in &self.lines {
            line.draw(&mut drawing, down);
        }
        let mut y = down + BOTTOM + 12.0 + LETTERS;
        y = drawing.lines(4.0, WIDTH - 4.0, y + 4.0, &self.across);
        for line in &self.lines {
            let at = y + 16.0;
            drawing.line((4.0, at), (4.0 + SAMPLE, at), line.stroke());
            y = drawing.lines(SAMPLE + 12.0, WIDTH - 4.0, y + 4.0, &line.says);
        }
        drawing.reach_down((y + 8.0).ceil() as u32);
        drawing
    }

    /// The square, with a thin line and a number for each quarter, in per cent.
    fn frame(drawing: &mut Drawing, down: f64) {
        for quarter in 0..=4u8 {
            let share = f64::from(quarter) / 4.0;
            let number = numerals(100.0 * share, Unit::Percent, Rounding::Nearest);
            let (left, low) = place(0.0, share, down);
            drawing.line((left - 5.0, low), (RIGHT, low), Stroke::Thin);
            drawing.words((left - 8.0, low + LETTERS * 0.35), Hold::End, &number);
            let (x, foot) = place(share, 0.0, down);
            drawing.line((x, foot), (x, foot + 5.0), Stroke::Thin);
            drawing.words((x, foot + 6.0 + LETTERS), Hold::Middle, &number);
        }
    }
}

impl Curve {
    fn stroke(&self) -> Stroke {
        if self.dashed { Stroke::Dashed } else { Stroke::Heavy }
    }

    fn draw(&self, drawing: &mut Drawing, down: f64) {
        let at = |(across, up): &(Finite, Finite)| place(across.get(), up.get(), down);
        for pair in self.points.windows(2) {
            if let [from, to] = pair {
                drawing.line(at(from), at(to), self.stroke());
            }
        }
        if let Some(last) = self.points.last() {
            drawing.ring(at(last), 4.0);
        }
    }
}

fn place(across: f64, up: f64, down: f64) -> (f64, f64) {
    let x = LEFT + (RIGHT - LEFT) * across.clamp(0.0, 1.0);
    (x, down + BOTTOM - (BOTTOM - TOP) * up.clamp(0.0, 1.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_runs_from_corner_to_corner_within_the_frame() {
        let at = |value| Finite::new(value).unwrap();
        let line = Curve {
            says: "one".to_owned(),
            dashed: false,
            points: vec![(at(0.0), at(1.0)), (at(1.0), at(0.0))],
        };
        let curves = Curves {
            title: String::new(),
            describes: String::new(),
            up: "up".to_owned(),
            across: "across".to_owned(),
            lines: vec![line],
        };
        let svg = curves.draw().svg("c");
        let heavy =
            "x1=\"52\" y1=\"30\" x2=\"338\" y2=\"250\" stroke=\"currentColor\" stroke-width=\"3\"";
        assert!(svg.contains(heavy), "{svg}");
        // Both ways five numbers.
        assert_eq!(svg.matches(">50</text>").count(), 2, "{svg}");
        assert_eq!(svg.matches("<circle").count(), 1);
    }
}
