//! The app as it stands on one device.

use crate::address::{Address, Reading};
use crate::answers::Answers;
use crate::books::{Books, Done, NotDone};
use crate::edit::{self, RowAt};
use crate::fields::table;
use crate::screen::{self, Screen};
use crate::{Form, Message, PdfOrder, Shown, Visit, answers, hand_out, in_hand, take_in};
use desk::device::{Reply, Request};
use desk::{InputFile, Outing, Plan, SheetReply, World};
use dose::Question;
use ground::{ContentId, Fault, Faults, Place, Text};
use herbal::Herbal;
use jiff::civil::{Date, DateTime};
use page::{Catalogue, Words};
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;
use std::sync::Arc;

/// The app: what is known, and what is kept on this device.
pub struct App {
    catalogue: Catalogue,
    world: World,
    /// Whether the herbal was read.
    knows: bool,
    pub(crate) books: Books,
    pub(crate) answers: Answers,
    /// The anchor of the working that is being opened.
    pub(crate) opens: Option<String>,
    /// The plan that questions were last taken from, and which book it is of.
    asked: RefCell<Option<(ContentId, Rc<Plan>)>>,
}

/// The herbal could not be read: it was cut short, or is of another version than the program.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotOpened;

impl Default for App {
    fn default() -> Self {
        Self::new()
    }
}

impl App {
    /// An app that has not read its herbal yet: it shows the first screen, and nothing else.
    #[must_use]
    pub fn new() -> Self {
        let world = World::new(Herbal::default(), String::new(), DateTime::default());
        Self {
            catalogue: Catalogue::english(),
            world,
            knows: false,
            books: Books::default(),
            answers: Answers::default(),
            opens: None,
            asked: RefCell::default(),
        }
    }

    /// Opens the app with a herbal, as the program `herbal-data` compiles it.
    ///
    /// # Errors
    /// When the bytes are no herbal of this version.
    pub fn open(herbal: &[u8]) -> Result<Self, NotOpened> {
        let mut app = Self::new();
        app.read(herbal)?;
        Ok(app)
    }

    /// Reads the herbal.
    ///
    /// # Errors
    /// When the bytes are no herbal of this version.
    pub fn read(&mut self, herbal: &[u8]) -> Result<(), NotOpened> {
        let read: Herbal = postcard::from_bytes(herbal).map_err(|_| NotOpened)?;
        self.world = World::new(read, ContentId::of(herbal).to_string(), self.world.now);
        self.knows = true;
        self.world.make_ready().map_err(|_| NotOpened)
    }

    /// The answer to a message, both in JSON.
    #[must_use]
    pub fn answer(&mut self, message: &[u8]) -> Vec<u8> {
        let shown = match serde_json::from_slice(message) {
            Ok(Message::Visit(visit)) => self.show(&visit),
            Ok(Message::Kept { device, lines, saved }) => {
                self.books.open(&device, &lines, saved);
                Shown::default()
            }
            Ok(Message::Opened { book, lines }) => {
                match lines {
                    Some(lines) => self.answers.open(&book, &lines),
                    None => self.forget_answers(&book),
                }
                Shown::default()
            }
            Err(error) => {
                let fault = Fault::new("app-no-message", Place::default(), error.to_string());
                self.shown(&Address::Home, screen::at_fault(self, &fault.into()))
            }
        };
        // A screen is a tree of words, which always writes.
        serde_json::to_vec(&shown).unwrap_or_default()
    }

    /// The screen that a visit leads to.
    #[must_use]
    pub fn show(&mut self, visit: &Visit) -> Shown {
        self.world.now = visit.at.now;
        self.opens.clone_from(&visit.opens);
        if self.catalogue.habits() != visit.habits {
            self.catalogue = self.catalogue.with_habits(visit.habits);
        }
        let address = Address::read(&visit.to);
        // The first screen is there at once, even on a slow phone.
        if !self.knows && (address != Address::Home || visit.form.is_some()) {
            return Shown { unread: true, ..Shown::default() };
        }
        if let Some(form) = &visit.form {
            return self.act(&address, form, visit);
        }
        let file = match &address {
            Address::OutingFile(book) => self.books.file(book),
            Address::Records(book) => self.books.hand_out_records(book),
            _ => None,
        };
        let at = match address {
            Address::OutingFile(book) | Address::Records(book) => Address::Outing(book),
            address => address,
        };
        Shown { file, saved: self.books.newly_saved(), ..self.shown(&at, self.screen(&at, visit)) }
    }

    fn screen(&self, address: &Address, visit: &Visit) -> Screen {
        match address {
            Address::Home | Address::TakeIn => screen::home(self, &visit.at),
            Address::New => screen::new(self, &visit.at, None),
            Address::Rows(book, table) => screen::rows(self, book, table),
            Address::Row(book, table, key) => {
                let to = RowAt { book, table, key: key.as_deref() };
                screen::row(self, &to, None)
            }
            Address::Outing(book) | Address::OutingFile(book) | Address::Records(book) => {
                screen::outing(self, book)
            }
            Address::Journal(book) => screen::journal(self, book, &visit.at),
            Address::InHand(book) => screen::in_hand(self, book),
            Address::Reading(reading) => screen::reading(self, reading, None),
            Address::Verdict(book, of) => screen::verdict(self, book, of),
            Address::Count(book, survey) => screen::count(self, book, survey, None),
            Address::Allowance(book) => screen::allowance(self, book),
            Address::RowWith(book, table, with) => {
                screen::row_with(self, &RowAt { book, table, key: None }, with)
            }
            Address::Basket(book) => screen::basket(self, book),
            Address::Kitchen(book) => screen::kitchen(self, book),
            Address::Make(book, wish) => screen::make(self, book, wish),
            Address::WorkOut(form) => screen::work_out(self, form),
            Address::Serving(book) | Address::Answers(book) => screen::serving(self, book, None),
            Address::Person(book, person) => screen::person(self, book, person),
            Address::Ask(book, person, number) => screen::ask(self, (book, person, *number), None),
            Address::Why(book) => screen::before_why(self, book),
            Address::HandOut(book, batch) => screen::hand_out(self, book, batch),
            Address::Plan(book) => screen::plan(self, book),
            Address::Pages(book) => screen::pages(self, book),
            Address::Page(book, name) => screen::page(self, book, name),
            Address::Emergency => screen::emergency(self, &visit.at),
            Address::Herbal(words) => screen::herbal(self, words),
            Address::Plant(name) => screen::plant(self, name),
            Address::Compare(one, other) => screen::compare(self, one, other),
            Address::Nowhere(said) => screen::nowhere(self, said),
        }
    }

    /// What a form does.
    fn act(&mut self, address: &Address, form: &Form, visit: &Visit) -> Shown {
        // Asked for by a form, so that no link and no step back leads there.
        if let Address::Why(book) = address {
            return self.shown(address, screen::why(self, book));
        }
        if let Address::Pages(book) | Address::Page(book, _) = address {
            let pdf = self.pdf_order(book, form, visit);
            return Shown { pdf, ..self.shown(address, self.screen(address, visit)) };
        }
        let done = match address {
            Address::TakeIn => take_in::take_in(self, visit),
            Address::New => edit::begin(self, form, &visit.at),
            Address::Journal(book) => self.books.take_back(book, &form.one("take-back"), &visit.at),
            Address::Row(book, table, key) => {
                edit::put_row(self, &RowAt { book, table, key: key.as_deref() }, form, &visit.at)
            }
            Address::Count(book, survey) => edit::count(self, (book, survey), form, &visit.at),
            Address::Reading(reading) => in_hand::look(self, reading, form, &visit.at),
            Address::Answers(book) => answers::close_or_destroy(self, book, form, &visit.at),
            Address::Person(book, person) => {
                answers::answer(self, (book, person), None, form, &visit.at)
            }
            Address::Ask(book, person, number) => {
                let question = self.question(book, *number);
                answers::answer(self, (book, person), question.as_ref(), form, &visit.at)
            }
            Address::HandOut(book, batch) => {
                hand_out::hand_out(self, (book, batch), form, &visit.at)
            }
            _ => Err(NotDone::Nowhere),
        };
        match done {
            Ok(Done { book, keep, seal }) => {
                let saved = self.books.newly_saved();
                Shown { keep, seal, saved, ..self.after(address, form, book, visit) }
            }
            Err(NotDone::Nowhere) => self.shown(address, screen::nowhere(self, &visit.to)),
            Err(NotDone::AtFault(faults)) => {
                let tried = Some((form, &faults));
                let again = match address {
                    Address::New => screen::new(self, &visit.at, tried),
                    Address::Row(book, table, key) => {
                        screen::row(self, &RowAt { book, table, key: key.as_deref() }, tried)
                    }
                    Address::Reading(reading) => screen::reading(self, reading, Some(&faults)),
                    Address::Count(book, survey) => {
                        screen::count(self, book, survey, Some(&faults))
                    }
                    Address::Answers(book) => screen::serving(self, book, Some(&faults)),
                    Address::Ask(book, person, number) => {
                        screen::ask(self, (book, person, *number), Some(&faults))
                    }
                    _ => screen::at_fault(self, &faults),
                };
                self.shown(address, again)
            }
        }
    }

    /// The page that a form names, to be made a PDF elsewhere: it shows what the screen shows.
    fn pdf_order(&self, book: &str, form: &Form, visit: &Visit) -> Option<PdfOrder> {
        let file = self.file_with_answers(book)?;
        let page = form.one(screen::PAGE);
        Some(PdfOrder { page, now: visit.at.now, file, habits: visit.habits })
    }

    /// What is shown when an act was done: the rows of the table, the next look, or the outing.
    fn after(&self, done: &Address, form: &Form, book: String, visit: &Visit) -> Shown {
        let at = match done {
            Address::Reading(Reading { of, .. }) if form.says(in_hand::LOOKED) => {
                Address::Verdict(book, of.clone())
            }
            Address::Reading(reading) => {
                Address::Reading(Reading { look: None, ..reading.clone() })
            }
            Address::Journal(_) | Address::Count(..) | Address::HandOut(..) => done.clone(),
            Address::Answers(_) | Address::Person(..) => Address::Serving(book),
            Address::Ask(_, person, number) => match self.question(&book, number + 1) {
                Some(_) => Address::Ask(book, person.clone(), number + 1),
                None => Address::Person(book, person.clone()),
            },
            Address::Row(_, name, _) if table(name).is_some_and(|table| !table.is_single()) => {
                Address::Rows(book, name.clone())
            }
            _ => Address::Outing(book),
        };
        self.shown(&at, self.screen(&at, visit))
    }

    fn shown(&self, address: &Address, screen: Screen) -> Shown {
        let Screen { title, main } = screen;
        Shown { at: address.written(), title, main: main.into_string(), ..Shown::default() }
    }

    /// Asks the front door.
    pub(crate) fn ask(&self, request: Request) -> Result<Reply, Faults> {
        desk::device::answer(&self.world, request)
    }

    /// Reads an outing file.
    pub(crate) fn outing(&self, file: &InputFile) -> Result<Arc<Outing>, Faults> {
        self.world.outing(std::slice::from_ref(file))
    }

    /// Forgets what was worked out for earlier questions.
    pub(crate) fn forget(&self) {
        self.world.forget();
    }

    /// The plan of a book by itself: what people are asked hangs on what is made, and on nobody's
    /// answers. It is worked out again when the book changes.
    pub(crate) fn plan_without_answers(&self, book: &str) -> Option<Result<Rc<Plan>, Faults>> {
        let file = self.books.file(book)?;
        let of = ContentId::of(file.text.as_bytes());
        if let Some((known, plan)) = &*self.asked.borrow()
            && *known == of
            && plan.head.as_of.date() == self.today()
        {
            return Some(Ok(Rc::clone(plan)));
        }
        let plan = match self.ask(Request::Plan { files: vec![file], reasons: false }) {
            Ok(Reply::Plan(plan)) => Rc::from(plan),
            Ok(_) => return None,
            Err(faults) => return Some(Err(faults)),
        };
        self.asked.replace(Some((of, Rc::clone(&plan))));
        Some(Ok(plan))
    }

    /// A question that people of a book are asked, counted from one.
    pub(crate) fn question(&self, book: &str, number: usize) -> Option<Question> {
        let plan = self.plan_without_answers(book)?.ok()?;
        plan.intake.questions.get(number.checked_sub(1)?).map(|question| question.asks.clone())
    }

    /// The clock on the wall.
    pub(crate) fn now(&self) -> DateTime {
        self.world.now
    }

    /// The day on the wall.
    pub(crate) fn today(&self) -> Date {
        self.world.now.date()
    }

    /// What is known of a plant.
    pub(crate) fn sheet(&self, name: &str) -> Option<SheetReply> {
        match self.ask(Request::HerbalShow { name: name.to_owned() }) {
            Ok(Reply::HerbalShow(sheet)) => Some(*sheet),
            _ => None,
        }
    }

    /// What is known of each plant of a plan.
    pub(crate) fn sheets(&self, plan: &Plan) -> BTreeMap<String, SheetReply> {
        desk::sheets(&self.world, plan)
    }

    pub(crate) fn words(&self) -> Words<'_> {
        Words::new(&self.catalogue).with_herbal(self.world.herbal())
    }

    /// A message of the catalogue.
    pub(crate) fn word(&self, id: &str) -> String {
        self.catalogue.word(id)
    }

    /// What is known.
    pub(crate) fn herbal(&self) -> &Herbal {
        self.world.herbal()
    }

    /// A day in words.
    pub(crate) fn day(&self, day: Date) -> String {
        self.catalogue.say(&Text::new("app-day").with("day", day))
    }

    /// A moment in words.
    pub(crate) fn moment(&self, at: DateTime) -> String {
        let time = at.strftime("%H:%M").to_string();
        self.catalogue.say(&Text::new("app-moment").with("day", at.date()).with("time", time))
    }

    /// Whether there is such a message.
    pub(crate) fn has(&self, id: &str) -> bool {
        self.catalogue.has(id)
    }

    /// A message with what goes into it.
    pub(crate) fn say(&self, text: &Text) -> String {
        self.catalogue.say(text)
    }

    /// A message that counts.
    pub(crate) fn counted(&self, id: &str, count: usize) -> String {
        self.catalogue.say(&Text::new(id).with("count", count as u32))
    }
}
