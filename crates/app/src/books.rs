//! What is kept on this device: a book for each outing, a log of changes to its rows.

use crate::visit::{Kept, Moment};
use desk::{Change, InputFile, TableRow, standing_rows, write};
use ground::{ContentId, Fault, Faults, Place};
use journal::{Act, Log};
use std::collections::BTreeMap;

/// The books, and the device that writes in them.
#[derive(Default)]
pub(crate) struct Books {
    device: String,
    books: BTreeMap<String, Log<Change>>,
}

impl Books {
    /// Takes in lines that were kept before, on this device or on another.
    ///
    /// # Errors
    /// Every line that cannot be read. The others are taken in; none leaves the device's database.
    pub(crate) fn take_in(&mut self, device: &str, lines: &[Kept]) -> Result<(), Faults> {
        device.clone_into(&mut self.device);
        let mut texts: BTreeMap<&str, String> = BTreeMap::new();
        for Kept { book, line } in lines {
            *texts.entry(book).or_default() += &format!("{line}\n");
        }
        let mut faults = Faults::none();
        for (book, text) in texts {
            let log = self.books.entry(book.to_owned()).or_default();
            faults.note_all(Log::read(book, &text).and_then(|read| log.merge(&read)));
        }
        faults.or(())
    }

    /// Each book with its rows.
    pub(crate) fn iter(&self) -> impl Iterator<Item = (&str, Vec<TableRow>)> {
        self.books.iter().map(|(book, log)| (book.as_str(), standing_rows(log)))
    }

    /// The rows of a book.
    pub(crate) fn rows(&self, book: &str) -> Option<Vec<TableRow>> {
        self.books.get(book).map(standing_rows)
    }

    /// A book as an outing file.
    pub(crate) fn file(&self, book: &str) -> Option<InputFile> {
        self.rows(book).map(|rows| write("outing.toml", &rows))
    }

    /// The records of a book, one a line.
    pub(crate) fn lines(&self, book: &str) -> Option<String> {
        let log = self.books.get(book)?;
        Some(log.lines().map(|line| format!("{line}\n")).collect())
    }

    /// Takes the last record of a book back; a taking-back that was the last brings back what it took.
    ///
    /// # Errors
    /// When there is no such book, or a record cannot be added.
    pub(crate) fn take_back_last(&mut self, book: &str, at: &Moment) -> Result<Vec<Kept>, Fault> {
        let missing = || Fault::new("app-nothing-said", Place::default(), book);
        let log = self.books.get_mut(book).ok_or_else(missing)?;
        let (last, _) = log.standing().into_iter().next_back().ok_or_else(missing)?;
        let act = Act::TakeBack { of: last.id };
        log.append(&self.device, at.ms, at.random(0), &self.device, act)?;
        let line = log.lines().last().unwrap_or_default().to_owned();
        Ok(vec![Kept { book: book.to_owned(), line }])
    }

    /// Writes changes into a book, one record each, and gives the lines to keep.
    ///
    /// # Errors
    /// When a record cannot be added. Those before it stay in memory and are not given out: the
    /// caller opens the books anew from what is kept.
    pub(crate) fn say(
        &mut self,
        book: &str,
        changes: Vec<Change>,
        at: &Moment,
    ) -> Result<Vec<Kept>, Fault> {
        let log = self.books.entry(book.to_owned()).or_default();
        let added = changes.len();
        for (number, change) in changes.into_iter().enumerate() {
            let random = at.random(number);
            log.append(&self.device, at.ms, random, &self.device, Act::Say(change))?;
        }
        let before = log.len() - added;
        let new = log.lines().skip(before);
        Ok(new.map(|line| Kept { book: book.to_owned(), line: line.to_owned() }).collect())
    }
}

/// A name for a new book.
pub(crate) fn name(at: &Moment) -> String {
    ContentId::of(at.seed.as_bytes()).to_string()
}
