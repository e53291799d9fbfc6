//! Lists the message files, so that a new one joins the catalogue without a line of code.

use std::path::{Path, PathBuf};
use std::{env, fs, io};

fn main() -> io::Result<()> {
    println!("cargo::rerun-if-changed=messages");
    println!("cargo::rerun-if-changed=build.rs");
    let mut list = String::from("&[\n");
    for language in sorted(Path::new("messages"))? {
        for file in sorted(&language)? {
            if file.extension().is_some_and(|end| end == "ftl") {
                list.push_str(&entry(&language, &file)?);
            }
        }
    }
    list.push(']');
    let out = env::var_os("OUT_DIR").ok_or_else(|| io::Error::other("OUT_DIR is not set"))?;
    fs::write(Path::new(&out).join("messages.rs"), list)
}

/// What lies in a folder, by name: the order of a directory differs from machine to machine.
fn sorted(folder: &Path) -> io::Result<Vec<PathBuf>> {
    let mut paths = fs::read_dir(folder)?
        .map(|entry| entry.map(|entry| entry.path()))
        .collect::<io::Result<Vec<_>>>()?;
    paths.sort();
    Ok(paths)
}

/// A file without its comments: they are for translators, and every device would load and read them.
fn entry(language: &Path, file: &Path) -> io::Result<String> {
    let language = language.file_name().unwrap_or_default().to_string_lossy();
    let path = file.to_string_lossy().replace('\\', "/");
    let mut text = String::new();
    for line in fs::read_to_string(file)?.lines() {
        // A line stays a line, so that a flaw is told of where it stands.
        text.push_str(if line.starts_with('#') { "" } else { line });
        text.push('\n');
    }
    Ok(format!("    MessageFile {{ language: {language:?}, name: {path:?}, text: {text:?} }},\n"))
}
