//! The app: its program for the browser, packed into the one for the command line.

use crate::house::{House, Outcome, run, say};
use crate::wasm;
use flate2::Compression;
use flate2::write::GzEncoder;
use std::fs;
use std::io::Write as _;
use std::path::{Path, PathBuf};

/// Tells the build of the command line in which folder the program for the browser lies.
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

/// The folder of the program for the browser, packed, and of what unpacks it there.
pub(crate) fn program(house: &House) -> Outcome<PathBuf> {
    let built = wasm::build(house)?;
    let folder = house.target.join("program");
    fs::create_dir_all(&folder)?;
    pack_program(&fs::read(built.join("app.wasm"))?, &folder.join("app.wasm.lzma"))?;
    let unpacker = gzip(&fs::read(built.join("unpack.wasm"))?)?;
    write_if_changed(&folder.join("unpack.wasm.gz"), &unpacker)?;
    Ok(folder)
}

/// Packing takes a while: a program that lies there packed already is left alone.
fn pack_program(program: &[u8], file: &Path) -> Outcome {
    let there = fs::read(file).unwrap_or_default();
    if pack::unpack(&there).as_deref() != Some(program) {
        let packed = pack::pack(program);
        say(format_args!(
            "the program of the app: {} bytes, {} packed",
            program.len(),
            packed.len()
        ));
        fs::write(file, packed)?;
    }
    Ok(())
}

/// Bytes as gzip packs them with all its effort.
pub(crate) fn gzip(bytes: &[u8]) -> Outcome<Vec<u8>> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
    encoder.write_all(bytes)?;
    Ok(encoder.finish()?)
}

fn write_if_changed(file: &Path, bytes: &[u8]) -> Outcome {
    if fs::read(file).ok().as_deref() != Some(bytes) {
        fs::write(file, bytes)?;
    }
    Ok(())
}
