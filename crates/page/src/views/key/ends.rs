//! Where a key ends: the plant with its harm, and what must still be looked at.

use super::super::list;
use super::super::sheet::cell::statements;
use super::{View, taxa};
use crate::{Block, Fact, Prose};
use ground::{Harm, Text};
use identify::Cell;
use identify::key::{Check, CheckLook, End};

impl View<'_> {
    /// The end of a lead: its plant, or those that the key does not tell apart.
    pub(super) fn end(&self, reads: Prose, end: &End) -> Fact {
        let value = match end.plants.as_slice() {
            [only] => self.named(only),
            _ => Prose::new().strong(&self.words.word("view-key-together")),
        };
        Fact { label: reads, value, under: self.under(end) }
    }

    /// All plants of a key that tells nothing apart.
    pub(super) fn together(&self, end: &End) -> Vec<Block> {
        self.under(end)
    }

    fn under(&self, end: &End) -> Vec<Block> {
        let several = end.plants.len() > 1;
        let plants =
            several.then(|| Block::bullets(end.plants.iter().map(|name| self.named(name))));
        plants.into_iter().chain(end.checks.iter().flat_map(|check| self.check(check))).collect()
    }

    /// A plant with its harm in words.
    fn named(&self, name: &str) -> Prose {
        let Some(plant) = self.plant(name) else { return Prose::new().taxon(name) };
        let text = Text::new("view-key-end").taxon("name", name);
        let called = self.words.prose(&text.with("common", plant.common.as_str()));
        let harm = list::harm(plant.harm, self.words);
        let harm = self.words.catalogue.say(&Text::new("view-key-end-harm").with("harm", harm));
        called.text(" — ").strong(&harm)
    }

    fn check(&self, check: &Check) -> Vec<Block> {
        let mut blocks = Vec::new();
        if !check.looks.is_empty() {
            let before = Text::new("view-key-check").taxon("plant", &check.plant);
            blocks.push(Block::Para(self.words.prose(&before).emphasised()));
            blocks.push(Block::bullets(check.looks.iter().map(|look| self.look(check, look))));
        }
        for (times, id) in [(0, "view-key-open-never"), (1, "view-key-open-once")] {
            let open = check.open.iter().filter(|(_, found)| *found == times);
            let open: Vec<String> = open.map(|(name, _)| name.clone()).collect();
            if !open.is_empty() {
                let text = Text::new(id).taxon("plant", &check.plant).with("plants", taxa(&open));
                blocks.push(Block::Para(self.words.prose(&text).emphasised()));
            }
        }
        blocks
    }

    /// What a character is in the plant, and in each dangerous one; those in which it is the same are
    /// named together.
    fn look(&self, check: &Check, look: &CheckLook) -> Prose {
        let here = Text::new("view-key-check-here")
            .taxon("plant", &check.plant)
            .with("says", self.says(&look.character, &look.here));
        let name = Prose::new().said_strong(&self.words.character(&look.character)).text(": ");
        let mut said = name.then(self.words.prose(&here));
        let mut alike: Vec<(Harm, String, Vec<String>)> = Vec::new();
        for (plant, cell) in &look.there {
            let (harm, says) = (self.harm_of(plant), self.says(&look.character, cell));
            match alike.iter_mut().find(|(h, s, _)| *h == harm && *s == says) {
                Some((_, _, plants)) => plants.push(plant.clone()),
                None => alike.push((harm, says, vec![plant.clone()])),
            }
        }
        alike.sort_by_key(|(harm, _, _)| std::cmp::Reverse(*harm));
        for (harm, says, plants) in alike {
            let deadly = harm == Harm::Deadly;
            let id = if deadly { "view-key-check-deadly" } else { "view-key-check-harmful" };
            let text = Text::new(id).with("plants", taxa(&plants)).with("says", says);
            said = said.then(self.words.prose(&text));
        }
        said
    }

    /// What a sheet says of a character, in plain words.
    fn says(&self, character: &str, cell: &Cell) -> String {
        let term = self.words.glossary.and_then(|glossary| glossary.term(character));
        let Some(term) = term else { return self.words.word("unknown") };
        let (main, rare) = statements(self.words, term, &cell.value);
        let all: Vec<_> = main.into_iter().chain(rare).collect();
        all.join("; ")
    }
}
