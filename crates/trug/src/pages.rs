//! Pages on disk: a folder that is there whole or not at all.

use desk::{Plan, Reply, Request, World, answer};
use ground::{Fault, Place};
use page::{NamedPage, Words, html, pages, sheet_pages};
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// Writes the pages of a reply into a folder: those of a plan, or of sheets. Any other reply has none.
pub(crate) fn write(
    folder: &Path,
    reply: &Reply,
    world: &World,
    words: &Words<'_>,
) -> io::Result<()> {
    let pages = match reply {
        Reply::Plan(plan) => of_plan(plan, world, words),
        Reply::Sheet(sheets) => sheet_pages(sheets, words),
        _ => return Ok(()),
    };
    write_whole(folder, pages.into_iter().map(|named| (named.file, html(&named.page))))
}

fn of_plan(plan: &Plan, world: &World, words: &Words<'_>) -> Vec<NamedPage> {
    let sheet = |name: &String| match answer(world, Request::HerbalShow { name: name.clone() }) {
        Ok(Reply::HerbalShow(sheet)) => Some((name.clone(), *sheet)),
        _ => None,
    };
    let in_lots = plan.lots.iter().flat_map(|lot| lot.gathered.iter().map(|(taxon, _)| taxon));
    let named = plan.plants.iter().map(|plant| &plant.taxon).chain(in_lots);
    pages(plan, &named.filter_map(sheet).collect(), words)
}

/// Whether pages may be written there: nothing stands there, or nothing but pages.
///
/// # Errors
/// A folder with anything else in it, which would be lost.
pub(crate) fn may_write(folder: &Path) -> Result<(), Fault> {
    let is_page = |path: &Path| path.extension().is_some_and(|end| end == "html") && path.is_file();
    let only_pages = || {
        let mut entries = fs::read_dir(folder).into_iter().flatten();
        folder.is_dir() && entries.all(|entry| entry.is_ok_and(|entry| is_page(&entry.path())))
    };
    let named = folder.file_name().is_some();
    if named && (!folder.exists() || only_pages()) {
        return Ok(());
    }
    let name = folder.display().to_string();
    Err(Fault::new("folder-not-ours", Place::entry("plan", "", "out"), name))
}

/// Writes files into a folder. They are written beside it first and moved as one, so that a reader
/// never finds half of them; a folder that was there is replaced.
fn write_whole(folder: &Path, files: impl IntoIterator<Item = (String, String)>) -> io::Result<()> {
    let fresh = beside(folder, "new");
    let old = beside(folder, "old");
    fs::create_dir_all(&fresh)?;
    let written = files.into_iter().try_for_each(|(name, text)| fs::write(fresh.join(name), text));
    let moved = written.and_then(|()| replace(folder, &fresh, &old));
    if moved.is_err() {
        // The first error is the one to tell; what is left over is only clutter.
        let _ = fs::remove_dir_all(&fresh);
    }
    moved
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
