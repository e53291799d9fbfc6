//! Fruits: how they stand, and one cut open where that is the sign.

use super::{ConeForm, FruitKind, FruitStand, Husk, Inflorescence, Ink, Sketch, cone, dry};
use crate::svg::path::{Path, Point, at};

/// What is told of a fruit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Fruit {
    pub(crate) kind: Option<FruitKind>,
    pub(crate) cone: Option<ConeForm>,
    pub(crate) stand: Option<FruitStand>,
    pub(crate) husk: Option<Husk>,
    /// How the flowers stood, from which a cluster comes.
    pub(crate) flowers: Option<Inflorescence>,
}

impl Fruit {
    /// The characters that its drawing shows, where they are told.
    pub(crate) fn shows(&self) -> Vec<&'static str> {
        let fleshy =
            matches!(self.kind, Some(FruitKind::Berry | FruitKind::Drupe | FruitKind::Pome));
        match (self.husk, self.cone) {
            (Some(_), _) => vec!["husk"],
            (None, Some(_)) => vec!["fruit_type", "cone_form"],
            (None, None) if fleshy => vec!["fruit_type", "fruit_arrangement"],
            (None, None) => vec!["fruit_type"],
        }
    }

    /// The fruit; none where its kind is not told, or has no drawing.
    pub(crate) fn sketch(&self) -> Option<Sketch> {
        let mut s = Sketch::default();
        match (self.husk, self.cone, self.kind) {
            (Some(husk), _, _) => husked(&mut s, husk),
            (None, Some(form), _) => s = cone::sketch(form),
            (None, None, Some(kind)) => s = self.of_kind(kind),
            (None, None, None) => return None,
        }
        let (low, high) = s.bounds();
        for character in ["fruit_type", "fruit_arrangement", "husk"] {
            s.spot(character, low.towards(high, 0.5));
        }
        Some(s)
    }

    fn of_kind(&self, kind: FruitKind) -> Sketch {
        let mut s = Sketch::default();
        match kind {
            FruitKind::Berry | FruitKind::Drupe | FruitKind::Pome => self.fleshy(&mut s, kind),
            FruitKind::Aggregate => aggregate(&mut s),
            FruitKind::Hip => hip(&mut s),
            FruitKind::Capsule => capsule(&mut s),
            FruitKind::Follicle => follicle(&mut s),
            FruitKind::Legume => legume(&mut s),
            FruitKind::Silique => silique(&mut s),
            FruitKind::Achene => dry::achene(&mut s),
            FruitKind::Nutlet => dry::nutlet(&mut s),
            FruitKind::Schizocarp => schizocarp(&mut s),
            FruitKind::Nut => dry::whole_nut(&mut s),
            FruitKind::Utricle => dry::utricle(&mut s),
            FruitKind::NakedSeed => dry::naked_seed(&mut s),
            FruitKind::WoodyCone => s = cone::sketch(ConeForm::EggShaped),
            FruitKind::Samara => samara(&mut s),
            FruitKind::BerryLikeCone => s = cone::sketch(ConeForm::BerryLike),
            FruitKind::ArillateSeed => s = cone::sketch(ConeForm::CupAril),
        }
        s
    }

    /// How it stands, and below it one cut across.
    fn fleshy(&self, s: &mut Sketch, kind: FruitKind) {
        match self.stand {
            Some(FruitStand::Cluster) => cluster(s, self.flowers),
            Some(FruitStand::Paired) => {
                for side in [-1.0, 1.0] {
                    bent(s, at(0.0, 1.0), at(side * 0.36, 0.25));
                    whole(s, at(side * 0.36, 0.0), 0.3);
                }
                s.stalk(&[at(0.0, 1.5), at(0.0, 1.25), at(0.0, 1.0)], 0.08, 0.06);
            }
            Some(FruitStand::Singly) => {
                bent(s, at(0.0, 1.0), at(0.05, 0.34));
                whole(s, at(0.05, 0.0), 0.36);
            }
            None => s.small = true,
        }
        let (low, high) = s.bounds();
        let beside =
            if self.stand.is_some() { at(high.x + 0.3, low.y - 0.16) } else { at(0.0, 0.0) };
        cut(s, kind, beside, 0.42);
    }
}

fn bent(s: &mut Sketch, from: Point, to: Point) {
    s.stroke(Path::from(from).quad(at(to.x, from.y), to), Ink::Outline);
}

/// A fruit from outside: a ball with what is left of the flower at its end.
fn whole(s: &mut Sketch, centre: Point, size: f64) {
    s.ball(centre, size);
    let end = centre + at(0.1, -0.72) * size;
    s.dot(end, size * 0.09);
    let light = Path::from(centre + at(-0.7, 0.05) * size)
        .quad(centre + at(-0.62, 0.5) * size, centre + at(-0.25, 0.68) * size);
    s.stroke(light, Ink::Vein);
}

/// Cut across: many seeds, a stone, or a core.
fn cut(s: &mut Sketch, kind: FruitKind, centre: Point, size: f64) {
    s.ball(centre, size);
    match kind {
        FruitKind::Drupe => {
            s.part(Path::ellipse(centre, size * 0.5, size * 0.46), Ink::Outline);
            s.part(Path::ellipse(centre, size * 0.34, size * 0.3), Ink::Vein);
            for turn in 0..6 {
                let out = Point::polar(1.0, 60.0 * f64::from(turn) + 20.0);
                s.stroke(
                    Path::straight(&[centre + out * (size * 0.36), centre + out * (size * 0.46)]),
                    Ink::Vein,
                );
            }
        }
        FruitKind::Pome => {
            s.stroke(Path::ellipse(centre, size * 0.6, size * 0.6), Ink::Vein);
            for turn in 0..5 {
                let way = Point::polar(size * 0.5, 90.0 + 72.0 * f64::from(turn));
                let out = way.across() * (size * 0.2);
                let cell = Path::from(centre + way * 0.12)
                    .quad(centre + way * 0.6 + out, centre + way)
                    .quad(centre + way * 0.6 - out, centre + way * 0.12);
                s.part(cell, Ink::Outline);
                s.dot(centre + way * 0.55, size * 0.06);
            }
        }
        _ => {
            for turn in 0..6 {
                let seed = centre + Point::polar(size * 0.5, 60.0 * f64::from(turn) + 12.0);
                s.part(Path::ellipse(seed, size * 0.13, size * 0.17), Ink::Outline);
            }
            s.stroke(Path::ellipse(centre, size * 0.84, size * 0.84), Ink::Vein);
        }
    }
}

/// A cluster like the flowers it comes from: flat on branched stalks, or a hanging string.
fn cluster(s: &mut Sketch, flowers: Option<Inflorescence>) {
    use Inflorescence::{CompoundUmbel, Corymb, Cyme, Panicle, Umbel};
    match flowers {
        Some(Corymb | CompoundUmbel | Cyme | Panicle | Umbel) => {
            s.stalk(&[at(0.0, -1.1), at(0.0, -0.7), at(0.0, -0.35)], 0.08, 0.06);
            let mut ends = Vec::new();
            for turn in [-62.0, -34.0, 0.0, 34.0, 62.0] {
                let fork = at(0.0, -0.35) + Point::polar(0.55, 90.0 - turn);
                s.stroke(Path::straight(&[at(0.0, -0.35), fork]), Ink::Outline);
                for twig in [-40.0, 0.0, 40.0] {
                    let end = fork + Point::polar(0.3, 90.0 - turn * 0.7 - twig);
                    s.stroke(Path::straight(&[fork, end]), Ink::Outline);
                    ends.push(end);
                }
            }
            ends.sort_by(|a, b| b.y.total_cmp(&a.y));
            ends.into_iter().for_each(|end| whole(s, end, 0.135));
        }
        _ => {
            s.stroke(Path::smooth(&[at(0.0, 1.2), at(0.02, 0.5), at(0.0, -0.75)]), Ink::Outline);
            for step in 0..9 {
                let y = 0.75 - 0.19 * f64::from(step);
                let side = if step % 2 == 0 { 1.0 } else { -1.0 };
                let end = at(side * (0.3 - 0.018 * f64::from(step)), y - 0.12);
                s.stroke(
                    Path::from(at(0.01, y + 0.08)).quad(at(end.x * 0.8, y + 0.1), end),
                    Ink::Outline,
                );
                whole(s, end, 0.17 - 0.006 * f64::from(step));
            }
            whole(s, at(0.0, -0.86), 0.11);
        }
    }
}

fn aggregate(s: &mut Sketch) {
    s.stalk(&[at(0.0, 1.5), at(0.0, 1.2), at(0.0, 0.9)], 0.08, 0.08);
    let rows = [
        (-0.82, 1, 0.0),
        (-0.58, 3, 0.34),
        (-0.28, 4, 0.36),
        (0.04, 5, 0.34),
        (0.36, 4, 0.36),
        (0.62, 3, 0.36),
    ];
    for (y, count, pitch) in rows {
        for index in 0..count {
            let x = pitch * (f64::from(index) - f64::from(count - 1) / 2.0);
            s.ball(at(x, y), 0.21);
            s.stroke(Path::straight(&[at(x + 0.03, y - 0.04), at(x + 0.08, y - 0.12)]), Ink::Vein);
        }
    }
    for turn in [-74.0, -38.0, 0.0, 38.0, 74.0] {
        let way = Point::polar(0.62, 90.0 + turn);
        let way = at(way.x, way.y * 0.35 - 0.08);
        let foot = at(0.0, 0.88);
        let out = way.across() * 0.12;
        s.part(
            Path::from(foot)
                .quad(foot + way * 0.5 + out, foot + way)
                .quad(foot + way * 0.5 - out, foot),
            Ink::Outline,
        );
    }
}

fn hip(s: &mut Sketch) {
    s.stalk(&[at(0.25, 1.6), at(0.05, 1.3), at(0.0, 0.9)], 0.1, 0.12);
    let side = Path::from(at(0.0, 0.95)).cubic(at(0.62, 0.9), at(0.7, -0.2), at(0.2, -0.62));
    s.part(side.clone().line(at(-0.2, -0.62)).then(&side.mirrored().reversed()), Ink::Outline);
    for turn in [-62.0, -30.0, 0.0, 30.0, 62.0] {
        let foot = at(turn * 0.0028, -0.6);
        let way = Point::polar(0.5, -90.0 + turn);
        let out = way.across() * 0.06;
        s.part(
            Path::from(foot - out)
                .quad(foot + way * 0.5 - out, foot + way)
                .quad(foot + way * 0.5 + out, foot + out),
            Ink::Outline,
        );
    }
    s.stroke(Path::from(at(-0.38, 0.3)).quad(at(-0.36, 0.62), at(-0.14, 0.8)), Ink::Vein);
}

/// A dry box that opens by valves at its top.
fn capsule(s: &mut Sketch) {
    s.stalk(&[at(0.0, -1.5), at(0.0, -1.0), at(0.0, -0.62)], 0.08, 0.1);
    for side in [1.0, -1.0] {
        let flap = Path::from(at(0.1 * side, 0.5))
            .cubic(at(0.3 * side, 0.9), at(0.7 * side, 1.0), at(0.78 * side, 0.72))
            .cubic(at(0.66 * side, 0.6), at(0.52 * side, 0.5), at(0.46 * side, 0.3));
        s.part(flap, Ink::Outline);
    }
    for (x, y) in [(-0.16, 0.62), (0.02, 0.74), (0.18, 0.62), (-0.04, 0.58)] {
        s.dot(at(x, y), 0.055);
    }
    let body = Path::from(at(-0.5, 0.38))
        .cubic(at(-0.66, -0.25), at(-0.4, -0.68), at(0.0, -0.68))
        .cubic(at(0.4, -0.68), at(0.66, -0.25), at(0.5, 0.38))
        .quad(at(0.25, 0.3), at(0.0, 0.62))
        .quad(at(-0.25, 0.3), at(-0.5, 0.38));
    s.part(body, Ink::Outline);
    for x in [-0.28, 0.28] {
        s.stroke(Path::smooth(&[at(x, 0.38), at(x * 1.15, -0.1), at(x * 0.5, -0.6)]), Ink::Vein);
    }
    s.stroke(Path::straight(&[at(0.0, 0.6), at(0.0, -0.62)]), Ink::Vein);
}

/// A pod that opens along one side only.
fn follicle(s: &mut Sketch) {
    s.stalk(&[at(0.0, -1.5), at(0.0, -1.2), at(0.02, -0.95)], 0.09, 0.12);
    let back = Path::from(at(0.0, -1.0)).cubic(at(-0.62, -0.6), at(-0.5, 0.6), at(0.02, 1.2));
    let lip = Path::from(at(0.0, -1.0)).cubic(at(0.62, -0.6), at(0.62, 0.5), at(0.02, 1.2));
    s.part(back.then(&lip.reversed()), Ink::Outline);
    let slit = Path::from(at(0.08, -0.75))
        .cubic(at(0.6, -0.3), at(0.5, 0.4), at(0.06, 0.98))
        .cubic(at(0.05, 0.4), at(-0.02, -0.3), at(0.08, -0.75));
    s.part(slit, Ink::Outline);
    for (x, y) in [(0.18, -0.32), (0.24, -0.08), (0.25, 0.16), (0.2, 0.4)] {
        s.part(Path::ellipse(at(x, y), 0.085, 0.1), Ink::Outline);
    }
    s.stroke(Path::smooth(&[at(-0.22, -0.6), at(-0.34, 0.0), at(-0.2, 0.6)]), Ink::Vein);
    s.stroke(Path::from(at(0.02, 1.2)).quad(at(0.06, 1.36), at(0.18, 1.42)), Ink::Outline);
}

/// A pod that opens on both sides: one half lifts off.
fn legume(s: &mut Sketch) {
    let pod = |lift: f64| {
        Path::from(at(-1.2, 0.0))
            .cubic(at(-0.9, -0.34), at(0.8, -0.4 - lift), at(1.25, -0.02 - lift))
            .cubic(at(0.9, 0.3 - lift), at(-0.8, 0.36), at(-1.2, 0.0))
    };
    s.part(pod(0.0).map(|p| at(p.x, p.y + 0.1)), Ink::Outline);
    for step in 0..5 {
        s.part(Path::ellipse(at(-0.72 + 0.38 * f64::from(step), 0.12), 0.14, 0.12), Ink::Outline);
    }
    let half = Path::from(at(-1.2, 0.08))
        .cubic(at(-0.7, -0.2), at(0.6, -0.3), at(1.22, -0.36))
        .cubic(at(0.7, -0.72), at(-0.7, -0.62), at(-1.2, 0.08));
    s.part(half, Ink::Outline);
    for step in 0..5 {
        let x = -0.62 + 0.36 * f64::from(step);
        s.stroke(
            Path::from(at(x - 0.1, -0.34 - x * 0.06))
                .quad(at(x, -0.26 - x * 0.06), at(x + 0.1, -0.34 - x * 0.06)),
            Ink::Vein,
        );
    }
    s.stalk(&[at(-1.65, 0.25), at(-1.4, 0.14), at(-1.16, 0.09)], 0.07, 0.09);
    s.stroke(Path::from(at(1.24, 0.08)).quad(at(1.4, 0.1), at(1.5, 0.22)), Ink::Outline);
}

/// Two valves that lift from a wall between them, from the foot upwards.
fn silique(s: &mut Sketch) {
    s.stalk(&[at(0.0, -1.6), at(0.0, -1.35), at(0.0, -1.1)], 0.07, 0.08);
    let wall = Path::from(at(-0.1, -1.1))
        .line(at(-0.11, 0.95))
        .quad(at(0.0, 1.1), at(0.11, 0.95))
        .line(at(0.1, -1.1));
    s.part(wall, Ink::Outline);
    for step in 0..8 {
        let side = if step % 2 == 0 { 0.035 } else { -0.035 };
        s.dot(at(side, -0.9 + 0.24 * f64::from(step)), 0.045);
    }
    for side in [1.0, -1.0] {
        let valve = Path::from(at(0.12 * side, 0.95))
            .cubic(at(0.2 * side, 0.2), at(0.32 * side, -0.5), at(0.52 * side, -1.02))
            .quad(at(0.4 * side, -1.06), at(0.34 * side, -0.98))
            .cubic(at(0.2 * side, -0.5), at(0.13 * side, 0.2), at(0.12 * side, 0.95));
        s.part(valve, Ink::Outline);
    }
    s.part(
        Path::from(at(-0.08, 1.02)).line(at(-0.05, 1.34)).line(at(0.05, 1.34)).line(at(0.08, 1.02)),
        Ink::Outline,
    );
}

/// Two ribbed halves that hang from a forked thread.
fn schizocarp(s: &mut Sketch) {
    s.stalk(&[at(0.0, -1.5), at(0.0, -1.1), at(0.0, -0.7)], 0.07, 0.06);
    for side in [1.0, -1.0] {
        s.stroke(
            Path::from(at(0.0, -0.72)).cubic(
                at(0.0, -0.1),
                at(0.04 * side, 0.5),
                at(0.3 * side, 0.8),
            ),
            Ink::Outline,
        );
        let half = Path::from(at(0.3 * side, 0.82))
            .cubic(at(0.72 * side, 0.6), at(0.8 * side, -0.3), at(0.42 * side, -0.58))
            .cubic(at(0.2 * side, -0.3), at(0.16 * side, 0.4), at(0.3 * side, 0.82));
        s.part(half, Ink::Outline);
        for bend in [0.34, 0.48, 0.62] {
            s.stroke(
                Path::from(at(0.32 * side, 0.72))
                    .quad(at((bend + 0.06) * side, 0.1), at(0.42 * side, -0.5)),
                Ink::Vein,
            );
        }
        s.stroke(
            Path::from(at(0.3 * side, 0.82)).quad(at(0.34 * side, 0.95), at(0.5 * side, 1.0)),
            Ink::Outline,
        );
    }
}

fn samara(s: &mut Sketch) {
    let wing = Path::from(at(-0.7, 0.18))
        .cubic(at(-0.3, 0.42), at(0.7, 0.62), at(1.3, 0.3))
        .cubic(at(1.5, 0.1), at(1.2, -0.36), at(0.5, -0.34))
        .cubic(at(0.0, -0.34), at(-0.4, -0.3), at(-0.7, -0.16));
    s.part(wing, Ink::Outline);
    s.part(Path::ellipse(at(-0.78, 0.02), 0.36, 0.24), Ink::Outline);
    for (bend, end) in [(0.34, 0.26), (0.2, 0.06), (0.02, -0.14), (-0.14, -0.26)] {
        let x = if end < -0.2 { 0.7 } else { 1.2 };
        s.stroke(Path::from(at(-0.36, bend * 0.5)).quad(at(0.4, bend), at(x, end)), Ink::Vein);
    }
    s.stalk(&[at(-1.6, -0.12), at(-1.3, -0.02), at(-1.12, 0.0)], 0.05, 0.06);
}

fn husked(s: &mut Sketch, husk: Husk) {
    let spines = |s: &mut Sketch, count: i32, long: f64, stout: f64| {
        for step in 0..count {
            let turn = 360.0 * f64::from(step) / f64::from(count);
            let reach = long * if step % 2 == 0 { 1.0 } else { 0.82 };
            let (root, tip) = (Point::polar(0.78, turn), Point::polar(0.8 + reach, turn + 4.0));
            let out = (tip - root).across() * stout;
            s.part(Path::straight(&[root + out, tip, root - out]), Ink::Outline);
        }
    };
    match husk {
        Husk::FewStoutSpines => {
            spines(s, 13, 0.3, 0.09);
            s.ball(at(0.0, 0.0), 0.8);
            for (x, y) in [(-0.4, 0.25), (0.32, 0.42), (-0.2, -0.36), (0.42, -0.2), (0.02, 0.08)] {
                s.stroke(
                    Path::straight(&[
                        at(x - 0.06, y - 0.04),
                        at(x + 0.02, y + 0.16),
                        at(x + 0.07, y - 0.04),
                    ]),
                    Ink::Outline,
                );
            }
        }
        Husk::DenseFineSpines => {
            for step in 0..64 {
                let turn = 360.0 * f64::from(step) / 64.0;
                let lean = if step % 3 == 0 { 9.0 } else { -5.0 };
                s.stroke(
                    Path::straight(&[Point::polar(0.78, turn), Point::polar(1.14, turn + lean)]),
                    Ink::Outline,
                );
            }
            s.ball(at(0.0, 0.0), 0.8);
            for step in 0..40 {
                let p = Point::polar(
                    0.72 * libm::sqrt(f64::from(step) / 40.0),
                    137.5 * f64::from(step),
                );
                s.stroke(
                    Path::straight(&[p, p + at(p.x * 0.16 + 0.03, p.y * 0.16 + 0.07)]),
                    Ink::Vein,
                );
            }
        }
        Husk::LeafyLobed => {
            s.part(
                Path::from(at(-0.55, 0.1))
                    .cubic(at(-0.62, 0.7), at(-0.2, 1.0), at(0.0, 1.12))
                    .cubic(at(0.2, 1.0), at(0.62, 0.7), at(0.55, 0.1)),
                Ink::Outline,
            );
            for x in [-0.22, 0.0, 0.22] {
                s.stroke(
                    Path::smooth(&[at(x * 1.5, 0.3), at(x * 1.4, 0.6), at(x * 0.5, 0.96)]),
                    Ink::Vein,
                );
            }
            let collar = [
                (-0.3, -0.72),
                (-0.66, -0.3),
                (-0.86, 0.36),
                (-0.58, 0.22),
                (-0.5, 0.62),
                (-0.28, 0.26),
                (-0.1, 0.6),
                (0.06, 0.24),
                (0.28, 0.6),
                (0.4, 0.26),
                (0.62, 0.54),
                (0.68, 0.2),
                (0.9, 0.3),
                (0.66, -0.34),
                (0.3, -0.72),
            ];
            let points: Vec<_> = collar.iter().map(|(x, y)| at(*x, *y)).collect();
            s.part(Path::straight(&points), Ink::Outline);
            for x in [-0.44, -0.2, 0.04, 0.3, 0.5] {
                s.stroke(
                    Path::smooth(&[at(x * 0.5, -0.62), at(x * 0.9, -0.2), at(x * 1.05, 0.12)]),
                    Ink::Vein,
                );
            }
        }
        Husk::ScalyCup => {
            s.part(
                Path::from(at(-0.5, 0.1))
                    .cubic(at(-0.56, -0.8), at(-0.2, -1.2), at(0.0, -1.34))
                    .cubic(at(0.2, -1.2), at(0.56, -0.8), at(0.5, 0.1)),
                Ink::Outline,
            );
            s.stalk(&[at(0.1, 1.3), at(0.04, 0.95), at(0.0, 0.6)], 0.1, 0.14);
            s.part(
                Path::from(at(-0.66, -0.06))
                    .cubic(at(-0.7, 0.5), at(-0.3, 0.68), at(0.0, 0.68))
                    .cubic(at(0.3, 0.68), at(0.7, 0.5), at(0.66, -0.06))
                    .quad(at(0.0, -0.26), at(-0.66, -0.06)),
                Ink::Outline,
            );
            for (y, count) in [(0.04, 6), (0.2, 5), (0.36, 4), (0.5, 3)] {
                for step in 0..count {
                    let x = 0.2 * (f64::from(step) - f64::from(count - 1) / 2.0);
                    s.stroke(
                        Path::from(at(x - 0.09, y + 0.06))
                            .quad(at(x, y - 0.14), at(x + 0.09, y + 0.06)),
                        Ink::Vein,
                    );
                }
            }
        }
        Husk::SmoothThick => {
            s.stalk(&[at(0.1, 1.4), at(0.04, 1.1), at(0.0, 0.8)], 0.1, 0.12);
            s.part(Path::ellipse(at(0.0, 0.0), 0.86, 0.92), Ink::Outline);
            s.part(Path::ellipse(at(0.1, -0.04), 0.56, 0.62), Ink::Outline);
            for x in [-0.2, 0.06, 0.32] {
                s.stroke(
                    Path::smooth(&[
                        at(x, 0.4),
                        at(x + 0.06, 0.1),
                        at(x - 0.02, -0.2),
                        at(x + 0.04, -0.46),
                    ]),
                    Ink::Vein,
                );
            }
        }
        Husk::BristlyFourValved => {
            s.stalk(&[at(0.0, -1.3), at(0.0, -1.0), at(0.0, -0.6)], 0.1, 0.12);
            for turn in [-64.0, 64.0, -24.0, 24.0] {
                let way = Point::polar(1.15, 90.0 - turn);
                let foot = at(0.0, -0.6);
                let out = way.across() * 0.34;
                s.part(
                    Path::from(foot)
                        .quad(foot + way * 0.55 + out, foot + way)
                        .quad(foot + way * 0.55 - out, foot),
                    Ink::Outline,
                );
                for step in 1..6 {
                    let root = foot + way * (0.16 * f64::from(step));
                    let side = if turn > 0.0 { -0.22 } else { 0.22 };
                    s.stroke(
                        Path::straight(&[root, root + way * 0.1 + way.across() * side]),
                        Ink::Vein,
                    );
                }
            }
            s.part(Path::straight(&[at(-0.2, -0.5), at(0.0, 0.55), at(0.22, -0.5)]), Ink::Outline);
            s.stroke(Path::straight(&[at(0.0, 0.5), at(0.02, -0.45)]), Ink::Vein);
        }
    }
}
