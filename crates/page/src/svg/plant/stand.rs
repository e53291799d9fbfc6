//! How leaves stand: small leaves in space round a stem, seen a little from above.

use super::{Arrangement, Emergence, Ink, Leaf, Sketch};
use crate::svg::path::{Path, Point, at};

/// What is told of how leaves stand.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Stand {
    pub(crate) arrangement: Option<Arrangement>,
    pub(crate) emergence: Option<Emergence>,
    /// Leaves in a ring.
    pub(crate) in_ring: Option<u8>,
    pub(crate) leaf: Leaf,
}

/// How far the eye is raised, in degrees.
const VIEW: f64 = 36.0;

/// Where a leaf stands in space, and which way it goes; angles in degrees.
#[derive(Clone, Copy)]
struct Pose {
    /// Of its foot, above the foot of the stem.
    height: f64,
    /// Round the stem: 0 is to the right, 90 away from the eye.
    round: f64,
    /// Above the horizon, at its foot.
    rise: f64,
    /// By how much it bends down on its way to the tip.
    droop: f64,
    size: f64,
    /// By how much its upper face turns to the eye where it stands aside.
    roll: f64,
}

impl Pose {
    fn new(height: f64, round: f64, size: f64) -> Self {
        Self { height, round, rise: 30.0, droop: 36.0, size, roll: 52.0 }
    }

    /// How far away from the eye it points; negative is towards the eye.
    fn depth(&self) -> f64 {
        libm::sin(self.round.to_radians())
    }

    /// The leaf as it is seen.
    fn seen(&self, leaf: &Sketch) -> Sketch {
        let (sin, cos) = libm::sincos(self.round.to_radians());
        let (view_sin, view_cos) = libm::sincos(VIEW.to_radians());
        let (roll_sin, roll_cos) = libm::sincos((self.roll * cos).to_radians());
        leaf.map(|p| {
            let (rise_sin, rise_cos) =
                libm::sincos((self.rise - self.droop * p.y / 2.0).to_radians());
            // Along the leaf, then across it: level where it is not rolled.
            let x = p.y * rise_cos * cos + p.x * (-roll_cos * sin - roll_sin * rise_sin * cos);
            let y = p.y * rise_sin + p.x * roll_sin * rise_cos;
            let z = p.y * rise_cos * sin + p.x * (roll_cos * cos - roll_sin * rise_sin * sin);
            at(x * self.size, self.height + (y * view_cos + z * view_sin) * self.size)
        })
    }
}

impl Stand {
    /// Leaves on a stem, or out of the ground; none where neither is told.
    pub(crate) fn sketch(&self) -> Option<Sketch> {
        let leaf = self.leaf.mini().or_else(|| plain_leaf(self.leaf))?;
        let sketch = match (self.arrangement, self.emergence) {
            (Some(Arrangement::Rosette), _) => rosette(&leaf),
            (Some(Arrangement::Fascicled), _) => {
                let bare = Leaf { foot: None, ..self.leaf }.mini().unwrap_or(leaf);
                bundles(&bare)
            }
            (Some(Arrangement::TwoRanked), _) => ranked(&leaf),
            (None, Some(Emergence::AlongStem)) => {
                grounded(stem(&leaf, &self.poses(Arrangement::Alternate)))
            }
            (None, Some(Emergence::PairedOnStem)) => {
                grounded(stem(&leaf, &self.poses(Arrangement::Opposite)))
            }
            (None, Some(Emergence::Tufted)) => tufted(&leaf),
            (None, Some(Emergence::Singly)) => singly(&leaf),
            (Some(arrangement), _) => stem(&leaf, &self.poses(arrangement)),
            (None, None) => return None,
        };
        Some(sketch)
    }

    /// Whether the leaves stand along a stem, and not at the ground.
    pub(super) fn on_stem(&self) -> bool {
        match self.arrangement {
            Some(arrangement) => arrangement != Arrangement::Rosette,
            None => {
                matches!(self.emergence, Some(Emergence::AlongStem | Emergence::PairedOnStem))
            }
        }
    }

    /// The characters that its drawing shows, where they are told.
    pub(crate) fn shows(&self) -> &'static [&'static str] {
        match self.arrangement {
            Some(Arrangement::Whorled) => &["leaf_arrangement", "leaves_per_whorl"],
            Some(_) => &["leaf_arrangement"],
            None => &["leaf_emergence"],
        }
    }

    fn poses(&self, arrangement: Arrangement) -> Vec<Pose> {
        let ring = |count: u8, first: f64, height: f64, size: f64| {
            (0..count).map(move |i| {
                Pose::new(height, first + 360.0 * f64::from(i) / f64::from(count), size)
            })
        };
        match arrangement {
            Arrangement::Opposite => {
                [(0.2, 0.0, 0.92), (0.84, 90.0, 0.84), (1.5, 0.0, 0.7), (1.98, 90.0, 0.46)]
                    .into_iter()
                    .flat_map(|(height, turn, size)| ring(2, turn + 8.0, height, size))
                    .collect()
            }
            Arrangement::Whorled => {
                let count = self.in_ring.unwrap_or(4).clamp(3, 9);
                [(0.25, 0.0, 0.9), (1.1, 0.5, 0.76), (1.78, 0.0, 0.54)]
                    .into_iter()
                    .flat_map(|(height, turn, size)| {
                        let first = 14.0 + turn * 360.0 / f64::from(count);
                        ring(count, first, height, size)
                    })
                    .collect()
            }
            // By the golden angle, as leaves that stand one by one mostly do.
            _ => (0..7)
                .map(|i| {
                    let step = f64::from(i);
                    Pose::new(0.2 + 0.27 * step, 200.0 + 137.5 * step, 0.92 - 0.07 * step)
                })
                .collect(),
        }
    }
}

/// A leaf whose build is not told, or which is a needle or a scale.
fn plain_leaf(leaf: Leaf) -> Option<Sketch> {
    use super::{Build, Shape};
    match leaf.build {
        Some(Build::Needle | Build::Scale) => None,
        _ => {
            Leaf { build: Some(Build::Simple), shape: leaf.shape.or(Some(Shape::Elliptic)), ..leaf }
                .mini()
        }
    }
}

/// The farthest first.
fn from_back(poses: &[Pose]) -> Vec<Pose> {
    let mut poses = poses.to_vec();
    poses.sort_by(|a, b| b.depth().total_cmp(&a.depth()));
    poses
}

fn stem(leaf: &Sketch, poses: &[Pose]) -> Sketch {
    let mut sketch = Sketch::default();
    let top = poses.iter().map(|pose| pose.height).fold(0.0, f64::max) + 0.08;
    let poses = from_back(poses);
    let behind = |pose: &&Pose| pose.depth() > 0.25;
    for pose in poses.iter().filter(behind) {
        sketch.over(pose.seen(leaf));
    }
    sketch.stalk(&[at(0.0, -0.28), at(0.0, top / 2.0), at(0.0, top)], 0.085, 0.04);
    for pose in poses.iter().filter(|pose| !behind(pose)) {
        sketch.over(pose.seen(leaf));
    }
    sketch.spot("leaf_arrangement", at(0.0, top * 0.45));
    sketch
}

/// One by one in two flat rows.
fn ranked(leaf: &Sketch) -> Sketch {
    let mut sketch = Sketch::default();
    sketch.stalk(&[at(0.0, -0.25), at(0.0, 0.9), at(0.0, 1.95)], 0.08, 0.035);
    for step in 0..8 {
        let step = f64::from(step);
        let turn = if libm::fmod(step, 2.0) < 0.5 { -58.0 } else { 58.0 };
        sketch.over(leaf.placed(at(0.0, 0.1 + 0.235 * step), 0.86 - 0.05 * step, turn));
    }
    sketch.spot("leaf_arrangement", at(0.0, 0.9));
    sketch
}

/// In a ring at the ground.
fn rosette(leaf: &Sketch) -> Sketch {
    let outer = (0..8).map(|i| Pose {
        rise: 12.0,
        droop: 16.0,
        roll: 14.0,
        ..Pose::new(0.0, 11.0 + 45.0 * f64::from(i), 1.0)
    });
    let inner = (0..4).map(|i| Pose {
        rise: 46.0,
        droop: 30.0,
        roll: 24.0,
        ..Pose::new(0.02, 34.0 + 90.0 * f64::from(i), 0.56)
    });
    let mut sketch = Sketch::default();
    for ring in [outer.collect::<Vec<_>>(), inner.collect()] {
        for pose in from_back(&ring) {
            sketch.over(pose.seen(leaf));
        }
    }
    sketch.spot("leaf_arrangement", at(0.0, 0.0));
    sketch
}

/// In bundles along a twig.
fn bundles(leaf: &Sketch) -> Sketch {
    let mut sketch = Sketch::default();
    sketch.stalk(&[at(0.0, -0.25), at(0.03, 0.9), at(0.0, 1.9)], 0.1, 0.06);
    for (height, side) in [(0.15, 1.0), (0.6, -1.0), (1.05, 1.0), (1.5, -1.0)] {
        for turn in [-104.0, -8.0, -80.0, -30.0, -55.0] {
            let one = leaf.placed(at(0.06, height), 0.58, turn);
            sketch.over(if side > 0.0 { one } else { one.mirrored() });
        }
        sketch.part(Path::ellipse(at(0.06 * side, height), 0.05, 0.06), Ink::Outline);
    }
    sketch.spot("leaf_arrangement", at(0.05, 1.05));
    sketch
}

/// Several together from one foot.
fn tufted(leaf: &Sketch) -> Sketch {
    let mut sketch = Sketch::default();
    for (turn, size) in [(-44.0, 0.84), (40.0, 0.88), (-22.0, 1.0), (17.0, 1.04), (-3.0, 0.94)] {
        sketch.over(leaf.placed(at(-turn * 0.0012, 0.0), size, turn));
    }
    ground(&mut sketch, 0.6);
    sketch.spot("leaf_emergence", at(0.0, 0.02));
    sketch
}

/// Each on its own out of the ground.
fn singly(leaf: &Sketch) -> Sketch {
    let mut sketch = Sketch::default();
    for (x, turn, size) in [(-0.46, 9.0, 0.92), (0.0, -4.0, 1.06), (0.48, -12.0, 0.86)] {
        sketch.over(leaf.placed(at(x, 0.0), size, turn));
    }
    ground(&mut sketch, 0.8);
    sketch.spot("leaf_emergence", at(0.0, 0.02));
    sketch
}

/// On a stem that comes out of the ground.
fn grounded(shoot: Sketch) -> Sketch {
    let mut sketch = shoot.placed(at(0.0, 0.28), 1.0, 0.0);
    ground(&mut sketch, 0.8);
    sketch.spot("leaf_emergence", at(0.0, 0.3));
    sketch
}

/// Leaves that come out of the ground, and no stem among them.
pub(super) fn stemless() -> Sketch {
    let leaf = Leaf {
        build: Some(super::Build::Simple),
        shape: Some(super::Shape::Lanceolate),
        edge: Some(super::Edge::Entire),
        veins: Some(super::Veins::Pinnate),
        ..Leaf::default()
    };
    let mut sketch = leaf.mini().map_or_else(Sketch::default, |leaf| tufted(&leaf));
    for turn in [-26.0, 0.0, 26.0] {
        let root = Point::polar(0.34, -90.0 + turn);
        sketch.thread(&[at(0.0, -0.02), root * 0.5 + at(0.02, 0.0), root], Ink::Outline);
    }
    sketch
}

/// A line for the ground, so far to both sides, with strokes for the earth below.
pub(super) fn ground(sketch: &mut Sketch, wide: f64) {
    let line: Vec<Point> =
        (-4..=4).map(|i| at(wide * f64::from(i) / 4.0, 0.008 * f64::from(i * i % 3))).collect();
    sketch.stroke(Path::smooth(&line), Ink::Outline);
    for step in -4..4 {
        let x = wide * (f64::from(step) + 0.55) / 4.2;
        sketch.stroke(Path::straight(&[at(x, -0.03), at(x - 0.05, -0.1)]), Ink::Vein);
    }
}
