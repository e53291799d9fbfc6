//! Counts the facts of the herbal by what they rest on, forgets what is only remembered in turn, in
//! both tenses of each outing of the demo, and prints how many trials that were and how many of them
//! left anybody with less, as figures: name, value and unit with tabs between. What got stricter is
//! said on standard error: something remembered had favoured it.

#[path = "../tests/kit/mod.rs"]
mod kit;

use desk::{read, recall};
use ground::Standing;
use std::error::Error;
use std::io::{self, Write};

fn main() -> Result<(), Box<dyn Error>> {
    let world = kit::world();
    let account = herbal_data::account();
    let count = |standing| -> usize {
        account.facts.values().filter_map(|facts| facts.get(&standing)).sum()
    };
    let (mut trials, mut favouring) = (0, 0);
    let tried = |name: &str| recall(&world, &read(&kit::demo(name), world.herbal())?);
    for outing in kit::side_by_side(tried) {
        for trial in outing? {
            trials += 1;
            favouring += usize::from(!trial.moved.is_empty());
            for what in &trial.moved {
                writeln!(io::stderr(), "{} forgotten: {what}", trial.what)?;
            }
        }
    }
    let (opened, weak) = (count(Standing::Published), count(Standing::Weak));
    let remembered = count(Standing::Remembered);
    let mut out = io::stdout();
    writeln!(out, "facts-opened\t{opened}\tfacts whose source was opened")?;
    writeln!(out, "facts-opened-weak\t{weak}\tmore, whose sources are weak")?;
    writeln!(out, "facts-from-memory\t{remembered}\tfacts that are only remembered")?;
    writeln!(
        out,
        "recall-trials\t{trials}\tof these forgotten in the demo, plant by plant or row by row"
    )?;
    writeln!(
        out,
        "recall-favouring\t{favouring}\tof them had favoured a verdict or a decision (goal 0)"
    )?;
    Ok(())
}
