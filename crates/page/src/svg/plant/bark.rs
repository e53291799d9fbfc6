//! The bark of a trunk: a piece of it from in front.

use super::hair::drop;
use super::tone::Area;
use super::{Bark, Fill, Ink, Sketch, lens};
use crate::svg::path::{Path, Point, at};

const HALF: f64 = 0.8;
const TALL: f64 = 1.0;

fn trunk() -> Sketch {
    let mut s = Sketch::default();
    let right = Path::smooth(&[at(HALF, -TALL), at(HALF - 0.03, 0.0), at(HALF, TALL)]);
    s.part(right.clone().then(&right.mirrored().reversed()), Ink::Outline);
    s
}

pub(super) fn sketch(bark: Bark) -> Sketch {
    let mut s = trunk();
    match bark {
        Bark::Smooth => {
            for (x, y) in [(-0.5, 0.5), (0.3, 0.7), (0.0, 0.1), (-0.4, -0.5), (0.5, -0.3)] {
                s.stroke(
                    Path::from(at(x - 0.1, y)).quad(at(x, y - 0.05), at(x + 0.1, y)),
                    Ink::Vein,
                );
            }
        }
        Bark::Fissured => fissured(&mut s),
        Bark::Flaking => flaking(&mut s),
        Bark::Stripping => stripping(&mut s),
        Bark::Ringed => {
            for row in 0..9 {
                let y = -0.88 + 0.22 * f64::from(row);
                for (x, long) in [(-0.62, 0.36), (-0.1, 0.5), (0.5, 0.26)] {
                    let shift = 0.13 * f64::from(row * 3 % 4) - 0.16;
                    let from = (x + shift).max(-0.76);
                    let to = (x + shift + long).min(0.76);
                    s.straight(at(from, y), at(to, y + 0.01), Ink::Outline);
                }
            }
        }
        Bark::Corky => corky(&mut s),
        Bark::ResinBlistered => {
            for (index, p) in room().points(0.36).into_iter().enumerate() {
                let wide = if index % 2 == 0 { 0.13 } else { 0.09 };
                s.part(Path::ellipse(p, wide, wide * 0.6), Ink::Outline);
                let glint = Path::from(p + at(-wide * 0.6, 0.0))
                    .quad(p + at(-wide * 0.5, wide * 0.32), p + at(0.0, wide * 0.34));
                s.stroke(glint, Ink::Vein);
                if index % 6 == 2 {
                    drop(&mut s, p - at(0.0, wide * 0.5), 0.24);
                }
            }
        }
    }
    s
}

fn room() -> Area {
    let corners = [at(-HALF, -TALL), at(HALF, -TALL), at(HALF, TALL), at(-HALF, TALL)];
    Area::within(&Path::straight(&corners).close()).shrunk(0.82)
}

/// Dark furrows that run into one another, and between them ridges.
fn fissured(s: &mut Sketch) {
    for column in 0..6 {
        let x = -0.66 + 0.265 * f64::from(column);
        for row in 0..3 {
            let low = -1.0 + 0.68 * f64::from(row) - 0.34 * f64::from(column % 2);
            let lean = if (row + column) % 2 == 0 { 0.06 } else { -0.06 };
            let (foot, tip) = (at(x - lean, low.max(-0.97)), at(x + lean, (low + 0.72).min(0.97)));
            s.add(lens(foot, tip, 0.075), Ink::Vein, Fill::Solid);
            if column < 5 {
                let next = at(x - lean + 0.13, (tip.y + 0.06).min(0.97));
                s.straight(tip, next, Ink::Vein);
            }
        }
    }
}

/// Plates with turned-up edges.
fn flaking(s: &mut Sketch) {
    let plates = [
        (-0.46, 0.66, 0.26, 0.27),
        (0.1, 0.62, 0.24, 0.3),
        (0.56, 0.74, 0.17, 0.2),
        (-0.54, 0.08, 0.2, 0.24),
        (-0.06, 0.0, 0.22, 0.26),
        (0.46, 0.16, 0.26, 0.28),
        (-0.4, -0.56, 0.28, 0.32),
        (0.16, -0.62, 0.24, 0.3),
        (0.6, -0.5, 0.15, 0.3),
    ];
    for (index, (x, y, wide, tall)) in plates.into_iter().enumerate() {
        let p = |dx: f64, dy: f64| at(x + dx * wide, y + dy * tall);
        let plate = Path::from(p(-0.9, 0.8))
            .quad(p(0.0, 1.1), p(0.9, 0.7))
            .quad(p(1.1, 0.0), p(0.7, -0.8))
            .quad(p(-0.1, -1.1), p(-0.8, -0.7))
            .quad(p(-1.1, 0.1), p(-0.9, 0.8));
        s.part(plate, Ink::Outline);
        if index % 2 == 0 {
            // The shade under an edge that stands off.
            for share in [0.0, 0.3, 0.6, 0.9] {
                let foot = p(-0.6 + share * 1.3, -0.94);
                s.straight(foot, foot + at(0.03, -0.09), Ink::Vein);
            }
        }
    }
}

/// Long strips, two of them come off at an end.
fn stripping(s: &mut Sketch) {
    for (x, low, high) in [
        (-0.55, -0.98, 0.98),
        (-0.28, -0.98, 0.5),
        (-0.02, -0.4, 0.98),
        (0.24, -0.98, 0.98),
        (0.52, -0.6, 0.98),
    ] {
        s.thread(&[at(x, low), at(x + 0.03, (low + high) / 2.0), at(x, high)], Ink::Vein);
    }
    let strip = |top: Point, long: f64, side: f64| {
        let p = |x: f64, y: f64| top + at(x * side, y);
        Path::from(p(-0.11, 0.0))
            .cubic(p(-0.13, -long * 0.4), p(-0.05, -long * 0.7), p(0.2, -long))
            .quad(p(0.34, -long - 0.1), p(0.4, -long + 0.06))
            .quad(p(0.3, -long * 0.94), p(0.26, -long * 0.86))
            .cubic(p(0.12, -long * 0.6), p(0.1, -long * 0.3), p(0.11, 0.0))
    };
    s.part(strip(at(-0.36, 0.6), 1.0, 1.0), Ink::Outline);
    s.part(strip(at(0.46, 0.84), 0.8, -1.0), Ink::Outline);
    s.thread(&[at(-0.36, 0.5), at(-0.34, 0.1), at(-0.2, -0.3)], Ink::Vein);
    s.thread(&[at(0.46, 0.74), at(0.44, 0.4), at(0.34, 0.12)], Ink::Vein);
}

/// Thick soft ridges along the stem, cut by steps.
fn corky(s: &mut Sketch) {
    for (x, half) in [(-0.52, 0.2), (0.02, 0.24), (0.54, 0.18)] {
        let edge = |side: f64| -> Vec<Point> {
            let bump = |i: i32| if i % 2 == 0 { 1.0 } else { 0.68 };
            (0..=8).map(|i| at(x + half * side * bump(i), -0.98 + 0.245 * f64::from(i))).collect()
        };
        let (right, left) = (Path::smooth(&edge(1.0)), Path::smooth(&edge(-1.0)));
        s.part(right.then(&left.reversed()), Ink::Outline);
        for row in 0..8 {
            let y = -0.86 + 0.245 * f64::from(row);
            s.stroke(
                Path::from(at(x - half * 0.6, y)).quad(at(x, y + 0.07), at(x + half * 0.6, y)),
                Ink::Vein,
            );
        }
    }
}
