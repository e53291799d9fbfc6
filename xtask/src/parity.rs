//! Native against WebAssembly: the same requests, the same bytes.

use crate::figure::{self, Figure};
use crate::house::{House, Outcome, read, run, say};
use crate::{tools, wasm};

/// Answers every request on both machines and compares the replies.
pub(crate) fn check(house: &House) -> Outcome {
    say(compare(house)?.trim_end());
    Ok(())
}

/// How many replies are equal.
pub(crate) fn figures(house: &House) -> Outcome<Vec<Figure>> {
    figure::read(&compare(house)?)
}

fn compare(house: &House) -> Outcome<String> {
    tools::wasm_target(house)?;
    let node = tools::NODE.find(house)?;
    let folder = house.target.join("parity");
    run(&mut house.cargo(["build", "--lib", "--package", "parity", "--target", wasm::TARGET]))?;
    run(house.cargo(["run", "--quiet", "--package", "parity", "--"]).arg(&folder))?;
    let module = house.target.join(wasm::TARGET).join("debug/parity.wasm");
    read(house.command(node).arg("parity/run.mjs").arg(module).arg(folder))
}
