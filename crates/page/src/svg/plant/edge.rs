//! The edge of a blade: teeth along its outline.
//!
//! Serrate teeth are lopsided and point to the tip, crenate ones rounded (A. McCusker, Flora of
//! Australia glossary, leaf marginal incision); dentate ones point outwards. A tooth is cut less than
//! a quarter of the way to the midrib, a lobe a quarter to half (Plantpedia, Leaf indentations).

use super::Edge;
use super::outline::{Side, Span};
use crate::svg::path::{Path, Point, at};

/// The right side of a blade with its teeth.
pub(super) struct Edged {
    pub(super) path: Path,
    /// Tips of teeth and lobes, from foot to tip.
    pub(super) tips: Vec<Point>,
    /// The notches between teeth.
    pub(super) notches: Vec<Point>,
}

/// What the teeth of an edge are like, for a blade as long as 1.
struct Teeth {
    /// From one to the next.
    pitch: f64,
    /// How deep the notches are cut, as a share of the way to the midrib.
    cut: f64,
    /// Where the tip of a tooth stands between its notches.
    lean: f64,
}

fn teeth(edge: Edge) -> Option<Teeth> {
    let (pitch, cut, lean) = match edge {
        Edge::Entire => return None,
        Edge::Serrate => (0.082, 0.19, 0.93),
        Edge::Dentate => (0.1, 0.2, 0.5),
        Edge::Crenate => (0.105, 0.16, 0.5),
        Edge::DoublySerrate => (0.165, 0.24, 0.93),
        Edge::Lobed => (0.26, 0.34, 0.6),
        Edge::Spiny => (0.19, 0.22, 0.5),
    };
    Some(Teeth { pitch, cut, lean })
}

/// The side with the teeth of an edge. `coarse` makes fewer and larger ones, for a small leaflet.
pub(super) fn edged(side: &Side, edge: Option<Edge>, coarse: f64) -> Edged {
    let mut all = Edged { path: Path::from(side.foot()), tips: Vec::new(), notches: Vec::new() };
    let first = side.spans.iter().position(|span| span.toothed);
    for (index, span) in side.spans.iter().enumerate() {
        // Lobes of the outline are not cut into lobes again.
        let edge = edge.filter(|edge| !(side.lobed && *edge == Edge::Lobed));
        let teeth = edge.and_then(|edge| Some((edge, teeth(edge)?))).filter(|_| span.toothed);
        let Some((edge, teeth)) = teeth else {
            all.path = all.path.then(&plain(&span.points));
            continue;
        };
        let ruler = Ruler::along(span, side.lobed);
        let from = if first == Some(index) && !side.lobed { 0.1 } else { 0.0 };
        let (path, tips, notches) = Row { ruler, edge, teeth, coarse, from }.cut();
        if span.onward {
            all.path = all.path.then(&path);
            all.tips.extend(tips);
            all.notches.extend(notches);
        } else {
            all.path = all.path.then(&path.reversed());
        }
    }
    if side.lobed {
        all.tips.clone_from(&side.lobes);
        all.notches.clear();
    }
    all
}

/// A smooth stretch, through every third of its points.
fn plain(points: &[Point]) -> Path {
    let last = points.len().saturating_sub(1);
    let kept = points.iter().enumerate().filter(|(at, _)| at % 4 == 0 || *at == last);
    Path::smooth(&kept.map(|(_, point)| *point).collect::<Vec<_>>())
}

/// Finds points by how far they lie along a stretch.
struct Ruler {
    points: Vec<(f64, Point)>,
    length: f64,
    /// Which side of the way is inwards.
    inward: f64,
    /// The way to the midrib, where it is that of a lobe and not of the blade.
    lobed: bool,
}

impl Ruler {
    fn along(span: &Span, lobed: bool) -> Self {
        let mut line = span.points.clone();
        if !span.onward {
            line.reverse();
        }
        let mut length = 0.0;
        let mut before = line.first().copied().unwrap_or(at(0.0, 0.0));
        let points = line.into_iter().map(|point| {
            length += (point - before).length();
            before = point;
            (length, point)
        });
        let points = points.collect();
        Self { points, length, inward: if span.onward { 1.0 } else { -1.0 }, lobed }
    }

    /// The point at a share of the length, and the way inwards there.
    fn find(&self, share: f64) -> (Point, Point) {
        let far = share.clamp(0.0, 1.0) * self.length;
        let pairs = self.points.windows(2).filter_map(|pair| match pair {
            [a, b] => Some((*a, *b)),
            _ => None,
        });
        let mut found = (at(0.0, 0.0), at(-1.0, 0.0));
        for ((s, a), (t, b)) in pairs {
            let into = if t > s { ((far - s) / (t - s)).min(1.0) } else { 0.0 };
            found = (a.towards(b, into), (b - a).across() * self.inward);
            if far <= t {
                break;
            }
        }
        found
    }

    /// How far a notch there may be cut to the midrib; none at the two ends.
    fn room(&self, share: f64, point: Point) -> f64 {
        let ends = (8.0 * share.min(1.0 - share)).clamp(0.0, 1.0);
        ends * if self.lobed { 0.13 } else { point.x.max(0.03) }
    }
}

struct Row {
    ruler: Ruler,
    edge: Edge,
    teeth: Teeth,
    coarse: f64,
    /// The share of the stretch that bears none.
    from: f64,
}

impl Row {
    fn cut(&self) -> (Path, Vec<Point>, Vec<Point>) {
        let share = 1.0 - self.from;
        let count = (self.ruler.length * share / (self.teeth.pitch * self.coarse)).round().max(1.0);
        let border = |index: f64| self.from + share * index / count;
        let bare: Vec<_> =
            (0..=4).map(|i| self.ruler.find(self.from * f64::from(i) / 4.0).0).collect();
        let mut path =
            Path::smooth(if self.from > 0.0 { &bare } else { bare.get(..1).unwrap_or(&[]) });
        let (mut tips, mut notches) = (Vec::new(), Vec::new());
        let mut index = 0.0;
        while index < count {
            let (a, b) = (border(index), border(index + 1.0));
            let tip = self.ruler.find(a + (b - a) * self.teeth.lean).0;
            let notch = if index + 1.0 < count { self.notch(b) } else { self.ruler.find(1.0).0 };
            path = self.tooth(path, tip, notch);
            tips.push(tip);
            if index + 1.0 < count {
                notches.push(notch);
            }
            index += 1.0;
        }
        (path, tips, notches)
    }

    fn notch(&self, share: f64) -> Point {
        let (point, inward) = self.ruler.find(share);
        point + inward * (self.teeth.cut * self.ruler.room(share, point))
    }

    /// From the notch in which the path ends over a tip to the next notch.
    fn tooth(&self, path: Path, tip: Point, notch: Point) -> Path {
        let start = path.end();
        let out = (notch - start).across() * -self.ruler.inward;
        match self.edge {
            Edge::Serrate | Edge::Entire => {
                path.quad(self.belly(start, tip, 0.09), tip).line(notch)
            }
            Edge::DoublySerrate => self.small_teeth(path, tip).line(notch),
            Edge::Dentate => path
                .quad(self.belly(start, tip, -0.06), tip)
                .quad(self.belly(tip, notch, -0.06), notch),
            Edge::Spiny => path
                .quad(self.belly(start, tip, -0.2), tip)
                .quad(self.belly(tip, notch, -0.2), notch),
            Edge::Crenate | Edge::Lobed => {
                let chord = notch - start;
                let high = out * ((tip - start.towards(notch, 0.5)).length() * 1.3);
                let wide = if self.edge == Edge::Lobed { 0.12 } else { 0.04 };
                path.cubic(start + high - chord * wide, notch + high + chord * wide, notch)
            }
        }
    }

    /// A point beside the middle between two, outwards, by a share of the way between them.
    fn belly(&self, from: Point, to: Point, share: f64) -> Point {
        from.towards(to, 0.5)
            - (to - from).across() * (self.ruler.inward * share * (to - from).length())
    }

    /// The long side of a large tooth, with two small teeth on it.
    fn small_teeth(&self, mut path: Path, tip: Point) -> Path {
        let start = path.end();
        let inward = (tip - start).across() * (self.ruler.inward * 0.13 * (tip - start).length());
        for (small, next) in [(0.3, 0.36), (0.62, 0.68)] {
            let edge = start.towards(tip, small) - inward * 0.55;
            let belly = self.belly(path.end(), edge, 0.1);
            path = path.quad(belly, edge);
            path = path.line(start.towards(tip, next) + inward * 0.25);
        }
        let from = path.end();
        path.quad(self.belly(from, tip, 0.1), tip)
    }
}

#[cfg(test)]
mod tests {
    use super::super::outline::side;
    use super::super::{Edge, Shape};
    use super::*;

    /// How much line an edge takes.
    fn inked(edge: Edge) -> f64 {
        let points: Vec<_> = edged(&side(Shape::Ovate), Some(edge), 1.0).path.points().collect();
        points.windows(2).map(|pair| (pair[1] - pair[0]).length()).sum()
    }

    #[test]
    fn teeth_take_more_line_than_none() {
        let (saws, others) = (
            [Edge::Serrate, Edge::DoublySerrate, Edge::Dentate],
            [Edge::Crenate, Edge::Lobed, Edge::Spiny],
        );
        for edge in saws.into_iter().chain(others) {
            assert!(inked(edge) > inked(Edge::Entire), "{edge:?}");
        }
    }

    /// How far each notch is cut from the line through the tips of teeth towards the midrib.
    fn cuts(edge: Edge) -> Vec<f64> {
        let side = side(Shape::Ovate);
        let edged = edged(&side, Some(edge), 1.0);
        let outer = |notch: &Point| {
            let near = side
                .points()
                .min_by(|a, b| (a.y - notch.y).abs().total_cmp(&(b.y - notch.y).abs()));
            near.unwrap().x
        };
        edged.notches.iter().map(|notch| 1.0 - notch.x / outer(notch)).collect()
    }

    #[test]
    fn teeth_are_cut_less_than_a_quarter_and_lobes_a_quarter_to_half() {
        // Plantpedia, Leaf indentations: toothed, less than one quarter of the distance to the
        // midrib; lobed, one quarter to nearly one half. In the middle of the blade: near tip and foot
        // a cut across the outline runs along the midrib, and its share of the breadth says nothing.
        let deepest = |edge| {
            let cuts = cuts(edge);
            let (skip, take) = (cuts.len() / 4, cuts.len() / 2);
            cuts.into_iter().skip(skip).take(take.max(1)).fold(0.0, f64::max)
        };
        for edge in [Edge::Serrate, Edge::Dentate, Edge::Crenate] {
            let deepest = deepest(edge);
            assert!(deepest > 0.05 && deepest < 0.25, "{edge:?} {deepest}");
        }
        let lobed = deepest(Edge::Lobed);
        assert!((0.25..0.5).contains(&lobed), "{lobed}");
    }

    #[test]
    fn serrate_teeth_point_to_the_tip_and_dentate_ones_outwards() {
        // McCusker, Flora of Australia glossary: serrate, "asymmetrical teeth pointing forward".
        let lean = |edge| {
            let edged = edged(&side(Shape::Elliptic), Some(edge), 1.0);
            let along = edged.notches.windows(2).zip(edged.tips.iter().skip(1));
            let shares: Vec<_> = along
                .map(|(pair, tip)| {
                    let way = pair[1] - pair[0];
                    let to = *tip - pair[0];
                    (to.x * way.x + to.y * way.y) / (way.length() * way.length())
                })
                .collect();
            shares.iter().sum::<f64>() / shares.len() as f64
        };
        assert!(lean(Edge::Serrate) > 0.8, "{}", lean(Edge::Serrate));
        assert!((lean(Edge::Dentate) - 0.5).abs() < 0.1, "{}", lean(Edge::Dentate));
    }
}
