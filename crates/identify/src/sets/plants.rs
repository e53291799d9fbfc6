//! The smallest sets of characters that tell one plant of a table from others.

use super::{Effort, Separation, Smallest};
use crate::Taxon;
use crate::compare::never_alike;
use crate::judge::Judge;
use crate::weighing::visible;
use ground::{Fault, Faults, Month};
use std::collections::BTreeMap;

/// Where faults say that a name stood.
const PLACE: &str = "smallest-set";

impl Judge<'_> {
    /// The smallest sets of characters that tell a plant from each of the others, by so many
    /// characters of different correlation groups.
    ///
    /// A character tells two plants apart where both sheets were read, not remembered, and name
    /// nothing in common. With a month it must be of an organ that the target shows then. When the
    /// others show it does not matter: a plant in hand that lacks the organ is not the target either.
    /// A look-alike that the target's sheet names and that has no sheet is told apart by nothing.
    ///
    /// # Errors
    /// Any other names that are not in the table.
    pub fn smallest_set<'n>(
        &self,
        target: &str,
        others: impl IntoIterator<Item = &'n str>,
        month: Option<Month>,
        times: usize,
        effort: Effort,
    ) -> Result<Smallest<String, String>, Faults> {
        let mut faults = Faults::none();
        let row = faults.note(self.row(PLACE, target));
        let sheet = row.and_then(|row| self.taxon(row));
        let (mut names, mut pairs) = (Vec::new(), Vec::new());
        for name in others {
            let other = faults.note(self.other(sheet, name)).flatten();
            let both = row.zip(other);
            names.push(name);
            pairs.push(
                both.map_or_else(Vec::new, |(row, other)| self.separating(row, other, month)),
            );
        }
        faults.or(())?;
        let smallest = Separation::new(&self.groups(), pairs).smallest(times, effort);
        Ok(smallest.named(&names, &self.names()))
    }

    /// The row of a plant, or none where it is a look-alike without a sheet.
    fn other(&self, sheet: Option<&Taxon>, name: &str) -> Result<Option<usize>, Fault> {
        let alike = |sheet: &Taxon| sheet.look_alikes.iter().any(|alike| alike.name == name);
        match self.row(PLACE, name) {
            Err(_) if sheet.is_some_and(alike) => Ok(None),
            row => row.map(Some),
        }
    }

    /// The characters that tell the target from another.
    pub(crate) fn separating(
        &self,
        target: usize,
        other: usize,
        month: Option<Month>,
    ) -> Vec<usize> {
        let columns = 0..self.characters().len();
        columns.filter(|c| self.separates(target, other, *c, month).unwrap_or(false)).collect()
    }

    fn separates(
        &self,
        target: usize,
        other: usize,
        column: usize,
        month: Option<Month>,
    ) -> Option<bool> {
        let (taxon, character) = (self.taxon(target)?, self.character(column)?);
        let clears = self.shown(target, column)?.clears && self.shown(other, column)?.clears;
        let (own, others) = (self.matrix().at(target, column)?, self.matrix().at(other, column)?);
        let now = month.is_none_or(|month| visible(taxon, character, month));
        Some(now && clears && never_alike(&character.kind, &own.value, &others.value))
    }

    /// By character: a number for its correlation group.
    pub(crate) fn groups(&self) -> Vec<usize> {
        let mut numbers = BTreeMap::new();
        let number = |group| {
            let next = numbers.len();
            *numbers.entry(group).or_insert(next)
        };
        self.characters().iter().map(|character| &character.group).map(number).collect()
    }

    pub(super) fn names(&self) -> Vec<&str> {
        self.characters().iter().map(|character| character.id.as_str()).collect()
    }
}

impl Smallest {
    /// The same with names in place of numbers.
    pub(super) fn named(self, pairs: &[&str], characters: &[&str]) -> Smallest<String, String> {
        let name = |names: &[&str], at: usize| names.get(at).map(|name| (*name).to_owned());
        let set = |set: Vec<usize>| set.into_iter().filter_map(|at| name(characters, at)).collect();
        let short =
            self.short.into_iter().filter_map(|(at, times)| Some((name(pairs, at)?, times)));
        Smallest {
            sets: self.sets.into_iter().map(set).collect(),
            at_least: self.at_least,
            count: self.count,
            short: short.collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Character, LookAlike, Matrix, sample};
    use ground::{Organ, Season, Standing};

    const EFFORT: Effort = Effort { list: 100, steps: 10_000 };
    const TWINS: [&str; 2] = ["Colchicum autumnale", "Mentha pulegium"];

    fn smallest(matrix: &Matrix, month: Option<u8>, times: usize) -> Smallest<String, String> {
        let month = month.map(|month| Month::try_from(month).unwrap());
        let judge = Judge::new(matrix);
        judge.smallest_set("Allium ursinum", TWINS, month, times, EFFORT).unwrap()
    }

    /// The sample table with the characters and the first taxon changed, and some cells remembered.
    fn changed(
        character: impl Fn(Character) -> Character,
        season: Option<(Organ, Season)>,
        remembered: &[(&str, &str)],
    ) -> Matrix {
        let matrix = sample::matrix();
        let characters = matrix.characters().iter().cloned().map(character).collect();
        let mut taxa = matrix.taxa().to_vec();
        taxa[0].seasons.extend(season);
        let cells = matrix.cells().map(|(taxon, character, cell)| {
            let mut cell = cell.clone();
            if remembered.contains(&(&taxon.name, &character.id)) {
                cell.standing = Standing::Remembered;
            }
            (taxon.name.clone(), character.id.clone(), cell)
        });
        Matrix::new(characters, taxa, cells.collect::<Vec<_>>()).unwrap()
    }

    #[test]
    fn each_of_six_characters_does_and_any_two_do_twice() {
        let matrix = sample::matrix();
        let once = smallest(&matrix, None, 1);
        let alone = ["base", "bract", "bulb", "smell", "stem", "vein"];
        assert_eq!(once.sets, alone.map(|character| [character]));
        assert!(once.is_proved() && once.short.is_empty());
        assert_eq!(smallest(&matrix, None, 2).count, Some(15));
    }

    #[test]
    fn characters_of_one_group_count_once() {
        let grouped = |character: Character| {
            let group = if character.id == "smell" { "smell" } else { "looks" };
            Character { group: group.to_owned(), ..character }
        };
        let matrix = changed(grouped, None, &[]);
        let twice = smallest(&matrix, None, 2);
        assert_eq!(twice.count, Some(5));
        assert!(twice.sets.iter().all(|set| set.contains(&"smell".to_owned())));
        let thrice = smallest(&matrix, None, 3);
        assert_eq!(thrice.short, TWINS.map(|twin| (twin.to_owned(), 2)));
        assert_eq!(thrice.sets, twice.sets);
    }

    #[test]
    fn what_is_remembered_or_out_of_season_tells_nothing_apart() {
        let may = Month::try_from(5).unwrap();
        let leaves = (Organ::Leaf, Season::new(may, may));
        let bulb = ("Mentha pulegium", "bulb");
        let matrix = changed(|character| character, Some(leaves), &[bulb]);
        let autumn = smallest(&matrix, Some(9), 3);
        assert_eq!(autumn.sets, [["bract", "bulb", "stem"]]);
        assert_eq!(autumn.short, [("Mentha pulegium".to_owned(), 2)]);
        assert_eq!(smallest(&matrix, Some(5), 3).count, Some(10));
    }

    #[test]
    fn nothing_tells_a_look_alike_without_a_sheet_apart() {
        let matrix = sample::matrix();
        let mut taxa = matrix.taxa().to_vec();
        taxa[0].look_alikes.push(LookAlike {
            name: "Arum maculatum".to_owned(),
            tells: Vec::new(),
            confirmed: true,
        });
        let cells = matrix.cells().map(|(t, c, cell)| (t.name.clone(), c.id.clone(), cell.clone()));
        let matrix = Matrix::new(matrix.characters().to_vec(), taxa, cells).unwrap();
        let judge = Judge::new(&matrix);
        let others = [TWINS[0], "Arum maculatum"];
        let smallest = judge.smallest_set("Allium ursinum", others, None, 1, EFFORT).unwrap();
        assert!(smallest.inseparable().eq(["Arum maculatum"]));
        assert_eq!(smallest.size(), 1);
        assert!(judge.smallest_set(TWINS[0], others, None, 1, EFFORT).is_err());
    }

    #[test]
    fn a_plant_is_not_told_from_itself_and_names_must_be_known() {
        let matrix = sample::matrix();
        let judge = Judge::new(&matrix);
        let own = judge.smallest_set(TWINS[0], TWINS, None, 1, EFFORT).unwrap();
        assert!(own.inseparable().eq([TWINS[0]]));
        let faults = judge.smallest_set("Allium", ["Crocus", "Mentha"], None, 1, EFFORT);
        assert_eq!(faults.unwrap_err().iter().count(), 3);
    }
}
