//! Stems and narrow leaves cut across.

use super::tone::Area;
use super::{
    Ink, LeafSection, PetioleForm, PetioleInterior, Sketch, StemInterior, StemSection, stand,
};
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
    /// Whether there is a sign in it: most stems are round.
    pub(crate) fn tells(&self) -> bool {
        self.interior.is_some() || self.section != Some(StemSection::Round)
    }

    /// A piece of stem with its cut end towards the eye; none where its form is not told.
    pub(crate) fn sketch(&self) -> Option<Sketch> {
        let outline = stem_outline(self.section?);
        let none = self.interior == Some(StemInterior::NoneAboveGround);
        let Some(outline) = outline.filter(|_| !none) else {
            let mut sketch = stand::stemless();
            sketch.spot("stem_section", at(0.0, 0.1));
            sketch.spot("stem_interior", at(0.0, 0.1));
            return Some(sketch);
        };
        let mut sketch = Sketch::default();
        // The cut lies aslant, as a stem held in the hand is seen.
        let lie = |p: Point| at(p.x, p.y * 0.72);
        let (left, right) = edges(&outline, lie);
        let foot = |x: f64| at(x, -2.3 - 0.1 * (1.0 - x * x));
        let bottom = Path::smooth(&[foot(left.x), foot(0.0), foot(right.x)]);
        sketch.part(Path::from(left).then(&bottom).line(right), Ink::Outline);
        for corner in ridges(self.section?) {
            let top = lie(corner);
            if top.y < 0.1 {
                sketch.stroke(Path::straight(&[top, foot(top.x)]), Ink::Vein);
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
                dots(&mut sketch, self.section?, 0.62);
            }
            Some(StemInterior::Solid) => dots(&mut sketch, self.section?, 1.0),
            Some(StemInterior::NoneAboveGround) | None => {}
        }
        sketch.spot("stem_section", right);
        sketch.spot("stem_interior", at(0.0, 0.1));
        Some(sketch)
    }
}

/// Dots within a form: cells, close together.
fn dots(sketch: &mut Sketch, section: StemSection, share: f64) {
    let (x, y, lower) = match section {
        StemSection::Round | StemSection::Ridged => (0.7, 0.7, 0.0),
        StemSection::Square => (0.56, 0.56, 0.0),
        StemSection::Triangular => (0.38, 0.38, 0.0),
        StemSection::Flattened => (0.8, 0.24, 0.0),
        StemSection::HalfRound => (0.55, 0.28, -0.2),
        StemSection::TwoEdged => (0.6, 0.22, 0.0),
        StemSection::NoneAboveGround => return,
    };
    for (ring, count) in [(0.0, 1), (0.34, 6), (0.67, 11), (1.0, 16)] {
        for index in 0..count {
            let turn = 360.0 * f64::from(index) / f64::from(count) + ring * 40.0;
            let p = Point::polar(ring * share, turn);
            sketch.dot(at(p.x * x, (p.y * y + lower) * 0.72), 0.026);
        }
    }
}

/// The outermost points to the left and to the right.
fn edges(outline: &Path, lie: impl Fn(Point) -> Point) -> (Point, Point) {
    let points: Vec<_> = outline.map(lie).knots().collect();
    let least = points.iter().copied().min_by(|a, b| a.x.total_cmp(&b.x));
    let most = points.iter().copied().max_by(|a, b| a.x.total_cmp(&b.x));
    (least.unwrap_or(at(-1.0, 0.0)), most.unwrap_or(at(1.0, 0.0)))
}

/// A wavy round, with so many ridges.
fn ridged(count: i32) -> Path {
    let point = |index: i32| {
        let degrees = 360.0 * f64::from(index) / f64::from(count * 4);
        let wave = libm::cos((degrees * f64::from(count)).to_radians());
        Point::polar(0.9 + 0.06 * wave, degrees + 8.0)
    };
    Path::round(&(0..count * 4).map(point).collect::<Vec<_>>())
}

/// A form with so many blunt corners and slightly hollow sides, the first corner at an angle.
fn cornered(count: i32, turn: f64) -> Path {
    let corner = |index: i32| Point::polar(1.0, turn + 360.0 * f64::from(index) / f64::from(count));
    let mut path: Option<Path> = None;
    for index in 0..count {
        let (here, next) = (corner(index), corner(index + 1));
        let before = corner(index - 1);
        let (from, to) = (here.towards(before, 0.1), here.towards(next, 0.1));
        let end = next.towards(here, 0.1);
        let path_here = path.take().unwrap_or_else(|| Path::from(from));
        path = Some(path_here.quad(here, to).quad(here.towards(next, 0.5) * 0.9, end));
    }
    path.unwrap_or_else(|| Path::from(at(0.0, 0.0))).close()
}

/// The form of the cut; none where there is no stem to cut.
fn stem_outline(section: StemSection) -> Option<Path> {
    Some(match section {
        StemSection::NoneAboveGround => return None,
        StemSection::Round => Path::ellipse(at(0.0, 0.0), 0.9, 0.9),
        StemSection::Ridged => ridged(11),
        StemSection::Square => cornered(4, 25.0),
        StemSection::Triangular => cornered(3, -75.0),
        StemSection::Flattened => Path::ellipse(at(0.0, 0.0), 1.0, 0.36),
        StemSection::HalfRound => Path::from(at(0.9, 0.25))
            .cubic(at(0.8, -0.95), at(-0.8, -0.95), at(-0.9, 0.25))
            .quad(at(0.0, 0.38), at(0.9, 0.25))
            .close(),
        StemSection::TwoEdged => Path::from(at(1.05, 0.0))
            .quad(at(0.0, 0.9), at(-1.05, 0.0))
            .quad(at(0.0, -0.9), at(1.05, 0.0))
            .close(),
    })
}

/// Corners from which lines run down the stem.
fn ridges(section: StemSection) -> Vec<Point> {
    let corners = |count: i32, far: f64, turn: f64| {
        (0..count)
            .map(move |i| Point::polar(far, turn + 360.0 * f64::from(i) / f64::from(count)))
            .collect()
    };
    match section {
        StemSection::Ridged => corners(11, 0.95, 8.0),
        StemSection::Square => corners(4, 0.93, 25.0),
        StemSection::Triangular => corners(3, 0.9, -75.0),
        _ => Vec::new(),
    }
}

/// A leaf stalk cut across, its upper side on top, with its strands.
pub(super) fn petiole(form: PetioleForm) -> Sketch {
    let mut s = Sketch::default();
    let (outline, strands): (Path, &[(f64, f64)]) = match form {
        PetioleForm::Round => {
            (Path::ellipse(at(0.0, 0.0), 0.8, 0.8), &[(0.0, -0.5), (0.46, 0.2), (-0.46, 0.2)])
        }
        PetioleForm::Channelled => (
            Path::from(at(-0.34, 0.74))
                .cubic(at(-0.95, 0.7), at(-1.0, -0.8), at(0.0, -0.8))
                .cubic(at(1.0, -0.8), at(0.95, 0.7), at(0.34, 0.74))
                .cubic(at(0.24, 0.1), at(-0.24, 0.1), at(-0.34, 0.74)),
            &[(0.0, -0.48), (0.46, -0.1), (-0.46, -0.1)],
        ),
        PetioleForm::Winged => (
            Path::from(at(-1.25, 0.3))
                .quad(at(-0.8, 0.24), at(-0.5, 0.2))
                .quad(at(0.0, 0.36), at(0.5, 0.2))
                .quad(at(0.8, 0.24), at(1.25, 0.3))
                .quad(at(0.8, 0.1), at(0.52, 0.04))
                .cubic(at(0.5, -0.75), at(-0.5, -0.75), at(-0.52, 0.04))
                .quad(at(-0.8, 0.1), at(-1.25, 0.3)),
            &[(0.0, -0.3), (0.28, -0.06), (-0.28, -0.06)],
        ),
        PetioleForm::Triangular => {
            (cornered(3, -90.0), &[(0.0, -0.5), (0.42, 0.22), (-0.42, 0.22)])
        }
        PetioleForm::Flattened => {
            (Path::ellipse(at(0.0, 0.0), 0.26, 0.9), &[(0.0, -0.55), (0.0, 0.0), (0.0, 0.55)])
        }
    };
    s.part(outline, Ink::Outline);
    for (x, y) in strands {
        s.part(Path::ellipse(at(*x, *y), 0.11, 0.11), Ink::Vein);
        s.dot(at(*x, *y), 0.035);
    }
    s.small = true;
    s
}

/// A leaf stalk cut across near its foot: what is within.
pub(super) fn petiole_interior(interior: PetioleInterior) -> Sketch {
    let mut s = Sketch::default();
    let stalk = Path::from(at(-0.62, 0.0))
        .line(at(-0.7, -1.7))
        .quad(at(0.0, -2.0), at(0.7, -1.7))
        .line(at(0.62, 0.0));
    s.part(stalk, Ink::Outline);
    let cut = |share: f64| Path::ellipse(at(0.0, 0.0), 0.62 * share, 0.34 * share);
    s.part(cut(1.0), Ink::Outline);
    match interior {
        PetioleInterior::Hollow => s.add(cut(0.66), Ink::Outline, super::Fill::Solid),
        PetioleInterior::Solid => {
            Area::within(&cut(0.86)).points(0.14).into_iter().for_each(|p| s.dot(p, 0.022));
        }
    }
    s
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
        sketch.small = true;
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
