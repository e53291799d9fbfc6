//! Addresses: what stands after the `#`, and the screen it leads to.

use crate::visit::Form;
use std::fmt::Write as _;

/// Where a screen lies.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Address {
    /// The first screen.
    Home,
    /// Where files are taken in.
    TakeIn,
    /// One outing.
    Outing(String),
    /// The form that an outing begins with.
    New,
    /// The rows of a table of an outing.
    Rows(String, String),
    /// The form of one of them, or of one to come.
    Row(String, String, Option<String>),
    /// The form of a row to come, of which one field is known.
    RowWith(String, String, (String, String)),
    /// What was written down of an outing, and where entries are taken back.
    Journal(String),
    /// The plants in hand at its stands, and who reads them.
    InHand(String),
    /// What one reader sees of one of them.
    Reading(Reading),
    /// What it is, by all that was read.
    Verdict(String, Specimen),
    /// The plots of a survey, counted one after the other.
    Count(String, String),
    /// How much may go from each stand.
    Allowance(String),
    /// What came in.
    Basket(String),
    /// What is made of it.
    Kitchen(String),
    /// One of its wishes, by the stove.
    Make(String, String),
    /// A preparation by itself, as a form says it.
    WorkOut(Form),
    /// Who may have what of it.
    Serving(String),
    /// What people said of themselves, where it is opened, closed and destroyed.
    Answers(String),
    /// What one person said.
    Person(String, String),
    /// One question to one person, by its number.
    Ask(String, String, usize),
    /// Why, for the leader alone.
    Why(String),
    /// Who is handed what of a batch.
    HandOut(String, String),
    /// Its plan.
    Plan(String),
    /// Its pages for paper.
    Pages(String),
    /// One of them.
    Page(String, String),
    /// The emergency card of the outing of today.
    Emergency,
    /// The outing as a file.
    OutingFile(String),
    /// Its records as a file.
    Records(String),
    /// The plants, or those whose names fit.
    Herbal(String),
    /// What is known of one plant.
    Plant(String),
    /// Two plants side by side.
    Compare(String, String),
    /// Nothing lies there.
    Nowhere(String),
}

/// A plant in hand, and where it was picked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Specimen {
    pub(crate) stand: String,
    pub(crate) name: String,
}

/// One reader before one plant in hand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Reading {
    pub(crate) book: String,
    pub(crate) of: Specimen,
    pub(crate) reader: String,
    /// The character that is looked at; none: whatever is best looked at next.
    pub(crate) look: Option<String>,
}

impl Specimen {
    fn new(stand: &str, name: &str) -> Self {
        Self { stand: stand.to_owned(), name: name.to_owned() }
    }

    fn written(&self, book: &str) -> String {
        format!(
            "/outing/{}/in-hand/{}/{}",
            escaped(book),
            escaped(&self.stand),
            escaped(&self.name)
        )
    }
}

impl Address {
    /// The form of a row to come.
    pub(crate) fn of_new(book: &str, table: &str) -> Self {
        Self::Row(book.to_owned(), table.to_owned(), None)
    }

    /// Reads an address. `?` begins what a form of search said.
    pub(crate) fn read(said: &str) -> Self {
        let path = said.split('?').next().unwrap_or_default();
        let steps: Vec<_> = path.split('/').filter(|step| !step.is_empty()).map(plain).collect();
        let steps: Vec<_> = steps.iter().map(String::as_str).collect();
        match steps.as_slice() {
            [] => Self::Home,
            ["take-in"] => Self::TakeIn,
            ["outing", book] => Self::Outing((*book).to_owned()),
            ["new"] => Self::New,
            ["outing", book, "rows", table] => Self::Rows((*book).to_owned(), (*table).to_owned()),
            ["outing", book, "new", table] => {
                Self::Row((*book).to_owned(), (*table).to_owned(), None)
            }
            ["outing", book, "new", table, field, said] => {
                let with = ((*field).to_owned(), (*said).to_owned());
                Self::RowWith((*book).to_owned(), (*table).to_owned(), with)
            }
            ["outing", book, "row", table, rest @ ..] => {
                let key = rest.first().copied().unwrap_or_default().to_owned();
                Self::Row((*book).to_owned(), (*table).to_owned(), Some(key))
            }
            ["outing", book, "journal"] => Self::Journal((*book).to_owned()),
            ["outing", book, "in-hand"] => Self::InHand((*book).to_owned()),
            ["outing", book, "in-hand", stand, name] => {
                Self::Verdict((*book).to_owned(), Specimen::new(stand, name))
            }
            ["outing", book, "in-hand", stand, name, reader] => Self::Reading(Reading {
                book: (*book).to_owned(),
                of: Specimen::new(stand, name),
                reader: (*reader).to_owned(),
                look: asked(said, "look"),
            }),
            ["outing", book, "count", survey] => {
                Self::Count((*book).to_owned(), (*survey).to_owned())
            }
            ["outing", book, "allowance"] => Self::Allowance((*book).to_owned()),
            ["outing", book, "basket"] => Self::Basket((*book).to_owned()),
            ["outing", book, "kitchen"] => Self::Kitchen((*book).to_owned()),
            ["outing", book, "kitchen", wish] => Self::Make((*book).to_owned(), (*wish).to_owned()),
            ["work-out"] => Self::WorkOut(Form(all_asked(said))),
            ["outing", book, "serving"] => Self::Serving((*book).to_owned()),
            ["outing", book, "answers"] => Self::Answers((*book).to_owned()),
            ["outing", book, "answers", person] => {
                Self::Person((*book).to_owned(), (*person).to_owned())
            }
            ["outing", book, "answers", person, number] => match number.parse() {
                Ok(number) => Self::Ask((*book).to_owned(), (*person).to_owned(), number),
                Err(_) => Self::Nowhere(said.to_owned()),
            },
            ["outing", book, "why"] => Self::Why((*book).to_owned()),
            ["outing", book, "hand-out", batch] => {
                Self::HandOut((*book).to_owned(), (*batch).to_owned())
            }
            ["outing", book, "plan"] => Self::Plan((*book).to_owned()),
            ["outing", book, "pages"] => Self::Pages((*book).to_owned()),
            ["outing", book, "pages", name] => Self::Page((*book).to_owned(), (*name).to_owned()),
            ["outing", book, "file"] => Self::OutingFile((*book).to_owned()),
            ["outing", book, "records"] => Self::Records((*book).to_owned()),
            ["emergency"] => Self::Emergency,
            ["herbal"] => Self::Herbal(asked(said, "words").unwrap_or_default()),
            ["herbal", name] => Self::Plant((*name).to_owned()),
            ["compare", one, other] => Self::Compare((*one).to_owned(), (*other).to_owned()),
            _ => Self::Nowhere(said.to_owned()),
        }
    }

    /// The address in writing.
    pub(crate) fn written(&self) -> String {
        match self {
            Self::Home => "/".to_owned(),
            Self::TakeIn => "/take-in".to_owned(),
            Self::Outing(book) => format!("/outing/{}", escaped(book)),
            Self::New => "/new".to_owned(),
            Self::Rows(book, table) => format!("/outing/{}/rows/{}", escaped(book), escaped(table)),
            Self::Row(book, table, None) => {
                format!("/outing/{}/new/{}", escaped(book), escaped(table))
            }
            Self::Row(book, table, Some(key)) => {
                format!("/outing/{}/row/{}/{}", escaped(book), escaped(table), escaped(key))
            }
            Self::Journal(book) => format!("/outing/{}/journal", escaped(book)),
            Self::InHand(book) => format!("/outing/{}/in-hand", escaped(book)),
            Self::Verdict(book, of) => of.written(book),
            Self::Reading(Reading { book, of, reader, look }) => {
                let look = look.as_ref().map(|look| format!("?look={}", escaped(look)));
                format!("{}/{}{}", of.written(book), escaped(reader), look.unwrap_or_default())
            }
            Self::Count(book, survey) => {
                format!("/outing/{}/count/{}", escaped(book), escaped(survey))
            }
            Self::Allowance(book) => format!("/outing/{}/allowance", escaped(book)),
            Self::RowWith(book, table, (field, said)) => {
                let (book, table) = (escaped(book), escaped(table));
                format!("/outing/{book}/new/{table}/{}/{}", escaped(field), escaped(said))
            }
            Self::Basket(book) => format!("/outing/{}/basket", escaped(book)),
            Self::Kitchen(book) => format!("/outing/{}/kitchen", escaped(book)),
            Self::Make(book, wish) => {
                format!("/outing/{}/kitchen/{}", escaped(book), escaped(wish))
            }
            Self::WorkOut(form) => {
                let pair = |(name, said): &(String, String)| {
                    format!("{}={}", escaped(name), escaped(said))
                };
                let pairs: Vec<_> = form.0.iter().map(pair).collect();
                let mark = if pairs.is_empty() { "" } else { "?" };
                format!("/work-out{mark}{}", pairs.join("&"))
            }
            Self::Serving(book) => format!("/outing/{}/serving", escaped(book)),
            Self::Answers(book) => format!("/outing/{}/answers", escaped(book)),
            Self::Person(book, person) => {
                format!("/outing/{}/answers/{}", escaped(book), escaped(person))
            }
            Self::Ask(book, person, number) => {
                format!("/outing/{}/answers/{}/{number}", escaped(book), escaped(person))
            }
            Self::Why(book) => format!("/outing/{}/why", escaped(book)),
            Self::HandOut(book, batch) => {
                format!("/outing/{}/hand-out/{}", escaped(book), escaped(batch))
            }
            Self::Plan(book) => format!("/outing/{}/plan", escaped(book)),
            Self::Pages(book) => format!("/outing/{}/pages", escaped(book)),
            Self::Page(book, name) => format!("/outing/{}/pages/{}", escaped(book), escaped(name)),
            Self::Emergency => "/emergency".to_owned(),
            Self::OutingFile(book) => format!("/outing/{}/file", escaped(book)),
            Self::Records(book) => format!("/outing/{}/records", escaped(book)),
            Self::Herbal(words) if words.is_empty() => "/herbal".to_owned(),
            Self::Herbal(words) => format!("/herbal?words={}", escaped(words)),
            Self::Plant(name) => format!("/herbal/{}", escaped(name)),
            Self::Compare(one, other) => format!("/compare/{}/{}", escaped(one), escaped(other)),
            Self::Nowhere(said) => said.clone(),
        }
    }

    /// The address as a link holds it.
    pub(crate) fn link(&self) -> String {
        format!("#{}", self.written())
    }
}

/// What an address says of a name after its `?`.
fn asked(said: &str, name: &str) -> Option<String> {
    all_asked(said).into_iter().find(|(known, _)| known == name).map(|(_, words)| words)
}

/// Everything that an address says after its `?`, in order.
fn all_asked(said: &str) -> Vec<(String, String)> {
    let (_, query) = said.split_once('?').unwrap_or_default();
    let pairs = query.split('&').filter_map(|pair| pair.split_once('='));
    pairs.map(|(name, words)| (plain(name), plain(words))).collect()
}

/// A step of an address as it was before it was escaped (RFC 3986, 2.1).
fn plain(escaped: &str) -> String {
    let mut bytes = Vec::with_capacity(escaped.len());
    let mut rest = escaped.as_bytes();
    while let Some((first, after)) = rest.split_first() {
        let byte = match (first, after) {
            (b'%', [high, low, ..]) => hexadecimal(*high).zip(hexadecimal(*low)),
            _ => None,
        };
        let (byte, used) = match byte {
            Some((high, low)) => (high * 16 + low, 3),
            None => (*first, 1),
        };
        bytes.push(byte);
        rest = rest.get(used..).unwrap_or_default();
    }
    String::from_utf8_lossy(&bytes).into_owned()
}

fn hexadecimal(digit: u8) -> Option<u8> {
    char::from(digit).to_digit(16).and_then(|digit| u8::try_from(digit).ok())
}

/// Words as a step of an address: all but the unreserved letters are escaped.
pub(crate) fn escaped(words: &str) -> String {
    let mut said = String::with_capacity(words.len());
    for byte in words.bytes() {
        let letter = char::from(byte);
        if letter.is_ascii_alphanumeric() || "-._~".contains(letter) {
            said.push(letter);
        } else {
            // Writing to a string cannot fail.
            let _ = write!(said, "%{byte:02X}");
        }
    }
    said
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_is_read_as_it_was_written() {
        let all = [
            Address::Home,
            Address::TakeIn,
            Address::New,
            Address::Rows("b".to_owned(), "stand".to_owned()),
            Address::Row("b".to_owned(), "stand".to_owned(), None),
            Address::Row("b".to_owned(), "stand".to_owned(), Some("a/b ü".to_owned())),
            Address::Row("b".to_owned(), "outing".to_owned(), Some(String::new())),
            Address::Journal("b".to_owned()),
            Address::Emergency,
            Address::Count("b".to_owned(), "0f3c".to_owned()),
            Address::Allowance("b".to_owned()),
            Address::Basket("b".to_owned()),
            Address::Kitchen("b".to_owned()),
            Address::Make("b".to_owned(), "tea & more".to_owned()),
            Address::WorkOut(Form::default()),
            Address::WorkOut(Form(vec![("herb".to_owned(), "10 % = a".to_owned())])),
            Address::RowWith(
                "b".to_owned(),
                "sorting".to_owned(),
                ("lot".to_owned(), "a/b".to_owned()),
            ),
            Address::Serving("b".to_owned()),
            Address::Answers("b".to_owned()),
            Address::Person("b".to_owned(), "ansel/b".to_owned()),
            Address::Ask("b".to_owned(), "ansel".to_owned(), 12),
            Address::Why("b".to_owned()),
            Address::HandOut("b".to_owned(), "evening tea".to_owned()),
            Address::InHand("b".to_owned()),
            Address::Verdict("b".to_owned(), Specimen::new("by the weir", "weir-1")),
            Address::Reading(Reading {
                book: "b".to_owned(),
                of: Specimen::new("weir", "weir-1"),
                reader: "oda".to_owned(),
                look: None,
            }),
            Address::Reading(Reading {
                book: "b".to_owned(),
                of: Specimen::new("weir", "weir-1"),
                reader: "ö/a".to_owned(),
                look: Some("leaf_base".to_owned()),
            }),
            Address::Page("b1".to_owned(), "plant-a b".to_owned()),
            Address::Records("b/2".to_owned()),
            Address::Herbal(String::new()),
            Address::Herbal("bear's garlic & 50 %".to_owned()),
            Address::Plant("Rosa × damascena?".to_owned()),
            Address::Compare("a/b".to_owned(), "ü#".to_owned()),
        ];
        for address in all {
            assert_eq!(Address::read(&address.written()), address);
        }
    }

    #[test]
    fn what_is_broken_leads_nowhere_and_breaks_nothing() {
        for said in
            ["/compare/one", "/%", "/%zz/%f", "/herbal/a/b", "//x//", "/outing/b/answers/ansel/two"]
        {
            assert!(matches!(Address::read(said), Address::Nowhere(_)), "{said}");
        }
        assert_eq!(Address::read("/herbal/%C3"), Address::Plant("\u{fffd}".to_owned()));
    }
}
