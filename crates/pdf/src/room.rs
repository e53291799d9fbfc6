//! Where the typesetter works: two sources and some fonts in memory, and nothing else.

use crate::fonts::Fonts;
use typst::diag::{FileError, FileResult, SourceDiagnostic};
use typst::ecow::EcoVec;
use typst::foundations::{Bytes, Datetime, Duration};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Feature, Library, LibraryExt as _, World};
use typst_layout::PagedDocument;

/// How blocks look on paper.
const STYLE: &str = include_str!("style.typ");

/// What is the same for every page.
pub(crate) struct Room {
    library: LazyHash<Library>,
    book: LazyHash<FontBook>,
    fonts: Fonts,
    style: Source,
    main: FileId,
}

impl Room {
    pub(crate) fn new(fonts: Fonts) -> Self {
        // Row heads of tables are still behind this switch.
        let features = [Feature::A11yExtras].into_iter().collect();
        let library = Library::builder().with_features(features).build();
        let style = Source::detached(STYLE);
        Self {
            library: LazyHash::new(library),
            book: LazyHash::new(fonts.book()),
            fonts,
            style: Source::new(file("/style.typ", style.id()), STYLE.to_owned()),
            main: file("/page.typ", style.id()),
        }
    }

    pub(crate) fn fonts(&self) -> &Fonts {
        &self.fonts
    }

    /// Sets a source that may import `style.typ`.
    pub(crate) fn set(&self, source: String) -> Result<PagedDocument, EcoVec<SourceDiagnostic>> {
        let work = Work { room: self, main: Source::new(self.main, source) };
        typst::compile::<PagedDocument>(&work).output
    }
}

/// The identifier of a file that is only a name; `or` stands in for a name that cannot be.
fn file(path: &str, or: FileId) -> FileId {
    let path = VirtualPath::new(path);
    path.map_or(or, |path| RootedPath::new(VirtualRoot::Project, path).intern())
}

/// One page on the table.
struct Work<'a> {
    room: &'a Room,
    main: Source,
}

impl World for Work<'_> {
    fn library(&self) -> &LazyHash<Library> {
        &self.room.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &self.room.book
    }

    fn main(&self) -> FileId {
        self.main.id()
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        let all = [&self.main, &self.room.style];
        all.into_iter().find(|source| source.id() == id).cloned().ok_or(FileError::AccessDenied)
    }

    fn file(&self, _: FileId) -> FileResult<Bytes> {
        Err(FileError::AccessDenied)
    }

    fn font(&self, index: usize) -> Option<Font> {
        self.room.fonts.get(index)
    }

    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}
