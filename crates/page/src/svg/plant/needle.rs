//! One needle, enlarged: its foot on the twig, its tip, and how it is cut across.

use super::{Ink, NeedleFoot, NeedleSection, NeedleTip, Sketch};
use crate::svg::path::{Path, Point, at};

/// What is told of a needle.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Needle {
    pub(crate) foot: Option<NeedleFoot>,
    pub(crate) section: Option<NeedleSection>,
    pub(crate) tip: Option<NeedleTip>,
    /// Needles in a bundle.
    pub(crate) in_bundle: Option<u8>,
}

impl Needle {
    /// The needle upright on a piece of twig; none where nothing of it is told.
    pub(crate) fn sketch(&self) -> Option<Sketch> {
        if self.foot.is_none() && self.section.is_none() && self.tip.is_none() {
            return None;
        }
        let mut sketch = Sketch::default();
        if self.foot.is_some() {
            sketch.stalk(&[at(-0.75, -0.12), at(0.0, -0.1), at(0.75, -0.02)], 0.3, 0.26);
        }
        if self.foot == Some(NeedleFoot::SheathedBundle) {
            self.bundle(&mut sketch);
        } else {
            self.body(&mut sketch, at(0.0, 0.0));
            self.join(&mut sketch);
        }
        if let Some(section) = self.section {
            cut(&mut sketch, section);
        }
        sketch.spot("needle_base", at(0.0, 0.14));
        sketch.spot("needle_tip", at(0.0, 1.95));
        Some(sketch)
    }

    fn wide(&self) -> f64 {
        if self.section == Some(NeedleSection::Awl) { 0.15 } else { 0.105 }
    }

    fn body(&self, sketch: &mut Sketch, shift: Point) {
        let wide = self.wide();
        let neck = match self.foot {
            Some(NeedleFoot::SuckerDisc) => 0.05,
            Some(NeedleFoot::WoodyPeg | NeedleFoot::Jointed) => 0.075,
            Some(NeedleFoot::SheathedBundle) => wide * 0.7,
            _ => 0.03,
        };
        let foot = 0.17;
        let right = Path::from(at(neck, foot)).cubic(at(neck, 0.3), at(wide, 0.26), at(wide, 0.5));
        let right = if self.section == Some(NeedleSection::Awl) {
            right.cubic(at(wide * 0.95, 1.0), at(0.05, 1.7), at(0.0, 2.02))
        } else {
            let right = right.line(at(wide, 1.62));
            match self.tip {
                Some(NeedleTip::Notched) => right
                    .cubic(at(wide, 1.9), at(0.075, 1.98), at(0.05, 1.98))
                    .quad(at(0.02, 1.97), at(0.0, 1.9)),
                Some(NeedleTip::Blunt) | None => {
                    right.cubic(at(wide, 1.9), at(wide * 0.7, 1.98), at(0.0, 1.98))
                }
                Some(NeedleTip::Pointed) => {
                    right.cubic(at(wide, 1.8), at(0.04, 1.92), at(0.0, 2.0))
                }
                Some(NeedleTip::Prickly) => {
                    right.cubic(at(wide, 1.76), at(0.02, 1.84), at(0.014, 1.9)).line(at(0.0, 2.12))
                }
            }
        };
        let whole = right.clone().then(&right.mirrored().reversed()).map(|p| p + shift);
        sketch.part(whole, Ink::Outline);
        let groove = Path::straight(&[at(0.0, 0.5), at(0.0, 1.66)]).map(|p| p + shift);
        sketch.stroke(groove, Ink::Vein);
        if self.tip.is_none() && self.section != Some(NeedleSection::Awl) {
            // What the tip is like is not told: the needle is broken off by a dashed line.
            let gap =
                Path::straight(&[at(-0.16, 1.72), at(0.16, 1.72), at(0.16, 2.02), at(-0.16, 2.02)]);
            sketch.add(gap.clone().map(|p| p + shift).close(), Ink::Untold, super::Fill::Paper);
        }
    }

    /// The foot of the needle on the twig.
    fn join(&self, sketch: &mut Sketch) {
        let Some(foot) = self.foot else {
            sketch.stroke(Path::straight(&[at(-0.2, 0.17), at(0.2, 0.17)]), Ink::Untold);
            return;
        };
        let peg = |x: f64, wide: f64, tall: f64| {
            let y = 0.03 + x * 0.05;
            Path::straight(&[
                at(x - wide, y),
                at(x - wide * 0.72, y + tall),
                at(x + wide * 0.72, y + tall),
                at(x + wide, y),
            ])
        };
        match foot {
            NeedleFoot::WoodyPeg => {
                for x in [-0.5, -0.25, 0.25, 0.5] {
                    sketch.part(peg(x, 0.07, 0.12), Ink::Outline);
                }
                sketch.part(peg(0.0, 0.1, 0.15), Ink::Outline);
                for x in [-0.62, -0.38, -0.12, 0.13, 0.38] {
                    sketch.stroke(Path::straight(&[at(x, -0.2), at(x + 0.12, -0.02)]), Ink::Vein);
                }
            }
            NeedleFoot::StalkOnSmallPeg => {
                stalk(sketch, 0.09);
                for x in [-0.45, 0.45] {
                    sketch.part(peg(x, 0.05, 0.06), Ink::Outline);
                }
                sketch.part(peg(0.0, 0.07, 0.075), Ink::Outline);
            }
            NeedleFoot::StalkOnSmoothTwig => stalk(sketch, 0.0),
            NeedleFoot::StalkRunningDown => {
                let ridge = Path::from(at(0.035, 0.24))
                    .cubic(at(0.05, 0.06), at(-0.1, -0.05), at(-0.7, -0.13))
                    .cubic(at(-0.3, -0.01), at(-0.06, 0.08), at(-0.035, 0.24));
                sketch.part(ridge, Ink::Outline);
                sketch.stroke(
                    Path::smooth(&[at(0.68, -0.03), at(0.3, 0.0), at(0.1, 0.02)]),
                    Ink::Vein,
                );
            }
            NeedleFoot::SuckerDisc => {
                sketch.part(Path::ellipse(at(0.0, 0.07), 0.13, 0.055), Ink::Outline);
                let neck = Path::from(at(0.05, 0.26))
                    .quad(at(0.05, 0.12), at(0.1, 0.08))
                    .quad(at(0.0, 0.05), at(-0.1, 0.08))
                    .quad(at(-0.05, 0.12), at(-0.05, 0.26));
                sketch.add(neck, Ink::Outline, super::Fill::Paper);
                for x in [-0.48, 0.46] {
                    sketch.part(Path::ellipse(at(x, -0.05), 0.075, 0.05), Ink::Outline);
                    sketch.dot(at(x, -0.05), 0.014);
                }
            }
            NeedleFoot::Jointed => {
                let foot = Path::straight(&[
                    at(-0.1, 0.03),
                    at(-0.085, 0.17),
                    at(0.085, 0.17),
                    at(0.1, 0.03),
                ]);
                sketch.part(foot, Ink::Outline);
                sketch.part(Path::ellipse(at(0.0, 0.18), 0.1, 0.025), Ink::Outline);
            }
            NeedleFoot::SheathedBundle => {}
        }
    }

    fn bundle(&self, sketch: &mut Sketch) {
        let count = self.in_bundle.unwrap_or(3).clamp(2, 5);
        let mut one = Sketch::default();
        self.body(&mut one, at(0.0, 0.0));
        for index in 0..count {
            let turn = (f64::from(index) - f64::from(count - 1) / 2.0) * 30.0 / f64::from(count);
            sketch.over(one.placed(at(0.0, 0.0), 1.0, turn));
        }
        let sheath = Path::from(at(-0.12, 0.02))
            .line(at(-0.14, 0.46))
            .quad(at(0.0, 0.54), at(0.14, 0.46))
            .line(at(0.12, 0.02));
        sketch.part(sheath, Ink::Outline);
        for y in [0.14, 0.26, 0.38] {
            sketch.stroke(Path::from(at(-0.13, y)).quad(at(0.0, y + 0.07), at(0.13, y)), Ink::Vein);
        }
    }
}

fn stalk(sketch: &mut Sketch, from: f64) {
    let stalk = Path::straight(&[at(-0.03, from), at(-0.03, 0.2), at(0.03, 0.2), at(0.03, from)]);
    sketch.part(stalk, Ink::Outline);
}

/// The form of the cut beside the needle, with a line to where it is cut.
fn cut(sketch: &mut Sketch, section: NeedleSection) {
    let centre = at(0.62, 1.05);
    let outline = match section {
        NeedleSection::Flat => {
            Path::round(&[at(-0.26, 0.0), at(0.0, 0.06), at(0.26, 0.0), at(0.0, -0.06)])
        }
        NeedleSection::FourAngled => {
            Path::straight(&[at(-0.22, 0.0), at(0.0, 0.22), at(0.22, 0.0), at(0.0, -0.22)])
        }
        NeedleSection::ThreeAngled => {
            Path::straight(&[at(-0.22, -0.12), at(0.0, 0.24), at(0.22, -0.12)])
        }
        NeedleSection::HalfRound => Path::from(at(-0.24, 0.08)).line(at(0.24, 0.08)).cubic(
            at(0.22, -0.2),
            at(-0.22, -0.2),
            at(-0.24, 0.08),
        ),
        NeedleSection::Awl => {
            Path::round(&[at(-0.2, 0.02), at(0.0, 0.1), at(0.2, 0.02), at(0.0, -0.16)])
        }
    };
    sketch.stroke(Path::straight(&[at(-0.2, 1.05), at(0.32, 1.05)]), Ink::Vein);
    sketch.part(outline.map(|p| p + centre), Ink::Outline);
    sketch.dot(centre, 0.03);
    sketch.spot("needle_section", centre);
}
