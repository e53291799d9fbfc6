//! The sheets of plants that a teacher asked for, each on a page of its own.

use super::NamedPage;
use super::sheet::teach::plant_page;
use crate::Words;
use desk::TeachReply;

/// A page for each plant, with the name of its file.
#[must_use]
pub fn sheet_pages(reply: &TeachReply, words: &Words<'_>) -> Vec<NamedPage> {
    let page = |sheet| plant_page(sheet, &reply.herbal_version, words);
    let named = reply.sheets.iter().map(|sheet| {
        let slug = sheet.known.sheet.name.to_lowercase();
        let slug = slug.replace(|c: char| !c.is_ascii_alphanumeric(), "-");
        NamedPage { name: format!("sheet-{slug}"), page: page(sheet) }
    });
    named.collect()
}
