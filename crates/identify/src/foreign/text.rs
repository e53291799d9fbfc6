//! The text of foreign tables.

use super::column::{Row, Written, matrix};
use crate::Matrix;
use ground::{Fault, Faults, Place};
use serde::Deserialize;
use std::collections::BTreeMap;

/// Reads a table in CSV; see the module's description of the format.
///
/// # Errors
/// Every line that is not as the format says, with its number.
pub fn read_csv(text: &str) -> Result<Matrix, Faults> {
    let mut reader = csv::ReaderBuilder::new()
        .comment(Some(b'#'))
        .trim(csv::Trim::All)
        .from_reader(text.as_bytes());
    let unreadable = |error: csv::Error| {
        let line = error.position().map_or(1, csv::Position::line);
        Fault::new("identify-unreadable", at(line), error.to_string())
    };
    let header = reader.headers().map_err(unreadable)?.clone();
    let mut faults = Faults::none();
    let mut rows = Vec::new();
    for record in reader.records() {
        if let Some(record) = faults.note(record.map_err(unreadable)) {
            rows.push(row(&header, &record));
        }
    }
    if rows.is_empty() && faults.is_empty() {
        faults.add(Fault::new("identify-no-taxa", at(1), ""));
    }
    faults.or(rows).and_then(matrix)
}

fn at(line: u64) -> Place {
    Place::default().at(u32::try_from(line).unwrap_or(u32::MAX), 1)
}

fn row(header: &csv::StringRecord, record: &csv::StringRecord) -> Row {
    let line = record.position().map_or(1, csv::Position::line);
    let name = record.get(0).unwrap_or_default().to_owned();
    let place = Place { table: Some("taxon".to_owned()), entry: Some(name.clone()), ..at(line) };
    let mut row = Row { name, harm: None, relatives: None, cells: Vec::new(), at: place };
    for (column, text) in header.iter().zip(record).skip(1) {
        let said = (!text.is_empty()).then(|| text.to_owned());
        match column {
            "harm" => row.harm = said,
            "relatives" => row.relatives = said,
            _ => row.cells.extend(Written::parse(text).map(|cell| (column.to_owned(), cell))),
        }
    }
    row
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TableFile {
    taxon: Vec<TaxonRow>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TaxonRow {
    name: toml::Spanned<String>,
    harm: Option<String>,
    relatives: Option<String>,
    #[serde(default)]
    characters: BTreeMap<String, CellRow>,
}

#[derive(Deserialize)]
#[serde(untagged)]
enum CellRow {
    Text(String),
    Percent(f64),
    Range([f64; 2]),
    Shares(BTreeMap<String, f64>),
}

/// Reads a table in TOML; see the module's description of the format.
///
/// # Errors
/// The place where the text is not as the format says.
pub fn read_toml(text: &str) -> Result<Matrix, Faults> {
    let file: TableFile = toml::from_str(text).map_err(|error| {
        let start = error.span().map_or(0, |span| span.start);
        let (line, column) = Place::line_and_column(text, start);
        let at = Place::default().at(line, column);
        Fault::new("identify-unreadable", at, error.message())
    })?;
    matrix(file.taxon.into_iter().map(|taxon| taxon.row(text)).collect())
}

impl TaxonRow {
    fn row(self, text: &str) -> Row {
        let (line, column) = Place::line_and_column(text, self.name.span().start);
        let name = self.name.into_inner();
        let cells =
            self.characters.into_iter().filter_map(|(id, cell)| Some((id, cell.written()?)));
        Row {
            harm: self.harm,
            relatives: self.relatives,
            cells: cells.collect(),
            at: Place::entry("taxon", &name, "").at(line, column),
            name,
        }
    }
}

impl CellRow {
    fn written(self) -> Option<Written> {
        match self {
            Self::Text(text) => Written::parse(&text),
            Self::Percent(percent) => Some(Written::Percent(percent)),
            Self::Range([low, high]) => Some(Written::Range(low, high)),
            Self::Shares(shares) => Some(Written::Shares(shares)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Kind, RelativesStatement, Value};
    use ground::Harm;

    #[test]
    fn without_a_column_of_harm_everything_is_deadly_and_relatives_are_unknown() {
        let matrix = read_csv("taxon,T1\nA,100\nB,\n").unwrap();
        let taxon = matrix.taxon("A").unwrap();
        assert_eq!(taxon.harm, Harm::Deadly);
        assert_eq!(taxon.relatives.statement, RelativesStatement::UnlistedUnknown);
        assert!(matrix.cell("B", "T1").is_none());
    }

    #[test]
    fn shares_are_kept_within_one_and_ninety_nine_per_cent() {
        let matrix = read_csv("taxon,T1\nA,100 %\nB,0\n").unwrap();
        let share = |taxon: &str| match &matrix.cell(taxon, "T1").unwrap().value {
            Value::Shares(shares) => shares["+"],
            other => panic!("{other:?}"),
        };
        assert!((share("A") - 0.99).abs() < 1e-15 && (share("B") - 0.01).abs() < 1e-15);
    }

    #[test]
    fn text_and_toml_give_the_same_table() {
        let csv =
            "taxon,harm,relatives,smell,T\nA,none,all-listed,garlic|none,40\nB,deadly,,none,?\n";
        let toml = r#"
            [[taxon]]
            name = "A"
            harm = "none"
            relatives = "all-listed"
            characters = { smell = "garlic|none", T = { "+" = 40, "-" = 60 } }
            [[taxon]]
            name = "B"
            characters = { smell = "none", T = "?" }
        "#;
        assert_eq!(read_csv(csv).unwrap(), read_toml(toml).unwrap());
    }

    #[test]
    fn a_pair_of_numbers_is_a_length() {
        let matrix =
            read_toml("[[taxon]]\nname = \"A\"\ncharacters = { leaf_mm = [100, 250] }").unwrap();
        assert_eq!(matrix.character("leaf_mm").unwrap().kind, Kind::Length);
    }

    #[test]
    fn every_fault_is_named_with_its_line() {
        let faults = read_csv("taxon,harm,T1\nA,nasty,50\nB,none,140\n").unwrap_err();
        let got: Vec<_> = faults.iter().map(|f| (f.code.as_str(), f.at.line)).collect();
        assert_eq!(got, [("identify-harm", Some(2)), ("identify-percent", Some(3))]);
        assert_eq!(
            read_csv("taxon,T\n").unwrap_err().iter().next().unwrap().code,
            "identify-no-taxa"
        );
        let mixed = read_csv("taxon,T\nA,50\nB,garlic\n").unwrap_err();
        assert_eq!(mixed.iter().next().unwrap().code, "identify-mixed-column");
        let broken = read_toml("[[taxon]]\nname = 3").unwrap_err();
        assert_eq!(broken.iter().next().unwrap().at.line, Some(2));
    }
}
