//! One flower from in front, with the lines in which its halves are alike.

use super::{Ink, Sketch, Symmetry};
use crate::svg::path::{Path, Point, at};

pub(super) fn sketch(symmetry: Symmetry) -> Sketch {
    let mut s = Sketch::default();
    match symmetry {
        Symmetry::Radial => {
            for step in 0..5 {
                axis(&mut s, 90.0 + 72.0 * f64::from(step));
            }
            for step in 0..5 {
                petal(&mut s, at(0.0, 0.0), 90.0 + 72.0 * f64::from(step), 0.8, 0.36);
            }
            s.ball(at(0.0, 0.0), 0.16);
        }
        Symmetry::Bilateral => {
            axis(&mut s, 90.0);
            for turn in [68.0, 112.0] {
                petal(&mut s, at(0.0, 0.05), turn, 0.78, 0.3);
            }
            for turn in [-4.0, 184.0] {
                petal(&mut s, at(0.0, 0.05), turn, 0.66, 0.28);
            }
            lip(&mut s);
            s.part(Path::ellipse(at(0.0, 0.02), 0.1, 0.14), Ink::Outline);
        }
    }
    s
}

/// A line across the whole flower, seen beyond its petals.
fn axis(s: &mut Sketch, turn: f64) {
    s.straight(Point::polar(1.15, turn), Point::polar(1.15, turn + 180.0), Ink::Vein);
}

fn petal(s: &mut Sketch, foot: Point, turn: f64, long: f64, half: f64) {
    let p = |x: f64, y: f64| foot + at(x, y).turned(turn - 90.0);
    let path = Path::from(foot)
        .cubic(p(half * 1.2, long * 0.3), p(half * 1.5, long), p(0.0, long))
        .cubic(p(-half * 1.5, long), p(-half * 1.2, long * 0.3), foot);
    s.part(path, Ink::Outline);
    s.straight(p(0.0, long * 0.35), p(0.0, long * 0.72), Ink::Vein);
}

/// The lowest petal, broader than the others and marked with lines.
fn lip(s: &mut Sketch) {
    let path = Path::from(at(0.0, 0.05))
        .cubic(at(0.5, -0.05), at(0.75, -0.75), at(0.3, -0.95))
        .quad(at(0.1, -1.02), at(0.0, -0.86))
        .quad(at(-0.1, -1.02), at(-0.3, -0.95))
        .cubic(at(-0.75, -0.75), at(-0.5, -0.05), at(0.0, 0.05));
    s.part(path, Ink::Outline);
    for x in [-0.24, -0.12, 0.0, 0.12, 0.24] {
        s.thread(&[at(x * 0.3, -0.18), at(x * 0.8, -0.4), at(x, -0.62)], Ink::Vein);
    }
}
