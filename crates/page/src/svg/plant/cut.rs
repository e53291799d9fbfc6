//! Stems and narrow leaves cut across.

use super::{Ink, LeafSection, Sketch, StemInterior, StemSection};
use crate::svg::path::{Path, Point, at};

/// What is told of a stem cut across.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct StemCut {
    pub(crate) section: Option<StemSection>,
    pub(crate) interior: Option<StemInterior>,
}

/// What is told of a narrow leaf cut across.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct LeafCut {
    pub(crate) section: Option<LeafSection>,
}

impl StemCut {
    /// A piece of stem with its cut end towards the eye; none where its form is not told.
    pub(crate) fn sketch(&self) -> Option<Sketch> {
        let outline = stem_outline(self.section?);
        let mut sketch = Sketch::default();
        // The cut lies aslant, as a stem held in the hand is seen.
        let lie = |p: Point| at(p.x, p.y * 0.72);
        let (left, right) = edges(&outline, lie);
        let barrel = Path::straight(&[left, left - at(0.0, 1.7), right - at(0.0, 1.7), right]);
        sketch.part(barrel, Ink::Outline);
        for corner in ridges(self.section?) {
            let top = lie(corner);
            if top.y < 0.1 {
                sketch.stroke(Path::straight(&[top, top - at(0.0, 1.66)]), Ink::Vein);
            }
        }
        sketch.part(outline.map(lie), Ink::Outline);
        let within = |share: f64| outline.map(|p| lie(p * share));
        match self.interior {
            Some(StemInterior::Hollow) => {
                sketch.part(within(0.68), Ink::Outline);
                // The shade on the far wall within.
                for x in [-0.36, -0.24, -0.12, 0.0, 0.12, 0.24, 0.36] {
                    let top = 0.3 - x * x * 0.9;
                    sketch.stroke(Path::straight(&[at(x, top), at(x, top - 0.16)]), Ink::Vein);
                }
            }
            Some(StemInterior::Pithy) => {
                sketch.part(within(0.68), Ink::Vein);
                dots(&mut sketch, 0.42);
            }
            Some(StemInterior::Solid) => dots(&mut sketch, 0.68),
            None => {}
        }
        sketch.spot("stem_section", at(0.5, 0.5));
        sketch.spot("stem_interior", at(0.0, 0.1));
        Some(sketch)
    }
}

/// Dots within a round: cells, close together.
fn dots(sketch: &mut Sketch, reach: f64) {
    for (ring, count) in [(0.0, 1), (0.34, 6), (0.67, 11), (1.0, 16)] {
        for index in 0..count {
            let turn = 360.0 * f64::from(index) / f64::from(count) + ring * 40.0;
            let p = Point::polar(ring * reach, turn);
            sketch.dot(at(p.x, p.y * 0.72), 0.026);
        }
    }
}

/// The outermost points to the left and to the right.
fn edges(outline: &Path, lie: impl Fn(Point) -> Point) -> (Point, Point) {
    let points: Vec<_> = outline.map(lie).points().collect();
    let least = points.iter().copied().min_by(|a, b| a.x.total_cmp(&b.x));
    let most = points.iter().copied().max_by(|a, b| a.x.total_cmp(&b.x));
    (least.unwrap_or(at(-1.0, 0.0)), most.unwrap_or(at(1.0, 0.0)))
}

/// A form with corners so many and so sharp: 0 is a circle.
fn cornered(corners: i32, sharp: f64, turn: f64) -> Path {
    let count = corners * 8;
    let point = |index: i32| {
        let degrees = 360.0 * f64::from(index) / f64::from(count);
        let wave = libm::cos((degrees * f64::from(corners)).to_radians());
        Point::polar(1.0 - sharp + sharp * wave, degrees + turn)
    };
    Path::round(&(0..count).map(point).collect::<Vec<_>>())
}

fn stem_outline(section: StemSection) -> Path {
    match section {
        StemSection::Round => Path::ellipse(at(0.0, 0.0), 0.9, 0.9),
        StemSection::Ridged => cornered(11, 0.06, 8.0),
        StemSection::Square => cornered(4, 0.14, 22.0),
        StemSection::Triangular => cornered(3, 0.17, -68.0),
        StemSection::Flattened => Path::ellipse(at(0.0, 0.0), 0.95, 0.5),
        StemSection::HalfRound => Path::from(at(0.9, 0.25))
            .cubic(at(0.8, -0.95), at(-0.8, -0.95), at(-0.9, 0.25))
            .quad(at(0.0, 0.38), at(0.9, 0.25))
            .close(),
        StemSection::TwoEdged => Path::from(at(1.0, 0.0))
            .cubic(at(0.55, 0.5), at(-0.55, 0.5), at(-1.0, 0.0))
            .cubic(at(-0.55, -0.5), at(0.55, -0.5), at(1.0, 0.0))
            .close(),
    }
}

/// Corners from which lines run down the stem.
fn ridges(section: StemSection) -> Vec<Point> {
    let corners = |count: i32, far: f64, turn: f64| {
        (0..count)
            .map(move |i| Point::polar(far, turn + 360.0 * f64::from(i) / f64::from(count)))
            .collect()
    };
    match section {
        StemSection::Ridged => corners(11, 1.0, 8.0),
        StemSection::Square => corners(4, 1.0, 22.0),
        StemSection::Triangular => corners(3, 1.0, -68.0),
        _ => Vec::new(),
    }
}

impl LeafCut {
    /// The cut end of a narrow leaf, its upper side on top.
    pub(crate) fn sketch(&self) -> Option<Sketch> {
        let mut sketch = Sketch::default();
        let section = self.section?;
        let outline = match section {
            LeafSection::Flat => {
                Path::round(&[at(-1.0, 0.0), at(0.0, 0.06), at(1.0, 0.0), at(0.0, -0.06)])
            }
            LeafSection::Channelled => Path::from(at(-1.0, 0.5))
                .cubic(at(-0.6, -0.2), at(0.6, -0.2), at(1.0, 0.5))
                .cubic(at(0.8, -0.7), at(-0.8, -0.7), at(-1.0, 0.5)),
            LeafSection::Tube => Path::ellipse(at(0.0, 0.0), 0.8, 0.8),
            LeafSection::HalfRound => Path::from(at(-0.95, 0.25)).line(at(0.95, 0.25)).cubic(
                at(0.85, -0.85),
                at(-0.85, -0.85),
                at(-0.95, 0.25),
            ),
            LeafSection::Triangular => {
                Path::straight(&[at(-0.95, 0.35), at(0.95, 0.35), at(0.0, -0.75)])
            }
            LeafSection::MidribRidged => Path::from(at(-1.0, 0.05))
                .cubic(at(-0.5, 0.1), at(-0.3, 0.1), at(0.0, 0.1))
                .cubic(at(0.3, 0.1), at(0.5, 0.1), at(1.0, 0.05))
                .quad(at(0.3, -0.04), at(0.16, -0.12))
                .quad(at(0.0, -0.42), at(-0.16, -0.12))
                .quad(at(-0.3, -0.04), at(-1.0, 0.05)),
        };
        sketch.part(outline, Ink::Outline);
        match section {
            LeafSection::Tube => sketch.part(Path::ellipse(at(0.0, 0.0), 0.58, 0.58), Ink::Outline),
            _ => bundles(&mut sketch, section),
        }
        sketch.spot("leaf_section", at(0.0, 0.1));
        Some(sketch)
    }
}

/// The veins as dots in the cut.
fn bundles(sketch: &mut Sketch, section: LeafSection) {
    let spread: &[(f64, f64)] = match section {
        LeafSection::Channelled => {
            &[(0.0, -0.2), (-0.38, -0.12), (0.38, -0.12), (-0.7, 0.1), (0.7, 0.1)]
        }
        LeafSection::HalfRound => &[(0.0, -0.2), (-0.4, -0.1), (0.4, -0.1)],
        LeafSection::Triangular => &[(0.0, -0.3), (-0.4, 0.15), (0.4, 0.15)],
        LeafSection::MidribRidged => &[(0.0, -0.1)],
        _ => &[],
    };
    for (x, y) in spread {
        sketch.dot(at(*x, *y), 0.045);
    }
}
