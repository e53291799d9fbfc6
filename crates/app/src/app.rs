//! The app as it stands on one device.

use crate::address::Address;
use crate::screen::{self, Screen};
use crate::{Shown, Visit};
use desk::{Reply, Request, World};
use ground::{ContentId, Faults, RandomStart, Text};
use herbal::Herbal;
use jiff::civil::DateTime;
use journal::Journal;
use page::{Catalogue, Words};

/// The app: what is known, and what is kept on this device.
pub struct App {
    catalogue: Catalogue,
    world: World,
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
        Ok(Self { catalogue: Catalogue::english(), world })
    }

    /// The answer to a visit, both in JSON. What is no visit leads to the first screen.
    #[must_use]
    pub fn answer(&mut self, visit: &[u8]) -> Vec<u8> {
        let home = || Visit { to: String::new(), now: self.world.now, form: None };
        let visit = serde_json::from_slice(visit).unwrap_or_else(|_| home());
        // A screen is a tree of words, which always writes.
        serde_json::to_vec(&self.show(&visit)).unwrap_or_default()
    }

    /// The screen that a visit leads to.
    #[must_use]
    pub fn show(&mut self, visit: &Visit) -> Shown {
        self.world.now = visit.now;
        let address = Address::read(&visit.to);
        let screen = match &address {
            Address::Home => screen::home(self),
            Address::Herbal(words) => screen::herbal(self, words),
            Address::Plant(name) => screen::plant(self, name),
            Address::Compare(one, other) => screen::compare(self, one, other),
            Address::Nowhere(said) => screen::nowhere(self, said),
        };
        let Screen { title, main } = screen;
        Shown { at: address.written(), title, main: main.into_string() }
    }

    /// Asks the front door.
    pub(crate) fn ask(&self, request: Request) -> Result<Reply, Faults> {
        desk::answer(&self.world, request)
    }

    pub(crate) fn words(&self) -> Words<'_> {
        Words::new(&self.catalogue).with_herbal(&self.world.herbal)
    }

    /// A message of the catalogue.
    pub(crate) fn word(&self, id: &str) -> String {
        self.catalogue.word(id)
    }

    /// A message that counts.
    pub(crate) fn counted(&self, id: &str, count: usize) -> String {
        self.catalogue.say(&Text::new(id).with("count", count as u32))
    }
}
