//! What must still be looked at where a key ends at a plant that does little harm.
//!
//! A key sets a dangerous plant aside where a couplet on the way gives an answer that this plant never
//! gives and the named one does. One such answer may be misread: two are wanted, of different
//! correlation groups. What the way does not give is asked for here.

use super::marks::Column;
use super::plants::Way;
use crate::judge::Judge;
use crate::sets::{Effort, Separation};
use crate::{Cell, Taxon};
use ground::{Harm, Month};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// So many characters of different groups speak against each dangerous plant.
const WANTED: usize = 2;

/// Among so many smallest sets the quickest is chosen, in so many steps.
const EFFORT: Effort = Effort { list: 200, steps: 2_000 };

/// What is still to be looked at before a plant is taken for the one that an end names.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Check {
    /// The plant that the end names.
    pub plant: String,
    /// What to look at.
    pub looks: Vec<CheckLook>,
    /// Dangerous plants that fewer than two characters of different groups set aside, these looks
    /// among them, and how many do.
    pub open: Vec<(String, usize)>,
}

/// One character that is still to be looked at.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CheckLook {
    /// What is read.
    pub character: String,
    /// What it is in the plant that the end names.
    pub here: Cell,
    /// What it is in each dangerous plant that it sets aside.
    pub there: Vec<(String, Cell)>,
}

/// The checks of an end, one for each plant that it names and that does little harm.
pub(super) fn checks(
    judge: &Judge<'_>,
    rows: &[usize],
    ends_at: &[usize],
    way: &Way,
    columns: &[Column],
    month: Option<Month>,
) -> Vec<Check> {
    let named = ends_at.iter().filter_map(|at| Some((*at, *rows.get(*at)?)));
    let checks = named.filter_map(|(at, row)| {
        let place = Place { judge, rows, at, row, way, columns, month };
        place.check()
    });
    checks.filter(|check| !(check.looks.is_empty() && check.open.is_empty())).collect()
}

/// An end, as one of its plants.
struct Place<'a, 'm> {
    judge: &'a Judge<'m>,
    rows: &'a [usize],
    /// The plant, by its place in the key and in the table of sheets.
    at: usize,
    row: usize,
    way: &'a Way,
    columns: &'a [Column],
    month: Option<Month>,
}

/// A dangerous plant that the way does not set aside twice.
struct Danger {
    row: usize,
    /// How often it does.
    times: usize,
    /// The characters of other groups that would.
    by: Vec<usize>,
}

impl Place<'_, '_> {
    fn check(&self) -> Option<Check> {
        let plant = self.judge.taxon(self.row)?;
        if plant.harm >= Harm::Harmful {
            return None;
        }
        let dangers = (0..self.rows.len()).filter_map(|other| self.danger(plant, other));
        let dangers: Vec<Danger> = dangers.collect();
        let chosen = self.chosen(&dangers);
        let look = |column: &usize| self.look(*column, &dangers);
        Some(Check {
            plant: plant.name.clone(),
            looks: chosen.iter().filter_map(look).collect(),
            open: dangers.iter().filter_map(|danger| self.open(danger, &chosen)).collect(),
        })
    }

    /// A dangerous plant of the key, as far as the way leaves it open.
    fn danger(&self, plant: &Taxon, other: usize) -> Option<Danger> {
        let row = *self.rows.get(other)?;
        let taxon = self.judge.taxon(row)?;
        let taken = names(plant, taxon) || names(taxon, plant);
        if !(taxon.harm == Harm::Deadly || taxon.harm == Harm::Harmful && taken) {
            return None;
        }
        let aside: BTreeSet<&str> = self.set_aside_by(other).collect();
        let new = |column: &usize| self.group(*column).is_some_and(|group| !aside.contains(group));
        let by = self.judge.separating(self.row, row, self.month).into_iter().filter(new).collect();
        (aside.len() < WANTED).then_some(Danger { row, times: aside.len(), by })
    }

    /// The groups of the characters on the way whose answer the plant gives and the other never.
    fn set_aside_by(&self, other: usize) -> impl Iterator<Item = &str> {
        self.way.iter().filter_map(move |(column, answers)| {
            let column = self.columns.get(*column)?;
            let given = |plant: usize| {
                column.shows(plant).map(|shows| answers.iter().any(|a| shows.contains(a)))
            };
            let aside = given(self.at)? && !given(other)?;
            aside.then(|| self.group(column.character)).flatten()
        })
    }

    fn group(&self, column: usize) -> Option<&str> {
        self.judge.character(column).map(|character| character.group.as_str())
    }

    /// The characters to look at: for what is wanted once and for what is wanted twice, the quickest
    /// of the smallest sets.
    fn chosen(&self, dangers: &[Danger]) -> Vec<usize> {
        let twice = self.quickest(dangers.iter().filter(|danger| danger.times == 0), WANTED);
        let met = |danger: &&Danger| !danger.by.iter().any(|column| twice.contains(column));
        let once = dangers.iter().filter(|danger| danger.times > 0).filter(met);
        let once = self.quickest(once, 1);
        twice.union(&once).copied().collect()
    }

    fn quickest<'d>(
        &self,
        dangers: impl Iterator<Item = &'d Danger>,
        times: usize,
    ) -> BTreeSet<usize> {
        let pairs: Vec<_> = dangers.map(|danger| danger.by.iter().copied()).collect();
        if pairs.is_empty() {
            return BTreeSet::new();
        }
        let smallest = Separation::new(&self.judge.groups(), pairs).smallest(times, EFFORT);
        let seconds = |set: &Vec<usize>| -> u32 {
            let each = set.iter().filter_map(|column| self.judge.character(*column));
            each.map(|character| u32::from(character.seconds)).sum()
        };
        smallest.sets.into_iter().min_by_key(seconds).into_iter().flatten().collect()
    }

    fn look(&self, column: usize, dangers: &[Danger]) -> Option<CheckLook> {
        let set_aside = dangers.iter().filter(|danger| danger.by.contains(&column));
        let there = set_aside.filter_map(|danger| {
            let cell = self.judge.matrix().at(danger.row, column)?;
            Some((self.judge.taxon(danger.row)?.name.clone(), cell.clone()))
        });
        Some(CheckLook {
            character: self.judge.character(column)?.id.clone(),
            here: self.judge.matrix().at(self.row, column)?.clone(),
            there: there.collect(),
        })
    }

    /// A dangerous plant that these looks leave open, and how many characters set it aside.
    fn open(&self, danger: &Danger, chosen: &[usize]) -> Option<(String, usize)> {
        let more = chosen.iter().filter(|column| danger.by.contains(column));
        let groups: BTreeSet<_> = more.filter_map(|column| self.group(*column)).collect();
        let times = danger.times + groups.len();
        let name = self.judge.taxon(danger.row)?.name.clone();
        (times < WANTED).then_some((name, times))
    }
}

/// Whether a sheet names another plant as a look-alike.
pub(super) fn names(sheet: &Taxon, other: &Taxon) -> bool {
    sheet.look_alikes.iter().any(|alike| alike.name == other.name)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::key::{PlantKey, To};
    use crate::{Matrix, sample};
    use ground::Standing;

    /// The sample table, in which each character tells every two plants apart, with no other cells read
    /// than those of these characters.
    fn key(read: &[&str]) -> PlantKey {
        let matrix = sample::matrix();
        let cells = matrix.cells().map(|(taxon, character, cell)| {
            let known = read.contains(&character.id.as_str());
            let standing = if known { Standing::Published } else { Standing::Remembered };
            (taxon.name.clone(), character.id.clone(), Cell { standing, ..cell.clone() })
        });
        let cells: Vec<_> = cells.collect();
        let (characters, taxa) = (matrix.characters().to_vec(), matrix.taxa().to_vec());
        let matrix = Matrix::new(characters, taxa, cells).unwrap();
        let plants = ["Allium ursinum", "Colchicum autumnale"].map(str::to_owned);
        Judge::new(&matrix).key(&plants, None, 100).unwrap()
    }

    #[test]
    fn one_look_more_is_asked_for_where_the_way_gives_one() {
        let key = key(&["base", "smell", "stem"]);
        let [couplet] = key.couplets.as_slice() else { panic!("one couplet") };
        let [allium, colchicum] = key.ends.as_slice() else { panic!("two ends") };
        assert_eq!(
            couplet.leads.iter().map(|lead| lead.to).collect::<Vec<_>>(),
            [To::End(0), To::End(1)]
        );
        let [check] = allium.checks.as_slice() else { panic!("one check") };
        assert!(check.open.is_empty() && check.looks.len() == 1);
        assert_ne!(check.looks[0].character, couplet.character);
        assert_eq!(check.looks[0].there[0].0, "Colchicum autumnale");
        assert!(colchicum.checks.is_empty(), "at the deadly end nothing is asked");
    }

    #[test]
    fn what_one_look_alone_sets_aside_is_not_settled() {
        let key = key(&["stem"]);
        let check = &key.ends[0].checks[0];
        assert!(check.looks.is_empty());
        assert_eq!(check.open, [("Colchicum autumnale".to_owned(), 1)]);
    }

    #[test]
    fn what_nothing_sets_aside_is_not_settled() {
        let key = key(&[]);
        assert!(key.couplets.is_empty() && key.ends[0].plants.len() == 2);
        assert_eq!(key.ends[0].checks[0].open, [("Colchicum autumnale".to_owned(), 0)]);
        assert_eq!((key.looks.get(), key.is_proved()), (0.0, true));
    }
}
