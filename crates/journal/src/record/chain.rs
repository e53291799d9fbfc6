//! Whether the records of each device follow each other without a gap.

use super::Log;
use super::line::Line;
use ground::{ContentId, Fault, Faults, Place};
use std::collections::{BTreeMap, BTreeSet};

impl<P> Log<P> {
    /// Holds every record against the one that its device wrote before. Records that are missing at
    /// the end of a device leave no trace here: only another copy of the log shows them.
    ///
    /// # Errors
    /// Every record whose predecessor is not here as it was, and every one that a device wrote
    /// after going back to an earlier state. The log holds them all the same.
    pub fn check(&self) -> Result<(), Faults> {
        let lines = self.in_order();
        let known: BTreeSet<_> = lines.iter().map(|line| (line.device(), line.hash())).collect();
        let mut last: BTreeMap<&str, ContentId> = BTreeMap::new();
        let mut faults = Faults::none();
        for line in lines {
            let previous = last.insert(line.device(), line.hash());
            let before = line.record.before.clone();
            match before {
                _ if before == previous => {}
                Some(before) if !known.contains(&(line.device(), before.clone())) => {
                    faults.add(Fault::new("record-missing", line.place(), before.to_string()));
                }
                _ => faults.add(Fault::new("record-forked", line.place(), line.device())),
            }
        }
        faults.or(())
    }
}

impl<P> Line<P> {
    fn place(&self) -> Place {
        Place::entry("record", &self.record.id.to_string(), "before")
    }
}
