//! What a piece is held against, how long that takes, and how likely each look-alike stays in.

use super::super::{list, plan};
use super::View;
use crate::{Block, Column, Prose, Table};
use desk::{SortingLook, SortingPlant, SortingTwin};
use ground::{Arg, Text, Unit};

impl View<'_> {
    pub(super) fn plant(&self) -> Vec<Block> {
        let Some(plant) = &self.reply.plant else { return Vec::new() };
        let mut blocks = self.untold(plant).into_iter().collect::<Vec<_>>();
        if let Some(seconds) = plant.seconds {
            blocks.push(self.looks(plant));
            blocks.push(self.time(plant, seconds));
        }
        blocks.extend((!plant.twins.is_empty()).then(|| self.twins(plant)));
        let mut all = self.section("sort-look", blocks);
        all.extend(plan::sorting_look(&plant.sheet, plant.part, self.words));
        all
    }

    /// Look-alikes that nothing on a piece tells, or one sign alone.
    fn untold(&self, plant: &SortingPlant) -> Option<Block> {
        let says = |id: &str, looks: usize| {
            let twins = plant.twins.iter().filter(|twin| twin.looks.len() == looks);
            let twins: Vec<Arg> = twins.map(|twin| Arg::Taxon(twin.name.clone())).collect();
            (!twins.is_empty()).then(|| self.words.para(&Text::new(id).with("plants", twins)))
        };
        let says: Vec<Block> =
            says("sort-untold", 0).into_iter().chain(says("sort-told-once", 1)).collect();
        let kind = crate::NoticeKind::DoNot;
        (!says.is_empty()).then(|| self.words.notice(kind, says))
    }

    fn looks(&self, plant: &SortingPlant) -> Block {
        let row = |look: &SortingLook| {
            let name = Prose::new().said(&self.words.character(&look.character));
            let must = if look.must { self.words.word("sort-look-must") } else { String::new() };
            let tells: Vec<Arg> = look.tells.iter().map(|t| Arg::Taxon(t.clone())).collect();
            let tells = match tells.is_empty() {
                true => Prose::new().text(&self.words.word("view-key-nobody")),
                false => self.words.prose(&Text::new("sort-look-tells").with("plants", tells)),
            };
            let seconds = self.words.amount(f64::from(look.seconds), Unit::Second);
            vec![name.text(&must), tells, seconds]
        };
        let columns = [
            Column::words(self.words.word("sort-look-sign")),
            Column::words(self.words.word("sort-look-from")),
            Column::numbers(self.words.word("sort-look-time")),
        ];
        Block::Table(Table {
            caption: self.words.word("sort-look-says").into(),
            columns: columns.into(),
            rows_have_heads: true,
            rows: plant.looks.iter().map(row).collect(),
        })
    }

    /// How long it takes, by piece and in all.
    fn time(&self, plant: &SortingPlant, seconds: u32) -> Block {
        let all = f64::from(seconds) * f64::from(self.reply.seen);
        let (all, unit) = match all / 60.0 {
            minutes @ ..120.0 => (minutes, Unit::Minute),
            minutes => (minutes / 60.0, Unit::Hour),
        };
        let tray = plant.tray.unwrap_or(1).max(1);
        let text = Text::new("sort-time")
            .amount("piece", f64::from(seconds), Unit::Second)
            .amount("each", all, unit)
            .with("trays", self.reply.seen.div_ceil(tray));
        self.words.para(&text)
    }

    fn twins(&self, plant: &SortingPlant) -> Block {
        let row = |twin: &SortingTwin| {
            let harm = match twin.harm {
                Some(harm) => list::harm(harm, self.words),
                None => self.words.word("sheet-twin-unlisted"),
            };
            let common = twin.common.as_deref();
            let name = common.map(|common| Prose::new().said(common).text(", "));
            let signs: Vec<_> = twin.looks.iter().map(|look| self.words.character(look)).collect();
            let signs = match signs.is_empty() {
                true => self.words.word("sort-twin-nothing"),
                false => self.words.catalogue.list(&signs),
            };
            vec![
                name.unwrap_or_default().taxon(&twin.name),
                Prose::new().strong(&harm),
                Prose::new().said(&signs),
                self.share(twin.stays),
            ]
        };
        let columns = [
            Column::words(self.words.word("sort-twin")),
            Column::words(self.words.word("plants-harm")),
            Column::words(self.words.word("sort-twin-signs")),
            Column::numbers(self.words.word("sort-twin-stays")),
        ];
        Block::Table(Table {
            caption: self.words.prose(&Text::new("sort-twins").with("count", self.reply.wrong)),
            columns: columns.into(),
            rows_have_heads: true,
            rows: plant.twins.iter().map(row).collect(),
        })
    }
}
