//! Pages on paper: the blocks of a [`Page`] become a tagged PDF, in memory.
//!
//! This crate alone knows the typesetter. It reads no file and asks no network and no clock: equal
//! pages give equal bytes. Every file conforms to PDF/UA-1 (ISO 14289-1) and PDF/A-2a
//! (ISO 19005-2), as far as the typesetter checks it when it writes.

mod block;
mod fonts;
#[cfg(test)]
mod laid;
mod markup;
mod paper;
mod room;
mod width;

use fonts::Fonts;
use ground::{Fault, Place};
use jiff::civil::DateTime;
use page::{Page, Paper};
use paper::Setting;
use room::Room;
use typst::diag::SourceDiagnostic;
use typst::foundations::{Datetime, Smart};
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards, Timestamp};

/// Sizes at which a page that has one side only is tried, in points, the largest first.
const ONE_SIDE: &[f64] = &[11.0, 10.0, 9.0, 8.0, 7.5, 7.0];

/// Everything that printing takes and that is the same for every page.
pub struct Press {
    room: Room,
    standards: PdfStandards,
}

impl Press {
    /// A press with its fonts.
    ///
    /// # Errors
    /// Only a fault of our own: a font or a standard that the typesetter does not know.
    pub fn new() -> Result<Self, Fault> {
        let fonts = Fonts::embedded().ok_or_else(|| ours("a font cannot be read"))?;
        let standards = PdfStandards::new(&[PdfStandard::Ua_1, PdfStandard::A_2a])
            .map_err(|said| ours(said.message()))?;
        Ok(Self { room: Room::new(fonts), standards })
    }

    /// A page as a PDF file, which names the moment it speaks of, as PDF/A asks.
    ///
    /// # Errors
    /// A page that has one side only and does not fit on it at any size that can still be read.
    pub fn print(&self, page: &Page, paper: Paper, made: DateTime) -> Result<Vec<u8>, Fault> {
        let document = self.document(&page.isolated(), paper)?;
        let options = PdfOptions {
            creator: Smart::Custom(Some("trug".to_owned())),
            timestamp: timestamp(made),
            standards: self.standards.clone(),
            ..PdfOptions::default()
        };
        typst_pdf::pdf(&document, &options).map_err(|said| refused(&said))
    }

    fn document(&self, page: &Page, paper: Paper) -> Result<PagedDocument, Fault> {
        let setting = Setting::of(page, paper);
        if setting.one_side { self.on_one_side(page, &setting) } else { self.set(page, &setting) }
    }

    /// The largest setting at which a page is one side.
    fn on_one_side(&self, page: &Page, usual: &Setting) -> Result<PagedDocument, Fault> {
        for size in ONE_SIDE {
            let setting = Setting { size_pt: *size, ..usual.clone() };
            let document = self.set(page, &setting)?;
            if document.pages().len() == 1 {
                return Ok(document);
            }
        }
        let at = Place::entry("page", &page.title.plain(), "");
        Err(Fault::new("page-does-not-fit", at, page.title.plain()))
    }

    fn set(&self, page: &Page, setting: &Setting) -> Result<PagedDocument, Fault> {
        let source = markup::source(page, setting, self.room.fonts());
        let set = self.room.set(source);
        set.map_err(|said| refused(&said))
    }
}

fn timestamp(made: DateTime) -> Option<Timestamp> {
    let part = |part: i8| u8::try_from(part).ok();
    let moment = Datetime::from_ymd_hms(
        made.year().into(),
        part(made.month())?,
        part(made.day())?,
        part(made.hour())?,
        part(made.minute())?,
        part(made.second())?,
    )?;
    Some(Timestamp::new_utc(moment))
}

/// Faults of our own: no page should lead to them.
fn ours(said: &str) -> Fault {
    Fault::new("page-not-set", Place::default(), said)
}

fn refused(said: &[SourceDiagnostic]) -> Fault {
    let said: Vec<_> = said.iter().map(|one| one.message.as_str()).collect();
    ours(&said.join("; "))
}
