//! The whole plant: how it grows, how long it lives, whether it keeps its leaves.

use super::stand::ground;
use super::{Climbing, Duration, Fill, Habit, Ink, Persistence, Sketch, climb, lens};
use crate::svg::path::{Path, Point, at};

pub(super) fn habit(habit: Habit) -> Sketch {
    let mut s = Sketch::default();
    match habit {
        Habit::Herb => {
            herb(&mut s, at(0.0, 0.0), 1.6, 6.0);
            herb(&mut s, at(-0.12, 0.0), 1.1, 24.0);
            herb(&mut s, at(0.14, 0.0), 1.25, -18.0);
            ground(&mut s, 0.9);
        }
        Habit::Shrub => shrub(&mut s),
        Habit::Tree => tree(&mut s),
        Habit::Climber => s = climb::sketch(Climbing::Twining),
    }
    s
}

/// A soft stem with leaves and a flower, so tall, leaning so many degrees.
fn herb(s: &mut Sketch, foot: Point, tall: f64, lean: f64) {
    let mut one = Sketch::default();
    one.straight(at(0.0, 0.0), at(0.0, tall), Ink::Outline);
    for step in 0..5 {
        let side = if step % 2 == 0 { 1.0 } else { -1.0 };
        let y = tall * (0.12 + 0.15 * f64::from(step));
        let long = 0.42 - 0.05 * f64::from(step);
        one.lens(at(0.0, y), at(long * side, y + long * 0.6), 0.17);
    }
    little_flower(&mut one, at(0.0, tall + 0.02), 0.13);
    s.over(one.placed(foot, 1.0, lean));
}

/// Five petals, too small for more.
fn little_flower(s: &mut Sketch, centre: Point, size: f64) {
    for turn in [90.0, 162.0, 234.0, 306.0, 18.0] {
        let petal = centre + Point::polar(size * 0.62, turn);
        s.part(Path::ellipse(petal, size * 0.48, size * 0.48), Ink::Outline);
    }
    s.dot(centre, size * 0.3);
}

/// A mass of leaves: a line of bows round an ellipse, and some within.
fn crown(s: &mut Sketch, centre: Point, across: f64, up: f64, bows: i32) {
    let on = |turn: f64, far: f64| {
        let p = Point::polar(far, turn);
        centre + at(p.x * across, p.y * up)
    };
    let each = 360.0 / f64::from(bows);
    let mut path = Path::from(on(0.0, 1.0));
    for bow in 0..bows {
        let turn = each * f64::from(bow);
        path = path.quad(on(turn + each * 0.5, 1.32), on(turn + each, 1.0));
    }
    s.part(path, Ink::Outline);
    for (turn, far) in [(50.0, 0.6), (110.0, 0.45), (160.0, 0.66), (215.0, 0.5), (330.0, 0.6)] {
        let p = on(turn, far);
        let (wide, tall) = (across * 0.16, up * 0.16);
        s.stroke(
            Path::from(p - at(wide, 0.0)).quad(p + at(0.0, tall), p + at(wide, 0.0)),
            Ink::Vein,
        );
    }
}

/// Many woody stems from the ground.
fn shrub(s: &mut Sketch) {
    crown(s, at(0.0, 1.02), 1.0, 0.52, 11);
    for (turn, tall) in [(-44.0, 1.02), (40.0, 1.0), (-22.0, 1.15), (20.0, 1.12), (0.0, 1.2)] {
        let foot = at(-turn * 0.004, 0.0);
        let tip = foot + Point::polar(tall, 90.0 + turn);
        s.stalk(&[foot, foot.towards(tip, 0.5) + at(turn * 0.001, 0.04), tip], 0.09, 0.045);
        for (share, spread) in [(0.62, 26.0), (0.72, -26.0)] {
            let root = foot.towards(tip, share);
            s.straight(root, root + Point::polar(0.26, 90.0 + turn + spread), Ink::Outline);
        }
    }
    ground(s, 1.1);
}

/// One trunk.
fn tree(s: &mut Sketch) {
    crown(s, at(0.0, 1.7), 0.9, 0.72, 12);
    s.stalk(&[at(0.0, 0.0), at(0.01, 0.6), at(0.0, 1.5)], 0.26, 0.16);
    for (from, to) in [
        (at(0.03, 1.0), at(0.46, 1.62)),
        (at(-0.03, 1.1), at(-0.5, 1.7)),
        (at(0.0, 1.45), at(0.12, 2.05)),
        (at(0.0, 1.4), at(-0.16, 2.0)),
    ] {
        s.stalk(&[from, from.towards(to, 0.5) + at(0.0, 0.02), to], 0.1, 0.04);
    }
    for x in [-0.06, 0.04] {
        s.thread(&[at(x, 0.1), at(x + 0.01, 0.4), at(x, 0.7)], Ink::Vein);
    }
    ground(s, 0.85);
}

pub(super) fn duration(duration: Duration) -> Sketch {
    let mut s = Sketch::default();
    match duration {
        Duration::Annual => {
            thin_root(&mut s, at(-0.7, 0.0), 0.03);
            herb(&mut s, at(-0.7, 0.0), 1.15, 0.0);
            arrow(&mut s, at(0.0, 0.45));
            // After a season only its seeds are left.
            for (x, y) in [(0.5, 0.04), (0.66, -0.06), (0.82, 0.05), (0.96, -0.05), (1.1, 0.03)] {
                s.add(Path::ellipse(at(x, y), 0.045, 0.03), Ink::Vein, Fill::Solid);
            }
        }
        Duration::Biennial => {
            thin_root(&mut s, at(-0.85, 0.0), 0.1);
            leaves_at_ground(&mut s, -0.85, &[-70.0, 70.0, -40.0, 38.0, -8.0, 12.0]);
            arrow(&mut s, at(0.0, 0.45));
            thin_root(&mut s, at(0.75, 0.0), 0.1);
            herb(&mut s, at(0.75, 0.0), 1.2, 0.0);
        }
        Duration::Perennial => {
            rootstock(&mut s);
            herb(&mut s, at(-0.08, 0.0), 1.25, 6.0);
            herb(&mut s, at(0.32, 0.0), 1.05, -14.0);
            // What is left of the stems of earlier years.
            for (x, tall, lean) in [(-0.6, 0.5, 14.0), (-0.36, 0.34, -6.0), (0.6, 0.42, -20.0)] {
                let stub = Path::straight(&[
                    at(-0.04, 0.0),
                    at(-0.035, tall),
                    at(-0.005, tall - 0.08),
                    at(0.035, tall + 0.04),
                    at(0.04, 0.0),
                ]);
                let mut one = Sketch::default();
                one.part(stub, Ink::Outline);
                one.straight(at(0.0, 0.06), at(0.0, tall - 0.16), Ink::Vein);
                s.over(one.placed(at(x, -0.02), 1.0, lean));
            }
        }
    }
    s.straight(at(-1.3, 0.0), at(1.3, 0.0), Ink::Vein);
    s
}

fn arrow(s: &mut Sketch, middle: Point) {
    s.straight(middle - at(0.17, 0.0), middle + at(0.12, 0.0), Ink::Outline);
    let head = [at(0.2, 0.0), at(0.06, 0.09), at(0.06, -0.09)].map(|p| middle + p);
    s.add(Path::straight(&head).close(), Ink::Vein, Fill::Solid);
}

fn thin_root(s: &mut Sketch, foot: Point, half: f64) {
    s.add(
        Path::straight(&[foot - at(half, 0.0), foot - at(0.02, 0.5), foot + at(half, 0.0)]),
        Ink::Outline,
        Fill::Paper,
    );
    for (y, x) in [(-0.1, 0.24), (-0.2, -0.22), (-0.3, 0.16)] {
        s.straight(foot + at(0.0, y), foot + at(x, y - 0.12), Ink::Vein);
    }
}

fn leaves_at_ground(s: &mut Sketch, x: f64, turns: &[f64]) {
    for turn in turns {
        s.lens(at(x, 0.0), at(x, 0.0) + Point::polar(0.5, 90.0 + turn), 0.16);
    }
}

fn rootstock(s: &mut Sketch) {
    let stock = Path::from(at(-0.75, -0.02))
        .cubic(at(-0.9, -0.2), at(-0.6, -0.32), at(-0.2, -0.28))
        .cubic(at(0.3, -0.34), at(0.8, -0.3), at(0.75, -0.04))
        .quad(at(0.0, 0.06), at(-0.75, -0.02));
    s.part(stock, Ink::Outline);
    for (x, y) in [(-0.5, -0.6), (-0.15, -0.66), (0.2, -0.62), (0.56, -0.56)] {
        s.thread(&[at(x, -0.26), at(x + 0.05, -0.44), at(x - 0.02, y)], Ink::Outline);
    }
}

pub(super) fn persistence(kept: Persistence) -> Sketch {
    let mut s = Sketch::default();
    let nodes = [(-0.75, 1.0), (-0.42, -1.0), (-0.1, 1.0), (0.3, -1.0), (0.6, 1.0), (0.88, -1.0)];
    match kept {
        Persistence::Evergreen => {
            for (y, side) in nodes {
                leaf(&mut s, at(0.0, y), side);
            }
            s.lens(at(0.0, 1.05), at(0.04, 1.42), 0.2);
        }
        Persistence::Deciduous => {
            for (y, side) in nodes {
                s.lens(at(0.03 * side, y), at(0.17 * side, y + 0.2), 0.28);
            }
            s.lens(at(0.0, 1.05), at(0.02, 1.3), 0.28);
            // The leaves lie on the ground or are on their way there.
            for (x, y, turn) in [(0.72, 0.55, -70.0), (-0.72, 0.1, 130.0), (0.75, -0.35, 200.0)] {
                fallen(&mut s, at(x, y), turn);
            }
            for (x, turn) in [(-0.8, 4.0), (0.3, 12.0), (0.75, -176.0)] {
                fallen(&mut s, at(x, -1.3), turn);
            }
        }
    }
    s.stalk(&[at(-0.02, -1.1), at(0.0, 0.0), at(0.0, 1.08)], 0.13, 0.06);
    if kept == Persistence::Evergreen {
        // Rings of bud scars: below them is the wood of last year, with its leaves.
        for y in [0.02, 0.07, 0.12] {
            s.straight(at(-0.06, y), at(0.06, y), Ink::Vein);
        }
    }
    s
}

fn leaf(s: &mut Sketch, foot: Point, side: f64) {
    let tip = foot + at(0.7 * side, 0.3);
    s.lens(foot, tip, 0.2);
    s.straight(foot, foot.towards(tip, 0.86), Ink::Vein);
}

fn fallen(s: &mut Sketch, middle: Point, turn: f64) {
    let way = Point::polar(0.24, turn);
    s.add(lens(middle - way, middle + way, 0.24), Ink::Outline, Fill::Paper);
    s.straight(middle - way * 1.4, middle + way * 0.6, Ink::Vein);
}
