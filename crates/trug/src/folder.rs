//! Folders that are written whole or not at all.

use std::path::{Path, PathBuf};
use std::{fs, io};

/// Writes files into a folder. They are written beside it first and moved as one, so that a reader
/// never finds half of them; a folder that was there is replaced.
pub(crate) fn write_whole(folder: &Path, files: Vec<(String, Vec<u8>)>) -> io::Result<()> {
    let fresh = beside(folder, "new");
    let old = beside(folder, "old");
    fs::create_dir_all(&fresh)?;
    let mut files = files.into_iter();
    let written = files.try_for_each(|(name, bytes)| write(&fresh.join(name), &bytes));
    let moved = written.and_then(|()| replace(folder, &fresh, &old));
    if moved.is_err() {
        // The first error is the one to tell; what is left over is only clutter.
        let _ = fs::remove_dir_all(&fresh);
    }
    moved
}

fn write(path: &Path, bytes: &[u8]) -> io::Result<()> {
    path.parent().map_or(Ok(()), fs::create_dir_all)?;
    fs::write(path, bytes)
}

fn replace(folder: &Path, fresh: &Path, old: &Path) -> io::Result<()> {
    if !folder.exists() {
        return fs::rename(fresh, folder);
    }
    fs::rename(folder, old)?;
    if let Err(error) = fs::rename(fresh, folder) {
        fs::rename(old, folder)?;
        return Err(error);
    }
    fs::remove_dir_all(old)
}

/// A name beside a folder that no other run uses.
fn beside(folder: &Path, what: &str) -> PathBuf {
    let name = folder.file_name().unwrap_or_default().to_string_lossy().into_owned();
    folder.with_file_name(format!(".{name}.{what}-{}", std::process::id()))
}
