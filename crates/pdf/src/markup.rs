//! The source that the typesetter reads: calls of the functions in `style.typ`, with every word in a
//! string of its own, so that nothing in a word can become a command.

use crate::block::Writer;
use crate::fonts::Fonts;
use crate::paper::Setting;
use crate::width;
use page::{Block, Break, Direction, Page, TypeSize};
use std::fmt::Write as _;

/// The whole source of a page.
pub(crate) fn source(page: &Page, setting: &Setting, fonts: &Fonts) -> String {
    let mut writer = Writer::new(page, setting, fonts);
    let title = string(&fonts.drawable(&page.title.plain()));
    let running = string(&fonts.drawable(&width::running(&page.title, setting.line_ems()).plain()));
    let band = page.band.as_ref().map_or("none".to_owned(), |band| writer.prose(band));
    let heading = writer.prose(&page.title);
    let head = format!("head({heading}, band: {band})");
    let body = if setting.folds {
        panels(&head, &mut writer, &page.blocks)
    } else {
        format!("#{head}\n#{{\n{}}}\n", writer.blocks(&page.blocks))
    };
    let Setting { width_mm, height_mm, margin_mm, size_pt, folds, one_side } = setting;
    let large = page.size == TypeSize::Large;
    let mut source = String::from("#import \"style.typ\": *\n");
    // Writing to a string cannot fail.
    let _ = write!(
        source,
        "#show: sheet.with(title: {title}, running: {running}, lang: {lang}, dir: {dir}, width: {width_mm}mm, height: {height_mm}mm, \
         margin: {margin_mm}mm, size: {size_pt}pt, folds: {folds}, one-side: {one_side}, \
         large: {large})\n{body}",
        lang = string(page.language.split('-').next().unwrap_or("en")),
        dir = match page.direction() {
            Direction::LeftToRight => "ltr",
            Direction::RightToLeft => "rtl",
        },
    );
    source
}

/// The panels of a card, the first of them under its title.
fn panels(head: &str, writer: &mut Writer<'_>, blocks: &[Block]) -> String {
    let parts = blocks.split(|block| *block == Block::Break(Break::Page));
    let parts: Vec<_> = parts.map(|part| writer.blocks(part)).collect();
    format!("#panels({{\n{head}\n{}}})\n", parts.join("}, {\n"))
}

/// A string of the typesetter's language.
pub(crate) fn string(words: &str) -> String {
    let mut said = String::with_capacity(words.len() + 2);
    said.push('"');
    for letter in words.chars() {
        match letter {
            '\\' | '"' => said.extend(['\\', letter]),
            letter if letter.is_control() => said.push(' '),
            letter => said.push(letter),
        }
    }
    said.push('"');
    said
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_word_can_leave_its_string() {
        assert_eq!(string("a \"b\" \\ #c\n$d$"), "\"a \\\"b\\\" \\\\ #c $d$\"");
    }
}
