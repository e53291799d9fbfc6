//! Plants as line drawings, made from the states of their characters.
//!
//! Each drawing is a [`Sketch`]: strokes in units of their own, y upwards, from what lies behind to
//! what lies in front; a filled stroke hides what is behind it. Then it is fitted into its frame.
//! Dashed means: not told. No drawing is true to scale, and none is evidence.

mod alone;
mod bark;
mod bracts;
mod bud;
mod climb;
mod cone;
mod cut;
mod dry;
mod edge;
mod face;
mod flower;
mod flowers;
mod fruit;
mod fruit_face;
mod habit;
mod hair;
mod leaf;
mod needle;
mod node;
mod outline;
mod picked;
mod pith;
mod root;
mod seed;
mod shoot;
mod stand;
mod states;
mod stem;
mod tone;
mod umbel;
mod underside;
mod veins;
mod whole;

pub(crate) use alone::alone;
pub(crate) use cut::{LeafCut, StemCut};
pub(crate) use flowers::FlowerStand;
pub(crate) use fruit::Fruit;
pub(crate) use leaf::Leaf;
pub(crate) use needle::Needle;
pub(crate) use shoot::Twig;
pub(crate) use stand::Stand;
pub(crate) use states::*;
pub(crate) use whole::Whole;

/// The outline of a woody plant, or of a climber.
pub(crate) fn outline_of(habit: Habit) -> Sketch {
    let mut sketch = habit::habit(habit);
    let (low, high) = sketch.bounds();
    sketch.spot(Habit::CHARACTER, low.towards(high, 0.6));
    sketch
}

use super::path::{Path, Point, at};
use super::{Drawing, Stroked};

/// How a stroke of a sketch is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Ink {
    /// The edge of a part.
    Outline,
    /// A vein, a fold, a seam.
    Vein,
    /// What is not told.
    Untold,
}

/// What lies within a stroke.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Fill {
    Open,
    /// White, which hides what is behind.
    Paper,
    Solid,
}

#[derive(Clone, Debug, PartialEq)]
struct Mark {
    path: Path,
    ink: Ink,
    fill: Fill,
}

/// Strokes from back to front.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Sketch {
    marks: Vec<Mark>,
    /// Where a character is seen.
    spots: Vec<(&'static str, Point)>,
    /// It has a part of its frame only: a detail of a few lines.
    small: bool,
}

impl Sketch {
    fn add(&mut self, path: Path, ink: Ink, fill: Fill) {
        self.marks.push(Mark { path, ink, fill });
    }

    fn stroke(&mut self, path: Path, ink: Ink) {
        self.add(path, ink, Fill::Open);
    }

    /// A part that hides what is behind it.
    fn part(&mut self, path: Path, ink: Ink) {
        self.add(path.close(), ink, Fill::Paper);
    }

    /// A dot, so large in the units of the sketch.
    fn dot(&mut self, centre: Point, radius: f64) {
        self.add(Path::ellipse(centre, radius, radius), Ink::Vein, Fill::Solid);
    }

    fn ball(&mut self, centre: Point, radius: f64) {
        self.part(Path::ellipse(centre, radius, radius), Ink::Outline);
    }

    /// A smooth line through these.
    fn thread(&mut self, points: &[Point], ink: Ink) {
        self.stroke(Path::smooth(points), ink);
    }

    /// A straight line from one to the other.
    fn straight(&mut self, from: Point, to: Point, ink: Ink) {
        self.stroke(Path::straight(&[from, to]), ink);
    }

    /// A part that narrows to both ends, such as a small leaf: `plump` is its half breadth as a share
    /// of its length.
    fn lens(&mut self, foot: Point, tip: Point, plump: f64) {
        self.part(lens(foot, tip, plump), Ink::Outline);
    }

    /// A stalk with two sides: as wide at its foot and top as these say.
    fn stalk(&mut self, line: &[Point], foot: f64, top: f64) {
        let last = line.len().saturating_sub(1).max(1) as f64;
        let side = |out: f64| -> Vec<Point> {
            let ways = line.windows(2).filter_map(|pair| match pair {
                [a, b] => Some((*b - *a).across()),
                _ => None,
            });
            let ways: Vec<_> = ways.collect();
            let way = |index: usize| ways.get(index).or(ways.last()).copied();
            let shifted = line.iter().enumerate().filter_map(|(index, point)| {
                let before = way(index.saturating_sub(1))?;
                let wide = foot + (top - foot) * index as f64 / last;
                Some(*point + (before + way(index)?) * (0.25 * wide * out))
            });
            shifted.collect()
        };
        let (left, right) = (Path::smooth(&side(1.0)), Path::smooth(&side(-1.0)));
        self.part(left.then(&right.reversed()), Ink::Outline);
    }

    fn spot(&mut self, character: &'static str, point: Point) {
        self.spots.push((character, point));
    }

    /// Lays another sketch over this one.
    fn over(&mut self, other: Self) {
        self.marks.extend(other.marks);
        self.spots.extend(other.spots);
    }

    fn without_spots(mut self) -> Self {
        self.spots.clear();
        self
    }

    fn map(&self, to: impl Fn(Point) -> Point) -> Self {
        let mark = |mark: &Mark| Mark { path: mark.path.map(&to), ..mark.clone() };
        Self {
            marks: self.marks.iter().map(mark).collect(),
            spots: self.spots.iter().map(|(id, point)| (*id, to(*point))).collect(),
            small: self.small,
        }
    }

    /// The same, so large, turned so many degrees against the clock, with its origin there.
    fn placed(&self, origin: Point, size: f64, degrees: f64) -> Self {
        let (sin, cos) = libm::sincos(degrees.to_radians());
        self.map(|p| origin + at(p.x * cos - p.y * sin, p.x * sin + p.y * cos) * size)
    }

    fn mirrored(&self) -> Self {
        self.map(Point::mirrored)
    }

    /// The corners between which everything lies: lowest and highest coordinates.
    fn bounds(&self) -> (Point, Point) {
        let all = self.marks.iter().flat_map(|mark| mark.path.points());
        let none = (at(f64::MAX, f64::MAX), at(f64::MIN, f64::MIN));
        all.fold(none, |(low, high), p| {
            (at(low.x.min(p.x), low.y.min(p.y)), at(high.x.max(p.x), high.y.max(p.y)))
        })
    }

    /// The same in the middle of a frame whose y goes downwards, as large as fits.
    fn fitted(&self, corner: Point, size: Point) -> Self {
        let (low, high) = self.bounds();
        let (wide, tall) = ((high.x - low.x).max(1e-6), (high.y - low.y).max(1e-6));
        let share = if self.small { 0.62 } else { 1.0 };
        let scale = (size.x / wide).min(size.y / tall) * share;
        let middle = low.towards(high, 0.5);
        let centre = corner + size * 0.5;
        self.map(|p| at(centre.x + (p.x - middle.x) * scale, centre.y - (p.y - middle.y) * scale))
    }

    /// Draws it into a frame of a drawing, and gives where each character is seen.
    pub(crate) fn draw(
        &self,
        drawing: &mut Drawing,
        corner: Point,
        size: Point,
    ) -> Vec<(&'static str, Point)> {
        let fitted = self.fitted(corner, size);
        let mut strokes: Vec<Stroked> = Vec::new();
        for Mark { path, ink, fill } in &fitted.marks {
            let (line, ink, fill) = (path.written(), *ink, *fill);
            match strokes.last_mut() {
                // Open strokes of one kind that follow one another are one line with several starts.
                Some(last) if fill == Fill::Open && (last.ink, last.fill) == (ink, fill) => {
                    last.line.push_str(&line);
                }
                _ => strokes.push(Stroked { line, ink, fill }),
            }
        }
        drawing.strokes(&strokes);
        fitted.spots
    }
}

/// The outline of what narrows to both ends.
fn lens(foot: Point, tip: Point, plump: f64) -> Path {
    // A quadratic curve lies half as far out as its point.
    let out = (tip - foot).across() * ((tip - foot).length() * plump * 2.0);
    let middle = foot.towards(tip, 0.5);
    Path::from(foot).quad(middle + out, tip).quad(middle - out, foot).close()
}
