//! An outing as rows says what its files say, and its rows come back from what is written.
#![expect(clippy::unwrap_used, clippy::indexing_slicing, reason = "a panic is how a test reports")]

mod any_row;
mod kit;

use any_row::{cell, row};
use desk::{Cell, InputFile, TableRow, read, rows, write};
use herbal::Herbal;
use jiff::civil::date;
use kit::*;
use proptest::prelude::*;
use std::collections::BTreeMap;
use std::slice::from_ref;
use std::sync::LazyLock;
use toml::Value;

static HERBAL: LazyLock<Herbal> = LazyLock::new(herbal_data::herbal);

/// Everything that reading finds in files: entries and wishes, or the codes of all faults.
fn found(files: &[InputFile]) -> Result<(journal::Journal, String), Vec<String>> {
    match read(files, &HERBAL) {
        Ok(outing) => Ok((outing.journal, format!("{:#?}", outing.wishes))),
        Err(faults) => {
            let mut codes: Vec<_> = faults.into_iter().map(|fault| fault.code).collect();
            codes.sort();
            Err(codes)
        }
    }
}

/// A file as TOML, without the files that it asks for.
fn toml(file: &InputFile) -> toml::Table {
    let mut table: toml::Table = file.text.parse().unwrap();
    table.remove("include");
    table
}

fn cells<const N: usize>(cells: [(&str, Cell); N]) -> BTreeMap<String, Cell> {
    cells.into_iter().map(|(field, cell)| (field.to_owned(), cell)).collect()
}

fn words(words: &str) -> Cell {
    Cell::Words(words.to_owned())
}

fn told(files: &[InputFile]) -> Vec<(String, u32, u32, String)> {
    rows(files).unwrap_err().iter().map(kit::told).collect()
}

#[test]
fn rows_of_the_demo_say_what_its_files_say() {
    for name in OUTINGS {
        let files = demo(name);
        for files in [reversed(&files), files] {
            let rows = rows(&files).unwrap();
            let written = write("outing.toml", &rows);
            assert_eq!(found(from_ref(&written)), found(&files), "{name}");
            assert!(found(&files).is_ok(), "{name}");
            assert_eq!(desk::rows(from_ref(&written)), Ok(rows), "{name}");
        }
    }
}

#[test]
fn every_file_of_the_demo_comes_back_from_its_rows_by_itself() {
    for file in OUTINGS.into_iter().flat_map(demo) {
        let rows = rows(from_ref(&file)).unwrap();
        assert_eq!(toml(&write("written.toml", &rows)), toml(&file), "{}", file.name);
    }
}

#[test]
fn an_outing_is_written_like_this() {
    let text = r#"
as-of = 2027-04-30T19:00
[[stand]]
site = "mill-wood"
hazards = { busy-road = "420 m" }
in-water = false
name = "bank"
[[survey]]
pieces = [0x29, 58]
on = 2027-04-24
[emergency]
meeting-point = "the \"yard\"\nby the pump \\ well\u001B"
[[site]]
consents = [{ rule = "protected", until = 2027-12-31 }]
name = "mill-wood"
latitude = 52.0
[outing]
name = "Walk"
"#;
    let written = write("walk.toml", &rows(&[file("in.toml", text)]).unwrap());
    assert_eq!(written.name, "walk.toml");
    assert_eq!(
        written.text,
        r#"as-of = 2027-04-30T19:00:00

[outing]
name = "Walk"

[[site]]
name = "mill-wood"
consents = [{ rule = "protected", until = 2027-12-31 }]
latitude = 52.0

[[stand]]
name = "bank"
hazards = { busy-road = "420 m" }
in-water = false
site = "mill-wood"

[[survey]]
on = 2027-04-24
pieces = [41, 58]

[emergency]
meeting-point = "the \"yard\"\nby the pump \\ well\u001B"
"#
    );
}

#[test]
fn a_row_is_plain_json() {
    let text = "[[take]]\nname = \"basket\"\nat = 2027-05-01T10:40:00\nsaw = [1, 1.0, true]\n\
                x = { on = 2027-05-01 }\ny = { day = \"2027-05-01\" }\n";
    let rows = rows(&[file("in.toml", text)]).unwrap();
    let json = serde_json::to_string(&rows).unwrap();
    assert_eq!(
        json,
        r#"[{"table":"take","key":"basket","cells":{"at":{"at":"2027-05-01T10:40:00"},"name":"basket","saw":[1,1.0,true],"x":{"on":{"day":"2027-05-01"}},"y":{"=day":"2027-05-01"}}}]"#
    );
    assert_eq!(serde_json::from_str::<Vec<TableRow>>(&json).unwrap(), rows);
}

#[test]
fn json_that_is_no_cell_is_refused() {
    for wrong in [
        "null",
        "9223372036854775808",
        r#"{"day":"2027-02-29"}"#,
        r#"{"day":"-000001-02-03"}"#,
        r#"{"day":20270501}"#,
        r#"{"at":"noon"}"#,
        r#"[{"at":null}]"#,
    ] {
        assert!(serde_json::from_str::<Cell>(wrong).is_err(), "{wrong}");
    }
}

#[test]
fn keys_are_names_or_made_from_the_cells() {
    let named = TableRow::new("stand", cells([("name", words("bank")), ("site", words("a"))]));
    let renamed = TableRow::new("stand", cells([("name", words("bank")), ("site", words("b"))]));
    assert_eq!((named.key.as_str(), renamed.key.as_str()), ("bank", "bank"));
    assert_eq!(TableRow::new("outing", cells([("name", words("Walk"))])).key, "");
    let look = |who: &str| TableRow::new("looks", cells([("reader", words(who))])).key;
    assert_eq!(look("maren"), look("maren"));
    assert_ne!(look("maren"), look("tobias"));
    assert_eq!(look("maren").len(), 32);
    assert_ne!(TableRow::new("stand", cells([("name", words(""))])).key, "");
}

#[test]
fn what_stands_twice_is_told_where_it_stands_again() {
    let one = "as-of = 2027-04-30\n[outing]\nname = \"Walk\"\n[[stand]]\nname = \"bank\"\n";
    let other = "as-of = 2027-05-01T08:00:00\nnote = 1\n[outing]\nname = \"Way\"\n\
                 [[stand]]\nname = \"bank\"\narea = \"1 m²\"\n[[lot]]\ntakes = []\n[[lot]]\ntakes = []\n";
    let [one, other, more] = [("one", one), ("other", other), ("more", "note = 1\n")]
        .map(|(name, text)| file(name, text));
    assert_eq!(
        told(&[one.clone(), other.clone(), more]),
        [
            ("more", 1, 8, "name-twice"),
            ("other", 3, 1, "table-twice"),
            ("other", 5, 1, "name-twice"),
            ("other", 10, 1, "row-twice")
        ]
        .map(|(file, line, column, code)| (file.to_owned(), line, column, code.to_owned()))
    );
    let latest = |files: &[InputFile]| rows(files).unwrap().remove(0);
    let late = file("late", "as-of = 2027-05-01T08:00:00\n");
    let top = latest(&[one.clone(), late.clone()]);
    assert_eq!(top, latest(&[late, one]));
    assert_eq!(top.cells["as-of"], Cell::Moment(date(2027, 5, 1).at(8, 0, 0, 0)));
}

#[test]
fn an_empty_list_of_tables_hides_no_table_of_another_file() {
    let files = [file("one", "stand = []\n"), file("two", "[[stand]]\nname = \"bank\"\n")];
    assert_eq!(rows(&files), rows(&files[1..]));
}

#[test]
fn values_that_no_outing_has_are_all_told() {
    let text = "[[take]]\na = [nan, 10:30:00]\nb = { c = 2027-05-01T10:00:00Z, d = 9223372036854775808 }\n";
    let want = [(2, 6, "no-such-number"), (2, 11, "no-civil-moment"), (3, 11, "no-civil-moment")];
    let got = told(&[file("in.toml", text.replace(", d = 9223372036854775808", "").as_str())]);
    assert_eq!(
        got,
        want.map(|(line, column, code)| ("in.toml".to_owned(), line, column, code.to_owned()))
    );
    assert_eq!(told(&[file("in.toml", text)]).len(), 4);
    assert_eq!(told(&[file("in.toml", "[[take]\n")])[0].3, "unreadable-outing");
}

/// Rows by table and key, no two alike.
fn some_rows() -> impl Strategy<Value = BTreeMap<(String, String), TableRow>> {
    let rows = prop::collection::vec(row(), 0..6);
    rows.prop_map(by_key)
}

fn by_key(rows: Vec<TableRow>) -> BTreeMap<(String, String), TableRow> {
    rows.into_iter().map(|row| ((row.table.clone(), row.key.clone()), row)).collect()
}

/// The same files without some of their tables.
fn without(files: &[InputFile], gone: &[(usize, prop::sample::Index)]) -> Vec<InputFile> {
    let mut tables: Vec<_> = files.iter().map(toml).collect();
    for (at, which) in gone {
        let at = at % tables.len();
        let names: Vec<_> = tables[at].keys().cloned().collect();
        let name = &names[which.index(names.len())];
        match tables[at].get_mut(name) {
            Some(Value::Array(list)) if list.len() > 1 => {
                drop(list.remove(which.index(list.len())))
            }
            _ if names.len() > 1 => drop(tables[at].remove(name)),
            _ => {}
        }
    }
    let text = |table| toml::to_string(table).unwrap();
    files.iter().zip(&tables).map(|(old, table)| file(&old.name, &text(table))).collect()
}

proptest! {
    #[test]
    fn a_cell_comes_back_from_its_json(cell in cell()) {
        let json = serde_json::to_string(&cell).unwrap();
        prop_assert_eq!(serde_json::from_str::<Cell>(&json).unwrap(), cell);
    }

    #[test]
    fn rows_come_back_from_what_is_written(said in some_rows()) {
        let written = write("written.toml", &Vec::from_iter(said.values().cloned()));
        let read = rows(from_ref(&written)).unwrap();
        prop_assert_eq!(&write("written.toml", &read), &written);
        prop_assert_eq!(by_key(read), said);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn an_outing_that_lacks_some_of_its_tables_is_read_the_same_from_its_rows(
        name in prop::sample::select(OUTINGS.to_vec()),
        gone in prop::collection::vec((0..9_usize, any::<prop::sample::Index>()), 0..4),
    ) {
        let files = without(&demo(name), &gone);
        let written = write("outing.toml", &rows(&files).unwrap());
        prop_assert_eq!(found(&[written]), found(&files));
    }
}
