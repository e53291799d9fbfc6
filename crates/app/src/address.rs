//! Addresses: what stands after the `#`, and the screen it leads to.

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
    /// What was written down of an outing, and where entries are taken back.
    Journal(String),
    /// Its plan.
    Plan(String),
    /// Its pages for paper.
    Pages(String),
    /// One of them.
    Page(String, String),
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

impl Address {
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
            ["outing", book, "row", table, rest @ ..] => {
                let key = rest.first().copied().unwrap_or_default().to_owned();
                Self::Row((*book).to_owned(), (*table).to_owned(), Some(key))
            }
            ["outing", book, "journal"] => Self::Journal((*book).to_owned()),
            ["outing", book, "plan"] => Self::Plan((*book).to_owned()),
            ["outing", book, "pages"] => Self::Pages((*book).to_owned()),
            ["outing", book, "pages", name] => Self::Page((*book).to_owned(), (*name).to_owned()),
            ["outing", book, "file"] => Self::OutingFile((*book).to_owned()),
            ["outing", book, "records"] => Self::Records((*book).to_owned()),
            ["herbal"] => Self::Herbal(asked(said)),
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
            Self::Plan(book) => format!("/outing/{}/plan", escaped(book)),
            Self::Pages(book) => format!("/outing/{}/pages", escaped(book)),
            Self::Page(book, name) => format!("/outing/{}/pages/{}", escaped(book), escaped(name)),
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

/// The words that were searched for.
fn asked(said: &str) -> String {
    let (_, query) = said.split_once('?').unwrap_or_default();
    let words = query.split('&').find_map(|pair| pair.strip_prefix("words="));
    words.map(plain).unwrap_or_default()
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
        for said in ["/compare/one", "/%", "/%zz/%f", "/herbal/a/b", "//x//"] {
            assert!(matches!(Address::read(said), Address::Nowhere(_)), "{said}");
        }
        assert_eq!(Address::read("/herbal/%C3"), Address::Plant("\u{fffd}".to_owned()));
    }
}
