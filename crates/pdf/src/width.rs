//! Whether the words of a table fit beside each other, judged before it is set.

use page::{Fact, Prose, Table, TypeSize};

/// Width of a letter of a long word in bold type, in the size of the type: Andika's average over
/// English words, and a little more.
const LETTER_EM: f64 = 0.62;
/// What stands between two columns.
const GAP_EM: f64 = 0.9;
/// Letters are set no smaller than this, against the text of the page; in large print no smaller
/// than 18 points.
const SMALLEST: f64 = 0.7;
const SMALLEST_LARGE: f64 = 0.9;

/// The size of a table's letters against those of the page, so that no word of one column reaches
/// into the next.
pub(crate) fn table_size(table: &Table, line_ems: f64, size: TypeSize) -> f64 {
    let smallest = match size {
        TypeSize::Normal => SMALLEST,
        TypeSize::Large => SMALLEST_LARGE,
    };
    let column = |at: usize| {
        let cells = table.rows.iter().filter_map(|row| row.get(at));
        let heads = table.columns.get(at).map(|column| &column.head);
        cells.chain(heads).map(longest_word).max().unwrap_or(0)
    };
    let columns = table.columns.len();
    let letters: usize = (0..columns).map(column).sum();
    let wanted = letters as f64 * LETTER_EM + columns as f64 * GAP_EM;
    let size = (line_ems / wanted).clamp(smallest, 1.0);
    (size * 100.0).floor() / 100.0
}

/// Whether labels beside their values would take more than two fifths of the line.
pub(crate) fn labels_are_long(facts: &[Fact], line_ems: f64) -> bool {
    let letters = facts.iter().map(|fact| fact.label.plain().chars().count()).max();
    letters.is_some_and(|letters| letters as f64 * LETTER_EM > 0.4 * line_ems)
}

/// Letters of the longest stretch that is not broken.
fn longest_word(prose: &Prose) -> usize {
    let plain = prose.plain();
    let words = plain.split([' ', '\u{2013}', '-', '/']);
    words.map(|word| word.chars().count().min(crate::block::LONG_WORD)).max().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use page::Column;

    fn table(columns: usize, word: &str) -> Table {
        Table {
            caption: Prose::new(),
            columns: (0..columns).map(|_| Column::words(word)).collect(),
            rows_have_heads: true,
            rows: Vec::new(),
        }
    }

    #[test]
    fn letters_shrink_only_where_they_must() {
        assert_eq!(table_size(&table(3, "leaf"), 45.0, TypeSize::Normal), 1.0);
        let crowded = table_size(&table(8, "withhold"), 40.0, TypeSize::Normal);
        assert!((SMALLEST..1.0).contains(&crowded), "{crowded}");
        assert!(table_size(&table(9, "withhold"), 40.0, TypeSize::Normal) <= crowded);
    }
}
