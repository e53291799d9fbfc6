//! Files that are taken in: an outing file with those that it includes, or records of another device.

use crate::books;
use crate::edit::Done;
use crate::{App, Visit};
use desk::{Change, InputFile, read, rows};
use ground::{Fault, Faults, Place};

/// Takes the files of a visit in, whole or not at all.
pub(crate) fn take_in(app: &mut App, visit: &Visit) -> Result<Done, Faults> {
    if visit.files.is_empty() {
        return Err(Fault::new("app-no-file", Place::default(), "").into());
    }
    let files: Result<Vec<_>, _> = visit
        .files
        .iter()
        .map(|file| InputFile::from_bytes(&file.name, file.text.clone().into_bytes()))
        .collect();
    let files = files?;
    app.check(&files)?;
    // What people said of their health does not go afield, and the clock of this device holds here.
    let stays = |table: &str| !["answers", ""].contains(&table);
    let rows = rows(&files)?.into_iter().filter(|row| stays(&row.table));
    let book = books::name(&visit.at);
    let keep = app.books.say(&book, rows.map(Change::Put).collect(), &visit.at)?;
    Ok(Done { book, keep })
}

impl App {
    /// Whether the files make an outing.
    fn check(&self, files: &[InputFile]) -> Result<(), Faults> {
        read(files, self.herbal()).map(|_| ())
    }
}
