//! Umbels from near by: the bracts under the whole, those under a small umbel, the dark flower.

use super::{Bracteoles, Bracts, DarkFlower, Fill, Ink, Sketch};
use crate::svg::path::{Path, Point, at};

/// The stalk and the rays of an umbel, whose joint is the origin.
fn rays(s: &mut Sketch, far: f64) -> Vec<Point> {
    s.stalk(&[at(0.02, -1.05), at(0.01, -0.5), at(0.0, 0.02)], 0.09, 0.07);
    let turns = [-66.0, -40.0, -14.0, 14.0, 40.0, 66.0];
    let ends: Vec<_> = turns.iter().map(|turn| Point::polar(far, 90.0 + turn)).collect();
    for end in &ends {
        s.straight(at(0.0, 0.0), *end, Ink::Outline);
    }
    ends
}

/// A leaf of one line: narrow and pointed.
fn narrow(s: &mut Sketch, tip: Point) {
    s.lens(at(0.0, 0.0), tip, 0.07);
}

pub(super) fn bracts(kind: Bracts) -> Sketch {
    let mut s = Sketch::default();
    let ends = rays(&mut s, 1.0);
    for end in ends {
        for turn in [-50.0, -25.0, 0.0, 25.0, 50.0] {
            let way = Point::polar(0.17, turn + libm::atan2(end.y, end.x).to_degrees());
            s.straight(end, end + way, Ink::Vein);
            s.dot(end + way, 0.03);
        }
    }
    match kind {
        Bracts::Absent => {}
        Bracts::Few => {
            for turn in [-118.0, 112.0] {
                narrow(&mut s, Point::polar(0.5, 90.0 + turn));
            }
        }
        Bracts::ManyDivided => {
            for turn in [-96.0, 96.0, -124.0, 124.0, -150.0, 150.0] {
                cut_bract(&mut s, Point::polar(0.66, 90.0 + turn));
            }
        }
    }
    s
}

/// A bract cut into narrow lobes like a feather.
fn cut_bract(s: &mut Sketch, tip: Point) {
    s.straight(at(0.0, 0.0), tip, Ink::Outline);
    for share in [0.4, 0.62, 0.82] {
        for turn in [-38.0, 38.0] {
            let root = tip * share;
            s.straight(root, root + tip.turned(turn) * (0.44 - 0.28 * share), Ink::Outline);
        }
    }
}

/// One small umbel, enlarged.
pub(super) fn bracteoles(kind: Bracteoles) -> Sketch {
    let mut s = Sketch::default();
    for end in rays(&mut s, 0.8) {
        open_flower(&mut s, end, 0.17);
    }
    match kind {
        Bracteoles::Absent => {}
        Bracteoles::Few => {
            for turn in [-112.0, 110.0, 150.0] {
                narrow(&mut s, Point::polar(0.5, 90.0 + turn));
            }
        }
        Bracteoles::Many => {
            for turn in [-92.0, 92.0, -112.0, 112.0, -132.0, 132.0, -152.0, 152.0] {
                narrow(&mut s, Point::polar(0.55, 90.0 + turn));
            }
        }
        Bracteoles::DeflexedOneSided => {
            for (x, long) in [(0.1, 0.95), (0.26, 0.9), (0.42, 0.78)] {
                let line = Path::from(at(0.0, 0.0)).cubic(
                    at(x * 0.8, 0.1),
                    at(x * 1.2, -0.1),
                    at(x * 1.3, -long),
                );
                let back = Path::from(at(0.0, -0.06)).cubic(
                    at(x * 0.6, 0.0),
                    at(x * 0.9, -0.2),
                    at(x * 1.3, -long),
                );
                s.part(line.then(&back.reversed()), Ink::Outline);
            }
        }
    }
    s
}

/// Five small petals.
fn open_flower(s: &mut Sketch, centre: Point, size: f64) {
    for turn in [90.0, 162.0, 234.0, 306.0, 18.0] {
        let petal = centre + Point::polar(size * 0.6, turn);
        s.part(Path::ellipse(petal, size * 0.44, size * 0.44), Ink::Outline);
    }
    s.dot(centre, size * 0.24);
}

/// An umbel from above.
pub(super) fn dark_flower(there: DarkFlower) -> Sketch {
    let mut s = Sketch::default();
    for (far, count, first) in [(0.86, 11, 0.0), (0.46, 6, 20.0)] {
        for step in 0..count {
            let turn = first + 360.0 * f64::from(step) / f64::from(count);
            let middle = Point::polar(far, turn);
            for around in 0..6 {
                let flower = middle + Point::polar(0.13, 60.0 * f64::from(around) + turn);
                s.part(Path::ellipse(flower, 0.062, 0.062), Ink::Vein);
            }
            s.part(Path::ellipse(middle, 0.062, 0.062), Ink::Vein);
        }
    }
    match there {
        DarkFlower::Absent => {
            for around in 0..6 {
                let flower = Point::polar(0.13, 60.0 * f64::from(around));
                s.part(Path::ellipse(flower, 0.062, 0.062), Ink::Vein);
            }
            s.part(Path::ellipse(at(0.0, 0.0), 0.062, 0.062), Ink::Vein);
        }
        DarkFlower::Present => {
            for turn in [90.0, 162.0, 234.0, 306.0, 18.0] {
                let petal = Path::ellipse(Point::polar(0.085, turn), 0.075, 0.075);
                s.add(petal, Ink::Vein, Fill::Solid);
            }
        }
    }
    s
}
