//! How much of a thing a cup holds, draw by draw.
//!
//! Identity decides what errs together. Content and moisture belong to the lot, the share that
//! passes over to the batch, the spoon to the cook, the scale to the serving. What several rows or
//! constituents count towards one limit is drawn once and read by each: where two quantities may
//! or may not move together, a sum is taken as if they did.

use crate::content::{fresh, solids, substance_rates};
use crate::decide::Case;
use crate::doubt::{Doubt, Ledger};
use crate::{Counted, Cup, Herb, HerbState, HowMeasured, SubstanceId, Table};
use ground::{Dist, Fault, Form, Text};
use std::collections::BTreeSet;

/// Why an amount cannot be told.
#[derive(Clone, Debug)]
pub(crate) struct Gap(pub(crate) Text);

/// An amount, or the gap that hides it; a fault is our own.
pub(crate) type Told<T> = Result<Result<T, Gap>, Fault>;

/// What is counted, and among which herbs.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Yard {
    pub(crate) of: Counted,
    /// By the place of the cup, the one decided on before those beside it, and the place in it;
    /// nothing: among all.
    among: Option<BTreeSet<(usize, usize)>>,
}

impl Yard {
    /// Counts in every herb.
    pub(crate) fn everywhere(of: Counted) -> Self {
        Self { of, among: None }
    }

    /// Counts in those herbs that join.
    pub(crate) fn among(case: &Case<'_>, of: Counted, joins: impl Fn(&Cup, &Herb) -> bool) -> Self {
        let cups = case.cups().enumerate();
        let herbs = cups.flat_map(|(place, cup)| {
            cup.herbs.iter().enumerate().map(move |(at, herb)| ((place, at), cup, herb))
        });
        let joined = herbs.filter(|(_, cup, herb)| joins(cup, herb)).map(|(at, ..)| at);
        Self { of, among: Some(joined.collect()) }
    }

    /// The herbs of the cup at a place that it counts in.
    fn herbs<'a>(&self, place: usize, cup: &'a Cup) -> Vec<&'a Herb> {
        let counts = |at| self.among.as_ref().is_none_or(|among| among.contains(&(place, at)));
        let herbs = cup.herbs.iter().enumerate().filter(|(at, _)| counts(*at));
        herbs.map(|(_, herb)| herb).collect()
    }
}

/// What one source of a thing adds to a serving: so much for each gram of herb, or so much flat,
/// whichever is more.
#[derive(Clone, Debug)]
pub(crate) enum Share {
    /// All servings alike: so much in each.
    Alike(Doubt),
    /// Each weighed for itself.
    Each {
        /// For each gram of herb.
        per_gram: Doubt,
        /// At the least.
        flat: Doubt,
        /// Whose servings they are.
        batch: String,
        /// Grams of herb in one.
        grams: Dist,
    },
}

impl Share {
    /// In so many servings.
    fn in_servings(&self, n: u32, ledger: &mut Ledger) -> Result<Doubt, Fault> {
        let (per_gram, flat, batch, dist) = match self {
            Self::Alike(one) => return Ok(one.scaled(f64::from(n))),
            Self::Each { per_gram, flat, batch, grams } => (per_gram, flat, batch, grams),
        };
        let mut sum = Doubt::exact(0.0);
        for k in 0..n {
            let grams = ledger.read(&["serving", batch, &k.to_string(), "weighing"], dist)?;
            sum = sum.plus(&grams.times(per_gram).or_more(flat));
        }
        Ok(sum)
    }
}

/// The sum of shares in so many servings.
pub(crate) fn in_servings(shares: &[Share], n: u32, ledger: &mut Ledger) -> Result<Doubt, Fault> {
    let mut sum = Doubt::exact(0.0);
    for share in shares {
        sum = sum.plus(&share.in_servings(n, ledger)?);
    }
    Ok(sum)
}

/// What the cup at a place adds of what is counted.
pub(crate) fn shares(
    table: &Table,
    (place, cup): (usize, &Cup),
    yard: &Yard,
    ledger: &mut Ledger,
) -> Told<Vec<Share>> {
    let mut shares = Vec::new();
    if let Counted::Substance(counted) = &yard.of {
        if let Some(gap) = unsaid(cup, counted) {
            return Ok(Err(gap));
        }
        shares.extend(held(table, cup, counted, ledger)?);
    }
    let among = yard.herbs(place, cup);
    if yard.of == Counted::Servings {
        shares.extend(among.first().map(|_| Share::Alike(Doubt::exact(1.0))));
        return Ok(Ok(shares));
    }
    for herb in among {
        match herb_share(table, (cup, herb), &yard.of, ledger)? {
            Ok(share) => shares.extend(share),
            Err(gap) => return Ok(Err(gap)),
        }
    }
    Ok(Ok(shares))
}

/// What a form holds by its nature and nobody has said how much of.
fn unsaid(cup: &Cup, counted: &SubstanceId) -> Option<Gap> {
    let natural = [(Form::Spirit, "ethanol"), (Form::Sweet, "free-sugars"), (Form::Honey, "honey")];
    let missing = natural.iter().any(|(form, substance)| {
        counted.0 == *substance && form.contains(cup.form) && !cup.holds.contains_key(counted)
    });
    missing.then(|| Gap(Text::new("dose-gap-unsaid").with("substance", counted.0.as_str())))
}

/// What was added or made: ethanol, sugar, honey.
fn held(
    table: &Table,
    cup: &Cup,
    counted: &SubstanceId,
    ledger: &mut Ledger,
) -> Result<Vec<Share>, Fault> {
    let mut shares = Vec::new();
    for (substance, grams) in &cup.holds {
        if let Some(factor) = table.counts(substance, counted) {
            let path = ["batch", &cup.batch, "holds", &substance.0];
            let amount = ledger.read(&path, grams)?.scaled(factor);
            // What is less than nothing takes nothing away from the rest.
            shares.push(Share::Alike(Doubt::exact(0.0).or_more(&amount)));
        }
    }
    Ok(shares)
}

fn weighed_otherwise(herb: &Herb) -> Gap {
    Gap(Text::new("dose-gap-moisture-supposed").taxon("plant", herb.taxon.as_str()))
}

fn herb_share(
    table: &Table,
    (cup, herb): (&Cup, &Herb),
    of: &Counted,
    ledger: &mut Ledger,
) -> Told<Option<Share>> {
    let (state, supposed) = (herb.portion.state, herb.moisture_supposed);
    let rates = match of {
        // How much it weighs in the other state is only supposed, and what is supposed clears nobody.
        Counted::DriedHerb if supposed && state == HerbState::Fresh => Err(weighed_otherwise(herb)),
        Counted::FreshHerb if supposed && state == HerbState::Dried => Err(weighed_otherwise(herb)),
        Counted::Substance(counted) => substance_rates(table, (cup, herb), counted, ledger)?,
        Counted::DriedHerb => Ok(Some((solids(herb, ledger)?, Doubt::exact(0.0)))),
        Counted::FreshHerb => fresh(herb, ledger)?.map(|fresh| Some((fresh, Doubt::exact(0.0)))),
        Counted::HerbAsWeighed | Counted::Servings => {
            Ok(Some((Doubt::exact(1.0), Doubt::exact(0.0))))
        }
    };
    let (per_gram, flat) = match rates {
        Ok(Some(rates)) => rates,
        Ok(None) => return Ok(Ok(None)),
        Err(gap) => return Ok(Err(gap)),
    };
    let Some(dist) = &herb.portion.grams else {
        return Ok(Err(Gap(Text::new("dose-gap-portion").taxon("plant", herb.taxon.as_str()))));
    };
    let exact = matches!(dist, Dist::Exact(_));
    Ok(Ok(Some(match herb.portion.how {
        HowMeasured::Weighed if !exact => {
            Share::Each { per_gram, flat, batch: cup.batch.clone(), grams: dist.clone() }
        }
        _ => {
            let grams = ledger.read(&["cook", &cup.cook, "spoon"], dist)?;
            Share::Alike(grams.times(&per_gram).or_more(&flat))
        }
    })))
}
