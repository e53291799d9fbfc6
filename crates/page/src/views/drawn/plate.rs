//! A plate of the signs that can be drawn, character by character, to teach their words; and each sign
//! by itself, for a choice among states.

use crate::svg::Drawing;
use crate::svg::path::at;
use crate::svg::plant::{DRAWN, alone};
use crate::{Block, Figure, Kind, Level, Page, Prose, Words};
use ground::Text;
use herbal::{Glossary, Term};

/// Units of a sign across and down: small enough for a choice on a phone.
const SIGN: u32 = 140;
const SIGN_MARGIN: f64 = 6.0;
const SIGN_MM: u32 = 35;

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
    let drawing = state_drawing(term, state, words)?;
    let caption = Prose::new().said(drawing.title());
    Some(Figure { drawing, caption })
}

/// One state of a character as a line drawing: square, and as plain as it can be. It is schematic and
/// never evidence. None where the state is not one of this character, or is nothing that ink can show,
/// such as a smell or a colour.
#[must_use]
pub fn state_drawing(term: &Term, state: &str, words: &Words<'_>) -> Option<Drawing> {
    let says = term.says.get(state)?;
    let describes = Text::new("drawn-plate-describes")
        .with("character", term.name.as_str())
        .with("state", says.as_str());
    let describes = words.catalogue.say(&describes);
    let mut drawing = Drawing::new(says, &describes, SIGN, SIGN).across(SIGN_MM);
    let room = f64::from(SIGN) - 2.0 * SIGN_MARGIN;
    let corner = at(SIGN_MARGIN, SIGN_MARGIN);
    alone(&term.character.id, state)?.draw(&mut drawing, corner, at(room, room));
    Some(drawing)
}
