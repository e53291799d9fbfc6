//! Reading the files of a herbal: positions for faults, and sources for facts.

use crate::places::Account;
use ground::{Fault, Faults, Place, Source, SourceId, SourceKind, Sourcing, Standing};
use serde::Deserialize;
use serde::de::DeserializeOwned;
use std::collections::{BTreeMap, BTreeSet};
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
    /// The folders that were asked for, each with its slash.
    asked: BTreeSet<String>,
    /// The folders of which a file could not be read.
    broken: BTreeSet<String>,
    account: Account,
    faults: Faults,
}

/// What a reading leaves behind besides what was read.
pub(crate) struct Leavings {
    /// Every source that facts may name.
    pub(crate) sources: BTreeMap<SourceId, Source>,
    /// Where each row stands, and what it rests on.
    pub(crate) account: Account,
    /// What is wrong.
    pub(crate) faults: Faults,
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
        Self::over(files, &BTreeMap::new())
    }

    /// Starts with the sources of these files beside those that are known already.
    pub(crate) fn over(files: &'a [TextFile], known: &BTreeMap<SourceId, Source>) -> Self {
        let mut reader = Self {
            files,
            sources: known.clone(),
            asked: BTreeSet::new(),
            broken: BTreeSet::new(),
            account: Account::default(),
            faults: Faults::none(),
        };
        reader.refuse_twins();
        for file in reader.files_in("sources") {
            let Some(read) = reader.parse::<SourceFile>(file) else {
                continue;
            };
            for row in read.source {
                reader.add_source(file, row);
            }
        }
        reader
    }

    /// Two files of one name would make the answer depend on their order.
    fn refuse_twins(&mut self) {
        let mut seen = BTreeSet::new();
        for file in self.files {
            if !seen.insert(file.path.as_str()) {
                self.fault("file-twice", file, 0..0, &file.path);
            }
        }
    }

    /// A file in a folder that nobody asked for would be passed over in silence.
    fn refuse_strays(&mut self) {
        for file in self.files {
            if !self.asked.iter().any(|prefix| file.path.starts_with(prefix)) {
                self.fault("stray-file", file, 0..0, &file.path);
            }
        }
    }

    fn add_source(&mut self, file: &'a TextFile, row: SourceRow) {
        let span = row.id.span();
        let id = SourceId(row.id.into_inner());
        if bare(&id.0).is_some() {
            return self.fault("source-reserved", file, span, &id.0);
        }
        if self.sources.contains_key(&id) {
            return self.fault("source-twice", file, span, &id.0);
        }
        self.mark(file, &span, "source", &id.0, "");
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
    pub(crate) fn files_in(&mut self, folder: &str) -> Vec<&'a TextFile> {
        let prefix = format!("{folder}/");
        let inside = |file: &&TextFile| file.path.starts_with(&prefix);
        let mut found: Vec<_> = self.files.iter().filter(inside).collect();
        found.sort_by(|a, b| a.path.cmp(&b.path));
        self.asked.insert(prefix);
        found
    }

    /// One file as TOML of this shape; a fault when it is not.
    pub(crate) fn parse<T: DeserializeOwned>(&mut self, file: &TextFile) -> Option<T> {
        match toml::from_str(&file.text) {
            Ok(read) => Some(read),
            Err(error) => {
                let span = error.span().unwrap_or(0..0);
                self.fault("unreadable-toml", file, span, error.message());
                self.broken.insert(folder(&file.path).to_owned());
                None
            }
        }
    }

    /// Whether a file of a folder could not be read, so that what is not found there may well be
    /// in it: its own fault is enough.
    pub(crate) fn broken(&self, folder: &str) -> bool {
        self.broken.contains(folder)
    }

    /// The standing of a row from the list of its sources.
    ///
    /// It is published when any published text carries it, and weak when all of these are weak. A
    /// row that leans on memory or an assumption in any part has no better standing than that: which
    /// part it is, nobody can tell.
    pub(crate) fn sourcing(&mut self, file: &TextFile, src: &Spanned<Vec<String>>) -> Sourcing {
        let carried = self.carried(file, src);
        let standing = match Self::bare_standing(src.get_ref()) {
            Some(bare @ (Standing::Remembered | Standing::Assumed)) => bare,
            _ => carried.standing,
        };
        self.account.count(&file.path, standing, &carried.sources);
        Sourcing { standing, ..carried }
    }

    /// The standing of the main statement of a cell: a word such as `memory` beside a source marks
    /// what is said of the rarer states.
    pub(crate) fn main_sourcing(
        &mut self,
        file: &TextFile,
        src: &Spanned<Vec<String>>,
    ) -> Sourcing {
        let carried = self.carried(file, src);
        self.account.count(&file.path, carried.standing, &carried.sources);
        carried
    }

    fn carried(&mut self, file: &TextFile, src: &Spanned<Vec<String>>) -> Sourcing {
        let mut sources = Vec::new();
        for word in src.get_ref() {
            if bare(word).is_some() {
                continue;
            }
            if self.sources.contains_key(&SourceId(word.clone())) {
                sources.push(SourceId(word.clone()));
            } else if !self.broken("sources") {
                self.fault("unknown-source", file, src.span(), word);
            }
        }
        let weak = |id: &SourceId| self.sources.get(id).is_none_or(|source| source.weak);
        let standing = match Self::bare_standing(src.get_ref()) {
            _ if sources.iter().any(|id| !weak(id)) => Standing::Published,
            _ if !sources.is_empty() => Standing::Weak,
            Some(bare) => bare,
            None => {
                if src.get_ref().is_empty() {
                    self.fault("no-source", file, src.span(), "");
                }
                Standing::Remembered
            }
        };
        Sourcing { standing, sources }
    }

    /// The weakest standing that a list names in words instead of a source.
    pub(crate) fn bare_standing(src: &[String]) -> Option<Standing> {
        src.iter().filter_map(|word| bare(word)).max()
    }

    /// Remembers where a row, or a field of it, stands.
    pub(crate) fn mark(
        &mut self,
        file: &TextFile,
        span: &Range<usize>,
        table: &str,
        entry: &str,
        field: &str,
    ) {
        let (line, column) = Place::line_and_column(&file.text, span.start);
        self.account.places.mark(&file.path, (line, column), table, entry, field);
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

    /// What the reading leaves behind.
    pub(crate) fn finish(mut self) -> Leavings {
        self.refuse_strays();
        Leavings { sources: self.sources, account: self.account, faults: self.faults }
    }
}

/// The standing that a word names, if it is no source.
fn bare(word: &str) -> Option<Standing> {
    let known = STANDINGS.iter().find(|(name, _)| *name == word);
    known.map(|(_, standing)| *standing)
}

/// The folder of the root in which a file lies.
pub(crate) fn folder(path: &str) -> &str {
    path.split_once('/').map_or("", |(folder, _)| folder)
}

/// Where a byte range of a file begins.
pub(crate) fn place(file: &TextFile, span: &Range<usize>) -> Place {
    let (line, column) = Place::line_and_column(&file.text, span.start);
    Place::default().in_file(&file.path).at(line, column)
}
