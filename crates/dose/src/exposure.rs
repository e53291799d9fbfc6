//! How much of a thing a cup holds, draw by draw.
//!
//! Identity decides what errs together. Content and moisture belong to the lot, the share that
//! passes over to the batch, the spoon to the cook, the scale to the serving. What several rows or
//! constituents count towards one limit is drawn once and read by each: where two quantities may
//! or may not move together, a sum is taken as if they did.

use crate::{
    Content, ContentBasis, ContentKind, Counted, Cup, Herb, HerbState, HowMeasured, SubstanceId,
    Table, Tie, Transfer,
};
use ground::{Dist, Draws, Fault, Finite, Form, RandomStart, Text, upper_rank};
use serde::{Deserialize, Serialize};

/// Which end of a doubtful sum is held against a limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Bound {
    /// The upper 99 % bound of the value that 19 in 20 stay below.
    Upper,
    /// The worst end of every input.
    Worst,
}

/// Where draws come from.
pub(crate) struct Ledger {
    draws: Draws,
    rank: Dist,
    upper: usize,
}

impl Ledger {
    pub(crate) fn new(start: RandomStart) -> Self {
        let draws = Draws::new(start);
        let upper = upper_rank(draws.count(), 0.95, 0.99).unwrap_or(draws.count());
        let one = Finite::new(1.0).unwrap_or(Finite::ZERO);
        Self { draws, rank: Dist::Uniform { low: Finite::ZERO, high: one }, upper }
    }

    /// A distribution read at the rank that this identity draws.
    fn read(&mut self, path: &[&str], dist: &Dist) -> Result<Doubt, Fault> {
        let (low, high) = dist.ends();
        if low == high {
            return Ok(Doubt::exact(self.draws.count(), low));
        }
        let ranks = self.draws.column(path, &self.rank)?;
        let draws = ranks.iter().map(|rank| dist.quantile(rank).max(0.0)).collect();
        Ok(Doubt { draws, worst: high.is_finite().then_some(high) })
    }

    fn exact(&self, value: f64) -> Doubt {
        Doubt::exact(self.draws.count(), value)
    }
}

/// A doubtful amount: its draws, and its worst end where one is published.
#[derive(Clone, Debug)]
pub(crate) struct Doubt {
    pub(crate) draws: Vec<f64>,
    pub(crate) worst: Option<f64>,
}

impl Doubt {
    fn exact(n: usize, value: f64) -> Self {
        Self { draws: vec![value; n], worst: Some(value) }
    }

    fn with(self, other: &Self, f: impl Fn(f64, f64) -> f64) -> Self {
        let draws = self.draws.iter().zip(&other.draws).map(|(a, b)| f(*a, *b)).collect();
        Self { draws, worst: self.worst.zip(other.worst).map(|(a, b)| f(a, b)) }
    }

    pub(crate) fn plus(self, other: &Self) -> Self {
        self.with(other, |a, b| a + b)
    }

    fn times(self, other: &Self) -> Self {
        self.with(other, |a, b| a * b)
    }

    fn or_more(self, other: &Self) -> Self {
        self.with(other, f64::max)
    }

    pub(crate) fn scaled(mut self, factor: f64) -> Self {
        self.draws.iter_mut().for_each(|draw| *draw *= factor);
        self.worst = self.worst.map(|worst| worst * factor);
        self
    }

    /// The end that is held against a limit; nothing where no extreme is published.
    pub(crate) fn at(&self, bound: Bound, ledger: &Ledger) -> Option<f64> {
        match bound {
            Bound::Worst => self.worst,
            Bound::Upper => {
                let mut draws = self.draws.clone();
                let at = ledger.upper.clamp(1, draws.len().max(1)) - 1;
                (at < draws.len()).then(|| *draws.select_nth_unstable_by(at, f64::total_cmp).1)
            }
        }
    }

    /// Whether there is none of it for certain.
    pub(crate) fn is_none(&self) -> bool {
        self.worst == Some(0.0)
    }
}

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

/// The content rows that speak of this herb in this cup and count towards a limit.
pub(crate) fn contents<'a>(
    table: &'a Table,
    cup: &'a Cup,
    herb: &'a Herb,
    counted: &'a SubstanceId,
) -> impl Iterator<Item = (&'a Content, Tie, f64)> {
    table.contents.iter().filter_map(move |row| {
        let tie = table.tie(&row.taxon, &herb.taxon)?;
        let speaks = row.kind == ContentKind::Plant
            && row.parts.iter().any(|part| part.meets(herb.part))
            && (row.forms.is_empty() || row.forms.iter().any(|form| form.meets(cup.form)));
        let factor = table.counts(&row.substance, counted)?;
        speaks.then_some((row, tie, factor))
    })
}

/// Grams of a substance for each gram of herb, and flat: the most that any row says, since of
/// several rows the strictest holds.
fn substance_rates(
    table: &Table,
    (cup, herb): (&Cup, &Herb),
    counted: &SubstanceId,
    ledger: &mut Ledger,
) -> Told<Option<(Doubt, Doubt)>> {
    let mut rates: Option<(Doubt, Doubt)> = None;
    for (row, _, factor) in contents(table, cup, herb, counted) {
        let (per_gram, flat) = match row_rate(row, (cup, herb), counted, ledger)? {
            Ok((rate, false)) => (rate.scaled(factor), ledger.exact(0.0)),
            Ok((rate, true)) => (ledger.exact(0.0), rate.scaled(factor)),
            Err(gap) => return Ok(Err(gap)),
        };
        rates = Some(match rates {
            None => (per_gram, flat),
            Some((most, most_flat)) => (most.or_more(&per_gram), most_flat.or_more(&flat)),
        });
    }
    Ok(Ok(rates))
}

/// What one row says: grams for each gram of herb, or flat for the serving.
fn row_rate(
    row: &Content,
    (cup, herb): (&Cup, &Herb),
    counted: &SubstanceId,
    ledger: &mut Ledger,
) -> Told<(Doubt, bool)> {
    let gap =
        |id: &str| Gap(Text::new(id).taxon("plant", herb.taxon.as_str()).with("row", &*row.id));
    let Some(amount) = &row.amount else { return Ok(Err(gap("dose-gap-content"))) };
    let mut content = match Finite::new(amount.ends().1) {
        Some(high) if row.only_high => ledger.exact(high.get()),
        None if row.only_high => return Ok(Err(gap("dose-gap-content"))),
        _ => ledger.read(&["lot", &herb.lot, "content", &counted.0], amount)?,
    };
    if row.averages {
        content.worst = None;
    }
    match row.basis {
        ContentBasis::Dry => {
            let share = passes_over(row, cup, counted, ledger)?;
            Ok(Ok((content.times(&share).times(&solids(herb, ledger)?).scaled(1e-3), false)))
        }
        ContentBasis::Fresh => {
            let share = passes_over(row, cup, counted, ledger)?;
            let fresh = fresh(herb, ledger)?;
            Ok(fresh.map(|fresh| (content.times(&share).times(&fresh).scaled(1e-3), false)))
        }
        ContentBasis::InDrinkPerG => Ok(Ok((content.scaled(1e-3), false))),
        ContentBasis::Drink => Ok(match cup.volume {
            Some(volume) => Ok((content.scaled(1e-6 * volume.ml()), true)),
            None => Err(gap("dose-gap-volume")),
        }),
    }
}

/// The share of a content that reaches the cup. A supposed share counts as all of it, and so does
/// whatever is eaten.
fn passes_over(
    row: &Content,
    cup: &Cup,
    counted: &SubstanceId,
    ledger: &mut Ledger,
) -> Result<Doubt, Fault> {
    match transfer(row, cup.form).filter(|transfer| transfer.measured) {
        None => Ok(ledger.exact(1.0)),
        Some(transfer) => {
            ledger.read(&["batch", &cup.batch, "transfer", &counted.0], &transfer.share)
        }
    }
}

/// The transfer that a row gives for a preparation.
pub(crate) fn transfer(row: &Content, form: Form) -> Option<&Transfer> {
    if Form::Tea.contains(form) {
        row.water.as_ref()
    } else if Form::Spirit.contains(form) {
        row.ethanol.as_ref()
    } else {
        None
    }
}

/// Grams of dried herb in a gram as weighed. Of fresh herb whose water nobody knows, all.
fn solids(herb: &Herb, ledger: &mut Ledger) -> Result<Doubt, Fault> {
    match (herb.portion.state, &herb.moisture) {
        (HerbState::Fresh, Some(moisture)) => {
            let mut solids = ledger.read(&["lot", &herb.lot, "moisture"], moisture)?;
            solids.draws.iter_mut().for_each(|water| *water = (1.0 - *water).clamp(0.0, 1.0));
            solids.worst = Some((1.0 - moisture.ends().0).clamp(0.0, 1.0));
            Ok(solids)
        }
        _ => Ok(ledger.exact(1.0)),
    }
}

/// Grams of fresh herb in a gram as weighed.
fn fresh(herb: &Herb, ledger: &mut Ledger) -> Told<Doubt> {
    match (herb.portion.state, &herb.moisture) {
        (HerbState::Fresh, _) => Ok(Ok(ledger.exact(1.0))),
        (HerbState::Dried, None) => {
            let text = Text::new("dose-gap-moisture").taxon("plant", herb.taxon.as_str());
            Ok(Err(Gap(text)))
        }
        (HerbState::Dried, Some(moisture)) => {
            let wet = |water: f64| 1.0 / (1.0 - water.clamp(0.0, 0.999));
            let mut fresh = ledger.read(&["lot", &herb.lot, "moisture"], moisture)?;
            fresh.draws.iter_mut().for_each(|water| *water = wet(*water));
            fresh.worst = Some(moisture.ends().1).filter(|high| *high < 1.0).map(wet);
            Ok(Ok(fresh))
        }
    }
}
