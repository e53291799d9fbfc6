//! Files that a command names: read whole, told of when they cannot be.

use desk::{InputFile, MOST_BYTES, includes};
use ground::{Fault, Faults, Place};
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// Reads one file. A file that is too large is refused by its length, unread.
pub(crate) fn read(path: &Path) -> Result<InputFile, Fault> {
    let name = path.display().to_string();
    let place = || Place::default().in_file(&*name);
    let unreadable = |error: io::Error| Fault::new("unreadable-file", place(), error.to_string());
    let length = fs::metadata(path).map_err(unreadable)?.len();
    if length > MOST_BYTES as u64 {
        let fault = Fault::new("file-too-large", place(), length.to_string());
        return Err(fault.with("most", MOST_BYTES));
    }
    InputFile::from_bytes(&name, fs::read(path).map_err(unreadable)?)
}

/// Reads the files of an outing and those that they include, each beside the file that names it.
///
/// # Errors
/// What cannot be read, what is missing, and files that include themselves.
pub(crate) fn outing(paths: &[PathBuf]) -> Result<Vec<InputFile>, Faults> {
    let mut gathered = Gathered::default();
    for path in paths {
        gathered.add(path);
    }
    gathered.faults.or(gathered.files)
}

#[derive(Default)]
struct Gathered {
    files: Vec<InputFile>,
    /// Every file that was read, and those that are being read, outermost first.
    seen: Vec<PathBuf>,
    within: Vec<PathBuf>,
    faults: Faults,
}

impl Gathered {
    fn add(&mut self, path: &Path) {
        let whole = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
        if self.within.contains(&whole) {
            return self.fault("includes-itself", path);
        }
        // Two files may include the same third one: it counts once.
        if self.seen.contains(&whole) {
            return;
        }
        self.seen.push(whole.clone());
        let Some(file) = self.faults.note(read(path)) else { return };
        let included = self.faults.note_all(includes(&file)).unwrap_or_default();
        self.files.push(file);
        self.within.push(whole);
        let folder = path.parent().unwrap_or(Path::new(""));
        for name in included {
            self.include(&folder.join(name), path);
        }
        self.within.pop();
    }

    fn include(&mut self, path: &Path, by: &Path) {
        if path.exists() {
            return self.add(path);
        }
        let at = Place::default().in_file(by.display().to_string());
        self.faults.add(Fault::new("include-missing", at, path.display().to_string()));
    }

    fn fault(&mut self, code: &str, path: &Path) {
        let chain: Vec<_> =
            self.within.iter().map(|path| path.display().to_string().into()).collect();
        let at = Place::default().in_file(path.display().to_string());
        let fault = Fault::new(code, at, path.display().to_string());
        self.faults.add(fault.with("chain", chain));
    }
}
