//! What an answer depends on besides the request.

use ground::RandomStart;
use herbal::Herbal;
use jiff::civil::DateTime;
use journal::Journal;

/// The knowledge, the records, the moment and the random start: with the request, all that an
/// answer depends on. Equal worlds and requests give equal bytes.
#[derive(Clone, Debug)]
pub struct World {
    /// What is known.
    pub herbal: Herbal,
    /// The version of what is known: a hash of its files.
    pub herbal_version: String,
    /// What has happened, besides what a request's files say.
    pub journal: Journal,
    /// Now, as the clock on the wall shows it.
    pub now: DateTime,
    /// Where draws begin.
    pub random_start: RandomStart,
}
