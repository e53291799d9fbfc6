//! The app: its program for the browser, packed into the one for the command line.

use crate::house::{House, Outcome, run, say};
use crate::wasm;
use flate2::Compression;
use flate2::write::GzEncoder;
use std::fs;
use std::io::Write as _;
use std::path::PathBuf;

/// Tells the build of the command line where the program for the browser lies.
pub(crate) const PROGRAM: &str = "TRUG_APP_PROGRAM";

/// Builds both and serves the app on this machine.
pub(crate) fn serve(house: &House) -> Outcome {
    let trug = build(house)?;
    run(house.command(trug).arg("app"))
}

/// The command line with the app in it.
pub(crate) fn build(house: &House) -> Outcome<PathBuf> {
    let trug = house.target.join("debug/trug");
    if !house.built_before(&trug) {
        let program = program(house)?;
        run(house.cargo(["build", "--package", "trug"]).env(PROGRAM, program))?;
    }
    Ok(trug)
}

/// The program for the browser, packed; written anew only when it changed.
pub(crate) fn program(house: &House) -> Outcome<PathBuf> {
    let built = fs::read(wasm::build(house)?.join("app.wasm"))?;
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
