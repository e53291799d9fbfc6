//! Every piece of prose in a block, wherever it stands.

use crate::{Block, Label, Prose};

impl Block {
    /// Puts every piece of prose in it through a change, in reading order.
    pub(crate) fn each_prose(&mut self, change: &mut dyn FnMut(&mut Prose)) {
        match self {
            Self::Heading(heading) => change(&mut heading.says),
            Self::Para(says) => change(says),
            Self::List(list) => list.items.iter_mut().for_each(|item| {
                change(&mut item.says);
                all(&mut item.under, change);
            }),
            Self::Table(table) => {
                change(&mut table.caption);
                table.columns.iter_mut().for_each(|column| change(&mut column.head));
                table.rows.iter_mut().flatten().for_each(change);
            }
            Self::Facts(facts) => facts.iter_mut().for_each(|fact| {
                change(&mut fact.label);
                change(&mut fact.value);
                all(&mut fact.under, change);
            }),
            Self::Notice(notice) => {
                change(&mut notice.head);
                all(&mut notice.blocks, change);
            }
            Self::Details(details) => {
                change(&mut details.summary);
                all(&mut details.blocks, change);
            }
            Self::Figure(figure) => change(&mut figure.caption),
            Self::Figures(figures) => figures.iter_mut().for_each(|f| change(&mut f.caption)),
            Self::Ticks(ticks) => ticks.iter_mut().for_each(change),
            Self::Lines(lines) => change(&mut lines.label),
            Self::Large(blocks) => all(blocks, change),
            Self::Labels(labels) => labels.labels.iter_mut().for_each(|l| of_label(l, change)),
            Self::Break(_) => {}
        }
    }
}

fn all(blocks: &mut [Block], change: &mut dyn FnMut(&mut Prose)) {
    blocks.iter_mut().for_each(|block| block.each_prose(change));
}

fn of_label(label: &mut Label, change: &mut dyn FnMut(&mut Prose)) {
    change(&mut label.title);
    change(&mut label.scientific);
    label.do_not.iter_mut().for_each(&mut *change);
    for line in label.beside.iter_mut().chain(&mut label.below) {
        change(&mut line.label);
        change(&mut line.value);
    }
}
