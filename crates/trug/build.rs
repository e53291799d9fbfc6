//! Takes the program of the app in, where one was built: `cargo xtask app` builds it first.

use std::env;
use std::error::Error;
use std::fs;
use std::path::Path;

/// Names the file that holds the program, packed.
const PROGRAM: &str = "TRUG_APP_PROGRAM";

fn main() -> Result<(), Box<dyn Error>> {
    println!("cargo::rerun-if-env-changed={PROGRAM}");
    let out = env::var("OUT_DIR")?;
    let program = match env::var_os(PROGRAM) {
        Some(file) => {
            println!("cargo::rerun-if-changed={}", file.display());
            fs::read(file)?
        }
        None => Vec::new(),
    };
    fs::write(Path::new(&out).join("app.wasm.gz"), program)?;
    Ok(())
}
