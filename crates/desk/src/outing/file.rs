//! A file as it arrives: bytes with a name, and the tools that turn its words into quantities and
//! its slips into faults with line and column.

use super::tree::{self, Unread};
use ground::{
    AlcoholByVolume, Amount, Area, Dimension, Duration, Fault, Faults, Finite, Length, Mass,
    MassFraction, MeasureSystem, Place, Spoken, Substance, Text, Volume,
};
use jiff::civil::{Date, DateTime, Time};
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use std::ops::Range;
use std::str::FromStr;
use toml::Spanned;
use toml::value::Datetime;

/// The largest file that is read.
pub const MOST_BYTES: usize = 10_000_000;

/// A file as it arrives.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct InputFile {
    /// Its name, as faults give it.
    pub name: String,
    /// Its content.
    pub text: String,
}

impl InputFile {
    /// A file from its bytes.
    ///
    /// # Errors
    /// When it is larger than [`MOST_BYTES`], is not UTF-8 (the fault says where it stops being so),
    /// or holds nothing.
    pub fn from_bytes(name: &str, bytes: Vec<u8>) -> Result<Self, Fault> {
        let place = || Place::default().in_file(name);
        if bytes.len() > MOST_BYTES {
            let fault = Fault::new("file-too-large", place(), bytes.len().to_string());
            return Err(fault.with("most", MOST_BYTES));
        }
        let text = String::from_utf8(bytes).map_err(|error| {
            let readable = error.utf8_error().valid_up_to();
            let before = error.as_bytes().get(..readable).unwrap_or_default();
            let (line, column) = Place::line_and_column(&String::from_utf8_lossy(before), readable);
            Fault::new("not-utf-8", place().at(line, column), error.utf8_error().to_string())
        })?;
        if text.trim().is_empty() {
            return Err(Fault::new("empty-file", place(), ""));
        }
        Ok(Self { name: name.to_owned(), text })
    }
}

/// A word or an amount, with the place where it stands.
pub(crate) type Said = Spanned<String>;

/// One file being read: where its faults lie.
pub(crate) struct Source<'a> {
    pub(crate) name: &'a str,
    pub(crate) text: &'a str,
}

impl<'a> Source<'a> {
    pub(crate) fn of(file: &'a InputFile) -> Self {
        Self { name: &file.name, text: &file.text }
    }

    /// The file as tables of this shape.
    pub(crate) fn parse<T: DeserializeOwned>(&self) -> Result<T, Fault> {
        tree::read(self.text).map_err(|error| self.unreadable(&error))
    }

    /// That it is no outing file.
    pub(crate) fn unreadable(&self, error: &Unread) -> Fault {
        let span = error.span.clone().unwrap_or(0..0);
        Fault::new("unreadable-outing", self.place(&span), error.message.as_str())
    }

    /// The place of a byte range.
    pub(crate) fn place(&self, span: &Range<usize>) -> Place {
        let (line, column) = Place::line_and_column(self.text, span.start);
        Place::default().in_file(self.name).at(line, column)
    }
}

/// One entry of one table being read: its words become quantities, its slips become faults.
pub(crate) struct Row<'a> {
    source: &'a Source<'a>,
    kitchen: Option<MeasureSystem>,
    table: &'static str,
    entry: String,
    faults: &'a mut Faults,
}

impl<'a> Row<'a> {
    pub(crate) fn new(
        source: &'a Source<'a>,
        kitchen: Option<MeasureSystem>,
        table: &'static str,
        entry: &str,
        faults: &'a mut Faults,
    ) -> Self {
        Self { source, kitchen, table, entry: entry.to_owned(), faults }
    }

    /// Notes a fault in a field.
    pub(crate) fn fault(&mut self, code: &str, field: &str, said: &Said) {
        let fault = self.make_fault(code, field, &said.span(), said.get_ref());
        self.faults.add(fault);
    }

    /// Notes a fault in a field, with something more for its sentences.
    pub(crate) fn fault_with(
        &mut self,
        code: &str,
        field: &str,
        said: &Said,
        more: (&str, impl Into<ground::Arg>),
    ) {
        let fault = self.make_fault(code, field, &said.span(), said.get_ref());
        self.faults.add(fault.with(more.0, more.1));
    }

    /// Notes a name that nothing has, with those that there are.
    pub(crate) fn no_such_name(&mut self, field: &str, said: &Said, list: Vec<ground::Arg>) {
        let fault = self.make_fault("no-such-name", field, &said.span(), said.get_ref());
        self.faults.add(fault.with("count", list.len()).with("list", list));
    }

    /// Notes a fault that was made elsewhere.
    pub(crate) fn add(&mut self, fault: Fault) {
        self.faults.add(fault);
    }

    /// The place of a field.
    pub(crate) fn place(&self, field: &str, span: &Range<usize>) -> Place {
        let named = |word: &str| (!word.is_empty()).then(|| word.to_owned());
        Place {
            table: named(self.table),
            entry: named(&self.entry),
            field: named(field),
            ..self.source.place(span)
        }
    }

    fn make_fault(&self, code: &str, field: &str, span: &Range<usize>, got: &str) -> Fault {
        Fault::new(code, self.place(field, span), got)
    }

    /// A word of a closed list.
    pub(crate) fn word<T: FromStr<Err = String>>(&mut self, field: &str, said: &Said) -> Option<T> {
        match said.get_ref().parse() {
            Ok(word) => Some(word),
            Err(list) => {
                self.fault_with("unknown-word", field, said, ("known", list));
                None
            }
        }
    }

    /// An amount as it was said, whose unit somebody else will ask for.
    pub(crate) fn spoken(&mut self, field: &str, said: &Said) -> Option<Spoken> {
        let read: Result<Spoken, String> = said.get_ref().parse();
        let negative = read.as_ref().is_ok_and(|spoken| spoken.amount.low < 0.0);
        match read {
            Ok(_) if negative => {
                self.fault_with("amount-out-of-range", field, said, ("most", "1e9"));
                None
            }
            Ok(spoken) => Some(spoken),
            Err(why) => {
                self.fault_with("unreadable-amount", field, said, ("why", why));
                None
            }
        }
    }

    /// An amount as it was said, in a unit that fits.
    pub(crate) fn spoken_as(
        &mut self,
        field: &str,
        said: &Said,
        fits: impl FnOnce(&Spoken) -> bool,
    ) -> Option<Spoken> {
        let spoken = self.spoken(field, said)?;
        if fits(&spoken) {
            return Some(spoken);
        }
        self.fault_with("unit-does-not-fit", field, said, ("why", other_dimension(&spoken)));
        None
    }

    /// An amount in the base unit of a dimension, from zero up to a most.
    pub(crate) fn amount(
        &mut self,
        field: &str,
        said: &Said,
        dimension: Dimension,
        most: f64,
    ) -> Option<Amount> {
        let spoken: Spoken = match said.get_ref().parse() {
            Ok(spoken) => spoken,
            Err(why) => {
                self.fault_with("unreadable-amount", field, said, ("why", why));
                return None;
            }
        };
        match spoken.resolve(dimension, self.kitchen) {
            Err(refusal) => {
                self.fault_with("unit-does-not-fit", field, said, ("why", refusal.why));
                None
            }
            Ok(amount) if amount.low < 0.0 || amount.high > most => {
                self.fault_with("amount-out-of-range", field, said, ("most", most.to_string()));
                None
            }
            Ok(amount) => Some(amount),
        }
    }

    /// An amount that must be a single number.
    fn single(&mut self, field: &str, said: &Said, of: Dimension, most: f64) -> Option<f64> {
        let amount = self.amount(field, said, of, most)?;
        if amount.is_exact() {
            return Some(amount.low);
        }
        self.fault("one-number-wanted", field, said);
        None
    }

    /// A mass; up to a tonne.
    pub(crate) fn mass<S: Substance>(&mut self, field: &str, said: &Said) -> Option<Mass<S>> {
        self.single(field, said, Dimension::Mass, 1e6).map(Mass::from_g)
    }

    /// A volume; up to a cubic metre.
    pub(crate) fn volume(&mut self, field: &str, said: &Said) -> Option<Volume> {
        self.single(field, said, Dimension::Volume, 1e6).map(Volume::from_ml)
    }

    /// A length; up to a thousand kilometres.
    pub(crate) fn length(&mut self, field: &str, said: &Said) -> Option<Length> {
        self.single(field, said, Dimension::Length, 1e9).map(Length::from_mm)
    }

    /// An area; up to ten thousand hectares.
    pub(crate) fn area(&mut self, field: &str, said: &Said) -> Option<Area> {
        self.single(field, said, Dimension::Area, 1e8).map(Area::from_m2)
    }

    /// A length of time; up to a year.
    pub(crate) fn duration(&mut self, field: &str, said: &Said) -> Option<Duration> {
        self.single(field, said, Dimension::Duration, 527_040.0).map(Duration::from_minutes)
    }

    /// A strength by volume.
    pub(crate) fn strength(&mut self, field: &str, said: &Said) -> Option<AlcoholByVolume> {
        let share = self.single(field, said, Dimension::AlcoholShare, 1.0)?;
        Some(AlcoholByVolume::from_percent(100.0 * share))
    }

    /// A share of a mass, such as moisture, as its two ends; `82 %` and `82 % mass` both serve.
    pub(crate) fn share(
        &mut self,
        field: &str,
        said: &Said,
    ) -> Option<(MassFraction, MassFraction)> {
        let plain = said.get_ref().trim_end().ends_with('%');
        let dimension = if plain { Dimension::Number } else { Dimension::MassShare };
        let amount = self.amount(field, said, dimension, 1.0)?;
        Some((MassFraction::from_share(amount.low), MassFraction::from_share(amount.high)))
    }

    /// A day.
    pub(crate) fn date(&mut self, field: &str, said: &Spanned<Datetime>) -> Option<Date> {
        self.parsed(field, said, "no-such-day")
    }

    /// A day with a time.
    pub(crate) fn moment(&mut self, field: &str, said: &Spanned<Datetime>) -> Option<DateTime> {
        self.parsed(field, said, "no-such-moment")
    }

    /// A time of day, such as `10:30`.
    pub(crate) fn time(&mut self, field: &str, said: &Said) -> Option<Time> {
        let parsed = Time::strptime("%H:%M", said.get_ref());
        if parsed.is_err() {
            self.fault("no-such-time", field, said);
        }
        parsed.ok()
    }

    fn parsed<T: FromStr>(
        &mut self,
        field: &str,
        said: &Spanned<Datetime>,
        code: &str,
    ) -> Option<T> {
        let written = said.get_ref().to_string();
        if let Ok(parsed) = written.parse() {
            return Some(parsed);
        }
        let fault = self.make_fault(code, field, &said.span(), &written);
        self.faults.add(fault);
        None
    }

    /// A number of degrees between two ends.
    pub(crate) fn degrees(&mut self, field: &str, said: &Spanned<f64>, most: f64) -> Option<f64> {
        let value = *said.get_ref();
        let fits = Finite::new(value).is_some() && value.abs() <= most;
        if !fits {
            let fault = self.make_fault("no-such-place", field, &said.span(), &value.to_string());
            self.faults.add(fault.with("most", most.to_string()));
        }
        fits.then_some(value)
    }
}

/// That a unit measures something else than what is asked for.
pub(crate) fn other_dimension(said: &Spoken) -> Text {
    Text::new("refused-other-dimension").with("written", said.written.as_str())
}
