//! One leaf: outline, edge, veins and foot put together; and leaves of leaflets.

use super::edge::edged;
use super::outline::{Side, palmate_lobes, pinnate_lobes, side};
use super::veins::Blade;
use super::{Build, Division, Edge, Fill, Foot, Ink, Shape, Sketch, VeinEnds, Veins};
use crate::svg::path::{Path, Point, at};

/// What is told of a leaf.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Leaf {
    pub(crate) build: Option<Build>,
    pub(crate) division: Option<Division>,
    pub(crate) shape: Option<Shape>,
    pub(crate) edge: Option<Edge>,
    pub(crate) veins: Option<Veins>,
    pub(crate) ends: Option<VeinEnds>,
    pub(crate) foot: Option<Foot>,
    /// How many leaflets a leaf has.
    pub(crate) leaflets: Option<u8>,
}

/// How much of a blade is drawn.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Detail {
    /// A whole leaf by itself.
    Whole,
    /// A leaflet of a few.
    Leaflet,
    /// A leaflet of many.
    Small,
    /// A leaf on a stem: outline and midrib.
    Mini,
}

impl Leaf {
    /// The leaf from above, tip upwards; none where too little is told, or where it is no blade.
    pub(crate) fn sketch(&self) -> Option<Sketch> {
        let sketch = match (self.build?, self.division) {
            (Build::Needle | Build::Scale, _) => return None,
            (Build::Simple, Some(Division::Twice)) => self.twice(),
            (Build::Simple, Some(Division::Thrice)) => self.thrice(),
            (Build::Simple, _) => self.simple()?,
            (Build::Pinnate, _) => self.feathered(),
            (Build::Trifoliate, _) => self.three(),
            (Build::Palmate, _) => self.hand(),
            (Build::Ternate, _) => self.threes(),
            (Build::Bipinnate, _) => self.twice(),
            (Build::Tripinnate, _) => self.thrice(),
        };
        Some(sketch)
    }

    /// The characters that its drawing shows, where they are told.
    pub(crate) fn shows(&self) -> Vec<&'static str> {
        let mut shown = vec!["leaf_type"];
        match (self.build, self.division) {
            (Some(Build::Simple), None) if self.foot == Some(Foot::EquitantFan) => {
                return vec!["leaf_base"];
            }
            (Some(Build::Simple), None) => {
                shown.extend(["leaf_shape", "leaf_margin", "leaf_venation", "vein_endings"]);
                shown.push("leaf_base");
                return shown;
            }
            (Some(Build::Simple), Some(Division::ToMidrib | Division::ToPetiole)) => {
                shown.extend(["leaf_division", "leaf_margin", "leaf_venation", "leaf_base"]);
                return shown;
            }
            (Some(Build::Simple), Some(Division::Twice)) => {
                shown.extend(["leaf_division", "leaf_shape", "leaf_margin"]);
            }
            (Some(Build::Bipinnate), _) => shown.extend(["leaf_shape", "leaf_margin"]),
            (Some(Build::Simple), Some(Division::Thrice)) => shown.push("leaf_division"),
            (Some(Build::Tripinnate), _) => {}
            (Some(Build::Pinnate | Build::Palmate), _) => {
                shown.extend(["leaflet_count", "leaf_shape", "leaf_margin", "leaf_venation"]);
            }
            _ => shown.extend(["leaf_shape", "leaf_margin", "leaf_venation"]),
        }
        if matches!(self.foot, Some(Foot::Petiolate | Foot::Sheathing | Foot::Sessile)) {
            shown.push("leaf_base");
        }
        shown
    }

    /// The leaf as it is seen on a stem: outline and midrib. Its foot is the origin, it is as long as 1.
    pub(super) fn mini(&self) -> Option<Sketch> {
        let plain = Self { edge: Some(Edge::Entire), foot: None, ..*self };
        let sketch = match (self.build?, self.division) {
            (Build::Needle | Build::Scale, _) => return None,
            (Build::Simple, None) => plain.blade(Detail::Mini),
            (Build::Simple, Some(Division::ToPetiole)) => {
                plain.bladed(&palmate_lobes(0.2), Detail::Mini)
            }
            (Build::Simple | Build::Bipinnate | Build::Tripinnate, _) => {
                plain.bladed(&pinnate_lobes(0.14), Detail::Mini)
            }
            (Build::Pinnate, _) => {
                let few = self.leaflets.map_or(5, |count| count.min(7));
                Self { leaflets: Some(few), ..plain }.leaflets_along(Detail::Mini, 0.12)
            }
            (Build::Trifoliate, _) => plain.three_of(Detail::Mini, 0.4),
            (Build::Palmate, _) => plain.fingers(Detail::Mini, 0.4),
            (Build::Ternate, _) => plain.nine(Detail::Mini, 0.4),
        };
        let stalked = self.build == Some(Build::Simple) && self.foot == Some(Foot::Petiolate);
        let (low, high) = sketch.bounds();
        let foot = if stalked { 0.28 } else { 0.0 };
        let low = if self.build == Some(Build::Simple) { low.y.max(-0.05) } else { low.y };
        let size = (1.0 - foot) / (high.y - low).max(0.1);
        let mut whole = Sketch::default();
        if stalked {
            whole.stalk(&[at(0.0, 0.0), at(0.0, foot + 0.1)], 0.05, 0.035);
        }
        whole.over(sketch.placed(at(0.0, foot - low * size), size, 0.0));
        Some(whole.without_spots())
    }

    fn outline(&self) -> Side {
        side(self.shape.unwrap_or(Shape::Elliptic))
    }

    fn blade(&self, detail: Detail) -> Sketch {
        self.bladed(&self.outline(), detail)
    }

    /// A blade as long as 1 whose stalk joins at the origin.
    fn bladed(&self, side: &Side, detail: Detail) -> Sketch {
        let coarse = match detail {
            // Few large teeth, where it matters whether a vein ends in one.
            Detail::Whole if self.ends.is_some() => 1.8,
            Detail::Whole | Detail::Mini => 1.0,
            Detail::Leaflet => 1.6,
            Detail::Small => 2.6,
        };
        let edged = edged(side, self.edge, coarse);
        let told = self.edge.is_some() && self.shape.is_some();
        let mut sketch = Sketch::default();
        let whole = edged.path.clone().then(&edged.path.mirrored().reversed());
        sketch.part(whole, if told { Ink::Outline } else { Ink::Untold });
        let from = if self.foot == Some(Foot::Peltate) { at(0.0, 0.42) } else { side.foot() };
        let small = detail != Detail::Whole;
        let blade = Blade { side, edged: &edged, from, small, ends: self.ends };
        match detail {
            Detail::Whole | Detail::Leaflet => blade.draw(self.veins, &mut sketch),
            // Too small for more than the middle.
            // A narrow one is all outline.
            Detail::Small if side.half_breadth() < 0.1 => {}
            Detail::Small | Detail::Mini => {
                let parallel = self.veins == Some(Veins::Parallel);
                let veins = if parallel { Veins::Parallel } else { Veins::Single };
                blade.draw(Some(veins), &mut sketch);
            }
        }
        let halfway = side.points().find(|p| p.y > 0.55).unwrap_or(at(0.2, 0.55));
        let widest = side.points().fold(at(0.0, 0.0), |w, p| if p.x > w.x { p } else { w });
        sketch.spot("leaf_margin", halfway);
        sketch.spot("leaf_shape", widest.mirrored());
        sketch.spot("leaf_venation", at(-0.08, 0.62));
        let foot = side.foot();
        sketch.map(|p| p - foot)
    }

    /// The blade alone with few, large teeth, for one sign of it.
    pub(super) fn enlarged(&self) -> Sketch {
        self.blade(Detail::Leaflet)
    }

    /// A single blade with its foot.
    fn simple(&self) -> Option<Sketch> {
        let side = match self.division {
            Some(Division::ToMidrib) => pinnate_lobes(0.1),
            Some(Division::ToPetiole) => palmate_lobes(0.2),
            _ => side(self.shape?),
        };
        let shape = self.shape.or(Some(Shape::PinnatelyLobed));
        let blade = Self { shape, ..*self }.bladed(&side, Detail::Whole);
        Some(match self.foot {
            None => blade,
            Some(Foot::Petiolate) => stalked(blade),
            Some(Foot::Peltate) => peltate(blade, &side),
            Some(Foot::EquitantFan) => fan(),
            Some(foot) => on_stem(blade, foot),
        })
    }

    /// The stalk of a leaf of leaflets, from its foot up to the origin.
    fn main_stalk(&self, length: f64, top: f64) -> Sketch {
        let mut sketch = Sketch::default();
        match self.foot {
            Some(Foot::Sheathing) => {
                let down = -length;
                let side =
                    [(0.012, 0.02), (0.018, down * 0.45), (0.055, down * 0.72), (0.05, down)];
                let side: Vec<_> = side.iter().map(|(x, y)| at(*x, *y)).collect();
                let right = Path::smooth(&side);
                sketch.part(right.clone().then(&right.mirrored().reversed()), Ink::Outline);
                for share in [-0.45, 0.0, 0.45] {
                    let rib = [
                        at(0.05 * share, down),
                        at(0.045 * share, down * 0.74),
                        at(0.0, down * 0.5),
                    ];
                    sketch.stroke(Path::smooth(&rib), Ink::Vein);
                }
            }
            Some(Foot::Petiolate) => {
                let line = [at(0.015, -length), at(0.01, -length / 2.0), at(0.0, 0.02)];
                sketch.stalk(&line, 0.055, top);
            }
            _ => {}
        }
        sketch.spot("leaf_base", at(0.0, -length * 0.8));
        sketch
    }

    fn feathered(&self) -> Sketch {
        let mut sketch = self.main_stalk(0.34, 0.026);
        sketch.over(self.leaflets_along(Detail::Leaflet, 0.0));
        sketch.spot("leaf_type", at(0.0, 0.45));
        sketch
    }

    /// Leaflets in two rows along a middle stalk from the origin upwards.
    fn leaflets_along(&self, detail: Detail, foot: f64) -> Sketch {
        let count = self.leaflets.unwrap_or(7).clamp(3, 15);
        let (pairs, ends) = (f64::from(count / 2), count % 2 == 1);
        let side = self.outline();
        let breadth = side.half_breadth() * 2.0;
        let pitch = 0.9 / pairs;
        let size = (0.92 * pitch / breadth).clamp(0.16, 0.52);
        let detail = if size < 0.3 && detail == Detail::Leaflet { Detail::Small } else { detail };
        let leaflet = self.blade(detail);
        let top = foot + 0.9 - if ends { 0.0 } else { pitch * 0.6 };
        let mut sketch = Sketch::default();
        sketch.stalk(&[at(0.0, 0.0), at(0.0, top / 2.0), at(0.0, top)], 0.03, 0.018);
        if ends {
            sketch.over(leaflet.placed(at(0.0, top - 0.01), size * 1.08, 0.0));
        }
        let mut pair = 0.0;
        while pair < pairs {
            let y = foot + pitch * (pair + 0.3);
            // The lowest and the topmost are a little smaller.
            let size = size * if pair < 0.5 || pair + 1.5 > pairs { 0.92 } else { 1.0 };
            let right = leaflet.placed(at(0.014, y), size, -62.0);
            sketch.over(right.mirrored().without_spots());
            sketch.over(right.without_spots());
            pair += 1.0;
        }
        sketch
    }

    fn three(&self) -> Sketch {
        let mut sketch = self.main_stalk(0.75, 0.04);
        sketch.over(self.three_of(Detail::Leaflet, 0.0));
        sketch.spot("leaf_type", at(0.0, 0.0));
        sketch
    }

    fn three_of(&self, detail: Detail, foot: f64) -> Sketch {
        let mut sketch = Sketch::default();
        if foot > 0.0 {
            sketch.stroke(Path::straight(&[at(0.0, 0.0), at(0.0, foot)]), Ink::Outline);
        }
        let breadth = self.outline().half_breadth() * 2.0;
        let turn = if breadth > 0.7 { 88.0 } else { 70.0 };
        let leaflet = self.blade(detail);
        let side = leaflet.placed(at(0.01, foot), 0.92, -turn);
        sketch.over(side.mirrored().without_spots());
        sketch.over(side.without_spots());
        if self.shape != Some(Shape::Obcordate) {
            sketch.stroke(Path::straight(&[at(0.0, foot), at(0.0, foot + 0.1)]), Ink::Outline);
            sketch.over(leaflet.placed(at(0.0, foot + 0.1), 1.0, 0.0));
        } else {
            sketch.over(leaflet.placed(at(0.0, foot), 0.95, 0.0));
        }
        sketch
    }

    fn hand(&self) -> Sketch {
        let mut sketch = self.main_stalk(0.7, 0.04);
        sketch.over(self.fingers(Detail::Leaflet, 0.0));
        sketch.spot("leaf_type", at(0.0, 0.0));
        sketch
    }

    /// Leaflets from one point, like a hand.
    fn fingers(&self, detail: Detail, foot: f64) -> Sketch {
        let mut sketch = Sketch::default();
        if foot > 0.0 {
            sketch.stroke(Path::straight(&[at(0.0, 0.0), at(0.0, foot)]), Ink::Outline);
        }
        let each_side = self.leaflets.unwrap_or(5).clamp(5, 9) / 2;
        let leaflet = self.blade(detail);
        for index in (1..=each_side).rev() {
            let share = f64::from(index) / f64::from(each_side);
            let finger = leaflet.placed(at(0.0, foot), 1.0 - 0.32 * share, -112.0 * share);
            sketch.over(finger.mirrored().without_spots());
            sketch.over(finger.without_spots());
        }
        sketch.over(leaflet.placed(at(0.0, foot), 1.0, 0.0));
        sketch
    }

    fn threes(&self) -> Sketch {
        let mut sketch = self.main_stalk(0.75, 0.03);
        sketch.over(self.nine(Detail::Leaflet, 0.0));
        sketch.spot("leaf_type", at(0.0, 0.0));
        sketch
    }

    /// Divided in threes, again in threes.
    fn nine(&self, detail: Detail, foot: f64) -> Sketch {
        let mut sketch = Sketch::default();
        if foot > 0.0 {
            sketch.stroke(Path::straight(&[at(0.0, 0.0), at(0.0, foot)]), Ink::Outline);
        }
        let three = self.three_of(detail, 0.0);
        for (turn, stalk, size) in [(-66.0, 0.44, 0.4), (66.0, 0.44, 0.4), (0.0, 0.56, 0.44)] {
            let end = at(0.0, foot) + Point::polar(stalk, 90.0 + turn);
            let mut part = three.placed(end, size, turn);
            if turn != 0.0 {
                part = part.without_spots();
            }
            sketch.stroke(Path::straight(&[at(0.0, foot), end]), Ink::Outline);
            sketch.over(part);
        }
        sketch
    }

    fn twice(&self) -> Sketch {
        let mut sketch = self.main_stalk(0.42, 0.024);
        let leaflet = self.blade(Detail::Small);
        // Broad leaflets stand in fewer pairs, so that each is seen.
        let narrow = self.outline().half_breadth() < 0.2;
        let feather = |pairs: i32| {
            let mut feather = Sketch::default();
            let top = 0.24 + 0.24 * f64::from(pairs);
            feather.stroke(Path::straight(&[at(0.0, 0.0), at(0.0, top)]), Ink::Outline);
            for pair in 0..pairs {
                let share = f64::from(pair) / f64::from(pairs);
                let size = (if narrow { 0.42 } else { 0.33 }) * (1.0 - 0.25 * share);
                let right = leaflet.placed(at(0.0, 0.2 + (top - 0.2) * share), size, -58.0);
                feather.over(right.mirrored());
                feather.over(right);
            }
            feather.over(leaflet.placed(at(0.0, top - 0.02), 0.32, 0.0));
            feather.without_spots()
        };
        sketch.stalk(&[at(0.0, 0.0), at(0.0, 0.5), at(0.0, 0.95)], 0.024, 0.014);
        for (y, size, pairs) in [(0.02, 0.62, 3), (0.42, 0.5, 3), (0.74, 0.42, 2)] {
            let right = feather(pairs).placed(at(0.0, y), size, -56.0);
            sketch.over(right.mirrored());
            sketch.over(right);
        }
        sketch.over(feather(1).placed(at(0.0, 0.94), 0.46, 0.0));
        sketch.spot("leaf_type", at(0.0, 0.3));
        sketch
    }

    /// Three times feathered: the last pieces are strokes.
    fn thrice(&self) -> Sketch {
        let mut sketch = self.main_stalk(0.4, 0.022);
        let mut lace = Sketch::default();
        feather(&mut lace, at(0.0, 0.0), at(0.0, 1.12), &[4, 4, 2]);
        sketch.over(lace);
        sketch.spot("leaf_type", at(0.0, 0.3));
        sketch
    }
}

/// A stalk with side stalks, each with side stalks of its own; `pairs` of each order.
fn feather(sketch: &mut Sketch, from: Point, way: Point, pairs: &[i32]) {
    let Some((count, deeper)) = pairs.split_first() else {
        sketch.straight(from, from + way, Ink::Vein);
        return;
    };
    let ink = if pairs.len() > 2 { Ink::Outline } else { Ink::Vein };
    sketch.stroke(Path::straight(&[from, from + way * 0.9]), ink);
    for pair in 0..*count {
        let share = f64::from(pair) / f64::from(*count);
        let bare = if pairs.len() > 1 { 0.18 } else { 0.36 };
        let root = from + way * (bare + (0.9 - bare) * share);
        let reach = match pairs.len() {
            3 => 0.64,
            2 => 0.3,
            _ => 0.42,
        };
        let size = reach * (1.0 - share * 0.66);
        for turn in [-52.0, 52.0] {
            feather(sketch, root, way.turned(turn) * size, deeper);
        }
    }
    feather(sketch, from + way * 0.78, way * 0.22, deeper.get(1..).unwrap_or(&[]));
}

fn stalked(blade: Sketch) -> Sketch {
    let mut sketch = Sketch::default();
    sketch.stalk(&[at(0.05, -0.4), at(0.015, -0.2), at(0.0, 0.03)], 0.06, 0.035);
    sketch.spot("leaf_base", at(0.03, -0.3));
    sketch.over(blade);
    sketch
}

/// The stalk joins the middle of the blade from below.
fn peltate(blade: Sketch, side: &Side) -> Sketch {
    let mut sketch = Sketch::default();
    let joint = at(0.0, 0.42) - side.foot();
    sketch.stalk(&[at(0.06, -0.4), at(0.04, -0.2), at(0.02, 0.1)], 0.05, 0.035);
    sketch.over(blade);
    // Seen through the blade.
    sketch.stroke(Path::straight(&[at(0.02, 0.02), joint]), Ink::Vein);
    sketch.ball(joint, 0.025);
    sketch.spot("leaf_base", joint);
    sketch
}

/// Sword-shaped leaves astride each other in a flat fan.
fn fan() -> Sketch {
    let mut sketch = Sketch::default();
    let sword = |turn: f64, length: f64| {
        let mut sword = Sketch::default();
        let right = Path::smooth(&[at(0.05, 0.0), at(0.062, 0.3), at(0.055, 0.65), at(0.0, 1.0)]);
        let left = Path::smooth(&[at(-0.05, 0.0), at(-0.055, 0.3), at(-0.045, 0.7), at(0.0, 1.0)]);
        sword.part(right.then(&left.reversed()), Ink::Outline);
        for x in [-0.02, 0.02] {
            sword.stroke(Path::smooth(&[at(x, 0.12), at(x, 0.5), at(x * 0.6, 0.86)]), Ink::Vein);
        }
        sword.placed(at(-turn * 0.0045, 0.0), length, turn)
    };
    // The outermost stand in front: each is folded round the next.
    for (turn, length) in [(0.0, 1.0), (-9.0, 0.93), (10.0, 0.86), (-20.0, 0.76), (22.0, 0.64)] {
        sketch.over(sword(turn, length));
    }
    for (turn, y) in [(22.0, 0.24), (-20.0, 0.3)] {
        let fold = Path::straight(&[
            at(turn * -0.0008, 0.02),
            at(0.0, 0.0) + at(0.0, y).turned(turn * 0.55),
        ]);
        sketch.stroke(fold, Ink::Vein);
    }
    sketch.spot("leaf_base", at(0.0, 0.05));
    sketch
}

/// A blade that sits on its stem without a stalk.
fn on_stem(blade: Sketch, foot: Foot) -> Sketch {
    let mut sketch = Sketch::default();
    sketch.stalk(&[at(-0.05, -0.5), at(-0.05, 0.0), at(-0.05, 0.5)], 0.1, 0.085);
    let leaf = blade.placed(at(-0.01, 0.0), 1.0, -44.0);
    match foot {
        Foot::Sheathing => {
            sketch.over(leaf);
            let right = Path::smooth(&[at(0.005, -0.5), at(0.012, -0.15), at(0.025, 0.03)]);
            let left = Path::smooth(&[at(-0.105, -0.5), at(-0.112, -0.15), at(-0.108, 0.13)]);
            let mouth = right.quad(at(-0.06, 0.03), at(-0.108, 0.13));
            sketch.part(mouth.then(&left.reversed()), Ink::Outline);
            for x in [-0.08, -0.05, -0.02] {
                sketch.stroke(Path::straight(&[at(x, -0.48), at(x, -0.02 - x * 0.4)]), Ink::Vein);
            }
        }
        Foot::Clasping => {
            sketch.over(leaf);
            let ear = Path::from(at(0.07, 0.12))
                .cubic(at(0.0, 0.1), at(-0.13, 0.14), at(-0.14, 0.03))
                .cubic(at(-0.15, -0.09), at(-0.04, -0.12), at(0.0, -0.09))
                .cubic(at(0.05, -0.07), at(0.1, -0.02), at(0.11, 0.03));
            sketch.add(ear, Ink::Outline, Fill::Paper);
        }
        Foot::Decurrent => {
            sketch.over(leaf);
            let right = Path::smooth(&[
                at(0.0, 0.05),
                at(0.075, -0.06),
                at(0.06, -0.2),
                at(0.035, -0.33),
                at(0.0, -0.46),
            ]);
            sketch.part(right, Ink::Outline);
            let left = Path::smooth(&[
                at(-0.1, 0.03),
                at(-0.16, -0.06),
                at(-0.15, -0.2),
                at(-0.13, -0.33),
                at(-0.1, -0.46),
            ]);
            sketch.part(left, Ink::Outline);
        }
        _ => sketch.over(leaf),
    }
    sketch.spot("leaf_base", at(0.0, -0.04));
    sketch
}
