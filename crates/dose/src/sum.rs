//! Sums over everything a person takes in a window.

use crate::decide::Case;
use crate::doubt::{Bound, Doubt, Ledger};
use crate::search::most;
use crate::shares::{Gap, Share, Yard, in_servings, shares};
use crate::{SubstanceId, Window, say};
use ground::{Fault, Mass, Spread, Working};
use std::collections::BTreeMap;

/// Sums are compared with a limit up to the rounding of their additions: a few hundred terms, each
/// off by at most 1e-16 of the sum.
const ROUNDING: f64 = 1e-12;

/// What a person takes of one thing: in the cup that is decided on, and besides. Everybody who
/// takes the same has the same sum, so what was read off it is kept.
#[derive(Clone, Debug)]
pub(crate) struct Sum {
    cup: Vec<Share>,
    beside: Doubt,
    ends: BTreeMap<(Window, u32, Bound), Option<f64>>,
    spreads: BTreeMap<(Window, u32), Option<Spread>>,
    working: Option<Working>,
}

impl Sum {
    /// Gathers a thing over the cup and everything beside it.
    pub(crate) fn gather(
        case: &Case<'_>,
        yard: &Yard,
        ledger: &mut Ledger,
    ) -> Result<Result<Self, Gap>, Fault> {
        let cup = match shares(case.table, (0, case.cup), yard, ledger)? {
            Ok(cup) => cup,
            Err(gap) => return Ok(Err(gap)),
        };
        let mut beside = Doubt::exact(0.0);
        for (place, other) in case.cups().enumerate().skip(1) {
            match shares(case.table, (place, other), yard, ledger)? {
                Ok(shares) => {
                    beside = beside.plus(&in_servings(&shares, other.servings_a_day, ledger)?);
                }
                Err(gap) => return Ok(Err(gap)),
            }
        }
        let (ends, spreads) = (BTreeMap::new(), BTreeMap::new());
        Ok(Ok(Self { cup, beside, ends, spreads, working: None }))
    }

    /// Whether there is none of it in the cup for certain.
    pub(crate) fn none_in_cup(&self, ledger: &mut Ledger) -> Result<bool, Fault> {
        Ok(in_servings(&self.cup, 1, ledger)?.is_none())
    }

    /// Over a window, with so many servings of the cup a day; nothing for a window that is not
    /// summed.
    fn over(
        &self,
        window: Window,
        servings: u32,
        ledger: &mut Ledger,
    ) -> Result<Option<Doubt>, Fault> {
        Ok(match window {
            Window::Serving | Window::Product => Some(in_servings(&self.cup, 1, ledger)?),
            Window::Day => Some(self.day(servings, ledger)?),
            Window::Week => Some(self.day(servings, ledger)?.scaled(7.0)),
            Window::Lifetime => None,
        })
    }

    fn day(&self, servings: u32, ledger: &mut Ledger) -> Result<Doubt, Fault> {
        Ok(in_servings(&self.cup, servings, ledger)?.plus(&self.beside))
    }

    /// The end over a window that is held against a limit; nothing where it is not known.
    pub(crate) fn end(
        &mut self,
        (window, bound): (Window, Bound),
        servings: u32,
        ledger: &mut Ledger,
    ) -> Result<Option<f64>, Fault> {
        let key = (window, servings, bound);
        if let Some(known) = self.ends.get(&key) {
            return Ok(*known);
        }
        let end = self.over(window, servings, ledger)?.and_then(|sum| sum.at(bound, ledger));
        self.ends.insert(key, end);
        Ok(end)
    }

    /// The whole doubt over a window, in grams.
    pub(crate) fn spread(
        &mut self,
        window: Window,
        servings: u32,
        ledger: &mut Ledger,
    ) -> Result<Option<Spread>, Fault> {
        if let Some(known) = self.spreads.get(&(window, servings)) {
            return Ok(*known);
        }
        let spread = self.over(window, servings, ledger)?.and_then(|sum| sum.spread());
        self.spreads.insert((window, servings), spread);
        Ok(spread)
    }

    /// A day with every input at its worst end; nothing where no extreme is published.
    pub(crate) fn worst_day(
        &mut self,
        servings: u32,
        ledger: &mut Ledger,
    ) -> Result<Option<Mass>, Fault> {
        Ok(self.end((Window::Day, Bound::Worst), servings, ledger)?.map(Mass::from_g))
    }

    /// Whether so many servings stay within; nothing where the end that counts is not known.
    fn within(
        &mut self,
        (window, bound, limit): (Window, Bound, f64),
        servings: u32,
        ledger: &mut Ledger,
    ) -> Result<Option<bool>, Fault> {
        let end = self.end((window, bound), servings, ledger)?;
        Ok(end.map(|end| end <= limit * (1.0 + ROUNDING)))
    }

    /// How the sum of a day came about.
    pub(crate) fn working(
        &mut self,
        case: &Case<'_>,
        substance: &SubstanceId,
        ledger: &mut Ledger,
    ) -> Result<Working, Fault> {
        if let Some(known) = &self.working {
            return Ok(known.clone());
        }
        let day = self.day(case.cup.servings_a_day, ledger)?.scaled(1e3);
        let working = say::working(case, substance, day.spread());
        self.working = Some(working.clone());
        Ok(working)
    }
}

/// The greatest number of servings within a limit; nothing where it cannot be told.
#[expect(clippy::option_option, reason = "not told, and told that no number binds, are two things")]
pub(crate) fn search(
    sum: &mut Sum,
    against: (Window, Bound, f64),
    ledger: &mut Ledger,
) -> Result<Option<Option<u32>>, Fault> {
    if sum.within(against, 1, ledger)?.is_none() {
        return Ok(None);
    }
    if matches!(against.0, Window::Serving | Window::Product) {
        let within = sum.within(against, 1, ledger)? == Some(true);
        return Ok(Some((!within).then_some(0)));
    }
    most(|n| Ok(sum.within(against, n, ledger)? == Some(true))).map(Some)
}
