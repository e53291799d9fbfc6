//! Makes every known input of the demo unknown in turn, in both tenses of each outing, and prints how
//! many trials that were and how many of them let anybody have more, as figures: name, value and unit
//! with tabs between. What got looser is said on standard error.

#[path = "../tests/kit/mod.rs"]
mod kit;

use desk::{fade, read};
use std::error::Error;
use std::io::{self, Write};
use std::num::NonZeroUsize;

fn main() -> Result<(), Box<dyn Error>> {
    let world = kit::world();
    let (mut trials, mut widened) = (0, 0);
    let tried =
        |name: &str| fade(&world, &read(&kit::demo(name), world.herbal())?, NonZeroUsize::MIN);
    for outing in kit::side_by_side(tried) {
        for trial in outing? {
            trials += 1;
            widened += usize::from(!trial.moved.is_empty());
            for what in &trial.moved {
                writeln!(io::stderr(), "{} unknown: {what}", trial.what)?;
            }
        }
    }
    let mut out = io::stdout();
    writeln!(out, "fade-trials\t{trials}\tknown inputs made unknown, each by itself")?;
    writeln!(out, "fade-widened\t{widened}\tof them let anybody have more (goal 0)")?;
    Ok(())
}
