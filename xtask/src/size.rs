//! What a device loads before the app starts for the first time: measured as it is on the way, and held below
//! a ceiling. Web spaces send text packed with gzip; what lies there packed is sent as it is.

use crate::app;
use crate::figure::Figure;
use crate::house::{House, Outcome, run, say};
use std::fs;
use std::path::Path;

/// A part of what is loaded, in thousands of bytes.
struct Part {
    name: &'static str,
    /// Whether a file belongs to it.
    holds: fn(&str) -> bool,
    goal: u64,
    /// What was reached, and a little: it is lowered when less is reached, and raised for a reason only: the herbal
    /// grows with every published cell and its source.
    ceiling: u64,
}

const PARTS: [Part; 2] = [
    Part { name: "size-program", holds: |file| !is_herbal(file), goal: 800, ceiling: 1003 },
    Part { name: "size-herbal", holds: is_herbal, goal: 700, ceiling: 340 },
];

fn is_herbal(file: &str) -> bool {
    file.starts_with("herbal")
}

fn is_packed(file: &str) -> bool {
    [".lzma", ".gz"].iter().any(|end| file.ends_with(end))
}

/// Fails when a part is larger than its ceiling.
pub(crate) fn check(house: &House) -> Outcome {
    let sizes = sizes(house)?;
    let mut over = Vec::new();
    for (part, size) in PARTS.iter().zip(sizes) {
        say(figure(part, size));
        if size > part.ceiling {
            over.push(format!("{}: {size} kB, more than {}", part.name, part.ceiling));
        }
    }
    if over.is_empty() { Ok(()) } else { Err(over.join("; ").into()) }
}

/// The size of each part.
pub(crate) fn figures(house: &House) -> Outcome<Vec<Figure>> {
    Ok(PARTS.iter().zip(sizes(house)?).map(|(part, size)| figure(part, size)).collect())
}

fn figure(part: &Part, size: u64) -> Figure {
    let unit = format!("kB on the way (ceiling {}, goal {})", part.ceiling, part.goal);
    Figure { name: part.name.to_owned(), value: size.to_string(), unit }
}

/// The size of each part of the app as it is exported.
fn sizes(house: &House) -> Outcome<[u64; 2]> {
    let folder = house.fresh("size")?.join("app");
    run(house.command(app::build(house)?).args(["app", "--export"]).arg(&folder))?;
    let mut files = Vec::new();
    gather(&folder, &mut files)?;
    Ok(PARTS.map(|part| {
        let bytes: u64 =
            files.iter().filter(|(name, _)| (part.holds)(name)).map(|(_, bytes)| bytes).sum();
        bytes.div_ceil(1000)
    }))
}

/// The files below a folder, by name and size on the way.
fn gather(folder: &Path, files: &mut Vec<(String, u64)>) -> Outcome {
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        if entry.metadata()?.is_dir() {
            gather(&entry.path(), files)?;
            continue;
        }
        let name = entry.file_name().to_string_lossy().into_owned();
        let bytes = fs::read(entry.path())?;
        let packed = if is_packed(&name) { bytes } else { app::gzip(&bytes)? };
        files.push((name, packed.len() as u64));
    }
    Ok(())
}
