//! A plate of the signs that can be drawn, character by character, to teach their words.

use super::{MARGIN, SIZE, WIDTH_MM};
use crate::svg::Drawing;
use crate::svg::path::at;
use crate::svg::plant::{
    Arrangement, Build, ConeForm, DRAWN, Division, Edge, Emergence, FlowerStand, Foot, Fruit,
    FruitKind, FruitStand, Husk, Inflorescence, Leaf, LeafCut, LeafSection, Needle, NeedleFoot,
    NeedleSection, NeedleStand, NeedleTip, Petals, Shape, Sketch, Spray, Stand, StemCut,
    StemInterior, StemSection, Twig, VeinEnds, Veins,
};
use crate::{Block, Figure, Kind, Level, Page, Prose, Words};
use ground::Text;
use herbal::{Glossary, Term};

/// Every state of the glossary that can be drawn, with its plain words.
#[must_use]
pub fn plate(glossary: &Glossary, words: &Words<'_>) -> Page {
    let drawn = DRAWN.iter().filter_map(|(character, states)| {
        let term = glossary.term(character)?;
        let figures = states.iter().filter_map(|state| figure(term, state, words)).collect();
        let heading = Block::heading(Level::Section, Prose::new().said(&term.name));
        Some([heading, Block::Figures(figures)])
    });
    words
        .page(Kind::Public, &Text::new("drawn-plate-title"))
        .with([words.para(&Text::new("drawn-plate-says"))])
        .with(drawn.flatten())
}

fn figure(term: &Term, state: &str, words: &Words<'_>) -> Option<Figure> {
    let says = term.says.get(state)?;
    let describes = Text::new("drawn-plate-describes")
        .with("character", term.name.as_str())
        .with("state", says.as_str());
    let describes = words.catalogue.say(&describes);
    let (width, height) = (SIZE.0 as u32, SIZE.1 as u32);
    let mut drawing = Drawing::new(says, &describes, width, height).across(WIDTH_MM);
    let room = at(SIZE.0 - 2.0 * MARGIN, SIZE.1 - 2.0 * MARGIN);
    alone(&term.character.id, state)?.draw(&mut drawing, at(MARGIN, MARGIN), room);
    Some(Figure { drawing, caption: Prose::new().said(says) })
}

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

/// One state, the rest of the plant as plain as it can be.
fn alone(character: &str, state: &str) -> Option<Sketch> {
    match character {
        "leaf_type" => build(Build::of(state)?),
        "leaf_division" => Leaf { division: Division::of(state), ..LEAF }.sketch(),
        "leaf_shape" => shaped(Shape::of(state)?).sketch(),
        "leaf_margin" => Leaf { edge: Edge::of(state), ..LEAF }.sketch(),
        "leaf_venation" => veined(Veins::of(state)?).sketch(),
        "vein_endings" => {
            Leaf { ends: VeinEnds::of(state), edge: Some(Edge::Serrate), ..LEAF }.sketch()
        }
        "leaf_base" => footed(Foot::of(state)?).sketch(),
        "leaf_arrangement" => {
            Stand { arrangement: Arrangement::of(state), leaf: LEAF, ..Stand::default() }.sketch()
        }
        "leaf_emergence" => {
            let leaf =
                Leaf { shape: Some(Shape::Lanceolate), veins: Some(Veins::Parallel), ..LEAF };
            Stand { emergence: Emergence::of(state), leaf, ..Stand::default() }.sketch()
        }
        "leaf_section" => LeafCut { section: LeafSection::of(state) }.sketch(),
        "spray_form" => {
            Twig { build: Some(Build::Scale), spray: Spray::of(state), ..Twig::default() }.sketch()
        }
        "needle_whorl" => {
            Twig { build: Some(Build::Needle), stand: NeedleStand::of(state), ..Twig::default() }
                .sketch()
        }
        "needle_base" => {
            Needle { foot: NeedleFoot::of(state), tip: Some(NeedleTip::Blunt), ..Needle::default() }
                .sketch()
        }
        "needle_section" => Needle {
            section: NeedleSection::of(state),
            tip: Some(NeedleTip::Blunt),
            ..Needle::default()
        }
        .sketch(),
        "needle_tip" => Needle { tip: NeedleTip::of(state), ..Needle::default() }.sketch(),
        "stem_section" => StemCut { section: StemSection::of(state), interior: None }.sketch(),
        "stem_interior" => {
            StemCut { section: Some(StemSection::Round), interior: StemInterior::of(state) }
                .sketch()
        }
        "inflorescence" => {
            FlowerStand { form: Inflorescence::of(state), petals: Some(Petals::Five) }.sketch()
        }
        "petal_count" => {
            FlowerStand { form: Some(Inflorescence::Solitary), petals: Petals::of(state) }.sketch()
        }
        "fruit_type" => Fruit { kind: FruitKind::of(state), ..Fruit::default() }.sketch(),
        "cone_form" => Fruit { cone: ConeForm::of(state), ..Fruit::default() }.sketch(),
        "fruit_arrangement" => {
            Fruit { kind: Some(FruitKind::Berry), stand: FruitStand::of(state), ..Fruit::default() }
                .sketch()
        }
        "husk" => Fruit { husk: Husk::of(state), ..Fruit::default() }.sketch(),
        _ => None,
    }
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
    Leaf { veins: Some(veins), shape: Some(shape), ..LEAF }
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
