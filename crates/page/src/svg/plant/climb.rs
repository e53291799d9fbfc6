//! What holds a climber to its support.

use super::stand::ground;
use super::{Climbing, Fill, Ink, Sketch};
use crate::svg::path::{Path, Point, at};

pub(super) fn sketch(by: Climbing) -> Sketch {
    let mut s = Sketch::default();
    match by {
        Climbing::None => {
            for (y, side) in [(0.3, 1.0), (0.65, -1.0), (1.0, 1.0), (1.35, -1.0), (1.65, 1.0)] {
                leaf(&mut s, at(0.0, y), 32.0, side);
            }
            s.stalk(&[at(0.0, 0.0), at(0.0, 1.0), at(0.0, 1.95)], 0.11, 0.05);
            leaf(&mut s, at(0.0, 1.92), 84.0, 1.0);
            ground(&mut s, 0.7);
        }
        Climbing::Twining => twining(&mut s),
        Climbing::Tendrils => tendrils(&mut s),
        Climbing::AdhesiveDisks => {
            wall(&mut s);
            for (y, rise) in [(0.4, 0.14), (1.0, 0.2), (1.6, 0.12)] {
                disks(&mut s, at(0.38, y), rise);
            }
            shoot(&mut s);
        }
        Climbing::AerialRoots => {
            wall(&mut s);
            for step in 0..11 {
                let y = 0.2 + 0.16 * f64::from(step);
                let reach = 0.36 + 0.05 * f64::from(step * 5 % 3);
                let root = [at(0.38, y), at(0.06, y + 0.02), at(0.14 - reach, y - 0.06)];
                s.thread(&root, Ink::Outline);
            }
            shoot(&mut s);
        }
        Climbing::Scrambling => scrambling(&mut s),
    }
    s
}

fn leaf(s: &mut Sketch, foot: Point, degrees: f64, side: f64) {
    let way = Point::polar(0.5, degrees);
    let tip = foot + at(way.x * side, way.y);
    s.lens(foot, tip, 0.22);
    s.straight(foot, foot.towards(tip, 0.8), Ink::Vein);
}

/// The stem goes round a post: behind it to the left, before it to the right.
fn twining(s: &mut Sketch) {
    let (half, pitch) = (0.27, 0.56);
    for turn in 0..3 {
        let y = 0.36 + pitch * f64::from(turn);
        let back = [at(half, y), at(0.0, y + pitch * 0.25), at(-half, y + pitch * 0.5)];
        s.stalk(&back, 0.09, 0.09);
    }
    s.stalk(&[at(0.0, -0.1), at(0.0, 1.0), at(0.0, 2.15)], 0.3, 0.28);
    for turn in 0..4 {
        let y = 0.08 + pitch * f64::from(turn);
        let front = [
            at(-half - 0.02, y),
            at(-half * 0.5, y + 0.05),
            at(half * 0.5, y + 0.23),
            at(half + 0.02, y + 0.28),
        ];
        s.stalk(&front, 0.09, 0.09);
    }
    for (y, side) in [(0.4, 1.0), (0.66, -1.0), (0.98, 1.0), (1.24, -1.0), (1.56, 1.0), (1.8, -1.0)]
    {
        leaf(s, at(half * side, y), 14.0, side);
    }
    ground(s, 0.8);
}

/// Threads that coil round a wire.
fn tendrils(s: &mut Sketch) {
    for y in [0.55, 1.35] {
        s.straight(at(-1.0, y), at(0.6, y), Ink::Vein);
        s.straight(at(-1.0, y - 0.07), at(0.6, y - 0.07), Ink::Vein);
    }
    for (y, wire) in [(0.2, 0.55), (1.0, 1.35)] {
        coil(s, at(0.14, y), at(-0.72, wire - 0.04));
        leaf(s, at(0.15, y + 0.05), 28.0, 1.0);
        leaf(s, at(0.15, y + 0.45), 24.0, 1.0);
    }
    s.stalk(&[at(0.2, -0.1), at(0.13, 1.0), at(0.16, 2.0)], 0.1, 0.06);
    leaf(s, at(0.16, 1.96), 70.0, 1.0);
}

/// A thread that goes to a place in a spring, and there winds round.
fn coil(s: &mut Sketch, from: Point, to: Point) {
    let point = |i: i32| {
        let share = f64::from(i) / 40.0;
        let wide = 0.085 * libm::sin(share * core::f64::consts::PI);
        from.towards(to, share) + Point::polar(wide, 90.0 + 48.0 * f64::from(i))
    };
    s.thread(&(0..=40).map(point).collect::<Vec<_>>(), Ink::Vein);
    for (x, wide) in [(-0.07, 0.05), (0.0, 0.055), (0.07, 0.05)] {
        s.stroke(Path::ellipse(to + at(x, 0.0), wide, 0.11), Ink::Vein);
    }
}

/// A wall to the left, of courses of stone.
fn wall(s: &mut Sketch) {
    s.part(
        Path::straight(&[at(-0.75, 0.0), at(-0.2, 0.0), at(-0.2, 2.1), at(-0.75, 2.1)]),
        Ink::Outline,
    );
    for course in 1..7 {
        let y = 0.3 * f64::from(course);
        s.straight(at(-0.75, y), at(-0.2, y), Ink::Vein);
        let x = if course % 2 == 0 { -0.4 } else { -0.56 };
        s.straight(at(x, y), at(x, y - 0.3), Ink::Vein);
    }
}

fn shoot(s: &mut Sketch) {
    for (y, rise) in [(0.3, 20.0), (0.75, 26.0), (1.2, 22.0), (1.65, 32.0)] {
        leaf(s, at(0.42, y), rise, 1.0);
    }
    s.stalk(&[at(0.4, 0.0), at(0.38, 1.0), at(0.38, 2.05)], 0.11, 0.07);
    leaf(s, at(0.38, 2.0), 66.0, 1.0);
}

/// A tendril whose arms end in pads on the wall.
fn disks(s: &mut Sketch, from: Point, rise: f64) {
    let fork = from + at(-0.26, rise * 0.6);
    s.straight(from, fork, Ink::Outline);
    for y in [-0.12, 0.09, 0.3] {
        let pad = at(-0.2, from.y + y);
        s.straight(fork, pad, Ink::Outline);
        s.add(Path::ellipse(pad + at(0.02, 0.0), 0.04, 0.07), Ink::Vein, Fill::Solid);
    }
}

/// A long shoot that leans over a branch and hooks itself there.
fn scrambling(s: &mut Sketch) {
    s.stalk(&[at(-1.1, 1.0), at(0.0, 1.12), at(1.1, 1.06)], 0.18, 0.15);
    let line = [
        at(-0.9, 0.0),
        at(-0.62, 0.7),
        at(-0.2, 1.28),
        at(0.3, 1.36),
        at(0.7, 1.02),
        at(0.95, 0.46),
    ];
    for (foot, degrees, side) in [
        (at(-0.72, 0.48), 150.0, 1.0),
        (at(-0.35, 1.1), 110.0, 1.0),
        (at(0.1, 1.36), 70.0, 1.0),
        (at(0.55, 1.18), 40.0, 1.0),
        (at(0.94, 0.5), -70.0, 1.0),
    ] {
        leaf(s, foot, degrees, side);
    }
    s.stalk(&line, 0.11, 0.06);
    for (x, y, turn) in [
        (-0.68, 0.52, -20.0),
        (-0.42, 0.98, -36.0),
        (0.02, 1.3, -80.0),
        (0.42, 1.27, -130.0),
        (0.72, 0.92, -155.0),
    ] {
        let hook = |dx: f64, dy: f64| at(x, y) + at(dx, dy).turned(turn);
        let path = Path::from(hook(0.0, 0.07))
            .quad(hook(0.1, 0.0), hook(0.17, -0.1))
            .quad(hook(0.06, -0.04), hook(0.0, -0.06));
        s.add(path.close(), Ink::Vein, Fill::Solid);
    }
    ground(s, 1.1);
}
