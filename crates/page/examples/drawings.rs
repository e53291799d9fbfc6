//! Writes drawings to look at: `cargo run -p page --example drawings > plate.html` for every state
//! that can be drawn, with scientific names for what is drawn of these plants, with two joined by a
//! plus sign for what differs between them.

use desk::World;
use desk::device::{Reply, Request, answer};
use page::{Block, Catalogue, Level, Words, html, plate, view};
use std::io::{self, Write as _};

fn main() -> io::Result<()> {
    let now = jiff::civil::date(2027, 4, 30).at(9, 0, 0, 0);
    let world = World::new(herbal_data::herbal(), "as-drawn".to_owned(), now);
    let catalogue = Catalogue::english();
    let words = Words::new(&catalogue).with_herbal(world.herbal());
    let mut page = plate(&world.herbal().flora.glossary, &words);
    let names: Vec<_> = std::env::args().skip(1).collect();
    if !names.is_empty() {
        page.blocks.clear();
    }
    for name in names {
        let request = match name.split_once('+') {
            Some((one, other)) => Request::Compare { plants: [one.to_owned(), other.to_owned()] },
            None => Request::HerbalShow { name },
        };
        if let Ok(reply @ (Reply::HerbalShow(_) | Reply::Compare(_))) = answer(&world, request) {
            let whole = view(&reply, &words);
            page.blocks.push(Block::heading(Level::Section, whole.title.clone()));
            let figures = |block: &Block| matches!(block, Block::Figures(_));
            page.blocks.extend(whole.blocks.into_iter().filter(figures));
        }
    }
    io::stdout().write_all(html(&page).as_bytes())
}
