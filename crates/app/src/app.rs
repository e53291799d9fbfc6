//! The app as it stands on one device.

use crate::address::Address;
use crate::books::Books;
use crate::edit::{self, Done};
use crate::fields::table;
use crate::screen::{self, Screen};
use crate::{Message, Shown, Visit, take_in};
use desk::{InputFile, Reply, Request, SheetReply, TableRow, World};
use ground::{ContentId, Faults, RandomStart, Text};
use herbal::Herbal;
use jiff::civil::{Date, DateTime};
use journal::Journal;
use page::{Catalogue, Words};

/// The app: what is known, and what is kept on this device.
pub struct App {
    catalogue: Catalogue,
    world: World,
    pub(crate) books: Books,
}

/// The herbal could not be read: it was cut short, or is of another version than the program.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotOpened;

impl App {
    /// Opens the app with a herbal, as the program `herbal-data` compiles it.
    ///
    /// # Errors
    /// When the bytes are no herbal of this version.
    pub fn open(herbal: &[u8]) -> Result<Self, NotOpened> {
        let read: Herbal = rmp_serde::from_slice(herbal).map_err(|_| NotOpened)?;
        let world = World {
            herbal: read,
            herbal_version: ContentId::of(herbal).to_string(),
            journal: Journal::new(),
            now: DateTime::default(),
            random_start: RandomStart(0),
        };
        Ok(Self { catalogue: Catalogue::english(), world, books: Books::default() })
    }

    /// The answer to a message, both in JSON. What is none leads to the first screen.
    #[must_use]
    pub fn answer(&mut self, message: &[u8]) -> Vec<u8> {
        let message = serde_json::from_slice(message);
        let shown = match message.unwrap_or_else(|_| Message::Visit(Visit::default())) {
            Message::Visit(visit) => self.show(&visit),
            Message::Kept { device, lines } => match self.books.take_in(&device, &lines) {
                Ok(()) => Shown::default(),
                Err(faults) => self.shown(&Address::Home, screen::at_fault(self, &faults)),
            },
        };
        // A screen is a tree of words, which always writes.
        serde_json::to_vec(&shown).unwrap_or_default()
    }

    /// The screen that a visit leads to.
    #[must_use]
    pub fn show(&mut self, visit: &Visit) -> Shown {
        self.world.now = visit.at.now;
        let address = Address::read(&visit.to);
        if visit.form.is_some() {
            return self.act(&address, visit);
        }
        let screen = match &address {
            Address::Home | Address::TakeIn | Address::Undo(_) => screen::home(self),
            Address::New => self.form(&address, visit, None),
            Address::Rows(book, name) => match table(name) {
                Some(table) => screen::rows(self, book, table),
                None => screen::nowhere(self, &visit.to),
            },
            Address::Row(..) => self.form(&address, visit, None),
            Address::Outing(book) => screen::outing(self, book),
            Address::Plan(book) => screen::plan(self, book),
            Address::Pages(book) => screen::pages(self, book),
            Address::Page(book, name) => screen::page(self, book, name),
            Address::OutingFile(book) => return self.hand_out(&address, self.books.file(book)),
            Address::Records(book) => {
                let text = self.books.lines(book);
                let file = text.map(|text| InputFile { name: "records.jsonl".to_owned(), text });
                return self.hand_out(&address, file);
            }
            Address::Herbal(words) => screen::herbal(self, words),
            Address::Plant(name) => screen::plant(self, name),
            Address::Compare(one, other) => screen::compare(self, one, other),
            Address::Nowhere(said) => screen::nowhere(self, said),
        };
        self.shown(&address, screen)
    }

    /// What a form does.
    fn act(&mut self, address: &Address, visit: &Visit) -> Shown {
        let done = match address {
            Address::TakeIn => take_in::take_in(self, visit),
            Address::New => edit::begin(self, visit),
            Address::Undo(book) => edit::undo(self, book, &visit.at),
            Address::Row(book, name, key) => match table(name) {
                Some(table) => edit::put_row(self, (book, table, key.as_deref()), visit),
                None => return self.shown(address, screen::nowhere(self, &visit.to)),
            },
            _ => return self.shown(address, screen::nowhere(self, &visit.to)),
        };
        match (done, address) {
            (Ok(Done { book, keep }), _) => Shown { keep, ..self.after(address, &book) },
            (Err(faults), Address::New | Address::Row(..)) => {
                self.shown(address, self.form(address, visit, Some(&faults)))
            }
            (Err(faults), _) => self.shown(address, screen::at_fault(self, &faults)),
        }
    }

    /// What is shown when an act was done: the rows of the table, or the outing.
    fn after(&self, done: &Address, book: &str) -> Shown {
        if let Address::Row(_, name, _) = done
            && let Some(table) = table(name).filter(|table| !table.is_single())
        {
            let at = Address::Rows(book.to_owned(), name.clone());
            return self.shown(&at, screen::rows(self, book, table));
        }
        self.shown(&Address::Outing(book.to_owned()), screen::outing(self, book))
    }

    /// The form of a row, as it stands or as it was filled in.
    fn form(&self, address: &Address, visit: &Visit, faults: Option<&Faults>) -> Screen {
        let tried = visit.form.as_ref().zip(faults);
        let begun = [screen::fresh(visit.at.now.date(), &visit.at.zone)];
        let (rows, name, key) = match address {
            Address::New => (Some(begun.to_vec()), "outing", Some("")),
            Address::Row(book, name, key) => (self.books.rows(book), name.as_str(), key.as_deref()),
            _ => (None, "", None),
        };
        let (Some(rows), Some(table)) = (rows, table(name)) else {
            return screen::nowhere(self, &visit.to);
        };
        let is = |row: &&TableRow| row.table == name && Some(row.key.as_str()) == key;
        let was = rows.iter().find(is);
        if key.is_some() && was.is_none() {
            return screen::nowhere(self, &visit.to);
        }
        screen::row(self, address, table, (&rows, was), tried)
    }

    /// A file, on the screen of its outing.
    fn hand_out(&self, address: &Address, file: Option<InputFile>) -> Shown {
        let (Address::OutingFile(book) | Address::Records(book)) = address else {
            return self.shown(address, screen::home(self));
        };
        Shown { file, ..self.shown(&Address::Outing(book.clone()), screen::outing(self, book)) }
    }

    fn shown(&self, address: &Address, screen: Screen) -> Shown {
        let Screen { title, main } = screen;
        Shown { at: address.written(), title, main: main.into_string(), ..Shown::default() }
    }

    /// Asks the front door.
    pub(crate) fn ask(&self, request: Request) -> Result<Reply, Faults> {
        desk::answer(&self.world, request)
    }

    /// What is known of a plant.
    pub(crate) fn sheet(&self, name: &str) -> Option<SheetReply> {
        match self.ask(Request::HerbalShow { name: name.to_owned() }) {
            Ok(Reply::HerbalShow(sheet)) => Some(*sheet),
            _ => None,
        }
    }

    pub(crate) fn words(&self) -> Words<'_> {
        Words::new(&self.catalogue).with_herbal(&self.world.herbal)
    }

    /// A message of the catalogue.
    pub(crate) fn word(&self, id: &str) -> String {
        self.catalogue.word(id)
    }

    /// What is known.
    pub(crate) fn herbal(&self) -> &Herbal {
        &self.world.herbal
    }

    /// A day in words.
    pub(crate) fn day(&self, day: Date) -> String {
        self.catalogue.say(&Text::new("app-day").with("day", day))
    }

    /// Whether there is such a message.
    pub(crate) fn has(&self, id: &str) -> bool {
        self.catalogue.has(id)
    }

    /// A message that counts.
    pub(crate) fn counted(&self, id: &str, count: usize) -> String {
        self.catalogue.say(&Text::new(id).with("count", count as u32))
    }
}
