//! A fruit as it hangs and as it comes off: its posture, its core, what is left of its calyx.

use super::{CalyxLeft, Core, Fill, Ink, Posture, Sketch};
use crate::svg::path::{Path, Point, at};

fn berry(s: &mut Sketch, centre: Point, size: f64) {
    s.ball(centre, size);
    let p = |x: f64, y: f64| centre + at(x, y) * size;
    s.stroke(Path::from(p(-0.66, 0.0)).quad(p(-0.6, 0.46), p(-0.22, 0.62)), Ink::Vein);
}

pub(super) fn posture(posture: Posture) -> Sketch {
    let mut s = Sketch::default();
    let down = posture == Posture::Drooping;
    for x in [-0.75, 0.0, 0.75] {
        let foot = at(x, 0.0);
        let line = if down {
            Path::from(foot).quad(at(x + 0.18, -0.3), at(x + 0.16, -0.75))
        } else {
            Path::from(foot).quad(at(x + 0.16, 0.3), at(x + 0.16, 0.75))
        };
        let end = line.end();
        s.stroke(line, Ink::Outline);
        let way = if down { -0.26 } else { 0.26 };
        berry(&mut s, end + at(0.0, way), 0.26);
        s.dot(end + at(0.02, way * 1.85), 0.03);
    }
    s.stalk(&[at(-1.2, -0.02), at(0.0, 0.06), at(1.2, 0.02)], 0.14, 0.1);
    s
}

/// Above what was picked, below what stays.
pub(super) fn core(core: Core) -> Sketch {
    let mut s = Sketch::default();
    s.stalk(&[at(0.05, -1.6), at(0.0, -1.3), at(0.0, -1.0)], 0.09, 0.11);
    for turn in [-78.0, -46.0, 46.0, 78.0] {
        let way = Point::polar(0.62, 90.0 + turn);
        s.lens(at(0.0, -1.0), at(way.x, -1.0 + way.y * 0.5 - 0.1), 0.16);
    }
    if core == Core::LeftOnPlant {
        let cone = Path::from(at(-0.24, -1.0))
            .cubic(at(-0.22, -0.6), at(-0.1, -0.34), at(0.0, -0.34))
            .cubic(at(0.1, -0.34), at(0.22, -0.6), at(0.24, -1.0));
        s.part(cone, Ink::Outline);
        for (x, y) in
            [(0.0, -0.5), (-0.08, -0.66), (0.08, -0.66), (-0.12, -0.84), (0.0, -0.8), (0.12, -0.84)]
        {
            s.dot(at(x, y), 0.02);
        }
    } else {
        s.part(Path::ellipse(at(0.0, -1.0), 0.2, 0.07), Ink::Outline);
    }
    for (y, count, pitch) in
        [(1.28, 2, 0.34), (1.02, 3, 0.36), (0.72, 4, 0.35), (0.42, 4, 0.38), (0.14, 5, 0.34)]
    {
        for index in 0..count {
            let x = pitch * (f64::from(index) - f64::from(count - 1) / 2.0);
            s.ball(at(x, y), 0.21);
        }
    }
    // The foot of the fruit, turned a little to the eye.
    let rim = Path::ellipse(at(0.0, -0.02), 0.42, 0.17);
    match core {
        Core::LeftOnPlant => s.add(rim, Ink::Outline, Fill::Solid),
        Core::StaysInFruit => {
            s.part(rim, Ink::Outline);
            s.part(Path::ellipse(at(0.0, -0.04), 0.26, 0.1), Ink::Outline);
            for x in [-0.13, 0.0, 0.13] {
                s.dot(at(x, -0.04), 0.02);
            }
        }
    }
    s
}

pub(super) fn calyx(left: CalyxLeft) -> Sketch {
    let mut s = Sketch::default();
    s.stalk(&[at(0.12, 1.5), at(0.03, 1.2), at(0.0, 0.8)], 0.09, 0.09);
    if left == CalyxLeft::StarCollar {
        for turn in [-82.0, -44.0, 0.0, 44.0, 82.0] {
            let way = Point::polar(1.05, 90.0 + turn);
            s.lens(at(0.0, 0.72), at(way.x, 0.72 + way.y * 0.42), 0.2);
        }
    }
    berry(&mut s, at(0.0, 0.0), 0.82);
    match left {
        CalyxLeft::Absent => s.dot(at(0.1, -0.62), 0.045),
        CalyxLeft::StarCollar => {
            for turn in [-56.0, -20.0, 20.0, 56.0] {
                let tip = at(0.0, 0.86) + Point::polar(0.62, -90.0 + turn);
                s.lens(at(0.0, 0.84), at(tip.x * 1.2, tip.y), 0.2);
            }
        }
        CalyxLeft::CrownAtTip => {
            let teeth: Vec<_> = (0..=10)
                .map(|i| {
                    let x = -0.36 + 0.072 * f64::from(i);
                    at(x * 1.12, if i % 2 == 0 { -0.98 } else { -0.8 } - 0.02)
                })
                .collect();
            let crown = Path::from(at(-0.32, -0.68))
                .then(&Path::straight(&teeth))
                .line(at(0.32, -0.68))
                .quad(at(0.0, -0.82), at(-0.32, -0.68));
            s.part(crown, Ink::Outline);
            s.stroke(
                Path::from(at(-0.32, -0.68)).quad(at(0.0, -0.56), at(0.32, -0.68)),
                Ink::Outline,
            );
        }
    }
    s
}
