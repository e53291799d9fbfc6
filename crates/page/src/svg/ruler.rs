//! A ruler to measure a leaf on the sheet itself.

use super::{Drawing, Hold, LETTERS, Stroke, UNITS_IN_MM};

/// A ruler in millimetres. It is true on paper that was printed without scaling.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ruler {
    /// What it is.
    pub title: String,
    /// What it shows, in words.
    pub describes: String,
    /// Its length in whole centimetres; 15 fit a page.
    pub centimetres: u8,
}

impl Ruler {
    /// The drawing: a line for each millimetre, a longer one for each five, a number for each
    /// centimetre.
    #[must_use]
    pub fn draw(&self) -> Drawing {
        let millimetres = u32::from(self.centimetres) * 10;
        let margin = 4;
        let width = (millimetres + 2 * margin) * UNITS_IN_MM;
        let mut drawing = Drawing::new(&self.title, &self.describes, width, 48).true_to_size();
        for mm in 0..=millimetres {
            let x = f64::from((mm + margin) * UNITS_IN_MM);
            let length = match mm {
                _ if mm % 10 == 0 => 24.0,
                _ if mm % 5 == 0 => 18.0,
                _ => 12.0,
            };
            drawing.line((x, 2.0), (x, 2.0 + length), Stroke::Thin);
            if mm % 10 == 0 {
                drawing.words((x, 28.0 + LETTERS), Hold::Middle, &(mm / 10).to_string());
            }
        }
        drawing
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ten_centimetres_are_a_hundred_millimetres_on_paper() {
        let ruler = Ruler { title: String::new(), describes: String::new(), centimetres: 10 };
        let svg = ruler.draw().svg("r");
        assert!(svg.contains("width=\"108mm\"") && svg.contains("viewBox=\"0 0 432 48\""));
        assert_eq!(svg.matches("<line").count(), 101);
        assert!(svg.contains("x1=\"16\"") && svg.contains("x1=\"416\""));
    }
}
