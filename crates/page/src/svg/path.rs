//! Smooth lines: points, curves through them, and the letters in which SVG writes them.

use std::fmt::Write as _;
use std::ops::{Add, Mul, Sub};

/// A point, or the way from one point to another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Point {
    pub(crate) x: f64,
    pub(crate) y: f64,
}

/// Short for a point, because drawings are made of them.
pub(crate) const fn at(x: f64, y: f64) -> Point {
    Point { x, y }
}

impl Add for Point {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        at(self.x + other.x, self.y + other.y)
    }
}

impl Sub for Point {
    type Output = Self;

    fn sub(self, other: Self) -> Self {
        at(self.x - other.x, self.y - other.y)
    }
}

impl Mul<f64> for Point {
    type Output = Self;

    fn mul(self, times: f64) -> Self {
        at(self.x * times, self.y * times)
    }
}

impl Point {
    /// So far from the origin, in a direction in degrees: 0 is along x, 90 along y.
    pub(crate) fn polar(distance: f64, degrees: f64) -> Self {
        let (sin, cos) = libm::sincos(degrees.to_radians());
        at(distance * cos, distance * sin)
    }

    pub(crate) fn length(self) -> f64 {
        libm::hypot(self.x, self.y)
    }

    /// Between this point and another; 0 is here, 1 is there.
    pub(crate) fn towards(self, other: Self, share: f64) -> Self {
        self + (other - self) * share
    }

    /// Across this way, as long as 1, on its left where y grows upwards.
    pub(crate) fn across(self) -> Self {
        let length = self.length().max(f64::MIN_POSITIVE);
        at(-self.y / length, self.x / length)
    }

    pub(crate) fn turned(self, degrees: f64) -> Self {
        let (sin, cos) = libm::sincos(degrees.to_radians());
        at(self.x * cos - self.y * sin, self.x * sin + self.y * cos)
    }

    pub(crate) fn mirrored(self) -> Self {
        at(-self.x, self.y)
    }
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Step {
    Line(Point),
    Quad(Point, Point),
    Cubic(Point, Point, Point),
}

impl Step {
    fn end(self) -> Point {
        match self {
            Self::Line(end) | Self::Quad(_, end) | Self::Cubic(_, _, end) => end,
        }
    }

    fn points(self) -> [Point; 3] {
        match self {
            Self::Line(a) => [a; 3],
            Self::Quad(a, b) => [a, b, b],
            Self::Cubic(a, b, c) => [a, b, c],
        }
    }

    fn map(self, to: &impl Fn(Point) -> Point) -> Self {
        match self {
            Self::Line(a) => Self::Line(to(a)),
            Self::Quad(a, b) => Self::Quad(to(a), to(b)),
            Self::Cubic(a, b, c) => Self::Cubic(to(a), to(b), to(c)),
        }
    }
}

/// A line of straight and curved steps.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Path {
    start: Point,
    steps: Vec<Step>,
    closed: bool,
}

impl Path {
    pub(crate) fn from(start: Point) -> Self {
        Self { start, steps: Vec::new(), closed: false }
    }

    pub(crate) fn line(mut self, to: Point) -> Self {
        self.steps.push(Step::Line(to));
        self
    }

    pub(crate) fn quad(mut self, by: Point, to: Point) -> Self {
        self.steps.push(Step::Quad(by, to));
        self
    }

    pub(crate) fn cubic(mut self, by: Point, then: Point, to: Point) -> Self {
        self.steps.push(Step::Cubic(by, then, to));
        self
    }

    pub(crate) fn close(mut self) -> Self {
        self.closed = true;
        self
    }

    /// Straight from point to point.
    pub(crate) fn straight(points: &[Point]) -> Self {
        let mut points = points.iter().copied();
        let start = points.next().unwrap_or(at(0.0, 0.0));
        points.fold(Self::from(start), Self::line)
    }

    /// Smoothly through every point: the uniform spline of Catmull and Rom (A class of local
    /// interpolating splines, 1974), whose pieces are cubic curves.
    pub(crate) fn smooth(points: &[Point]) -> Self {
        let mut points = points.iter().copied();
        let start = points.next().unwrap_or(at(0.0, 0.0));
        let mut path = Self::from(start);
        let (mut before, mut here) = (start, start);
        let mut rest = points.peekable();
        while let Some(next) = rest.next() {
            let after = rest.peek().copied().unwrap_or(next);
            let by = here + (next - before) * (1.0 / 6.0);
            path = path.cubic(by, next - (after - here) * (1.0 / 6.0), next);
            (before, here) = (here, next);
        }
        path
    }

    /// A smooth closed line through every point.
    pub(crate) fn round(points: &[Point]) -> Self {
        let count = points.len();
        let get = |index: usize| points.get(index % count.max(1)).copied();
        let mut path = Self::from(get(0).unwrap_or(at(0.0, 0.0)));
        for index in 0..count {
            let around = (get(index + count - 1), get(index), get(index + 1), get(index + 2));
            if let (Some(before), Some(here), Some(next), Some(after)) = around {
                let by = here + (next - before) * (1.0 / 6.0);
                path = path.cubic(by, next - (after - here) * (1.0 / 6.0), next);
            }
        }
        path.close()
    }

    /// An ellipse, to a thousandth of its size: four cubic curves.
    pub(crate) fn ellipse(centre: Point, across: f64, up: f64) -> Self {
        const ROUND: f64 = 0.552_285;
        let on = |x: f64, y: f64| centre + at(x * across, y * up);
        Self::from(on(1.0, 0.0))
            .cubic(on(1.0, ROUND), on(ROUND, 1.0), on(0.0, 1.0))
            .cubic(on(-ROUND, 1.0), on(-1.0, ROUND), on(-1.0, 0.0))
            .cubic(on(-1.0, -ROUND), on(-ROUND, -1.0), on(0.0, -1.0))
            .cubic(on(ROUND, -1.0), on(1.0, -ROUND), on(1.0, 0.0))
            .close()
    }

    pub(crate) fn end(&self) -> Point {
        self.steps.last().map_or(self.start, |step| step.end())
    }

    /// Goes on along another line, to whose start it goes straight.
    pub(crate) fn then(mut self, other: &Self) -> Self {
        if (other.start - self.end()).length() > 1e-9 {
            self = self.line(other.start);
        }
        self.steps.extend_from_slice(&other.steps);
        self
    }

    /// The same line from its end to its start.
    pub(crate) fn reversed(&self) -> Self {
        let starts = std::iter::once(self.start).chain(self.steps.iter().map(|step| step.end()));
        let mut pairs: Vec<_> = self.steps.iter().zip(starts).collect();
        pairs.reverse();
        let back = |(step, start): (&Step, Point)| match *step {
            Step::Line(_) => Step::Line(start),
            Step::Quad(by, _) => Step::Quad(by, start),
            Step::Cubic(by, then, _) => Step::Cubic(then, by, start),
        };
        let steps = pairs.into_iter().map(back).collect();
        Self { start: self.end(), steps, closed: self.closed }
    }

    pub(crate) fn map(&self, to: impl Fn(Point) -> Point) -> Self {
        let steps = self.steps.iter().map(|step| step.map(&to)).collect();
        Self { start: to(self.start), steps, closed: self.closed }
    }

    pub(crate) fn mirrored(&self) -> Self {
        self.map(Point::mirrored)
    }

    /// Points on the line, where its steps meet.
    pub(crate) fn knots(&self) -> impl Iterator<Item = Point> {
        std::iter::once(self.start).chain(self.steps.iter().map(|step| step.end()))
    }

    /// Points between which the line lies.
    pub(crate) fn points(&self) -> impl Iterator<Item = Point> {
        std::iter::once(self.start).chain(self.steps.iter().flat_map(|step| step.points()))
    }

    /// Points close together on the line, so many of each step.
    pub(crate) fn flat(&self, each: u32) -> Vec<Point> {
        let mut all = vec![self.start];
        let mut from = self.start;
        for step in &self.steps {
            let [a, b, c] = step.points();
            for index in 1..=each {
                let t = f64::from(index) / f64::from(each);
                let (ab, bc) = (a.towards(b, t), b.towards(c, t));
                all.push(match step {
                    Step::Line(end) => from.towards(*end, t),
                    Step::Quad(..) => from.towards(a, t).towards(ab, t),
                    Step::Cubic(..) => {
                        from.towards(a, t).towards(ab, t).towards(ab.towards(bc, t), t)
                    }
                });
            }
            from = step.end();
        }
        all
    }

    /// The line in the letters of SVG, on a grid of tenths.
    pub(crate) fn written(&self) -> String {
        let mut pen = Pen::default();
        pen.write('M', &[Tenths::of(self.start)]);
        for step in &self.steps {
            pen.step(*step);
        }
        if self.closed {
            pen.said.push('z');
        }
        pen.said
    }
}

/// A point in whole tenths.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Tenths {
    x: i64,
    y: i64,
}

impl Tenths {
    fn of(point: Point) -> Self {
        let tenths = |value: f64| (value * 10.0).round() as i64;
        Self { x: tenths(point.x), y: tenths(point.y) }
    }

    /// Whether two points can hardly be told apart: a twentieth of a millimetre on paper.
    fn is_at(self, other: Self) -> bool {
        self.x.abs_diff(other.x) <= 2 && self.y.abs_diff(other.y) <= 2
    }
}

/// What was written of a line. But for the first, a point is written by its way from where the step before
/// ended, a letter where it changes, and the first hold of a curve where it is no mirror of the last one (SVG 2, 9.3.6).
#[derive(Default)]
struct Pen {
    said: String,
    letter: Option<char>,
    at: Tenths,
    /// The last hold of the curve before, mirrored in its end.
    mirror: Option<Tenths>,
}

impl Pen {
    fn step(&mut self, step: Step) {
        let [a, b, c] = step.points().map(Tenths::of);
        match step {
            Step::Line(_) => self.write('l', &[a]),
            Step::Quad(..) => self.write('q', &[a, b]),
            Step::Cubic(..) => {
                match self.mirror {
                    Some(mirror) if mirror.is_at(a) => self.write('s', &[b, c]),
                    _ => self.write('c', &[a, b, c]),
                }
                self.mirror = Some(Tenths { x: 2 * c.x - b.x, y: 2 * c.y - b.y });
                return;
            }
        }
        self.mirror = None;
    }

    fn write(&mut self, letter: char, points: &[Tenths]) {
        if self.letter.replace(letter) != Some(letter) {
            self.said.push(letter);
        }
        for point in points {
            self.number(point.x - self.at.x);
            self.number(point.y - self.at.y);
        }
        self.at = points.last().copied().unwrap_or(self.at);
    }

    /// A number without a nought that says nothing.
    fn number(&mut self, tenths: i64) {
        let after_number = self.said.ends_with(|before: char| before.is_ascii_digit());
        if tenths < 0 {
            self.said.push('-');
        } else if after_number {
            self.said.push(' ');
        }
        let (whole, rest) = (tenths.unsigned_abs() / 10, tenths.unsigned_abs() % 10);
        // Writing to a string cannot fail.
        let _ = match (whole, rest) {
            (whole, 0) => write!(self.said, "{whole}"),
            (0, rest) => write!(self.said, ".{rest}"),
            (whole, rest) => write!(self.said, "{whole}.{rest}"),
        };
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_is_written_in_tenths_from_point_to_point() {
        let path = Path::from(at(0.0, 0.04)).line(at(1.26, 2.0)).line(at(1.0, 2.4));
        let path = path.quad(at(3.0, 3.0), at(4.0, -0.01));
        assert_eq!(path.close().written(), "M0 0l1.3 2-.3 .4q2 .6 3-2.4z");
    }

    #[test]
    fn a_hold_that_mirrors_the_one_before_is_left_out() {
        let path = Path::from(at(0.0, 0.0)).cubic(at(0.0, 1.0), at(1.0, 2.0), at(2.0, 2.0));
        let on = path.clone().cubic(at(3.0, 2.0), at(4.0, 1.0), at(4.0, 0.0));
        assert_eq!(on.written(), "M0 0c0 1 1 2 2 2s2-1 2-2");
        let corner = path.cubic(at(2.0, 3.0), at(4.0, 1.0), at(4.0, 0.0));
        assert_eq!(corner.written(), "M0 0c0 1 1 2 2 2 0 1 2-1 2-2");
    }

    #[test]
    fn another_program_reads_the_same_line() {
        let points: Vec<_> =
            (0..90).map(|n| Point::polar(1.5 * f64::from(n), 61.0 * f64::from(n))).collect();
        let path = Path::round(&points).quad(at(5.0, 9.0), at(-3.3, 7.7)).line(at(0.0, 1.0));
        let steps = path.map(|point| point + at(140.0, 140.0)).steps;
        let written = path.map(|point| point + at(140.0, 140.0)).written();
        let read = kurbo::BezPath::from_svg(&written).unwrap();
        assert_eq!(read.elements().len(), steps.len() + 2);
        for (read, step) in read.into_iter().skip(1).zip(steps) {
            let [a, b, c] = step.points();
            let near = |x: f64, y: f64, point: Point| (at(x, y) - point).length() < 0.4;
            assert!(match read {
                kurbo::PathEl::CurveTo(x, y, z) =>
                    near(x.x, x.y, a) && near(y.x, y.y, b) && near(z.x, z.y, c),
                kurbo::PathEl::QuadTo(x, y) => near(x.x, x.y, a) && near(y.x, y.y, b),
                kurbo::PathEl::LineTo(x) => near(x.x, x.y, a),
                _ => false,
            });
        }
    }

    #[test]
    fn a_line_turned_round_twice_is_itself() {
        let path = Path::smooth(&[at(0.0, 0.0), at(1.0, 2.0), at(3.0, 1.0), at(4.0, 4.0)]);
        let path = path.quad(at(5.0, 5.0), at(6.0, 4.0)).line(at(7.0, 0.0));
        assert_eq!(path.reversed().reversed(), path);
        assert_eq!((path.reversed().start, path.reversed().end()), (path.end(), path.start));
    }

    #[test]
    fn the_points_of_a_line_end_where_its_steps_end() {
        let path = Path::from(at(0.0, 0.0)).line(at(1.0, 0.0)).quad(at(2.0, 0.0), at(2.0, 1.0));
        let path = path.cubic(at(2.0, 2.0), at(1.0, 3.0), at(0.0, 3.0));
        let flat = path.flat(4);
        let ends: Vec<_> = flat.iter().step_by(4).copied().collect();
        assert_eq!(ends, path.knots().collect::<Vec<_>>());
        // Halfway on a quadratic curve: a quarter of both ends and half of what lies between.
        assert_eq!(flat[6], at(1.75, 0.25));
    }

    #[test]
    fn a_smooth_line_goes_through_its_points() {
        let points = [at(0.0, 0.0), at(1.0, 2.0), at(3.0, 1.0)];
        let ends: Vec<_> = Path::smooth(&points).steps.iter().map(|step| step.end()).collect();
        assert_eq!(ends, points[1..]);
        assert_eq!(Path::round(&points).end(), points[0]);
    }
}
