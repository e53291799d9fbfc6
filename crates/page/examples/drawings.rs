//! Writes drawings to look at: `cargo run -p page --example drawings > plate.html` for every state
//! that can be drawn, and with scientific names for what is drawn of these plants.

use desk::{Reply, Request, World, answer};
use ground::RandomStart;
use journal::Journal;
use page::{Catalogue, Words, html, plate, view};
use std::io::{self, Write as _};

fn main() -> io::Result<()> {
    let world = World {
        herbal: herbal_data::herbal(),
        herbal_version: "as-drawn".to_owned(),
        journal: Journal::new(),
        now: jiff::civil::date(2027, 4, 30).at(9, 0, 0, 0),
        random_start: RandomStart(0),
    };
    let catalogue = Catalogue::english();
    let words = Words::new(&catalogue).with_herbal(&world.herbal);
    let mut page = plate(&world.herbal.flora.glossary, &words);
    let names: Vec<_> = std::env::args().skip(1).collect();
    if !names.is_empty() {
        page.blocks.clear();
    }
    for name in names {
        if let Ok(reply @ Reply::HerbalShow(_)) = answer(&world, Request::HerbalShow { name }) {
            let sheet = view(&reply, &words);
            let figures = |block: &page::Block| matches!(block, page::Block::Figures(_));
            page.blocks.push(page::Block::heading(page::Level::Section, sheet.title.clone()));
            page.blocks.extend(sheet.blocks.into_iter().filter(figures));
        }
    }
    io::stdout().write_all(html(&page).as_bytes())
}
