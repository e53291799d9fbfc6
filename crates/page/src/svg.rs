//! Line drawings as SVG: each with a title and a description, in ink only, so that it survives a
//! grey copy.

mod code;
mod curves;
mod limit;
mod months;
pub(crate) mod path;
pub(crate) mod plant;
mod ruler;

pub use code::Code;
pub use curves::{Curve, Curves};
pub use limit::{AgainstLimit, Bar};
pub use months::MonthStrip;
pub use ruler::Ruler;

use crate::Direction;
use crate::clean::clean;

/// Height of letters in drawings, in the units of the drawing: about as large as text on a phone.
pub(crate) const LETTERS: f64 = 16.0;
/// From one line of words to the next.
const LINE: f64 = 20.0;
/// Width allowed for a letter.
const LETTER: f64 = LETTERS * 0.56;
/// How many units of a drawing that is true to size make a millimetre.
pub(crate) const UNITS_IN_MM: u32 = 4;

/// A drawing in ink.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Drawing {
    title: String,
    describes: String,
    size: (u32, u32),
    /// How wide it is on paper, in millimetres; none where it is as wide as the text.
    /// How wide it is on paper, in the units that make a millimetre.
    width: Option<u32>,
    true_to_size: bool,
    marks: String,
}

/// How a line is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Stroke {
    /// An axis, a frame.
    Thin,
    /// What the drawing is about.
    Heavy,
    /// The shaft of an arrow.
    Arrow,
    /// A limit.
    Dashed,
}

/// A line in the letters of SVG.
pub(crate) struct Stroked {
    pub(crate) line: String,
    pub(crate) ink: plant::Ink,
    pub(crate) fill: plant::Fill,
}

/// Where words stand beside their point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Hold {
    /// They begin there.
    Start,
    /// It is their middle.
    Middle,
    /// They end there.
    End,
}

impl Drawing {
    /// An empty drawing of this width and height.
    pub(crate) fn new(title: &str, describes: &str, width: u32, height: u32) -> Self {
        Self {
            title: clean(title),
            describes: clean(describes),
            size: (width, height),
            width: None,
            true_to_size: false,
            marks: String::new(),
        }
    }

    /// The same drawing, as large on paper as its millimetres say.
    pub(crate) fn true_to_size(mut self) -> Self {
        self.true_to_size = true;
        self.width = Some(self.size.0);
        self
    }

    /// The same drawing, so wide on paper. What it shows is not true to size.
    pub(crate) fn across(mut self, width_mm: u32) -> Self {
        self.width = Some(width_mm * UNITS_IN_MM);
        self
    }

    /// How wide it is on paper, in millimetres; none where it is as wide as the text.
    #[must_use]
    pub fn width_mm(&self) -> Option<f64> {
        self.width.map(|units| f64::from(units) / f64::from(UNITS_IN_MM))
    }

    /// Whether its millimetres are those of what it shows, as of a ruler.
    #[must_use]
    pub fn is_true_to_size(&self) -> bool {
        self.true_to_size
    }

    /// What it is called.
    #[must_use]
    pub fn title(&self) -> &str {
        &self.title
    }

    /// What it shows, in words that can stand in its place.
    #[must_use]
    pub fn describes(&self) -> &str {
        &self.describes
    }

    pub(crate) fn line(&mut self, from: (f64, f64), to: (f64, f64), stroke: Stroke) {
        let (x1, y1, x2, y2) = (num(from.0), num(from.1), num(to.0), num(to.1));
        let stroke = match stroke {
            Stroke::Thin => "stroke-width=\"1\"",
            Stroke::Arrow => "stroke-width=\"2\"",
            Stroke::Heavy => "stroke-width=\"3\"",
            Stroke::Dashed => "stroke-width=\"3\" stroke-dasharray=\"7 4\"",
        };
        self.mark(&format!(
            "<line x1=\"{x1}\" y1=\"{y1}\" x2=\"{x2}\" y2=\"{y2}\" stroke=\"currentColor\" {stroke}/>"
        ));
    }

    pub(crate) fn rect(&mut self, corner: (f64, f64), size: (f64, f64), filled: bool) {
        let (x, y, width, height) = (num(corner.0), num(corner.1), num(size.0), num(size.1));
        let fill = if filled { "currentColor" } else { "none" };
        self.mark(&format!(
            "<rect x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\" fill=\"{fill}\" \
             stroke=\"currentColor\" stroke-width=\"1.5\"/>"
        ));
    }

    /// Filled rectangles without a line around them, each with its corner, width and height.
    pub(crate) fn fill(&mut self, rects: impl IntoIterator<Item = (u32, u32, u32, u32)>) {
        let path = |(x, y, width, height)| format!("M{x} {y}h{width}v{height}h-{width}z");
        let path: String = rects.into_iter().map(path).collect();
        self.mark(&format!(
            "<path fill=\"currentColor\" shape-rendering=\"crispEdges\" d=\"{path}\"/>"
        ));
    }

    pub(crate) fn ring(&mut self, centre: (f64, f64), radius: f64) {
        let (x, y, r) = (num(centre.0), num(centre.1), num(radius));
        self.mark(&format!(
            "<circle cx=\"{x}\" cy=\"{y}\" r=\"{r}\" fill=\"#ffffff\" stroke=\"currentColor\" \
             stroke-width=\"2\"/>"
        ));
    }

    /// An arrow to a place, with a word at its tail.
    pub(crate) fn arrow(&mut self, tail: path::Point, to: path::Point, word: &str) {
        let way = to - tail;
        let unit = way * (1.0 / way.length().max(1.0));
        let start = tail + unit * 11.0;
        self.line((start.x, start.y), (to.x, to.y), Stroke::Arrow);
        let back = to - unit * 9.0;
        let out = unit.across() * 4.5;
        let head = path::Path::straight(&[to, back + out, back - out]).close();
        let (line, ink) = (head.written(), plant::Ink::Vein);
        self.strokes(&[Stroked { line, ink, fill: plant::Fill::Solid }]);
        self.ring((tail.x, tail.y), 11.0);
        self.words((tail.x, tail.y + LETTERS * 0.35), Hold::Middle, word);
    }

    /// Makes it so tall.
    pub(crate) fn reach_down(&mut self, height: u32) {
        self.size.1 = height;
    }

    /// Lines already written in the letters of SVG, from back to front.
    pub(crate) fn strokes(&mut self, strokes: &[Stroked]) {
        self.mark(
            "<g fill=\"#ffffff\" stroke=\"currentColor\" stroke-width=\"2.2\" \
             stroke-linejoin=\"round\" stroke-linecap=\"round\">",
        );
        for Stroked { line, ink, fill } in strokes {
            let fill = match fill {
                plant::Fill::Open => " fill=\"none\"",
                plant::Fill::Paper => "",
                plant::Fill::Solid => " fill=\"currentColor\"",
            };
            let ink = match ink {
                plant::Ink::Outline => "",
                plant::Ink::Vein => " stroke-width=\"1.4\"",
                plant::Ink::Untold => " stroke-width=\"1.6\" stroke-dasharray=\"5 4\"",
            };
            self.mark(&format!("<path d=\"{line}\"{fill}{ink}/>"));
        }
        self.mark("</g>");
    }

    /// Words over as many lines as they need between two sides. Gives the height of the last.
    pub(crate) fn lines(&mut self, left: f64, right: f64, top: f64, words: &str) -> f64 {
        let direction = Direction::of_words(words);
        let (start, hold) = match direction {
            Direction::LeftToRight => (left, Hold::Start),
            Direction::RightToLeft => (right, Hold::End),
        };
        let mut y = top;
        for line in broken(words, right - left) {
            y += LINE;
            self.words((start, y - LINE + LETTERS), hold, &direction.line(&line));
        }
        y
    }

    pub(crate) fn words(&mut self, at: (f64, f64), hold: Hold, words: &str) {
        self.lettering(at, hold, words, "currentColor");
    }

    /// Words on a filled mark.
    pub(crate) fn words_on_ink(&mut self, at: (f64, f64), words: &str) {
        self.lettering(at, Hold::Middle, words, "#ffffff");
    }

    fn lettering(&mut self, at: (f64, f64), hold: Hold, words: &str, colour: &str) {
        let (x, y) = (num(at.0), num(at.1));
        let hold = match hold {
            Hold::Start => "start",
            Hold::Middle => "middle",
            Hold::End => "end",
        };
        let words = escape(&Direction::LeftToRight.isolated(&clean(words)));
        self.mark(&format!(
            "<text x=\"{x}\" y=\"{y}\" text-anchor=\"{hold}\" fill=\"{colour}\">{words}</text>"
        ));
    }

    fn mark(&mut self, mark: &str) {
        self.marks.push_str(mark);
        self.marks.push('\n');
    }

    /// The drawing as an SVG element, whose parts are named after `id`.
    #[must_use]
    pub fn svg(&self, id: &str) -> String {
        self.svg_in(id, "system-ui, sans-serif")
    }

    /// The same, its letters in this font.
    #[must_use]
    pub fn svg_in(&self, id: &str, font: &str) -> String {
        let (width, height) = self.size;
        let size = self.width_mm().map_or_else(String::new, |width| self.millimetres(width));
        let (title, describes) = (escape(&self.title), escape(&self.describes));
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" \
             aria-labelledby=\"{id}-title {id}-desc\" viewBox=\"0 0 {width} {height}\"{size} \
             direction=\"ltr\" font-family=\"{font}\" font-size=\"{LETTERS}\">\n\
             <title id=\"{id}-title\">{title}</title>\n<desc id=\"{id}-desc\">{describes}</desc>\n\
             {}</svg>",
            self.marks
        )
    }

    fn millimetres(&self, width: f64) -> String {
        let class = if self.true_to_size { "true-size" } else { "drawn" };
        let height = width * f64::from(self.size.1) / f64::from(self.size.0.max(1));
        let (width, height) = (hundredths(width), hundredths(height));
        format!(" class=\"{class}\" width=\"{width}mm\" height=\"{height}mm\"")
    }
}

/// A coordinate with one decimal at most: finer than any printer, the same on every machine.
fn num(value: f64) -> String {
    let tenths = (value * 10.0).round() / 10.0 + 0.0;
    format!("{tenths}")
}

/// Millimetres as finely as a printer can tell them.
fn hundredths(mm: f64) -> String {
    let rounded = (mm * 100.0).round() / 100.0;
    format!("{rounded}")
}

/// Words in lines that fit a width. The letters of whatever font is at hand are taken as wide: half
/// their height and a little more.
fn broken(words: &str, width: f64) -> Vec<String> {
    let most = (width / LETTER).max(1.0) as usize;
    let mut lines: Vec<String> = Vec::new();
    for word in words.split(' ') {
        match lines.last_mut() {
            Some(line) if line.chars().count() + 1 + word.chars().count() <= most => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

/// How far words reach, at most.
pub(crate) fn reach(words: &str) -> f64 {
    words.chars().count() as f64 * LETTER
}

fn escape(words: &str) -> String {
    words.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_drawing_names_itself_and_escapes_its_words() {
        let mut drawing = Drawing::new("Tea & <b>", "Twelve \"boxes\"", 100, 50);
        drawing.words((1.0, 2.04), Hold::Start, "<script>");
        let svg = drawing.svg("figure-1");
        assert!(svg.contains("aria-labelledby=\"figure-1-title figure-1-desc\""));
        assert!(svg.contains("Tea &amp; &lt;b&gt;") && svg.contains("&lt;script&gt;"));
        assert!(!svg.contains("<script>"));
    }

    #[test]
    fn words_go_on_in_the_next_line() {
        let mut drawing = Drawing::new("", "", 100, 50);
        let below = drawing.lines(0.0, 90.0, 5.0, "half a litre of tea");
        assert_eq!(below, 5.0 + 3.0 * LINE);
        let said: Vec<_> =
            drawing.marks.lines().filter_map(|l| l.split(['>', '<']).nth(2)).collect();
        assert_eq!(said, ["half a", "litre of", "tea"]);
    }

    #[test]
    fn a_line_that_runs_leftward_starts_at_the_right() {
        let mut drawing = Drawing::new("", "", 100, 50);
        drawing.lines(8.0, 92.0, 5.0, "נועה Ida");
        let said = "<text x=\"92\" y=\"21\" text-anchor=\"end\" fill=\"currentColor\">";
        assert_eq!(drawing.marks, format!("{said}\u{2067}נועה Ida\u{2069}</text>\n"));
    }

    #[test]
    fn coordinates_have_one_decimal_and_no_minus_zero() {
        assert_eq!([num(-0.01), num(1.26), num(3.0)], ["0", "1.3", "3"]);
    }
}
