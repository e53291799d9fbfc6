//! A file that is changed whole or not at all, and only from what it was known to hold.

use std::fs::{self, File};
use std::io::{self, Read as _, Write as _};
use std::path::{Path, PathBuf};

/// Writes a file that still holds `before`, or that is not there where that is empty; whether it
/// did. Whoever reads it meanwhile finds the old text or the new one, and never half of it.
pub(crate) fn replace(path: &Path, before: &str, after: &str) -> io::Result<bool> {
    // What a link leads to is changed, and the link stays.
    let path = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
    let mut held = match File::open(&path) {
        Ok(held) => held,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return create(&path, after),
        Err(error) => return Err(error),
    };
    lock(&held)?;
    let mut known = String::new();
    held.read_to_string(&mut known)?;
    // Whoever held it before has moved another file to its place.
    if known != before || fs::read_to_string(&path)? != before {
        return Ok(false);
    }
    let permissions = held.metadata()?.permissions();
    if permissions.readonly() {
        let told = format!("{}: it may not be written", path.display());
        return Err(io::Error::new(io::ErrorKind::PermissionDenied, told));
    }
    let fresh = write_beside(&path, after)?;
    let moved = fs::set_permissions(&fresh, permissions).and_then(|()| fs::rename(&fresh, &path));
    clear(moved, &fresh)?;
    Ok(true)
}

/// A new file; whether there was none.
fn create(path: &Path, text: &str) -> io::Result<bool> {
    let fresh = write_beside(path, text)?;
    // Unlike a move, a second name takes no other file's place.
    let named = fs::hard_link(&fresh, path);
    let named = match named {
        Ok(()) => Ok(true),
        Err(error) if error.kind() == io::ErrorKind::AlreadyExists => Ok(false),
        // A disk without second names.
        Err(_) => fs::rename(&fresh, path).map(|()| true),
    };
    let _ = fs::remove_file(&fresh);
    named
}

/// Keeps others who write out until the file is dropped, where the disk knows how.
fn lock(file: &File) -> io::Result<()> {
    match file.lock() {
        Err(error) if error.kind() != io::ErrorKind::Unsupported => Err(error),
        _ => Ok(()),
    }
}

fn write_beside(path: &Path, text: &str) -> io::Result<PathBuf> {
    let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
    let fresh = path.with_file_name(format!(".{name}.new-{}", std::process::id()));
    let written = File::create(&fresh).and_then(|mut file| {
        file.write_all(text.as_bytes())?;
        file.sync_all()
    });
    clear(written, &fresh)?;
    Ok(fresh)
}

/// Leaves nothing behind of what failed; its error is the one to tell.
fn clear(done: io::Result<()>, fresh: &Path) -> io::Result<()> {
    if done.is_err() {
        let _ = fs::remove_file(fresh);
    }
    done
}
