//! Hairs, scales and what else stands on a surface, one at a time.

use super::{Fill, Ink, Sketch, lens};
use crate::svg::path::{Path, Point, at};

/// What stands on a surface.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Hair {
    /// A plain hair that bends.
    Soft,
    /// A stiff bristle, thick at its foot.
    Bristle,
    /// A hair with a sticky head.
    Glandular,
    /// A hair with side arms, like a small tree.
    Branched,
    /// A long hair that lies flat.
    Flat,
    /// A hollow needle on a swollen foot.
    Sting,
    /// Arms like a star on a short foot.
    Star,
    /// A small shield on a foot.
    Scale,
    /// A short stiff point.
    Point,
}

impl Hair {
    /// One from its foot at the origin upwards, as long as 1.
    pub(super) fn sketch(self) -> Sketch {
        let mut s = Sketch::default();
        let o = at(0.0, 0.0);
        match self {
            Self::Soft => s.thread(&[o, at(0.05, 0.4), at(0.0, 0.7), at(-0.16, 1.0)], Ink::Vein),
            Self::Bristle => s.add(thorn(0.11, at(0.0, 1.0)), Ink::Vein, Fill::Solid),
            Self::Glandular => {
                s.straight(o, at(0.0, 0.8), Ink::Vein);
                s.dot(at(0.0, 0.88), 0.15);
            }
            Self::Branched => {
                s.straight(o, at(0.0, 0.95), Ink::Vein);
                for (y, x, up) in
                    [(0.3, 0.36, 0.3), (0.42, -0.34, 0.3), (0.62, 0.26, 0.3), (0.7, -0.22, 0.26)]
                {
                    s.straight(at(0.0, y), at(x, y + up), Ink::Vein);
                }
            }
            Self::Flat => {
                s.thread(&[o, at(0.22, 0.14), at(0.6, 0.16), at(1.0, 0.08)], Ink::Vein);
            }
            Self::Sting => {
                s.part(Path::ellipse(at(0.0, 0.12), 0.2, 0.22), Ink::Vein);
                let needle = Path::from(at(-0.1, 0.3)).line(at(0.0, 1.0)).line(at(0.1, 0.3));
                s.part(needle, Ink::Vein);
            }
            Self::Star => {
                for turn in [15.0, 60.0, 105.0, 150.0, 200.0, 250.0, 290.0, 335.0] {
                    s.straight(at(0.0, 0.4), at(0.0, 0.4) + Point::polar(0.48, turn), Ink::Vein);
                }
                s.straight(o, at(0.0, 0.4), Ink::Vein);
            }
            Self::Scale => {
                s.straight(o, at(0.0, 0.4), Ink::Vein);
                s.part(Path::ellipse(at(0.0, 0.5), 0.5, 0.16), Ink::Vein);
                for x in [-0.22, 0.0, 0.22] {
                    s.straight(at(x * 0.4, 0.48), at(x * 1.5, 0.58), Ink::Vein);
                }
            }
            Self::Point => s.part(thorn(0.24, at(0.1, 0.6)), Ink::Vein),
        }
        s
    }

    /// One with its foot there, so long, pointing in a direction in degrees.
    pub(super) fn placed(self, foot: Point, long: f64, degrees: f64) -> Sketch {
        self.sketch().placed(foot, long, degrees - 90.0)
    }
}

/// A straight-sided point on a foot at the origin.
fn thorn(half: f64, tip: Point) -> Path {
    Path::straight(&[at(-half, 0.0), tip, at(half, 0.0)]).close()
}

/// A tangle of short curls: felt.
pub(super) fn felt(s: &mut Sketch, points: &[Point], size: f64) {
    for (index, point) in points.iter().enumerate() {
        let turn = 67.0 * index as f64;
        let curl = |x: f64, y: f64| *point + at(x, y).turned(turn) * size;
        let path = Path::from(curl(-0.5, -0.2))
            .cubic(curl(0.1, -0.7), curl(0.7, 0.3), curl(0.0, 0.35))
            .quad(curl(-0.4, 0.3), curl(-0.2, 0.0));
        s.stroke(path, Ink::Vein);
    }
}

/// Grains, as of meal: small rings and dots by turns.
pub(super) fn meal(s: &mut Sketch, points: &[Point], size: f64) {
    for (index, point) in points.iter().enumerate() {
        if index % 3 == 0 {
            s.part(Path::ellipse(*point, size, size), Ink::Vein);
        } else {
            s.dot(*point, size * 0.5);
        }
    }
}

/// A drop that hangs from a point.
pub(super) fn drop(s: &mut Sketch, top: Point, size: f64) {
    let p = |x: f64, y: f64| top + at(x, y) * size;
    let path = Path::from(top).cubic(p(0.1, -0.4), p(0.45, -0.6), p(0.0, -1.1)).cubic(
        p(-0.45, -0.6),
        p(-0.1, -0.4),
        top,
    );
    s.add(path.close(), Ink::Vein, Fill::Paper);
}

/// A spindle-shaped blot.
pub(super) fn blot(s: &mut Sketch, centre: Point, size: f64, degrees: f64) {
    let half = Point::polar(size, degrees);
    s.add(lens(centre - half, centre + half, 0.3), Ink::Vein, Fill::Solid);
}
