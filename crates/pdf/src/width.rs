//! Whether the words of a table fit beside each other, and how wide its columns are set, judged before
//! it is set.

use page::{Block, Fact, Inline, Prose, Table, TypeSize};

/// Width of a letter of a long word in bold type, in the size of the type: Andika's average over
/// English words, and a little more.
const LETTER_EM: f64 = 0.62;
/// Width of a letter over a whole cell of words and gaps.
const CELL_LETTER_EM: f64 = 0.54;
const BOLD_CELL_LETTER_EM: f64 = 0.6;
/// How much wider a few letters may come out than letters do on average.
const SLACK_EM: f64 = 0.8;
/// A name, a place or a time stays in one line where there is room.
const SHORT_EM: f64 = 12.0;
/// Room to write a time, a weight or two initials, and how much of it is welcome.
const ROOM_EM: f64 = 4.0;
const WELCOME_ROOM_EM: f64 = 9.0;
/// What stands between two columns.
const GAP_EM: f64 = 0.9;
/// Letters are set no smaller than this, against the text of the page; in large print no smaller
/// than 18 points.
const SMALLEST: f64 = 0.7;
const SMALLEST_LARGE: f64 = 0.9;
/// What share of a line in the letters of the text a title takes at the foot, in smaller ones.
const RUNNING: f64 = 0.8;
/// What share of a page a row, or a whole table, takes at most that stays in one piece.
const TALL: f64 = 0.25;
/// What share of a line the value of a fact takes at least.
const VALUE: f64 = 0.4;
/// Lines that room to write takes.
const ROOM_LINES: f64 = 2.0;

/// The size of a table's letters against those of the page, so that no word of one column reaches
/// into the next.
pub(crate) fn table_size(table: &Table, line_ems: f64, size: TypeSize) -> f64 {
    let smallest = match size {
        TypeSize::Normal => SMALLEST,
        TypeSize::Large => SMALLEST_LARGE,
    };
    let columns = table.columns.len();
    let letters: usize =
        (0..columns).filter_map(|at| cells(table, at).map(longest_word).max()).sum();
    let wanted = letters as f64 * LETTER_EM + columns as f64 * GAP_EM;
    let size = (line_ems / wanted).clamp(smallest, 1.0);
    (size * 100.0).floor() / 100.0
}

/// Head and cells of a column.
fn cells(table: &Table, at: usize) -> impl Iterator<Item = &Prose> {
    let head = table.columns.get(at).map(|column| &column.head);
    head.into_iter().chain(table.rows.iter().filter_map(move |row| row.get(at)))
}

/// Whether a cell is nothing but room to write.
pub(crate) fn is_room(cell: &Prose) -> bool {
    !cell.is_empty() && cell.iter().all(|piece| *piece == Inline::Blank)
}

/// How a column is set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Width {
    /// As wide as its widest cell.
    Natural,
    /// A share of the line.
    Share(f64),
}

/// What a column needs, in the size of the letters.
#[derive(Clone, Copy)]
struct Need {
    /// For its longest word, or to write in.
    least: f64,
    /// For its longest cell in one line.
    most: f64,
    /// For its cells on the whole: the root of their mean square.
    usual: f64,
    room: bool,
}

impl Need {
    fn of(table: &Table, at: usize) -> Self {
        let longest = cells(table, at).map(letters).fold(0.0, f64::max);
        let squares: f64 = cells(table, at).map(letters).map(|letters| letters * letters).sum();
        let usual = (squares / cells(table, at).count().max(1) as f64).sqrt();
        let word = cells(table, at).map(longest_word).max().unwrap_or(0) as f64;
        let bold = at == 0 && table.rows_have_heads;
        let letter = if bold { BOLD_CELL_LETTER_EM } else { CELL_LETTER_EM };
        let room = cells(table, at).any(is_room);
        let (least, most) = if room { (ROOM_EM, WELCOME_ROOM_EM) } else { (0.0, 0.0) };
        Self {
            least: least.max(word * LETTER_EM) + GAP_EM,
            most: most.max(longest * letter + SLACK_EM).max(word * LETTER_EM) + GAP_EM,
            usual: most.max(usual * letter) + GAP_EM,
            room,
        }
    }

    /// Long cells are given more of the line, but less than in proportion: rows then come out about
    /// equally high.
    fn weight(self) -> f64 {
        self.usual.sqrt()
    }
}

/// How wide each column is set on a line so long: all as they come where they fit, what is written in
/// taking the rest; else no column less than its longest word and none more than its longest cell.
pub(crate) fn columns(table: &Table, line_ems: f64) -> Vec<Width> {
    let needs: Vec<_> = (0..table.columns.len()).map(|at| Need::of(table, at)).collect();
    if needs.iter().map(|need| need.most).sum::<f64>() <= line_ems {
        let width = |need: &Need| if need.room { Width::Share(1.0) } else { Width::Natural };
        return needs.iter().map(width).collect();
    }
    shares(&needs, line_ems).into_iter().map(Width::Share).collect()
}

/// What is short or fits into an even share comes as it is. The others share the rest by weight, until
/// none is too narrow or wider than it needs.
fn shares(needs: &[Need], line_ems: f64) -> Vec<f64> {
    let short = SHORT_EM.max(line_ems / needs.len() as f64);
    let mut spare = line_ems - needs.iter().map(|need| need.least).sum::<f64>();
    let as_it_comes = |need: &Need| {
        let more = need.most - need.least;
        let fits = !need.room && need.most <= short && more <= spare;
        spare -= if fits { more } else { 0.0 };
        fits.then_some(need.most)
    };
    let mut fixed: Vec<_> = needs.iter().map(as_it_comes).collect();
    loop {
        let free = || needs.iter().zip(&fixed).filter(|(_, fixed)| fixed.is_none());
        let rest = line_ems - fixed.iter().flatten().sum::<f64>();
        let weights: f64 = free().map(|(need, _)| need.weight()).sum();
        let share = |need: &Need| (rest * need.weight() / weights).max(0.0);
        let narrow = needs
            .iter()
            .enumerate()
            .find(|(at, need)| fixed.get(*at) == Some(&None) && share(need) < need.least);
        let wide = needs
            .iter()
            .enumerate()
            .find(|(at, need)| fixed.get(*at) == Some(&None) && share(need) > need.most);
        let settled = narrow.map(|(at, need)| (at, need.least));
        let Some((at, width)) = settled.or(wide.map(|(at, need)| (at, need.most))) else {
            let width = |(need, fixed): (&Need, &Option<f64>)| fixed.unwrap_or_else(|| share(need));
            return needs.iter().zip(&fixed).map(width).collect();
        };
        fixed.iter_mut().skip(at).take(1).for_each(|fixed| *fixed = Some(width));
    }
}

/// Whether a row takes so many lines that it must be broken over pages where it does not fit.
pub(crate) fn is_tall(row: &[Prose], columns: &[Width], lines: f64) -> bool {
    lines_of(row, columns) > TALL * lines
}

/// Whether a table takes so few lines that it stays on one page, its head and the gaps counted in.
pub(crate) fn is_short(table: &Table, columns: &[Width], lines: f64) -> bool {
    let rows = table.rows.iter().map(|row| lines_of(row, columns).ceil().max(1.0) + 0.5);
    2.0 + rows.sum::<f64>() <= TALL * lines
}

/// How many lines a row takes.
fn lines_of(row: &[Prose], columns: &[Width]) -> f64 {
    let takes = |(cell, column): (&Prose, &Width)| match column {
        _ if is_room(cell) => ROOM_LINES,
        Width::Natural => 1.0,
        Width::Share(share) => letters(cell) * CELL_LETTER_EM / (share - GAP_EM).max(1.0),
    };
    row.iter().zip(columns).map(takes).fold(0.0, f64::max)
}

fn letters(cell: &Prose) -> f64 {
    cell.plain().chars().count() as f64
}

/// How wide labels are set beside their values: as they come where that leaves the values three fifths of
/// the line, else so wide that no word of theirs is broken.
pub(crate) fn labels(facts: &[Fact], line_ems: f64) -> Width {
    let longest = facts.iter().map(|fact| letters(&fact.label)).fold(0.0, f64::max);
    if longest * LETTER_EM <= 0.4 * line_ems {
        return Width::Natural;
    }
    let word = facts.iter().map(|fact| longest_word(&fact.label)).max().unwrap_or(0) as f64;
    Width::Share((word * LETTER_EM + GAP_EM).clamp(0.38 * line_ems, 0.6 * line_ems))
}

/// A title as it fits on one line at the foot of each page.
pub(crate) fn running(title: &Prose, line_ems: f64) -> Prose {
    let fits = (RUNNING * line_ems / CELL_LETTER_EM) as usize;
    if title.plain().chars().count() <= fits { title.clone() } else { title.cut(fits) }
}

/// Whether a fact, with what stands below its value, takes so few lines that it stays on one page. What
/// holds more than sentences and points may be broken.
pub(crate) fn is_brief(fact: &Fact, line_ems: f64, lines: f64) -> bool {
    let takes = |prose: &Prose| (letters(prose) * LETTER_EM / (VALUE * line_ems)).ceil().max(1.0);
    let below = |block: &Block| match block {
        Block::Para(prose) => Some(0.5 + takes(prose)),
        Block::List(list) if list.items.iter().all(|item| item.under.is_empty()) => {
            Some(list.items.iter().map(|item| takes(&item.says)).sum())
        }
        _ => None,
    };
    let under: Option<f64> = fact.under.iter().map(below).sum();
    under.is_some_and(|under| takes(&fact.value) + under <= TALL * lines)
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
    fn short_columns_stay_whole_and_none_is_narrower_than_its_longest_word() {
        let mut table = table(3, "look at");
        let long =
            "usually without a stalk, now and then a sheath round the stem or shoot".repeat(4);
        table.rows = vec![["smell of the leaf", "with a stalk", &long].map(Prose::from).into()];
        let widths = columns(&table, 45.0);
        let share = |at: usize| match widths.get(at) {
            Some(Width::Share(share)) => *share,
            _ => 0.0,
        };
        assert!(share(0) >= 17.0 * BOLD_CELL_LETTER_EM && share(2) > 2.0 * share(1), "{widths:?}");
        assert!((share(0) + share(1) + share(2) - 45.0).abs() < 1e-9, "{widths:?}");
        table.rows = vec![[Prose::from("Nils"), Prose::new().blank(), Prose::from("yes")].into()];
        assert_eq!(columns(&table, 45.0), [Width::Natural, Width::Share(1.0), Width::Natural]);
    }

    #[test]
    fn a_fact_of_few_lines_stays_whole_and_one_that_holds_a_working_does_not() {
        let with = |under: Vec<Block>| Fact { under, ..Fact::new("of carrot", "These are alike:") };
        let brief = |fact: &Fact| is_brief(fact, 40.0, 45.0);
        assert!(brief(&with(vec![Block::bullets(["cowbane: deadly"; 3])])));
        assert!(!brief(&with(vec![Block::bullets(["cowbane: deadly"; 12])])));
        assert!(!brief(&with(vec![Block::Break(page::Break::Rule)])));
    }

    #[test]
    fn letters_shrink_only_where_they_must() {
        assert_eq!(table_size(&table(3, "leaf"), 45.0, TypeSize::Normal), 1.0);
        let crowded = table_size(&table(8, "withhold"), 40.0, TypeSize::Normal);
        assert!((SMALLEST..1.0).contains(&crowded), "{crowded}");
        assert!(table_size(&table(9, "withhold"), 40.0, TypeSize::Normal) <= crowded);
    }
}
