//! Cones of conifers.

use super::{ConeForm, Fill, Ink, Sketch};
use crate::svg::path::{Path, Point, at};

pub(super) fn sketch(form: ConeForm) -> Sketch {
    let mut s = Sketch::default();
    match form {
        ConeForm::ThinScales => thin_scales(&mut s),
        ConeForm::Shields => shields(&mut s),
        ConeForm::BerryLike => berry_like(&mut s),
        ConeForm::CupAril => cup_aril(&mut s),
        ConeForm::BreakingUp => breaking_up(&mut s),
        ConeForm::CylindricWhole => {
            s = hung(tiles(0.46, 2.1, 11, Tile::Thin, &|share| 1.0 - 0.75 * share * share * share));
        }
        ConeForm::EggShaped => {
            s = hung(tiles(0.56, 1.6, 7, Tile::Woody, &|share| {
                1.05 - 1.0 * (share - 0.2) * (share - 0.2) * 1.3
            }));
        }
        ConeForm::ThreePronged => {
            s = hung(tiles(0.5, 1.6, 7, Tile::Pronged, &|share| 1.0 - 0.7 * share * share));
        }
    }
    s.spot("cone_form", at(0.0, 0.0));
    s
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Tile {
    Thin,
    /// With a thick end and a knob.
    Woody,
    /// With a tongue of three prongs below.
    Pronged,
}

/// A cone from its foot at the origin upwards, of rows of scales that overlap like tiles.
fn tiles(wide: f64, tall: f64, rows: i32, tile: Tile, form: &dyn Fn(f64) -> f64) -> Sketch {
    let mut s = Sketch::default();
    let pitch = tall / f64::from(rows);
    for row in (0..rows).rev() {
        let share = f64::from(row) / f64::from(rows);
        let half = wide * form(share).max(0.12);
        let y = pitch * f64::from(row);
        let offsets: &[f64] =
            if row % 2 == 0 { &[-0.86, 0.86, -0.3, 0.3] } else { &[-0.62, 0.62, 0.0] };
        for offset in offsets {
            let scale = scale_of(tile, half, pitch);
            // Those at the sides lean outwards.
            s.over(scale.placed(
                at(offset * half, y + offset * offset * pitch * 0.25),
                1.0,
                -offset * 26.0,
            ));
        }
    }
    s
}

fn scale_of(tile: Tile, half: f64, pitch: f64) -> Sketch {
    let mut s = Sketch::default();
    let (w, h) = (half * 0.4, pitch * 1.55);
    if tile == Tile::Pronged {
        let tongue = [
            (-0.5, 1.15),
            (-0.55, 1.62),
            (-0.22, 1.3),
            (0.0, 1.95),
            (0.22, 1.3),
            (0.55, 1.62),
            (0.5, 1.15),
        ];
        let tongue: Vec<_> = tongue.iter().map(|(x, y)| at(x * w * 0.7, y * pitch)).collect();
        s.part(Path::straight(&tongue), Ink::Outline);
    }
    let scale = Path::from(at(-w, -pitch * 0.2))
        .cubic(at(-w * 1.25, h * 0.8), at(-w * 0.6, h), at(0.0, h))
        .cubic(at(w * 0.6, h), at(w * 1.25, h * 0.8), at(w, -pitch * 0.2))
        .quad(at(0.0, -pitch * 0.35), at(-w, -pitch * 0.2));
    s.part(scale, Ink::Outline);
    if tile == Tile::Woody {
        let ridge =
            Path::from(at(-w * 0.95, h * 0.62)).quad(at(0.0, h * 0.86), at(w * 0.95, h * 0.62));
        s.stroke(ridge, Ink::Vein);
        s.add(Path::ellipse(at(0.0, h * 0.74), w * 0.16, w * 0.13), Ink::Vein, Fill::Paper);
    }
    s
}

/// Hanging from a twig by its foot.
fn hung(cone: Sketch) -> Sketch {
    let mut s = Sketch::default();
    s.stalk(&[at(-0.8, 0.3), at(0.0, 0.36), at(0.8, 0.24)], 0.16, 0.12);
    s.stalk(&[at(0.0, 0.3), at(0.0, 0.1), at(0.0, -0.1)], 0.1, 0.12);
    s.over(cone.placed(at(0.0, -0.02), 1.0, 180.0));
    s
}

/// Upright on a twig; the upper scales have fallen, the spindle stands bare.
fn breaking_up(s: &mut Sketch) {
    s.stalk(&[at(-0.9, -0.16), at(0.0, -0.1), at(0.9, -0.2)], 0.2, 0.15);
    s.stalk(&[at(0.0, 0.6), at(0.0, 1.5), at(0.0, 2.15)], 0.12, 0.04);
    for step in 0..5 {
        let y = 1.62 + 0.1 * f64::from(step);
        s.stroke(Path::straight(&[at(-0.05, y), at(0.05, y + 0.03)]), Ink::Vein);
    }
    s.over(tiles(0.46, 1.5, 8, Tile::Thin, &|share| 1.0 - 0.35 * share * share));
    for (x, y, turn) in [(0.72, 1.55, -70.0), (-0.78, 1.2, 60.0), (0.8, 0.62, -120.0)] {
        s.over(scale_of(Tile::Thin, 0.46, 0.19).placed(at(x, y), 1.0, turn));
    }
}

/// Few oblong scales in pairs, open at the top.
fn thin_scales(s: &mut Sketch) {
    let scale = |wide: f64, tall: f64| {
        Path::from(at(-wide * 0.5, 0.0))
            .cubic(at(-wide * 1.2, tall * 0.5), at(-wide * 0.9, tall * 0.92), at(0.0, tall))
            .cubic(at(wide * 0.9, tall * 0.92), at(wide * 1.2, tall * 0.5), at(wide * 0.5, 0.0))
    };
    s.stalk(&[at(0.0, -0.5), at(0.0, -0.2), at(0.0, 0.05)], 0.12, 0.14);
    for (turn, y, wide, tall) in [
        (0.0, 0.34, 0.2, 0.95),
        (-12.0, 0.26, 0.2, 0.98),
        (12.0, 0.26, 0.2, 0.98),
        (-29.0, 0.12, 0.21, 0.94),
        (29.0, 0.12, 0.21, 0.94),
        (0.0, 0.0, 0.24, 0.84),
        (-46.0, 0.0, 0.16, 0.5),
        (46.0, 0.0, 0.16, 0.5),
    ] {
        let turn: f64 = turn;
        let mut one = Sketch::default();
        one.part(scale(wide, tall), Ink::Outline);
        one.stroke(Path::straight(&[at(0.0, tall * 0.5), at(0.0, tall * 0.88)]), Ink::Vein);
        s.over(one.placed(at(-turn * 0.001, y), 1.0, turn));
    }
    s.part(Path::ellipse(at(0.0, 0.02), 0.15, 0.06), Ink::Outline);
}

/// A ball of shields that meet at their edges, each with a point in its middle.
fn shields(s: &mut Sketch) {
    s.stalk(&[at(0.0, 1.45), at(0.0, 1.15), at(0.0, 0.9)], 0.12, 0.16);
    s.ball(at(0.0, 0.0), 0.98);
    let corners = [
        at(0.0, 0.42),
        at(0.42, 0.2),
        at(0.4, -0.26),
        at(0.0, -0.46),
        at(-0.42, -0.24),
        at(-0.4, 0.22),
    ];
    s.part(Path::straight(&corners), Ink::Outline);
    for corner in corners {
        let rim = corner * (0.98 / corner.length());
        s.stroke(Path::straight(&[corner, rim]), Ink::Outline);
    }
    let mut knobs = vec![at(0.0, 0.0)];
    knobs
        .extend([0.0, 60.0, 120.0, 180.0, 240.0, 300.0].map(|turn| Point::polar(0.72, turn + 2.0)));
    for knob in knobs {
        s.add(
            Path::from(knob + at(-0.06, 0.0)).quad(knob + at(0.0, -0.1), knob + at(0.06, 0.0)),
            Ink::Vein,
            Fill::Open,
        );
    }
}

/// A ball of three grown-together scales: a seam of three rays at its top.
fn berry_like(s: &mut Sketch) {
    for (x, y, big) in [(-0.78, -0.28, 0.62), (0.82, -0.12, 0.74)] {
        s.stalk(&[at(0.0, 1.25), at(x * 0.6, 0.9), at(x, y + big * 0.8)], 0.08, 0.08);
        berry_cone(s, x, y, big);
    }
    s.stalk(&[at(-0.1, 2.0), at(0.0, 1.5), at(0.02, 1.0)], 0.14, 0.12);
    for (y, side) in [(1.72, -1.0), (1.5, 1.0), (1.25, -1.0)] {
        for rise in [8.0, 52.0] {
            let tip = at(0.0, y) + Point::polar(0.78, if side > 0.0 { rise } else { 180.0 - rise });
            let across = (tip - at(0.0, y)).across() * 0.06;
            let blade = Path::from(at(0.0, y))
                .quad(at(0.0, y).towards(tip, 0.4) + across, tip)
                .quad(at(0.0, y).towards(tip, 0.4) - across, at(0.0, y));
            s.part(blade, Ink::Outline);
        }
    }
}

fn berry_cone(s: &mut Sketch, x: f64, y: f64, big: f64) {
    let centre = at(x, y);
    s.ball(centre, big);
    let seam = centre + at(0.02, -0.3) * big;
    for turn in [95.0, 215.0, 335.0] {
        let end = seam + Point::polar(0.3 * big, turn);
        s.stroke(Path::straight(&[seam, end]), Ink::Outline);
    }
    // Light on the side.
    s.stroke(
        Path::from(centre + at(-0.72, 0.1) * big)
            .quad(centre + at(-0.66, 0.5) * big, centre + at(-0.3, 0.7) * big),
        Ink::Vein,
    );
}

/// A seed in an open fleshy cup, one from the side and one into the cup.
fn cup_aril(s: &mut Sketch) {
    s.stalk(&[at(-1.5, 1.18), at(0.0, 1.3), at(1.5, 1.12)], 0.14, 0.11);
    for step in 0..7 {
        let x = -1.3 + 0.43 * f64::from(step);
        for up in [1.0, -0.8] {
            let foot = at(x, 1.24);
            let tip = foot + at(0.22, 0.62 * up);
            // Below, where the cups hang, there is no room.
            if up < 0.0 && x > -1.1 {
                continue;
            }
            let out = (tip - foot).across() * 0.09;
            let leaf = Path::from(foot)
                .quad(foot.towards(tip, 0.5) + out, tip)
                .quad(foot.towards(tip, 0.5) - out, foot);
            s.part(leaf, Ink::Outline);
        }
    }
    for (x, size) in [(-0.6, 0.9), (0.75, 1.0)] {
        s.stalk(&[at(x, 1.2), at(x, 1.0), at(x, 0.82)], 0.08, 0.1);
        let p = |dx: f64, dy: f64| at(x + dx * size, 0.3 + dy * size);
        s.part(
            Path::from(p(-0.32, -0.36))
                .cubic(p(-0.62, 0.0), p(-0.5, 0.56), p(0.0, 0.58))
                .cubic(p(0.5, 0.56), p(0.62, 0.0), p(0.32, -0.36))
                .quad(p(0.0, -0.48), p(-0.32, -0.36)),
            Ink::Outline,
        );
        s.part(Path::ellipse(p(0.0, -0.36), 0.32 * size, 0.15 * size), Ink::Outline);
        s.add(Path::ellipse(p(0.0, -0.38), 0.19 * size, 0.1 * size), Ink::Outline, Fill::Solid);
    }
}
