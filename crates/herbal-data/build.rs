//! Reads every file of the folder `herbal/`. A fault in any of them stops the build, and all of them
//! are told.

use herbal::{Herbal, TextFile};
use std::error::Error;
use std::fs;
use std::path::{Path, PathBuf};

type Failure = Box<dyn Error>;

fn main() -> Result<(), Failure> {
    let root = Path::new(&std::env::var("CARGO_MANIFEST_DIR")?).join("../../herbal");
    let out = PathBuf::from(std::env::var("OUT_DIR")?);
    let mut files = Vec::new();
    gather(&root, "", &mut files)?;
    let (herbal, account) = match Herbal::read_with_account(&files) {
        Ok(read) => read,
        Err(faults) => {
            faults.iter().for_each(|fault| tell("error", &format!("herbal/{fault}")));
            return Ok(());
        }
    };
    let bytes = postcard::to_allocvec(&herbal)?;
    let version = ground::ContentId::of(&bytes);
    fs::write(out.join("herbal.bin"), &bytes)?;
    fs::write(out.join("herbal.lzma"), pack::pack(&bytes))?;
    fs::write(out.join("account.bin"), postcard::to_allocvec(&account)?)?;
    tell("rustc-env", &format!("HERBAL_VERSION={version}"));
    Ok(())
}

/// Every TOML file below a folder, by its path from the root; each folder is watched.
fn gather(root: &Path, folder: &str, files: &mut Vec<TextFile>) -> Result<(), Failure> {
    let here = root.join(folder);
    tell("rerun-if-changed", &here.display().to_string());
    for entry in fs::read_dir(&here)? {
        let entry = entry?;
        let name = entry.file_name();
        let name = name.to_str().ok_or("a file name is not UTF-8")?;
        let path = match folder {
            "" => name.to_owned(),
            _ => format!("{folder}/{name}"),
        };
        if entry.file_type()?.is_dir() {
            gather(root, &path, files)?;
        } else if path.ends_with(".toml") {
            let text = fs::read_to_string(entry.path())?;
            files.push(TextFile { path, text });
        }
    }
    Ok(())
}

/// A line for cargo.
fn tell(what: &str, words: &str) {
    println!("cargo::{what}={words}");
}
