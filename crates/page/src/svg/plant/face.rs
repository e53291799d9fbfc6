//! The upper face of a leaf: its cover, its marks, its dots; and the hairs under a lens.

use super::edge::edged;
use super::hair::{Hair, blot, felt, meal};
use super::outline::{Side, side};
use super::tone::Area;
use super::underside::turned;
use super::veins::Blade;
use super::{Face, Fill, Hairs, Ink, LeafDots, LeafMarks, Prickles, Shape, Sketch, Veins};
use crate::svg::path::{Path, Point, at};

/// From one line of a tone to the next.
const TONE: f64 = 0.062;

/// A blade without a stalk, whose foot is the origin and which is as long as 1.
pub(super) struct Plain {
    side: Side,
    pub(super) outline: Path,
}

impl Plain {
    pub(super) fn new(shape: Shape) -> Self {
        let side = side(shape);
        let right = edged(&side, None, 1.0).path;
        let outline = right.clone().then(&right.mirrored().reversed()).close();
        Self { side, outline }
    }

    /// Its outline on a short stalk.
    pub(super) fn sketch(&self) -> Sketch {
        let mut s = Sketch::default();
        s.stalk(&[at(0.02, -0.2), at(0.01, -0.1), at(0.0, 0.03)], 0.05, 0.035);
        s.part(self.outline.clone(), Ink::Outline);
        s
    }

    pub(super) fn midrib(&self, s: &mut Sketch) {
        s.straight(at(0.0, 0.0), at(0.0, 0.94), Ink::Vein);
    }

    pub(super) fn veins(&self, s: &mut Sketch, veins: Veins) {
        let edged = edged(&self.side, None, 1.0);
        let from = self.side.foot();
        let blade = Blade { side: &self.side, edged: &edged, from, small: true, ends: None };
        blade.draw(Some(veins), s);
    }

    /// Room for marks, clear of the edge.
    pub(super) fn area(&self) -> Area {
        Area::within(&self.outline).shrunk(0.84)
    }

    /// A tone of slanting lines in the whole blade but where these hold.
    pub(super) fn toned(&self, s: &mut Sketch, bare: &[Area]) {
        tone(s, &Area::within(&self.outline).shrunk(0.95), bare);
    }
}

/// A tone of slanting lines in an area but where others hold.
pub(super) fn tone(s: &mut Sketch, area: &Area, bare: &[Area]) {
    tone_of(s, TONE, area, bare);
}

/// The same with its lines so far apart.
pub(super) fn tone_of(s: &mut Sketch, gap: f64, area: &Area, bare: &[Area]) {
    for (a, b) in area.lines(gap, 38.0) {
        let steps = ((b - a).length() / (gap * 0.2)).floor().max(1.0);
        let mut from: Option<Point> = None;
        let mut step = 0.0;
        while step <= steps {
            let p = a.towards(b, step / steps);
            if bare.iter().any(|area| area.holds(p)) {
                if let Some(start) = from.take() {
                    s.straight(start, p, Ink::Vein);
                }
            } else if from.is_none() {
                from = Some(p);
            }
            step += 1.0;
        }
        if let Some(start) = from {
            s.straight(start, b, Ink::Vein);
        }
    }
}

/// A window of light on a shining face, beside the midrib.
pub(super) fn light(side: f64) -> Path {
    Path::from(at(0.06 * side, 0.16))
        .cubic(at(0.26 * side, 0.16), at(0.28 * side, 0.36), at(0.12 * side, 0.58))
        .quad(at(0.17 * side, 0.34), at(0.06 * side, 0.16))
        .close()
}

/// A streak that a finger has rubbed clean, across the right half.
pub(super) fn rubbed() -> Path {
    Path::from(at(0.06, 0.3))
        .cubic(at(0.1, 0.24), at(0.2, 0.32), at(0.24, 0.44))
        .cubic(at(0.24, 0.54), at(0.14, 0.5), at(0.06, 0.4))
        .close()
}

pub(super) fn surface(face: Face) -> Sketch {
    let leaf = Plain::new(Shape::Ovate);
    let mut s = leaf.sketch();
    let area = leaf.area();
    match face {
        Face::Smooth => leaf.veins(&mut s, Veins::Pinnate),
        Face::Hairy => {
            fringe(&mut s, &leaf.outline, Hair::Soft, 0.075);
            leaf.midrib(&mut s);
            cover(&mut s, &area.points(0.115), Hair::Soft, 0.075);
        }
        Face::Glossy => {
            let windows = [light(1.0), light(-1.0)];
            leaf.toned(&mut s, &windows.each_ref().map(Area::within));
            windows.into_iter().for_each(|window| s.stroke(window, Ink::Vein));
            leaf.midrib(&mut s);
        }
        Face::Rough => {
            leaf.midrib(&mut s);
            fringe(&mut s, &leaf.outline, Hair::Point, 0.05);
            cover(&mut s, &area.points(0.12), Hair::Point, 0.085);
        }
        Face::Waxy => {
            let clean = Area::within(&rubbed());
            for p in Area::within(&leaf.outline).shrunk(0.92).points(0.055) {
                if !clean.holds(p) {
                    s.dot(p, 0.009);
                }
            }
            s.stroke(rubbed(), Ink::Vein);
            leaf.midrib(&mut s);
        }
        Face::FeltedBelow => {
            s = turned(|s, area| felt(s, &area.points(0.06), 0.034));
        }
        Face::Wrinkled => wrinkled(&mut s, &leaf),
        Face::Pleated => s = pleated(),
        Face::Stinging => {
            leaf.midrib(&mut s);
            fringe(&mut s, &leaf.outline, Hair::Sting, 0.1);
            cover(&mut s, &area.points(0.2), Hair::Sting, 0.13);
        }
        Face::Mealy => {
            leaf.midrib(&mut s);
            meal(&mut s, &area.points(0.085), 0.018);
        }
    }
    s
}

/// Hairs all along an outline, outwards.
pub(super) fn fringe(s: &mut Sketch, outline: &Path, hair: Hair, long: f64) {
    let points = outline.flat(12);
    let mut since = 0.0;
    for pair in points.windows(2) {
        let [a, b] = pair else { continue };
        since += (*b - *a).length();
        // None close together at the tip and foot, nor where the stalk joins.
        if since < long * 0.95 || (b.x.abs() < 0.05 && b.y < 0.5) {
            continue;
        }
        since = 0.0;
        let out = (*b - *a).across() * -1.0;
        let degrees = libm::atan2(out.y, out.x).to_degrees();
        s.over(hair.placed(*b, long, degrees));
    }
}

/// Hairs on the face, standing up.
pub(super) fn cover(s: &mut Sketch, points: &[Point], hair: Hair, long: f64) {
    for (index, point) in points.iter().enumerate() {
        let lean = f64::from(index as u32 * 17 % 34) - 14.0;
        if point.x.abs() > long * 0.3 {
            s.over(hair.placed(*point - at(0.0, long * 0.5), long, 90.0 + lean));
        }
    }
}

/// Raised fields between sunken veins.
fn wrinkled(s: &mut Sketch, leaf: &Plain) {
    leaf.veins(s, Veins::Pinnate);
    for (index, p) in leaf.area().points(0.1).into_iter().enumerate() {
        if p.x.abs() < 0.035 {
            continue;
        }
        let wide = if index % 2 == 0 { 0.04 } else { 0.032 };
        let bulge = Path::from(p + at(-wide, -0.01)).cubic(
            p + at(-wide, 0.045),
            p + at(wide, 0.045),
            p + at(wide, -0.01),
        );
        s.stroke(bulge, Ink::Vein);
    }
}

/// Folded lengthwise like a fan: ridges from the foot, the upper edge in zigzag.
fn pleated() -> Sketch {
    let mut s = Sketch::default();
    s.stalk(&[at(0.0, -0.42), at(0.0, -0.2), at(0.0, 0.04)], 0.05, 0.045);
    let folds = 12;
    let turn = |fold: i32| 162.0 - 144.0 * f64::from(fold) / f64::from(folds);
    let end = |fold: i32| Point::polar(if fold % 2 == 0 { 0.86 } else { 1.0 }, turn(fold));
    let mut edge = vec![at(0.0, 0.0)];
    edge.extend((0..=folds).map(end));
    s.part(Path::straight(&edge), Ink::Outline);
    for fold in 1..folds {
        let ink = if fold % 2 == 0 { Ink::Vein } else { Ink::Outline };
        s.straight(Point::polar(0.06, turn(fold)), end(fold), ink);
        if fold % 2 == 1 {
            // The far slope of each fold lies in shade.
            for share in [0.5, 0.66, 0.82] {
                let (ridge, valley) = (end(fold) * share, end(fold + 1) * share);
                s.straight(ridge, ridge.towards(valley, 0.72), Ink::Vein);
            }
        }
    }
    s
}

pub(super) fn marks(marks: LeafMarks) -> Sketch {
    let shape = match marks {
        LeafMarks::WhiteMidline => Shape::Lanceolate,
        _ => Shape::Ovate,
    };
    let leaf = Plain::new(shape);
    let mut s = leaf.sketch();
    match marks {
        LeafMarks::None => leaf.toned(&mut s, &[]),
        LeafMarks::DarkSpotted => {
            for (index, p) in leaf.area().points(0.19).into_iter().enumerate() {
                blot(&mut s, p, if index % 2 == 0 { 0.05 } else { 0.036 }, 30.0 * index as f64);
            }
        }
        LeafMarks::WhiteFlecks => {
            let points = leaf.area().points(0.2);
            let flecks = points.into_iter().enumerate().map(|(index, p)| {
                Path::ellipse(p, 0.05, if index % 2 == 0 { 0.035 } else { 0.05 })
            });
            let flecks: Vec<_> = flecks.collect();
            leaf.toned(&mut s, &flecks.iter().map(Area::within).collect::<Vec<_>>());
            flecks.into_iter().for_each(|fleck| s.stroke(fleck, Ink::Vein));
        }
        LeafMarks::PaleBand => {
            let band =
                [(-0.5, 0.3), (0.0, 0.62), (0.5, 0.3), (0.5, 0.46), (0.0, 0.8), (-0.5, 0.46)];
            let band: Vec<_> = band.iter().map(|(x, y)| at(*x, *y)).collect();
            leaf.toned(&mut s, &[Area::within(&Path::straight(&band).close())]);
            for (foot, far) in [(0.62, 0.27), (0.8, 0.18)] {
                let edge = [at(-far, foot - far * 0.66), at(0.0, foot), at(far, foot - far * 0.66)];
                s.stroke(Path::straight(&edge), Ink::Vein);
            }
        }
        LeafMarks::WhiteMidline => {
            let line = Path::straight(&[
                at(-0.035, -0.1),
                at(0.035, -0.1),
                at(0.025, 1.1),
                at(-0.025, 1.1),
            ]);
            leaf.toned(&mut s, &[Area::within(&line.close())]);
            for x in [-0.03, 0.03] {
                s.straight(at(x, 0.06), at(x * 0.6, 0.93), Ink::Vein);
            }
            return s;
        }
        LeafMarks::WhiteMargined => {
            let inner = Area::within(&leaf.outline).shrunk(0.72);
            tone(&mut s, &inner, &[]);
            s.stroke(leaf.outline.map(|p| at(p.x, p.y - 0.5) * 0.74 + at(0.0, 0.5)), Ink::Vein);
        }
    }
    leaf.midrib(&mut s);
    s
}

pub(super) fn dots(dots: LeafDots) -> Sketch {
    let leaf = Plain::new(Shape::Elliptic);
    let mut s = leaf.sketch();
    let area = leaf.area();
    match dots {
        LeafDots::None => leaf.veins(&mut s, Veins::Pinnate),
        LeafDots::Translucent => {
            // Held against the light the blade is dark and the dots are clear.
            let windows = area.points(0.11).into_iter().map(|p| Path::ellipse(p, 0.022, 0.022));
            let windows: Vec<_> = windows.collect();
            leaf.toned(&mut s, &windows.iter().map(Area::within).collect::<Vec<_>>());
            windows.into_iter().for_each(|window| s.part(window, Ink::Vein));
        }
        LeafDots::Black => {
            area.points(0.13).into_iter().for_each(|p| s.dot(p, 0.02));
            leaf.midrib(&mut s);
        }
        LeafDots::Pitted => {
            for p in area.points(0.11) {
                let pit = Path::from(p + at(-0.026, 0.008)).cubic(
                    p + at(-0.02, -0.032),
                    p + at(0.02, -0.032),
                    p + at(0.026, 0.008),
                );
                s.stroke(pit, Ink::Vein);
            }
            leaf.midrib(&mut s);
        }
        LeafDots::BrownBelow => {
            s = turned(|s, area| area.points(0.07).into_iter().for_each(|p| s.dot(p, 0.015)));
        }
        LeafDots::GlandDottedBelow => {
            s = turned(|s, area| {
                for p in area.points(0.085) {
                    s.part(Path::ellipse(p, 0.024, 0.024), Ink::Vein);
                    s.dot(p, 0.006);
                }
            });
        }
    }
    s
}

/// A slice of blade under the lens, hairs on its back.
pub(super) fn hairs(hairs: Hairs) -> Sketch {
    let mut s = Sketch::default();
    let top = |x: f64| 0.05 * (1.0 - x * x);
    let back: Vec<_> = (-6..=6).map(|i| at(f64::from(i) / 6.0, top(f64::from(i) / 6.0))).collect();
    let belly: Vec<_> = back.iter().rev().map(|p| *p - at(0.0, 0.26)).collect();
    s.part(Path::smooth(&back).then(&Path::smooth(&belly)), Ink::Outline);
    for index in 0..13 {
        let x = -0.9 + 0.15 * f64::from(index);
        s.straight(at(x, top(x) - 0.08), at(x, top(x) - 0.18), Ink::Vein);
    }
    let mut row = |hair: Hair, count: i32, long: f64, lean: &dyn Fn(i32) -> f64| {
        for index in 0..count {
            let x = -0.88 + 1.76 * (f64::from(index) + 0.5) / f64::from(count);
            // What lies flat begins farther back.
            let x = if hair == Hair::Flat { x - 0.22 } else { x };
            s.over(hair.placed(at(x, top(x)), long, 90.0 + lean(index)));
        }
    };
    match hairs {
        Hairs::None => {}
        Hairs::Sparse => row(Hair::Soft, 4, 0.5, &|i| f64::from(i * 17 % 30) - 14.0),
        Hairs::SoftSimple => row(Hair::Soft, 15, 0.55, &|i| f64::from(i * 17 % 30) - 14.0),
        Hairs::Bristly => row(Hair::Bristle, 8, 0.72, &|i| f64::from(i * 13 % 24) - 12.0),
        Hairs::Glandular => row(Hair::Glandular, 8, 0.55, &|i| f64::from(i * 17 % 20) - 10.0),
        Hairs::BranchedFelted => {
            for long in [0.34, 0.5] {
                row(Hair::Branched, 12, long, &|i| f64::from(i * 37 % 110) - 55.0);
            }
        }
        Hairs::Silky => {
            row(Hair::Flat, 9, 0.6, &|_| 2.0);
            row(Hair::Flat, 8, 0.6, &|_| 14.0);
        }
        Hairs::Stinging => row(Hair::Sting, 5, 0.78, &|i| f64::from(i * 17 % 22) - 11.0),
        Hairs::StarShaped => row(Hair::Star, 5, 0.42, &|_| 0.0),
        Hairs::Scaly => row(Hair::Scale, 5, 0.36, &|_| 0.0),
    }
    s
}

/// The tip of a leaf with the small hooks of its edge, enlarged.
pub(super) fn prickles(way: Prickles) -> Sketch {
    let mut s = Sketch::default();
    let right = Path::from(at(0.34, -0.7)).cubic(at(0.36, 0.0), at(0.22, 0.5), at(0.0, 1.0));
    s.add(right.clone().then(&right.mirrored().reversed()), Ink::Outline, Fill::Paper);
    s.straight(at(0.0, -0.7), at(0.0, 0.8), Ink::Vein);
    let points = right.flat(7);
    for pair in points.windows(2) {
        let [a, b] = pair else { continue };
        let (along, out) = ((*b - *a) * (1.0 / (*b - *a).length()), (*b - *a).across() * -1.0);
        let ahead = if way == Prickles::Forward { along } else { along * -1.0 };
        let foot = a.towards(*b, 0.4);
        let hook = Path::from(foot - along * 0.07)
            .quad(foot + out * 0.1, foot + out * 0.1 + ahead * 0.15)
            .quad(foot + out * 0.02 + ahead * 0.04, foot + along * 0.07);
        s.add(hook.clone(), Ink::Vein, Fill::Solid);
        s.add(hook.mirrored(), Ink::Vein, Fill::Solid);
    }
    s
}
