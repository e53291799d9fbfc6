//! A key to some plants of the table of sheets, its couplets numbered.

use super::checks::{Check, checks};
use super::frame::Frame;
use super::marks::{Column, Reads, columns, table, tried};
use super::{Key, Step, Table};
use crate::judge::Judge;
use ground::{Faults, Finite, Month};
use serde::{Deserialize, Serialize};

/// Where faults say that a name stood.
const PLACE: &str = "key";

/// A key to some plants.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PlantKey {
    /// The plants, by scientific name, in the order in which they were asked for.
    pub plants: Vec<String>,
    /// The couplets, the first first: each follows the one that leads to it. None where nothing tells
    /// any two of the plants apart.
    pub couplets: Vec<Couplet>,
    /// Where it ends, in the order of the leads.
    pub ends: Vec<End>,
    /// How many couplets one reads on average, if every plant is met equally often.
    pub looks: Finite,
    /// Seconds that they take.
    pub seconds: Finite,
    /// No key by the characters that were tried takes fewer seconds on average.
    pub at_least: Finite,
    /// How many characters were tried.
    pub tried: usize,
    /// How many tell any of the plants apart: where there are many plants, not all of them are tried.
    pub of: usize,
}

/// One character, and where its answers lead.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Couplet {
    /// What is read.
    pub character: String,
    /// The number of the couplet that leads here, from 0; none for the first.
    pub from: Option<usize>,
    /// Two ways to go on, or more.
    pub leads: Vec<PlantLead>,
}

/// A way to go on.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct PlantLead {
    /// What somebody reads who goes this way.
    pub reads: Reads,
    /// What comes next.
    pub to: To,
}

/// What comes after a lead, by number from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum To {
    /// Another couplet.
    Couplet(usize),
    /// An end.
    End(usize),
}

/// Where a key ends.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct End {
    /// The plant, or several that this key does not tell apart.
    pub plants: Vec<String>,
    /// What is still to be looked at before a plant of this end is taken for the one it is called.
    pub checks: Vec<Check>,
}

impl PlantKey {
    /// Whether it is proved that no key by the characters that were tried is quicker.
    #[must_use]
    pub fn is_proved(&self) -> bool {
        self.at_least == self.seconds
    }
}

/// A place in a key by way of the leads before it: each with its column and its answers.
pub(super) type Way = Vec<(usize, Vec<usize>)>;

impl Judge<'_> {
    /// A key to some plants, by what was read of them and can be seen in the month, that takes the
    /// fewest seconds as far as so many sets of plants allow the proof (see [`Table::key`]).
    ///
    /// At each end that names a plant which does little harm it says what else must be looked at,
    /// until two characters of different correlation groups speak against every plant of the key that
    /// can kill, and every harmful one that it is taken for; and which of them nothing sets aside.
    ///
    /// # Errors
    /// Names that are not in the table.
    pub fn key(
        &self,
        plants: &[String],
        month: Option<Month>,
        sets: usize,
    ) -> Result<PlantKey, Faults> {
        let mut faults = Faults::none();
        let rows = plants.iter().filter_map(|name| faults.note(self.row(PLACE, name)));
        let rows: Vec<usize> = rows.collect();
        let columns = columns(self, &rows, month);
        let of = columns.len();
        let columns = tried(self, columns, rows.len());
        let table = table(self, &columns, rows.len());
        let key = table.key(sets)?;
        let mut numbered = Numbered { columns: &columns, couplets: Vec::new(), ends: Vec::new() };
        numbered.add(&key.start, None, &Vec::new());
        let end = |(taxa, way): &(Vec<usize>, Way)| End {
            plants: taxa.iter().filter_map(|taxon| plants.get(*taxon)).cloned().collect(),
            checks: checks(self, &rows, taxa, way, &columns, month),
        };
        let couplets = numbered.couplets.into_iter().map(|(column, from, leads)| {
            let column = columns.get(column).and_then(|column| self.character(column.character));
            let character = column.map_or_else(String::new, |character| character.id.clone());
            Couplet { character, from, leads }
        });
        faults.or(PlantKey {
            plants: plants.to_vec(),
            couplets: couplets.collect(),
            ends: numbered.ends.iter().map(end).collect(),
            looks: looks(&table, &key),
            seconds: key.seconds,
            at_least: key.at_least,
            tried: columns.len(),
            of,
        })
    }
}

/// How many characters are read on average.
fn looks(table: &Table, key: &Key) -> Finite {
    let one_each = Table { seconds: vec![1; table.seconds.len()], forms: table.forms.clone() };
    let frame = Frame::new(&one_each);
    let whole = frame.whole();
    let mean = frame.seconds(&key.start, &whole) / whole.weight();
    Finite::new(mean).unwrap_or(Finite::ZERO)
}

/// Couplets and ends in the order in which they are printed.
struct Numbered<'c> {
    columns: &'c [Column],
    /// Each with its column and the couplet before it.
    couplets: Vec<(usize, Option<usize>, Vec<PlantLead>)>,
    /// The plants of each, and the way that leads there.
    ends: Vec<(Vec<usize>, Way)>,
}

impl Numbered<'_> {
    fn add(&mut self, step: &Step, from: Option<usize>, way: &Way) -> To {
        let (column, leads) = match step {
            Step::Taxa(taxa) => {
                self.ends.push((taxa.clone(), way.clone()));
                return To::End(self.ends.len() - 1);
            }
            Step::Couplet { character, leads } => (*character, leads),
        };
        let number = self.couplets.len();
        self.couplets.push((column, from, Vec::new()));
        for lead in leads {
            let mut way = way.clone();
            way.push((column, lead.states.clone()));
            let to = self.add(&lead.to, Some(number), &way);
            let reads = self.columns.get(column).map(|column| column.reads(&lead.states));
            if let (Some((_, _, leads)), Some(reads)) = (self.couplets.get_mut(number), reads) {
                leads.push(PlantLead { reads, to });
            }
        }
        To::Couplet(number)
    }
}
