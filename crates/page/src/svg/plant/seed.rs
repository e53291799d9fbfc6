//! Loose nuts and seeds.

use super::{Ink, NutTip, SeedShape, Sketch};
use crate::svg::path::{Path, Point, at};

/// The nut of which nothing is asked.
pub(super) const NUT: NutTip = NutTip::Pointed;

/// A nut with its pale scar below.
pub(super) fn nut(tip: NutTip) -> Sketch {
    let mut s = Sketch::default();
    let top = if tip == NutTip::Pointed { 0.98 } else { 0.8 };
    let right = Path::from(at(0.0, -0.7)).cubic(at(0.5, -0.72), at(0.72, -0.3), at(0.66, 0.1));
    let right = match tip {
        NutTip::Pointed => right.cubic(at(0.6, 0.5), at(0.14, 0.6), at(0.0, top)),
        NutTip::Tufted | NutTip::None => right.cubic(at(0.6, 0.56), at(0.36, top), at(0.0, top)),
    };
    if tip == NutTip::Tufted {
        for turn in [-42.0, -26.0, -10.0, 8.0, 24.0, 40.0] {
            let foot = at(turn * 0.003, top - 0.02);
            s.straight(foot, foot + Point::polar(0.3, 90.0 - turn), Ink::Outline);
        }
    }
    s.part(right.clone().then(&right.mirrored().reversed()), Ink::Outline);
    let scar = Path::from(at(-0.5, -0.46)).quad(at(0.0, -0.28), at(0.5, -0.46));
    s.stroke(scar, Ink::Outline);
    for x in [-0.3, 0.0, 0.3] {
        s.thread(&[at(x, -0.3), at(x * 1.2, 0.06), at(x * 0.7, 0.5)], Ink::Vein);
    }
    s
}

/// The nut by itself, smaller than its frame.
pub(super) fn loose_nut(tip: NutTip) -> Sketch {
    let mut s = nut(tip);
    s.small = true;
    s
}

pub(super) fn seed(shape: SeedShape) -> Sketch {
    let mut s = Sketch::default();
    match shape {
        SeedShape::Crescent => {
            let moon = Path::from(at(-0.3, 0.9))
                .cubic(at(0.75, 0.8), at(0.75, -0.8), at(-0.3, -0.9))
                .cubic(at(0.22, -0.5), at(0.22, 0.5), at(-0.3, 0.9));
            s.part(moon, Ink::Outline);
            for y in [-0.4, -0.13, 0.13, 0.4] {
                s.straight(at(0.24 - y * y * 0.5, y), at(0.38 - y * y * 0.5, y), Ink::Vein);
            }
        }
        SeedShape::PearShaped => {
            let right = Path::from(at(0.0, 0.95))
                .cubic(at(0.22, 0.9), at(0.12, 0.3), at(0.4, 0.0))
                .cubic(at(0.74, -0.4), at(0.4, -0.86), at(0.0, -0.86));
            s.part(right.clone().then(&right.mirrored().reversed()), Ink::Outline);
            glint(&mut s, at(-0.34, -0.4));
        }
        SeedShape::Rounded => {
            s.ball(at(0.0, 0.0), 0.8);
            glint(&mut s, at(-0.5, 0.1));
            s.part(Path::ellipse(at(0.2, -0.5), 0.12, 0.05), Ink::Vein);
        }
        SeedShape::Flattened => {
            // From its face, and beside it from its edge.
            s.part(Path::ellipse(at(-0.34, 0.0), 0.62, 0.8), Ink::Outline);
            s.stroke(Path::ellipse(at(-0.34, 0.0), 0.46, 0.62), Ink::Vein);
            s.lens(at(0.74, -0.8), at(0.74, 0.8), 0.09);
        }
        SeedShape::ThreeAngled => {
            let side = |x: f64| {
                Path::from(at(0.0, 0.95)).cubic(at(x, 0.5), at(x, -0.4), at(x * 0.3, -0.85))
            };
            s.part(side(0.95).then(&side(-0.95).reversed()), Ink::Outline);
            s.thread(&[at(0.0, 0.92), at(0.16, 0.1), at(0.06, -0.85)], Ink::Outline);
            for y in [-0.4, -0.1, 0.2] {
                s.straight(at(0.24, y), at(0.46, y + 0.1), Ink::Vein);
            }
        }
    }
    s.small = true;
    s
}

fn glint(s: &mut Sketch, p: Point) {
    s.stroke(Path::from(p).quad(p + at(0.02, 0.3), p + at(0.22, 0.46)), Ink::Vein);
}
