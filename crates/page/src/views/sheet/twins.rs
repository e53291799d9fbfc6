//! What a plant is taken for, and what tells the two apart.

use super::{View, list};
use crate::{Block, Column, Level, Prose, Table};
use desk::{Tell, Twin};
use ground::Text;
use herbal::{Resemblance, Term};

impl View<'_> {
    /// Every twin, the worst first.
    pub(super) fn twins(&self) -> Vec<Block> {
        let twins = self.reply.twins.iter().flat_map(|twin| self.twin(twin));
        self.section("sheet-twins", twins)
    }

    fn twin(&self, twin: &Twin) -> Vec<Block> {
        let mut blocks = vec![Block::heading(Level::Part, self.twin_head(twin))];
        let here = twin.here.iter().map(|row| (Text::new("sheet-why"), row));
        let there = Text::new("sheet-why-there").taxon("twin", &twin.name);
        let there = twin.there.iter().map(|row| (there.clone(), row));
        let rows = here.chain(there);
        blocks.extend(rows.map(|(why, row)| Block::Para(self.resemblance(why, row))));
        if twin.harm.is_none() {
            blocks.push(self.words.para(&Text::new("sheet-twin-without-sheet")));
        }
        blocks.extend(self.tells(twin));
        blocks
    }

    fn twin_head(&self, twin: &Twin) -> Prose {
        let harm = match twin.harm {
            Some(harm) => list::harm(harm, &self.words),
            None => self.words.word("sheet-twin-unlisted"),
        };
        let name = Prose::new().taxon(&twin.name);
        let named = match &twin.common {
            Some(common) => name.text(", ").said(common),
            None => name,
        };
        let head = named.text(" — ").strong(&harm);
        let confirmed = twin.here.iter().chain(&twin.there).any(|row| row.confirmed);
        let word = if confirmed { self.words.word("sheet-confirmed") } else { String::new() };
        head.strong(&word)
    }

    /// Why people confuse the two, and what tells them apart, as one of the two sheets says it.
    fn resemblance(&self, why: Text, row: &Resemblance) -> Prose {
        let why = why.with("why", row.why.as_str());
        let says = self.words.prose(&why).text(" ").said(&row.says);
        says.then(self.mark(&row.from))
    }

    /// What is said of each deciding character of the two. A plant without a sheet has no column.
    fn tells(&self, twin: &Twin) -> Option<Block> {
        let rows: Vec<_> = twin.tells.iter().filter_map(|(id, tell)| self.tell(id, tell)).collect();
        let both = twin.harm.is_some() && !rows.is_empty();
        let columns = [
            Prose::from(self.words.word("sheet-tell")),
            Prose::new().taxon(&self.reply.sheet.name),
            Prose::new().taxon(&twin.name),
        ];
        both.then(|| {
            Block::Table(Table {
                caption: self.words.word("sheet-tells").into(),
                columns: columns.into_iter().map(Column::words).collect(),
                rows_have_heads: true,
                rows,
            })
        })
    }

    fn tell(&self, id: &str, tell: &Tell) -> Option<Vec<Prose>> {
        let term: &Term = self.reply.terms.get(id)?;
        let side = |cell: &Option<identify::Cell>| match cell {
            Some(cell) => self.cell(term, cell),
            None => self.words.word("unknown").into(),
        };
        Some(vec![Prose::new().said(&term.name), side(&tell.here), side(&tell.there)])
    }
}
