//! Leaves below a flower, the stalk that bears it, and the floor of a head.

use super::stand::ground;
use super::stem::clinging_scale;
use super::tone::Area;
use super::{Epicalyx, Fill, FlowerStalk, Ink, Receptacle, Sketch};
use crate::svg::path::{Path, Point, at};

/// A flower from below: petals behind, the calyx, and before it the small leaves.
pub(super) fn epicalyx(kind: Epicalyx) -> Sketch {
    let mut s = Sketch::default();
    for step in 0..5 {
        notched_petal(&mut s, 90.0 + 72.0 * f64::from(step));
    }
    for step in 0..5 {
        s.lens(at(0.0, 0.0), Point::polar(0.72, 54.0 + 72.0 * f64::from(step)), 0.3);
    }
    match kind {
        Epicalyx::ThreeFree => {
            for turn in [90.0, 210.0, 330.0] {
                s.lens(Point::polar(0.1, turn), Point::polar(0.62, turn), 0.13);
            }
        }
        Epicalyx::SixToNineJoined => {
            let lobes = 8;
            let each = 360.0 / f64::from(lobes);
            let mut path = Path::from(Point::polar(0.3, 90.0 - each / 2.0));
            for lobe in 0..lobes {
                let turn = 90.0 + each * f64::from(lobe);
                path =
                    path.quad(Point::polar(0.4, turn - each * 0.4), Point::polar(0.6, turn)).quad(
                        Point::polar(0.4, turn + each * 0.4),
                        Point::polar(0.3, turn + each / 2.0),
                    );
            }
            s.part(path, Ink::Outline);
        }
    }
    s.ball(at(0.0, 0.0), 0.1);
    s.dot(at(0.0, 0.0), 0.04);
    s
}

fn notched_petal(s: &mut Sketch, turn: f64) {
    let p = |far: f64, off: f64| Point::polar(far, turn + off);
    let petal = Path::from(at(0.0, 0.0))
        .cubic(p(0.5, -24.0), p(1.0, -36.0), p(1.16, -20.0))
        .quad(p(1.2, -8.0), p(1.06, 0.0))
        .quad(p(1.2, 8.0), p(1.16, 20.0))
        .cubic(p(1.0, 36.0), p(0.5, 24.0), at(0.0, 0.0));
    s.part(petal, Ink::Outline);
}

/// A head from the side on its stalk.
fn head(s: &mut Sketch, foot: Point, size: f64) {
    let p = |x: f64, y: f64| foot + at(x, y) * size;
    for step in 0..9 {
        let x = -1.0 + 0.25 * f64::from(step);
        let tip = p(x * 1.25, 0.95 - 0.3 * x * x);
        s.add(super::lens(p(x * 0.4, 0.3), tip, 0.16), Ink::Vein, Fill::Paper);
    }
    let cup = Path::from(p(-0.5, 0.42))
        .cubic(p(-0.5, 0.0), p(-0.2, -0.05), p(0.0, -0.05))
        .cubic(p(0.2, -0.05), p(0.5, 0.0), p(0.5, 0.42))
        .quad(p(0.0, 0.3), p(-0.5, 0.42));
    s.part(cup, Ink::Outline);
}

pub(super) fn flower_stalk(kind: FlowerStalk) -> Sketch {
    let mut s = Sketch::default();
    if kind != FlowerStalk::Scaly {
        for (turn, long) in [(-76.0, 0.66), (74.0, 0.62), (-52.0, 0.6), (50.0, 0.56)] {
            s.lens(at(0.0, 0.0), Point::polar(long, 90.0 + turn), 0.16);
        }
    }
    match kind {
        FlowerStalk::LeaflessSingle => {
            s.stalk(&[at(0.0, 0.0), at(0.02, 0.8), at(0.0, 1.6)], 0.08, 0.06);
            head(&mut s, at(0.0, 1.58), 0.34);
        }
        FlowerStalk::Branched => {
            for (y, to) in [(0.5, at(0.56, 1.22)), (0.66, at(-0.56, 1.4)), (1.05, at(0.34, 1.72))] {
                s.stalk(&[at(0.0, y), at(to.x * 0.5, y + (to.y - y) * 0.4), to], 0.055, 0.045);
                head(&mut s, to, 0.2);
            }
            s.stalk(&[at(0.0, 0.0), at(0.0, 0.9), at(-0.04, 1.86)], 0.08, 0.05);
            head(&mut s, at(-0.04, 1.84), 0.22);
        }
        FlowerStalk::Leafy => {
            for step in 0..6 {
                let side = if step % 2 == 0 { 1.0 } else { -1.0 };
                let y = 0.3 + 0.2 * f64::from(step);
                s.lens(at(0.0, y), at(0.56 * side, y + 0.28), 0.17);
            }
            s.stalk(&[at(0.0, 0.0), at(0.02, 0.8), at(0.0, 1.6)], 0.08, 0.06);
            head(&mut s, at(0.0, 1.58), 0.34);
        }
        FlowerStalk::Scaly => {
            s.stalk(&[at(0.0, 0.0), at(0.02, 0.7), at(0.0, 1.4)], 0.2, 0.17);
            for step in 0..8 {
                let side = if step % 2 == 0 { 1.0 } else { -1.0 };
                clinging_scale(&mut s, at(-0.04 * side, 0.06 + 0.15 * f64::from(step)), side);
            }
            head(&mut s, at(0.0, 1.4), 0.4);
        }
    }
    ground(&mut s, 0.75);
    s
}

/// A daisy head cut lengthwise.
pub(super) fn receptacle(kind: Receptacle) -> Sketch {
    let mut s = Sketch::default();
    for side in [1.0, -1.0] {
        let ray = Path::from(at(0.46 * side, 0.0))
            .cubic(at(0.8 * side, 0.2), at(1.3 * side, 0.14), at(1.4 * side, -0.1))
            .cubic(at(1.2 * side, -0.16), at(0.8 * side, -0.06), at(0.48 * side, -0.14));
        s.part(ray, Ink::Outline);
        s.thread(&[at(0.6 * side, 0.0), at(0.9 * side, 0.05), at(1.24 * side, -0.02)], Ink::Vein);
    }
    let dome = dome();
    let on = dome.flat(6);
    for (index, pair) in on.windows(2).enumerate() {
        let [a, b] = pair else { continue };
        if !(2..on.len() - 3).contains(&index) {
            continue;
        }
        let out = (*b - *a).across();
        if kind == Receptacle::Chaffy && index % 2 == 1 {
            // Between the florets a pointed scale.
            s.add(super::lens(*a, *a + out * 0.42, 0.12), Ink::Vein, Fill::Solid);
        } else {
            let floret = [*a + out * 0.04, *a + out * 0.26];
            let wide = out.across() * 0.035;
            let tube = Path::straight(&[
                floret[0] - wide,
                floret[1] - wide * 1.4,
                floret[1] + wide * 1.4,
                floret[0] + wide,
            ]);
            s.part(tube, Ink::Vein);
        }
    }
    s.stalk(&[at(0.0, -1.0), at(0.0, -0.6), at(0.0, -0.2)], 0.18, 0.24);
    let floor =
        dome.clone().quad(at(0.3, -0.3), at(0.0, -0.32)).quad(at(-0.3, -0.3), at(-0.5, -0.1));
    s.part(floor.clone(), Ink::Outline);
    match kind {
        Receptacle::Hollow => {
            let hole = Path::from(at(-0.26, -0.06))
                .cubic(at(-0.24, 0.3), at(-0.12, 0.62), at(0.0, 0.66))
                .cubic(at(0.12, 0.62), at(0.24, 0.3), at(0.26, -0.06))
                .quad(at(0.0, -0.2), at(-0.26, -0.06));
            s.part(hole.clone(), Ink::Outline);
        }
        Receptacle::Solid | Receptacle::Chaffy => {
            let room = Area::within(&floor.close()).shrunk(0.8);
            room.points(0.12).into_iter().for_each(|p| s.dot(p, 0.018));
        }
    }
    s
}

/// The floor from its left foot over its top to its right foot.
fn dome() -> Path {
    Path::from(at(-0.5, -0.1)).cubic(at(-0.48, 0.4), at(-0.26, 0.86), at(0.0, 0.9)).cubic(
        at(0.26, 0.86),
        at(0.48, 0.4),
        at(0.5, -0.1),
    )
}
