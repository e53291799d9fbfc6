//! Native against WebAssembly: the same requests, the same bytes.

use crate::figure::{self, Figure};
use crate::house::{House, Outcome, run, say};
use crate::{tools, wasm};

/// Answers every request on both machines and compares the replies.
pub(crate) fn check(house: &House) -> Outcome {
    figures(house)?.iter().for_each(say);
    Ok(())
}

/// How many replies are equal; any that differs is a failure.
pub(crate) fn figures(house: &House) -> Outcome<Vec<Figure>> {
    tools::wasm_target(house)?;
    let node = tools::NODE.find(house)?;
    let folder = house.target.join("parity");
    run(&mut house.cargo(["build", "--lib", "--package", "parity", "--target", wasm::TARGET]))?;
    run(house.cargo(["run", "--quiet", "--package", "parity", "--"]).arg(&folder))?;
    let module = house.target.join(wasm::TARGET).join("debug/parity.wasm");
    figure::printed(house.command(node).arg("parity/run.mjs").arg(module).arg(folder))
}
