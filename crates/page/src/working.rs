//! Workings as blocks: a number's tree of formulas, down to inputs, facts and assumptions.

use crate::words::Workings;
use crate::{Anchor, Block, Details, Item, Prose, Target, Words};
use ground::{Formula, How, Place, Shown, Source, SourceId, Sourcing, Standing, Text, Working};

impl Words<'_> {
    /// A working as a line that opens on demand. Numbers lead to it by its anchor.
    #[must_use]
    pub fn working(&self, anchor: &Anchor, working: &Working) -> Block {
        let summary = Text::new("working-open").with("what", working.what.clone());
        let written = match self.workings {
            Workings::All => true,
            Workings::Only(one) => one == Some(anchor.as_str()),
        };
        Block::Details(Details {
            anchor: Some(anchor.clone()),
            summary: self.prose(&summary),
            open: false,
            blocks: written.then(|| Block::bullets([self.step(working)])).into_iter().collect(),
        })
    }

    /// One number of a working, with what it came from below it.
    fn step(&self, working: &Working) -> Item {
        let line = self
            .prose(&working.what)
            .text(": ")
            .then(self.shown(&working.value))
            .text(" — ")
            .then(self.how(&working.how));
        let under = match &working.how {
            How::Computed { from, .. } if !from.is_empty() => {
                vec![Block::bullets(from.iter().map(|part| self.step(part)))]
            }
            _ => Vec::new(),
        };
        Item { says: line, under }
    }

    /// A value of a working.
    #[must_use]
    pub fn shown(&self, value: &Shown) -> Prose {
        match value {
            Shown::Amount(value, unit) => self.amount(value.get(), *unit),
            Shown::Spread(spread, unit) => self.spread(spread, *unit),
            Shown::Words(text) => self.prose(text),
            Shown::Unknown => self.word("unknown").into(),
        }
    }

    fn how(&self, how: &How) -> Prose {
        match how {
            How::Input(place) => {
                let place = self.place(place);
                self.prose(&Text::new("working-input").with("place", place))
            }
            How::Fact(from) => self.sourcing(from),
            How::Assumed(why) => self.prose(&Text::new("working-assumed").with("why", why.clone())),
            How::Computed { by, .. } => self.formula(by),
        }
    }

    fn formula(&self, formula: &Formula) -> Prose {
        let id = format!("formula-{}", formula.name.replace(['.', '_'], "-"));
        let mut prose = Prose::new();
        if self.catalogue.has(&id) {
            prose = prose.text(&self.word(&id)).text(": ");
        }
        prose = prose.code(&formula.says);
        match &formula.source {
            None => prose,
            Some(source) => prose.text(" (").then(self.source(source)).text(")"),
        }
    }

    /// Where a fact comes from: its sources, and its standing where that is not plain.
    #[must_use]
    pub fn sourcing(&self, from: &Sourcing) -> Prose {
        let mut prose = self.named(&from.sources);
        if from.standing == Standing::Published && !prose.is_empty() {
            return prose;
        }
        if !prose.is_empty() {
            prose = prose.text(", ");
        }
        prose.text(&self.word(standing(from.standing)))
    }

    /// Several sources: by their numbers where all have one.
    fn named(&self, ids: &[SourceId]) -> Prose {
        let number = |id| self.numbers.and_then(|numbers| numbers.get(id)).map(ToString::to_string);
        match ids.iter().map(number).collect::<Option<Vec<_>>>() {
            Some(numbers) if !numbers.is_empty() => {
                let text = Text::new("source-numbers").with("count", numbers.len());
                self.prose(&text.with("numbers", self.catalogue.list(&numbers)))
            }
            _ => ids.iter().fold(Prose::new(), |prose, id| {
                let gap = if prose.is_empty() { "" } else { "; " };
                prose.text(gap).then(self.source_in_full(id))
            }),
        }
    }

    /// A source: its number where the page ends with a list, else as it stands in one.
    #[must_use]
    pub fn source(&self, id: &SourceId) -> Prose {
        self.named(std::slice::from_ref(id))
    }

    /// A source: author and title where the sources are known, leading to its address.
    #[must_use]
    pub fn source_in_full(&self, id: &SourceId) -> Prose {
        let known = self.sources.and_then(|sources| sources.get(id));
        let Some(Source { title, author, address, .. }) = known else {
            return Prose::new().code(&id.0);
        };
        let says = format!("{author}: {title}");
        match address.as_deref().and_then(Target::web) {
            Some(to) => Prose::new().link(&says, to),
            None => Prose::new().text(&says),
        }
    }

    /// A place in an input: its file and line, then table, entry and field.
    #[must_use]
    pub fn place(&self, place: &Place) -> String {
        self.catalogue.place(place)
    }
}

fn standing(standing: Standing) -> &'static str {
    match standing {
        Standing::Published => "standing-published",
        Standing::Weak => "standing-weak",
        Standing::Practice => "standing-practice",
        Standing::Policy => "standing-policy",
        Standing::Assumed => "standing-assumed",
        Standing::Remembered => "standing-remembered",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Catalogue, Inline};
    use ground::{SourceKind, Unit};
    use std::collections::BTreeMap;

    #[test]
    fn a_remembered_fact_says_so_whatever_sources_it_names() {
        let catalogue = Catalogue::english();
        let words = Words::new(&catalogue);
        let from =
            Sourcing { standing: Standing::Remembered, sources: vec![SourceId::from("a-flora")] };
        assert_eq!(words.sourcing(&from).plain(), "a-flora, from memory");
        let bare = Sourcing::bare(Standing::Practice);
        assert_eq!(words.sourcing(&bare).plain(), "common practice, no source");
        let nothing = Sourcing::bare(Standing::Published);
        assert_eq!(words.sourcing(&nothing).plain(), "published");
    }

    #[test]
    fn a_source_leads_to_its_address_only_when_it_is_a_web_address() {
        let catalogue = Catalogue::english();
        let source = |address: &str| Source {
            id: SourceId::from("s"),
            title: "Handbook 44".into(),
            author: "NIST, 2026".into(),
            address: Some(address.into()),
            kind: SourceKind::Standard,
            weak: false,
        };
        let links = |address: &str| {
            let sources = BTreeMap::from([(SourceId::from("s"), source(address))]);
            let prose = Words::new(&catalogue).with_sources(&sources).source(&SourceId::from("s"));
            assert_eq!(prose.plain(), "NIST, 2026: Handbook 44");
            prose.iter().any(|p| matches!(p, Inline::Link { .. }))
        };
        assert!(links("https://www.nist.gov/handbook-44"));
        assert!(!links("javascript:alert(1)"));
    }

    #[test]
    fn every_leaf_of_a_working_is_shown() {
        let catalogue = Catalogue::english();
        let what = |id: &str| Text::new("place-entry").with("table", "batch").with("entry", id);
        let leaf = |id: &str| {
            let place = Place::entry("batch", "tea", id);
            Working::input(what(id), Shown::amount(2.0, Unit::Gram), place)
        };
        let by = Formula::plain("sum", "a + b");
        let value = Shown::amount(4.0, Unit::Gram);
        let tree = Working::computed(what("sum"), value, by, vec![leaf("a"), leaf("b")]);
        let block = Words::new(&catalogue).working(&Anchor::new("w"), &tree);
        let said = format!("{block:?}");
        assert!(["batch tea, a", "batch tea, b", "a + b"].iter().all(|part| said.contains(part)));
    }
}
