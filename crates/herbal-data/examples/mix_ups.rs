//! What becomes of every mix-up that was told when it is done again: a line each, tabs between.
//! `cargo run -p herbal-data --example mix_ups`
//!
//! The columns: the mix-up; the place of the plant that it was among what it could still be; then,
//! among all plants and once more as if only the two grew: what everything that could be seen comes to
//! when it is read at once, and what the looks that the program asks for come to; both again where the
//! plant in hand is as like the other as it ordinarily gets; and what the program makes of the plant
//! that was meant.
#![expect(clippy::unwrap_used, reason = "a fault here is a fault of the herbal")]

#[path = "../tests/told/mod.rs"]
mod told;

use identify::Outcome;
use std::io::{self, Write as _};
use told::Tried;

fn main() -> io::Result<()> {
    let mut out = io::stdout().lock();
    let ways = "at once\tasked\talike at once\talike asked\trightly";
    writeln!(out, "mix-up\trank\t{ways}\t{ways}, the two alone")?;
    for done in told::all(&herbal_data::herbal()).unwrap() {
        let rank = done.rank.map_or("none".to_owned(), |rank| rank.to_string());
        let [all, alone] = [&done.among_all, &done.alone].map(words);
        writeln!(out, "{}\t{rank}\t{all}\t{alone}", done.id)?;
    }
    Ok(())
}

fn words(tried: &Tried) -> String {
    let words = tried.wrongly().map(|verdict| word(&verdict.outcome)).join("\t");
    format!("{words}\t{}", word(&tried.rightly.outcome))
}

/// The word of an outcome.
fn word(outcome: &Outcome) -> &'static str {
    match outcome {
        Outcome::RuledOut => "ruled out",
        Outcome::NotYet => "not yet",
        Outcome::Determined { .. } => "DETERMINED",
    }
}
