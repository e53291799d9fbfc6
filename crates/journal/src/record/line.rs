//! A record as one line of text.

use super::{Clock, Record, RecordId};
use ground::{ContentId, Fault, Place};
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};

/// The version of the format that is written, and the newest that is read.
const VERSION: u32 = 1;

/// How much of a broken line a fault shows, in characters: up to its identifier, and nothing of
/// what somebody said.
const SHOWN: usize = 100;

/// What lines of every version begin with.
#[derive(Deserialize)]
struct Versioned {
    v: u32,
}

/// A record, and the line it was read from or is written as.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Line<P> {
    pub(super) record: Record<P>,
    pub(super) text: String,
}

impl<P> Line<P> {
    /// What orders records.
    pub(super) fn moment(&self) -> (&Clock, RecordId) {
        (&self.record.clock, self.record.id)
    }

    pub(super) fn device(&self) -> &str {
        &self.record.clock.device
    }

    /// The hash that the next record of the same device names.
    pub(super) fn hash(&self) -> ContentId {
        ContentId::of(self.text.as_bytes())
    }
}

impl<P: Serialize + DeserializeOwned> Line<P> {
    /// Writes a record, and reads it back: what could not be read later is refused now.
    pub(super) fn write(record: &Record<P>, at: &Place) -> Result<Self, Fault> {
        let refused = || Fault::new("record-cannot-be-written", at.clone(), record.id.to_string());
        let json = serde_json::to_string(record).map_err(|_| refused())?;
        let sum = ContentId::of(json.as_bytes());
        let text = format!(r#"{{"v":{VERSION},"sum":"{sum}","record":{json}}}"#);
        Self::read(&text, at).map_err(|_| refused())
    }

    /// Reads a line that stands at this place.
    pub(super) fn read(text: &str, at: &Place) -> Result<Self, Fault> {
        if let Some(v) = version(text).filter(|v| *v > VERSION) {
            let fault = Fault::new("newer-record", at.clone(), v.to_string());
            return Err(fault.with("newest", VERSION));
        }
        let unreadable = || Fault::new("unreadable-record", at.clone(), beginning(text));
        let (sum, json) = parts(text).ok_or_else(unreadable)?;
        if ContentId::of(json.as_bytes()).as_str() != sum {
            return Err(Fault::new("changed-record", at.clone(), beginning(text)));
        }
        let record = serde_json::from_str(json).map_err(|_| unreadable())?;
        Ok(Self { record, text: text.to_owned() })
    }
}

fn beginning(text: &str) -> String {
    text.chars().take(SHOWN).collect()
}

fn version(text: &str) -> Option<u32> {
    serde_json::from_str(text).ok().map(|Versioned { v }| v)
}

/// The check sum of a line and what it was made of, byte for byte.
fn parts(text: &str) -> Option<(&str, &str)> {
    let rest = text.strip_prefix(&format!(r#"{{"v":{VERSION},"sum":""#))?;
    rest.strip_suffix('}')?.split_once(r#"","record":"#)
}
