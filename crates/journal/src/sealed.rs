//! What is not shown unless somebody means to.

use serde::{Deserialize, Serialize};
use std::fmt;

/// A value that prints as a seal and is read only by opening it.
///
/// It keeps health answers out of messages, logs and panics by accident; it is no encryption.
#[derive(Clone, PartialEq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Sealed<T>(T);

impl<T> Sealed<T> {
    /// Seals a value.
    #[must_use]
    pub fn new(value: T) -> Self {
        Self(value)
    }

    /// Opens it. Every call is a place where health answers are read: keep them few.
    #[must_use]
    pub fn open(&self) -> &T {
        &self.0
    }
}

impl<T> fmt::Debug for Sealed<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Sealed")
    }
}
