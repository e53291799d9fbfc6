//! A herb from root to flower, put together of what is told of its organs.

use super::stand::ground;
use super::{FlowerStand, Inflorescence, Sketch, Stand, Underground, root};
use crate::svg::path::at;

/// What is told of a whole herb.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Whole {
    pub(crate) stand: Stand,
    pub(crate) flowers: FlowerStand,
    pub(crate) underground: Option<Underground>,
}

impl Whole {
    /// The herb from the side; none where two of root, leaves and flowers are not told, or where it
    /// bears its flowers as only woody plants do.
    pub(crate) fn sketch(&self) -> Option<Sketch> {
        let leaves = self.stand.sketch();
        let flowers = self.flowers.sketch();
        let told = [leaves.is_some(), flowers.is_some(), self.underground.is_some()];
        let woody = self.underground == Some(Underground::WoodyRoots)
            || self.flowers.form == Some(Inflorescence::Catkin);
        if woody || told.into_iter().filter(|told| *told).count() < 2 {
            return None;
        }
        let mut s = Sketch::default();
        if let Some(kind) = self.underground {
            let mut below = Sketch::default();
            root::below(&mut below, kind);
            s.over(below.placed(at(0.0, 0.0), 0.8, 0.0));
            s.spot("underground", at(0.0, -0.5));
        }
        let on_stem = leaves.is_some() && self.stand.on_stem();
        let top = if on_stem { 2.05 } else { 1.3 };
        if let Some(flowers) = flowers {
            let (low, _) = flowers.bounds();
            let size = 0.9;
            s.over(flowers.placed(at(0.0, top - low.y * size), size, 0.0));
        }
        if !on_stem {
            s.stalk(&[at(0.0, 0.0), at(0.0, top / 2.0), at(0.0, top + 0.04)], 0.08, 0.06);
        }
        if let Some(leaves) = leaves {
            // Leaves at the ground are seen from above: they lie before what is below it.
            let lift = if on_stem { 0.28 } else { -leaves.bounds().0.y - 0.08 };
            s.over(leaves.placed(at(0.0, lift), 1.0, 0.0));
        }
        s.spot("habit", at(0.0, 0.1));
        ground(&mut s, 1.0);
        Some(s)
    }

    /// The characters that its drawing shows, where they are told.
    pub(crate) fn shows(&self) -> Vec<&'static str> {
        let mut shown = vec!["habit", "underground"];
        shown.extend(self.stand.shows());
        shown.extend(self.flowers.shows());
        shown
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Arrangement, Build, Leaf, Shape};
    use super::*;

    const LEAVES: Stand = Stand {
        arrangement: Some(Arrangement::Rosette),
        emergence: None,
        in_ring: None,
        leaf: Leaf {
            build: Some(Build::Simple),
            division: None,
            shape: Some(Shape::Ovate),
            edge: None,
            veins: None,
            ends: None,
            foot: None,
            leaflets: None,
        },
    };

    #[test]
    fn a_herb_is_drawn_from_two_organs_on() {
        let leaves = Whole { stand: LEAVES, ..Whole::default() };
        assert_eq!(leaves.sketch(), None);
        let rooted = Whole { underground: Some(Underground::Bulb), ..leaves };
        let flowering = FlowerStand { form: Some(Inflorescence::Umbel), petals: None };
        let (low, high) = rooted.sketch().unwrap().bounds();
        assert!(low.y < -0.5 && high.y > 0.3, "{low:?} {high:?}");
        let (_, top) = Whole { flowers: flowering, ..rooted }.sketch().unwrap().bounds();
        assert!(top.y > high.y + 0.5, "the flowers stand above the leaves");
    }

    #[test]
    fn what_bears_catkins_or_has_woody_roots_is_no_herb() {
        let woody =
            Whole { stand: LEAVES, underground: Some(Underground::WoodyRoots), ..Whole::default() };
        assert_eq!(woody.sketch(), None);
    }
}
