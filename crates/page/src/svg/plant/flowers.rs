//! How flowers are put together: stalks with a ring for each flower, the usual shorthand of floras.

use super::{Inflorescence, Ink, Petals, Sketch};
use crate::svg::path::{Path, Point, at};

/// What is told of how flowers stand.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct FlowerStand {
    pub(crate) form: Option<Inflorescence>,
    /// Of a flower that stands alone: those of a stand are too small.
    pub(crate) petals: Option<Petals>,
}

impl FlowerStand {
    /// The characters that its drawing shows, where they are told.
    pub(crate) fn shows(&self) -> &'static [&'static str] {
        match self.form {
            Some(Inflorescence::Solitary) => &["inflorescence", "petal_count"],
            _ => &["inflorescence"],
        }
    }

    /// The stand; none where its form is not told.
    pub(crate) fn sketch(&self) -> Option<Sketch> {
        let mut s = Sketch::default();
        match self.form? {
            Inflorescence::Raceme => raceme(&mut s),
            Inflorescence::Panicle => panicle(&mut s),
            Inflorescence::Cyme => {
                cyme(&mut s, at(0.0, -0.9), at(0.0, 0.75), 3);
            }
            Inflorescence::Solitary => solitary(&mut s, self.petals),
            Inflorescence::Corymb => corymb(&mut s),
            Inflorescence::CompoundUmbel => compound_umbel(&mut s),
            Inflorescence::Head => head(&mut s),
            Inflorescence::Umbel => umbel(&mut s),
            Inflorescence::Spike => spike(&mut s),
            Inflorescence::Catkin => catkin(&mut s),
            Inflorescence::Spadix => spadix(&mut s),
        }
        s.spot("inflorescence", at(0.0, 0.2));
        Some(s)
    }
}

fn line(sketch: &mut Sketch, from: Point, to: Point) {
    sketch.stroke(Path::straight(&[from, to]), Ink::Outline);
}

/// A stalk that leaves at an angle and bends upwards.
fn bent(sketch: &mut Sketch, from: Point, to: Point) {
    let by = at(from.x + (to.x - from.x) * 0.75, from.y + (to.y - from.y) * 0.3);
    sketch.stroke(Path::from(from).quad(by, to), Ink::Outline);
}

/// A flower: a ring with a dot, on the end of a stalk.
fn flower(sketch: &mut Sketch, centre: Point, size: f64) {
    sketch.ball(centre, size);
    sketch.dot(centre, size * 0.3);
}

/// A bud: smaller and pointed.
fn bud(sketch: &mut Sketch, centre: Point, size: f64) {
    sketch.part(Path::ellipse(centre, size * 0.75, size), Ink::Outline);
}

/// Its bract, below a stalk.
fn bract(sketch: &mut Sketch, at_: Point, side: f64) {
    let tip = at_ + at(0.1 * side, -0.03);
    sketch.stroke(Path::from(at_).quad(at_ + at(0.06 * side, 0.02), tip), Ink::Vein);
}

fn raceme(s: &mut Sketch) {
    line(s, at(0.0, -1.0), at(0.0, 1.05));
    for step in 0..9 {
        let share = f64::from(step) / 8.0;
        let side = if step % 2 == 0 { 1.0 } else { -1.0 };
        let foot = at(0.0, -0.55 + 1.45 * share);
        let end = foot + at(side * (0.36 - 0.22 * share), 0.2 - 0.08 * share);
        bent(s, foot, end);
        bract(s, foot, side);
        if step < 6 {
            flower(s, end, 0.1 - 0.03 * share);
        } else {
            bud(s, end, 0.065 - 0.01 * share);
        }
    }
    bud(s, at(0.0, 1.08), 0.05);
}

fn panicle(s: &mut Sketch) {
    line(s, at(0.0, -1.0), at(0.0, 1.0));
    for (y, reach) in [(-0.5, 0.72), (-0.1, 0.58), (0.28, 0.42), (0.6, 0.27)] {
        for side in [1.0, -1.0] {
            let foot = at(0.0, y + if side > 0.0 { 0.0 } else { 0.09 });
            let end = foot + at(side * reach, reach * 0.55);
            line(s, foot, end);
            flower(s, end, 0.075);
            let twigs: &[f64] = if reach > 0.4 { &[0.4, 0.7] } else { &[0.5] };
            for (index, share) in twigs.iter().enumerate() {
                let root = foot.towards(end, *share);
                let up = if index % 2 == 0 { at(0.02 * side, 0.2) } else { at(0.14 * side, -0.1) };
                line(s, root, root + up);
                flower(s, root + up, 0.07);
            }
        }
    }
    flower(s, at(0.0, 1.03), 0.075);
}

/// The middle flower opens first: it is the largest; below it two side stalks do the same.
fn cyme(s: &mut Sketch, foot: Point, way: Point, order: i32) {
    let fork = foot + way;
    line(s, foot, fork);
    let size = 0.065 + 0.03 * f64::from(order);
    if order == 0 {
        bud(s, fork, size);
        return;
    }
    let up = way * (0.35 / way.length());
    let side = way * (0.68 / if order == 3 { 1.0 } else { 1.25 });
    for turn in [-42.0, 42.0] {
        cyme(s, fork, side.turned(turn), order - 1);
    }
    line(s, fork, fork + up);
    flower(s, fork + up, size);
}

/// Petals round a flower that is seen from the front.
fn petals(s: &mut Sketch, centre: Point, size: f64, count: i32) {
    let each = 360.0 / f64::from(count);
    let plump = 1.6 * libm::sin((each / 2.0).to_radians()).min(0.62);
    for step in 0..count {
        let way = Point::polar(size, 90.0 + each * f64::from(step));
        let out = at(way.y, -way.x) * (plump * 0.58);
        let petal = Path::from(centre)
            .cubic(centre + way * 0.5 + out, centre + way * 1.1 + out, centre + way)
            .cubic(centre + way * 1.1 - out, centre + way * 0.5 - out, centre);
        s.part(petal, Ink::Outline);
    }
    s.ball(centre, size * 0.2);
}

fn solitary(s: &mut Sketch, count: Option<Petals>) {
    s.stalk(&[at(0.08, -1.2), at(0.05, -0.5), at(0.0, 0.3)], 0.07, 0.05);
    let centre = at(0.0, 0.4);
    let count = match count {
        None => {
            // How many petals it has is not told.
            s.part(Path::ellipse(centre, 0.42, 0.42), Ink::Untold);
            s.ball(centre, 0.1);
            return;
        }
        Some(Petals::None) => return flower(s, centre, 0.2),
        Some(Petals::Three) => 3,
        Some(Petals::Four) => 4,
        Some(Petals::Five) => 5,
        Some(Petals::Six) => 6,
        Some(Petals::Many) => 13,
    };
    petals(s, centre, 0.5, count);
    s.spot("petal_count", at(0.3, 0.6));
}

/// Flat-topped: lower stalks are longer.
fn corymb(s: &mut Sketch) {
    line(s, at(0.0, -1.0), at(0.0, 0.5));
    for (y, x) in [(-0.5, 0.78), (-0.26, 0.52), (0.0, 0.27)] {
        for side in [1.0, -1.0] {
            let foot = at(0.0, y + if side > 0.0 { 0.0 } else { 0.1 });
            let end = at(side * x, 0.5 - 0.06 * x);
            bent(s, foot, end);
            bract(s, foot, side);
            flower(s, end, 0.1);
        }
    }
    flower(s, at(0.0, 0.52), 0.1);
}

/// Stalks from one point, so far, with a flower on each.
fn rays(s: &mut Sketch, from: Point, far: f64, turns: &[f64], flowered: Option<f64>) -> Vec<Point> {
    let ends: Vec<_> = turns
        .iter()
        // A little shorter at the sides: the top is gently domed.
        .map(|turn| from + Point::polar(far * (1.0 - 0.0016 * turn.abs()), 90.0 - turn))
        .collect();
    for end in &ends {
        line(s, from, *end);
    }
    for end in ends.iter().filter(|_| flowered.is_some()) {
        flower(s, *end, flowered.unwrap_or(0.06));
    }
    ends
}

fn umbel(s: &mut Sketch) {
    s.stalk(&[at(0.0, -1.1), at(0.0, -0.6), at(0.0, -0.15)], 0.06, 0.05);
    let turns = [-78.0, -56.0, -35.0, -12.0, 12.0, 35.0, 56.0, 78.0];
    rays(s, at(0.0, -0.15), 0.85, &turns, Some(0.1));
}

fn compound_umbel(s: &mut Sketch) {
    s.stalk(&[at(0.0, -1.1), at(0.0, -0.7), at(0.0, -0.3)], 0.06, 0.045);
    let ends = rays(s, at(0.0, -0.3), 0.8, &[-66.0, -40.0, -14.0, 14.0, 40.0, 66.0], None);
    for end in ends {
        let lean = (end.x * 46.0).clamp(-48.0, 48.0);
        let turns = [-68.0, -34.0, 0.0, 34.0, 68.0].map(|turn| turn + lean);
        rays(s, end, 0.23, &turns, Some(0.045));
    }
}

/// A dense head on its stalk, in a cup of bracts.
fn head(s: &mut Sketch) {
    s.stalk(&[at(0.04, -1.2), at(0.03, -0.7), at(0.0, -0.1)], 0.08, 0.07);
    for step in -3..=3 {
        let x = 0.15 * f64::from(step);
        let tip = at(x * 1.25, 0.78 - x * x * 0.5);
        for out in [-0.05, 0.05] {
            s.stroke(
                Path::from(at(x * 0.7, 0.2)).quad(at(x + out, 0.5), tip + at(out, 0.0)),
                Ink::Vein,
            );
        }
        flower(s, tip, 0.075);
    }
    let cup = Path::from(at(-0.5, 0.3))
        .cubic(at(-0.45, -0.15), at(-0.2, -0.2), at(0.0, -0.2))
        .cubic(at(0.2, -0.2), at(0.45, -0.15), at(0.5, 0.3))
        .quad(at(0.0, 0.42), at(-0.5, 0.3));
    s.part(cup, Ink::Outline);
    for (y, wide) in [(0.2, 4), (0.02, 3), (-0.1, 2)] {
        for step in 0..wide {
            let x = 0.22 * (f64::from(step) - f64::from(wide - 1) / 2.0);
            s.stroke(
                Path::from(at(x - 0.1, y - 0.08))
                    .quad(at(x - 0.08, y + 0.05), at(x, y + 0.11))
                    .quad(at(x + 0.08, y + 0.05), at(x + 0.1, y - 0.08)),
                Ink::Vein,
            );
        }
    }
}

fn spike(s: &mut Sketch) {
    s.stalk(&[at(0.0, -1.1), at(0.0, 0.0), at(0.0, 1.0)], 0.06, 0.03);
    for step in 0..9 {
        let share = f64::from(step) / 8.0;
        let y = -0.5 + 1.45 * share;
        let size = 0.105 - 0.05 * share;
        for side in [1.0, -1.0] {
            flower(s, at(side * (size + 0.02), y), size);
        }
    }
    bud(s, at(0.0, 1.05), 0.05);
}

fn catkin(s: &mut Sketch) {
    s.stalk(&[at(-0.75, 1.1), at(-0.1, 1.12), at(0.6, 1.0)], 0.1, 0.07);
    for (x, top, length) in [(-0.28, 1.06, 1.75), (0.22, 1.04, 1.45)] {
        line(s, at(x, top), at(x, top - 0.16));
        let rows = 9;
        for row in (0..rows).rev() {
            let share = f64::from(row) / f64::from(rows);
            let y = top - 0.16 - length * share;
            let wide = 0.17 * (1.0 - 0.4 * share * share);
            for offset in if row % 2 == 0 { [-0.5, 0.5] } else { [-0.85, 0.15] } {
                let centre = at(x + offset * wide * 1.1, y - 0.06);
                let scale = Path::from(centre + at(-wide * 0.62, 0.1)).cubic(
                    centre + at(-wide * 0.6, -0.14),
                    centre + at(wide * 0.6, -0.14),
                    centre + at(wide * 0.62, 0.1),
                );
                s.part(scale, Ink::Outline);
            }
        }
    }
}

fn spadix(s: &mut Sketch) {
    s.stalk(&[at(0.0, -1.2), at(0.0, -0.9), at(0.0, -0.55)], 0.11, 0.12);
    let hood = Path::from(at(0.0, -0.62))
        .cubic(at(-0.55, -0.45), at(-0.5, 0.35), at(0.05, 1.15))
        .cubic(at(0.5, 0.5), at(0.5, -0.4), at(0.0, -0.62));
    s.part(hood, Ink::Outline);
    let club = Path::from(at(-0.05, -0.5))
        .cubic(at(-0.13, 0.0), at(-0.11, 0.5), at(0.02, 0.62))
        .cubic(at(0.14, 0.5), at(0.12, 0.0), at(0.07, -0.5));
    s.part(club, Ink::Outline);
    for row in 0..7 {
        let y = -0.12 + 0.1 * f64::from(row);
        for x in if row % 2 == 0 { [-0.05, 0.05] } else { [0.0, 0.0] } {
            s.dot(at(x, y), 0.016);
        }
    }
    // The sheath folds across the foot of the spike.
    let fold = Path::from(at(-0.33, -0.2))
        .cubic(at(-0.2, -0.5), at(0.1, -0.3), at(0.36, 0.12))
        .cubic(at(0.37, -0.3), at(0.2, -0.6), at(0.0, -0.62))
        .cubic(at(-0.2, -0.56), at(-0.3, -0.4), at(-0.33, -0.2));
    s.part(fold, Ink::Outline);
}
