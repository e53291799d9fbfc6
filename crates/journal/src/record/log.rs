//! A set of records that only grows.

use super::line::Line;
use super::{Act, Clock, Record, RecordId};
use ground::{Fault, Faults, Place};
use serde::Serialize;
use serde::de::DeserializeOwned;
use std::collections::{BTreeMap, BTreeSet};

/// The largest text that is read, as large as an outing file may be. A log that has outgrown it is
/// kept in several files, and these are read one by one and merged.
const MOST_BYTES: usize = 10_000_000;

/// Reading stops after so many faults: a text with more is no log, and its faults would fill the
/// memory of a phone.
const MOST_FAULTS: usize = 1000;

/// A set of records by identifier.
#[derive(Clone, Debug, PartialEq)]
pub struct Log<P> {
    lines: BTreeMap<RecordId, Line<P>>,
}

impl<P> Log<P> {
    /// An empty log.
    #[must_use]
    pub const fn new() -> Self {
        Self { lines: BTreeMap::new() }
    }

    /// How many records it holds, those taken back included.
    #[must_use]
    pub fn len(&self) -> usize {
        self.lines.len()
    }

    /// Whether it holds none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.lines.is_empty()
    }

    /// The record of this identifier.
    #[must_use]
    pub fn get(&self, id: &RecordId) -> Option<&Record<P>> {
        self.lines.get(id).map(|line| &line.record)
    }

    /// The record of this identifier as it is written: one of [`Log::lines`].
    #[must_use]
    pub fn line(&self, id: &RecordId) -> Option<&str> {
        self.lines.get(id).map(|line| line.text.as_str())
    }

    /// Every record, in the order of their clocks.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = &Record<P>> {
        self.in_order().into_iter().map(|line| &line.record)
    }

    /// Every record as it is written, in the order of their clocks: JSON lines, a record a line.
    ///
    /// A line begins with the version of this format; `sum` is the [`ground::ContentId`] of the text of
    /// `record`, so that a changed line is found by itself. There is no space between the tokens:
    ///
    /// ```text
    /// {"v":1,"sum":"…","record":{"id":"…","clock":{"ms":1809172800000,"count":0,"device":"phone"},
    /// "by":"maren","before":"…","what":{"say":…}}}
    /// ```
    ///
    /// `before` is the [`ground::ContentId`] of the whole line of the record that the same device wrote
    /// before. What was read is written again byte for byte.
    pub fn lines(&self) -> impl Iterator<Item = &str> {
        self.in_order().into_iter().map(|line| line.text.as_str())
    }

    /// What was said and stands, in the order of clocks.
    ///
    /// A taking-back counts against what is earlier than itself, and may be taken back in turn:
    /// then what it took back stands again.
    #[must_use]
    pub fn standing(&self) -> Vec<(&Record<P>, &P)> {
        let taken_back = self.taken_back();
        let said = self.iter().filter_map(|record| match &record.what {
            Act::Say(said) => Some((record, said)),
            Act::TakeBack { .. } => None,
        });
        said.filter(|(record, _)| !taken_back.contains(&record.id)).collect()
    }

    /// Every record that was taken back and does not stand.
    #[must_use]
    pub fn taken_back(&self) -> BTreeSet<RecordId> {
        let (mut later, mut taken_back) = (BTreeSet::new(), BTreeSet::new());
        // From the last to the first: whether a record stands is settled by later ones alone.
        for record in self.iter().rev() {
            later.insert(record.id);
            if let Act::TakeBack { of } = &record.what
                && !taken_back.contains(&record.id)
                && !later.contains(of)
            {
                taken_back.insert(*of);
            }
        }
        taken_back
    }

    /// The latest record that a device wrote.
    #[must_use]
    pub fn last_of(&self, device: &str) -> Option<&Record<P>> {
        self.last_line_of(device).map(|line| &line.record)
    }

    /// The lines in the order of clocks. Two records share a moment only where a device went on
    /// twice from one state, as after a restored copy: then their identifiers decide.
    pub(super) fn in_order(&self) -> Vec<&Line<P>> {
        let mut lines: Vec<_> = self.lines.values().collect();
        lines.sort_by(|a, b| a.moment().cmp(&b.moment()));
        lines
    }

    fn last_line_of(&self, device: &str) -> Option<&Line<P>> {
        let lines = self.lines.values().filter(|line| line.device() == device);
        lines.max_by_key(|line| line.moment())
    }

    fn latest(&self) -> Option<&Clock> {
        self.lines.values().map(|line| &line.record.clock).max()
    }

    /// Whether another record has this identifier.
    fn clashes(&self, line: &Line<P>) -> bool {
        self.lines.get(&line.record.id).is_some_and(|known| known.text != line.text)
    }
}

impl<P: Clone> Log<P> {
    /// Takes in every record of another log: their union.
    ///
    /// # Errors
    /// Every identifier under which the two hold different records. Then nothing was taken in.
    pub fn merge(&mut self, other: &Self) -> Result<(), Faults> {
        let clashing = other.lines.values().filter(|line| self.clashes(line));
        let faults: Faults = clashing.map(|line| taken(line, &Place::default())).collect();
        faults.or(())?;
        self.lines.extend(other.lines.iter().map(|(id, line)| (*id, line.clone())));
        Ok(())
    }
}

impl<P: Serialize + DeserializeOwned> Log<P> {
    /// Adds a record, later than everything that the log holds, and gives its identifier.
    ///
    /// The moment comes from the wall clock of the device, in Unix milliseconds; where that lags
    /// behind a record, however far, the moment counts on above the record. `random` is ten bytes
    /// from a generator fit for secrets.
    ///
    /// # Errors
    /// When the identifier is taken (the random bytes were not random), when the clock is at its
    /// end, or when what is said could not be read back. Then nothing was added.
    pub fn append(
        &mut self,
        device: &str,
        now_ms: i64,
        random: [u8; 10],
        by: &str,
        what: Act<P>,
    ) -> Result<RecordId, Fault> {
        let id = RecordId::new(now_ms, random);
        let at = Place::entry("record", &id.to_string(), "");
        let clock = Clock::after(self.latest(), now_ms, device)
            .ok_or_else(|| Fault::new("clock-at-its-end", at.clone(), device))?;
        let before = self.last_line_of(device).map(Line::hash);
        let line = Line::write(&Record { id, clock, by: by.to_owned(), before, what }, &at)?;
        self.take_in(line, &at)?;
        Ok(id)
    }

    /// Reads the lines of a log, those of one device or of many, in any order.
    ///
    /// # Errors
    /// A text of more than 10 MB or with nothing in it; otherwise every line that is broken, was
    /// changed, is of a newer version or has the identifier of another, up to a thousand.
    pub fn read(name: &str, text: &str) -> Result<Self, Faults> {
        let file = Place::default().in_file(name);
        if text.len() > MOST_BYTES {
            let fault = Fault::new("file-too-large", file, text.len().to_string());
            return Err(fault.with("most", MOST_BYTES).into());
        }
        if text.trim().is_empty() {
            return Err(Fault::new("empty-file", file, "").into());
        }
        let mut log = Self::new();
        let mut faults = Faults::none();
        let lines = (1_u32..).zip(text.lines()).filter(|(_, line)| !line.trim().is_empty());
        for (number, line) in lines {
            let at = file.clone().at(number, 1);
            faults.note(log.read_line(line, &at));
            if faults.iter().len() == MOST_FAULTS {
                break;
            }
        }
        faults.or(log)
    }

    /// Takes in one line, as [`Log::lines`] writes it, that stands at this place; whether it was new.
    ///
    /// # Errors
    /// When it is broken, was changed, is of a newer version or has the identifier of another.
    pub fn read_line(&mut self, text: &str, at: &Place) -> Result<bool, Fault> {
        self.take_in(Line::read(text, at)?, at)
    }

    fn take_in(&mut self, line: Line<P>, at: &Place) -> Result<bool, Fault> {
        if self.clashes(&line) {
            return Err(taken(&line, at));
        }
        Ok(self.lines.insert(line.record.id, line).is_none())
    }
}

impl<P> Default for Log<P> {
    fn default() -> Self {
        Self::new()
    }
}

fn taken<P>(line: &Line<P>, at: &Place) -> Fault {
    Fault::new("record-id-taken", at.clone(), line.record.id.to_string())
}
