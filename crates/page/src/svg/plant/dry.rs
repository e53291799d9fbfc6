//! Dry fruits of one seed, and the naked seed.

use super::seed::{NUT, nut};
use super::{Fill, Ink, Sketch, lens};
use crate::svg::path::{Path, Point, at};

/// A small fruit whole, and one opened: a thin wall, one seed loose within.
pub(super) fn achene(s: &mut Sketch) {
    let form = |x: f64, share: f64| {
        let p = |dx: f64, dy: f64| at(x + dx * share, dy * share);
        Path::from(p(0.0, -0.72))
            .cubic(p(0.5, -0.6), p(0.5, 0.2), p(0.08, 0.66))
            .line(p(-0.08, 0.66))
            .cubic(p(-0.5, 0.2), p(-0.5, -0.6), p(0.0, -0.72))
    };
    s.part(form(-0.55, 1.0), Ink::Outline);
    s.thread(&[at(-0.55, 0.64), at(-0.52, 0.86), at(-0.38, 1.02)], Ink::Outline);
    for x in [-0.72, -0.55, -0.38] {
        let bend = -0.55 + (x + 0.55) * 0.4;
        s.thread(&[at(bend, 0.5), at(x, -0.1), at(bend, -0.62)], Ink::Vein);
    }
    s.part(form(0.55, 1.0), Ink::Outline);
    s.part(form(0.55, 0.86), Ink::Vein);
    s.thread(&[at(0.55, 0.64), at(0.58, 0.86), at(0.72, 1.02)], Ink::Outline);
    s.part(Path::ellipse(at(0.55, -0.14), 0.2, 0.36), Ink::Outline);
    s.straight(at(0.55, -0.5), at(0.55, -0.6), Ink::Outline);
    for y in [-0.3, -0.14, 0.02] {
        s.straight(at(0.45, y - 0.03), at(0.65, y + 0.04), Ink::Vein);
    }
}

/// Four small hard pieces in the cup of their calyx.
pub(super) fn nutlet(s: &mut Sketch) {
    for (x, turn) in [(-0.68, 24.0), (0.68, -24.0), (0.0, 0.0)] {
        let foot = at(x * 0.7, 0.1);
        s.lens(foot, foot + Point::polar(0.85, 90.0 + turn), 0.2);
    }
    for (x, y) in [(-0.2, 0.32), (0.22, 0.34), (-0.34, 0.06), (0.34, 0.06)] {
        let p = |dx: f64, dy: f64| at(x + dx, y + dy);
        let piece = Path::from(p(0.0, -0.34)).cubic(p(0.3, -0.3), p(0.34, 0.3), p(0.0, 0.3)).cubic(
            p(-0.34, 0.3),
            p(-0.3, -0.3),
            p(0.0, -0.34),
        );
        s.part(piece, Ink::Outline);
        s.stroke(Path::from(p(-0.12, 0.02)).quad(p(-0.1, 0.18), p(0.0, 0.22)), Ink::Vein);
    }
    s.stalk(&[at(0.0, -1.1), at(0.0, -0.8), at(0.0, -0.55)], 0.1, 0.14);
    let cup = Path::from(at(-0.74, 0.36))
        .cubic(at(-0.7, -0.4), at(-0.3, -0.64), at(0.0, -0.64))
        .cubic(at(0.3, -0.64), at(0.7, -0.4), at(0.74, 0.36))
        .quad(at(0.55, 0.1), at(0.38, -0.08))
        .quad(at(0.0, -0.2), at(-0.38, -0.08))
        .quad(at(-0.55, 0.1), at(-0.74, 0.36));
    s.part(cup, Ink::Outline);
    for x in [-0.4, -0.14, 0.14, 0.4] {
        s.thread(&[at(x * 1.1, -0.16), at(x * 0.9, -0.36), at(x * 0.4, -0.58)], Ink::Vein);
    }
}

/// A hard shell whole, and one half with its kernel.
pub(super) fn whole_nut(s: &mut Sketch) {
    s.over(nut(NUT).placed(at(-0.62, 0.0), 0.8, 0.0));
    let shell = |share: f64| Path::ellipse(at(0.62, -0.02), 0.52 * share, 0.62 * share);
    s.part(shell(1.0), Ink::Outline);
    s.part(shell(0.84), Ink::Outline);
    s.part(shell(0.68), Ink::Vein);
    s.thread(&[at(0.62, 0.36), at(0.6, 0.0), at(0.62, -0.38)], Ink::Vein);
}

/// A thin bladder, blown up, and within it one seed.
pub(super) fn utricle(s: &mut Sketch) {
    s.stalk(&[at(0.0, -1.2), at(0.0, -0.95), at(0.0, -0.7)], 0.07, 0.08);
    let bladder = Path::round(&[
        at(0.0, -0.76),
        at(0.4, -0.62),
        at(0.66, -0.1),
        at(0.5, 0.42),
        at(0.12, 0.72),
        at(0.0, 0.98),
        at(-0.12, 0.72),
        at(-0.5, 0.42),
        at(-0.66, -0.1),
        at(-0.4, -0.62),
    ]);
    s.part(bladder, Ink::Outline);
    for side in [1.0, -1.0] {
        s.thread(&[at(0.1 * side, 0.7), at(0.34 * side, 0.36), at(0.44 * side, 0.0)], Ink::Vein);
        s.thread(&[at(0.44 * side, -0.3), at(0.34 * side, -0.5), at(0.2 * side, -0.62)], Ink::Vein);
    }
    s.part(Path::ellipse(at(0.0, -0.14), 0.26, 0.24), Ink::Outline);
    s.add(Path::ellipse(at(0.0, -0.14), 0.15, 0.13), Ink::Vein, Fill::Paper);
    s.straight(at(0.0, -0.38), at(0.0, -0.7), Ink::Vein);
}

/// On its stalk with a small collar; the other cut: flesh, shell, kernel, and no wall of a fruit.
pub(super) fn naked_seed(s: &mut Sketch) {
    for side in [1.0, -1.0] {
        let line = [at(0.0, 1.3), at(0.16 * side, 0.9), at(0.52 * side, 0.5)];
        s.stalk(&line, 0.06, 0.07);
        let collar = at(0.54 * side, 0.44);
        s.part(Path::ellipse(collar, 0.15, 0.07), Ink::Outline);
    }
    let whole = at(-0.6, -0.04);
    s.ball(whole, 0.48);
    s.stroke(
        Path::from(whole + at(-0.34, 0.02)).quad(whole + at(-0.3, 0.26), whole + at(-0.1, 0.34)),
        Ink::Vein,
    );
    s.dot(whole - at(0.0, 0.36), 0.03);
    let open = at(0.6, -0.04);
    s.ball(open, 0.48);
    s.add(lens(open - at(0.0, 0.42), open + at(0.0, 0.34), 0.36), Ink::Outline, Fill::Paper);
    s.add(lens(open - at(0.0, 0.3), open + at(0.0, 0.24), 0.32), Ink::Vein, Fill::Paper);
    for turn in 0..8 {
        let p = open + Point::polar(0.4, 45.0 * f64::from(turn) + 22.0);
        s.dot(p, 0.018);
    }
}
