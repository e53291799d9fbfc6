//! Native against WebAssembly: the same requests, the same bytes.

use crate::figure::{self, Figure};
use crate::house::{House, Outcome, Program, run, say};
use crate::{tools, wasm};

/// Answers every request on both machines and compares the replies.
pub(crate) fn check(house: &House) -> Outcome {
    figures(house)?.iter().for_each(say);
    Ok(())
}

/// How many replies are equal; any that differs is a failure.
pub(crate) fn figures(house: &House) -> Outcome<Vec<Figure>> {
    let node = tools::NODE.find(house)?;
    let folder = house.target.join("parity");
    let module = wasm::build(house)?.join("parity.wasm");
    let native = house.program("parity", Program::Example("native"))?;
    run(house.command(native).arg(&folder))?;
    figure::printed(house.command(node).arg("parity/run.mjs").arg(module).arg(folder))
}
