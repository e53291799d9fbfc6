//! Tone and texture within an outline: dots, hatching, marks in rows.

use crate::svg::path::{Path, Point, at};

/// What lies within a closed line.
#[derive(Clone, Debug)]
pub(super) struct Area {
    corners: Vec<Point>,
}

impl Area {
    pub(super) fn within(path: &Path) -> Self {
        Self { corners: path.flat(10) }
    }

    fn bounds(&self) -> (Point, Point) {
        let none = (at(f64::MAX, f64::MAX), at(f64::MIN, f64::MIN));
        self.corners.iter().fold(none, |(low, high), p| {
            (at(low.x.min(p.x), low.y.min(p.y)), at(high.x.max(p.x), high.y.max(p.y)))
        })
    }

    /// The same, smaller about its middle, so that marks keep clear of the line.
    pub(super) fn shrunk(&self, share: f64) -> Self {
        let (low, high) = self.bounds();
        let middle = low.towards(high, 0.5);
        Self { corners: self.corners.iter().map(|p| middle.towards(*p, share)).collect() }
    }

    fn sides(&self) -> impl Iterator<Item = (Point, Point)> {
        self.corners.iter().copied().zip(self.corners.iter().copied().cycle().skip(1))
    }

    /// Whether a point lies within: a ray from it crosses the line an odd number of times.
    pub(super) fn holds(&self, p: Point) -> bool {
        let crossed = |(a, b): &(Point, Point)| {
            (a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)
        };
        self.sides().filter(crossed).count() % 2 == 1
    }

    /// Points so far apart, a little out of line, so that they do not read as rows.
    pub(super) fn points(&self, gap: f64) -> Vec<Point> {
        let (low, high) = self.bounds();
        let rows = ((high.y - low.y) / (gap * 0.87)) as i32;
        let columns = ((high.x - low.x) / gap) as i32 + 1;
        let mut all = Vec::new();
        for row in 0..=rows {
            let shift = if row % 2 == 0 { 0.25 } else { 0.75 };
            for column in 0..=columns {
                let on = at(f64::from(column) + shift, (f64::from(row) + 0.5) * 0.87) * gap;
                let off = Point::polar(gap * 0.16, 137.5 * f64::from(row * 31 + column * 7));
                all.push(low + on + off);
            }
        }
        all.retain(|p| self.holds(*p));
        all
    }

    /// Stretches of parallel lines so far apart, in a direction in degrees.
    pub(super) fn lines(&self, gap: f64, degrees: f64) -> Vec<(Point, Point)> {
        let level = Self { corners: self.corners.iter().map(|p| p.turned(-degrees)).collect() };
        let (low, high) = level.bounds();
        let first = libm::ceil(low.y / gap) as i32;
        let last = libm::floor(high.y / gap) as i32;
        let mut all = Vec::new();
        for row in first..=last {
            // Off the corners, where a line would be counted twice.
            let y = gap * (f64::from(row) + 0.0137);
            let mut crossed: Vec<f64> = level
                .sides()
                .filter(|(a, b)| (a.y > y) != (b.y > y))
                .map(|(a, b)| a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x))
                .collect();
            crossed.sort_by(f64::total_cmp);
            for pair in crossed.chunks_exact(2) {
                if let [from, to] = pair {
                    all.push((at(*from, y).turned(degrees), at(*to, y).turned(degrees)));
                }
            }
        }
        all
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square() -> Area {
        let corners = [at(0.0, 0.0), at(2.0, 0.0), at(2.0, 2.0), at(0.0, 2.0)];
        Area::within(&Path::straight(&corners).close())
    }

    #[test]
    fn points_and_lines_stay_within() {
        let area = square();
        assert!(area.holds(at(1.0, 1.0)) && !area.holds(at(2.5, 1.0)));
        let points = area.points(0.2);
        assert!(points.len() > 60 && points.iter().all(|p| area.holds(*p)));
        for degrees in [0.0, 40.0, 90.0] {
            let lines = area.lines(0.3, degrees);
            assert!(lines.len() >= 6, "{degrees} {}", lines.len());
            assert!(lines.iter().all(|(a, b)| area.holds(a.towards(*b, 0.5))));
        }
    }

    #[test]
    fn a_line_in_a_hollow_form_is_broken() {
        let fork =
            [(0.0, 0.0), (3.0, 0.0), (3.0, 2.0), (2.0, 2.0), (2.0, 1.0), (1.0, 1.0), (1.0, 2.0)];
        let corners: Vec<_> = fork.iter().chain(&[(0.0, 2.0)]).map(|(x, y)| at(*x, *y)).collect();
        let lines = Area::within(&Path::straight(&corners).close()).lines(0.5, 0.0);
        assert_eq!(lines.iter().filter(|(a, _)| a.y > 1.0).count(), 4);
    }
}
