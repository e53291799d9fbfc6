//! Reverses the files of the demo, and in them the order of tables and of lists of tables, and prints
//! how many plans came out with the same bytes, as figures: name, value and unit with tabs between.

#[path = "../tests/kit/mod.rs"]
mod kit;

use desk::device::Request;
use std::error::Error;
use std::io::{self, Write};

fn main() -> Result<(), Box<dyn Error>> {
    let world = kit::world();
    let outings = kit::OUTINGS;
    let mut different = 0;
    for name in outings {
        let files = kit::demo(name);
        let turned = kit::reversed(&files);
        let json = |files| kit::json(&world, Request::Plan { files, reasons: true });
        different += usize::from(json(files) != json(turned));
    }
    let mut out = io::stdout();
    writeln!(
        out,
        "reversal-plans\t{}\tplans of the demo with their tables reversed",
        outings.len()
    )?;
    writeln!(out, "reversal-different\t{different}\tof them differ in a byte (goal 0)")?;
    Ok(())
}
