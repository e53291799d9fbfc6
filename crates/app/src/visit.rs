//! What goes in and comes out.

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use desk::InputFile;
use ground::{ContentId, Fault, Place};
use jiff::civil::DateTime;
use page::Habits;
use serde::{Deserialize, Serialize};

/// What the browser tells.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Message {
    /// Lines that were kept: all of them at the start, later what another window added.
    Kept {
        /// The name of this device.
        device: String,
        /// The lines.
        lines: Vec<Kept>,
        /// How much of each book was handed out before.
        #[serde(default)]
        saved: Vec<Saved>,
    },
    /// What people said of themselves in an outing, deciphered; none once that was closed.
    Opened {
        /// The book.
        book: String,
        /// A line for each person.
        lines: Option<Vec<String>>,
    },
    /// A tap.
    Visit(Visit),
}

/// A line of a book.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Kept {
    /// The book.
    pub book: String,
    /// The record.
    pub line: String,
    /// Whose answers these are: they are kept enciphered, in the place of what that person said before.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub seal: Option<String>,
}

impl Kept {
    /// A line of a log.
    pub(crate) fn plain(book: &str, line: String) -> Self {
        Self { book: book.to_owned(), line, seal: None }
    }
}

/// How many of the records that this device wrote in a book were handed out, or came back from elsewhere.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Saved {
    /// The book.
    pub book: String,
    /// Records, from the first on.
    pub records: usize,
}

/// What becomes of the answers of a book.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum SealAct {
    /// They are locked: whoever wants them gives the passphrase.
    Close {
        /// The book.
        book: String,
    },
    /// They are destroyed: of one person, or of everybody together with the key.
    Destroy {
        /// The book.
        book: String,
        /// The person.
        seal: Option<String>,
    },
}

/// One tap: an address, and what a form said.
#[derive(Clone, Debug, Default, Serialize, Deserialize)]
pub struct Visit {
    /// The address after the `#`, such as `/herbal/Urtica%20dioica`.
    pub to: String,
    /// When.
    #[serde(flatten)]
    pub at: Moment,
    /// What a form said; none where a link was followed.
    #[serde(default)]
    pub form: Option<Form>,
    /// The anchor of the working that is to be opened on the screen: it alone is shown then.
    #[serde(default)]
    pub opens: Option<String>,
    /// The files that were chosen in it.
    #[serde(default)]
    pub files: Vec<ChosenFile>,
    /// By which measures and in which order of dates the reader is used to read.
    #[serde(default)]
    pub habits: Habits,
}

/// A file as somebody chose it, before it is known to be text.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct ChosenFile {
    /// Its name.
    pub name: String,
    /// Its bytes in Base64 (RFC 4648, section 4).
    pub base64: String,
}

impl ChosenFile {
    /// The file as text.
    ///
    /// # Errors
    /// When it is no text, is empty, or is larger than any outing.
    pub(crate) fn text(&self) -> Result<InputFile, Fault> {
        let unreadable = |_| Fault::new("app-no-message", Place::default(), self.name.as_str());
        InputFile::from_bytes(&self.name, STANDARD.decode(&self.base64).map_err(unreadable)?)
    }
}

/// A moment as a device knows it, and randomness for what is written down at it.
#[derive(Clone, Debug, Default, Serialize, Deserialize)]
pub struct Moment {
    /// The clock on the wall.
    pub now: DateTime,
    /// The same in Unix milliseconds.
    pub ms: i64,
    /// The time zone of the device, by its standard name.
    #[serde(default)]
    pub zone: String,
    /// Letters from a generator fit for secrets.
    pub seed: String,
}

impl Moment {
    /// A moment in Unix milliseconds, as this clock on the wall would have shown it.
    pub(crate) fn wall(&self, ms: i64) -> DateTime {
        let since = jiff::SignedDuration::from_millis(ms.saturating_sub(self.ms));
        self.now.saturating_add(since)
    }

    /// Ten random bytes for the record that is written at this moment.
    pub(crate) fn random(&self) -> [u8; 10] {
        let hash = ContentId::of(self.seed.as_bytes()).to_string();
        let digit = |at: usize| hash.chars().nth(at).and_then(|digit| digit.to_digit(16));
        std::array::from_fn(|at| {
            let byte = digit(2 * at).unwrap_or(0) * 16 + digit(2 * at + 1).unwrap_or(0);
            u8::try_from(byte).unwrap_or(u8::MAX)
        })
    }
}

/// The fields of a form in their order; one with several answers stands several times.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Form(pub Vec<(String, String)>);

impl Form {
    /// Everything that a field says.
    pub(crate) fn all(&self, field: &str) -> Vec<&str> {
        let said = self.0.iter().filter(|(name, _)| name == field);
        said.map(|(_, said)| said.as_str()).collect()
    }

    /// What a field says first.
    pub(crate) fn one(&self, field: &str) -> String {
        self.all(field).first().copied().unwrap_or_default().to_owned()
    }

    /// Whether a field says anything.
    pub(crate) fn says(&self, field: &str) -> bool {
        self.all(field).iter().any(|said| !said.is_empty())
    }
}

/// A page that is to become a PDF, as the program that serves the app takes it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PdfOrder {
    /// The name of the page.
    pub page: String,
    /// The moment for which it is worked out.
    pub now: DateTime,
    /// The outing; what people said of themselves is in it only while that is open.
    pub file: InputFile,
    /// What its reader is used to.
    #[serde(default)]
    pub habits: Habits,
}

/// A screen.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Shown {
    /// Its address, which a form may have changed.
    pub at: String,
    /// Its title.
    pub title: String,
    /// What stands in `main`, as HTML; where a working was opened, what belongs there.
    pub main: String,
    /// Nothing is shown: the herbal has to be read first.
    #[serde(skip_serializing_if = "is_false")]
    pub unread: bool,
    /// Lines to keep before it may be shown.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub keep: Vec<Kept>,
    /// What lies elsewhere now, too.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub saved: Option<Saved>,
    /// What to do first with answers.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub seal: Option<SealAct>,
    /// A file to hand out with it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub file: Option<InputFile>,
    /// What to ask a PDF of.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pdf: Option<PdfOrder>,
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde asks so")]
fn is_false(it: &bool) -> bool {
    !it
}
