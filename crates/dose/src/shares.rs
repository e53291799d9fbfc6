//! How much of a thing a cup holds, draw by draw.
//!
//! Identity decides what errs together. Content and moisture belong to the lot, the share that
//! passes over to the batch, the spoon to the cook, the scale to the serving. What several rows or
//! constituents count towards one limit is drawn once and read by each: where two quantities may
//! or may not move together, a sum is taken as if they did.

use crate::content::{fresh, solids, substance_rates};
use crate::doubt::{Doubt, Ledger};
use crate::{Counted, Cup, Herb, HowMeasured, SubstanceId, Table};
use ground::{Dist, Fault, Form, Text};

/// Why an amount cannot be told.
pub(crate) struct Gap(pub(crate) Text);

/// An amount, or the gap that hides it; a fault is our own.
pub(crate) type Told<T> = Result<Result<T, Gap>, Fault>;

/// What is counted, and among which herbs.
#[derive(Clone, Copy)]
pub(crate) struct Yard<'a> {
    pub(crate) of: &'a Counted,
    pub(crate) among: &'a dyn Fn(&Cup, &Herb) -> bool,
}

/// What one source of a thing adds to a serving: so much for each gram of herb, or so much flat,
/// whichever is more.
pub(crate) struct Share {
    per_gram: Doubt,
    flat: Doubt,
    grams: Grams,
}

enum Grams {
    /// All servings alike.
    Alike(Doubt),
    /// Each for itself.
    Each { batch: String, dist: Dist },
}

impl Share {
    fn in_serving(&self, k: u32, ledger: &mut Ledger) -> Result<Doubt, Fault> {
        let grams = match &self.grams {
            Grams::Alike(grams) => grams.clone(),
            Grams::Each { batch, dist } => {
                ledger.read(&["serving", batch, &k.to_string(), "weighing"], dist)?
            }
        };
        Ok(grams.times(&self.per_gram).or_more(&self.flat))
    }

    /// In so many servings.
    fn in_servings(&self, n: u32, ledger: &mut Ledger) -> Result<Doubt, Fault> {
        if matches!(self.grams, Grams::Alike(_)) {
            return Ok(self.in_serving(0, ledger)?.scaled(f64::from(n)));
        }
        let mut sum = ledger.exact(0.0);
        for k in 0..n {
            sum = sum.plus(&self.in_serving(k, ledger)?);
        }
        Ok(sum)
    }
}

/// The sum of shares in so many servings.
pub(crate) fn in_servings(shares: &[Share], n: u32, ledger: &mut Ledger) -> Result<Doubt, Fault> {
    let mut sum = ledger.exact(0.0);
    for share in shares {
        sum = sum.plus(&share.in_servings(n, ledger)?);
    }
    Ok(sum)
}

/// What a cup adds of what is counted.
pub(crate) fn shares(
    table: &Table,
    cup: &Cup,
    yard: Yard<'_>,
    ledger: &mut Ledger,
) -> Told<Vec<Share>> {
    let mut shares = Vec::new();
    if let Counted::Substance(counted) = yard.of {
        if let Some(gap) = unsaid(cup, counted) {
            return Ok(Err(gap));
        }
        shares.extend(held(table, cup, counted, ledger)?);
    }
    let among: Vec<_> = cup.herbs.iter().filter(|herb| (yard.among)(cup, herb)).collect();
    if *yard.of == Counted::Servings {
        shares.extend(among.first().map(|_| flat(ledger.exact(1.0), ledger)));
        return Ok(Ok(shares));
    }
    for herb in among {
        match herb_share(table, (cup, herb), yard.of, ledger)? {
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

fn flat(amount: Doubt, ledger: &Ledger) -> Share {
    let none = ledger.exact(0.0);
    Share { per_gram: none.clone(), flat: amount, grams: Grams::Alike(none) }
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
            shares.push(flat(amount, ledger));
        }
    }
    Ok(shares)
}

fn herb_share(
    table: &Table,
    (cup, herb): (&Cup, &Herb),
    of: &Counted,
    ledger: &mut Ledger,
) -> Told<Option<Share>> {
    let rates = match of {
        Counted::Substance(counted) => substance_rates(table, (cup, herb), counted, ledger)?,
        Counted::DriedHerb => Ok(Some((solids(herb, ledger)?, ledger.exact(0.0)))),
        Counted::FreshHerb => fresh(herb, ledger)?.map(|fresh| Some((fresh, ledger.exact(0.0)))),
        Counted::HerbAsWeighed | Counted::Servings => {
            Ok(Some((ledger.exact(1.0), ledger.exact(0.0))))
        }
    };
    let (per_gram, flat) = match rates {
        Ok(Some(rates)) => rates,
        Ok(None) => return Ok(Ok(None)),
        Err(gap) => return Ok(Err(gap)),
    };
    let grams = grams(cup, herb, ledger)?;
    Ok(grams.map(|grams| Some(Share { per_gram, flat, grams })))
}

fn grams(cup: &Cup, herb: &Herb, ledger: &mut Ledger) -> Told<Grams> {
    let Some(dist) = &herb.portion.grams else {
        return Ok(Err(Gap(Text::new("dose-gap-portion").taxon("plant", herb.taxon.as_str()))));
    };
    let exact = matches!(dist, Dist::Exact(_));
    Ok(Ok(match herb.portion.how {
        HowMeasured::Weighed if !exact => {
            Grams::Each { batch: cup.batch.clone(), dist: dist.clone() }
        }
        _ => Grams::Alike(ledger.read(&["cook", &cup.cook, "spoon"], dist)?),
    }))
}
