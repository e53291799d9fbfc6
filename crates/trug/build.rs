//! Takes the program of the app in, where one was built: `cargo xtask app` builds it first.

use std::env;
use std::error::Error;
use std::fs;
use std::path::{Path, PathBuf};

/// Names the folder that holds the program, packed, and what unpacks it.
const PROGRAM: &str = "TRUG_APP_PROGRAM";

fn main() -> Result<(), Box<dyn Error>> {
    println!("cargo::rerun-if-env-changed={PROGRAM}");
    let out = env::var("OUT_DIR")?;
    let folder = env::var_os(PROGRAM).map(PathBuf::from);
    for name in ["app.wasm.lzma", "unpack.wasm.gz"] {
        let bytes = match &folder {
            Some(folder) => {
                let file = folder.join(name);
                println!("cargo::rerun-if-changed={}", file.display());
                fs::read(file)?
            }
            None => Vec::new(),
        };
        fs::write(Path::new(&out).join(name), bytes)?;
    }
    Ok(())
}
