//! Cells side by side: tables, and labels with their values.

use super::Style;
use super::wrap::{Face, Line, wrap};
use crate::{Align, Prose};

/// Cells between two columns.
const GAP: usize = 2;
/// No column is squeezed below this, unless its cells need less.
const LEAST: usize = 6;

/// A row of cells as they will be set.
pub(super) struct Row<'a> {
    pub(super) cells: Vec<(&'a Prose, Face)>,
}

/// How wide each column is: as its widest cell needs, the widest giving way first.
pub(super) fn widths(rows: &[Row<'_>], columns: usize, most: Option<usize>) -> Vec<usize> {
    let mut widths: Vec<_> = (0..columns).map(|at| widest(rows, at)).collect();
    let Some(most) = most else { return widths };
    let room = most.saturating_sub(GAP * columns.saturating_sub(1));
    while widths.iter().sum::<usize>() > room {
        match widths.iter_mut().max() {
            Some(width) if *width > LEAST => *width -= 1,
            _ => break,
        }
    }
    widths
}

fn widest(rows: &[Row<'_>], column: usize) -> usize {
    let cells = rows.iter().filter_map(|row| row.cells.get(column));
    let width = |(prose, face): &(&Prose, Face)| {
        let lines = wrap(prose, None, *face);
        lines.iter().map(|line| line.width).max().unwrap_or(0)
    };
    cells.map(width).max().unwrap_or(0)
}

/// Whether columns of these widths stand side by side in the room there is.
pub(super) fn fits(widths: &[usize], most: Option<usize>) -> bool {
    let all = widths.iter().sum::<usize>() + GAP * widths.len().saturating_sub(1);
    most.is_none_or(|most| all <= most)
}

/// A row in lines.
pub(super) fn lines(
    row: &Row<'_>,
    widths: &[usize],
    aligns: &[Align],
    style: Style,
) -> Vec<String> {
    let empty = Prose::new();
    let cells: Vec<Vec<Line>> = widths
        .iter()
        .enumerate()
        .map(|(at, width)| {
            let (prose, face) = row.cells.get(at).copied().unwrap_or((&empty, Face::Plain));
            wrap(prose, Some(*width), face)
        })
        .collect();
    let height = cells.iter().map(Vec::len).max().unwrap_or(0);
    (0..height)
        .map(|at| {
            let parts = cells.iter().zip(widths).zip(aligns);
            let parts: Vec<_> = parts
                .map(|((cell, width), align)| set(cell.get(at), *width, *align, style))
                .collect();
            parts.join(&" ".repeat(GAP))
        })
        .collect()
}

/// A line of a cell, padded to the width of its column.
fn set(line: Option<&Line>, width: usize, align: Align, style: Style) -> String {
    let Some(line) = line else {
        return " ".repeat(width);
    };
    let said = line.render(style);
    let pad = " ".repeat(width.saturating_sub(line.width));
    match align {
        Align::Start => said + &pad,
        Align::End => pad + &said,
    }
}
