//! The user's own herbal files: every TOML file below a folder, by its path from there.

use desk::InputFile;
use ground::{Fault, Faults, Place};
use herbal::TextFile;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// Reads a folder.
///
/// # Errors
/// What cannot be read, and a folder without any herbal file.
pub(crate) fn read(folder: &Path) -> Result<Vec<TextFile>, Faults> {
    let mut paths = Vec::new();
    gather(folder, &mut paths)?;
    paths.sort();
    if paths.is_empty() {
        return Err(fault("no-herbal-files", folder, "").into());
    }
    let mut faults = Faults::none();
    let read = paths.iter().filter_map(|path| faults.note(file(folder, path)));
    let read = read.collect();
    faults.or(read)
}

/// The same faults, at the files as the user knows them.
pub(crate) fn in_folder(faults: Faults, folder: &Path) -> Faults {
    let whole = |file: &str| folder.join(file).display().to_string();
    faults
        .into_iter()
        .map(|mut fault| {
            fault.at.file = fault.at.file.as_deref().map(whole);
            fault
        })
        .collect()
}

fn gather(folder: &Path, paths: &mut Vec<PathBuf>) -> Result<(), Fault> {
    let unreadable = |error: io::Error| fault("unreadable-file", folder, error.to_string());
    for entry in fs::read_dir(folder).map_err(unreadable)? {
        let entry = entry.map_err(unreadable)?;
        let path = entry.path();
        if entry.file_type().map_err(unreadable)?.is_dir() {
            gather(&path, paths)?;
        } else if path.extension().is_some_and(|end| end == "toml") {
            paths.push(path);
        }
    }
    Ok(())
}

fn file(folder: &Path, path: &Path) -> Result<TextFile, Fault> {
    let bytes =
        fs::read(path).map_err(|error| fault("unreadable-file", path, error.to_string()))?;
    let InputFile { text, .. } = InputFile::from_bytes(&path.display().to_string(), bytes)?;
    let inside = path.strip_prefix(folder).unwrap_or(path);
    // The herbal names its files with slashes everywhere.
    let path = inside.iter().map(|part| part.to_string_lossy()).collect::<Vec<_>>().join("/");
    Ok(TextFile { path, text })
}

fn fault(code: &str, path: &Path, got: impl Into<String>) -> Fault {
    Fault::new(code, Place::default().in_file(path.display().to_string()), got)
}
