//! Sums over everything a person takes in a window.

use crate::decide::Case;
use crate::doubt::{Bound, Doubt, Ledger};
use crate::search::most;
use crate::shares::{Gap, Share, Yard, in_servings, shares};
use crate::{SubstanceId, Window, say};
use ground::{Fault, Spread, Working};

/// Sums are compared with a limit up to the rounding of their additions: a few hundred terms, each
/// off by at most 1e-16 of the sum.
const ROUNDING: f64 = 1e-12;

/// What a person takes of one thing: in the cup that is decided on, and besides.
pub(crate) struct Sum {
    pub(crate) cup: Vec<Share>,
    beside: Doubt,
}

impl Sum {
    /// Gathers a thing over the cup and everything beside it.
    pub(crate) fn gather(
        case: &Case<'_>,
        yard: Yard<'_>,
        ledger: &mut Ledger,
    ) -> Result<Result<Self, Gap>, Fault> {
        let cup = match shares(case.table, case.cup, yard, ledger)? {
            Ok(cup) => cup,
            Err(gap) => return Ok(Err(gap)),
        };
        let mut beside = in_servings(&[], 0, ledger)?;
        for other in case.beside {
            match shares(case.table, other, yard, ledger)? {
                Ok(shares) => {
                    beside = beside.plus(&in_servings(&shares, other.servings_a_day, ledger)?);
                }
                Err(gap) => return Ok(Err(gap)),
            }
        }
        Ok(Ok(Self { cup, beside }))
    }

    /// Over a window, with so many servings of the cup a day; nothing for a window that is not
    /// summed.
    pub(crate) fn over(
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

    pub(crate) fn day(&self, servings: u32, ledger: &mut Ledger) -> Result<Doubt, Fault> {
        Ok(in_servings(&self.cup, servings, ledger)?.plus(&self.beside))
    }

    /// Whether so many servings stay within; nothing where the end that counts is not known.
    fn within(
        &self,
        (window, bound, limit): (Window, Bound, f64),
        servings: u32,
        ledger: &mut Ledger,
    ) -> Result<Option<bool>, Fault> {
        let sum = self.over(window, servings, ledger)?;
        let at = sum.and_then(|sum| sum.at(bound, ledger));
        Ok(at.map(|at| at <= limit * (1.0 + ROUNDING)))
    }
}

/// The greatest number of servings within a limit; nothing where it cannot be told.
#[expect(clippy::option_option, reason = "not told, and told that no number binds, are two things")]
pub(crate) fn search(
    sum: &Sum,
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

/// How the sum of a day came about.
pub(crate) fn working(
    case: &Case<'_>,
    substance: &SubstanceId,
    sum: &Sum,
    ledger: &mut Ledger,
) -> Result<Working, Fault> {
    let day = sum.day(case.cup.servings_a_day, ledger)?.scaled(1e3);
    Ok(say::working(case, substance, Spread::of(day.draws)))
}
