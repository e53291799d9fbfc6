//! The chance that a wrong piece stays in, against how much of the basket is looked at.

use super::View;
use crate::svg::{Curve, Curves};
use crate::{Block, Column, Figure, Table, whole};
use crate::{Prose, Rounding};
use desk::CurvePoint;
use ground::{Finite, Text, Unit};

impl View<'_> {
    /// The drawing, and its numbers; nothing where nothing is wrong.
    pub(super) fn figure(&self) -> Vec<Block> {
        if self.reply.wrong == 0 {
            return Vec::new();
        }
        let caption = Text::new("sort-figure").with("count", self.reply.wrong);
        let caption = caption.with("of", self.reply.pieces);
        let line = |id: &str, dashed, of: fn(&CurvePoint) -> Finite| Curve {
            says: self.words.word(id),
            dashed,
            points: self.reply.curve.iter().map(|point| (point.share, of(point))).collect(),
        };
        let curves = Curves {
            title: self.words.catalogue.say(&caption),
            describes: self.describes(),
            up: self.words.word("sort-figure-up"),
            across: self.words.word("sort-figure-across"),
            lines: vec![
                line("sort-figure-one", true, |point| point.one),
                line("sort-figure-all", false, |point| point.all),
            ],
        };
        let caption = self.words.prose(&caption);
        vec![Block::Figure(Figure { drawing: curves.draw(), caption }), self.table()]
    }

    /// What each line comes down to.
    fn describes(&self) -> String {
        let Some(last) = self.reply.curve.last() else { return String::new() };
        let percent = |share: Finite| {
            self.words.catalogue.amount(100.0 * share.get(), Unit::Percent, Rounding::Up)
        };
        let text = Text::new("sort-figure-describes")
            .with("one", percent(last.one))
            .with("all", percent(last.all));
        self.words.catalogue.say(&text)
    }

    fn table(&self) -> Block {
        let heads = ["sort-figure-share", "sort-seen", "sort-figure-one", "sort-figure-all"];
        let row = |point: &CurvePoint| {
            vec![
                self.words.amount(100.0 * point.share.get(), Unit::Percent),
                Prose::new().number(&whole(i64::from(point.seen))),
                self.share(point.one),
                self.share(point.all),
            ]
        };
        Block::Table(Table {
            caption: self.words.word("sort-figure-numbers").into(),
            columns: heads.map(|id| Column::numbers(self.words.word(id))).into(),
            rows_have_heads: true,
            rows: self.reply.curve.iter().map(row).collect(),
        })
    }
}
