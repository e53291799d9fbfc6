//! What people said of themselves: kept under a passphrase, apart from the books, and never handed on.
//!
//! The browser keeps each person's answers enciphered and hands them over only after somebody gave the
//! passphrase. A change replaces what was said before: nothing of it stays.

use crate::App;
use crate::books::{Done, NotDone, day_of};
use crate::flags;
use crate::visit::{Form, Kept, Moment};
use desk::{Cell, InputFile, TableRow, write};
use dose::Question;
use ground::{Fault, Faults, Place};
use jiff::civil::{Date, DateTime};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// The table of an outing file that holds them.
pub(crate) const ANSWERS: &str = "answers";
/// The field of a form that says what somebody answered.
pub(crate) const SAID: &str = "said";
/// The field of a form by which a person says that nothing has changed since.
pub(crate) const UNCHANGED: &str = "unchanged";
/// What the browser says of a passphrase that was given.
pub(crate) const OPENED: &str = "opened";
/// The field of a form that destroys the answers: of this person, or of everybody.
pub(crate) const DESTROY: &str = "destroy";
/// The field of a form that leaves flags for a device without the answers.
pub(crate) const FLAGS: &str = "flags";
/// The field of a form that closes the answers again.
pub(crate) const CLOSE: &str = "close";

/// Answers that are open, book by book.
#[derive(Default)]
pub(crate) struct Answers(BTreeMap<String, BTreeMap<String, Said>>);

/// What one person said, and when they were last asked.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Said {
    pub(crate) row: TableRow,
    pub(crate) asked: DateTime,
}

impl Answers {
    /// Takes in what the browser deciphered: all that there is of a book.
    pub(crate) fn open(&mut self, book: &str, lines: &[String]) {
        // What cannot be read counts as not said.
        let all = lines.iter().filter_map(|line| serde_json::from_str::<Said>(line).ok());
        let all = all.map(|said| (said.row.key.clone(), said)).collect();
        self.0.insert(book.to_owned(), all);
    }

    /// What one person said; none while that is closed.
    pub(crate) fn by(&self, book: &str, person: &str) -> Option<&Said> {
        self.of(book)?.get(person)
    }

    /// What people of a book said, by their short names; none while it is closed.
    pub(crate) fn of(&self, book: &str) -> Option<&BTreeMap<String, Said>> {
        self.0.get(book)
    }
}

impl App {
    /// A book as an outing file, with what people said where that is open and still holds.
    pub(crate) fn file_with_answers(&self, book: &str) -> Option<InputFile> {
        let mut rows = self.books.rows(book)?.to_vec();
        if !lapsed(&rows, self.today()) {
            let said = self.answers.of(book).into_iter().flat_map(BTreeMap::values);
            let here = said.filter(|said| comes(&rows, &said.row.key));
            let here: Vec<_> = here.map(|said| said.row.clone()).collect();
            rows.extend(here);
        }
        Some(write("outing.toml", &rows))
    }

    /// Closes the answers of a book, with everything that was worked out from them.
    pub(crate) fn forget_answers(&mut self, book: &str) {
        self.answers.0.remove(book);
        self.forget();
    }
}

/// Whether the outing lies before this day, or on none: what people said holds for its day alone.
pub(crate) fn lapsed(rows: &[TableRow], today: Date) -> bool {
    day_of(rows).is_none_or(|day| day < today)
}

fn comes(rows: &[TableRow], person: &str) -> bool {
    rows.iter().any(|row| row.table == "participant" && row.key == person)
}

/// Closes the answers of a book, destroys those of everybody, or leaves flags of them.
pub(crate) fn close_or_destroy(
    app: &mut App,
    book: &str,
    form: &Form,
    at: &Moment,
) -> Result<Done, NotDone> {
    if form.says(FLAGS) {
        return flags::take_along(app, book, at);
    }
    match form.one(OPENED).as_str() {
        "" | "yes" => {}
        "short" => return Err(Fault::new("app-passphrase-short", Place::default(), "").into()),
        _ => return Err(Fault::new("app-passphrase-wrong", Place::default(), "").into()),
    }
    if form.says(DESTROY) {
        let done = flags::lapse(app, book, None, at)?;
        app.forget_answers(book);
        return Ok(done.erasing(None));
    }
    let done = Done::nothing(book);
    if form.says(CLOSE) {
        app.forget_answers(book);
        return Ok(done.closing());
    }
    Ok(done)
}

/// Writes down what a person answered to a question, or that nothing has changed since, or destroys
/// what they said.
pub(crate) fn answer(
    app: &mut App,
    (book, person): (&str, &str),
    question: Option<&Question>,
    form: &Form,
    at: &Moment,
) -> Result<Done, NotDone> {
    let mut rows = app.books.rows(book).ok_or(NotDone::Nowhere)?.to_vec();
    let before = app.answers.of(book).ok_or(NotDone::Nowhere)?.get(person).cloned();
    if form.says(DESTROY) {
        let done = flags::lapse(app, book, Some(person), at)?;
        app.answers.0.entry(book.to_owned()).or_default().remove(person);
        app.forget();
        return Ok(done.erasing(Some(person)));
    }
    if !comes(&rows, person) || lapsed(&rows, at.now.date()) {
        return Err(NotDone::Nowhere);
    }
    let mut said = match question {
        // Nothing can have changed of what nobody said.
        None if !form.says(UNCHANGED) || before.is_none() => return Err(NotDone::Nowhere),
        _ => before.unwrap_or_else(|| Said::nothing(person)),
    };
    said.asked = at.now;
    if let Some(question) = question {
        put(&mut said.row.cells, question, form.one(SAID).trim())?;
    }
    rows.push(said.row.clone());
    app.stands(&rows, &said.row)?;
    // A flag that rests on what was said before holds no longer, whatever was said now.
    let mut done = match question {
        Some(_) => flags::lapse(app, book, Some(person), at)?,
        None => Done::nothing(book),
    };
    // A tree of words always writes.
    let line = serde_json::to_string(&said).unwrap_or_default();
    app.answers.0.entry(book.to_owned()).or_default().insert(person.to_owned(), said);
    done.keep.push(Kept { book: book.to_owned(), line, seal: Some(person.to_owned()) });
    Ok(done)
}

impl Said {
    fn nothing(person: &str) -> Self {
        let cells = [("participant".to_owned(), Cell::Words(person.to_owned()))];
        let row = TableRow { key: person.to_owned(), ..TableRow::new(ANSWERS, cells.into()) };
        Self { row, asked: DateTime::default() }
    }

    /// What was said to a question; none where it is open.
    pub(crate) fn to(&self, question: &Question) -> Option<String> {
        let cell = match question {
            Question::Age => self.row.cells.get("age"),
            Question::BodyMass => self.row.cells.get("weight"),
            Question::Condition(condition) => match self.row.cells.get(SAID) {
                Some(Cell::Table(said)) => said.get(condition.word()),
                _ => None,
            },
            Question::Stage { .. } => None,
        };
        cell.map(|cell| crate::fields::said(cell).join(", "))
    }
}

/// Puts what was said where the outing file has it. Not knowing a number, or not telling it, leaves none.
fn put(cells: &mut BTreeMap<String, Cell>, question: &Question, said: &str) -> Result<(), Faults> {
    let unread = |field| Fault::new("app-not-read", Place::entry(ANSWERS, "", field), said);
    if said.is_empty() {
        return Err(Fault::new("app-nothing-said", Place::default(), "").into());
    }
    let (field, cell) = match question {
        Question::Age if UNSAID.contains(&said) => ("age", None),
        Question::BodyMass if UNSAID.contains(&said) => ("weight", None),
        Question::Age => {
            let years = said.parse().map_err(|_| unread("age"))?;
            ("age", Some(Cell::Whole(years)))
        }
        Question::BodyMass => ("weight", Some(Cell::Words(said.to_owned()))),
        Question::Condition(condition) => {
            let answers = cells.entry(SAID.to_owned()).or_insert(Cell::Table(BTreeMap::new()));
            if let Cell::Table(answers) = answers {
                answers.insert(condition.word().to_owned(), Cell::Words(said.to_owned()));
            }
            return Ok(());
        }
        Question::Stage { .. } => return Ok(()),
    };
    match cell {
        Some(cell) => cells.insert(field.to_owned(), cell),
        None => cells.remove(field),
    };
    Ok(())
}

/// What leaves a question open, in the words of the outing file.
pub(crate) const UNSAID: [&str; 2] = ["unanswered", "rather-not"];
