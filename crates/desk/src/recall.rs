//! Recalling: what the herbal only remembers is forgotten in turn, and nobody may end up with less. If
//! anybody does, something remembered had spoken for a plant or a cup.
//!
//! What is forgotten: of each plant every character that is only remembered, and what is remembered of
//! its relatives; every remembered content, limit, caution, usual amount and use that bears on a wish;
//! every remembered law.

use crate::World;
use crate::fade::{Trial, widened};
use crate::outing::Outing;
use crate::plan::settled::{Inputs, Settled};
use dose::Table;
use ground::{Faults, Sourcing, Standing};
use identify::{Matrix, RelativesStatement, Taxon};
use std::collections::BTreeMap;
use std::rc::Rc;

/// Forgets what is only remembered, one thing after the other, and says what got stricter.
///
/// # Errors
/// A fault of our own while something is worked out.
pub fn recall(world: &World, outing: &Outing) -> Result<Vec<Trial>, Faults> {
    let inputs = Inputs::of(world, outing)?;
    let before = inputs.settle(world)?;
    let trial = |what: String, after: Settled| Trial { what, moved: widened(&after, &before) };
    let mut trials = Vec::new();
    for (what, matrix) in without_characters(&inputs.matrix)? {
        let less = Inputs { matrix: Rc::new(matrix), ..inputs.clone() };
        trials.push(trial(what, less.settle(world)?));
    }
    for (what, table) in without_rows(&inputs) {
        let less = Inputs { table, ..inputs.clone() };
        trials.push(trial(what, less.settle(world)?));
    }
    for law in world.herbal.land.rules.laws.iter().filter(|law| remembered(&law.from)) {
        let mut less = world.clone();
        less.herbal.land.rules.laws.retain(|other| other.id != law.id);
        trials.push(trial(format!("law: {}", law.id), inputs.settle(&less)?));
    }
    Ok(trials)
}

fn remembered(from: &Sourcing) -> bool {
    from.standing == Standing::Remembered
}

fn kin_remembered(taxon: &Taxon) -> bool {
    taxon.relatives.standing == Standing::Remembered
}

/// The table of plants without what is only remembered of one of them, for each of which that is so.
fn without_characters(matrix: &Matrix) -> Result<Vec<(String, Matrix)>, Faults> {
    let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
    for (taxon, ..) in matrix.cells().filter(|(.., cell)| cell.standing == Standing::Remembered) {
        *counts.entry(&taxon.name).or_default() += 1;
    }
    for taxon in matrix.taxa().iter().filter(|taxon| kin_remembered(taxon)) {
        *counts.entry(&taxon.name).or_default() += 1;
    }
    let without = |(name, count): (&str, usize)| {
        let kept = matrix
            .cells()
            .filter(|(taxon, _, cell)| taxon.name != name || cell.standing != Standing::Remembered);
        let kept = kept.map(|(t, c, cell)| (t.name.clone(), c.id.clone(), cell.clone()));
        let mut taxa = matrix.taxa().to_vec();
        for taxon in taxa.iter_mut().filter(|taxon| taxon.name == name && kin_remembered(taxon)) {
            taxon.relatives.statement = RelativesStatement::UnlistedUnknown;
        }
        let less = Matrix::new(matrix.characters().to_vec(), taxa, kept)?;
        Ok((format!("{name}: {count} statements"), less))
    };
    counts.into_iter().map(without).collect()
}

/// The table of cups without one remembered row that bears on a wish, for each of these.
fn without_rows(inputs: &Inputs) -> Vec<(String, Table)> {
    let table = &inputs.table;
    let bears = |taxon: &str| {
        let mut makes = inputs.wishes.makes.values();
        makes.any(|make| table.tie(taxon, &make.plant).is_some())
    };
    let mut all = Vec::new();
    macro_rules! without {
        ($rows:ident, $bears:expr) => {
            for (at, row) in table.$rows.iter().enumerate() {
                if remembered(&row.from) && $bears(row) {
                    let mut less = table.clone();
                    less.$rows.remove(at);
                    all.push((format!("{} {at}", stringify!($rows)), less));
                }
            }
        };
    }
    without!(parts, |row: &dose::PartRow| bears(&row.taxon));
    without!(cautions, |row: &dose::Caution| bears(&row.taxon));
    without!(posology, |row: &dose::Posology| bears(&row.taxon));
    without!(contents, |row: &dose::Content| bears(&row.taxon));
    without!(limits, |_: &dose::Limit| true);
    all
}
