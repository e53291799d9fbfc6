//! The app: its program for the browser, packed into the one for the command line.

use crate::house::{House, Outcome, run, say};
use crate::{tools, wasm};
use flate2::Compression;
use flate2::write::GzEncoder;
use std::fs;
use std::io::Write as _;
use std::path::PathBuf;

/// Builds both and serves the app on this machine.
pub(crate) fn serve(house: &House) -> Outcome {
    let trug = build(house)?;
    run(house.command(trug).arg("app"))
}

/// The command line with the app in it.
pub(crate) fn build(house: &House) -> Outcome<PathBuf> {
    let program = program(house)?;
    run(house.cargo(["build", "--package", "trug"]).env("TRUG_APP_PROGRAM", program))?;
    Ok(house.target.join("debug/trug"))
}

/// The program for the browser, packed; written anew only when it changed.
fn program(house: &House) -> Outcome<PathBuf> {
    tools::wasm_target(house)?;
    run(&mut house.cargo([
        "build",
        "--package",
        "app",
        "--lib",
        "--profile",
        "app",
        "--target",
        wasm::TARGET,
    ]))?;
    let built = fs::read(house.target.join(wasm::TARGET).join("app/app.wasm"))?;
    let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
    encoder.write_all(&built)?;
    let packed = encoder.finish()?;
    say(format_args!("the program of the app: {} bytes, {} packed", built.len(), packed.len()));
    let file = house.target.join("app.wasm.gz");
    if fs::read(&file).ok().as_deref() != Some(&packed) {
        fs::write(&file, packed)?;
    }
    Ok(file)
}
