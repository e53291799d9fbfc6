//! Writes the sample page, to look at: `cargo run -p page --example sample > sample.html`. With
//! `large` it comes in large print, with `text` as for a terminal.

#[path = "../tests/it/sample.rs"]
mod sample;

use std::io::{self, Write as _};

fn main() -> io::Result<()> {
    let page = sample::page();
    let written = match std::env::args().nth(1).as_deref() {
        Some("large") => page::html(&page.large()),
        Some("text") => page::text(&page, Some(80), page::Style::Ansi),
        _ => page::html(&page),
    };
    io::stdout().write_all(written.as_bytes())
}
