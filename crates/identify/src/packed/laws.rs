//! The packed table against the plain sums, on invented tables.

use super::{Column, Question, Running, Table};
use crate::laws::World;
use crate::{Chance, Judge, Level, Priors, bayes};
use ground::Finite;
use proptest::prelude::*;
use std::collections::BTreeMap;

/// Both ways sum some dozen logarithms of the same numbers, in another order.
const CLOSE: f64 = 1e-12;

/// A chance of a kind is a sum of roundings, each by 2⁻³³ at most, and a little for the parts kept free.
fn rounded(taxa: usize) -> f64 {
    1.1 * taxa as f64 / f64::from(1 << 30) / 8.0
}
/// What that is in bits: the slope of −p log₂ p at a chance as small as the rounding is below 40.
const BITS_A_ROUNDING: f64 = 40.0;

fn by_name(chances: Vec<Chance>) -> BTreeMap<Option<String>, f64> {
    chances.into_iter().map(|chance| (chance.taxon, chance.chance.get())).collect()
}

fn priors(weights: &[u8]) -> Priors {
    let names = ["Aaa", "Bbb", "Ccc", "Ddd"].iter().zip(weights);
    let weight = |weight: &u8| Finite::new(f64::from(*weight)).unwrap();
    Priors {
        none_of_these: Finite::new(0.02).unwrap(),
        of: names.map(|(name, of)| ((*name).to_owned(), weight(of))).collect(),
    }
}

/// A table of numbers: kinds of cells by column, then looks as column, group and chance by kind.
#[derive(Clone, Debug)]
struct Numbers {
    kinds: Vec<usize>,
    /// By column, then by taxon.
    codes: Vec<Vec<u16>>,
    weights: Vec<f64>,
    looks: Vec<(usize, usize, Vec<f64>)>,
}

impl Numbers {
    fn table(&self) -> Table {
        let columns = self.codes.iter().zip(&self.kinds);
        Table::pack(columns.map(|(codes, kinds)| Column::new(codes.clone(), *kinds).unwrap()))
            .unwrap()
    }

    /// The chances without any packing: the product of geometric means.
    fn plainly(&self) -> Vec<f64> {
        let log = |taxon: usize| {
            let mut groups: BTreeMap<usize, Vec<f64>> = BTreeMap::new();
            for (column, group, chances) in &self.looks {
                let chance = chances[usize::from(self.codes[*column][taxon])];
                groups.entry(*group).or_default().push(libm::log(chance));
            }
            let means = groups.values().map(|logs| logs.iter().sum::<f64>() / logs.len() as f64);
            libm::log(self.weights[taxon]) + means.sum::<f64>()
        };
        bayes::chances(&(0..self.weights.len()).map(log).collect::<Vec<_>>())
    }

    fn running<'t>(&self, table: &'t Table) -> Running<'t> {
        let mut running = Running::new(table, &self.weights);
        for (column, group, chances) in &self.looks {
            running.look(*column, *group, chances);
        }
        running
    }

    fn turned(&self, by: usize) -> Self {
        let mut turned = self.clone();
        turned.codes.iter_mut().for_each(|column| column.rotate_left(by));
        turned.weights.rotate_left(by);
        turned
    }
}

/// Up to some thousand taxa, so that bundles of a byte, of two, and of one column alone come up.
fn numbers() -> impl Strategy<Value = Numbers> {
    let kinds = prop::collection::vec(prop_oneof![8 => 1_usize..20, 1 => 200_usize..5000], 1..9);
    (1_usize..9000, kinds, any::<u64>()).prop_map(|(taxa, kinds, start)| {
        let mut state = start;
        let mut next = move || {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            state >> 33
        };
        let column = |kinds: &usize, next: &mut dyn FnMut() -> u64| {
            (0..taxa).map(|_| (next() % *kinds as u64) as u16).collect::<Vec<_>>()
        };
        let codes = kinds.iter().map(|kinds| column(kinds, &mut next)).collect();
        let weights = (0..taxa).map(|_| (next() % 5) as f64).collect();
        let look = |(column, kinds): (usize, &usize)| {
            // Now and then a look that a kind of cell makes impossible.
            let chances = (0..*kinds).map(|_| (next() % 40) as f64 / 40.0).collect();
            (column, column / 2, chances)
        };
        let looks = kinds.iter().enumerate().map(look).collect();
        Numbers { kinds, codes, weights, looks }
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn a_packed_table_says_what_the_plain_one_says(
        bytes in prop::collection::vec(any::<u8>(), 64..400),
        weights in prop::collection::vec(0_u8..4, 4).prop_filter("one", |w| w.iter().any(|w| *w > 0)),
    ) {
        let world = World::new(&bytes);
        let (matrix, case, priors) = (world.matrix(), world.case(), priors(&weights));
        let judge = Judge::new(&matrix);
        let packed = judge.packed().unwrap();
        let plain = by_name(judge.posterior(&case, &priors).unwrap());
        let got = by_name(packed.posterior(&case, &priors).unwrap());
        prop_assert_eq!(plain.len(), got.len());
        for (taxon, chance) in &plain {
            prop_assert!((chance - got[taxon]).abs() < CLOSE, "{taxon:?} {chance} {}", got[taxon]);
        }
        let mut early = case.clone();
        early.looks.truncate(4);
        let plain = judge.most_telling(&early, &priors, Level::Trained).unwrap();
        let got = packed.most_telling(&early, &priors, Level::Trained).unwrap();
        prop_assert_eq!(plain.len(), got.len());
        let bits: BTreeMap<_, _> = got.iter().map(|t| (&t.character, t.bits.get())).collect();
        for telling in &plain {
            let apart = (telling.bits.get() - bits[&telling.character]).abs();
            prop_assert!(apart < BITS_A_ROUNDING * rounded(5), "{apart:e}");
        }
    }

    #[test]
    fn numbers_come_out_as_without_packing(numbers in numbers()) {
        let table = numbers.table();
        let chances = numbers.running(&table).chances();
        let plain = numbers.plainly();
        for (got, plain) in chances.of_taxa().iter().zip(&plain) {
            prop_assert!((got - plain).abs() < CLOSE);
        }
        for (column, kinds) in chances.of_kinds().iter().enumerate() {
            let mut sums = vec![0.0; numbers.kinds[column]];
            for (code, chance) in numbers.codes[column].iter().zip(&plain) {
                sums[usize::from(*code)] += chance;
            }
            prop_assert_eq!(sums.len(), kinds.len());
            // The total is rounded too, hence twice.
            let bound = 2.0 * rounded(plain.len()) + CLOSE;
            prop_assert!(sums.iter().zip(kinds).all(|(a, b)| (a - b).abs() < bound));
        }
    }

    #[test]
    fn the_order_of_the_taxa_changes_nothing(numbers in numbers(), by in any::<prop::sample::Index>()) {
        let turned = numbers.turned(by.index(numbers.weights.len()));
        let (table, other) = (numbers.table(), turned.table());
        let (mut logs, mut turned_logs) = (numbers.running(&table).logs, turned.running(&other).logs);
        logs.sort_by(f64::total_cmp);
        turned_logs.sort_by(f64::total_cmp);
        prop_assert_eq!(logs, turned_logs);
        // Of the same chances, the sums are the same to the last bit.
        let even = |table| Running::new(table, &vec![1.0; numbers.weights.len()]).chances().of_kinds();
        prop_assert_eq!(even(&table), even(&other));
    }

    #[test]
    fn what_kinds_tell_is_what_taxa_tell(numbers in numbers()) {
        let table = numbers.table();
        let chances = numbers.running(&table).chances();
        let many = numbers.kinds[0];
        let of_kind = |kind: usize| vec![0.2 + 0.7 * (kind % 2) as f64, 0.8 - 0.7 * (kind % 2) as f64];
        let answers: Vec<_> = (0..many).map(of_kind).collect();
        let by_taxon: Vec<_> = numbers.codes[0].iter().map(|code| of_kind(usize::from(*code))).collect();
        let plain = bayes::information(chances.of_taxa(), &by_taxon);
        let apart = Question::new(&answers).tells(&chances.of_kinds()[0]) - plain.max(0.0);
        // Two answers, and the chance of each is a rounded sum.
        prop_assert!(apart.abs() < BITS_A_ROUNDING * rounded(by_taxon.len()) + 1e-9, "{apart:e}");
    }
}
