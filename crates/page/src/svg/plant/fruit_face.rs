//! The surface of a fruit.

use super::face::{fringe, tone_of};
use super::hair::Hair;
use super::tone::Area;
use super::{FruitFace, Ink, Sketch};
use crate::svg::path::{Path, Point, at};

pub(super) fn sketch(face: FruitFace) -> Sketch {
    let mut s = Sketch::default();
    if face == FruitFace::Winged {
        winged(&mut s);
        return s;
    }
    if face == FruitFace::SpirallyTwisted {
        twisted(&mut s);
        return s;
    }
    s.stalk(&[at(0.1, 1.35), at(0.03, 1.1), at(0.0, 0.75)], 0.09, 0.09);
    let round = Path::ellipse(at(0.0, 0.0), 0.8, 0.82);
    let room = Area::within(&round).shrunk(0.88);
    match face {
        FruitFace::Hairy => fringe(&mut s, &round, Hair::Soft, 0.2),
        FruitFace::Spiny => fringe(&mut s, &round, Hair::Bristle, 0.34),
        _ => {}
    }
    s.part(round.clone(), Ink::Outline);
    match face {
        FruitFace::Smooth => {
            let light = Path::from(at(-0.54, 0.0)).quad(at(-0.5, 0.38), at(-0.2, 0.52));
            s.stroke(light, Ink::Vein);
        }
        FruitFace::Shiny => {
            // A window of light in a dark fruit.
            let window =
                Path::round(&[at(-0.5, 0.1), at(-0.4, 0.44), at(-0.1, 0.54), at(-0.24, 0.24)]);
            tone_of(&mut s, 0.115, &Area::within(&round).shrunk(0.96), &[Area::within(&window)]);
            s.stroke(window, Ink::Vein);
        }
        FruitFace::Dull => room.points(0.14).into_iter().for_each(|p| s.dot(p, 0.02)),
        FruitFace::Bloomed => {
            let rubbed =
                Path::round(&[at(-0.4, -0.2), at(-0.1, 0.3), at(0.36, 0.36), at(0.1, -0.1)]);
            tone_of(&mut s, 0.115, &Area::within(&rubbed).shrunk(0.96), &[]);
            s.stroke(rubbed.clone(), Ink::Vein);
            let rubbed = Area::within(&rubbed);
            for p in room.points(0.14) {
                if !rubbed.holds(p) {
                    s.dot(p, 0.02);
                }
            }
        }
        FruitFace::Hairy => {
            for (index, p) in room.points(0.24).into_iter().enumerate() {
                s.over(Hair::Soft.placed(p, 0.17, 100.0 - 30.0 * (index % 3) as f64));
            }
        }
        FruitFace::Ridged => {
            for x in [-0.6, -0.3, 0.0, 0.3, 0.6] {
                s.thread(&[at(x * 0.3, 0.78), at(x * 1.08, 0.0), at(x * 0.3, -0.78)], Ink::Outline);
            }
        }
        FruitFace::Spiny => {
            for p in room.shrunk(0.8).points(0.36) {
                let way = Point::polar(0.24, if p.x > 0.0 { 40.0 } else { 140.0 });
                let across = way.across() * 0.045;
                s.part(Path::straight(&[p - across, p + way, p + across]), Ink::Vein);
            }
        }
        FruitFace::Warty => {
            for (index, p) in room.points(0.27).into_iter().enumerate() {
                let size = if index % 2 == 0 { 0.09 } else { 0.065 };
                s.part(Path::ellipse(p, size, size), Ink::Outline);
                s.stroke(
                    Path::from(p + at(-size * 0.5, 0.0))
                        .quad(p + at(-size * 0.3, size * 0.5), p + at(0.0, size * 0.5)),
                    Ink::Vein,
                );
            }
        }
        FruitFace::Winged | FruitFace::SpirallyTwisted => {}
    }
    s
}

/// Thin borders along a body.
fn winged(s: &mut Sketch) {
    s.stalk(&[at(0.1, 1.35), at(0.03, 1.15), at(0.0, 0.8)], 0.09, 0.09);
    for side in [1.0, -1.0] {
        let wing = Path::smooth(&[
            at(0.1 * side, 0.86),
            at(0.62 * side, 0.84),
            at(0.86 * side, 0.3),
            at(0.82 * side, -0.3),
            at(0.56 * side, -0.84),
            at(0.1 * side, -0.86),
        ]);
        s.part(wing, Ink::Outline);
        for y in [-0.5, -0.17, 0.17, 0.5] {
            s.straight(at(0.36 * side, y), at(0.7 * side, y * 1.1), Ink::Vein);
        }
    }
    s.part(Path::ellipse(at(0.0, 0.0), 0.34, 0.84), Ink::Outline);
    s.lens(at(0.0, -0.84), at(0.0, 0.84), 0.05);
}

/// A long fruit wound like a rope.
fn twisted(s: &mut Sketch) {
    s.stalk(&[at(0.0, -1.4), at(0.0, -1.2), at(0.0, -0.95)], 0.09, 0.09);
    let wave = |y: f64| 0.32 - 0.06 * libm::fabs(libm::cos(y * 6.2));
    let edge = |out: f64| -> Vec<Point> {
        let ends = |y: f64| 1.0 - 0.72 * libm::pow(libm::fabs(y), 6.0);
        (-14..=14).map(|i| f64::from(i) / 14.0).map(|y| at(wave(y) * ends(y) * out, y)).collect()
    };
    let (right, left) = (Path::smooth(&edge(1.0)), Path::smooth(&edge(-1.0)));
    s.part(right.then(&left.reversed()), Ink::Outline);
    for step in 0..5 {
        let y = -0.86 + 0.36 * f64::from(step);
        for lift in [0.0, 0.12] {
            let band = Path::from(at(-0.27, y + lift)).cubic(
                at(-0.1, y + lift),
                at(0.1, y + lift + 0.22),
                at(0.27, y + lift + 0.24),
            );
            s.stroke(band, if lift > 0.0 { Ink::Vein } else { Ink::Outline });
        }
    }
}
