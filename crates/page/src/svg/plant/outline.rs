//! The outline of a blade: its right side from foot to tip, for a blade as long as 1.
//!
//! The line goes through the tips of teeth and lobes, as the shape of a toothed leaf is judged
//! ("approximated by a line drawn about the apices of each tooth/lobe": The Pea Key, Leaf or leaflet
//! shape, Australian National Botanic Gardens).

use super::Shape;
use crate::svg::path::{Point, at};

/// A stretch of a side without a corner in it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Span {
    pub(super) points: Vec<Point>,
    /// Whether teeth point the way the stretch goes; on the upper side of a lobe they point back to
    /// the tip of the lobe.
    pub(super) onward: bool,
    /// Whether it bears teeth: none grow in the fold behind a stalk.
    pub(super) toothed: bool,
}

/// The right side of an outline.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Side {
    pub(super) spans: Vec<Span>,
    /// Tips of lobes, besides the tip of the blade.
    pub(super) lobes: Vec<Point>,
    /// Half the breadth as the notches of teeth are measured by, where it is not the breadth itself.
    pub(super) lobed: bool,
}

/// A side that narrows both ways: `x(t) = b/2 · (t/m)^a · ((1−t)/(1−m))^c`, `m = a/(a+c)`, which is
/// widest at the share `m` of its length; `a = c = 1/2` is an ellipse. A formula of our own; its
/// breadths and its widest places are held to published ones in the tests.
struct Oval {
    breadth: f64,
    foot: f64,
    tip: f64,
}

impl Oval {
    fn half(&self, t: f64) -> f64 {
        let widest = self.foot / (self.foot + self.tip);
        let rise = libm::pow(t / widest, self.foot);
        let fall = libm::pow((1.0 - t).max(0.0) / (1.0 - widest), self.tip);
        self.breadth / 2.0 * rise * fall
    }

    fn side(&self) -> Side {
        let steps = 40;
        let point = |step: i32| {
            // Closer together at both ends, where the line bends most.
            let t =
                (1.0 - libm::cos(f64::from(step) / f64::from(steps) * core::f64::consts::PI)) / 2.0;
            at(self.half(t), t)
        };
        Side::of(vec![(0..=steps).map(point).collect()])
    }
}

impl Side {
    fn of(spans: Vec<Vec<Point>>) -> Self {
        let span = |points| Span { points, onward: true, toothed: true };
        Self { spans: spans.into_iter().map(span).collect(), lobes: Vec::new(), lobed: false }
    }

    /// Smooth stretches between corners, each through a few points.
    fn through(spans: &[&[(f64, f64)]]) -> Self {
        let dense = |points: &&[(f64, f64)]| spline(points);
        Self::of(spans.iter().map(dense).collect())
    }

    /// Without teeth on the first stretch.
    fn bare_foot(mut self) -> Self {
        if let Some(first) = self.spans.first_mut() {
            first.toothed = false;
        }
        self
    }

    pub(super) fn points(&self) -> impl Iterator<Item = Point> {
        self.spans.iter().flat_map(|span| span.points.iter().copied())
    }

    /// The widest half.
    pub(super) fn half_breadth(&self) -> f64 {
        self.points().map(|p| p.x).fold(0.0, f64::max)
    }

    /// Where the stalk joins: the middle of the foot.
    pub(super) fn foot(&self) -> Point {
        self.points().next().unwrap_or(at(0.0, 0.0))
    }

    pub(super) fn tip(&self) -> Point {
        self.points().last().unwrap_or(at(0.0, 1.0))
    }
}

/// The side of a shape.
///
/// Length to breadth: elliptic 2, orbicular 1, lanceolate 3 to 4, ovate not more than 2 (W. F. Kirby,
/// British Flowering Plants, introduction); lanceolate about 4, broadest in the lower half (A.
/// McCusker, Flora of Australia glossary); ovate about 1.5 to 2, lanceolate 3 to 6, both widest below
/// the middle (Northern Ontario Plant Database, Leaf Shapes); linear more than 10 (The Pea Key).
/// Those of the other shapes are drawn by eye.
pub(super) fn side(shape: Shape) -> Side {
    let oval = |ratio: f64, foot, tip| Oval { breadth: 1.0 / ratio, foot, tip }.side();
    match shape {
        Shape::Ovate => oval(1.6, 0.5, 0.95),
        Shape::Elliptic => oval(2.0, 0.72, 0.72),
        Shape::Lanceolate => oval(4.0, 0.55, 1.1),
        Shape::Obovate => oval(1.7, 0.95, 0.5),
        Shape::Linear => oval(11.0, 0.2, 0.4),
        Shape::Orbicular => oval(1.0, 0.5, 0.5),
        Shape::Cordate => cordate(),
        Shape::Triangular => triangular(),
        Shape::Rhombic => rhombic(),
        Shape::Reniform => reniform(),
        Shape::Sagittate => sagittate(),
        Shape::Hastate => hastate(),
        Shape::Obcordate => obcordate(),
        Shape::PinnatelyLobed => pinnate_lobes(0.42),
        Shape::PalmatelyLobed => palmate_lobes(0.5),
    }
}

fn cordate() -> Side {
    Side::through(&[
        &[(0.0, 0.14), (0.05, 0.05), (0.14, 0.0)],
        &[
            (0.14, 0.0),
            (0.26, 0.005),
            (0.38, 0.09),
            (0.43, 0.25),
            (0.395, 0.44),
            (0.29, 0.64),
            (0.15, 0.83),
            (0.05, 0.95),
            (0.0, 1.02),
        ],
    ])
    .bare_foot()
}

fn triangular() -> Side {
    Side::through(&[&[
        (0.0, 0.0),
        (0.2, -0.03),
        (0.34, -0.02),
        (0.415, 0.02),
        (0.41, 0.08),
        (0.34, 0.25),
        (0.22, 0.5),
        (0.1, 0.78),
        (0.0, 1.0),
    ]])
}

fn rhombic() -> Side {
    Side::through(&[&[
        (0.0, 0.0),
        (0.12, 0.15),
        (0.25, 0.31),
        (0.335, 0.41),
        (0.355, 0.46),
        (0.33, 0.51),
        (0.24, 0.64),
        (0.12, 0.82),
        (0.0, 1.0),
    ]])
}

fn reniform() -> Side {
    Side::through(&[
        &[(0.0, 0.24), (0.04, 0.12), (0.1, 0.03), (0.17, -0.01)],
        &[
            (0.17, -0.01),
            (0.32, -0.02),
            (0.48, 0.06),
            (0.59, 0.22),
            (0.61, 0.4),
            (0.53, 0.6),
            (0.38, 0.74),
            (0.2, 0.82),
            (0.08, 0.843),
            (0.0, 0.847),
        ],
    ])
    .bare_foot()
}

fn sagittate() -> Side {
    Side::through(&[
        &[(0.0, 0.0), (0.05, -0.05), (0.13, -0.16), (0.21, -0.26), (0.27, -0.33)],
        &[
            (0.27, -0.33),
            (0.3, -0.2),
            (0.31, -0.05),
            (0.315, 0.1),
            (0.29, 0.3),
            (0.22, 0.55),
            (0.11, 0.82),
            (0.0, 1.0),
        ],
    ])
    .bare_foot()
}

fn hastate() -> Side {
    Side::through(&[
        &[(0.0, 0.03), (0.1, 0.02), (0.24, -0.02), (0.4, -0.08)],
        &[
            (0.4, -0.08),
            (0.34, 0.03),
            (0.27, 0.11),
            (0.235, 0.19),
            (0.235, 0.3),
            (0.2, 0.5),
            (0.11, 0.78),
            (0.0, 1.0),
        ],
    ])
    .bare_foot()
}

fn obcordate() -> Side {
    Side::through(&[&[
        (0.0, 0.0),
        (0.1, 0.17),
        (0.27, 0.45),
        (0.42, 0.7),
        (0.455, 0.86),
        (0.38, 0.99),
        (0.25, 1.02),
        (0.12, 0.98),
        (0.03, 0.88),
        (0.0, 0.8),
    ]])
}

/// Lobes along both sides; `cut` is how far inwards the outline is left between them, as a share of
/// the way from the midrib.
pub(super) fn pinnate_lobes(cut: f64) -> Side {
    let form = Oval { breadth: 0.66, foot: 0.6, tip: 0.6 };
    let (lobes, first, pitch) = (4, 0.09, 0.185);
    let wing = |t: f64| at(form.half(t.clamp(0.05, 0.8)) * cut, t);
    let start = wing(first);
    let mut side = Side::through(&[&[(0.0, 0.0), (start.x * 0.7, 0.04), (start.x, start.y)]]);
    side = side.bare_foot();
    for index in 0..lobes {
        let low = wing(first + pitch * f64::from(index));
        let high = wing(low.y + pitch * 0.68);
        let next = wing(first + pitch * f64::from(index + 1));
        let tip = at(form.half((low.y + pitch * 0.75).min(0.88)), low.y + pitch * 0.95);
        let belly = low.towards(tip, 0.55) + at(0.016, -0.03);
        let back = high.towards(tip, 0.55) + at(-0.004, 0.018);
        side.add(&[low, belly, tip], true);
        side.add(&[tip, back, high], false);
        side.lobes.push(tip);
        // The notch between two lobes is round.
        side.add(&[high, high.towards(next, 0.5) + at(-0.006, 0.0), next], true);
        if let Some(notch) = side.spans.last_mut() {
            notch.toothed = false;
        }
    }
    let last = wing(first + pitch * f64::from(lobes));
    let belly = at(last.x + (form.half(0.86) - last.x) * 0.62, 0.885);
    side.add(&[last, belly, at(belly.x * 0.62, 0.97), at(0.0, 1.06)], true);
    side.lobed = true;
    side
}

/// Five lobes spread like fingers; `cut` is how far from the foot the notches between them lie, as a
/// share of the length of a lobe.
pub(super) fn palmate_lobes(cut: f64) -> Side {
    let centre = at(0.0, 0.1);
    let tips = [(-14.0, 0.5), (37.0, 0.74), (90.0, 0.9)];
    let notches = [(12.0, 0.62), (63.5, 0.82)];
    let mut side = Side::through(&[&[(0.0, 0.1), (0.05, 0.0), (0.16, -0.055)]]).bare_foot();
    let mut from = at(0.16, -0.055);
    for (index, (degrees, far)) in tips.iter().enumerate() {
        let tip = centre + Point::polar(*far, *degrees);
        // A lobe is widest beyond its middle, and narrows to its tip.
        let low = centre + Point::polar(far * 0.68, degrees - if index == 0 { 17.0 } else { 14.0 });
        side.add(&[from, low, tip], true);
        let Some((between, wide)) = notches.get(index) else { continue };
        side.lobes.push(tip);
        let notch = centre + Point::polar(wide * cut, *between);
        let high = centre + Point::polar(far * 0.68, degrees + 13.0);
        side.add(&[tip, high, notch], false);
        from = notch;
    }
    side.lobed = true;
    side
}

impl Side {
    fn add(&mut self, points: &[Point], onward: bool) {
        let pairs: Vec<_> = points.iter().map(|p| (p.x, p.y)).collect();
        self.spans.push(Span { points: spline(&pairs), onward, toothed: true });
    }
}

/// Points close together on the smooth line through a few (Catmull and Rom, 1974).
fn spline(points: &[(f64, f64)]) -> Vec<Point> {
    const EACH: i32 = 8;
    let get = |index: usize| points.get(index.min(points.len().saturating_sub(1))).copied();
    let mut dense = Vec::new();
    for index in 0..points.len().saturating_sub(1) {
        let around = (get(index.saturating_sub(1)), get(index), get(index + 1), get(index + 2));
        let (Some(a), Some(b), Some(c), Some(d)) = around else { continue };
        let [a, b, c, d] = [a, b, c, d].map(|(x, y)| at(x, y));
        let bend = |t: f64| {
            let (one, two, three) =
                (c - a, a * 2.0 - b * 5.0 + c * 4.0 - d, b * 3.0 - a - c * 3.0 + d);
            b + (one * t + two * (t * t) + three * (t * t * t)) * 0.5
        };
        dense.extend((0..EACH).map(|step| bend(f64::from(step) / f64::from(EACH))));
    }
    dense.extend(points.last().map(|(x, y)| at(*x, *y)));
    dense
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Length to breadth, and the share of the length at which it is widest.
    fn measured(shape: Shape) -> (f64, f64) {
        let side = side(shape);
        let widest = side.points().fold(at(0.0, 0.0), |w, p| if p.x > w.x { p } else { w });
        let low = side.points().map(|p| p.y).fold(0.0, f64::min);
        let high = side.points().map(|p| p.y).fold(0.0, f64::max);
        ((high - low) / (2.0 * widest.x), (widest.y - low) / (high - low))
    }

    #[test]
    fn lengths_and_breadths_are_those_of_published_glossaries() {
        // Kirby, British Flowering Plants, introduction (leaves): elliptical twice as long as broad,
        // orbicular about as long as broad, lanceolate three or four times, ovate not more than twice.
        // To a hundredth: the side is sampled, so its widest point falls between samples.
        assert!((measured(Shape::Elliptic).0 - 2.0).abs() < 0.01);
        assert!((measured(Shape::Orbicular).0 - 1.0).abs() < 0.01);
        assert!((3.0..=4.01).contains(&measured(Shape::Lanceolate).0));
        assert!(measured(Shape::Ovate).0 <= 2.0);
        // Northern Ontario Plant Database, Leaf Shapes: ovate about 1.5 to 2, lanceolate 3 to 6 times
        // as long as wide.
        assert!((1.5..=2.0).contains(&measured(Shape::Ovate).0));
        assert!((3.0..=6.0).contains(&measured(Shape::Lanceolate).0));
        // The Pea Key: linear, length to width greater than 10.
        assert!(measured(Shape::Linear).0 > 10.0);
    }

    #[test]
    fn the_widest_place_is_where_the_glossary_says() {
        // herbal/glossary, after the NSW and Flora of Australia glossaries: "widest below the middle",
        // "widest in the middle", "widest above the middle", "widest at the foot".
        for shape in [Shape::Ovate, Shape::Lanceolate, Shape::Cordate] {
            assert!(measured(shape).1 < 0.45, "{shape:?} {:?}", measured(shape));
        }
        assert!((measured(Shape::Elliptic).1 - 0.5).abs() < 0.02);
        for shape in [Shape::Obovate, Shape::Obcordate] {
            assert!(measured(shape).1 > 0.55, "{shape:?}");
        }
        assert!(measured(Shape::Triangular).1 < 0.1);
        // "kidney-shaped, wider than long"; "nearly round".
        assert!(measured(Shape::Reniform).0 < 1.0);
    }

    #[test]
    fn stretches_meet_end_to_start() {
        for word in super::super::DRAWN.iter().find(|(id, _)| *id == "leaf_shape").unwrap().1 {
            let side = side(Shape::of(word).unwrap());
            for pair in side.spans.windows(2) {
                let (end, start) = (pair[0].points.last().unwrap(), pair[1].points[0]);
                assert!((*end - start).length() < 1e-9, "{word}");
            }
            assert!(side.tip().x.abs() < 1e-9 && side.foot().x.abs() < 1e-9, "{word}");
        }
    }
}
