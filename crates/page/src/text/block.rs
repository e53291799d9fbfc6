//! Blocks into lines.

use super::Style;
use super::table::{self, Row};
use super::wrap::{Face, wrap};
use crate::{
    Align, Block, Details, Fact, Figure, Heading, Item, Label, Labels, Level, Lines, List, Marks,
    Notice, NoticeKind, Prose, Table,
};
use unicode_width::UnicodeWidthStr;

/// Columns of a rule where no width is given.
const WIDE: usize = 80;

/// The room that lines may take, and how they may look.
#[derive(Clone, Copy)]
pub(super) struct Canvas {
    pub(super) width: Option<usize>,
    pub(super) style: Style,
}

impl Canvas {
    /// The same, with so many columns fewer.
    fn inner(self, less: usize) -> Self {
        Self { width: self.width.map(|width| width.saturating_sub(less).max(8)), ..self }
    }

    pub(super) fn title(self, title: &Prose) -> Vec<String> {
        self.underlined(title, '═')
    }

    pub(super) fn strong(self, prose: &Prose) -> Vec<String> {
        self.set(prose, Face::Bold)
    }

    /// Blocks with an empty line between them, except below a heading of the lower levels.
    pub(super) fn blocks(self, blocks: &[Block]) -> Vec<String> {
        let mut lines: Vec<String> = Vec::new();
        let mut close = true;
        for block in blocks {
            if !close {
                lines.push(String::new());
            }
            lines.extend(self.block(block));
            close = matches!(block, Block::Heading(h) if h.level != Level::Section);
        }
        lines
    }

    fn block(self, block: &Block) -> Vec<String> {
        match block {
            Block::Heading(heading) => self.heading(heading),
            Block::Para(prose) => self.set(prose, Face::Plain),
            Block::List(list) => self.list(list),
            Block::Table(table) => self.table(table),
            Block::Facts(facts) => self.facts(facts),
            Block::Notice(notice) => self.notice(notice),
            Block::Details(details) => self.details(details),
            Block::Figure(figure) => self.figure(figure),
            Block::Figures(figures) => figures.iter().flat_map(|f| self.figure(f)).collect(),
            Block::Ticks(ticks) => self.ticks(ticks),
            Block::Lines(to_write) => self.lines(to_write),
            Block::Large(blocks) => self.blocks(blocks),
            Block::Labels(labels) => self.labels(labels),
            Block::Break(_) => vec!["─".repeat(self.width.unwrap_or(WIDE))],
        }
    }

    fn set(self, prose: &Prose, face: Face) -> Vec<String> {
        wrap(prose, self.width, face).iter().map(|line| line.render(self.style)).collect()
    }

    fn underlined(self, prose: &Prose, rule: char) -> Vec<String> {
        let lines = wrap(prose, self.width, Face::Bold);
        let width = lines.iter().map(|line| line.width).max().unwrap_or(0);
        let mut said: Vec<_> = lines.iter().map(|line| line.render(self.style)).collect();
        said.push(rule.to_string().repeat(width));
        said
    }

    fn heading(self, heading: &Heading) -> Vec<String> {
        match heading.level {
            Level::Section => self.underlined(&heading.says, '─'),
            Level::Part | Level::Point => self.strong(&heading.says),
        }
    }

    fn list(self, list: &List) -> Vec<String> {
        let last = list.items.len().to_string().len();
        let mark = |at: usize| match list.marks {
            Marks::Bullets => "• ".to_owned(),
            Marks::Numbers | Marks::Notes => format!("{:>last$}. ", at + 1),
        };
        let items = list.items.iter().enumerate();
        items.flat_map(|(at, item)| self.item(&mark(at), item)).collect()
    }

    fn item(self, mark: &str, item: &Item) -> Vec<String> {
        let inner = self.inner(mark.width());
        let mut lines = inner.set(&item.says, Face::Plain);
        for block in &item.under {
            lines.extend(inner.block(block));
        }
        hang(mark, lines)
    }

    fn ticks(self, ticks: &[Prose]) -> Vec<String> {
        let tick = |says: &Prose| hang("☐ ", self.inner(2).set(says, Face::Plain));
        ticks.iter().flat_map(tick).collect()
    }

    fn lines(self, lines: &Lines) -> Vec<String> {
        let line = "_".repeat(self.width.unwrap_or(WIDE));
        let lined = std::iter::repeat_n(line, lines.count.into());
        self.set(&lines.label, Face::Plain).into_iter().chain(lined).collect()
    }

    fn labels(self, labels: &Labels) -> Vec<String> {
        labels.labels.iter().flat_map(|label| self.label(label)).collect()
    }

    /// A label in a frame, its code in words.
    fn label(self, label: &Label) -> Vec<String> {
        let inner = self.inner(2);
        let mut lines = inner.strong(&label.title);
        lines.extend(inner.set(&label.scientific, Face::Plain));
        lines.extend(label.do_not.iter().flat_map(|do_not| inner.strong(do_not)));
        let all = label.beside.iter().chain(&label.below);
        lines.extend(all.flat_map(|line| inner.set(&line.prose(), Face::Plain)));
        let rule = "─".repeat(self.width.unwrap_or(WIDE).min(WIDE) / 2);
        let says = lines.into_iter().map(|line| format!("│ {line}"));
        std::iter::once(format!("┌{rule}")).chain(says).chain([format!("└{rule}")]).collect()
    }

    fn table(self, table: &Table) -> Vec<String> {
        let rows: Vec<_> = std::iter::once(heads(table))
            .chain(table.rows.iter().map(|row| cells(table, row)))
            .collect();
        let aligns: Vec<_> = table.columns.iter().map(|column| column.align).collect();
        let widths = table::widths(&rows, table.columns.len(), self.width);
        let mut lines = self.strong(&table.caption);
        if !table::fits(&widths, self.width) {
            lines.extend(table.rows.iter().flat_map(|row| self.stacked(table, row)));
            return lines;
        }
        for (at, row) in rows.iter().enumerate() {
            lines.extend(table::lines(row, &widths, &aligns, self.style));
            if at == 0 {
                let rules: Vec<_> = widths.iter().map(|width| "─".repeat(*width)).collect();
                lines.push(rules.join("  "));
            }
        }
        lines
    }

    /// A row of a table that is too wide for the room: each cell below its column's head.
    fn stacked(self, table: &Table, row: &[Prose]) -> Vec<String> {
        let labelled = table.columns.iter().zip(row).map(|(column, cell)| {
            let says = column.head.clone().text(": ").then(cell.clone());
            self.inner(2).set(&says, Face::Plain)
        });
        hang("• ", labelled.flatten().collect())
    }

    fn facts(self, facts: &[Fact]) -> Vec<String> {
        let rows: Vec<_> = facts
            .iter()
            .map(|fact| Row { cells: vec![(&fact.label, Face::Bold), (&fact.value, Face::Plain)] })
            .collect();
        let widths = table::widths(&rows, 2, self.width);
        let aligns = [Align::Start, Align::Start];
        let mut lines = Vec::new();
        for (row, fact) in rows.iter().zip(facts) {
            lines.extend(table::lines(row, &widths, &aligns, self.style));
            let under = self.inner(2).blocks(&fact.under);
            lines.extend(hang("  ", under));
        }
        lines
    }

    fn notice(self, notice: &Notice) -> Vec<String> {
        let [top, side, bottom, rule] = frame(notice.kind);
        let inner = self.inner(2);
        let mut head = inner.inner(2).strong(&notice.head);
        let first = if head.is_empty() { String::new() } else { head.remove(0) };
        let mut lines = vec![format!("{top}{rule} {first}")];
        let rest = head.into_iter().chain(inner.blocks(&notice.blocks));
        lines.extend(rest.map(|line| format!("{side} {line}")));
        let length = self.width.unwrap_or(WIDE).min(WIDE) / 2;
        lines.push(format!("{bottom}{}", rule.repeat(length)));
        lines
    }

    fn details(self, details: &Details) -> Vec<String> {
        let mark = if details.open { "▾ " } else { "▸ " };
        let mut lines = hang(mark, self.inner(2).set(&details.summary, Face::Plain));
        if details.open {
            lines.extend(hang("  ", self.inner(2).blocks(&details.blocks)));
        }
        lines
    }

    fn figure(self, figure: &Figure) -> Vec<String> {
        let mut lines = self.strong(&figure.caption);
        let describes = Prose::from(figure.drawing.describes());
        lines.extend(hang("  ", self.inner(2).set(&describes, Face::Plain)));
        lines
    }
}

/// The frame of a notice: the graver, the heavier.
fn frame(kind: NoticeKind) -> [&'static str; 4] {
    match kind {
        NoticeKind::Question => ["┌", "│", "└", "─"],
        NoticeKind::Caution => ["╔", "║", "╚", "═"],
        NoticeKind::DoNot => ["┏", "┃", "┗", "━"],
    }
}

/// Lines with a mark before the first, the others indented as far.
fn hang(mark: &str, lines: Vec<String>) -> Vec<String> {
    let indent = " ".repeat(mark.width());
    let prefix = |at: usize| if at == 0 { mark } else { indent.as_str() };
    let lines = lines.into_iter().enumerate();
    lines.map(|(at, line)| format!("{}{line}", prefix(at))).collect()
}

fn heads(table: &Table) -> Row<'_> {
    let cells = table.columns.iter().map(|column| (&column.head, Face::Bold));
    Row { cells: cells.collect() }
}

fn cells<'a>(table: &Table, row: &'a [Prose]) -> Row<'a> {
    let face = |at: usize| {
        if at == 0 && table.rows_have_heads { Face::Bold } else { Face::Plain }
    };
    let cells = row.iter().enumerate().map(|(at, cell)| (cell, face(at)));
    Row { cells: cells.collect() }
}
