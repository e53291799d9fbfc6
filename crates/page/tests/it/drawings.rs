//! Line drawings of plants: which signs can be drawn, and that every drawing of every sheet can be
//! read by whatever reads SVG and stays within its frame.

use crate::kit;
use desk::{Reply, Request, World, answer};
use page::{Block, Figure, Page, html, plate, view};
use std::sync::LazyLock;

static WORLD: LazyLock<World> =
    LazyLock::new(|| kit::world(jiff::civil::date(2027, 5, 1).at(9, 0, 0, 0)));

fn pages() -> Vec<Page> {
    let sheets = WORLD.herbal.flora.sheets().map(|sheet| {
        let reply = answer(&WORLD, Request::HerbalShow { name: sheet.name.clone() }).unwrap();
        assert!(matches!(reply, Reply::HerbalShow(_)));
        view(&reply, &kit::words())
    });
    std::iter::once(plate(&WORLD.herbal.flora.glossary, &kit::words())).chain(sheets).collect()
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

/// Every coordinate of the lines in an element.
fn coordinates(svg: &str) -> Vec<(f64, f64)> {
    let lines = tags(svg).into_iter().filter_map(|tag| attribute(tag, "d"));
    let mut all = Vec::new();
    for line in lines {
        let plain: String =
            line.chars().map(|c| if c.is_ascii_alphabetic() { ' ' } else { c }).collect();
        let numbers: Vec<f64> = plain.split_whitespace().map(|n| n.parse().unwrap()).collect();
        assert_eq!(numbers.len() % 2, 0, "{line}");
        all.extend(numbers.chunks(2).map(|pair| (pair[0], pair[1])));
    }
    all
}

#[test]
fn every_drawing_of_every_sheet_is_whole_and_stays_within_its_frame() {
    let mut drawn = 0;
    for page in pages() {
        for figure in figures(&page) {
            let svg = figure.drawing.svg("figure-1");
            let name = figure.drawing.title();
            assert_eq!(unbalanced(&svg), [""; 0], "{name}");
            assert!(!svg.contains("NaN") && !svg.contains("inf"), "{name}");
            let head = tags(&svg)[0];
            let frame: Vec<f64> = attribute(head, "viewBox")
                .unwrap()
                .split(' ')
                .map(|number| number.parse().unwrap())
                .collect();
            for (x, y) in coordinates(&svg) {
                let within = (0.0..=frame[2]).contains(&x) && (0.0..=frame[3]).contains(&y);
                assert!(within, "{name}: {x} {y} of {frame:?}");
            }
            assert_eq!(figure.drawing.width_mm(), Some(50.0), "{name}");
            drawn += 1;
        }
    }
    assert!(drawn > 267, "{drawn}");
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
    let page = plate(&WORLD.herbal.flora.glossary, &kit::words());
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
