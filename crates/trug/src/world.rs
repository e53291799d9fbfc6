//! The world of an answer: the herbal, the user's own files over it, and the clock on the wall.

use crate::own;
use desk::World;
use ground::{ContentId, Faults};
use herbal::{Account, Herbal, TextFile};
use jiff::civil::DateTime;
use std::path::Path;

/// What is known.
#[derive(Clone)]
pub(crate) struct Knowledge {
    herbal: Herbal,
    version: String,
    own: Vec<TextFile>,
}

impl Knowledge {
    /// The herbal, with the files of a folder laid over it.
    pub(crate) fn with(folder: Option<&Path>) -> Result<Self, Faults> {
        let herbal = herbal_data::herbal();
        let version = herbal_data::version().to_owned();
        let Some(folder) = folder else {
            return Ok(Self { herbal, version, own: Vec::new() });
        };
        let own = own::read(folder)?;
        let herbal = herbal.overlay(&own).map_err(|faults| own::in_folder(faults, folder))?;
        let version = format!("{version}+{}", content(&own));
        Ok(Self { herbal, version, own })
    }

    /// Where each row stands and what it rests on. Only a report needs it.
    pub(crate) fn account(&self) -> Result<Account, Faults> {
        let account = herbal_data::account();
        if self.own.is_empty() {
            return Ok(account);
        }
        let read = herbal_data::herbal().overlay_with_account(&self.own, &account);
        read.map(|(_, account)| account)
    }

    /// The world at this moment, for questions that come before the request.
    pub(crate) fn world(&self) -> World {
        self.clone().into_world()
    }

    /// The world, at this moment.
    pub(crate) fn into_world(self) -> World {
        World::new(self.herbal, self.version, now())
    }
}

/// What the clock on the wall shows.
pub(crate) fn now() -> DateTime {
    jiff::ZonedDateTime::now().datetime()
}

/// What the user's own files hold, as an identifier.
fn content(files: &[TextFile]) -> ContentId {
    let bytes =
        files.iter().flat_map(|file| [file.path.as_bytes(), b"\0", file.text.as_bytes(), b"\0"]);
    ContentId::of(&bytes.collect::<Vec<_>>().concat())
}
