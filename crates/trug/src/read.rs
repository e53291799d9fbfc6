//! Arguments as people write them. What cannot be read is told in the words of the catalogue.

use ground::{Dimension, Fault, Finite, Place, RandomStart, Spoken};
use identify::Level;
use page::Catalogue;

/// An amount, such as `96 % vol`.
pub(crate) fn amount(written: &str) -> Result<Spoken, String> {
    written.parse().map_err(|why: String| told("unreadable-amount", written, &why))
}

/// A day, such as `2026-06-21`.
pub(crate) fn day(written: &str) -> Result<jiff::civil::Date, String> {
    written.parse().map_err(|why: jiff::Error| told("no-such-day", written, &why.to_string()))
}

/// A day with a time, such as `2026-06-21T09:30`.
pub(crate) fn moment(written: &str) -> Result<jiff::civil::DateTime, String> {
    written.parse().map_err(|why: jiff::Error| told("no-such-moment", written, &why.to_string()))
}

/// Where draws begin: a whole number.
pub(crate) fn start(written: &str) -> Result<RandomStart, String> {
    written.parse().map(RandomStart).map_err(|_| told("unreadable-start", written, ""))
}

/// How well somebody reads: a word, or the share that they misread, such as `5 %` or `0.05`.
pub(crate) fn level(written: &str) -> Result<Level, String> {
    let share = || {
        let amount = written.parse::<Spoken>().ok()?.resolve(Dimension::Number, None).ok()?;
        let share = Finite::new(amount.low).filter(|_| amount.is_exact())?;
        (0.0..=0.5).contains(&share.get()).then_some(Level::Misreads(share))
    };
    let level = Level::of(written).or_else(share);
    level.ok_or_else(|| told("unreadable-level", written, ""))
}

/// What was seen of a character, such as `leaf_base=petiolate`.
pub(crate) fn look(written: &str) -> Result<(String, String), String> {
    let parts = written.split_once('=').map(|(character, saw)| (character.trim(), saw.trim()));
    parts
        .filter(|(character, saw)| !character.is_empty() && !saw.is_empty())
        .map(|(character, saw)| (character.to_owned(), saw.to_owned()))
        .ok_or_else(|| told("unreadable-pair", written, ""))
}

/// What is wrong and how to mend it.
pub(crate) fn told(code: &str, written: &str, why: &str) -> String {
    let said =
        Catalogue::english().fault(&Fault::new(code, Place::default(), written).with("why", why));
    format!("{} {}", said.what, said.mend)
}
