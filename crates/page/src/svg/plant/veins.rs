//! The veins of a blade.

use super::edge::Edged;
use super::outline::Side;
use super::{Ink, Sketch, VeinEnds, Veins};
use crate::svg::path::{Path, Point, at};

/// A blade whose veins are drawn.
pub(super) struct Blade<'a> {
    pub(super) side: &'a Side,
    pub(super) edged: &'a Edged,
    /// Where the veins begin: the foot, or the middle of a blade whose stalk joins there.
    pub(super) from: Point,
    /// Fewer side veins, for a small leaflet.
    pub(super) small: bool,
    pub(super) ends: Option<VeinEnds>,
}

impl Blade<'_> {
    pub(super) fn draw(&self, veins: Option<Veins>, sketch: &mut Sketch) {
        match veins {
            None => sketch.stroke(self.midrib(0.93), Ink::Untold),
            Some(Veins::Single) => sketch.stroke(self.midrib(0.97), Ink::Vein),
            Some(Veins::Parallel) => self.parallel(sketch),
            Some(Veins::Palmate) => self.palmate(sketch),
            Some(Veins::Pinnate) => self.feather(sketch, 1.0, &Join::None),
            Some(Veins::Netted) => self.feather(sketch, 0.93, &Join::Net),
            Some(Veins::Looped) => self.feather(sketch, 0.8, &Join::Loops),
        }
    }

    fn midrib(&self, share: f64) -> Path {
        Path::straight(&[self.from, self.from.towards(self.side.tip(), share)])
    }

    /// Veins from foot to tip, which follow the edge.
    fn parallel(&self, sketch: &mut Sketch) {
        let narrow = self.side.half_breadth() < 0.1;
        if !narrow {
            sketch.stroke(self.midrib(0.97), Ink::Vein);
        }
        let shares: &[f64] = match (narrow, self.small) {
            // Too narrow for more than two lines.
            (true, _) => &[0.36],
            (false, true) => &[0.5],
            (false, false) => &[0.25, 0.5, 0.75],
        };
        let points: Vec<_> = self.side.points().filter(|p| p.y >= self.from.y - 0.02).collect();
        for share in shares {
            let inner = points.iter().step_by(4).map(|p| at(p.x * share, p.y * 0.97 + 0.01));
            let inner: Vec<_> = inner.collect();
            both(sketch, &Path::smooth(&inner));
        }
    }

    /// Main veins from the foot to the lobes, or like the fingers of a hand.
    fn palmate(&self, sketch: &mut Sketch) {
        sketch.stroke(self.midrib(0.97), Ink::Vein);
        let (spread, reach) =
            if self.side.lobed { (Vec::new(), 0.95) } else { (vec![25.0, 58.0], 0.96) };
        let mut ends: Vec<Point> = self.side.lobes.clone();
        ends.extend(spread.into_iter().filter_map(|degrees| self.ray(self.from, degrees)));
        for end in ends {
            let end = self.from.towards(end, reach);
            let bend = self.from.towards(end, 0.5) + (end - self.from).across() * -0.02;
            both(sketch, &Path::from(self.from).quad(bend, end));
            if !self.small && end.y > self.from.y + 0.2 {
                let fork = self.from.towards(end, 0.5);
                let way = (end - self.from) * 0.26;
                for turn in [-34.0, 34.0] {
                    both(sketch, &Path::straight(&[fork, fork + way.turned(turn)]));
                }
            }
        }
        if !self.small {
            let middle = self.from.towards(self.side.tip(), 0.52);
            let way = (self.side.tip() - self.from) * 0.2;
            both(sketch, &Path::straight(&[middle, middle + way.turned(-36.0)]));
        }
    }

    /// Where a ray from a point meets the edge; 0 degrees is to the right, 90 to the tip.
    fn ray(&self, from: Point, degrees: f64) -> Option<Point> {
        let way = Point::polar(1.0, degrees);
        let off = |p: &Point| {
            let to = *p - from;
            (to.x * way.y - to.y * way.x).abs()
        };
        let ahead = self.side.points().filter(|p| {
            let to = *p - from;
            to.x * way.x + to.y * way.y > 0.0 && p.x > 0.01
        });
        ahead.min_by(|a, b| off(a).total_cmp(&off(b)))
    }

    /// Side veins off a midrib. They end in the teeth (or notches) where there are any.
    fn feather(&self, sketch: &mut Sketch, reach: f64, join: &Join) {
        sketch.stroke(self.midrib(0.97), Ink::Vein);
        let veins: Vec<_> = self.feather_ends(reach);
        for (from, end) in &veins {
            both(sketch, &side_vein(*from, *end));
        }
        let pairs = veins.windows(2).filter_map(|pair| match pair {
            [a, b] => Some((*a, *b)),
            _ => None,
        });
        for (index, (lower, upper)) in pairs.enumerate() {
            match join {
                Join::None => {}
                Join::Loops => {
                    let out = lower.1.towards(upper.1, 0.55) + at(0.035, 0.035);
                    both(sketch, &Path::from(lower.1).quad(out, on_vein(&upper, 0.82)));
                }
                Join::Net if self.small || self.side.lobed => {}
                Join::Net => net(sketch, &lower, &upper, index % 2 == 0),
            }
        }
    }

    /// Beginnings and ends of the side veins of the right side, from foot to tip.
    fn feather_ends(&self, reach: f64) -> Vec<(Point, Point)> {
        if self.side.lobed {
            let rise = if self.side.spans.len() > 7 { 0.13 } else { 0.3 };
            let begin = |tip: &Point| at(0.0, (tip.y - rise).max(self.from.y + 0.02));
            return self
                .side
                .lobes
                .iter()
                .map(|tip| (begin(tip), begin(tip).towards(*tip, 0.95)))
                .collect();
        }
        if !self.edged.tips.is_empty() && self.edged.tips.len() < 8 {
            let begin = |tip: &Point| at(0.0, (tip.y - tip.x * 0.95).max(self.from.y + 0.03));
            // The lowest teeth have no vein of their own: it would run along the edge.
            let inner = |tip: &&Point| tip.x > 0.06 && tip.y - self.from.y > tip.x * 0.5;
            let goals = match self.ends {
                Some(VeinEnds::Notches) => &self.edged.notches,
                _ => &self.edged.tips,
            };
            let goals: Vec<_> = goals.iter().filter(inner).collect();
            return goals
                .into_iter()
                .map(|tip| (begin(tip), begin(tip).towards(*tip, 0.96)))
                .collect();
        }
        let count = match (self.small, reach < 0.95 && reach > 0.85) {
            (true, _) => 4,
            // Fewer, where a net is drawn between them.
            (false, true) => 5,
            (false, false) => 7,
        };
        let length = self.side.tip().y - self.from.y;
        let begins = (0..count).map(|i| {
            at(0.0, self.from.y + length * (0.07 + 0.76 * f64::from(i) / f64::from(count)))
        });
        let ends = begins.filter_map(|begin| {
            let edge = self.ray(begin, 42.0 + 8.0 * begin.y)?;
            let goal = self.goal(edge).unwrap_or(begin.towards(edge, reach.min(0.97)));
            Some((begin, goal))
        });
        ends.collect()
    }

    /// The tooth or notch that lies nearest.
    fn goal(&self, edge: Point) -> Option<Point> {
        let goals = match self.ends {
            Some(VeinEnds::Notches) => &self.edged.notches,
            Some(VeinEnds::Teeth) | None => &self.edged.tips,
        };
        let far = |p: &Point| (*p - edge).length();
        let goal = goals.iter().copied().min_by(|a, b| far(a).total_cmp(&far(b)))?;
        // Short of the edge itself, so that the two lines do not run into a blot.
        Some(goal + (at(0.0, goal.y) - goal) * 0.05)
    }
}

enum Join {
    None,
    Net,
    Loops,
}

fn both(sketch: &mut Sketch, path: &Path) {
    sketch.stroke(path.clone(), Ink::Vein);
    sketch.stroke(path.mirrored(), Ink::Vein);
}

/// Leaves the midrib at an angle and bends towards the tip.
fn side_vein(from: Point, end: Point) -> Path {
    Path::from(from).quad(at(end.x * 0.6, from.y + (end.y - from.y) * 0.42), end)
}

/// A point on a side vein.
fn on_vein(vein: &(Point, Point), share: f64) -> Point {
    let (from, end) = *vein;
    let by = at(end.x * 0.6, from.y + (end.y - from.y) * 0.42);
    from.towards(by, share).towards(by.towards(end, share), share)
}

/// Threads between two side veins.
fn net(sketch: &mut Sketch, lower: &(Point, Point), upper: &(Point, Point), even: bool) {
    let shares: [f64; 2] = if even { [0.42, 0.74] } else { [0.52, 0.84] };
    let mut knots = Vec::new();
    for share in shares {
        let (a, b) = (on_vein(lower, share), on_vein(upper, share - 0.1));
        let knot = a.towards(b, 0.5) + at(0.008, -0.004);
        both(sketch, &Path::straight(&[a, knot, b]));
        knots.push(knot);
    }
    if let [a, b] = knots.as_slice() {
        both(sketch, &Path::straight(&[*a, a.towards(*b, 0.5) + at(0.0, 0.012), *b]));
    }
}
