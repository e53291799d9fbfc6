//! Rivals: what else the plant in hand could be, and how much it weighs.

use crate::judge::Judge;
use crate::spectrum::Spectrum;
use crate::{Relatives, RelativesStatement, Taxon, evidence};
use ground::{Harm, Region};
use serde::{Deserialize, Serialize};
use std::borrow::Cow;

/// What kind of rival.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum RivalKind {
    /// A taxon of the table, with its harm.
    Listed(Harm),
    /// A look-alike that a sheet names and that has no sheet: counted as deadly.
    NoSheet,
    /// A relative that nobody has listed: half the target, half plants at large.
    Cousin,
}

/// Something else that the plant in hand could be.
#[derive(Clone, Debug)]
pub(crate) struct Rival {
    /// Its name; the target's for a cousin.
    pub(crate) name: String,
    pub(crate) kind: RivalKind,
    /// Whether the target's sheet names it as a look-alike, or the other way round.
    pub(crate) named: bool,
    /// Harm times prior, both relative to the target.
    pub(crate) weight: f64,
    row: Option<usize>,
}

impl Rival {
    /// A look-alike that the target's sheet names and that has no sheet.
    pub(crate) fn without_sheet(name: &str) -> Self {
        Self {
            name: name.to_owned(),
            kind: RivalKind::NoSheet,
            named: true,
            weight: evidence::WEIGHT_DEADLY,
            row: None,
        }
    }

    /// Its row, when it is a taxon of the table.
    pub(crate) fn row(&self) -> Option<usize> {
        self.row
    }

    /// What it shows of a character, where that is known.
    pub(crate) fn shown<'a>(
        &self,
        judge: &'a Judge<'_>,
        target: usize,
        column: usize,
    ) -> Option<Cow<'a, Spectrum>> {
        match self.kind {
            RivalKind::Listed(_) => judge.shown(self.row?, column).map(Cow::Borrowed),
            RivalKind::Cousin => judge.cousin(target, column).map(Cow::Owned),
            RivalKind::NoSheet => None,
        }
    }

    /// The taxon, when it is one of the table.
    pub(crate) fn taxon<'m>(&self, judge: &Judge<'m>) -> Option<&'m Taxon> {
        judge.taxon(self.row?)
    }

    /// Whether its harm calls for tells: a named look-alike that is harmful or deadly. One of unknown
    /// harm answers to the bar.
    pub(crate) fn wants_tells(&self) -> bool {
        self.named && self.harm() >= Harm::Harmful
    }

    /// Whether it can kill.
    pub(crate) fn is_deadly(&self) -> bool {
        self.harm() == Harm::Deadly
    }

    /// Whether it is a taxon of the table that poisons or kills: readings must deny it.
    pub(crate) fn is_dangerous(&self) -> bool {
        matches!(self.kind, RivalKind::Listed(harm) if harm >= Harm::Harmful)
    }

    /// Whether it is a named look-alike that does no harm.
    pub(crate) fn is_harmless_twin(&self) -> bool {
        self.kind == RivalKind::Listed(Harm::None)
    }

    fn harm(&self) -> Harm {
        match self.kind {
            RivalKind::Listed(harm) => harm,
            RivalKind::NoSheet => Harm::Deadly,
            RivalKind::Cousin => Harm::Harmful,
        }
    }
}

/// The rivals of a target on an outing to a region, sorted by name, the cousin last.
///
/// Every taxon that can do harm there (no region given: anywhere); every look-alike that the
/// target's sheet names or that names the target, wherever it grows; a cousin.
pub(crate) fn rivals(judge: &Judge<'_>, target: usize, region: Option<Region>) -> Vec<Rival> {
    let Some(taxon) = judge.taxon(target) else {
        return Vec::new();
    };
    let others = judge.taxa().iter().enumerate().filter(|(row, _)| *row != target);
    let mut rivals: Vec<Rival> = others
        .filter(|(_, other)| !shares_aggregate(taxon, other))
        .filter_map(|(row, other)| listed(taxon, row, other, region))
        .collect();
    rivals.extend(without_sheet(judge, taxon));
    rivals.sort_by(|a, b| a.name.cmp(&b.name));
    rivals.push(cousin(taxon));
    rivals
}

fn listed(target: &Taxon, row: usize, other: &Taxon, region: Option<Region>) -> Option<Rival> {
    let named = names(target, other) || names(other, target);
    let grows = region.is_none_or(|here| other.regions.is_empty() || other.regions.contains(&here));
    (named || (grows && other.harm > Harm::None)).then(|| Rival {
        name: other.name.clone(),
        kind: RivalKind::Listed(other.harm),
        named,
        weight: evidence::weight(other.harm),
        row: Some(row),
    })
}

fn without_sheet<'a>(judge: &'a Judge<'_>, taxon: &'a Taxon) -> impl Iterator<Item = Rival> + 'a {
    let missing =
        taxon.look_alikes.iter().filter(|alike| judge.matrix().row(&alike.name).is_none());
    missing.map(|alike| Rival::without_sheet(&alike.name))
}

fn cousin(taxon: &Taxon) -> Rival {
    Rival {
        name: taxon.name.clone(),
        kind: RivalKind::Cousin,
        named: false,
        weight: evidence::WEIGHT_COUSIN * cousin_prior(taxon.relatives),
        row: None,
    }
}

/// How likely an unlisted relative that does harm is, relative to the target.
pub(crate) fn cousin_prior(relatives: Relatives) -> f64 {
    match relatives.trusted() {
        RelativesStatement::UnlistedUnknown => evidence::COUSIN_UNKNOWN,
        RelativesStatement::AllListed | RelativesStatement::UnlistedAlike => {
            evidence::COUSIN_LISTED
        }
    }
}

/// Whether a sheet names another plant as a look-alike.
fn names(sheet: &Taxon, other: &Taxon) -> bool {
    sheet.look_alikes.iter().any(|alike| alike.name == other.name)
}

/// Whether one determines to an aggregate that holds both, the other being no worse.
fn shares_aggregate(target: &Taxon, other: &Taxon) -> bool {
    let same = target.aggregate.is_some() && target.aggregate == other.aggregate;
    same && other.harm <= target.harm
}
