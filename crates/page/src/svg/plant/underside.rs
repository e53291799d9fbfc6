//! The lower side of a leaf: a blade seen from below, a corner folded over so that some of the
//! upper side shows as a tone to compare with.

use super::face::{Plain, light, rubbed, tone};
use super::hair::{Hair, felt, meal};
use super::tone::Area;
use super::{Ink, Shape, Sheen, Sketch, Underside};
use crate::svg::path::{Path, Point, at};

/// A blade as long as 1 whose upper corner is folded over along a line: what is left of it, and the
/// corner where it comes to lie.
fn parted() -> (Path, Path) {
    let on_fold = at(0.0, 0.66);
    let along = Point::polar(1.0, -14.0);
    let height = |p: Point| {
        let to = p - on_fold;
        to.y * along.x - to.x * along.y
    };
    let outline = Plain::new(Shape::Ovate).outline.flat(2);
    let (mut body, mut corner) = (Vec::new(), Vec::new());
    for (here, next) in outline.iter().copied().zip(outline.iter().copied().cycle().skip(1)) {
        let (high, then) = (height(here), height(next));
        if high <= 0.0 {
            body.push(here);
        } else {
            corner.push(here);
        }
        if (high <= 0.0) != (then <= 0.0) {
            let crossed = here.towards(next, high / (high - then));
            body.push(crossed);
            corner.push(crossed);
        }
    }
    // Mirrored in the line of the fold.
    let folded = corner.into_iter().map(|p| p + along.across() * (-2.0 * height(p)));
    let folded: Vec<_> = folded.collect();
    (Path::straight(&body).close(), Path::straight(&folded).close())
}

/// A blade with its corner folded over, and what both bear.
fn folded(body: impl FnOnce(&mut Sketch, &Area), over: impl FnOnce(&mut Sketch, &Area)) -> Sketch {
    let mut s = Sketch::default();
    s.stalk(&[at(0.03, -0.22), at(0.01, -0.1), at(0.0, 0.03)], 0.055, 0.045);
    let (lower, corner) = parted();
    s.part(lower.clone(), Ink::Outline);
    body(&mut s, &Area::within(&lower).shrunk(0.94));
    s.part(corner.clone(), Ink::Outline);
    over(&mut s, &Area::within(&corner).shrunk(0.9));
    s
}

/// The lower side, whose midrib stands out; the corner shows the upper side.
fn blade(draw: impl FnOnce(&mut Sketch, &Area)) -> Sketch {
    let body = |s: &mut Sketch, area: &Area| {
        draw(s, area);
        let rib = [at(-0.02, 0.0), at(-0.01, 0.64), at(0.01, 0.64), at(0.02, 0.0)];
        s.part(Path::straight(&rib), Ink::Vein);
    };
    folded(body, |s, area| tone(s, area, &[]))
}

/// The upper side; the corner shows the lower side.
pub(super) fn turned(draw: impl FnOnce(&mut Sketch, &Area)) -> Sketch {
    let body = |s: &mut Sketch, _: &Area| {
        s.straight(at(0.0, 0.0), at(0.0, 0.63), Ink::Vein);
        side_veins(s);
    };
    folded(body, draw)
}

fn side_veins(s: &mut Sketch) {
    for side in [1.0, -1.0] {
        for y in [0.06, 0.16, 0.26, 0.36] {
            s.thread(
                &[at(0.0, y), at(0.13 * side, y + 0.08), at(0.24 * side, y + 0.18)],
                Ink::Vein,
            );
        }
    }
}

/// A band beside the midrib, from foot to fold.
fn band(side: f64) -> Path {
    let x = |near: f64| near * side;
    Path::from(at(x(0.05), 0.04))
        .cubic(at(x(0.08), 0.2), at(x(0.08), 0.4), at(x(0.07), 0.6))
        .line(at(x(0.15), 0.58))
        .cubic(at(x(0.2), 0.4), at(x(0.2), 0.2), at(x(0.09), 0.06))
        .close()
}

pub(super) fn underside(state: Underside) -> Sketch {
    blade(|s, area| match state {
        Underside::Green => tone(s, area, &[]),
        Underside::Pale => side_veins(s),
        Underside::Glaucous => {
            let clean = Area::within(&rubbed());
            for p in area.points(0.05) {
                if !clean.holds(p) {
                    s.dot(p, 0.009);
                }
            }
            s.stroke(rubbed(), Ink::Vein);
        }
        Underside::WhiteBanded => {
            let bands = [band(1.0), band(-1.0)];
            tone(s, area, &bands.each_ref().map(Area::within));
            bands.into_iter().for_each(|band| s.stroke(band, Ink::Vein));
        }
        Underside::WhiteMarked => {
            let marks = area.shrunk(0.86).points(0.15).into_iter();
            let marks: Vec<_> = marks.map(wedge).collect();
            tone(s, area, &marks.iter().map(Area::within).collect::<Vec<_>>());
            marks.into_iter().for_each(|mark| s.stroke(mark, Ink::Vein));
        }
        Underside::WhiteFelted => felt(s, &area.points(0.075), 0.04),
        Underside::Silky => {
            for side in [1.0, -1.0] {
                for row in 0..8 {
                    for column in 0..2 {
                        let y = 0.04 + 0.062 * f64::from(row);
                        let x = 0.04 + 0.12 * f64::from(column) + 0.02 * f64::from(row % 2);
                        let hair = Hair::Flat.placed(at(x, y), 0.14, 138.0);
                        s.over(if side > 0.0 { hair } else { hair.mirrored() });
                    }
                }
            }
        }
        Underside::Cobwebby => cobweb(s, area),
        Underside::RedTinged => {
            tone(s, area, &[]);
            for (a, b) in area.lines(0.062, -38.0) {
                s.straight(a, b, Ink::Vein);
            }
        }
        Underside::Mealy => meal(s, &area.points(0.075), 0.017),
        Underside::RustyFelted => {
            felt(s, &area.points(0.075), 0.04);
            area.points(0.06).into_iter().for_each(|p| s.dot(p, 0.012));
        }
    })
}

/// A small mark like the wings of a moth.
fn wedge(p: Point) -> Path {
    Path::straight(&[
        p + at(-0.045, 0.03),
        p,
        p + at(0.045, 0.03),
        p + at(0.045, -0.03),
        p,
        p + at(-0.045, -0.03),
    ])
    .close()
}

/// Long threads across one another.
fn cobweb(s: &mut Sketch, area: &Area) {
    for (gap, degrees) in [(0.11, 12.0), (0.12, 65.0), (0.13, 118.0), (0.17, 160.0)] {
        for (a, b) in area.lines(gap, degrees) {
            let bend = (b - a).across() * ((b - a).length() * 0.08);
            s.stroke(Path::from(a).quad(a.towards(b, 0.5) + bend, b), Ink::Vein);
        }
    }
}

pub(super) fn sheen(sheen: Sheen) -> Sketch {
    blade(|s, area| match sheen {
        Sheen::Matt => area.points(0.06).into_iter().for_each(|p| s.dot(p, 0.011)),
        Sheen::Glossy => {
            let windows = [light(1.0), light(-1.0)];
            tone(s, area, &windows.each_ref().map(Area::within));
            windows.into_iter().for_each(|window| s.stroke(window, Ink::Vein));
        }
    })
}
