//! Finding a plant by name: scientific, common or former, forgiving in spelling.
//!
//! Forgiving means: upper and lower case, accents, hyphens, apostrophes and gaps count for nothing,
//! and what is misspelt is answered with the nearest names. It never means guessing. A common name
//! that several plants carry, alone or as the tail of a longer one (*hemlock*, *water hemlock*),
//! gives the list.

use crate::{Flora, Sheet};
use ground::{Arg, Fault, Place};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// The most hits that a search gives for a misspelt name.
const NEAREST: usize = 5;

/// The most plants that a fault names.
const SHOWN: usize = 12;

/// What kind of name a plant was found by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum NameKind {
    /// Its scientific name.
    Scientific,
    /// A scientific name that it had.
    Former,
    /// A common name.
    Common,
}

/// How well a name fits what was asked, best first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Match {
    /// The same, but for case, accents, hyphens and gaps.
    Exact,
    /// The name begins so.
    Prefix,
    /// The name holds all the words asked for.
    Word,
    /// So many letters must be added, dropped, changed or swapped.
    Letters(usize),
}

/// A plant that was found.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Hit {
    /// How well the name fits.
    pub fit: Match,
    /// What kind of name it is.
    pub kind: NameKind,
    /// The scientific name of the plant.
    pub species: String,
    /// The name that fits.
    pub name: String,
}

/// A name that is not the name of one plant.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Near {
    /// What was asked.
    pub asked: String,
    /// Whether several plants carry the name; otherwise none does.
    pub several: bool,
    /// The plants that carry it, or the nearest names.
    pub hits: Vec<Hit>,
}

impl Near {
    /// The fault of an input that gives such a name: `several-plants` or `unknown-plant`.
    #[must_use]
    pub fn fault(&self, at: Place) -> Fault {
        let code = match (self.several, self.hits.is_empty()) {
            (true, _) => "several-plants",
            (false, false) => "unknown-plant",
            (false, true) => "unknown-plant-none-near",
        };
        let names = self.hits.iter().take(SHOWN).map(|hit| Arg::Taxon(hit.species.clone()));
        Fault::new(code, at, self.asked.as_str()).with("near", names.collect::<Vec<_>>())
    }
}

impl Flora {
    /// The one plant of this name.
    ///
    /// A scientific name, present or former, that fits exactly settles it, unless two sheets give the
    /// same former name. A common name settles it only when no other plant carries it, alone or
    /// within a longer name.
    ///
    /// # Errors
    /// The plants that carry the name, or the nearest names when none does.
    pub fn find(&self, name: &str) -> Result<&Sheet, Near> {
        // No two plants share a scientific name.
        if let Some(sheet) = self.sheet(name) {
            return Ok(sheet);
        }
        let hits = self.search(name);
        let exact =
            |kind| hits.iter().filter(move |hit| hit.fit == Match::Exact && hit.kind == kind);
        let several = hits.iter().any(|hit| hit.fit == Match::Exact);
        let settled = [NameKind::Scientific, NameKind::Former]
            .into_iter()
            .find_map(|kind| exact(kind).next().map(|hit| (hit, exact(kind).count())));
        let one = match settled {
            Some((hit, 1)) => Some(hit),
            Some(_) => None,
            None => exact(NameKind::Common).next().filter(|hit| self.alone(hit, &hits)),
        };
        one.and_then(|hit| self.sheet(&hit.species)).ok_or_else(|| Near {
            asked: name.to_owned(),
            several,
            hits: hits.into_iter().filter(|hit| !several || carries(hit)).collect(),
        })
    }

    /// Whether no other plant than this one carries a common name.
    fn alone(&self, found: &Hit, hits: &[Hit]) -> bool {
        hits.iter().filter(|hit| carries(hit)).all(|hit| hit.species == found.species)
    }

    /// Every plant with a name that fits, best first; each by its best name.
    ///
    /// Only where no name begins with what was asked, or holds its words, do the nearest spellings
    /// come in.
    #[must_use]
    pub fn search(&self, asked: &str) -> Vec<Hit> {
        let asked = Folded::of(asked);
        if asked.letters.is_empty() {
            return Vec::new();
        }
        let fitting = self.best_hits(|name| asked.fit(name));
        if !fitting.is_empty() {
            return fitting;
        }
        let mut nearest = self.best_hits(|name| asked.distance(name));
        nearest.truncate(NEAREST);
        nearest
    }

    /// The best hit of each plant, best first.
    fn best_hits(&self, fit: impl Fn(&Folded) -> Option<Match>) -> Vec<Hit> {
        let mut best: BTreeMap<&str, Hit> = BTreeMap::new();
        for Name { species, kind, name, folded } in self.names.get(|| self.all_names()) {
            let Some(fit) = fit(folded) else {
                continue;
            };
            let hit = Hit { fit, kind: *kind, species: species.clone(), name: name.clone() };
            let kept = best.entry(species).or_insert_with(|| hit.clone());
            if hit < *kept {
                *kept = hit;
            }
        }
        let mut hits: Vec<_> = best.into_values().collect();
        hits.sort();
        hits
    }

    /// Every name of every plant.
    fn all_names(&self) -> Vec<Name> {
        let names = self.sheets().flat_map(|sheet| {
            let scientific = std::iter::once((NameKind::Scientific, &sheet.name));
            let former = sheet.former.iter().map(|name| (NameKind::Former, name));
            let common = sheet.common.iter().map(|name| (NameKind::Common, name));
            let all = scientific.chain(former).chain(common);
            all.map(|(kind, name)| Name {
                species: sheet.name.clone(),
                kind,
                name: name.clone(),
                folded: Folded::of(name),
            })
        });
        names.collect()
    }
}

/// A name of a plant, made ready to be found.
#[derive(Debug)]
pub(crate) struct Name {
    species: String,
    kind: NameKind,
    name: String,
    folded: Folded,
}

/// Whether a plant carries the name that was asked for, alone or as words of a longer one.
fn carries(hit: &Hit) -> bool {
    matches!(hit.fit, Match::Exact | Match::Prefix | Match::Word)
}

/// A name without what people leave out: case, accents, hyphens, apostrophes, gaps.
#[derive(Debug)]
struct Folded {
    words: Vec<String>,
    letters: String,
}

impl Folded {
    fn of(name: &str) -> Self {
        let mut plain = String::new();
        for character in name.chars().flat_map(char::to_lowercase) {
            match character {
                '\'' | '’' | '‘' | '`' | '×' | '.' => {}
                c if c.is_alphanumeric() => push_plain(&mut plain, c),
                _ => plain.push(' '),
            }
        }
        // A hybrid's cross is written × or x.
        let words = plain.split_whitespace().filter(|word| *word != "x");
        let words: Vec<_> = words.map(str::to_owned).collect();
        let letters = words.concat();
        Self { words, letters }
    }

    /// How well a name fits what was asked, spelling taken at its word.
    fn fit(&self, name: &Self) -> Option<Match> {
        if self.letters == name.letters {
            Some(Match::Exact)
        } else if name.letters.starts_with(&self.letters) {
            Some(Match::Prefix)
        } else if self.words.iter().all(|word| name.has(word)) {
            Some(Match::Word)
        } else {
            None
        }
    }

    /// Whether a word is one of the name's; a letter alone stands for a word, as in *A. ursinum*.
    fn has(&self, word: &str) -> bool {
        let short = word.chars().count() == 1;
        let same = |own: &String| own == word || (short && own.starts_with(word));
        self.words.iter().any(same)
    }

    /// How many letters lie between: of the whole name, or of each word and the nearest one of the
    /// name's.
    fn distance(&self, name: &Self) -> Option<Match> {
        let words = self
            .words
            .iter()
            .map(|word| name.words.iter().filter_map(|own| letters_between(word, own)).min());
        let whole = letters_between(&self.letters, &name.letters);
        whole.into_iter().chain(words.sum::<Option<usize>>()).min().map(Match::Letters)
    }
}

/// How many letters lie between what was asked and a name, when it is no more than a third of them.
fn letters_between(asked: &str, name: &str) -> Option<usize> {
    let letters = strsim::damerau_levenshtein(asked, name);
    (letters <= asked.chars().count().div_ceil(3)).then_some(letters)
}

/// A letter without its accent; letters of two are spelt out.
fn push_plain(text: &mut String, letter: char) {
    let plain = match letter {
        'à' | 'á' | 'â' | 'ã' | 'ä' | 'å' | 'ā' | 'ă' | 'ą' => "a",
        'ç' | 'ć' | 'č' => "c",
        'ď' | 'đ' | 'ð' => "d",
        'è' | 'é' | 'ê' | 'ë' | 'ē' | 'ė' | 'ę' | 'ě' => "e",
        'ğ' => "g",
        'ì' | 'í' | 'î' | 'ï' | 'ī' | 'į' | 'ı' => "i",
        'ł' | 'ľ' | 'ļ' => "l",
        'ñ' | 'ń' | 'ň' => "n",
        'ò' | 'ó' | 'ô' | 'õ' | 'ö' | 'ø' | 'ō' | 'ő' => "o",
        'ŕ' | 'ř' => "r",
        'ś' | 'š' | 'ş' => "s",
        'ť' | 'ţ' => "t",
        'ù' | 'ú' | 'û' | 'ü' | 'ū' | 'ů' | 'ű' => "u",
        'ý' | 'ÿ' => "y",
        'ź' | 'ž' | 'ż' => "z",
        'ß' => "ss",
        'æ' => "ae",
        'œ' => "oe",
        'þ' => "th",
        // An accent that is a character of its own.
        '\u{300}'..='\u{36f}' => "",
        other => return text.push(other),
    };
    text.push_str(plain);
}
