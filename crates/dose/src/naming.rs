//! Constituents that a row names for a plant, and whether anybody measured them.

use crate::content::{contents, transfer};
use crate::decide::{Case, Findings};
use crate::limit::{Concerns, concerns};
use crate::part::about;
use crate::{
    Content, ContentBasis, ContentKind, Counted, Cup, Herb, LimitUse, Rule, Strictness,
    SubstanceId, Table, Tie,
};
use ground::Form;
use std::collections::BTreeSet;

/// Every substance that a content or caution row names for a plant, as what limits count.
pub(crate) fn named(table: &Table, plant: &str) -> BTreeSet<SubstanceId> {
    let ties = table.ties(plant);
    let joins = |taxon: &str| matches!(ties(taxon), Some(tie) if tie < Tie::EveryPlant);
    let contents = table.contents.iter();
    let contents = contents.filter(|row| row.kind == ContentKind::Plant && joins(&row.taxon));
    let cautions = table.cautions.iter().filter(|row| joins(&row.taxon));
    let of_limit = |row: &crate::Caution| match row.limit.as_ref().map(|limit| &limit.of) {
        Some(Counted::Substance(substance)) => Some(substance.clone()),
        _ => None,
    };
    let plain = contents
        .map(|row| row.substance.clone())
        .chain(cautions.flat_map(|row| row.names.iter().cloned().chain(of_limit(row))));
    plain.flat_map(|substance| counted(table, &substance)).collect()
}

/// A substance, and whatever it counts as.
pub(crate) fn counted(table: &Table, substance: &SubstanceId) -> Vec<SubstanceId> {
    let row = table.substances.get(substance);
    let others = row.into_iter().flat_map(|row| row.counts_as.iter().map(|(other, _)| other));
    others.chain([substance]).cloned().collect()
}

/// Whether what a herb holds of a substance was read for this plant, part and preparation.
pub(crate) fn measured(table: &Table, cup: &Cup, herb: &Herb, substance: &SubstanceId) -> bool {
    contents(table, cup, herb, substance)
        .any(|(row, tie, _)| tie < Tie::Relative && row.amount.is_some() && row.from.may_clear())
}

/// Asks first for every constituent with a binding limit that a row names for a plant and that
/// nobody is known to have measured there. Of what else a person takes, only what adds to this cup
/// counts.
pub(crate) fn weigh(case: &Case<'_>, findings: &mut Findings) {
    let mut here: BTreeSet<_> = case.cup.holds.keys().cloned().collect();
    for herb in &case.cup.herbs {
        let names = named(case.table, &herb.taxon);
        weigh_herb(case, (case.cup, herb), &names, findings);
        here.extend(names);
    }
    for cup in case.beside {
        for herb in &cup.herbs {
            let names = named(case.table, &herb.taxon).intersection(&here).cloned().collect();
            weigh_herb(case, (cup, herb), &names, findings);
        }
    }
}

fn weigh_herb(
    case: &Case<'_>,
    (cup, herb): (&Cup, &Herb),
    names: &BTreeSet<SubstanceId>,
    findings: &mut Findings,
) {
    if !case.cup.inward() || !cup.inward() {
        return;
    }
    for substance in names {
        if !screened(case, substance) {
            continue;
        }
        if unmeasured_share(case.table, cup, herb, substance) {
            let text = about("dose-share-not-measured", cup, herb)
                .with("substance", case.table.name(substance));
            findings.add(Strictness::NoReasonFound, Rule::Unmeasured, text, None);
        }
        if !measured(case.table, cup, herb, substance) {
            let text =
                about("dose-unmeasured", cup, herb).with("substance", case.table.name(substance));
            findings.add(Strictness::AskFirst, Rule::Unmeasured, text, None);
        }
    }
}

/// Whether a row counts the whole of a content because no share that passes over was measured.
fn unmeasured_share(table: &Table, cup: &Cup, herb: &Herb, substance: &SubstanceId) -> bool {
    let whole = |row: &Content| matches!(row.basis, ContentBasis::Dry | ContentBasis::Fresh);
    let shared = |row: &Content| transfer(row, cup.form).is_some_and(|share| share.measured);
    !Form::Food.contains(cup.form)
        && contents(table, cup, herb, substance).any(|(row, ..)| whole(row) && !shared(row))
}

fn screened(case: &Case<'_>, substance: &SubstanceId) -> bool {
    case.table.limits.iter().any(|limit| {
        limit.substance == *substance
            && limit.used == LimitUse::Screen
            && concerns(limit, case.person) > Concerns::No
    })
}
