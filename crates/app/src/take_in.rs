//! Files that are taken in: an outing file with those that it includes, or the records of an outing
//! that another device handed out.

use crate::books::{Done, NotDone};
use crate::{App, Visit};
use desk::{Change, InputFile, read, rows};
use ground::{Fault, Place};
use journal::Log;

/// Takes the files of a visit in, whole or not at all.
pub(crate) fn take_in(app: &mut App, visit: &Visit) -> Result<Done, NotDone> {
    let files: Result<Vec<_>, _> = visit.files.iter().map(crate::ChosenFile::text).collect();
    let files = files?;
    match files.as_slice() {
        [] => Err(Fault::new("app-no-file", Place::default(), "").into()),
        [records] if holds_records(records) => {
            Ok(app.books.merge(&Log::read(&records.name, &records.text)?)?)
        }
        _ => outing(app, &files, visit),
    }
}

/// No outing file begins like this: in TOML a brace stands only after an equals sign.
fn holds_records(file: &InputFile) -> bool {
    file.text.trim_start().starts_with('{')
}

fn outing(app: &mut App, files: &[InputFile], visit: &Visit) -> Result<Done, NotDone> {
    read(files, app.herbal())?;
    // What people said of their health does not go afield, and the clock of this device holds here.
    let stays = |table: &str| !["answers", ""].contains(&table);
    let rows = rows(files)?.into_iter().filter(|row| stays(&row.table));
    app.books.say(None, rows.map(Change::Put).collect(), &visit.at)
}
