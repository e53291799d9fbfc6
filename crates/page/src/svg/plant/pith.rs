//! A twig split lengthwise.

use super::tone::Area;
use super::{Ink, PithForm, Sketch};
use crate::svg::path::{Path, at};

pub(super) fn sketch(form: PithForm) -> Sketch {
    let mut s = Sketch::default();
    for (y, side) in [(-0.62, 1.0), (0.5, -1.0)] {
        s.lens(at(0.42 * side, y), at(0.78 * side, y + 0.36), 0.28);
    }
    let rail = |x: f64| Path::straight(&[at(x, -1.1), at(x, 1.1)]);
    let strip = |x: f64| rail(x).then(&rail(-x).reversed());
    s.part(strip(0.48), Ink::Outline);
    let wood = Path::straight(&[at(0.26, -1.1), at(0.48, -1.1), at(0.48, 1.1), at(0.26, 1.1)]);
    for (a, b) in Area::within(&wood.close()).lines(0.13, 62.0) {
        s.straight(a, b, Ink::Vein);
        s.straight(a.mirrored(), b.mirrored(), Ink::Vein);
    }
    let pith = strip(0.26);
    s.part(pith.clone(), Ink::Outline);
    match form {
        PithForm::Continuous => {
            Area::within(&pith.close()).shrunk(0.92).points(0.1).into_iter().for_each(|p| {
                s.dot(p, 0.02);
            });
        }
        PithForm::Chambered => {
            for step in 0..12 {
                let y = -0.99 + 0.18 * f64::from(step);
                s.stroke(
                    Path::from(at(-0.26, y)).quad(at(0.0, y + 0.05), at(0.26, y)),
                    Ink::Outline,
                );
            }
        }
        PithForm::DiaphragmAtNode => {
            for y in [-0.62, 0.5] {
                let wall = [
                    at(-0.26, y - 0.06),
                    at(0.26, y - 0.06),
                    at(0.26, y + 0.06),
                    at(-0.26, y + 0.06),
                ];
                s.part(Path::straight(&wall), Ink::Outline);
                for x in [-0.16, -0.05, 0.06, 0.17] {
                    s.straight(at(x, y - 0.05), at(x + 0.04, y + 0.05), Ink::Vein);
                }
            }
        }
    }
    s
}
