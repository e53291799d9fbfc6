//! How easily the take-home pages of the demonstration are read, as figures: name, value and unit on
//! a line, tabs between. `cargo run -p page --example readability`; with `long` it lists every
//! sentence of more than twenty words instead, with `long 14` every one of more than fourteen.
#![expect(clippy::unwrap_used, reason = "a fault here is a fault of the demonstration")]

#[path = "../tests/it/kit.rs"]
mod kit;
#[path = "../tests/it/taken_home.rs"]
mod taken_home;

use std::io::{self, Write as _};
use taken_home::{pages, reading};

fn main() -> io::Result<()> {
    let mut args = std::env::args().skip(1);
    let long = args.next().as_deref() == Some("long");
    let most = args.next().and_then(|most| most.parse().ok()).unwrap_or(20);
    let mut out = io::stdout().lock();
    for named in pages() {
        let reading = reading(&named.page);
        let page = named.name;
        if long {
            for sentence in reading.longer_than(most, &taken_home::NAMES) {
                writeln!(out, "{page}: {}", sentence.trim())?;
            }
            continue;
        }
        let counts = reading.counts;
        let mean = counts.mean_sentence().unwrap();
        writeln!(out, "read-{page}-mean\t{mean:.1}\twords a sentence, of {}", counts.sentences)?;
        writeln!(out, "read-{page}-longest\t{}\twords", counts.longest)?;
        writeln!(out, "read-{page}-lix\t{:.1}\tLIX", counts.lix().unwrap())?;
        let grade = counts.grade().unwrap();
        let grade = if grade < 1.0 { "below 1".to_owned() } else { format!("{grade:.1}") };
        writeln!(out, "read-{page}-grade\t{grade}\tFlesch-Kincaid grade")?;
    }
    Ok(())
}
