//! Winter buds, and the scale leaves of conifers from near by.

use super::hair::drop;
use super::{Bud, Ink, ScaleGland, Sketch};
use crate::svg::path::{Path, Point, at};

pub(super) fn sketch(bud: Bud) -> Sketch {
    let mut s = Sketch::default();
    match bud {
        Bud::PointedDry => {
            twig(&mut s, 0.2);
            scales(&mut s, 0.23, 1.45, 6);
        }
        Bud::BluntResinous => {
            twig(&mut s, 0.26);
            let right = Path::from(at(0.22, 0.0)).cubic(at(0.44, 0.3), at(0.4, 0.98), at(0.0, 1.0));
            s.part(right.clone().then(&right.mirrored().reversed()), Ink::Outline);
            for (x, y) in [(-0.22, 0.18), (0.22, 0.18), (0.0, 0.42)] {
                bow(&mut s, at(x, y), 0.2);
            }
            drop(&mut s, at(0.35, 0.5), 0.28);
            drop(&mut s, at(-0.32, 0.66), 0.24);
            drop(&mut s, at(0.1, 0.3), 0.24);
        }
        Bud::SmallScaly => {
            twig(&mut s, 0.26);
            scales(&mut s, 0.25, 0.52, 3);
            for side in [1.0, -1.0] {
                let mut aside = Sketch::default();
                scales(&mut aside, 0.14, 0.34, 2);
                s.over(aside.placed(at(0.13 * side, -0.42), 1.0, -42.0 * side));
            }
        }
    }
    s
}

fn twig(s: &mut Sketch, wide: f64) {
    s.stalk(&[at(-0.04, -1.1), at(0.0, -0.5), at(0.0, 0.04)], wide, wide);
    for y in [-0.86, -0.3] {
        s.part(Path::ellipse(at(0.02, y), wide * 0.3, 0.05), Ink::Vein);
    }
}

fn bow(s: &mut Sketch, foot: Point, half: f64) {
    s.stroke(
        Path::from(foot - at(half, 0.0)).quad(foot + at(0.0, half * 1.5), foot + at(half, 0.0)),
        Ink::Vein,
    );
}

/// Scales that overlap, in a form as wide and tall as these say.
fn scales(s: &mut Sketch, half: f64, tall: f64, rows: i32) {
    let form = |t: f64| half * libm::pow((1.0 - t).max(0.0), 0.75) * (1.0 + 0.9 * t);
    for row in (0..rows).rev() {
        let t = f64::from(row) / f64::from(rows);
        let (y, wide) = (tall * t, form(t));
        let top = (y + tall * 1.9 / f64::from(rows)).min(tall);
        let side = if row % 2 == 0 { 0.28 } else { -0.28 };
        for x in [-side, side] {
            let scale = Path::from(at(x * wide - wide * 0.74, y))
                .quad(at(x * wide - wide * 0.8, y + (top - y) * 0.6), at(x * wide * 0.3, top))
                .quad(at(x * wide + wide * 0.8, y + (top - y) * 0.6), at(x * wide + wide * 0.74, y))
                .quad(at(x * wide, y - 0.04), at(x * wide - wide * 0.74, y));
            s.part(scale, Ink::Outline);
        }
    }
}

/// A flat shoot: a scale on its face between the folded ones of its edges, and the gland on its back.
pub(super) fn gland(gland: ScaleGland) -> Sketch {
    let mut s = Sketch::default();
    for node in (0..3).rev() {
        let y = 0.85 * f64::from(node);
        let edge = Path::from(at(0.0, y - 0.1))
            .cubic(at(0.36, y - 0.12), at(0.6, y + 0.2), at(0.6, y + 0.86))
            .quad(at(0.34, y + 0.84), at(0.0, y + 0.6));
        s.part(edge.clone(), Ink::Outline);
        s.part(edge.mirrored(), Ink::Outline);
        let face = Path::from(at(0.0, y - 0.3))
            .quad(at(0.5, y + 0.1), at(0.0, y + 0.78))
            .quad(at(-0.5, y + 0.1), at(0.0, y - 0.3));
        s.part(face, Ink::Outline);
        let middle = at(0.0, y + 0.24);
        match gland {
            ScaleGland::Prominent => {
                s.part(Path::ellipse(middle, 0.1, 0.14), Ink::Outline);
                s.add(Path::ellipse(middle, 0.04, 0.06), Ink::Vein, super::Fill::Solid);
            }
            ScaleGland::Faint => s.stroke(Path::ellipse(middle, 0.045, 0.065), Ink::Vein),
            ScaleGland::Absent => {}
        }
    }
    s
}
