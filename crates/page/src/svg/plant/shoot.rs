//! Twigs of conifers: sprays of scales, and needles round a twig.

use super::{Build, Ink, NeedleStand, Sketch, Spray};
use crate::svg::path::{Path, Point, at};

/// What is told of a twig with needles or scales.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Twig {
    pub(crate) build: Option<Build>,
    pub(crate) spray: Option<Spray>,
    pub(crate) stand: Option<NeedleStand>,
    /// Needles in a bundle.
    pub(crate) in_bundle: Option<u8>,
}

impl Twig {
    /// The characters that its drawing shows, where they are told.
    pub(crate) fn shows(&self) -> &'static [&'static str] {
        match (self.build, self.spray, self.stand) {
            (Some(Build::Scale), Some(_), _) => &["leaf_type", "spray_form"],
            (Some(Build::Scale), None, _) => &["leaf_type"],
            (_, _, Some(NeedleStand::Bundle)) => {
                &["leaf_type", "needle_whorl", "needles_per_bundle"]
            }
            (_, Some(Spray::Flat), Some(NeedleStand::Pairs | NeedleStand::Threes)) => {
                &["leaf_type", "spray_form"]
            }
            (_, Some(_), Some(NeedleStand::Pairs | NeedleStand::Threes)) => {
                &["leaf_type", "needle_whorl"]
            }
            _ => &["leaf_type", "spray_form", "needle_whorl"],
        }
    }

    /// The end of a twig; none where neither its spread nor how its leaves stand is told.
    pub(crate) fn sketch(&self) -> Option<Sketch> {
        let mut sketch = match (self.build?, self.spray, self.stand) {
            (Build::Scale, Some(Spray::Flat), _) => flat_spray(),
            (Build::Scale, Some(Spray::Pendulous), _) => hanging_spray(),
            (Build::Scale, Some(Spray::Bushy), _) => bushy_spray(),
            (Build::Scale, None, _) => {
                cord(9, self.stand != Some(NeedleStand::Threes)).placed(at(0.0, 0.0), 1.0, 0.0)
            }
            (Build::Needle, _, Some(NeedleStand::Bundle)) => {
                bundles(self.in_bundle.unwrap_or(3).clamp(2, 5))
            }
            (Build::Needle, Some(Spray::Flat), _) => parted(),
            (Build::Needle, _, Some(NeedleStand::Pairs)) => rings(2),
            (Build::Needle, _, Some(NeedleStand::Threes)) => rings(3),
            (Build::Needle, Some(_), _) | (Build::Needle, _, Some(NeedleStand::Spiral)) => {
                all_round()
            }
            _ => return None,
        };
        let (low, high) = sketch.bounds();
        let middle = low.towards(high, 0.5);
        sketch.spot("spray_form", middle);
        sketch.spot("needle_whorl", middle);
        sketch.spot("leaf_type", middle);
        Some(sketch)
    }
}

/// From one pair of scales to the next, for a shoot as wide as 1.
const PITCH: f64 = 0.62;

/// A shoot of scales that hug it, from the origin upwards, so many pairs long. A flat one has scales
/// on its face and folded ones on its edges; a round one has rows that overlap like tiles.
fn cord(pairs: i32, flat: bool) -> Sketch {
    let mut sketch = Sketch::default();
    // The lower scale lies over the foot of the next: from the tip down.
    for node in (0..pairs).rev() {
        let y = PITCH * f64::from(node);
        let slim = if node + 2 > pairs { 0.72 } else { 1.0 };
        if flat {
            let edge = Path::from(at(0.0, y - 0.1))
                .cubic(at(0.3 * slim, y - 0.12), at(0.5 * slim, y + 0.1), at(0.52 * slim, y + 0.62))
                .quad(at(0.3 * slim, y + 0.62), at(0.0, y + 0.45));
            sketch.part(edge.clone(), Ink::Outline);
            sketch.part(edge.mirrored(), Ink::Outline);
            let face = Path::from(at(0.0, y - 0.2))
                .quad(at(0.34 * slim, y + 0.06), at(0.0, y + 0.56))
                .quad(at(-0.34 * slim, y + 0.06), at(0.0, y - 0.2));
            sketch.part(face, Ink::Outline);
        } else {
            let tile = |x: f64, y: f64| {
                Path::from(at(x - 0.26 * slim, y - 0.05))
                    .quad(at(x - 0.26 * slim, y + 0.36), at(x, y + 0.66))
                    .quad(at(x + 0.26 * slim, y + 0.36), at(x + 0.26 * slim, y - 0.05))
                    .quad(at(x, y - 0.16), at(x - 0.26 * slim, y - 0.05))
            };
            for (x, lift) in [(-0.2, 0.3), (0.2, 0.3), (0.0, 0.0)] {
                sketch.part(tile(x * slim, y + lift), Ink::Outline);
            }
        }
    }
    sketch
}

fn flat_spray() -> Sketch {
    let mut sketch = Sketch::default();
    for step in (0..6).rev() {
        let root = at(0.0, 0.9 + 1.25 * f64::from(step));
        let mut branch = Sketch::default();
        if step < 3 {
            // Each side shoot has one of its own, on the side towards the tip.
            let own = cord(4 - step, true).placed(at(0.0, 2.0), 0.9, 44.0);
            branch.over(own);
        }
        branch.over(cord(8 - step, true));
        let branch = branch.placed(root, 0.95, -50.0);
        sketch.over(if step % 2 == 0 { branch } else { branch.mirrored() });
    }
    sketch.over(cord(16, true));
    sketch
}

/// Shoots that point all ways: those behind first, those towards the eye last and shortened.
fn bushy_spray() -> Sketch {
    let mut sketch = Sketch::default();
    sketch.stalk(&[at(0.0, -2.2), at(0.1, 0.0), at(0.0, 3.0)], 0.7, 0.5);
    let behind =
        [(-0.1, -72.0, 5, 0.9), (0.6, 66.0, 6, 0.9), (1.5, -50.0, 6, 0.95), (2.2, 44.0, 6, 0.95)];
    let before = [
        (2.9, -22.0, 6, 1.0),
        (3.0, 18.0, 6, 1.0),
        (3.1, -2.0, 7, 1.0),
        (1.2, 28.0, 4, 1.05),
        (0.4, -30.0, 3, 1.1),
    ];
    for (y, turn, pairs, size) in behind.into_iter().chain(before) {
        sketch.over(cord(pairs, false).placed(at(0.0, y), size, turn));
    }
    sketch
}

/// Tips that hang.
fn hanging_spray() -> Sketch {
    let mut sketch = Sketch::default();
    sketch.stalk(&[at(-4.0, 0.6), at(0.0, 0.9), at(4.0, 0.2)], 0.6, 0.4);
    for (x, pairs, turn) in
        [(-3.2, 8, 176.0), (-1.6, 11, 183.0), (0.0, 12, 178.0), (1.6, 10, 184.0), (3.0, 8, 190.0)]
    {
        sketch.over(cord(pairs, true).placed(at(x, 0.6), 1.0, turn));
    }
    sketch
}

/// A needle from its foot upwards, as long as 1.
fn needle(wide: f64) -> Sketch {
    let mut sketch = Sketch::default();
    let right = Path::from(at(wide * 0.2, 0.0))
        .cubic(at(wide * 0.55, 0.1), at(wide * 0.5, 0.3), at(wide * 0.5, 0.6))
        .cubic(at(wide * 0.5, 0.85), at(wide * 0.3, 0.95), at(0.0, 1.0));
    sketch.part(right.clone().then(&right.mirrored().reversed()), Ink::Outline);
    sketch
}

/// Two rows to the left and the right of the twig.
fn parted() -> Sketch {
    let mut sketch = Sketch::default();
    let needle = needle(0.11);
    for step in 0..10 {
        let share = f64::from(step) / 9.0;
        let size = 0.86 - 0.3 * share * share;
        let right = needle.placed(at(0.03, 0.2 * f64::from(step)), size, -64.0 + 14.0 * share);
        sketch.over(right.mirrored().map(|p| p + at(0.0, 0.08)));
        sketch.over(right);
    }
    sketch.over(needle.placed(at(-0.02, 1.95), 0.42, 12.0));
    sketch.over(needle.placed(at(0.02, 1.95), 0.42, -12.0));
    sketch.stalk(&[at(0.0, -0.4), at(0.0, 0.8), at(0.0, 2.0)], 0.11, 0.06);
    sketch
}

/// A needle in space: so high on the twig, round it by an angle, rising so steeply.
fn in_space(height: f64, round: f64, rise: f64, size: f64, wide: f64) -> (f64, Sketch) {
    let (sin, cos) = libm::sincos(round.to_radians());
    let (up, out) = libm::sincos(rise.to_radians());
    let tip = at(out * cos, up * 0.92 + out * sin * 0.38) * size;
    let length = tip.length();
    let turn = libm::atan2(tip.y, tip.x).to_degrees() - 90.0;
    let foot = at(0.045 * cos, height);
    (sin, needle(wide / length.max(0.2)).placed(foot, length, turn))
}

fn round_the_twig(needles: Vec<(f64, Sketch)>, top: f64) -> Sketch {
    let mut needles = needles;
    needles.sort_by(|(a, _), (b, _)| b.total_cmp(a));
    let mut sketch = Sketch::default();
    let (behind, before): (Vec<_>, Vec<_>) =
        needles.into_iter().partition(|(depth, _)| *depth > 0.1);
    behind.into_iter().for_each(|(_, one)| sketch.over(one));
    sketch.stalk(&[at(0.0, -0.45), at(0.0, top / 2.0), at(0.0, top)], 0.12, 0.07);
    before.into_iter().for_each(|(_, one)| sketch.over(one));
    sketch
}

/// One by one round the twig.
fn all_round() -> Sketch {
    let needles = (0..24).map(|step| {
        let share = f64::from(step) / 23.0;
        let size = 0.72 - 0.2 * share;
        in_space(1.7 * share, 137.5 * f64::from(step), 34.0 + 30.0 * share, size, 0.055)
    });
    round_the_twig(needles.collect(), 1.74)
}

/// So many in a ring, each ring turned against the next.
fn rings(count: i32) -> Sketch {
    let needles = (0..6).flat_map(|ring| {
        let share = f64::from(ring) / 5.0;
        (0..count).map(move |one| {
            let each = 360.0 / f64::from(count);
            let round = each * (f64::from(one) + 0.5 * f64::from(ring)) + 12.0;
            in_space(1.5 * share, round, 34.0 + 22.0 * share, 0.66 - 0.14 * share, 0.08)
        })
    });
    round_the_twig(needles.collect(), 1.56)
}

/// Bundles of so many from one sheath.
fn bundles(count: u8) -> Sketch {
    let mut sketch = Sketch::default();
    let bundle = {
        let mut bundle = Sketch::default();
        for one in 0..count {
            let turn = (f64::from(one) - f64::from(count - 1) / 2.0) * 22.0 / f64::from(count);
            bundle.over(needle(0.045).placed(at(0.0, 0.05), 1.15, turn));
        }
        let sheath = Path::from(at(-0.028, 0.0))
            .line(at(-0.034, 0.15))
            .quad(at(0.0, 0.18), at(0.034, 0.15))
            .line(at(0.028, 0.0));
        bundle.part(sheath, Ink::Outline);
        bundle
    };
    for (step, turn) in [-72.0, 70.0, -42.0, 40.0, -14.0, 13.0].iter().enumerate() {
        let root: Point = at(if *turn < 0.0 { 0.04 } else { -0.04 }, 0.2 * step as f64);
        sketch.over(bundle.placed(root, 1.0 - 0.02 * step as f64, *turn));
    }
    sketch.stalk(&[at(0.0, -0.5), at(0.0, 0.3), at(0.0, 1.08)], 0.14, 0.09);
    for step in 0..6 {
        let y = -0.36 + 0.24 * f64::from(step);
        let x = if step % 2 == 0 { -0.025 } else { 0.025 };
        sketch.stroke(
            Path::from(at(x - 0.025, y)).quad(at(x, y + 0.05), at(x + 0.025, y)),
            Ink::Vein,
        );
    }
    sketch
}
