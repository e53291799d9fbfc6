//! What a plant has below ground, with a little of what stands above.

use super::stand::ground;
use super::tone::Area;
use super::{Fill, Ink, Sketch, Underground};
use crate::svg::path::{Path, Point, at};

pub(super) fn sketch(kind: Underground) -> Sketch {
    let mut s = Sketch::default();
    if kind == Underground::WoodyRoots {
        s.stalk(&[at(0.0, -0.1), at(0.0, 0.3), at(0.0, 0.75)], 0.34, 0.26);
        for x in [-0.07, 0.06] {
            s.straight(at(x, 0.02), at(x, 0.62), Ink::Vein);
        }
    } else {
        top(&mut s);
    }
    below(&mut s, kind);
    s.spot("underground", at(0.0, -0.6));
    ground(&mut s, 1.05);
    s
}

/// The foot of a leafy shoot.
fn top(s: &mut Sketch) {
    for (turn, long) in [(-38.0, 0.7), (36.0, 0.66), (-14.0, 0.8), (14.0, 0.78)] {
        s.lens(at(0.0, 0.0), Point::polar(long, 90.0 + turn), 0.13);
    }
}

/// The organ alone, hanging from the origin.
pub(super) fn below(s: &mut Sketch, kind: Underground) {
    match kind {
        Underground::Rhizome => rhizome(s),
        Underground::Taproot => taproot(s),
        Underground::Fibrous => fibrous(s),
        Underground::Tubers => tubers(s),
        Underground::Bulb => bulb(s),
        Underground::Corm => corm(s),
        Underground::ChamberedRootstock => chambered(s),
        Underground::WoodyRoots => woody(s),
    }
}

fn root(s: &mut Sketch, points: &[(f64, f64)]) {
    let points: Vec<_> = points.iter().map(|(x, y)| at(*x, *y)).collect();
    s.thread(&points, Ink::Outline);
}

/// Level below ground, ringed at its joints, with a bud ahead.
fn rhizome(s: &mut Sketch) {
    for step in 0..6 {
        let x = -0.85 + 0.33 * f64::from(step);
        root(s, &[(x, -0.5), (x + 0.04, -0.7), (x - 0.03, -0.9)]);
    }
    s.stalk(&[at(0.0, 0.04), at(0.0, -0.14), at(0.02, -0.34)], 0.14, 0.17);
    let stock = Path::from(at(-1.05, -0.34))
        .quad(at(-1.1, -0.46), at(-1.02, -0.56))
        .cubic(at(-0.4, -0.62), at(0.4, -0.6), at(0.9, -0.5))
        .quad(at(1.12, -0.4), at(1.18, -0.22))
        .quad(at(0.98, -0.28), at(0.85, -0.3))
        .cubic(at(0.4, -0.28), at(-0.4, -0.28), at(-1.05, -0.34));
    s.part(stock, Ink::Outline);
    for step in 0..7 {
        let x = -0.84 + 0.26 * f64::from(step);
        s.stroke(Path::from(at(x, -0.33)).quad(at(x + 0.06, -0.45), at(x, -0.56)), Ink::Vein);
    }
}

fn taproot(s: &mut Sketch) {
    for (y, x) in [(-0.35, 0.5), (-0.5, -0.52), (-0.75, 0.42), (-0.95, -0.34)] {
        let near = if x > 0.0 { 0.1 } else { -0.1 };
        root(s, &[(near, y), (x * 0.6, y - 0.08), (x, y - 0.2)]);
    }
    let right = Path::from(at(0.1, 0.03)).cubic(at(0.36, -0.1), at(0.2, -0.8), at(0.0, -1.5));
    s.part(right.clone().then(&right.mirrored().reversed()), Ink::Outline);
    for (y, half) in [(-0.18, 0.15), (-0.42, 0.12), (-0.68, 0.09)] {
        s.straight(at(-half, y), at(-half * 0.2, y - 0.03), Ink::Vein);
        s.straight(at(half * 0.3, y - 0.1), at(half, y - 0.07), Ink::Vein);
    }
}

fn fibrous(s: &mut Sketch) {
    for step in 0..13 {
        let share = (f64::from(step) - 6.0) / 6.0;
        let foot = 0.1 * share;
        let wave = if step % 2 == 0 { 0.05 } else { -0.05 };
        let deep = -1.15 + 0.34 * share * share;
        root(
            s,
            &[
                (foot, 0.0),
                (foot + share * 0.3 + wave, deep * 0.35),
                (foot + share * 0.62 - wave, deep * 0.7),
                (foot + share * 0.85, deep),
            ],
        );
    }
}

/// Roots with swollen ends.
fn tubers(s: &mut Sketch) {
    for (x, y, turn, size) in
        [(-0.62, -0.66, 24.0, 0.3), (0.02, -0.98, 90.0, 0.32), (0.66, -0.6, -30.0, 0.27)]
    {
        let end = at(x, y);
        root(s, &[(0.0, 0.0), (x * 0.4, y * 0.2 - 0.05), (x, y)]);
        let mut tuber = Sketch::default();
        tuber.part(Path::ellipse(at(0.0, 0.0), 1.0, 0.68), Ink::Outline);
        for (dx, dy) in [(-0.5, 0.2), (0.1, 0.3), (0.5, -0.1), (-0.1, -0.3)] {
            let eye = Path::from(at(dx - 0.12, dy)).quad(at(dx, dy - 0.14), at(dx + 0.12, dy));
            tuber.stroke(eye, Ink::Vein);
        }
        s.over(tuber.placed(end, size, turn));
    }
    for (x, y) in [(-0.3, -0.9), (0.36, -0.95)] {
        root(s, &[(0.0, -0.04), (x * 0.7, y * 0.5), (x, y)]);
    }
}

/// Thin roots from the foot of a bulb or corm.
fn beard(s: &mut Sketch, y: f64) {
    for step in 0..7 {
        let x = 0.09 * (f64::from(step) - 3.0);
        root(s, &[(x, y), (x * 1.7, y - 0.16), (x * 1.9, y - 0.34)]);
    }
}

/// Cut lengthwise: layer within layer round a bud, on a thin plate.
fn bulb(s: &mut Sketch) {
    beard(s, -0.92);
    let coat = |share: f64| {
        let foot = -0.88;
        let right = Path::from(at(0.06 * share, 0.06 * share))
            .cubic(
                at(0.2 * share, foot * 0.35),
                at(0.78 * share, foot * 0.4),
                at(0.58 * share, foot * 0.8),
            )
            .quad(at(0.4 * share, foot), at(0.0, foot));
        right.clone().then(&right.mirrored().reversed())
    };
    for share in [1.0, 0.8, 0.6, 0.4, 0.2] {
        s.part(coat(share), if share > 0.9 { Ink::Outline } else { Ink::Vein });
    }
    s.add(Path::ellipse(at(0.0, -0.89), 0.24, 0.05), Ink::Vein, Fill::Solid);
}

/// Cut lengthwise: solid, broader than tall, in a thin dry coat.
fn corm(s: &mut Sketch) {
    beard(s, -0.78);
    let body = |share: f64| {
        let middle = at(0.0, -0.44);
        Path::round(
            &[
                at(0.0, -0.1),
                at(0.4, -0.16),
                at(0.66, -0.44),
                at(0.42, -0.74),
                at(0.0, -0.8),
                at(-0.42, -0.74),
                at(-0.66, -0.44),
                at(-0.4, -0.16),
            ]
            .map(|p| middle.towards(p, share)),
        )
    };
    s.stalk(&[at(0.0, 0.04), at(0.0, -0.06), at(0.0, -0.16)], 0.12, 0.2);
    s.part(body(1.1), Ink::Outline);
    s.part(body(0.94), Ink::Outline);
    for p in Area::within(&body(0.94)).shrunk(0.86).points(0.13) {
        s.dot(p, 0.018);
    }
}

/// Cut lengthwise: one chamber above the other.
fn chambered(s: &mut Sketch) {
    for (y, x) in [(-0.4, 0.8), (-0.55, -0.82), (-0.85, 0.7), (-1.0, -0.62), (-1.1, 0.3)] {
        root(s, &[(0.0, y), (x * 0.6, y - 0.06), (x, y - 0.24)]);
    }
    let wide = |y: f64| 0.15 + 0.33 * libm::sin((-y / 1.25).clamp(0.0, 1.0) * 2.9);
    let edge = |out: f64, low: f64, high: f64| -> Vec<Point> {
        (0..=10)
            .map(|i| high + (low - high) * f64::from(i) / 10.0)
            .map(|y| at(wide(y) * out, y))
            .collect()
    };
    let form = |out: f64, low: f64, high: f64| {
        let (right, left) = (edge(out, low, high), edge(-out, low, high));
        Path::smooth(&right).then(&Path::smooth(&left).reversed())
    };
    s.part(form(1.0, -1.2, 0.04), Ink::Outline);
    for step in 0..6 {
        let high = -0.1 - 0.18 * f64::from(step);
        let chamber = form(0.72, high - 0.13, high);
        s.add(chamber.close(), Ink::Vein, Fill::Paper);
        s.straight(
            at(-wide(high) * 0.5, high - 0.05),
            at(wide(high) * 0.1, high - 0.05),
            Ink::Vein,
        );
    }
}

/// Thick, forked, with bark.
fn woody(s: &mut Sketch) {
    let limb = |s: &mut Sketch, points: &[(f64, f64)], foot: f64, top: f64| {
        let points: Vec<_> = points.iter().map(|(x, y)| at(*x, *y)).collect();
        s.stalk(&points, foot, top);
    };
    limb(s, &[(-0.5, -0.4), (-0.62, -0.7), (-0.6, -1.0)], 0.11, 0.03);
    limb(s, &[(0.48, -0.4), (0.55, -0.72), (0.72, -1.0)], 0.11, 0.03);
    limb(s, &[(0.0, -0.6), (-0.2, -0.85), (-0.22, -1.2)], 0.1, 0.03);
    limb(s, &[(-0.04, -0.02), (-0.4, -0.28), (-1.02, -0.56)], 0.22, 0.05);
    limb(s, &[(0.04, -0.02), (0.38, -0.3), (1.02, -0.6)], 0.22, 0.05);
    limb(s, &[(0.0, 0.06), (0.02, -0.5), (0.16, -1.25)], 0.3, 0.04);
    for (x, y) in [(-0.05, -0.14), (0.06, -0.3), (-0.02, -0.48)] {
        s.straight(at(x, y), at(x + 0.03, y - 0.16), Ink::Vein);
    }
}
