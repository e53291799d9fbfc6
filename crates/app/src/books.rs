//! What is kept on this device: a book for each outing, a log of what was done to its rows.

use crate::flags::FLAG;
use crate::visit::{Kept, Moment, Saved, SealAct};
use desk::{Cell, Change, InputFile, TableRow, standing_rows, write};
use ground::{Fault, Faults, Place};
use jiff::civil::Date;
use journal::{Act, Log, RecordId};
use std::collections::BTreeMap;

/// The books, and the device that writes in them.
#[derive(Default)]
pub(crate) struct Books {
    device: String,
    books: BTreeMap<String, Book>,
    unread: BTreeMap<String, Unread>,
    /// How many records of this device lie elsewhere, too, by book.
    saved: BTreeMap<String, usize>,
    newly_saved: Option<Saved>,
}

/// The log of an outing, and the rows that stand after it.
#[derive(Clone, Default)]
pub(crate) struct Book {
    log: Log<Vec<Change>>,
    rows: Vec<TableRow>,
}

/// A book of which a line cannot be read. Nothing is worked out from the others: what that line said
/// might have held something up.
#[derive(Default)]
pub(crate) struct Unread {
    lines: Vec<String>,
    /// What is wrong with it.
    pub(crate) faults: Faults,
}

/// What an act did: the book it was in, the lines to keep, and what to do with what is sealed.
pub(crate) struct Done {
    pub(crate) book: String,
    pub(crate) keep: Vec<Kept>,
    pub(crate) seal: Option<SealAct>,
}

impl Done {
    /// Nothing that has to be kept.
    pub(crate) fn nothing(book: &str) -> Self {
        Self { book: book.to_owned(), keep: Vec::new(), seal: None }
    }

    /// Destroys what one person said, or everybody.
    pub(crate) fn erasing(self, person: Option<&str>) -> Self {
        let seal = SealAct::Destroy { book: self.book.clone(), seal: person.map(str::to_owned) };
        Self { seal: Some(seal), ..self }
    }

    /// Closes what is sealed.
    pub(crate) fn closing(self) -> Self {
        let seal = SealAct::Close { book: self.book.clone() };
        Self { seal: Some(seal), ..self }
    }
}

/// Why an act was not done.
pub(crate) enum NotDone {
    /// Its address leads to nothing.
    Nowhere,
    /// What was said is at fault.
    AtFault(Faults),
}

impl From<Fault> for NotDone {
    fn from(fault: Fault) -> Self {
        Self::AtFault(fault.into())
    }
}

impl From<Faults> for NotDone {
    fn from(faults: Faults) -> Self {
        Self::AtFault(faults)
    }
}

/// One entry of a book.
pub(crate) struct Entry<'a> {
    pub(crate) id: RecordId,
    pub(crate) ms: i64,
    pub(crate) what: &'a Act<Vec<Change>>,
    /// Whether it was not taken back.
    pub(crate) stands: bool,
}

impl Books {
    /// Takes in lines that the device kept. A book with a line that cannot be read is set aside
    /// whole.
    pub(crate) fn open(&mut self, device: &str, lines: &[Kept], saved: Vec<Saved>) {
        device.clone_into(&mut self.device);
        self.saved.extend(saved.into_iter().map(|Saved { book, records }| (book, records)));
        for Kept { book, line, .. } in lines {
            self.open_line(book, line);
        }
        self.books.values_mut().for_each(Book::refresh);
    }

    fn open_line(&mut self, book: &str, line: &str) {
        if let Some(unread) = self.unread.get_mut(book) {
            unread.lines.push(line.to_owned());
            return;
        }
        let log = &mut self.books.entry(book.to_owned()).or_default().log;
        let number = u32::try_from(log.len() + 1).unwrap_or(u32::MAX);
        let at = Place::default().in_file(book).at(number, 1);
        if let Err(fault) = log.read_line(line, &at) {
            let lines = log.lines().chain([line]).map(str::to_owned).collect();
            self.unread.insert(book.to_owned(), Unread { lines, faults: fault.into() });
            self.books.remove(book);
        }
    }

    /// Each book with its rows.
    pub(crate) fn iter(&self) -> impl Iterator<Item = (&str, &[TableRow])> {
        self.books.iter().map(|(name, book)| (name.as_str(), book.rows.as_slice()))
    }

    /// When something was written down last, on whatever device.
    pub(crate) fn latest_ms(&self) -> Option<i64> {
        self.books.values().flat_map(|book| book.log.iter()).map(|record| record.clock.ms).max()
    }

    /// The books that cannot be read.
    pub(crate) fn unread(&self) -> impl Iterator<Item = &str> {
        self.unread.keys().map(String::as_str)
    }

    /// What is wrong with a book that cannot be read.
    pub(crate) fn wrong_with(&self, book: &str) -> Option<&Faults> {
        self.unread.get(book).map(|unread| &unread.faults)
    }

    /// The rows of a book.
    pub(crate) fn rows(&self, book: &str) -> Option<&[TableRow]> {
        self.books.get(book).map(|book| book.rows.as_slice())
    }

    /// A book as an outing file.
    pub(crate) fn file(&self, book: &str) -> Option<InputFile> {
        self.rows(book).map(|rows| write("outing.toml", rows))
    }

    /// The records of a book as a file to hand out: from then on they lie elsewhere, too.
    pub(crate) fn hand_out_records(&mut self, book: &str) -> Option<InputFile> {
        let file = self.records(book)?;
        let written = self.books.get(book).map_or(0, |book| self.own(&book.log));
        self.note_saved(book, written);
        Some(file)
    }

    /// How many records of a book were written here and lie nowhere else.
    pub(crate) fn unsaved(&self, book: &str) -> usize {
        let written = self.books.get(book).map_or(0, |book| self.own(&book.log));
        written.saturating_sub(self.saved.get(book).copied().unwrap_or_default())
    }

    /// What came to lie elsewhere since this was last asked.
    pub(crate) fn newly_saved(&mut self) -> Option<Saved> {
        self.newly_saved.take()
    }

    fn note_saved(&mut self, book: &str, records: usize) {
        let known = self.saved.entry(book.to_owned()).or_default();
        if records > *known {
            *known = records;
            self.newly_saved = Some(Saved { book: book.to_owned(), records });
        }
    }

    /// How many records of a log this device wrote.
    fn own(&self, log: &Log<Vec<Change>>) -> usize {
        log.iter().filter(|record| record.clock.device == self.device).count()
    }

    /// The records of a book, one a line, whether or not they can be read.
    fn records(&self, book: &str) -> Option<InputFile> {
        let kept = self.books.get(book).map(|book| book.log.lines().map(str::to_owned).collect());
        let lines: Vec<String> = kept.or_else(|| Some(self.unread.get(book)?.lines.clone()))?;
        Some(InputFile { name: "records.jsonl".to_owned(), text: lines.join("\n") + "\n" })
    }

    /// The entries of a book, the latest first.
    pub(crate) fn entries(&self, book: &str) -> Vec<Entry<'_>> {
        let Some(Book { log, .. }) = self.books.get(book) else { return Vec::new() };
        let taken_back = log.taken_back();
        let entries = log.iter().rev().map(|record| Entry {
            id: record.id,
            ms: record.clock.ms,
            what: &record.what,
            stands: !taken_back.contains(&record.id),
        });
        entries.collect()
    }

    /// Writes down what was done in one go, in a new book where none is named.
    ///
    /// # Errors
    /// When there is no such book, or the record cannot be added.
    pub(crate) fn say(
        &mut self,
        book: Option<&str>,
        changes: Vec<Change>,
        at: &Moment,
    ) -> Result<Done, NotDone> {
        self.append(book, Act::Say(changes), at)
    }

    /// Takes a record of a book back. One that took another back brings that back.
    ///
    /// # Errors
    /// When the book has no such record, or it was taken back already, or none can be added.
    pub(crate) fn take_back(&mut self, book: &str, id: &str, at: &Moment) -> Result<Done, NotDone> {
        let gone = || Fault::new("app-nothing-to-take-back", Place::default(), id);
        let of = RecordId::read(id).ok_or_else(gone)?;
        let stands = self.entries(book).iter().any(|entry| entry.id == of && entry.stands);
        if !stands {
            return Err(gone().into());
        }
        if self.brings_flags_back(book, of, at)? {
            return Err(Fault::new("app-flags-stay-gone", Place::default(), "").into());
        }
        self.append(Some(book), Act::TakeBack { of }, at)
    }

    /// Whether a flag would stand again that does not stand now: an answer may have changed since.
    fn brings_flags_back(&self, book: &str, of: RecordId, at: &Moment) -> Result<bool, NotDone> {
        let now = self.books.get(book).ok_or(NotDone::Nowhere)?;
        let mut then = now.clone();
        then.log.append(&self.device, at.ms, at.random(), &self.device, Act::TakeBack { of })?;
        then.refresh();
        let new = |row: &TableRow| row.table == FLAG && !now.rows.contains(row);
        Ok(then.rows.iter().any(new))
    }

    /// A book is named after the record that it began with.
    fn append(
        &mut self,
        book: Option<&str>,
        act: Act<Vec<Change>>,
        at: &Moment,
    ) -> Result<Done, NotDone> {
        let mut begun = Book::default();
        let into = match book {
            Some(name) => self.books.get_mut(name).ok_or(NotDone::Nowhere)?,
            None => &mut begun,
        };
        let id = into.log.append(&self.device, at.ms, at.random(), &self.device, act)?;
        into.refresh();
        let line = into.log.line(&id).unwrap_or_default().to_owned();
        let book = book.map_or_else(|| id.to_string(), str::to_owned);
        self.books.entry(book.clone()).or_insert(begun);
        Ok(Done { keep: vec![Kept::plain(&book, line)], ..Done::nothing(&book) })
    }

    /// Takes in the records that another device handed out: those that are new, or none.
    ///
    /// # Errors
    /// When one of them lacks the record before it, or has the identifier of another one here, or
    /// the book that is here cannot be read.
    pub(crate) fn merge(&mut self, records: &Log<Vec<Change>>) -> Result<Done, Faults> {
        let first = records.iter().next().map(|record| record.id.to_string());
        let book = first.unwrap_or_default();
        if let Some(faults) = self.wrong_with(&book) {
            return Err(faults.clone());
        }
        let missing = |fault: &&Fault| fault.code == "record-missing";
        if let Err(faults) = records.check() {
            faults.iter().filter(missing).cloned().collect::<Faults>().or(())?;
        }
        let mut merged = self.books.get(&book).cloned().unwrap_or_default();
        let known = |id: &RecordId| merged.log.get(id).is_some();
        let new = records.iter().filter(|record| !known(&record.id));
        let new = new.filter_map(|record| records.line(&record.id));
        let keep = new.map(|line| Kept::plain(&book, line.to_owned())).collect();
        merged.log.merge(records)?;
        merged.refresh();
        self.books.insert(book.clone(), merged);
        self.note_saved(&book, self.own(records));
        Ok(Done { keep, ..Done::nothing(&book) })
    }
}

/// The day of the outing that these rows are of.
pub(crate) fn day_of(rows: &[TableRow]) -> Option<Date> {
    rows.iter().find_map(|row| match row.cells.get("date") {
        Some(Cell::Day(day)) if row.table == "outing" => Some(*day),
        _ => None,
    })
}

impl Book {
    fn refresh(&mut self) {
        self.rows = standing_rows(&self.log);
    }
}
