//! One answer more, or one less, at the end of a file of looks.
//!
//! An answer is a line, written after all that stands there: nothing that was in the file is
//! touched. Every new text is read again and must say what the old one said and the answer, no
//! more and no less; what does not is never handed out.

use crate::outing::{Cell, InputFile, TableRow, assignment, rows};
use ground::{Fault, Place};
use jiff::civil::DateTime;
use std::collections::BTreeMap;

/// Looks of one reader share a table for so long: their time is that of its first.
const TOGETHER_SECONDS: i64 = 60;

const PLANT: &str = "plant";
const READER: &str = "reader";
const LOOKS: &str = "looks";
const SAW: &str = "saw";
const SHOWN: &str = "candidates-shown";

/// Who reads now, and when.
pub(super) struct Now<'a> {
    pub(super) reader: &'a str,
    pub(super) at: DateTime,
    /// Whether this reader was shown what it could be.
    pub(super) shown: bool,
}

/// What is written down.
pub(super) enum Line<'a> {
    /// A field of the plant.
    Plant(&'static str, &'a str),
    /// Somebody who reads.
    Reader(&'a str),
    /// How well one of them reads.
    Level { reader: &'a str, level: &'a str },
    /// What was seen of a character.
    Saw(Now<'a>, &'a str, Cell),
    /// That a reader is shown what it could be.
    Shown(Now<'a>),
}

/// Table and cells of each row of a file.
type Rows = Vec<(String, BTreeMap<String, Cell>)>;

/// A way to write an answer down: what is put at the end, and what the file says then.
struct Way {
    piece: String,
    says: Rows,
}

/// The file with an answer more.
///
/// # Errors
/// Where no line at the end of this file would say it.
pub(super) fn with(file: &InputFile, line: &Line<'_>) -> Result<InputFile, Fault> {
    let no_way = || Fault::new("looks-cannot-go-on", Place::default().in_file(&*file.name), "");
    let old = said(file).ok_or_else(no_way)?;
    let begin = match file.text.as_str() {
        "" => String::new(),
        text if text.ends_with('\n') => text.to_owned(),
        text => format!("{text}\n"),
    };
    let tried = ways(&old, line).into_iter().filter_map(|way| {
        let gap = if begin.is_empty() || !way.piece.starts_with('[') { "" } else { "\n" };
        let new = named(file, format!("{begin}{gap}{}", way.piece));
        (said(&new)? == way.says).then_some(new)
    });
    let inside = || match line {
        Line::Level { .. } => inside(file, &ways(&old, line)),
        _ => None,
    };
    tried.into_iter().next().or_else(inside).ok_or_else(no_way)
}

/// Two may begin to read at once: what is said of the first then stands among what is there, after the first line
/// where it says so.
fn inside(file: &InputFile, ways: &[Way]) -> Option<InputFile> {
    let ends = file.text.match_indices('\n').map(|(at, _)| at + 1);
    let mut put = ends.flat_map(|end| {
        let (before, after) = file.text.split_at(end);
        ways.iter().map(move |way| (way, format!("{before}{}{after}", way.piece)))
    });
    put.find_map(|(way, text)| {
        let new = named(file, text);
        (said(&new)? == way.says).then_some(new)
    })
}

fn named(file: &InputFile, text: String) -> InputFile {
    InputFile { name: file.name.clone(), text }
}

/// What a file says, table by table; none where it cannot be read.
fn said(file: &InputFile) -> Option<Rows> {
    let rows = rows(std::slice::from_ref(file)).ok()?;
    Some(rows.into_iter().map(|TableRow { table, cells, .. }| (table, cells)).collect())
}

fn words(words: &str) -> Cell {
    Cell::Words(words.to_owned())
}

fn assigned(field: &str, cell: &Cell) -> String {
    assignment((&field.to_owned(), cell)) + "\n"
}

/// The ways to write an answer down, the shortest first.
fn ways(old: &Rows, line: &Line<'_>) -> Vec<Way> {
    match line {
        Line::Plant(field, value) => {
            let line = assigned(field, &words(value));
            let begun = |cells: &mut BTreeMap<String, Cell>| {
                cells.insert((*field).to_owned(), words(value));
            };
            let head = format!("[{PLANT}]\n{line}");
            let cells = [((*field).to_owned(), words(value))];
            vec![in_last(old, PLANT, line, begun), in_new(old, PLANT, head, cells.into())]
        }
        Line::Reader(name) => {
            let head = format!("[[{READER}]]\n{}", assigned("name", &words(name)));
            vec![in_new(old, READER, head, [("name".to_owned(), words(name))].into())]
        }
        Line::Level { reader, level } => {
            let mut says = old.clone();
            let is_reader = |(table, cells): &&mut (String, BTreeMap<String, Cell>)| {
                table == READER && cells.get("name") == Some(&words(reader))
            };
            if let Some((_, cells)) = says.iter_mut().find(is_reader) {
                cells.insert("level".to_owned(), words(level));
            }
            vec![Way { piece: assigned("level", &words(level)), says }]
        }
        Line::Saw(now, character, cell) => {
            let line = assigned(character, cell);
            let seen = |cells: &mut BTreeMap<String, Cell>| {
                if let Some(Cell::Table(saw)) = cells.get_mut(SAW) {
                    saw.insert((*character).to_owned(), cell.clone());
                }
            };
            let head = head(now) + &line;
            let saw = BTreeMap::from([((*character).to_owned(), cell.clone())]);
            let new = in_new(old, LOOKS, head, cells(now, saw));
            match last(old, LOOKS).is_some_and(|row| now.goes_on(row)) {
                true => vec![in_last(old, LOOKS, line, seen), new],
                false => vec![new],
            }
        }
        Line::Shown(now) => {
            vec![in_new(old, LOOKS, head(now), cells(now, BTreeMap::new()))]
        }
    }
}

/// A line more for the last row of a table.
fn in_last(
    old: &Rows,
    table: &str,
    piece: String,
    change: impl Fn(&mut BTreeMap<String, Cell>),
) -> Way {
    let mut says = old.clone();
    if let Some((_, cells)) = says.iter_mut().rfind(|(known, _)| known == table) {
        change(cells);
    }
    Way { piece, says }
}

/// A row more of a table.
fn in_new(old: &Rows, table: &str, piece: String, cells: BTreeMap<String, Cell>) -> Way {
    let mut says = old.clone();
    // Rows of one table stand together, the tables in a fixed order: where it begins, rows know.
    says.push((table.to_owned(), cells));
    says.sort_by_key(|(known, _)| rank(known));
    Way { piece, says }
}

/// The order in which rows come back.
fn rank(table: &str) -> usize {
    [READER, LOOKS, PLANT].iter().position(|known| *known == table).unwrap_or(usize::MAX)
}

fn last<'r>(rows: &'r Rows, table: &str) -> Option<&'r BTreeMap<String, Cell>> {
    rows.iter().rfind(|(known, _)| known == table).map(|(_, cells)| cells)
}

impl Now<'_> {
    /// Whether a row of looks is of this reader and this minute, and they know no more than then.
    fn goes_on(&self, row: &BTreeMap<String, Cell>) -> bool {
        let fresh = match row.get("at") {
            Some(Cell::Moment(at)) => {
                (0..TOGETHER_SECONDS).contains(&at.duration_until(self.at).as_secs())
            }
            _ => false,
        };
        let shown = row.get(SHOWN) == Some(&Cell::YesNo(true));
        fresh && row.get(READER) == Some(&words(self.reader)) && shown == self.shown
    }
}

fn head(now: &Now<'_>) -> String {
    let shown = if now.shown { assigned(SHOWN, &Cell::YesNo(true)) } else { String::new() };
    format!(
        "[[{LOOKS}]]\n{}{}{shown}[{LOOKS}.{SAW}]\n",
        assigned(READER, &words(now.reader)),
        assigned("at", &Cell::Moment(now.at)),
    )
}

fn cells(now: &Now<'_>, saw: BTreeMap<String, Cell>) -> BTreeMap<String, Cell> {
    let shown = now.shown.then(|| (SHOWN.to_owned(), Cell::YesNo(true)));
    let cells = [
        (READER.to_owned(), words(now.reader)),
        ("at".to_owned(), Cell::Moment(now.at)),
        (SAW.to_owned(), Cell::Table(saw)),
    ];
    cells.into_iter().chain(shown).collect()
}

/// What was taken back.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Taken {
    /// A field of the plant.
    Plant,
    /// Somebody who had not looked yet.
    Reader,
    /// How well they read.
    Level,
    /// A look at this character.
    Look(String),
}

/// The file without its last answer, where that is one that `reader` may take back: of the plant
/// while nobody reads, of themselves while they have not looked, and a look of their own of this
/// day.
pub(super) fn without_last(
    file: &InputFile,
    reader: Option<&str>,
    day: jiff::civil::Date,
) -> Option<(InputFile, Taken)> {
    let old = said(file)?;
    let text = without_last_line(&file.text);
    let new = named(file, without_empty_head(&text));
    let taken = lost(&old, &said(&new)?, reader, day)?;
    if let Taken::Look(_) = taken
        && let Some(shorter) = without_empty_looks(&new)
    {
        return Some((shorter, taken));
    }
    Some((new, taken))
}

/// Where a line begins that says something, and its words: of the last one.
fn last_line(text: &str) -> Option<(usize, &str)> {
    let mut begin = 0;
    let mut found = None;
    for line in text.split_inclusive('\n') {
        let says = line.trim();
        if !says.is_empty() && !says.starts_with('#') {
            found = Some((begin, line));
        }
        begin += line.len();
    }
    found
}

fn without_last_line(text: &str) -> String {
    let Some((begin, line)) = last_line(text) else { return text.to_owned() };
    let before = text.get(..begin).unwrap_or_default();
    let after = text.get(begin + line.len()..).unwrap_or_default();
    format!("{before}{after}")
}

/// The text without the head of a table that nothing stands in, and the gap before it.
fn without_empty_head(text: &str) -> String {
    let heads = [format!("[{PLANT}]"), format!("[[{READER}]]")];
    match last_line(text) {
        Some((_, line)) if heads.contains(&line.trim().to_owned()) => {
            without_gap(&without_last_line(text))
        }
        _ => text.to_owned(),
    }
}

fn without_gap(text: &str) -> String {
    text.strip_suffix("\n\n").map_or_else(|| text.to_owned(), |text| format!("{text}\n"))
}

/// The file without a last table of looks that says nothing any more, where nothing else stands
/// among its lines.
fn without_empty_looks(file: &InputFile) -> Option<InputFile> {
    let old = said(file)?;
    let row = last(&old, LOOKS)?;
    let empty = row.get(SAW) == Some(&Cell::Table(BTreeMap::new())) && !row.contains_key(SHOWN);
    let begin = file.text.rfind(&format!("[[{LOOKS}]]")).filter(|_| empty)?;
    let (before, block) = file.text.split_at_checked(begin)?;
    let new = named(file, without_gap(before));
    let mut says = old.clone();
    let at = says.iter().rposition(|(table, _)| table == LOOKS)?;
    says.remove(at);
    (!block.contains('#') && said(&new)? == says).then_some(new)
}

/// What one file says and another does not, where that is one answer that may be taken back.
fn lost(old: &Rows, new: &Rows, reader: Option<&str>, day: jiff::civil::Date) -> Option<Taken> {
    let of = |rows: &Rows, wanted: &str| -> Rows {
        rows.iter().filter(|(table, _)| table == wanted).cloned().collect()
    };
    let same = |table: &str| of(old, table) == of(new, table);
    match (same(PLANT), same(READER), same(LOOKS)) {
        (false, true, true) => of(old, READER).is_empty().then_some(Taken::Plant),
        (true, false, true) => lost_reader(&of(old, READER), &of(new, READER), reader?),
        (true, true, false) => lost_look(&of(old, LOOKS), &of(new, LOOKS), reader?, day),
        _ => None,
    }
}

fn lost_reader(old: &Rows, new: &Rows, reader: &str) -> Option<Taken> {
    let own = last(old, READER)?.get("name") == Some(&words(reader));
    let taken = if old.len() > new.len() { Taken::Reader } else { Taken::Level };
    own.then_some(taken)
}

fn lost_look(old: &Rows, new: &Rows, reader: &str, day: jiff::civil::Date) -> Option<Taken> {
    let (row, rest) = (last(old, LOOKS)?, last(new, LOOKS)?);
    let own = row.get(READER) == Some(&words(reader));
    let today = matches!(row.get("at"), Some(Cell::Moment(at)) if at.date() == day);
    let (Some(Cell::Table(saw)), Some(Cell::Table(left))) = (row.get(SAW), rest.get(SAW)) else {
        return None;
    };
    let mut gone = saw.keys().filter(|character| !left.contains_key(*character));
    let character = gone.next().filter(|_| gone.next().is_none())?;
    let same_rows = old.len() == new.len();
    (own && today && same_rows).then(|| Taken::Look(character.clone()))
}
