//! A joint of a stem, with the foot of a leaf: what stands there.

use super::{Ink, Node, Sketch, StemSheath, Stipules};
use crate::svg::path::{Path, at};

const HALF: f64 = 0.13;

fn stem(s: &mut Sketch) {
    let side = Path::straight(&[at(HALF, -1.1), at(HALF, 1.1)]);
    s.part(side.clone().then(&side.mirrored().reversed()), Ink::Outline);
}

/// The stalk of a leaf and the lower part of its blade.
fn leaf(s: &mut Sketch) {
    let blade = Path::from(at(0.68, 0.5))
        .cubic(at(0.66, 0.8), at(0.86, 1.14), at(1.3, 1.16))
        .cubic(at(1.28, 0.8), at(1.06, 0.44), at(0.68, 0.5));
    s.part(blade, Ink::Outline);
    s.straight(at(0.68, 0.5), at(1.18, 1.04), Ink::Vein);
    s.stalk(&[at(0.05, -0.16), at(0.34, 0.14), at(0.72, 0.54)], 0.15, 0.1);
}

/// The bud in the corner between leaf and stem.
fn bud(s: &mut Sketch) {
    s.lens(at(0.14, 0.08), at(0.24, 0.46), 0.26);
}

pub(super) fn stipules(kind: Stipules) -> Sketch {
    let mut s = Sketch::default();
    stem(&mut s);
    if kind != Stipules::Sheath {
        bud(&mut s);
    }
    leaf(&mut s);
    match kind {
        Stipules::Absent => {}
        Stipules::Small => {
            s.lens(at(0.14, -0.1), at(0.38, -0.18), 0.16);
            s.lens(at(0.02, -0.06), at(0.0, 0.24), 0.16);
        }
        Stipules::Leafy => {
            for (tip, vein) in [((0.72, -0.56), 0.8), ((-0.44, 0.42), 0.8)] {
                let (foot, tip) = (at(0.08, -0.1), at(tip.0, tip.1));
                s.lens(foot, tip, 0.3);
                s.straight(foot, foot.towards(tip, vein), Ink::Vein);
            }
        }
        Stipules::Sheath => tube(&mut s, false),
    }
    s
}

/// A tube round the stem above the foot of a leaf; a papery one is torn at its upper edge.
fn tube(s: &mut Sketch, torn: bool) {
    let (half, top) = (HALF + 0.06, 0.56);
    let mut rim = vec![at(half, top)];
    let steps = if torn { 7 } else { 2 };
    for step in 1..steps {
        let x = half - 2.0 * half * f64::from(step) / f64::from(steps);
        let y = match (torn, step % 2) {
            (true, 1) => top + 0.2,
            (true, _) => top - 0.02,
            _ => top - 0.06,
        };
        rim.push(at(x, y));
    }
    rim.push(at(-half, top));
    rim.push(at(-half - 0.03, -0.16));
    let tube = Path::straight(&rim).quad(at(0.0, -0.28), at(half, -0.16)).line(at(half, top));
    s.part(tube, Ink::Outline);
    for x in [-0.1, 0.0, 0.1] {
        s.straight(at(x, -0.12), at(x, 0.44), Ink::Vein);
    }
}

pub(super) fn sheath(kind: StemSheath) -> Sketch {
    let mut s = Sketch::default();
    stem(&mut s);
    leaf(&mut s);
    s.stroke(Path::from(at(-HALF, -0.16)).quad(at(0.0, -0.24), at(HALF, -0.16)), Ink::Outline);
    if kind == StemSheath::PaperySheath {
        tube(&mut s, true);
    }
    s
}

/// Two joints, each with a pair of leaf stalks.
pub(super) fn swelling(node: Node) -> Sketch {
    let mut s = Sketch::default();
    let joints = [-0.6, 0.6];
    for y in joints {
        for side in [1.0, -1.0] {
            let stalk = [at(0.0, y), at(0.4 * side, y + 0.16), at(0.72 * side, y + 0.4)];
            s.stalk(&stalk, 0.12, 0.08);
            s.lens(at(0.7 * side, y + 0.38), at(1.1 * side, y + 0.6), 0.24);
        }
    }
    let wide = |y: f64| match node {
        Node::Even => HALF,
        Node::Swollen => {
            let near = joints.map(|joint| (y - joint).abs()).into_iter().fold(1.0, f64::min);
            HALF + 0.15 * libm::exp(-near * near * 40.0)
        }
    };
    let side = |out: f64| -> Vec<_> {
        (-11..=11).map(|i| f64::from(i) / 9.0).map(|y| at(wide(y) * out, y)).collect()
    };
    let (right, left) = (Path::smooth(&side(1.0)), Path::smooth(&side(-1.0)));
    s.part(right.then(&left.reversed()), Ink::Outline);
    for y in joints {
        let half = wide(y);
        s.stroke(Path::from(at(-half, y)).quad(at(0.0, y - 0.08), at(half, y)), Ink::Outline);
    }
    s
}
