//! A piece of stem or twig from the side: its surface, its arms, its marks.

use super::hair::{Hair, blot, drop, meal};
use super::tone::Area;
use super::{Armature, Fill, HairLine, Ink, Sketch, StemFace, StemMarking, TwigFace, lens, stand};
use crate::svg::path::{Path, Point, at};

/// Half the breadth of the piece.
const HALF: f64 = 0.34;
const TOP: f64 = 1.0;

fn outline() -> Path {
    Path::straight(&[at(-HALF, -TOP), at(HALF, -TOP), at(HALF, TOP), at(-HALF, TOP)]).close()
}

/// The bare piece, its upper end cut.
fn piece() -> Sketch {
    let mut s = Sketch::default();
    let body = Path::from(at(-HALF, TOP))
        .line(at(-HALF, -TOP))
        .quad(at(0.0, -TOP - 0.12), at(HALF, -TOP))
        .line(at(HALF, TOP));
    s.part(body, Ink::Outline);
    s.part(Path::ellipse(at(0.0, TOP), HALF, 0.1), Ink::Outline);
    s
}

fn room() -> Area {
    Area::within(&outline()).shrunk(0.86)
}

/// Hairs along both sides, a little upwards or level.
fn sides(s: &mut Sketch, hair: Hair, count: i32, long: f64) {
    for index in 0..count {
        let y = -0.92 + 1.8 * (f64::from(index) + 0.5) / f64::from(count);
        let lean = f64::from(index * 17 % 24) - 8.0;
        let one = hair.placed(at(HALF, y), long, lean);
        s.over(one.mirrored());
        s.over(one);
    }
}

fn on_face(s: &mut Sketch, hair: Hair, gap: f64, long: f64) {
    for (index, p) in room().points(gap).into_iter().enumerate() {
        let lean = if index % 2 == 0 { 24.0 } else { -16.0 };
        s.over(hair.placed(p - at(0.0, long / 2.0), long, 90.0 - lean));
    }
}

pub(super) fn surface(face: StemFace) -> Sketch {
    let mut s = piece();
    match face {
        StemFace::Smooth => shine(&mut s),
        StemFace::Hairy => {
            sides(&mut s, Hair::Soft, 13, 0.24);
            on_face(&mut s, Hair::Soft, 0.24, 0.17);
        }
        StemFace::Bristly => {
            sides(&mut s, Hair::Bristle, 7, 0.36);
            on_face(&mut s, Hair::Bristle, 0.34, 0.24);
        }
        StemFace::Rough => {
            sides(&mut s, Hair::Point, 12, 0.15);
            on_face(&mut s, Hair::Point, 0.22, 0.17);
        }
        StemFace::Winged => {
            for side in [1.0, -1.0] {
                let edge = [
                    at(HALF * side, -TOP),
                    at(0.72 * side, -0.82),
                    at(0.66 * side, -0.4),
                    at(0.74 * side, 0.1),
                    at(0.66 * side, 0.55),
                    at(0.72 * side, 0.86),
                    at(HALF * side, TOP),
                ];
                s.part(Path::smooth(&edge), Ink::Outline);
            }
            for x in [-0.12, 0.12] {
                s.straight(at(x, -0.98), at(x, 0.86), Ink::Vein);
            }
        }
        StemFace::Stinging => {
            sides(&mut s, Hair::Sting, 5, 0.4);
            on_face(&mut s, Hair::Sting, 0.42, 0.34);
        }
        StemFace::Warty => {
            for p in room().points(0.24) {
                wart(&mut s, p, 0.065);
            }
            for (x, y) in [(-HALF, -0.5), (-HALF, 0.35), (HALF, -0.1), (HALF, 0.66)] {
                wart(&mut s, at(x, y), 0.065);
            }
        }
        StemFace::Mealy => meal(&mut s, &room().points(0.15), 0.034),
        StemFace::Scaly => {
            for p in room().points(0.27) {
                s.lens(p - at(0.02, 0.16), p + at(0.02, 0.18), 0.24);
            }
        }
        StemFace::NoneAboveGround => return stand::stemless(),
    }
    s
}

/// A line of light along an even surface.
fn shine(s: &mut Sketch) {
    s.thread(&[at(-0.17, -0.75), at(-0.16, 0.0), at(-0.17, 0.7)], Ink::Vein);
}

fn wart(s: &mut Sketch, p: Point, size: f64) {
    s.part(Path::ellipse(p, size, size * 0.9), Ink::Outline);
    s.dot(p + at(0.0, -size * 0.2), size * 0.25);
}

/// Two joints with a pair of leaf feet each, and between them the hairs.
pub(super) fn hair_line(line: HairLine) -> Sketch {
    let mut s = Sketch::default();
    for y in [-0.72, 0.72] {
        for side in [1.0, -1.0] {
            s.lens(at(0.26 * side, y), at(1.0 * side, y + 0.34), 0.15);
        }
    }
    s.over(piece());
    for y in [-0.72, 0.72] {
        s.stroke(Path::from(at(-HALF, y)).quad(at(0.0, y - 0.12), at(HALF, y)), Ink::Outline);
    }
    let mut column = |x: f64, lean: f64| {
        for index in 0..8 {
            let y = -0.68 + 0.165 * f64::from(index);
            s.over(Hair::Soft.placed(at(x, y), 0.22, 90.0 - lean));
        }
    };
    match line {
        HairLine::None => shine(&mut s),
        HairLine::OneLine => {
            column(-0.05, 40.0);
            column(0.05, -40.0);
        }
        HairLine::TwoLines => {
            column(HALF, 70.0);
            column(-HALF, -70.0);
        }
        HairLine::AllRound => {
            column(HALF, 70.0);
            column(-HALF, -70.0);
            for x in [-0.2, -0.06, 0.08, 0.22] {
                column(x, 35.0);
            }
        }
    }
    s
}

pub(super) fn twig(face: TwigFace) -> Sketch {
    let mut s = piece();
    match face {
        TwigFace::Smooth => shine(&mut s),
        TwigFace::Hairy => {
            sides(&mut s, Hair::Soft, 13, 0.22);
            on_face(&mut s, Hair::Soft, 0.22, 0.16);
        }
        TwigFace::Silky => {
            for row in 0..9 {
                for x in [-0.3, -0.14, 0.04, 0.2] {
                    let y = -0.98 + 0.2 * f64::from(row) + 0.06 * x;
                    s.over(Hair::Flat.placed(at(x, y), 0.34, 176.0));
                }
            }
        }
        TwigFace::GreenRidged => {
            for (x, foot) in [(-0.18, 0.62), (0.02, 0.2), (0.2, 0.78), (-0.1, -0.32)] {
                s.lens(at(x, foot - 0.08), at(x + 0.08, foot + 0.5), 0.16);
                s.thread(&[at(x - 0.07, foot), at(x - 0.06, -0.4), at(x - 0.05, -1.0)], Ink::Vein);
                s.thread(&[at(x + 0.07, foot), at(x + 0.06, -0.4), at(x + 0.05, -1.0)], Ink::Vein);
            }
        }
        TwigFace::SmoothRoundScars => {
            for p in room().points(0.34) {
                s.part(Path::ellipse(p, 0.09, 0.08), Ink::Outline);
                s.dot(p, 0.02);
            }
        }
        TwigFace::RoughPegged => pegs(&mut s),
        TwigFace::ResinWarty => {
            for (index, p) in room().points(0.2).into_iter().enumerate() {
                wart(&mut s, p, if index % 2 == 0 { 0.045 } else { 0.034 });
            }
            drop(&mut s, at(0.1, 0.1), 0.22);
        }
    }
    s
}

/// Pegs that stay when the needles fall, each on its own cushion.
fn pegs(s: &mut Sketch) {
    let peg = |p: Point, lean: f64| {
        let turned = |x: f64, y: f64| p + at(x, y).turned(lean);
        Path::straight(&[
            turned(-0.07, 0.0),
            turned(-0.05, 0.2),
            turned(0.05, 0.2),
            turned(0.07, 0.0),
        ])
        .close()
    };
    for row in 0..6 {
        let y = -0.86 + 0.32 * f64::from(row);
        for (side, lift) in [(1.0, 0.0), (-1.0, 0.14)] {
            s.part(peg(at(HALF * side, y + lift), -62.0 * side), Ink::Outline);
        }
        for x in if row % 2 == 0 { [-0.16, 0.12] } else { [-0.02, 0.22] } {
            s.part(peg(at(x, y), -x * 60.0), Ink::Outline);
            s.straight(at(x, y), at(x - 0.02, y - 0.2), Ink::Vein);
        }
    }
}

/// A shoot with three joints, thinner than the pieces.
fn shoot() -> Sketch {
    let mut s = Sketch::default();
    s.stalk(&[at(-0.05, -1.2), at(0.0, 0.0), at(0.04, 1.2)], 0.26, 0.2);
    s
}

const JOINTS: [(f64, f64); 3] = [(-0.7, 1.0), (-0.05, -1.0), (0.6, 1.0)];

/// A leaf with its bud above, at a joint.
fn leaf_at(s: &mut Sketch, y: f64, side: f64) {
    let foot = at(0.1 * side, y);
    s.thread(&[foot, foot + at(0.18 * side, 0.06), foot + at(0.3 * side, 0.14)], Ink::Outline);
    s.lens(foot + at(0.28 * side, 0.12), foot + at(0.95 * side, 0.3), 0.2);
}

fn bud_at(s: &mut Sketch, y: f64, side: f64) {
    s.lens(at(0.1 * side, y + 0.06), at(0.2 * side, y + 0.32), 0.28);
}

pub(super) fn armature(arms: Armature) -> Sketch {
    let mut s = Sketch::default();
    for (y, side) in JOINTS {
        leaf_at(&mut s, y, side);
        if arms == Armature::Thorns {
            // A thorn is a shoot: it stands where a shoot does, above a leaf.
            let foot = at(0.02 * side, y + 0.16);
            let tip = at(0.95 * side, y + 0.78);
            let out = (tip - foot).across() * 0.075;
            s.part(Path::straight(&[foot + out, tip, foot - out]), Ink::Outline);
        } else {
            bud_at(&mut s, y, side);
        }
    }
    s.over(shoot());
    if arms == Armature::Prickles {
        let hooks =
            [(-0.98, -1.0), (-0.4, 1.0), (-0.5, -1.0), (0.25, 1.0), (0.42, -1.0), (0.98, -1.0)];
        for (y, side) in hooks {
            hook(&mut s, at(0.1 * side, y), side);
        }
        for (x, y) in [(-0.02, -0.82), (0.03, 0.12), (0.0, 0.82)] {
            s.part(Path::ellipse(at(x, y), 0.045, 0.09), Ink::Vein);
        }
    }
    s
}

/// A prickle on a broad foot, bent downwards.
fn hook(s: &mut Sketch, foot: Point, side: f64) {
    let p = |x: f64, y: f64| foot + at(x * side, y);
    let path = Path::from(p(0.0, 0.17)).cubic(p(0.06, 0.06), p(0.22, 0.02), p(0.34, -0.16)).cubic(
        p(0.2, -0.07),
        p(0.06, -0.08),
        p(0.0, -0.17),
    );
    s.add(path.close(), Ink::Outline, Fill::Paper);
}

pub(super) fn marking(marking: StemMarking) -> Sketch {
    let mut s = piece();
    match marking {
        StemMarking::None => shine(&mut s),
        StemMarking::RedTinged => {
            // Darkest at the foot: each tone reaches less far up.
            for (top, degrees) in [(0.75, 35.0), (0.1, -35.0), (-0.45, 80.0)] {
                let corners =
                    [at(-HALF, -TOP), at(HALF, -TOP), at(HALF, top + 0.12), at(-HALF, top - 0.12)];
                for (a, b) in Area::within(&Path::straight(&corners).close()).lines(0.1, degrees) {
                    s.straight(a, b, Ink::Vein);
                }
            }
        }
        StemMarking::PurpleBlotched => {
            for (index, p) in room().points(0.23).into_iter().enumerate() {
                let turn = 41.0 * index as f64;
                blot(&mut s, p, 0.1, turn);
                blot(&mut s, p + at(0.03, 0.02), 0.08, turn + 70.0);
            }
        }
    }
    s
}

/// A scale that lies against a stem.
pub(super) fn clinging_scale(s: &mut Sketch, foot: Point, side: f64) {
    s.add(lens(foot, foot + at(0.16 * side, 0.4), 0.22), Ink::Outline, Fill::Paper);
}
