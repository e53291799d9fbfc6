//! Line drawings of plants: which signs can be drawn, and that every drawing of every sheet can be
//! read by whatever reads SVG and stays within its frame.

use crate::kit;
use desk::World;
use desk::device::{Reply, Request, answer};
use herbal::Term;
use kurbo::{BezPath, PathEl};
use page::{Block, Drawing, Figure, Page, html, plate, state_drawing, view};
use std::collections::BTreeMap;
use std::sync::LazyLock;

static WORLD: LazyLock<World> =
    LazyLock::new(|| kit::world(jiff::civil::date(2027, 5, 1).at(9, 0, 0, 0)));

fn pages() -> Vec<Page> {
    let sheets = WORLD.herbal().flora.sheets().map(|sheet| {
        let reply = answer(&WORLD, Request::HerbalShow { name: sheet.name.clone() }).unwrap();
        assert!(matches!(reply, Reply::HerbalShow(_)));
        view(&reply, &kit::words())
    });
    std::iter::once(plate(&WORLD.herbal().flora.glossary, &kit::words())).chain(sheets).collect()
}

fn figures(page: &Page) -> impl Iterator<Item = &Figure> {
    let figures = page.blocks.iter().filter_map(|block| match block {
        Block::Figures(figures) => Some(figures),
        _ => None,
    });
    figures.flatten()
}

/// The tags of an element, opened and closed, each with its attributes.
fn tags(svg: &str) -> Vec<&str> {
    svg.split('<').skip(1).map(|tag| tag.split('>').next().unwrap()).collect()
}

/// Names of elements that are opened and not closed, or closed and not opened.
fn unbalanced(svg: &str) -> Vec<String> {
    let mut open: Vec<String> = Vec::new();
    for tag in tags(svg) {
        let name = tag.trim_start_matches('/').split([' ', '/']).next().unwrap().to_owned();
        if tag.ends_with('/') {
            continue;
        }
        match tag.strip_prefix('/') {
            Some(_) if open.last() == Some(&name) => drop(open.pop()),
            _ => open.push(name),
        }
    }
    open
}

fn attribute<'a>(tag: &'a str, name: &str) -> Option<&'a str> {
    let (_, rest) = tag.split_once(&format!(" {name}=\""))?;
    rest.split('"').next()
}

/// Every point and hold of the lines in an element, as somebody else's program reads them.
fn coordinates(svg: &str) -> Vec<(f64, f64)> {
    let lines = tags(svg).into_iter().filter_map(|tag| attribute(tag, "d"));
    let points = |line| {
        let read = BezPath::from_svg(line).unwrap_or_else(|error| panic!("{error}: {line}"));
        read.into_iter().flat_map(|step| match step {
            PathEl::MoveTo(a) | PathEl::LineTo(a) => vec![a],
            PathEl::QuadTo(a, b) => vec![a, b],
            PathEl::CurveTo(a, b, c) => vec![a, b, c],
            PathEl::ClosePath => Vec::new(),
        })
    };
    let tenth = |value: f64| (value * 10.0).round() / 10.0;
    lines.flat_map(points).map(|point| (tenth(point.x), tenth(point.y))).collect()
}

/// The width and height of a drawing, in its units.
fn frame(svg: &str) -> (f64, f64) {
    let frame = attribute(tags(svg)[0], "viewBox").unwrap().split(' ');
    let frame: Vec<f64> = frame.map(|number| number.parse().unwrap()).collect();
    (frame[2], frame[3])
}

/// That a drawing can be read by whatever reads SVG, and stays within its frame.
fn is_whole(drawing: &Drawing) {
    let (svg, name) = (drawing.svg("figure-1"), drawing.title());
    assert_eq!(unbalanced(&svg), [""; 0], "{name}");
    assert!(!svg.contains("NaN") && !svg.contains("inf"), "{name}");
    let (width, height) = frame(&svg);
    for (x, y) in coordinates(&svg) {
        let within = (0.0..=width).contains(&x) && (0.0..=height).contains(&y);
        assert!(within, "{name}: {x} {y} of {width} {height}");
    }
}

#[test]
fn every_drawing_of_every_sheet_is_whole_and_stays_within_its_frame() {
    let mut drawn = 0;
    for page in pages().iter().skip(1) {
        for figure in figures(page) {
            is_whole(&figure.drawing);
            assert_eq!(figure.drawing.width_mm(), Some(50.0), "{}", figure.drawing.title());
            drawn += 1;
        }
    }
    assert!(drawn > 500, "{drawn}");
}

/// Of a character: all of it, or these states.
enum Undrawn {
    All,
    States(&'static [&'static str]),
}

/// What has no drawing, and why. Lengths and counts have no states.
const UNDRAWN: &[(&str, Undrawn, &str)] = &[
    ("crushed_smell", Undrawn::All, "a smell"),
    ("root_smell", Undrawn::All, "a smell"),
    ("leaf_texture", Undrawn::All, "felt between two fingers: thin and leathery look alike"),
    ("sap", Undrawn::All, "the colour of a juice"),
    ("sap_in_air", Undrawn::All, "a change of colour"),
    ("pith_colour", Undrawn::All, "a colour"),
    ("flower_colour", Undrawn::All, "a colour"),
    ("fruit_colour", Undrawn::All, "a colour"),
    ("fruit_juice", Undrawn::All, "a colour"),
    ("leaf_underside", Undrawn::States(&["silvery"]), "a sheen between white and grey, not a form"),
    ("inflorescence", Undrawn::States(&["spores"]), "nothing stands there to be drawn"),
    ("fruit_type", Undrawn::States(&["spores"]), "nothing stands there to be drawn"),
];

fn undrawn(character: &str, state: &str) -> bool {
    UNDRAWN.iter().any(|(id, which, _)| {
        *id == character
            && match which {
                Undrawn::All => true,
                Undrawn::States(states) => states.contains(&state),
            }
    })
}

/// Every state of the glossary, with its character.
fn states() -> Vec<(&'static Term, &'static str)> {
    let terms = WORLD.herbal().flora.glossary.terms();
    terms.flat_map(|term| term.says.keys().map(move |state| (term, state.as_str()))).collect()
}

#[test]
fn every_state_that_can_be_seen_has_a_drawing() {
    for (term, state) in states() {
        let id = &term.character.id;
        let drawing = state_drawing(term, state, &kit::words());
        assert_eq!(drawing.is_none(), undrawn(id, state), "{id}={state}");
        let Some(drawing) = drawing else { continue };
        is_whole(&drawing);
        assert_eq!(frame(&drawing.svg("x")), (140.0, 140.0), "{id}={state}");
        assert_eq!(drawing.title(), term.says[state]);
        let describes = format!("{}: {}. Schematic, not to scale.", term.name, drawing.title());
        assert_eq!(drawing.describes(), describes);
    }
}

#[test]
fn what_has_no_drawing_is_in_the_glossary_and_told_with_a_reason() {
    let all = states();
    for (character, which, reason) in UNDRAWN {
        let of_it: Vec<_> =
            all.iter().filter(|(term, _)| term.character.id == *character).collect();
        assert!(!of_it.is_empty() && !reason.is_empty(), "{character}");
        if let Undrawn::States(states) = which {
            for state in *states {
                assert!(of_it.iter().any(|(_, there)| there == state), "{character}={state}");
            }
        }
    }
}

#[test]
fn no_two_states_of_a_character_have_the_same_marks() {
    let mut drawn: BTreeMap<(&str, String), &str> = BTreeMap::new();
    for (term, state) in states() {
        let Some(drawing) = state_drawing(term, state, &kit::words()) else { continue };
        let svg = drawing.svg("x");
        let marks = svg.split("</desc>").nth(1).unwrap().to_owned();
        assert!(marks.contains("<path"), "{state}");
        let before = drawn.insert((&term.character.id, marks), state);
        assert_eq!(before, None, "{}={state}", term.character.id);
    }
}

/// A dozen of them fit on the page of a choice, even on a slow line.
#[test]
fn a_drawing_of_a_state_is_small() {
    for (term, state) in states() {
        let Some(drawing) = state_drawing(term, state, &kit::words()) else { continue };
        let bytes = drawing.svg("x").len();
        assert!(bytes < 40_000, "{}={state}: {bytes} bytes", term.character.id);
    }
}

#[test]
fn a_sawn_edge_and_a_bulb_as_they_are_written() {
    let svg = |character: &str, state: &str| {
        let term = WORLD.herbal().flora.glossary.term(character).unwrap();
        state_drawing(term, state, &kit::words()).unwrap().svg("figure-1")
    };
    insta::assert_snapshot!("a_sawn_edge", svg("leaf_margin", "serrate"));
    insta::assert_snapshot!("a_bulb", svg("underground", "bulb"));
}

#[test]
fn every_drawing_says_that_it_is_schematic_and_in_words_what_it_shows() {
    for page in pages().iter().skip(1) {
        for figure in figures(page) {
            let describes = figure.drawing.describes();
            assert!(describes.contains(": ") && describes.ends_with("Schematic, not to scale."));
            assert!(!describes.contains("image of") && !describes.contains('⟦'), "{describes}");
            assert!(figure.caption.plain().contains("schematic"));
        }
    }
}

#[test]
fn equal_sheets_are_equal_bytes() {
    let written = || pages().iter().step_by(20).map(html).collect::<Vec<_>>();
    assert_eq!(written(), written());
}

#[test]
fn the_signs_that_can_be_drawn() {
    let page = plate(&WORLD.herbal().flora.glossary, &kit::words());
    insta::assert_snapshot!(kit::said(&page, Some(80)));
}

/// What is said beside the drawings of a plant that everybody begins with.
#[test]
fn the_drawings_of_a_nettle_in_words() {
    let reply = answer(&WORLD, Request::HerbalShow { name: "Urtica dioica".to_owned() }).unwrap();
    let mut page = view(&reply, &kit::words());
    page.blocks.retain(|block| matches!(block, Block::Figures(_)));
    insta::assert_snapshot!(kit::said(&page, Some(80)));
}
