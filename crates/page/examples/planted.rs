//! Plants health words into what people said of themselves on every outing of the demonstration, and
//! prints how many were found where they must not be, as figures: name, value and unit with tabs
//! between. Where that was is said on standard error.

#[path = "../tests/it/kit.rs"]
mod kit;
#[path = "../tests/it/planted.rs"]
mod planted;

use planted::{OUTINGS, Tally, tally};
use std::io::{self, Write as _};

fn main() -> io::Result<()> {
    let mut tallies = Vec::new();
    for (outing, health) in OUTINGS {
        let tally = tally(outing, health);
        for place in &tally.found {
            writeln!(io::stderr(), "{outing}, {place}")?;
        }
        for page in &tally.moved {
            writeln!(io::stderr(), "{outing}, {page}: another page when nobody answers")?;
        }
        tallies.push(tally);
    }
    let sum = |count: fn(&Tally) -> usize| tallies.iter().map(count).sum::<usize>();
    let figures = [
        ("planted-words", sum(|t| t.words), "weights, ages and words of conditions planted"),
        ("planted-pages", sum(|t| t.pages.len()), "pages looked at: all but the sealed lists"),
        ("planted-found", sum(|t| t.found.len()), "found where they must not be (goal 0)"),
        (
            "planted-moved",
            sum(|t| t.moved.len()),
            "pages with cautions or questions that are others when nobody answers (goal 0)",
        ),
        (
            "planted-on-sealed",
            sum(|t| t.on_sealed),
            "words of conditions told on the sealed lists (more than 0)",
        ),
    ];
    let mut out = io::stdout();
    figures.iter().try_for_each(|(name, value, unit)| writeln!(out, "{name}\t{value}\t{unit}"))
}
