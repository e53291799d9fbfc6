//! Refusals are results: what cannot be answered says why, and what would answer it.

use crate::Text;
use serde::{Deserialize, Serialize};

/// Why there is no answer, and what would give one.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Refusal {
    /// Why there is none.
    pub why: Text,
    /// What would settle it.
    pub settle: Text,
}

impl Refusal {
    /// A refusal from its two messages.
    #[must_use]
    pub fn new(why: Text, settle: Text) -> Self {
        Self { why, settle }
    }
}

/// A known value, or the refusal to give one.
///
/// There is no default and no way to fall back to a value: whoever needs the value must deal with
/// the refusal. That is how unknown never comes to read as safe.
#[must_use]
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Answer<T> {
    /// The value.
    Known(T),
    /// Why there is none.
    Refused(Refusal),
}

impl<T> Answer<T> {
    /// Refuses with these two messages.
    pub fn refused(why: Text, settle: Text) -> Self {
        Self::Refused(Refusal::new(why, settle))
    }

    /// The answer of another question that starts from this one's value.
    pub fn map<U>(self, with: impl FnOnce(T) -> U) -> Answer<U> {
        match self {
            Self::Known(value) => Answer::Known(with(value)),
            Self::Refused(refusal) => Answer::Refused(refusal),
        }
    }

    /// The answer to the next question, asked only when this one has an answer.
    pub fn and_then<U>(self, next: impl FnOnce(T) -> Answer<U>) -> Answer<U> {
        match self {
            Self::Known(value) => next(value),
            Self::Refused(refusal) => Answer::Refused(refusal),
        }
    }

    /// A view of the answer.
    pub fn as_ref(&self) -> Answer<&T> {
        match self {
            Self::Known(value) => Answer::Known(value),
            Self::Refused(refusal) => Answer::Refused(refusal.clone()),
        }
    }

    /// The value, where there is one; for showing, never for deciding.
    #[must_use]
    pub fn known(&self) -> Option<&T> {
        match self {
            Self::Known(value) => Some(value),
            Self::Refused(_) => None,
        }
    }

    /// As a result, to leave a function early with `?`.
    ///
    /// # Errors
    /// The refusal.
    pub fn ok(self) -> Result<T, Refusal> {
        match self {
            Self::Known(value) => Ok(value),
            Self::Refused(refusal) => Err(refusal),
        }
    }
}

impl<T> From<Result<T, Refusal>> for Answer<T> {
    fn from(result: Result<T, Refusal>) -> Self {
        match result {
            Ok(value) => Self::Known(value),
            Err(refusal) => Self::Refused(refusal),
        }
    }
}
