//! One state of one character by itself.

use super::{
    Armature, Arrangement, Bark, Bracteoles, Bracts, Bud, Build, CalyxLeft, Climbing, ConeForm,
    Core, DRAWN, DarkFlower, Division, Duration, Edge, Emergence, Epicalyx, Face, FlowerStalk,
    FlowerStand, Foot, Fruit, FruitFace, FruitKind, FruitStand, Habit, HairLine, Hairs, Husk,
    Inflorescence, Leaf, LeafCut, LeafDots, LeafMarks, LeafSection, Needle, NeedleFoot,
    NeedleSection, NeedleStand, NeedleTip, Node, NutTip, Persistence, Petals, PetioleForm,
    PetioleInterior, PithForm, Posture, Prickles, Receptacle, ScaleGland, SeedShape, Shape, Sheen,
    Sketch, Spray, Stand, StemCut, StemFace, StemInterior, StemMarking, StemSection, StemSheath,
    Stipules, Symmetry, Twig, TwigFace, Underground, Underside, VeinEnds, Veins, bark, bracts, bud,
    climb, cut, face, flower, fruit_face, habit, node, picked, pith, root, seed, stem, umbel,
    underside,
};

/// A plain leaf, to show one sign of it.
const LEAF: Leaf = Leaf {
    build: Some(Build::Simple),
    division: None,
    shape: Some(Shape::Ovate),
    edge: Some(Edge::Entire),
    veins: Some(Veins::Pinnate),
    ends: None,
    foot: Some(Foot::Petiolate),
    leaflets: None,
};

/// One state, the rest of the plant as plain as it can be. None where a character or state has no
/// drawing.
pub(crate) fn alone(character: &str, state: &str) -> Option<Sketch> {
    let sketch = organ(character, state).or_else(|| detail(character, state))?;
    let (id, _) = DRAWN.iter().find(|(id, _)| *id == character)?;
    let (low, high) = sketch.bounds();
    let mut sketch = sketch.without_spots();
    sketch.spot(id, low.towards(high, 0.5));
    Some(sketch)
}

/// What is also drawn as part of a plant.
fn organ(character: &str, state: &str) -> Option<Sketch> {
    match character {
        Build::CHARACTER => build(Build::of(state)?),
        Division::CHARACTER => Leaf { division: Division::of(state), ..LEAF }.sketch(),
        Shape::CHARACTER => shaped(Shape::of(state)?).sketch(),
        Edge::CHARACTER => Some(Leaf { edge: Some(Edge::of(state)?), ..LEAF }.enlarged()),
        Veins::CHARACTER => veined(Veins::of(state)?).sketch(),
        VeinEnds::CHARACTER => {
            let ends = Some(VeinEnds::of(state)?);
            // Teeth that point outwards: in sawn ones tip and notch lie close together.
            Some(Leaf { ends, edge: Some(Edge::Dentate), ..LEAF }.enlarged())
        }
        Foot::CHARACTER => footed(Foot::of(state)?).sketch(),
        Arrangement::CHARACTER => {
            Stand { arrangement: Arrangement::of(state), leaf: LEAF, ..Stand::default() }.sketch()
        }
        Emergence::CHARACTER => emerging(Emergence::of(state)?).sketch(),
        LeafSection::CHARACTER => LeafCut { section: LeafSection::of(state) }.sketch(),
        Spray::CHARACTER => {
            Twig { build: Some(Build::Scale), spray: Spray::of(state), ..Twig::default() }.sketch()
        }
        NeedleStand::CHARACTER => {
            Twig { build: Some(Build::Needle), stand: NeedleStand::of(state), ..Twig::default() }
                .sketch()
        }
        NeedleFoot::CHARACTER => {
            Needle { foot: NeedleFoot::of(state), tip: Some(NeedleTip::Blunt), ..Needle::default() }
                .sketch()
        }
        NeedleSection::CHARACTER => Needle {
            section: NeedleSection::of(state),
            tip: Some(NeedleTip::Blunt),
            ..Needle::default()
        }
        .sketch(),
        NeedleTip::CHARACTER => Needle { tip: NeedleTip::of(state), ..Needle::default() }.sketch(),
        StemSection::CHARACTER => {
            StemCut { section: StemSection::of(state), interior: None }.sketch()
        }
        StemInterior::CHARACTER => {
            StemCut { section: Some(StemSection::Round), interior: StemInterior::of(state) }
                .sketch()
        }
        Inflorescence::CHARACTER => {
            FlowerStand { form: Inflorescence::of(state), petals: Some(Petals::Five) }.sketch()
        }
        Petals::CHARACTER => {
            FlowerStand { form: Some(Inflorescence::Solitary), petals: Petals::of(state) }.sketch()
        }
        FruitKind::CHARACTER => Fruit { kind: FruitKind::of(state), ..Fruit::default() }.sketch(),
        ConeForm::CHARACTER => Fruit { cone: ConeForm::of(state), ..Fruit::default() }.sketch(),
        FruitStand::CHARACTER => {
            Fruit { kind: Some(FruitKind::Berry), stand: FruitStand::of(state), ..Fruit::default() }
                .sketch()
        }
        Husk::CHARACTER => Fruit { husk: Husk::of(state), ..Fruit::default() }.sketch(),
        _ => None,
    }
}

/// What is drawn by itself only.
fn detail(character: &str, state: &str) -> Option<Sketch> {
    Some(match character {
        Habit::CHARACTER => habit::habit(Habit::of(state)?),
        Duration::CHARACTER => habit::duration(Duration::of(state)?),
        Climbing::CHARACTER => climb::sketch(Climbing::of(state)?),
        Persistence::CHARACTER => habit::persistence(Persistence::of(state)?),
        Prickles::CHARACTER => face::prickles(Prickles::of(state)?),
        Face::CHARACTER => face::surface(Face::of(state)?),
        Hairs::CHARACTER => face::hairs(Hairs::of(state)?),
        Underside::CHARACTER => underside::underside(Underside::of(state)?),
        Sheen::CHARACTER => underside::sheen(Sheen::of(state)?),
        LeafMarks::CHARACTER => face::marks(LeafMarks::of(state)?),
        LeafDots::CHARACTER => face::dots(LeafDots::of(state)?),
        PetioleForm::CHARACTER => cut::petiole(PetioleForm::of(state)?),
        PetioleInterior::CHARACTER => cut::petiole_interior(PetioleInterior::of(state)?),
        ScaleGland::CHARACTER => bud::gland(ScaleGland::of(state)?),
        Stipules::CHARACTER => node::stipules(Stipules::of(state)?),
        StemSheath::CHARACTER => node::sheath(StemSheath::of(state)?),
        Node::CHARACTER => node::swelling(Node::of(state)?),
        PithForm::CHARACTER => pith::sketch(PithForm::of(state)?),
        StemFace::CHARACTER => stem::surface(StemFace::of(state)?),
        HairLine::CHARACTER => stem::hair_line(HairLine::of(state)?),
        TwigFace::CHARACTER => stem::twig(TwigFace::of(state)?),
        Armature::CHARACTER => stem::armature(Armature::of(state)?),
        StemMarking::CHARACTER => stem::marking(StemMarking::of(state)?),
        Bark::CHARACTER => bark::sketch(Bark::of(state)?),
        Bud::CHARACTER => bud::sketch(Bud::of(state)?),
        Underground::CHARACTER => root::sketch(Underground::of(state)?),
        _ => return flower_or_fruit(character, state),
    })
}

fn flower_or_fruit(character: &str, state: &str) -> Option<Sketch> {
    Some(match character {
        DarkFlower::CHARACTER => umbel::dark_flower(DarkFlower::of(state)?),
        Symmetry::CHARACTER => flower::sketch(Symmetry::of(state)?),
        FlowerStalk::CHARACTER => bracts::flower_stalk(FlowerStalk::of(state)?),
        Bracts::CHARACTER => umbel::bracts(Bracts::of(state)?),
        Bracteoles::CHARACTER => umbel::bracteoles(Bracteoles::of(state)?),
        Epicalyx::CHARACTER => bracts::epicalyx(Epicalyx::of(state)?),
        Receptacle::CHARACTER => bracts::receptacle(Receptacle::of(state)?),
        Core::CHARACTER => picked::core(Core::of(state)?),
        FruitFace::CHARACTER => fruit_face::sketch(FruitFace::of(state)?),
        NutTip::CHARACTER => seed::loose_nut(NutTip::of(state)?),
        SeedShape::CHARACTER => seed::seed(SeedShape::of(state)?),
        Posture::CHARACTER => picked::posture(Posture::of(state)?),
        CalyxLeft::CHARACTER => picked::calyx(CalyxLeft::of(state)?),
        _ => return None,
    })
}

fn emerging(emergence: Emergence) -> Stand {
    let leaf = match emergence {
        Emergence::AlongStem | Emergence::PairedOnStem => LEAF,
        _ => Leaf { shape: Some(Shape::Lanceolate), veins: Some(Veins::Parallel), ..LEAF },
    };
    Stand { emergence: Some(emergence), leaf, ..Stand::default() }
}

fn build(build: Build) -> Option<Sketch> {
    match build {
        Build::Needle => {
            Twig { build: Some(build), stand: Some(NeedleStand::Spiral), ..Twig::default() }
                .sketch()
        }
        Build::Scale => Twig { build: Some(build), ..Twig::default() }.sketch(),
        _ => Leaf { build: Some(build), edge: Some(Edge::Serrate), ..LEAF }.sketch(),
    }
}

fn shaped(shape: Shape) -> Leaf {
    let veins = match shape {
        Shape::Linear => Veins::Parallel,
        Shape::PalmatelyLobed | Shape::Reniform | Shape::Orbicular | Shape::Cordate => {
            Veins::Palmate
        }
        _ => Veins::Pinnate,
    };
    Leaf { shape: Some(shape), veins: Some(veins), ..LEAF }
}

fn veined(veins: Veins) -> Leaf {
    let shape = match veins {
        Veins::Palmate => Shape::PalmatelyLobed,
        Veins::Single => Shape::Linear,
        _ => Shape::Elliptic,
    };
    Leaf { veins: Some(veins), shape: Some(shape), foot: None, ..LEAF }
}

fn footed(foot: Foot) -> Leaf {
    let (shape, veins) = match foot {
        Foot::Peltate => (Shape::Orbicular, Veins::Palmate),
        Foot::Sheathing => (Shape::Lanceolate, Veins::Parallel),
        _ => (Shape::Elliptic, Veins::Pinnate),
    };
    Leaf { foot: Some(foot), shape: Some(shape), veins: Some(veins), ..LEAF }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::svg::Drawing;
    use crate::svg::path::at;
    use std::collections::BTreeMap;

    #[test]
    fn every_state_that_can_be_drawn_is_in_the_glossary_and_is_drawn() {
        let herbal = herbal_data::herbal();
        for (character, states) in DRAWN {
            let term = herbal.flora.glossary.term(character).unwrap();
            for state in *states {
                assert!(term.says.contains_key(*state), "{character}={state}");
                assert!(alone(character, state).is_some(), "{character}={state}");
            }
        }
    }

    #[test]
    fn states_that_differ_are_drawn_differently() {
        for (character, states) in DRAWN {
            let mut drawn: BTreeMap<String, &str> = BTreeMap::new();
            for state in *states {
                let mut drawing = Drawing::new("", "", 200, 216);
                let sketch = alone(character, state).unwrap();
                sketch.draw(&mut drawing, at(0.0, 0.0), at(200.0, 216.0));
                let before = drawn.insert(drawing.svg("x"), state);
                assert_eq!(before, None, "{character}: {state} is drawn like another");
            }
        }
    }
}
