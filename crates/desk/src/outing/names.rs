//! Names that one table gives and another uses, and names that the herbal knows.

use super::file::{Row, Said};
use super::shape::OutingFile;
use ground::{Arg, Harm, Length};
use harvest::Purpose;
use herbal::Herbal;
use identify::{Kind, LONGEST_MM};
use journal::Saw;
use std::collections::BTreeMap;
use toml::Spanned;

/// Every name that the files of an outing give, by table.
#[derive(Default)]
pub(crate) struct Given {
    names: BTreeMap<&'static str, Vec<String>>,
}

impl Given {
    /// Adds the names of one file; the rows whose name is taken already come back.
    pub(crate) fn add<'t>(&mut self, file: &'t OutingFile) -> Vec<(&'static str, &'t Said)> {
        let mut twice = Vec::new();
        let mut add = |table: &'static str, said: Vec<&'t Said>| {
            let known = self.names.entry(table).or_default();
            for name in said {
                if known.contains(name.get_ref()) {
                    twice.push((table, name));
                } else {
                    known.push(name.get_ref().clone());
                }
            }
        };
        add("reader", file.reader.iter().map(|t| &t.name).collect());
        add("site", file.site.iter().map(|t| &t.name).collect());
        add("stand", file.stand.iter().map(|t| &t.name).collect());
        add("make", file.make.iter().map(|t| &t.name).collect());
        add("content", file.content.iter().map(|t| &t.name).collect());
        add("participant", file.participant.iter().map(|t| &t.name).collect());
        add("answers", file.answers.iter().map(|t| &t.participant).collect());
        add("take", file.take.iter().map(|t| &t.name).collect());
        add("lot", file.lot.iter().map(|t| &t.name).collect());
        add("batch", file.batch.iter().map(|t| &t.name).collect());
        twice
    }

    fn of(&self, table: &str) -> &[String] {
        self.names.get(table).map(Vec::as_slice).unwrap_or_default()
    }
}

/// The names an entry may use.
pub(crate) struct Names<'a> {
    pub(crate) herbal: &'a Herbal,
    pub(crate) given: Given,
}

macro_rules! given_names {
    ($($name:ident = $table:literal),+) => {
        $(
            pub(crate) fn $name(&self, row: &mut Row<'_>, field: &str, said: &Said) -> Option<String> {
                self.known(row, field, said, &[$table])
            }
        )+
    };
}

impl Names<'_> {
    given_names! {
        site = "site", stand = "stand", make = "make", participant = "participant",
        take = "take", lot = "lot", batch = "batch", reader = "reader"
    }

    pub(crate) fn lot_or_batch(
        &self,
        row: &mut Row<'_>,
        field: &str,
        said: &Said,
    ) -> Option<String> {
        self.known(row, field, said, &["lot", "batch"])
    }

    fn known(
        &self,
        row: &mut Row<'_>,
        field: &str,
        said: &Said,
        tables: &[&str],
    ) -> Option<String> {
        let known: Vec<_> = tables.iter().flat_map(|table| self.given.of(table)).collect();
        if known.contains(&said.get_ref()) {
            return Some(said.get_ref().clone());
        }
        let list: Vec<Arg> = known.into_iter().map(|name| Arg::from(name.as_str())).collect();
        row.no_such_name(field, said, list);
        None
    }

    /// A plant, by any name that means one only; its scientific name.
    pub(crate) fn plant(&self, row: &mut Row<'_>, field: &str, said: &Said) -> Option<String> {
        match self.herbal.flora.find(said.get_ref()) {
            Ok(sheet) => Some(sheet.name.clone()),
            Err(near) => {
                row.add(near.fault(row.place(field, &said.span())));
                None
            }
        }
    }

    /// Whether something found in a basket is harmless for certain: its sheet says so.
    pub(crate) fn is_harmless(&self, what: &str) -> bool {
        self.herbal
            .flora
            .find(what)
            .is_ok_and(|sheet| sheet.harm.value == Harm::None && sheet.harm.may_clear())
    }

    /// What was read of a character: a state, several, a length, a number, `not-there` or `?`.
    pub(crate) fn saw(
        &self,
        row: &mut Row<'_>,
        character: &str,
        said: &Spanned<toml::Value>,
    ) -> Option<Saw> {
        let written = Spanned::new(said.span(), written(said.get_ref()));
        let glossary = &self.herbal.flora.glossary;
        let Some(known) = glossary.character(character) else {
            let near = nearest(character, glossary.terms().map(|term| term.character.id.as_str()));
            let named = Spanned::new(said.span(), character.to_owned());
            row.fault_with("no-such-character", "saw", &named, ("near", near));
            return None;
        };
        match (said.get_ref(), &known.kind) {
            (toml::Value::String(word), _) if word == "?" => Some(Saw::CannotTell),
            (toml::Value::String(word), _) if word == "not-there" => Some(Saw::NotThere),
            (_, Kind::Length) => {
                let amount = row.amount("saw", &written, ground::Dimension::Length, LONGEST_MM)?;
                Some(Saw::Length(Length::from_mm(amount.low), Length::from_mm(amount.high)))
            }
            (toml::Value::Integer(count), Kind::Count) if u32::try_from(*count).is_ok() => {
                u32::try_from(*count).ok().map(Saw::Count)
            }
            (toml::Value::Array(several), Kind::States(_)) if !several.is_empty() => several
                .iter()
                .map(|value| {
                    self.state(row, character, &Spanned::new(said.span(), self::written(value)))
                })
                .collect::<Option<Vec<_>>>()
                .map(Saw::OneOf),
            (_, Kind::States(_)) => self.state(row, character, &written).map(Saw::State),
            _ => {
                row.fault("unreadable-look", character, &written);
                None
            }
        }
    }

    fn state(&self, row: &mut Row<'_>, character: &str, said: &Said) -> Option<String> {
        let states = self.herbal.flora.glossary.states(character);
        if states.iter().any(|state| state.id == *said.get_ref()) {
            return Some(said.get_ref().clone());
        }
        let list: Vec<Arg> = states.iter().map(|state| state.id.as_str().into()).collect();
        row.fault_with("unknown-state", character, said, ("known", list));
        None
    }

    pub(crate) fn land(&self, row: &mut Row<'_>, field: &str, said: &Said) -> Option<String> {
        self.listed(row, field, said, self.herbal.land.rules.lands.keys())
    }

    pub(crate) fn jurisdiction(
        &self,
        row: &mut Row<'_>,
        field: &str,
        said: &Said,
    ) -> Option<String> {
        self.listed(row, field, said, self.herbal.land.rules.jurisdictions.keys())
    }

    pub(crate) fn land_rule(&self, row: &mut Row<'_>, field: &str, said: &Said) -> Option<String> {
        let protection = harvest::PROTECTED.to_owned();
        let laws = self.herbal.land.rules.laws.iter().map(|law| &law.id);
        self.listed(row, field, said, laws.chain([&protection]))
    }

    pub(crate) fn purpose(&self, row: &mut Row<'_>, field: &str, said: &Said) -> Option<Purpose> {
        let found = Purpose::of(said.get_ref());
        if found.is_none() {
            let list: Vec<Arg> = Purpose::ALL.iter().map(|purpose| purpose.word().into()).collect();
            row.fault_with("unknown-word", field, said, ("known", list));
        }
        found
    }

    pub(crate) fn hazard(&self, row: &mut Row<'_>, hazard: &str, said: &Said) -> Option<()> {
        let named = Spanned::new(said.span(), hazard.to_owned());
        let known = self.herbal.land.rules.hazards.iter().map(|hazard| &hazard.id);
        self.listed(row, "hazards", &named, known).map(|_| ())
    }

    pub(crate) fn substance(&self, row: &mut Row<'_>, field: &str, said: &Said) -> Option<String> {
        let known = self.herbal.uses.table.substances.keys().map(|substance| &substance.0);
        self.listed(row, field, said, known)
    }

    pub(crate) fn recipe(&self, row: &mut Row<'_>, field: &str, said: &Said) -> Option<String> {
        self.listed(row, field, said, self.herbal.kitchen.recipes.keys())
    }

    fn listed<'s>(
        &self,
        row: &mut Row<'_>,
        field: &str,
        said: &Said,
        list: impl Iterator<Item = &'s String>,
    ) -> Option<String> {
        let list: Vec<_> = list.collect();
        if list.contains(&said.get_ref()) {
            return Some(said.get_ref().clone());
        }
        let list: Vec<Arg> = list.into_iter().map(|word| Arg::from(word.as_str())).collect();
        row.fault_with("unknown-word", field, said, ("known", list));
        None
    }
}

/// A value as it would be written for a person.
fn written(value: &toml::Value) -> String {
    match value {
        toml::Value::String(word) => word.clone(),
        toml::Value::Integer(number) => number.to_string(),
        toml::Value::Float(number) => number.to_string(),
        toml::Value::Boolean(yes) => yes.to_string(),
        toml::Value::Datetime(moment) => moment.to_string(),
        toml::Value::Array(_) | toml::Value::Table(_) => String::new(),
    }
}

/// The names nearest to one that is not known: at most five.
pub(crate) fn nearest<'n>(name: &str, known: impl Iterator<Item = &'n str>) -> Vec<Arg> {
    let mut near: Vec<_> = known.map(|other| (strsim::osa_distance(name, other), other)).collect();
    near.sort_unstable();
    near.into_iter().take(5).map(|(_, other)| Arg::from(other)).collect()
}
