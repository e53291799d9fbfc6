//! Pages as HTML: one file with its style in it, no script, no font from elsewhere. It reads on a
//! phone in the sun, through a screen reader, and on paper.

mod block;
mod palette;

use crate::block::opened_at;
use crate::{Direction, Kind, Page, TypeSize};
use block::Writer;
use maud::{DOCTYPE, PreEscaped, html};

const STYLE: &str = include_str!("html/style.css");

/// A page as a file of its own.
///
/// ```
/// use ground::Text;
/// use page::{Block, Catalogue, Kind, Words, html};
/// let catalogue = Catalogue::english();
/// let page = Words::new(&catalogue)
///     .page(Kind::Public, &Text::new("notice-question"))
///     .with([Block::para("Nettle <or not>?")]);
/// assert!(html(&page).contains("<p>Nettle &lt;or not&gt;?</p>"));
/// ```
#[must_use]
pub fn html(page: &Page) -> String {
    let page = page.isolated();
    let large = page.size == TypeSize::Large;
    let style = html_style();
    let mut writer = Writer::default();
    let body = writer.blocks(&page.blocks);
    html! {
        (DOCTYPE)
        html lang=(page.language) dir=[direction(page.direction())] class=[large.then_some("large")] {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                @if page.kind == Kind::Sealed {
                    meta name="robots" content="noindex, nofollow";
                }
                title { (page.title.plain()) }
                style { (PreEscaped(style)) }
            }
            body class=(kind_name(page.kind)) {
                a.skip href="#content" { (page.skip) }
                main #content tabindex="-1" {
                    @if let Some(band) = &page.band {
                        p.band { (block::prose(band)) }
                    }
                    h1 { (block::prose(&page.title)) }
                    (body)
                }
            }
        }
    }
    .into_string()
        + "\n"
}

/// What stands below the title of a page, as HTML that another document takes in; its style is
/// [`html_style`].
#[must_use]
pub fn html_body(page: &Page) -> String {
    Writer::default().blocks(&page.isolated().blocks).into_string()
}

/// What opens at an anchor of a page, as HTML; nothing where there is no such place.
#[must_use]
pub fn html_opened(page: &Page, anchor: &str) -> Option<String> {
    let page = page.isolated();
    let opened = opened_at(&page.blocks, anchor)?;
    Some(Writer::default().blocks(opened).into_string())
}

/// The style of every page, for a document that takes in the bodies of several.
#[must_use]
pub fn html_style() -> String {
    format!("{}{STYLE}", palette::variables())
}

/// The colours for dusk and for weak eyes, chosen by `data-looks` at the root of a document.
#[must_use]
pub fn html_looks() -> String {
    palette::other_lights()
}

/// The colour of the paper by day, as a style sheet writes it.
#[must_use]
pub fn html_paper() -> String {
    palette::paper()
}

/// What an element says of its direction; from left to right is what a browser takes unsaid.
fn direction(direction: Direction) -> Option<&'static str> {
    (direction == Direction::RightToLeft).then_some("rtl")
}

fn kind_name(kind: Kind) -> &'static str {
    match kind {
        Kind::Screen => "screen",
        Kind::Public => "public",
        Kind::Sealed => "sealed",
    }
}
