//! What holds on any outing: rules for weather and water, what to say on the phone, what to keep.

mod rows;

use crate::file::{Reader, TextFile};
use ground::Sourcing;
use rows::{DayFile, LineRow, RuleRow};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;
use toml::Spanned;

/// What holds on any outing.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Day {
    /// Rules for weather and water, in the order in which they are printed.
    pub rules: Vec<DayRule>,
    /// What to say to whoever answers an emergency call.
    pub say: Vec<DayLine>,
    /// What to keep for those who help.
    pub keep: Vec<DayLine>,
}

/// A rule for weather or water.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct DayRule {
    /// Identifier.
    pub id: String,
    /// Its place on paper.
    pub order: u8,
    /// Whether it speaks only of plants that stand in water.
    pub water_only: bool,
    /// What is seen.
    pub when: String,
    /// What is done then.
    pub done: String,
    /// Where that was read.
    pub from: Sourcing,
}

/// A line of the emergency card.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct DayLine {
    /// Identifier.
    pub id: String,
    /// Its place on paper.
    pub order: u8,
    /// What it says.
    pub says: String,
    /// Where that was read.
    pub from: Sourcing,
}

impl Day {
    pub(crate) fn read(reader: &mut Reader<'_>) -> Self {
        Self::default().overlaid(reader)
    }

    /// This day with the files of the folder laid over it: rows with the same identifier replace,
    /// all else stays.
    pub(crate) fn overlaid(&self, reader: &mut Reader<'_>) -> Self {
        let mut day = self.clone();
        let mut desk = Desk { reader, seen: BTreeSet::new() };
        for file in desk.reader.files_in("day") {
            let Some(read) = desk.reader.parse::<DayFile>(file) else { continue };
            for row in read.rule {
                let rule = desk.rule(file, row);
                replace(&mut day.rules, rule, |rule| &rule.id);
            }
            for (table, rows, lines) in
                [("say", read.say, &mut day.say), ("keep", read.keep, &mut day.keep)]
            {
                for row in rows {
                    let line = desk.line(file, table, row);
                    replace(lines, line, |line| &line.id);
                }
            }
        }
        day.rules.sort_by(|a, b| (a.order, &a.id).cmp(&(b.order, &b.id)));
        for lines in [&mut day.say, &mut day.keep] {
            lines.sort_by(|a, b| (a.order, &a.id).cmp(&(b.order, &b.id)));
        }
        day
    }
}

/// Reads rows, each identifier once in its table.
struct Desk<'d, 'r> {
    reader: &'d mut Reader<'r>,
    seen: BTreeSet<(&'static str, String)>,
}

impl Desk<'_, '_> {
    /// Notes where a row stands; a fault when its table holds another of that name.
    fn enter(&mut self, file: &TextFile, table: &'static str, id: &Spanned<String>) {
        self.reader.mark(file, &id.span(), table, id.get_ref(), "");
        if !self.seen.insert((table, id.get_ref().clone())) {
            self.reader.fault("day-twice", file, id.span(), id.get_ref());
        }
    }

    fn rule(&mut self, file: &TextFile, row: RuleRow) -> DayRule {
        self.enter(file, "rule", &row.id);
        DayRule {
            id: row.id.into_inner(),
            order: row.order,
            water_only: row.water_only,
            when: row.when,
            done: row.done,
            from: self.reader.sourcing(file, &row.src),
        }
    }

    fn line(&mut self, file: &TextFile, table: &'static str, row: LineRow) -> DayLine {
        self.enter(file, table, &row.id);
        DayLine {
            id: row.id.into_inner(),
            order: row.order,
            says: row.says,
            from: self.reader.sourcing(file, &row.src),
        }
    }
}

/// Puts a row in the place of the one with its identifier, or beside the others.
fn replace<T>(rows: &mut Vec<T>, row: T, id: impl Fn(&T) -> &String) {
    match rows.iter_mut().find(|known| id(known) == id(&row)) {
        Some(known) => *known = row,
        None => rows.push(row),
    }
}
