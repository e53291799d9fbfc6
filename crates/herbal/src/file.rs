//! Reading the files of a herbal: positions for faults, and sources for facts.

use ground::{Fault, Faults, Place, Source, SourceId, SourceKind, Sourcing, Standing};
use serde::Deserialize;
use serde::de::DeserializeOwned;
use std::collections::BTreeMap;
use std::ops::Range;
use toml::Spanned;

/// A text file, as its path from the root of the herbal and its content.
#[derive(Clone, Debug)]
pub struct TextFile {
    /// Path, such as `species/urtica-dioica.toml`.
    pub path: String,
    /// Content.
    pub text: String,
}

/// Words that stand where a source would, for facts that have none.
const STANDINGS: [(&str, Standing); 4] = [
    ("practice", Standing::Practice),
    ("policy", Standing::Policy),
    ("assumed", Standing::Assumed),
    ("memory", Standing::Remembered),
];

/// Reads the files of a herbal and gathers every fault on the way.
pub(crate) struct Reader<'a> {
    files: &'a [TextFile],
    sources: BTreeMap<SourceId, Source>,
    faults: Faults,
}

/// A file of `sources/`.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct SourceFile {
    #[serde(default)]
    source: Vec<SourceRow>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct SourceRow {
    id: Spanned<String>,
    title: String,
    author: String,
    address: Option<String>,
    kind: SourceKind,
    #[serde(default)]
    weak: bool,
}

impl<'a> Reader<'a> {
    /// Starts with the sources, since every other file names them.
    pub(crate) fn new(files: &'a [TextFile]) -> Self {
        let mut reader = Self {
            files,
            sources: BTreeMap::new(),
            faults: Faults::none(),
        };
        for file in files
            .iter()
            .filter(|file| file.path.starts_with("sources/"))
        {
            let Some(read) = reader.parse::<SourceFile>(file) else {
                continue;
            };
            for row in read.source {
                reader.add_source(file, row);
            }
        }
        reader
    }

    fn add_source(&mut self, file: &TextFile, row: SourceRow) {
        let span = row.id.span();
        let id = SourceId(row.id.into_inner());
        if STANDINGS.iter().any(|(word, _)| *word == id.0) || self.sources.contains_key(&id) {
            self.fault("source-twice", file, span, &id.0);
            return;
        }
        let weak = row.weak || row.address.is_none();
        let source = Source {
            id: id.clone(),
            title: row.title,
            author: row.author,
            address: row.address,
            kind: row.kind,
            weak,
        };
        self.sources.insert(id, source);
    }

    /// The files in a folder, in order of their paths.
    pub(crate) fn files_in(&self, folder: &str) -> Vec<&'a TextFile> {
        let prefix = format!("{folder}/");
        let mut found: Vec<_> = self
            .files
            .iter()
            .filter(|f| f.path.starts_with(&prefix))
            .collect();
        found.sort_by(|a, b| a.path.cmp(&b.path));
        found
    }

    /// One file as TOML of this shape; a fault when it is not.
    pub(crate) fn parse<T: DeserializeOwned>(&mut self, file: &TextFile) -> Option<T> {
        match toml::from_str(&file.text) {
            Ok(read) => Some(read),
            Err(error) => {
                let span = error.span().unwrap_or(0..0);
                self.fault("unreadable-toml", file, span, error.message());
                None
            }
        }
    }

    /// The standing of a fact from the list of its sources.
    ///
    /// A fact is published when any published text carries it; it is weak when all of these are
    /// weak. A word such as `memory` beside a source marks what the source does not carry, which
    /// the reader of that row deals with.
    pub(crate) fn sourcing(&mut self, file: &TextFile, src: &Spanned<Vec<String>>) -> Sourcing {
        let mut sources = Vec::new();
        let mut standing = None;
        for word in src.get_ref() {
            if let Some((_, bare)) = STANDINGS.iter().find(|(name, _)| name == word) {
                standing = standing.max(Some(*bare));
            } else if self.sources.contains_key(&SourceId(word.clone())) {
                sources.push(SourceId(word.clone()));
            } else {
                self.fault("unknown-source", file, src.span(), word);
            }
        }
        let weak = |id: &SourceId| self.sources.get(id).is_none_or(|source| source.weak);
        let standing = match standing {
            _ if sources.iter().any(|id| !weak(id)) => Standing::Published,
            _ if !sources.is_empty() => Standing::Weak,
            Some(bare) => bare,
            None => {
                self.fault("no-source", file, src.span(), "");
                Standing::Remembered
            }
        };
        Sourcing { standing, sources }
    }

    /// Whether a list of sources admits that part of the fact is remembered.
    pub(crate) fn partly_remembered(src: &Spanned<Vec<String>>) -> bool {
        src.get_ref().iter().any(|word| word == "memory")
    }

    /// Notes a fault at a byte range of a file.
    pub(crate) fn fault(&mut self, code: &str, file: &TextFile, span: Range<usize>, got: &str) {
        let fault = Fault::new(code, place(file, &span), got);
        self.faults.add(fault);
    }

    /// Notes a fault that was made elsewhere.
    pub(crate) fn add_fault(&mut self, fault: Fault) {
        self.faults.add(fault);
    }

    /// The sources that were read, and every fault.
    pub(crate) fn finish(self) -> (BTreeMap<SourceId, Source>, Faults) {
        (self.sources, self.faults)
    }
}

/// Where a byte range of a file begins.
pub(crate) fn place(file: &TextFile, span: &Range<usize>) -> Place {
    let (line, column) = Place::line_and_column(&file.text, span.start);
    Place::default().in_file(&file.path).at(line, column)
}
