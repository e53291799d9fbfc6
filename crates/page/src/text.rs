//! Pages on a terminal: wrapped, indented, told by shape and word alone.

mod block;
mod table;
mod wrap;

use crate::Page;
use block::Canvas;

/// What a terminal can show.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Style {
    /// Characters only: a pipe, a file, a terminal without styles.
    Plain,
    /// Bold and italic letters. No colour: nothing here needs one.
    Ansi,
}

/// A page as text. With a width, no line is longer (down to 20 columns); without one, paragraphs
/// stay on one line, for programs that read further.
///
/// ```
/// use ground::Text;
/// use page::{Block, Catalogue, Kind, Style, Words, text};
/// let catalogue = Catalogue::english();
/// let page = Words::new(&catalogue)
///     .page(Kind::Screen, &Text::new("notice-question"))
///     .with([Block::para("Which nettle is it?")]);
/// let said = text(&page, Some(80), Style::Plain);
/// assert_eq!(said, "Open question\n═════════════\n\nWhich nettle is it?\n");
/// ```
#[must_use]
pub fn text(page: &Page, width: Option<usize>, style: Style) -> String {
    let page = page.isolated();
    let canvas = Canvas { width: width.map(|width| width.max(20)), style };
    // What goes on where something else ended has no title.
    let mut lines = if page.title.is_empty() { Vec::new() } else { canvas.title(&page.title) };
    if let Some(band) = &page.band {
        lines.push(String::new());
        lines.extend(canvas.strong(band));
    }
    let body = canvas.blocks(&page.blocks);
    if !body.is_empty() {
        if !lines.is_empty() {
            lines.push(String::new());
        }
        lines.extend(body);
    }
    let ends: Vec<_> = lines.iter().map(|line| line.trim_end()).collect();
    ends.join("\n") + "\n"
}
