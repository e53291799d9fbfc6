//! Wide tables for large print: letters of 20 points leave room for two or three columns, so a wider
//! table becomes its rows, one below the other, each cell beside the head of its column.

use crate::{Block, Column, Fact, Item, Prose, Table};

/// Columns that stand side by side in large print.
const SIDE_BY_SIDE: usize = 3;

/// The same blocks, with no table wider than large print can hold.
pub(crate) fn spread(blocks: Vec<Block>) -> Vec<Block> {
    blocks.into_iter().flat_map(spread_one).collect()
}

fn spread_one(block: Block) -> Vec<Block> {
    match block {
        Block::Table(table) if table.columns.len() > SIDE_BY_SIDE => rows(&table),
        Block::Notice(mut notice) => {
            notice.blocks = spread(notice.blocks);
            vec![Block::Notice(notice)]
        }
        Block::Details(mut details) => {
            details.blocks = spread(details.blocks);
            vec![Block::Details(details)]
        }
        Block::Large(blocks) => vec![Block::Large(spread(blocks))],
        Block::Facts(facts) => {
            let under = |fact: Fact| Fact { under: spread(fact.under), ..fact };
            vec![Block::Facts(facts.into_iter().map(under).collect())]
        }
        Block::List(mut list) => {
            let under = |item: Item| Item { under: spread(item.under), ..item };
            list.items = list.items.into_iter().map(under).collect();
            vec![Block::List(list)]
        }
        other => vec![other],
    }
}

fn rows(table: &Table) -> Vec<Block> {
    let caption = Block::Para(table.caption.emphasised());
    let marks: Vec<_> = (0..table.columns.len()).map(|at| only_marks(table, at)).collect();
    let rows = table.rows.iter().flat_map(|row| {
        let (head, cells) = row.split_first()?;
        let named = table.rows_have_heads.then(|| Block::Para(head.emphasised()));
        let skip = usize::from(table.rows_have_heads);
        let cells = std::iter::once(head).chain(cells).zip(&table.columns).zip(&marks).skip(skip);
        let facts = cells.filter(|((cell, _), marks)| !**marks && !cell.is_empty());
        let facts = facts.map(|((cell, column), _)| Fact::new(column.head.clone(), cell.clone()));
        Some(named.into_iter().chain([Block::Facts(facts.collect())]).collect::<Vec<_>>())
    });
    std::iter::once(caption).chain(rows.flatten()).collect()
}

/// Whether a column holds nothing but marks under a letter, such as a month: another says it in words.
fn only_marks(table: &Table, at: usize) -> bool {
    let letter = |column: &Column| column.head.plain().chars().count() == 1;
    let wordless = |row: &Vec<Prose>| {
        row.get(at).is_none_or(|cell| !cell.plain().contains(char::is_alphanumeric))
    };
    table.columns.get(at).is_some_and(letter) && table.rows.iter().all(wordless)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn table(columns: &[&str]) -> Table {
        let cells = columns.iter().map(|head| Prose::from(format!("{head} of nettle")));
        Table {
            caption: "Pots".into(),
            columns: columns.iter().map(|head| Column::words(*head)).collect(),
            rows_have_heads: true,
            rows: vec![cells.collect()],
        }
    }

    #[test]
    fn a_wide_table_becomes_its_rows_with_every_word() {
        let wide = table(&["who", "tea", "dish", "bread"]);
        let spread = spread(vec![Block::Table(wide)]);
        let [Block::Para(caption), Block::Para(row), Block::Facts(facts)] = spread.as_slice()
        else {
            panic!("{spread:?}");
        };
        assert_eq!((caption.plain().as_str(), row.plain().as_str()), ("Pots", "who of nettle"));
        let said: Vec<_> = facts.iter().map(|f| (f.label.plain(), f.value.plain())).collect();
        assert_eq!(said.len(), 3);
        assert_eq!(said[1], ("dish".to_owned(), "dish of nettle".to_owned()));
    }

    #[test]
    fn a_narrow_table_stays() {
        let narrow = vec![Block::Table(table(&["look at", "one", "the other"]))];
        assert_eq!(spread(narrow.clone()), narrow);
    }
}
